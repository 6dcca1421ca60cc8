"""The truth of an attempt: every fault there is at the bench, in the order itself and in what is laid out."""

from collections.abc import Iterator
from datetime import date

from assistant.dosing import Amount, show
from assistant.dosing.limits import Finding, Level, Limits
from assistant.dosing.strength import concentration
from assistant.orders.fault import Fault, Truth
from assistant.orders.laid_out import CONTAINERS, LABELS, Happening
from assistant.orders.lines import ByDoseRate, Secondary
from assistant.orders.model import Order
from assistant.orders.reading import day_in_words
from assistant.orders.shelf import shelf
from assistant.orders.solve import amount_of, answer_key

CONTAINER_NAMES = {
    "primary": "the primary's bag",
    "secondary": "the bag with the drug",
    "second_secondary": "the second bag with a drug",
    "dose": "the bag with the drug",
    "flush": "the flush syringe",
    "gravity": "the set's package",
}
"""How an instructor speaks of what is laid out."""
ALLERGIC, APART, OUT_OF_RANGE, SOMETHING_MISSING = "allergic", "apart", "out of range", "something missing"
"""Faults that follow from the order alone, in the words in which a step's answer tells of them."""
_PERIPHERAL = ("intravenous", "peripheral")
"""Routes to which the limit for a peripheral line applies: a central line is named as such."""


def truth_of(order: Order, limits: Limits) -> Truth:
    """The truth of an attempt with this order.

    Args:
        order: with what is laid out.
        limits: the table of limits, for what is beyond them and what may not share a line.

    Raises:
        QuantityError: a formula refuses the order's numbers.
    """
    faults = (
        *_on_paper(order),
        *_allergies(order),
        *_beyond_limits(order, limits),
        *_containers(order),
        *_found(order),
    )
    return Truth(tuple(faults))


# What follows from the order alone.


def _on_paper(order: Order) -> Iterator[Fault]:
    for part in order.illegible:
        yield Fault(
            f"{part}.paper",
            SOMETHING_MISSING,
            f"How fast the {'infusion' if part == 'dose' else part} is to run cannot be read on the order.",
            "An infusion at a rate that somebody guessed.",
        )


def _drugs(order: Order) -> Iterator[tuple[str, Secondary | ByDoseRate]]:
    for part in ("secondary", "second_secondary", "dose"):
        given = getattr(order, part)
        if given is not None:
            yield part, given


def _allergies(order: Order) -> Iterator[Fault]:
    avoid = {drug.name: drug.avoid for drug in shelf().drugs} | {drug.name: drug.avoid for drug in shelf().rates}
    allergies = {name.casefold(): name for name in order.patient.allergies}
    for part, given in _drugs(order):
        clash = next((name for name in (*avoid.get(given.drug, ()), given.drug) if name.casefold() in allergies), None)
        if clash is not None:
            yield Fault(
                f"{part}.allergy",
                ALLERGIC,
                f"The patient's allergies name {clash}, and {given.drug} is ordered.",
                f"{given.drug}, with an allergy to {clash}.",
            )


def _beyond_limits(order: Order, limits: Limits) -> Iterator[Fault]:
    key = answer_key(order)
    fluid = order.primary.fluid if order.primary is not None else None
    if order.primary is not None:
        found = limits.check(order.primary.fluid, rate=amount_of(key["primary.rate"]))
        yield from _out_of_range("primary", order.primary.fluid, found)
    for part, given in _drugs(order):
        if isinstance(given, Secondary):
            strength = concentration(given.dose, given.volume) if given.route in _PERIPHERAL else None
            time = given.over or amount_of(key[f"{part}.duration"])
            found = limits.check(given.drug, dose=given.dose, duration=time, concentration=strength)
        else:
            strength = concentration(given.amount, given.volume)
            found = limits.check(
                given.drug, dose_rate=given.ordered, concentration=strength, weight=order.patient.weight
            )
        yield from _out_of_range(part, given.drug, found)
        worst = _gravest(limits.check(given.drug, together_with=(fluid,))) if fluid is not None else None
        if worst is not None:
            yield Fault(
                f"{part}.pair",
                APART,
                _sentence(worst),
                f"{given.drug} mixed with {fluid} in the line.",
                grave=worst.level is Level.HARD,
            )


def _out_of_range(part: str, name: str, found: tuple[Finding, ...]) -> Iterator[Fault]:
    worst = _gravest(found)
    if worst is not None:
        yield Fault(
            f"{part}.limits",
            OUT_OF_RANGE,
            _sentence(worst),
            f"{name} beyond a limit: {worst.about}.",
            grave=worst.level is Level.HARD,
        )


def _gravest(found: tuple[Finding, ...]) -> Finding | None:
    """The gravest finding, where it is one that must stop a learner."""
    return next((one for one in found if one.level in (Level.HARD, Level.SOFT)), None)


def _sentence(finding: Finding) -> str:
    return f"{finding.sentence[0].upper()}{finding.sentence[1:]} Source: {finding.source}."


# What is laid out.


def _containers(order: Order) -> Iterator[Fault]:
    for part, labels in LABELS.items():
        laid_out = getattr(order.laid_out, part)
        if getattr(order, part) is None:
            continue
        for name in labels:
            says = getattr(laid_out, name)
            if says is not None and not _same(says, getattr(getattr(order, part), name)):
                yield _label(part, name, says, getattr(getattr(order, part), name))
        if part in CONTAINERS:
            yield from _bag(part, laid_out.state, laid_out.expires, order.written)


def _same(says: str | Amount, ordered: str | Amount) -> bool:
    if isinstance(says, str) or isinstance(ordered, str):
        return says == ordered
    return says.in_unit(ordered.unit) == ordered.ratio


def _label(part: str, name: str, says: str | Amount, ordered: str | Amount) -> Fault:
    shown, wanted = (value if isinstance(value, str) else show(value) for value in (says, ordered))
    where = CONTAINER_NAMES[part]
    return Fault(
        f"{part}.{name}",
        says,
        f"On {where}: {shown} in place of {wanted}.",
        f"{shown} in place of {wanted} ({name.replace('_', ' ')}).",
    )


def _bag(part: str, state: str | None, expires: date | None, written: date | None) -> Iterator[Fault]:
    where = CONTAINER_NAMES[part]
    if state is None and expires is not None and written is not None and expires < written:
        state = "expired"
    if state is None:
        return
    day = f" on {day_in_words(expires)}" if state == "expired" and expires is not None else ""
    what = {"expired": "has expired", "cloudy": "is cloudy", "leaking": "leaks"}[state]
    reaches = {
        "expired": "what has expired",
        "cloudy": "particles, or a drug that has changed",
        "leaking": "germs, through the leak",
    }[state]
    yield Fault(
        f"{part}.bag",
        state,
        f"{where[0].upper()}{where[1:]} {what}{day}.",
        f"From {where}: {reaches}.",
    )


def _found(order: Order) -> Iterator[Fault]:
    happens = order.laid_out.happens
    for thing, state in order.laid_out.found.items():
        yield Fault(
            thing, state, f"The {thing}: {state}.", _REACHES.get(thing, f"The {thing} stays as it is: {state}.")
        )
    for one in happens:
        yield _happening(one)


def _happening(one: Happening) -> Fault:
    return Fault(
        one.thing,
        one.state,
        f"At the step {one.at}, the {one.thing}: {one.state}.",
        _REACHES.get(one.thing, f"The {one.thing} stays as it is: {one.state}."),
        one.at,
        one.say,
    )


_REACHES = {
    "wristband": "What is ordered for somebody else.",
    "site": "Fluid or drug into tissue, or through a vein that is inflamed.",
    "lock": "Fluid or drug into tissue, or pressure into a blocked catheter.",
    "line": "Air, or something through another line than the one that is meant.",
    "patient": "More of what makes the patient unwell.",
}
"""What would reach the patient, by the thing that was not looked at."""
