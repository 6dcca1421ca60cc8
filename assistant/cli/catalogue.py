"""``checkoff list``: the checklists and orders on this machine."""

import argparse
from pathlib import Path

from assistant.checklist.library import library_folder
from assistant.checklist.load import load
from assistant.checklist.teaching_order import in_teaching_order
from assistant.cli.printing import say_line, write_json
from assistant.cli.verbs import Subparsers, add_verb
from assistant.errors import AssistantError
from assistant.orders.load import available_orders, load_order

_EXAMPLES = """\
  checkoff list                what can be given to run, by name
  checkoff list --json         one JSON object per line

Your own files are found in the folder that CHECKOFF_CHECKLISTS names, or in the platform's folder
for user data; a file of yours takes precedence over one of the library with the same name."""


def add_parser(subparsers: Subparsers) -> None:
    """Add the verb."""
    parser = add_verb(
        subparsers,
        "list",
        "A checklist can be given by its name to run, demo, rehearse and print, an order to --order.",
        _EXAMPLES,
    )
    parser.add_argument("--json", action="store_true", help="one JSON object per line")
    parser.set_defaults(run=run)


def run(arguments: argparse.Namespace) -> int:
    """Carry out the verb; return the exit code."""
    rows = [_checklist(name, path) for name, path in in_teaching_order()]
    rows += [_order(name, path) for name, path in available_orders().items()]
    if arguments.json:
        for row in rows:
            write_json(row)
        return 0
    for kind, heading in (("checklist", "Checklists"), ("order", "Orders")):
        say_line(f"{heading}:")
        chosen = [row for row in rows if row["kind"] == kind]
        width = max((len(str(row["name"])) for row in chosen), default=0)
        for row in chosen:
            own = "" if row["library"] else "  (yours)"
            say_line(f"  {row['name']!s:<{width}}  {row['about']}{own}")
    return 0


def _checklist(name: str, path: Path) -> dict[str, object]:
    row = _row("checklist", name, path)
    try:
        checklist = load(str(path))
    except AssistantError as error:
        return row | {"about": f"cannot be used: {error.what}", "usable": False}
    critical = sum(step.critical for step in checklist.steps)
    size = f"{len(checklist.steps)} steps, {critical} critical"
    size = f"{size}; order {checklist.order}" if checklist.order else size
    return row | {
        "about": f"{checklist.purpose} ({size})",
        "title": checklist.title,
        "usable": True,
        "version": checklist.version,
    }


def _order(name: str, path: Path) -> dict[str, object]:
    row = _row("order", name, path)
    try:
        order = load_order(str(path))
    except AssistantError as error:
        return row | {"about": f"cannot be used: {error.what}", "usable": False}
    return row | {"about": order.title, "usable": True}


def _row(kind: str, name: str, path: Path) -> dict[str, object]:
    return {"kind": kind, "name": name, "library": path.is_relative_to(library_folder()), "file": str(path)}
