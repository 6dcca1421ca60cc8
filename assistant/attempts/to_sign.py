"""What an instructor signs: shown before it is signed, with everything in which a pass goes beyond the result."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from assistant.attempts.proof import Examined
from assistant.guide.effects import Outcome
from assistant.guide.progress import Mode
from assistant.record.decisions import Decision, Wish, is_to_be_judged, standing, steps_to_be_seen
from assistant.record.lived import Finding
from assistant.record.short_head import short_head
from assistant.text import shown

_AS_FAR_AS_IT_GOES = ("", Outcome.PASSED, Outcome.OWN_REPORT, Outcome.STOPPED_FOR_CAUSE)
"""Outcomes that a pass confirms; it overrides every other one."""
_OVERRULED = "overruled"


@dataclass(frozen=True)
class ToSign:
    """What is signed.

    Attributes:
        learner, mode, checklist, order, began: as the record pins them.
        outcome: as the seal says it; empty where there is none.
        lived: what working it out anew came to, in a phrase; empty where there was nothing to work out.
        school: path of the school's file that lay over the papers; empty where there was none.
        papers: which paper is not the library's although it has its name; empty where none is.
        not_confirmed: why the result was not confirmed, in one or two sentences; empty where it was.
        not_seen: ids of the steps that have to be seen, and that nobody marked.
        to_judge: the record holds findings that only an instructor can judge.
        overruled: ids of steps whose verdict an instructor set aside, at the station or afterwards.
        decided: decisions that count already, oldest first, a phrase each.
        simulated: a simulated learner did this.
        claim: what is proven of the record, in one line.
        short_head: of its last entry.
    """

    learner: str
    mode: str
    checklist: str
    order: str
    began: str
    outcome: str
    lived: str
    school: str
    papers: str
    not_confirmed: str
    not_seen: tuple[str, ...]
    to_judge: bool
    overruled: tuple[str, ...]
    decided: tuple[str, ...]
    simulated: bool
    claim: str
    short_head: str

    def lines(self) -> Iterator[str]:
        """All of it for people, a line each."""
        yield f"You are about to sign: learner {self.learner}, {self.mode}, {self.checklist}, order {self.order}."
        if self.simulated:
            yield "A simulated learner did this."
        yield f"Began: {self.began[:16].replace('T', ' ')} UTC."
        anew = f" Worked out anew: {self.lived}." if self.lived else ""
        yield f"Result: {self.outcome or 'none, it is not sealed'}.{anew}"
        if self.school:
            yield f"Its rules are those of the school's file {self.school}."
        if self.papers:
            yield self.papers
        if self.not_confirmed:
            yield self.not_confirmed
        if self.not_seen:
            yield f"Not seen by an instructor: {', '.join(self.not_seen)}."
        if self.to_judge:
            yield "It holds findings that only you can judge; the report names them."
        if self.overruled:
            yield f"Overruled: {', '.join(self.overruled)}."
        for one in self.decided:
            yield f"Decided before: {one}."
        yield self.claim
        yield f"Short head: {self.short_head}"

    def beyond(self, wish: Wish) -> tuple[str, ...]:
        """In what a decision goes beyond the result, a sentence each; then it needs a reason.

        Args:
            wish: what the instructor wants to add.
        """
        if wish.decision is not Decision.PASSED:
            return ("Every decision but a plain pass needs a reason.",)
        found = []
        if self.outcome not in _AS_FAR_AS_IT_GOES:
            found.append(f"The result of the record is: {self.outcome}.")
        unseen = [] if wish.seen == ("all",) else [name for name in self.not_seen if name not in wish.seen]
        if unseen:
            found.append(f"These steps have to be seen, and nobody has marked them: {', '.join(unseen)}.")
        if self.to_judge:
            found.append("The record holds findings that only you can judge.")
        if self.overruled:
            found.append(f"Verdicts were overruled: {', '.join(self.overruled)}.")
        if self.mode and self.mode != Mode.CHECK_OFF:
            found.append("It was practice, with help, and not a check-off.")
        found += [said for said in (self.papers, self.not_confirmed) if said]
        return tuple(found)


def to_sign(found: Examined) -> ToSign:
    """What an instructor would sign.

    Args:
        found: the record with all that is known of it; at least its first entry holds.
    """
    entries = found.reading.entries
    opening = entries[0]
    seal = next((entry for entry in entries if "seal" in entry), {})
    lived = found.proof.lived
    confirmed = lived is None or lived.finding is Finding.SAME
    why = "" if lived is None else lived.why

    def pinned(name: str) -> str:
        return shown(str(opening.get(name, "")))

    stands = standing(entries, found.proof.deciding)
    return ToSign(
        learner=pinned("learner") or "not named",
        mode=pinned("mode"),
        checklist=f"{pinned('checklist')} {pinned('checklist_version')}".strip(),
        order=pinned("order"),
        began=pinned("at"),
        outcome=shown(str(seal.get("outcome", ""))),
        lived="" if lived is None else str(lived.finding),
        school=pinned("school"),
        papers="" if lived is None else lived.papers,
        not_confirmed=""
        if confirmed or lived is None
        else f"The result was not confirmed by living the attempt again ({lived.finding}). {why}".rstrip(),
        not_seen=tuple(name for name in steps_to_be_seen(seal) if name not in stands.seen),
        to_judge=is_to_be_judged(seal),
        overruled=tuple(dict.fromkeys((*_overruled(entries), *stands.overruled))),
        decided=tuple(_decided(entries, found.proof.deciding)),
        simulated=bool(opening.get("simulated")),
        claim=found.claim.sentence,
        short_head=short_head(found.reading.verdict.head),
    )


def _overruled(entries: Sequence[Mapping[str, object]]) -> Iterator[str]:
    """Steps that an instructor set aside during the attempt."""
    undone = {entry.get("undoes") for entry in entries if entry.get("took_back")}
    for entry in entries:
        if entry.get("verdict") == _OVERRULED and not (entry.get("order") and entry.get("order") in undone):
            yield shown(str(entry.get("step", "")))


def _decided(entries: Sequence[Mapping[str, object]], deciding: frozenset[int]) -> Iterator[str]:
    for entry in entries:
        if entry.get("sequence") in deciding:
            by, when = shown(str(entry.get("signer", ""))), shown(str(entry.get("at", ""))[:10])
            yield f"{shown(str(entry.get('decision', '')))} by {by} on {when}"
