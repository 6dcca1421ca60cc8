"""Orders that given seeds have always drawn: ``python -m tests.orders.drawn`` writes them anew.

The same seed, level, count and day give the same orders, on every machine and in every version: an instructor who
kept the seed prints last week's sheets again. ``drawn.txt`` changes only where the shelf, the names or the drawing is
changed on purpose; then the change is to be read line by line.
"""

from collections.abc import Iterator
from pathlib import Path

from assistant.orders.draw import LEVELS
from assistant.orders.planting import FAULTS, FaultKind
from assistant.orders.write import text_of
from tests.orders.many import KINDS, PLACES, drawn_for

DRAWN = Path(__file__).with_suffix(".txt")
_FIRST_KINDS = 8
"""Kinds that came later are drawn last: the seeds of the others stay what they were."""


def draws() -> Iterator[tuple[tuple[str, ...], FaultKind | None]]:
    """Each kind of order without a fault, and each fault in each kind of order in which another thing is touched."""
    yield from ((kind, None) for kind in KINDS[:_FIRST_KINDS])
    for fault in FAULTS:
        yield from ((kind, fault) for kind in PLACES[fault] if kind in (("primary",), KINDS[1], ("dose",)))
    yield from ((kind, None) for kind in KINDS[_FIRST_KINDS:])


def drawn() -> str:
    """The files of these orders, one after the other."""
    orders = []
    for seed, (kind, fault) in enumerate(draws(), 1):
        orders += drawn_for(kind, seed=seed, level=LEVELS[seed % len(LEVELS)], count=2, fault=fault)[1:]
    return "\n".join(f"# {order.name}\n{text_of(order)}" for order in orders)


if __name__ == "__main__":
    DRAWN.write_text(drawn(), encoding="utf-8")
