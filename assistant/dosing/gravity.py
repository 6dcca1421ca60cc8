"""Flow by gravity: drops counted and drops ordered. A drop is whole; nobody counts a part of one."""

import itertools
from collections.abc import Sequence
from decimal import Decimal
from fractions import Fraction

from assistant.dosing import units
from assistant.dosing.amount import Amount
from assistant.dosing.result import Measure, Result, conclude, take, tell, tell_exact
from assistant.dosing.rounding import TENTH, WHOLE, Rounding, root
from assistant.errors import QuantityError

DROP_FACTORS = (10, 15, 20, 60)
"""Drops per mL of the usual sets: Open RN, Nursing Skills, section 5.14. Other factors are taken too."""

TOLERANCE_PERCENT = Amount(Decimal(10), "%")
"""How far a counted rate may be off the ordered one; common practice, no source: local policy decides."""


def drop_rate(
    drop_factor: Measure,
    *,
    rate: Measure | None = None,
    volume: Measure | None = None,
    duration: Measure | None = None,
    rounding: Rounding = WHOLE,
) -> Result:
    """Drops per minute, from a rate or from a volume with its time.

    Args:
        drop_factor: drops per mL of the set, printed on its package.
        rate: mL/h; or else
        volume: mL, with
        duration: its time.
        rounding: whole drops by default.

    Raises:
        QuantityError: an input is missing, not above zero or of another kind.

    Source: US Army Subcourse MD0904, Lesson 2 Section IV: gtt/min = mL x gtt/mL / min.
    """
    factor = take("drop factor", drop_factor, "drop factor")
    inputs: dict[str, Measure | str] = {"drop_factor": drop_factor}
    if rate is not None and volume is None and duration is None:
        inputs["rate"] = rate
        speed = take("rate", rate, "rate")
        first = tell_exact(speed, "mL/h")
        exact = speed * factor / 60
        line = f"{first} \u00d7 {tell(drop_factor)} \u00f7 60 min/h = {tell_exact(exact, 'gtt/min')}"
        lines: tuple[str, ...] = (line,)
    elif rate is None and volume is not None and duration is not None:
        inputs |= {"volume": volume, "duration": duration}
        millilitres, hours = take("volume", volume, "volume"), take("duration", duration, "duration")
        minutes = hours * 60
        exact = millilitres * factor / minutes
        turned = () if duration.unit == "min" else (f"{tell(duration)} = {tell_exact(minutes, 'min')}",)
        lines = (
            *turned,
            f"{tell_exact(millilitres, 'mL')} \u00d7 {tell(drop_factor)} \u00f7 {tell_exact(minutes, 'min')}"
            f" = {tell_exact(exact, 'gtt/min')}",
        )
    else:
        raise QuantityError(
            "A drop rate needs either the rate, or the volume with its duration.",
            "Give one of the two and not both.",
        )
    return conclude("drop-rate", inputs, exact, "gtt/min", rounding, lines)


def rate_from_drops(drops: Measure, window: Measure, drop_factor: Measure, *, rounding: Rounding = TENTH) -> Result:
    """Rate in mL/h from drops counted in a time.

    Args:
        drops: whole drops counted, for example 15 gtt.
        window: how long they were counted: 15, 30 or 60 s by habit, any time is taken.
        drop_factor: drops per mL of the set.
        rounding: tenths of mL/h by default.

    Raises:
        QuantityError: an input is not above zero, of another kind, or part of a drop.

    Source: the formula of `drop_rate` solved for the rate.
    """
    counted = take("drops", drops, "drops")
    hours = take("window", window, "duration")
    factor = take("drop factor", drop_factor, "drop factor")
    if counted.denominator != 1:
        raise QuantityError(f"Drops are whole, but {tell(drops)} came.", "Count again.")
    minutes = hours * 60
    per_minute = counted / minutes
    exact = per_minute * 60 / factor
    lines = (
        f"{tell(drops)} \u00f7 {tell_exact(minutes, 'min')} = {tell_exact(per_minute, 'gtt/min')}",
        f"{tell_exact(per_minute, 'gtt/min')} \u00d7 60 min/h \u00f7 {tell(drop_factor)} = {tell_exact(exact, 'mL/h')}",
    )
    inputs = {"drops": drops, "window": window, "drop_factor": drop_factor}
    return conclude("rate-from-drops", inputs, exact, "mL/h", rounding, lines)


def rate_from_drop_rate(drop_rate: Measure, drop_factor: Measure, *, rounding: Rounding = TENTH) -> Result:
    """Rate in mL/h from drops per minute.

    Args:
        drop_rate: for example 30 gtt/min.
        drop_factor: drops per mL of the set.
        rounding: tenths of mL/h by default.

    Raises:
        QuantityError: an input is not above zero or of another kind.

    Source: the formula of `drop_rate` solved for the rate.
    """
    per_hour = take("drop rate", drop_rate, "drop rate")
    factor = take("drop factor", drop_factor, "drop factor")
    exact = per_hour / factor
    line = (
        f"{tell_exact(per_hour / 60, 'gtt/min')} \u00d7 60 min/h \u00f7 {tell(drop_factor)}"
        f" = {tell_exact(exact, 'mL/h')}"
    )
    inputs = {"drop_rate": drop_rate, "drop_factor": drop_factor}
    return conclude("rate-from-drop-rate", inputs, exact, "mL/h", rounding, (line,))


def percent_off(
    found: Measure, ordered: Measure, *, tolerance: Measure = TOLERANCE_PERCENT, rounding: Rounding = TENTH
) -> Result:
    """How far a rate is off the ordered one, in percent: above zero is too fast.

    Args:
        found: the rate that was counted, in mL/h or gtt/min.
        ordered: the rate that was ordered, in the same kind of unit.
        tolerance: percentage that local policy allows; the working names it.
        rounding: tenths of a percent by default.

    Raises:
        QuantityError: an input is of another kind or the ordered rate is not above zero.

    Source: the meaning of a percentage; the tolerance is common practice, no source.
    """
    kind, unit = ("drop rate", "gtt/min") if units.unit(ordered.unit).kind == "drop rate" else ("rate", "mL/h")
    size = units.unit(unit).factor
    runs = take("found", found, kind, zero=True) / size
    right = take("ordered", ordered, kind) / size
    allowed = take("tolerance", tolerance, "percentage", zero=True)
    exact = (runs - right) / right * 100
    side = "too fast" if exact > 0 else "too slow"
    verdict = "within" if abs(exact) <= allowed else f"{side}: outside"
    lines = (
        f"({tell_exact(runs, unit)} \u2212 {tell_exact(right, unit)}) \u00f7 {tell_exact(right, unit)}"
        f" = {tell_exact(exact, '%')}",
        f"{verdict} the tolerance of {tell(tolerance)}",
    )
    cautions = () if abs(exact) <= allowed else (f"The rate is {side}: set the roller clamp again and recount.",)
    inputs = {"found": found, "ordered": ordered, "tolerance": tolerance}
    value = rounding.apply(exact)
    # A deviation may be nothing at all, so it does not go through the check against rounding to zero.
    return Result("percent-off", inputs, exact, value, "%", rounding, lines, cautions)


def live_count(times: Sequence[Decimal], drop_factor: Measure, *, rounding: Rounding = TENTH) -> tuple[Result, Result]:
    """Rate in mL/h from the times at which drops fell, with its uncertainty in mL/h.

    Args:
        times: seconds, rising, one for each drop (tapped or spoken); three at least.
        drop_factor: drops per mL of the set.
        rounding: tenths of mL/h by default.

    Returns:
        The rate, and twice the standard error of the rate by the scatter of the intervals.

    Raises:
        QuantityError: too few drops, or times that do not rise.

    Source: standard error of a mean, JCGM 100:2008 (GUM), section 4.2 (from memory). The set's own tolerance
    is not in it: ISO 8536-4 allows 20 drops to be 1 mL give or take 0.1 mL (from memory).
    """
    factor = take("drop factor", drop_factor, "drop factor")
    if len(times) < 3:
        raise QuantityError(f"Three drops at least are needed, but {len(times)} came.", "Mark more drops.")
    if len(times) > 10_000 or not all(isinstance(t, Decimal) and t.is_finite() for t in times):
        raise QuantityError("Up to 10,000 times in seconds were expected.", "Mark the drops again.")
    seconds = [Fraction(t) for t in times]
    gaps = [later - sooner for sooner, later in itertools.pairwise(seconds)]
    if min(gaps) <= 0:
        raise QuantityError("The times of the drops must rise.", "Mark the drops again.")
    count = len(gaps)
    mean = sum(gaps, Fraction(0)) / count
    exact = 3600 / mean / factor
    variance = sum(((gap - mean) ** 2 for gap in gaps), Fraction(0)) / (count - 1)
    spread = 2 * exact * root(variance / count) / mean
    inputs = {"drop_factor": drop_factor, "drops": f"{len(times)}"}
    lines = (
        f"{count} intervals, {tell_exact(mean, 's')} on average",
        f"3,600 s/h \u00f7 {tell_exact(mean, 's')} \u00f7 {tell(drop_factor)} = {tell_exact(exact, 'mL/h')}",
    )
    cautions = ("The size of a drop is not in the uncertainty: a set's own tolerance comes on top.",)
    return (
        conclude("live-count", inputs, exact, "mL/h", rounding, lines, cautions),
        Result(
            "live-count-uncertainty",
            inputs,
            spread,
            rounding.apply(spread),
            "mL/h",
            rounding,
            lines,
            cautions,
        ),
    )
