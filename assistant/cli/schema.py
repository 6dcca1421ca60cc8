"""``checkoff schema``: the JSON Schema of a checklist file, for editors."""

import argparse
import json
from pathlib import Path

from assistant.checklist.schema import FILE_NAME, checklist_schema
from assistant.cli.screen import say_line, tell
from assistant.cli.written import write_document
from assistant.record.paths import shown

_EXAMPLES = f"""\
examples:
  checkoff schema                          print it
  checkoff schema -o {FILE_NAME}   write it beside your checklists

An editor with TOML support completes and checks a checklist whose first line is
  #:schema {FILE_NAME}
What no schema can tell, checkoff lint does."""


def add_parser(subparsers: "argparse._SubParsersAction[argparse.ArgumentParser]") -> None:
    """Add the verb."""
    parser = subparsers.add_parser(
        "schema",
        help="the JSON Schema of a checklist file",
        description="Print the JSON Schema of a checklist file, for editors that complete and check.",
        epilog=_EXAMPLES,
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )
    parser.add_argument("-o", "--output", type=Path, metavar="FILE", help="write it to a file")
    parser.set_defaults(run=run)


def run(arguments: argparse.Namespace) -> int:
    """Carry out the verb; return the exit code."""
    text = json.dumps(checklist_schema(), indent=2, ensure_ascii=False)
    if arguments.output is None:
        say_line(text)
    else:
        write_document(arguments.output, f"{text}\n".encode())
        tell(f"Schema: {shown(arguments.output)}")
    return 0
