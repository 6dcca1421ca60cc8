"""The truth of an attempt: every fault there is at the bench, in the order itself and in what is laid out."""

from collections.abc import Iterator, Mapping
from datetime import date

from assistant.checklist.facts import ALLERGIC, APART, OUT_OF_RANGE, SOMETHING_MISSING, WRISTBAND
from assistant.dosing import Amount, show
from assistant.dosing.limits import Finding, Level, Limits, key_of
from assistant.dosing.strength import concentration
from assistant.dosing.units import same_dimension
from assistant.orders.fault import Fault, Truth
from assistant.orders.key import KeyEntry
from assistant.orders.laid_out import CONTAINERS, LABELS, BagState
from assistant.orders.lines import ByDoseRate, Push, Secondary
from assistant.orders.model import Order
from assistant.orders.pairs import pair_of
from assistant.orders.plausible import stopping
from assistant.orders.reading import day_in_words
from assistant.orders.shelf import avoided_with
from assistant.orders.solve import amount_of, answer_key

CONTAINER_NAMES = {
    "primary": "the primary's bag",
    "secondary": "the bag with the drug",
    "second_secondary": "the second bag with a drug",
    "dose": "the bag with the drug",
    "flush": "the flush syringe",
    "push": "the vial",
    "gravity": "the set's package",
}
"""How an instructor speaks of what is laid out."""
_PERIPHERAL = ("intravenous", "peripheral")
"""Routes to which the limit for a peripheral line applies: a central line is named as such."""
_STATES: Mapping[BagState, tuple[str, str]] = {
    "expired": ("has expired", "what has expired"),
    "cloudy": ("is cloudy", "particles, or a drug that has changed"),
    "leaking": ("leaks", "germs, through the leak"),
}
"""What is said of a bag, and what would come out of it."""
_REACHES = {
    WRISTBAND: "What is ordered for somebody else.",
    "site": "Fluid or drug into tissue, or through a vein that is inflamed.",
    "lock": "Fluid or drug into tissue, or pressure into a blocked catheter.",
    "line": "Air, or something through another line than the one that is meant.",
    "patient": "More of what makes the patient unwell.",
}
"""What would reach the patient, by the thing that was not looked at."""


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
        *_apart(order, limits),
        *_drugs_apart(order),
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


def _drugs(order: Order) -> Iterator[tuple[str, Secondary | ByDoseRate | Push]]:
    for part in ("secondary", "second_secondary", "dose", "push"):
        given = getattr(order, part)
        if given is not None:
            yield part, given


def _allergies(order: Order) -> Iterator[Fault]:
    allergies = {key_of(name) for name in order.patient.allergies}
    for part, given in _drugs(order):
        clash = next((name for name in (*avoided_with(given.drug), given.drug) if key_of(name) in allergies), None)
        if clash is not None:
            yield Fault(
                f"{part}.allergy",
                ALLERGIC,
                f"The patient's allergies name {clash}, and {given.drug} is ordered.",
                f"{given.drug}, with an allergy to {clash}.",
            )


def _beyond_limits(order: Order, limits: Limits) -> Iterator[Fault]:
    key = answer_key(order)
    if order.primary is not None:
        fluid = order.primary.fluid
        yield from _out_of_range("primary", fluid, limits.check(fluid, rate=amount_of(key["primary.rate"])))
    for part, given in _drugs(order):
        yield from _out_of_range(part, given.drug, _checked(part, given, key, order.patient.weight, limits))


def _checked(
    part: str, given: Secondary | ByDoseRate | Push, key: Mapping[str, KeyEntry], weight: Amount | None, limits: Limits
) -> tuple[Finding, ...]:
    if isinstance(given, Push):
        return limits.check(given.drug, dose=given.dose, duration=given.over)
    held = given.dose if isinstance(given, Secondary) else given.amount
    strength = concentration(held, given.volume) if given.route in _PERIPHERAL else None
    if isinstance(given, Secondary):
        time = given.over or amount_of(key[f"{part}.duration"])
        return limits.check(given.drug, dose=given.dose, duration=time, concentration=strength)
    return limits.check(given.drug, dose_rate=given.ordered, concentration=strength, weight=weight)


def _out_of_range(part: str, name: str, findings: tuple[Finding, ...]) -> Iterator[Fault]:
    beyond = stopping(findings)
    reaches = f"{name} beyond a limit: {', '.join(one.about for one in beyond)}."
    yield from _by_the_table(f"{part}.limits", OUT_OF_RANGE, beyond, reaches)


def _apart(order: Order, limits: Limits) -> Iterator[Fault]:
    if order.primary is None:
        return
    fluid = order.primary.fluid
    for part, given in _drugs(order):
        beyond = stopping(limits.check(given.drug, together_with=(fluid,)))
        yield from _by_the_table(f"{part}.pair", APART, beyond, f"{given.drug} mixed with {fluid} in the line.")


def _drugs_apart(order: Order) -> Iterator[Fault]:
    """The second drug follows the first through one set; a pair that nobody has listed is the linter's to name."""
    if order.secondary is None or order.second_secondary is None:
        return
    first, second = order.secondary.drug, order.second_secondary.drug
    pair = pair_of(first, second)
    if pair is not None and pair.may == "stay apart":
        named = f"{second[0].upper()}{second[1:]} and {first}"
        what = f"{named} must not follow each other through one set. Source: {pair.source}."
        yield Fault("second_secondary.drugs", APART, what, f"{second} mixed with {first} in the line.")


def _by_the_table(fact: str, state: str, beyond: tuple[Finding, ...], reaches: str) -> Iterator[Fault]:
    """One fault for all that the table of limits says of a fact; none where it says nothing."""
    if beyond:
        is_grave = any(one.level is Level.HARD for one in beyond)
        yield Fault(fact, state, " ".join(map(_sentence, beyond)), reaches, grave=is_grave)


def _sentence(finding: Finding) -> str:
    return f"{finding.sentence[0].upper()}{finding.sentence[1:]} Source: {finding.source}."


# What is laid out.


def _containers(order: Order) -> Iterator[Fault]:
    for part, names in LABELS.items():
        ordered, laid_out = getattr(order, part), getattr(order.laid_out, part)
        if ordered is None:
            continue
        for name in names:
            says, wanted = getattr(laid_out, name), getattr(ordered, name)
            if says is not None and not _same(says, wanted):
                yield _label(part, name, says, wanted)
        if part in CONTAINERS:
            yield from _bag(part, laid_out.state, laid_out.expires, order.written)


def _same(says: str | Amount, ordered: str | Amount) -> bool:
    if isinstance(says, str) or isinstance(ordered, str):
        return key_of(str(says)) == key_of(str(ordered))
    return same_dimension(says.unit, ordered.unit) and says.in_unit(ordered.unit) == ordered.ratio


def _label(part: str, name: str, says: str | Amount, ordered: str | Amount) -> Fault:
    shown, wanted = (value if isinstance(value, str) else show(value) for value in (says, ordered))
    return Fault(
        f"{part}.{name}",
        says,
        f"On {CONTAINER_NAMES[part]}: {shown} in place of {wanted}.",
        f"{shown} in place of {wanted} ({name.replace('_', ' ')}).",
    )


def _bag(part: str, state: BagState | None, expires: date | None, written: date | None) -> Iterator[Fault]:
    """What is wrong with a bag whatever its label says; an old one can leak besides, and those are two faults."""
    where = CONTAINER_NAMES[part]
    is_past = expires is not None and written is not None and expires < written
    for name, (how, what_comes) in _STATES.items():
        if name != state and not (name == "expired" and is_past):
            continue
        if name == "expired" and expires is not None:
            how = f"expired on {day_in_words(expires)}"
        yield Fault(
            f"{part}.bag",
            name,
            f"{where[0].upper()}{where[1:]} {how}.",
            f"{what_comes[0].upper()}{what_comes[1:]}, from {where}.",
        )


def _found(order: Order) -> Iterator[Fault]:
    for thing, state in order.laid_out.found.items():
        yield Fault(thing, state, f"The {thing}: {state}.", _reaches(thing, state))
    for one in order.laid_out.happens:
        what = f"At the step {one.at}, the {one.thing}: {one.state}."
        yield Fault(one.thing, one.state, what, _reaches(one.thing, one.state), one.at, one.say)


def _reaches(thing: str, state: str) -> str:
    return _REACHES.get(thing, f"What follows where nobody acts on it (the {thing}: {state}).")
