"""Answers to the current step: yes, no, done, a choice, what the instructor saw; and how a wrong one is held."""

from datetime import timedelta

from assistant.checklist.model import ChoiceAsked, DoneAsked, ObservationAsked, QuestionAsked, WaitAsked
from assistant.dosing import Amount
from assistant.guide.asking import prompt, question_in_full, unclear
from assistant.guide.bench import OVERLOOKED, label_here, note_found, note_told, reads_label, settles, tells
from assistant.guide.effects import Tone
from assistant.guide.path import arm, close, go_to, reopen_by_learner, settings_lost, take_back
from assistant.guide.progress import FINDING, Found, Person, State, Wake
from assistant.guide.turn import Turn
from assistant.orders.fault import ends_attempt
from assistant.spoken.meaning import Answer, InstructorWord

ANOTHER_CHOICE = "another choice"
"""The slip of a choice that is not the right one."""


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
            turn.say(turn.sentences.wait_begins(seconds), Tone.NOTICE)
            turn.wake_at(Wake.WAIT, turn.at + timedelta(seconds=seconds))
        case _:
            unclear(turn)


def ask_plainly(turn: Turn) -> None:
    """An acknowledgement says nothing about the step, nor does a bare yes where the line's own words are wanted."""
    turn.note["verdict"] = "asked plainly"
    turn.say(question_in_full(turn), Tone.UNCLEAR)


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
    if answer != right:
        note_told(turn, answer)
        find(turn, step.if_wrong, turn.sentences.question_again(step.say))
        return
    reopen_by_learner(turn)
    done.tries += 1
    if turn.faults and not settles(turn):
        overlook(turn, answer)
        return
    turn.note["verdict"] = "agrees"
    close(turn, answer)


def find(turn: Turn, advice: str, ask: str) -> None:
    """The learner tells of a fault: it costs nothing, and holds the step until it is put right, or the learner stops.

    Args:
        turn: the turn.
        advice: what to do about it.
        ask: the question for what is there once it has been put right.
    """
    done = turn.done
    reopen_by_learner(turn, free=True)
    done.found += 1
    done.fault = True
    turn.note["verdict"] = "found"
    turn.draft.troubles.append(Found(turn.step.id, FINDING, turn.words))
    turn.say(turn.sentences.not_right(advice), Tone.HOLD)
    if ends_attempt(turn.step):
        turn.say(turn.sentences.STOP_FOR_THIS, Tone.STEP)
        arm(turn)
        return
    proved_false = take_back(turn, turn.step.takes_back)
    if proved_false is not None:
        turn.say(turn.sentences.TAKEN_BACK, Tone.HOLD)
        go_to(turn, proved_false)
        return
    turn.say(ask, Tone.STEP)
    arm(turn)


def met_the_bench(turn: Turn, said: str | Amount, shown: str, *, agrees: bool) -> bool:
    """Deal with a name or a number that was read at a step where something is laid out.

    What the label says is a finding; what the order says, where the label says something else, overlooks it.

    Args:
        turn: the turn.
        said: the name or the number.
        shown: the same as it is shown.
        agrees: it is what is ordered.

    Returns:
        False where it is an answer like any other.
    """
    label = label_here(turn)
    read = label is not None and reads_label(label, said)
    if not read and not (agrees and not settles(turn)):
        return False
    done = turn.done
    reopen_by_learner(turn, free=read)
    done.tries += 1
    done.first = done.first or shown
    done.final = shown
    if label is not None and read:
        note_found(turn, label)
        find(turn, turn.step.if_wrong, turn.sentences.question_again(turn.step.say))
    else:
        overlook(turn, shown)
    return True


def overlook(turn: Turn, answer: str) -> None:
    """An answer that is not what is laid out is held like any wrong one; in practice the advice is given with it."""
    turn.done.first = turn.done.first or answer
    turn.done.final = answer
    advice = turn.step.if_wrong if turn.terms.practice else ""
    hold(turn, "does not agree", turn.sentences.disagrees(turn.sentences.LOOK_AGAIN), advice, slip=OVERLOOKED)


def take_choice(turn: Turn) -> None:
    """A choice closes the step where it is right or where every one is."""
    if settings_lost(turn):
        return
    if not isinstance(turn.meaning, Answer):
        raise TypeError("a choice without words")
    choice = str(turn.meaning.value)
    match turn.step.expect:
        case ChoiceAsked(faults=faults, advice=advice) if choice in faults:
            told = advice.get(choice, turn.step.if_wrong)
            note_told(turn, choice)
            find(turn, told, turn.sentences.question_again(turn.step.say))
        case ChoiceAsked(right=right, advice=advice) if choice != right and tells(turn, choice):
            note_told(turn, choice)
            find(turn, advice.get(choice, turn.step.if_wrong), turn.sentences.question_again(turn.step.say))
        case ChoiceAsked(right=right, advice=advice):
            _answered(turn, choice)
            turn.say(turn.sentences.chosen(choice), Tone.NOTICE)
            if choice == right and turn.faults and not settles(turn):
                overlook(turn, choice)
            elif choice == right or not right:
                turn.note["verdict"] = "agrees" if right else "chosen"
                close(turn, choice)
            else:
                turn.done.fault = True
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


def hold(turn: Turn, verdict: str, *told: str, slip: str = "") -> None:
    """Count a wrong answer and hold the step.

    Args:
        turn: the turn.
        verdict: what the entry says.
        told: what is said, in order; empty sentences are left out.
        slip: the kind of slip, where there is a name for it.
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
    else:
        prompt(turn)
    arm(turn)
