"""What happened: the guide's only input. Past tense; time is told, never asked."""

from dataclasses import dataclass, field
from datetime import datetime


@dataclass(frozen=True)
class Opened:
    """The attempt begins."""

    at: datetime


@dataclass(frozen=True)
class Resumed:
    """An interrupted attempt goes on.

    Attributes:
        ear, ear_model: what listens now, and the digest of its model; empty where nothing does.
        clock_behind_s: seconds that this machine's clock is behind the record, as decimal text; empty where it
            is not. Times go on from the record's last one.
    """

    at: datetime
    ear: str = ""
    ear_model: str = ""
    clock_behind_s: str = ""


@dataclass(frozen=True)
class Heard:
    """An utterance was recognised.

    Attributes:
        words: the best wording.
        alternatives: further wordings, best first.
        confidence: the recogniser's own figure as decimal text, or None; evidence, never a gate.
        ear: the recogniser's name.
        during_speech: it overlapped the assistant's own voice.
        gap: sound was lost inside it.
        doubtful: the recogniser holds another number for possible: it is asked for digit by digit.
        sound: what the recogniser got, where sound is kept; the entry names its file, and no replay has it.
    """

    at: datetime
    words: str
    alternatives: tuple[str, ...] = ()
    confidence: str | None = None
    ear: str = ""
    during_speech: bool = False
    gap: bool = False
    doubtful: bool = False
    sound: bytes = field(default=b"", repr=False)


@dataclass(frozen=True)
class NotUnderstood:
    """Speech was heard, but the recogniser would not stand for any wording of it; `sound` as in `Heard`."""

    at: datetime
    ear: str = ""
    sound: bytes = field(default=b"", repr=False)


@dataclass(frozen=True)
class Typed:
    """A line was typed."""

    at: datetime
    words: str


@dataclass(frozen=True)
class InstructorCame:
    """The instructor is at the station: what is said or typed next is the instructor's.

    Attributes:
        proven: the instructor's code was typed and is right. The code itself is never in an event.
    """

    at: datetime
    proven: bool


@dataclass(frozen=True)
class Woke:
    """A wait that the guide asked for is over."""

    at: datetime
    token: str


@dataclass(frozen=True)
class Recorded:
    """The last entry is on disk: written, flushed, fsynced."""

    sequence: int
    digest: str


@dataclass(frozen=True)
class EarLost:
    """The microphone or the recogniser is gone; the keyboard goes on."""

    at: datetime
    reason: str


@dataclass(frozen=True)
class EarBack:
    """The microphone is there again."""

    at: datetime


@dataclass(frozen=True)
class VoiceLost:
    """The voice is gone; the text goes on."""

    at: datetime
    reason: str


@dataclass(frozen=True)
class InputEnded:
    """No further input can come: end of file, or the user interrupted the program."""

    at: datetime


Event = (
    Opened
    | Resumed
    | Heard
    | NotUnderstood
    | Typed
    | InstructorCame
    | Woke
    | Recorded
    | EarLost
    | EarBack
    | VoiceLost
    | InputEnded
)
