"""Keeps the desk up to date from two threads: one reports what is on disk, one waits for orders.

The attempt's thread only says that there is more. Whatever becomes of the desk or the network, it never waits for them:
what could not be sent is read from the record again and sent once they are back.
"""

import contextlib
import threading
import time
from collections.abc import Callable
from dataclasses import dataclass, field
from pathlib import Path

from assistant.adapters.desk_link import DeskLink, LostError, RefusedError
from assistant.errors import RecordError
from assistant.link.addresses import DeskAddress
from assistant.link.messages import MOST_LINES, Answered, Begun, Hello, Lines, Order, Waiting
from assistant.record.following import RecordLines

HELLO_S = 5.0
"""A station says at least so often that it is there, seconds."""
SHORTEST_PAUSE_S, LONGEST_PAUSE_S = 0.25, 5.0
"""How long one waits before the desk is tried again: ever longer while it is lost, seconds."""
BYTES_A_REPORT = 1 << 20
"""After so many bytes a report ends, and the next one follows."""
_SURE_S = 1.0
"""A desk that has just been started anew has another address and token: only what refuses for longer is told."""
_MOST_KNOWN = 1_000
"""Unanswered orders that are named when one asks for more."""


@dataclass
class Reported:
    """An attempt whose record is reported.

    Attributes:
        begun: what the desk is told of it first.
        path: its record.
        count: how many entries are on disk for certain; only these are reported.
        done: called, in the reporting thread, once the attempt is over and the desk has every entry.
        over: it is sealed. One that was stopped may go on, and is told of again to a desk that is new to it.
        have: how many entries the desk has; -1 where it has to be told that the attempt goes on.
        refused: the desk does not take it.
    """

    begun: Begun
    path: Path
    count: int
    done: Callable[[], None]
    over: bool = False
    have: int = -1
    refused: bool = False
    lines: RecordLines = field(init=False)

    def __post_init__(self) -> None:
        self.lines = RecordLines(self.path)


class Reporter:
    """Speaks with the desk for a station.

    Args:
        station: its name.
        find: where the desk is now; None where nobody knows.
        hello: what the station says of itself now.
        carry_out: takes each order once, in the thread that waits for orders; returns soon.
        tell: takes a sentence for whoever is at the machine.

    Attributes:
        heard_at: when the desk took a report last, or this began, on the steady clock, seconds.
    """

    def __init__(
        self,
        station: str,
        find: Callable[[], DeskAddress | None],
        hello: Callable[[], Hello],
        carry_out: Callable[[Order], None],
        tell: Callable[[str], None],
    ) -> None:
        self._station = station
        self._find = find
        self._hello = hello
        self._carry_out = carry_out
        self._tell = tell
        self._lock = threading.Lock()
        self._wake = threading.Event()
        self._closed = threading.Event()
        self._attempts: dict[str, Reported] = {}
        self._answers: list[Answered] = []
        self._known: dict[str, None] = {}
        self._link: DeskLink | None = None
        self._greeted = ""
        self._greet_at = 0.0
        self._said: Hello | None = None
        self._told = ""
        self.heard_at = time.monotonic()
        self._threads = [
            threading.Thread(target=work, name=name, daemon=True)
            for name, work in (("reports", self._report_on), ("orders", self._wait_for_orders))
        ]

    def start(self) -> None:
        """Begin to report and to take orders."""
        for thread in self._threads:
            thread.start()

    def report(self, attempt: Reported) -> None:
        """From now on, report this attempt."""
        with self._lock:
            self._attempts.pop(attempt.begun.attempt, None)  # one that is taken up is the newest again
            self._attempts[attempt.begun.attempt] = attempt
        self._wake.set()

    def poke(self) -> None:
        """There is more to report; returns at once."""
        self._wake.set()

    def answer(self, answered: Answered) -> None:
        """Tell the desk what became of an order, after what it led to has been reported."""
        with self._lock:
            self._answers.append(answered)
        self._wake.set()

    def close(self, wait_s: float) -> None:
        """Report what is there, if that takes no longer than this, and end."""
        self._closed.set()
        self._wake.set()
        self._threads[0].join(wait_s)
        link, self._link = self._link, None
        if link is not None:
            link.close()

    # Reports.

    def _report_on(self) -> None:
        pause_s = SHORTEST_PAUSE_S
        while True:
            self._wake.clear()
            is_last = self._closed.is_set()
            try:
                self._report()
            except (LostError, RefusedError) as cause:
                self._lost()
                if isinstance(cause, RefusedError) and pause_s >= _SURE_S:
                    self._tell_once(f"The desk refuses this station: {cause}")
                self._closed.wait(0 if is_last else pause_s)
                pause_s = min(2 * pause_s, LONGEST_PAUSE_S)
            else:
                self.heard_at, pause_s = time.monotonic(), SHORTEST_PAUSE_S
                self._wake.wait(0 if is_last else HELLO_S)
            if is_last:
                return

    def _report(self) -> None:
        """Tell the desk everything that it does not know yet.

        Raises:
            LostError: it is gone.
            RefusedError: it does not know this station.
        """
        link = self._linked()
        with self._lock:
            answers = list(self._answers)
        if time.monotonic() >= self._greet_at:
            self._greet(link, self._hello())
        for attempt in self._listed():
            with contextlib.suppress(RecordError, OSError):  # the file cannot be read now
                self._report_attempt(link, attempt)
        if (hello := self._hello()) != self._said:
            self._greet(link, hello)
        for answered in answers:
            try:
                link.answered(self._station, answered)
            except RefusedError as refused:
                if refused.status == 401:
                    raise
                self._tell(f"The desk does not take an answer: {refused}")
            with self._lock:
                self._answers.remove(answered)
                self._known.pop(answered.order, None)

    def _greet(self, link: DeskLink, hello: Hello) -> None:
        """Say that the station is there; to a desk that is new to it, begin from the beginning."""
        greeting = link.hello(hello).desk
        self._said, self._greet_at = hello, time.monotonic() + HELLO_S
        if greeting != self._greeted:
            self._greeted = greeting
            for attempt in self._listed():
                attempt.have, attempt.refused = -1, False

    def _report_attempt(self, link: DeskLink, attempt: Reported) -> None:
        if attempt.refused:
            return
        try:
            if attempt.have < 0:
                attempt.have = link.begun(attempt.begun)
            while attempt.have < (count := attempt.count):
                first = attempt.have + 1
                lines = attempt.lines.read(first, min(count, attempt.have + MOST_LINES), BYTES_A_REPORT)
                texts = tuple(line.decode() for line in lines)
                have = link.lines(Lines(attempt=attempt.begun.attempt, first=first, lines=texts))
                if not lines or have <= attempt.have:
                    break
                attempt.have = have
        except RefusedError as refused:
            if refused.status == 401:
                raise
            if refused.status == 404:  # it has forgotten that the attempt goes on
                attempt.have = -1
                self._wake.set()
                return
            attempt.refused = True
            self._tell(f"The desk does not take the report of {attempt.path.name}: {refused}")
        if attempt.over and attempt.have >= attempt.count:
            attempt.done()
            with self._lock:
                if self._attempts.get(attempt.begun.attempt) is attempt:
                    del self._attempts[attempt.begun.attempt]

    def _listed(self) -> list[Reported]:
        with self._lock:
            return list(self._attempts.values())

    def _linked(self) -> DeskLink:
        with self._lock:
            if self._link is None:
                desk = self._find()
                if desk is None:
                    raise LostError("nobody knows where the desk is")
                self._link = DeskLink(desk)
            return self._link

    def _lost(self) -> None:
        with self._lock:
            self._greet_at = 0.0
            link, self._link = self._link, None
        if link is not None:
            link.close()

    def _tell_once(self, text: str) -> None:
        if text != self._told:
            self._told = text
            self._tell(text)

    # Orders.

    def _wait_for_orders(self) -> None:
        pause_s = SHORTEST_PAUSE_S
        while not self._closed.is_set():
            try:
                link = self._linked()
                with self._lock:
                    known = tuple(self._known)[-_MOST_KNOWN:]
                orders = link.orders(Waiting(station=self._station, have=known))
                pause_s = SHORTEST_PAUSE_S
            except (LostError, RefusedError):
                self._greet_at = 0.0
                self._wake.set()  # the other thread finds out what is the matter
                self._closed.wait(pause_s)
                pause_s = min(2 * pause_s, LONGEST_PAUSE_S)
                continue
            for order in orders:
                with self._lock:
                    is_new = order.id not in self._known
                    self._known[order.id] = None
                if is_new and not self._closed.is_set():
                    self._carry_out(order)
