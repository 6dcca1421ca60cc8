"""The result of an attempt as a few text lines, the outcome last."""

from collections.abc import Iterator, Sequence

from assistant.guide.effects import Outcome
from assistant.guide.result import Ending, Results, StepResult
from assistant.spoken.language import ReportWords

_MOST = 4
"""Lines of one list; the report has them all."""
_ROOM = 13
"""Lines for lists above the result, so that the result and where the record is still fit below them."""


def lines(results: Results, outcome: Outcome, mode: str, words: ReportWords) -> list[str]:
    """The result as lines to show or print: first what is to be looked at, last how the attempt ended.

    Words carry everything: nothing depends on colour or on columns lining up, so that a screen reader loses
    nothing. What went well is counted and not listed; the report lists it.
    """
    end = [
        words.result(outcome, mode),
        words.share_unaided(results.unaided, results.applicable, results.score_percent),
        *([words.hurried(len(results.hurried), results.hands_on)] if results.hurried else []),
        *_most([*results.failures, *results.to_judge, *results.stopped_for], words),
        words.CAUTION,
    ]
    found: list[str] = []
    for heading, listed in _lists(results, words):
        if listed and len(found) < _ROOM - 1:
            room = min(_MOST, _ROOM - len(found) - 1)
            found += ["", f"{heading}:", *(f"  {line}" for line in _most(listed, words, room))]
    return [*found[1:], *([""] if found else []), *end]


def _lists(results: Results, words: ReportWords) -> Iterator[tuple[str, list[str]]]:
    """Headings, each with its lines; the weightiest first."""
    said = {line.id: words.step_quoted(0, line.say) for line in results.steps}
    faults = []
    for fault in results.faults:
        at = [said[name] for name in fault.at]
        faults.append(words.laid_out(fault.what, fault.fate, at, said.get(fault.step, ""), fault.reaches))
    yield words.LAID_OUT, faults
    yield words.NOT_LAID_OUT, [words.not_laid_out(said[one.step], one.answer) for one in results.not_laid_out]
    for critical, heading in ((True, words.CRITICAL_STEPS), (False, words.OTHER_STEPS)):
        yield heading, [_line(one, words) for one in results.steps if one.critical is critical and not _went_well(one)]
    yield words.TO_BE_SEEN, list(results.to_see)
    yield words.FOUND_BY_THE_LEARNER, [words.found_at(said[one.step], one.kind, one.words) for one in results.troubles]


def _most(listed: Sequence[str], words: ReportWords, most: int = _MOST) -> list[str]:
    """As many lines as have room; the last one counts the rest."""
    if len(listed) <= most:
        return list(listed)
    return [*listed[: most - 1], words.and_more(len(listed) - most + 1)]


def _went_well(line: StepResult) -> bool:
    """Whether there is nothing to say of a step but that it was done, or that it had no turn."""
    return line.ending in {Ending.UNAIDED, Ending.NOT_REACHED} and not (
        line.slips or line.cues or line.taken_back or line.expired
    )


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
