# ruff: noqa: T201, S311 - a command prints its answer; chance for tests, not for secrets
"""Kills real attempts: ``python -m tests.record.kill_attempts [TIMES] [SEED]``.

A typed attempt runs as its own process, gets its answers through a pipe and tells on another one what it has
taken, which it does only once the entry is on disk. After a random number of answers and a random wait it gets
SIGKILL, and `checkoff resume` takes it up, to be killed again. Every answer that was told as taken must stand in
the record, and in the end each attempt must be finished, passed and whole. The checklist must not change meanwhile:
an attempt is only resumed with the papers it was begun with.
"""

import json
import random
import signal
import subprocess
import sys
import tempfile
import time
from dataclasses import dataclass, field
from pathlib import Path

from assistant.record.verify import read_entries, verify

CHECKLIST = "secondary-line"
MOST_TROUBLES = 10
"""Enough to see what is wrong."""


@dataclass
class Tally:
    """What was done and found; `troubles` names everything that should not have been."""

    kills: int = 0
    taken: int = 0
    lost: int = 0
    attempts: int = 0
    finished: int = 0
    troubles: list[str] = field(default_factory=list)


def kill_attempts(folder: Path, times: int, seed: int) -> Tally:
    """Kill `times` processes, in as many attempts as that takes."""
    chance = random.Random(seed)
    answers = _answers(folder)
    tally = Tally()
    while tally.kills < times and len(tally.troubles) < MOST_TROUBLES:
        tally.attempts += 1
        _one_attempt(folder / f"{tally.attempts}", answers, chance, times, tally)
    return tally


def _one_attempt(folder: Path, answers: list[str], chance: random.Random, times: int, tally: Tally) -> None:
    while True:
        record = next(folder.glob("*.jsonl"), None)
        if record is not None and b"\n" not in record.read_bytes():
            record.unlink()  # killed before its first entry: nothing was begun
            record = None
        if record is not None and verify(record).ok:
            tally.finished += 1  # killed after its seal
            return
        before = _typed(record)
        # The last process of an attempt is let live: it must finish what is left.
        steps = chance.randrange(20)
        last = steps >= len(answers) - len(before) or tally.kills == times
        code, told = _live(folder, record, answers[len(before) :], None if last else steps, chance)
        record = next(folder.glob("*.jsonl"), None)
        after = _typed(record)
        tally.taken += len(told)
        if after[: len(before) + len(told)] != answers[: len(before) + len(told)]:
            tally.lost += 1
            tally.troubles.append(f"{record}: {len(told)} answers were told as taken, {after} are there")
        if not last and code != -signal.SIGKILL and not (record is not None and verify(record).ok):
            tally.troubles.append(f"{record}: ended by itself with exit code {code}")
            return
        if last:
            if code == 0 and record is not None and verify(record).ok:
                tally.finished += 1
            else:
                tally.troubles.append(f"{record}: not finished, exit code {code}")
            return
        tally.kills += 1


def _live(
    folder: Path, record: Path | None, answers: list[str], steps: int | None, chance: random.Random
) -> tuple[int, list[str]]:
    """Run or resume an attempt until it ends, or kill it after `steps` answers and a moment."""
    verb = ["run", CHECKLIST, "--short-waits", "--records"] if record is None else ["resume"]
    with subprocess.Popen(
        [sys.executable, "-m", "assistant", *verb, record or folder, "--typed", "--json"],
        stdin=subprocess.PIPE,
        stdout=subprocess.PIPE,
        stderr=subprocess.DEVNULL,
        text=True,
    ) as attempt:
        assert attempt.stdin is not None
        assert attempt.stdout is not None
        attempt.stdin.write("".join(f"{answer}\n" for answer in answers))
        attempt.stdin.flush()
        told: list[str] = []
        if steps is not None:
            while len(told) < steps and (line := attempt.stdout.readline()):
                told += _taken(line)
            time.sleep(chance.uniform(0, 0.01) if steps else chance.uniform(0, 1))
            attempt.kill()
        for line in attempt.stdout:
            told += _taken(line)
    return attempt.returncode, told


def _taken(line: str) -> list[str]:
    try:
        return [json.loads(line)["typed"]]
    except (ValueError, KeyError):
        return []  # something else was told, or the line was cut by the kill


def _typed(record: Path | None) -> list[str]:
    """The answers in a record, whose end may be torn."""
    if record is None:
        return []
    lines = record.read_bytes().splitlines(keepends=True)
    entries = [json.loads(line) for line in lines if line.endswith(b"\n")]
    return [entry["words"] for entry in entries if entry["kind"] == "typed"]


def _answers(folder: Path) -> list[str]:
    """What a learner who errs nowhere types in this attempt."""
    place = folder / "model"
    program = [sys.executable, "-m", "assistant", "demo", CHECKLIST, "--typed", "--records", str(place)]
    subprocess.run(program, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL, check=True)
    entries = read_entries(next(place.glob("*.jsonl")))
    return [str(entry["words"]) for entry in entries if entry["kind"] == "typed"]


def main() -> int:
    """Kill, print the tally; 0 if nothing was lost and every attempt finished."""
    times = int(sys.argv[1]) if len(sys.argv) > 1 else 1000
    seed = int(sys.argv[2]) if len(sys.argv) > 2 else time.time_ns() % 1_000_000
    with tempfile.TemporaryDirectory() as folder:
        tally = kill_attempts(Path(folder), times, seed)
    print(f"seed {seed}: {tally}")
    return 0 if tally.finished == tally.attempts and not tally.troubles else 1


if __name__ == "__main__":
    sys.exit(main())
