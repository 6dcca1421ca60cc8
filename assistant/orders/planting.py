"""Faults that are planted in an order or on its labels for teaching: at each of them the learner must stop."""

import random
from collections.abc import Callable, Mapping
from dataclasses import replace

from assistant.dosing import Amount, parse_amount, show
from assistant.dosing.limits import Finding
from assistant.orders.choices import check, passes
from assistant.orders.draft import Draft
from assistant.orders.lines import ByDoseRate, Primary, Secondary
from assistant.orders.model import Fault, Hung, Paced
from assistant.orders.plausible import table
from assistant.orders.shelf import shelf

_TOO_SHORT = ("5 min", "10 min", "15 min", "20 min", "30 min")
_TOO_FAST = ("300 mL/h", "400 mL/h", "500 mL/h", "750 mL/h", "1,250 mL/h")


def plant(draft: Draft, fault: Fault, chance: random.Random) -> bool:
    """Plant a fault; False where it has no place in this draft, which is then not to be used.

    Args:
        draft: what was chosen; changed.
        fault: what to plant.
        chance: where there is a choice.
    """
    teaching = _PLANTERS[fault](draft, chance)
    if teaching:
        draft.planted, draft.teaching = fault, teaching
    return bool(teaching)


def _wrong_bag(draft: Draft, chance: random.Random) -> str:
    places = [name for name, there in (("fluid", draft.primary), ("drug", draft.first), ("rate", draft.rated)) if there]
    if not places:
        return ""
    place = chance.choice(places)
    if place == "fluid":
        other = chance.choice([fluid.name for fluid in shelf().fluids if fluid.name != draft.fluid])
        draft.labels = Hung(fluid=other)
        return f"The bag on the stand is {other}, not {draft.fluid}. The learner must notice it at the label and stop."
    known = shelf().drugs if place == "drug" else shelf().rates
    ordered = _drug_of(draft)
    other = chance.choice([drug.name for drug in known if drug.name != ordered])
    draft.labels = Hung(drug=other)
    return f"The small bag holds {other}, not {ordered}. The learner must notice it at the label and stop."


def _expired_bag(draft: Draft, chance: random.Random) -> str:
    holds_drug = draft.first is not None or draft.rated is not None
    places = [name for name, there in (("fluid", draft.primary is not None), ("drug", holds_drug)) if there]
    if not places:
        return ""
    draft.expired = chance.choice(places)
    which = "bag of the primary" if draft.expired == "fluid" else "bag with the drug"
    return f"The date on the {which} has passed. The learner must notice it at the label and take another bag."


def _wrong_concentration(draft: Draft, chance: random.Random) -> str:
    if draft.first is not None:
        dose, volume = draft.first.secondary.dose, draft.first.secondary.volume
    elif draft.rated is not None:
        dose, volume = draft.rated.dose.amount, draft.rated.dose.volume
    else:
        return ""
    hung = Amount(dose.value * 2 if chance.random() < 0.5 else dose.value / 2, dose.unit)
    draft.labels = Hung(dose=hung)
    return (
        f"The label says {show(hung)} in {show(volume)}, not {show(dose)}. The learner must notice it at the label"
        " and not run it at the rate that follows from the order."
    )


def _over_limit(draft: Draft, chance: random.Random) -> str:
    limits = table()
    if draft.first is not None:
        given = draft.first.secondary
        for over in chance.sample(_TOO_SHORT, len(_TOO_SHORT)):
            found = _gravest(check(limits, given.drug, given.dose, given.volume, parse_amount(over)))
            if found is not None:
                faster = Secondary(
                    drug=given.drug,
                    dose=given.dose,
                    volume=given.volume,
                    over=parse_amount(over),
                    frequency=given.frequency,
                )
                draft.first = replace(draft.first, secondary=faster)
                return _told(found)
    if draft.rated is not None:
        slow = draft.rated.dose
        tenfold = Amount(slow.ordered.value * 10, slow.ordered.unit)
        found = _gravest(limits.check(slow.drug, dose_rate=tenfold, weight=draft.weight))
        if found is None:
            return ""
        fast = ByDoseRate(drug=slow.drug, ordered=tenfold, amount=slow.amount, volume=slow.volume)
        draft.rated = replace(draft.rated, dose=fast)
        return _told(found)
    if draft.primary is None or draft.first is not None or draft.primary.gravity is not None:
        return ""
    plain = draft.primary.primary
    rate = parse_amount(chance.choice(_TOO_FAST))
    found = _gravest(limits.check(plain.fluid, rate=rate))
    if found is None:
        return ""
    wild = Primary(fluid=plain.fluid, bag_volume=plain.bag_volume, reserve=plain.reserve, rate=rate)
    draft.primary = replace(draft.primary, primary=wild)
    return _told(found)


def _illegible_rate(draft: Draft, chance: random.Random) -> str:
    known: tuple[tuple[Paced, object], ...] = (
        ("primary", draft.primary),
        ("secondary", draft.first),
        ("dose", draft.rated),
    )
    places = [name for name, there in known if there is not None]
    if not places:
        return ""
    draft.illegible = (chance.choice(places),)
    return "How fast it is to run cannot be read. The learner must ask whoever ordered it, and never guess."


def _allergy(draft: Draft, chance: random.Random) -> str:
    avoided = draft.avoided()
    if not avoided:
        return ""
    draft.allergies = (chance.choice(avoided),)
    return (
        f"The patient's allergies name {draft.allergies[0]}, and {_concerned(draft, draft.allergies[0])} is ordered."
        " The learner must hold the dose and ask whoever ordered it."
    )


def _incompatible_pair(draft: Draft, chance: random.Random) -> str:
    if draft.primary is None or draft.first is None:
        return ""
    limits, drug = table(), draft.first.secondary.drug
    pairs = [
        (fluid.name, found)
        for fluid in shelf().fluids
        if (found := _gravest(limits.check(drug, together_with=(fluid.name,)))) is not None
    ]
    if not pairs:
        return ""
    fluid, found = chance.choice(pairs)
    draft.primary = replace(draft.primary, primary=draft.primary.primary.model_copy(update={"fluid": fluid}))
    return f"{found.sentence[0].upper()}{found.sentence[1:]} The learner must stop and ask the pharmacist."


def _concerned(draft: Draft, allergy: str) -> str:
    """The drug that an allergy concerns."""
    known = [one.drug for one in (draft.first, draft.second, draft.rated) if one is not None]
    return next(drug.name for drug in known if allergy in drug.avoid)


def _drug_of(draft: Draft) -> str:
    if draft.first is not None:
        return draft.first.secondary.drug
    return draft.rated.dose.drug if draft.rated is not None else ""


def _gravest(findings: tuple[Finding, ...]) -> Finding | None:
    """The gravest finding, where it is one that must stop a learner."""
    return findings[0] if findings and passes(findings) else None


def _told(found: Finding) -> str:
    return f"{found.sentence} The learner must stop and tell whoever ordered it."


_PLANTERS: Mapping[Fault, Callable[[Draft, random.Random], str]] = {
    "wrong-bag": _wrong_bag,
    "expired-bag": _expired_bag,
    "wrong-concentration": _wrong_concentration,
    "over-limit": _over_limit,
    "illegible-rate": _illegible_rate,
    "allergy": _allergy,
    "incompatible-pair": _incompatible_pair,
}
