"""Entries as a real attempt makes them, for the tests of the record."""

import functools
import tempfile
from collections.abc import Callable, Mapping
from datetime import UTC, datetime, timedelta
from pathlib import Path

from assistant.record.file import RecordFile

START = datetime(2026, 11, 25, 8, 0, tzinfo=UTC)


def at(seconds: int) -> str:
    """UTC time this many seconds after the start."""
    return (START + timedelta(seconds=seconds)).isoformat(timespec="microseconds")


def opening() -> dict[str, object]:
    """The first entry's body: what an attempt pins."""
    return {
        "kind": "opened",
        "at": at(0),
        "checklist": {"name": "primary-infusion", "digest": "1f" * 32},
        "order": {"name": "harbour-1", "digest": "2e" * 32},
        "recogniser": {"name": "typed", "digest": ""},
        "program": "0.1.0",
        "learner": "L-014",
        "mode": "check-off",
        "format": "1",
    }


def body(number: int) -> dict[str, object]:
    """What was heard or typed at one step, with every kind of value that an entry may hold."""
    return {
        "kind": "heard" if number % 3 else "typed",
        "at": at(2 * number),
        "ticks": f"{2 * number}.250000",
        "source": "voice" if number % 3 else "typed",
        "step": f"step-{number % 60}",
        "state": "reading back",
        "words": f"one hundred and {number % 25} mils an hour",
        "alternatives": ["a hundred", "one hundred"],
        "confidence": "0.93" if number % 2 else None,
        "ear": "tiny.en",
        "meaning": {"kind": "number", "value": f"{100 + number % 25}", "unit": "mL/h"},
        "verdict": "agrees",
        "during_speech": False,
        "tries": number % 4,
    }


def written(path: Path, count: int, *, sealed: bool = True, of: Callable[[int], Mapping[str, object]] = body) -> Path:
    """A record of `count` entries in all, written by the real thing (once: the same again is a copy)."""
    path.write_bytes(_content(count, sealed, of))
    return path


@functools.cache
def _content(count: int, sealed: bool, of: Callable[[int], Mapping[str, object]]) -> bytes:
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "attempt.jsonl"
        with RecordFile.create(path, opening()) as record:
            for number in range(2, count + (0 if sealed else 1)):
                record.append(of(number))
            if sealed:
                record.seal({"kind": "finished", "at": at(2 * count), "outcome": "passed"})
        return path.read_bytes()
