"""What the headline of a report says beside the outcome: the one step, or the one fault, that decided it."""

from collections.abc import Sequence
from typing import NamedTuple

from assistant.report.bench import DEALT_WITH
from assistant.report.content import Ended, LaidOut, NumberLine, StepLine
from assistant.report.steps import NOT_ANSWERED, NOT_DONE, NOT_REACHED
from assistant.spoken.language import ReportWords

_DECIDED = (Ended.NOT_PASSED, Ended.STOPPED_FOR_CAUSE)
"""Outcomes that one step may have decided."""


class Headline(NamedTuple):
    """Why it ended as it did.

    Attributes:
        cause: a few words that follow the outcome; empty where no single step decided it.
        step: the step's id, empty where it is none of those that are listed.
    """

    cause: str
    step: str


def headline(
    outcome: Ended,
    steps: Sequence[StepLine],
    numbers: Sequence[NumberLine],
    laid_out: Sequence[LaidOut],
    words: ReportWords,
    *,
    unsafe: bool = False,
) -> Headline:
    """The cause that weighs most: what was marked as unsafe, a danger missed, a critical step not done, a slip, help.

    Args:
        outcome: how the attempt ended.
        steps: every step.
        numbers: every number and name that had to agree.
        laid_out: faults at the bench.
        words: the language of the report.
        unsafe: the instructor marked the attempt as unsafe.
    """
    if unsafe:
        return Headline(words.UNSAFE, "")
    if outcome not in _DECIDED:
        return Headline("", "")
    by_name = {words.step_quoted(line.number, line.say): line for line in steps}
    if outcome is Ended.STOPPED_FOR_CAUSE:
        found = next((line for line in steps if line.ending == "found, and stopped for it"), None)
        return Headline("", "") if found is None else Headline(words.found_at_step(found.number), found.id)
    for fault in laid_out:
        if fault.fate not in DEALT_WITH and fault.at:
            line = by_name.get(fault.step or fault.at[0])
            return Headline(words.missed_at_step(line.number if line else 0), line.id if line else "")
    critical = [line for line in steps if line.critical]
    for line in critical:
        if line.ending in NOT_DONE and line.ending not in (NOT_REACHED, NOT_ANSWERED):
            return Headline(words.ended_at_step(line.ending, line.number), line.id)
    slips = {line.id: line.slips for line in numbers if line.slips}
    for line in critical:
        if line.id in slips:
            return Headline(words.slip_at_step(slips[line.id], line.number), line.id)
    for line in critical:
        if line.needs_a_look and line.ending not in (NOT_REACHED, NOT_ANSWERED):
            return Headline(words.ended_at_step(line.ending, line.number), line.id)
    return Headline("", "")
