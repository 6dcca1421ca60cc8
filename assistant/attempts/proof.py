"""What can be said for and against a record beside its chain: the book of heads, and its attempt lived again."""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, replace
from functools import cached_property
from pathlib import Path
from typing import TYPE_CHECKING

from assistant.record.chain import Problem
from assistant.record.claim import Claim, claim
from assistant.record.head_book import HeadBook
from assistant.record.heads import Seen, Standing
from assistant.record.lived import Finding, LivedAgain
from assistant.record.signer import Signer
from assistant.record.verify import Reading, Verdict, read_record

if TYPE_CHECKING:
    from assistant.record.instructors import Instructors

_PINS = ("mode", "checklist", "checklist_digest", "order", "order_digest")
"""What a first entry must pin, as text, before it makes sense to look for papers."""


@dataclass(frozen=True)
class Proof:
    """What can be said for and against a record beside its chain.

    Attributes:
        standing: how it stands to what the book of heads has seen; None where its chain is broken.
        lived: what living it again came to; None where that was not tried: it is not sealed, or its chain is broken.
        signers: who signed it, oldest first, and whether that counts.
    """

    standing: Standing | None
    lived: LivedAgain | None
    signers: tuple[Signer, ...] = ()

    @property
    def deciding(self) -> frozenset[int]:
        """Numbers of the signed entries that count."""
        return frozenset(one.line for one in self.signers if one.decides)

    def claim(self, verdict: Verdict) -> Claim:
        """What may be claimed of the record.

        Args:
            verdict: on its chain.
        """
        return claim(verdict, self.standing, self.lived, self.signers)

    @property
    def is_contradicted(self) -> bool:
        """Entries and result disagree, by the very program that judged."""
        return self.lived is not None and self.lived.finding is Finding.DIFFERS

    def worsen(self, verdict: Verdict) -> Verdict:
        """The verdict, or a worse one where the proof speaks against the record; a broken or torn chain stays so."""
        if not verdict.intact:
            return verdict
        if self.standing is not None and self.standing.is_denied:
            problem = Problem.OLDER if self.standing.seen is Seen.OLDER else Problem.OTHER
            return replace(verdict, ok=False, problem=problem, line=None, why=self.standing.why)
        if self.lived is not None and self.is_contradicted:
            line = self.lived.differences[0].entry
            return replace(verdict, ok=False, problem=Problem.RESULT_DIFFERS, line=line, why=self.lived.why)
        if verdict.ok:
            for one in self.signers:
                if not one.decides:
                    return replace(verdict, ok=False, problem=Problem.KEY_NOT_VALID, line=one.line, why=one.why)
        return verdict


Live = Callable[[Sequence[Mapping[str, object]]], LivedAgain]
"""Lives entries again."""


def prove(
    path: Path,
    reading: Reading,
    book: HeadBook,
    live: Live | None = None,
    instructors: "Instructors | None" = None,
) -> Proof:
    """Hold a record whose chain holds against the book, and live it again if it is sealed.

    Args:
        path: the record's file.
        reading: its entries and the verdict on its chain.
        book: what was seen of it.
        live: how it is lived again; None for the papers that it pins.
        instructors: who counts as one on this machine; None where nobody signed.
    """
    entries, verdict = reading.entries, reading.verdict
    if not entries or not (verdict.intact or verdict.problem is Problem.TORN_TAIL):
        return Proof(None, None)
    lived = (live or _by_its_pins(path))(entries) if verdict.sealed else None
    signers: tuple[Signer, ...] = ()
    if instructors is not None:
        signers = instructors.signers(
            verdict.signatures, lambda line: book.seen_at(entries, line), lambda line: _latest(entries[: line - 1])
        )
    return Proof(book.standing(entries), lived, signers)


def _latest(entries: Sequence[Mapping[str, object]]) -> str:
    """The latest time of an attempt's own entries; empty where there is none. Records write all times alike, in UTC.

    What was added after the seal does not count: a stranger's far date must keep nobody from signing.
    """
    sealed = next((place for place, entry in enumerate(entries) if "seal" in entry), len(entries))
    return max((at for entry in entries[: sealed + 1] if isinstance(at := entry.get("at"), str)), default="")


class Here:
    """What this machine knows of records and of those who sign them.

    Args:
        book: the book of heads.
        keys: folder of the keys.
        roster: the school's roster; None for the one in that folder.
    """

    def __init__(self, book: HeadBook, keys: Path, roster: Path | None = None) -> None:
        self.book = book
        self._keys = keys
        self._roster = roster

    @cached_property
    def instructors(self) -> "Instructors":
        """Who counts as an instructor; read when first asked for, for most records are not signed."""
        from assistant.record.instructors import instructors_at

        return instructors_at(self._keys, self._roster, self.book.standing_of)


@dataclass(frozen=True)
class Examined:
    """A record with all that is known for and against it.

    Attributes:
        path: its file.
        reading: its entries, and the verdict on its chain.
        proof: what is known beside the chain.
    """

    path: Path
    reading: Reading
    proof: Proof

    @property
    def verdict(self) -> Verdict:
        """The verdict, the proof included."""
        return self.proof.worsen(self.reading.verdict)

    @property
    def claim(self) -> Claim:
        """What may be claimed of the record."""
        return self.proof.claim(self.reading.verdict)


def examine(
    path: Path,
    here: Here,
    live: Live | None = None,
    *,
    head: str | None = None,
    read: Callable[..., Reading] = read_record,
) -> Examined:
    """Read a record, hold it against all that is known here, and live it again if it is sealed.

    Args:
        path: the record's file.
        here: what this machine knows.
        live: how it is lived again; None for the papers that it pins.
        head: as for `read_record`.
        read: how it is read.

    Raises:
        RecordError: as `read` does.
    """
    reading = read(path, head=head)
    instructors = None
    if reading.verdict.signatures:
        instructors = here.instructors
        reading = read(path, head=head, keys=instructors.fingerprints)
    return Examined(path, reading, prove(path, reading, here.book, live, instructors))


def _by_its_pins(path: Path) -> Live:
    def live(entries: Sequence[Mapping[str, object]]) -> LivedAgain:
        if not all(isinstance(entries[0].get(pin), str) for pin in _PINS):
            return LivedAgain(Finding.NOT_POSSIBLE, "Its first entry does not name the papers of an attempt.")
        # Only here: the papers bring the whole procedure with them.
        from assistant.attempts.relived import live_again

        return live_again(entries, Path(path.name), path.parent)

    return live
