"""From step to step: what must be done first, what a pump forgets, where the attempt goes next, when it is over."""

from datetime import datetime, timedelta

from assistant.checklist.model import DoubleCheckAsked, Expiry, Step
from assistant.guide.asking import asked_person, more_counts, prompt
from assistant.guide.effects import Tone
from assistant.guide.ending import announce
from assistant.guide.papers import Papers
from assistant.guide.progress import Person, Progress, Purpose, State, Status, StepProgress, Wake
from assistant.guide.turn import Turn

REMINDER_AFTER_S = 120
"""Silence after which the step is said once more (common practice, no source)."""
LEFT_OPEN = "left open"
"""The verdict on "go on" at an open step."""


def begin(turn: Turn) -> None:
    """The attempt begins: what it is, what it is not, the order, the first step."""
    checklist = turn.papers.checklist
    turn.say(turn.sentences.begins(checklist.title, checklist.purpose), Tone.NOTICE, checklist.title)
    turn.say(turn.sentences.TRAINING_ONLY, Tone.NOTICE, turn.aloud(turn.sentences.TRAINING_IN_SHORT))
    for caution in checklist.cautions:
        turn.say(caution, Tone.NOTICE, "")
    check_off = turn.sentences.check_off_begins(more_counts=more_counts(turn))
    turn.say(turn.sentences.PRACTICE_BEGINS if turn.terms.practice else check_off, Tone.NOTICE)
    # The whole list is read out on "I need help"; at the start it would keep a learner waiting.
    turn.say(turn.sentences.WHAT_CAN_BE_SAID, Tone.NOTICE, turn.aloud(turn.sentences.FIRST_WORDS))
    order = turn.papers.order_in_short or turn.papers.order_text
    turn.say(turn.papers.order_text, Tone.NOTICE, turn.aloud(order), order=True)
    if turn.terms.asks_consent:
        turn.draft.state = State.ASKING_CONSENT
        prompt(turn)
        return
    begin_steps(turn)


def begin_steps(turn: Turn) -> None:
    """The first step that applies."""
    reasons = passed_over(turn.papers, turn.draft)
    steps = turn.steps
    go_to(turn, next((i for i, step in enumerate(steps) if step.id not in reasons), 0))


def go_to(turn: Turn, place: int) -> None:
    """Open the step at `place`, unless a gate holds or its settings have run out."""
    draft = turn.draft
    draft.state = State.ASKING
    place = _first_allowed(turn, place)
    note_passed_over(turn, place)
    draft.cursor = place
    turn.done.opened = True
    draft.reading_back = None
    draft.speaker = asked_person(turn.step)
    draft.purpose = Purpose.NOTE
    draft.breaths = 0
    draft.doubted = False
    draft.digits_only = False
    draft.failures = 0
    draft.reminded = False
    draft.wait_over = False
    draft.asked_at = turn.at
    if settings_lost(turn):
        return
    if draft.speaker is Person.SECOND:
        turn.cover()
    prompt(turn)
    arm(turn)


def settings_lost(turn: Turn) -> bool:
    """Whether the pump has forgotten what was set; then the first of the lost settings is asked for again."""
    if not _ran_out(turn):
        return False
    go_to(turn, _reopen_lost(turn))
    return True


def arm(turn: Turn) -> None:
    """Ask for the wake-up call that fits the current step."""
    due = _due(turn)
    if due is not None:
        turn.wake_at(Wake.SETTINGS, due)
    elif not turn.draft.reminded:
        turn.wake_at(Wake.REMINDER, turn.at + timedelta(seconds=REMINDER_AFTER_S))
    else:
        turn.draft.wake_up = None


def remind(turn: Turn) -> None:
    """A wake-up call while something is asked: settings ran out, or a long silence."""
    if turn.draft.wake_up is not None and turn.draft.wake_up.reason is Wake.SETTINGS:
        go_to(turn, _reopen_lost(turn))
        return
    turn.draft.reminded = True
    turn.draft.wake_up = None
    turn.note["verdict"] = "reminded"
    if turn.draft.state is State.ASKING:
        turn.say(turn.sentences.reminder(turn.step.say), Tone.NOTICE)
    else:
        prompt(turn)


def close(turn: Turn, answer: str = "") -> None:
    """Close the current step with its final answer and go on."""
    done = turn.done
    if done.closed_at is None and not (done.expired or done.reopened or done.corrections or done.brought_back):
        later = turn.steps[turn.draft.cursor + 1 :]
        done.late = any(turn.draft.steps[step.id].status is Status.CLOSED for step in later)
    done.status = Status.CLOSED
    done.by = turn.draft.speaker
    done.reason = ""
    done.closed_at = turn.at
    done.took_s = None if turn.draft.asked_at is None else (turn.at - turn.draft.asked_at) // timedelta(seconds=1)
    if answer:
        done.first = done.first or answer
        done.final = answer
    note_latest(turn)
    turn.note.setdefault("verdict", "done")
    fault, done.fault = done.fault, False
    again = open_again(turn, turn.step.reopen) if fault else None
    if again is None:
        advance(turn)
        return
    turn.draft.mending = False
    turn.say(turn.sentences.CHECKS_AGAIN, Tone.NOTICE)
    go_to(turn, again)


def note_latest(turn: Turn) -> None:
    """The current step is the one that was dealt with last: "correct that" leads back to it."""
    history = turn.draft.history
    if turn.step.id in history:
        history.remove(turn.step.id)
    history.append(turn.step.id)


def reopen_by_learner(turn: Turn, *, free: bool = False) -> None:
    """A step that was closed or set aside and is answered anew was corrected by the learner.

    Args:
        turn: the turn.
        free: it costs nothing, for a fault was found; so it is where a mistake was reported before.
    """
    if turn.done.status in (Status.CLOSED, Status.NOT_APPLICABLE):
        if free or turn.draft.mending:
            turn.done.reopened += 1
        else:
            turn.done.corrections += 1
        turn.done.status = Status.OPEN
        turn.done.reason = ""
        forget_marks(turn.done)
        turn.draft.history.remove(turn.step.id)
        turn.note["correction"] = True


def forget_marks(done: StepProgress) -> None:
    """A step is asked again: what the instructor marked was marked of the answer before."""
    done.sightings = ()
    done.set_aside = None


def advance(turn: Turn) -> None:
    """Go to the next open step; at the end, to what is still open; else finish."""
    draft = turn.draft
    draft.mending = False
    steps = turn.steps
    reasons = passed_over(turn.papers, turn.draft)
    still_open = [
        i for i, step in enumerate(steps) if step.id not in reasons and draft.steps[step.id].status is Status.OPEN
    ]
    ahead = [i for i in still_open if i > draft.cursor]
    if ahead:
        go_to(turn, ahead[0])
    elif still_open:
        if not draft.last_pass:
            draft.last_pass = True
            turn.say(turn.sentences.still_open(len(still_open)), Tone.HOLD)
        go_to(turn, still_open[0])
    else:
        turn.say(turn.sentences.ALL_DONE, Tone.NOTICE)
        finish(turn)


def back(turn: Turn) -> None:
    """To the step before; answering it again is a correction, "go on" leaves it as it is."""
    before = place_before(turn)
    if before is None:
        turn.say(turn.sentences.FIRST_STEP, Tone.NOTICE)
    go_to(turn, turn.draft.cursor if before is None else before)


def place_before(turn: Turn) -> int | None:
    """The place of the step before the current one; None at the first."""
    reasons = passed_over(turn.papers, turn.draft)
    before = [i for i, step in enumerate(turn.steps[: turn.draft.cursor]) if step.id not in reasons]
    return before[-1] if before else None


def leave_open(turn: Turn) -> None:
    """Go on without an answer: an open step stays open, or is left out in the last pass."""
    step, done = turn.step, turn.done
    if done.status is Status.OPEN:
        turn.note["verdict"] = LEFT_OPEN
        if turn.draft.last_pass:
            done.status = Status.LEFT_OUT
            turn.note["verdict"] = "left out"
            turn.say(turn.sentences.LEFT_OUT, Tone.NOTICE)
        else:
            later = turn.steps[turn.draft.cursor + 1 :]
            held = step.critical and any(other.gate for other in later)
            turn.say(turn.sentences.CRITICAL_LEFT_OPEN if held else turn.sentences.LEFT_OPEN, Tone.NOTICE)
    advance(turn)


def correct(turn: Turn) -> None:
    """Go to the step that was closed last; a new answer is a new entry, "go on" leaves it as it is."""
    reasons = passed_over(turn.papers, turn.draft)
    latest = [name for name in turn.draft.history if name not in reasons]
    if not latest:
        turn.say(turn.sentences.NOTHING_TO_CORRECT, Tone.NOTICE)
        return
    last = latest[-1]
    turn.note["verdict"] = "correcting"
    turn.note["correcting"] = last
    turn.say(turn.sentences.CORRECTION_ASKED, Tone.NOTICE)
    go_to(turn, turn.papers.checklist.place(last))


# The end.


def finish(turn: Turn) -> None:
    """The attempt is over: say the result, and what to practise."""
    note_passed_over(turn, len(turn.steps))
    announce(turn, passed_over(turn.papers, turn.draft))


# What does not apply, and what must be done first: gates, and steps that come after another one.


def passed_over(papers: Papers, progress: Progress) -> dict[str, str]:
    """Why steps are passed over, by the step's id; a step that applies is not in it.

    It is worked out whenever it is needed and never stored, so that a corrected answer can bring a step back.
    """
    answers: dict[str, str] = {}
    reasons: dict[str, str] = {}
    for step in papers.checklist.steps:
        conditions = papers.by_answers.get(step.id)  # few steps have any
        unmet = next((c for c in conditions if not c.met(papers.values, answers)), None) if conditions else None
        if step.id in papers.never:
            reasons[step.id] = papers.never[step.id]
        elif unmet is not None:
            reasons[step.id] = unmet.unmet_reason(papers.language.sentences)
        elif progress.steps[step.id].status is Status.CLOSED:
            # What was passed over has no answer, whatever was said there before.
            answers[step.id] = progress.steps[step.id].final
    return reasons


def note_passed_over(turn: Turn, place: int) -> None:
    """Let the entry say which steps on the way to `place` do not apply, and which apply after all."""
    reasons = passed_over(turn.papers, turn.draft)
    changed = {}
    for step in turn.steps[:place]:
        reason, done = reasons.get(step.id, ""), turn.draft.steps[step.id]
        if reason != done.passed_over:
            done.passed_over = reason
            # Not the learner's fault that it comes late: another answer made the step apply again.
            done.brought_back = done.brought_back or not reason
            changed[step.id] = reason or "applies"
    if changed:
        turn.note["passed_over"] = changed


def _first_allowed(turn: Turn, place: int) -> int:
    """The place where the attempt may go when it wants to go to `place`; what holds it is said and noted."""
    gate, blockers = _gate_before(turn, place)
    if gate is not None:
        turn.note["gate"] = {"step": gate.id, "open": [turn.steps[i].id for i in blockers]}
        turn.say(turn.sentences.gate_holds(len(blockers)), Tone.HOLD)
        for blocker in blockers:
            _at(turn, blocker).cues.append("gate")
        place = blockers[0]
    return _what_comes_first(turn, place)


def _gate_before(turn: Turn, place: int) -> tuple[Step | None, list[int]]:
    """The first gate on the way to `place` with critical steps open before it."""
    steps = turn.steps
    reasons = passed_over(turn.papers, turn.draft)
    holds = [
        step.id not in reasons and _at(turn, i).status in (Status.OPEN, Status.LEFT_OUT) for i, step in enumerate(steps)
    ]
    for at, step in enumerate(steps[: place + 1]):
        if not step.gate or step.id in reasons:
            continue
        blockers = [i for i, earlier in enumerate(steps[:at]) if earlier.critical and holds[i]]
        if at < place and holds[at]:
            blockers.append(at)
        if blockers:
            return step, blockers
    return None, []


def _what_comes_first(turn: Turn, place: int) -> int:
    """`place`, or the step that must be closed before it and is not."""
    draft, checklist = turn.draft, turn.papers.checklist
    done = (Status.CLOSED, Status.NOT_APPLICABLE, *((Status.LEFT_OUT,) if draft.last_pass else ()))
    reasons = passed_over(turn.papers, turn.draft)
    step = checklist.steps[place]
    # A second person has nothing to agree with before the learner's number stands.
    for name in (*step.after, *((step.expect.of,) if isinstance(step.expect, DoubleCheckAsked) else ())):
        if name not in reasons and draft.steps[name].status not in done:
            needed = checklist.place(name)
            turn.note["comes_first"] = name
            turn.say(turn.sentences.THIS_COMES_FIRST, Tone.HOLD)
            if turn.note.get("verdict") != LEFT_OPEN:
                draft.steps[name].cues.append("order")
            return _what_comes_first(turn, needed)
    return place


def _at(turn: Turn, place: int) -> StepProgress:
    return turn.draft.steps[turn.steps[place].id]


# Settings that a pump forgets.


def _due(turn: Turn) -> datetime | None:
    """When the settings that the current step relies on run out; None where it relies on none."""
    step = turn.step
    if step.expires is None or turn.done.status is not Status.OPEN:
        return None
    closed = [turn.draft.steps[name].closed_at for name in step.expires.reopen]
    latest = max((at for at in closed if at is not None), default=None)
    return None if latest is None else latest + timedelta(seconds=step.expires.after_s)


def _ran_out(turn: Turn) -> bool:
    """Whether the settings that the current step relies on are lost."""
    at = _due(turn)
    return at is not None and turn.at >= at


def _reopen_lost(turn: Turn) -> int:
    """Open the settings again that the current step relies on; return the place of the first of them."""
    expires = turn.step.expires
    if expires is None:
        raise TypeError("settings ran out at a step that relies on none")
    return lose_settings(turn, expires, expires.reopen)


def lose_settings(turn: Turn, expires: Expiry, names: tuple[str, ...]) -> int:
    """Open lost settings again, at no cost; return the place of the first of them."""
    turn.note["verdict"] = "settings lost"
    for name in names:
        turn.draft.steps[name].expired += 1
    place = _open(turn, names)
    turn.say(turn.sentences.disagrees(expires.say), Tone.HOLD)
    return turn.draft.cursor if place is None else place


def open_again(turn: Turn, names: tuple[str, ...]) -> int | None:
    """Open steps that were closed, at no cost; return the place of the first one to ask, None where there is none."""
    closed = tuple(name for name in names if turn.draft.steps[name].status is Status.CLOSED)
    for name in closed:
        turn.draft.steps[name].reopened += 1
    return _open(turn, closed) if closed else None


def take_back(turn: Turn, names: tuple[str, ...]) -> int | None:
    """Open closed steps whose "done" was proved false; return the place of the first one, None where there is none."""
    closed = tuple(name for name in names if turn.draft.steps[name].status is Status.CLOSED)
    for name in closed:
        turn.draft.steps[name].taken_back = True
    if not closed:
        return None
    place = _open(turn, closed)
    turn.note["taken_back"] = turn.note.pop("reopened")
    return place


def _open(turn: Turn, names: tuple[str, ...]) -> int | None:
    """Open steps once more; return the place of the first one that applies."""
    turn.note["reopened"] = list(names)
    for name in names:
        done = turn.draft.steps[name]
        done.status = Status.OPEN
        done.closed_at = None
        forget_marks(done)
        if name in turn.draft.history:
            turn.draft.history.remove(name)
    reasons = passed_over(turn.papers, turn.draft)
    return next((i for i, step in enumerate(turn.steps) if step.id in names and step.id not in reasons), None)
