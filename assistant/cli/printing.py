"""What the program prints: results on standard output, notices on standard error."""

import json
import sys
from contextlib import suppress

from assistant.text import shown


def write_json(value: object) -> None:
    """One object on one line of standard output."""
    say_line(json.dumps(value, ensure_ascii=True))


def tell(sentence: str) -> None:
    """A notice to the person at the machine, on standard error."""
    with suppress(OSError):  # nobody reads it, or the disk it goes to is full: nothing depends on a notice
        print(shown(sentence), file=sys.stderr, flush=True)


def say_line(line: str) -> None:
    """One line of text on standard output."""
    print(line, flush=True)


def why_not(cause: OSError | ValueError) -> str:
    """Why a file could not be read or written, as the end of a sentence."""
    return getattr(cause, "strerror", None) or "its name is not a valid path"
