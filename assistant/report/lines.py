"""A report as lines of text: words carry everything, so that a screen reader loses nothing."""

from collections.abc import Iterator
from decimal import Decimal

from assistant.report.content import NumberLine, Report, StepLine
from assistant.report.plain import one_line
from assistant.report.times import clock
from assistant.report.view import when
from assistant.spoken.language import ReportWords


def report_lines(report: Report, words: ReportWords) -> list[str]:
    """The report; the first lines tell what must be known before reading on, and the result."""
    return [one_line(line) for line in _lines(report, words)]


def _lines(report: Report, words: ReportWords) -> Iterator[str]:
    attempt = report.attempt
    for warning in report.trust.warnings:
        yield words.caution(warning)
    yield f"{report.trust.statement} {words.head(report.head)}"
    if report.trust.claim:
        yield report.trust.claim
    yield words.short_head(report.short_head)
    yield ""
    yield words.attempt_line(report.title, attempt.learner, attempt.mode, when(attempt.began, words))
    yield words.result_with_reason(report.outcome, attempt.mode, report.cause, report.outcome_sentence)
    if report.summary:
        yield report.summary
    if report.pace:
        yield report.pace
    yield from report.failures
    yield report.decision
    for heading, sentences in (
        (
            words.LAID_OUT,
            [words.laid_out(one.what, one.fate, one.at, one.step, one.reaches) for one in report.laid_out],
        ),
        (words.NOT_LAID_OUT, report.not_laid_out),
        (words.TO_BE_SEEN, report.to_see),
    ):
        if sentences:
            yield ""
            yield f"{heading}:"
            yield from (f"  {sentence}" for sentence in sentences)
    yield words.time_at_work(clock(Decimal(attempt.seconds)))
    if report.feedback.went_well:
        yield ""
        yield f"{words.WHAT_WENT_WELL}:"
        yield from (f"  {sentence}" for sentence in report.feedback.went_well)
    if report.feedback.practise:
        yield f"{words.TO_PRACTISE}:"
        yield from (f"  {one.sentence}" for one in report.feedback.practise)
    if report.found:
        yield ""
        yield f"{words.FOUND_BY_THE_LEARNER}:"
        yield from (f"  {sentence}" for sentence in report.found)
    if report.notes:
        yield ""
        yield f"{words.INSTRUCTORS_NOTES}:"
        yield from (f"  {note}" for note in report.notes)
    if report.numbers:
        yield ""
        yield f"{words.NUMBERS_AND_LABELS}:"
        yield from (f"  {_number(line, words)}" for line in report.numbers)
    for critical, heading in ((True, words.CRITICAL_STEPS), (False, words.OTHER_STEPS)):
        group = [line for line in report.steps if line.critical is critical]
        if group:
            yield ""
            yield f"{heading}:"
            yield from (f"  {_step(line, words)}" for line in group)
    yield ""
    yield from report.cautions


def _number(line: NumberLine, words: ReportWords) -> str:
    parts = [words.number_given(line.step, line.final, line.verdict)]
    if line.expected:
        parts.append(words.by_the_order(line.expected))
    if line.first != line.final:
        off = "" if line.difference == words.NO_DIFFERENCE else line.difference
        parts.append(words.first_answer(line.first, off))
    if line.slips:
        parts.append(words.slips_made(line.slips))
    return "; ".join([*parts, *line.working])


def _step(line: StepLine, words: ReportWords) -> str:
    details = []
    if line.first != line.final:
        details.append(words.first_then(line.first, line.final))
    elif line.final:
        details.append(line.final)
    if line.slips:
        details.append(words.slips_made(line.slips))
    if line.cues:
        details.append(words.help_given(line.cues))
    if line.evidence:
        details.append(words.evidence(line.evidence))
    details += line.details
    if Decimal(line.seconds):
        details.append(clock(Decimal(line.seconds)))
    number = f"{line.number}. " if line.number else ""
    return f"{words.ending(line.ending)}: {number}{line.say}" + (f" ({'; '.join(details)})" if details else "")
