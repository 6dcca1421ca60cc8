"""What was heard before an utterance counted as begun, and what sounds although it does not count as speech.

The speech detector is not sure of a word that stands alone: of the loud frames of people's digits it takes one in ten
or twenty for no speech, and a whole "two" or "four", as loud as its neighbours, now and then. So what is as loud as
the speech next to it belongs to the utterance too.
"""

from collections import deque
from dataclasses import dataclass

from assistant.adapters.endpoint import FRAME_S, SPEECH, START_WINDOW, WEAK_START_WINDOW

PREROLL_S = 0.3
"""Sound before the first that belongs to an utterance: soft beginnings of words."""
LONGEST_GAP_S = 1.0
"""So much quiet between what sounded and the speech after it parts the two."""
LONGEST_S = 3.0
"""Nothing that is further back belongs to the utterance."""
BELOW_SPEECH = 0.25
"""Factor on the power of speech (6 dB less): what sounds is at least as loud."""
ABOVE_ROOM = 4.0
"""Factor on the power of the room (6 dB more), likewise."""


def sounds(power: float, speech: float, room: float) -> bool:
    """Whether a frame is about as loud as speech, and louder than the room; mean squares all three."""
    return power >= BELOW_SPEECH * speech and power >= ABOVE_ROOM * room


@dataclass(frozen=True)
class _Earlier:
    samples: bytes
    power: float
    is_speech: bool
    follows_gap: bool


class Beforehand:
    """The sound before an utterance."""

    def __init__(self) -> None:
        self._frames: deque[_Earlier] = deque(maxlen=round(LONGEST_S / FRAME_S) + START_WINDOW)

    def add(self, samples: bytes, power: float, likelihood: float, *, follows_gap: bool) -> None:
        """Keep a frame: its mean square, its likelihood of speech, and whether sound was lost right before it."""
        self._frames.append(_Earlier(samples, power, likelihood >= SPEECH, follows_gap))

    def shorten(self) -> None:
        """What was heard so far belongs to something else: nothing but the last moment may belong to what comes."""
        while len(self._frames) > round(PREROLL_S / FRAME_S):
            self._frames.popleft()

    def take(self, room: float) -> tuple[list[bytes], bool]:
        """What belongs to the utterance that begins now, and whether sound was lost within it; nothing is kept.

        Args:
            room: mean square where nobody speaks.
        """
        frames = list(self._frames)
        self._frames.clear()
        first = max(0, len(frames) - START_WINDOW)
        speech = max((frame.power for frame in frames[-WEAK_START_WINDOW:] if frame.is_speech), default=0.0)
        gap = 0
        for place in range(first - 1, -1, -1):
            frame = frames[place]
            if frame.is_speech or sounds(frame.power, speech, room):
                first, gap = place, 0
                continue
            gap += 1
            if gap * FRAME_S > LONGEST_GAP_S:
                break
        kept = frames[max(0, first - round(PREROLL_S / FRAME_S)) :]
        return [frame.samples for frame in kept], any(frame.follows_gap for frame in kept)
