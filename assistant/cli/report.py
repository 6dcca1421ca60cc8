"""``checkoff report``: the result of a recorded attempt, from its verified record."""

import argparse
from pathlib import Path

from assistant.cli.attempt import lived_again, papers_of
from assistant.cli.screen import say_line, write_json
from assistant.guide.effects import Outcome
from assistant.record.verify import read_entries, verify
from assistant.report.results import lines

_EXAMPLES = """\
examples:
  checkoff report RECORD
  checkoff report RECORD --json"""


def add_parser(subparsers: "argparse._SubParsersAction[argparse.ArgumentParser]") -> None:
    """Add the verb."""
    parser = subparsers.add_parser(
        "report",
        help="the result of a recorded attempt",
        description="Verify a record, live it again, and print the result per step, critical steps first.",
        epilog=_EXAMPLES,
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )
    parser.add_argument("record", help="the record of the attempt")
    parser.add_argument("--json", action="store_true", help="one JSON object")
    parser.set_defaults(run=run)


def run(arguments: argparse.Namespace) -> int:
    """Carry out the verb; return the exit code."""
    path = Path(arguments.record)
    verdict = verify(path)
    entries = read_entries(path)
    papers = papers_of(entries[0], path)
    guide, _ = lived_again(papers, entries, path)
    results = guide.results()
    # Sign-offs may follow the seal.
    seal = next((entry for entry in entries if "seal" in entry), None)
    outcome = Outcome(str(seal["outcome"])) if seal is not None else Outcome.STOPPED
    trust = (
        f"The record is whole: {verdict.count} entries, head {verdict.head}."
        if verdict.ok
        else f"Caution: this record does not hold ({verdict.problem}). {verdict.why}"
    )
    if arguments.json:
        write_json(
            {
                "outcome": outcome.value,
                "sealed": verdict.sealed,
                "head": verdict.head,
                "results": results.body(),
            }
        )
        return 0
    for line in [trust, *lines(results, outcome)]:
        say_line(line)
    return 0
