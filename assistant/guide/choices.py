"""One of several: a choice of the learner's, or what the instructor saw."""

from assistant.checklist.model import ChoiceAsked, ObservationAsked
from assistant.guide.effects import Tone
from assistant.guide.holds import hold
from assistant.guide.moving import close, reopen_by_learner, settings_lost
from assistant.guide.progress import Person
from assistant.guide.turn import Turn
from assistant.guide.unclear import unclear
from assistant.spoken.english.sentences import SENTENCES as sentences
from assistant.spoken.meaning import Answer, InstructorWord

ANOTHER_CHOICE = "another choice"
"""The slip of a choice that is not the right one."""


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
            turn.say(sentences.chosen(choice), Tone.NOTICE)
            if choice == right or not right:
                turn.note["verdict"] = "agrees" if right else "chosen"
                close(turn, choice)
            else:
                told = advice.get(choice, turn.step.if_wrong)
                hold(turn, "does not agree", sentences.not_right(told), slip=ANOTHER_CHOICE)
        case ObservationAsked():
            if turn.given.instructor_code:
                turn.note["verdict"] = "refused"
                turn.say(sentences.ONLY_THE_INSTRUCTOR, Tone.HOLD)
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
    hold(turn, choice, sentences.not_right(turn.step.if_wrong))


def _answered(turn: Turn, choice: str) -> None:
    reopen_by_learner(turn)
    turn.done.tries += 1
    turn.done.first = turn.done.first or choice
    turn.done.final = choice
