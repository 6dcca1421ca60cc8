"""Where the desk keeps what stations report.

A station of this machine writes its record itself: it is read from there, as far as the station says that it is on
disk. Of other stations there is a copy, which gets a line only if it is an entry and follows from the one before.
"""

import itertools
from collections.abc import Mapping
from dataclasses import dataclass, field
from pathlib import Path

from assistant.attempts.kept_papers import keep_received
from assistant.errors import RecordError
from assistant.link.addresses import write_owner_only
from assistant.link.messages import Begun, Lines
from assistant.record.chain import BrokenError, Chain
from assistant.record.copied import CopiedRecord
from assistant.record.disk import make_folder, refused
from assistant.record.entry import LONGEST_LINE, NotAnEntryError, read_line
from assistant.record.following import RecordLines
from assistant.record.head_book import HeadBook

COPIES = "copies"
"""Folder in which the desk remembers whose copy is in which file."""
_BYTES_AT_ONCE = 1 << 26


@dataclass
class _Own:
    """A record that a station of this machine writes; the part of it that was reported."""

    lines: RecordLines
    chain: Chain = field(default_factory=Chain)
    entries: list[Mapping[str, object]] = field(default_factory=list)


class KeptRecords:
    """The records that the desk reads along; implements `assistant.desk.hub.Keeping`.

    Args:
        records: folder of the records.
        remembers: folder in which the desk remembers which of them are copies.
        book: of the heads of this machine; None for none.
    """

    def __init__(self, records: Path, remembers: Path, book: HeadBook | None = None) -> None:
        self._records = records
        self._copies = remembers / COPIES
        self._book = book
        self._kept: dict[str, _Own | CopiedRecord] = {}
        self._papers: dict[str, Begun] = {}

    def begun(self, begun: Begun, *, here: bool) -> int:
        """Get ready for a record; return how many of its entries are known and on this machine's disk.

        Args:
            begun: what the station says of it.
            here: the station is one of this machine.

        Raises:
            RecordError: it is the record of another station, or the copy cannot be used.
        """
        self._papers[begun.attempt] = begun
        kept = self._kept.get(begun.attempt)
        if kept is None:
            kept = self._kept[begun.attempt] = self._found(begun, here=here)
        return len(kept.entries)

    def lines(self, lines: Lines) -> int:
        """Put what is new on disk; return how many entries are known now.

        Raises:
            RecordError: a line is no entry, or does not follow from the one before.
        """
        kept = self._kept[lines.attempt]
        have = len(kept.entries)
        last = lines.first - 1 + len(lines.lines)
        if lines.first > have + 1 or last <= have:
            self._compare(kept, lines, have)
            return have
        if isinstance(kept, _Own):
            self._read_on(kept, last)
        else:
            self._compare(kept, lines, have)
            new = lines.lines[have + 1 - lines.first :]
            try:
                kept.add(line.encode() for line in new)
            finally:
                self._keep_papers(lines.attempt, kept, had=have)
        return len(kept.entries)

    def bodies(self, attempt: str) -> tuple[Mapping[str, object], ...]:
        """The entries that are known, oldest first."""
        return tuple(self._kept[attempt].entries)

    def path(self, attempt: str) -> Path:
        """The record's file on this machine.

        Raises:
            KeyError: nobody reported it.
        """
        kept = self._kept[attempt]
        return kept.path if isinstance(kept, CopiedRecord) else self._records / self._papers[attempt].file

    def _found(self, begun: Begun, *, here: bool) -> _Own | CopiedRecord:
        of_station, file = self._remembered(begun.attempt)
        if file:
            if of_station != begun.station:
                raise RecordError("This attempt was reported by another station.", "Nothing more is taken for it.")
            return CopiedRecord(self._records / file, begun.attempt, self._book)
        if _first_digest(self._records / begun.file) == begun.attempt:
            if not here:
                raise RecordError("This record belongs to a station of the desk's own machine.")
            return _Own(RecordLines(self._records / begun.file))
        path = self._free(begun.file)
        try:
            make_folder(self._records)
        except OSError as cause:
            raise refused(self._records, cause) from cause
        write_owner_only(self._copies / begun.attempt, f"{path.name}\n{begun.station}\n".encode())
        return CopiedRecord(path, begun.attempt, self._book)

    def _remembered(self, attempt: str) -> tuple[str, str]:
        """Whose copy it is, and its file; both empty where it is none."""
        try:
            file, _, station = (self._copies / attempt).read_text(encoding="utf-8").partition("\n")
        except (OSError, ValueError):
            return "", ""
        return station.removesuffix("\n"), Path(file).name

    def _free(self, file: str) -> Path:
        path = self._records / file
        names = (path if count == 1 else path.with_stem(f"{path.stem}-{count}") for count in itertools.count(1))
        return next(name for name in names if not name.exists())

    def _read_on(self, kept: _Own, last: int) -> None:
        for line in kept.lines.read(len(kept.entries) + 1, last, _BYTES_AT_ONCE):
            try:
                kept.entries.append(kept.chain.take(line + b"\n").fields)
            except BrokenError as broken:
                raise RecordError(f"The record does not hold: {broken.problem}. {broken.why}") from None

    def _compare(self, kept: _Own | CopiedRecord, lines: Lines, have: int) -> None:
        """What came before comes again as it was.

        Raises:
            RecordError: it does not.
        """
        for place, line in enumerate(lines.lines, lines.first - 1):
            if place >= have:
                return
            try:
                digest = read_line(line.encode() + b"\n").digest
            except NotAnEntryError:
                digest = ""
            if digest != kept.entries[place]["digest"]:
                raise RecordError(f"Entry {place + 1} is not the one that came before.")

    def _keep_papers(self, attempt: str, kept: CopiedRecord, had: int) -> None:
        if not had and kept.entries:
            keep_received(self._records, kept.entries[0], self._papers[attempt].papers)


def _first_digest(path: Path) -> str:
    try:
        with path.open("rb") as stream:
            return read_line(stream.readline(LONGEST_LINE)).digest
    except (OSError, NotAnEntryError):
        return ""
