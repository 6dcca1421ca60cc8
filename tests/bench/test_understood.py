"""The measure of what is understood: right is right however it is spelled, and wrong stays wrong."""

from decimal import Decimal

import pytest

from tests.bench.understood import lost, nearest, number_is_right, plain


@pytest.mark.parametrize(
    ("value", "unit", "heard", "is_right"),
    [
        ("125", "mL/h", "I have 1-2-5 milliliters per hour. Is that right?", True),
        ("15", "mg", "I have 15 milligrams, 1-5 milligrams. Is that right?", True),
        ("15", "mg", "I have 15 milligrams, 1-5. Is that right?", False),
        ("15", "mg", "I have 15 milligrams, 1-5 micrograms. Is that right?", False),
        ("90", "min", "I have 90 minutes, 9.0 minutes. Is that right?", False),
        ("83.3", "mL/h", "I have 83.3 milliliters an hour, 8, 3.3 milliliters an hour. Is that right?", True),
        ("83.3", "mL/h", "I have 83.3 milliliters an hour. Is that right?", True),
        ("15.6", "mL", "I have 15.6 milliliters, 1.5.6 milliliters. Is that right?", True),
        ("15.6", "mL", "I have 15.6 milliliters, 5.6 milliliters. Is that right?", False),
        ("894", "mL/h", "I have 8-9 for milliliters per hour. Is that right?", True),
        ("1000", "mL", "I have 1,000 milliliters. Is that right?", True),
        ("1015", "min", "I have 1,015 minutes, 1-0-1-5 minutes. Is that right?", True),
        ("1104", "min", "I have one thousand, one hundred and four minutes is that right.", True),
        ("1104", "min", "I have one thousand, one hundred and fourteen minutes is that right.", False),
        ("1000", "min", "I have one thousand, one hundred minutes. Is that right?", False),
        ("28.08", "mg/h", "I have twenty-eight point zero, eight milligrams per hour.", True),
        ("28.08", "mg/h", "I have twenty-eight point zero milligrams, eight per hour. Is that right?", False),
        ("28.08", "mg/h", "I have 28.0, 8 milligrams per hour. Is that right?", False),
        ("71.4", "mL/h", "I have seventy-one point for milliliters per hour. Is that right?", True),
        ("71.4", "mL/h", "I have seventy-one for milliliters per hour. Is that right?", False),
        ("0.5", "h", "I have 0.5 hours. Is that right?", True),
        ("950", "mL", "I have 150 milliliters. Is that right?", False),
        ("15", "mg", "I have 50 milligrams, 5-0 milligrams. Is that right?", False),
        ("15", "mg", "I have 15 milligrams, 5-0 milligrams. Is that right?", False),
        ("11.3", "mL/h", "I have 1.3 milliliters per hour. Is that right?", False),
        ("5", "mg", "I have 5 micrograms. Is that right?", False),
        ("5", "mg", "I have milligrams. Is that right?", False),
    ],
)
def test_a_number_is_right_with_all_its_digits_and_its_unit(value: str, unit: str, heard: str, is_right: bool) -> None:
    """Every number that was written down has to be the one that was said, and its unit has to stand with it."""
    assert number_is_right(Decimal(value), unit, heard) is is_right


@pytest.mark.parametrize(
    ("said", "heard", "count"),
    [
        ("Hold one hundred and five millilitres.", "Hold 105 milliliters.", 0),
        ("Look at the site; note it in the read-back.", "Look at the sight, note it in the readback.", 0),
        ("Two to three minutes.", "2-3 minutes.", 0),
        ("Ask for the weight, for you write it down.", "ask four the wait four u right it down", 0),
        ("Close the roller clamp.", "Close the roller clamp and go.", 2),
        ("Close the roller clamp.", "Open the roller clamp.", 1),
        ("Wait fifteen seconds.", "Wait 50 seconds.", 1),
    ],
)
def test_words_are_lost_where_another_is_written(said: str, heard: str, count: int) -> None:
    """Spelling and compounds cost nothing, another word or number does."""
    assert lost(said, heard) == count


def test_a_name_is_told_from_the_others_by_its_sound() -> None:
    """Misspelled, a drug is still itself; another one's sound is another one."""
    assert nearest("The label says, Seth Triaxone.") == "ceftriaxone"
    assert nearest("The label says: dopamine.") == "dopamine"
    assert plain("0.9 % sodium chloride") == ["0.9", "percent", "sodium", "chloride"]
