"""What happened: the guide's only input. Past tense; time is told, never asked."""

from dataclasses import dataclass
from datetime import datetime


@dataclass(frozen=True)
class Opened:
    """The attempt begins."""

    at: datetime


@dataclass(frozen=True)
class Resumed:
    """An interrupted attempt goes on."""

    at: datetime


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
    """

    at: datetime
    words: str
    alternatives: tuple[str, ...] = ()
    confidence: str | None = None
    ear: str = ""
    during_speech: bool = False
    gap: bool = False


@dataclass(frozen=True)
class NotUnderstood:
    """Speech was heard, but the recogniser would not stand for any wording of it."""

    at: datetime
    ear: str = ""


@dataclass(frozen=True)
class Typed:
    """A line was typed."""

    at: datetime
    words: str


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


Event = Opened | Resumed | Heard | NotUnderstood | Typed | Woke | Recorded | EarLost | EarBack | VoiceLost | InputEnded
