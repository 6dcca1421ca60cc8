"""An attempt on a real terminal (a pseudo-terminal of the system), as somebody reads it who types the answers."""

import fcntl
import os
import pty
import re
import struct
import subprocess
import sys
import termios
import time

import pytest

from assistant.cli.terminal import COUNTED_S, TerminalScreen
from assistant.guide.effects import Say, Tone
from assistant.guide.events import Typed
from tests.guide.lived import START

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


@pytest.fixture(autouse=True)
def no_checklists_of_ones_own(monkeypatch, tmp_path):
    monkeypatch.setenv("CHECKOFF_CHECKLISTS", str(tmp_path / "mine"))


def test_a_typed_attempt(tmp_path):
    """Prompt, step, hold and result can be told apart, and no line is wider than the terminal."""
    call = ("run", "primary-line", "--typed", "--records", str(tmp_path))
    with Terminal(*call, columns=60) as terminal:
        shown = terminal.type("something missing", "stop", "yes") + terminal.ended()
    first = "\n\nStep 1 of 47\n   Read the order. Complete, clear and signed: all there,\n   or something missing?\n> "
    assert first in shown
    assert re.search(r"\n   HOLD\n   \| .+\n   \| ", shown)
    assert [line for line in shown.splitlines() if len(line) > 59 and str(tmp_path) not in line] == []
    assert "To continue: checkoff resume" in shown


@pytest.mark.parametrize("slip", ["tenfold", "skip-critical", "too-slow"])
def test_the_result_is_what_one_reads_last(slip, tmp_path):
    """The result of an attempt that went wrong, with where its record is, is on the last screen that is seen."""
    call = ("demo", "primary-and-secondary", "--mode", "check-off", "--as", "unaware", "--slip", slip)
    with Terminal(*call, "--records", str(tmp_path)) as terminal:
        shown = terminal.ended()
    last = shown.splitlines()[-ROWS + 1 :]  # the shell's prompt takes the last row
    outcome = next(place for place, line in enumerate(last) if line.startswith("Result: "))
    assert last[outcome + 1].endswith("%).")
    assert any(line.startswith("Short head: ") for line in last)
    listed = shown.splitlines()[shown.splitlines().index("Critical steps:") :] if "Critical steps:" in shown else []
    assert len(listed) < ROWS


def test_a_wait_counts_down_on_one_line(capsys):
    """Every few seconds, not every one, and what follows is on a line of its own."""
    screen = TerminalScreen(prompts=True)
    for left in range(20, -1, -1):
        screen.waits(left)
        screen.waits(left)
    screen.show(Say("Time is up.", "", Tone.AGREES))
    counted = "".join(f" {left} s ..." for left in range(20, 0, -COUNTED_S))
    assert capsys.readouterr().out == f"  {counted}\n   Time is up.\n"


def test_what_was_typed_is_not_shown_twice(capsys):
    """The terminal has shown it; from a pipe it has to be shown."""
    for prompts in (True, False):
        screen = TerminalScreen(prompts=prompts)
        screen.asked(paused=False)
        screen.asked(paused=False)
        screen.taken(Typed(START, "done"))
        screen.show(Say("Good.", "", Tone.NOTICE))
    assert capsys.readouterr().out == ">    Good.\n> done\n   Good.\n"
