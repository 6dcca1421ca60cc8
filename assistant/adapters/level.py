"""How loud a microphone's sound is, judged while an attempt goes on: pure arithmetic, and plain advice, once each.

The limits are this project's own figures (common practice, no source): speech below -42 dB of full scale, or less
than 10 dB above the room, was often not understood in trials with synthesised speech.
"""

from collections import deque
from collections.abc import Callable

import numpy as np
import numpy.typing as npt

FULL_SCALE = 32_768.0
SOFT_DBFS = -42.0
LEAST_ABOVE_ROOM_DB = 10.0
CLIPPED_SHARE = 0.01
"""So many samples of an utterance at full scale are more than a click."""
MUTED_S = 4.0
"""Sound without a single step of noise, for so long, comes from no open microphone."""
LEAST_ROOM_S = 1.0
STEPS_DBFS = (-54.0, -44.0, -34.0, -24.0)
"""Above so many of these the sound is, of the four steps in which it is shown."""
SHOWN_S = 0.3
"""It is shown anew no sooner than after so long, seconds: nothing on a display may flash."""
_RISE = 1.01
_LEAST_POWER = 1.0

MUTED = (
    "The microphone gives perfect silence: it is muted, switched off, or the wrong one. "
    "Check its switch, or choose another one with: checkoff audio."
)
SOFT = "I hear you too softly. Move the microphone closer, or turn it up."
NOISY = "The room is almost as loud as you are. Move the microphone closer, or use a headset."
CLIPPED = "You are too loud for the microphone. Move it away a little, or turn it down."


class Level:
    """Follows the sound of a microphone, frame by frame.

    Args:
        frame_s: length of a frame, seconds.
    """

    def __init__(self, frame_s: float) -> None:
        self._frame_s = frame_s
        self._room: deque[float] = deque(maxlen=round(5 / frame_s))
        self._silent_s = 0.0
        self._has_sounded = False
        self._told: set[str] = set()

    def frame(self, samples: npt.NDArray[np.int16], *, is_speech: bool) -> str:
        """Take a frame; return advice, or nothing."""
        power = mean_square(samples)
        if power:
            self._has_sounded = True
            if not is_speech:
                self._room.append(power)
        elif not self._has_sounded:
            self._silent_s += self._frame_s
            if self._silent_s >= MUTED_S:
                return self._once(MUTED)
        return ""

    def utterance(self, samples: npt.NDArray[np.int16]) -> str:
        """Take the sound of what somebody said; return advice, or nothing."""
        if not len(samples):
            return ""
        size = 320
        loud = samples[: len(samples) // size * size].reshape(-1, size).astype(np.float64)
        # The louder half are the words, the rest is what lies between them.
        powers = np.sort(np.mean(np.square(loud), axis=1))[len(loud) // 2 :]
        level = float(np.mean(powers)) if len(powers) else 0.0
        if float(np.mean(np.abs(samples.astype(np.int32)) >= FULL_SCALE - 1)) > CLIPPED_SHARE:
            return self._once(CLIPPED)
        if level and dbfs(level) < SOFT_DBFS:
            return self._once(SOFT)
        room_s = len(self._room) * self._frame_s
        if level and room_s >= LEAST_ROOM_S and dbfs(level) - dbfs(float(np.median(self._room))) < LEAST_ABOVE_ROOM_DB:
            return self._once(NOISY)
        return ""

    def _once(self, advice: str) -> str:
        if advice in self._told:
            return ""
        self._told.add(advice)
        return advice


class Loudness:
    """How loud it has been lately, so that somebody sees that sound comes in.

    Args:
        frame_s: length of a frame, seconds.
        show: is given the step, 0 to 4, where it has changed.
    """

    def __init__(self, frame_s: float, show: Callable[[int], None]) -> None:
        self._frames = round(SHOWN_S / frame_s)
        self._show = show
        self._powers: list[float] = []
        self._shown = 0

    def frame(self, samples: npt.NDArray[np.int16], *, listens: bool) -> None:
        """Take a frame; each time that one listens begins with silence."""
        if not listens:
            self._powers, self._shown = [], 0
            return
        self._powers.append(mean_square(samples))
        if len(self._powers) < self._frames:
            return
        loud = dbfs(max(self._powers))
        step = sum(loud > limit for limit in STEPS_DBFS)
        self._powers = []
        if step != self._shown:
            self._shown = step
            self._show(step)


class Room:
    """How loud a room is where nobody speaks: the least power, which is taken to rise by 1.3 dB a second at most."""

    def __init__(self) -> None:
        self.power = float("inf")

    def take(self, power: float) -> float:
        """Follow a frame's mean square; return it, or the least that counts."""
        power = max(power, _LEAST_POWER)
        self.power = min(power, self.power * _RISE)
        return power


def mean_square(samples: npt.NDArray[np.int16]) -> float:
    """Mean of the squares of some samples; 0 for none."""
    return float(np.mean(np.square(samples.astype(np.float64)))) if len(samples) else 0.0


def dbfs(power: float) -> float:
    """Mean square of samples as dB of full scale."""
    return float(10 * np.log10(max(power, 1e-9) / FULL_SCALE**2))
