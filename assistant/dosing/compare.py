"""The cross-check: what was stated against what follows from the order; slips get a name."""

from collections.abc import Iterator, Mapping
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
    PLACE = "another place"
    DOUBLE = "double or half"
    POUNDS = "pounds and kilograms"
    DROP_FACTOR = "drop factor"
    WEIGHT = "weight left out"
    DIGIT = "lost or doubled digit"
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
            60 or 1/60, 2 or 1/2); None for the other kinds, and where the point was moved and digits were cut.
        exact: the stated number is exactly that multiple, not only as far as its digits show.
        other: name of the order's other number that was stated in place of the expected one; of a wrong drop factor
            the set with which the stated number would be right; of a digit whether it is "lost" or "doubled".
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


def compare(
    stated: Amount, expected: Amount, others: Mapping[str, Amount] | None = None, exact: Fraction | None = None
) -> Verdict:
    """Compare a stated amount with the expected one: exact after conversion of units.

    Args:
        stated: what the learner said.
        expected: what follows from the order, rounded by the rule that the order's key states.
        others: the order's other numbers by name, to recognise two that were exchanged.
        exact: the unrounded number behind `expected`, in its unit, to recognise what was rounded otherwise.

    Returns:
        `Agrees`, `Disagrees` with the slip named, or `CannotCheck` where the units measure different things.
    """
    if not units.same_dimension(stated.unit, expected.unit):
        return CannotCheck(stated, expected)
    said = stated.in_unit(expected.unit)
    if said == expected.ratio:
        return Agrees()
    first, *further = [*_matches(stated, said, expected, others or {}, exact), Match(Slip.OTHER)]
    also = dict.fromkeys(match.slip for match in further if match.slip not in (first.slip, Slip.OTHER))
    return Disagrees(stated, expected, first, tuple(also))


def _matches(
    stated: Amount, said: Fraction, expected: Amount, others: Mapping[str, Amount], exact: Fraction | None
) -> list[Match]:
    """Every named slip that fits, likeliest first."""
    right = expected.ratio
    unrounded = right if exact is None else exact
    found: list[Match] = []
    for name, other in others.items():
        if other.value == stated.value and (stated.unit == expected.unit or other.unit == stated.unit):
            found.append(Match(Slip.SWAPPED, other=name))
            break
    if said > 0 and right > 0:
        power = _power_of_ten(said / right)
        if power is not None:
            found.append(Match(_kind_of(Fraction(10) ** power), factor=Fraction(10) ** power))
        elif (about := _power_as_shown(said, right, unrounded)) is not None:
            # "8.3" has the digits of 83.3; "13" has none of 125's, and is about a tenth of it.
            moved = about not in (10, Fraction(1, 10)) or unrounded == right
            has_its_digits = moved and _digits(right).startswith(_digits(said))
            found.append(
                Match(Slip.DECIMAL_POINT) if has_its_digits else Match(_kind_of(about), factor=about, exact=False)
            )
        if unrounded != right and _is_rounded_otherwise(said, unrounded):
            found.append(Match(Slip.PLACE))
    if stated.unit == expected.unit:
        if are_twins(stated.value, expected.value):
            found.append(Match(Slip.TEEN_TY))
        if _transposed(f"{stated.value:f}", f"{expected.value:f}"):
            found.append(Match(Slip.TRANSPOSED))
    if said > 0 and right > 0 and any(dimension == "time" for dimension, _ in units.unit(expected.unit).signature):
        for ratio in (Fraction(60), Fraction(1, 60)):
            if said == right * ratio or _equal_as_shown(said, right * ratio, unrounded * ratio):
                found.append(Match(Slip.TIME_UNIT, factor=ratio, exact=said == right * ratio))
    if said > 0 and right > 0:
        for ratio in (Fraction(2), Fraction(1, 2)):
            if said == right * ratio or _equal_as_shown(said, unrounded * ratio):
                found.append(Match(Slip.DOUBLE, factor=ratio, exact=said == right * ratio))
        weighed = expected.unit == "kg" or "patient.weight" in others
        if weighed and _equal_as_shown(said, *(value * factor for value in (right, unrounded) for factor in _POUNDS)):
            found.append(Match(Slip.POUNDS))
        found += _by_inputs(said, unrounded, expected, others)
    if stated.unit == expected.unit and said > 0 and (how := _digit_amiss(stated, expected, exact is not None)):
        found.append(Match(Slip.DIGIT, other=how))
    return found


_SETS = (10, 15, 20, 60)
"""Drops per mL of the usual sets: Open RN, Nursing Skills, section 5.14."""


def _by_inputs(said: Fraction, unrounded: Fraction, expected: Amount, others: Mapping[str, Amount]) -> Iterator[Match]:
    """What follows where another set, or no weight, was reckoned with."""
    factor = next((other.ratio for other in others.values() if other.unit == "gtt/mL"), None)
    if factor and expected.unit in ("gtt/min", "gtt"):
        for size in _SETS:
            if size != factor and _equal_as_shown(said, unrounded * size / factor):
                yield Match(Slip.DROP_FACTOR, other=f"{size} gtt/mL")
    weight = others.get("patient.weight")
    if weight is not None and any(other.unit.count("/kg") for other in others.values()):
        kilos = weight.in_unit("kg")
        if kilos > 1 and _equal_as_shown(said, unrounded / kilos):
            yield Match(Slip.WEIGHT)


def _digit_amiss(stated: Amount, expected: Amount, exact_known: bool) -> str:
    """Whether a digit of three or more is lost, or one is doubled; "" for neither."""
    one, other = f"{stated.value:f}", f"{expected.value:f}"
    if len(one) + 1 == len(other) and sum(map(str.isdigit, other)) > 2 and one in _without_one_digit(other):
        return "lost"
    # A further decimal may be the next one of the exact number, and a further zero is tenfold.
    places = range(len(other) - ("." in other and not exact_known))
    doubled = len(one) == len(other) + 1 and len(other) > 1
    if doubled and any(one == other[:i] + other[i] + other[i:] for i in places if other[i] not in ".0"):
        return "doubled"
    return ""


def _without_one_digit(text: str) -> set[str]:
    return {text[:i] + text[i + 1 :] for i in range(len(text)) if text[i].isdigit()}


_POUND = Fraction(45_359_237, 100_000_000)
_POUNDS = (1 / _POUND, Fraction(22, 10), _POUND, Fraction(10, 22))
"""Pounds in a kilogram and the reverse: exact (NIST Special Publication 811, Appendix B), and 2.2 as many have it."""


def _is_rounded_otherwise(said: Fraction, exact: Fraction) -> bool:
    """Whether it is the exact number to another place, rounded or cut, and no more than 5 % away from it."""
    places = _decimals(said)
    if places is None or 20 * abs(said - exact) > exact:
        return False
    return _equal_as_shown(said, exact) or said * 10**places == exact * 10**places // 1


def _kind_of(factor: Fraction) -> Slip:
    """What a power of ten is called."""
    greater = max(factor, 1 / factor)
    return {10: Slip.TENFOLD, 100: Slip.TENFOLD, 1000: Slip.THOUSANDFOLD}.get(int(greater), Slip.DECIMAL_POINT)


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


def _power_as_shown(said: Fraction, right: Fraction, unrounded: Fraction) -> Fraction | None:
    """The power of ten that it is of the right number, or of the unrounded one, as far as its digits show."""
    return next((power for power in _POWERS if _equal_as_shown(said, right * power, unrounded * power)), None)


def _digits(value: Fraction) -> str:
    places = _decimals(value)
    return str(int(value * 10 ** (4 if places is None else places))).strip("0")


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
