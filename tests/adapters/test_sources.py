"""A learner of sound: heard by a recogniser, doubts and all, and never misheard for ever."""

from datetime import UTC, datetime, timedelta

import pytest

from assistant.adapters.heard import heard_from
from assistant.adapters.sources import MOST_SPOKEN, SpeakingLearnerSource
from assistant.adapters.stepping_clock import SteppingClock
from assistant.checklist.load import load
from assistant.checklist.model import NumberAsked
from assistant.guide import Guide, Papers
from assistant.guide.effects import WakeAt
from assistant.guide.events import Heard, NotUnderstood, Opened, Recorded, Typed, Woke
from assistant.learner import SimulatedLearner
from assistant.orders.load import load_order
from assistant.orders.solve import answer_key
from assistant.ports import Alternative, Hearing
from assistant.spoken import ENGLISH
from assistant.spoken.expect import NumberExpected

AT = datetime(2026, 11, 25, 8, tzinfo=UTC)


class Recogniser:
    """Hears the very words that are "synthesised" as their own bytes, or nothing; numbers surely or not."""

    name = "bytes"
    model_digest = "00"

    def __init__(self, *, deaf=False, doubtful=False):
        self.deaf, self.doubtful = deaf, doubtful

    def begin(self, expect):
        self.number = isinstance(expect, NumberExpected)
        return self

    def feed(self, block):
        self.words = "" if self.deaf else block.decode()

    def finish(self):
        return Hearing(self.words, (), 1.0, 0.0, self.doubtful and self.number)


class Attempt:
    """A guide with a learner who speaks to this recogniser."""

    def __init__(self, recogniser):
        checklist = load("primary-line")
        order = load_order(checklist.order)
        key = answer_key(order)
        self.guide = Guide(Papers(checklist, order.sentence(), key, ENGLISH))
        self.clock = SteppingClock()
        learner = SimulatedLearner(checklist, key, None, 1)
        self.source = SpeakingLearnerSource(learner, self.guide, self.clock, str.encode, recogniser)
        self.wake = None
        self._give(Opened(self.clock.now()))

    def step(self):
        """The learner's next answer, or the end of a timed wait."""
        due = self.wake.at if self.wake else self.clock.now() + timedelta(days=1)
        event = self.source.next_event(due) or Woke(self.clock.now(), self.wake.token)
        self._give(event)
        return event

    def _give(self, event):
        self.guide.receive(event)
        self.wake = None if isinstance(event, Woke) else self.wake
        for effect in self.guide.receive(Recorded(1, "")):
            self.wake = effect if isinstance(effect, WakeAt) else self.wake


def test_a_learner_who_is_not_understood_takes_the_keyboard():
    """After some tries at one step the words are typed, so that a demonstration always comes to its end."""
    attempt = Attempt(Recogniser(deaf=True))
    kinds = [type(attempt.step()) for _ in range(MOST_SPOKEN + 1)]
    assert kinds == [NotUnderstood] * MOST_SPOKEN + [Typed]
    assert attempt.guide.progress.cursor == 1


@pytest.mark.parametrize("doubtful", [False, True])
def test_a_doubtful_number_is_asked_for_digit_by_digit(doubtful):
    """A demonstration by voice goes as an attempt does: a number in doubt needs its digits, a sure one does not."""
    attempt = Attempt(Recogniser(doubtful=doubtful))
    steps = load("primary-line").steps
    number = next(place for place, step in enumerate(steps) if isinstance(step.expect, NumberAsked))
    for _ in range(10 * number):
        if attempt.guide.progress.cursor < number:
            attempt.step()
    event = attempt.step()
    assert isinstance(event, Heard)
    assert event.doubtful is doubtful
    assert attempt.guide.progress.digits_only is doubtful


def test_an_event_tells_all_that_was_heard():
    """Wordings, the figure of the one that is stood for, doubt, gap and sound; without words nothing is made up."""
    others = (Alternative("fifteen", 0.25), Alternative("fifty", 0.7512))
    hearing = Hearing("fifty", others, 1.0, 0.5, doubtful=True, borne_out=True, unaided=True)
    assert heard_from(hearing, AT, "ear", gap=True, sound=b"s") == Heard(
        *(AT, "fifty", ("fifteen",), "0.751", "ear"),
        gap=True,
        doubtful=True,
        borne_out=True,
        unaided=True,
        sound=b"s",
    )
    assert heard_from(Hearing("", others, 1.0, 0.5), AT, "ear", sound=b"s") == NotUnderstood(AT, "ear", sound=b"s")
    alone = Hearing("", others, 1.0, 0.5, unaided=True)
    assert heard_from(alone, AT, "ear") == NotUnderstood(AT, "ear", unaided=True)
