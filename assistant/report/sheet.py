"""A report as a table for a spreadsheet: one row a step, nothing in it is ever taken for a formula.

CSV by RFC 4180 with a byte order mark, so that every spreadsheet takes it for UTF-8. A cell that a spreadsheet
could take for a formula begins with an apostrophe (OWASP, CSV Injection); the apostrophe is the only addition.
"""

import csv
import io
import unicodedata
from collections.abc import Iterator

from assistant.report.content import Report, StepLine
from assistant.report.plain import one_line
from assistant.spoken.language import ReportWords

BYTE_ORDER_MARK = "\ufeff"
_FORMULA = ("=", "+", "-", "@")
_MOST_IN_A_CELL = 32_000
"""Characters; spreadsheets hold 32,767 in a cell, and some drop or move the rest without a word."""
_HEADINGS = (
    *(
        "record",
        "proven",
        "caution",
        "outcome",
        "decision",
        "learner",
        "mode",
        "checklist",
        "version",
        "order",
        "began",
        "head",
    ),
    *("step", "id", "part", "say", "critical", "gate", "ending", "first", "final", "expected", "difference"),
    *("slips", "cues", "evidence", "seconds", "details"),
)


def report_csv(report: Report, words: ReportWords) -> str:
    """The table; what is true of the whole attempt stands in every row."""
    text = io.StringIO(newline="")
    writer = csv.writer(text, quoting=csv.QUOTE_ALL, lineterminator="\r\n")
    writer.writerow(_HEADINGS)
    attempt = report.attempt
    whole = (
        *(words.WHOLE if report.trust.whole else words.NOT_WHOLE, report.trust.claim),
        " ".join(report.trust.warnings),
        *(words.OUTCOMES[report.outcome], report.decision, attempt.learner, words.mode(attempt.mode)),
        *(attempt.checklist, attempt.checklist_version),
        *(attempt.order, attempt.began, report.head),
    )
    compared = {line.id: (line.expected, line.difference) for line in report.numbers}
    for line in report.steps:
        values = (*whole, *_of_step(line, compared.get(line.id, ("", "")), words))
        writer.writerow([cell(value, words) for value in values])
    return BYTE_ORDER_MARK + text.getvalue()


def _of_step(line: StepLine, compared: tuple[str, str], words: ReportWords) -> Iterator[str]:
    yield str(line.number) if line.number else ""
    yield from (line.id, line.part, line.say)
    yield words.YES if line.critical else words.NO
    yield words.YES if line.gate else words.NO
    yield from (words.ending(line.ending), line.first, line.final, *compared)
    slips = (words.slips([slip]) for slip in line.slips)
    yield from (
        "; ".join(slips),
        "; ".join(line.cues),
        words.evidence(line.evidence),
        line.seconds,
        "; ".join(line.details),
    )


def cell(text: str, words: ReportWords) -> str:
    """Text that a spreadsheet shows and never carries out."""
    shown = one_line(text)
    # Wide forms of the signs are turned into the plain ones by some programs, and blanks before them are cut.
    begins = unicodedata.normalize("NFKC", shown[:20]).lstrip()
    if begins.startswith(_FORMULA):
        shown = f"'{shown}"
    if len(shown) > _MOST_IN_A_CELL:
        shown = f"{shown[:_MOST_IN_A_CELL]} {words.CUT}"
    return shown
