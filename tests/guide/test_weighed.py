"""What the guide makes of answers that were weighed: a critical step is closed by nothing but a yes to the question."""

from datetime import UTC, datetime
from random import Random

import pytest

from assistant.checklist.model import Step
from assistant.guide import Guide, Heard, Opened, Papers, Recorded, Say, State, Status, Typed
from assistant.one_step import alone
from assistant.spoken import ENGLISH

AT = datetime(2026, 1, 1, tzinfo=UTC)
WORDS = "the little wheel is at its lowest"
HEAVY, LIKELY = 5.0, 1.0


class Scales:
    """Weighs the first meaning as it is told to, and the others as nothing."""

    def __init__(self, weight: float) -> None:
        self._weight = weight

    def weigh(self, line: str, meanings: tuple[str, ...], words: str) -> tuple[float, ...]:
        return (self._weight, *(-5.0 for _ in meanings[1:]))


ASKED = {
    "done": {"kind": "done", "good": ["closed"], "bad": ["still open"]},
    "question": {"kind": "question"},
    "choice": {"kind": "choice", "choices": ["none", "some"]},
}


def begun(kind, weight, *, critical=True):
    """A guide that has just read the line of its only step."""
    step = Step.model_validate(
        {"id": "step", "part": "Step", "say": "Close the roller clamp.", "expect": ASKED[kind], "critical": critical}
    )
    guide = Guide(Papers(alone(step), "", {}, ENGLISH.weighed_by(Scales(weight))))
    give(guide, Opened(AT))
    return guide


def give(guide, event):
    """Let it take an event; the entry's body and what it says."""
    (entry,) = guide.receive(event)
    said = " ".join(effect.text for effect in guide.receive(Recorded(1, "")) if isinstance(effect, Say))
    return entry.body, said


def status(guide):
    return guide.progress.steps["step"].status


@pytest.mark.parametrize("kind", ASKED)
@pytest.mark.parametrize("weight", [HEAVY, LIKELY])
def test_a_critical_step_is_asked_about(kind, weight):
    """Whatever the weight; the question names the answer, and a yes takes exactly that."""
    meant = {"done": "closed", "question": "yes", "choice": "none"}[kind]
    guide = begun(kind, weight)
    body, said = give(guide, Typed(AT, WORDS))
    assert body["input"] == "understood with doubt"
    assert body["meaning"]["surety"] in ("sure", "likely")
    assert said == f'Do you mean "{meant}"?'
    assert (guide.progress.state, status(guide)) == (State.READING_BACK, Status.OPEN)
    give(guide, Typed(AT, "yes"))
    assert (status(guide), guide.progress.steps["step"].final) == (Status.CLOSED, {"done": ""}.get(kind, meant))


@pytest.mark.parametrize("kind", ASKED)
@pytest.mark.parametrize("critical", [True, False])
def test_words_of_ones_own_that_were_heard_are_asked_about(kind, critical):
    """At every step; what weighs less is refused, and a no to the question leaves the step open."""
    guide = begun(kind, LIKELY, critical=critical)
    give(guide, Heard(AT, WORDS, doubtful=True))
    assert (guide.progress.state, status(guide)) == (State.ASKING, Status.OPEN)
    guide = begun(kind, HEAVY, critical=critical)
    for answer, ends in (("no", Status.OPEN), ("yes", Status.CLOSED)):
        _body, said = give(guide, Heard(AT, WORDS, doubtful=True))
        assert said.startswith("Do you mean ")
        assert (guide.progress.state, status(guide)) == (State.READING_BACK, Status.OPEN)
        give(guide, Heard(AT, answer))
        assert status(guide) is ends


@pytest.mark.parametrize("kind", ASKED)
def test_a_no_to_the_question_leaves_it_open(kind):
    """And the line is asked again; nothing of it counts."""
    guide = begun(kind, HEAVY)
    give(guide, Typed(AT, WORDS))
    give(guide, Typed(AT, "no"))
    assert (guide.progress.state, status(guide)) == (State.ASKING, Status.OPEN)
    assert guide.progress.steps["step"].found == 0


def test_the_answer_said_again_is_a_yes():
    """ "Do you mean closed?" "Closed." Any other answer is none."""
    guide = begun("done", LIKELY)
    give(guide, Typed(AT, WORDS))
    give(guide, Typed(AT, "still open"))
    assert status(guide) is Status.OPEN
    give(guide, Typed(AT, "yes, closed"))
    assert status(guide) is Status.CLOSED


def test_what_was_heard_twice_with_doubt_still_wants_a_yes():
    """It may be misheard a third time: there the answer said again is none."""
    guide = begun("done", LIKELY)
    for _ in range(2):
        give(guide, Heard(AT, "closed", doubtful=True))
    assert guide.progress.state is State.READING_BACK
    give(guide, Heard(AT, "closed"))
    assert status(guide) is Status.OPEN
    give(guide, Heard(AT, "yes"))
    assert status(guide) is Status.CLOSED


def test_elsewhere_what_weighs_heavily_is_taken():
    """At a step that is not critical; what is only likely is asked about there too."""
    guide = begun("done", HEAVY, critical=False)
    give(guide, Typed(AT, WORDS))
    assert status(guide) is Status.CLOSED
    guide = begun("done", LIKELY, critical=False)
    give(guide, Typed(AT, WORDS))
    assert (guide.progress.state, status(guide)) == (State.READING_BACK, Status.OPEN)


@pytest.mark.parametrize("command", ["pause", "stop"])
def test_while_something_else_is_asked_nothing_is_weighed(command):
    """A pause and the question whether to stop take their own words alone."""
    guide = begun("done", HEAVY, critical=False)
    give(guide, Typed(AT, command))
    state = guide.progress.state
    give(guide, Typed(AT, WORDS))
    assert (guide.progress.state, status(guide)) == (state, Status.OPEN)


def test_nothing_but_a_yes_closes_it_in_whatever_order():
    """Words that weigh anything, commands, doubts, noes, in any order: closed only by a yes or the answer itself."""
    chance = Random(5)  # noqa: S311 - no secret
    sayings = (
        WORDS,
        "no",
        "not yet",
        "is it?",
        "okay",
        "again",
        "pause",
        "go on",
        "almost",
        "I dropped it",
        "hm",
        "yes",
    )
    for _ in range(60):
        guide = begun("done", chance.choice((HEAVY, LIKELY, -5.0)))
        for _ in range(12):
            words, asked = chance.choice(sayings), guide.progress.state
            give(guide, Typed(AT, words))
            if status(guide) is Status.CLOSED:
                assert words == "yes"
                assert asked in (State.ASKING, State.READING_BACK)
            if guide.progress.state is State.FINISHED:
                break
