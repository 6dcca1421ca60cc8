"""Events as entries of the record, and back: what makes an attempt replayable."""

from collections.abc import Mapping
from datetime import datetime

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
from assistant.spoken.meaning import Ambiguous, Answer, Meaning

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
}
"""The kind of entry for each kind of event."""

SOURCES: dict[type[Event], str] = {
    Heard: "voice",
    NotUnderstood: "voice",
    Typed: "typed",
    InstructorCame: "instructor",
    Woke: "clock",
}
"""Where an entry comes from; the station itself for all others."""


def stamp(at: datetime) -> str:
    """UTC time as an entry holds it: ISO 8601 with microseconds, so that a replay is exact."""
    return at.isoformat(timespec="microseconds")


def answer_body(event: Event) -> dict[str, object]:
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
            if event.during_speech:
                body["during_speech"] = True
            if event.gap:
                body["gap"] = True
            if event.doubtful:
                body["doubtful"] = True
        case Resumed():
            told = {"ear": event.ear, "ear_model": event.ear_model, "clock_behind_s": event.clock_behind_s}
            body |= {name: text for name, text in told.items() if text}
        case NotUnderstood():
            body["ear"] = event.ear
        case Typed():
            body["words"] = event.words[:LONGEST_WORDS]
        case InstructorCame():
            body["proven"] = event.proven
        case Woke():
            body["token"] = event.token
        case EarLost() | VoiceLost():
            body["reason"] = event.reason
    return body


def event_of(entry: Mapping[str, object]) -> Event | None:
    """The event that an entry tells of; None for entries that are no event (a seal, a recovery).

    Raises:
        ValueError: it tells no time with its zone, which no guide writes.
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
            )
        case "not understood":
            return NotUnderstood(at, str(entry.get("ear", "")))
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
        case _:
            return None


def meaning_body(meaning: Meaning) -> dict[str, object]:
    """What words were taken to mean, as an entry holds it: numbers as decimal text."""
    match meaning:
        case Answer():
            body: dict[str, object] = {"kind": meaning.kind.value, "value": f"{meaning.value}"}
            if meaning.unit is not None:
                body["unit"] = meaning.unit
            return body
        case Ambiguous():
            return {"readings": [f"{reading:f}" for reading in meaning.readings], "unit": meaning.unit}
        case _:
            return {"refused": meaning.reason.value}
