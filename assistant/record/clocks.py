"""Do the times of a record fit the steady clock that ran beside them? Pure.

The time of every entry comes from a clock that is carried on by the machine's steady one from the start of a sitting
(`assistant.adapters.clock`), and the steady clock itself is read when the entry is written. So an entry cannot tell of
a time that had not come yet when it was written, nor of one long past; and the steady clock never runs backwards.
"""

from collections.abc import Iterator, Mapping, Sequence
from datetime import datetime
from decimal import Decimal, InvalidOperation

from assistant.record.decisions import CLOSED
from assistant.record.entry import ERASED
from assistant.record.lived import Difference
from assistant.text import SHORT, shown

AHEAD_S = 5
"""Seconds that a time may be ahead of the steady clock: between reading the one and the other a process may wait."""
BEHIND_S = 900
"""Seconds that it may be behind: an answer may lie there while a machine is busy or stopped."""

_BEGIN = ("opened", "resumed")
"""Kinds of entries with which a process begins to write."""
_OTHERS = ("recovered", ERASED, CLOSED)
"""Kinds that another process writes, by its own clocks."""


def clock_differences(entries: Sequence[Mapping[str, object]]) -> Iterator[Difference]:
    """Entries whose times do not fit; where the attempt is simulated its time passes as it is needed.

    Args:
        entries: of the attempt itself, the seal included, oldest first.
    """
    simulated = bool(entries and entries[0].get("simulated"))
    began: tuple[datetime, Decimal] | None = None
    last: tuple[datetime, Decimal] | None = None
    for entry in entries:
        ticks, at = _ticks(entry), _moment(entry)
        if ticks is None:
            yield _difference(entry, "ticks", "the steady clock's seconds as decimal text")
            continue
        if at is None:
            yield _difference(entry, "at", "a time")
            continue
        if entry.get("kind") in _OTHERS:
            began = last = None
            continue
        if entry.get("kind") in _BEGIN or began is None or last is None:
            began = last = (at, ticks)
            continue
        if ticks < last[1]:
            yield _difference(entry, "ticks", f"{last[1]} or more")
        if (at - last[0]).total_seconds() < -AHEAD_S:
            yield _difference(entry, "at", f"{last[0].isoformat()} or later")
        ahead = Decimal(str((at - began[0]).total_seconds())) - (ticks - began[1])
        if not simulated and not -BEHIND_S <= ahead <= AHEAD_S:
            yield _difference(entry, "at", f"a time that fits the steady clock, which differs by {ahead:.0f} s")
        last = (at, ticks)


def _ticks(entry: Mapping[str, object]) -> Decimal | None:
    told = entry.get("ticks")
    try:
        ticks = Decimal(told) if isinstance(told, str) else None
    except InvalidOperation:
        return None
    return ticks if ticks is not None and ticks.is_finite() and ticks >= 0 else None


def _moment(entry: Mapping[str, object]) -> datetime | None:
    try:
        moment = datetime.fromisoformat(str(entry.get("at")))
    except ValueError:
        return None
    return moment if moment.tzinfo is not None else None


def _difference(entry: Mapping[str, object], field: str, fits: str) -> Difference:
    number = entry.get("sequence")
    told = entry.get(field)
    was = "" if told is None else shown(told, SHORT)
    return Difference(number if isinstance(number, int) else 0, shown(entry.get("step", ""), SHORT), field, was, fits)
