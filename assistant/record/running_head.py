"""Where the record of an attempt that goes on ends now: one small file an attempt, written over at each entry.

It bridges what a book of heads does not say between two of its lines: whoever cuts off entries there is noticed. It is
written after the entry is on disk and is not synced itself, so that no learner waits for it; it survives a process that
is killed. A power cut may take it, or leave half of it: then it says nothing, and raises no alarm.
"""

import os
from contextlib import suppress
from datetime import UTC, datetime
from pathlib import Path

from assistant.record.disk import OWNER_ONLY
from assistant.record.entry import GENESIS, LONGEST_LINE, NotAnEntryError, link, read_line
from assistant.record.heads import Sighting, sighting_of
from assistant.text import shown

FOLDER = "running"
"""Folder of these files beside the book."""

_KIND = "went on"


class RunningHead:
    """The running head of one attempt.

    Args:
        folder: that of the book.
        record: the record's file.
        attempt: digest of its first entry.
    """

    def __init__(self, folder: Path, record: Path, attempt: str) -> None:
        self._path = _path(folder, attempt)
        self._record = shown(record.name)
        self._attempt = attempt
        self._descriptor: int | None = None

    def note(self, count: int, head: str) -> None:
        """Write over what was remembered. What keeps that from being written harms nothing: the book has its lines."""
        now = datetime.now(UTC).isoformat(timespec="microseconds")
        line = link(Sighting(_KIND, now, self._record, self._attempt, count, head).body(), GENESIS, 1).line
        with suppress(OSError):
            if self._descriptor is None:
                self._path.parent.mkdir(mode=0o700, parents=True, exist_ok=True)
                flags = os.O_WRONLY | os.O_CREAT | getattr(os, "O_BINARY", 0) | getattr(os, "O_CLOEXEC", 0)
                self._descriptor = os.open(self._path, flags, OWNER_ONLY)
            os.lseek(self._descriptor, 0, os.SEEK_SET)
            os.write(self._descriptor, line)  # a shorter line leaves a rest behind it, which nobody reads

    def close(self) -> None:
        """Let go of the file; harmless when done twice."""
        if self._descriptor is not None:
            with suppress(OSError):
                os.close(self._descriptor)
            self._descriptor = None

    def forget(self) -> None:
        """A line of the book says it now."""
        self.close()
        with suppress(OSError):
            self._path.unlink()


def running_sighting(folder: Path, attempt: str) -> Sighting | None:
    """What is remembered of an attempt; None where nothing is, or nothing that holds."""
    try:
        with _path(folder, attempt).open("rb") as stream:
            sighting = sighting_of(read_line(stream.readline(LONGEST_LINE)).fields)
    except (OSError, NotAnEntryError):
        return None
    return sighting if sighting is not None and sighting.attempt == attempt else None


def _path(folder: Path, attempt: str) -> Path:
    return folder / FOLDER / f"{attempt[:32]}.head"
