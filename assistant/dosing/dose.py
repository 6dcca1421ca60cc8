"""Dose: to volume and back, to a pump rate and back, by weight, in total, in steps."""

from collections.abc import Sequence
from dataclasses import replace
from fractions import Fraction

from assistant.dosing import units
from assistant.dosing.body import kilograms
from assistant.dosing.result import Measure, Result, conclude, per_hour_lines, take, tell, tell_exact
from assistant.dosing.rounding import EXACT, TENTH, THOUSANDTH, Rounding, syringe
from assistant.dosing.unit_table import SQUARE_METRE
from assistant.errors import QuantityError

_BASE = {"mass": "g", "activity": "units", "amount": "mmol", "equivalents": "mEq"}
_PLAIN = {"mass": "mg", "activity": "units", "amount": "mmol", "equivalents": "mEq"}


def substance(given: Measure) -> str:
    """What a dose counts: mass, activity (units), amount (mmol) or equivalents."""
    return _counted(given.unit)


def _counted(name: str) -> str:
    return next(dimension for dimension, power in units.unit(name).signature if power > 0)


def _same_substance(one: Measure, other: Measure, name: str, other_name: str) -> str:
    first, second = substance(one), substance(other)
    if first != second:
        raise QuantityError(
            f"{name} ({tell(one)}) and {other_name} ({tell(other)}) do not count the same thing.",
            f"Give both in the same kind of unit, such as {_PLAIN[first]}.",
        )
    return first


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
    amount, strength = take("dose", dose, "dose"), take("concentration", concentration, "concentration")
    _same_substance(dose, concentration, "The dose", "the concentration")
    exact = amount / strength
    top = concentration.unit.split("/")[0]
    shown, lines = _turn(dose, top)
    per_ml = concentration.in_unit(f"{top}/mL")
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
    return conclude("dose-in-volume", inputs, exact, top, rounding, (line,))


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
    own = _flat(ordered.unit, top) if rate else top
    wanted = units.unit(unit).name if unit else own
    base = _BASE[substance(ordered)]
    exact = _turned(per_kg * kilos, f"{base}/h" if rate else base, own, wanted)
    lines = _weight_lines(weight, kilos)
    lines.append(f"{tell(ordered)} \u00d7 {tell_exact(kilos, 'kg')} = {tell_exact(exact, wanted)}")
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
    lines = _weight_lines(weight, kilos)
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
    exact = _turned(per_area * square, _BASE[substance(ordered)], own, top)
    line = f"{tell(ordered)} \u00d7 {tell_exact(square, SQUARE_METRE)} = {tell_exact(exact, top)}"
    return conclude("dose-by-area", {"ordered": ordered, "area": area}, exact, top, rounding, (line,))


def pump_rate(
    dose_rate: Measure,
    concentration: Measure,
    *,
    weight: Measure | None = None,
    area: Measure | None = None,
    unit: str = "mL/h",
    rounding: Rounding = TENTH,
) -> Result:
    """Pump rate that gives a dose rate.

    Args:
        dose_rate: mg/h, mcg/min, mcg/kg/min, units/h, units/kg/h, mg/m\u00b2/h and so on.
        concentration: for example 800 mcg/mL.
        weight: body weight, where the dose rate is per kg. Without it the answer is per kg: give a unit such
            as mL/kg/min.
        area: body surface area, where the dose rate is per m\u00b2.
        unit: of the result.
        rounding: tenths of mL/h by default.

    Raises:
        QuantityError: an input is missing, not above zero or of another kind.

    Source: FDA label text, dobutamine in 5 percent dextrose injection, Dosage and Administration, example 1.
    """
    strength = take("concentration", concentration, "concentration")
    inputs: dict[str, Measure | str] = {"dose_rate": dose_rate, "concentration": concentration}
    per_hour, lines, left = _per_hour(dose_rate, weight, area, inputs, keep=unit.count("/") > 1)
    _same_substance(dose_rate, concentration, "The dose rate", "the concentration")
    wanted = units.unit(unit)
    kind = "rate per weight" if left else "rate"
    if wanted.kind != kind:
        raise QuantityError(
            f"The answer is a {kind}, but {wanted.name} is a {wanted.kind}.",
            f"Give a unit such as {'mL/kg/min' if left else 'mL/h'}.",
        )
    exact = per_hour / strength / wanted.factor
    top, bottom = concentration.unit.split("/")[0], ("/kg/h" if left else "/h")
    amount = units.convert(per_hour, _BASE[substance(dose_rate)] + bottom, top + bottom)
    before = dose_rate.unit if left or not lines else _flat(dose_rate.unit, top)
    if before != top + bottom:
        value = units.convert(amount, top + bottom, before)
        lines.append(f"{tell_exact(value, before)} = {tell_exact(amount, top + bottom)}")
    per_ml = concentration.in_unit(f"{top}/mL")
    native = per_hour / strength
    lines.append(
        f"{tell_exact(amount, top + bottom)} \u00f7 {tell_exact(per_ml, f'{top}/mL')}"
        f" = {tell_exact(native, 'mL' + bottom)}"
    )
    if wanted.name != "mL" + bottom:
        lines.append(f"{tell_exact(native, 'mL' + bottom)} = {tell_exact(exact, wanted.name)}")
    return conclude("pump-rate", inputs, exact, wanted.name, rounding, tuple(lines))


def dose_rate(
    rate: Measure,
    concentration: Measure,
    *,
    weight: Measure | None = None,
    unit: str | None = None,
    rounding: Rounding = THOUSANDTH,
) -> Result:
    """Dose rate that a pump rate gives.

    Args:
        rate: for example 30 mL/h.
        concentration: for example 25 units/mL.
        weight: body weight, for an answer per kg.
        unit: of the result; the concentration's per hour by default (mcg/kg/min for mass with a weight).
        rounding: thousandths by default.

    Raises:
        QuantityError: an input is missing, not above zero or of another kind.

    Source: the formula of `pump_rate` solved for the dose rate.
    """
    speed, strength = take("rate", rate, "rate"), take("concentration", concentration, "concentration")
    base = _BASE[substance(concentration)]
    top = concentration.unit.split("/")[0]
    inputs: dict[str, Measure | str] = {"rate": rate, "concentration": concentration}
    per_hour = speed * strength
    shown = units.convert(per_hour, f"{base}/h", f"{top}/h")
    lines = [
        f"{tell_exact(speed, 'mL/h')} \u00d7 {tell_exact(concentration.in_unit(f'{top}/mL'), f'{top}/mL')}"
        f" = {tell_exact(shown, f'{top}/h')}"
    ]
    wanted = units.unit(unit or _usual_dose_rate(top, base, weight is not None))
    if weight is None:
        exact = _turned(per_hour, f"{base}/h", f"{top}/h", wanted.name)
    else:
        inputs["weight"] = weight
        kilos = kilograms(weight)
        lines += _weight_lines(weight, kilos)
        exact = _turned(per_hour / kilos, f"{base}/kg/h", f"{top}/kg/h", wanted.name)
        lines.append(
            f"{tell_exact(shown, f'{top}/h')} \u00f7 {tell_exact(kilos, 'kg')}"
            f" = {tell_exact(shown / kilos, f'{top}/kg/h')}"
        )
    last = f"{top}/kg/h" if weight is not None else f"{top}/h"
    if wanted.name != last:
        value = units.convert(exact, wanted.name, last)
        lines.append(f"{tell_exact(value, last)} = {tell_exact(exact, wanted.name)}")
    return conclude("dose-rate", inputs, exact, wanted.name, rounding, tuple(lines))


def rate_factor(concentration: Measure, *, per: str = "mcg/min", rounding: Rounding = EXACT) -> Result:
    """The factor that turns a dose rate into mL/h at a concentration.

    Args:
        concentration: for example 50 mg in 250 mL.
        per: the dose rate's unit.
        rounding: exact by default.

    Raises:
        QuantityError: an input is of another kind.

    Source: the formula of `pump_rate` for a dose rate of one.
    """
    strength = take("concentration", concentration, "concentration")
    dose_rate = units.unit(per)
    if dose_rate.kind != "dose rate":
        raise QuantityError(f"{dose_rate.name} is not a dose rate.", "Give a unit such as mcg/min.")
    if _counted(dose_rate.name) != substance(concentration):
        raise QuantityError(
            f"{dose_rate.name} and the concentration ({tell(concentration)}) do not count the same thing.",
            "Give both in the same kind of unit.",
        )
    wanted = units.unit(f"mL/h per {dose_rate.name}")
    exact = 1 / strength / wanted.factor
    line = f"1 {dose_rate.name} at {tell(concentration)} = {tell_exact(exact, 'mL/h')}"
    return conclude("rate-factor", {"concentration": concentration, "per": per}, exact, wanted.name, rounding, (line,))


def mean_dose_rate(dose: Measure, duration: Measure, *, unit: str | None = None, rounding: Rounding = EXACT) -> Result:
    """Dose rate of a dose given over a time.

    Args:
        dose: for example 150 mg.
        duration: for example 10 min.
        unit: of the result; per minute in the dose's own unit by default.
        rounding: exact by default.

    Raises:
        QuantityError: an input is not above zero or of another kind.

    Source: the meaning of a rate; FDA label regimen, amiodarone, states 150 mg over 10 min as 15 mg/min.
    """
    amount, hours = take("dose", dose, "dose"), take("duration", duration, "duration")
    wanted = units.unit(unit or f"{dose.unit}/min")
    exact = _turned(amount / hours, f"{_BASE[substance(dose)]}/h", f"{dose.unit}/min", wanted.name)
    line = f"{tell(dose)} \u00f7 {tell(duration)} = {tell_exact(exact, wanted.name)}"
    return conclude("mean-dose-rate", {"dose": dose, "duration": duration}, exact, wanted.name, rounding, (line,))


def dose_over_time(
    dose_rate: Measure,
    duration: Measure,
    *,
    weight: Measure | None = None,
    loading: Measure | None = None,
    unit: str | None = None,
    rounding: Rounding = EXACT,
) -> Result:
    """Dose that a dose rate gives in a time, a loading dose included where there is one.

    Args:
        dose_rate: for example 0.5 mg/min, or 0.375 mcg/kg/min.
        duration: for example 18 h.
        weight: body weight, where the dose rate is per kg; without it the answer is per kg too.
        loading: a dose given before; per kg where the dose rate is.
        unit: of the result; mg, units, mmol or mEq (per kg) by default.
        rounding: exact by default.

    Raises:
        QuantityError: an input is not above zero or of another kind.

    Source: FDA label text, milrinone lactate injection, maintenance dose table (its totals hold the loading
    dose).
    """
    hours = take("duration", duration, "duration")
    inputs: dict[str, Measure | str] = {"dose_rate": dose_rate, "duration": duration}
    per_hour, lines, left = _per_hour(dose_rate, weight, None, inputs, keep=True)
    kind = substance(dose_rate)
    tail = "/kg" if left else ""
    own = _PLAIN[kind] + tail
    wanted = units.unit(unit or own)
    base = _BASE[kind] + tail
    part = per_hour * hours
    given = tell_exact(_turned(part, base, own, wanted.name), wanted.name)
    lines.append(f"{tell(dose_rate)} \u00d7 {tell(duration)} = {given}")
    if loading is not None:
        inputs["loading"] = loading
        before = take("loading", loading, "dose per weight" if left else "dose")
        _same_substance(dose_rate, loading, "The dose rate", "the loading dose")
        lines.append(
            f"{given} + {tell(loading)} = {tell_exact(_turned(part + before, base, own, wanted.name), wanted.name)}"
        )
        part += before
    return conclude(
        "dose-over-time", inputs, _turned(part, base, own, wanted.name), wanted.name, rounding, tuple(lines)
    )


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
        _same_substance(doses[0], dose, "The first dose", f"dose {place}")
    exact = sum((dose.in_unit(top) for dose in doses), Fraction(0))
    line = f"{' + '.join(tell(dose) for dose in doses)} = {tell_exact(exact, top)}"
    return conclude(
        "sum-of-doses", {f"dose {i}": dose for i, dose in enumerate(doses, 1)}, exact, top, rounding, (line,)
    )


def dose_lasts(
    dose: Measure,
    dose_rate: Measure,
    *,
    weight: Measure | None = None,
    unit: str = "min",
    rounding: Rounding = TENTH,
) -> Result:
    """Time that a dose lasts at a dose rate.

    Args:
        dose: for example 400 mg in the bag.
        dose_rate: for example 200 mcg/min.
        weight: body weight, where the dose rate is per kg.
        unit: min or h.
        rounding: tenths by default.

    Raises:
        QuantityError: an input is missing, not above zero or of another kind.

    Source: the meaning of a rate; HL7 FHIR, MedicationRequest example medrx0337, states such a duration.
    """
    amount = take("dose", dose, "dose")
    inputs: dict[str, Measure | str] = {"dose": dose, "dose_rate": dose_rate}
    per_hour, lines, _ = _per_hour(dose_rate, weight, None, inputs, keep=False)
    _same_substance(dose, dose_rate, "The dose", "the dose rate")
    name = units.unit(unit).name
    exact = units.convert(amount / per_hour, "h", name)
    per = units.unit(f"{dose.unit}/{name}").name
    spent = units.convert(per_hour, f"{_BASE[substance(dose)]}/h", per)
    if dose_rate.unit != per:
        lines.append(f"that is {tell_exact(spent, per)}")
    lines.append(f"{tell(dose)} \u00f7 {tell_exact(spent, per)} = {tell_exact(exact, name)}")
    return conclude("dose-lasts", inputs, exact, name, rounding, tuple(lines))


def shortest_time(
    dose: Measure,
    highest_rate: Measure,
    *,
    never_under: Measure | None = None,
    weight: Measure | None = None,
    unit: str = "min",
    rounding: Rounding = EXACT,
) -> Result:
    """Shortest allowed infusion time: by the highest dose rate, and never under a stated time.

    Args:
        dose: for example 1,500 mg.
        highest_rate: for example 10 mg/min.
        never_under: for example 60 min.
        weight: body weight, where the highest rate is per kg.
        unit: min or h.
        rounding: exact by default.

    Raises:
        QuantityError: an input is missing, not above zero or of another kind.

    Source: FDA label rule, vancomycin: no more than 10 mg/min or over 60 min, whichever is longer.
    """
    plain = dose_lasts(dose, highest_rate, weight=weight, unit=unit, rounding=EXACT)
    inputs = {("highest_rate" if name == "dose_rate" else name): given for name, given in plain.inputs.items()}
    exact, lines = plain.exact, list(plain.working)
    if never_under is not None:
        inputs["never_under"] = never_under
        floor = units.convert(take("never under", never_under, "duration"), "h", plain.unit)
        exact = max(exact, floor)
        lines.append(
            f"never under {tell_exact(floor, plain.unit)}: the longer of the two is {tell_exact(exact, plain.unit)}"
        )
    return conclude("shortest-time", inputs, exact, plain.unit, rounding, tuple(lines))


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


def titration(
    start: Measure,
    step: Measure,
    highest: Measure,
    concentration: Measure,
    *,
    weight: Measure | None = None,
    rounding: Rounding = TENTH,
) -> Sequence[Result]:
    """Pump rates for a dose rate raised in equal steps, from the start up to the highest.

    Args:
        start: for example 5 mcg/kg/min.
        step: how much each step adds; the same unit of quantity.
        highest: never passed; the last step stops at it or below.
        concentration: for example 1,600 mcg/mL.
        weight: body weight, where the dose rate is per kg.
        rounding: tenths of mL/h by default.

    Returns:
        One pump rate a step; `inputs["dose_rate"]` holds its dose rate.

    Raises:
        QuantityError: an input is missing, not above zero, of another kind, or makes more than 200 steps.

    Source: `pump_rate`; the size of the steps is the order's.
    """
    name = start.unit
    low, rise, top = start.in_unit(name), step.in_unit(name), highest.in_unit(name)
    if low <= 0 or rise <= 0 or top < low:
        raise QuantityError(
            "A titration needs a start and a step above zero, and a highest dose rate that is not below the start.",
            "Look at the order again.",
        )
    if (top - low) / rise > 200:
        raise QuantityError("The titration would take more than 200 steps.", "Look at the step's size and unit.")
    rates: list[Result] = []
    at = low
    while at <= top:
        given = conclude("titration-step", {"start": start, "step": step}, at, name, EXACT, ())
        step_rate = pump_rate(given, concentration, weight=weight, rounding=rounding)
        rates.append(replace(step_rate, formula="titration"))
        at += rise
    return tuple(rates)


def _per_hour(
    given: Measure,
    weight: Measure | None,
    area: Measure | None,
    inputs: dict[str, Measure | str],
    *,
    keep: bool,
) -> tuple[Fraction, list[str], bool]:
    """A dose rate in base units per hour, with weight or area brought in; whether it is still per kg."""
    kind = units.unit(given.unit).kind
    if kind == "dose rate":
        if weight is not None or area is not None:
            raise QuantityError(
                f"{tell(given)} is not per kg or per m\u00b2, but a weight or an area came.",
                "Leave it out, or give the dose rate per kg, such as mcg/kg/min.",
            )
        return take("dose rate", given, "dose rate"), [], False
    if kind not in ("dose rate per weight", "dose rate per area"):
        raise QuantityError(
            f"A dose rate was expected, but {tell(given)} came.", "Give it in a unit such as mg/h or mcg/kg/min."
        )
    base, top = _BASE[substance(given)], given.unit.split("/")[0]
    if kind == "dose rate per weight":
        per = take("dose rate", given, "dose rate per weight")
        if weight is None:
            if keep:
                return per, [], True
            raise QuantityError(f"{tell(given)} is per kg, but no weight came.", "Give the weight, such as 70 kg.")
        if area is not None:
            raise QuantityError(f"{tell(given)} is per kg, but an area came.", "Leave the area out.")
        inputs["weight"] = weight
        kilos = kilograms(weight)
        lines = _weight_lines(weight, kilos)
        flat = _flat(given.unit, top)
        amount = units.convert(per * kilos, f"{base}/h", flat)
        lines.append(f"{tell(given)} \u00d7 {tell_exact(kilos, 'kg')} = {tell_exact(amount, flat)}")
        return per * kilos, lines, False
    per = take("dose rate", given, "dose rate per area")
    if area is None:
        raise QuantityError(f"{tell(given)} is per m\u00b2, but no area came.", "Give the body surface area.")
    if weight is not None:
        raise QuantityError(f"{tell(given)} is per m\u00b2, but a weight came.", "Leave the weight out.")
    inputs["area"] = area
    square = take("area", area, "area")
    flat = _flat(given.unit, top)
    amount = units.convert(per * square, f"{base}/h", flat)
    return (
        per * square,
        [f"{tell(given)} \u00d7 {tell_exact(square, SQUARE_METRE)} = {tell_exact(amount, flat)}"],
        False,
    )


def _turned(value: Fraction, base: str, own: str, wanted: str) -> Fraction:
    """From a base unit into the wanted one, by way of the question's own: an error then names that one."""
    return units.convert(units.convert(value, base, own), own, wanted)


def _flat(name: str, top: str) -> str:
    """A dose rate's unit without its per kg or per m2: mcg/kg/min is mcg/min."""
    for part in ("/kg", "/lb", "/m\u00b2"):
        if part in name:
            return name.replace(part, "", 1)
    return f"{top}/h"


def _turn(dose: Measure, top: str) -> tuple[str, list[str]]:
    """A dose as text in a unit, with a line for the conversion where there is one."""
    shown = tell_exact(dose.in_unit(top), top)
    return (tell(dose), []) if dose.unit == top else (shown, [f"{tell(dose)} = {shown}"])


def _weight_lines(weight: Measure, kilos: Fraction) -> list[str]:
    return [] if weight.unit == "kg" else [f"{tell(weight)} = {tell_exact(kilos, 'kg')}"]


def _usual_dose_rate(top: str, base: str, by_weight: bool) -> str:
    if not by_weight:
        return f"{top}/h"
    return "mcg/kg/min" if base == "g" else f"{top}/kg/h"
