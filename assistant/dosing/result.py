"""What a formula gives: the value with its unit, and how it came about."""

from collections.abc import Mapping
from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction

from assistant.dosing import units
from assistant.dosing.amount import Amount, check_size, show, show_number, shown
from assistant.dosing.rounding import WIDE, Rounding, decimal
from assistant.dosing.usual import beyond_usual
from assistant.errors import QuantityError


@dataclass(frozen=True)
class Result:
    """One answer of one formula.

    Attributes:
        formula: the formula's name.
        inputs: what went in, by name, as it came.
        exact: the unrounded value in `unit`, as an exact ratio.
        value: the value after rounding.
        unit: canonical unit.
        rounding: the rule that made `value` from `exact`.
        working: lines that can be shown, and spoken.
        cautions: what the reader must know before using the value; often empty.
    """

    formula: str
    inputs: Mapping[str, "Amount | Result | str"]
    exact: Fraction
    value: Decimal
    unit: str
    rounding: Rounding
    working: tuple[str, ...]
    cautions: tuple[str, ...] = ()

    @property
    def amount(self) -> Amount:
        """The rounded value with its unit."""
        return Amount(self.value, self.unit)

    @property
    def exact_decimal(self) -> Decimal:
        """The unrounded value in decimals: exact where they end, else 28 digits."""
        return decimal(self.exact)

    def in_unit(self, wanted: str) -> Fraction:
        """The unrounded value in another unit, exact.

        Raises:
            QuantityError: the unit measures something else.
        """
        return units.convert(self.exact, self.unit, units.unit(wanted).name)

    def __str__(self) -> str:
        return show(self.amount)


Measure = Amount | Result
"""What a formula takes: an amount, or an earlier result, whose unrounded value is then used."""


def take(name: str, given: Measure, kind: str, *, zero: bool = False) -> Fraction:
    """An input in the base units of its kind (g, mL, h, gtt, units, mmol, mEq, cm), checked.

    Args:
        name: the input's name, for the error.
        given: an amount or an earlier result.
        kind: a key of `units.QUANTITIES`.
        zero: zero is allowed.

    Raises:
        QuantityError: another kind of quantity, or not above zero.
    """
    found = units.unit(given.unit)
    if found.signature not in units.QUANTITIES[kind]:
        raise QuantityError(
            f"{name} must come in a unit such as {EXAMPLES[kind]}, but {tell(given)} came.",
            "Look at the unit, and whether another number was meant.",
        )
    value = Fraction(given.exact if isinstance(given, Result) else given.value)
    if value < 0 or (value == 0 and not zero):
        limit = "zero or above" if zero else "above zero"
        raise QuantityError(f"{name} must be {limit}, but {tell(given)} came.", f"Look at {name} again.")
    return value * found.factor


EXAMPLES = {
    "mass": "kg",
    "dose": "mg or units",
    "volume": "mL",
    "duration": "min or h",
    "length": "cm",
    "area": "m\u00b2",
    "drops": "gtt",
    "percentage": "%",
    "household measure": "tsp",
    "rate": "mL/h",
    "drop rate": "gtt/min",
    "drop factor": "gtt/mL",
    "concentration": "mg/mL",
    "dose rate": "mg/h or units/h",
    "dose per weight": "mg/kg",
    "dose rate per weight": "mcg/kg/min",
    "dose per area": "mg/m\u00b2",
    "dose rate per area": "mg/m\u00b2/h",
    "dose per dose": "mg/dose",
    "volume per weight": "mL/kg",
    "rate per weight": "mL/kg/h",
    "volume per dose": "mL/h per mcg/min",
    "household factor": "mL/tsp",
    "substance factor": "mg/mEq",
    "doses": "doses",
}


def tell(given: Measure) -> str:
    """A measure as text: an unrounded result with at most four decimals, marked where digits are cut."""
    return show(given) if isinstance(given, Amount) else tell_exact(given.exact, given.unit)


def tell_exact(exact: Fraction, unit: str) -> str:
    """An exact ratio as text: "about" before it where its decimals do not end within four places."""
    value, whole = _cut(exact)
    return ("" if whole else "about ") + shown(value, unit)


def figure(exact: Fraction) -> str:
    """An exact ratio as a bare number, for use inside a line of working."""
    value, whole = _cut(exact)
    return ("" if whole else "about ") + show_number(value)


def _short(exact: Fraction) -> bool:
    return _cut(exact)[1]


_MOST_DIGITS = 8
"""Digits of a number that is not rounded by any rule and still shown whole; the pound in kg has as many."""


def _too_long(exact: Fraction) -> bool:
    """Whether the decimals have no end, or more digits than mean something."""
    if _short(exact):
        return False
    value = decimal(exact)
    return Fraction(value) != exact or len(value.normalize(WIDE).as_tuple().digits) > _MOST_DIGITS


def _cut(exact: Fraction) -> tuple[Decimal, bool]:
    """Four decimals, half up; more for small numbers, fewer for large ones; whether nothing was cut."""
    top, bottom = exact.numerator, exact.denominator
    places = 4
    while top and places < 12 and abs(top) * 10**places < 1000 * bottom:
        places += 1
    if abs(top) >= bottom:
        places = max(0, min(places, _MOST_DIGITS - len(str(abs(top) // bottom))))
    whole, rest = divmod(2 * top * 10**places + bottom, 2 * bottom)
    return WIDE.scaleb(Decimal(whole), -places), rest == bottom


MOST_MOVED = Fraction(5, 100)
"""How far rounding may move a result without a word (common practice, no source)."""


def moved_far(exact: Fraction, value: Fraction) -> tuple[str, ...]:
    """The caution for a value that rounding has moved by more than `MOST_MOVED`; nothing for any other."""
    moved = abs(value - exact) / abs(exact) if exact else Fraction(0)
    if moved <= MOST_MOVED:
        return ()
    by = f"Rounding changes it by {_percent(moved)} %, more than {_percent(MOST_MOVED)} % (common practice, no source)."
    return (f"{by} Round to a finer place, or ask a pharmacist.",)


_AS_GIVEN = ("convert", "round")
"""Formulas that give back what came, which may be a time or an amount of anything."""


def _percent(part: Fraction) -> int:
    """In whole percent, rounded half up."""
    return int(part * 100 + Fraction(1, 2))


def conclude(
    formula: str,
    inputs: Mapping[str, Measure | str],
    exact: Fraction,
    unit: str,
    rounding: Rounding,
    working: tuple[str, ...],
    cautions: tuple[str, ...] = (),
) -> Result:
    """Round once, at the last step, and say so in the working.

    Args:
        formula: the formula's name.
        inputs: what went in, by name.
        exact: the unrounded value in `unit`.
        unit: canonical unit.
        rounding: the rule for `Result.value`.
        working: the lines before rounding.
        cautions: what the reader must know.

    Raises:
        QuantityError: the value is beyond clinical size, or rounds to nothing.
    """
    told = rounding.step is not None
    if not told and _too_long(exact):
        # Nobody can use, say or check more digits than these; what follows still follows from the exact ratio.
        rounding = Rounding(Decimal(1).scaleb(int(_cut(exact)[0].as_tuple().exponent)))
    value = rounding.apply(exact)
    check_size(value)
    if exact and not value:
        raise QuantityError(
            f"{tell_exact(exact, unit)} rounds to zero by the rule {rounding}.",
            "Use a finer rounding rule or look at the inputs.",
        )
    if told and Fraction(value) != exact:
        working = (*working, f"rounded ({rounding}): {shown(value, unit)}")
        cautions = (*cautions, *moved_far(exact, Fraction(value)))
    if formula not in _AS_GIVEN:
        cautions = (*cautions, *beyond_usual(Fraction(value), unit))
    return Result(formula, dict(inputs), exact, value, unit, rounding, working, cautions)


def per_hour_lines(millilitres: Fraction, duration: Measure, hours: Fraction, exact: Fraction) -> tuple[str, ...]:
    """The working of mL over a time to mL/h: by hours where they end in decimals, else by minutes, a step a line."""
    top, answer = tell_exact(millilitres, "mL"), tell_exact(exact, "mL/h")
    if not _short(hours):
        minutes, per_minute = tell_exact(hours * 60, "min"), tell_exact(exact / 60, "mL/min")
        turned = () if duration.unit == "min" else (f"{tell(duration)} = {minutes}",)
        return (*turned, f"{top} \u00f7 {minutes} = {per_minute}", f"{per_minute} \u00d7 60 min/h = {answer}")
    turned = () if duration.unit == "h" else (f"{tell(duration)} = {tell_exact(hours, 'h')}",)
    return (*turned, f"{top} \u00f7 {tell_exact(hours, 'h')} = {answer}")
