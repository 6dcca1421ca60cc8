"""What a dose counts, and how it is turned and told: what the formulas about doses share."""

from fractions import Fraction

from assistant.dosing import units
from assistant.dosing.result import Measure, Result, figure, tell, tell_exact
from assistant.errors import QuantityError

BASE = {"mass": "g", "activity": "units", "amount": "mmol", "equivalents": "mEq"}
"""The unit in which each kind of substance is reckoned."""
PLAIN = {"mass": "mg", "activity": "units", "amount": "mmol", "equivalents": "mEq"}
"""The unit in which each kind is told, where nothing else says."""


def substance(given: Measure) -> str:
    """What a dose counts: mass, activity (units), amount (mmol) or equivalents."""
    return counted(given.unit)


def counted(name: str) -> str:
    """What a unit counts, by its name; see `substance`."""
    return next(dimension for dimension, power in units.unit(name).signature if power > 0)


def same_substance(one: Measure, other: Measure, name: str, other_name: str) -> str:
    """What both count.

    Raises:
        QuantityError: they do not count the same thing; the names are for its sentence.
    """
    first, second = substance(one), substance(other)
    if first != second:
        raise QuantityError(
            f"{name} ({tell(one)}) and {other_name} ({tell(other)}) do not count the same thing.",
            f"Give both in the same kind of unit, such as {PLAIN[first]}.",
        )
    return first


def turned(value: Fraction, base: str, own: str, wanted: str) -> Fraction:
    """From a base unit into the wanted one, by way of the question's own: an error then names that one."""
    return units.convert(units.convert(value, base, own), own, wanted)


def flat_rate(name: str, top: str) -> str:
    """A dose rate's unit without its per kg or per m2: mcg/kg/min is mcg/min."""
    for part in ("/kg", "/lb", "/m\u00b2"):
        if part in name:
            return name.replace(part, "", 1)
    return f"{top}/h"


def steps(value: Fraction, given: str, wanted: str) -> list[str]:
    """From one unit of a dose rate to another, each factor on a line of its own: first the time, then the substance.

    Args:
        value: in the given unit.
        given: printed name of that unit.
        wanted: printed name of the other, which differs above the line, or in the time, or in both.
    """
    *kept, time = wanted.split("/")
    between = "/".join((given.split("/")[0], *kept[1:], time))
    lines: list[str] = []
    for one, other in ((given, between), (between, wanted)):
        if one == other:
            continue
        turned_value = units.convert(value, one, other)
        factor = turned_value / value
        sign, size = ("\u00d7", factor) if factor > 1 else ("\u00f7", 1 / factor)
        lines.append(f"{tell_exact(value, one)} {sign} {figure(size)} = {tell_exact(turned_value, other)}")
        value = turned_value
    return lines


def strength_lines(concentration: Measure) -> tuple[str, ...]:
    """How a concentration came about: "400 mg \u00f7 250 mL = 1.6 mg/mL"; nothing where it came as it is."""
    if not isinstance(concentration, Result):
        return ()
    return tuple(line for line in concentration.working if " = " in line)


def turn(dose: Measure, top: str) -> tuple[str, list[str]]:
    """A dose as text in a unit, with a line for the conversion where there is one."""
    shown = tell_exact(dose.in_unit(top), top)
    return (tell(dose), []) if dose.unit == top else (shown, [f"{tell(dose)} = {shown}"])


def weight_lines(weight: Measure, kilos: Fraction) -> list[str]:
    """The line that turns a weight into kg, where there is one."""
    return [] if weight.unit == "kg" else [f"{tell(weight)} = {tell_exact(kilos, 'kg')}"]
