"""``checkoff diff A B``: what changed between two checklists, in words."""

import argparse

from assistant.checklist.differences import Difference, differences
from assistant.checklist.load import load
from assistant.cli.printing import say_line, tell, write_json
from assistant.cli.verbs import Subparsers, add_verb

_EXAMPLES = """\
  checkoff diff old/primary-line.toml primary-line     an older copy against the library's
  checkoff diff primary-line my-primary-line.toml      what you changed
  checkoff diff A.toml B.toml --json                   one JSON object per difference

Exit code 0, whether they differ or not."""


def add_parser(subparsers: Subparsers) -> None:
    """Add the verb."""
    parser = add_verb(
        subparsers,
        "diff",
        "Names each change in words, step by step.",
        _EXAMPLES,
    )
    parser.add_argument("before", metavar="A", help="path or name of the earlier one")
    parser.add_argument("after", metavar="B", help="path or name of the later one")
    parser.add_argument("--json", action="store_true", help="one JSON object per difference")
    parser.set_defaults(run=run)


def run(arguments: argparse.Namespace) -> int:
    """Carry out the verb; return the exit code."""
    before, after = load(arguments.before), load(arguments.after)
    found = differences(before, after)
    for difference in found:
        if arguments.json:
            write_json({"step": difference.step, "kind": difference.kind, "words": difference.words})
        else:
            say_line(_line(difference))
    if not found:
        tell("They do not differ.")
    elif before.version == after.version:
        tell(f"Both are version {after.version}: give the later one a new version.")
    return 0


def _line(difference: Difference) -> str:
    return f"{difference.step or 'head'}: {difference.words}"
