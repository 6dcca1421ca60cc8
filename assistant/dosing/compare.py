"""The cross-check: what was stated against what follows from the order; slips get a name."""

from collections.abc import Mapping
from dataclasses import dataclass
from decimal import Decimal
from enum import StrEnum
from fractions import Fraction

from assistant.dosing import units
from assistant.dosing.amount import Amount, show, show_number


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
class Disagrees:
    """The stated amount is not the expected one.

    Attributes:
        slip: the likeliest kind of error.
        sentence: with both values; for practice.
        plain: without the right value or any way to it; for a check-off.
        also: further kinds that fit as well.
    """

    slip: Slip
    sentence: str
    plain: str
    also: tuple[Slip, ...] = ()


@dataclass(frozen=True)
class CannotCheck:
    """There is nothing to compare with, and why."""

    reason: str


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
        return CannotCheck(f"{stated.unit} and {expected.unit} measure different things.")
    said = stated.in_unit(expected.unit)
    right = expected.ratio
    if said == right:
        return Agrees()
    plain = f"{show(stated)} is not what your order needs."
    found = _slips(stated, said, expected, others or {})
    if not found:
        return Disagrees(Slip.OTHER, f"{show(stated)} is not the {show(expected)} that follows from the order.", plain)
    slip, sentence = found[0]
    return Disagrees(slip, sentence, plain, tuple(dict.fromkeys(s for s, _ in found[1:] if s is not slip)))


def _slips(stated: Amount, said: Fraction, expected: Amount, others: Mapping[str, Amount]) -> list[tuple[Slip, str]]:
    """Every named slip that fits, likeliest first, with its sentence."""
    right = expected.ratio
    found: list[tuple[Slip, str]] = []
    follows = f"the {_bare(stated, expected)} that follows from the order"
    heard = _heard(stated, expected)
    for name, other in others.items():
        if other.value == stated.value and (stated.unit == expected.unit or other.unit == stated.unit):
            found.append((Slip.SWAPPED, f"{heard} is {_named(name)}, not {follows}."))
            break
    if said > 0 and right > 0:
        power = _power_of_ten(said / right)
        if power is not None:
            size = f"{10 ** abs(power):,}"
            times, share = _TIMES.get(power, f"{size} times"), _SHARES.get(-power, f"one part in {size}")
            link = f"is {times} {follows}" if power > 0 else f"is {share} of {follows}"
            kind = {1: Slip.TENFOLD, 2: Slip.TENFOLD, 3: Slip.THOUSANDFOLD}.get(abs(power), Slip.DECIMAL_POINT)
            found.append((kind, f"{heard} {link}."))
        elif _cut_after_moving_the_point(said, right):
            found.append((Slip.DECIMAL_POINT, f"{heard} has the digits of {follows}, with the decimal point moved."))
    if stated.unit == expected.unit:
        pair = (f"{stated.value:f}", f"{expected.value:f}")
        if _teen_and_ty(stated.value, expected.value):
            found.append((Slip.TEEN_TY, f"{heard} sounds like {follows}."))
        if _transposed(*pair):
            found.append((Slip.TRANSPOSED, f"{heard} has two digits exchanged of {follows}."))
    if said > 0 and right > 0 and any(dimension == "time" for dimension, _ in units.unit(expected.unit).signature):
        for ratio, share in ((Fraction(60), "sixty times"), (Fraction(1, 60), "a sixtieth of")):
            if _equal_as_shown(said, right * ratio):
                about = "" if said == right * ratio else "about "
                found.append((Slip.TIME_UNIT, f"{heard} is {about}{share} {follows}: hours and minutes are mixed up."))
    return found


def _named(key: str) -> str:
    """A number of the order in words: ``primary.bag_volume`` is "the primary's bag volume"."""
    line, _, name = key.rpartition(".")
    return f"the {line or 'order'}'s {name.replace('_', ' ').replace('vtbi', 'VTBI')}"


_TIMES = {1: "ten times", 2: "one hundred times", 3: "one thousand times"}
_SHARES = {1: "a tenth", 2: "a hundredth", 3: "a thousandth"}


def _heard(stated: Amount, expected: Amount) -> str:
    return show_number(stated.value) if stated.unit == expected.unit else show(stated)


def _bare(stated: Amount, expected: Amount) -> str:
    return show_number(expected.value) if stated.unit == expected.unit else show(expected)


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


def _teen_and_ty(one: Decimal, other: Decimal) -> bool:
    """Whether the words differ only in a teen against a ten: 15 and 50, 115 and 150, 15,000 and 50,000."""
    if one % 1 != other % 1 or one < 0 or other < 0:
        return False
    first, second = int(one), int(other)
    differing: list[tuple[int, int]] = []
    while first or second:
        first, a = divmod(first, 1000)
        second, b = divmod(second, 1000)
        if a != b:
            differing.append((a, b))
    if len(differing) != 1:
        return False
    (low, high) = sorted(differing[0])
    ones = low % 100 - 10
    return low // 100 == high // 100 and 3 <= ones <= 9 and high % 100 == 10 * ones


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
