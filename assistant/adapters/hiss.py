"""A word with hisses, as the neural voice says it by itself: its hisses louder, and no hum behind the last one."""

import numpy as np
import numpy.typing as npt

HISS_HZ = 3_000.0
"""From here on the middle of a frame's power makes it one of hiss; vowels and hums lie below."""
FAR_BELOW_DB = 30.0
"""What lies further below the loudest frame is breath, and no hiss of a word."""
FADED_S = 0.02
"""Within this time behind the last frame of hiss, the sound fades out."""
RAISED_DB = 6.0
"""By so much a hiss is raised: by itself, the "s" of "six" lay 5 dB below the vowel, within a sentence 1 to 3 dB."""

_FRAME_S = 0.01


def up_to_hiss(samples: npt.NDArray[np.int16], rate_hz: int) -> npt.NDArray[np.int16]:
    """The sound with its hisses raised and silence behind the last one; as it is where there is none.

    Args:
        samples: mono, a word whose last sound is a hiss.
        rate_hz: samples a second.
    """
    size = round(_FRAME_S * rate_hz)
    frames = samples[: len(samples) // size * size].reshape(-1, size).astype(np.float64)
    power = np.square(np.abs(np.fft.rfft(frames)))
    total = power.sum(axis=1)
    middle = power @ np.fft.rfftfreq(size, 1 / rate_hz) / np.maximum(total, 1e-9)
    is_hiss = (middle > HISS_HZ) & (total > total.max(initial=0.0) * 10 ** (-FAR_BELOW_DB / 10))
    if not is_hiss.any():
        return samples
    gain = np.interp(np.arange(len(samples)) / size - 0.5, np.arange(len(is_hiss)), 10 ** (is_hiss * RAISED_DB / 20))
    behind = gain[(int(np.flatnonzero(is_hiss)[-1]) + 1) * size :]
    behind[:] = np.clip(1 - np.arange(len(behind)) / (FADED_S * rate_hz), 0, 1)
    ended: npt.NDArray[np.int16] = np.clip(samples * gain, -32_768, 32_767).astype(np.int16)
    return ended
