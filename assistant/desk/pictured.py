"""The pieces of the desk's pages as HTML, every text escaped; a piece is drawn anew only where it has changed."""

from collections.abc import Mapping
from datetime import datetime

from assistant.desk.board import Row, since_ms
from assistant.desk.drawn import environment
from assistant.desk.marks_strip import HEIGHT, SHAPES, in_words, strip
from assistant.desk.need import WORDS, Need
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


def page(name: str, here: str, depth: int, **values: object) -> str:
    """A whole page.

    Args:
        name: its template.
        here: which of `PAGES` it belongs to.
        depth: how many folders its address lies below the first page's.
        values: what it shows.
    """
    root = "../" * depth
    shared = {"root": root, "pages": PAGES, "here": here, "happenings": HAPPENINGS, "words": WORDS, "shapes": SHAPES}
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
        to_see=sum(1 for step in watched.to_see if step.closed) if watched and watched.goes_on else 0,
    )


class AttemptPieces:
    """The pieces of one attempt's page.

    Args:
        watched: the attempt.
        need: why it needs the instructor.
        sent: orders for it that the station has not answered.
        refused: orders for it that the station refused, each with why.
    """

    def __init__(
        self, watched: Watched, need: Need, sent: tuple[Order, ...], refused: tuple[tuple[Order, str], ...]
    ) -> None:
        self._watched = watched
        self._need = need
        recorded = {mark.order for mark in watched.marks}
        self._sent = tuple(order for order in sent if order.id not in recorded)
        self._refused = refused

    def parts(self) -> Mapping[str, str]:
        """Each piece by the id of its element."""
        watched = self._watched
        pieces = {
            "head": piece(
                "attempt_head",
                needs=self._need,
                parts=list(strip(watched.steps, watched.now)),
                strip_words=in_words(watched.steps),
            ),
            "now": piece("attempt_now", watched=watched, since_ms=since_ms(watched.since)),
            "numbers": piece("numbers", steps=[step for step in watched.steps if step.plan.needed]),
            "marks": piece("marks", sent=list(self._told()), refused=self._told_refused(), marks=list(self._marks())),
            "steps": piece("steps", steps=watched.steps),
        }
        for step in watched.steps:
            if step.plan.seen:
                pieces[f"state-{step.plan.id}"] = self._state(step)
        return pieces

    def aims(self) -> Mapping[str, str]:
        """The steps that marks are for: the one that is asked, and the one that waits to be marked as seen."""
        now, mark = self._watched.step, self._watched.to_mark
        return {
            "now": now.plan.id if now is not None else "",
            "say": step_told(now),
            "mark": mark.plan.id if mark is not None else "",
            "markSay": step_told(mark),
        }

    def entries(self) -> list[dict[str, object]]:
        """Every entry as a line of the list, the oldest first."""
        watched = self._watched
        began = moment(watched.opening or {})
        return [
            {"number": number, "html": _entry(entry, watched, began)} for number, entry in enumerate(watched.log, 2)
        ]

    def _state(self, step: StepSeen) -> str:
        sent = next((order.mark for order in self._sent if isinstance(order, Mark) and order.step == step.plan.id), "")
        return piece("step_state", step=step, now=step.plan.id == self._watched.now, sent=sent)

    def _told(self) -> list[tuple[str, str]]:
        return [_order_told(order, self._watched) for order in self._sent]

    def _told_refused(self) -> list[tuple[str, str, str]]:
        return [(*_order_told(order, self._watched), why) for order, why in self._refused]

    def _marks(self) -> list[tuple[Mapping[str, object], StepSeen | None]]:
        marks = [mark for mark in reversed(self._watched.marks) if mark.what != "undo"]
        return [(_mark_told(mark), self._watched.step_of(mark.step)) for mark in marks]


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
