"""What an attempt is made from: what could not be answered is refused; what answers are held against."""

from dataclasses import replace
from decimal import Decimal

import pytest

from assistant.checklist.model import ChoiceAsked, Condition, NameAsked, NumberAsked, QuestionAsked, Step
from assistant.dosing import Agrees, Amount, CannotCheck, Disagrees, Slip, parse_amount
from assistant.errors import OrderError
from assistant.guide import Papers
from assistant.orders.key import KeyEntry
from assistant.spoken import ENGLISH
from tests.guide.lived import CHECKLIST, KEY

RATE = NumberAsked(kind="number", unit="mL/h", key="primary.rate")
DOSE = NumberAsked(kind="number", unit="mL/h", key="dose.rate")
FLUID = NameAsked(kind="name", key="primary.fluid")


def papers(asked, key=KEY, **more) -> Papers:
    """The papers of a checklist with one step, called ``one``."""
    steps = (Step(id="one", part="Set", say="Tell me.", expect=asked, **more),)
    return Papers(CHECKLIST.model_copy(update={"steps": steps}), "The order.", key, ENGLISH)


def key_with(name: str, **changes) -> dict[str, KeyEntry]:
    """The key with one entry changed."""
    return {**KEY, name: replace(KEY[name], **changes)}


ANOTHER = "Choose another order for this checklist."
REFUSED = [
    (
        DOSE,
        KEY,
        "The checklist small needs dose.rate, but the order does not include it.",
        "Choose an order with that line, or another checklist.",
    ),
    (
        FLUID,
        key_with("primary.fluid", choices=("lactated Ringer's solution",)),
        "The order names primary.fluid without another name to tell it from.",
        ANOTHER,
    ),
    (
        NumberAsked(kind="number", unit="mL/h", key="primary.fluid"),
        KEY,
        "The checklist asks for a number, but primary.fluid is a name in this order.",
        ANOTHER,
    ),
    (
        NumberAsked(kind="number", unit="mL", key="primary.rate"),
        KEY,
        "The order gives primary.rate in mL/h, not in mL.",
        ANOTHER,
    ),
    (
        RATE,
        key_with("primary.rate", value=Decimal(10_000)),
        "primary.rate is more than 9999 mL/h, the most that can be said.",
        ANOTHER,
    ),
    (
        NumberAsked(kind="number", unit="mL/min", key="primary.rate"),
        key_with("primary.rate", value=Decimal(600_000)),
        "primary.rate is more than 9999 mL/min, the most that can be said.",
        ANOTHER,
    ),
]


@pytest.mark.parametrize(("asked", "key", "what", "remedy"), REFUSED)
def test_an_order_that_does_not_fit_is_refused(asked, key, what, remedy) -> None:
    """It is said what is missing, and what to choose instead."""
    with pytest.raises(OrderError) as caught:
        papers(asked, key)
    assert (caught.value.what, caught.value.remedy) == (what, remedy)


def test_what_just_fits_is_taken() -> None:
    """Two names, and the largest number that can be said; a step that does not apply is not looked at."""
    papers(FLUID, key_with("primary.fluid", choices=("lactated Ringer's solution", "tea")))
    papers(RATE, key_with("primary.rate", value=Decimal(9999)))
    assert papers(DOSE, applies=(Condition(key="dose.rate"),)).never == {"one": "the order has no dose.rate"}


NEARLY = NumberAsked(kind="number", unit="mL/h", key="primary.rate", within=Decimal("0.5"))
RANGE = NumberAsked(kind="number", unit="mL/h", lowest=Decimal(5), highest=Decimal(20))
FLOOR = NumberAsked(kind="number", unit="mL/h", lowest=Decimal(5))
CEILING = NumberAsked(kind="number", unit="mL/h", highest=Decimal(20))
BOTH = NumberAsked(kind="number", unit="mL/h", key="primary.rate", within=Decimal(20), highest=Decimal(90))


@pytest.mark.parametrize(
    ("asked", "agrees", "differs"),
    [
        (RATE, ["83.3 mL/h"], ["83.4 mL/h", "83 mL/h"]),
        (NEARLY, ["83.3 mL/h", "83.8 mL/h", "82.8 mL/h"], ["83.9 mL/h", "82.7 mL/h"]),
        (RANGE, ["5 mL/h", "20 mL/h", "0.1 mL/min"], ["4.9 mL/h", "20.1 mL/h", "10 mL"]),
        (FLOOR, ["5 mL/h", "9,999 mL/h"], ["4.9 mL/h"]),
        (CEILING, ["0 mL/h", "20 mL/h"], ["20.1 mL/h"]),
        (BOTH, ["83.3 mL/h", "90 mL/h", "63.3 mL/h"], ["90.1 mL/h", "63.2 mL/h"]),
    ],
)
def test_what_a_number_is_held_against(asked, agrees, differs) -> None:
    """The key with its allowance, then the range, ends included."""
    made = papers(asked)
    for text in agrees:
        assert isinstance(made.compare(asked, parse_amount(text)), Agrees), text
    for text in differs:
        assert isinstance(made.compare(asked, parse_amount(text)), Disagrees), text


def test_a_number_out_of_range_is_no_slip_with_a_name() -> None:
    """There is no right number to tell; another number of the order is a slip that has one."""
    out_of_range = papers(RANGE).compare(RANGE, parse_amount("21 mL/h"))
    assert isinstance(out_of_range, Disagrees)
    assert (out_of_range.expected, out_of_range.match.slip) == (None, Slip.OTHER)
    mixed_up = papers(RATE).compare(RATE, Amount(Decimal(950), "mL/h"))
    assert isinstance(mixed_up, Disagrees)
    assert mixed_up.match.slip is not Slip.OTHER
    assert isinstance(papers(RATE).compare(RATE, parse_amount("83.3 mL")), CannotCheck)


@pytest.mark.parametrize(
    ("asked", "expected"),
    [
        (RATE, "83.3 mL/h"),
        (NEARLY, "83.3 mL/h within 0.5 mL/h"),
        (RANGE, "5 mL/h to 20 mL/h"),
        (FLOOR, "at least 5 mL/h"),
        (CEILING, "at most 20 mL/h"),
        (FLUID, "lactated Ringer's solution"),
        (QuestionAsked(kind="question", right="no"), "no"),
        (ChoiceAsked(kind="choice", choices=("a", "b"), right="b"), "b"),
        (ChoiceAsked(kind="choice", choices=("a", "b")), ""),
    ],
)
def test_what_is_shown_as_expected(asked, expected) -> None:
    """The right answer, with its allowance or range."""
    made = papers(asked)
    assert made.expected(made.checklist.steps[0]) == expected


def test_nothing_is_expected_at_a_step_that_does_not_apply() -> None:
    """The order lacks what it would ask for."""
    absent = (Condition(key="dose.drug"),)
    for asked in (DOSE, NameAsked(kind="name", key="dose.drug")):
        made = papers(asked, applies=absent)
        assert made.expected(made.checklist.steps[0]) == ""
    assert papers(RATE).working("dose.drug") == ()
    assert papers(RATE).working("primary.rate") == ("1,000 mL over 12 h is 83.3 mL/h.",)
    with pytest.raises(TypeError, match=r"^primary\.fluid is a name, not a number$"):
        papers(RATE).amount("primary.fluid")


@pytest.mark.parametrize(
    ("asked", "stated", "apart"),
    [
        (RATE, "83.3 mL/h", "0 mL/h"),
        (RATE, "84 mL/h", "+0.7 mL/h"),
        (RATE, "83 mL/h", "-0.3 mL/h"),
        (RATE, "1 mL/min", "-23.3 mL/h"),
        (RATE, "0.00001 L/h", "-83.29 mL/h"),
        (RATE, "83.3 mL", ""),
        (RATE, None, ""),
        (RANGE, "7 mL/h", ""),
        (FLUID, "7 mL/h", ""),
    ],
)
def test_how_far_off_a_number_is(asked, stated, apart) -> None:
    """With its sign, in the unit of the key; empty where nothing can be subtracted."""
    made = papers(asked)
    assert made.difference(made.checklist.steps[0], parse_amount(stated) if stated else None) == apart
