"""What can be said for and against a record beside its chain: the book of heads, and its attempt lived again."""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, replace
from pathlib import Path

from assistant.record.chain import Problem
from assistant.record.head_book import HeadBook
from assistant.record.heads import Seen, Standing
from assistant.record.lived import Finding, LivedAgain
from assistant.record.verify import Reading, Verdict

_PINS = ("mode", "checklist", "checklist_digest", "order", "order_digest")
"""What a first entry must pin, as text, before it makes sense to look for papers."""


@dataclass(frozen=True)
class Proof:
    """What can be said for and against a record beside its chain.

    Attributes:
        standing: how it stands to what the book of heads has seen; None where its chain is broken.
        lived: what living it again came to; None where that was not tried: it is not sealed, or its chain is broken.
    """

    standing: Standing | None
    lived: LivedAgain | None

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
        return verdict


Live = Callable[[Sequence[Mapping[str, object]]], LivedAgain]
"""Lives entries again."""


def prove(path: Path, reading: Reading, book: HeadBook, live: Live | None = None) -> Proof:
    """Hold a record whose chain holds against the book, and live it again if it is sealed.

    Args:
        path: the record's file.
        reading: its entries and the verdict on its chain.
        book: what was seen of it.
        live: how it is lived again; None for the papers that it pins.
    """
    entries, verdict = reading.entries, reading.verdict
    if not entries or not (verdict.intact or verdict.problem is Problem.TORN_TAIL):
        return Proof(None, None)
    lived = (live or _by_its_pins(path))(entries) if verdict.sealed else None
    return Proof(book.standing(entries), lived)


def _by_its_pins(path: Path) -> Live:
    def live(entries: Sequence[Mapping[str, object]]) -> LivedAgain:
        if not all(isinstance(entries[0].get(pin), str) for pin in _PINS):
            return LivedAgain(Finding.NOT_POSSIBLE, "Its first entry does not name the papers of an attempt.")
        # Only here: the papers bring the whole procedure with them.
        from assistant.attempts.relived import live_again

        return live_again(entries, Path(path.name))

    return live
