"""Spares the speech detector while a room is steady: most of an attempt nobody speaks into the microphone."""

from collections import deque
from collections.abc import Callable

import numpy as np

from assistant.adapters.level import Room, mean_square

OPENS_AT = 2.0
"""Factor over the room's own power (3 dB); speech hardly above the room, at 5 dB, lifts it by 6 dB."""
HOLD_FRAMES = 40
"""Frames after the last loud one in which the detector still looks: more than the longest silence in an answer."""
WARM_FRAMES = 6
"""Frames before the first loud one that the detector sees too: it hears better with what led to a word."""


class SpeechGate:
    """A speech detector that is asked only when something changes in the room.

    Args:
        detector: gives the likelihood of speech for a frame of 16-bit mono samples.
    """

    def __init__(self, detector: Callable[[bytes], float]) -> None:
        self._detector = detector
        self._room = Room()
        self._hold = HOLD_FRAMES
        self._before: deque[bytes] = deque(maxlen=WARM_FRAMES)

    def __call__(self, frame: bytes) -> float:
        """The likelihood of speech, 0 to 1; 0 where the room is as steady as before."""
        power = self._room.take(mean_square(np.frombuffer(frame, "<i2")))
        if power > OPENS_AT * self._room.power:
            self._hold = HOLD_FRAMES
        elif self._hold:
            self._hold -= 1
        if not self._hold:
            self._before.append(frame)
            return 0.0
        for earlier in self._before:
            self._detector(earlier)
        self._before.clear()
        return self._detector(frame)
