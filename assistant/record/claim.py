"""What is proven of a record, and what is only claimed: one line for every reader and every document. Pure."""

from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum

from assistant.record.chain import Problem
from assistant.record.heads import Seen, Standing
from assistant.record.lived import Finding, LivedAgain
from assistant.record.signer import Signer
from assistant.record.verify import Verdict
from assistant.text import shown


class Proven(StrEnum):
    """How far a record is proven, the least first."""

    BROKEN = "broken"
    DENIED = "denied"
    NOTHING = "nothing"
    KEPT = "kept here"
    SIGNED = "signed"


@dataclass(frozen=True)
class Claim:
    """What may be claimed of a record.

    Attributes:
        proven: in a word.
        sentence: in one to three sentences, for people.
    """

    proven: Proven
    sentence: str


UNSIGNED = "whoever could write this file could have made it"
"""Who could have made a record that nobody signed."""


def claim(
    verdict: Verdict, standing: Standing | None, lived: LivedAgain | None, signers: Sequence[Signer] = ()
) -> Claim:
    """What may be claimed of a record.

    Args:
        verdict: on its chain.
        standing: how it stands to the book of heads; None where there was nothing to ask.
        lived: what living it again came to; None where that was not tried.
        signers: who signed, oldest first.
    """
    if not verdict.intact and verdict.problem is not Problem.TORN_TAIL:
        upto = f"up to entry {verdict.count}" if verdict.count else "at none of its entries"
        return Claim(Proven.BROKEN, f"Proven: nothing. The record is not whole; it holds {upto}.")
    if standing is not None and standing.is_denied:
        return Claim(Proven.DENIED, f"Proven: nothing. The record is {standing.seen}.")
    if lived is not None and lived.finding is Finding.DIFFERS:
        return Claim(Proven.DENIED, "Proven: nothing. Its entries and its result disagree.")
    kept = standing is not None and standing.seen is Seen.AS_LAST_SEEN
    deciding = [one for one in signers if one.decides]
    if deciding:
        return Claim(Proven.SIGNED, _signed(deciding[-1], verdict.count, kept=kept))
    nobody = "Nobody signed it"
    if signers:
        nobody = f"Nobody known as an instructor signed it ({signers[-1].right}: {shown(signers[-1].title or 'a key')})"
    if standing is not None and kept:
        begun = ""
        if standing.first_had > 1:
            # Whoever brought it here could have made all of that.
            begun = f" It was not begun here: how its first {standing.first_had} entries came about is claimed."
        return Claim(
            Proven.KEPT,
            f"Proven: it is {Seen.AS_LAST_SEEN}, so nothing was changed since.{begun} {nobody}; "
            "who answered is claimed.",
        )
    seen = "this machine has never seen it"
    if standing is not None and standing.seen is Seen.LONGER and standing.last_seen is not None:
        seen = f"this machine has seen only its first {standing.last_seen.count} entries"
    return Claim(Proven.NOTHING, f"Proven: nothing. {nobody}, and {seen}: {UNSIGNED}.")


def _signed(signer: Signer, count: int, *, kept: bool) -> str:
    by = f"by the roster of {shown(signer.school)}" if signer.school else "by the one key that is named here"
    later = count - signer.line
    rest = f"; {later} later {'entry is' if later == 1 else 'entries are'} not covered by that" if later else ""
    seen = f" It is {Seen.AS_LAST_SEEN}." if kept else ""
    return (
        f"Proven: signed by {shown(signer.title)}, whose key was valid then {by}. Every entry up to entry "
        f"{signer.line} is as it was signed{rest}.{seen} Who answered is claimed."
    )
