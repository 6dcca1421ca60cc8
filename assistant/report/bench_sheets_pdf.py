"""The sheets for the bench as PDF: each document for one order or for those of a class."""

from collections.abc import Callable, Mapping, Sequence
from datetime import date
from enum import StrEnum

from assistant.orders.model import ILLEGIBLE, Order
from assistant.report.bench_sheets import instructors_sheet, labels_page, learners_pages
from assistant.report.content import Part
from assistant.report.paper import SHEET_PT, Paper, Size
from assistant.report.pdf import NO_DATE, compiled, every_text
from assistant.report.view import fixed_texts, together
from assistant.spoken.language import ReportWords


class Sheets(StrEnum):
    """The three documents, as their files are called."""

    INSTRUCTOR = "instructor"
    LABELS = "labels"
    LEARNERS = "learners"


_PAGES: Mapping[Sheets, Callable[[Order, ReportWords, date], Part]] = {
    Sheets.INSTRUCTOR: instructors_sheet,
    Sheets.LABELS: labels_page,
    Sheets.LEARNERS: lambda order, words, _: learners_pages(order, words),
}


def sheets_pdf(
    kind: Sheets,
    orders: Sequence[Order],
    words: ReportWords,
    today: date,
    size: Size = Size.A4,
    *,
    large_print: bool = False,
) -> bytes:
    """One document for all these orders, each on pages of its own.

    Args:
        kind: which document.
        orders: one or more.
        words: the language.
        today: for dates that an order does not give (see `assistant.report.bench_labels.labels_of`).
        size: of the paper.
        large_print: 18 points in place of 16.

    Raises:
        QuantityError: a formula refuses the numbers of an order.
    """
    names = {
        Sheets.INSTRUCTOR: words.INSTRUCTORS_SHEET,
        Sheets.LABELS: words.LABELS_SHEET,
        Sheets.LEARNERS: words.LEARNERS_PAGES,
    }
    first, last = orders[0].code, orders[-1].code
    codes = first if len(orders) == 1 else words.from_to(first, last)
    content = {
        "title": words.sheets_title(names[kind], codes),
        "codes": codes,
        "illegible": ILLEGIBLE,
        "pages": [_PAGES[kind](order, words, today).model_dump(mode="json") for order in orders],
    }
    # Numbers stay on one line with their units.
    shown = {**every_text(together, content), "w": fixed_texts(words)}
    return compiled(f"sheets-{kind}.typ", shown, Paper(size, large_print, SHEET_PT), NO_DATE)
