"""Input that is fetched one at a time: lines from a pipe, a simulated learner typing or speaking."""

from collections.abc import Callable
from datetime import datetime, timedelta

from assistant.adapters.heard import heard_from
from assistant.adapters.keyboard import EndOfInput, LineSource
from assistant.adapters.stepping_clock import SteppingClock
from assistant.guide.events import Event, InputEnded, Typed
from assistant.guide.guide import Guide
from assistant.guide.progress import State
from assistant.learner import Reply, SimulatedLearner
from assistant.ports import Clock, Recogniser

LONGEST_WAIT_S = 0.5
"""Longest wait inside a fetch, so that a signal or a lost device is seen."""


class PipeSource:
    """Lines of standard input, one whenever an answer is wanted."""

    def __init__(self, lines: LineSource, clock: Clock) -> None:
        self._lines = lines
        self._clock = clock

    def next_event(self, due: datetime | None) -> Event | None:
        """The next line that is not blank; None when `due` came first or nothing came for a while."""
        limit_s = self._clock.sleep_limit(due)
        line = self._lines.next_line(LONGEST_WAIT_S if limit_s is None else min(limit_s, LONGEST_WAIT_S))
        if isinstance(line, EndOfInput):
            return InputEnded(self._clock.now())
        if line is None or not line.strip():
            return None
        return Typed(self._clock.now(), line)


class LearnerSource:
    """A simulated learner at a keyboard; time passes as fast as it is needed."""

    def __init__(self, learner: SimulatedLearner, guide: Guide, clock: SteppingClock) -> None:
        self._learner = learner
        self._guide = guide
        self._clock = clock
        self._asked: tuple[int, State] | None = None
        self._reply: Reply | None = None
        self._speaks_at = clock.now()

    def next_event(self, due: datetime | None) -> Event | None:
        """What the learner says, or None when `due` comes before it is ready to."""
        progress = self._guide.progress
        asked = (progress.cursor, progress.state)
        if self._reply is None or asked != self._asked:
            self._asked = asked
            self._reply = self._learner.reply(progress)
            self._speaks_at = self._clock.now() + timedelta(seconds=self._reply.after_s)
        if due is not None and due < self._speaks_at:
            self._clock.move_to(due)
            return None
        self._clock.move_to(self._speaks_at)
        words, self._reply = self._reply.words, None
        return self._said(words)

    def _said(self, words: str) -> Event:
        return Typed(self._clock.now(), words)


MOST_SPOKEN = 7
"""Utterances of a synthesised learner at one step; from then on it types, as people do who are not understood."""


class SpeakingLearnerSource(LearnerSource):
    """A simulated learner whose words are synthesised and go through a real recogniser.

    A synthesiser says a word again much as before, so what is once misheard could be misheard for ever: after
    `MOST_SPOKEN` utterances at one step the learner takes the keyboard.

    Args:
        synthesise: makes mono 16-bit samples at `assistant.ports.SAMPLE_RATE_HZ` of some words.
        recogniser: hears them.
    """

    def __init__(
        self,
        learner: SimulatedLearner,
        guide: Guide,
        clock: SteppingClock,
        synthesise: Callable[[str], bytes],
        recogniser: Recogniser,
    ) -> None:
        super().__init__(learner, guide, clock)
        self._synthesise = synthesise
        self._recogniser = recogniser
        self._step = -1
        self._spoken = 0

    def _said(self, words: str) -> Event:
        if self._guide.progress.cursor != self._step:
            self._step, self._spoken = self._guide.progress.cursor, 0
        self._spoken += 1
        if self._spoken > MOST_SPOKEN:
            return super()._said(words)
        utterance = self._recogniser.begin(self._guide.expectation())
        utterance.feed(self._synthesise(words))
        return heard_from(utterance.finish(), self._clock.now(), self._recogniser.name)
