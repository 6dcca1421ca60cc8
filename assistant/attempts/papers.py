"""The papers of an attempt: procedure, order, what follows from it; by name, or as a record pins them."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from functools import cached_property
from pathlib import Path
from typing import TYPE_CHECKING

from assistant.checklist.load import load
from assistant.checklist.model import Checklist, WaitAsked
from assistant.errors import AssistantError, RecordError
from assistant.orders.fault import Truth
from assistant.orders.key import KeyEntry
from assistant.orders.load import load_order
from assistant.orders.model import Order
from assistant.orders.plausible import table
from assistant.orders.solve import answer_key
from assistant.orders.truth import truth_of
from assistant.spoken import Variety, english

if TYPE_CHECKING:
    from assistant.guide.guide import Guide
    from assistant.guide.progress import Mode

SHORT_WAIT_S = 1
"""Length of a timed wait where the learner rehearses with short waits."""


@dataclass(frozen=True)
class AttemptPapers:
    """What an attempt is made from.

    Attributes:
        checklist, order: as the school has them.
        key: what follows from the order.
        short_waits: how long its waits are.
        school: path of the school's file; empty where there is none.
        school_digest: SHA-256 (hex) over it.
        variety: of English, in which it is held.
    """

    checklist: Checklist
    order: Order
    key: Mapping[str, KeyEntry]
    short_waits: bool
    school: str = ""
    school_digest: str = ""
    variety: Variety = "British"

    @cached_property
    def truth(self) -> Truth:
        """What is not as it should be at the bench.

        Raises:
            OrderError, QuantityError: a table of the library cannot be used.
        """
        return truth_of(self.order, table())

    def warnings(self) -> tuple[str, ...]:
        """What an instructor should know before the attempt, without a word of what the learner is to find."""
        unasked = sum(
            not any(fault in self.truth.seen_at(step) for step in self.checklist.steps) for fault in self.truth.faults
        )
        if not unasked:
            return ()
        return (
            f"The order {self.order.name} has a fault that no step of {self.checklist.name} asks for, so nobody can"
            " pass with it. Choose another order or checklist.",
        )

    def guide(self, mode: "Mode", pins: Mapping[str, str]) -> "Guide":
        """A guide through these papers."""
        # Imported only here: a report of a sealed record needs the papers and no guide.
        from assistant.adapters.answer_reader import answer_reader
        from assistant.guide import Guide
        from assistant.guide import Papers as GuidePapers

        language = english(self.variety).weighed_by(answer_reader())
        order = self.order
        papers = GuidePapers(self.checklist, order.sentence(), self.key, language, self.truth, order.in_short())
        return Guide(papers, mode, pins)


def take_papers(checklist: str, order: str | None, *, short_waits: bool = False, school: str = "") -> AttemptPapers:
    """Read the papers of an attempt.

    Args:
        checklist: name or path.
        order: name or path; None takes the checklist's own.
        school: path of a school's file, which lies over both; "" for none.
        short_waits: let every timed wait last `SHORT_WAIT_S`, to rehearse.

    Raises:
        ChecklistError, OrderError, SettingsError: one of them cannot be used.
    """
    procedure = load(checklist)
    prescription = load_order(order or procedure.order)
    digest = ""
    variety: Variety = "British"
    if school:
        # Only here: most attempts have none.
        from assistant.attempts.school import checklist_at, load_school, order_at

        own = load_school(Path(school))
        procedure, prescription = checklist_at(own, procedure, Path(school)), order_at(own, prescription)
        digest, variety = own.digest, own.words
    if short_waits:
        procedure = _with_short_waits(procedure)
    return AttemptPapers(procedure, prescription, answer_key(prescription), short_waits, school, digest, variety)


def _with_short_waits(checklist: Checklist) -> Checklist:
    steps = tuple(
        step.model_copy(update={"expect": step.expect.model_copy(update={"seconds": SHORT_WAIT_S})})
        if isinstance(step.expect, WaitAsked)
        else step
        for step in checklist.steps
    )
    return checklist.model_copy(update={"steps": steps})


def papers_of(opening: Mapping[str, object], name: Path, beside: Path | None = None) -> AttemptPapers:
    """The papers that a record's first entry pins; those kept beside it, where they have changed since.

    Args:
        opening: the first entry.
        name: the record's file, for sentences.
        beside: folder of the record; None for that of `name`.

    Raises:
        RecordError: a checklist or an order is no longer what it was when the attempt began.
    """
    # Only here: most papers are those of the library, and are at hand.
    from assistant.attempts.kept_papers import kept_paper

    try:
        return papers_here(opening, name)
    except AssistantError as changed:
        folder = name.parent if beside is None else beside
        try:
            return _papers_from(opening, name, lambda pin: kept_paper(folder, opening, pin))
        except AssistantError:
            raise changed from None


def papers_here(opening: Mapping[str, object], name: Path) -> AttemptPapers:
    """The papers that a first entry names, as they are on this machine, if they are those that it pins.

    Args:
        opening: the first entry.
        name: the record's file, for sentences.

    Raises:
        AssistantError: one of them cannot be used, or is another by now.
    """
    return _papers_from(opening, name, lambda pin: str(opening.get(pin, "")))


def _papers_from(opening: Mapping[str, object], name: Path, where: Callable[[str], str]) -> AttemptPapers:
    """The papers at these places, if they are those that are pinned.

    Raises:
        AssistantError: one of them cannot be used, or is another.
    """
    papers = take_papers(
        where("checklist"),
        where("order"),
        short_waits=opening.get("waits") == "short",
        school=where("school") if opening.get("school") else "",
    )
    pinned = (
        ("checklist", papers.checklist.digest),
        ("order", papers.order.digest),
        ("school", papers.school_digest),
    )
    for what, now in pinned:
        if opening.get(f"{what}_digest", "") != now:
            raise RecordError(
                f"The {what} {opening.get(what)} has changed since the attempt in {name} began.",
                "Put the file back as it was, or start a new attempt.",
            )
    return papers
