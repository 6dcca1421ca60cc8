"""The result of an attempt as text lines, critical steps first."""

from assistant.guide.effects import Outcome
from assistant.guide.result import Results, StepResult
from assistant.spoken.language import ReportWords


def lines(results: Results, outcome: Outcome, words: ReportWords) -> list[str]:
    """The result as lines to show or print.

    Words carry everything: nothing depends on colour or on columns lining up, so that a screen reader loses
    nothing.
    """
    found = [
        words.result(outcome),
        words.share_unaided(results.unaided, results.applicable, results.score_percent),
        *results.failures,
    ]
    for critical, heading in ((True, words.CRITICAL_STEPS), (False, words.OTHER_STEPS)):
        group = [line for line in results.steps if line.critical is critical]
        if group:
            found += ["", f"{heading}:"]
            found += [f"  {_line(line, words)}" for line in group]
    return [*found, "", words.CAUTION]


def _line(line: StepResult, words: ReportWords) -> str:
    details = []
    if line.first and line.first != line.final:
        details.append(words.first_then(line.first, line.final))
    elif line.final:
        details.append(line.final)
    if line.slips:
        details.append(words.slips_made(line.slips))
    if line.cues:
        details.append(words.cue_names(line.cues))
    if line.expired:
        details.append(words.DONE_AGAIN)
    if line.reason:
        details.append(words.reason(line.reason))
    tail = f" ({'; '.join(details)})" if details else ""
    return f"{words.ending(line.ending)}: {line.say}{tail}"
