"""The space bar as a key to press before speaking, on a terminal that hands out whole lines.

The terminal is told that a space ends what it hands out, as the end of a line does. A space at the beginning of a
line is then a press; within words it stays a space. What stands before a space cannot be rubbed out any more.
"""

import atexit
import contextlib
import sys
from collections.abc import Callable

from assistant.adapters.keyboard import ByteSource

if sys.platform != "win32":  # there Enter alone is the key
    import termios

_CONTROL_CHARACTERS = 6
_SPACE = b" "


class SpaceBarPresses:
    """Bytes of a terminal in which a space at the beginning of a line is an empty line.

    Args:
        terminal: gives what was typed up to a space or the end of a line.
        restore: puts the terminal back as it was.
    """

    def __init__(self, terminal: ByteSource, restore: Callable[[], None] = lambda: None) -> None:
        self._terminal = terminal
        self._restore = restore
        self._at_beginning = True

    def read(self, size: int, /) -> bytes | None:
        """As `ByteSource.read`."""
        block = self._terminal.read(size)
        if self._at_beginning and block == _SPACE:
            return b"\n"
        if block:
            self._at_beginning = block.endswith(b"\n")
        return block

    def close(self) -> None:
        """Put the terminal back as it was."""
        self._restore()


def space_bar_presses(terminal: ByteSource, descriptor: int) -> SpaceBarPresses | None:
    """Let the space bar count as a press of Enter on an empty line; None where this is no such terminal.

    Args:
        terminal: what reads from it.
        descriptor: its file descriptor.
    """
    if sys.platform == "win32":
        return None
    try:
        before = termios.tcgetattr(descriptor)
        changed = termios.tcgetattr(descriptor)
        changed[_CONTROL_CHARACTERS][termios.VEOL] = _SPACE
        termios.tcsetattr(descriptor, termios.TCSANOW, changed)
    except termios.error:
        return None

    def restore() -> None:
        with contextlib.suppress(termios.error, OSError):
            termios.tcsetattr(descriptor, termios.TCSANOW, before)

    # Also after an error: a terminal is its owner's.
    atexit.register(restore)
    return SpaceBarPresses(terminal, restore)
