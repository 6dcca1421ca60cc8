"""The cross-check: what was stated against what follows from the order; slips get a name."""

from collections.abc import Mapping
from dataclasses import dataclass
from enum import StrEnum
from fractions import Fraction

from assistant.dosing import units
from assistant.dosing.amount import Amount
from assistant.dosing.twins import are_twins


class Slip(StrEnum):
    """What kind of error a wrong number looks like."""

    SWAPPED = "swapped"
    TENFOLD = "tenfold"
    THOUSANDFOLD = "thousandfold"
    DECIMAL_POINT = "decimal point"
    TEEN_TY = "teen-ty"
    TRANSPOSED = "transposed digits"
    TIME_UNIT = "time unit"
    OTHER = "other"


@dataclass(frozen=True)
class Agrees:
    """The stated amount is the expected one."""


@dataclass(frozen=True)
class Match:
    """One known kind of error that a wrong number fits, with what a sentence about it needs.

    Attributes:
        slip: the kind.
        factor: the stated number as a multiple of the expected one, where the kind is a factor (a power of ten,
            60 or 1/60); None for the other kinds, and where the point was moved and digits were cut.
        exact: the stated number is exactly that multiple, not only as far as its digits show.
        other: name of the order's other number that was stated in place of the expected one.
    """

    slip: Slip
    factor: Fraction | None = None
    exact: bool = True
    other: str = ""


@dataclass(frozen=True)
class Disagrees:
    """The stated amount is not the expected one. How to say it is the language's business.

    Attributes:
        stated, expected: both amounts; `expected` is None where a number lies outside its range.
        match: the likeliest kind of error.
        also: further kinds that fit as well.
    """

    stated: Amount
    expected: Amount | None
    match: Match
    also: tuple[Slip, ...] = ()

    @property
    def slip(self) -> Slip:
        """The likeliest kind of error."""
        return self.match.slip


@dataclass(frozen=True)
class CannotCheck:
    """Two amounts that measure different things."""

    stated: Amount
    expected: Amount


Verdict = Agrees | Disagrees | CannotCheck


def compare(stated: Amount, expected: Amount, others: Mapping[str, Amount] | None = None) -> Verdict:
    """Compare a stated amount with the expected one: exact after conversion of units.

    Args:
        stated: what the learner said.
        expected: what follows from the order, rounded by the rule that the order's key states.
        others: the order's other numbers by name, to recognise two that were exchanged.

    Returns:
        `Agrees`, `Disagrees` with the slip named, or `CannotCheck` where the units measure different things.
    """
    if not units.same_dimension(stated.unit, expected.unit):
        return CannotCheck(stated, expected)
    said = stated.in_unit(expected.unit)
    if said == expected.ratio:
        return Agrees()
    first, *further = [*_matches(stated, said, expected, others or {}), Match(Slip.OTHER)]
    also = dict.fromkeys(match.slip for match in further if match.slip not in (first.slip, Slip.OTHER))
    return Disagrees(stated, expected, first, tuple(also))


def _matches(stated: Amount, said: Fraction, expected: Amount, others: Mapping[str, Amount]) -> list[Match]:
    """Every named slip that fits, likeliest first."""
    right = expected.ratio
    found: list[Match] = []
    for name, other in others.items():
        if other.value == stated.value and (stated.unit == expected.unit or other.unit == stated.unit):
            found.append(Match(Slip.SWAPPED, other=name))
            break
    if said > 0 and right > 0:
        power = _power_of_ten(said / right)
        if power is not None:
            kind = {1: Slip.TENFOLD, 2: Slip.TENFOLD, 3: Slip.THOUSANDFOLD}.get(abs(power), Slip.DECIMAL_POINT)
            found.append(Match(kind, factor=Fraction(10) ** power))
        elif _cut_after_moving_the_point(said, right):
            found.append(Match(Slip.DECIMAL_POINT))
    if stated.unit == expected.unit:
        if are_twins(stated.value, expected.value):
            found.append(Match(Slip.TEEN_TY))
        if _transposed(f"{stated.value:f}", f"{expected.value:f}"):
            found.append(Match(Slip.TRANSPOSED))
    if said > 0 and right > 0 and any(dimension == "time" for dimension, _ in units.unit(expected.unit).signature):
        for ratio in (Fraction(60), Fraction(1, 60)):
            if _equal_as_shown(said, right * ratio):
                found.append(Match(Slip.TIME_UNIT, factor=ratio, exact=said == right * ratio))
    return found


def _power_of_ten(ratio: Fraction) -> int | None:
    """The whole power of ten that a ratio is, if it is one; zero does not count."""
    if 1 not in (ratio.numerator, ratio.denominator):
        return None
    digits = str(ratio.numerator if ratio.denominator == 1 else ratio.denominator)
    if digits.rstrip("0") != "1" or len(digits) == 1:
        return None
    return len(digits) - 1 if ratio.denominator == 1 else 1 - len(digits)


def _decimals(value: Fraction) -> int | None:
    """How many decimals a number has, up to four."""
    return next((places for places in range(5) if (value * 10**places).denominator == 1), None)


def _equal_as_shown(said: Fraction, *others: Fraction) -> bool:
    """Whether one of the others, rounded half up to the decimals of `said`, is `said`.

    A cut number needs two digits at least: 8 is not taken for a cut 8.33.
    """
    places = _decimals(said)
    if places is None:
        return False
    shown = said * 10**places
    for other in others:
        scaled = other * 10**places
        if (2 * scaled.numerator + scaled.denominator) // (2 * scaled.denominator) == shown and (
            said == other or shown >= 10
        ):
            return True
    return False


_POWERS = tuple(Fraction(10) ** power for power in (-3, -2, -1, 1, 2, 3))


def _cut_after_moving_the_point(said: Fraction, right: Fraction) -> bool:
    return _equal_as_shown(said, *(right * power for power in _POWERS))


def _transposed(one: str, other: str) -> bool:
    """Whether two neighbouring digits were exchanged, the decimal point left where it was."""
    if len(one) != len(other):
        return False
    differing = [i for i, (a, b) in enumerate(zip(one, other, strict=True)) if a != b]
    if len(differing) != 2:
        return False
    i, j = differing
    adjacent = j == i + 1 or (j == i + 2 and one[i + 1] == ".")
    return adjacent and one[i] == other[j] and one[j] == other[i]
