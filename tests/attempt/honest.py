# ruff: noqa: T201, S311 - a command prints its answer; chance for tests, not for secrets
"""Honest records raise no alarm: ``python -m tests.attempt.honest [COUNT] [SEED]`` (default 2,000).

Attempts as the program records them, each with a history of its own: stopped, resumed, left by a killed process,
closed, signed, withdrawn, signed again, its sound erased, moved, renamed, copied. All of them are verified in one call
on this machine, then on one that has never seen them.
"""

import io
import json
import os
import random
import shutil
import sys
import tempfile
import time
from collections.abc import Iterator
from pathlib import Path

from assistant.record.entry import OWN_FIELDS
from assistant.record.file import RecordFile
from assistant.record.verify import read_entries
from tests.attempt.attacks import World, made, moment
from tests.record.forge import as_a_person, forged

COUNT = 2_000
SEED = 1
DEMOS = (
    ("hourly-round",),
    ("hourly-round", "--slip", "tenfold"),
    ("bag-change", "--slip", "skip-critical"),
    ("discontinue",),
    ("hand-over",),
    ("hand-over", "--as", "careless"),
    ("saline-lock", "--as", "unaware"),
)
DECISIONS = (("signed off", "not-passed"), ("sign-off withdrawn", "withdrawn"))
SITTINGS = 25
"""Of so many records, one is made by real sittings: run, stopped, and resumed once or twice."""


def templates(world: World) -> list[list[dict[str, object]]]:
    """Bodies of some attempts, as of persons."""
    found = []
    for checklist, *more in DEMOS:
        folder = world.folder / "demo"
        _, said = world.call("demo", checklist, "--mode", "check-off", *more, "--json", "--records", folder)
        path = Path(next(json.loads(line)["record"] for line in said.splitlines() if line.startswith('{"outcome"')))
        forged(path, as_a_person)
        found.append([_body(entry) for entry in read_entries(path)])
        shutil.rmtree(folder)
    shutil.rmtree(world.heads)  # of demonstrations
    shutil.rmtree(world.stick)
    world.stick.mkdir()
    return found


def _body(entry):
    return {name: value for name, value in entry.items() if name not in OWN_FIELDS and name != "format"}


def recorded(world: World, number: int, bodies, chance: random.Random) -> tuple[Path, str]:
    """An attempt of which everything was recorded, or which was left; its path and what became of it."""
    path = world.folder / "records" / f"{number:05}.jsonl"
    book = world.book
    end = chance.choice(("sealed", "sealed", "sealed", "left", "killed"))
    *own, last = bodies
    kept = own if end == "sealed" else own[: chance.randrange(2, len(own))]
    record = RecordFile.create(path, {**kept[0], "learner": f"A{number}"}, book)
    for one in kept[1:]:
        record.append(one)
    if end == "sealed":
        record.seal({name: value for name, value in last.items() if name != "seal"})
    if end == "killed":
        os.close(record._descriptor)
        record._descriptor = None
        record._lock.release(force=True)
    record.close()
    return path, end


def sittings(world: World, number: int, chance: random.Random) -> tuple[Path, str]:
    """An attempt by real sittings at the keyboard."""
    said = [b"yes\nwhere am i\nstop\nyes\n", b"yes\n"][chance.randrange(2)]
    given = ("--typed", "--json", "--mode", "check-off")
    told = _typed(
        world, said, "run", "primary-line", *given, "--learner", f"A{number}", "--records", world.folder / "r"
    )
    path = Path(told["record"])
    for _ in range(chance.randrange(3)):
        _typed(world, b"yes\nyes\n", "resume", path, "--typed", "--json")
    return path, "left"


def _typed(world: World, said: bytes, *arguments: object):
    stdin, sys.stdin = sys.stdin, io.TextIOWrapper(io.BytesIO(said))
    try:
        _, told = world.call(*arguments)
    finally:
        sys.stdin = stdin
    return json.loads(next(line for line in reversed(told.splitlines()) if line.startswith('{"outcome"')))


def afterwards(world: World, path: Path, end: str, chance: random.Random) -> Iterator[Path]:
    """What happens to a record later; the paths under which it is then there."""
    key, book = world.key("lindqvist"), world.book
    if end == "left" and chance.random() < 0.5:
        with RecordFile.reopen(path, book=book) as record:
            closed = {"kind": "closed", "at": moment(0), "signer": "M. Lindqvist", "reason": "Left."}
            record.seal({**closed, "source": "instructor", "outcome": "not completed"})
        end = "sealed"
    told = {"signer": "M. Lindqvist, RN", "source": "instructor", "reason": "Seen."}
    day = 0.01
    while end == "sealed" and chance.random() < 0.5:
        day += 0.01
        for kind, decision in (("signed off", "not-passed"), ("sign-off withdrawn", "withdrawn"))[
            : chance.randrange(3)
        ]:
            more = {"kind": kind, "decision": decision, "at": moment(day)}
            RecordFile.add_signed(path, {**told, **more}, key, book)
    if chance.random() < 0.2:
        RecordFile.erase_sound(path, "asked for", book)
    if chance.random() < 0.3:
        place = world.folder / "moved"
        place.mkdir(exist_ok=True)
        path = path.rename(place / f"{chance.random()}.jsonl")
    yield path
    if chance.random() < 0.1:
        yield Path(shutil.copy(path, f"{path}.copy"))


def many(count: int, seed: int, folder: Path) -> tuple[World, list[Path]]:
    """So many honest records."""
    chance = random.Random(seed)
    world = made(folder / "world")
    shutil.rmtree(world.folder / "records")
    bodies = templates(world)
    (world.folder / "records").mkdir()
    paths = []
    for number in range(count):
        if number % SITTINGS == SITTINGS - 1:
            path, end = sittings(world, number, chance)
        else:
            path, end = recorded(world, number, chance.choice(bodies), chance)
        paths += afterwards(world, path, end, chance)
    return world, paths


def alarms(world: World, paths: list[Path], tell) -> int:
    """Verify all of them, here and elsewhere; return how many false alarms there were."""
    found = 0
    for where, right in (("here", (0,)), ("elsewhere", (0, 5))):
        if where == "elsewhere":
            world.elsewhere()
        began, spent = time.perf_counter(), time.process_time()
        code, said = world.call("verify", *paths, "--open", "--keys", world.keys, "--json")
        took_s, spent_s = time.perf_counter() - began, time.process_time() - spent
        told = [json.loads(line) for line in said.splitlines() if line.startswith("{")]
        assert len(told) == len(paths)
        wrong = [one for one in told if not one["ok"] and one["problem"] != "not sealed"]
        wrong += [one for one in told if (one["lived_again"] or {}).get("finding", "same") != "same"]
        for one in wrong[:5]:
            tell(f"{where}: {one['file']}: {one['problem']}: {one['why']} {one['lived_again']}")
        found += len(wrong) + (code not in right)
        entries = sum(one["count"] for one in told)
        speed = f"in {took_s:.1f} s, {len(paths) / spent_s:.0f} a second of processor time"
        tell(f"{where}: {len(paths)} records of {entries:,} entries {speed}")
    return found


def main() -> int:
    """Make, verify, tell; 0 if nobody was accused."""
    count = int(sys.argv[1]) if len(sys.argv) > 1 else COUNT
    seed = int(sys.argv[2]) if len(sys.argv) > 2 else SEED
    with tempfile.TemporaryDirectory() as name:
        world, paths = many(count, seed, Path(name))
        found = alarms(world, paths, print)
    print(f"{found} false alarms on {count} honest records, seed {seed}")
    return 1 if found else 0


if __name__ == "__main__":
    sys.exit(main())
