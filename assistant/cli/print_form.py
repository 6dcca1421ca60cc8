"""``checkoff print FILE``: the blank paper form of a checklist."""

import argparse
from pathlib import Path

from assistant.checklist.load import load
from assistant.cli.paper_options import add_paper_options
from assistant.cli.printing import tell
from assistant.cli.verbs import Subparsers, add_verb
from assistant.cli.written import write_document
from assistant.errors import UsageError
from assistant.orders.load import load_order
from assistant.report.form import Form, form_of
from assistant.report.paper import Paper, Size
from assistant.spoken import ENGLISH
from assistant.text import shown

_EXAMPLES = """\
  checkoff print primary-line                          writes primary-line.pdf, A4
  checkoff print primary-line -o form.html             a page that any browser prints
  checkoff print my-checklist.toml --paper letter --large-print
  checkoff print primary-line --order oh-101           with the order at the top, as the learner sees it

The form has boxes for done, cue and not done, room for each number with its unit, and lines for signatures.
It holds no answers."""

_ENDINGS = (".pdf", ".html")


def add_parser(subparsers: Subparsers) -> None:
    """Add the verb."""
    parser = add_verb(
        subparsers,
        "print",
        "It is to be ticked by hand and holds no answers.",
        _EXAMPLES,
    )
    parser.add_argument("checklist", metavar="FILE", help="path or name of a checklist")
    parser.add_argument("-o", "--output", metavar="FORM", help="FORM.pdf or FORM.html (default: its name, .pdf)")
    parser.add_argument("--order", help="print this order at the top")
    add_paper_options(parser)
    parser.set_defaults(run=run)


def run(arguments: argparse.Namespace) -> int:
    """Carry out the verb; return the exit code.

    Raises:
        UsageError: the form's name has another ending.
        ChecklistError, OrderError: one of them cannot be used.
        RecordError: the form cannot be written.
    """
    checklist = load(arguments.checklist)
    order = load_order(arguments.order) if arguments.order else None
    target = Path(arguments.output or f"{checklist.name}.pdf")
    if target.suffix.lower() not in _ENDINGS:
        raise UsageError(f'A form cannot be a "{shown(target.suffix)}" file.', "End the name with .pdf or .html.")
    paper = Paper(Size(arguments.paper), arguments.large_print)
    write_document(target, _made(form_of(checklist, ENGLISH.report, order), target.suffix.lower(), paper))
    tell(f"Form: {shown(target)}")
    return 0


def _made(form: Form, ending: str, paper: Paper) -> bytes:
    """The document; each kind is imported only where it is wanted."""
    if ending == ".pdf":
        from assistant.report.pdf import form_pdf

        return form_pdf(form, ENGLISH.report, paper)
    from assistant.report.html import form_html

    return form_html(form, ENGLISH.report, paper).encode()
