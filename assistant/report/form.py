"""The blank paper form of a checklist: what an assessor ticks with a pen."""

from collections.abc import Iterator, Sequence
from itertools import groupby

from assistant.checklist.model import Checklist, Step
from assistant.orders.model import Order
from assistant.report.content import Part
from assistant.spoken.language import ReportWords

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
    page_title: str
    version: str
    digest: str
    purpose: str
    cautions: tuple[str, ...]
    equipment: tuple[str, ...]
    order_text: tuple[str, ...]
    parts: tuple[FormPart, ...]
    use: str
    rule: str
    sources: tuple[str, ...]


def form_of(checklist: Checklist, words: ReportWords, order: Order | None = None) -> Form:
    """The blank form of a checklist.

    Args:
        checklist: the procedure.
        words: the language of the form.
        order: printed at the top where there is one, as the learner sees it: nothing that follows from it.
    """
    rows = [(step.part, _row(number, step, words)) for number, step in enumerate(checklist.steps, 1)]
    own = checklist.cautions
    rule = checklist.pass_rule
    return Form(
        title=checklist.title,
        page_title=words.form_title(checklist.title),
        version=checklist.version,
        digest=checklist.digest,
        purpose=checklist.purpose,
        cautions=(*_usual(own, words), *own),
        equipment=checklist.equipment,
        order_text=order.sentences() if order is not None else (),
        parts=tuple(
            FormPart(name=name, steps=tuple(row for _, row in group))
            for name, group in groupby(rows, key=lambda pair: pair[0])
        ),
        use=words.form_use(len(checklist.steps), sum(step.critical for step in checklist.steps)),
        rule=words.form_rule(rule.critical_corrections, rule.critical_cues, rule.score_percent),
        sources=checklist.sources
        or tuple(dict.fromkeys(source for step in checklist.steps for source in step.sources)),
    )


def _usual(own: Sequence[str], words: ReportWords) -> Iterator[str]:
    """The usual cautions that a checklist does not give in its own words."""
    for sign, sentence in words.USUAL_CAUTIONS:
        if not any(sign in one.casefold() for one in own):
            yield sentence


def _row(number: int, step: Step, words: ReportWords) -> FormStep:
    return FormStep(
        number=number, say=step.say, critical=step.critical, gate=step.gate, blanks=tuple(_blanks(step, words))
    )


def _blanks(step: Step, words: ReportWords) -> Iterator[str]:
    """What is written down at a step, by what it asks for."""
    asked = step.expect
    match asked.kind:
        case "number":
            unit = getattr(asked, "unit", "")
            yield f"{words.FIRST} {_LINE}\u00a0{unit}"  # a unit stays with its number
            yield f"{words.FINAL} {_LINE}\u00a0{unit}"
        case "double-check":
            yield f"{words.SECOND_PERSON_ALONE} {_LINE}"
            yield f"{words.INITIALS} {_LINE}"
        case "name":
            yield f"{words.LABEL_READS} {_LINE}{_LINE}"
        case "wait":
            yield f"{words.timed(getattr(asked, 'seconds', ''))} {_LINE}"
        case "question":
            yield f"{words.ANSWER_IS} {words.YES} / {words.NO}"
        case "choice":
            yield f"{words.ANSWER_IS} {' / '.join(getattr(asked, 'choices', ()))}"
        case "note":
            yield f"{words.NOTE} {_LINE}{_LINE}"
        case "observation":
            yield f"{words.SEEN_BY} {_LINE}"
    if step.seen and asked.kind != "observation":
        yield f"{words.SEEN_BY} {_LINE}"
