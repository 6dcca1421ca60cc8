"""The record on disk: one writer, append only, nothing acknowledged before it is on the disk.

"On disk" has one meaning: written, flushed and fsynced. A write or fsync that fails ends the record for
this process: after a failed fsync a system may drop the unwritten pages and report the next fsync as good,
so trying again would acknowledge what is lost (fsync(2); PostgreSQL changed to the same rule in 2018/2019,
from memory).
"""

import errno
import os
from collections.abc import Callable, Mapping
from contextlib import suppress
from datetime import UTC, datetime
from pathlib import Path
from types import TracebackType
from typing import TYPE_CHECKING, BinaryIO, Self

from filelock import FileLock

from assistant.errors import RecordError
from assistant.record.chain import MOST_SIGNATURES, BrokenError, Chain, Problem, follow, is_erasure
from assistant.record.disk import (
    OWNER_ONLY,
    exists,
    fsync_folder,
    is_there,
    lock_file,
    reason_of,
    refused,
    set_aside,
    take_lock,
    ticks,
    write_all,
)
from assistant.record.entry import ERASED, FORMAT, Entry, Recorded, link
from assistant.record.heads import noteworthy
from assistant.record.paths import torn_path
from assistant.record.sound import erase_files
from assistant.record.verify import open_record, refuse_if_too_large, sentence
from assistant.text import shown

if TYPE_CHECKING:
    from assistant.record.head_book import HeadBook
    from assistant.record.running_head import RunningHead
    from assistant.record.signing import SigningKey


class RecordFile:
    """The open record of one attempt; made by `create` or `reopen`, for one thread.

    Where a book of heads is given, it remembers where the record ended when it was opened, resumed, stopped, sealed or
    signed and when its sound was erased; never before the entry is on disk.
    """

    def __init__(self, path: Path, lock: FileLock, book: "HeadBook | None" = None) -> None:
        self.path = path
        self._lock = lock
        self._book = book
        self._running: RunningHead | None = None
        self._noted = 0
        self._size = 0
        self._descriptor: int | None = None
        self._chain = Chain()
        self._entries: list[Mapping[str, object]] = []
        self._failure: str | None = None

    @classmethod
    def create(cls, path: Path | str, opening: Mapping[str, object], book: "HeadBook | None" = None) -> Self:
        """Start a record with its first entry on disk.

        Args:
            path: the file; it must not exist, its folder must.
            opening: the first entry's body: `kind`, `at`, and what it pins (digests of checklist, order,
                limits and recogniser, the program's version). `format` is added.
            book: where its heads are noted.

        Raises:
            RecordError: the file exists, another process holds it, or the disk refuses.
            TypeError: the body is no body (see `append`).
        """
        path = Path(path)
        if path.exists() or path.is_symlink():
            raise exists(path)
        if not path.parent.is_dir():  # the lock would make it, and hide a mistyped name
            raise refused(path, FileNotFoundError(errno.ENOENT, os.strerror(errno.ENOENT)))
        record = cls(path, take_lock(path), book)
        try:
            record._open(os.O_CREAT | os.O_EXCL)
            fsync_folder(path)
            record._put({**opening, "format": FORMAT})
        except BaseException:
            if record._descriptor is not None and not record._entries:
                with suppress(OSError):  # an empty file would be taken for a record that lost everything
                    path.unlink()
            record.close()
            raise
        return record

    @classmethod
    def reopen(cls, path: Path | str, *, at: str | None = None, book: "HeadBook | None" = None) -> Self:
        """Take up an interrupted record where it ends.

        A torn tail, the rest of an entry that was never acknowledged, is first copied to ``<name>.torn``,
        then cut off, and an entry of the kind `recovered` says how many bytes were set aside.

        Args:
            path: the record.
            at: UTC time in ISO 8601 for the entry `recovered`; this machine's clock if None.
            book: where its heads are noted.

        Raises:
            RecordError: there is none, another process holds it, an entry before the end is damaged (the
                line is named), it is sealed, it is not what the book has last seen, or the disk refuses.
        """
        path = Path(path)
        open_record(path).close()  # a wrong path leaves no lock file behind
        record = cls(path, take_lock(path), book)
        try:
            tail = record._read()
            record._refuse_what_was_cut()
            if record.sealed:
                raise RecordError(
                    f"{shown(path)} is sealed: its attempt is over.",
                    "Start a new attempt, or ask for its report.",
                )
            aside = record._mend(tail)
            if aside:
                now = at or datetime.now(UTC).isoformat(timespec="microseconds")
                record._put({"kind": "recovered", "at": now, **aside})
        except BaseException:
            record.close()
            raise
        return record

    @classmethod
    def add_signed(
        cls, path: Path | str, body: Mapping[str, object], key: "SigningKey", book: "HeadBook | None" = None
    ) -> Recorded:
        """Add a signed entry behind the seal: a sign-off, a correction, a withdrawal.

        Args:
            path: a sealed record.
            body: as for `append`; `key` is added. Where a crash tore an earlier signed entry, `bytes` and
                `aside` tell what was set aside.
            key: the signer's.
            book: where its heads are noted.

        Raises:
            RecordError: the record does not hold or is not sealed, it is not what the book has last seen, another
                process holds it, or the disk refuses.
            TypeError: the body is no body, or brings a seal or a key of its own.
        """
        if not {"seal", "key"}.isdisjoint(body):
            raise TypeError("a signed entry brings no seal, and its key is added")
        path = Path(path)
        open_record(path).close()
        with cls(path, take_lock(path), book) as record:
            tail = record._read()
            record._refuse_what_was_cut()
            if not record.sealed:
                raise RecordError(
                    f"{shown(path)} is not sealed: its attempt is not over.",
                    "Finish the attempt first, or close it as not completed: checkoff sign-off --close.",
                )
            own = sum("signature" in entry and entry.get("key") == key.public.text for entry in record._entries)
            if own >= MOST_SIGNATURES:
                raise RecordError(
                    f"{shown(path)} holds {MOST_SIGNATURES} entries signed by this key already.",
                    "Nothing can be added with it.",
                )
            aside = record._mend(tail)
            return record._put({**body, **aside, "key": key.public.text}, key.sign)

    @classmethod
    def erase_sound(cls, path: Path | str, reason: str, book: "HeadBook | None" = None) -> int:
        """Erase the sound beside a record, sealed or not, and say so in it; return how many files there were.

        First go the files, for an entry that says so must be true; where a crash keeps the entry from being
        written, erasing again writes it.

        Args:
            path: the record.
            reason: one of `ERASURE_REASONS`.
            book: where its heads are noted. Whether the record is what it has last seen is not asked here: a
                learner's wish does not wait for that.

        Raises:
            RecordError: the record does not hold, another process holds it, or the disk refuses.
        """
        path = Path(path)
        open_record(path).close()
        with cls(path, take_lock(path), book) as record:
            tail = record._read()
            now = datetime.now(UTC).isoformat(timespec="microseconds")
            aside = record._mend(tail)
            files = erase_files(path)
            record._put({"kind": ERASED, "at": now, "files": files, "reason": reason, **aside})
            return files

    @property
    def entries(self) -> tuple[Mapping[str, object], ...]:
        """Every entry on disk, oldest first; not to be changed."""
        return tuple(self._entries)

    @property
    def head(self) -> str:
        """Digest of the last entry on disk."""
        return self._chain.head

    @property
    def sealed(self) -> bool:
        """The attempt is over: only signed entries can follow."""
        return self._chain.sealed

    def append(self, body: Mapping[str, object]) -> Recorded:
        """Put one entry on disk; when this returns, it is there.

        Args:
            body: what happened, with the texts `kind` and `at` (UTC, ISO 8601). `ticks`, the machine's
                monotonic clock in seconds as decimal text, is added where it is not given.

        Raises:
            RecordError: the disk refused, now or at an earlier entry; the record is sealed or closed; or
                the entry is too long or no Unicode (then the record can go on).
            TypeError: the body is no body: a bug of the caller.
        """
        if "seal" in body:
            raise TypeError("a record is sealed by seal()")
        return self._put(body)

    def seal(self, outcome: Mapping[str, object]) -> Recorded:
        """Close the record with an entry that counts the entries and names their head.

        Args:
            outcome: the last entry's body, as for `append`; `kind` is "sealed" where it is not given.

        Raises:
            RecordError, TypeError: as for `append`.
        """
        if "seal" in outcome:
            raise TypeError("the record counts for itself")
        seal = {"count": self._chain.count, "head": self._chain.head}
        return self._put({"kind": "sealed", **outcome, "seal": seal})

    def close(self) -> None:
        """Give the file and its lock back; harmless when done twice."""
        if self._descriptor is not None:
            if self._book is not None and self._chain.count > self._noted and not self.sealed:
                self._noted_in(self._book.note("stopped", self.path, self._attempt, self._chain.count, self.head))
            if self._running is not None:
                self._running.close()
            with suppress(OSError):  # every entry was fsynced: closing has nothing left to lose
                os.close(self._descriptor)
            self._descriptor = None
        with suppress(OSError):
            self._lock.release(force=True)

    def __enter__(self) -> Self:
        return self

    def __exit__(
        self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None
    ) -> None:
        self.close()

    @property
    def _attempt(self) -> str:
        return str(self._entries[0]["digest"])

    def _refuse_what_was_cut(self) -> None:
        if self._book is not None:
            self._book.refuse_what_was_cut(self.path, self._entries)

    def _open(self, flags: int) -> None:
        flags |= os.O_WRONLY | os.O_APPEND | getattr(os, "O_BINARY", 0) | getattr(os, "O_CLOEXEC", 0)
        try:
            self._descriptor = os.open(self.path, flags, OWNER_ONLY)
        except FileExistsError as cause:
            raise exists(self.path) from cause
        except OSError as cause:
            raise refused(self.path, cause) from cause
        lock_file(self.path, self._descriptor)

    def _read(self) -> bytes:
        """Take in what the file holds, once it is locked; return the torn tail."""
        self._open(0)
        with open_record(self.path) as stream:
            return self._replay(stream)

    def _replay(self, stream: BinaryIO) -> bytes:
        """Take in every complete entry; return the torn tail behind the last one."""
        refuse_if_too_large(self.path, stream)
        good = 0
        try:
            for entry in follow(self._chain, stream):
                self._entries.append(entry.fields)
                good += len(entry.line)
        except BrokenError as broken:
            if broken.problem is not Problem.TORN_TAIL:
                raise RecordError(
                    f"{sentence(self.path, broken)} Nothing can be added to it.",
                    "Keep the file as it is and show it to the instructor; start a new attempt if need be.",
                ) from broken
        except OSError as cause:
            raise RecordError(
                f"Reading {shown(self.path)} failed: {reason_of(cause)}.", "Copy it to another disk."
            ) from cause
        if not self._entries:
            raise RecordError(
                f"{shown(self.path)} holds no complete entry, so nothing was recorded in it.",
                "Start a new attempt.",
            )
        self._noted = self._chain.count  # whoever only looks has stopped nothing
        stream.seek(good - self._chain.lacks_line_feed)
        tail = stream.read()
        self._size = stream.tell()
        return tail

    def _mend(self, tail: bytes) -> dict[str, object]:
        """Make the file fit to be continued: end a whole last line, move a torn tail to the side file.

        Returns:
            What the next entry has to tell of what was set aside, if anything.
        """
        if self._chain.lacks_line_feed:
            self._write(b"\n")
            self._chain.lacks_line_feed = False
        told = sum(count for entry in self._entries if "aside" in entry and type(count := entry.get("bytes")) is int)
        aside = torn_path(self.path)
        try:
            if tail:
                set_aside(self.path, self._live(), tail, aside)
                self._size -= len(tail)
            # A crash after the cut may have kept the entry about it from being written: it is told now.
            untold = max(len(tail), (aside.stat().st_size if aside.exists() else 0) - told)
        except OSError as cause:
            raise refused(self.path, cause) from cause
        return {"bytes": untold, "aside": aside.name} if untold > 0 else {}

    def _live(self) -> int:
        if self._failure is not None:
            raise RecordError(
                f"{self._failure} Nothing more can be recorded in this attempt.",
                "Stop, see to the disk, then resume the attempt.",
            )
        if self._descriptor is None:
            raise RecordError(f"{shown(self.path)} is closed.", "Resume the attempt to go on recording.")
        return self._descriptor

    def _put(self, body: Mapping[str, object], sign: Callable[[bytes], str] | None = None) -> Recorded:
        self._live()
        if self.sealed and sign is None and not is_erasure(body):
            raise RecordError(f"{shown(self.path)} is sealed: nothing can be added.", "Start a new attempt.")
        for name in ("kind", "at"):
            if not isinstance(body.get(name), str):
                raise TypeError(f"an entry needs the text {name!r}")
        entry = link({"ticks": ticks(), **body}, self._chain.head, self._chain.count + 1, sign)
        self._write(entry.line)
        self._accept(entry)
        if self._book is not None:
            self._note(self._book, entry)
        return Recorded(entry.sequence, entry.digest)

    def _note(self, book: "HeadBook", entry: Entry) -> None:
        """Remember where the record ends now: worth a line of the book, or only until the next entry."""
        if noteworthy(entry.fields):
            self._noted_in(book.note_entry(self.path, self._attempt, entry.fields))
            return
        if self._running is None:
            self._running = book.running(self.path, self._attempt)
        self._running.note(entry.sequence, entry.digest)

    def _noted_in(self, noted: bool) -> None:
        """The book's own line says it now; where it could not be written, what ran beside it stays."""
        if noted and self._book is not None:
            self._noted = self._chain.count
            (self._running or self._book.running(self.path, self._attempt)).forget()
            self._running = None

    def _write(self, line: bytes) -> None:
        """Put bytes on disk, behind what this process knows to be there.

        Raises:
            RecordError: the disk refuses, or the file is not what it was after the entry before.
        """
        descriptor = self._live()
        if not is_there(self.path, descriptor):
            self._failure = f"{shown(self.path)} was moved, removed or replaced during the attempt."
            raise RecordError(
                self._failure,
                f"The attempt ends here; the {self._chain.count} entries before are in the file that was there. "
                "Find it, then resume it.",
            )
        if os.fstat(descriptor).st_size != self._size:
            self._failure = f"Something else has written into {shown(self.path)} or cut it during the attempt."
            raise RecordError(self._failure, "The attempt ends here. Keep the file and show it to the instructor.")
        try:
            write_all(descriptor, line)
            os.fsync(descriptor)
        except BaseException as cause:
            # An interrupt may leave half a line as well: what follows would be glued to it.
            self._failure = f"{shown(self.path)} could not be written: {reason_of(cause)}."
            if not isinstance(cause, OSError):
                raise
            raise RecordError(
                self._failure,
                f"The attempt ends here; its first {self._chain.count} entries are safe. "
                "See to the disk, then resume it."
                if self._chain.count
                else "Nothing was recorded. See to the disk, then start again.",
            ) from cause
        self._size += len(line)

    def _accept(self, entry: Entry) -> None:
        self._chain.count = entry.sequence
        self._chain.head = entry.digest
        self._chain.sealed = self._chain.sealed or "seal" in entry.fields
        self._entries.append(entry.fields)
