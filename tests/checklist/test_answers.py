"""Which answers of a choice sound alike, and how hard a text reads."""

import pytest

from assistant.checklist.rules.answers import heard_as, sound_alike
from assistant.checklist.rules.texts import reading_grade, sentences

ALIKE = [
    # one differs from the other in a "not", a beginning or a teen
    ("open", "not open"),
    ("pain", "no pain"),
    ("compatible", "incompatible"),
    ("connected", "disconnected"),
    ("hypertonic", "hypotonic"),
    ("with air", "without air"),
    ("fifteen drops", "fifty drops"),
    # the same consonants, or a rhyme
    ("site", "sight"),
    ("pain", "pen"),
    ("red", "bed"),
    ("the left hand is warm", "the left hand is worm"),
    # most letters the same
    ("swelling", "smelling"),
    ("steadily", "readily"),
    ("increase", "decrease"),
    ("abduct", "adduct"),
]
DIFFERENT = [
    ("clear", "cloudy"),
    ("cloudy", "leaking"),
    ("left arm", "right arm"),
    ("left arm", "right hand"),
    ("primary", "secondary"),
    ("steadily", "slowly"),
    ("above the pump", "below the pump"),
    ("upper", "lower"),
    ("warm", "cold"),
    ("swollen", "red and sore"),
    ("ten drops", "twenty drops"),
    ("lactated Ringer's", "sodium chloride"),
]


@pytest.mark.parametrize(("one", "other"), ALIKE)
def test_what_could_be_taken_for_each_other(one: str, other: str) -> None:
    """Either way round."""
    assert sound_alike(heard_as(one), heard_as(other))
    assert sound_alike(heard_as(other), heard_as(one))


@pytest.mark.parametrize(("one", "other"), DIFFERENT)
def test_what_differs_by_ear(one: str, other: str) -> None:
    """Either way round."""
    assert not sound_alike(heard_as(one), heard_as(other))
    assert not sound_alike(heard_as(other), heard_as(one))


@pytest.mark.parametrize(
    ("written", "heard"),
    [
        ("15", "fifteen"),
        ("No, thanks.", "no thanks"),
        ("it\u2019s 5 mL", "it's five millilitres"),
        ("\u25b2", "\u25b2"),
        ("!", ""),
    ],
)
def test_a_choice_as_a_recogniser_writes_it(written: str, heard: str) -> None:
    """Figures and units in words, small letters, no stops."""
    assert heard_as(written) == heard


def test_the_reading_grade_follows_its_formula() -> None:
    """Worked by hand from the formula (Smith and Senter 1967, from memory): 4.71 x 20/5 + 0.5 x 5/1 - 21.43."""
    assert reading_grade("Read the label out aloud.") == pytest.approx(4.71 * 20 / 5 + 2.5 - 21.43)
    assert reading_grade("") == 0
    assert reading_grade("Stop. Look. Listen.") < 8
    assert reading_grade("Hygiene necessitates antimicrobial decontamination of interdigital surfaces.") > 20


def test_a_colon_ends_a_sentence_for_the_ear() -> None:
    """Stops, questions, colons and semicolons part what is said; a decimal point does not."""
    assert list(sentences("Look: is it 0.5 mL? Then stop; go on.")) == [
        "Look:",
        "is it 0.5 mL?",
        "Then stop;",
        "go on.",
    ]
