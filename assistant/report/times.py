"""How long an attempt and each of its steps took, from the times of its entries."""

from collections import defaultdict
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import UTC, datetime
from decimal import Decimal

from assistant.report.reading import text

_AWAY = ("paused", "held", "finished")
"""States in which nobody works at the step."""


@dataclass(frozen=True)
class Times:
    """Times of one attempt.

    Attributes:
        began, ended: ISO 8601, UTC; of the first and the last entry of the attempt itself.
        steps: time at work by step id, s.
        work: time at work in all, s; pauses and interruptions left out.
    """

    began: str
    ended: str
    steps: Mapping[str, Decimal]
    work: Decimal


def moment(entry: Mapping[str, object]) -> datetime | None:
    """When an entry was made; None where it does not say so."""
    try:
        at = datetime.fromisoformat(text(entry.get("at")))
    except ValueError:
        return None
    return at if at.tzinfo is not None else at.replace(tzinfo=UTC)


def times(entries: Sequence[Mapping[str, object]]) -> Times:
    """Measure an attempt.

    The time before an entry belongs to the step that was current then, which the entry names: as `asked` where it
    marks another one. The time before
    a resumption belongs to nobody, nor does that of a pause; a clock that was set back counts as no time.

    Args:
        entries: the attempt's own, without signed entries behind its seal.
    """
    steps: dict[str, Decimal] = defaultdict(Decimal)
    before = None
    for entry in entries:
        at = moment(entry)
        if at is None:
            continue
        away = entry.get("kind") in ("resumed", "recovered") or entry.get("state") in _AWAY
        step = text(entry.get("asked", entry.get("step")))
        if before is not None and not away and step:
            gap = max((at - before).total_seconds(), 0)
            steps[step] += Decimal(str(gap))
        before = at
    shown = {step: seconds.quantize(Decimal("0.1")) for step, seconds in steps.items()}
    return Times(text(entries[0].get("at")), text(entries[-1].get("at")), shown, sum(shown.values(), Decimal(0)))


def clock(seconds: Decimal) -> str:
    """A length of time with unit symbols, the same in every language (ISO 80000-3): ``1 h 2 min``, ``2 min 5 s``."""
    whole = int(seconds + Decimal("0.5"))
    minutes, rest = divmod(whole, 60)
    if minutes >= 60:
        hours, minutes = divmod(minutes, 60)
        return f"{hours} h {minutes} min"
    return f"{minutes} min {rest} s" if minutes else f"{rest} s"


def since(began: datetime | None, at: datetime | None) -> str:
    """Time since the beginning as ``h:mm:ss``; empty where it is not known."""
    if began is None or at is None:
        return ""
    whole = int(max((at - began).total_seconds(), 0))
    return f"{whole // 3600}:{whole % 3600 // 60:02}:{whole % 60:02}"
