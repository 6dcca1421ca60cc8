"""An attempt on a real terminal (a pseudo-terminal of the system), as somebody reads it who types the answers."""

import re

import pytest

from assistant.cli.terminal import COUNTED_S, TerminalScreen
from assistant.guide.effects import Say, Tone
from assistant.guide.events import Typed
from tests.cli.terminals import ROWS, Terminal
from tests.guide.lived import START


@pytest.fixture(autouse=True)
def no_checklists_of_ones_own(monkeypatch, tmp_path):
    monkeypatch.setenv("CHECKOFF_CHECKLISTS", str(tmp_path / "mine"))


def test_a_typed_attempt(tmp_path):
    """Prompt, step, hold and result can be told apart, and no line is wider than the terminal."""
    call = ("run", "primary-line", "--typed", "--records", str(tmp_path))
    with Terminal(*call, columns=60) as terminal:
        shown = terminal.type("something missing", "stop", "yes") + terminal.ended()
    first = "\n\nStep 1 of 51\n   Read the order. Complete, clear and signed: all there,\n   or something missing?\n> "
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
