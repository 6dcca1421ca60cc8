"""Values to speech, and back."""

from decimal import Decimal

import num2words
import pytest
import text_to_num

from assistant.errors import QuantityError
from assistant.spoken import (
    interpret,
    read_back,
    say_amount,
    say_digits,
    say_number,
    say_unit,
    speech,
    wordings,
)
from assistant.spoken.english.units import UNITS
from assistant.spoken.expect import NumberExpected
from assistant.spoken.meaning import Answer, Kind

RATE = NumberExpected("mL/h")
WHOLE = [Decimal(n) for n in range(10_000)]
HUNDREDTHS = [Decimal(n) / 100 for n in range(10_001)]


def value_of(words: str, expect: NumberExpected = RATE) -> Answer:
    """The one number that words mean; anything else fails the test."""
    meaning = interpret(words, expect)
    assert isinstance(meaning, Answer) and meaning.kind is Kind.NUMBER, f"{words!r}: {meaning}"
    return meaning


@pytest.mark.parametrize("values", [WHOLE, HUNDREDTHS], ids=["0 to 9,999", "hundredths to 100"])
def test_a_number_that_is_said_is_understood_as_itself(values: list[Decimal]) -> None:
    """What the assistant says for a number means that number and no other."""
    wrong = [value for value in values if value_of(say_number(value)).value != value]
    assert wrong == []


@pytest.mark.parametrize("values", [WHOLE, HUNDREDTHS], ids=["0 to 9,999", "hundredths to 100"])
def test_digits_that_are_said_are_understood_as_digits(values: list[Decimal]) -> None:
    """A number said digit by digit is taken where nothing but digits is taken."""
    digits_only = NumberExpected("mL/h", digits_only=True)
    wrong = []
    for value in values:
        answer = value_of(say_digits(value), digits_only)
        if answer.value != value or not answer.digit_by_digit:
            wrong.append(value)
    assert wrong == []


def test_agrees_with_a_general_library_on_whole_numbers() -> None:
    """Source: num2words (PyPI), British English, with its hyphens and commas taken out."""
    for value in WHOLE[::3]:
        theirs = num2words.num2words(int(value), lang="en_GB").replace("-", " ").replace(",", "")
        assert say_number(value) == theirs


def test_agrees_with_a_general_library_on_decimals() -> None:
    """Source: num2words (PyPI), British English; every tenth of the hundredths, with the decimals one by one."""
    for value in HUNDREDTHS[::10]:
        theirs = num2words.num2words(value.normalize(), lang="en_GB").replace("-", " ").replace(",", "")
        assert say_number(value) == theirs.removesuffix(" point zero")


def test_a_general_library_reads_back_what_is_said() -> None:
    """Source: text2num (PyPI), American English, which knows no "and" at this place for itself."""
    for value in WHOLE[1::7]:
        assert text_to_num.text2num(say_number(value).replace(" and ", " "), "en") == value


@pytest.mark.parametrize(
    ("value", "said", "digits"),
    [
        ("0", "zero", "zero"),
        ("0.5", "zero point five", "zero point five"),
        ("0.50", "zero point five", "zero point five"),
        ("0.05", "zero point zero five", "zero point zero five"),
        ("5.0", "five", "five"),
        ("105", "one hundred and five", "one zero five"),
        ("125", "one hundred and twenty five", "one two five"),
        ("83.3", "eighty three point three", "eight three point three"),
        ("1000", "one thousand", "one zero zero zero"),
        ("1E+3", "one thousand", "one zero zero zero"),
        ("1005", "one thousand and five", "one zero zero five"),
        ("25000", "twenty five thousand", "two five zero zero zero"),
        ("1000001", "one million and one", "one zero zero zero zero zero one"),
        ("-5", "minus five", "minus five"),
    ],
)
def test_says(value: str, said: str, digits: str) -> None:
    """A leading zero is said, a trailing one is not, and no number is said with an exponent."""
    assert say_number(Decimal(value)) == said
    assert say_digits(Decimal(value)) == digits


@pytest.mark.parametrize("value", ["NaN", "Infinity", "-Infinity", "1E9", "1E+30"])
def test_refuses_to_say(value: str) -> None:
    """What no person could say is refused, not garbled."""
    with pytest.raises(ValueError, match="cannot be said"):
        say_number(Decimal(value))
    with pytest.raises(ValueError, match="cannot be said"):
        say_digits(Decimal(value))


@pytest.mark.parametrize(
    ("unit", "many", "one"),
    [
        ("mL/h", "millilitres per hour", "millilitre per hour"),
        ("ml/hr", "millilitres per hour", "millilitre per hour"),
        ("mL", "millilitres", "millilitre"),
        ("L", "litres", "litre"),
        ("min", "minutes", "minute"),
        ("h", "hours", "hour"),
        ("days", "days", "day"),
        ("mg", "milligrams", "milligram"),
        ("g", "grams", "gram"),
        ("mcg/kg/min", "micrograms per kilogram per minute", "microgram per kilogram per minute"),
        ("gtt/min", "drops per minute", "drop per minute"),
        ("gtt/mL", "drops per millilitre", "drop per millilitre"),
        ("units/h", "units per hour", "unit per hour"),
        ("mEq", "milliequivalents", "milliequivalent"),
        ("%", "percent", "percent"),
    ],
)
def test_says_units(unit: str, many: str, one: str) -> None:
    """A unit is said in full; one of it in the singular."""
    assert say_unit(unit) == many
    assert say_unit(unit, plural=False) == one
    assert say_amount(Decimal(1), unit) == f"one {one}"
    assert say_amount(Decimal("0.5"), unit) == f"zero point five {many}"


@pytest.mark.parametrize("above", [unit.name for unit in UNITS])
def test_an_amount_that_is_said_is_understood_as_itself(above: str) -> None:
    """Every unit that can be said, alone and above a line; what is spoken for the shown text is understood too."""
    below = ("mL", "L", "kg", "h", "min", "day", "dose", "kg/h", "kg/min", "kg/day")
    for unit in (above, *(f"{above}/{name}" for name in below if above not in name.split("/") and above != "days")):
        for number in ("1", "0.5", "83.3", "125", "1000"):
            value = Decimal(number)
            for words in (say_amount(value, unit), speech(f"{value} {unit}")):
                answer = value_of(words, NumberExpected(unit))
                assert (answer.value, answer.unit, answer.unit_said) == (value, unit, True), words


@pytest.mark.parametrize("unit", ["", "furlong", "mL/furlong", "mL/mL", "u", "IU", "5 mL", "x" * 1000, "\x00"])
def test_refuses_units(unit: str) -> None:
    """A unit that is not on the list is refused with a sentence; "u" and "IU" are easily misread."""
    with pytest.raises(QuantityError, match="is not a unit that can be said here"):
        say_unit(unit)


@pytest.mark.parametrize(
    ("value", "unit", "sentence"),
    [
        (
            "125",
            "mL/h",
            "I have one hundred and twenty five millilitres per hour. Is that right?",
        ),
        (
            "83.3",
            "mL/h",
            "I have eighty three point three millilitres per hour. Is that right?",
        ),
        ("15", "mg", "I have fifteen milligrams, one five milligrams. Is that right?"),
        ("50", "mg", "I have fifty milligrams, five zero milligrams. Is that right?"),
        ("75", "mL/h", "I have seventy five millilitres per hour. Is that right?"),
        ("8", "h", "I have eight hours. Is that right?"),
        ("1", "min", "I have one minute. Is that right?"),
        ("0.5", "h", "I have zero point five hours. Is that right?"),
        ("1000", "mL", "I have one thousand millilitres. Is that right?"),
        ("400", "mg", "I have four hundred milligrams. Is that right?"),
        ("577", "min", "I have five hundred and seventy seven minutes. Is that right?"),
        ("220", "mL", "I have two hundred and twenty millilitres. Is that right?"),
        ("115", "mL", "I have one hundred and fifteen millilitres, one one five millilitres. Is that right?"),
        ("11.6", "mL/h", "I have eleven point six millilitres per hour. Is that right?"),
        ("15.5", "mL", "I have fifteen point five millilitres, one five point five millilitres. Is that right?"),
        ("15000", "units", "I have fifteen thousand units, one five zero zero zero units. Is that right?"),
        ("1104", "min", "I have one thousand one hundred and four minutes. Is that right?"),
    ],
)
def test_reads_back(value: str, unit: str, sentence: str) -> None:
    """Fifteen as one five, fifty as five zero: NCC MERP recommendation on verbal orders (from memory).

    Each digit by itself with the unit behind them, "seven zero knots": ICAO Annex 10, volume II, 5.2.1.4.1.
    """
    assert read_back(Decimal(value), unit) == sentence


def test_the_read_back_of_two_numbers_is_never_the_same() -> None:
    """No two numbers of a range share a read-back."""
    said = {read_back(value, "mL/h") for value in WHOLE[:2000] + HUNDREDTHS[1:10_000:7]}
    assert len(said) == len({*WHOLE[:2000], *HUNDREDTHS[1:10_000:7]})


@pytest.mark.parametrize("value", ["13", "14", "19", "30", "90", "118", "1060", "50000", "13.5", "90.7"])
def test_a_teen_and_its_ten_are_said_both_ways(value: str) -> None:
    """15 and 50: Pennsylvania Patient Safety Authority, June 2006. Also before "thousand" and before the point."""
    number, unit = Decimal(value), "millilitres"
    assert read_back(number, "mL") == (
        f"I have {say_number(number)} {unit}, {say_digits(number)} {unit}. Is that right?"
    )


@pytest.mark.parametrize(
    "value", ["0", "1", "9", "10", "11", "12", "20", "21", "75", "99", "5.0", "0.5", "83.3", "12.5", "9999"]
)
def test_a_number_that_no_other_sounds_like_is_said_once(value: str) -> None:
    """Common practice, no source: what is plain is not said twice; twenty has no teen."""
    assert read_back(Decimal(value), "mL/min").count(say_unit("mL/min", plural=value != "1")) == 1


def test_every_wording_of_a_number_means_it() -> None:
    """However a number may be said, it is that number: thirds of those below 1,000, and some hundredths."""
    for value in WHOLE[:1000:3] + HUNDREDTHS[:1000:29]:
        for words in wordings(value):
            assert value_of(words).value == value


def test_wordings_are_the_natural_ones() -> None:
    """The ways to say 125, and no others."""
    assert wordings(Decimal(125)) == (
        "one hundred and twenty five",
        "one hundred twenty five",
        "a hundred and twenty five",
        "a hundred twenty five",
        "one twenty five",
        "one two five",
    )
