"""The blank paper form of a checklist: what an assessor ticks with a pen."""

from itertools import groupby

from assistant.checklist.model import Checklist, Step
from assistant.orders.model import Order
from assistant.report.content import Part

USUAL = (
    ("training", "For training on a mannequin or an arm only; it licenses nobody, and no patient is treated by it."),
    ("policy", "Local policy and the makers' instructions come first."),
    ("practitioner", "A licensed practitioner decides."),
)
"""Cautions that stand on every form: a word by which a checklist's own are recognised, and the sentence."""
_LINE = "________"


class FormStep(Part):
    """One row: what is done, and what is written beside it."""

    number: int
    say: str
    critical: bool
    gate: bool
    blanks: tuple[str, ...]
    """Places to be filled in, as text with lines."""


class FormPart(Part):
    """A heading with its rows."""

    name: str
    steps: tuple[FormStep, ...]


class Form(Part):
    """The whole form."""

    title: str
    version: str
    digest: str
    purpose: str
    cautions: tuple[str, ...]
    equipment: tuple[str, ...]
    order_text: tuple[str, ...]
    parts: tuple[FormPart, ...]
    rule: str
    critical: int
    steps: int
    sources: tuple[str, ...]


def form_of(checklist: Checklist, order: Order | None = None) -> Form:
    """The blank form of a checklist.

    Args:
        checklist: the procedure.
        order: printed at the top where there is one, as the learner sees it: nothing that follows from it.
    """
    rows = [(step.part, _row(number, step)) for number, step in enumerate(checklist.steps, 1)]
    own = checklist.cautions
    rule = checklist.pass_rule
    return Form(
        title=checklist.title,
        version=checklist.version,
        digest=checklist.digest,
        purpose=checklist.purpose,
        cautions=(*(words for sign, words in USUAL if not any(sign in one.casefold() for one in own)), *own),
        equipment=checklist.equipment,
        order_text=order.sentences() if order is not None else (),
        parts=tuple(
            FormPart(name=name, steps=tuple(row for _, row in group))
            for name, group in groupby(rows, key=lambda pair: pair[0])
        ),
        rule=(
            "To pass: every critical step is done; of the critical steps "
            f"{_most(rule.critical_corrections)} may be corrected after a hold and {_most(rule.critical_cues)} "
            f"done after a cue; at least {rule.score_percent} % of all steps are done unaided."
        ),
        critical=sum(step.critical for step in checklist.steps),
        steps=len(checklist.steps),
        sources=checklist.sources
        or tuple(dict.fromkeys(source for step in checklist.steps for source in step.sources)),
    )


def _most(number: int) -> str:
    return "none" if number == 0 else f"at most {number}"


def _row(number: int, step: Step) -> FormStep:
    return FormStep(number=number, say=step.say, critical=step.critical, gate=step.gate, blanks=_blanks(step))


def _blanks(step: Step) -> tuple[str, ...]:
    """What is written down at a step, by what it asks for."""
    asked = step.expect
    match asked.kind:
        case "number":
            unit = getattr(asked, "unit", "")
            return (f"First {_LINE}\u00a0{unit}", f"Final {_LINE}\u00a0{unit}")  # a unit stays with its number
        case "double-check":
            return (f"Second person, alone {_LINE}", f"Initials {_LINE}")
        case "name":
            return (f"Label reads {_LINE}{_LINE}",)
        case "wait":
            return (f"{getattr(asked, 'seconds', '')} s timed: {_LINE}",)
        case "question":
            return ("Answer: yes / no",)
        case "choice":
            return (f"Answer: {' / '.join(getattr(asked, 'choices', ()))}",)
        case "note":
            return (f"Note {_LINE}{_LINE}",)
        case "observation":
            return (f"Seen by {_LINE}",)
        case _:
            return ()
