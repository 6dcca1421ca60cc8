"""The chain that entries form: follows it line by line and names the first break. Pure.

A chain alone cannot show that its last entries were cut off: the seal does, and for an unsealed record
only a head digest printed elsewhere. Nor can it show who wrote it: signatures can, and so only signed entries
may follow the seal.
"""

import codecs
from collections.abc import Collection, Iterator, Mapping
from contextlib import suppress
from dataclasses import dataclass
from datetime import datetime
from enum import StrEnum
from typing import BinaryIO

from assistant.record.entry import (
    ERASED,
    ERASURE_FIELDS,
    ERASURE_REASONS,
    FORMAT,
    GENESIS,
    LONGEST_LINE,
    OWN_FIELDS,
    Entry,
    NotAnEntryError,
    read_line,
)

MOST_NOTES = 10
"""Remarks that a verdict carries; a hostile record could cause one an entry."""

MOST_SIGNATURES = 100
"""Signed entries that a verdict lists of those who are known, and as many of others; one key may add as many."""

SIGNED_TEXTS = ("kind", "at", "signer", "decision", "rating", "step", "verdict", "correction", "reason")
"""What a verdict repeats of a signed entry, where it is there."""

LONGEST_SIGNED_TEXT = 500
"""Characters of a signed entry's text that a verdict repeats."""

UNDO_LINE_ENDS = "sed -e '1s/^\\xEF\\xBB\\xBF//' -e 's/\\r$//' RECORD > COPY"
"""The cure for a byte order mark and for carriage returns."""

UNWRITTEN = b"\0" * 16
"""Bytes that no entry holds: a control character in canonical JSON is always escaped."""


class Problem(StrEnum):
    """Why a record does not hold."""

    CANNOT_BE_READ = "cannot be read"
    NOT_A_RECORD = "not a record"
    EDITED = "edited"
    LINE_ENDS = "line ends were changed"
    REORDERED = "reordered"
    REMOVED = "removed"
    INSERTED = "inserted"
    AFTER_SEAL = "after the seal"
    TORN_TAIL = "torn tail"
    TAIL_MISSING = "tail missing"
    NOT_SEALED = "not sealed"
    SIGNATURE_WRONG = "signature wrong"
    UNKNOWN_KEY = "signed by an unknown key"
    KEY_NOT_VALID = "signed by a key that was not valid"
    SOUND_MISSING = "sound missing"
    SOUND_DIFFERS = "sound differs"
    PINNED_FILE_DIFFERS = "pinned file differs"
    RESULT_DIFFERS = "entries and result disagree"
    OLDER = "older than last seen here"
    OTHER = "other than last seen here"


@dataclass(frozen=True)
class Signature:
    """A signed entry whose signature fits the key that it names.

    Attributes:
        line: where it stands.
        fingerprint: of its key; see `assistant.record.signing.PublicKey`.
        fields: those of the entry's `SIGNED_TEXTS` that are there, each cut to `LONGEST_SIGNED_TEXT`.
    """

    line: int
    fingerprint: str
    fields: Mapping[str, str]


class BrokenError(Exception):
    """The chain breaks here. Never leaves this room."""

    def __init__(self, problem: Problem, line: int | None, why: str) -> None:
        super().__init__(why)
        self.problem = problem
        self.line = line
        self.why = why


class Chain:
    """Follows a chain entry by entry, keeping only its head.

    Attributes:
        lacks_line_feed: the last entry is whole but for the line feed behind it.
        unlisted: signed entries that are not in `signatures`, because it is full.
        stranger: the first entry signed by another key than those that are known.

    Args:
        keys: fingerprints of the keys that are known; None takes every key for known.
    """

    def __init__(self, keys: Collection[str] | None = None) -> None:
        self._keys = keys
        self.stranger: Signature | None = None
        self.count = 0
        self.head = GENESIS
        self.sealed = False
        self.notes: list[str] = []
        self.signatures: list[Signature] = []
        self.unlisted = 0
        self._known_listed = 0
        self.lacks_line_feed = False
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
        if self.sealed and ("seal" in entry.fields or not ("signature" in entry.fields or is_erasure(entry.fields))):
            raise BrokenError(Problem.AFTER_SEAL, number, "It stands after the seal and is not signed.")
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
        if "signature" in entry.fields:
            self._check_signature(entry)
        at = entry.fields.get("at")
        if type(at) is str:
            if at < self._last_at:
                self._note_clock(entry.sequence, at)
            self._last_at = at
        self.count = number
        self.head = entry.digest
        return entry

    def _unreadable(self, line: bytes, why: str) -> BrokenError:
        looks_like_entry = b'"previous"' in line or b'"digest"' in line or b'"sequence"' in line
        problem = Problem.EDITED if self.count or looks_like_entry else Problem.NOT_A_RECORD
        return BrokenError(problem, self.count + 1, f"{why[0].upper()}{why[1:]}.")

    def _check_signature(self, entry: Entry) -> None:
        # Imported only here: most records are verified long before anybody signs them.
        from assistant.record.signing import SignatureError, check_signature

        try:
            key = check_signature(entry.fields)
        except SignatureError as cause:
            why = f"{cause}"
            raise BrokenError(Problem.SIGNATURE_WRONG, entry.sequence, f"{why[0].upper()}{why[1:]}.") from None
        texts = {
            name: text[:LONGEST_SIGNED_TEXT] for name in SIGNED_TEXTS if isinstance(text := entry.fields.get(name), str)
        }
        signature = Signature(entry.sequence, key.fingerprint, texts)
        is_known = self._keys is None or key.fingerprint in self._keys
        if not is_known:
            self.stranger = self.stranger or signature
        # Strangers can sign what they like: they must not crowd out who is known.
        listed = self._known_listed if is_known else len(self.signatures) - self._known_listed
        if listed == MOST_SIGNATURES:
            self.unlisted += 1
            return
        self._known_listed += is_known
        self.signatures.append(signature)

    def _note_clock(self, sequence: int, at: str) -> None:
        if len(self.notes) == MOST_NOTES:
            return
        with suppress(ValueError, TypeError):  # times that are no times are not this room's business
            back = datetime.fromisoformat(self._last_at) - datetime.fromisoformat(at)
            if back.total_seconds() > 0:
                self.notes.append(
                    f"The clock of entry {sequence} is {back.total_seconds():,.0f} s behind that of "
                    f"entry {sequence - 1}: the clock was set back in between."
                )


def is_erasure(fields: Mapping[str, object]) -> bool:
    """The entry says that sound was erased, and nothing else."""
    return (
        fields.get("kind") == ERASED
        and fields.get("reason") in ERASURE_REASONS
        and type(fields.get("files")) is int
        and fields.keys() <= ERASURE_FIELDS | (OWN_FIELDS - {"signature"})
    )


def follow(chain: Chain, stream: BinaryIO) -> Iterator[Entry]:
    """Take line after line into the chain and yield what holds.

    Memory stays bounded by `LONGEST_LINE`.

    Raises:
        BrokenError: at the first line that does not follow, at a torn tail, or where there is nothing.
    """
    while line := stream.readline(LONGEST_LINE + 1):
        if len(line) <= LONGEST_LINE and not line.endswith(b"\n"):
            if not _is_whole(line):
                raise _torn(chain, line)
            line += b"\n"
            chain.lacks_line_feed = True
            chain.notes.append("The line feed behind the last entry is missing; the entry itself is whole.")
        try:
            entry = chain.take(line)
        except BrokenError as broken:
            # Some file systems show a block that a crash left unwritten as zeros.
            if UNWRITTEN in line and not stream.read(1):
                raise _torn(chain, line) from None
            raise _told_apart(broken, line, stream) from None
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


def _is_whole(line: bytes) -> bool:
    """Nothing but its line feed is missing."""
    try:
        read_line(line + b"\n")
    except NotAnEntryError:
        return False
    return True


def _told_apart(broken: BrokenError, line: bytes, stream: BinaryIO) -> BrokenError:
    """Tell a missing entry from one that only stands further down, and an edit from changed line ends."""
    bare = line.removeprefix(codecs.BOM_UTF8).removesuffix(b"\r\n").removesuffix(b"\n")
    if bare + b"\n" != line and _is_whole(bare):
        return BrokenError(
            Problem.LINE_ENDS,
            broken.line,
            "Something that copied this file put a mark before its first line or a carriage return behind its lines; "
            f"this entry itself is whole. Undo that in a copy and verify the copy: {UNDO_LINE_ENDS}.",
        )
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
