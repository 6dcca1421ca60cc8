"""The records in the desk's folder, the newest first, as far as their first and last lines tell."""

import json
import os
import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path

from assistant.text import shown

MOST = 100
"""Records that are listed; older ones are signed by the verb."""
_TAIL = 1 << 18
"""Bytes of a file's end in which its seal and its signatures are looked for."""
_HEAD = 1 << 16
_FILE = re.compile(r"[A-Za-z0-9._-]{1,200}\.jsonl")


@dataclass(frozen=True)
class Listed:
    """A record; texts are as the file has them, nothing of them is proven.

    Attributes:
        file: its name.
        learner, checklist, mode, began: as its first line pins them.
        result: as its seal says, or that it has none.
        signed: the last decision behind the seal; empty where there is none.
    """

    file: str
    learner: str
    checklist: str
    mode: str
    began: str
    result: str
    signed: str


def listed(folder: Path) -> Iterator[Listed]:
    """The newest records of a folder; what is no record is left out."""
    named = sorted((path for path in folder.glob("*.jsonl") if _FILE.fullmatch(path.name)), reverse=True)
    for path in named[:MOST]:
        opening, tail = _ends(path)
        if opening.get("kind") != "opened":
            continue
        result, signed = "not ended", ""
        for entry in tail:
            if "seal" in entry:
                result = _text(entry, "outcome")
            elif "signature" in entry:
                signed = _text(entry, "decision")
        yield Listed(
            path.name,
            _text(opening, "learner"),
            _text(opening, "checklist"),
            _text(opening, "mode"),
            _text(opening, "at")[:16].replace("T", " "),
            result,
            signed,
        )


def learners_of(day: str, records: Iterator[Listed]) -> set[str]:
    """Codes of the learners whose attempts began on a day (UTC)."""
    return {one.learner for one in records if one.began.startswith(day)}


def path_of(folder: Path, file: str) -> Path | None:
    """The record of this name in the folder; None where there is none."""
    path = folder / file
    return path if _FILE.fullmatch(file) and path.is_file() else None


def _ends(path: Path) -> tuple[Mapping[str, object], list[Mapping[str, object]]]:
    try:
        with path.open("rb") as stream:
            first = stream.readline(_HEAD)
            size = stream.seek(0, os.SEEK_END)
            start = max(len(first), size - _TAIL)
            stream.seek(start)
            lines = stream.read().split(b"\n")
    except OSError:
        return {}, []
    return _entry(first), [_entry(line) for line in lines]


def _entry(line: bytes) -> Mapping[str, object]:
    try:
        entry = json.loads(line)
    except (ValueError, RecursionError):
        return {}
    return entry if isinstance(entry, dict) else {}


def _text(entry: Mapping[str, object], name: str) -> str:
    return shown(str(entry.get(name, "")), 64)
