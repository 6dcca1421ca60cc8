"""Does a record still say what was recorded? Reads bytes, follows the chain, names the first break.

A chain alone cannot show that its last entries were cut off: the seal does, and for an unsealed record
only the head digest printed elsewhere. Hence an unsealed record never counts as whole.
"""

import os
import stat
from collections.abc import Iterator, Mapping
from contextlib import suppress
from dataclasses import dataclass
from datetime import datetime
from enum import StrEnum
from pathlib import Path
from typing import BinaryIO

from assistant.errors import RecordError
from assistant.record.entry import FORMAT, GENESIS, LONGEST_LINE, Entry, NotAnEntryError, read_line
from assistant.record.paths import shown

LARGEST_READ = 256 << 20
"""Bytes of a record that `read_entries` takes into memory; an attempt needs a thousandth of it."""

MOST_NOTES = 10
"""Remarks that a verdict carries; a hostile record could cause one an entry."""

UNWRITTEN = b"\0" * 16
"""Bytes that no entry holds: a control character in canonical JSON is always escaped."""


class Problem(StrEnum):
    """Why a record does not hold."""

    CANNOT_BE_READ = "cannot be read"
    NOT_A_RECORD = "not a record"
    EDITED = "edited"
    REORDERED = "reordered"
    REMOVED = "removed"
    INSERTED = "inserted"
    AFTER_SEAL = "after the seal"
    TORN_TAIL = "torn tail"
    TAIL_MISSING = "tail missing"
    NOT_SEALED = "not sealed"


@dataclass(frozen=True)
class Verdict:
    """What verification found.

    Attributes:
        ok: the chain is whole, sealed and, where a head was given, ends with it.
        sealed: a seal closes the chain; False as well where the chain breaks before.
        count: entries that hold, up to the first break.
        head: digest of the last entry that holds; `GENESIS` where none does.
        problem: what is wrong; None where nothing is.
        line: the line of the first broken entry, from 1; None where no line is to blame.
        why: one sentence about the problem; empty where there is none.
        notes: what is odd but breaks nothing, such as a clock set back.
    """

    ok: bool
    sealed: bool
    count: int
    head: str
    problem: Problem | None = None
    line: int | None = None
    why: str = ""
    notes: tuple[str, ...] = ()

    @property
    def intact(self) -> bool:
        """Every entry on file holds; the record may still be open."""
        return self.ok or self.problem is Problem.NOT_SEALED


class BrokenError(Exception):
    """The chain breaks here. Never leaves this room."""

    def __init__(self, problem: Problem, line: int | None, why: str) -> None:
        super().__init__(why)
        self.problem = problem
        self.line = line
        self.why = why


class Chain:
    """Follows a chain entry by entry, keeping only its head."""

    def __init__(self) -> None:
        self.count = 0
        self.head = GENESIS
        self.sealed = False
        self.notes: list[str] = []
        self._last_at = ""

    def take(self, line: bytes) -> Entry:
        """Take the next line.

        Raises:
            BrokenError: it does not follow from the lines before.
        """
        number = self.count + 1
        try:
            entry = read_line(line)
        except NotAnEntryError as cause:
            raise self._unreadable(line, str(cause)) from None
        if self.sealed:
            raise BrokenError(Problem.AFTER_SEAL, number, "It stands after the seal.")
        if entry.sequence > number:
            raise BrokenError(
                Problem.REMOVED,
                number,
                f"Entry {number} is missing: entry {entry.sequence} stands in its place.",
            )
        if entry.sequence < number:
            raise BrokenError(
                Problem.INSERTED, number, f"Entry {entry.sequence} stands here, where entry {number} belongs."
            )
        if entry.previous != self.head:
            why = f"It was not made to follow entry {self.count}: one of the two was replaced."
            raise BrokenError(Problem.EDITED, number, why if self.count else "It was not made as a first entry.")
        if number == 1 and entry.fields.get("format") != FORMAT:
            raise BrokenError(Problem.NOT_A_RECORD, 1, f"Its form is not the form {FORMAT} that is known here.")
        seal = entry.fields.get("seal")
        if seal is not None:
            if seal != {"count": self.count, "head": self.head}:
                raise BrokenError(Problem.EDITED, number, "The seal does not fit the entries before it.")
            self.sealed = True
        self._look_at_clock(entry)
        self.count = number
        self.head = entry.digest
        return entry

    def _unreadable(self, line: bytes, why: str) -> BrokenError:
        looks_like_entry = b'"previous"' in line or b'"digest"' in line or b'"sequence"' in line
        problem = Problem.EDITED if self.count or looks_like_entry else Problem.NOT_A_RECORD
        return BrokenError(problem, self.count + 1, f"{why[0].upper()}{why[1:]}.")

    def _look_at_clock(self, entry: Entry) -> None:
        at = str(entry.fields.get("at", ""))
        if at < self._last_at and len(self.notes) < MOST_NOTES:
            with suppress(ValueError, TypeError):
                back = datetime.fromisoformat(self._last_at) - datetime.fromisoformat(at)
                if back.total_seconds() > 0:
                    self.notes.append(
                        f"The clock of entry {entry.sequence} is {back.total_seconds():,.0f} s behind "
                        f"that of entry {entry.sequence - 1}: the machine's clock was set back."
                    )
        self._last_at = at


def open_record(path: Path) -> BinaryIO:
    """Open a record for reading.

    Raises:
        RecordError: there is no such file, it is no ordinary file, or it may not be read.
    """
    try:
        # Without O_NONBLOCK, opening a named pipe would wait for its writer.
        descriptor = os.open(path, os.O_RDONLY | getattr(os, "O_NONBLOCK", 0) | getattr(os, "O_BINARY", 0))
        stream = open(descriptor, "rb", buffering=1 << 18)  # noqa: PTH123, SIM115 - a descriptor, not a path
    except (OSError, ValueError) as cause:
        reason = getattr(cause, "strerror", None) or str(cause)
        raise RecordError(
            f"{shown(path)} cannot be read: {reason}.", "Check the path and your permission to read it."
        ) from cause
    if not stat.S_ISREG(os.fstat(descriptor).st_mode):
        stream.close()
        raise RecordError(f"{shown(path)} is not a file that could be a record.", "Name the file of an attempt.")
    return stream


def follow(chain: Chain, stream: BinaryIO) -> Iterator[Entry]:
    """Take line after line into the chain and yield what holds.

    Memory stays bounded by `LONGEST_LINE`.

    Raises:
        BrokenError: at the first line that does not follow, at a torn tail, or where there is nothing.
    """
    while line := stream.readline(LONGEST_LINE + 1):
        if len(line) <= LONGEST_LINE and not line.endswith(b"\n"):
            raise _torn(chain, line)
        try:
            entry = chain.take(line)
        except BrokenError as broken:
            # Some file systems show a block that a crash left unwritten as zeros.
            if UNWRITTEN in line and not stream.read(1):
                raise _torn(chain, line) from None
            raise _told_apart(broken, stream) from None
        yield entry
    if chain.count == 0:
        raise BrokenError(Problem.NOT_A_RECORD, None, "The file is empty.")


def _torn(chain: Chain, line: bytes) -> BrokenError:
    if chain.count == 0 and not line.startswith(b'{"'):
        return BrokenError(Problem.NOT_A_RECORD, 1, "The file does not begin with an entry.")
    return BrokenError(
        Problem.TORN_TAIL,
        chain.count + 1,
        f"The last {len(line):,} bytes are no complete entry: the writing of one was cut short.",
    )


def _told_apart(broken: BrokenError, stream: BinaryIO) -> BrokenError:
    """Tell a missing entry from one that only stands further down."""
    if broken.problem is Problem.REMOVED:
        while line := stream.readline(LONGEST_LINE + 1):
            with suppress(NotAnEntryError):
                if read_line(line).sequence == broken.line:
                    return BrokenError(
                        Problem.REORDERED,
                        broken.line,
                        f"Entry {broken.line} stands further down in the file.",
                    )
    return broken


def verify(path: Path | str, *, head: str | None = None) -> Verdict:
    """Verify one record; whatever the file holds, the answer is a verdict.

    Memory stays bounded by `LONGEST_LINE`, time grows with the file's length.

    Args:
        path: the record.
        head: the digest that the last entry must have, as printed elsewhere; shows a cut-off tail.
    """
    chain = Chain()
    try:
        with open_record(Path(path)) as stream:
            for _ in follow(chain, stream):
                pass
        _expect_end(chain, head)
    except BrokenError as broken:
        return _verdict(chain, broken)
    except RecordError as cause:
        return _verdict(chain, BrokenError(Problem.CANNOT_BE_READ, None, cause.what))
    except OSError as cause:
        reason = cause.strerror or type(cause).__name__
        return _verdict(chain, BrokenError(Problem.CANNOT_BE_READ, None, f"Reading {shown(path)} failed: {reason}."))
    return Verdict(True, True, chain.count, chain.head, notes=tuple(chain.notes))


def _expect_end(chain: Chain, head: str | None) -> None:
    if head is not None and chain.head != head.lower():
        raise BrokenError(Problem.TAIL_MISSING, None, f"It ends with {chain.head}, not with the head that was given.")
    if not chain.sealed:
        raise BrokenError(
            Problem.NOT_SEALED,
            None,
            "No seal closes it: the attempt goes on, was interrupted, or its end was cut off.",
        )


def _verdict(chain: Chain, broken: BrokenError) -> Verdict:
    return Verdict(
        False,
        chain.sealed,
        chain.count,
        chain.head,
        broken.problem,
        broken.line,
        broken.why,
        tuple(chain.notes),
    )


def read_entries(path: Path | str) -> tuple[Mapping[str, object], ...]:
    """The entries of a record whose chain holds; it need not be sealed.

    Raises:
        RecordError: it cannot be read, its chain is broken, or it is too large for an attempt.
    """
    path = Path(path)
    chain = Chain()
    with open_record(path) as stream:
        refuse_if_too_large(path, stream)
        try:
            return tuple(entry.fields for entry in follow(chain, stream))
        except BrokenError as broken:
            raise RecordError(sentence(path, broken), "Do not rely on it; keep the file as it is.") from broken
        except OSError as cause:
            reason = cause.strerror or type(cause).__name__
            raise RecordError(f"Reading {shown(path)} failed: {reason}.", "Copy it to another disk.") from cause


def refuse_if_too_large(path: Path, stream: BinaryIO) -> None:
    """Refuse a record that no attempt could have made before it fills the memory.

    Raises:
        RecordError: it is larger than `LARGEST_READ`.
    """
    size = os.fstat(stream.fileno()).st_size
    if size > LARGEST_READ:
        raise RecordError(
            f"{shown(path)} has {size:,} bytes; a record of an attempt has {LARGEST_READ:,} at the most.",
            "Name the file of an attempt.",
        )


def sentence(path: Path | str, broken: BrokenError | Verdict) -> str:
    """One or two sentences that name the file, the line and the problem."""
    if broken.problem is Problem.CANNOT_BE_READ:
        return broken.why
    where = shown(path) if broken.line is None else f"{shown(path)}, line {broken.line}"
    return f"{where}: {broken.problem}. {broken.why}"
