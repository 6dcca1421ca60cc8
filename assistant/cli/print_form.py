"""``checkoff print FILE``: the blank paper form of a checklist, or the sheets by which an order is laid out."""

import argparse
from datetime import datetime
from pathlib import Path

from assistant.checklist.library import find, is_path, nearest
from assistant.checklist.load import available, load
from assistant.checklist.paper_file import read_paper
from assistant.cli.paper_options import add_paper_options
from assistant.cli.printing import tell, why_not
from assistant.cli.verbs import Subparsers, add_verb
from assistant.errors import ChecklistError, RecordError, UsageError
from assistant.orders.load import available_orders, load_order
from assistant.record.document import write_document
from assistant.report.form import Form, form_of
from assistant.report.paper import Paper, Size
from assistant.report.review import Review, review_of
from assistant.spoken import ENGLISH, Language, english
from assistant.text import shown

_EXAMPLES = """\
  checkoff print primary-line                          writes primary-line.pdf, A4
  checkoff print primary-line -o form.html             a page that any browser prints
  checkoff print my-checklist.toml --paper letter --large-print
  checkoff print primary-line --order oh-101           with the order at the top, as the learner sees it
  checkoff print primary-line --sources                each step with reason and sources, for a nurse to review and sign
  checkoff print primary-line --school school.toml     as your school has it, in its words
  checkoff print oh-101                                the sheets of an order, into the folder oh-101
  checkoff print class-7/d7-01.toml -o bench-3 --paper letter

The form has boxes for done, cue and not done, room for each number with its unit, and lines for signatures.
It holds no answers.

The sheets of an order are learners.pdf (order and chart, without answers), labels.pdf (labels and a wristband to cut
out and tape on, as it is laid out) and instructor.pdf (what to lay out, faults, answer key); large print always."""

_ENDINGS = (".pdf", ".html")


def add_parser(subparsers: Subparsers) -> None:
    """Add the verb."""
    parser = add_verb(
        subparsers,
        "print",
        "The form is to be ticked by hand and holds no answers. Of an order, what lays a bench out is printed.",
        _EXAMPLES,
    )
    parser.add_argument("checklist", metavar="FILE", help="path or name of a checklist, or of an order")
    parser.add_argument(
        "-o", "--output", metavar="FORM", help="FORM.pdf or FORM.html; of an order a folder (default: its name)"
    )
    parser.add_argument("--order", help="print this order at the top of the form")
    parser.add_argument("--sources", action="store_true", help="print steps, reasons and sources, to be reviewed")
    parser.add_argument("--school", default="", metavar="FILE", help="a school's own file")
    add_paper_options(parser)
    parser.set_defaults(run=run)


def run(arguments: argparse.Namespace) -> int:
    """Carry out the verb; return the exit code.

    Raises:
        UsageError: the form's name has another ending, or an order is to have another one at its top.
        ChecklistError, OrderError: one of them cannot be used.
        RecordError: form or sheets cannot be written.
    """
    if _is_order(arguments.checklist):
        return _print_order(arguments)
    checklist, language = load(arguments.checklist), ENGLISH
    if arguments.school:
        # Only here: most forms are printed without one.
        from assistant.attempts.school import checklist_at, load_school

        place = Path(arguments.school)
        school = load_school(place)
        checklist, language = checklist_at(school, checklist, place), english(school.words)
    order = load_order(arguments.order) if arguments.order else None
    ending = "-sources" if arguments.sources else ""
    target = Path(arguments.output or f"{checklist.name}{ending}.pdf")
    if target.suffix.lower() not in _ENDINGS:
        raise UsageError(f'A form cannot be a "{shown(target.suffix)}" file.', "End the name with .pdf or .html.")
    paper = Paper(Size(arguments.paper), arguments.large_print)
    made: Form | Review = form_of(checklist, language.report, order)
    if arguments.sources:
        made = review_of(checklist, language.report)
    write_document(target, _made(_worded(made, language), target.suffix.lower(), paper))
    tell(f"{'Sources' if arguments.sources else 'Form'}: {shown(target)}")
    return 0


def _is_order(name_or_path: str) -> bool:
    """Whether an order is meant: a file about a patient, or a name that is, or is near, an order's alone."""
    if not is_path(name_or_path):
        known, orders = ([name.casefold() for name in names] for names in (available(), available_orders()))
        given = name_or_path.casefold()
        return given not in known and (given in orders or bool(nearest(given, orders) and not nearest(given, known)))
    try:
        return "patient" in read_paper(find(name_or_path, "checklist", ChecklistError), ChecklistError).table
    except ChecklistError:
        return False  # and then it is refused as the checklist that it could have been


def _print_order(arguments: argparse.Namespace) -> int:
    # Only here: a form needs none of it.
    from assistant.cli.bench_sheets import PRINTED, write_sheets

    if arguments.order:
        raise UsageError("An order is printed by itself.", "Leave --order out, or name a checklist.")
    order = load_order(arguments.checklist)
    folder = Path(arguments.output or order.name)
    try:
        folder.mkdir(parents=True, exist_ok=True)
    except (OSError, ValueError) as cause:
        raise RecordError(
            f"The folder {shown(folder)} cannot be made: {why_not(cause)}.", "Name another folder with -o."
        ) from cause
    today = datetime.now().astimezone().date()
    write_sheets([order], folder, Size(arguments.paper), today, large_print=arguments.large_print)
    tell(f"Sheets of order {shown(order.code)} in {shown(folder)}. {PRINTED}")
    return 0


def _worded(sheet: Form | Review, language: Language) -> Form | Review:
    """A form, or a page of sources, in the words of the place."""
    return type(sheet).model_validate_json(language.worded(sheet.model_dump_json()))


def _made(sheet: Form | Review, ending: str, paper: Paper) -> bytes:
    """The document; each kind is imported only where it is wanted."""
    if ending == ".pdf":
        from assistant.report.pdf import form_pdf, review_pdf

        if isinstance(sheet, Review):
            return review_pdf(sheet, ENGLISH.report, paper)
        return form_pdf(sheet, ENGLISH.report, paper)
    from assistant.report.html import form_html, review_html

    if isinstance(sheet, Review):
        return review_html(sheet, ENGLISH.report, paper).encode()
    return form_html(sheet, ENGLISH.report, paper).encode()
