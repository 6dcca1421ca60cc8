"""Dose: to volume and back, by weight, by area, in sum, as a bolus."""

from fractions import Fraction

from assistant.dosing import units
from assistant.dosing.body import kilograms
from assistant.dosing.result import Measure, Result, conclude, per_hour_lines, take, tell, tell_exact
from assistant.dosing.rounding import EXACT, TENTH, Rounding, syringe
from assistant.dosing.substance import (
    BASE,
    flat_rate,
    same_substance,
    steps,
    strength_lines,
    substance,
    turn,
    turned,
    weight_lines,
)
from assistant.dosing.unit_table import SQUARE_METRE
from assistant.errors import QuantityError


def volume_for_dose(
    dose: Measure, concentration: Measure, *, weight: Measure | None = None, rounding: Rounding | None = None
) -> Result:
    """Volume in mL that holds a dose.

    Args:
        dose: for example 5,000 units, or 80 units/kg.
        concentration: for example 40,000 units/mL.
        weight: body weight, where the dose is per kg.
        rounding: by syringe size by default (`rounding.syringe`).

    Raises:
        QuantityError: an input is not above zero, or the two count different things.

    Source: US Army Subcourse MD0904, Lesson 2 Section III.
    """
    inputs: dict[str, Measure | str] = {"dose": dose, "concentration": concentration}
    before: tuple[str, ...] = ()
    if weight is not None:
        inputs["weight"] = weight
        dose = dose_by_weight(dose, weight)
        before = dose.working
    elif units.unit(dose.unit).kind == "dose per weight":
        raise QuantityError(f"{tell(dose)} is per kg, but no weight came.", "Give the weight, such as 70 kg.")
    amount, strength = take("dose", dose, "dose"), take("concentration", concentration, "concentration")
    same_substance(dose, concentration, "The dose", "the concentration")
    exact = amount / strength
    top = concentration.unit.split("/")[0]
    shown, lines = turn(dose, top)
    per_ml = concentration.in_unit(f"{top}/mL")
    lines += strength_lines(concentration)
    lines.append(f"{shown} \u00f7 {tell_exact(per_ml, f'{top}/mL')} = {tell_exact(exact, 'mL')}")
    rule = rounding or syringe(exact)
    return conclude("volume-for-dose", inputs, exact, "mL", rule, (*before, *lines))


def dose_in_volume(
    volume: Measure, concentration: Measure, *, unit: str | None = None, rounding: Rounding = EXACT
) -> Result:
    """Dose that a volume holds.

    Args:
        volume: for example 2.5 mL.
        concentration: for example 1 mg/mL.
        unit: of the result; the concentration's own by default.
        rounding: exact by default.

    Raises:
        QuantityError: an input is not above zero or of another kind.

    Source: the formula of `volume_for_dose` solved for the dose.
    """
    millilitres = take("volume", volume, "volume")
    take("concentration", concentration, "concentration")
    top = units.unit(unit).name if unit else concentration.unit.split("/")[0]
    per_ml = concentration.in_unit(f"{top}/mL")
    exact = millilitres * per_ml
    line = f"{tell_exact(millilitres, 'mL')} \u00d7 {tell_exact(per_ml, f'{top}/mL')} = {tell_exact(exact, top)}"
    inputs = {"volume": volume, "concentration": concentration}
    lines = (*strength_lines(concentration), line)
    return conclude("dose-in-volume", inputs, exact, top, rounding, lines)


def dose_by_weight(ordered: Measure, weight: Measure, *, unit: str | None = None, rounding: Rounding = EXACT) -> Result:
    """Dose, or dose rate, for a body weight.

    Args:
        ordered: for example 0.2 mg/kg, 15 mg/kg/dose, or 50 mg/kg/day.
        weight: kg, g or lb.
        unit: of the result; the order's own by default.
        rounding: exact by default.

    Raises:
        QuantityError: an input is not above zero or of another kind, or the weight is no body weight.

    Source: BCcampus OpenEd, A Guide to Numeracy in Nursing, Calculating Medication Doses Based on Weight.
    """
    rate = units.unit(ordered.unit).kind == "dose rate per weight"
    per_kg = take("ordered", ordered, "dose rate per weight" if rate else "dose per weight")
    kilos = kilograms(weight)
    top = ordered.unit.split("/")[0]
    own = flat_rate(ordered.unit, top) if rate else top
    wanted = units.unit(unit).name if unit else own
    base = BASE[substance(ordered)]
    exact = turned(per_kg * kilos, f"{base}/h" if rate else base, own, wanted)
    lines = weight_lines(weight, kilos)
    plain = turned(per_kg * kilos, f"{base}/h" if rate else base, own, own)
    lines.append(f"{tell(ordered)} \u00d7 {tell_exact(kilos, 'kg')} = {tell_exact(plain, own)}")
    if rate and wanted != own:
        lines += steps(plain, own, wanted)
    elif wanted != own:
        lines.append(f"{tell_exact(plain, own)} = {tell_exact(exact, wanted)}")
    return conclude("dose-by-weight", {"ordered": ordered, "weight": weight}, exact, wanted, rounding, tuple(lines))


def volume_by_weight(
    ordered: Measure, weight: Measure, *, unit: str | None = None, rounding: Rounding = TENTH
) -> Result:
    """Volume or rate of fluid for a body weight.

    Args:
        ordered: for example 20 mL/kg, or 2 mL/kg/h.
        weight: kg, g or lb.
        unit: of the result; mL or mL/h by default.
        rounding: tenths by default.

    Raises:
        QuantityError: an input is not above zero or of another kind, or the weight is no body weight.

    Source: common practice, no source.
    """
    rate = units.unit(ordered.unit).kind == "rate per weight"
    per_kg = take("ordered", ordered, "rate per weight" if rate else "volume per weight")
    kilos = kilograms(weight)
    wanted = units.unit(unit or ("mL/h" if rate else "mL")).name
    exact = units.convert(per_kg * kilos, "mL/h" if rate else "mL", wanted)
    lines = weight_lines(weight, kilos)
    lines.append(f"{tell(ordered)} \u00d7 {tell_exact(kilos, 'kg')} = {tell_exact(exact, wanted)}")
    inputs = {"ordered": ordered, "weight": weight}
    return conclude("volume-by-weight", inputs, exact, wanted, rounding, tuple(lines))


def dose_by_area(ordered: Measure, area: Measure, *, unit: str | None = None, rounding: Rounding = EXACT) -> Result:
    """Dose for a body surface area.

    Args:
        ordered: for example 75 mg/m\u00b2.
        area: body surface area (see `body.surface_area`); an earlier result is used unrounded.
        unit: of the result; the order's own by default.
        rounding: exact by default.

    Raises:
        QuantityError: an input is not above zero or of another kind.

    Source: common practice, no source.
    """
    per_area = take("ordered", ordered, "dose per area")
    square = take("area", area, "area")
    own = ordered.unit.split("/")[0]
    top = units.unit(unit or own).name
    exact = turned(per_area * square, BASE[substance(ordered)], own, top)
    line = f"{tell(ordered)} \u00d7 {tell_exact(square, SQUARE_METRE)} = {tell_exact(exact, top)}"
    return conclude("dose-by-area", {"ordered": ordered, "area": area}, exact, top, rounding, (line,))


def sum_of_doses(*doses: Measure, unit: str | None = None, rounding: Rounding = EXACT) -> Result:
    """Several doses together.

    Args:
        doses: one or more, of one kind.
        unit: of the result; the first dose's by default.
        rounding: exact by default.

    Raises:
        QuantityError: none came, or they count different things.

    Source: the meaning of a sum.
    """
    if not doses:
        raise QuantityError("At least one dose was expected, but none came.", "Give the doses.")
    top = units.unit(unit or doses[0].unit).name
    for place, dose in enumerate(doses, 1):
        take(f"dose {place}", dose, "dose")
        same_substance(doses[0], dose, "The first dose", f"dose {place}")
    exact = sum((dose.in_unit(top) for dose in doses), Fraction(0))
    line = f"{' + '.join(tell(dose) for dose in doses)} = {tell_exact(exact, top)}"
    return conclude(
        "sum-of-doses", {f"dose {i}": dose for i, dose in enumerate(doses, 1)}, exact, top, rounding, (line,)
    )


def bolus(
    dose: Measure,
    concentration: Measure,
    duration: Measure,
    *,
    weight: Measure | None = None,
    rounding: Rounding = TENTH,
) -> tuple[Result, Result]:
    """A bolus by pump: the volume to give in mL, and the rate in mL/h that gives it in its time.

    Args:
        dose: for example 4,000 units, or 80 units/kg.
        concentration: for example 50 units/mL.
        duration: for example 10 min.
        weight: body weight, where the dose is per kg.
        rounding: of the rate; the volume follows the syringe rule.

    Raises:
        QuantityError: an input is not above zero or of another kind.

    Source: `volume_for_dose` and the flow formula.
    """
    drawn = volume_for_dose(dose, concentration, weight=weight)
    hours = take("duration", duration, "duration")
    exact = drawn.exact / hours
    # The rate starts from the exact volume, so the line that rounds the volume is not part of its working.
    before = drawn.working if drawn.exact == Fraction(drawn.value) else drawn.working[:-1]
    lines = (*before, *per_hour_lines(drawn.exact, duration, hours, exact))
    inputs = {**drawn.inputs, "duration": duration}
    return drawn, conclude("bolus", inputs, exact, "mL/h", rounding, lines)
