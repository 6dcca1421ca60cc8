"""``checkoff resume``: takes an interrupted attempt up where it was."""

import argparse
from datetime import UTC, datetime
from pathlib import Path

from assistant.cli.attempt import RecordPlace, papers_of
from assistant.cli.run import add_sound_options, attempt
from assistant.errors import RecordError
from assistant.guide.guide import ReplayError
from assistant.guide.progress import Mode
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
        opening = record.entries[0]
        papers = papers_of(opening, path)
        mode = Mode(str(opening.get("mode")))
        pinned = {name: str(value) for name, value in opening.items() if isinstance(value, str)}
        guide = papers.guide(mode, pinned)
        try:
            guide.replay(record.entries)
        except ReplayError as error:
            raise RecordError(
                f"{path}: {error}, so it was made by another version of this program.",
                "Resume it with that version, or start a new attempt.",
            ) from error
    except BaseException:
        record.close()
        raise
    place = RecordPlace(str(path.parent), papers.checklist.name, "resumed", datetime.now(UTC))
    return attempt(arguments, papers, mode, {}, place, (guide, record))
