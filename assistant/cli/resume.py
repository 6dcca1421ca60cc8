"""``checkoff resume``: takes an interrupted attempt up where it was."""

import argparse
from pathlib import Path

from assistant.attempts.begun import ResumedAttempt
from assistant.attempts.papers import papers_of
from assistant.cli.folders import head_book, records_folder
from assistant.cli.printing import tell
from assistant.cli.run import add_sound_options, sit_and_live
from assistant.cli.verbs import Subparsers, add_verb
from assistant.errors import UsageError
from assistant.record.chain import Problem
from assistant.record.file import RecordFile
from assistant.record.heads import Seen
from assistant.record.verify import verify
from assistant.text import shown

MOST_NAMED = 5
"""Records that a question names, the newest first."""

_EXAMPLES = """\
  checkoff resume
  checkoff resume 20261125T090000-primary-line-A17.jsonl
  checkoff resume RECORD --typed"""


def add_parser(subparsers: Subparsers) -> None:
    """Add the verb."""
    parser = add_verb(
        subparsers,
        "resume",
        "Reads the record, replays it, and continues at the step where the attempt was interrupted.",
        _EXAMPLES,
    )
    parser.add_argument(
        "record", nargs="?", metavar="RECORD", help="the record of the attempt (default: the only one not finished)"
    )
    add_sound_options(parser)
    parser.set_defaults(run=run)


def run(arguments: argparse.Namespace) -> int:
    """Carry out the verb; return the exit code."""
    path = Path(arguments.record) if arguments.record else _the_only_open_one(records_folder())
    book = head_book()
    record = RecordFile.reopen(path, book=book)
    if book.standing(record.entries).seen is Seen.NEVER:
        tell(
            f"Caution: this machine has never seen {shown(path)}. Who made its entries, and whether there were more, "
            "is not known here."
        )
    try:
        attempt = ResumedAttempt(papers_of(record.entries[0], path), record, book.path.parent)
    except BaseException:
        record.close()
        raise
    return sit_and_live(attempt, arguments)


def _the_only_open_one(folder: Path) -> Path:
    """The one record in the folder whose attempt is not over.

    Raises:
        UsageError: there is none, or there are several.
    """
    found = [path for path in sorted(folder.glob("*.jsonl"), reverse=True) if _is_open(path)]
    if not found:
        raise UsageError(
            f"There is no unfinished attempt in {shown(folder)}.", "To resume one stored elsewhere, give its path."
        )
    if len(found) > 1:
        names = ", ".join(shown(path.name) for path in found[:MOST_NAMED])
        more = f" and {len(found) - MOST_NAMED} older" if len(found) > MOST_NAMED else ""
        raise UsageError(
            f"Several attempts in {shown(folder)} are unfinished: {names}{more}.", "Name the one to resume."
        )
    tell(f"Resuming {shown(found[0])}.")
    return found[0]


def _is_open(path: Path) -> bool:
    verdict = verify(path)
    return verdict.problem in (Problem.NOT_SEALED, Problem.TORN_TAIL) and verdict.count > 0 and not verdict.sealed
