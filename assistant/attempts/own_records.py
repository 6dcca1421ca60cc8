"""The records of attempts that a desk had begun at a station: what was left, and what the desk may not have yet."""

import time
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path

from assistant.errors import LinkError
from assistant.link.addresses import write_owner_only
from assistant.record.entry import LONGEST_LINE, NotAnEntryError, read_line
from assistant.record.verify import Reading, read_record

STATION, START = "station", "start"
"""Pins of a first entry: the station, and id of the order by which the attempt began."""
RECENT_DAYS = 14
"""Attempts that nobody has added to for so long are no longer looked for."""
_DAY_S = 86_400
_MOST_DELIVERED = 10_000


@dataclass(frozen=True)
class OwnRecord:
    """A record of this station's.

    Attributes:
        path: its file.
        opening: its first entry.
    """

    path: Path
    opening: Mapping[str, object]

    @property
    def attempt(self) -> str:
        """Digest of the first entry."""
        return str(self.opening["digest"])

    @property
    def start(self) -> str:
        """Id of the order by which it began."""
        return str(self.opening[START])

    def read(self) -> Reading:
        """All that holds of it."""
        return read_record(self.path)

    def orders(self) -> set[str]:
        """Ids of the orders that were carried out in it."""
        return orders_in(self.read().entries)


def orders_in(entries: tuple[Mapping[str, object], ...]) -> set[str]:
    """Ids of the orders that led to these entries."""
    return {str(entry["order"]) for entry in entries if entry.get("sequence") != 1 and entry.get("order")}


def own_records(folder: Path, station: str) -> Iterator[OwnRecord]:
    """This station's recent records, oldest first.

    Args:
        folder: the folder with the records.
        station: its name.
    """
    since = time.time() - RECENT_DAYS * _DAY_S
    for path in sorted(folder.glob("*.jsonl")):
        try:
            if path.stat().st_mtime < since:
                continue
            with path.open("rb") as stream:
                opening = read_line(stream.readline(LONGEST_LINE)).fields
        except (OSError, NotAnEntryError):
            continue
        if opening.get(STATION) == station and opening.get(START):
            yield OwnRecord(path, opening)


class Delivered:
    """Which finished attempts the desk has in full: it is not told of them at the next start.

    Args:
        path: the file that remembers them. Where it is lost the desk is told once more, and nothing else happens.
    """

    def __init__(self, path: Path) -> None:
        self._path = path
        try:
            self._known = path.read_text(encoding="ascii").split()
        except (OSError, ValueError):
            self._known = []

    def __contains__(self, attempt: str) -> bool:
        return attempt in self._known

    def add(self, attempt: str) -> None:
        """The desk has this one."""
        if attempt in self._known:
            return
        self._known = [*self._known, attempt][-_MOST_DELIVERED:]
        try:
            write_owner_only(self._path, "\n".join(self._known).encode())
        except LinkError:
            return
