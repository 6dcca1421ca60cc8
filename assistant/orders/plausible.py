"""An order against the table of limits: what is over, what must not meet, what is not known."""

from functools import lru_cache

from assistant.checklist.library import library_folder
from assistant.checklist.paper_file import read_paper
from assistant.dosing.limits import Finding, Level, Limits
from assistant.dosing.limits_file import limits_from
from assistant.dosing.strength import concentration
from assistant.errors import QuantityError
from assistant.orders.model import Order
from assistant.orders.solve import amount_of, answer_key

PERIPHERAL = ("intravenous", "peripheral")
"""Routes to which the limit for a peripheral line applies: a central line is named as such."""


@lru_cache(maxsize=1)
def table() -> Limits:
    """The library's limits.

    Raises:
        QuantityError: the file cannot be used.
    """
    return limits_from(read_paper(library_folder() / "limits.toml", QuantityError).table)


def findings(order: Order, limits: Limits) -> tuple[Finding, ...]:
    """Everything that the table of limits says about an order, the gravest first within each part.

    Args:
        order: what is ordered; the labels on the stand are not looked at.
        limits: as read from the table.

    Raises:
        QuantityError: a formula refuses the order's numbers.
    """
    key = answer_key(order)
    found: list[Finding] = []
    fluid = order.primary.fluid if order.primary is not None else None
    if order.primary is not None:
        found += limits.check(order.primary.fluid, rate=amount_of(key["primary.rate"]))
    lines = (("secondary", order.secondary), ("second_secondary", order.second_secondary))
    for name, part in lines:
        if part is None:
            continue
        time = part.over or amount_of(key[f"{name}.duration"])
        strength = concentration(part.dose, part.volume)
        found += limits.check(
            part.drug,
            dose=part.dose,
            duration=time,
            concentration=strength if part.route in PERIPHERAL else None,
            together_with=(fluid,) if fluid is not None else (),
        )
    if order.dose is not None:
        found += limits.check(
            order.dose.drug,
            dose_rate=order.dose.ordered,
            concentration=concentration(order.dose.amount, order.dose.volume),
            weight=order.patient.weight,
            together_with=(fluid,) if fluid is not None else (),
        )
    return tuple(found)


def beyond(order: Order, limits: Limits) -> tuple[Finding, ...]:
    """The findings that must stop a learner: soft and hard limits, and what must not share a line."""
    return tuple(found for found in findings(order, limits) if found.level in (Level.SOFT, Level.HARD))
