"""The second reader's part in what words mean, with weights that a test sets: the real one is tested in `adapters`."""

import pytest

from assistant.spoken import ENGLISH
from assistant.spoken.expect import ChoiceExpected, ConfirmExpected, NumberExpected
from assistant.spoken.meaning import Answer, Command, Kind, NoMatch, Reason, Surety, Trouble
from assistant.spoken.statement import Asked, Want
from assistant.spoken.weighing import LIMITS

ROLLER = ConfirmExpected(asked=Asked("Close the roller clamp.", Want.DONE, ("rolled down",), ("still open",)))
AIR = ConfirmExpected(done_is_yes=False, asked=Asked("Is the line free of air?", Want.ANSWER))
SITE = ChoiceExpected(("healthy", "red", "swollen"), (("looks fine", "healthy"),), "Look at the site. Healthy or not?")
HEAVY, LIGHT = 5.0, -5.0
UNKNOWN = "the little wheel is at its lowest"


class Scales:
    """Weighs every meaning as it is told to, and notes what it was asked."""

    def __init__(self, *weights: float) -> None:
        self._weights = weights
        self.asked: list[tuple[str, tuple[str, ...], str]] = []

    def weigh(self, line: str, meanings: tuple[str, ...], words: str) -> tuple[float, ...]:
        self.asked.append((line, meanings, words))
        return self._weights


def read(words, expect, *weights, heard=False):
    """The meaning of the words, with these weights."""
    return ENGLISH.weighed_by(Scales(*weights)).interpret(words, expect, heard=heard)


@pytest.mark.parametrize(
    ("weight", "surety"), [(HEAVY, Surety.SURE), (LIMITS.sure - 0.1, Surety.LIKELY), (LIMITS.likely, Surety.LIKELY)]
)
def test_what_the_rules_do_not_know_is_weighed(weight, surety):
    """Heavily, it is an answer; less so, one to be asked about."""
    assert ENGLISH.interpret(UNKNOWN, ROLLER) == NoMatch(Reason.UNKNOWN_WORDS)
    assert read(UNKNOWN, ROLLER, weight) == Answer(Kind.DONE, "done", surety=surety)
    assert read(UNKNOWN, AIR, weight, LIGHT) == Answer(Kind.CONFIRM, "yes", surety=surety)
    assert read(UNKNOWN, SITE, LIGHT, weight, LIGHT) == Answer(Kind.CHOICE, "red", surety=surety)


def test_what_weighs_too_little_stays_refused():
    """Nothing is made of it, nor where the reader cannot tell."""
    assert read(UNKNOWN, ROLLER, LIMITS.likely - 0.1) == NoMatch(Reason.UNKNOWN_WORDS)
    assert read(UNKNOWN, ROLLER) == NoMatch(Reason.UNKNOWN_WORDS)


def test_alternatives_have_to_lie_apart():
    """Two that weigh much are none; two not so far apart are asked about."""
    assert read(UNKNOWN, SITE, HEAVY, HEAVY - 0.5, LIGHT) == NoMatch(Reason.UNKNOWN_WORDS)
    assert read(UNKNOWN, SITE, HEAVY, HEAVY - 1.5, LIGHT) == Answer(Kind.CHOICE, "healthy", surety=Surety.LIKELY)


def test_a_no_is_never_guessed():
    """It would put a fault on record."""
    assert read(UNKNOWN, AIR, LIGHT, HEAVY) == NoMatch(Reason.UNKNOWN_WORDS)


@pytest.mark.parametrize(
    "words", ["roller clamp shut in theory", "you said the wheel is down", "the wheel is down as if"]
)
def test_what_is_taken_back_is_at_most_asked_about(words):
    """And refused where it is heard, or weighs less."""
    assert read(words, ROLLER, HEAVY) == Answer(Kind.DONE, "done", surety=Surety.LIKELY)
    assert read(words, ROLLER, LIMITS.not_taken_back - 0.1) == ENGLISH.interpret(words, ROLLER)
    assert read(words, ROLLER, HEAVY, heard=True) == ENGLISH.interpret(words, ROLLER, heard=True)


@pytest.mark.parametrize("words", ["I think the wheel is down", "is the wheel down", "almost at the bottom"])
def test_doubt_is_at_most_asked_about(words):
    """What the rules hold for doubt or a question is never taken at once."""
    found = read(words, ROLLER, HEAVY)
    assert isinstance(found, NoMatch) or found.surety is Surety.LIKELY


def test_a_part_is_at_most_asked_about():
    """Where the rules hold that only a part was reported, the weights do not overrule them."""
    both = ConfirmExpected(asked=Asked("Hang the bag. Squeeze the chamber until it is half full.", Want.DONE))
    words = "chamber's half full"
    assert ENGLISH.interpret(words, both) == Answer(Kind.ACKNOWLEDGED, "acknowledged")
    assert read(words, both, HEAVY) == Answer(Kind.DONE, "done", surety=Surety.LIKELY)


def test_what_the_rules_take_is_asked_about_where_it_weighs_nothing():
    """Two readers have to agree before it is taken at once."""
    assert read("the clamp is shut", ROLLER, HEAVY) == Answer(Kind.DONE, "done")
    assert read("the clamp is shut", ROLLER, LIGHT) == Answer(Kind.DONE, "done", surety=Surety.LIKELY)


@pytest.mark.parametrize("words", ["done", "yes", "no", "okay", "rolled down", "still open", "Rolled down."])
def test_plain_words_and_an_authors_own_are_settled(words):
    """They are not weighed at all."""
    scales = Scales(LIGHT)
    assert ENGLISH.weighed_by(scales).interpret(words, ROLLER) == ENGLISH.interpret(words, ROLLER)
    assert scales.asked == []


@pytest.mark.parametrize(
    ("words", "expect", "heard"),
    [
        ("the clamp is shut", ROLLER, True),
        ("I dropped it", ROLLER, True),
        (f"{UNKNOWN}?", ROLLER, False),
        ("the rate is at its lowest", NumberExpected("mL/h"), False),
        (UNKNOWN, ConfirmExpected(), False),
        (UNKNOWN, ChoiceExpected(("red", "blue")), False),
        ("pause", ROLLER, False),
    ],
)
def test_what_is_not_weighed(words, expect, heard):
    """What was heard and is understood, questions, numbers, read-backs, alternatives of no line, commands."""
    scales = Scales(HEAVY, LIGHT)
    language = ENGLISH.weighed_by(scales)
    assert language.interpret(words, expect, heard=heard) == ENGLISH.interpret(words, expect, heard=heard)
    assert scales.asked == []


def test_what_was_heard_is_asked_about_at_best():
    """A recogniser may have written other words than were said."""
    assert read(UNKNOWN, ROLLER, HEAVY, heard=True) == Answer(Kind.DONE, "done", surety=Surety.LIKELY)
    assert read(UNKNOWN, SITE, LIGHT, LIMITS.heard, LIGHT, heard=True) == Answer(
        Kind.CHOICE, "red", surety=Surety.LIKELY
    )
    assert read(UNKNOWN, ROLLER, LIMITS.heard - 0.1, heard=True) == NoMatch(Reason.UNKNOWN_WORDS)
    assert read(UNKNOWN, SITE, HEAVY, HEAVY - 1.5, LIGHT, heard=True) == NoMatch(Reason.UNKNOWN_WORDS)
    assert read(UNKNOWN, AIR, LIGHT, HEAVY, heard=True) == NoMatch(Reason.UNKNOWN_WORDS)


def test_trouble_stays_trouble():
    """Unless it all but surely answers the line; then the learner is asked."""
    words = "I dropped it"
    assert read(words, ROLLER, LIMITS.no_trouble - 0.1) == Answer(Kind.TROUBLE, Trouble.DROPPED)
    assert read(words, ROLLER, LIMITS.no_trouble) == Answer(Kind.DONE, "done", surety=Surety.LIKELY)
    assert read("stop", ROLLER, HEAVY) == Answer(Kind.COMMAND, Command.STOP)


def test_without_a_reader_nothing_changes():
    """It may be left out of an installation."""
    assert ENGLISH.weighed_by(None) is ENGLISH
