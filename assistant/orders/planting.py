"""Faults that are laid out, or put into an order, for teaching: each where a step of the checklist can find it."""

import random
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Literal, get_args

from assistant.checklist.model import Checklist, ChoiceAsked
from assistant.dosing import Amount, parse_amount, show
from assistant.dosing.limits import Finding
from assistant.orders.choices import check, passes
from assistant.orders.draft import Draft
from assistant.orders.fault import facts_of
from assistant.orders.laid_out import LABELS
from assistant.orders.lines import ByDoseRate, Primary, Secondary
from assistant.orders.model import Paced
from assistant.orders.plausible import table
from assistant.orders.shelf import shelf

FaultKind = Literal[
    "wrong-bag",
    "expired-bag",
    "unfit-bag",
    "wrong-concentration",
    "over-limit",
    "illegible-rate",
    "allergy",
    "incompatible-pair",
    "wrong-patient",
    "finding",
]
"""What can be drawn: at each of them the learner must put something right, or stop."""
FAULTS: tuple[FaultKind, ...] = get_args(FaultKind)
WRISTBAND, ANOTHER_PATIENT = "wristband", "another patient"

_TOO_SHORT = ("5 min", "10 min", "15 min", "20 min", "30 min")
_TOO_FAST = ("300 mL/h", "400 mL/h", "500 mL/h", "750 mL/h", "1,250 mL/h")
_BAGS = {
    "primary": "bag of the primary",
    "secondary": "bag with the drug",
    "second_secondary": "second bag with a drug",
    "dose": "bag with the drug",
    "flush": "flush syringe",
}


@dataclass(frozen=True)
class Findable:
    """What the steps of a checklist can find.

    Attributes:
        facts: everything that they look at.
        states: of things that are neither bag nor label, how a step's answer can say that they are.
    """

    facts: frozenset[str]
    states: Mapping[str, tuple[str, ...]]

    @classmethod
    def by(cls, checklist: Checklist) -> "Findable":
        """What a checklist can find."""
        facts: set[str] = set()
        states: dict[str, tuple[str, ...]] = {}
        for step in checklist.steps:
            facts |= facts_of(step)
            for fact in step.looks_at:
                if "." not in fact and isinstance(step.expect, ChoiceAsked) and step.expect.faults:
                    states[fact] = step.expect.faults
        return cls(frozenset(facts), states)

    def parts(self, matter: str) -> tuple[str, ...]:
        """The parts of an order of which this is looked at."""
        return tuple(sorted(fact.partition(".")[0] for fact in self.facts if fact.endswith(f".{matter}")))


def plant(draft: Draft, fault: FaultKind, findable: Findable, chance: random.Random) -> bool:
    """Plant a fault; False where it has no place in this draft, which is then not to be used.

    Args:
        draft: what was chosen; changed.
        fault: what to plant.
        findable: where the checklist looks.
        chance: where there is a choice.
    """
    teaching = _PLANTERS[fault](draft, findable, chance)
    if teaching:
        draft.teaching = teaching
    return bool(teaching)


def _one_of(draft: Draft, parts: Sequence[str], chance: random.Random) -> str:
    """A part that the draft has; "" where it has none of these."""
    there = [part for part in parts if draft.has(part)]
    return chance.choice(there) if there else ""


def _wrong_bag(draft: Draft, findable: Findable, chance: random.Random) -> str:
    part = _one_of(draft, (*findable.parts("drug"), *findable.parts("fluid")), chance)
    if not part:
        return ""
    field = LABELS[part][0]
    ordered = draft.name_of(part)
    if field == "fluid":
        known = [fluid.name for fluid in shelf().fluids]
    else:
        known = [drug.name for drug in (shelf().rates if part == "dose" else shelf().drugs)]
    other = chance.choice([name for name in known if name != ordered])
    draft.laid_out[part] = {field: other}
    return f"The {_BAGS[part]} is {other}, not {ordered}. The learner must notice it at the label and take another one."


def _expired_bag(draft: Draft, findable: Findable, chance: random.Random) -> str:
    draft.expired = _one_of(draft, findable.parts("bag"), chance)
    if not draft.expired:
        return ""
    return f"The date on the {_BAGS[draft.expired]} has passed. The learner must notice it and take another one."


def _unfit_bag(draft: Draft, findable: Findable, chance: random.Random) -> str:
    part = _one_of(draft, findable.parts("bag"), chance)
    if not part:
        return ""
    state = chance.choice(("cloudy", "leaking"))
    draft.laid_out[part] = {"state": state}
    return f"The {_BAGS[part]} is {state}. The learner must notice it and take another one."


def _wrong_concentration(draft: Draft, findable: Findable, chance: random.Random) -> str:
    part = _one_of(draft, (*findable.parts("dose"), *findable.parts("amount")), chance)
    if not part:
        return ""
    dose, volume = draft.held_in(part)
    other = Amount(dose.value * 2 if chance.random() < 0.5 else dose.value / 2, dose.unit)
    draft.laid_out[part] = {"amount" if part == "dose" else "dose": show(other)}
    return (
        f"The label says {show(other)} in {show(volume)}, not {show(dose)}. The learner must notice it at the label"
        " and take another bag."
    )


def _over_limit(draft: Draft, findable: Findable, chance: random.Random) -> str:
    part = _one_of(draft, findable.parts("limits"), chance)
    match part:
        case "secondary" | "second_secondary":
            return _too_short(draft, part, chance)
        case "dose" if draft.rated is not None:
            slow = draft.rated.dose
            tenfold = Amount(slow.ordered.value * 10, slow.ordered.unit)
            found = _gravest(table().check(slow.drug, dose_rate=tenfold, weight=draft.weight))
            if found is None:
                return ""
            fast = ByDoseRate(drug=slow.drug, ordered=tenfold, amount=slow.amount, volume=slow.volume)
            draft.rated = replace(draft.rated, dose=fast)
        case "primary" if draft.primary is not None and draft.primary.gravity is None:
            plain = draft.primary.primary
            rate = parse_amount(chance.choice(_TOO_FAST))
            found = _gravest(table().check(plain.fluid, rate=rate))
            if found is None:
                return ""
            wild = Primary(fluid=plain.fluid, bag_volume=plain.bag_volume, reserve=plain.reserve, rate=rate)
            draft.primary = replace(draft.primary, primary=wild)
        case _:
            return ""
    return _meant(draft, "limits", found)


def _too_short(draft: Draft, part: str, chance: random.Random) -> str:
    dosed = draft.dosed(part)
    given = dosed.secondary
    for over in chance.sample(_TOO_SHORT, len(_TOO_SHORT)):
        found = _gravest(check(table(), given.drug, given.dose, given.volume, parse_amount(over)))
        if found is not None:
            faster = Secondary(
                drug=given.drug,
                dose=given.dose,
                volume=given.volume,
                over=parse_amount(over),
                frequency=given.frequency,
            )
            draft.set_dosed(part, replace(dosed, secondary=faster))
            return _meant(draft, "limits", found)
    return ""


def _illegible_rate(draft: Draft, findable: Findable, chance: random.Random) -> str:
    paced: tuple[Paced, ...] = ("primary", "secondary", "dose")
    places = [part for part in paced if part in findable.parts("paper") and draft.has(part)]
    if not places:
        return ""
    draft.illegible = (chance.choice(places),)
    return "How fast it is to run cannot be read. The learner must ask whoever ordered it, and never guess."


def _allergy(draft: Draft, findable: Findable, chance: random.Random) -> str:
    clashes = [
        (name, allergy)
        for part in findable.parts("allergy")
        if draft.has(part)
        for name, avoid in [draft.drug(part)]
        for allergy in avoid
    ]
    if not clashes:
        return ""
    name, allergy = chance.choice(clashes)
    draft.allergies = (allergy,)
    draft.on_purpose = ("allergy",)
    return (
        f"The patient's allergies name {allergy}, and {name} is ordered."
        " The learner must hold the dose and ask whoever ordered it."
    )


def _incompatible_pair(draft: Draft, findable: Findable, chance: random.Random) -> str:
    part = _one_of(draft, findable.parts("pair"), chance)
    if not part or draft.primary is None:
        return ""
    name, _ = draft.drug(part)
    pairs = [
        (fluid.name, found)
        for fluid in shelf().fluids
        if (found := _gravest(table().check(name, together_with=(fluid.name,)))) is not None
    ]
    if not pairs:
        return ""
    fluid, found = chance.choice(pairs)
    draft.primary = replace(draft.primary, primary=draft.primary.primary.model_copy(update={"fluid": fluid}))
    draft.on_purpose = ("pair",)
    return f"{found.sentence[0].upper()}{found.sentence[1:]} The learner must stop and ask the pharmacist."


def _wrong_patient(draft: Draft, findable: Findable, _chance: random.Random) -> str:
    if WRISTBAND not in findable.facts:
        return ""
    draft.found[WRISTBAND] = ANOTHER_PATIENT
    return "The wristband is another patient's. The learner must notice it when asking for name and date of birth."


def _finding(draft: Draft, findable: Findable, chance: random.Random) -> str:
    if not findable.states:
        return ""
    thing = chance.choice(sorted(findable.states))
    draft.found[thing] = chance.choice(findable.states[thing])
    return f"The {thing}: {draft.found[thing]}. The learner must notice it, and act on it."


def _gravest(findings: tuple[Finding, ...]) -> Finding | None:
    """The gravest finding, where it is one that must stop a learner."""
    return findings[0] if findings and passes(findings) else None


def _meant(draft: Draft, matter: Literal["limits"], found: Finding) -> str:
    draft.on_purpose = (matter,)
    return f"{found.sentence} The learner must stop and tell whoever ordered it."


_PLANTERS: Mapping[FaultKind, Callable[[Draft, Findable, random.Random], str]] = {
    "wrong-bag": _wrong_bag,
    "expired-bag": _expired_bag,
    "unfit-bag": _unfit_bag,
    "wrong-concentration": _wrong_concentration,
    "over-limit": _over_limit,
    "illegible-rate": _illegible_rate,
    "allergy": _allergy,
    "incompatible-pair": _incompatible_pair,
    "wrong-patient": _wrong_patient,
    "finding": _finding,
}
