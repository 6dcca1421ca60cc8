"""Lines on the screen of a bench."""

import sys


def say(line: str) -> None:
    """One line at once."""
    sys.stdout.write(f"{line}\n")
    sys.stdout.flush()
