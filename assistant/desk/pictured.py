"""The pieces of the desk's pages as HTML, every text escaped; a piece is drawn anew only where it has changed."""

from collections.abc import Mapping
from datetime import datetime

from starlette.requests import Request

from assistant.desk.board import Row, since_ms
from assistant.desk.drawn import environment
from assistant.desk.marks_strip import HEIGHT, SHAPES, in_words, strip
from assistant.desk.need import WORDS, Level, Need
from assistant.desk.rights import MARKS_ONLY, may_sign
from assistant.desk.watched import MarkSeen, StepSeen, Watched
from assistant.link.messages import Direct, Happen, Mark, Order
from assistant.report.times import moment, since
from assistant.text import shown

PAGES = (("", "Desk"), ("start", "Start"), ("records", "Records"), ("stations", "Stations"))
"""The pages that every page leads to: address and name."""
HAPPENINGS = (
    ("alarm", "The pump alarms"),
    ("pain", "The patient is in pain"),
    ("settings lost", "The pump has lost its settings"),
    ("other", "Something else, in your words"),
)
_UNDONE_BY = frozenset({"seen", "not seen", "cue", "unsafe", "not applicable", "overrule", "note"})
"""Marks that a further one takes back."""


def page(name: str, here: str, depth: int, request: Request, **values: object) -> str:
    """A whole page.

    Args:
        name: its template.
        here: which of `PAGES` it belongs to.
        depth: how many folders its address lies below the first page's.
        request: who asks for it; a phone sees what it may do.
        values: what it shows.
    """
    root = "../" * depth
    shared = {
        "root": root,
        "pages": PAGES,
        "here": here,
        "signs": may_sign(request),
        "marks_only": MARKS_ONLY,
        "happenings": HAPPENINGS,
        "words": WORDS,
        "shapes": SHAPES,
    }
    return environment().get_template(f"desk/{name}.html").render(**{**shared, **values})


def piece(name: str, **values: object) -> str:
    """A piece of a page, from its template."""
    return environment().get_template(f"desk/{name}.html").render(cut=shown, height=HEIGHT, shapes=SHAPES, **values)


def row_piece(row: Row, title: str) -> str:
    """What stands in a station's row."""
    watched = row.watched
    return piece(
        "row",
        row=row,
        title=title,
        parts=list(strip(watched.steps, watched.now)) if watched else [],
        strip_words=in_words(watched.steps) if watched else "",
        since_ms=since_ms(watched.since) if watched else 0,
        fast=sum(1 for step in watched.steps if step.is_fast) if watched and watched.goes_on else 0,
        to_see=sum(1 for step in watched.to_see if step.closed) if watched and watched.goes_on else 0,
    )


class AttemptPieces:
    """The pieces of one attempt's page, drawn anew only where something of it has changed."""

    def __init__(self) -> None:
        self._drawn_from: object = None
        self._pieces: dict[str, object] = {}
        self._told_entries = 0

    def of(
        self, watched: Watched, need: Need, sent: tuple[Order, ...], refused: tuple[tuple[Order, str], ...]
    ) -> Mapping[str, object]:
        """The pieces by name; entries only once, when they are new.

        Args:
            watched: the attempt.
            need: why it needs the instructor.
            sent: orders for it that the station has not answered.
            refused: orders for it that the station refused, each with why.
        """
        shows = watched, need, sent, refused
        if self._drawn_from != shows:
            self._drawn_from = shows
            self._pieces = {"parts": _parts(*shows), "step": _aims(watched), "states": _states(watched)}
            if len(watched.log) > self._told_entries:
                self._pieces["entries"] = _entries(watched, self._told_entries)
                self._told_entries = len(watched.log)
        return self._pieces


def _parts(
    watched: Watched, need: Need, orders: tuple[Order, ...], refused: tuple[tuple[Order, str], ...]
) -> Mapping[str, str]:
    recorded = {mark.order for mark in watched.marks}
    sent = [order for order in orders if order.id not in recorded]
    marks = [mark for mark in reversed(watched.marks) if mark.what != "undo"]
    pieces = {
        "head": piece(
            "attempt_head",
            needs=need,
            parts=list(strip(watched.steps, watched.now)),
            strip_words=in_words(watched.steps),
        ),
        "now": piece("attempt_now", watched=watched, since_ms=since_ms(watched.since)),
        "numbers": piece("numbers", steps=[step for step in watched.steps if step.plan.needed]),
        "marks": piece(
            "marks",
            lies=need.level is Level.STOPPED,
            sent=[_order_told(order, watched) for order in sent],
            refused=[(*_order_told(order, watched), why) for order, why in refused],
            marks=[(_mark_told(mark), watched.step_of(mark.step)) for mark in marks],
        ),
        "steps": piece("steps", steps=watched.steps),
    }
    for step in watched.steps:
        if step.plan.seen:
            of_step = (order.mark for order in sent if isinstance(order, Mark) and order.step == step.plan.id)
            now = step.plan.id == watched.now
            pieces[f"state-{step.plan.id}"] = piece("step_state", step=step, now=now, sent=next(of_step, ""))
    return pieces


def _aims(watched: Watched) -> Mapping[str, str]:
    """The steps that marks are for: the one that is asked, and the one that waits to be marked as seen."""
    now, mark = watched.step, watched.to_mark
    return {
        "now": now.plan.id if now is not None else "",
        "say": step_told(now),
        "mark": mark.plan.id if mark is not None else "",
        "markSay": step_told(mark),
    }


def _states(watched: Watched) -> Mapping[str, str]:
    """How each step that has to be seen is marked, or whether it waits for a mark."""
    return {step.plan.id: step.seen or _waits(step, watched.now) for step in watched.steps if step.plan.seen}


def _waits(step: StepSeen, now: str) -> str:
    is_asked_of_instructor = step.plan.id == now and step.plan.asks == "instructor"
    return "due" if step.closed or is_asked_of_instructor else "ahead"


def _entries(watched: Watched, told: int) -> list[dict[str, object]]:
    """Entries that were not told yet as lines of the list, the oldest first."""
    began = moment(watched.opening or {})
    return [
        {"number": number, "html": _entry(entry, watched, began)}
        for number, entry in enumerate(watched.log[told:], told + 2)
    ]


def step_told(step: StepSeen | None) -> str:
    """A step in a line; empty for none."""
    return f"Step {step.number}: {step.plan.say}" if step is not None else ""


def _mark_told(mark: MarkSeen) -> Mapping[str, object]:
    can_be_undone = mark.what in _UNDONE_BY and not mark.undone and not mark.refused
    return {**vars(mark), "can_be_undone": can_be_undone}


def _order_told(order: Order, watched: Watched) -> tuple[str, str]:
    """An order in a word or two, and its step and words."""
    match order:
        case Mark():
            step = watched.step_of(order.step)
            told = [f"step {step.number}"] if step is not None else []
            return order.mark.capitalize(), ", ".join([*told, *([order.words] if order.words else [])])
        case Happen() | Direct():
            return order.what.capitalize(), order.words
        case _:
            return order.kind.capitalize(), ""


def _entry(entry: Mapping[str, object], watched: Watched, began: datetime | None) -> str:
    def text(name: str) -> str:
        value = entry.get(name)
        return value if isinstance(value, str) else ""

    meaning = entry.get("meaning")
    understood = str(meaning.get("value", "")) if isinstance(meaning, Mapping) else ""
    return piece(
        "entry",
        clock=since(began, moment(entry)),
        step=watched.step_of(text("step")),
        words=text("words"),
        kind=text("mark") or text("what") or text("kind"),
        understood=understood,
        verdict=text("verdict") or text("outcome"),
    )
