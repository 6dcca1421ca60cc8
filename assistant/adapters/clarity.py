"""Speech that is understood where others talk, at the same level: consonants raised, loud vowels held down.

Talk and rooms are loudest below 1 kHz, where vowels are; what tells one word from another lies above. Source of the
method, spectral shaping and then compression: Zorila, Kandia and Stylianou, Speech-in-noise intelligibility improvement
based on spectral shaping and dynamic range compression, Interspeech 2012 (from memory). The figures were chosen on the
tuning half of `tests.bench.understood numbers`.
"""

import numpy as np
import numpy.typing as npt

Samples = npt.NDArray[np.float32]

RAISED_DB = 10.0
"""By so much more is raised what lies above `ALL_FROM_HZ` than what lies below `NONE_TO_HZ`; evenly between them."""
NONE_TO_HZ, ALL_FROM_HZ = 800.0, 3_000.0
EVENED = 0.5
"""Part of a difference of level, in decibels, that is taken away; 0 leaves it as it is, 1 makes all equally loud."""
REACH_DB = 30.0
"""What lies further below the loudest is raised no more: breath and hiss stay quiet."""

_FRAME_S = 0.002
_SMOOTHED = 9  # frames: about one period of a deep voice
_PADDING_S = 0.02


def clearer(samples: Samples, rate_hz: int) -> Samples:
    """The same speech, clearer in noise; its level is another one.

    Args:
        samples: mono, not empty.
        rate_hz: samples a second.
    """
    return _evened(_raised(samples, rate_hz), rate_hz)


def _raised(samples: Samples, rate_hz: int) -> Samples:
    """Higher sounds raised, none of them shifted in time."""
    size = len(samples) + round(_PADDING_S * rate_hz)  # what the filter rings on must not come round to the beginning
    octaves = np.log2(np.maximum(np.fft.rfftfreq(size, 1 / rate_hz), 1.0) / NONE_TO_HZ)
    share = np.clip(octaves / np.log2(ALL_FROM_HZ / NONE_TO_HZ), 0, 1)
    raised = np.fft.irfft(np.fft.rfft(samples, size) * 10 ** (RAISED_DB * share / 20), size)
    return np.asarray(raised[: len(samples)], np.float32)


def _evened(samples: Samples, rate_hz: int) -> Samples:
    """Quiet sounds nearer to the loud ones."""
    size = round(_FRAME_S * rate_hz)
    frames = np.pad(samples, (0, -len(samples) % size)).reshape(-1, size)
    window = np.hanning(_SMOOTHED + 2)[1:-1]
    power = np.convolve(np.square(frames).mean(axis=1), window / window.sum(), mode="same")[: len(frames)]
    if not power.max():
        return samples
    gain = np.maximum(power / power.max(), 10 ** (-REACH_DB / 10)) ** (-EVENED / 2)
    return np.asarray(samples * np.interp(np.arange(len(samples)) / size - 0.5, np.arange(len(gain)), gain), np.float32)
