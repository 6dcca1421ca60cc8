"""The answer key: against published worked examples, the published dosing of each order, and a plain sum."""

from collections.abc import Mapping
from decimal import ROUND_HALF_UP, Decimal
from fractions import Fraction
from functools import lru_cache
from pathlib import Path

import pint
import pytest

from assistant.checklist.load import available, load
from assistant.checklist.model import Checklist, NameAsked, NumberAsked
from assistant.dosing import Agrees, Amount, compare
from assistant.dosing.units import same_dimension
from assistant.orders.key import KeyEntry
from assistant.orders.load import available_orders, load_order
from assistant.orders.names import label_names
from assistant.orders.plausible import table
from assistant.orders.solve import BY_TABLE, KEY_NAMES, KEY_UNITS, WAYS, answer_key
from assistant.orders.truth import truth_of
from tests.orders.papers import GOOD, changed, written

ORDERS = list(available_orders())
REGISTRY = pint.UnitRegistry(non_int_type=Fraction)
REGISTRY.define("mEq = [equivalent]")  # counts charges: without the salt it is no mass


@lru_cache
def key_of(order: str) -> Mapping[str, KeyEntry]:
    return answer_key(load_order(order))


def fits(checklist: Checklist, order: str) -> bool:
    """Whether the key of an order holds all that a checklist asks for, in units of the same kind."""
    key = key_of(order)
    for step in checklist.steps:
        asked = step.expect
        if not isinstance(asked, NumberAsked | NameAsked):
            continue
        if asked.key not in key:
            return False
        unit = key[asked.key].unit
        if isinstance(asked, NumberAsked) and unit is not None and not same_dimension(unit, asked.unit):
            return False
    return True


FITTING = [
    (name, order)
    for name, checklist in ((name, load(name)) for name in available())
    for order in ORDERS
    if checklist.order == order or fits(checklist, order)
]
"""A checklist with its own order, and with every other one whose key holds what it asks for."""


def value(entry: KeyEntry) -> str:
    return f"{entry.value} {entry.unit}" if entry.unit else str(entry.value)


# Every published example with its source; the order's other numbers do not matter to the one that is asked.
PRIMARY = [
    # bag, over, rate asked, source
    ("1,000 mL", "8 h", "125 mL/h", "Open RN, Nursing Skills, section 5.15: 1,000 mL over 8 hours (from memory)"),
    ("1,000 mL", "12 h", "83.3 mL/h", "common teaching example, no source; 1000 / 12 to one decimal"),
    ("500 mL", "4 h", "125 mL/h", "common teaching example, no source"),
]


@pytest.mark.parametrize(("bag", "over", "rate", "source"), PRIMARY)
def test_primary_rates(tmp_path: Path, bag: str, over: str, rate: str, source: str) -> None:
    """The rate of a continuous infusion follows from volume and time."""
    text = changed('"1,000 mL"', f'"{bag}"').replace('over = "12 h"', f'over = "{over}"')
    assert value(answer_key(load_order(written(tmp_path, text)))["primary.rate"]) == rate, source


SECONDARY = [
    # dose, volume, over, concentration, rate, source
    (
        "1,000 mg",
        "200 mL",
        "60 min",
        "5 mg/mL",
        "200 mL/h",
        "FDA label text, vancomycin hydrochloride for injection, preparation and stability: 1 g in 200 mL over 60 min",
    ),
    (
        "400 mg",
        "250 mL",
        "60 min",
        "1.6 mg/mL",
        "250 mL/h",
        "FDA label text, dopamine hydrochloride injection, section 2.1: 400 mg in 250 mL is 1,600 mcg/mL",
    ),
]


@pytest.mark.parametrize(("dose", "volume", "over", "concentration", "rate", "source"), SECONDARY)
def test_secondary_numbers(
    tmp_path: Path, dose: str, volume: str, over: str, concentration: str, rate: str, source: str
) -> None:
    """Concentration and rate of an intermittent infusion follow from dose, volume and time."""
    text = changed('"20 mg"', f'"{dose}"').replace('volume = "50 mL"', f'volume = "{volume}"')
    key = answer_key(load_order(written(tmp_path, text.replace('over = "20 min"', f'over = "{over}"'))))
    assert value(key["secondary.concentration"]) == concentration, source
    assert value(key["secondary.rate"]) == rate, source


def test_time_from_a_rate(tmp_path: Path) -> None:
    """Open RN (Chippewa Valley Technical College), section 5.16, example 1: 500 mL at 75 mL/h take 6 h 40 min."""
    text = changed('"1,000 mL"', '"500 mL"').replace('over = "12 h"\nreserve = "50 mL"', 'rate = "75 mL/h"')
    key = answer_key(load_order(written(tmp_path, text)))
    assert value(key["primary.duration"]) == "400 min"
    assert value(key["primary.vtbi"]) == "500 mL"
    assert key["primary.rate"].formula == ""


def test_whole_numbers_where_the_pump_takes_no_tenths(tmp_path: Path) -> None:
    """Texas Woman's University rounding policy: whole mL/h where the pump takes no tenths."""
    text = changed('code = "T-1"', 'code = "T-1"\nrounding = "whole"')
    assert value(answer_key(load_order(written(tmp_path, text)))["primary.rate"]) == "83 mL/h"


def test_part_of_a_bag_and_a_secondary_reserve(tmp_path: Path) -> None:
    """A stated volume is what is infused; a reserve of the secondary is taken off its volume."""
    text = changed('over = "12 h"', 'over = "12 h"\nvolume = "600 mL"').replace(
        'dose = "20 mg"', 'dose = "20 mg"\nreserve = "5 mL"'
    )
    key = answer_key(load_order(written(tmp_path, text)))
    assert value(key["primary.rate"]) == "50 mL/h"
    assert value(key["primary.vtbi"]) == "600 mL"
    assert value(key["secondary.vtbi"]) == "45 mL"
    assert key["secondary.vtbi"].working == ("50 mL \u2212 5 mL = 45 mL",)


# The library's orders, number by number, worked out by hand from the printed order.
BY_HAND = {
    "oh-101": [
        "lactated Ringer's solution",
        "1000 mL",
        "83.3 mL/h",
        "950 mL",
        "720 min",
        "famotidine",
        "20 mg",
        "50 mL",
        "0.4 mg/mL",
        "150 mL/h",
        "50 mL",
        "20 min",
    ],
    "oh-102": [
        "5 % dextrose in 0.45 % sodium chloride",
        "1000 mL",
        "75 mL/h",
        "950 mL",
        "760 min",
        "cefazolin",
        "1000 mg",
        "50 mL",
        "20 mg/mL",
        "100 mL/h",
        "50 mL",
        "30 min",
    ],
    "oh-103": [
        "0.9 % sodium chloride",
        "1000 mL",
        "125 mL/h",
        "900 mL",
        "480 min",
        "ceftriaxone",
        "2000 mg",
        "100 mL",
        "20 mg/mL",
        "200 mL/h",
        "100 mL",
        "30 min",
    ],
    "oh-104": [
        "5 % dextrose in water",
        "500 mL",
        "50 mL/h",
        "475 mL",
        "600 min",
        "ondansetron",
        "8 mg",
        "50 mL",
        "0.16 mg/mL",
        "200 mL/h",
        "50 mL",
        "15 min",
    ],
    "oh-105": ["lactated Ringer's solution", "500 mL", "150 mL/h", "450 mL", "180 min"],
    "oh-106": [
        "0.9 % sodium chloride",
        "1000 mL",
        "41.7 mL/h",
        "950 mL",
        "1440 min",
        "cefazolin",
        "1000 mg",
        "50 mL",
        "20 mg/mL",
        "100 mL/h",
        "50 mL",
        "30 min",
    ],
}


@pytest.mark.parametrize("name", sorted(BY_HAND))
def test_the_librarys_keys(name: str) -> None:
    """Every value of the orders of the first two checklists; the others have their walk-throughs."""
    assert [value(entry) for entry in answer_key(load_order(name)).values()] == BY_HAND[name]


@pytest.mark.parametrize("name", ORDERS)
def test_a_key_keeps_the_order_of_its_names(name: str) -> None:
    """What a sheet prints from a key stands in one order always."""
    key = answer_key(load_order(name))
    assert list(key) == [known for known in KEY_NAMES if known in key]


@pytest.mark.parametrize("name", ORDERS)
def test_keys_agree_with_a_general_library(name: str) -> None:
    """The same sums by pint, a general-purpose library of units, from the text of the order."""
    q = REGISTRY.Quantity
    order = load_order(name)
    key = answer_key(order)

    def quantity(amount: Amount) -> "pint.Quantity[Fraction]":
        return q(amount.ratio, {"mL/h": "mL/hour", "h": "hour", "min": "minute"}.get(amount.unit, amount.unit))

    def rounded(exact: Fraction) -> Decimal:
        return (Decimal(exact.numerator) / Decimal(exact.denominator)).quantize(Decimal("0.1"), ROUND_HALF_UP)

    primary, second = order.primary, order.secondary
    if primary and primary.over:
        volume = primary.volume or primary.bag_volume
        rate = (quantity(volume) / quantity(primary.over)).to("mL/hour").magnitude
        assert key["primary.rate"].value == rounded(rate)
    if second is not None and second.over:
        rate = (quantity(second.volume) / quantity(second.over)).to("mL/hour").magnitude
        assert key["secondary.rate"].value == rounded(rate)
        strength = (
            (quantity(second.dose) / quantity(second.volume))
            .to(f"{'mEq' if second.dose.unit == 'mEq' else 'mg'}/mL")
            .magnitude
        )
        assert Fraction(key["secondary.concentration"].value) == strength  # type: ignore[arg-type]


# What the labels of the drugs publish: dose, strength in mg/mL and time in min must lie inside.
PUBLISHED = {
    # FDA label text, famotidine injection: 20 mg; premixed 20 mg in 50 mL; over 15 to 30 minutes
    "famotidine": ((20, 20), (Decimal("0.2"), Decimal("0.4")), (15, 30)),
    # FDA label text, cefazolin injection (premixed bag), section 2.3: about 30 minutes;
    # cefazolin for injection: 1 g in 50 to 100 mL (from memory)
    "cefazolin": ((500, 2000), (Decimal(10), Decimal(40)), (30, 30)),
    # FDA label text, ceftriaxone: 10 to 40 mg/mL over 30 minutes (from memory)
    "ceftriaxone": ((1000, 2000), (Decimal(10), Decimal(40)), (30, 30)),
    # FDA label text, ondansetron injection: diluted in 50 mL, over 15 minutes (from memory)
    "ondansetron": ((4, 16), (Decimal("0.08"), Decimal("0.32")), (15, 15)),
}


@pytest.mark.parametrize("name", ORDERS)
def test_the_librarys_orders_are_within_the_table_of_limits(name: str) -> None:
    """No order of the library is beyond a limit, or has two in a line that must not meet, but on purpose."""
    order = load_order(name)
    facts = [fault.fact.rpartition(".")[2] for fault in truth_of(order, table()).faults]
    wrong = {matter for matter in facts if matter in ("limits", "pair")}
    assert wrong == set(order.laid_out.on_purpose) & {"limits", "pair"}


@pytest.mark.parametrize(
    "name", [name for name in ORDERS if (known := load_order(name).secondary) and known.drug in PUBLISHED]
)
def test_the_librarys_drugs_are_within_their_labels(name: str) -> None:
    """Dose, strength and time of each ordered drug lie inside what its label publishes, but on purpose."""
    order = load_order(name)
    key = answer_key(order)
    dose, strength, minutes = PUBLISHED[str(key["secondary.drug"].value)]
    assert dose[0] <= key["secondary.dose"].value <= dose[1]  # type: ignore[operator]
    assert strength[0] <= key["secondary.concentration"].value <= strength[1]  # type: ignore[operator]
    in_time = minutes[0] <= key["secondary.duration"].value <= minutes[1]  # type: ignore[operator]
    assert in_time is ("limits" not in order.laid_out.on_purpose)


def test_no_calcium_meets_ceftriaxone() -> None:
    """FDA label text, ceftriaxone: not with fluids that hold calcium, such as Ringer's (from memory)."""
    for name in ORDERS:
        key = answer_key(load_order(name))
        if "secondary.drug" in key and key["secondary.drug"].value == "ceftriaxone" and "primary.fluid" in key:
            assert "Ringer" not in str(key["primary.fluid"].value)


@pytest.mark.parametrize(("checklist", "order"), FITTING)
def test_every_key_of_a_checklist_is_solvable(checklist: str, order: str) -> None:
    """Each number or name that a checklist asks for is in the key, and can be compared in the step's unit."""
    key = answer_key(load_order(order))
    asked = [(step, step.expect) for step in load(checklist).steps if isinstance(step.expect, NumberAsked | NameAsked)]
    for step, expect in asked:
        if expect.key not in key and step.applies:  # asked of some orders only
            continue
        entry = key[expect.key]
        if isinstance(expect, NumberAsked):
            assert isinstance(entry.value, Decimal)
            assert entry.unit == expect.unit
            stated = Amount(entry.value, expect.unit)
            assert isinstance(compare(stated, Amount(entry.value, entry.unit)), Agrees)
        else:
            assert entry.value in entry.choices


@pytest.mark.parametrize("name", ORDERS)
def test_choices_tell_nothing(name: str) -> None:
    """A recogniser is given every name of the lab, in alphabetical order, the one that is laid out among them."""
    order = load_order(name)
    key = answer_key(order)
    for entry in key.values():
        assert bool(entry.choices) == (entry.unit is None)
        if entry.name in ("change.way", "protocol.way"):
            assert entry.choices == (WAYS if entry.name == "change.way" else BY_TABLE)
        elif entry.choices:
            known = label_names().fluids if entry.name.endswith(".fluid") else label_names().drugs
            assert len(entry.choices) >= 5
            assert list(entry.choices) == sorted(entry.choices, key=str.casefold)
            assert set(known) | {order.labels()[entry.name]} <= set(entry.choices)


def test_an_order_with_names_of_its_own(tmp_path: Path) -> None:
    """A fluid that the library does not know can still be ordered, and heard."""
    text = changed("lactated Ringer's solution", "plain test fluid")
    key = answer_key(load_order(written(tmp_path, text)))
    assert "plain test fluid" in key["primary.fluid"].choices


def test_what_is_worked_out_shows_its_working() -> None:
    """A computed value carries formula and working; a stated one names no formula."""
    for name in ORDERS:
        for entry in answer_key(load_order(name)).values():
            assert bool(entry.formula) <= bool(entry.working)
    assert set(KEY_UNITS) == set(KEY_NAMES)
    assert "T-1" in GOOD
