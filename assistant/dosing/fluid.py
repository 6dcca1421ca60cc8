"""Fluid in a day: maintenance by weight, totals, balance, and intake by clock hour."""

import re
from datetime import datetime
from fractions import Fraction

from assistant.dosing import units
from assistant.dosing.body import kilograms
from assistant.dosing.course import Primary, course
from assistant.dosing.result import Measure, Result, conclude, moved_far, take, tell, tell_exact
from assistant.dosing.rounding import EXACT, TENTH, Rounding
from assistant.dosing.usual import beyond_usual
from assistant.errors import QuantityError
from assistant.text import quoted

MAINTENANCE: dict[str, tuple[tuple[int, int, int], str]] = {
    "4-2-1": ((4, 2, 1), "mL/kg/h"),
    "100-50-20": ((100, 50, 20), "mL/kg/day"),
}
"""For each kg of the first ten, of the second ten, and above."""
_TEN = Fraction(10)
MOST_A_DAY = 2400
"""mL a day that the rule is not taken beyond (common practice, no source)."""


def maintenance(
    weight: Measure, *, method: str = "4-2-1", unit: str | None = None, rounding: Rounding = TENTH
) -> Result:
    """Maintenance fluid of a child by body weight.

    Args:
        weight: kg, g or lb.
        method: 4-2-1 (mL/kg/h) or 100-50-20 (mL/kg/day): the first 10 kg, the second 10 kg, every kg above.
        unit: of the result; mL/h or mL/day by default, as the method counts.
        rounding: tenths by default.

    Raises:
        QuantityError: the weight is no body weight, or there is no such method.

    Source: Holliday and Segar, Pediatrics 1957; 19: 823, for 100-50-20; 4-2-1 is its rounding to an hour (both
    from memory). The two differ a little: 100 mL in 24 h are 4.17 mL/h.
    """
    name = "-".join(re.findall(r"\d+", method, re.ASCII))
    found = MAINTENANCE.get(name)
    if found is None:
        raise QuantityError(
            f"{quoted(method)} is not a rule for maintenance fluid.", f"Use one of: {', '.join(MAINTENANCE)}."
        )
    each, per = found
    kilos = kilograms(weight)
    bands = (min(kilos, _TEN), min(max(kilos - 10, Fraction(0)), _TEN), max(kilos - 20, Fraction(0)))
    flat = per.replace("/kg", "")
    total = sum((band * size for band, size in zip(bands, each, strict=True)), Fraction(0))
    lines = [] if weight.unit == "kg" else [f"{tell(weight)} = {tell_exact(kilos, 'kg')}"]
    lines += [
        f"{tell_exact(band, 'kg')} \u00d7 {size} {per} = {tell_exact(band * size, flat)}"
        for band, size in zip(bands, each, strict=True)
        if band
    ]
    lines.append(f"together {tell_exact(total, flat)}")
    wanted = units.unit(unit or flat).name
    exact = units.convert(total, flat, wanted)
    if wanted != flat:
        lines.append(f"{tell_exact(total, flat)} = {tell_exact(exact, wanted)}")
    cautions: tuple[str, ...] = (
        "For children, and without losses or illness that change the need: the prescriber decides.",
    )
    if units.convert(total, flat, "mL/day") > MOST_A_DAY:
        cautions = (*cautions, f"More than {MOST_A_DAY:,} mL a day, where the rule ends (common practice, no source).")
    return conclude("maintenance", {"weight": weight, "method": name}, exact, wanted, rounding, tuple(lines), cautions)


def sum_of_volumes(*volumes: Measure, unit: str = "mL", rounding: Rounding = EXACT) -> Result:
    """Several volumes together, such as an intake.

    Args:
        volumes: one or more; a cup or an ounce has to be converted first, by the factor that the lab uses.
        unit: of the result.
        rounding: exact by default.

    Raises:
        QuantityError: none came, or one is no volume.

    Source: the meaning of a sum.
    """
    if not volumes:
        raise QuantityError("At least one volume was expected, but none came.", "Give the volumes.")
    top = units.unit(unit).name
    total = sum((take(f"volume {n}", one, "volume") for n, one in enumerate(volumes, 1)), Fraction(0))
    exact = units.convert(total, "mL", top)
    line = f"{' + '.join(tell(one) for one in volumes)} = {tell_exact(exact, top)}"
    inputs = {f"volume {n}": one for n, one in enumerate(volumes, 1)}
    return conclude("sum-of-volumes", inputs, exact, top, rounding, (line,))


def fluid_balance(intake: Measure, output: Measure, *, rounding: Rounding = EXACT) -> Result:
    """Intake less output in mL; below zero where more went out.

    Args:
        intake: all that went in; zero is allowed.
        output: all that came out; zero is allowed.
        rounding: exact by default.

    Raises:
        QuantityError: an input is no volume or negative.

    Source: the meaning of a difference.
    """
    came, went = take("intake", intake, "volume", zero=True), take("output", output, "volume", zero=True)
    exact = came - went
    line = f"{tell_exact(came, 'mL')} \u2212 {tell_exact(went, 'mL')} = {tell_exact(exact, 'mL')}"
    inputs = {"intake": intake, "output": output}
    # A balance may be nothing or below zero, so it does not go through the check against rounding to zero.
    return Result("fluid-balance", inputs, exact, rounding.apply(exact), "mL", rounding, (line,))


def hourly_intake(start: datetime, rate: Measure, duration: Measure) -> tuple[Result, ...]:
    """Intake in mL of one line by clock hour; the first and last hour may be parts of one.

    Args:
        start: when the line begins to flow.
        rate: mL/h.
        duration: for how long.

    Returns:
        One result for each hour of the clock, in order.

    Raises:
        QuantityError: an input is of another kind or not above zero, or the time is longer than 31 days.

    Source: the flow formula, hour by hour.
    """
    given = take("rate", rate, "rate") * take("duration", duration, "duration")
    # The bag is one that lasts: what is asked is the line, not its bags.
    lasting = conclude("volume", {}, given + 1, "mL", EXACT, ())
    flow = course(start, duration, Primary("line", rate, lasting))
    inputs: dict[str, Measure | str] = {"start": f"{start:%H:%M}", "rate": rate, "duration": duration}
    too_fast = beyond_usual(rate.in_unit("mL/h"), "mL/h")
    found: list[Result] = []
    for hour, total in flow.hourly():
        line = f"from {hour:%H:%M}: {tell_exact(total, 'mL')}"
        value = TENTH.apply(total)
        at = {**inputs, "hour": f"{hour:%H:%M}"}
        cautions = (*moved_far(total, Fraction(value)), *too_fast)
        found.append(Result("hourly-intake", at, total, value, "mL", TENTH, (line,), cautions))
    return tuple(found)
