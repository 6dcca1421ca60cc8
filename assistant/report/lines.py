"""A report as lines of text: words carry everything, so that a screen reader loses nothing."""

from collections.abc import Iterator
from decimal import Decimal

from assistant.report.content import NumberLine, Report, StepLine
from assistant.report.plain import one_line
from assistant.report.times import clock
from assistant.report.view import WORDS, when


def report_lines(report: Report) -> list[str]:
    """The report; the first lines tell what must be known before reading on, and the result."""
    return [one_line(line) for line in _lines(report)]


def _lines(report: Report) -> Iterator[str]:
    for warning in report.trust.warnings:
        yield f"CAUTION: {warning}"
    yield f"{report.trust.statement} Head {report.head}."
    yield ""
    yield f"{report.title}: learner {report.attempt.learner}, {report.attempt.mode}, {when(report.attempt.began)}"
    yield f"Result: {WORDS[report.outcome].lower()}. {report.outcome_sentence}"
    if report.summary:
        yield report.summary
    yield from report.failures
    yield report.decision
    yield f"Time at work: {clock(Decimal(report.attempt.seconds))}."
    if report.feedback.went_well:
        yield ""
        yield "What went well:"
        yield from (f"  {sentence}" for sentence in report.feedback.went_well)
    if report.feedback.practise:
        yield "To practise:"
        yield from (f"  {one.sentence}" for one in report.feedback.practise)
    if report.numbers:
        yield ""
        yield "Numbers and labels:"
        yield from (f"  {_number(line)}" for line in report.numbers)
    for critical, heading in ((True, "Critical steps"), (False, "Other steps")):
        group = [line for line in report.steps if line.critical is critical]
        if group:
            yield ""
            yield f"{heading}:"
            yield from (f"  {_step(line)}" for line in group)
    yield ""
    yield from report.cautions


def _number(line: NumberLine) -> str:
    parts = [f"step {line.step}: {line.final or 'no answer'}, {line.verdict}"]
    if line.expected:
        parts.append(f"by the order {line.expected}")
    if line.first != line.final:
        off = f" ({line.difference})" if line.difference not in ("", "none") else ""
        parts.append(f"first answer {line.first}{off}")
    if line.slips:
        parts.append(f"slip: {', '.join(line.slips)}")
    return "; ".join([*parts, *line.working])


def _step(line: StepLine) -> str:
    details = []
    if line.first != line.final:
        details.append(f"first {line.first}, then {line.final or 'nothing'}")
    elif line.final:
        details.append(line.final)
    if line.slips:
        details.append(f"slip: {', '.join(line.slips)}")
    if line.cues:
        details.append(f"help: {', '.join(line.cues)}")
    details += line.details
    if Decimal(line.seconds):
        details.append(clock(Decimal(line.seconds)))
    number = f"{line.number}. " if line.number else ""
    return f"{line.ending}: {number}{line.say}" + (f" ({'; '.join(details)})" if details else "")
