# ruff: noqa: T201, S311 - a command prints its answer; chance for tests, not for secrets
"""Kills a recording process at random moments: ``python -m tests.record.kill [TIMES] [SEED]``.

Each time a real process (`tests.record.writer`) opens or resumes the same record, appends and acknowledges on a
pipe, and gets SIGKILL after a random wait that may fall into its start, its recovery or its writing. Then every
acknowledged entry must stand in the record with its digest. Every fourth time the end of the record is torn as a
power cut would tear it, behind what was acknowledged. A new record is begun every 50 kills.
"""

import random
import subprocess
import sys
import tempfile
import time
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

from assistant.record.file import RecordFile
from assistant.record.verify import read_entries, verify
from tests.record.examples import at

KILLS_A_RECORD = 50


@dataclass
class Tally:
    """What was done and found.

    Attributes:
        kills: processes killed.
        acknowledged: entries acknowledged before the kills.
        lost: acknowledged entries that the record no longer holds.
        torn: tails that were torn on purpose.
        sealed: records resumed and finished at the end; `records` in all.
    """

    kills: int = 0
    acknowledged: int = 0
    lost: int = 0
    torn: int = 0
    sealed: int = 0
    records: int = 0


def kill_often(folder: Path, times: int, seed: int) -> Tally:
    """Kill `times` processes and count what is lost."""
    chance = random.Random(seed)
    tally = Tally()
    for number, start in enumerate(range(0, times, KILLS_A_RECORD)):
        path = folder / f"{number}.jsonl"
        acknowledged: dict[int, str] = {}
        for _ in range(min(KILLS_A_RECORD, times - start)):
            # Wait first for some entries, or for a part of the start, then for a part of an append.
            wanted = chance.randrange(30) if chance.random() < 0.7 else 0
            wait_s = chance.uniform(0, 0.003) if wanted else chance.uniform(0, 0.25)
            if path.exists() and b"\n" not in path.read_bytes():
                path.unlink()  # killed before its first entry: nothing was begun
            acknowledged.update(_record_and_kill(path, wanted, wait_s))
            tally.kills += 1
            if path.exists() and chance.random() < 0.25:
                tally.torn += _tear(path, acknowledged, chance)
            tally.lost += _missing(path, acknowledged)
        tally.acknowledged += len(acknowledged)
        tally.records += 1
        tally.sealed += _finish(path)
    return tally


def _record_and_kill(path: Path, wanted: int, wait_s: float) -> Iterator[tuple[int, str]]:
    with subprocess.Popen(
        [sys.executable, "-m", "tests.record.writer", path], stdout=subprocess.PIPE, text=True
    ) as writer:
        assert writer.stdout is not None
        lines: list[str] = []
        if wanted:
            lines = [writer.stdout.readline() for _ in range(wanted + 1)]
        time.sleep(wait_s)
        writer.kill()
        lines += writer.stdout.readlines()
    for line in lines:
        if line.startswith("error"):
            raise AssertionError(f"the record could not be resumed: {line}")
        if line.endswith("\n") and line != "ready\n":
            sequence, digest = line.split()
            yield int(sequence), digest


def _tear(path: Path, acknowledged: dict[int, str], chance: random.Random) -> int:
    """Leave a part of an entry that was not acknowledged; 1 if the end was torn."""
    lines = path.read_bytes().splitlines(keepends=True)
    if not lines:
        return 0
    if len(lines) <= max(acknowledged, default=1) + 1:
        path.write_bytes(b"".join(lines) + lines[-1][: chance.randrange(1, len(lines[-1]))])
    else:
        path.write_bytes(b"".join(lines)[: -chance.randrange(1, len(lines[-1]))])
    return 1


def _missing(path: Path, acknowledged: dict[int, str]) -> int:
    if not acknowledged:
        return 0
    # A torn end is cut off in memory only: the next process must cope with it.
    held = {
        line_number: line
        for line_number, line in enumerate(path.read_bytes().splitlines(keepends=True), 1)
        if line.endswith(b"\n")
    }
    return sum(f'"digest":"{digest}"'.encode() not in held.get(number, b"") for number, digest in acknowledged.items())


def _finish(path: Path) -> bool:
    """Resume and seal the record; True if it then verifies."""
    with RecordFile.reopen(path) as record:
        record.seal({"at": at(0), "outcome": "passed"})
    return verify(path).ok and len(read_entries(path)) > 1


def main() -> int:
    """Kill, print the tally; 0 if nothing was lost."""
    times = int(sys.argv[1]) if len(sys.argv) > 1 else 1000
    seed = int(sys.argv[2]) if len(sys.argv) > 2 else time.time_ns() % 1_000_000
    with tempfile.TemporaryDirectory() as folder:
        tally = kill_often(Path(folder), times, seed)
    print(f"seed {seed}: {tally}")
    return 0 if tally.lost == 0 and tally.sealed == tally.records else 1


if __name__ == "__main__":
    sys.exit(main())
