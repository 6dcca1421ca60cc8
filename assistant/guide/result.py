"""How each step ended and whether the attempt is passed: critical steps and gates first, then the score."""

from collections.abc import Iterator, Mapping
from dataclasses import asdict, dataclass
from decimal import ROUND_HALF_UP, Decimal
from enum import StrEnum

from assistant.checklist.model import (
    DoneAsked,
    DoubleCheckAsked,
    NameAsked,
    NumberAsked,
    ObservationAsked,
    PassRule,
    Step,
)
from assistant.checklist.rehearsal import reading_s
from assistant.guide.bench import FaultResult, NotLaidOut, faults_of, missed, to_judge
from assistant.guide.events import Mark
from assistant.guide.papers import Papers
from assistant.guide.progress import Found, Mode, Progress, State, Status, StepProgress
from assistant.orders.fault import facts_of
from assistant.spoken.language import Sentences


class Ending(StrEnum):
    """How a step ended; where several fit, the first in this order."""

    NOT_APPLICABLE = "not applicable"
    LEFT_OUT = "left out"
    NOT_ANSWERED = "not answered"
    NOT_SEEN = "not seen by the instructor"
    NOT_REACHED = "not reached"
    WRONG = "wrong"
    NOT_PUT_RIGHT = "found, and not put right"
    STOPPED_FOR = "found, and stopped for it"
    CORRECTED = "corrected by the learner"
    CUED = "done after a cue"
    OUT_OF_ORDER = "out of order"
    UNAIDED = "done unaided"


NOT_DONE = frozenset(
    {
        *(Ending.LEFT_OUT, Ending.NOT_ANSWERED, Ending.NOT_SEEN, Ending.NOT_REACHED),
        *(Ending.WRONG, Ending.NOT_PUT_RIGHT),
    }
)
"""Endings that fail the attempt at a critical step."""


class Evidence(StrEnum):
    """What a closed step rests on."""

    WORKED_OUT = "worked out"
    SEEN = "seen by the instructor"
    OWN_WORD = "the learner's word"


@dataclass(frozen=True)
class StepResult:
    """One line of the result; texts are as shown, with units.

    Attributes:
        id, say: the step and its line.
        critical, gate: what the step is.
        kind: what it asked for, as the checklist names it.
        ending: how it ended.
        first, final: first and final answer; empty where there was none.
        expected: what follows from the order, or the range; empty where nothing was compared, and in a
            check-off that is not over at steps that are not closed.
        first_difference, difference: first and final number less the expected one, with its sign and unit;
            empty where nothing can be subtracted.
        tries, wrong: answers that were compared, and how many of them were not right.
        found: how often an honest answer told of a fault; it costs nothing.
        slips: kinds of slip, in order.
        cues: which cues were given, in order.
        corrections: how often the learner took a closed answer up again by own will.
        expired: how often it was done again because a pump forgets settings.
        reopened: how often it was asked again because of a fault or of trouble; it costs nothing.
        out_of_order: a later step had been closed already when it was closed first.
        reason: why it does not apply.
        by: who answered it or set it aside.
        evidence: what it rests on (`Evidence`); empty where it is not closed.
        seen_by: who saw it done, where an instructor marked it.
        marked_not_seen: the instructor marked that it was not seen done.
        to_be_seen: an instructor has to see it, and none has.
        taken_back: its "done" was proved false by what was found later.
    """

    id: str
    say: str
    critical: bool
    gate: bool
    kind: str
    ending: Ending
    first: str = ""
    final: str = ""
    expected: str = ""
    first_difference: str = ""
    difference: str = ""
    tries: int = 0
    wrong: int = 0
    found: int = 0
    slips: tuple[str, ...] = ()
    cues: tuple[str, ...] = ()
    corrections: int = 0
    expired: int = 0
    reopened: int = 0
    out_of_order: bool = False
    reason: str = ""
    by: str = ""
    evidence: str = ""
    seen_by: str = ""
    marked_not_seen: bool = False
    to_be_seen: bool = False
    taken_back: bool = False


@dataclass(frozen=True)
class Noted:
    """A note of the instructor's; `step` is empty where it is for the attempt."""

    step: str
    words: str


@dataclass(frozen=True)
class Hurried:
    """A hands-on step that was reported done faster than its line can be read aloud.

    Attributes:
        step: its id.
        seconds: whole seconds from its line to the answer.
        read_s: whole seconds that reading its line aloud takes, by the checklist's own estimate.
    """

    step: str
    seconds: int
    read_s: int


@dataclass(frozen=True)
class Results:
    """The whole result.

    Attributes:
        steps: critical steps first, each group in the checklist's order.
        unaided, applicable: counts.
        score_percent: share done unaided, whole percent, half up; 100 where nothing was applicable.
        passed: by the rule of the mode; never where the attempt was closed early.
        failures: why not, one sentence each.
        completed: it was not closed before its end.
        troubles: what the learner found, in order.
        hands_on: how many hands-on steps were reported done.
        hurried: those that were reported done faster than they can be read; in a check-off only. Nothing is
            guessed from it, and it changes nothing.
        faults: what was laid out, and what became of it; nothing of a check-off that can be taken up again.
        not_laid_out: findings of what is not laid out, for the instructor to judge.
        to_see: lines of the steps that an instructor has to see and has not; in a check-off only.
        to_judge: what only an instructor can judge, a sentence each; in a check-off only.
        stopped_for: the faults for which the attempt was stopped, a sentence each.
        unsafe: why the instructor marked the attempt as unsafe, a sentence each; it is not passed then.
        notes: the instructor's notes.
    """

    steps: tuple[StepResult, ...]
    unaided: int
    applicable: int
    score_percent: Decimal
    passed: bool
    failures: tuple[str, ...]
    completed: bool
    troubles: tuple[Found, ...] = ()
    hands_on: int = 0
    hurried: tuple[Hurried, ...] = ()
    faults: tuple[FaultResult, ...] = ()
    not_laid_out: tuple[NotLaidOut, ...] = ()
    to_see: tuple[str, ...] = ()
    to_judge: tuple[str, ...] = ()
    stopped_for: tuple[str, ...] = ()
    unsafe: tuple[str, ...] = ()
    notes: tuple[Noted, ...] = ()

    def body(self) -> dict[str, object]:
        """The result as an entry holds it: numbers as text, counters as whole numbers.

        What only a desk can add is left out where there is none: most attempts have no desk.
        """
        from_desk = {"unsafe": list(self.unsafe), "notes": [asdict(note) for note in self.notes]}
        return {name: value for name, value in from_desk.items() if value} | {
            "steps": [_body_of(line) for line in self.steps],
            "unaided": self.unaided,
            "applicable": self.applicable,
            "score_percent": str(self.score_percent),
            "passed": self.passed,
            "failures": list(self.failures),
            "completed": self.completed,
            "troubles": [asdict(found) for found in self.troubles],
            "hands_on": self.hands_on,
            "hurried": [asdict(step) for step in self.hurried],
            "faults": [{**asdict(fault), "at": list(fault.at)} for fault in self.faults],
            "not_laid_out": [asdict(found) for found in self.not_laid_out],
            "to_see": list(self.to_see),
            "to_judge": list(self.to_judge),
            "stopped_for": list(self.stopped_for),
        }


def _body_of(line: StepResult) -> dict[str, object]:
    body = {key: list(value) if isinstance(value, tuple) else value for key, value in asdict(line).items()}
    if not line.marked_not_seen:
        del body["marked_not_seen"]
    return body


def score(papers: Papers, mode: Mode, progress: Progress, passed_over: Mapping[str, str]) -> Results:
    """The result of an attempt as it stands.

    No attempt passes with a critical step that is left out, not seen, not reached or wrong; a gate is a step
    like another here. That is all in practice. In a check-off the checklist's own rule comes after: how many
    critical steps may have been corrected only after a hold, how many may have been cued, and the share of
    steps that must be done unaided. Steps that do not apply count neither for nor against.

    Args:
        papers: what the attempt is made from.
        mode: practice or check-off.
        progress: how far it has come.
        passed_over: why steps do not apply, by the step's id.
    """
    lines = [_result(papers, mode, progress, step, passed_over.get(step.id, "")) for step in papers.checklist.steps]
    lines.sort(key=lambda line: not line.critical)
    # Whoever stops rightly is not held to what would have come after.
    not_counted = {Ending.NOT_APPLICABLE, *([Ending.NOT_REACHED] if progress.stopped_for else [])}
    applicable = [line for line in lines if line.ending not in not_counted]
    unaided = sum(line.ending in (Ending.UNAIDED, Ending.STOPPED_FOR) for line in applicable)
    percent = Decimal(100)
    if applicable:
        share = Decimal(100) * unaided / len(applicable)
        percent = share.quantize(Decimal(1), rounding=ROUND_HALF_UP)
    sentences = papers.language.sentences
    faults = tuple(faults_of(papers, progress))
    failures = _failures(applicable, percent, papers.checklist.pass_rule, mode, sentences)
    # A check-off that can be taken up again tells nothing of what is laid out.
    tells = mode is Mode.PRACTICE or _is_over(progress)
    failures[:0] = missed(faults, progress, sentences) if tells else ()
    judged = tuple(to_judge(faults, progress, sentences)) if mode is Mode.CHECK_OFF else ()
    to_see = tuple(line.say for line in lines if line.to_be_seen) if mode is Mode.CHECK_OFF else ()
    if progress.closed_early:
        failures.insert(0, sentences.CLOSED_BEFORE_ITS_END)
    unsafe = tuple(sentences.unsafe(mark.words) for mark in progress.standing_marks if mark.mark is Mark.UNSAFE)
    failures[:0] = unsafe
    done = [step for step in papers.checklist.steps if _was_done(step, progress)]
    return Results(
        tuple(lines),
        unaided,
        len(applicable),
        percent,
        not (failures or to_see or judged),
        tuple(failures),
        not progress.closed_early,
        tuple(progress.troubles),
        len(done),
        tuple(_hurried(papers, progress, done)) if mode is Mode.CHECK_OFF else (),
        faults if tells else (),
        tuple(NotLaidOut(*found) for found in progress.not_laid_out),
        to_see,
        judged,
        tuple(fault.what for fault in papers.truth.faults if fault.key in progress.stopped_for),
        unsafe,
        tuple(Noted(mark.step, mark.words) for mark in progress.standing_marks if mark.mark is Mark.NOTE),
    )


def _was_done(step: Step, progress: Progress) -> bool:
    return isinstance(step.expect, DoneAsked) and progress.steps[step.id].status is Status.CLOSED


def _hurried(papers: Papers, progress: Progress, done: list[Step]) -> Iterator[Hurried]:
    for step in done:
        seconds, read_s = progress.steps[step.id].took_s, reading_s(papers.checklist, step)
        if seconds is not None and seconds < read_s:
            yield Hurried(step.id, seconds, read_s)


def _result(papers: Papers, mode: Mode, progress: Progress, step: Step, passed_over_because: str) -> StepResult:
    done = progress.steps[step.id]
    ending = Ending.NOT_APPLICABLE if passed_over_because else _ending(step, done, mode)
    if ending is Ending.NOT_PUT_RIGHT and step.id in {progress.found.get(key) for key in progress.stopped_for}:
        ending = Ending.STOPPED_FOR
    # A check-off that can be taken up again gives no answer away, but for those that were answered rightly.
    shows = mode is Mode.PRACTICE or _is_over(progress) or done.status is Status.CLOSED
    aside = done.set_aside
    evidence = _evidence(step, done) if done.status is Status.CLOSED and not (passed_over_because or aside) else ""
    answered = done.status in (Status.CLOSED, Status.NOT_APPLICABLE) or done.tries > 0
    return StepResult(
        id=step.id,
        say=step.say,
        critical=step.critical,
        gate=step.gate,
        kind=step.expect.kind,
        ending=ending,
        first=done.first,
        final=done.final,
        expected=papers.expected(step) if shows else "",
        first_difference=papers.difference(step, done.first_amount) if shows else "",
        difference=papers.difference(step, done.final_amount) if shows else "",
        tries=done.tries,
        wrong=done.wrong,
        found=done.found,
        slips=tuple(done.slips),
        cues=tuple(done.cues),
        corrections=done.corrections,
        expired=done.expired,
        reopened=done.reopened,
        out_of_order=done.late,
        reason=passed_over_because or (aside.reason if aside else done.reason),
        by=(aside.by if aside else done.by).value if answered and not passed_over_because else "",
        evidence=evidence,
        seen_by=done.seen_by,
        marked_not_seen=done.marked_not_seen,
        to_be_seen=step.seen and not done.marked_not_seen and evidence not in ("", Evidence.SEEN),
        taken_back=done.taken_back,
    )


def _evidence(step: Step, done: StepProgress) -> Evidence:
    if done.seen_by or (isinstance(step.expect, ObservationAsked) and not done.marked_not_seen):
        return Evidence.SEEN
    compared = isinstance(step.expect, NumberAsked | NameAsked | DoubleCheckAsked) or bool(facts_of(step))
    return Evidence.WORKED_OUT if compared else Evidence.OWN_WORD


def _has_to_be_seen(step: Step) -> bool:
    return step.seen or isinstance(step.expect, ObservationAsked)


def _is_over(progress: Progress) -> bool:
    """Whether the attempt ended for good: it was not only stopped."""
    return progress.closed_early or (progress.state is State.FINISHED and not progress.before)


def _ending(step: Step, done: StepProgress, mode: Mode) -> Ending:
    if done.set_aside is not None:
        return Ending.NOT_APPLICABLE
    match done.status:
        case Status.NOT_APPLICABLE:
            return Ending.NOT_APPLICABLE
        case Status.OPEN | Status.LEFT_OUT if done.wrong:
            return Ending.WRONG
        case Status.OPEN | Status.LEFT_OUT if done.fault:
            return Ending.NOT_PUT_RIGHT
        case Status.OPEN | Status.LEFT_OUT if isinstance(step.expect, ObservationAsked) and done.opened:
            return Ending.NOT_SEEN
        case Status.LEFT_OUT:
            return Ending.LEFT_OUT
        case Status.OPEN:
            return Ending.NOT_ANSWERED if done.opened else Ending.NOT_REACHED
        case Status.CLOSED if done.marked_not_seen and _has_to_be_seen(step):
            return Ending.NOT_SEEN
        case Status.CLOSED:
            if mode is Mode.CHECK_OFF and step.tries is not None and done.wrong >= step.tries:
                return Ending.WRONG
            if done.wrong or done.corrections or done.taken_back:
                return Ending.CORRECTED
            if done.cues:
                return Ending.CUED
            return Ending.OUT_OF_ORDER if done.late else Ending.UNAIDED


def _failures(lines: list[StepResult], percent: Decimal, rule: PassRule, mode: Mode, sentences: Sentences) -> list[str]:
    critical = [line for line in lines if line.critical and line.ending is not Ending.NOT_APPLICABLE]
    found = [
        sentences.failed_step(line.ending.value, line.say)
        for line in lines
        # Whoever marked that a step was not done has looked, critical or not.
        if (line.critical and line.ending in NOT_DONE and line.ending is not Ending.NOT_REACHED)
        or (line.marked_not_seen and line.ending is Ending.NOT_SEEN)
    ]
    not_reached = sum(line.ending is Ending.NOT_REACHED for line in critical)
    if not_reached:
        found.append(sentences.not_reached(not_reached))
    if mode is Mode.PRACTICE:
        return found
    # What the learner saw and put right without being told is no failure; a slip was found by the hold.
    held = sum(bool(line.slips) for line in critical)
    if held > rule.critical_corrections:
        found.append(sentences.held_too_often(held, rule.critical_corrections))
    cued = sum(bool(line.cues) for line in critical)
    if cued > rule.critical_cues:
        found.append(sentences.cued_too_often(cued, rule.critical_cues))
    if percent < rule.score_percent:
        found.append(sentences.too_few_unaided(percent, rule.score_percent))
    return found
