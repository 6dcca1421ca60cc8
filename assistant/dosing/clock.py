"""Clock times: when an infusion ends, when the next thing is due; over midnight and the two clock changes.

An infusion takes the same time whatever the clocks do, so a time with a zone is added to in UTC and read off
the wall again afterwards.
"""

import re
from collections.abc import Mapping
from dataclasses import dataclass
from datetime import UTC, date, datetime, time, timedelta, tzinfo
from fractions import Fraction
from zoneinfo import ZoneInfo

from assistant.dosing.flow import speed_of
from assistant.dosing.result import Measure, take, tell, tell_exact
from assistant.errors import QuantityError
from assistant.text import quoted

_TIME = re.compile(r"(?P<hour>\d{1,2}):(?P<minute>\d{2})|(?P<four>\d{4})(?:\s*(?:h|hours))?", re.ASCII)
_HALF_DAY = re.compile(r"(?P<hour>\d{1,2})(?::(?P<minute>\d{2}))?\s*(?P<half>[ap])\.?m\.?", re.ASCII | re.IGNORECASE)
_DATED = re.compile(r"(?P<date>\d{4}-\d{2}-\d{2})[ T](?P<time>\d.*)", re.ASCII)
_ANY_DAY = date(2000, 1, 1)


@dataclass(frozen=True)
class Moment:
    """A time on the clock that follows from a start.

    Attributes:
        formula: the formula's name.
        inputs: what went in, by name.
        at: the time, to the nearest minute; with a zone where the start had one.
        text: as it is shown: ``04:40 next day``.
        working: lines that can be shown, and spoken.
    """

    formula: str
    inputs: Mapping[str, Measure | str]
    at: datetime
    text: str
    working: tuple[str, ...]

    def __str__(self) -> str:
        return self.text


def zone(name: str) -> ZoneInfo:
    """A time zone by its IANA name.

    Raises:
        QuantityError: there is no such zone on this machine.
    """
    try:
        return ZoneInfo(name)
    # A name can also be a folder, hold a zero byte, or leave the folder: every one means "no such zone".
    except (KeyError, ValueError, OSError) as cause:
        raise QuantityError(
            f"{quoted(name)} is not a time zone known on this machine.", "Give a name such as Europe/London."
        ) from cause


def parse_start(text: str, zone_name: str = "", *, second: bool | None = None) -> datetime:
    """Read a start: ``22:00``, ``2200``, ``10 pm``, or ``2026-10-25 00:30`` with a zone.

    Args:
        text: the time of day, with or without a date before it.
        zone_name: IANA name; needs the date. Without it the clocks are taken not to change.
        second: which of two equal times is meant, where clocks go back.

    Raises:
        QuantityError: no such time, or a time that the clock change leaves out or shows twice.
    """
    bare = text.strip()
    dated = _DATED.fullmatch(bare)
    clock = _time_of_day(dated["time"] if dated else bare)
    if clock is None:
        raise QuantityError(
            f"Expected a time such as 22:00 or 2026-10-25 22:00, got {quoted(bare)}.", "Use the 24-hour clock."
        )
    try:
        day = date.fromisoformat(dated["date"]) if dated else _ANY_DAY
    except ValueError as cause:
        raise QuantityError(f"{quoted(bare)} is not a day of the calendar.", "Look at the date.") from cause
    at = datetime.combine(day, clock)
    if not zone_name:
        return at
    if dated is None:
        raise QuantityError("A time zone needs the date too.", "Write the start like 2026-10-25 22:00.")
    return _in_zone(at, zone(zone_name), second)


def _time_of_day(text: str) -> time | None:
    """``22:00``, ``2200`` or ``10:00 pm``; noon is 12 pm and midnight 12 am (from memory)."""
    if (half := _HALF_DAY.fullmatch(text)) is not None:
        hour, minute = int(half["hour"]), int(half["minute"] or 0)
        if not 1 <= hour <= 12:
            return None
        hour = hour % 12 + (12 if half["half"] in "pP" else 0)
    elif (whole := _TIME.fullmatch(text)) is not None:
        four = whole["four"]
        hour = int(four[:2] if four else whole["hour"])
        minute = int(four[2:] if four else whole["minute"])
    else:
        return None
    return time(hour, minute) if hour <= 23 and minute <= 59 else None


def _in_zone(at: datetime, where: tzinfo, second: bool | None) -> datetime:
    first, again = at.replace(tzinfo=where), at.replace(tzinfo=where, fold=1)
    if first.utcoffset() == again.utcoffset():
        return first
    if first.astimezone(UTC).astimezone(where).replace(tzinfo=None) != at:
        raise QuantityError(
            f"{at:%H:%M} does not exist on {at:%Y-%m-%d}: the clocks go forward.", "Give the time after the change."
        )
    if second is None:
        raise QuantityError(
            f"{at:%H:%M} comes twice on {at:%Y-%m-%d}: the clocks go back.", "Say whether the first or second is meant."
        )
    return again if second else first


def later(start: datetime, hours: Fraction) -> datetime:
    """The time so many hours after a start, to the nearest microsecond.

    Raises:
        QuantityError: beyond the calendar.
    """
    micro = (hours * 3_600_000_000 * 2 + 1).__floor__() // 2
    try:
        if start.tzinfo is None:
            return start + timedelta(microseconds=micro)
        return (start.astimezone(UTC) + timedelta(microseconds=micro)).astimezone(start.tzinfo)
    except OverflowError as cause:
        raise QuantityError("That time is beyond the calendar.", "Look at the rate and its unit.") from cause


def nearest_minute(at: datetime) -> datetime:
    """The nearest whole minute, half a minute up."""
    whole = at.replace(second=0, microsecond=0)
    rest = timedelta(seconds=at.second, microseconds=at.microsecond)
    return later(whole, Fraction(1, 60)) if rest >= timedelta(seconds=30) else whole


def wall(at: datetime, start: datetime) -> str:
    """A time as it stands on the wall, with the day where it is another one than the start's."""
    days = (at.date() - start.date()).days
    text = f"{at:%H:%M}"
    if at.tzinfo is not None and at.utcoffset() != start.utcoffset():
        text += f" {at.tzname()}"
    if days == 1:
        return f"{text} next day"
    if days == -1:
        return f"{text} the day before"
    if days < 0:
        return f"{text} {-days} days before"
    return f"{text} {days} days later" if days else text


def completion_time(
    start: datetime,
    *,
    duration: Measure | None = None,
    volume: Measure | None = None,
    rate: Measure | None = None,
    drop_factor: Measure | None = None,
) -> Moment:
    """When an infusion ends, to the nearest minute.

    Args:
        start: when it began (see `parse_start`).
        duration: how long it takes; or else
        volume: what is to be infused, with
        rate: its rate, or drops a minute with
        drop_factor: drops per mL of the set.

    Raises:
        QuantityError: an input is missing, of another kind or not above zero.

    Source: Open RN, Nursing Skills, section 5.16 IV completion time.
    """
    inputs: dict[str, Measure | str] = {"start": start.isoformat(sep=" ", timespec="minutes")}
    hours, lines = _takes("A completion time", duration, volume, rate, drop_factor, inputs)
    lines.append(f"{start:%H:%M} and {tell(duration) if duration is not None else hours_and_minutes(hours)}")
    return _moment("completion-time", inputs, start, hours, lines)


def latest_start(
    end: datetime,
    *,
    duration: Measure | None = None,
    volume: Measure | None = None,
    rate: Measure | None = None,
) -> Moment:
    """When an infusion must begin to end by a time, to the nearest minute.

    Args:
        end: when it has to be over.
        duration: how long it takes; or else
        volume: what is to be infused, with
        rate: its rate.

    Raises:
        QuantityError: an input is missing, of another kind or not above zero.

    Source: `completion_time` solved for the start.
    """
    inputs: dict[str, Measure | str] = {"end": end.isoformat(sep=" ", timespec="minutes")}
    hours, lines = _takes("A latest start", duration, volume, rate, None, inputs)
    lines.append(f"{end:%H:%M} less {tell(duration) if duration is not None else hours_and_minutes(hours)}")
    return _moment("latest-start", inputs, end, -hours, lines)


def next_bag_due(
    start: datetime,
    bag_volume: Measure,
    rate: Measure,
    *,
    reserve: Measure | None = None,
    ahead: Measure | None = None,
) -> Moment:
    """When the next bag is due: the bag less its reserve has run in.

    Args:
        start: when the bag began to flow.
        bag_volume: as on its label.
        rate: mL/h.
        reserve: what is left in the bag on purpose; none where left out.
        ahead: how long before that the bag has to be at hand; none where left out.

    Raises:
        QuantityError: an input is of another kind, not above zero, or the reserve leaves nothing.

    Source: `flow.vtbi` and the flow formula.
    """
    held = take("bag volume", bag_volume, "volume")
    kept = take("reserve", reserve, "volume", zero=True) if reserve is not None else Fraction(0)
    early = take("ahead", ahead, "duration", zero=True) if ahead is not None else Fraction(0)
    inputs: dict[str, Measure | str] = {
        "start": start.isoformat(sep=" ", timespec="minutes"),
        "bag_volume": bag_volume,
        "rate": rate,
    }
    inputs |= {name: given for name, given in (("reserve", reserve), ("ahead", ahead)) if given is not None}
    if kept >= held:
        raise QuantityError(f"The reserve leaves nothing of {tell(bag_volume)}.", "Give a smaller reserve.")
    hours = (held - kept) / take("rate", rate, "rate")
    lines = []
    if kept:
        lines.append(f"{tell_exact(held, 'mL')} \u2212 {tell_exact(kept, 'mL')} = {tell_exact(held - kept, 'mL')}")
    lines.append(f"{tell_exact(held - kept, 'mL')} \u00f7 {tell(rate)} = {hours_and_minutes(hours)}")
    if early > hours:
        raise QuantityError(
            f"The bag runs for {hours_and_minutes(hours)}, less than the time ahead.", "Have the next bag ready now."
        )
    before = f", less {hours_and_minutes(early)}" if early else ""
    lines.append(f"{start:%H:%M} and {hours_and_minutes(hours)}{before}")
    return _moment("next-bag-due", inputs, start, hours - early, lines)


def _takes(
    what: str,
    duration: Measure | None,
    volume: Measure | None,
    rate: Measure | None,
    drop_factor: Measure | None,
    inputs: dict[str, Measure | str],
) -> tuple[Fraction, list[str]]:
    """How many hours it takes, from a duration or from a volume with its rate; the lines that tell how."""
    if duration is not None and volume is None and rate is None:
        inputs["duration"] = duration
        return take("duration", duration, "duration"), []
    if duration is None and volume is not None and rate is not None:
        inputs |= {"volume": volume, "rate": rate}
        inputs |= {"drop_factor": drop_factor} if drop_factor is not None else {}
        speed, lines = speed_of(rate, drop_factor)
        hours = take("volume", volume, "volume") / speed
        shown = tell(rate) if drop_factor is None else tell_exact(speed, "mL/h")
        return hours, [*lines, f"{tell(volume)} \u00f7 {shown} = {hours_and_minutes(hours)}"]
    raise QuantityError(f"{what} needs either the duration, or the volume with its rate.", "Give one of the two.")


def due_time(start: datetime, interval: Measure) -> Moment:
    """When something is due: the next bag, the end of a hang time, the change of a set.

    Args:
        start: when the bag was hung or the set first used.
        interval: the time that the order or local policy gives.

    Raises:
        QuantityError: the interval is no duration or not above zero.

    Source: the interval is policy; `limits` holds published ones with their sources.
    """
    hours = take("interval", interval, "duration")
    inputs: dict[str, Measure | str] = {
        "start": start.isoformat(sep=" ", timespec="minutes"),
        "interval": interval,
    }
    return _moment("due-time", inputs, start, hours, [f"{start:%H:%M} and {tell(interval)}"])


def hours_and_minutes(hours: Fraction) -> str:
    """A time as hours and minutes: ``6 h 40 min``; tenths of a minute where there are any."""
    minutes = hours * 60
    whole, rest = divmod(minutes, 60)
    parts = ([f"{whole} h"] if whole else []) + ([tell_exact(rest, "min")] if rest or not whole else [])
    return " ".join(parts)


def _moment(
    formula: str, inputs: Mapping[str, Measure | str], start: datetime, hours: Fraction, lines: list[str]
) -> Moment:
    exact = later(start, hours)
    at = nearest_minute(exact)
    text = wall(at, start)
    lines[-1] += f": {text}"
    if start.tzinfo is not None and at.utcoffset() != start.utcoffset():
        lines.append("the clocks change on the way")
    return Moment(formula, dict(inputs), at, text, tuple(lines))
