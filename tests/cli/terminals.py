"""The program on a pseudo-terminal of the system."""

import fcntl
import os
import pty
import struct
import subprocess
import sys
import termios
import time

ROWS, COLUMNS = 24, 80
PATIENCE_S = 30


class Terminal:
    """The program on a terminal of its own."""

    def __init__(self, *arguments: str, columns: int = COLUMNS) -> None:
        self._mine, theirs = pty.openpty()
        fcntl.ioctl(theirs, termios.TIOCSWINSZ, struct.pack("HHHH", ROWS, columns, 0, 0))
        environment = {name: value for name, value in os.environ.items() if name not in {"COLUMNS", "LINES"}}
        self._program = subprocess.Popen(
            [sys.executable, "-m", "assistant", *arguments],
            stdin=theirs, stdout=theirs, stderr=theirs, env=environment, start_new_session=True,
        )  # fmt: skip
        os.close(theirs)
        self.text = ""

    def read_until(self, wanted: str | None) -> str:
        """What is shown until a text comes (None: until the program ends); it is not waited for again."""
        ends = time.monotonic() + PATIENCE_S
        while wanted is None or wanted not in self.text:
            assert time.monotonic() < ends, f"{wanted!r} did not come: {self.text[-500:]!r}"
            try:
                self.text += os.read(self._mine, 65_536).decode().replace("\r\n", "\n")
            except OSError:  # the program has closed its end
                assert wanted is None, f"ended before {wanted!r}: {self.text[-500:]!r}"
                break
        before, found, self.text = self.text.partition(wanted or self.text)
        return before + found

    def type(self, *lines: str) -> str:
        """Answer each question once its prompt is there; what was shown meanwhile."""
        shown = ""
        for line in lines:
            shown += self.read_until("\n> ")
            os.write(self._mine, f"{line}\n".encode())
        return shown

    def ended(self) -> str:
        """What is shown up to the end."""
        rest = self.read_until(None)
        self._program.wait(PATIENCE_S)
        return rest

    def __enter__(self) -> "Terminal":
        return self

    def __exit__(self, *_: object) -> None:
        self._program.kill()
        self._program.wait()
        os.close(self._mine)
