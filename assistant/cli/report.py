"""``checkoff report``: the report of a recorded attempt as text, page, paper, table or data."""

import argparse
import json
from pathlib import Path

from assistant.attempts.reported import reported
from assistant.cli.folders import add_keys_option, here
from assistant.cli.paper_options import add_paper_options
from assistant.cli.printing import say_line, tell
from assistant.cli.verbs import Subparsers, add_verb
from assistant.errors import UsageError
from assistant.record.claim import Proven
from assistant.record.document import write_document
from assistant.report.content import Report, schema
from assistant.report.paper import Paper, Size
from assistant.spoken import ENGLISH
from assistant.text import shown

_EXAMPLES = """\
  checkoff report RECORD                     text on this screen
  checkoff report RECORD -o report.html      one page for a browser or a printer, nothing else needed
  checkoff report RECORD -o report.pdf --paper letter --large-print
  checkoff report RECORD -o report.csv       one row a step, safe in a spreadsheet
  checkoff report RECORD -o report.json      the same content as data; its form: checkoff report --schema
  checkoff report RECORD --xapi -o statements.json    for a learning record store (IEEE 9274.1.1)

A record that is not sealed, ends in a torn line or was changed is reported as far as it holds, and the report
says so first; where it was changed, or is not what was last seen here, the exit code is 1 as well. Nothing is ever
written into the record."""

_ENDINGS = ("html", "pdf", "csv", "json")


def add_parser(subparsers: Subparsers) -> None:
    """Add the verb."""
    parser = add_verb(
        subparsers,
        "report",
        "Verifies the record first, then gives result, feedback, numbers with their working, steps and evidence.",
        _EXAMPLES,
    )
    parser.add_argument("record", nargs="?", help="the record of the attempt")
    parser.add_argument("-o", "--output", metavar="FILE", help="FILE.html, .pdf, .csv or .json")
    parser.add_argument("--json", action="store_true", help="one JSON object on standard output")
    parser.add_argument("--xapi", action="store_true", help="xAPI statements in place of the report, as JSON")
    parser.add_argument(
        "--xapi-home",
        metavar="IRI",
        default="https://example.org/",
        help="home page of the system that gives out the learners' codes (default: a reserved example)",
    )
    add_paper_options(parser)
    parser.add_argument("--brief", action="store_true", help="leave out the list of every entry")
    parser.add_argument("--schema", action="store_true", help="print the JSON Schema of the report and end")
    add_keys_option(parser)
    parser.set_defaults(run=run)


def run(arguments: argparse.Namespace) -> int:
    """Carry out the verb; return the exit code.

    Raises:
        UsageError: no record, or a kind of file that is not known.
        RecordError: nothing of the record can be reported, or the file cannot be written.
    """
    if arguments.schema:
        say_line(json.dumps(schema(), indent=2))
        return 0
    if arguments.record is None:
        raise UsageError("Which record?", "Name the file of an attempt: checkoff report RECORD.")
    ending = _ending(arguments)
    report = report_of(Path(arguments.record), arguments.keys, with_entries=not arguments.brief)
    paper = Paper(Size(arguments.paper), arguments.large_print)
    content = _made(report, ending, paper, arguments.xapi_home if arguments.xapi else "")
    code = 1 if report.trust.proven in (Proven.BROKEN, Proven.DENIED) else 0
    if arguments.output is None:
        say_line(content.decode().rstrip("\n"))
        return code
    target = Path(arguments.output)
    if _same_file(target, Path(arguments.record)):
        raise UsageError("The report would replace its own record.", "Name another file.")
    write_document(target, content)
    for warning in report.trust.warnings:
        tell(f"Caution: {warning}")
    tell(f"Report: {shown(target)}")
    return code


def _same_file(target: Path, record: Path) -> bool:
    try:
        return target.samefile(record)
    except (OSError, ValueError):
        return False


def _ending(arguments: argparse.Namespace) -> str:
    if arguments.output is None:
        return "json" if arguments.json or arguments.xapi else "txt"
    ending = Path(arguments.output).suffix.lower().lstrip(".")
    if ending not in _ENDINGS:
        raise UsageError(f'A report cannot be a ".{ending}" file.', f"End the name with .{', .'.join(_ENDINGS)}.")
    if arguments.xapi and ending != "json":
        raise UsageError("xAPI statements are written as JSON.", "End the name with .json.")
    return ending


def _made(report: Report, ending: str, paper: Paper, xapi_home: str) -> bytes:
    """The document; each kind is imported only where it is wanted, so that the others start at once."""
    if xapi_home:
        from assistant.report.statements import statements

        return json.dumps(statements(report, xapi_home, ENGLISH.report), ensure_ascii=True, indent=2).encode() + b"\n"
    match ending:
        case "html":
            from assistant.report.html import report_html

            return report_html(report, ENGLISH.report, paper).encode()
        case "pdf":
            from assistant.report.pdf import report_pdf

            return report_pdf(report, ENGLISH.report, paper)
        case "csv":
            from assistant.report.sheet import report_csv

            return report_csv(report, ENGLISH.report).encode()
        case "json":
            return json.dumps(report.model_dump(mode="json"), ensure_ascii=True).encode() + b"\n"
        case _:
            from assistant.report.lines import report_lines

            return "\n".join(report_lines(report, ENGLISH.report)).encode()


def report_of(path: Path, keys: str | None = None, *, with_entries: bool = True) -> Report:
    """The report of a record, by what this machine knows (see `assistant.attempts.reported`).

    Args:
        path: the record.
        keys: folder of known public keys; None for the user's own.
        with_entries: list every entry.
    """
    return reported(path, here(keys), tell, with_entries=with_entries)
