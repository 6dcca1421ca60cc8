"""What became of each fault that was laid out, and why nobody passes who left one behind."""

from collections.abc import Iterator
from dataclasses import dataclass
from enum import StrEnum

from assistant.guide.papers import Papers
from assistant.guide.progress import Progress, Status
from assistant.spoken.language import Sentences


class Fate(StrEnum):
    """What became of a fault that was laid out; where several fit, the first in this order."""

    MISSED = "missed"
    STOPPED_FOR = "found, and stopped for it"
    PUT_RIGHT = "found, and put right"
    SET_ASIDE = "found, and settled by the instructor"
    FOUND = "found"
    TOLD_OTHERWISE = "told of as something else"
    NOT_REACHED = "not reached"
    NOT_FOUND = "not found"
    NOT_ASKED = "no step asks for it"


_UNSETTLED = (Fate.FOUND, Fate.NOT_REACHED, Fate.NOT_FOUND, Fate.NOT_ASKED)
"""What an attempt that goes to its end may not leave behind."""


@dataclass(frozen=True)
class FaultResult:
    """One fault that was laid out.

    Attributes:
        what: the fault in a sentence.
        reaches: what would have reached the patient.
        fate: what became of it.
        at: ids of the steps at which it could be found.
        step: id of the step at which it was found or missed; empty where neither.
    """

    what: str
    reaches: str
    fate: Fate
    at: tuple[str, ...]
    step: str = ""


@dataclass(frozen=True)
class NotLaidOut:
    """A finding of what is not laid out: it may be real all the same.

    Attributes:
        step: id of the step.
        answer: what was answered.
    """

    step: str
    answer: str


def faults_of(papers: Papers, progress: Progress) -> Iterator[FaultResult]:
    """What was laid out, and what became of it."""
    for fault in papers.truth.faults:
        looking = [step.id for step in papers.checklist.steps if fault in papers.truth.seen_at(step)]
        fate = _fate(fault.key, looking, progress)
        step = progress.missed.get(fault.key) or progress.found.get(fault.key, "")
        yield FaultResult(fault.what, fault.reaches, fate, tuple(looking), step)


def _fate(key: str, looking: list[str], progress: Progress) -> Fate:
    if key in progress.missed:
        return Fate.MISSED
    if key in progress.stopped_for:
        return Fate.STOPPED_FOR
    if key in progress.found:
        if progress.steps[progress.found[key]].status is Status.NOT_APPLICABLE:
            return Fate.SET_ASIDE
        return Fate.PUT_RIGHT if key in progress.put_right else Fate.FOUND
    if key in progress.told_otherwise:
        return Fate.TOLD_OTHERWISE
    if key in progress.put_right:
        # It went with a bag that was put back for something else.
        return Fate.PUT_RIGHT
    if not looking:
        return Fate.NOT_ASKED
    return Fate.NOT_FOUND if any(progress.steps[name].opened for name in looking) else Fate.NOT_REACHED


def missed(faults: tuple[FaultResult, ...], progress: Progress, sentences: Sentences) -> Iterator[str]:
    """Why nobody passes: dangers that were missed, or found and left as they were."""
    for fault in faults:
        if fault.fate is Fate.MISSED or (fault.fate in _UNSETTLED and not progress.stopped_for):
            yield sentences.missed(fault.what)


def to_judge(faults: tuple[FaultResult, ...], progress: Progress, sentences: Sentences) -> Iterator[str]:
    """What only the instructor can judge: findings of what is not laid out may be real all the same."""
    for fault in faults:
        if fault.fate is Fate.TOLD_OTHERWISE:
            yield sentences.to_be_judged(fault.what)
    if progress.not_laid_out:
        yield sentences.found_and_not_laid_out(len(progress.not_laid_out))
