"""The book of heads: an append-only file outside the records' folder that remembers where each record ended.

It is chained as records are, and written after a record's entry is on disk, so that it is never ahead of its record:
a crash in between leaves a record longer than the book knows, which is no alarm. Whatever keeps the book or its copy
from being written is told once and harms no attempt.
"""

import os
import threading
from collections.abc import Callable, Iterable, Mapping, Sequence
from contextlib import suppress
from dataclasses import dataclass, field
from datetime import UTC, date, datetime
from pathlib import Path

from assistant.errors import RecordError
from assistant.record.chain import BrokenError, Chain
from assistant.record.day_head import DayHead, day_head
from assistant.record.disk import (
    OWNER_ONLY,
    fsync_folder,
    make_folder,
    reason_of,
    refused,
    set_aside,
    take_lock,
    write_all,
)
from assistant.record.entry import FORMAT, GENESIS, LONGEST_LINE, NotAnEntryError, link, read_line
from assistant.record.heads import Seen, Sighting, Standing, noteworthy, sighting_of, stands
from assistant.record.paths import torn_path
from assistant.record.running_head import RunningHead, running_sighting
from assistant.record.verify import open_record, refuse_if_too_large, sentence
from assistant.text import shown

FILE = "heads.jsonl"
"""Name of the book in its folder."""

MOST_COPIES = 100
"""Books that are read from the place for copies; a lab's machines may share one."""

_KIND = "book opened"
_LOCK_WAIT_S = 5.0
"""Seconds to wait for another attempt's line, which takes milliseconds."""
_COPY_WAIT_S = 2.0
"""Seconds to wait for the place of the copy: a network folder that is gone may never answer."""
_TAIL = 1 << 16
"""Bytes at the end of a book that are read to go on with it; its lines are far shorter."""


@dataclass(frozen=True)
class Pages:
    """What was read of one book.

    Attributes:
        digests: of its entries up to the first break.
        sightings: by attempt. Those behind a break count as well, so that damage makes nothing forgotten that can
            still be read: a sighting only ever denies.
        problem: where the book does not hold, in one or two sentences; empty where it does.
    """

    digests: Sequence[str] = ()
    sightings: Mapping[str, Sequence[Sighting]] = field(default_factory=dict)
    problem: str = ""


class HeadBook:
    """The book of this machine, and its copy.

    Args:
        folder: where the book is; made when it is first written.
        copies: where its copy goes, a folder that is there or not (a network folder, a stick); None for none.
        tell: takes a sentence for whoever is at the machine.
    """

    def __init__(self, folder: Path, copies: Path | None, tell: Callable[[str], None]) -> None:
        self.path = folder / FILE
        self._copies = copies
        self._tell = tell
        self._told: set[str] = set()
        self._copies_answer = True
        self._read: tuple[tuple[Pages, ...], tuple[str, ...]] | None = None

    # Writing.

    def note_entry(self, record: Path, attempt: str, entry: Mapping[str, object]) -> bool:
        """Note a record's newest entry, one that is worth a line; whether it could be noted.

        Args:
            record: the record's file.
            attempt: digest of its first entry.
            entry: on disk already.
        """
        return self.note(noteworthy(entry), record, attempt, int(str(entry["sequence"])), str(entry["digest"]))

    def running(self, record: Path, attempt: str) -> RunningHead:
        """Where an attempt's record ends, remembered from entry to entry until the next line."""
        return RunningHead(self.path.parent, record, attempt)

    def note(self, kind: str, record: Path, attempt: str, count: int, head: str) -> bool:
        """Note where a record ends; what keeps it from being written is told and harms nothing. Whether it was."""
        now = datetime.now(UTC).isoformat(timespec="microseconds")
        self._read = None
        try:
            size = self._append(Sighting(kind, now, shown(record.name), attempt, count, head).body(), now)
        except RecordError as error:
            self._tell_once(f"The book of heads does not know of this record's end: {error}")
            return False
        if self._copies is not None and self._copies_answer:
            self._copy(self._copies, size)
        return True

    def _append(self, body: Mapping[str, object], now: str) -> int:
        """Put one entry on disk, behind a first one in a new book; return how many bytes of the book are on disk.

        Raises:
            RecordError: another process holds the book for too long, it cannot be continued, or the disk refuses.
        """
        path = self.path
        try:
            make_folder(path.parent)
        except OSError as cause:
            raise refused(path, cause) from cause
        lock = take_lock(path, _LOCK_WAIT_S)
        try:
            flags = os.O_RDWR | os.O_APPEND | os.O_CREAT | getattr(os, "O_BINARY", 0) | getattr(os, "O_CLOEXEC", 0)
            descriptor = os.open(path, flags, OWNER_ONLY)
            try:
                self._go_on(descriptor, body, now)
                return os.fstat(descriptor).st_size
            finally:
                os.close(descriptor)
        except OSError as cause:
            raise refused(path, cause) from cause
        finally:
            lock.release(force=True)

    def _go_on(self, descriptor: int, body: Mapping[str, object], now: str) -> None:
        last, tail = _last_line(self.path, descriptor)
        bodies = [body]
        if tail:
            aside = torn_path(self.path)
            set_aside(self.path, descriptor, tail, aside)
            bodies.insert(0, {"kind": "recovered", "at": now, "bytes": len(tail), "aside": aside.name})
        sequence, head = 0, GENESIS
        if last:
            try:
                entry = read_line(last)
            except NotAnEntryError as cause:
                raise RecordError(
                    f"{shown(self.path)} is not a book that could be continued: {cause}.",
                    "Keep it, under another name; then a new one is begun.",
                ) from None
            sequence, head = entry.sequence, entry.digest
        else:
            bodies.insert(0, {"kind": _KIND, "at": now, "format": FORMAT})
        lines = b""
        for one in bodies:
            sequence += 1
            entry = link(one, head, sequence)
            head = entry.digest
            lines += entry.line
        write_all(descriptor, lines)
        os.fsync(descriptor)
        if not last:
            fsync_folder(self.path)

    def _copy(self, folder: Path, size: int) -> None:
        """Bring the copy up to date, and wait no longer for it than a learner should."""
        problems = []

        def work() -> None:
            try:
                _copy_on(self.path, size, folder)
            except (OSError, RecordError) as cause:
                problems.append(str(cause) if isinstance(cause, RecordError) else f"{reason_of(cause)}.")

        self._copies_answer = _patiently(work)
        if not self._copies_answer:
            problems.append("its place does not answer.")
        for problem in problems:
            self._tell_once(f"The copy of the book of heads in {shown(folder)} is not up to date: {problem}")

    def _tell_once(self, text: str) -> None:
        if text not in self._told:
            self._told.add(text)
            self._tell(text)

    # Reading.

    def problems(self) -> tuple[str, ...]:
        """Where the book, or a copy in its place for copies, does not hold; empty where all do."""
        return self._pages()[1]

    def standing(self, entries: Sequence[Mapping[str, object]]) -> Standing:
        """How a record stands to what was seen of it.

        Args:
            entries: those that hold, oldest first.
        """
        if not entries:
            return Standing(Seen.NEVER)
        return self.standing_of([str(entry.get("digest")) for entry in entries])

    def seen_at(self, entries: Sequence[Mapping[str, object]], line: int) -> str:
        """When the book, or a copy, first saw this entry of a record; empty where none did.

        Args:
            entries: those that hold, oldest first.
            line: number of the entry.
        """
        digests = [str(entry.get("digest")) for entry in entries]
        times = (
            one.at
            for one in self._sightings(digests[0])
            if line <= one.count <= len(digests) and digests[one.count - 1] == one.head
        )
        return min(times, default="")

    def _sightings(self, first_digest: str) -> list[Sighting]:
        pages, _ = self._pages()
        return [one for page in pages for one in page.sightings.get(first_digest, ())]

    def standing_of(self, digests: Sequence[str]) -> Standing:
        """How a chain of entries with these digests, at least one, stands to what was seen of it."""
        running = running_sighting(self.path.parent, digests[0])
        known = self._sightings(digests[0])
        return stands(digests, [*known, running] if running is not None else known)

    def day(self, day: date) -> DayHead:
        """The head of a day, by what this book has seen.

        Args:
            day: by UTC.
        """
        return day_head(day, read_pages(self.path).sightings.values())

    def refuse_what_was_cut(self, path: Path, entries: Sequence[Mapping[str, object]]) -> None:
        """Let nothing be added to a record that is not what was last seen.

        Raises:
            RecordError: entries of it are missing, or others stand in their place.
        """
        standing = self.standing(entries)
        if standing.is_denied and standing.last_seen is not None:
            raise RecordError(
                f"{shown(path)} is {standing.seen}. {standing.why}",
                f"Keep the file; find the one of {standing.last_seen.count} entries "
                f"(it was {shown(standing.last_seen.record)}), or start a new attempt and tell the instructor.",
            )
        for problem in self.problems():
            self._tell_once(f"Caution: the book of heads does not hold. {problem}")

    def _pages(self) -> tuple[tuple[Pages, ...], tuple[str, ...]]:
        if self._read is None:
            # The copies first: while they are read, another attempt may add to the book, and then to its copy.
            copies = self._read_copies()
            own = read_pages(self.path)
            pages = (own, *copies.values())
            problems = [page.problem for page in pages if page.problem]
            beside = copies.get(_copy_name(own.digests[0])) if own.digests else None
            if beside is not None and list(beside.digests) != list(own.digests[: len(beside.digests)]):
                problems.append(f"The copy of {shown(self.path)} holds entries that the book itself does not.")
            self._read = pages, tuple(problems)
        return self._read

    def _read_copies(self) -> dict[str, Pages]:
        found: dict[str, Pages] = {}
        folder = self._copies
        if folder is None or not self._copies_answer:
            return found

        def work() -> None:
            with suppress(OSError):  # a place that is not there now knows nothing; that is told when it is written
                for path in sorted(folder.glob("heads-*.jsonl"))[:MOST_COPIES]:
                    found[path.name] = read_pages(path)

        self._copies_answer = _patiently(work)
        return dict(found)


def _patiently(work: Callable[[], None]) -> bool:
    """Do something that may never come back; whether it was done in time."""
    thread = threading.Thread(target=work, daemon=True)
    thread.start()
    thread.join(_COPY_WAIT_S)
    return not thread.is_alive()


def _last_line(path: Path, descriptor: int) -> tuple[bytes, bytes]:
    """The last complete line of a file, and what stands behind it; empty where there is none.

    Raises:
        OSError: it cannot be read.
        RecordError: its lines are too long for a book.
    """
    size = os.fstat(descriptor).st_size
    start = max(0, size - _TAIL)
    os.lseek(descriptor, start, os.SEEK_SET)
    content = b""
    while block := os.read(descriptor, _TAIL):
        content += block
    end = content.rfind(b"\n") + 1
    before = content.rfind(b"\n", 0, max(0, end - 1)) + 1
    if start and not before:
        raise RecordError(f"{shown(path)} is not a book of heads.", "Keep it, under another name.")
    return content[before:end], content[end:]


def _copy_name(first_digest: str) -> str:
    return f"heads-{first_digest[:12]}.jsonl"


def _copy_on(book: Path, on_disk: int, folder: Path) -> None:
    """Write what the copy of a book lacks.

    A copy is always the beginning of its book, byte by byte; so two attempts that copy at once write the same bytes
    to the same places.

    Args:
        book: the book.
        on_disk: how many of its bytes are on disk for good: a copy must not be ahead of it either.
        folder: where the copy goes.

    Raises:
        OSError: its place is not there, or refuses.
        RecordError: the copy is not the beginning of the book.
    """
    with book.open("rb") as stream:
        try:
            first = read_line(stream.readline(LONGEST_LINE))
        except NotAnEntryError as cause:
            raise RecordError(f"The first line of {shown(book)} does not hold: {cause}.") from None
        target = folder / _copy_name(first.digest)
        flags = os.O_RDWR | os.O_CREAT | getattr(os, "O_BINARY", 0) | getattr(os, "O_CLOEXEC", 0)
        descriptor = os.open(target, flags, OWNER_ONLY)
        try:
            size = os.fstat(descriptor).st_size
            start = max(0, size - _TAIL)
            os.lseek(descriptor, start, os.SEEK_SET)
            stream.seek(start)
            if os.read(descriptor, _TAIL) != stream.read(size - start):
                raise RecordError(f"{shown(target.name)} holds entries that the book does not.", "Keep both.")
            os.lseek(descriptor, size, os.SEEK_SET)
            write_all(descriptor, stream.read(max(0, on_disk - size)))
            os.fsync(descriptor)
        finally:
            os.close(descriptor)


def read_pages(path: Path) -> Pages:
    """What a book says, as far as it can be read; nothing where there is none."""
    try:
        with open_record(path) as stream:
            refuse_if_too_large(path, stream)
            return _followed(path, iter(lambda: stream.readline(LONGEST_LINE + 1), b""))
    except RecordError as error:
        return Pages(problem="" if isinstance(error.__cause__, FileNotFoundError) else error.what)
    except OSError as cause:
        return Pages(problem=f"Reading {shown(path)} failed: {reason_of(cause)}.")


def _followed(path: Path, lines: Iterable[bytes]) -> Pages:
    chain = Chain()
    digests: list[str] = []
    sightings: dict[str, list[Sighting]] = {}
    problem = ""
    for line in lines:
        if not line.endswith(b"\n") and len(line) <= LONGEST_LINE:
            break  # a torn tail: the next note mends it
        try:
            entry = read_line(line) if problem else chain.take(line)
        except NotAnEntryError:
            continue
        except BrokenError as broken:
            problem = sentence(path, broken)
            try:
                entry = read_line(line)
            except NotAnEntryError:
                continue
        if not problem:
            digests.append(entry.digest)
        sighting = sighting_of(entry.fields)
        if sighting is not None:
            sightings.setdefault(sighting.attempt, []).append(sighting)
    return Pages(digests, sightings, problem)
