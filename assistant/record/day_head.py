"""The head of a day: which attempts began on it, in their order, and where each ended. Pure.

Whoever keeps it, signed or on paper, can tell later that a record of that day is missing, was cut or was replaced. A
day's head is one entry in the form of a record's; its digest covers the list, its signature is checked as theirs is.
"""

from collections.abc import Callable, Collection, Iterable, Mapping, Sequence
from dataclasses import dataclass
from datetime import date

from assistant.record.chain import Signature
from assistant.record.entry import FORMAT, GENESIS, LONGEST_LINE, Entry, NotAnEntryError, link, read_line
from assistant.record.heads import Sighting, sighting_of
from assistant.record.short_head import short_head
from assistant.text import shown

KIND = "head of a day"
LARGEST_DAY = LONGEST_LINE
"""Bytes of the file of a day: some three thousand attempts."""
_OPENED = "opened"


@dataclass(frozen=True)
class DayHead:
    """The attempts of a day.

    Attributes:
        day: by UTC.
        attempts: the last sighting of each attempt that began on it, in the order in which they began; the number of an
            attempt is its place, from 1.
    """

    day: date
    attempts: tuple[Sighting, ...]

    def body(self, at: str) -> dict[str, object]:
        """The body of the entry.

        Args:
            at: when it is made, UTC in ISO 8601.
        """
        return {
            "kind": KIND,
            "format": FORMAT,
            "at": at,
            "day": self.day.isoformat(),
            "attempts": [one.body() for one in self.attempts],
        }

    def missing(self, digests: Collection[str]) -> tuple[int, ...]:
        """Numbers of the attempts of which no record is there.

        Args:
            digests: of the first entries of all records that are there.
        """
        return tuple(number for number, one in enumerate(self.attempts, 1) if one.attempt not in digests)

    def whole_told(self) -> str:
        """That nothing is missing, in a sentence."""
        return f"Whole: all {len(self.attempts)} attempts of {self.day.isoformat()} are there."

    def lines(self) -> Iterable[str]:
        """The list for people, a line an attempt."""
        yield f"Attempts that began on {self.day.isoformat()} (UTC): {len(self.attempts)}."
        for number, one in enumerate(self.attempts, 1):
            entries = "1 entry" if one.count == 1 else f"{one.count} entries"
            yield f"{number:>4}  {shown(one.record)}: {entries}, {shown(one.kind)}. Short head {short_head(one.head)}"


def day_head(day: date, sightings: Iterable[Sequence[Sighting]]) -> DayHead:
    """The head of a day, by what a book has seen.

    Args:
        day: by UTC.
        sightings: of each attempt, in any order.
    """
    began = []
    for known in sightings:
        opened = min((one for one in known if one.kind == _OPENED), key=lambda one: one.at, default=None)
        if opened is not None and opened.at.startswith(day.isoformat()):
            began.append((opened.at, max(known, key=lambda one: (one.count, one.at))))
    return DayHead(day, tuple(last for _, last in sorted(began, key=lambda pair: pair[0])))


def entry_of(head: DayHead, at: str, key: str, sign: Callable[[bytes], str]) -> Entry:
    """The signed entry of a day's head.

    Args:
        head: of the day.
        at: when it is made, UTC in ISO 8601.
        key: the signer's public key in base64.
        sign: gives the signature of these bytes.
    """
    return link({**head.body(at), "key": key}, GENESIS, 1, sign)


@dataclass(frozen=True)
class SignedDay:
    """A day's head as it was read back.

    Attributes:
        head: of the day.
        signature: who signed it.
        digest: of the entry.
    """

    head: DayHead
    signature: Signature
    digest: str


class NotADayError(ValueError):
    """Bytes that are no signed head of a day; the text says why."""


def read_day(content: bytes) -> SignedDay:
    """Read a signed head of a day.

    Raises:
        NotADayError: it is none, or was changed.
    """
    # Only here: whoever makes a list of a day signs nothing yet.
    from assistant.record.signing import SignatureError, check_signature

    try:
        entry = read_line(content)
        key = check_signature(entry.fields)
        day = date.fromisoformat(str(entry.fields.get("day")))
    except (NotAnEntryError, SignatureError, ValueError) as cause:
        raise NotADayError(str(cause)) from None
    told = entry.fields.get("attempts")
    found = (
        [sighting_of(one) if isinstance(one, Mapping) else None for one in told] if isinstance(told, list) else [None]
    )
    known = tuple(one for one in found if one is not None)
    if entry.fields.get("kind") != KIND or len(known) != len(found) or entry.previous != GENESIS:
        raise NotADayError("it is not the head of a day")
    texts = {"at": str(entry.fields.get("at", "")), "kind": KIND}
    return SignedDay(DayHead(day, known), Signature(1, key.fingerprint, texts), entry.digest)


def missing_told(head: DayHead, missing: Sequence[int]) -> str:
    """That attempts are missing, in a sentence; empty where none is."""
    if not missing:
        return ""
    numbers = [str(number) for number in missing]
    which = numbers[0] if len(numbers) == 1 else f"{', '.join(numbers[:-1])} and {numbers[-1]}"
    one = len(numbers) == 1
    return f"Not whole: attempt{'' if one else 's'} {which} of {head.day.isoformat()} {'is' if one else 'are'} missing."
