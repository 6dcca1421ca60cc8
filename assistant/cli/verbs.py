"""The verbs: what each one is for, in one line, and the one way to make its parser."""

import argparse
import re
import textwrap
from typing import TYPE_CHECKING, TypeAlias

if TYPE_CHECKING:
    Subparsers: TypeAlias = argparse._SubParsersAction[argparse.ArgumentParser]
else:  # the class takes no parameter when the program runs
    Subparsers = argparse._SubParsersAction

VERBS = {
    "run": "one attempt: guided, heard, cross-checked, recorded",
    "demo": "the same attempt with a simulated learner",
    "desk": "the instructor's desk in the browser: start, watch, mark, sign",
    "station": "take attempts from an instructor's desk, one after the other",
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
    "completion": "let your shell complete verbs and options",
}
"""The verbs with their summaries, in the order of the help."""

WIDTH = 79
"""Characters of a line of the help: it fits a terminal that nobody has made wider."""
_CONTINUED = " \\\n      "
"""Goes on with a call on the next line, as a shell reads it."""


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
        description=f"{summary[0].upper()}{summary[1:]}.\n\n{textwrap.fill(description, WIDTH)}",
        epilog=fitted(f"examples:\n{examples}"),
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )


def fitted(epilog: str) -> str:
    """What stands below the options, in lines of at most `WIDTH` characters.

    Paragraphs are filled. An example that is too long gets its explanation as a shell's comment on a line of its own,
    and is itself continued as a shell reads it.
    """
    paragraphs = re.sub(r" \\\n *", " ", epilog).split("\n\n")
    return "\n\n".join(_paragraph(paragraph.split("\n")) for paragraph in paragraphs)


def _paragraph(lines: list[str]) -> str:
    if max(map(len, lines)) <= WIDTH:
        return "\n".join(lines)
    if not any(line.startswith(" ") for line in lines):
        return textwrap.fill(" ".join(lines), WIDTH)
    return "\n".join(_line(line) for line in lines)


def _line(line: str) -> str:
    if len(line) <= WIDTH:
        return line
    before, comment, _ = line.partition("# ")
    if comment and before.strip():  # a line of a file: its comment goes on as one
        return textwrap.fill(line, WIDTH, subsequent_indent=f"{' ' * len(before)}# ")
    if not line.startswith("  checkoff "):
        indent = " " * (len(line) - len(line.lstrip()) + 2)
        return textwrap.fill(line, WIDTH, subsequent_indent=indent, break_on_hyphens=False)
    call, *why = re.split(r" {2,}", line.strip())
    options = re.split(r" (?=--)", call)
    rows = [f"  {options[0]}"]
    for option in options[1:]:
        if len(_CONTINUED) - 1 + len(rows[-1]) + len(option) <= WIDTH:
            rows[-1] += f" {option}"
        else:
            rows.append(option)
    comment = textwrap.fill(" ".join(why), WIDTH, initial_indent="      # ", subsequent_indent="      # ")
    return _CONTINUED.join(rows) + (f"\n{comment}" if why else "")
