"""Rules about what is looked at: every danger of what is hung is looked at, and an answer can tell of it."""

import re
from collections.abc import Iterator

from assistant.checklist.facts import (
    ALLERGIC,
    ANOTHER_PATIENT,
    APART,
    OUT_OF_RANGE,
    SOMETHING_MISSING,
    WRISTBAND,
)
from assistant.checklist.finding import Bench, Complaint, warning
from assistant.checklist.library import either
from assistant.checklist.model import ChoiceAsked, DoneAsked, NameAsked, Step
from assistant.text import quoted

_HUNG = re.compile(r"(?P<part>[a-z_]+)\.(?P<name>drug|fluid)")
_NOT_HUNG = ("flush",)
_TO_THE_PATIENT = re.compile(r"\b(?:spikes?|hangs?|connects?)\b", re.IGNORECASE)
"""Something to do that brings a bag to a patient. Who only reads the label of what runs, hangs nothing."""
TOLD_AS = {
    ".allergy": (ALLERGIC,),
    ".bag": ("cloudy", "leaking", "expired"),
    ".limits": (OUT_OF_RANGE,),
    ".pair": (APART,),
    ".paper": (SOMETHING_MISSING,),
    WRISTBAND: (ANOTHER_PATIENT,),
}
"""In which words a choice tells of what is wrong, by the end of the fact."""


def looked_at(step: Step, number: int, bench: Bench) -> Iterator[Complaint]:
    """Where something is hung, its dangers are looked at.

    A checklist hangs what it has named from a label and then spikes, hangs or connects.
    """
    part = _named(step)
    steps = bench.sheet.checklist.steps
    if bench.sheet.is_part or not part or any(_named(before) == part for before in bench.earlier(number)):
        return
    if not any(isinstance(s.expect, DoneAsked) and _TO_THE_PATIENT.search(s.say) for s in steps[number:]):
        return
    looked = {fact for each in steps for fact in each.looks_at}
    missing = [fact for fact in _dangers(step, part, bench) if fact not in looked]
    if missing:
        yield warning(
            "looked-at",
            "id",
            f"what is named here is hung, and no step looks at {either(missing)}.",
            "Add a step that does, or say so at the step that does: "
            f"looks_at = [{', '.join(quoted(fact) for fact in missing)}].",
        )


def _named(step: Step) -> str:
    """The part of an order whose label is read here, where it is something that hangs."""
    found = _HUNG.fullmatch(step.expect.key) if isinstance(step.expect, NameAsked) else None
    return found["part"] if found and found["part"] not in _NOT_HUNG else ""


def _dangers(step: Step, part: str, bench: Bench) -> Iterator[str]:
    yield WRISTBAND
    yield f"{part}.bag"
    yield f"{part}.limits"
    if isinstance(step.expect, NameAsked) and step.expect.key.endswith(".drug"):
        yield f"{part}.allergy"
        if "primary.fluid" in bench.known.answers.get(bench.sheet.checklist.order, ()):
            yield f"{part}.pair"


def told(step: Step, _number: int, _bench: Bench) -> Iterator[Complaint]:
    """A choice that looks at something has answers that tell what is wrong with it."""
    asked = step.expect
    if not isinstance(asked, ChoiceAsked) or not asked.right or not step.looks_at:
        return
    if not asked.faults:
        yield warning(
            "told",
            "looks_at",
            f"no choice tells what is wrong with {either(list(step.looks_at))}.",
            'Name the choices that do: faults = ["..."].',
        )
        return
    words = {word for fault in asked.faults for word in (fault, *asked.phrases.get(fault, ()))}
    for fact in step.looks_at:
        untold = [state for state in TOLD_AS.get("".join(fact.partition(".")[1:]) or fact, ()) if state not in words]
        if untold:
            yield warning(
                "told",
                "looks_at",
                f"no choice tells that {quoted(fact)} is {either(untold)}.",
                "Add it to the choices and to faults, or to the phrases of one of the faults.",
            )
