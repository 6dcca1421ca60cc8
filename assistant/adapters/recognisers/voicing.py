"""Whether anybody used their voice: a cough or a clatter is no number, however sure a model is of one.

Voiced speech repeats itself from one opening of the vocal folds to the next, 70 to 400 times a second; its normalised
autocorrelation has a high peak there (Rabiner 1977, "On the use of autocorrelation analysis for pitch detection", IEEE
Transactions on Acoustics, Speech, and Signal Processing 25: 24-33). Noise has none.
"""

import numpy as np
import numpy.typing as npt

from assistant.adapters.recognisers.features import Floats
from assistant.ports import SAMPLE_RATE_HZ

LOWEST_HZ, HIGHEST_HZ = 70, 400
_FRAME, _STEP = SAMPLE_RATE_HZ // 25, SAMPLE_RATE_HZ // 100
_LEAST_POWER = 0.02
"""Of the loudest frame's: what is softer does not count."""
_AT_A_TIME = 32
_STEADY = 6
"""So many frames, a hundredth of a second from one to the next, have to repeat themselves: a squeak is shorter."""


def strength(speech: Floats) -> float:
    """How nearly the steadiest 60 milliseconds repeat themselves, 0 to 1.

    Args:
        speech: mono at 16 kHz.
    """
    count = 1 + (len(speech) - _FRAME) // _STEP
    if count < _STEADY:
        return 0.0
    frames = np.stack([speech[place * _STEP : place * _STEP + _FRAME] for place in range(count)])
    power = frames.var(axis=1, dtype=np.float64)
    loud = frames[power > _LEAST_POWER * power.max()]
    # A few at a time: half a minute of them in double precision would take a hundred megabytes.
    likeness = [_likeness(loud[first : first + _AT_A_TIME]) for first in range(0, len(loud), _AT_A_TIME)]
    peaks = np.sort(np.concatenate(likeness))[::-1] if likeness else np.zeros(0)
    return float(np.clip(peaks[_STEADY - 1], 0.0, 1.0)) if len(peaks) >= _STEADY else 0.0


def _likeness(frames: Floats) -> npt.NDArray[np.float64]:
    """How nearly each frame repeats itself, at the lag of a voice where it does so best."""
    wide = frames.astype(np.float64)
    wide -= wide.mean(axis=1, keepdims=True)
    so_far = np.cumsum(np.square(wide), axis=1)
    lags = np.arange(SAMPLE_RATE_HZ // HIGHEST_HZ, SAMPLE_RATE_HZ // LOWEST_HZ)
    spectrum = np.fft.rfft(wide, 2 * _FRAME)
    likeness = np.fft.irfft(np.abs(spectrum) ** 2)[:, lags]
    # Of the two parts that are compared each has the power of its own samples alone.
    both = so_far[:, _FRAME - 1 - lags] * (so_far[:, -1:] - so_far[:, lags - 1])
    return np.asarray((likeness / np.sqrt(np.maximum(both, 1e-12))).max(axis=1))
