"""Values to words: numbers, digits, amounts and the read-back."""

from collections.abc import Callable
from decimal import Decimal

from assistant.dosing.amount import normal
from assistant.dosing.twins import TWINS
from assistant.spoken.tables import Numbers
from assistant.spoken.units import UnitWords

_HIGHEST = Decimal(10) ** 9
"""Numbers from here on cannot be said; no clinical quantity is that high."""
_TEENS_AND_TENS = frozenset({*TWINS.keys(), *TWINS.values()})
"""Twenty is none: it has no teen that sounds like it."""


class Saying:
    """What a language says for values.

    Args:
        numbers: how its numbers are said.
        units: how its units are said.
        read_back: the sentence for a number, its digits (empty where they are not said) and its unit.
    """

    def __init__(self, numbers: Numbers, units: UnitWords, read_back: Callable[[str, str, str], str]) -> None:
        self._numbers = numbers
        self._say_unit = units.say_unit
        self._read_back = read_back

    def say_number(self, value: Decimal) -> str:
        """A number as a person says it: 125 is "one hundred and twenty five", 83.3 is "eighty three point three".

        Raises:
            ValueError: it is not finite, or a thousand million or more.
        """
        whole, fraction = _split(value)
        return self._joined(value, self._numbers.cardinal(int(whole)), fraction)

    def say_digits(self, value: Decimal) -> str:
        """A number digit by digit: 83.3 is "eight three point three", 0.5 is "zero point five".

        Raises:
            ValueError: it is not finite, or a thousand million or more.
        """
        whole, fraction = _split(value)
        return self._joined(value, self.spelled(whole), fraction)

    def say_amount(self, value: Decimal, unit: str) -> str:
        """A number with its unit: "one hundred and twenty five millilitres per hour", "one minute".

        Raises:
            ValueError: the number cannot be said.
            QuantityError: the unit cannot be said.
        """
        return f"{self.say_number(value)} {self._say_unit(unit, plural=value != 1)}"

    def read_back(self, value: Decimal, unit: str) -> str:
        """What the assistant heard, for a yes or a no: with the unit, and by digits where it sounds like another.

        A teen and its ten are said both ways: "I have fifteen millilitres per hour, one five millilitres per hour. Is
        that right?" Anything else is said once, in words, twenty too, which has no teen: words are understood better
        than a row of digits, in which two alike are heard as one, nobody counts zeros, and a point is taken for the
        beginning of another number.

        Sources: NCC MERP, Recommendations to Reduce Medication Errors Associated with Verbal Medication Orders: say a
        number as a word and then digit by digit (from memory); Pennsylvania Patient Safety Authority advisory, June
        2006, and ISMP newsletter of 24 January 2001: 15 heard as 50. ICAO Annex 10, volume II, 5.2.1.4.1: each digit by
        itself with the unit behind it ("seven zero knots").

        Args:
            value: the number.
            unit: its unit.

        Raises:
            ValueError: the number cannot be said.
            QuantityError: the unit cannot be said.
        """
        digits = self.say_digits(value) if _ends_in_teen_or_ten(value) else ""
        return self._read_back(self.say_number(value), digits, self._say_unit(unit, plural=value != 1))

    def spelled(self, figures: str) -> str:
        """Figures one by one; a point among them is said."""
        numbers = self._numbers
        return " ".join(numbers.digits[int(c)] if c.isdecimal() else numbers.point for c in figures)

    def _joined(self, value: Decimal, whole: str, fraction: str) -> str:
        sign = f"{self._numbers.minus} " if value < 0 else ""
        return f"{sign}{whole}" + (f" {self._numbers.point} {self.spelled(fraction)}" if fraction else "")


def _ends_in_teen_or_ten(value: Decimal) -> bool:
    """Whether a teen, or its ten, ends what is said before the point, or before "thousand"."""
    number = abs(int(value))
    return not {number % 100, number // 1_000 % 100}.isdisjoint(_TEENS_AND_TENS)


def _split(value: Decimal) -> tuple[str, str]:
    """Whole digits and decimals, without the sign."""
    if not value.is_finite() or abs(value) >= _HIGHEST:
        raise ValueError(f"{value} cannot be said")
    whole, _, fraction = f"{normal(abs(value)):f}".partition(".")
    return whole, fraction
