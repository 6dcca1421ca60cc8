"""What happened: the guide's only input, and how each event is written into a record and read back from it.

Events are in the past tense and carry their time: the guide asks no clock. A record holds every event that was
accepted, so that an attempt can be lived again from its entries.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import datetime
from enum import StrEnum

from assistant.spoken.meaning import Ambiguous, Answer, Meaning, Surety


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
        doubtful: the recogniser holds something else for possible: a number is asked for digit by digit, a
            confirmation or a choice once more.
        told_apart: a number that the sound itself tells from those that sound like it.
        borne_out: the recogniser stands for the words only because another model heard them too.
        unaided: another model was to be asked too, and cannot be loaded.
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
    told_apart: bool = False
    borne_out: bool = False
    unaided: bool = False
    sound: bytes = field(default=b"", repr=False)


@dataclass(frozen=True)
class NotUnderstood:
    """Speech was heard, but the recogniser would stand for no wording of it; `unaided` and `sound` as in `Heard`."""

    at: datetime
    ear: str = ""
    unaided: bool = False
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


class Mark(StrEnum):
    """What an instructor marks from the desk."""

    SEEN = "seen"
    NOT_SEEN = "not seen"
    CUE = "cue"
    UNSAFE = "unsafe"
    NOT_APPLICABLE = "not applicable"
    NOTE = "note"
    OVERRULE = "overrule"
    UNDO = "undo"


class Happening(StrEnum):
    """What an instructor lets happen at the bench, for teaching."""

    ALARM = "alarm"
    PAIN = "pain"
    SETTINGS_LOST = "settings lost"
    OTHER = "other"


class Direction(StrEnum):
    """Where an instructor directs the attempt."""

    PAUSE = "pause"
    GO_ON = "go on"
    STOP = "stop"


@dataclass(frozen=True)
class Marked:
    """The instructor marked something at the desk.

    Attributes:
        mark: what.
        step: id of the step that it is for; empty where it is for the attempt, or for the step that is asked.
        words: the reason, or the note.
        order: id of the order that the mark came by: what is sent twice is taken once. Empty where it has none.
        undoes: id of the mark that is taken back.
        proven: whoever marked is known to be an instructor, as with the code at the station.
    """

    at: datetime
    mark: Mark
    step: str = ""
    words: str = ""
    order: str = ""
    undoes: str = ""
    proven: bool = True


@dataclass(frozen=True)
class Happened:
    """The instructor lets something happen; `words` are what the learner hears, empty for the guide's own."""

    at: datetime
    what: Happening
    words: str = ""
    order: str = ""


@dataclass(frozen=True)
class Directed:
    """The instructor lets the attempt rest, go on or stop, from the desk."""

    at: datetime
    what: Direction
    order: str = ""


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
    | Marked
    | Happened
    | Directed
)
"""Everything that `Guide.receive` takes."""

FromDesk = Marked | Happened | Directed
"""What comes from the instructor's desk."""

LONGEST_WORDS = 1_000
"""Characters of raw words that an entry keeps; longer input is refused anyway."""

KINDS: dict[type[Event], str] = {
    Opened: "opened",
    Resumed: "resumed",
    Heard: "heard",
    NotUnderstood: "not understood",
    Typed: "typed",
    InstructorCame: "instructor here",
    Woke: "time is up",
    EarLost: "microphone lost",
    EarBack: "microphone back",
    VoiceLost: "voice lost",
    InputEnded: "input ended",
    Marked: "marked",
    Happened: "happened",
    Directed: "directed",
}
"""The kind of entry for each kind of event."""

SOURCES: dict[type[Event], str] = {
    Heard: "voice",
    NotUnderstood: "voice",
    Typed: "typed",
    InstructorCame: "instructor",
    Woke: "clock",
    Marked: "desk",
    Happened: "desk",
    Directed: "desk",
}
"""Where an entry comes from; the station itself for all others."""


def stamp(at: datetime) -> str:
    """UTC time as an entry holds it: ISO 8601 with microseconds, so that a replay is exact."""
    return at.isoformat(timespec="microseconds")


def body_of(event: Event) -> dict[str, object]:
    """The event itself as the body of an entry.

    Raises:
        TypeError: the event is the record's own answer, which is never recorded.
    """
    if isinstance(event, Recorded):
        raise TypeError("an acknowledgement is not recorded")
    body: dict[str, object] = {
        "kind": KINDS[type(event)],
        "at": stamp(event.at),
        "source": SOURCES.get(type(event), "station"),
    }
    match event:
        case Heard():
            body["words"] = event.words[:LONGEST_WORDS]
            body["alternatives"] = [words[:LONGEST_WORDS] for words in event.alternatives]
            body["confidence"] = event.confidence
            body["ear"] = event.ear
            marks = ("during_speech", "gap", "doubtful", "told_apart", "borne_out", "unaided")
            body |= {mark: True for mark in marks if getattr(event, mark)}
        case Resumed():
            told = {"ear": event.ear, "ear_model": event.ear_model, "clock_behind_s": event.clock_behind_s}
            body |= {name: text for name, text in told.items() if text}
        case NotUnderstood():
            body |= {"ear": event.ear} | ({"unaided": True} if event.unaided else {})
        case Typed():
            body["words"] = event.words[:LONGEST_WORDS]
        case InstructorCame():
            body["proven"] = event.proven
        case Woke():
            body["token"] = event.token
        case EarLost() | VoiceLost():
            body["reason"] = event.reason
        case Marked():
            body |= {"mark": event.mark.value, "step": event.step, "words": event.words[:LONGEST_WORDS]}
            body |= {"order": event.order, "undoes": event.undoes, "proven": event.proven}
        case Happened():
            body |= {"what": event.what.value, "words": event.words[:LONGEST_WORDS], "order": event.order}
        case Directed():
            body |= {"what": event.what.value, "order": event.order}
    return body


def event_of(entry: Mapping[str, object]) -> Event | None:
    """The event that an entry tells of; None for entries that are no event (a seal, a recovery).

    Raises:
        ValueError: it tells no time with its zone, or a mark that there is not; no guide writes such a thing.
    """
    kind = entry.get("kind")
    if kind not in KINDS.values():
        return None
    at = datetime.fromisoformat(str(entry.get("at")))
    if at.tzinfo is None:
        raise ValueError(f"the time {at} has no zone")
    words = str(entry.get("words", ""))
    match kind:
        case "opened":
            return Opened(at)
        case "resumed":
            return Resumed(at, *(str(entry.get(name, "")) for name in ("ear", "ear_model", "clock_behind_s")))
        case "heard":
            alternatives = entry.get("alternatives")
            confidence = entry.get("confidence")
            return Heard(
                at,
                words,
                tuple(map(str, alternatives)) if isinstance(alternatives, list | tuple) else (),
                None if confidence is None else str(confidence),
                str(entry.get("ear", "")),
                during_speech=bool(entry.get("during_speech", False)),
                gap=bool(entry.get("gap", False)),
                doubtful=bool(entry.get("doubtful", False)),
                told_apart=bool(entry.get("told_apart", False)),
                borne_out=bool(entry.get("borne_out", False)),
                unaided=bool(entry.get("unaided", False)),
            )
        case "not understood":
            return NotUnderstood(at, str(entry.get("ear", "")), unaided=bool(entry.get("unaided", False)))
        case "typed":
            return Typed(at, words)
        case "instructor here":
            return InstructorCame(at, proven=bool(entry.get("proven", False)))
        case "time is up":
            return Woke(at, str(entry.get("token", "")))
        case "microphone lost":
            return EarLost(at, str(entry.get("reason", "")))
        case "microphone back":
            return EarBack(at)
        case "voice lost":
            return VoiceLost(at, str(entry.get("reason", "")))
        case "input ended":
            return InputEnded(at)
        case "marked":
            step, order, undoes = (str(entry.get(name, "")) for name in ("step", "order", "undoes"))
            proven = bool(entry.get("proven", False))
            return Marked(at, Mark(str(entry.get("mark"))), step, words, order, undoes, proven)
        case "happened":
            return Happened(at, Happening(str(entry.get("what"))), words, str(entry.get("order", "")))
        case "directed":
            return Directed(at, Direction(str(entry.get("what"))), str(entry.get("order", "")))
        case _:
            return None


def meaning_body(meaning: Meaning) -> dict[str, object]:
    """What words were taken to mean, as an entry holds it: numbers as decimal text."""
    match meaning:
        case Answer():
            body: dict[str, object] = {"kind": meaning.kind.value, "value": f"{meaning.value}"}
            if meaning.unit is not None:
                body["unit"] = meaning.unit
            if meaning.instead is not None:
                body["instead"] = meaning_body(meaning.instead)
            if meaning.surety is not Surety.PLAIN:
                body["surety"] = meaning.surety.value
            return body
        case Ambiguous():
            return {"readings": [f"{reading:f}" for reading in meaning.readings], "unit": meaning.unit}
        case _:
            return {"refused": meaning.reason.value}
