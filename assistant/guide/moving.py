"""From step to step: what may be opened, where the attempt goes next, when it is over."""

from datetime import timedelta

from assistant.guide import expiry
from assistant.guide.applicability import note_passed_over, passed_over
from assistant.guide.asking import asked_person, prompt
from assistant.guide.effects import Tone
from assistant.guide.ending import finish
from assistant.guide.gates import first_allowed
from assistant.guide.progress import Person, Progress, Purpose, State, Status
from assistant.guide.turn import Turn
from assistant.spoken import speech
from assistant.spoken.english.sentences import SENTENCES as sentences

REMINDER_AFTER_S = 120
"""Silence after which the step is said once more (common practice, no source)."""


def begin(turn: Turn) -> None:
    """The attempt begins: what it is, what it is not, the order, the first step."""
    checklist = turn.given.checklist
    turn.say(sentences.begins(checklist.title, checklist.purpose), Tone.NOTICE, checklist.title)
    turn.say(sentences.TRAINING_ONLY, Tone.NOTICE)
    for caution in checklist.cautions:
        turn.say(caution, Tone.NOTICE, "")
    turn.say(sentences.PRACTICE_BEGINS if turn.given.practice else sentences.CHECK_OFF_BEGINS, Tone.NOTICE)
    # The whole list is read out on "I need help"; at the start it would keep a learner waiting.
    turn.say(sentences.WHAT_CAN_BE_SAID, Tone.NOTICE, speech(sentences.FIRST_WORDS))
    turn.say(turn.given.order_text, Tone.NOTICE)
    if turn.given.asks_consent:
        turn.draft.state = State.ASKING_CONSENT
        prompt(turn)
        return
    begin_steps(turn)


def begin_steps(turn: Turn) -> None:
    """The first step that applies."""
    reasons = passed_over(turn.given, turn.draft)
    steps = turn.given.checklist.steps
    go_to(turn, next((i for i, step in enumerate(steps) if step.id not in reasons), 0))


def go_to(turn: Turn, place: int) -> None:
    """Open the step at `place`, unless a gate holds or its settings have run out."""
    draft = turn.draft
    draft.state = State.ASKING
    place = first_allowed(turn, place)
    note_passed_over(turn, place)
    draft.cursor = place
    turn.done.opened = True
    nothing_read_back(draft)
    draft.speaker = asked_person(turn.step)
    draft.purpose = Purpose.NOTE
    draft.told = 0
    draft.digits_only = False
    draft.failures = 0
    draft.reminded = False
    draft.wait_over = False
    if settings_lost(turn):
        return
    if draft.speaker is Person.SECOND:
        turn.cover()
    prompt(turn)
    arm(turn)


def settings_lost(turn: Turn) -> bool:
    """Whether the pump has forgotten what was set; then the first of the lost settings is asked for again."""
    if not expiry.ran_out(turn):
        return False
    go_to(turn, expiry.reopen(turn))
    return True


def nothing_read_back(draft: Progress) -> None:
    """Forget what was being read back."""
    draft.number, draft.unit, draft.name, draft.words = None, "", "", ""


def arm(turn: Turn) -> None:
    """Ask for the wake-up call that fits the current step."""
    due = expiry.due(turn)
    if due is not None:
        turn.wake_at("settings", due)
    elif not turn.draft.reminded:
        turn.wake_at("reminder", turn.at + timedelta(seconds=REMINDER_AFTER_S))
    else:
        turn.draft.token = ""


def remind(turn: Turn) -> None:
    """A wake-up call while something is asked: settings ran out, or a long silence."""
    if turn.draft.token.startswith("settings"):
        go_to(turn, expiry.reopen(turn))
        return
    turn.draft.reminded = True
    turn.draft.token = ""
    turn.note["verdict"] = "reminded"
    if turn.draft.state is State.ASKING:
        turn.say(sentences.reminder(turn.step.say), Tone.NOTICE)
    else:
        prompt(turn)


def close(turn: Turn, answer: str = "") -> None:
    """Close the current step with its final answer and go on."""
    done = turn.done
    if done.closed_at is None and not (done.expired or done.corrections or done.brought_back):
        later = turn.given.checklist.steps[turn.draft.cursor + 1 :]
        done.late = any(turn.draft.steps[step.id].status is Status.CLOSED for step in later)
    done.status = Status.CLOSED
    done.by = turn.draft.speaker
    done.reason = ""
    done.closed_at = turn.at
    if answer:
        done.first = done.first or answer
        done.final = answer
    note_latest(turn)
    turn.note.setdefault("verdict", "done")
    advance(turn)


def note_latest(turn: Turn) -> None:
    """The current step is the one that was dealt with last: "correct that" leads back to it."""
    history = turn.draft.history
    if turn.step.id in history:
        history.remove(turn.step.id)
    history.append(turn.step.id)


def reopen_by_learner(turn: Turn) -> None:
    """A step that was closed or set aside and is answered anew was corrected by the learner."""
    if turn.done.status in (Status.CLOSED, Status.NOT_APPLICABLE):
        turn.done.corrections += 1
        turn.done.status = Status.OPEN
        turn.done.reason = ""
        turn.draft.history.remove(turn.step.id)
        turn.note["correction"] = True


def advance(turn: Turn) -> None:
    """Go to the next open step; at the end, to what is still open; else finish."""
    draft = turn.draft
    steps = turn.given.checklist.steps
    reasons = passed_over(turn.given, draft)
    still_open = [
        i for i, step in enumerate(steps) if step.id not in reasons and draft.steps[step.id].status is Status.OPEN
    ]
    ahead = [i for i in still_open if i > draft.cursor]
    if ahead:
        go_to(turn, ahead[0])
    elif still_open:
        if not draft.last_pass:
            draft.last_pass = True
            turn.say(sentences.still_open(len(still_open)), Tone.HOLD)
        go_to(turn, still_open[0])
    else:
        turn.say(sentences.ALL_DONE, Tone.NOTICE)
        finish(turn)


def back(turn: Turn) -> None:
    """To the step before; answering it again is a correction, "go on" leaves it as it is."""
    reasons = passed_over(turn.given, turn.draft)
    before = [i for i, step in enumerate(turn.given.checklist.steps[: turn.draft.cursor]) if step.id not in reasons]
    if not before:
        turn.say(sentences.FIRST_STEP, Tone.NOTICE)
    go_to(turn, before[-1] if before else turn.draft.cursor)


def leave_open(turn: Turn) -> None:
    """Go on without an answer: an open step stays open, or is left out in the last pass."""
    step, done = turn.step, turn.done
    if done.status is Status.OPEN:
        turn.note["verdict"] = "left open"
        if turn.draft.last_pass:
            done.status = Status.LEFT_OUT
            turn.note["verdict"] = "left out"
            turn.say(sentences.LEFT_OUT, Tone.NOTICE)
        else:
            later = turn.given.checklist.steps[turn.draft.cursor + 1 :]
            held = step.critical and any(other.gate for other in later)
            turn.say(sentences.CRITICAL_LEFT_OPEN if held else sentences.LEFT_OPEN, Tone.NOTICE)
    advance(turn)


def correct(turn: Turn) -> None:
    """Go to the step that was closed last; a new answer is a new entry, "go on" leaves it as it is."""
    reasons = passed_over(turn.given, turn.draft)
    latest = [name for name in turn.draft.history if name not in reasons]
    if not latest:
        turn.say(sentences.NOTHING_TO_CORRECT, Tone.NOTICE)
        return
    last = latest[-1]
    turn.note["verdict"] = "correcting"
    turn.note["correcting"] = last
    turn.say(sentences.CORRECTION_ASKED, Tone.NOTICE)
    go_to(turn, turn.given.checklist.place(last))
