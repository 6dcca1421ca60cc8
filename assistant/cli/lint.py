"""``checkoff lint FILE...``: what is wrong in a checklist, at which line, and how to mend it."""

import argparse
from decimal import Decimal
from pathlib import Path

from assistant.adapters.models import Engine, knows_english, stored
from assistant.checklist import library
from assistant.checklist.finding import Finding, Known, Severity
from assistant.checklist.includes import parts_in
from assistant.checklist.lint import from_error, lint
from assistant.checklist.load import read_sheet
from assistant.checklist.model import Checklist
from assistant.checklist.paper_file import read_paper
from assistant.checklist.rules.listing import RULES
from assistant.cli.printing import say_line, tell, write_json
from assistant.cli.verbs import Subparsers, add_verb
from assistant.dosing import Amount
from assistant.errors import AssistantError, ChecklistError, UsageError
from assistant.orders.checked import findings_of_order
from assistant.orders.load import available_orders, load_order
from assistant.orders.solve import KEY_UNITS, answer_key
from assistant.text import quoted

_EXAMPLES = """\
  checkoff lint my-checklist.toml             every finding with file, line and remedy
  checkoff lint primary-line secondary-line   checklists of the library, by name
  checkoff lint my-checklists                 every checklist and part of a folder
  checkoff lint --strict *.toml               warnings count too
  checkoff lint --fix my-checklist.toml       mend what is mechanical, then name the rest
  checkoff lint --json my-checklist.toml      one JSON object per finding
  checkoff lint --rules                       every rule, with an example

Exit codes: 0 nothing to mend, 1 something is wrong (with --strict a warning too)."""


def add_parser(subparsers: Subparsers) -> None:
    """Add the verb."""
    parser = add_verb(
        subparsers,
        "lint",
        "Reads checklists as the program does, and names whatever would go wrong with a learner.",
        _EXAMPLES,
    )
    parser.add_argument("files", nargs="*", metavar="FILE", help="path or name of a checklist or an order, or a folder")
    parser.add_argument("--strict", action="store_true", help="fail on warnings too")
    parser.add_argument("--fix", action="store_true", help="mend what is mechanical, in the files themselves")
    parser.add_argument("--rules", action="store_true", help="list the rules instead")
    parser.add_argument("--json", action="store_true", help="one JSON object per finding")
    parser.set_defaults(run=run)


def run(arguments: argparse.Namespace) -> int:
    """Carry out the verb; return the exit code."""
    if arguments.rules:
        return _list_rules(as_json=arguments.json)
    if not arguments.files:
        raise UsageError("No checklist was given.", "Name a file or a folder, for example: checkoff lint my.toml")
    files = [file for given in arguments.files for file in _files(given)]
    if arguments.fix:
        for file in files:
            _fix(file)
    known = what_is_known()
    findings = list(dict.fromkeys(found for file in files for found in findings_of(file, known)))
    for found in findings:
        if arguments.json:
            write_json(_row(found))
        else:
            say_line(f"{found.file}:{found.line}: {found.severity} {found.rule}: {found.what} {found.mend}".rstrip())
    errors = sum(found.severity is Severity.ERROR for found in findings)
    warnings = len(findings) - errors
    if not arguments.json:
        tell(f"{_count(errors, 'error')}, {_count(warnings, 'warning')}.")
    return 1 if errors or (arguments.strict and warnings) else 0


def what_is_known() -> Known:
    """The keys, orders and recognisers' words of this machine."""
    orders = available_orders()
    answers = {name: found for name in orders if (found := _answers(name))}
    return Known(KEY_UNITS, frozenset(orders), answers, _vocabularies())


def findings_of(file: str, known: Known) -> tuple[Finding, ...]:
    """The findings of one file: what keeps it from loading, or what the rules say."""
    if (order := findings_of_order(file)) is not None:
        return order
    sheet, faults = read_sheet(file)
    if sheet is not None:
        return lint(sheet, known, _installed(sheet.paper.path))
    return tuple(sorted((from_error(fault, file) for fault in faults), key=lambda found: (found.file, found.line)))


def _installed(path: Path) -> Checklist | None:
    """The library's checklist of the same name, where the file is another one."""
    own = library.library_folder() / path.name
    if not own.is_file() or path.resolve() == own.resolve() or path.stem in library.NO_CHECKLISTS:
        return None
    sheet, _faults = read_sheet(str(own))
    return sheet.checklist if sheet else None


def _files(given: str) -> list[str]:
    """The checklists that an argument means: of a folder, all of it with its parts."""
    folder = Path(given)
    if not folder.is_dir():
        return [given]
    files = [path for path in sorted(folder.glob("*.toml")) if path.stem not in library.NO_CHECKLISTS]
    found = [str(path) for path in (*files, *parts_in(folder))]
    if not found:
        raise ChecklistError(f"{quoted(given)} holds no checklist.", "Name a folder with files that end in .toml.")
    return found


def _fix(file: str) -> None:
    """Mend a file where it lies; what cannot be read is left to the findings."""
    path = library.find(file, "checklist", ChecklistError)
    try:
        paper = read_paper(path, ChecklistError)
    except ChecklistError:
        return
    # Only here: mending takes a library that looking does not need.
    from assistant.checklist.mending import mend

    mended = mend(paper.content)
    if not mended.changes:
        return
    try:
        path.write_text(mended.text, encoding="utf-8", newline="")
    except OSError as cause:
        raise ChecklistError(f"{path} cannot be written: {cause.strerror}.", "Check its permissions.") from cause
    for change in mended.changes:
        tell(f"{path}: {change}.")


def _answers(order: str) -> dict[str, str | Amount]:
    """The answer key of an order; nothing where the order cannot be used, which checkoff list tells."""
    try:
        key = answer_key(load_order(order))
    except AssistantError:
        return {}
    return {
        name: Amount(entry.value, entry.unit or "") if isinstance(entry.value, Decimal) else entry.value
        for name, entry in key.items()
    }


def _vocabularies() -> dict[str, frozenset[str]]:
    """The words that each model with a fixed vocabulary can hear; the bundled model spells any word."""
    words: dict[str, frozenset[str]] = {}
    for model in stored():
        table = model.path / "graph" / "words.txt"
        if model.engine is Engine.VOSK and table.is_file() and knows_english(model):
            try:
                lines = table.read_text(encoding="utf-8").splitlines()
            except (OSError, UnicodeDecodeError):  # checkoff models tells about it
                continue
            words[model.name] = frozenset(line.split(" ")[0] for line in lines)
    return words


def _list_rules(*, as_json: bool) -> int:
    for rule in RULES:
        if as_json:
            write_json(
                {
                    "rule": rule.name,
                    "severity": rule.severity.value,
                    "about": rule.about,
                    "example": rule.example,
                    "fixed": rule.fixed,
                }
            )
        else:
            mended = "  (--fix)" if rule.fixed else ""
            say_line(f"{rule.name:<16} {rule.severity.value:<8} {rule.about}{mended}")
            say_line(f"{'':<16} {'':<8} named: {rule.example}")
    return 0


def _row(found: Finding) -> dict[str, object]:
    return {
        "file": found.file,
        "line": found.line,
        "rule": found.rule,
        "severity": found.severity.value,
        "what": found.what,
        "mend": found.mend,
    }


def _count(number: int, word: str) -> str:
    return f"{number} {word}{'' if number == 1 else 's'}"
