"""``checkoff heads``: the head of a day: which attempts began on it and where each ended, to print and to sign."""

import argparse
from datetime import UTC, datetime
from pathlib import Path

from assistant.attempts.day import day_of
from assistant.cli.folders import add_keys_option, head_book, keys_folder
from assistant.cli.printing import say_line, tell, write_json
from assistant.cli.verbs import Subparsers, add_verb
from assistant.record.short_head import short_head
from assistant.text import shown

_EXAMPLES = """\
  checkoff heads                                    of today
  checkoff heads 2026-11-25 -o 2026-11-25.head      signed with your key
  checkoff verify --day 2026-11-25.head RECORD...   is all of that day there, as it was?

Days are those of UTC. The list comes from the book of heads of this machine. Print it, or keep the signed file where
the records are not: what it says of a day cannot be changed afterwards."""


def add_parser(subparsers: Subparsers) -> None:
    """Add the verb."""
    parser = add_verb(
        subparsers,
        "heads",
        "Lists the attempts of a day by the book of heads, and signs the list.",
        _EXAMPLES,
    )
    parser.add_argument("day", nargs="?", metavar="YYYY-MM-DD", help="default: today, by UTC")
    parser.add_argument("-o", "--output", metavar="FILE", help="sign the list and write it there")
    parser.add_argument("--key", metavar="NAME", help="the key to sign with (default: your only one)")
    parser.add_argument("--json", action="store_true", help="one JSON object")
    add_keys_option(parser)
    parser.set_defaults(run=run)


def run(args: argparse.Namespace) -> int:
    """Print the list; sign it where a file is named.

    Raises:
        UsageError: that is no day.
        RecordError: the key cannot be used, or the disk refuses.
    """
    now = datetime.now(UTC)
    book = head_book()
    head = book.day(day_of(args.day) if args.day is not None else now.date())
    told: dict[str, object] = head.body(now.isoformat(timespec="microseconds"))
    lines = list(head.lines())
    if args.output is not None:
        # Only here: a list alone needs no keys.
        from assistant.attempts.signing_off import sign_day, the_only_key
        from assistant.cli.key import ask_passphrase

        folder = keys_folder(args.keys)
        name = args.key or the_only_key(folder)
        entry = sign_day(
            head, str(told["at"]), folder, name, lambda: ask_passphrase(f"Passphrase of {name}: "), Path(args.output)
        )
        told |= {"head": entry.digest, "short_head": short_head(entry.digest)}
        lines += [f"Head of the day {entry.digest}.", f"Short head of the day {short_head(entry.digest)}."]
        tell(f"Signed: {shown(args.output)}")
    if args.json:
        write_json(told)
    else:
        for line in lines:
            say_line(line)
    for problem in book.problems():
        tell(f"Caution: the book of heads does not hold. {problem}")
    return 1 if book.problems() else 0
