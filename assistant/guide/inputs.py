"""What an event amounts to in the present state: the input by which the transition table is read."""

from assistant.guide.events import (
    EarBack,
    EarLost,
    Event,
    Heard,
    InputEnded,
    InstructorCame,
    NotUnderstood,
    Opened,
    Recorded,
    Resumed,
    Typed,
    VoiceLost,
    Woke,
)
from assistant.guide.progress import Progress
from assistant.guide.states import Input
from assistant.guide.unclear import GAP, OWN_VOICE
from assistant.spoken import interpret
from assistant.spoken.expect import Expect
from assistant.spoken.meaning import Ambiguous, Answer, Kind, Meaning, NoMatch


def classify(event: Event, progress: Progress, expect: Expect) -> tuple[Input | None, Meaning | None]:
    """What an event amounts to now, and what its words mean; None for what never amounts to anything."""
    match event:
        case Heard(during_speech=True) | Heard(gap=True):
            return Input.DROPPED, None
        case Heard(words=words) | Typed(words=words):
            # What a recogniser writes in figures does not show that it was said digit by digit.
            meaning = interpret(words, expect, heard=isinstance(event, Heard))
            return _input_of(meaning), meaning
        case Woke(token=token):
            return (Input.WOKE if token == progress.token else None), None
        case InstructorCame():
            return Input.INSTRUCTOR, None
        case Opened():
            return Input.OPENED, None
        case Resumed():
            return Input.RESUMED, None
        case NotUnderstood():
            return Input.UNCLEAR, None
        case EarLost():
            return Input.EAR_LOST, None
        case EarBack():
            return Input.EAR_BACK, None
        case VoiceLost():
            return Input.VOICE_LOST, None
        case InputEnded():
            return Input.INPUT_ENDED, None
        case Recorded():
            return None, None


def detail(event: Event) -> str:
    """What an action is told of an event beside its words: a device's reason, why sound was dropped."""
    match event:
        case Heard(during_speech=True):
            return OWN_VOICE
        case Heard(gap=True):
            return GAP
        case EarLost(reason=reason) | VoiceLost(reason=reason):
            return reason
        case _:
            return ""


def _input_of(meaning: Meaning) -> Input:
    match meaning:
        case Ambiguous():
            return Input.AMBIGUOUS
        case NoMatch():
            return Input.UNCLEAR
        case Answer(kind=Kind.CONFIRM, value="yes"):
            return Input.YES
        case Answer(kind=Kind.CONFIRM):
            return Input.NO
        case Answer(kind=Kind.DONE):
            return Input.DONE
        case Answer(kind=Kind.NUMBER):
            return Input.NUMBER
        case Answer(kind=Kind.NAME):
            return Input.NAME
        case Answer(kind=Kind.CHOICE):
            return Input.CHOICE
        case Answer(kind=Kind.TEXT):
            return Input.TEXT
        case Answer(value=command):
            return Input(str(command))
