"""What a checklist that loads may still have wrong, each with file, line, rule and remedy.

Pure: it is given the checklist with the places of its steps, and reads nothing. The rules stand in
`assistant.checklist.rules`; what each is about, with an example, in `assistant.checklist.rules.listing`.
"""

import re
from collections.abc import Callable, Iterator

from assistant.checklist.finding import Bench, Complaint, Finding, Known, Severity, error, warning
from assistant.checklist.library import nearest
from assistant.checklist.load import Sheet
from assistant.checklist.model import Checklist, Step
from assistant.checklist.paper_file import PaperFile
from assistant.checklist.rules import answers, looking, own_words, path, quantities, reasons, texts
from assistant.errors import AssistantError
from assistant.text import quoted

__all__ = ["Finding", "Known", "Severity", "from_error", "lint"]

_LOCATED = re.compile(r"(?P<file>.+?), line (?P<line>\d+)(?:, (?:step|trouble) [^:]*)?: (?P<what>.*)", re.DOTALL)
_STEP_RULES: tuple[Callable[[Step, int, Bench], Iterator[Complaint]], ...] = (
    reasons.critical_reasons,
    reasons.cues,
    reasons.advice,
    reasons.tries,
    path.gate,
    path.waits_for,
    path.double_check,
    path.expiry,
    path.reopening,
    path.taking_back,
    path.applies,
    looking.looked_at,
    looking.told,
    quantities.key,
    quantities.answerable,
    quantities.ranges,
    quantities.waits,
    quantities.unit_said,
    quantities.gives_answer,
    answers.line_asks,
    answers.choices,
    own_words.own_words,
    texts.length,
    texts.asides,
    texts.reading,
    texts.wording,
    texts.said_twice,
)


def from_error(fault: AssistantError, file: str) -> Finding:
    """The finding for a fault that keeps a file from loading."""
    located = _LOCATED.fullmatch(fault.what)
    if located is None:
        return Finding(file, 1, "loads", Severity.ERROR, fault.what, fault.remedy)
    return Finding(located["file"], int(located["line"]), "loads", Severity.ERROR, located["what"], fault.remedy)


def lint(sheet: Sheet, known: Known, installed: Checklist | None = None) -> tuple[Finding, ...]:
    """Every finding, in the order of files and lines.

    Args:
        sheet: a checklist that loads.
        known: what it may refer to.
        installed: the library's checklist of the same name, where this is another file.
    """
    findings = [_finding(sheet.paper, (), c) for c in (*_head(sheet, known), *_unraised(sheet, installed))]
    bench = Bench.of(sheet, known)
    for number, step in enumerate(sheet.checklist.steps):
        place = sheet.places[step.id]
        for rule in _STEP_RULES:
            findings += [_finding(place.paper, ("steps", place.number), c) for c in rule(step, number, bench)]
    for plan, place in zip(sheet.checklist.troubles, sheet.plans, strict=True):
        complaints = texts.plan_wording(plan, sheet.checklist)
        findings += [_finding(place.paper, (place.table, place.number), complaint) for complaint in complaints]
    return tuple(sorted(dict.fromkeys(findings), key=lambda found: (found.file, found.line, found.rule)))


def _finding(paper: PaperFile, before: tuple[str | int, ...], about: Complaint) -> Finding:
    """A complaint with its file and line; `before` is the way to what it is about."""
    line = paper.line_of((*before, *about.way))
    if about.found:
        line = paper.line_with(line, about.found)
    return Finding(str(paper.path), line, about.rule, about.severity, about.what, about.mend)


def _head(sheet: Sheet, known: Known) -> Iterator[Complaint]:
    """What concerns the checklist as a whole."""
    checklist = sheet.checklist
    yield from texts.head_wording(checklist)
    if sheet.is_part:
        return
    if checklist.order and checklist.order not in known.orders:
        yield error(
            "order-known",
            "order",
            f"there is no order called {quoted(checklist.order)}.",
            nearest(checklist.order, known.orders) or "Name an order that checkoff list shows.",
        )
    yield from texts.middle_length(checklist)
    if not checklist.sources:
        yield warning("sources", "title", "the checklist names no source.", "Add sources = [...].")
    if not re.fullmatch(r"\d+\.\d+\.\d+", checklist.version):
        yield warning(
            "version",
            "version",
            f"{quoted(checklist.version)} is no version of three numbers.",
            'Write it like "1.0.0", and raise it with every change.',
        )


def _unraised(sheet: Sheet, installed: Checklist | None) -> Iterator[Complaint]:
    """A changed copy of an installed checklist has a version of its own, or records could not be told apart."""
    checklist = sheet.checklist
    if installed and installed.version == checklist.version and installed.steps != checklist.steps:
        yield warning(
            "version",
            "version",
            f"the steps differ from the library's {checklist.name}, and both are version {checklist.version}.",
            "Raise the version.",
        )
