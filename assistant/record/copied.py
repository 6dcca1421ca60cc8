"""A copy of a record that another machine writes: each line is proven before it is on disk here, none is changed."""

import os
from collections.abc import Iterable, Mapping
from contextlib import suppress
from pathlib import Path
from typing import TYPE_CHECKING

from assistant.errors import RecordError
from assistant.record.chain import BrokenError, Chain, Problem, follow
from assistant.record.disk import OWNER_ONLY, fsync_folder, is_there, lock_file, refused, take_lock, write_all
from assistant.record.entry import Entry
from assistant.record.heads import noteworthy
from assistant.record.verify import open_record, sentence
from assistant.text import shown

if TYPE_CHECKING:
    from assistant.record.head_book import HeadBook

LARGEST_COPY = 64 << 20
"""Bytes of a copy; a long attempt has a hundredth of it."""


class CopiedRecord:
    """The copy on this machine's disk.

    It is locked only while lines are added, so that it can be signed once it is sealed.

    Args:
        path: the copy.
        attempt: digest of the record's first entry.
        book: where its heads are noted, as for a record of this machine.

    Raises:
        RecordError: there is a file of that name, and it is no copy of that record.
    """

    def __init__(self, path: Path, attempt: str, book: "HeadBook | None" = None) -> None:
        self.path = path
        self._attempt = attempt
        self._book = book
        self._chain = Chain()
        self._size = 0
        self._is_stale = False
        self.entries: list[Mapping[str, object]] = []
        if path.exists():
            self._read()

    def add(self, lines: Iterable[bytes]) -> None:
        """Put lines on disk that follow the ones before; those before one that does not follow stay.

        Args:
            lines: each without its line feed.

        Raises:
            RecordError: a line is no entry of this record, or does not follow; or the disk refuses.
        """
        lock = take_lock(self.path)
        try:
            is_new = not self.path.exists()
            flags = os.O_WRONLY | os.O_APPEND | os.O_CREAT | getattr(os, "O_BINARY", 0) | getattr(os, "O_CLOEXEC", 0)
            descriptor = os.open(self.path, flags, OWNER_ONLY)
            try:
                lock_file(self.path, descriptor)
                self._take_up(descriptor)
                self._is_stale = True  # until all of it went well: then nothing is left of what did not
                try:
                    self._write(descriptor, lines)
                    self._is_stale = False
                finally:
                    os.fsync(descriptor)
                    if is_new:
                        self._see_to_its_name()
            finally:
                os.close(descriptor)
        except OSError as cause:
            raise refused(self.path, cause) from cause
        finally:
            with suppress(OSError):
                lock.release(force=True)

    def _see_to_its_name(self) -> None:
        """Put a new file's name on disk; one without any entry would be taken for a record that lost everything."""
        if not self.entries:
            self.path.unlink()
        fsync_folder(self.path)

    def _take_up(self, descriptor: int) -> None:
        """See to it that the file is what it was after the last line: what half a write left behind is cut off.

        Raises:
            RecordError: it is another file by now, or something else has written into it.
        """
        if self._is_stale or os.fstat(descriptor).st_size != self._size:
            had = self._size
            self._read()
            if self._size < had:
                raise RecordError(f"{shown(self.path)} was cut or replaced.", "Keep it as it is, and look who did it.")
            if self._chain.lacks_line_feed:
                write_all(descriptor, b"\n")
                self._chain.lacks_line_feed = False
            os.truncate(descriptor, self._size)  # what is behind is no whole entry: it was never acknowledged
        if not is_there(self.path, descriptor):
            raise RecordError(f"{shown(self.path)} was moved or replaced.", "Find the one that was there.")

    def _write(self, descriptor: int, lines: Iterable[bytes]) -> None:
        for line in lines:
            entry = self._proven(line + b"\n")
            if self._size + len(entry.line) > LARGEST_COPY:
                raise RecordError(f"{shown(self.path)} is too long for an attempt.", "Nothing more is taken for it.")
            write_all(descriptor, entry.line)
            self._size += len(entry.line)
            self.entries.append(entry.fields)
            if self._book is not None and noteworthy(entry.fields):
                os.fsync(descriptor)
                self._book.note_entry(self.path, self._attempt, entry.fields)

    def _proven(self, line: bytes) -> Entry:
        try:
            entry = self._chain.take(line)
        except BrokenError as broken:
            raise RecordError(f"A line does not follow: {broken.problem}. {broken.why}") from None
        if entry.sequence == 1 and entry.digest != self._attempt:
            self._chain = Chain()
            raise RecordError("The first line belongs to another attempt.")
        return entry

    def _read(self) -> None:
        """Take in what is there; a torn tail is left out.

        Raises:
            RecordError: it is no copy of that record.
        """
        self._chain, self.entries, self._size = Chain(), [], 0
        try:
            with open_record(self.path) as stream:
                for entry in follow(self._chain, stream):
                    self.entries.append(entry.fields)
                    self._size += len(entry.line)
        except BrokenError as broken:
            # Of a write that was cut short at the very beginning nothing is left that could be lost.
            if broken.problem is not Problem.TORN_TAIL and self.path.stat().st_size:
                raise RecordError(sentence(self.path, broken), "Keep it as it is.") from None
        if self.entries and self.entries[0]["digest"] != self._attempt:
            raise RecordError(f"{shown(self.path)} is the record of another attempt.")
