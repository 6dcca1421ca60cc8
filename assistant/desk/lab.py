"""What the desk's pages work with."""

from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path

from assistant.attempts.proof import Here
from assistant.desk.class_list import ClassList
from assistant.desk.hub import Hub
from assistant.desk.pairing import PairedStore, Pairing


@dataclass(frozen=True)
class Network:
    """What lets other computers of the lab in.

    Attributes:
        pairing: codes.
        store: those who are paired.
        where: host and port under which the lab reaches the desk.
    """

    pairing: Pairing
    store: PairedStore
    where: str


@dataclass(frozen=True)
class Lab:
    """What the desk works with.

    Attributes:
        hub: its stations and attempts.
        clock: the steady clock of that hub, seconds.
        records: folder with the records.
        class_list: the learners' codes.
        known: what this machine knows of records and signers; read anew for each page that asks.
        keys: folder of the instructor's keys.
        code: what an instructor types at a station; empty where nobody is to know it.
    """

    hub: Hub
    clock: Callable[[], float]
    records: Path
    class_list: ClassList
    known: Callable[[], Here]
    keys: Path
    code: str = ""
