"""British and American words: one table, and what is written in this program is written in the words of one shore."""

import re

import pytest

from assistant.checklist.load import available, load
from assistant.checklist.model import Checklist
from assistant.spoken import ENGLISH, english, interpret
from assistant.spoken.english.varieties import AMERICAN_FOR, american
from assistant.spoken.expect import NumberExpected

BRITISH_WORDS = re.compile(rf"\b({'|'.join(AMERICAN_FOR)})s?\b", re.IGNORECASE)
AMERICAN_WORDS = re.compile(rf"\b({'|'.join(AMERICAN_FOR.values())})s?\b", re.IGNORECASE)


def texts(checklist: Checklist) -> str:
    """Everything that is shown or said of a checklist; titles of sources are as they are."""
    steps = (
        (step.say, step.more, step.hint, *step.stronger, step.why, step.if_wrong, step.part) for step in checklist.steps
    )
    head = (checklist.title, checklist.purpose, *checklist.cautions, *checklist.equipment)
    return " ".join((*head, *(text for step in steps for text in step), *(plan.say for plan in checklist.troubles)))


@pytest.mark.parametrize("name", available())
def test_the_library_is_in_the_words_of_one_shore(name: str) -> None:
    """As it is written no American word is in it; turned over, no British one."""
    written = texts(load(name))
    # "bandage" is one word on both shores; it is American only where a plaster is meant.
    assert {found[0].lower() for found in AMERICAN_WORDS.finditer(written)} <= {"bandage", "bandages"}
    assert not BRITISH_WORDS.search(american(written))


def test_every_word_of_the_table_is_met() -> None:
    """In the library, or in a unit that is said."""
    units = " ".join(f"{unit.one} {unit.many}" for unit in ENGLISH.tables.units.units)
    every = " ".join((units, *(texts(load(name)) for name in available()))).lower()
    assert [word for word in AMERICAN_FOR if word not in every] == []


@pytest.mark.parametrize(
    ("british", "wanted"),
    [
        ("Millilitres and a centimetre", "Milliliters and a centimeter"),
        ("An unlabelled giving set", "An unlabeled administration set"),
        ("plastered, colourless, metreing", "plastered, colourless, metreing"),  # other words stay
        ("", ""),
    ],
)
def test_words_are_turned_whole(british: str, wanted: str) -> None:
    """With capital and plural; a longer word that holds one of them is another word."""
    assert american(british) == wanted
    assert american(wanted) == wanted


def test_both_are_understood_whatever_is_spoken() -> None:
    """What a learner says needs no setting."""
    for words in ("fifty millilitres", "fifty milliliters"):
        assert interpret(words, NumberExpected("mL")) == english("American").interpret(words, NumberExpected("mL"))
    assert english("British") is ENGLISH
