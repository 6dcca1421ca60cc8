"""``checkoff erase-sound``: erases the sound that was kept beside records, and says so in them."""

import argparse
from collections.abc import Iterator
from datetime import UTC, datetime, timedelta
from pathlib import Path

from assistant.cli.folders import head_book, records_folder
from assistant.cli.printing import say_line, tell, write_json
from assistant.cli.verbs import Subparsers, add_verb
from assistant.errors import RecordError, UsageError
from assistant.record.entry import ERASURE_REASONS
from assistant.record.file import RecordFile
from assistant.record.paths import sound_folder
from assistant.record.sound import has_sound
from assistant.record.verify import read_record
from assistant.text import shown

_ASKED_FOR, _PAST_ITS_TIME = ERASURE_REASONS

_EXAMPLES = """\
  checkoff erase-sound RECORD
  checkoff erase-sound --due
  checkoff erase-sound --due --days 7 --records ~/lab/records

The words that were recognised stay in the record; only the sound is erased, and the record says so.
How long sound may be kept is a setting: checkoff settings set records.sound_days 30"""


def add_parser(subparsers: Subparsers) -> None:
    """Add the verb."""
    parser = add_verb(
        subparsers,
        "erase-sound",
        "Erases the sound files beside the records for good, and adds an entry that says so.",
        _EXAMPLES,
    )
    parser.add_argument("record", nargs="*", metavar="RECORD", help="the record of an attempt")
    parser.add_argument("--due", action="store_true", help="every record whose sound is older than allowed")
    parser.add_argument("--days", type=int, metavar="N", help="with --due: how old (default: the setting)")
    parser.add_argument("--records", metavar="FOLDER", help="with --due: where the records are")
    parser.add_argument("--json", action="store_true", help="one JSON object per record")
    parser.set_defaults(run=run)


def run(args: argparse.Namespace) -> int:
    """Erase and tell; 0 if everything could be erased.

    Raises:
        UsageError: neither records nor --due, or both; fewer than no days.
    """
    if bool(args.record) == args.due:
        raise UsageError("Which sound is to be erased?", "Name records, or give --due.")
    if not args.due and (args.days is not None or args.records is not None):
        raise UsageError("--days and --records go with --due.", "Leave them out, or give --due.")
    if args.days is not None and args.days < 0:
        raise UsageError("--days cannot be negative.", "Give another number.")
    reason = _PAST_ITS_TIME if args.due else _ASKED_FOR
    all_erased, found = True, False
    for path in _due(args) if args.due else map(Path, args.record):
        found = True
        try:
            count = _erase(path, reason)
        except RecordError as error:
            all_erased = False
            tell(str(error))
            continue
        if args.json:
            write_json({"file": shown(path), "erased": count})
        elif count is None:
            say_line(f"{shown(path)}: no sound is kept.")
        else:
            say_line(f"{shown(path)}: {count} sound {'file' if count == 1 else 'files'} erased.")
    if args.due and not found and not args.json:
        say_line("No sound is due to be erased.")
    return 0 if all_erased else 1


def _erase(path: Path, reason: str) -> int | None:
    """Erase one record's sound; return the number of files, None where none was kept."""
    reading = read_record(path)
    if not reading.entries:
        raise RecordError(f"{shown(path)}: {reading.verdict.problem}. {reading.verdict.why}", "Name a record.")
    if not has_sound(path, reading.entries):
        return None
    return RecordFile.erase_sound(path, reason, head_book())


def _due(args: argparse.Namespace) -> Iterator[Path]:
    """Records whose sound is past its time, oldest name first."""
    # Only here: without --due no settings are read.
    from assistant.settings import load_settings

    folder = records_folder(args.records)
    days = load_settings().records.sound_days if args.days is None else args.days
    if not folder.is_dir():
        raise RecordError(f"There is no folder {shown(folder)}.", "Give the records' folder with --records.")
    limit = (datetime.now(UTC) - timedelta(days=days)).isoformat(timespec="microseconds")
    for path in sorted(folder.glob("*.jsonl")):
        if sound_folder(path).is_dir():
            entries = read_record(path).entries
            if entries and str(entries[0].get("at", "")) <= limit:
                yield path
