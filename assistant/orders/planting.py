"""Faults that are laid out, or put into an order, for teaching: each where a step of the checklist can find it."""

import random
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Literal, get_args

from assistant.checklist.condition import USUAL_LAB, LabTrait
from assistant.checklist.facts import ANOTHER_PATIENT, WRISTBAND
from assistant.checklist.model import Checklist, ChoiceAsked, Step
from assistant.dosing import Amount, parse_amount, show
from assistant.dosing.limits import Finding
from assistant.orders.choices import can_be_counted, check, is_weighed_alike, secondaries
from assistant.orders.draft import Draft
from assistant.orders.fault import Fault, Truth, facts_of
from assistant.orders.laid_out import LABELS
from assistant.orders.lines import Primary, Secondary
from assistant.orders.model import Order, Paced
from assistant.orders.pairs import pair_of
from assistant.orders.plausible import stopping, table
from assistant.orders.shelf import avoided_with, shelf
from assistant.orders.solve import amount_of, answer_key

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

_TOO_SHORT = ("5 min", "10 min", "15 min", "20 min", "30 min")
_TOO_HASTY = ("6 s", "12 s", "15 s", "18 s", "24 s", "30 s")
"""Tenths or quarters of a minute: they can be said."""
_TOO_FAST = ("300 mL/h", "350 mL/h", "400 mL/h", "450 mL/h", "500 mL/h", "600 mL/h", "750 mL/h", "1,250 mL/h")
_SEEN_AT: Mapping[FaultKind, tuple[str, ...]] = {
    "wrong-bag": ("drug", "fluid"),
    "expired-bag": ("bag",),
    "unfit-bag": ("bag",),
    "wrong-concentration": ("dose", "amount"),
    "over-limit": ("limits",),
    "illegible-rate": ("paper",),
    "allergy": ("allergy",),
    "incompatible-pair": ("pair", "drugs"),
}
"""Matters of a part of an order (see `assistant.orders.fault`) at which a fault is seen."""
_BAGS = {
    "primary": "bag of the primary",
    "secondary": "bag with the drug",
    "second_secondary": "second bag with a drug",
    "dose": "bag with the drug",
    "flush": "flush syringe",
    "push": "vial",
}


@dataclass(frozen=True)
class Findable:
    """What the steps of a checklist can find, whatever was answered before.

    Attributes:
        facts: everything that they look at.
        states: of things that are neither bag nor label, how every choice about them can say that they are.
        steps: those that look at something; one that hangs on an earlier answer is not among them.
        lab: what the lab has.
    """

    facts: frozenset[str]
    states: Mapping[str, tuple[str, ...]]
    steps: tuple[Step, ...]
    lab: frozenset[LabTrait] = USUAL_LAB

    @classmethod
    def by(cls, checklist: Checklist) -> "Findable":
        """What a checklist can find."""
        steps = [step for step in checklist.steps if not any(condition.step for condition in step.applies)]
        states: dict[str, tuple[str, ...]] = {}
        for step in steps:
            told = step.expect.faults if isinstance(step.expect, ChoiceAsked) else ()
            for fact in step.looks_at if told else ():
                if "." not in fact and fact != WRISTBAND:
                    states[fact] = tuple(state for state in told if state in states.get(fact, told))
        return cls(
            frozenset(fact for step in steps for fact in facts_of(step)),
            {fact: told for fact, told in states.items() if told},
            tuple(step for step in steps if facts_of(step)),
            checklist.lab_has,
        )

    def finds(self, fault: Fault, order: Order) -> bool:
        """Whether a step that applies to an order looks at a fault of it."""
        looking = [step for step in self.steps if fault in Truth((fault,)).seen_at(step)]
        if any(not step.applies for step in looking):
            return True
        key = answer_key(order)
        values = {name: one.value if isinstance(one.value, str) else amount_of(one) for name, one in key.items()}
        return any(step.unmet(values, {}, self.lab) is None for step in looking)

    def parts(self, matter: str) -> tuple[str, ...]:
        """The parts of an order of which this is looked at."""
        return tuple(sorted(fact.partition(".")[0] for fact in self.facts if fact.endswith(f".{matter}")))


def has_place(fault: FaultKind, findable: Findable) -> bool:
    """Whether any step looks at what a fault would be seen at: without one, no order is worth drawing."""
    match fault:
        case "wrong-patient":
            return WRISTBAND in findable.facts
        case "finding":
            return bool(findable.states)
    return any(findable.parts(matter) for matter in _SEEN_AT[fault])


def plant(draft: Draft, fault: FaultKind, findable: Findable, chance: random.Random) -> bool:
    """Plant a fault; False where it has no place in this draft, which is then not to be used.

    Args:
        draft: what was chosen; changed.
        fault: what to plant; it `has_place`.
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
        known = [drug.name for drug in shelf().drugs]
        if part == "dose":
            known = [drug.name for drug in shelf().rates]
        elif ordered in (salts := {salt.name: salt.mixed_up_with for salt in shelf().electrolytes}):
            known = [*salts[ordered]]
        elif part == "push":
            known = [drug.name for drug in shelf().pushes]
    others = [name for name in known if name != ordered and _goes_with_the_rest(draft, part, name)]
    if not others:
        return ""
    other = chance.choice(others)
    draft.laid_out[part] = {field: other}
    return f"The {_BAGS[part]} is {other}, not {ordered}. The learner must notice it at the label and take another one."


def _goes_with_the_rest(draft: Draft, part: str, name: str) -> bool:
    """Whether a bag of this name is wrong for its name alone, and not also for what it would meet in the line."""
    if part == "flush":
        return True
    drugs = [draft.name_of(each) for each in ("secondary", "second_secondary", "dose", "push") if draft.has(each)]
    together = drugs if part == "primary" else [draft.fluid] if draft.fluid else []
    return not stopping(table().check(name, together_with=together))


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
    draft.laid_out[part] = {LABELS[part][1]: show(other)}
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
            found = stopping(table().check(slow.drug, dose_rate=tenfold, weight=draft.weight))
            if not found:
                return ""
            fast = slow.model_copy(update={"ordered": tenfold})
            if not is_weighed_alike(fast, draft.weight):
                return ""
            draft.rated = replace(draft.rated, dose=fast)
        case "push" if draft.pushed is not None:
            hasty = draft.pushed.push.model_copy(update={"over": parse_amount(chance.choice(_TOO_HASTY))})
            found = stopping(table().check(hasty.drug, dose=hasty.dose, duration=hasty.over))
            if not found:
                return ""
            draft.pushed = replace(draft.pushed, push=hasty)
        case "primary" if draft.primary is not None:
            plain = draft.primary.primary
            rate = parse_amount(chance.choice(_TOO_FAST))
            found = stopping(table().check(plain.fluid, rate=rate))
            if not found or _has_run_in(draft, rate) or not can_be_counted(rate, draft.primary.gravity):
                return ""
            wild = Primary(fluid=plain.fluid, bag_volume=plain.bag_volume, reserve=plain.reserve, rate=rate)
            draft.primary = replace(draft.primary, primary=wild)
        case _:
            return ""
    return _beyond_limits(draft, found)


def _has_run_in(draft: Draft, rate: Amount) -> bool:
    """Whether a running primary would be over by now at this rate."""
    if draft.primary is None or draft.running is None:
        return False
    held = draft.primary.primary.bag_volume.in_unit("mL") - draft.primary.primary.reserve.in_unit("mL")
    return rate.in_unit("mL/h") * draft.running.since.in_unit("h") >= held


def _too_short(draft: Draft, part: str, chance: random.Random) -> str:
    dosed = draft.dosed(part)
    given = dosed.secondary
    for over in chance.sample(_TOO_SHORT, len(_TOO_SHORT)):
        found = stopping(check(table(), given.drug, given.dose, given.volume, parse_amount(over)))
        if found:
            faster = Secondary(
                drug=given.drug,
                dose=given.dose,
                volume=given.volume,
                over=parse_amount(over),
                frequency=given.frequency,
            )
            draft.set_dosed(part, replace(dosed, secondary=faster))
            return _beyond_limits(draft, found)
    return ""


def _illegible_rate(draft: Draft, findable: Findable, chance: random.Random) -> str:
    paced: tuple[Paced, ...] = ("primary", "secondary", "dose")
    places = [part for part in paced if part in findable.parts("paper") and draft.has(part)]
    if not places:
        return ""
    draft.illegible = (chance.choice(places),)
    return "How fast it is to run cannot be read. The learner must ask whoever ordered it, and never guess."


def _allergy(draft: Draft, findable: Findable, chance: random.Random) -> str:
    part = _one_of(draft, findable.parts("allergy"), chance)
    if not part:
        return ""
    name = draft.name_of(part)
    allergy = chance.choice(avoided_with(name) or (name,))
    draft.allergies = (allergy,)
    draft.on_purpose = ("allergy",)
    return (
        f"The patient's allergies name {allergy}, and {name} is ordered."
        " The learner must hold the dose and ask whoever ordered it."
    )


def _incompatible_pair(draft: Draft, findable: Findable, chance: random.Random) -> str:
    places = [(part, matter) for matter in ("pair", "drugs") for part in findable.parts(matter) if draft.has(part)]
    if not places or draft.primary is None:
        return ""
    part, matter = chance.choice(places)
    if matter == "drugs":
        return _drugs_apart(draft, chance)
    name = draft.name_of(part)
    pairs = [
        (fluid.name, found)
        for fluid in shelf().fluids
        if (found := stopping(table().check(name, together_with=(fluid.name,))))
    ]
    if not pairs:
        return ""
    fluid, found = chance.choice(pairs)
    draft.primary = replace(draft.primary, primary=draft.primary.primary.model_copy(update={"fluid": fluid}))
    draft.on_purpose = ("pair",)
    return f"{found[0].sentence[0].upper()}{found[0].sentence[1:]} The learner must stop and ask the pharmacist."


def _drugs_apart(draft: Draft, chance: random.Random) -> str:
    """Another first drug, through whose set the second one must not follow."""
    if draft.first is None or draft.second is None:
        return ""
    second, hurdles = draft.second.drug.name, draft.first.hurdles
    clashes = {
        dosed.drug.name: pair
        for dosed in secondaries()
        if (pair := pair_of(dosed.drug.name, second)) is not None and pair.may == "stay apart"
    }
    others = [
        dosed
        for dosed in secondaries()
        if dosed.drug.name in clashes and dosed.hurdles == hurdles and draft.may_ride(dosed)
    ]
    if not others:
        return ""
    draft.first = chance.choice(others)
    first = draft.first.drug.name
    draft.on_purpose = ("drugs",)
    return f"{second} must not follow {first} through one set. The learner must stop and ask the pharmacist."


def _wrong_patient(draft: Draft, _findable: Findable, _chance: random.Random) -> str:
    draft.found[WRISTBAND] = ANOTHER_PATIENT
    return "The wristband is another patient's. The learner must notice it when asking for name and date of birth."


def _finding(draft: Draft, findable: Findable, chance: random.Random) -> str:
    thing = chance.choice(sorted(findable.states))
    draft.found[thing] = chance.choice(findable.states[thing])
    return f"The {thing}: {draft.found[thing]}. The learner must notice it, and act on it."


def _beyond_limits(draft: Draft, found: tuple[Finding, ...]) -> str:
    draft.on_purpose = ("limits",)
    return f"{found[0].sentence} The learner must stop and tell whoever ordered it."


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
