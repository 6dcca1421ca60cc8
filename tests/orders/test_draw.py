"""Drawn orders: the same for a seed, none alike in a class, within the limits, and with a fault where one is wanted."""

from datetime import date
from pathlib import Path

import pytest

from assistant.errors import UsageError
from assistant.orders.draw import LEVELS, Wanted, draw, wanted_by
from assistant.orders.load import load_order
from assistant.orders.model import FAULTS, Fault
from assistant.orders.sheet import instructors_sheet, learners_sheet
from assistant.orders.shelf import shelf
from assistant.orders.solve import answer_key
from assistant.orders.write import text_of
from tests.orders.drawn import DRAWN, drawn
from tests.orders.many import CLASS, DAY, KINDS, PLACES, look_at

BOTH = Wanted(frozenset({"primary", "secondary"}))


def test_a_sample_of_the_many() -> None:
    """Classes of every kind, level and fault: each order as it should be, and no two alike. More: `many`."""
    looked, planted, wrong = look_at(600)
    assert wrong == []
    assert looked >= 600
    assert len(planted) > 2


@pytest.mark.parametrize("fault", FAULTS)
def test_every_fault_can_be_planted(fault: Fault) -> None:
    """Where a fault has a place it is in every order; nothing on the learner's sheet names it."""
    for order in draw(Wanted(frozenset(PLACES[fault][0])), seed=5, level=2, count=10, day=DAY, fault=fault):
        assert order.planted == fault
        assert order.teaching in instructors_sheet(order)
        assert f"Planted: {fault}" in instructors_sheet(order)
        sheet = learners_sheet(order)
        assert order.teaching not in sheet and fault not in sheet and "lanted" not in sheet


@pytest.mark.parametrize("kind", KINDS)
@pytest.mark.parametrize("level", LEVELS)
def test_the_same_seed_gives_the_same_orders(kind: tuple[str, ...], level: int) -> None:
    """A draw depends on its arguments alone; another seed gives other orders."""
    wanted = Wanted(frozenset(kind))
    first = draw(wanted, seed=9, level=level, count=6, day=DAY)
    assert draw(wanted, seed=9, level=level, count=6, day=DAY) == first
    assert [order.patient for order in draw(wanted, seed=10, level=level, count=6, day=DAY)] != [
        order.patient for order in first
    ]
    for order in first:
        for part in kind:
            assert getattr(order, part) is not None


def test_a_seed_draws_what_it_has_always_drawn() -> None:
    """Not only twice in one run: the same orders, with the same people, labels and faults, as in every version."""
    assert drawn() == DRAWN.read_text(encoding="utf-8")


def test_levels_are_what_they_say() -> None:
    """Level 1 rounds and converts nothing, level 2 does one of the two once, level 3 at least twice."""
    for level in LEVELS:
        for order in draw(BOTH, seed=2, level=level, count=CLASS, day=DAY):
            assert order.primary is not None and order.secondary is not None and order.secondary.over is not None
            key = answer_key(order)
            lines = [line for name in ("primary.rate", "secondary.rate") for line in key[name].working]
            rounded = sum(line.startswith("rounded") for line in lines)
            converted = (order.primary.bag_volume.unit == "L") + (order.secondary.dose.unit == "g")
            minutes = order.secondary.over.in_unit("min")
            odd = minutes not in (15, 20, 30) and minutes % 60 != 0
            assert min(rounded + converted + odd, 2) == level - 1


@pytest.mark.parametrize("kind", KINDS)
def test_a_written_order_loads_again(tmp_path: Path, kind: tuple[str, ...]) -> None:
    """The file of a drawn order is an order that is loaded as it was drawn."""
    faults: list[Fault | None] = [None, *(fault for fault in FAULTS if kind in PLACES[fault])]
    for number, fault in enumerate(faults):
        (order,) = draw(Wanted(frozenset(kind)), seed=3, level=1 + number % 3, count=1, day=DAY, fault=fault)
        path = tmp_path / f"{order.name}.toml"
        path.write_text(text_of(order), encoding="utf-8")
        assert load_order(str(path)).model_copy(update={"digest": order.digest}) == order


def test_people_are_nobody_twice() -> None:
    """In a class nobody is there twice, and everybody is grown up."""
    orders = draw(BOTH, seed=1, level=1, count=CLASS, day=DAY)
    assert len({order.patient.name for order in orders}) == CLASS
    assert all(order.patient.born <= date(DAY.year - 18, DAY.month, DAY.day) for order in orders)
    assert all("(fictional)" in order.ordered_by for order in orders)


def test_what_a_checklist_needs() -> None:
    """Parts follow from what is asked for and from the checklist's own order."""
    assert wanted_by({("gravity.drops_per_minute", "gtt/min")}, None).parts == {"gravity", "primary"}
    assert wanted_by({("second_secondary.rate", "mL/h")}, None).parts == {"secondary", "second_secondary"}
    assert wanted_by({("patient.weight", "kg"), ("dose.rate", "mL/h")}, None).weight
    assert wanted_by(set(), load_order("oh-101")).parts == {"primary", "secondary"}


def test_units_of_a_checklist_are_kept() -> None:
    """A checklist that asks for micrograms for each kg is given no drug in units."""
    wanted = wanted_by({("dose.ordered", "mcg/kg/min"), ("dose.concentration", "mg/mL")}, None)
    drugs = {order.dose.drug for order in draw(wanted, seed=1, level=1, count=CLASS, day=DAY) if order.dose}
    assert drugs <= {"dopamine", "dobutamine", "nitroprusside"}
    assert len(drugs) > 1


def test_a_checklist_that_asks_for_the_weight_is_given_one() -> None:
    """Where the weight is asked for, only what is ordered by weight is drawn; else the other drugs, too."""
    weighed = draw(Wanted(frozenset({"dose"}), weight=True), seed=1, level=2, count=CLASS, day=DAY)
    kilos = [order.patient.weight.in_unit("kg") for order in weighed if order.patient.weight is not None]
    assert len(kilos) == CLASS
    assert all(48 <= number <= 110 for number in kilos)
    by_the_hour = Wanted(frozenset({"dose"}), (("dose.ordered", "mg/h"),))
    assert all(order.patient.weight is None for order in draw(by_the_hour, seed=1, level=1, count=8, day=DAY))


def test_what_a_checklist_asks_for_is_kept_with_its_unit() -> None:
    """Names of labels have none."""
    wanted = wanted_by({("secondary.rate", "mL/h"), ("secondary.drug", None), ("patient.weight", "kg")}, None)
    assert wanted == Wanted(frozenset({"secondary"}), (("patient.weight", "kg"), ("secondary.rate", "mL/h")), True)


def test_labels_bear_a_date_in_the_future() -> None:
    """Each bag has one, 45 to 700 days ahead; the expired one is at most 60 days over, and the other bag is good."""
    for fault in (None, "expired-bag"):
        seen = set()
        for order in draw(BOTH, seed=4, level=1, count=CLASS, day=DAY, fault=fault):
            dates = {"fluid": order.hung.expires, "drug": order.hung.drug_expires}
            assert all(date is not None for date in dates.values())
            ahead = {bag: (date - DAY).days for bag, date in dates.items() if date is not None}
            over = {bag for bag, days in ahead.items() if days < 0}
            assert all(-60 <= days <= -1 or 45 <= days <= 700 for days in ahead.values())
            assert len(over) == (fault is not None)
            seen |= over
        assert seen == ({"fluid", "drug"} if fault else set())
    for order in draw(Wanted(frozenset({"flush"})), seed=4, level=1, count=6, day=DAY):
        assert (order.hung.expires, order.hung.drug_expires) == (None, None)


REFUSED = [
    (BOTH, {"level": 4}, "There is no level 4.", "Levels are 1, 2 and 3."),
    (
        Wanted(frozenset({"flush"})),
        {"count": 100},
        "Only 42 different orders of this kind could be drawn, but 100 are wanted.",
        "Ask for fewer, another level or another fault.",
    ),
    (
        Wanted(frozenset({"primary"})),
        {"fault": "allergy"},
        "The fault allergy has no place in the orders of this checklist.",
        "Ask for another fault.",
    ),
    (
        Wanted(frozenset({"dose"}), (("dose.ordered", "mg/h"),)),
        {"level": 2},
        "Nothing on the shelf has level 2 for this checklist.",
        "Ask for another level.",
    ),
    (
        Wanted(frozenset({"dose"}), (("dose.ordered", "mmol/kg/h"),)),
        {},
        "Nothing on the shelf can be asked for in the units of this checklist.",
        "Write the order by hand.",
    ),
    (
        Wanted(frozenset({"dose"}), (("dose.ordered", "mg/h"),), weight=True),
        {},
        "Nothing on the shelf can be asked for in the units of this checklist.",
        "Write the order by hand.",
    ),
]


@pytest.mark.parametrize(("wanted", "changed", "what", "remedy"), REFUSED)
def test_what_cannot_be_drawn(wanted: Wanted, changed: dict[str, object], what: str, remedy: str) -> None:
    """What the shelf cannot give is refused with its reason and with what to do, and ends."""
    given: dict[str, object] = {"seed": 1, "level": 1, "count": 1, "day": DAY, "fault": None}
    with pytest.raises(UsageError) as caught:
        draw(wanted, **(given | changed))  # type: ignore[arg-type]
    assert (caught.value.what, caught.value.remedy) == (what, remedy)


def test_nothing_to_ask_for() -> None:
    """A checklist that asks for nothing, or for what no order holds, is told so."""
    with pytest.raises(UsageError) as caught:
        wanted_by(set(), None)
    assert caught.value.what == "This checklist asks for nothing that an order states."
    assert caught.value.remedy == "It needs no drawn order."
    with pytest.raises(UsageError) as caught:
        wanted_by({("tea.milk", "mL"), ("cake.slice", "g")}, None)
    assert caught.value.what == "No order with cake, tea can be drawn."
    assert caught.value.remedy == "Write the order by hand."


def test_the_shelf_names_its_sources() -> None:
    """Each drug and fluid has a source, and rides only on fluids of the shelf."""
    fluids = {fluid.name for fluid in shelf().fluids}
    for drug in shelf().drugs:
        assert drug.source and set(drug.with_fluids) <= fluids, drug.name
    assert all(fluid.source for fluid in shelf().fluids)
    assert all(drug.source for drug in shelf().rates)
