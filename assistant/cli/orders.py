"""``checkoff orders draw``: fictional orders for a class, with their answer keys."""

import argparse
from collections.abc import Sequence
from datetime import date, datetime
from pathlib import Path

from assistant.checklist.load import load
from assistant.cli.paper_options import add_paper_size
from assistant.cli.printing import say_line, tell, why_not, write_json
from assistant.cli.verbs import Subparsers, add_verb, fitted
from assistant.dosing import Amount, show
from assistant.errors import AssistantError, UsageError
from assistant.orders.draw import LEVELS
from assistant.orders.draw_for import draw_for
from assistant.orders.model import Order
from assistant.orders.planting import FAULTS
from assistant.orders.plausible import table
from assistant.orders.sheet import instructors_sheet, labels, learners_sheet
from assistant.orders.solve import answer_key
from assistant.orders.truth import truth_of
from assistant.report.paper import Size
from assistant.text import quoted, shown

MOST = 10_000
"""Orders of one draw: a class has forty."""
MOST_ON_PAPER = 400
"""Orders of one PDF: so many take half a minute, and the time grows with their square."""
_EXAMPLES = """\
  checkoff orders draw primary-line --seed 7                       one order, as the learner sees it, and its key
  checkoff orders draw primary-and-secondary --seed 7 --count 24 --level 2 --out class-7
  checkoff orders draw primary-line --seed 7 --count 40 --out class-7 --paper letter    sheets on US letter
  checkoff run primary-and-secondary --order class-7/d7-01.toml    carry one of them out
  checkoff orders draw secondary-line --seed 3 --fault allergy     with a fault that the learner must find
  checkoff orders draw primary-line --seed 7 --count 24 --json     one JSON object per order

levels:
  1  every rate comes out without rounding, in the units that are asked for
  2  one rounding, or one conversion of units (g to mg, L to mL, odd minutes to hours)
  3  two or more of these; a body weight may come in pounds

--out writes a file for each order, learners.txt and instructor.txt, and to print: learners.pdf (order and chart,
without answers), labels.pdf (labels and wristbands to cut out and tape on, as it is laid out) and instructor.pdf
(what to lay out, faults, answer key).

The same seed, level, count and day give the same orders. Patients and prescribers are invented; what is drawn
keeps the limits in limits.toml, unless a fault is asked for. Training only: no advice for treatment."""


def add_parser(subparsers: Subparsers) -> None:
    """Add the verb."""
    parser = add_verb(
        subparsers,
        "orders",
        "They are made for a class, invented, and for training only.",
        _EXAMPLES,
    )
    verbs = parser.add_subparsers(title="verbs", metavar="VERB", required=True)
    drawing = verbs.add_parser(
        "draw",
        help="draw orders by chance",
        description="Draws orders that fit a checklist: seeded, fictional, no two alike.\nTraining only.",
        epilog=fitted(f"examples:\n{_EXAMPLES}\n\nfaults: {', '.join(FAULTS)}"),
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )
    drawing.add_argument("checklist", metavar="CHECKLIST", help="name or path of the checklist that they are for")
    drawing.add_argument("--seed", type=int, default=1, metavar="N", help="the same seed gives the same orders (1)")
    drawing.add_argument("--level", type=int, default=1, choices=LEVELS, help="how much arithmetic (1); see below")
    drawing.add_argument("--count", type=int, default=1, metavar="K", help="how many, no two alike (1)")
    faults = "lay out a fault that a step of the checklist can find: see below"
    drawing.add_argument("--fault", choices=FAULTS, metavar="KIND", help=faults)
    drawing.add_argument("--day", metavar="YYYY-MM-DD", help="day of the orders; today by default")
    drawing.add_argument("--out", metavar="FOLDER", help="write files for --order, and the sheets, into this folder")
    add_paper_size(drawing)
    form = drawing.add_mutually_exclusive_group()
    form.add_argument("--print", dest="printed", action="store_true", help="both sheets of each order (the default)")
    form.add_argument("--learner", action="store_true", help="the learner's sheets alone, without a key")
    form.add_argument("--json", action="store_true", help="one JSON object per order, key and fault included")
    drawing.set_defaults(run=run)


def run(arguments: argparse.Namespace) -> int:
    """Carry out the verb; return the exit code.

    Raises:
        UsageError: an argument is wrong, or such orders cannot be drawn.
        AssistantError: a file cannot be read or written.
    """
    if not 1 <= arguments.count <= MOST:
        raise UsageError(f"Between 1 and {MOST:,} orders can be drawn at once.", "Give another count.")
    orders = draw_for(
        load(arguments.checklist),
        seed=arguments.seed,
        level=arguments.level,
        count=arguments.count,
        day=_day(arguments.day),
        fault=arguments.fault,
    )
    if arguments.out is not None:
        _write_all(orders, Path(arguments.out), Size(arguments.paper))
    for order in orders:
        if arguments.json:
            write_json(as_object(order))
        elif arguments.learner:
            _show(learners_sheet(order))
        elif arguments.out is None or arguments.printed:
            _show(learners_sheet(order))
            _show(instructors_sheet(order))
    return 0


def as_object(order: Order) -> dict[str, object]:
    """An order for programs: numbers as decimal text."""
    # Only where files are made: writing them takes a library that showing a sheet does not need.
    from assistant.orders.write import text_of

    return {
        "name": order.name,
        "code": order.code,
        "faults": [
            {"fact": fault.fact, "state": _shown(fault.state), "what": fault.what, "reaches": fault.reaches}
            for fault in truth_of(order, table()).faults
        ],
        "teaching": order.teaching,
        "sentences": list(order.sentences()),
        "labels": list(labels(order)),
        "key": [
            {
                "name": entry.name,
                "value": entry.value if isinstance(entry.value, str) else f"{entry.value:f}",
                "unit": entry.unit,
                "formula": entry.formula,
                "working": list(entry.working),
            }
            for entry in answer_key(order).values()
        ],
        "sources": list(order.sources),
        "toml": text_of(order),
    }


def _shown(state: str | Amount) -> str:
    return state if isinstance(state, str) else show(state)


def _day(text: str | None) -> date:
    if text is None:
        return datetime.now().astimezone().date()
    try:
        return date.fromisoformat(text)
    except ValueError as cause:
        raise UsageError(f"{quoted(text)} is not a day of the calendar.", "Write it like 2026-11-25.") from cause


def _write_all(orders: Sequence[Order], folder: Path, size: Size) -> None:
    # Only where files are made: a start is quick without the libraries for them.
    from assistant.cli.bench_sheets import PRINTED, write_sheets
    from assistant.orders.write import text_of
    from assistant.record.disk import make_folder
    from assistant.record.document import write_document

    try:
        make_folder(folder)  # with answer keys in it: for its owner alone
        for order in orders:
            write_document(folder / f"{order.name}.toml", text_of(order).encode())
        for name, sheet in (("learners.txt", learners_sheet), ("instructor.txt", instructors_sheet)):
            write_document(folder / name, "\f".join(map(sheet, orders)).encode())
    except (OSError, ValueError) as cause:
        raise AssistantError(
            f"The orders cannot be written into {shown(folder)}: {why_not(cause)}.", "Choose another folder."
        ) from cause
    on_paper = len(orders) <= MOST_ON_PAPER
    if on_paper:
        write_sheets(orders, folder, size, orders[0].written or _day(None))
    tell(
        f"{len(orders)} {'order' if len(orders) == 1 else 'orders'} with learners.txt and"
        f" instructor.txt in {shown(folder)}."
        f" {PRINTED if on_paper else f'No PDF: one holds {MOST_ON_PAPER} orders at most.'}"
        " The files hold keys and faults: learners get learners.txt or learners.pdf alone."
    )


def _show(sheet: str) -> None:
    for line in sheet.split("\n"):
        say_line(line)
