"""The picture of sound that Whisper reads: log-mel energies, 80 bands, a frame every 10 ms.

Source: Radford et al., "Robust Speech Recognition via Large-Scale Weak Supervision", 2022, section 2.2 (80
bands, 25 ms windows, 10 ms apart, 16 kHz), with Slaney's mel scale (Auditory Toolbox, technical report
1998-010): linear up to 1,000 Hz, logarithmic above, triangles of equal area.
"""

from functools import cache

import numpy as np
import numpy.typing as npt

from assistant.ports import SAMPLE_RATE_HZ

Floats = npt.NDArray[np.float32]

WINDOW = 400
HOP = 160
BANDS = 80

_LINEAR_HZ_PER_MEL = 200 / 3
_BREAK_HZ = 1_000.0
_BREAK_MEL = _BREAK_HZ / _LINEAR_HZ_PER_MEL
_LOG_STEP = np.log(6.4) / 27


def log_mel(samples: Floats, window_s: float) -> Floats:
    """Log-mel energies of sound, silence added at its end up to `window_s`.

    Args:
        samples: mono at 16 kHz, -1 to 1; what is longer than `window_s` is cut off.
        window_s: length of the picture, seconds.

    Returns:
        `BANDS` rows, one column for each 10 ms.
    """
    length = round(window_s * SAMPLE_RATE_HZ)
    padded = np.zeros(length + WINDOW, dtype=np.float32)
    used = samples[:length]
    padded[WINDOW // 2 : WINDOW // 2 + len(used)] = used
    # The transform is centred on each hop, so the edges are mirrored as the model's training did.
    padded[: WINDOW // 2] = padded[WINDOW : WINDOW // 2 : -1]
    padded[-WINDOW // 2 :] = padded[-WINDOW // 2 - 2 : -WINDOW - 2 : -1]
    frames = np.lib.stride_tricks.sliding_window_view(padded, WINDOW)[:length:HOP]
    spectrum = np.fft.rfft(frames * _hann(), axis=-1)
    power = (spectrum.real**2 + spectrum.imag**2).astype(np.float32)
    energies = np.log10(np.maximum(mel_filters() @ power.T, 1e-10))
    energies = np.maximum(energies, energies.max() - 8.0)
    return np.ascontiguousarray((energies + 4.0) / 4.0, dtype=np.float32)


@cache
def mel_filters() -> Floats:
    """Triangles of equal area on Slaney's mel scale: `BANDS` rows over the bins of the transform."""
    bins_hz = np.arange(WINDOW // 2 + 1) * SAMPLE_RATE_HZ / WINDOW
    corners_hz = _to_hz(np.linspace(0.0, _to_mel(SAMPLE_RATE_HZ / 2), BANDS + 2))
    lower, centre, upper = corners_hz[:-2, None], corners_hz[1:-1, None], corners_hz[2:, None]
    rising = (bins_hz - lower) / (centre - lower)
    falling = (upper - bins_hz) / (upper - centre)
    triangles = np.maximum(0.0, np.minimum(rising, falling))
    return (triangles * 2.0 / (upper - lower)).astype(np.float32)


@cache
def _hann() -> Floats:
    return np.hanning(WINDOW + 1)[:-1].astype(np.float32)


def _to_mel(hertz: float) -> float:
    if hertz < _BREAK_HZ:
        return hertz / _LINEAR_HZ_PER_MEL
    return float(_BREAK_MEL + np.log(hertz / _BREAK_HZ) / _LOG_STEP)


def _to_hz(mels: npt.NDArray[np.float64]) -> npt.NDArray[np.float64]:
    linear = mels * _LINEAR_HZ_PER_MEL
    return np.where(mels < _BREAK_MEL, linear, _BREAK_HZ * np.exp(_LOG_STEP * (mels - _BREAK_MEL)))
