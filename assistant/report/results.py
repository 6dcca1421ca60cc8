"""The result of an attempt as text lines, critical steps first."""

from assistant.guide.effects import Outcome
from assistant.guide.result import Results, StepResult

CAUTION = "Training only. This result does not license anyone; an instructor signs for a competency."


def lines(results: Results, outcome: Outcome) -> list[str]:
    """The result as lines to show or print.

    Words carry everything: nothing depends on colour or on columns lining up, so that a screen reader loses
    nothing.
    """
    found = [
        f"Result: {outcome.value}.",
        f"{results.unaided} of {results.applicable} steps done unaided ({results.score_percent} %).",
        *results.failures,
    ]
    for critical, heading in ((True, "Critical steps"), (False, "Other steps")):
        group = [line for line in results.steps if line.critical is critical]
        if group:
            found += ["", f"{heading}:"]
            found += [f"  {_line(line)}" for line in group]
    return [*found, "", CAUTION]


def _line(line: StepResult) -> str:
    details = []
    if line.first and line.first != line.final:
        details.append(f"first {line.first}, then {line.final}")
    elif line.final:
        details.append(line.final)
    if line.slips:
        details.append("slip: " + ", ".join(line.slips))
    if line.cues:
        details.append("cues: " + ", ".join(line.cues))
    if line.expired:
        details.append("done again: the settings were lost by waiting too long")
    if line.reason:
        details.append(f"reason: {line.reason}")
    tail = f" ({'; '.join(details)})" if details else ""
    return f"{line.ending.value}: {line.say}{tail}"
