"""Pause, stop and resumption: the attempt lies still and goes on where it was."""

from assistant.guide.asking import asked_person, prompt
from assistant.guide.effects import Outcome, Tone
from assistant.guide.ending import finish
from assistant.guide.moving import arm, go_to, settings_lost
from assistant.guide.progress import Purpose, State
from assistant.guide.turn import Turn
from assistant.guide.waits import end_wait
from assistant.spoken.english.sentences import SENTENCES as sentences


def pause(turn: Turn) -> None:
    """Wait until "go on"; nobody speaks as the instructor after it."""
    while turn.draft.state in (State.PAUSED, State.STOPPING, State.WITH_INSTRUCTOR):
        leave(turn)
    interrupt(turn, State.PAUSED)


def ask_stop(turn: Turn) -> None:
    """Ask once before stopping."""
    interrupt(turn, State.STOPPING)


def interrupt(turn: Turn, state: State) -> None:
    """Remember what to return to, keep only the time of a wait, and say what is asked now."""
    draft = turn.draft
    draft.before.append(draft.state)
    if draft.before[-1:] != [State.WAITING]:
        draft.token = ""
    draft.state = state
    prompt(turn)


def tell_paused(turn: Turn) -> None:
    """Nothing but "go on" ends a pause."""
    prompt(turn)


def note_wait_over(turn: Turn) -> None:
    """The timed wait ended meanwhile."""
    turn.draft.wait_over = True
    turn.note["verdict"] = "time is up"


def return_from_pause(turn: Turn) -> None:
    """Back to what was asked before."""
    leave(turn)
    turn.say(sentences.GOING_ON, Tone.NOTICE)
    _take_up(turn)


def leave(turn: Turn) -> None:
    """Back to the state before; an instructor who leaves hands back to whoever the step asks."""
    if turn.draft.state is State.WITH_INSTRUCTOR:
        turn.draft.speaker = asked_person(turn.step)
    turn.draft.state = turn.draft.before.pop()


def _take_up(turn: Turn) -> None:
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
            turn.say(sentences.REASON_DROPPED, Tone.NOTICE)
            go_to(turn, draft.cursor)
        case State.WAITING if draft.wait_over or (draft.wakes_at is not None and turn.at >= draft.wakes_at):
            draft.wait_over = False
            end_wait(turn)
        case State.WAITING:
            prompt(turn)
            turn.wake_at("wait", draft.wakes_at or turn.at)
        case _:
            prompt(turn)


def stop(turn: Turn) -> None:
    """The learner stops before the end."""
    _stop(turn, sentences.STOPPED)


def close_early(turn: Turn) -> None:
    """The attempt ends for good before its end: sealed as not completed, so that it can be signed for."""
    turn.note["verdict"] = "closed before its end"
    turn.draft.before.clear()
    turn.draft.closed_early = True
    turn.say(sentences.CLOSED_EARLY, Tone.RESULT)
    finish(turn)


def end_input(turn: Turn) -> None:
    """No more input can come."""
    _stop(turn, sentences.INPUT_ENDED)


def _stop(turn: Turn, sentence: str) -> None:
    turn.note["verdict"] = "stopped"
    if turn.draft.state not in (State.WITH_INSTRUCTOR, State.PAUSED, State.STOPPING):
        turn.draft.before.append(turn.draft.state)
    turn.draft.state = State.FINISHED
    turn.draft.token = ""
    turn.outcome = Outcome.STOPPED
    turn.say(sentence, Tone.RESULT)


def resume(turn: Turn) -> None:
    """An interrupted attempt goes on where it was; the instructor has to come again."""
    if turn.draft.state is State.WITH_INSTRUCTOR:
        leave(turn)
    turn.say(sentences.RESUMED, Tone.NOTICE)
    turn.adjust()
    _take_up(turn)


def reopen(turn: Turn) -> None:
    """A stopped attempt goes on; one that was over, but not sealed, is ended again."""
    if not turn.draft.before:
        finish(turn)
        return
    # What was asked before any pause: whoever resumes an attempt is ready to go on.
    turn.draft.state = turn.draft.before[0]
    turn.draft.before.clear()
    turn.draft.speaker = asked_person(turn.step)
    resume(turn)
