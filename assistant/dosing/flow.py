"""Flow by pump: rate, volume, duration, each from the other two; what the pump is told to deliver."""

from dataclasses import replace
from fractions import Fraction

from assistant.dosing import units
from assistant.dosing.result import Measure, Result, conclude, per_hour_lines, take, tell, tell_exact
from assistant.dosing.rounding import EXACT, TENTH, Rounding
from assistant.dosing.units import convert
from assistant.errors import QuantityError


def flow_rate(volume: Measure, duration: Measure, *, rounding: Rounding = TENTH) -> Result:
    """Rate in mL/h that gives a volume in a time.

    Args:
        volume: for example 1,000 mL.
        duration: for example 8 h.
        rounding: what the pump takes; tenths of mL/h by default.

    Raises:
        QuantityError: an input is not above zero or of another kind.

    Source: Open RN, Nursing Skills, chapter 5: mL/h = volume in mL / time in h.
    """
    millilitres, hours = take("volume", volume, "volume"), take("duration", duration, "duration")
    exact = millilitres / hours
    lines = per_hour_lines(millilitres, duration, hours, exact)
    if volume.unit != "mL":
        lines = (f"{tell(volume)} = {tell_exact(millilitres, 'mL')}", *lines)
    return conclude("rate", {"volume": volume, "duration": duration}, exact, "mL/h", rounding, lines)


def piggyback_rate(volume: Measure, duration: Measure, *, rounding: Rounding = TENTH) -> Result:
    """Rate in mL/h that gives an intermittent dose's whole volume in the ordered time.

    Args:
        volume: volume of the secondary bag, the drug's own volume included.
        duration: for example 30 min.
        rounding: what the pump takes; tenths of mL/h by default.

    Raises:
        QuantityError: an input is not above zero or of another kind.

    Source: US Army Subcourse MD0904, Lesson 2 Section IV, intermittent infusion: mL / min x 60 min/h.
    """
    plain = flow_rate(volume, duration, rounding=rounding)
    return replace(plain, formula="piggyback-rate")


def volume(rate: Measure, duration: Measure, *, rounding: Rounding = EXACT) -> Result:
    """Volume in mL that a rate gives in a time.

    Args:
        rate: for example 60 mL/h.
        duration: for example 12 h.
        rounding: exact by default.

    Raises:
        QuantityError: an input is not above zero or of another kind.

    Source: Open RN, Nursing Skills, chapter 5: the flow formula solved for volume.
    """
    speed, hours = take("rate", rate, "rate"), take("duration", duration, "duration")
    exact = speed * hours
    line = f"{_in(rate, speed, 'mL/h')} \u00d7 {_in(duration, hours, 'h')} = {tell_exact(exact, 'mL')}"
    return conclude(
        "volume",
        {"rate": rate, "duration": duration},
        exact,
        "mL",
        rounding,
        (*_turned(duration, hours, "h"), line),
    )


def duration(
    volume: Measure,
    rate: Measure,
    *,
    drop_factor: Measure | None = None,
    unit: str = "min",
    rounding: Rounding = TENTH,
) -> Result:
    """Time that a volume takes at a rate.

    Args:
        volume: for example 500 mL.
        rate: for example 75 mL/h; or 25 gtt/min, with
        drop_factor: drops per mL of the set.
        unit: min or h.
        rounding: tenths by default.

    Raises:
        QuantityError: an input is not above zero or of another kind.

    Source: Open RN, Nursing Skills, section 5.16 IV completion time. The exact fraction is carried: that
    text multiplies a four-place decimal of an hour by 60 and drops the excess.
    """
    millilitres = take("volume", volume, "volume")
    speed, lines = speed_of(rate, drop_factor)
    hours = millilitres / speed
    shown = tell_exact(speed, "mL/h") if drop_factor is not None else _in(rate, speed, "mL/h")
    lines.append(f"{_in(volume, millilitres, 'mL')} \u00f7 {shown} = {tell_exact(hours, 'h')}")
    name = units.unit(unit).name
    exact = convert(hours, "h", name)
    if name != "h":
        lines.append(f"{tell_exact(hours, 'h')} = {tell_exact(exact, name)}")
    inputs: dict[str, Measure | str] = {"volume": volume, "rate": rate}
    inputs |= {"drop_factor": drop_factor} if drop_factor is not None else {}
    return conclude("duration", inputs, exact, name, rounding, tuple(lines))


def speed_of(rate: Measure, drop_factor: Measure | None) -> tuple[Fraction, list[str]]:
    """A rate in mL/h, from drops a minute where a drop factor comes with it; the line that tells how.

    Raises:
        QuantityError: the rate is of another kind.
    """
    if drop_factor is None:
        if units.unit(rate.unit).kind == "drop rate":
            raise QuantityError(f"{tell(rate)} needs the set's drop factor too.", "Give a drop factor, or mL/h.")
        return take("rate", rate, "rate"), []
    per_hour, factor = take("rate", rate, "drop rate"), take("drop factor", drop_factor, "drop factor")
    speed = per_hour / factor
    line = (
        f"{tell_exact(per_hour / 60, 'gtt/min')} \u00d7 60 min/h \u00f7 {tell(drop_factor)}"
        f" = {tell_exact(speed, 'mL/h')}"
    )
    return speed, [line]


_OVERFILL = (
    "How much a bag holds beyond its label differs from bag to bag: count it only where local policy says so,"
    " and look at the bag before it runs dry."
)


def vtbi(
    bag_volume: Measure, reserve: Measure, *, overfill: Measure | None = None, rounding: Rounding = EXACT
) -> Result:
    """Volume to be infused in mL: the bag's less a reserve, so that the drip chamber does not run dry.

    Args:
        bag_volume: the volume on the bag's label, added drug volume included.
        reserve: what is left in the bag on purpose; zero is allowed.
        overfill: what the maker fills beyond the label, counted only where local policy says so.
        rounding: exact by default.

    Raises:
        QuantityError: an input is of another kind or negative, or nothing is left to infuse.

    Source: common practice, no source; the reserve is local policy.
    """
    held = take("bag volume", bag_volume, "volume")
    kept = take("reserve", reserve, "volume", zero=True)
    inputs: dict[str, Measure | str] = {"bag_volume": bag_volume, "reserve": reserve}
    first = _in(bag_volume, held, "mL")
    if overfill is not None:
        inputs["overfill"] = overfill
        extra = take("overfill", overfill, "volume", zero=True)
        held += extra
        first += f" + {_in(overfill, extra, 'mL')}"
    if kept >= held:
        raise QuantityError(
            f"The reserve of {tell(reserve)} leaves nothing of {tell(bag_volume)} to infuse.",
            "Give a smaller reserve.",
        )
    exact = held - kept
    line = f"{first} \u2212 {_in(reserve, kept, 'mL')} = {tell_exact(exact, 'mL')}"
    cautions = (_OVERFILL,) if overfill is not None else ()
    return conclude("vtbi", inputs, exact, "mL", rounding, (line,), cautions)


def remaining(volume: Measure, rate: Measure, elapsed: Measure, *, rounding: Rounding = EXACT) -> Result:
    """Volume in mL left of a volume to be infused after a time; zero once it is all in.

    Args:
        volume: what was to be infused at the start.
        rate: for example 75 mL/h.
        elapsed: time since the start; zero is allowed.
        rounding: exact by default.

    Raises:
        QuantityError: an input is of another kind or out of range.

    Source: the flow formula of `volume`.
    """
    start, speed = take("volume", volume, "volume"), take("rate", rate, "rate")
    hours = take("elapsed", elapsed, "duration", zero=True)
    given = min(start, speed * hours)
    lines = (
        f"{_in(rate, speed, 'mL/h')} \u00d7 {_in(elapsed, hours, 'h')} = {tell_exact(speed * hours, 'mL')}",
        f"{_in(volume, start, 'mL')} \u2212 {tell_exact(given, 'mL')} = {tell_exact(start - given, 'mL')}",
    )
    inputs = {"volume": volume, "rate": rate, "elapsed": elapsed}
    return conclude("remaining-volume", inputs, start - given, "mL", rounding, lines)


def remaining_time(
    volume: Measure, rate: Measure, elapsed: Measure, *, unit: str = "min", rounding: Rounding = TENTH
) -> Result:
    """Time left until a volume is in; zero once it is.

    Args:
        volume: what was to be infused at the start.
        rate: for example 75 mL/h.
        elapsed: time since the start; zero is allowed.
        unit: min or h.
        rounding: tenths by default.

    Raises:
        QuantityError: an input is of another kind or out of range.

    Source: the flow formula of `duration`.
    """
    left = remaining(volume, rate, elapsed)
    hours = left.exact / rate.in_unit("mL/h")
    name = units.unit(unit).name
    exact = convert(hours, "h", name)
    speed = _in(rate, rate.in_unit("mL/h"), "mL/h")
    lines = [*left.working, f"{tell_exact(left.exact, 'mL')} \u00f7 {speed} = {tell_exact(hours, 'h')}"]
    if name != "h":
        lines.append(f"{tell_exact(hours, 'h')} = {tell_exact(exact, name)}")
    inputs = {"volume": volume, "rate": rate, "elapsed": elapsed}
    return conclude("remaining-time", inputs, exact, name, rounding, tuple(lines))


def lasts(available: Measure, rate: Measure, wanted: Measure) -> Result:
    """Whether a bag lasts the ordered time: the volume missing in mL, zero where it lasts.

    Args:
        available: what can be infused from the bag (see `vtbi`).
        rate: for example 125 mL/h.
        wanted: the ordered time.

    Raises:
        QuantityError: an input is of another kind or not above zero.

    Source: the flow formula of `volume`.
    """
    have, speed = take("available", available, "volume"), take("rate", rate, "rate")
    hours = take("wanted", wanted, "duration")
    need = speed * hours
    missing = max(Fraction(0), need - have)
    lines: tuple[str, ...] = (
        f"{_in(rate, speed, 'mL/h')} \u00d7 {_in(wanted, hours, 'h')} = {tell_exact(need, 'mL')} needed",
    )
    cautions: tuple[str, ...] = ()
    if missing:
        end = tell_exact(have / speed, "h")
        lines = (
            *lines,
            f"{tell_exact(need, 'mL')} \u2212 {_in(available, have, 'mL')} = {tell_exact(missing, 'mL')} missing",
        )
        cautions = (f"This bag ends after {end}, before the ordered time is over: have the next bag ready.",)
    inputs = {"available": available, "rate": rate, "wanted": wanted}
    return conclude("bag-lasts", inputs, missing, "mL", EXACT, lines, cautions)


def _in(given: Measure, base: Fraction, unit: str) -> str:
    """An input inside a line: as it came where it is in the line's unit already, else converted."""
    return tell(given) if given.unit == unit else tell_exact(base, unit)


def _turned(given: Measure, base: Fraction, unit: str) -> tuple[str, ...]:
    """A line for a conversion, where there is one."""
    return () if given.unit == unit else (f"{tell(given)} = {tell_exact(base, unit)}",)
