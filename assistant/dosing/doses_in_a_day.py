"""A day's dose in parts: how much each time, how much in all."""

from fractions import Fraction

from assistant.dosing import units
from assistant.dosing.dose import dose_by_weight
from assistant.dosing.result import Measure, Result, conclude, take, tell, tell_exact
from assistant.dosing.rounding import EXACT, Rounding
from assistant.errors import QuantityError

_DAY = Fraction(24)


def divided_dose(
    daily: Measure,
    *,
    interval: Measure | None = None,
    doses: Measure | None = None,
    weight: Measure | None = None,
    unit: str | None = None,
    rounding: Rounding = EXACT,
) -> Result:
    """One of the equal doses into which a day's dose is divided.

    Args:
        daily: for example 50 mg/kg/day, or 2 g/day.
        interval: time from dose to dose, such as 6 h; or else
        doses: how many a day, such as 4 doses.
        weight: body weight, where the daily dose is per kg.
        unit: of the result; the daily dose's own by default.
        rounding: exact by default.

    Raises:
        QuantityError: an input is missing, not above zero or of another kind.

    Source: the meaning of a division; common practice, no source.
    """
    times, first = _times(interval, doses)
    inputs: dict[str, Measure | str] = {"daily": daily}
    inputs |= {"interval": interval} if interval is not None else {}
    inputs |= {"doses": doses} if doses is not None else {}
    lines: list[str] = []
    whole: Measure = daily
    top = daily.unit.split("/")[0]
    if units.unit(daily.unit).kind == "dose rate per weight":
        if weight is None:
            raise QuantityError(f"{tell(daily)} is per kg, but no weight came.", "Give the weight, such as 14 kg.")
        whole = dose_by_weight(daily, weight, unit=f"{top}/day")
        lines += whole.working
    elif weight is not None:
        raise QuantityError(f"{tell(daily)} is not per kg, but a weight came.", "Leave it out.")
    if weight is not None:
        inputs["weight"] = weight
    take("daily", whole, "dose rate")
    wanted = units.unit(unit or top).name
    in_a_day = whole.in_unit(f"{wanted}/day")
    exact = in_a_day / times
    lines += first
    lines.append(f"{tell_exact(in_a_day, wanted)} \u00f7 {tell_exact(times, 'dose')} = {tell_exact(exact, wanted)}")
    return conclude("divided-dose", inputs, exact, wanted, rounding, tuple(lines))


def daily_dose(
    dose: Measure,
    *,
    interval: Measure | None = None,
    doses: Measure | None = None,
    unit: str | None = None,
    rounding: Rounding = EXACT,
) -> Result:
    """A day's dose from one dose and how often it is given.

    Args:
        dose: for example 1 g.
        interval: time from dose to dose, such as 8 h; or else
        doses: how many a day, such as 3 doses.
        unit: of the result; the dose's own a day by default.
        rounding: exact by default.

    Raises:
        QuantityError: an input is missing, not above zero or of another kind.

    Source: the meaning of a product; common practice, no source.
    """
    take("dose", dose, "dose")
    times, lines = _times(interval, doses)
    wanted = units.unit(unit or f"{dose.unit}/day").name
    per_day = units.unit(f"{dose.unit}/day").name
    value = dose.in_unit(dose.unit) * times
    exact = units.convert(value, per_day, wanted)
    lines.append(f"{tell(dose)} \u00d7 {tell_exact(times, 'dose')} = {tell_exact(value, per_day)}")
    if wanted != per_day:
        lines.append(f"{tell_exact(value, per_day)} = {tell_exact(exact, wanted)}")
    inputs: dict[str, Measure | str] = {"dose": dose}
    inputs |= {"interval": interval} if interval is not None else {}
    inputs |= {"doses": doses} if doses is not None else {}
    return conclude("daily-dose", inputs, exact, wanted, rounding, tuple(lines))


def _times(interval: Measure | None, doses: Measure | None) -> tuple[Fraction, list[str]]:
    """Doses a day, with the line that tells how they follow."""
    if interval is not None and doses is None:
        hours = take("interval", interval, "duration")
        return _DAY / hours, [f"24 h \u00f7 {tell(interval)} = {tell_exact(_DAY / hours, 'dose')} a day"]
    if doses is not None and interval is None:
        times = take("doses", doses, "doses")
        if times.denominator != 1:
            raise QuantityError(f"The number of doses must be whole, but you gave {tell(doses)}.", "Count again.")
        return times, []
    raise QuantityError(
        "The doses of a day need either the interval between them, or their number.",
        "Give an interval such as 6 h, or doses such as 4 doses.",
    )
