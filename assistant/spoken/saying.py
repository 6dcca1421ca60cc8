"""Values to words: numbers, digits, amounts and the read-back."""

from decimal import Decimal

from assistant.spoken.english.numbers import AND, HUNDRED, MILLION, ONES, POINT, TEENS, TENS, THOUSAND, plain
from assistant.spoken.english.read_back import i_have
from assistant.spoken.units import say_unit

_HIGHEST = Decimal(10) ** 9
"""Numbers from here on cannot be said; no clinical quantity is that high."""


def say_number(value: Decimal) -> str:
    """A number as a person says it: 125 is "one hundred and twenty five", 83.3 is "eighty three point three".

    Raises:
        ValueError: it is not finite, or a thousand million or more.
    """
    sign, whole, fraction = _split(value)
    said = _whole(int(whole))
    if fraction:
        said += f" {POINT} {_digits(fraction)}"
    return sign + said


def say_digits(value: Decimal) -> str:
    """A number digit by digit: 83.3 is "eight three point three", 0.5 is "zero point five".

    Raises:
        ValueError: it is not finite, or a thousand million or more.
    """
    sign, whole, fraction = _split(value)
    return sign + _digits(whole) + (f" {POINT} {_digits(fraction)}" if fraction else "")


def say_amount(value: Decimal, unit: str) -> str:
    """A number with its unit: "one hundred and twenty five millilitres per hour", "one minute".

    Raises:
        ValueError: the number cannot be said.
        QuantityError: the unit cannot be said.
    """
    return f"{say_number(value)} {say_unit(unit, plural=value != 1)}"


def sounds_like_another(value: Decimal, unit: str) -> bool:
    """Whether a number is read back digit by digit as well: teens, tens, decimals, three digits and more.

    Sources: NCC MERP, Recommendations to Reduce Medication Errors Associated with Verbal Medication Orders:
    say a number as a word and then digit by digit (from memory); Pennsylvania Patient Safety Authority
    advisory, June 2006, and ISMP newsletter of 24 January 2001: 15 heard as 50.

    Args:
        value: the number.
        unit: its unit; with percent it makes no difference.
    """
    if value != value.to_integral_value():
        return True
    number = abs(int(value))
    return number >= 100 or 13 <= number <= 19 or (number >= 20 and number % 10 == 0)


def read_back(value: Decimal, unit: str, *, by_digits: bool = False) -> str:
    """What the assistant heard, for a yes or a no: with the unit, and by digits where it sounds like another.

    "I have one hundred and twenty five, one two five, millilitres per hour. Is that right?"

    Args:
        value: the number.
        unit: its unit.
        by_digits: say the digits in any case.

    Raises:
        ValueError: the number cannot be said.
        QuantityError: the unit cannot be said.
    """
    number, digits = say_number(value), say_digits(value)
    return i_have(
        number,
        # "zero point five" is its own digits.
        digits if (by_digits or sounds_like_another(value, unit)) and digits != number else "",
        say_unit(unit, plural=value != 1),
    )


def _split(value: Decimal) -> tuple[str, str, str]:
    """Sign in words, whole digits, decimals."""
    if not value.is_finite() or abs(value) >= _HIGHEST:
        raise ValueError(f"{value} cannot be said")
    text = f"{plain(abs(value)):f}"
    whole, _, fraction = text.partition(".")
    return "minus " if value < 0 else "", whole, fraction


def _digits(text: str) -> str:
    return " ".join(ONES[int(digit)] for digit in text)


def _to_99(number: int) -> str:
    if number < 10:
        return ONES[number]
    if number < 20:
        return TEENS[number - 10]
    ten, one = divmod(number, 10)
    return TENS[ten - 2] + (f" {ONES[one]}" if one else "")


def _to_999(number: int) -> str:
    hundreds, rest = divmod(number, 100)
    if not hundreds:
        return _to_99(rest)
    said = f"{ONES[hundreds]} {HUNDRED}"
    return f"{said} {AND} {_to_99(rest)}" if rest else said


def _whole(number: int) -> str:
    if number < 1000:
        return _to_999(number)
    for size, name in ((1_000_000, MILLION), (1000, THOUSAND)):
        count, rest = divmod(number, size)
        if not count:
            continue
        said = f"{_to_999(count)} {name}"
        if not rest:
            return said
        return f"{said} {AND} {_to_99(rest)}" if rest < 100 else f"{said} {_whole(rest)}"
    raise AssertionError("a number below one thousand was said before")
