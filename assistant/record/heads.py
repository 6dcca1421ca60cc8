"""Heads that were seen: what a book remembers of a record, and how a record stands to it. Pure.

A chain cannot show that its end was cut off, nor that its last entries were written anew. Whoever remembers where it
ended can: a head covers everything before it (as a tree head does in RFC 9162, section 4.10, in spirit).
"""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from enum import StrEnum

from assistant.record.entry import ERASED, GENESIS
from assistant.text import shown

LONGEST_NAME = 300
"""Characters of a record's file name that are remembered; file systems take 255."""


class Seen(StrEnum):
    """How a record stands to what was seen of it here."""

    AS_LAST_SEEN = "as last seen here"
    LONGER = "longer than last seen here"
    OLDER = "older than last seen here"
    OTHER = "other than last seen here"
    NEVER = "never seen here"


@dataclass(frozen=True)
class Sighting:
    """One line of a book: a record had this many entries, and this was the digest of the last one.

    Attributes:
        kind: what had happened: one of `noteworthy`, or "stopped".
        at: UTC, ISO 8601.
        record: name of the record's file, without its folder.
        attempt: digest of the record's first entry. It pins the attempt (who, when, by which papers), so it tells
            one attempt from every other wherever its file lies and whatever it is called.
        count, head: of the record then.
    """

    kind: str
    at: str
    record: str
    attempt: str
    count: int
    head: str

    def body(self) -> dict[str, object]:
        """The sighting as the body of a book's entry."""
        return {
            "kind": self.kind,
            "at": self.at,
            "record": self.record[:LONGEST_NAME],
            "attempt": self.attempt,
            "entries": self.count,
            "head": self.head,
        }


@dataclass(frozen=True)
class Standing:
    """How a record stands to what was seen of it.

    Attributes:
        seen: in one phrase.
        why: in one or two sentences; empty where there is nothing to add.
        last_seen: the sighting of most entries; None where there is none.
        first_had: how many entries it had when it was first seen; 1 where it was begun here, 0 where it never was.
    """

    seen: Seen
    why: str = ""
    last_seen: Sighting | None = None
    first_had: int = 0

    @property
    def is_denied(self) -> bool:
        """The record is not what was seen: entries are missing, or others stand in their place."""
        return self.seen in (Seen.OLDER, Seen.OTHER)


def sighting_of(fields: Mapping[str, object]) -> Sighting | None:
    """The sighting that a book's entry tells; None where it tells something else."""
    texts = [fields.get(name) for name in ("kind", "at", "record", "attempt", "head")]
    count = fields.get("entries")
    if type(count) is not int or count < 1 or not all(type(text) is str for text in texts):
        return None
    kind, at, record, attempt, head = map(str, texts)
    return Sighting(kind, at, record, attempt, count, head)


def noteworthy(entry: Mapping[str, object]) -> str:
    """What a book calls this entry of a record; empty where it is not worth a line."""
    if entry.get("previous") == GENESIS:
        return "opened"
    if "seal" in entry:
        return "sealed"
    if "signature" in entry:
        return "signed"
    kind = entry.get("kind")
    return str(kind) if kind in ("resumed", ERASED) else ""


def stands(digests: Sequence[str], sightings: Iterable[Sighting]) -> Standing:
    """How a record stands to what was seen of its attempt.

    Args:
        digests: of its entries, oldest first.
        sightings: of the attempt, in any order.
    """
    known = list(sightings)
    if not known:
        return Standing(Seen.NEVER)
    last = max(known, key=lambda one: (one.count, one.at))
    first_had = min(one.count for one in known)
    had = len(digests)
    seen_then = f"when it was last seen here, {_when(last)}"
    if last.count > had:
        missing = last.count - had
        which = f"entry {last.count} is" if missing == 1 else f"entries {had + 1} to {last.count} are"
        return Standing(
            Seen.OLDER,
            f"{'1 entry is' if missing == 1 else f'{missing} entries are'} missing: it had {last.count} {seen_then}; "
            f"{which} not in it now.",
            last,
            first_had,
        )
    for one in sorted(known, key=lambda one: one.count):
        if digests[one.count - 1] != one.head:
            why = f"Entry {one.count} or one before it is not what was seen here, {_when(one)}."
            return Standing(Seen.OTHER, why, last, first_had)
    if had > last.count:
        more = had - last.count
        entries = "1 entry has" if more == 1 else f"{more} entries have"
        return Standing(Seen.LONGER, f"{entries} been added since, which this book has not seen.", last, first_had)
    return Standing(Seen.AS_LAST_SEEN, f"Last seen {_when(last)}.", last, first_had)


def _when(one: Sighting) -> str:
    return f"{shown(one.kind)} at {shown(one.at[:19].replace('T', ' '))} UTC as {shown(one.record)}"
