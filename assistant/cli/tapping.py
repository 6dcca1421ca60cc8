"""Drops that somebody taps as they fall: an Enter for each."""

import sys
import time
from collections.abc import Callable, Iterable

from assistant.cli.printing import tell

MOST_TAPS = 500


def tapped(lines: Iterable[str] | None = None, clock: Callable[[], int] = time.monotonic_ns) -> str:
    """The times at which lines came, in seconds after the first, parted by commas.

    Args:
        lines: one for each drop; a line with a word in it ends the count. Standard input by default.
        clock: nanoseconds that only rise.
    """
    if lines is None:
        tell("Press Enter at each drop. Type any letter and Enter to end the count.")
        lines = sys.stdin
    marks: list[int] = []
    for line in lines:
        if line.strip():
            break
        marks.append(clock())
        if len(marks) == MOST_TAPS:
            break
    # Whole milliseconds: nobody taps more exactly.
    return ", ".join(_seconds(mark - marks[0]) for mark in marks)


def _seconds(nanoseconds: int) -> str:
    seconds, rest = divmod(nanoseconds // 10**6, 1000)
    return f"{seconds}.{rest:03}".rstrip("0").rstrip(".")
