"""Sound as it comes, made into what a recogniser was trained on: a usual level, a little quiet at both ends.

A learner may stand far from the microphone, a file may begin with the first word or with ten seconds of nothing.
A model that never saw that loses words at the ends.
"""

import numpy as np
import numpy.typing as npt

from assistant.adapters.recognisers.features import Floats
from assistant.ports import SAMPLE_RATE_HZ

FRAME = SAMPLE_RATE_HZ // 50
QUIET_S = 0.3
"""Quiet that is left, or added, before and after the speech, seconds."""
LEVEL = 0.1
"""Root mean square, of full scale, to which the loud parts of the speech are brought."""
MOST_GAIN = 100.0
"""Beyond that, what is there is the microphone's own noise."""
SILENCE = 1e-4
"""Root mean square, of full scale, under which there is no sound at all to listen to."""
_LOUD_FRAMES = 10
"""So many frames (0.2 s) are at least as loud as speech is; a click is shorter."""
_FAR_BELOW = 0.02
"""Frames below this part of the loud ones (-34 dB) are quiet."""
_BYTES_A_SAMPLE = 2


def samples_of(sound: bytes | bytearray) -> Floats:
    """16-bit little-endian samples as numbers from -1 to 1; an odd byte at the end is left out."""
    whole = len(sound) // _BYTES_A_SAMPLE * _BYTES_A_SAMPLE
    return np.frombuffer(sound[:whole], dtype="<i2").astype(np.float32) / np.float32(32_768)


def loudest(levels: npt.NDArray[np.floating]) -> float:
    """The level that the loud frames reach at least, of those of all frames, each of 20 ms."""
    return float(np.sort(levels)[-min(_LOUD_FRAMES, len(levels))])


def powers(speech: Floats, lowest_hz: float, highest_hz: float) -> npt.NDArray[np.floating]:
    """Power of each whole frame between two pitches, both included; none where there is no whole frame.

    Args:
        speech: mono at 16 kHz.
        lowest_hz: hertz.
        highest_hz: hertz.
    """
    frames = speech[: len(speech) // FRAME * FRAME].reshape(-1, FRAME)
    hertz = np.fft.rfftfreq(FRAME, 1 / SAMPLE_RATE_HZ)
    spectrum = np.abs(np.fft.rfft(frames * np.hanning(FRAME), axis=1)) ** 2
    return np.asarray(spectrum[:, (hertz >= lowest_hz) & (hertz <= highest_hz)].sum(axis=1))


def prepared(samples: Floats) -> Floats | None:
    """The speech at a usual level with a little quiet around it; None where there is no sound.

    Args:
        samples: mono at 16 kHz, -1 to 1.
    """
    if not len(samples):
        return None
    steady = samples - samples.mean(dtype=np.float32)
    frames = np.append(steady, np.zeros(-len(steady) % FRAME, dtype=np.float32)).reshape(-1, FRAME)
    levels = np.sqrt(np.mean(np.square(frames), axis=1))
    loud = loudest(levels)
    if loud < SILENCE:
        return None
    (heard,) = np.nonzero(levels > _FAR_BELOW * loud)
    quiet = round(QUIET_S * SAMPLE_RATE_HZ)
    start, end = int(heard[0]) * FRAME, min(len(steady), (int(heard[-1]) + 1) * FRAME)
    before, after = max(0, start - quiet), min(len(steady), end + quiet)
    gain = np.float32(min(LEVEL / loud, MOST_GAIN))
    return np.concatenate(
        [
            np.zeros(quiet - (start - before), dtype=np.float32),
            np.clip(gain * steady[before:after], -1, 1),
            np.zeros(quiet - (after - end), dtype=np.float32),
        ]
    )
