"""Whether the papers fit each other: what no learner could answer is refused before the attempt."""

from decimal import Decimal

from assistant import dosing
from assistant.checklist.model import NameAsked, NumberAsked
from assistant.errors import OrderError, QuantityError
from assistant.guide.given import Given
from assistant.orders.key import KeyEntry
from assistant.spoken.expect import NumberExpected

FEWEST_NAMES = 2
"""Names among which a label is heard; with one alone, the right answer would be favoured."""


def check_fit(given: Given) -> None:
    """Check that the order gives what the checklist asks for, in a way that can be said.

    Raises:
        OrderError: it does not.
    """
    values = given.values()
    for step in given.checklist.steps:
        if not isinstance(step.expect, NumberAsked | NameAsked) or not step.expect.key:
            continue
        if not all(condition.step or condition.met(values, {}) for condition in step.applies):
            continue  # never asked with this order
        entry = given.key.get(step.expect.key)
        if entry is None:
            raise OrderError(
                f"The checklist {given.checklist.name} asks for {step.expect.key}, which the order lacks.",
                "Choose an order with that line, or another checklist.",
            )
        if isinstance(step.expect, NumberAsked):
            _check_sayable(entry, step.expect.unit)
        elif len(entry.choices) < FEWEST_NAMES:
            raise OrderError(
                f"The order names {entry.name} without another name to tell it from.",
                "Choose another order for this checklist.",
            )


def _check_sayable(entry: KeyEntry, unit: str) -> None:
    """A number that cannot be said in the unit that is asked for could never be answered."""
    remedy = "Choose another order for this checklist."
    if not isinstance(entry.value, Decimal):
        raise OrderError(f"The checklist asks for a number, but {entry.name} is a name in this order.", remedy)
    try:
        value = dosing.Amount(entry.value, entry.unit or "").in_unit(unit)
    except QuantityError as cause:
        raise OrderError(f"The order gives {entry.name} in {entry.unit}, not in {unit}.", remedy) from cause
    if value > NumberExpected.highest:
        raise OrderError(
            f"{entry.name} is more than {NumberExpected.highest} {unit}, the most that can be said.", remedy
        )
