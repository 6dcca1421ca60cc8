"""``checkoff resume``: takes an interrupted attempt up where it was."""

import argparse
from datetime import UTC, datetime
from pathlib import Path

from assistant.cli.attempt import RecordPlace, lived_again, papers_of
from assistant.cli.run import add_sound_options, attempt
from assistant.record.file import RecordFile

_EXAMPLES = """\
examples:
  checkoff resume 20261125T090000-primary-line-A17.jsonl
  checkoff resume RECORD --typed"""


def add_parser(subparsers: "argparse._SubParsersAction[argparse.ArgumentParser]") -> None:
    """Add the verb."""
    parser = subparsers.add_parser(
        "resume",
        help="take up an interrupted attempt where it was",
        description="Read the record, live it again, and go on at the step where it was interrupted.",
        epilog=_EXAMPLES,
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )
    parser.add_argument("record", help="the record of the attempt")
    add_sound_options(parser)
    parser.set_defaults(run=run)


def run(arguments: argparse.Namespace) -> int:
    """Carry out the verb; return the exit code."""
    path = Path(arguments.record)
    record = RecordFile.reopen(path)
    try:
        papers = papers_of(record.entries[0], path)
        guide, mode = lived_again(papers, record.entries, path)
    except BaseException:
        record.close()
        raise
    place = RecordPlace(str(path.parent), papers.checklist.name, "resumed", datetime.now(UTC))
    return attempt(arguments, papers, mode, {}, place, (guide, record))
