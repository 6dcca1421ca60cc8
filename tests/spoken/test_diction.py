"""How a sentence is said: pauses between digits, a slower pace for numbers."""

import pytest

from assistant.spoken import ENGLISH

DICTION = ENGLISH.diction


@pytest.mark.parametrize(
    ("text", "spaced"),
    [
        ("One two five millilitres an hour. Right?", "One, two, five millilitres an hour. Right?"),
        ("eighty three point three", "eighty three point three"),
        ("eight three point three", "eight, three, point three"),
        ("zero point zero five", "zero point zero five"),
        ("one one point nine seven six", "one, one, point nine, seven, six"),
        ("one hundred and twenty five", "one hundred and twenty five"),
        ("Was that one five, or five zero?", "Was that one, five, or five, zero?"),
        ("Order O H one zero one.", "Order O, H, one, zero, one."),
        ("cefazolin: C E F A Z O L I N.", "cefazolin: C, E, F, A, Z, O, L, I, N."),
        ("A one litre bag, and I go on.", "A one litre bag, and I go on."),
        ("Say it once more, one at a time.", "Say it once more, one at a time."),
        ("", ""),
    ],
)
def test_digits_and_letters_in_a_row_are_parted(text: str, spaced: str) -> None:
    """Commas stand between digits and letters that are said one by one, and nowhere else."""
    assert DICTION.spaced(text) == spaced


def test_a_stretch_with_a_number_is_slower() -> None:
    """Only the stretch between two pauses that holds a number is said more slowly; nothing gets lost."""
    text = "Hold. One hundred and five is not what the order needs. Look again, at one thing after the other."
    stretches = DICTION.stretches(text)
    assert [stretch.is_number for stretch in stretches] == [False, True, False]
    assert " ".join(stretch.words for stretch in stretches) == text


@pytest.mark.parametrize(
    ("text", "parts"),
    [
        ("I have five five point six grams.", ["I have", "five,", "five,", "point six grams."]),
        ("Was that one five, or five zero?", ["Was that", "one,", "five,", "or five,", "zero?"]),
        ("Twelve point five, one two point two five.", ["Twelve point five,", "one,", "two,", "point two,", "five."]),
        ("Zero point three three.", ["Zero point three three."]),
        ("Six six six.", ["Six,", "six,", "six."]),
        ("One two one.", ["One,", "two,", "one."]),
    ],
)
def test_digits_of_a_row_are_breaths_of_their_own(text: str, parts: list[str]) -> None:
    """Digits that are said one by one are parts of their own: in one breath, two alike are heard as one."""
    assert [stretch.words for stretch in DICTION.stretches(text)] == parts


@pytest.mark.parametrize(
    ("text", "again"),
    [
        ("One one point eight.", [False, True, False]),
        ("One one one zero.", [False, True, False, False]),
        ("Two zero zero millilitres.", [False, False, True]),
        ("Five five.", [False, True]),
        ("One zero one.", [False, False, False]),
    ],
)
def test_a_digit_said_just_before_is_marked(text: str, again: list[bool]) -> None:
    """The second of two digits alike is marked, so that it sounds otherwise; of three, the third is as the first."""
    assert [stretch.is_again for stretch in DICTION.stretches(text)] == again


@pytest.mark.parametrize(
    ("text", "parts"),
    [
        (
            "I have twenty five drops per minute. Is that right?",
            ["I have", "twenty five drops per minute.", "Is that right?"],
        ),
        ("I have ten drops.", ["I have ten drops."]),
        (
            "Primary: lactated Ringer's solution, intravenous, continuous, over twelve hours.",
            ["Primary: lactated Ringer's solution,", "intravenous, continuous,", "over twelve hours."],
        ),
        (
            "Patient, fluid, volume, rate or duration, route, frequency, date and prescriber.",
            ["Patient, fluid, volume, rate or duration,", "route, frequency, date and prescriber."],
        ),
        (
            "Agrees. Close the roller clamp, then the slide clamp, and look at the chamber.",
            ["Agrees.", "Close the roller clamp, then the slide clamp, and look at the chamber."],
        ),
    ],
)
def test_the_first_breath_is_short(text: str, parts: list[str]) -> None:
    """A long beginning is cut where its number begins or at its first late mark; what follows is not."""
    assert [stretch.words for stretch in DICTION.stretches(text)] == parts


def test_a_digit_with_a_hiss_has_sounds_of_its_own_where_it_stands_alone() -> None:
    """Only a breath that is nothing but that digit, whatever mark ends it."""
    found = [bool(DICTION.hissed(stretch)) for stretch in DICTION.stretches("Six one six, point six. Sixty six. Six")]
    words = [stretch.words for stretch in DICTION.stretches("Six one six, point six. Sixty six. Six")]
    assert dict(zip(words, found, strict=True)) == {
        "Six,": True,
        "one,": False,
        "six, point six.": False,
        "Sixty six.": False,
        "Six": True,
    }
