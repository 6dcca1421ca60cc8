"""Benches for the tests of the sheets: drawn with every kind of fault, and written by hand with everything at once."""

import functools
import tempfile
from pathlib import Path

from assistant.orders.draw import Wanted, draw
from assistant.orders.load import load_order
from assistant.orders.model import Order
from assistant.orders.planting import FAULTS, FaultKind
from tests.orders.many import DAY, FINDABLE, KINDS, PLACES

EVERYTHING = Path(__file__).parents[1] / "orders" / "everything.toml"
BUSY = """\
title = "A bench at which little is right"
code = "T-3"
ordered_by = "Dr Nobody (fictional), signed"
illegible = ["secondary"]
teaching = "Look before you hang."
sources = ["invented"]

[patient]
name = "Wilhelmina Test"
born = 1990-02-28
number = "L-40001"
allergies = ["latex", "penicillin"]
weight = "70 kg"

[primary]
fluid = "5 % dextrose in 0.45 % sodium chloride"
bag_volume = "1,000 mL"
over = "12 h"
reserve = "50 mL"

[running]
since = "2 h"

[secondary]
drug = "ampicillin"
dose = "1 g"
volume = "50 mL"
over = "35 min"
frequency = "every 6 hours"

[flush]
volume = "10 mL"

[laid_out.primary]
state = "cloudy"

[laid_out.secondary]
drug = "amikacin"
dose = "500 mg"
volume = "100 mL"

[laid_out.flush]
state = "expired"

[laid_out.found]
wristband = "another patient"
site = "red"
"roller clamp" = "open"
line = "air"

[[laid_out.happens]]
at = "watch"
thing = "patient"
state = "in pain"
say = "My arm burns where the drip goes in."

[[laid_out.happens]]
at = "start"
thing = "pump"
state = "alarming"
"""


@functools.cache
def drawn(fault: FaultKind | None, parts: tuple[str, ...], count: int = 2) -> tuple[Order, ...]:
    """Orders with this fault."""
    wanted = Wanted(frozenset(parts))
    return tuple(draw(wanted, seed=11, level=2, count=count, day=DAY, fault=fault, findable=FINDABLE[parts]))


@functools.cache
def every_bench() -> tuple[Order, ...]:
    """Each kind of order as ordered and with each fault, and the two that were written by hand."""
    places = (*((None, parts) for parts in KINDS), *((fault, parts) for fault in FAULTS for parts in PLACES[fault]))
    orders = [order for fault, parts in places for order in drawn(fault, parts)]
    return (*orders, load_order(str(EVERYTHING)), busy())


@functools.cache
def busy() -> Order:
    """An order with faults of all sorts, and with happenings."""
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "busy.toml"
        path.write_text(BUSY, encoding="utf-8")
        return load_order(str(path))


def long_names() -> Order:
    """An order in which every name has the eighty letters that it may have."""
    order = busy()
    long = "Featherstonehaugh-Cholmondeley " * 2 + "of the Lower Marsh"
    words = f"{'x' * 60} and more words than"
    patient = order.patient.model_copy(update={"name": long, "number": "9" * 80, "allergies": (words, long, words)})
    bag = order.laid_out.secondary.model_copy(update={"drug": long})
    return order.model_copy(
        update={
            "code": "A-long-code-by-hand",
            "patient": patient,
            "primary": order.primary.model_copy(update={"fluid": words}),
            "laid_out": order.laid_out.model_copy(update={"secondary": bag, "found": {"site": "red"}}),
        }
    )
