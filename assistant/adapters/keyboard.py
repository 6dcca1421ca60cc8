"""Typed input: lines from a terminal or a pipe, pulled one at a time or posted as they come."""

import contextlib
import enum
import queue
import sys
import threading
from collections.abc import Callable
from typing import Protocol

from assistant.guide.events import InputEnded, Typed
from assistant.ports import Clock, Post

LONGEST_LINE = 1_000
"""Characters kept of one line; the rest is read and dropped, so a line of any length costs no memory."""

_BYTES_A_READ = 65_536
_LONGEST_LINE_BYTES = LONGEST_LINE * 4  # UTF-8 takes at most four bytes for a character


class EndOfInput(enum.Enum):
    """What `LineSource.next_line` returns when no further line can come."""

    ENDED = "ended"


ENDED = EndOfInput.ENDED


class ByteSource(Protocol):
    """Anything that gives bytes: standard input, a pipe, a file."""

    def read(self, size: int, /) -> bytes | None:
        """Up to `size` bytes; empty at the end of input."""


class LineSource:
    """Lines of typed words, taken one at a time.

    A thread reads ahead, by one read at most, so what follows stays in the pipe until somebody wants it.
    Bytes that are not UTF-8 become U+FFFD; control characters stay in, for whoever shows or judges the words.
    A line is cut to its first `LONGEST_LINE` characters; one of that length was too long.
    """

    def __init__(self, source: ByteSource | None = None) -> None:
        """Start reading from `source`, or from standard input."""
        self._source = source if source is not None else standard_input()
        self._lines: queue.Queue[str | EndOfInput] = queue.Queue(maxsize=1)
        self._closed = threading.Event()
        self._ended = False
        # A daemon: a read from a terminal cannot be called off, and must not keep the program alive.
        self._thread = threading.Thread(target=self._read, name="keyboard", daemon=True)
        self._thread.start()

    def next_line(self, timeout: float | None = None) -> str | EndOfInput | None:
        """The next line without its line ending.

        Args:
            timeout: seconds to wait; None waits until there is a line or the end.

        Returns:
            The line, `ENDED` (again and again) when no more can come, None when the time ran out.
        """
        if self._ended:
            return ENDED
        try:
            line = self._lines.get(timeout=timeout)
        except queue.Empty:
            return None
        if isinstance(line, EndOfInput):
            self._ended = True
        return line

    def close(self) -> None:
        """Hand out no more lines; a wait under way ends."""
        self._closed.set()
        with contextlib.suppress(queue.Empty):
            self._lines.get_nowait()
        with contextlib.suppress(queue.Full):
            self._lines.put_nowait(ENDED)

    def _read(self) -> None:
        line = bytearray()
        while not self._closed.is_set():
            block = self._next_block()
            if not block:
                break
            *complete, rest = block.split(b"\n")
            for piece in complete:
                _extend(line, piece)
                self._hand_out(_decoded(line))
                line.clear()
            _extend(line, rest)
        if line:
            self._hand_out(_decoded(line))
        self._hand_out(ENDED)

    def _next_block(self) -> bytes:
        try:
            return self._source.read(_BYTES_A_READ) or b""
        except (OSError, ValueError):  # a terminal that went away, a file closed by somebody else
            return b""

    def _hand_out(self, line: str | EndOfInput) -> None:
        while not self._closed.is_set():
            with contextlib.suppress(queue.Full):
                self._lines.put(line, timeout=0.2)
                return


class Keyboard:
    """Posts `Typed` for each line as it comes, and `InputEnded` once at the end."""

    def __init__(self, lines: LineSource, post: Post, clock: Clock) -> None:
        self._lines = lines
        self._post = post
        self._clock = clock
        self._closed = threading.Event()
        self._thread = threading.Thread(target=self._forward, name="typed", daemon=True)
        self._thread.start()

    def close(self) -> None:
        """Post nothing more."""
        self._closed.set()
        self._lines.close()

    def _forward(self) -> None:
        while not self._closed.is_set():
            line = self._lines.next_line()
            if self._closed.is_set() or line is None:
                return
            if isinstance(line, EndOfInput):
                self._post(InputEnded(at=self._clock.now()))
                return
            self._post(Typed(at=self._clock.now(), words=line))


class StandingKeyboard:
    """A keyboard that outlives attempts: a line goes to the one that goes on, and nowhere where none does.

    The end of input ends nothing: such a station may have no keyboard at all.
    """

    def __init__(self, lines: LineSource) -> None:
        self._lines = lines
        self._to: tuple[Post, Clock] | None = None
        threading.Thread(target=self._forward, name="typed", daemon=True).start()

    def connect(self, post: Post, clock: Clock) -> Callable[[], None]:
        """From now on, post each line there; return what ends that."""
        self._to = to = (post, clock)

        def let_go() -> None:
            if self._to is to:
                self._to = None

        return let_go

    def _forward(self) -> None:
        while isinstance(line := self._lines.next_line(), str):
            to = self._to
            if to is not None:
                post, clock = to
                post(Typed(clock.now(), line))


def standard_input() -> ByteSource:
    """Standard input below its buffer.

    A thread waiting in a buffered read holds the buffer's lock, and the interpreter aborts at exit when
    it cannot get that lock. The raw layer has none, and on Windows it still gives UTF-8 from a console.
    """
    if sys.stdin is None:  # started without a console
        return _Nothing()
    buffer = getattr(sys.stdin, "buffer", None)
    source: ByteSource = getattr(buffer, "raw", buffer) or _Nothing()
    return source


class _Nothing:
    def read(self, size: int, /) -> bytes:
        return b""


def _extend(line: bytearray, piece: bytes) -> None:
    room = _LONGEST_LINE_BYTES - len(line)
    if room > 0:
        line += piece[:room]


def _decoded(line: bytearray) -> str:
    return line.removesuffix(b"\r").decode("utf-8", errors="replace")[:LONGEST_LINE]
