"""The one mistake that a simulated learner can be told to make."""

from collections.abc import Mapping
from decimal import Decimal
from enum import StrEnum

from assistant.checklist.model import Checklist, ChoiceAsked, NameAsked, NumberAsked, QuestionAsked, Step
from assistant.dosing import Amount
from assistant.dosing.amount import normal
from assistant.dosing.twins import twin
from assistant.orders.key import KeyEntry


class Slip(StrEnum):
    """The ways in which the simulated learner can err."""

    WRONG_RATE = "wrong-rate"
    TEEN_TY = "teen-ty"
    TENFOLD = "tenfold"
    SWAPPED = "swapped"
    LEFT_CLAMP = "left-clamp"
    SKIP_CRITICAL = "skip-critical"
    WRONG_BAG = "wrong-bag"
    TOO_SLOW = "too-slow"


OTHER_BAGS = ("0.9 % sodium chloride", "5 % dextrose in water")
"""Bags that a learner may take by mistake; the first one that was not ordered is taken."""


def number_of(key: Mapping[str, KeyEntry], name: str, unit: str = "") -> Decimal:
    """A number of the answer key.

    Args:
        key: the answer key.
        name: in it.
        unit: in which it is asked for; "" for the key's own.

    Raises:
        TypeError: it is a name.
    """
    entry = key[name]
    if not isinstance(entry.value, Decimal):
        raise TypeError(f"{name} is a name, not a number")
    if not entry.unit or unit in ("", entry.unit):
        return entry.value
    exact = Amount(entry.value, entry.unit).in_unit(unit)
    return normal(Decimal(exact.numerator) / Decimal(exact.denominator))


def places(slip: Slip, checklist: Checklist, key: Mapping[str, KeyEntry]) -> list[str]:
    """Ids of the steps at which a slip can happen."""
    return [step.id for step in checklist.steps if _fits(slip, step, checklist, key)]


def _fits(slip: Slip, step: Step, checklist: Checklist, key: Mapping[str, KeyEntry]) -> bool:
    asked = step.expect
    match slip:
        case Slip.WRONG_RATE | Slip.TENFOLD:
            return isinstance(asked, NumberAsked) and asked.key.endswith((".rate", ".drops_per_minute"))
        case Slip.SWAPPED:
            return (
                isinstance(asked, NumberAsked)
                and asked.key.endswith(".rate")
                and number_of(key, volume_key(asked.key)) != number_of(key, asked.key)
            )
        case Slip.TEEN_TY:
            return isinstance(asked, NumberAsked) and twin(number_of(key, asked.key)) is not None
        case Slip.LEFT_CLAMP:
            return (
                isinstance(asked, QuestionAsked) or (isinstance(asked, ChoiceAsked) and asked.right != "")
            ) and "clamp" in step.if_wrong
        case Slip.SKIP_CRITICAL:
            return _is_before_a_gate(step, checklist)
        case Slip.WRONG_BAG:
            return isinstance(asked, NameAsked) and asked.key.endswith((".fluid", ".drug"))
        case Slip.TOO_SLOW:
            return step.expires is not None


def _is_before_a_gate(step: Step, checklist: Checklist) -> bool:
    later = checklist.steps[checklist.place(step.id) + 1 :]
    # Whoever skips what a later step waits for is led back at once, and nothing was skipped.
    waited_for = any(step.id in other.after for other in later)
    return step.critical and not step.gate and not waited_for and any(other.gate for other in later)


def volume_key(rate_key: str) -> str:
    """The name of the volume that belongs to a rate."""
    return rate_key.removesuffix(".rate") + ".vtbi"


def another_rate(value: Decimal) -> Decimal:
    """A rate that does not follow from the order: half as much again, as a whole number."""
    return (value * 3 / 2).to_integral_value() + 1


def shifted(value: Decimal) -> Decimal:
    """The same digits with the decimal point one place on."""
    return value * 10
