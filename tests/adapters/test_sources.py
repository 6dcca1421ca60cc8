"""A learner of sound: heard by a recogniser, and never misheard for ever."""

from datetime import timedelta

from assistant.adapters.sources import MOST_SPOKEN, SpeakingLearnerSource
from assistant.adapters.stepping_clock import SteppingClock
from assistant.checklist.load import load
from assistant.guide import Guide, Papers
from assistant.guide.events import Heard, NotUnderstood, Opened, Recorded, Typed
from assistant.guide.progress import Mode
from assistant.learner import SimulatedLearner
from assistant.orders.load import load_order
from assistant.orders.solve import answer_key
from assistant.ports import Hearing
from assistant.spoken import ENGLISH


class Deaf:
    """Understands nothing."""

    name = "deaf"
    model_digest = "00"

    def begin(self, expect):
        return self

    def feed(self, block):
        return None

    def finish(self):
        return Hearing("", (), 1.0, 0.0)


def test_a_learner_who_is_not_understood_takes_the_keyboard():
    """After some tries at one step the words are typed, so that a demonstration always comes to its end."""
    checklist = load("primary-line")
    order = load_order(checklist.order)
    key = answer_key(order)
    guide = Guide(Papers(checklist, order.sentence(), key, ENGLISH), Mode.PRACTICE, {})
    clock = SteppingClock()
    learner = SimulatedLearner(checklist, key, None, 1)
    source = SpeakingLearnerSource(learner, guide, clock, lambda words: b"", Deaf())
    guide.receive(Opened(clock.now()))
    guide.receive(Recorded(1, ""))
    kinds = []
    for _ in range(MOST_SPOKEN + 1):
        event = source.next_event(clock.now() + timedelta(days=1))
        kinds.append(type(event))
        guide.receive(event)
        guide.receive(Recorded(2, ""))
    assert kinds == [NotUnderstood] * MOST_SPOKEN + [Typed]
    assert guide.progress.cursor == 1
    assert not isinstance(event, Heard)
