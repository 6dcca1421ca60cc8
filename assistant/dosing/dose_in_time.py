"""Dose in a time: how much in all, how long it lasts, how short it may take."""

from assistant.dosing import units
from assistant.dosing.dose_rate import per_hour_of
from assistant.dosing.result import Measure, Result, conclude, take, tell, tell_exact
from assistant.dosing.rounding import EXACT, TENTH, Rounding
from assistant.dosing.substance import BASE, PLAIN, flat_rate, same_substance, steps, substance, turned


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
    per_hour, lines, left = per_hour_of(dose_rate, weight, None, inputs, keep=True)
    kind = substance(dose_rate)
    tail = "/kg" if left else ""
    own = PLAIN[kind] + tail
    wanted = units.unit(unit or own)
    base = BASE[kind] + tail
    part = per_hour * hours
    given = tell_exact(turned(part, base, own, wanted.name), wanted.name)
    lines.append(f"{tell(dose_rate)} \u00d7 {tell(duration)} = {given}")
    if loading is not None:
        inputs["loading"] = loading
        before = take("loading", loading, "dose per weight" if left else "dose")
        same_substance(dose_rate, loading, "The dose rate", "the loading dose")
        lines.append(
            f"{given} + {tell(loading)} = {tell_exact(turned(part + before, base, own, wanted.name), wanted.name)}"
        )
        part += before
    return conclude("dose-over-time", inputs, turned(part, base, own, wanted.name), wanted.name, rounding, tuple(lines))


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
    per_hour, lines, _ = per_hour_of(dose_rate, weight, None, inputs, keep=False)
    same_substance(dose, dose_rate, "The dose", "the dose rate")
    name = units.unit(unit).name
    exact = units.convert(amount / per_hour, "h", name)
    per = units.unit(f"{dose.unit}/{name}").name
    spent = units.convert(per_hour, f"{BASE[substance(dose)]}/h", per)
    flat = dose_rate.unit if weight is None else flat_rate(dose_rate.unit, dose.unit)
    if flat != per:
        lines += steps(units.convert(spent, per, flat), flat, per)
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
