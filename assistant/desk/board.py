"""The first page of the desk: a row a station, those that need the instructor first."""

import re
from dataclasses import dataclass
from datetime import datetime

from assistant.desk.hub import Hub, StationSeen
from assistant.desk.need import Level, Need, need_of
from assistant.desk.watched import StepSeen, Watched

MINUTE_S = 60


@dataclass(frozen=True)
class Row:
    """A station.

    Attributes:
        name: of the station.
        watched: its attempt; None where none began.
        need: why it stands where it stands.
        waits: how many orders it has not answered.
        refused: why it did not take the last order; empty where it did.
        trouble: why the desk does not take what it reports; empty where it does.
        left: how many attempts were left there.
        sound: it has a microphone and a loudspeaker.
    """

    name: str
    watched: Watched | None
    need: Need
    waits: int
    refused: str
    trouble: str
    left: int
    sound: bool

    @property
    def key(self) -> str:
        """What the row is called within a page: the name in hexadecimal, for a name may hold anything."""
        return key_of(self.name)

    @property
    def step(self) -> StepSeen | None:
        """The step that is asked now."""
        return self.watched.step if self.watched is not None else None

    @property
    def is_free(self) -> bool:
        """Whether an attempt can be started here."""
        return self.need.level in (Level.FREE, Level.SIGN, Level.STOPPED)


def key_of(name: str) -> str:
    """A name as part of an element's id."""
    return name.encode().hex()


def rows(hub: Hub, now_s: float) -> list[Row]:
    """Every station, those first that need the instructor, then by name.

    Args:
        hub: what the desk knows.
        now_s: the desk's steady clock, seconds.
    """
    return sorted(rows_by_name(hub, now_s), key=lambda row: row.need.level)


def rows_by_name(hub: Hub, now_s: float) -> list[Row]:
    """Every station by its name; the rest as for `rows`."""
    found = [_row(hub, name, seen, now_s) for name, seen in hub.stations.items()]
    return sorted(found, key=lambda row: _by_number(row.name))


def need_at(hub: Hub, name: str, now_s: float) -> Need:
    """Why a station needs the instructor; free where it is not known."""
    seen = hub.stations.get(name)
    return Need(Level.FREE) if seen is None else _need(hub, seen, now_s)


def _need(hub: Hub, seen: StationSeen, now_s: float) -> Need:
    # Whole minutes: a row does not change every second only because nothing happens there.
    silent_s = (now_s - seen.fresh_at) // MINUTE_S * MINUTE_S
    unheard_s = (now_s - seen.at) // MINUTE_S * MINUTE_S
    left = seen.attempt in seen.hello.left
    return need_of(hub.attempts.get(seen.attempt), silent_s=silent_s, unheard_s=unheard_s, left=left)


def _row(hub: Hub, name: str, seen: StationSeen, now_s: float) -> Row:
    return Row(
        name=name,
        watched=hub.attempts.get(seen.attempt),
        need=_need(hub, seen, now_s),
        waits=len(seen.orders),
        refused=seen.refused,
        trouble=seen.trouble,
        left=len(seen.hello.left),
        sound=seen.hello.sound,
    )


def _by_number(name: str) -> tuple[tuple[int, str], ...]:
    """Station 2 before station 10."""
    return tuple((int(piece), "") if piece.isdigit() else (-1, piece.casefold()) for piece in re.split(r"(\d+)", name))


def since_ms(at: datetime | None) -> int:
    """A time for the page's script: milliseconds since 1970; 0 where there is none."""
    return 0 if at is None else int(at.timestamp() * 1000)
