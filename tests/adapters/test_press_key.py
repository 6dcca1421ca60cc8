"""The space bar as a press, on a real terminal device."""

import os
import sys

import pytest

from assistant.adapters.keyboard import LineSource
from assistant.adapters.press_key import space_bar_presses

pytestmark = pytest.mark.skipif(sys.platform == "win32", reason="Enter alone is the key there")


@pytest.fixture
def terminal():
    typing, reading = os.openpty()
    with os.fdopen(typing, "wb", buffering=0) as keys, os.fdopen(reading, "rb", buffering=0) as lines:
        yield keys, lines


def test_a_space_at_the_beginning_is_a_press_and_within_words_a_space(terminal):
    """It comes at once, without Enter; words are typed as ever, with Enter alone as a press as well."""
    keys, lines = terminal
    source = LineSource(space_bar_presses(lines, lines.fileno()))
    keys.write(b" ")
    assert source.next_line(5) == ""
    keys.write(b"eighty three")
    assert source.next_line(0.2) is None
    keys.write(b" point three\n")
    assert source.next_line(5) == "eighty three point three"
    keys.write(b"\n")
    assert source.next_line(5) == ""
    keys.write(b" ")
    assert source.next_line(5) == ""
    source.close()
    keys.write(b"\n")


def test_the_terminal_is_left_as_it_was(terminal):
    """Afterwards a space is a space again."""
    import termios

    _, lines = terminal
    before = termios.tcgetattr(lines.fileno())
    presses = space_bar_presses(lines, lines.fileno())
    assert presses is not None
    assert termios.tcgetattr(lines.fileno()) != before
    presses.close()
    assert termios.tcgetattr(lines.fileno()) == before


def test_what_is_no_terminal_is_left_alone(tmp_path):
    """A pipe or a file has no keys."""
    (tmp_path / "lines").write_bytes(b" yes\n")
    with (tmp_path / "lines").open("rb", buffering=0) as lines:
        assert space_bar_presses(lines, lines.fileno()) is None
