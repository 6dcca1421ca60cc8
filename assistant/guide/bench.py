"""What an answer says of the bench: it tells of a fault that is there, of one that is not, or overlooks one.

Right is what agrees with what is really laid out (`assistant.orders.truth`), not with yes. A fault that was found
is put right by the learner where another bag can be taken or the checklist says how; else it is a cause to stop.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from enum import StrEnum

from assistant import dosing
from assistant.checklist.model import NameAsked, NumberAsked
from assistant.dosing import Amount
from assistant.guide.papers import Papers
from assistant.guide.progress import Person, Progress, Status
from assistant.guide.turn import Turn
from assistant.orders.fault import Fault, can_be_put_right, facts_of, told_by
from assistant.spoken.language import Sentences
from assistant.spoken.meaning import Trouble

OVERLOOKED = "not as it is"
"""The slip of an answer that overlooks what is laid out."""
_TOLD_BY: dict[Trouble, frozenset[str]] = {
    Trouble.AIR: frozenset({"line", "chamber"}),
    Trouble.PAIN: frozenset({"patient", "site"}),
    Trouble.ALARM: frozenset({"pump"}),
    Trouble.LEAK: frozenset({"line", "leaking"}),
    Trouble.DAMAGED: frozenset({"leaking", "catheter"}),
}
"""Things, or states of a bag, that a report of trouble tells of."""


def tells(turn: Turn, answer: str) -> bool:
    """Whether an answer tells of a fault that is laid out at the current step."""
    return any(answer in told_by(turn.step, fault.state) for fault in turn.faults)


def note_told(turn: Turn, answer: str) -> None:
    """An answer that tells of a fault: put down whether it is one that is laid out."""
    told = [fault for fault in turn.faults if answer in told_by(turn.step, fault.state)]
    for fault in told:
        note_found(turn, fault)
    if not told and facts_of(turn.step):
        turn.draft.not_laid_out.append((turn.step.id, answer))
        turn.note["laid_out"] = False
        # Whatever the reason, another bag was taken: what was wrong with the first one is gone with it.
        for fault in turn.faults:
            if can_be_put_right(turn.step, fault.fact):
                turn.draft.told_otherwise.append(fault.key)


def note_found(turn: Turn, fault: Fault) -> None:
    """A fault that is laid out was found at the current step."""
    turn.draft.found.setdefault(fault.key, turn.step.id)
    turn.note["laid_out"] = True


def settles(turn: Turn) -> bool:
    """Whether "all is well" can be true at the current step: what was wrong there has been found and put right."""
    draft = turn.draft
    told = {*draft.found, *draft.told_otherwise}
    faults = turn.faults
    # Whoever told of one thing about a bag and took another bag has not overlooked the rest.
    replaced = {fault.container for fault in turn.papers.truth.faults if fault.key in told} - {""}
    left = [
        fault
        for fault in faults
        if not (fault.key in told or fault.container in replaced) or not can_be_put_right(turn.step, fault.fact)
    ]
    for fault in left:
        draft.missed.setdefault(fault.key, turn.step.id)
    if left:
        return False
    for fault in faults:
        _put_right(draft, turn, fault)
    return True


def _put_right(draft: Progress, turn: Turn, fault: Fault) -> None:
    """Put down as put right; with a bag goes everything that was wrong with it."""
    gone = turn.papers.truth.gone_with(fault)
    draft.put_right += [key for key in gone if key not in draft.put_right]
    turn.note["put_right"] = list(gone)


def label_here(turn: Turn) -> Fault | None:
    """The fault on the label that the current step has read; None where the label says what is ordered."""
    match turn.step.expect:
        case NameAsked(key=key) | NumberAsked(key=key):
            return next((fault for fault in turn.faults if fault.fact == key), None)
    return None


def reads_label(fault: Fault | None, said: str | Amount) -> bool:
    """Whether what was said is what a label with a fault says."""
    if fault is None:
        return False
    if isinstance(said, str) or isinstance(fault.state, str):
        return said == fault.state
    return isinstance(dosing.compare(said, fault.state), dosing.Agrees)


def note_trouble(turn: Turn, kind: Trouble) -> None:
    """A report of trouble finds what is laid out at the current step, as an answer would."""
    named = _TOLD_BY.get(kind, frozenset())
    for fault in turn.faults:
        on_label = bool(fault.container) and not fault.fact.endswith(".bag")
        if fault.fact in named or fault.state in named or (kind is Trouble.WRONG_ITEM and on_label):
            note_found(turn, fault)


def causes(progress: Progress) -> tuple[str, ...]:
    """Faults that were found and not put right: whoever stops now, stops for them."""
    return tuple(key for key in progress.found if key not in progress.put_right)


# What became of each fault, and why nobody passes who left one behind.


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


_UNSETTLED = (Fate.NOT_REACHED, Fate.NOT_FOUND, Fate.NOT_ASKED)
"""What an attempt that goes to its end may not leave behind, beside what was found and left as it was."""


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
        at = progress.steps[progress.found[key]]
        if at.status is Status.NOT_APPLICABLE and at.by is Person.INSTRUCTOR:
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
        if fault.fate is Fate.FOUND and not progress.stopped_for:
            yield sentences.left_as_it_was(fault.what)
        elif fault.fate is Fate.MISSED or (fault.fate in _UNSETTLED and not progress.stopped_for):
            yield sentences.missed(fault.what)


def to_judge(faults: tuple[FaultResult, ...], progress: Progress, sentences: Sentences) -> Iterator[str]:
    """What only the instructor can judge: findings of what is not laid out may be real all the same."""
    for fault in faults:
        if fault.fate is Fate.TOLD_OTHERWISE:
            yield sentences.to_be_judged(fault.what)
    if progress.not_laid_out:
        yield sentences.found_and_not_laid_out(len(progress.not_laid_out))
