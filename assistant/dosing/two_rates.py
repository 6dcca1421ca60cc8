"""Infusions at two rates: a loading dose and then the maintenance, a slow start and then the rest."""

from dataclasses import replace
from fractions import Fraction

from assistant.dosing import units
from assistant.dosing.dose import bolus
from assistant.dosing.dose_rate import pump_rate
from assistant.dosing.result import Measure, Result, conclude, per_hour_lines, take, tell, tell_exact
from assistant.dosing.rounding import TENTH, Rounding
from assistant.errors import QuantityError


def loading_then_maintenance(
    loading: Measure,
    loading_duration: Measure,
    maintenance: Measure,
    concentration: Measure,
    *,
    weight: Measure | None = None,
    rounding: Rounding = TENTH,
) -> tuple[Result, Result, Result]:
    """Pump rate of a loading dose in mL/h, that of the maintenance after it, and the loading dose's volume in mL.

    Args:
        loading: for example 4 g, or 80 units/kg.
        loading_duration: for example 20 min.
        maintenance: the dose rate afterwards, for example 2 g/h, or 18 units/kg/h.
        concentration: of the one bag that gives both, for example 20 g in 500 mL.
        weight: body weight, where the loading dose or the maintenance is per kg.
        rounding: of the two rates; the volume follows the syringe rule.

    Raises:
        QuantityError: an input is missing, not above zero or of another kind.

    Source: `bolus` and `pump_rate`, one after the other; FDA label text, magnesium sulfate in water for injection,
    states such an order (from memory).
    """
    by_weight = {name: "/kg" in one.unit for name, one in (("loading", loading), ("maintenance", maintenance))}
    if weight is not None and not any(by_weight.values()):
        raise QuantityError("Neither dose is per kg, but a weight came.", "Leave it out, or give a dose per kg.")
    drawn, first = bolus(
        loading,
        concentration,
        loading_duration,
        weight=weight if by_weight["loading"] else None,
        rounding=rounding,
    )
    then = pump_rate(maintenance, concentration, weight=weight if by_weight["maintenance"] else None, rounding=rounding)
    inputs: dict[str, Measure | str] = {
        "loading": loading,
        "loading_duration": loading_duration,
        "maintenance": maintenance,
        "concentration": concentration,
    }
    inputs |= {"weight": weight} if weight is not None else {}
    return (
        replace(first, formula="loading-then-maintenance", inputs=inputs),
        replace(then, formula="loading-then-maintenance-rate", inputs=inputs),
        replace(drawn, formula="loading-then-maintenance-volume", inputs=inputs),
    )


def two_rate_time(
    volume: Measure,
    first_rate: Measure,
    first_duration: Measure,
    rate: Measure,
    *,
    unit: str = "min",
    rounding: Rounding = TENTH,
) -> Result:
    """Time that a volume takes which begins at one rate and goes on at another.

    Args:
        volume: all of it, for example 300 mL.
        first_rate: for example 120 mL/h.
        first_duration: how long it flows at the first rate, for example 15 min.
        rate: of the rest, for example 150 mL/h.
        unit: min or h.
        rounding: tenths by default.

    Raises:
        QuantityError: an input is not above zero or of another kind, or nothing is left for the second rate.

    Source: the flow formula, piece by piece (Open RN, Nursing Skills, chapter 5).
    """
    inputs, lines, left, hours = _first_part(volume, first_rate, first_duration)
    speed = take("rate", rate, "rate")
    name = units.unit(unit).name
    rest = units.convert(left / speed, "h", name)
    before = units.convert(hours, "h", name)
    per = f"mL/{name}"
    flow = units.convert(speed, "mL/h", per)
    if rate.unit != per:
        lines.append(f"{tell(rate)} = {tell_exact(flow, per)}")
    lines.append(f"{tell_exact(left, 'mL')} \u00f7 {tell_exact(flow, per)} = {tell_exact(rest, name)}")
    if first_duration.unit != name:
        lines.append(f"{tell(first_duration)} = {tell_exact(before, name)}")
    lines.append(f"{tell_exact(before, name)} + {tell_exact(rest, name)} = {tell_exact(before + rest, name)}")
    return conclude("two-rate-time", {**inputs, "rate": rate}, before + rest, name, rounding, tuple(lines))


def rate_for_the_rest(
    volume: Measure,
    first_rate: Measure,
    first_duration: Measure,
    duration: Measure,
    *,
    rounding: Rounding = TENTH,
) -> Result:
    """Rate in mL/h for what is left after a first part, so that all of it is in at the time ordered.

    Args:
        volume: all of it, for example 1,000 mL.
        first_rate: what it has flowed at, for example 75 mL/h.
        first_duration: for how long, for example 4 h.
        duration: ordered for all of it, for example 10 h.
        rounding: tenths of mL/h by default.

    Raises:
        QuantityError: an input is not above zero or of another kind, nothing is left, or no time is left.

    Source: the flow formula for the volume and the time that are left (Open RN, Nursing Skills, chapter 5).
    """
    inputs, lines, left, hours = _first_part(volume, first_rate, first_duration)
    whole = take("duration", duration, "duration")
    if whole <= hours:
        raise QuantityError(
            f"Of {tell(duration)} nothing is left after {tell(first_duration)}.", "Look at the two times."
        )
    over = conclude("duration", {}, whole - hours, "h", Rounding(None), ())
    lines.append(f"{tell(duration)} \u2212 {tell(first_duration)} = {tell(over)}")
    exact = left / (whole - hours)
    lines += per_hour_lines(left, over, whole - hours, exact)
    found = conclude("rate-for-the-rest", {**inputs, "duration": duration}, exact, "mL/h", rounding, tuple(lines))
    if 4 * exact > 5 * take("first rate", first_rate, "rate"):
        faster = "The rest would run more than a quarter faster than before (common practice, no source): ask first."
        return replace(found, cautions=(*found.cautions, faster))
    return found


def _first_part(
    volume: Measure, rate: Measure, duration: Measure
) -> tuple[dict[str, Measure | str], list[str], Fraction, Fraction]:
    """What the first rate gives: inputs, working, mL that are left, and the hours that have passed.

    Raises:
        QuantityError: nothing is left.
    """
    whole, speed = take("volume", volume, "volume"), take("first rate", rate, "rate")
    hours = take("first duration", duration, "duration")
    given = speed * hours
    if given >= whole:
        raise QuantityError(
            f"The first rate gives {tell_exact(given, 'mL')}, and nothing of {tell(volume)} is left.",
            "Look at the first rate and its time.",
        )
    lines = [] if rate.unit == "mL/h" else [f"{tell(rate)} = {tell_exact(speed, 'mL/h')}"]
    lines += [] if duration.unit == "h" else [f"{tell(duration)} = {tell_exact(hours, 'h')}"]
    lines.append(f"{tell_exact(speed, 'mL/h')} \u00d7 {tell_exact(hours, 'h')} = {tell_exact(given, 'mL')}")
    lines += [] if volume.unit == "mL" else [f"{tell(volume)} = {tell_exact(whole, 'mL')}"]
    lines.append(f"{tell_exact(whole, 'mL')} \u2212 {tell_exact(given, 'mL')} = {tell_exact(whole - given, 'mL')}")
    inputs: dict[str, Measure | str] = {"volume": volume, "first_rate": rate, "first_duration": duration}
    return inputs, lines, whole - given, hours
