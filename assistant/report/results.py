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
        *([words.hurried(len(results.hurried), results.hands_on)] if results.hurried else []),
        *results.failures,
        *results.to_judge,
        *results.stopped_for,
    ]
    said = {line.id: words.step_quoted(0, line.say) for line in results.steps}
    if results.to_see:
        found += ["", f"{words.TO_BE_SEEN}:", *(f"  {line}" for line in results.to_see)]
    if results.faults:
        found += ["", f"{words.LAID_OUT}:"]
        for fault in results.faults:
            at = [said[name] for name in fault.at]
            found += [f"  {words.laid_out(fault.what, fault.fate, at, said.get(fault.step, ''), fault.reaches)}"]
    if results.not_laid_out:
        found += ["", f"{words.NOT_LAID_OUT}:"]
        found += [f"  {words.not_laid_out(said[one.step], one.answer)}" for one in results.not_laid_out]
    for critical, heading in ((True, words.CRITICAL_STEPS), (False, words.OTHER_STEPS)):
        group = [line for line in results.steps if line.critical is critical]
        if group:
            found += ["", f"{heading}:"]
            found += [f"  {_line(line, words)}" for line in group]
    if results.troubles:
        found += ["", f"{words.FOUND_BY_THE_LEARNER}:"]
        found += [f"  {words.found_at(said[one.step], one.kind, one.words)}" for one in results.troubles]
    return [*found, "", words.CAUTION]


def _line(line: StepResult, words: ReportWords) -> str:
    details = []
    if line.first and line.first != line.final:
        details.append(words.first_then(words.given(line.first), words.given(line.final)))
    elif line.final:
        details.append(words.given(line.final))
    if line.slips:
        details.append(words.slips_made(line.slips))
    if line.cues:
        details.append(words.help_given([words.cue(cue, 1) for cue in line.cues]))
    if line.taken_back:
        details.append(words.step_detail("taken_back", ""))
    if line.expired:
        details.append(words.DONE_AGAIN)
    if line.reason:
        details.append(words.reason(line.reason))
    if line.evidence and line.to_be_seen:
        details.append(words.evidence(line.evidence))
    tail = f" ({'; '.join(details)})" if details else ""
    return f"{words.ending(line.ending)}: {line.say}{tail}"
