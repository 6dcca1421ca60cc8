"""The sheets for the bench as files: for the instructor, labels to cut out, and for the learner."""

from collections.abc import Sequence
from datetime import date
from pathlib import Path

from assistant.cli.printing import tell
from assistant.orders.model import Order
from assistant.record.document import write_document
from assistant.report.bench_sheets_pdf import Sheets, sheets_pdf
from assistant.report.paper import Size
from assistant.spoken import ENGLISH
from assistant.text import shown

MANY = 100
"""Orders from which on it takes more than a few seconds, and each document is announced."""
PRINTED = f"To print: {', '.join(f'{kind}.pdf' for kind in Sheets)}."
"""What there is then, in a sentence."""


def write_sheets(orders: Sequence[Order], folder: Path, size: Size, today: date, *, large_print: bool = False) -> None:
    """Write the three documents into a folder that is there.

    Args:
        orders: those of a class, or one.
        folder: where to.
        size: of the paper.
        today: for dates that an order does not give.
        large_print: 18 points in place of 16.

    Raises:
        QuantityError: a formula refuses the numbers of an order.
        RecordError: a file cannot be written.
    """
    for kind in Sheets:
        path = folder / f"{kind}.pdf"
        if len(orders) >= MANY:
            tell(f"Setting {shown(path)} ...")
        write_document(path, sheets_pdf(kind, orders, ENGLISH.report, today, size, large_print=large_print))
