"""A sample of drawn orders against published rules; the thousands are a command: `tests.orders.published`."""

import pytest

from assistant.dosing import parse_amount
from assistant.orders.load import load_order
from assistant.orders.model import Order
from tests.orders.published import against_rules, look_at

RIDING, TWO, BY_RATE, LOCKED, FALLING = (load_order(f"oh-{number}") for number in (101, 117, 115, 113, 110))


def test_a_sample_keeps_the_published_rules() -> None:
    """A class of every kind and level: nothing against a rule, and no two orders alike."""
    looked, wrong = look_at(600)
    assert wrong == []
    assert len(looked) == 10


def changed(order: Order, part: str, **fields: object) -> Order:
    """An order with some fields of a part written otherwise."""
    return order.model_copy(update={part: getattr(order, part).model_copy(update=fields)})


def amount(text: str) -> object:
    return parse_amount(text)


@pytest.mark.parametrize(
    ("order", "what"),
    [
        (changed(RIDING, "secondary", dose=amount("200 mg")), "dose"),
        (changed(RIDING, "secondary", over=amount("5 min")), "time"),
        (changed(RIDING, "secondary", volume=amount("10 mL")), "strength"),
        (changed(RIDING, "secondary", frequency="every 2 hours"), "frequency"),
        (changed(RIDING, "secondary", route="by mouth"), "route"),
        (changed(RIDING, "secondary", drug="ampicillin"), "fluid"),
        (changed(RIDING, "primary", over=amount("2 h")), "fluid"),
        (changed(RIDING, "primary", over=amount("30 h")), "time"),
        (changed(RIDING, "primary", reserve=amount("0 mL")), "reserve"),
        (changed(TWO, "second_secondary", drug="vancomycin"), "pair"),
        (changed(TWO, "second_secondary", drug="cefazolin"), "pair"),
        (changed(BY_RATE, "dose", ordered=amount("50 mcg/kg/min")), "dose"),
        (changed(BY_RATE, "dose", amount=amount("4 g")), "strength"),
        (changed(BY_RATE, "dose", reserve=amount("0 mL")), "reserve"),
        (changed(BY_RATE, "patient", weight=amount("700 kg")), "weight"),
        (changed(BY_RATE, "dose", target=""), "target"),
        (changed(LOCKED, "flush", volume=amount("4 mL")), "flush"),
        (changed(LOCKED, "flush", frequency="once a shift"), "flush"),
        (changed(LOCKED, "patient", allergies=("penicillin",)), "allergy"),
        (changed(LOCKED, "secondary", dose=amount("0.5 g")), "label"),
        (changed(FALLING, "gravity", drop_factor=amount("12 gtt/mL")), "drops"),
        (changed(FALLING, "primary", reserve=amount("50 mL")), "reserve"),
    ],
)
def test_the_checker_finds_what_is_against_a_rule(order: Order, what: str) -> None:
    """Each rule is one that can be broken."""
    assert what in {found.partition(":")[0] for found in against_rules(order)}
