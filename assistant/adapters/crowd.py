"""Others who talk in the room: what is no louder than they are is not for the assistant.

A speech detector finds speech in a room full of talk all the time, so an utterance would never end, and the next one
would count as begun too early. Where there is such talk, a frame counts as speech only while it is louder than that.
"""

from collections import deque

import numpy as np

from assistant.adapters.endpoint import FRAME_S, SPEECH
from assistant.adapters.level import mean_square

LOOKS_BACK_S = 10.0
"""What the talk behind is judged on."""
LEAST_S = 2.0
"""Nothing is judged on less."""
LONGEST_ANSWER_S = 6.0
"""Who has spoken for longer without an end is the room, not an answer."""
SOFTER_PART = 30
"""Per cent of that time that is softer than what the talk's level is taken to be: it has louder and softer moments."""
BEGINS_DB, GOES_ON_DB = 7.5, 4.0
"""Decibels above that level from which somebody near begins to speak, and goes on: the end of a word is softer than
its beginning. Of four people who talk at once 99 in 100 moments are less than 6 above it."""
LOUDER_PART, ABOVE_IT_DB = 90, 3.0
"""One or two who talk have louder moments than four at once: what begins is so much above the level that is exceeded a
tenth of the time, too."""
SILENT_DB, SILENT_S = 14.0, 0.7
"""So much softer than what goes on, for so long, and nobody talks any more."""
TALK_SHARE = 0.1
"""So much of the time must be speech that is no louder; otherwise nobody talks behind the learner."""
_SMOOTHED = round(0.2 / FRAME_S)
_JUDGED_EVERY = round(0.25 / FRAME_S)


class Crowd:
    """Follows how much is said in the room, and how loud the talk behind the learner is.

    What is heard between two answers tells the most, and an answer that comes to an end tells nothing.
    """

    def __init__(self) -> None:
        self._heard: deque[tuple[float, bool]] = deque(maxlen=round(LOOKS_BACK_S / FRAME_S))
        self._answer: list[tuple[float, bool]] = []
        self._lately: deque[float] = deque(maxlen=_SMOOTHED)
        self._frames = 0
        self._silent = 0
        self._begins = self._goes_on = 0.0
        self._is_there = False
        self._is_near = False

    @property
    def is_there(self) -> bool:
        """Whether others talk: what is no louder is not near."""
        return self._is_there

    @property
    def is_behind(self) -> bool:
        """Whether others talk, and what was heard last is no louder."""
        return self._is_there and not self._is_near

    def near(self, frame: bytes, likelihood: float, *, listens: bool = True, answers: bool = False) -> float:
        """The likelihood that somebody near speaks: 0 where it is only those behind.

        Args:
            frame: 16-bit mono samples.
            likelihood: of speech, by the detector.
            listens: whether an answer is waited for; what is heard beside that, the assistant's own voice it may be,
                says nothing of the room.
            answers: whether an answer has begun and not ended.
        """
        self._lately.append(mean_square(np.frombuffer(frame, "<i2")))
        power = sum(self._lately) / len(self._lately)
        if listens:
            self._learn((power, likelihood >= SPEECH), answers=answers)
        self._is_near = power >= (self._goes_on if self._is_near else self._begins)
        return 0.0 if self.is_behind else likelihood

    def _follow_silence(self, power: float) -> None:
        """Where it falls silent, those who talked have stopped, or it was the learner: whoever speaks next is near."""
        self._silent = self._silent + 1 if power < self._goes_on * 10 ** (-SILENT_DB / 10) else 0
        if self._silent * FRAME_S >= SILENT_S:
            self._heard.clear()
            self._is_there = False

    def _learn(self, heard: tuple[float, bool], *, answers: bool) -> None:
        self._follow_silence(heard[0])
        if not answers:
            self._answer = []
            self._heard.append(heard)
        else:
            self._answer.append(heard)
            if len(self._answer) * FRAME_S > LONGEST_ANSWER_S:
                self._heard.extend(self._answer)
                self._answer = []
        self._frames += 1
        if self._frames % _JUDGED_EVERY == 0:
            self._judge()

    def _judge(self) -> None:
        if len(self._heard) * FRAME_S < LEAST_S:
            return
        powers, is_speech = np.array(self._heard).T
        level, loud = np.percentile(powers, (SOFTER_PART, LOUDER_PART))
        no_louder = level * 10 ** (BEGINS_DB / 10)
        self._is_there = bool(np.mean((is_speech > 0) & (powers < no_louder)) >= TALK_SHARE)
        self._begins = float(max(no_louder, loud * 10 ** (ABOVE_IT_DB / 10)))
        self._goes_on = float(level * 10 ** (GOES_ON_DB / 10))
