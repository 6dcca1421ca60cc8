"""What comes between: pause, stop and resumption, timed waits, consent, the instructor, devices that come and go."""

from dataclasses import replace

from assistant.checklist.model import ObservationAsked
from assistant.guide.answers import observe
from assistant.guide.asking import (
    OBSERVED,
    asked_person,
    may_overrule,
    not_here,
    prompt,
    seconds_left,
    to_be_seen,
)
from assistant.guide.bench import causes
from assistant.guide.effects import Outcome, Tone
from assistant.guide.events import InstructorCame, VoiceLost
from assistant.guide.path import arm, begin_steps, close, finish, go_to, settings_lost
from assistant.guide.progress import Consent, Person, Progress, Purpose, Sighting, State, Wake
from assistant.guide.turn import Turn
from assistant.spoken.meaning import Answer, InstructorWord

BETWEEN = (State.OFFERING_CUE, State.WITH_INSTRUCTOR, State.PAUSED, State.STOPPING)
"""States that remember what they interrupt."""


def pause(turn: Turn) -> None:
    """Wait until "go on"; nobody speaks as the instructor after it."""
    leave_all(turn)
    interrupt(turn, State.PAUSED)


def ask_stop(turn: Turn) -> None:
    """Ask once before stopping."""
    interrupt(turn, State.STOPPING)


def interrupt(turn: Turn, state: State) -> None:
    """Remember what to return to, keep only the time of a wait, and say what is asked now."""
    draft = turn.draft
    draft.before.append(draft.state)
    _keep_only_a_wait(draft)
    draft.state = state
    prompt(turn)


def _keep_only_a_wait(draft: Progress) -> None:
    """A timed wait goes on through every interruption; no other wake-up call does."""
    if State.WAITING not in draft.before:
        draft.wake_up = None


def end_holds(draft: Progress) -> None:
    """The attempt is held for nothing any more; the marks stay."""
    draft.marks[:] = [replace(mark, holds=False) for mark in draft.marks]


def tell_paused(turn: Turn) -> None:
    """Nothing but "go on" ends a pause."""
    prompt(turn)


def note_wait_over(turn: Turn) -> None:
    """The timed wait ended meanwhile."""
    turn.draft.wait_over = True
    turn.note["verdict"] = "time is up"


def return_from_pause(turn: Turn) -> None:
    """Back to what was asked before; the instructor at the station, who was admitted with the code, ends a hold."""
    with_instructor = turn.draft.state is State.WITH_INSTRUCTOR
    leave(turn)
    if with_instructor and turn.draft.state is State.HELD:
        end_holds(turn.draft)
        leave(turn)
    turn.say(turn.sentences.GOING_ON, Tone.NOTICE)
    take_up(turn)


def leave_all(turn: Turn) -> None:
    """Leave everything that interrupts, but for the instructor's hold."""
    while turn.draft.state in BETWEEN:
        leave(turn)


def leave(turn: Turn) -> None:
    """Back to the state before; an instructor who leaves hands back to whoever the step asks."""
    if turn.draft.state is State.WITH_INSTRUCTOR:
        turn.draft.speaker = asked_person(turn.step)
    turn.draft.state = turn.draft.before.pop()


def take_up(turn: Turn) -> None:
    """Ask again what the state asks for, and keep its time."""
    draft = turn.draft
    match draft.state:
        case State.ASKING:
            if settings_lost(turn):
                return
            prompt(turn)
            arm(turn)
        case State.GIVING_REASON | State.READING_BACK if draft.purpose is Purpose.OVERRULED:
            # Nobody inherits the instructor's word: who overrules begins anew.
            turn.say(turn.sentences.REASON_DROPPED, Tone.NOTICE)
            go_to(turn, draft.cursor)
        case State.WAITING if draft.wait_over or (draft.wake_up is not None and turn.at >= draft.wake_up.at):
            draft.wait_over = False
            end_wait(turn)
        case State.WAITING:
            prompt(turn)
            turn.wake_at(Wake.WAIT, draft.wake_up.at if draft.wake_up else turn.at)
        case _:
            prompt(turn)


def stop(turn: Turn) -> None:
    """The learner stops before the end: for a cause that is there, which ends the attempt rightly, or without one."""
    cause = causes(turn.draft)
    if not cause:
        stop_here(turn, turn.sentences.STOPPED)
        return
    turn.note["verdict"] = "stopped for cause"
    turn.note["cause"] = list(cause)
    turn.draft.stopped_for = cause
    finish(turn)


def close_early(turn: Turn) -> None:
    """The attempt ends for good before its end: sealed as not completed, so that it can be signed for."""
    turn.note["verdict"] = "closed before its end"
    turn.draft.closed_early = True
    turn.say(turn.sentences.CLOSED_EARLY, Tone.RESULT)
    finish(turn)


def end_input(turn: Turn) -> None:
    """No more input can come."""
    stop_here(turn, turn.sentences.INPUT_ENDED)


def stop_here(turn: Turn, sentence: str) -> None:
    """Stop without a seal, so that the attempt can be taken up again."""
    turn.note["verdict"] = "stopped"
    if turn.draft.state not in BETWEEN:
        turn.draft.before.append(turn.draft.state)
    _keep_only_a_wait(turn.draft)
    turn.draft.state = State.FINISHED
    turn.outcome = Outcome.STOPPED
    turn.say(sentence, Tone.RESULT)


def resume(turn: Turn) -> None:
    """An interrupted attempt goes on where it was; the instructor has to come again."""
    if turn.draft.state is State.WITH_INSTRUCTOR:
        leave(turn)
    turn.say(turn.sentences.RESUMED, Tone.NOTICE)
    turn.adjust()
    take_up(turn)


def reopen(turn: Turn) -> None:
    """A stopped attempt goes on; one that was over, but not sealed, is ended again."""
    if not turn.draft.before:
        finish(turn)
        return
    # What was asked before any pause: whoever resumes an attempt is ready to go on.
    asked, *between = turn.draft.before
    # A stop ends no hold.
    held = State.HELD in between
    turn.draft.state = State.HELD if held else asked
    turn.draft.before[:] = [asked] if held else []
    turn.draft.speaker = asked_person(turn.step)
    resume(turn)


# Timed waits.


def end_wait(turn: Turn) -> None:
    """The time is up: the step is closed."""
    turn.say(turn.sentences.TIME_UP, Tone.AGREES)
    turn.note["verdict"] = "waited"
    close(turn)


def tell_time_left(turn: Turn) -> None:
    """Too early."""
    turn.note["verdict"] = "too early"
    turn.say(turn.sentences.wait_left(seconds_left(turn)), Tone.HOLD)


def restart_wait(turn: Turn) -> None:
    """The wait was broken off; it starts again when the learner says so."""
    turn.say(turn.sentences.WAIT_DROPPED, Tone.NOTICE)
    go_to(turn, turn.draft.cursor)


# Consent: sound is kept only after a clear yes, asked for once.


def give_consent(turn: Turn) -> None:
    """Yes: from the next utterance on, sound may be kept."""
    _settle(turn, Consent.GIVEN, turn.sentences.CONSENT_GIVEN)


def refuse_consent(turn: Turn) -> None:
    """No: no sound is kept; nothing else changes."""
    _settle(turn, Consent.REFUSED, turn.sentences.CONSENT_REFUSED)


def _settle(turn: Turn, consent: Consent, sentence: str) -> None:
    turn.draft.consent = consent
    turn.note["consent"] = consent.value
    turn.note["verdict"] = f"consent {consent.value}"
    turn.say(sentence, Tone.NOTICE)
    begin_steps(turn)


# The instructor at the station.


def admit_instructor(turn: Turn) -> None:
    """The instructor speaks from now on until "go on"; where there is a code, only with it."""
    proven = turn.terms.instructor_code and isinstance(turn.event, InstructorCame) and turn.event.proven
    held = State.HELD in (turn.draft.state, *turn.draft.before)
    if (turn.terms.instructor_code or held) and not proven:
        turn.note["verdict"] = "refused"
        turn.say(turn.sentences.INSTRUCTOR_CODE_WANTED, Tone.HOLD)
        return
    turn.draft.speaker = Person.INSTRUCTOR if proven else Person.INSTRUCTOR_UNPROVEN
    turn.note["by"] = turn.draft.speaker.value
    turn.note["verdict"] = "instructor admitted"
    interrupt(turn, State.WITH_INSTRUCTOR)


def heed_instructor(turn: Turn) -> None:
    """What was seen, a cue that was given, or a step that is set aside."""
    draft = turn.draft
    if not isinstance(turn.meaning, Answer):
        raise TypeError("a choice without words")
    match str(turn.meaning.value):
        case observed if observed in OBSERVED and isinstance(turn.step.expect, ObservationAsked):
            take_the_step_up(turn, State.ASKING)
            if not settings_lost(turn):
                observe(turn, observed)
        case InstructorWord.SEEN | InstructorWord.ALL_SEEN if to_be_seen(turn):
            _mark_seen(turn, every=turn.meaning.value == InstructorWord.ALL_SEEN)
        case InstructorWord.CUE if turn.done.opened:
            turn.cue("instructor")
            turn.say(turn.sentences.CUE_COUNTED, Tone.NOTICE)
        case InstructorWord.OVERRULE if turn.done.opened:
            if not may_overrule(turn):
                turn.note["verdict"] = "refused"
                turn.say(turn.sentences.OVERRULE_NEEDS_CODE, Tone.HOLD)
                return
            draft.purpose = Purpose.OVERRULED
            take_the_step_up(turn, State.GIVING_REASON)
            prompt(turn)
        case _:
            not_here(turn)


def _mark_seen(turn: Turn, *, every: bool) -> None:
    """The instructor saw the step that was done last, or every step that was done so far."""
    marked = to_be_seen(turn) if every else to_be_seen(turn)[-1:]
    for name in marked:
        done = turn.draft.steps[name]
        done.sightings = (*done.sightings, Sighting(turn.draft.speaker.value, seen=True))
    turn.note["verdict"] = InstructorWord.SEEN.value
    turn.note["seen"] = list(marked)
    turn.note["by"] = turn.draft.speaker.value
    lines = tuple(turn.papers.checklist.step(name).say for name in marked)
    turn.say(turn.sentences.marked_seen(lines), Tone.NOTICE)


def take_the_step_up(turn: Turn, state: State) -> None:
    """Leave whatever was interrupted: the instructor deals with the current step itself."""
    turn.draft.before.clear()
    end_holds(turn.draft)
    turn.draft.wake_up = None
    turn.draft.state = state


# Microphone and voice.


def ear_lost(turn: Turn) -> None:
    """The keyboard takes over at once."""
    turn.say(turn.sentences.EAR_LOST, Tone.NOTICE)


def ear_back(turn: Turn) -> None:
    """Voice again."""
    turn.say(turn.sentences.EAR_BACK, Tone.NOTICE)


def voice_lost(turn: Turn) -> None:
    """The text goes on."""
    reason = turn.event.reason if isinstance(turn.event, VoiceLost) else ""
    turn.say(turn.sentences.voice_lost(reason), Tone.NOTICE, "")
