"""A word that ends in a hiss, ended there: said by itself, the neural voice goes on humming behind it."""

import numpy as np
import numpy.typing as npt

HISS_HZ = 3_000.0
"""From here on the middle of a frame's power makes it one of hiss; vowels and hums lie below."""
FAR_BELOW_DB = 30.0
"""What lies further below the loudest frame is breath, and no hiss of a word."""
FADED_S = 0.02
"""Within this time behind the last frame of hiss, the sound fades out."""

_FRAME_S = 0.01


def up_to_hiss(samples: npt.NDArray[np.int16], rate_hz: int) -> npt.NDArray[np.int16]:
    """The sound with silence behind its last hiss; as it is where there is none.

    Args:
        samples: mono, a word whose last sound is a hiss.
        rate_hz: samples a second.
    """
    size = round(_FRAME_S * rate_hz)
    frames = samples[: len(samples) // size * size].reshape(-1, size).astype(np.float64)
    power = np.square(np.abs(np.fft.rfft(frames)))
    total = power.sum(axis=1)
    middle = power @ np.fft.rfftfreq(size, 1 / rate_hz) / np.maximum(total, 1e-9)
    hisses = np.flatnonzero((middle > HISS_HZ) & (total > total.max(initial=0.0) * 10 ** (-FAR_BELOW_DB / 10)))
    if not len(hisses):
        return samples
    ended = samples.copy()
    behind = ended[(int(hisses[-1]) + 1) * size :]
    behind[:] = behind * np.clip(1 - np.arange(len(behind)) / (FADED_S * rate_hz), 0, 1)
    return ended
