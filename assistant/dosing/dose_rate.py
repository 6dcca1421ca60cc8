"""Dose rate: to a pump rate and back, as a factor, as a mean, in steps."""

from collections.abc import Sequence
from dataclasses import replace
from fractions import Fraction

from assistant.dosing import units
from assistant.dosing.body import kilograms
from assistant.dosing.result import Measure, Result, conclude, take, tell, tell_exact
from assistant.dosing.rounding import EXACT, TENTH, THOUSANDTH, Rounding
from assistant.dosing.substance import (
    BASE,
    counted,
    flat_rate,
    same_substance,
    steps,
    strength_lines,
    substance,
    turned,
    weight_lines,
)
from assistant.dosing.unit_table import SQUARE_METRE
from assistant.errors import QuantityError


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
    per_hour, lines, left = per_hour_of(dose_rate, weight, area, inputs, keep=unit.count("/") > 1)
    same_substance(dose_rate, concentration, "The dose rate", "the concentration")
    wanted = units.unit(unit)
    kind = "rate per weight" if left else "rate"
    if wanted.kind != kind:
        raise QuantityError(
            f"The answer is a {kind}, but {wanted.name} is a {wanted.kind}.",
            f"Give a unit such as {'mL/kg/min' if left else 'mL/h'}.",
        )
    exact = per_hour / strength / wanted.factor
    top, bottom = concentration.unit.split("/")[0], ("/kg/h" if left else "/h")
    amount = units.convert(per_hour, BASE[substance(dose_rate)] + bottom, top + bottom)
    before = dose_rate.unit if left or not lines else flat_rate(dose_rate.unit, top)
    if before != top + bottom:
        lines += steps(units.convert(amount, top + bottom, before), before, top + bottom)
    lines += strength_lines(concentration)
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
    base = BASE[substance(concentration)]
    top = concentration.unit.split("/")[0]
    inputs: dict[str, Measure | str] = {"rate": rate, "concentration": concentration}
    per_hour = speed * strength
    shown = units.convert(per_hour, f"{base}/h", f"{top}/h")
    lines = [
        *strength_lines(concentration),
        f"{tell_exact(speed, 'mL/h')} \u00d7 {tell_exact(concentration.in_unit(f'{top}/mL'), f'{top}/mL')}"
        f" = {tell_exact(shown, f'{top}/h')}",
    ]
    wanted = units.unit(unit or _usual_dose_rate(top, base, weight is not None))
    if weight is None:
        exact = turned(per_hour, f"{base}/h", f"{top}/h", wanted.name)
    else:
        inputs["weight"] = weight
        kilos = kilograms(weight)
        lines += weight_lines(weight, kilos)
        exact = turned(per_hour / kilos, f"{base}/kg/h", f"{top}/kg/h", wanted.name)
        lines.append(
            f"{tell_exact(shown, f'{top}/h')} \u00f7 {tell_exact(kilos, 'kg')}"
            f" = {tell_exact(shown / kilos, f'{top}/kg/h')}"
        )
    last = f"{top}/kg/h" if weight is not None else f"{top}/h"
    if wanted.name != last:
        value = units.convert(exact, wanted.name, last)
        lines += steps(value, last, wanted.name)
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
    if counted(dose_rate.name) != substance(concentration):
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
    exact = turned(amount / hours, f"{BASE[substance(dose)]}/h", f"{dose.unit}/min", wanted.name)
    line = f"{tell(dose)} \u00f7 {tell(duration)} = {tell_exact(exact, wanted.name)}"
    return conclude("mean-dose-rate", {"dose": dose, "duration": duration}, exact, wanted.name, rounding, (line,))


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


def per_hour_of(
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
    base, top = BASE[substance(given)], given.unit.split("/")[0]
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
        lines = weight_lines(weight, kilos)
        flat = flat_rate(given.unit, top)
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
    flat = flat_rate(given.unit, top)
    amount = units.convert(per * square, f"{base}/h", flat)
    return (
        per * square,
        [f"{tell(given)} \u00d7 {tell_exact(square, SQUARE_METRE)} = {tell_exact(amount, flat)}"],
        False,
    )


def _usual_dose_rate(top: str, base: str, by_weight: bool) -> str:
    if not by_weight:
        return f"{top}/h"
    return "mcg/kg/min" if base == "g" else f"{top}/kg/h"
