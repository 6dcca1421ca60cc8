"""The instructor at the station: what only they may say."""

from assistant.checklist.model import ObservationAsked
from assistant.guide.asking import OBSERVED, prompt
from assistant.guide.choices import observe
from assistant.guide.effects import Tone
from assistant.guide.moving import settings_lost
from assistant.guide.pausing import interrupt
from assistant.guide.progress import Person, Purpose, State
from assistant.guide.turn import Turn
from assistant.guide.unclear import not_here
from assistant.spoken.english.sentences import SENTENCES as sentences
from assistant.spoken.meaning import Answer, InstructorWord


def admit_instructor(turn: Turn) -> None:
    """The instructor speaks from now on until "go on"; where there is a code, only with it."""
    if turn.given.instructor_code and not turn.proven:
        turn.note["verdict"] = "refused"
        turn.say(sentences.INSTRUCTOR_CODE_WANTED, Tone.HOLD)
        return
    proven = turn.proven and turn.given.instructor_code
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
            _take_the_step_up(turn, State.ASKING)
            if not settings_lost(turn):
                observe(turn, observed)
        case InstructorWord.CUE if turn.done.opened:
            turn.cue("instructor")
            turn.say(sentences.CUE_COUNTED, Tone.NOTICE)
        case InstructorWord.OVERRULE if turn.done.opened:
            if not turn.given.practice and draft.speaker is not Person.INSTRUCTOR:
                turn.note["verdict"] = "refused"
                turn.say(sentences.OVERRULE_NEEDS_CODE, Tone.HOLD)
                return
            draft.purpose = Purpose.OVERRULED
            _take_the_step_up(turn, State.GIVING_REASON)
            prompt(turn)
        case _:
            not_here(turn)


def _take_the_step_up(turn: Turn, state: State) -> None:
    """Leave whatever was interrupted: the instructor deals with the current step itself."""
    turn.draft.before.clear()
    turn.draft.token = ""
    turn.draft.state = state
