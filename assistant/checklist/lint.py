"""What a checklist that loads may still have wrong, each with file, line, rule and remedy.

Pure: it is given the checklist with the places of its steps, and reads nothing.
"""

import re
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from enum import StrEnum

from assistant.checklist.library import either, nearest, quoted
from assistant.checklist.load import Sheet
from assistant.checklist.model import DoneAsked, NameAsked, NumberAsked, QuestionAsked, Step, WaitAsked
from assistant.checklist.wording import error_prone, unspeakable
from assistant.dosing.units import unit
from assistant.errors import AssistantError, QuantityError
from assistant.spoken.meaning import Command

LONGEST_SAY_WORDS = 20
"""Words of a line that is read aloud; a longer one is not held in mind (common practice, no source)."""
_LOCATED = re.compile(r"(?P<file>.+?), line (?P<line>\d+)(?:, step [^:]*)?: (?P<what>.*)", re.DOTALL)


class Severity(StrEnum):
    """How bad a finding is."""

    ERROR = "error"
    WARNING = "warning"


@dataclass(frozen=True)
class Finding:
    """One thing to mend.

    Attributes:
        file, line: where it stands.
        rule: the rule's name.
        severity: an error breaks the procedure; a warning makes it worse.
        what: what is wrong.
        mend: what to do.
    """

    file: str
    line: int
    rule: str
    severity: Severity
    what: str
    mend: str


@dataclass(frozen=True)
class Known:
    """What a checklist may refer to outside itself.

    Attributes:
        keys: names of the answer key, each with a unit of its kind, or None where it is a name.
        orders: names of orders.
    """

    keys: Mapping[str, str | None]
    orders: frozenset[str]


@dataclass(frozen=True)
class _Complaint:
    rule: str
    severity: Severity
    field: str
    what: str
    mend: str


@dataclass(frozen=True)
class _Bench:
    """What a rule looks at.

    Attributes:
        sheet, known: as given to `lint`.
        at: the place of each step in the checklist.
        needed: ids of the steps that each step waits for.
    """

    sheet: Sheet
    known: Known
    at: Mapping[str, int]
    needed: Mapping[str, set[str]]


def from_error(error: AssistantError, file: str) -> Finding:
    """The finding for a fault that keeps a file from loading."""
    located = _LOCATED.fullmatch(error.what)
    if located is None:
        return Finding(file, 1, "loads", Severity.ERROR, error.what, error.remedy)
    return Finding(located["file"], int(located["line"]), "loads", Severity.ERROR, located["what"], error.remedy)


def lint(sheet: Sheet, known: Known) -> tuple[Finding, ...]:
    """Every finding, in the order of files and lines.

    Args:
        sheet: a checklist that loads.
        known: what it may refer to.
    """
    findings = [
        Finding(str(sheet.paper.path), sheet.paper.line_of((c.field,)), c.rule, c.severity, c.what, c.mend)
        for c in _whole(sheet, known)
    ]
    at = {step.id: number for number, step in enumerate(sheet.checklist.steps)}
    bench = _Bench(sheet, known, at, _needed(sheet))
    for number, step in enumerate(sheet.checklist.steps):
        place = sheet.places[step.id]
        for rule in _STEP_RULES:
            findings += [
                Finding(str(place.paper.path), place.line_of(c.field), c.rule, c.severity, c.what, c.mend)
                for c in rule(step, number, bench)
            ]
    return tuple(sorted(findings, key=lambda found: (found.file, found.line, found.rule)))


def _whole(sheet: Sheet, known: Known) -> Iterator[_Complaint]:
    """What concerns the checklist as a whole."""
    checklist = sheet.checklist
    if checklist.order and checklist.order not in known.orders:
        yield _error(
            "order-known",
            "order",
            f"there is no order called {quoted(checklist.order)}.",
            nearest(checklist.order, known.orders) or "Name an order that checkoff list shows.",
        )
    if not checklist.sources:
        yield _warning("sources", "title", "the checklist names no source.", "Add sources = [...].")
    if not re.fullmatch(r"\d+\.\d+\.\d+", checklist.version):
        yield _warning(
            "version",
            "version",
            f"{quoted(checklist.version)} is no version of three numbers.",
            'Write it like "1.0.0", and raise it with every change.',
        )


# Rules about one step. Each takes the step, its number and the bench.


def _reasons(step: Step, _number: int, _bench: _Bench) -> Iterator[_Complaint]:
    """A critical step says why and where that is published."""
    if not step.critical:
        return
    if not step.why:
        yield _error("critical-why", "id", "this critical step does not say why.", 'Add why = "...".')
    if not step.sources:
        yield _error(
            "critical-source",
            "id",
            "this critical step names no source.",
            'Add sources = ["..."], or "common practice, no source".',
        )
    if not step.hint:
        yield _warning("cue", "id", "this critical step has no cue for who asks for help.", 'Add hint = "...".')


def _gate_opens(step: Step, number: int, bench: _Bench) -> Iterator[_Complaint]:
    """A gate waits for every earlier critical step, so none of these may wait for a later one."""
    if not step.gate:
        return
    for earlier in bench.sheet.checklist.steps[:number]:
        late = [name for name in bench.needed[earlier.id] if bench.at[name] >= number]
        if earlier.critical and late:
            yield _error(
                "gate-opens",
                "gate",
                f"this gate can never open: {quoted(earlier.id)} comes before it and waits for {either(late)}.",
                f"Take that out of the after of {quoted(earlier.id)}, or move the gate.",
            )


def _reachable(step: Step, number: int, bench: _Bench) -> Iterator[_Complaint]:
    """A step may wait only for steps that come before it."""
    if step.id in bench.needed[step.id]:
        yield _error(
            "reachable",
            "after",
            "this step waits for itself by way of others, so it can never be closed.",
            "Break the circle: take one name out of after.",
        )
        return
    late = [name for name in step.after if bench.at[name] > number]
    if late:
        yield _warning(
            "order-of-steps",
            "after",
            f"this step waits for {either(late)}, which comes later.",
            "Move the step behind what it waits for.",
        )


def _expiry(step: Step, number: int, bench: _Bench) -> Iterator[_Complaint]:
    """What is opened again must come before the step whose settings ran out."""
    if step.expires is None:
        return
    late = [name for name in step.expires.reopen if bench.at[name] > number]
    if late:
        yield _error(
            "expiry",
            "reopen",
            f"{either(late)} comes after this step and cannot be opened again from it.",
            "Name only earlier steps in reopen.",
        )


def _key(step: Step, _number: int, bench: _Bench) -> Iterator[_Complaint]:
    """A number or a name must be one that the answer key holds, in a unit of its kind."""
    asked = step.expect
    if not isinstance(asked, NumberAsked | NameAsked):
        return
    if asked.key not in bench.known.keys:
        yield _error(
            "key-known",
            "expect",
            f"the answer key holds nothing called {quoted(asked.key)}.",
            nearest(asked.key, bench.known.keys) or f"It holds: {', '.join(bench.known.keys)}.",
        )
    if isinstance(asked, NameAsked):
        if bench.known.keys.get(asked.key) is not None:
            yield _error(
                "key-kind", "expect", f"{quoted(asked.key)} is a number, not a name.", 'Write kind = "number".'
            )
        return
    try:
        kind = unit(asked.unit).kind
    except QuantityError as cause:
        yield _error("unit-known", "expect", cause.what, cause.remedy)
        return
    if unit(asked.unit).name != asked.unit:
        yield _warning(
            "unit-spelling",
            "expect",
            f"the trade prints {quoted(asked.unit)} as {quoted(unit(asked.unit).name)}.",
            f'Write unit = "{unit(asked.unit).name}".',
        )
    if asked.key in bench.known.keys:
        wanted = bench.known.keys[asked.key]
        if wanted is None:
            yield _error("key-kind", "expect", f"{quoted(asked.key)} is a name, not a number.", 'Write kind = "name".')
        elif unit(wanted).kind != kind:
            yield _error(
                "unit-fits",
                "expect",
                f"{quoted(asked.unit)} measures a {kind}, and {quoted(asked.key)} is a {unit(wanted).kind}.",
                f"Use a unit such as {wanted}.",
            )


def _answers(step: Step, _number: int, _bench: _Bench) -> Iterator[_Complaint]:
    """The line must ask for what the step expects, and for nothing that means a command."""
    asks = "?" in step.say
    match step.expect:
        case QuestionAsked() if not asks:
            yield _error(
                "answers-clash", "say", "a question is expected, and the line asks none.", "Write it as a question."
            )
        case QuestionAsked() if re.search(r"\bor\b[^.?]*\?", step.say):
            yield _warning(
                "answers-clash",
                "say",
                "yes and no do not tell which side of the or is meant.",
                "Ask for one thing.",
            )
        case DoneAsked() | WaitAsked() if asks:
            yield _error(
                "answers-clash",
                "say",
                "the line asks a question, and done is expected: no would mean not yet.",
                'Write it as something to do, or expect = { kind = "question" }.',
            )
        case WaitAsked(seconds=seconds):
            said = re.search(r"(?:(\d+) to )?(\d+)\s*(?:s\b|seconds?)", step.say)
            if said and str(seconds) not in said.groups():
                yield _error(
                    "wait-said",
                    "say",
                    f"the line says {said[2]} seconds, and {seconds} are waited for.",
                    "Make them the same.",
                )
    command = re.search(rf"\bsay\s+\"?({'|'.join(map(re.escape, Command))})\b", step.say, re.IGNORECASE)
    if command:
        yield _error(
            "answers-clash",
            "say",
            f"{quoted(command[1])} is a command that can be said at any time, so it is no answer.",
            "Ask for done, yes, no, a number or a name.",
        )


def _no_answers(step: Step, _number: int, _bench: _Bench) -> Iterator[_Complaint]:
    """A line that asks for a number holds none: it could be the right one."""
    if not isinstance(step.expect, NumberAsked):
        return
    for name in ("say", "hint"):
        if re.search(r"\d", getattr(step, name)):
            yield _error(
                "gives-answer",
                name,
                f"{name} holds a number, and the step asks for one.",
                "Take the number out: it comes from the order.",
            )


def _advice(step: Step, _number: int, _bench: _Bench) -> Iterator[_Complaint]:
    """Whoever is held must be told what to do."""
    if isinstance(step.expect, QuestionAsked | NumberAsked | NameAsked) and not step.if_wrong:
        yield _warning("advice", "id", "nothing is said when the answer is not the right one.", 'Add if_wrong = "...".')


def _length(step: Step, _number: int, _bench: _Bench) -> Iterator[_Complaint]:
    """A line that is read aloud is short."""
    words = len(step.say.split())
    if words > LONGEST_SAY_WORDS:
        yield _warning(
            "say-length",
            "say",
            f"the line has {words} words; more than {LONGEST_SAY_WORDS} are not held in mind.",
            "Say one thing; move the rest into more.",
        )


def _wording(step: Step, _number: int, _bench: _Bench) -> Iterator[_Complaint]:
    """Nothing that is misread, nothing that cannot be spoken."""
    for name in ("say", "more", "hint", "why", "if_wrong"):
        text = getattr(step, name)
        for slip in error_prone(text):
            yield _error("error-prone", name, f"{quoted(slip.found)} in {name} {slip.reason}.", slip.mend)
        for slip in unspeakable(text):
            yield _error("speakable", name, f"{quoted(slip.found)} in {name} {slip.reason}.", slip.mend)


def _said_twice(step: Step, number: int, bench: _Bench) -> Iterator[_Complaint]:
    """Two steps of one file with the same line cannot be told apart by ear."""
    here = bench.sheet.places[step.id].paper
    for earlier in bench.sheet.checklist.steps[:number]:
        if earlier.say == step.say and bench.sheet.places[earlier.id].paper is here:
            yield _warning(
                "said-twice",
                "say",
                f"{quoted(earlier.id)} says the same line.",
                "Word one of them so that the learner hears which it is.",
            )
            return


_STEP_RULES: tuple[Callable[[Step, int, _Bench], Iterator[_Complaint]], ...] = (
    _reasons,
    _gate_opens,
    _reachable,
    _expiry,
    _key,
    _answers,
    _no_answers,
    _advice,
    _length,
    _wording,
    _said_twice,
)


def _needed(sheet: Sheet) -> dict[str, set[str]]:
    """For each step, the ids of all steps that must be closed before it, directly or by way of others."""
    after = {step.id: step.after for step in sheet.checklist.steps}
    needed: dict[str, set[str]] = {}
    for step_id in after:
        found: set[str] = set()
        left = list(after[step_id])
        while left:
            name = left.pop()
            if name not in found:
                found.add(name)
                left += after[name]
        needed[step_id] = found
    return needed


def _error(rule: str, field: str, what: str, mend: str) -> _Complaint:
    return _Complaint(rule, Severity.ERROR, field, what, mend)


def _warning(rule: str, field: str, what: str, mend: str) -> _Complaint:
    return _Complaint(rule, Severity.WARNING, field, what, mend)
