"""``checkoff lint FILE...``: what is wrong in a checklist, at which line, and how to mend it."""

import argparse

from assistant.checklist.lint import Finding, Known, Severity, from_error, lint
from assistant.checklist.load import read_sheet
from assistant.cli.screen import say_line, tell, write_json
from assistant.orders.load import available_orders
from assistant.orders.solve import KEY_UNITS

_EXAMPLES = """\
examples:
  checkoff lint my-checklist.toml             every finding with file, line and remedy
  checkoff lint primary-line secondary-line   checklists of the library, by name
  checkoff lint --strict *.toml               warnings count too
  checkoff lint --json my-checklist.toml      one JSON object a finding

Exit codes: 0 nothing to mend, 1 something is wrong (with --strict a warning too)."""


def add_parser(subparsers: "argparse._SubParsersAction[argparse.ArgumentParser]") -> None:
    """Add the verb."""
    parser = subparsers.add_parser(
        "lint",
        help="check a checklist file",
        description="Read checklists as the program does, and name whatever would go wrong with a learner.",
        epilog=_EXAMPLES,
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )
    parser.add_argument("files", nargs="+", metavar="FILE", help="path or name of a checklist")
    parser.add_argument("--strict", action="store_true", help="fail on warnings too")
    parser.add_argument("--json", action="store_true", help="one JSON object a finding")
    parser.set_defaults(run=run)


def run(arguments: argparse.Namespace) -> int:
    """Carry out the verb; return the exit code."""
    known = Known(KEY_UNITS, frozenset(available_orders()))
    findings = list(dict.fromkeys(found for file in arguments.files for found in findings_of(file, known)))
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


def findings_of(file: str, known: Known) -> tuple[Finding, ...]:
    """The findings of one file: what keeps it from loading, or what the rules say."""
    sheet, faults = read_sheet(file)
    if sheet is not None:
        return lint(sheet, known)
    return tuple(sorted((from_error(fault, file) for fault in faults), key=lambda found: (found.file, found.line)))


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
