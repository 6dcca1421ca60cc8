"""A course as people write it: a table of texts, as a TOML file holds it."""

from collections.abc import Iterable, Mapping
from datetime import UTC, datetime, timedelta
from decimal import Decimal
from fractions import Fraction

from assistant.dosing import clock
from assistant.dosing.amount import Amount, parse_amount
from assistant.dosing.course import Pause, Primary, RateChange, Secondary, course
from assistant.dosing.result import take, tell_exact
from assistant.dosing.timeline import Course
from assistant.errors import QuantityError
from assistant.text import SHORT, quoted, shown

_TOP = {"start", "zone", "second", "length", "primary", "secondary", "pause", "change"}
_PRIMARY = {"name", "rate", "bag_volume", "reserve", "bags", "change_takes", "starts", "keep_open"}
_SECONDARY = {"name", "volume", "rate", "duration", "due", "late", "every", "times", "tubing"}
_PAUSE = {"line", "at", "lasts"}
_CHANGE = {"at", "rate"}
_MOST_DOSES = 200


class _Table:
    """One table of the file: hands out its fields, and names the place in every error."""

    def __init__(self, given: object, place: str, known: Iterable[str]) -> None:
        self.place, self.known = place, sorted(known)
        if not isinstance(given, Mapping):
            raise QuantityError(f"{place} must be a table.", f"Its fields are: {', '.join(self.known)}.")
        self.given = given
        for name in given:
            if name not in self.known:
                raise QuantityError(
                    f"{place} has no field {quoted(name)}.", f"Its fields are: {', '.join(self.known)}."
                )

    def text(self, name: str) -> str | None:
        found = self.given.get(name)
        if found is None:
            return None
        if not isinstance(found, str) or not found.strip() or len(found) > 200 or not found.isprintable():
            raise QuantityError(f"{self.place}: {name} must be a text in quotation marks.", f'Write {name} = "...".')
        return found.strip()

    def needed(self, name: str) -> str:
        found = self.text(name)
        if found is None:
            raise QuantityError(f"{self.place} lacks {name}.", f'Write {name} = "...".')
        return found

    def amount(self, name: str) -> Amount | None:
        found = self.text(name)
        if found is None:
            return None
        try:
            return parse_amount(found)
        except QuantityError as cause:
            raise QuantityError(f"{self.place}, {name}: {cause.what}", cause.remedy) from cause

    def needed_amount(self, name: str) -> Amount:
        self.needed(name)
        found = self.amount(name)
        if found is None:
            raise QuantityError(f"{self.place} lacks {name}.", f'Write {name} = "...".')
        return found

    def count(self, name: str, otherwise: int) -> int:
        found = self.given.get(name, otherwise)
        if isinstance(found, bool) or not isinstance(found, int):
            raise QuantityError(f"{self.place}: {name} must be a whole number.", f"Write {name} = {otherwise}.")
        return found

    def moment(self, name: str, start: datetime) -> Amount | None:
        """A time of the course: a clock time such as 09:00, or a duration after the start such as 90 min."""
        found = self.text(name)
        if found is None or ":" not in found:
            return self.amount(name)
        try:
            return _after(start, found)
        except QuantityError as cause:
            raise QuantityError(f"{self.place}, {name}: {cause.what}", cause.remedy) from cause


def course_from(table: Mapping[str, object]) -> Course:
    """Work out the course that a table describes.

    Args:
        table: ``start``, ``length``, optional ``zone`` (and ``second = true`` where clocks go back); a table
            ``primary``; tables ``secondary``, ``pause`` and ``change``, any number of each. Amounts are texts
            such as "75 mL/h"; a time is a duration after the start, or a clock time such as "09:00".

    Raises:
        QuantityError: a field is missing, unknown or wrong; the sentence names its place.
    """
    top = _Table(table, "The course", _TOP)
    second = table.get("second")
    if second is not None and not isinstance(second, bool):
        raise QuantityError("The course: second must be true or false.", "Write second = true.")
    start = clock.parse_start(top.needed("start"), top.text("zone") or "", second=second)
    given = _Table(table.get("primary"), "The primary", _PRIMARY)
    primary = Primary(
        given.text("name") or "primary",
        given.needed_amount("rate"),
        given.needed_amount("bag_volume"),
        given.amount("reserve"),
        given.count("bags", 1),
        given.amount("change_takes"),
        given.moment("starts", start),
        given.amount("keep_open"),
    )
    secondaries: list[Secondary] = []
    for place, one in enumerate(_list(table, "secondary"), 1):
        secondaries += _secondaries(_Table(one, f"Secondary {place}", _SECONDARY), f"secondary {place}", start)
        if len(secondaries) > _MOST_DOSES:
            raise QuantityError(f"A course takes {_MOST_DOSES} doses at most.", "Give a shorter course.")
    pauses = []
    for place, one in enumerate(_list(table, "pause"), 1):
        part = _Table(one, f"Pause {place}", _PAUSE)
        pauses.append(Pause(part.text("line") or "all", part.moment("at", start), part.amount("lasts")))
    changes = []
    for place, one in enumerate(_list(table, "change"), 1):
        part = _Table(one, f"Change {place}", _CHANGE)
        at = part.moment("at", start)
        if at is None:
            raise QuantityError(f"Change {place} lacks at.", 'Write at = "4 h".')
        changes.append(RateChange(at, part.needed_amount("rate")))
    return course(start, top.needed_amount("length"), primary, secondaries, pauses, changes)


def _list(table: Mapping[str, object], name: str) -> list[object]:
    found = table.get(name, [])
    if not isinstance(found, list):
        raise QuantityError(f"The course: {name} must be a list of tables.", f"Write [[{name}]].")
    return found


def _secondaries(given: _Table, name: str, start: datetime) -> list[Secondary]:
    """One entry's doses: one, or as many as `times` says, `every` so often."""
    name = given.text("name") or name
    times, every = given.count("times", 1), given.amount("every")
    if not 1 <= times <= _MOST_DOSES:
        raise QuantityError(f"{given.place}: times must lie between 1 and {_MOST_DOSES}.", "Write times = 3.")
    if (times > 1) != (every is not None):
        raise QuantityError(f"{given.place} needs every and times together.", 'Write every = "8 h" and times = 3.')
    due = given.moment("due", start)
    first = take("due", due, "duration", zero=True) if due is not None else Fraction(0)
    gap = take("every", every, "duration") if every is not None else Fraction(0)
    volume, rate, duration = given.needed_amount("volume"), given.amount("rate"), given.amount("duration")
    late, tubing = given.amount("late"), given.amount("tubing")
    doses = []
    for count in range(times):
        # Minutes of whole texts end in decimals, so a dose's time stays exact as an amount.
        at = _minutes(first + gap * count)
        label = name if times == 1 else f"{name}, dose {count + 1}"
        doses.append(Secondary(label, volume, at, rate, duration, late, tubing))
    return doses


def _minutes(hours: Fraction) -> Amount:
    seconds = hours * 3600
    if seconds.denominator != 1:
        raise QuantityError(
            f"{tell_exact(hours, 'h')} is finer than a second.", "Give times in whole seconds, minutes or hours."
        )
    return Amount(Decimal(seconds.numerator), "s")


def _after(start: datetime, text: str) -> Amount:
    """A clock time as time after the start: the first such time that is not before it."""
    if " " not in text:
        clock.parse_start(text)  # a wrong time is refused as it was written, without a day before it
    for days in range(2):
        day = (start + timedelta(days=days)).date()
        zone_name = getattr(start.tzinfo, "key", "")
        at = clock.parse_start(f"{day.isoformat()} {text}" if " " not in text else text, zone_name)
        waited = at - start if start.tzinfo is None else at.astimezone(UTC) - start.astimezone(UTC)
        if waited >= timedelta(0):
            return Amount(Decimal(waited // timedelta(seconds=1)), "s")
        if " " in text:
            break
    raise QuantityError(f"{shown(text, SHORT)} is before the start.", "Give a later time.")
