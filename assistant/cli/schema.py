"""``checkoff schema``: the JSON Schema of a checklist file, for editors."""

import argparse
import json
from pathlib import Path

from assistant.checklist.schema import FILE_NAME, checklist_schema
from assistant.cli.printing import say_line, tell
from assistant.cli.verbs import Subparsers, add_verb
from assistant.record.document import write_document
from assistant.text import shown

_EXAMPLES = f"""\
  checkoff schema                          print it
  checkoff schema -o {FILE_NAME}   write it beside your checklists

An editor with TOML support completes and checks a checklist whose first line is
  #:schema {FILE_NAME}
What no schema can tell, checkoff lint does."""


def add_parser(subparsers: Subparsers) -> None:
    """Add the verb."""
    parser = add_verb(
        subparsers,
        "schema",
        "With it, an editor can complete and check a checklist while it is being written.",
        _EXAMPLES,
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
