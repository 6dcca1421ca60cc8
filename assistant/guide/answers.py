"""Answers to the current step: yes, no, done, a choice, what the instructor saw; and how a wrong one is held."""

from datetime import timedelta

from assistant.checklist.model import ChoiceAsked, DoneAsked, ObservationAsked, QuestionAsked, WaitAsked
from assistant.guide.asking import asked_of, prompt, unclear
from assistant.guide.effects import Tone
from assistant.guide.events import Heard
from assistant.guide.path import arm, close, reopen_by_learner, settings_lost
from assistant.guide.progress import Person, State, Wake
from assistant.guide.turn import Turn
from assistant.spoken.meaning import Answer, InstructorWord

ANOTHER_CHOICE = "another choice"
"""The slip of a choice that is not the right one."""


def answer_yes(turn: Turn) -> None:
    """Yes or done: closes an action, answers a question, starts a timed wait."""
    if settings_lost(turn):
        return
    if isinstance(turn.event, Heard) and turn.event.doubtful:
        _ask_what_was_heard(turn, turn.event)
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
            turn.say(turn.sentences.wait_begins(seconds), Tone.NOTICE)
            turn.wake_at(Wake.WAIT, turn.at + timedelta(seconds=seconds))
        case _:
            unclear(turn)


def ask_plainly(turn: Turn) -> None:
    """An acknowledgement says nothing about the step, nor does a bare yes where the line's own words are wanted."""
    turn.note["verdict"] = "asked plainly"
    question = isinstance(turn.step.expect, QuestionAsked)
    good, bad = turn.papers.language.offer(asked_of(turn.step))
    if question and not (good and bad):
        turn.say(turn.sentences.YES_OR_NO, Tone.UNCLEAR)
    else:
        turn.say(turn.sentences.which_is_it(good, bad), Tone.UNCLEAR)


def _ask_what_was_heard(turn: Turn, heard: Heard) -> None:
    """A yes that was not heard clearly closes nothing; asked once more in the line's own words, it costs nothing."""
    turn.note["verdict"] = "asked once more"
    good, bad = turn.papers.language.offer(asked_of(turn.step))
    question = turn.sentences.which_is_it(good, bad)
    if isinstance(turn.step.expect, QuestionAsked) and not (good and bad):
        question = turn.sentences.YES_OR_NO
    turn.say(turn.sentences.heard_which(heard.words, question), Tone.UNCLEAR)


def answer_no(turn: Turn) -> None:
    """No: an answer to a question; at an action it means "not yet"."""
    step = turn.step
    match step.expect:
        case QuestionAsked(right=right):
            _answer_question(turn, "no", right)
        case _:
            reopen_by_learner(turn)
            turn.note["verdict"] = "not yet"
            turn.say(turn.sentences.not_right(step.if_wrong) if step.if_wrong else step.say, Tone.HOLD)


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
    hold(turn, "hold", turn.sentences.not_right(step.if_wrong), ask=turn.sentences.question_again(step.say))


def take_choice(turn: Turn) -> None:
    """A choice closes the step where it is right or where every one is."""
    if settings_lost(turn):
        return
    if not isinstance(turn.meaning, Answer):
        raise TypeError("a choice without words")
    choice = str(turn.meaning.value)
    match turn.step.expect:
        case ChoiceAsked(right=right, advice=advice):
            _answered(turn, choice)
            turn.say(turn.sentences.chosen(choice), Tone.NOTICE)
            if choice == right or not right:
                turn.note["verdict"] = "agrees" if right else "chosen"
                close(turn, choice)
            else:
                told = advice.get(choice, turn.step.if_wrong)
                hold(turn, "does not agree", turn.sentences.not_right(told), slip=ANOTHER_CHOICE)
        case ObservationAsked():
            if turn.terms.instructor_code:
                turn.note["verdict"] = "refused"
                turn.say(turn.sentences.ONLY_THE_INSTRUCTOR, Tone.HOLD)
                return
            turn.draft.speaker = Person.INSTRUCTOR_UNPROVEN
            observe(turn, choice)
        case _:
            unclear(turn)


def observe(turn: Turn, choice: str) -> None:
    """What the instructor saw: "seen" closes the step."""
    _answered(turn, choice)
    turn.note["by"] = turn.draft.speaker.value
    turn.note["source"] = Person.INSTRUCTOR.value
    if choice == InstructorWord.SEEN:
        turn.note["verdict"] = choice
        close(turn, choice)
        return
    turn.done.by = turn.draft.speaker
    turn.draft.speaker = Person.LEARNER
    hold(turn, choice, turn.sentences.not_right(turn.step.if_wrong))


def _answered(turn: Turn, choice: str) -> None:
    reopen_by_learner(turn)
    turn.done.tries += 1
    turn.done.first = turn.done.first or choice
    turn.done.final = choice


def hold(turn: Turn, verdict: str, *told: str, slip: str = "", ask: str = "") -> None:
    """Count a wrong answer and hold the step.

    Args:
        turn: the turn.
        verdict: what the entry says.
        told: what is said, in order; empty sentences are left out.
        slip: the kind of slip, where there is a name for it.
        ask: the sentence that asks once more, where it is not the step's own line.
    """
    turn.done.wrong += 1
    turn.note["verdict"] = verdict
    if slip:
        turn.done.slips.append(slip)
        turn.note["slip"] = slip
    for sentence in told:
        if sentence:
            turn.say(sentence, Tone.HOLD)
    step = turn.step
    if step.tries is not None and turn.done.wrong >= step.tries:
        turn.note["tries_spent"] = True
        turn.say(step.tries_spent, Tone.HOLD)
    elif ask:
        turn.say(ask, Tone.STEP)
    else:
        prompt(turn)
    arm(turn)
