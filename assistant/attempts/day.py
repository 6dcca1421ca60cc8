"""A day that records are held against: by this machine's book of heads, or by a signed head of the day."""

from dataclasses import dataclass, replace
from datetime import date
from pathlib import Path

from assistant.attempts.proof import Examined, Here
from assistant.errors import RecordError, UsageError
from assistant.record.chain import Problem
from assistant.record.day_head import LARGEST_DAY, DayHead, NotADayError, read_day
from assistant.record.heads import Seen, stands
from assistant.record.short_head import short_head
from assistant.record.verify import Verdict, open_record
from assistant.text import quoted, shown


@dataclass(frozen=True)
class Day:
    """A day that records are held against.

    Attributes:
        head: of the day.
        by: who signed it, in a sentence; empty where it is what this machine's book says.
        holds: it may be relied on.
    """

    head: DayHead
    by: str
    holds: bool

    def against(self, found: Examined, verdict: Verdict) -> Verdict:
        """The verdict, or a worse one where the record is not what it was on that day."""
        digests = [str(entry["digest"]) for entry in found.reading.entries]
        standing = stands(digests, [one for one in self.head.attempts if one.attempt == digests[0]])
        if not standing.is_denied:
            return verdict
        problem = Problem.OLDER if standing.seen is Seen.OLDER else Problem.OTHER
        return replace(verdict, ok=False, problem=problem, line=None, why=standing.why)


def day_at(given: str, known: Here) -> Day:
    """The day that a date means, from the book; or that of the file of a signed head.

    Args:
        given: a date or a path.
        known: what this machine knows.

    Raises:
        RecordError: the file is not the head of a day, or was changed.
        UsageError: it is neither a date nor a file.
    """
    path = Path(given)
    if not path.is_file():
        return Day(known.book.day(day_of(given)), "", holds=True)
    try:
        with open_record(path) as stream:
            read = read_day(stream.read(LARGEST_DAY))
    except NotADayError as cause:
        raise RecordError(f"{shown(path)} is not the head of a day: {cause}.", "Get it again.") from None
    (signer,) = known.instructors.signers([read.signature], lambda _: "")
    right = "" if signer.decides else f" {signer.right}. {signer.why}"
    by = f"Head of the day {short_head(read.digest)}, signed by {shown(signer.title or 'an unknown key')}.{right}"
    return Day(read.head, by, holds=signer.decides)


def day_of(text: str) -> date:
    """A date as it is written.

    Raises:
        UsageError: it is none.
    """
    try:
        return date.fromisoformat(text)
    except ValueError:
        raise UsageError(f"{quoted(text)} is not a day.", "Write it like 2026-11-25.") from None
