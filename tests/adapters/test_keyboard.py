"""Typed input from pipes and terminals."""

import io
import os
import queue
import subprocess
import sys
import threading
import tracemalloc

import pytest

from assistant.adapters.clock import SystemClock
from assistant.adapters.keyboard import ENDED, LONGEST_LINE, Keyboard, LineSource
from assistant.guide.events import InputEnded, Typed


def all_lines(data: bytes) -> list[str]:
    source = LineSource(io.BytesIO(data))
    lines = []
    while (line := source.next_line(timeout=5)) is not ENDED:
        assert line is not None
        lines.append(line)
    return lines


@pytest.mark.parametrize(
    ("data", "lines"),
    [
        (b"", []),
        (b"yes\n", ["yes"]),
        (b"yes", ["yes"]),
        (b"yes\r\nno\r\n", ["yes", "no"]),
        (b"\n\n", ["", ""]),
        ("83,3 mL/h \u2013 ja\n".encode(), ["83,3 mL/h \u2013 ja"]),
        (b"one \xff twenty\n", ["one \ufffd twenty"]),
        (b"cut \xe2\x82", ["cut \ufffd"]),
        (b"a\x00b\x1b[31m\n", ["a\x00b\x1b[31m"]),
        (b"x" * (LONGEST_LINE - 1) + b"\n", ["x" * (LONGEST_LINE - 1)]),
        (b"x" * (LONGEST_LINE + 1) + b"\nyes\n", ["x" * LONGEST_LINE, "yes"]),
        ("\u20ac".encode() * (LONGEST_LINE + 7) + b"\n", ["\u20ac" * LONGEST_LINE]),
    ],
)
def test_bytes_become_lines(data, lines):
    """Every byte string gives its lines; what is not UTF-8 is replaced, what is too long is cut."""
    assert all_lines(data) == lines


@pytest.mark.parametrize("size", [1, 2, 3, 7])
def test_block_size_makes_no_difference(size):
    """The same bytes in blocks of any size are the same lines, also where a block ends within a character."""
    data = "eighty three\r\n\u20ac5\nlast".encode()

    class Slow(io.BytesIO):
        def read(self, _wanted):
            return super().read(size)

    source = LineSource(Slow(data))
    assert [source.next_line(5) for _ in range(4)] == ["eighty three", "\u20ac5", "last", ENDED]
    assert source.next_line(0) is ENDED


def test_ten_megabytes_in_one_line_cost_no_memory():
    """A line of 10 MB is read to its end, cut to its first characters, and the next line still arrives."""

    class Endless:
        left = 10_000_000

        def read(self, size):
            if self.left <= 0:
                return b""
            self.left -= size
            return b"7" * size if self.left > 0 else b"7\nstop\n"

    tracemalloc.start()
    source = LineSource(Endless())
    assert source.next_line(30) == "7" * LONGEST_LINE
    assert source.next_line(5) == "stop"
    assert source.next_line(5) is ENDED
    peak = tracemalloc.get_traced_memory()[1]
    tracemalloc.stop()
    assert peak < 1_000_000


def test_no_line_in_time_is_none_and_close_ends_a_wait():
    """A silent keyboard gives None when the time is over; closing ends a wait that has no limit."""
    reading, writing = os.pipe()
    with os.fdopen(reading, "rb", buffering=0) as pipe, os.fdopen(writing, "wb", buffering=0) as other_end:
        source = LineSource(pipe)
        assert source.next_line(timeout=0.01) is None
        found: list[object] = []
        waiting = threading.Thread(target=lambda: found.append(source.next_line()))
        waiting.start()
        source.close()
        waiting.join(5)
        assert found == [ENDED]
        other_end.close()


def test_a_source_that_fails_is_the_end():
    """A terminal that goes away ends the input; it does not raise in a thread that nobody watches."""

    class Gone:
        def read(self, size):
            raise OSError(5, "Input/output error")

    assert LineSource(Gone()).next_line(5) is ENDED


def test_keyboard_posts_lines_in_order_then_the_end():
    """Each line is posted with its time, and the end exactly once."""
    posted: queue.Queue[object] = queue.Queue()
    Keyboard(LineSource(io.BytesIO(b"done\n75\n")), posted.put, SystemClock())
    events = [posted.get(timeout=5) for _ in range(3)]
    assert [type(event) for event in events] == [Typed, Typed, InputEnded]
    assert [event.words for event in events[:2]] == ["done", "75"]
    assert events[0].at <= events[1].at <= events[2].at
    with pytest.raises(queue.Empty):
        posted.get(timeout=0.05)


def test_program_ends_while_a_read_is_waiting():
    """A program that has finished exits cleanly although standard input is still open and silent."""
    script = "from assistant.adapters.keyboard import LineSource; print(LineSource().next_line(0.05))"
    reading, writing = os.pipe()
    try:
        ended = subprocess.run([sys.executable, "-c", script], stdin=reading, capture_output=True, timeout=60)
    finally:
        os.close(reading)
        os.close(writing)
    assert (ended.returncode, ended.stdout.strip(), ended.stderr) == (0, b"None", b"")
