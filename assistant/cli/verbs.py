"""The verbs: what each one is for, in one line, and the one way to make its parser."""

import argparse
import textwrap
from typing import TYPE_CHECKING, TypeAlias

if TYPE_CHECKING:
    Subparsers: TypeAlias = argparse._SubParsersAction[argparse.ArgumentParser]
else:  # the class takes no parameter when the program runs
    Subparsers = argparse._SubParsersAction

VERBS = {
    "run": "one attempt: guided, heard, cross-checked, recorded",
    "demo": "the same attempt with a simulated learner",
    "resume": "go on with an interrupted attempt where it was",
    "list": "the checklists and orders on this machine",
    "lint": "check a checklist file",
    "new": "start a checklist from questions",
    "diff": "what changed between two checklists",
    "schema": "the JSON Schema of a checklist file",
    "orders": "draw fictional orders with answer keys",
    "rehearse": "read a checklist through as it sounds",
    "print": "the blank form of a checklist, or the sheets of an order",
    "verify": "check what is proven of a record",
    "heads": "the attempts of a day, to print and to sign",
    "sign-off": "sign an instructor's decision on an attempt",
    "erase-sound": "erase the sound that was kept of an attempt",
    "key": "an instructor's keys for sign-offs",
    "report": "the report of a recorded attempt: page, paper, table or data",
    "parse": "what words mean",
    "hear": "what recorded speech means",
    "say": "speak a sentence, or write it to a sound file",
    "audio": "microphones and loudspeakers, with a check",
    "models": "recognisers on this machine",
    "settings": "show the settings, or change one",
    "calc": "the infusion arithmetic",
    "course": "which line flows when",
}
"""The verbs with their summaries, in the order of the help."""

_WIDTH = 100
"""Characters of a line of the help that is not wrapped by argparse."""


def add_verb(subparsers: Subparsers, verb: str, description: str, examples: str) -> argparse.ArgumentParser:
    """Add a verb; its help begins with its summary and ends with its examples.

    Args:
        subparsers: those of the program.
        verb: one of `VERBS`.
        description: whole sentences that say more than the summary does.
        examples: one call a line, indented by two spaces, what it does after two or more spaces; further
            paragraphs may follow.
    """
    summary = VERBS[verb]
    return subparsers.add_parser(
        verb,
        help=summary,
        description=f"{summary[0].upper()}{summary[1:]}.\n\n{textwrap.fill(description, _WIDTH)}",
        epilog=f"examples:\n{examples}",
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )
