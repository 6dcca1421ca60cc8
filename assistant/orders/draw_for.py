"""Orders drawn for a checklist: with what it asks for, and a fault only where one of its steps looks."""

from collections.abc import Sequence
from datetime import date

from assistant.checklist.model import Checklist, Step
from assistant.orders.draw import draw, wanted_by
from assistant.orders.load import available_orders, load_order
from assistant.orders.model import Order
from assistant.orders.planting import FaultKind, Findable


def draw_for(
    checklist: Checklist, *, seed: int, level: int, count: int, day: date, fault: FaultKind | None = None
) -> list[Order]:
    """Draw orders that fit a checklist (see `assistant.orders.draw.draw`).

    Raises:
        UsageError: such orders cannot be drawn.
    """
    own = load_order(checklist.order) if checklist.order in available_orders() else None
    return draw(
        wanted_by(keys_asked(checklist), own),
        seed=seed,
        level=level,
        count=count,
        day=day,
        fault=fault,
        findable=Findable.by(checklist),
    )


def keys_asked(checklist: Checklist) -> set[tuple[str, str | None]]:
    """Names of the key that a checklist always asks for, with the unit of each number."""
    return {asked for step in checklist.steps if not step.applies for asked in _of(step)}


def _of(step: Step) -> Sequence[tuple[str, str | None]]:
    key = getattr(step.expect, "key", "")
    return [(key, getattr(step.expect, "unit", None) or None)] if key else []
