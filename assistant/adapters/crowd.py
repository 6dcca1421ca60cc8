"""Others who talk without a break in the room: what is no louder than they are is not for the assistant.

A speech detector finds speech in a room full of talk all the time, and an utterance would never end. So where it has
found no pause for a while, a frame counts as speech only while it is louder than the talk behind it.
"""

from collections import deque

import numpy as np

from assistant.adapters.endpoint import FINISHED_S, FRAME_S, SPEECH
from assistant.adapters.level import mean_square

LOOKS_BACK_S = 8.0
"""What the talk behind is judged on."""
LEAST_S = 7.0
"""After so much talk without a pause the room is full of it: nobody answers for so long."""
BEGINS_DB, GOES_ON_DB = 9.0, 6.0
"""Decibels over the softest half second within that time from which somebody near begins to speak, and goes on: the
end of a word is softer than its beginning."""
_SMOOTHED = round(0.2 / FRAME_S)
_HALF_SECOND = round(0.5 / FRAME_S)


class Crowd:
    """Follows how much is said in the room, and how loud the talk behind the learner is."""

    def __init__(self) -> None:
        frames = round(LOOKS_BACK_S / FRAME_S)
        self._going = 0
        self._silent = 0
        self._halves: deque[float] = deque(maxlen=frames)
        self._powers: deque[float] = deque(maxlen=_HALF_SECOND)
        self._is_near = False

    @property
    def is_there(self) -> bool:
        """Whether others talk all the time: an answer ends with a pause, and the next begins after one."""
        return self._going * FRAME_S >= LEAST_S

    def near(self, frame: bytes, likelihood: float, *, listens: bool = True) -> float:
        """The likelihood that somebody near speaks: 0 where it is only those behind.

        Args:
            frame: 16-bit mono samples.
            likelihood: of speech, by the detector.
            listens: whether an answer is waited for; what is heard beside that, the assistant's own voice it may be,
                says nothing of the room.
        """
        self._powers.append(mean_square(np.frombuffer(frame, "<i2")))
        if listens:
            self._silent = 0 if likelihood >= SPEECH else self._silent + 1
            self._going = 0 if self._silent * FRAME_S >= FINISHED_S else self._going + 1
            if len(self._powers) == _HALF_SECOND:
                self._halves.append(sum(self._powers) / _HALF_SECOND)
        if not self.is_there:
            self._is_near = False
            return likelihood
        lately = list(self._powers)[-_SMOOTHED:]
        above_db = GOES_ON_DB if self._is_near else BEGINS_DB
        self._is_near = sum(lately) / len(lately) >= min(self._halves) * 10 ** (above_db / 10)
        return likelihood if self._is_near else 0.0
