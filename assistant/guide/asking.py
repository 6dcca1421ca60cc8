"""What the present state asks for: what is expected to be said, and the sentence that asks."""

from datetime import timedelta

from assistant import dosing
from assistant.checklist.model import (
    ChoiceAsked,
    DoubleCheckAsked,
    NameAsked,
    NoteAsked,
    NumberAsked,
    ObservationAsked,
    QuestionAsked,
    Step,
)
from assistant.guide.breaths import breaths
from assistant.guide.effects import Tone
from assistant.guide.given import Given
from assistant.guide.progress import Person, Progress, Purpose, State
from assistant.guide.turn import Turn
from assistant.spoken import read_back
from assistant.spoken.english.phrases import INSTRUCTOR_WORDS
from assistant.spoken.english.sentences import SENTENCES as sentences
from assistant.spoken.expect import ChoiceExpected, ConfirmExpected, Expect, NameExpected, NumberExpected, TextExpected
from assistant.spoken.meaning import InstructorWord

OBSERVED = (InstructorWord.SEEN.value, InstructorWord.NOT_SEEN.value)
"""What an observation is answered with."""


def expectation(given: Given, progress: Progress) -> Expect:
    """What is expected to be said now; never narrowed to the right answer."""
    match progress.state:
        case State.READING_BACK | State.STOPPING | State.ASKING_CONSENT:
            return ConfirmExpected(done_is_yes=False)
        case State.GIVING_REASON:
            return TextExpected()
        case State.WITH_INSTRUCTOR:
            return _said_by_instructor(tuple(word.value for word in InstructorWord))
        case State.ASKING:
            match given.checklist.steps[progress.cursor].expect:
                case NumberAsked(unit=unit):
                    return NumberExpected(unit, digits_only=progress.digits_only)
                case NameAsked(key=key):
                    return NameExpected(given.key[key].choices)
                case QuestionAsked():
                    return ConfirmExpected(done_is_yes=False)
                case ChoiceAsked(choices=choices, phrases=phrases):
                    return ChoiceExpected(choices, tuple((say, c) for c, ways in phrases.items() for say in ways))
                case NoteAsked():
                    return TextExpected()
                case ObservationAsked():
                    return _said_by_instructor(OBSERVED)
                case DoubleCheckAsked(of=of):
                    first = given.checklist.step(of).expect
                    unit = first.unit if isinstance(first, NumberAsked) else ""
                    return NumberExpected(unit, digits_only=progress.digits_only)
    return ConfirmExpected()


def _said_by_instructor(words: tuple[str, ...]) -> ChoiceExpected:
    return ChoiceExpected(words, tuple((said, word) for said, word in INSTRUCTOR_WORDS if word in words))


def asked_person(step: Step) -> Person:
    """Who is asked at this step."""
    return Person.SECOND if isinstance(step.expect, DoubleCheckAsked) else Person.LEARNER


def prompt(turn: Turn) -> None:
    """Say what the present state asks for."""
    draft, step = turn.draft, turn.step
    match draft.state:
        case State.ASKING:
            count = len(turn.given.checklist.steps)
            shown = sentences.step_line(draft.cursor + 1, count, step.say, critical=step.critical)
            first, *rest = breaths(step.say)
            aloud = f"{first} {sentences.MORE_FOLLOWS}" if rest else first
            turn.say(shown, Tone.STEP, turn.given.checklist.aloud(aloud))
        case State.ASKING_CONSENT:
            turn.say(sentences.CONSENT_ASKED, Tone.STEP)
        case State.READING_BACK if draft.number is not None:
            said = read_back(draft.number, draft.unit)
            shown = dosing.show(dosing.Amount(draft.number, draft.unit))
            turn.say(f"{shown}: {said}", Tone.READ_BACK, said)
        case State.READING_BACK if draft.name:
            turn.say(sentences.name_read_back(draft.name), Tone.READ_BACK)
        case State.READING_BACK:
            note = draft.purpose is Purpose.NOTE
            said = sentences.note_read_back(draft.words) if note else sentences.reason_read_back(draft.words)
            turn.say(said, Tone.READ_BACK)
        case State.GIVING_REASON:
            overruled = draft.purpose is Purpose.OVERRULED
            turn.say(sentences.WHY_OVERRULED if overruled else sentences.WHY_NOT_APPLICABLE, Tone.STEP)
        case State.WITH_INSTRUCTOR:
            turn.say(sentences.INSTRUCTOR_HERE, Tone.NOTICE)
        case State.WAITING:
            turn.say(sentences.wait_left(seconds_left(turn)), Tone.NOTICE)
        case State.PAUSED:
            turn.say(sentences.PAUSED, Tone.NOTICE)
        case State.STOPPING:
            turn.say(sentences.STOP_ASKED, Tone.NOTICE)
        case _:
            return


def seconds_left(turn: Turn) -> int:
    """Whole seconds of a timed wait that are still to go, rounded up."""
    if turn.draft.wakes_at is None:
        return 0
    left = turn.draft.wakes_at - turn.at
    return max(0, -(-left // timedelta(seconds=1)))
