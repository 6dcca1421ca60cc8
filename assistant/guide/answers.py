"""Yes, no and done, as answers to the current step."""

from datetime import timedelta

from assistant.checklist.model import DoneAsked, QuestionAsked, WaitAsked
from assistant.guide.effects import Tone
from assistant.guide.holds import hold
from assistant.guide.moving import close, reopen_by_learner, settings_lost
from assistant.guide.progress import State
from assistant.guide.turn import Turn
from assistant.guide.unclear import unclear
from assistant.spoken.english.sentences import SENTENCES as sentences


def answer_yes(turn: Turn) -> None:
    """Yes or done: closes an action, answers a question, starts a timed wait."""
    if settings_lost(turn):
        return
    match turn.step.expect:
        case DoneAsked():
            reopen_by_learner(turn)
            close(turn)
        case QuestionAsked(right=right):
            _answer_question(turn, "yes", right)
        case WaitAsked(seconds=seconds):
            reopen_by_learner(turn)
            turn.draft.state = State.WAITING
            turn.note["verdict"] = "wait started"
            turn.say(sentences.wait_begins(seconds), Tone.NOTICE)
            turn.wake_at("wait", turn.at + timedelta(seconds=seconds))
        case _:
            unclear(turn)


def answer_no(turn: Turn) -> None:
    """No: an answer to a question; at an action it means "not yet"."""
    step = turn.step
    match step.expect:
        case QuestionAsked(right=right):
            _answer_question(turn, "no", right)
        case _:
            reopen_by_learner(turn)
            turn.note["verdict"] = "not yet"
            turn.say(sentences.not_right(step.if_wrong) if step.if_wrong else step.say, Tone.HOLD)


def _answer_question(turn: Turn, answer: str, right: str) -> None:
    step, done = turn.step, turn.done
    reopen_by_learner(turn)
    done.tries += 1
    done.first = done.first or answer
    done.final = answer
    if answer == right:
        turn.note["verdict"] = "agrees"
        close(turn, answer)
        return
    hold(turn, "hold", sentences.not_right(step.if_wrong), ask=sentences.question_again(step.say))
