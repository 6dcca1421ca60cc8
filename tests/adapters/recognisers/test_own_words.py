"""What is made of words that stand in no list: asked about where it was heard well and weighs much, else nothing."""

from dataclasses import replace

import pytest

from assistant.adapters.recognisers.evidence import Evidence, Hypothesis
from assistant.adapters.recognisers.judgement import NOTHING, Judgement
from assistant.adapters.recognisers.own_words import LEAST_CLEAR, in_own_words
from assistant.adapters.recognisers.replay import hear_sound
from assistant.adapters.recognisers.trained import open_trained
from assistant.ports import Alternative
from assistant.spoken import ENGLISH
from assistant.spoken.expect import ChoiceExpected, ConfirmExpected, NumberExpected
from assistant.spoken.statement import Asked, Want
from assistant.spoken.weighing import LIMITS
from tests.speakers import spoken as speak

ROLLER = ConfirmExpected(asked=Asked("Close the roller clamp.", Want.DONE))
FREE = "the little wheel is at its lowest"


class Scales:
    """Weighs whatever it is shown alike."""

    def __init__(self, weight: float) -> None:
        self._weight = weight

    def weigh(self, _line: str, meanings: tuple[str, ...], _words: str) -> tuple[float, ...]:
        return (self._weight,) * len(meanings)


def made_of(free, expect=ROLLER, *, weight=LIMITS.heard, clear=LEAST_CLEAR, judged=NOTHING):
    """What stands of an utterance that the model has written so."""
    evidence = Evidence(Hypothesis(free, 10 * clear), 10, 0.0, {})
    return in_own_words(judged, evidence, expect, ENGLISH.weighed_by(Scales(weight)))


def test_it_is_asked_about():
    """With the words as they were written, and marked as doubtful."""
    assert made_of(f" {FREE}") == Judgement(FREE, doubtful=True)


@pytest.mark.parametrize(
    "case",
    [
        {"weight": LIMITS.heard - 0.1},
        {"clear": LEAST_CLEAR - 0.1},
        {"free": "lowest"},
        {"free": "is the little wheel at its lowest?"},
        {"free": f"{FREE} my foot"},
        {"expect": NumberExpected("mL/h")},
        {"expect": ConfirmExpected()},
        # Two alternatives that weigh alike.
        {"expect": ChoiceExpected(("closed", "open"), (), "Look at the clamp. Closed, or open?")},
    ],
)
def test_nothing_is_made_of_it(case):
    """Too light, not clear, a single word, a question, taken back, or not at a line."""
    assert made_of(**{"free": FREE} | case) == NOTHING


def test_an_alternative_that_the_rules_know_is_asked_about():
    """It closes a step at once, and stood in no list of what may be heard."""
    clamp = ChoiceExpected(("closed", "open"), (), "Look at the clamp. Closed, or open?")
    assert made_of("the clamp is open", clamp, weight=-5.0) == Judgement("the clamp is open", doubtful=True)


def test_what_is_listed_comes_first():
    """A sentence of the step that stands is what was said, whatever it weighs."""
    listed = Judgement("shut", (Alternative("shut", 0.9),))
    assert made_of(FREE, weight=9.0, judged=listed) == listed
    assert made_of("shut", weight=-9.0, judged=listed) == listed


@pytest.mark.parametrize(("weight", "doubtful"), [(LIMITS.believed, False), (LIMITS.believed - 0.1, True)])
def test_what_rules_take_of_other_words_needs_two_witnesses(weight, doubtful):
    """What stands in no list and weighs nothing is asked about, unless it is short."""
    for words, may_be in (("the clamp is shut now", True), ("the clamp is shut", False)):
        taken = Judgement(words, (Alternative("shut", 0.1),))
        assert made_of(words, weight=weight, judged=taken) == replace(taken, doubtful=doubtful and may_be)


@pytest.mark.sound
@pytest.mark.parametrize(
    ("words", "kind"),
    [
        ("I rolled the little wheel all the way down", "asked"),
        ("the wheel is almost all the way down", ""),
        ("I'm about to roll the wheel down", ""),
        ("put it on the table next to the door", ""),
    ],
)
def test_by_ear(words, kind):
    """The trained recogniser and the reader on a synthesised voice: an answer that no rule knows, and what is none."""
    ear = open_trained()
    try:
        heard = hear_sound(ear, speak(words), ROLLER)
    finally:
        ear.close()
    assert ("asked" if heard.doubtful else heard.words) == kind
