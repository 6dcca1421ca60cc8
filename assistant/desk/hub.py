"""The desk's memory of its stations: what each reported, what each still has to do. Lives in the server's one thread.

It decides nothing of an attempt. Whatever it holds of one came as entries, which `Keeping` has put on disk.
"""

import asyncio
import secrets
from collections import deque
from collections.abc import AsyncIterator, Callable, Collection, Iterator, Mapping
from contextlib import contextmanager, suppress
from dataclasses import dataclass, field
from typing import Protocol

from assistant.desk.followed import Followed
from assistant.errors import AssistantError
from assistant.link.messages import Answered, Begun, Hello, Lines, Order

MOST_AT_ONCE = 20
"""Orders that a station is given at once."""
MOST_REFUSALS = 20
"""Refused orders of a station that the pages can still tell of."""


class Keeping(Protocol):
    """Where the desk keeps what stations report."""

    def begun(self, begun: Begun, *, here: bool) -> int:
        """Get ready for a record; return how many of its entries are known and on this machine's disk.

        Args:
            begun: what the station says of it.
            here: the station is one of this machine, and writes its record into the desk's own folder.

        Raises:
            RecordError: it is the record of another station, or what is on disk cannot be used.
        """

    def lines(self, lines: Lines) -> int:
        """Put what is new on disk; return how many entries are there now.

        Raises:
            RecordError: a line is no entry, or does not follow from the one before.
        """

    def bodies(self, attempt: str) -> tuple[Mapping[str, object], ...]:
        """The entries that are on disk, oldest first."""


@dataclass
class StationSeen:
    """A station as the desk knows it.

    Attributes:
        hello: its last words of itself.
        at: when it was last heard, on the desk's steady clock, seconds.
        attempt: digest of the attempt that goes on there, or went on last; empty for none.
        orders: what it still has to do, oldest first.
        refusals: orders that it refused, each with why, the newest last; the last `MOST_REFUSALS` of them.
        refused: why it refused the order that it answered last; empty where it carried it out.
        trouble: why the desk does not take what it reports; empty where it does.
        fresh_at: when an entry of that attempt came last, on the desk's steady clock, seconds.
    """

    hello: Hello
    at: float = 0.0
    attempt: str = ""
    orders: list[Order] = field(default_factory=list)
    refusals: deque[tuple[Order, str]] = field(default_factory=lambda: deque(maxlen=MOST_REFUSALS))
    refused: str = ""
    trouble: str = ""
    fresh_at: float = 0.0
    wakes: asyncio.Event = field(default_factory=asyncio.Event)


class Hub:
    """All stations and attempts.

    Args:
        keeping: where entries are kept.
        clock: the desk's steady clock, seconds.
    """

    def __init__(self, keeping: Keeping, clock: Callable[[], float]) -> None:
        self._keeping = keeping
        self._clock = clock
        self.stations: dict[str, StationSeen] = {}
        self.attempts: dict[str, Followed] = {}
        self._readers: set[asyncio.Event] = set()
        self._closed = False

    # A station's side.

    def hello(self, hello: Hello) -> None:
        """A station is there."""
        seen = self.stations.setdefault(hello.station, StationSeen(hello))
        seen.hello, seen.at = hello, self._clock()
        self._changed()

    def begun(self, begun: Begun, *, here: bool = True) -> int:
        """An attempt goes on; return how many of its entries the desk has.

        Raises:
            RecordError: as `Keeping.begun`.
        """
        seen = self._station(begun.station)
        with self._told(seen):
            have = self._keeping.begun(begun, here=here)
        seen.attempt, seen.at, seen.fresh_at = begun.attempt, self._clock(), self._clock()
        self.attempts[begun.attempt] = Followed.of(begun, self._keeping.bodies(begun.attempt))
        self._changed()
        return have

    def lines(self, lines: Lines) -> int:
        """Entries of an attempt; return how many the desk has now.

        Raises:
            KeyError: nobody said that it had begun.
            RecordError: as `Keeping.lines`.
        """
        watched = self.attempts[lines.attempt]
        seen = self._station(watched.begun.station)
        try:
            with self._told(seen):
                have = self._keeping.lines(lines)
        finally:
            new = self._keeping.bodies(lines.attempt)[watched.entries :]
            self.attempts[lines.attempt] = watched.with_entries(new)
        seen.at = seen.fresh_at = self._clock()
        self._changed()
        return have

    async def orders(self, station: str, wait_s: float, have: Collection[str] = ()) -> tuple[Order, ...]:
        """What a station has to do beside the orders that it has; waits for the first one, at most so long."""
        seen = self._station(station)
        seen.at = self._clock()
        with suppress(TimeoutError):
            async with asyncio.timeout(wait_s):
                while not self._closed and all(order.id in have for order in seen.orders):
                    seen.wakes.clear()
                    await seen.wakes.wait()
        return tuple(order for order in seen.orders if order.id not in have)[:MOST_AT_ONCE]

    def answered(self, station: str, answered: Answered) -> None:
        """An order was carried out or refused."""
        seen = self._station(station)
        seen.refused = answered.why
        if answered.why:
            seen.refusals.extend((order, answered.why) for order in seen.orders if order.id == answered.order)
        seen.orders[:] = [order for order in seen.orders if order.id != answered.order]
        self._changed()

    # The pages' side.

    def give(self, station: str, order: Order) -> None:
        """Let a station carry out an order, once; it stays until the station answers it."""
        seen = self._station(station)
        if any(order.id == one.id for one in seen.orders):
            return
        seen.orders.append(order)
        seen.wakes.set()
        self._changed()

    async def changes(self, wait_s: float) -> AsyncIterator[bool]:
        """Yields at once and after each change, True; False where nothing has changed for so long."""
        changed = asyncio.Event()
        changed.set()
        self._readers.add(changed)
        try:
            while not self._closed:
                try:
                    await asyncio.wait_for(changed.wait(), wait_s)
                    changed.clear()
                    yield True
                except TimeoutError:
                    yield False
        finally:
            self._readers.discard(changed)

    def close(self) -> None:
        """Whoever waits for something is answered now: the desk ends."""
        self._closed = True
        for seen in self.stations.values():
            seen.wakes.set()
        self._changed()

    @contextmanager
    def _told(self, seen: StationSeen) -> Iterator[None]:
        """While a report is taken in; where it is not, the pages can tell why."""
        seen.trouble = ""
        try:
            yield
        except AssistantError as refused:
            seen.trouble = str(refused)
            self._changed()
            raise

    def _station(self, name: str) -> StationSeen:
        return self.stations.setdefault(name, StationSeen(Hello(station=name)))

    def _changed(self) -> None:
        for reader in self._readers:
            reader.set()


def new_id() -> str:
    """An order's id."""
    return secrets.token_hex(16)
