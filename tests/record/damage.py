# ruff: noqa: T201, S311 - a command prints its answer; chance for tests, not for secrets
"""Damages a record of 500 entries at every byte: ``python -m tests.record.damage [ENTRIES] [SEED]``.

The record is cut at every byte, and every byte is flipped (one bit, or all of it). It must never be taken for
whole, must never bring the reader down, and every complete entry before the damage must still hold.

The verdict on a line depends only on that line, what follows it and the chain so far (`follow` knows nothing
else), so every place is tried by going on from the chain as it stood before the line, instead of reading the lines
before it some hundred thousand times. The tests do the same at sampled places, and through whole files.
"""

import copy
import io
import random
import sys
import tempfile
import time
from collections.abc import Iterator
from pathlib import Path

from assistant.record.chain import BrokenError, Chain, Problem, follow
from tests.record.examples import written

ENTRIES = 500
FLIPS = [*(1 << bit for bit in range(8)), 0xFF]
"""One bit, or all of a byte."""


def places(content: bytes) -> Iterator[tuple[Chain, int, bytes, bytes]]:
    """Each line with the chain before it, where it starts, and the line after it."""
    chain = Chain()
    lines = content.splitlines(keepends=True)
    start = 0
    for line, after in zip(lines, [*lines[1:], b""], strict=True):
        yield chain, start, line, after
        chain = copy.copy(chain)
        chain.notes = []
        chain.take(line)
        start += len(line)


def first_break(chain: Chain, content: bytes) -> BrokenError | None:
    """Follow on from `chain`; the break, or None where everything holds."""
    try:
        for _ in follow(chain, io.BytesIO(content)):
            pass
    except BrokenError as broken:
        return broken
    return None


def cut_everywhere(content: bytes, stride: int = 1) -> int:
    """Cut at every `stride`-th byte of each line; return how often.

    Raises:
        AssertionError: a cut was not named, or took a complete entry with it.
    """
    cuts = 0
    for before, start, line, _ in places(content):
        assert not before.sealed
        for kept in range(1 + start % stride, len(line), stride):
            chain = copy.copy(before)
            broken = first_break(chain, line[:kept])
            cuts += 1
            if kept == len(line) - 1:  # nothing but the line feed is missing: the entry counts
                assert (broken, chain.count, chain.lacks_line_feed) == (None, before.count + 1, True)
                continue
            expected = Problem.NOT_A_RECORD if before.count == 0 and kept == 1 else Problem.TORN_TAIL
            assert broken is not None, start + kept
            assert (broken.problem, broken.line, chain.count) == (expected, before.count + 1, before.count)
    return cuts


def flip_everywhere(content: bytes, seed: int, stride: int = 1) -> int:
    """Flip every `stride`-th byte of each line; return how often.

    Raises:
        AssertionError: a flip was not found in its line, or took an entry before it with it.
    """
    flipped = random.Random(seed).choices(FLIPS, k=len(content))
    flips = 0
    for before, start, line, after in places(content):
        for place in range(start % stride, len(line), stride):
            chain = copy.copy(before)
            damaged = bytearray(line + after)
            damaged[place] ^= flipped[start + place]
            broken = first_break(chain, bytes(damaged))
            assert broken is not None, (start + place, flipped[start + place])
            assert (broken.line, chain.count) == (before.count + 1, before.count)
            flips += 1
    return flips


def change_one_entry(content: bytes, stride: int = 1) -> int:
    """Set every `stride`-th byte of one entry to each other value; return how often.

    Raises:
        AssertionError: a value was taken for the entry.
    """
    before, _, line, after = list(places(content))[7]
    changes = 0
    for place in range(0, len(line), stride):
        for value in set(range(256)) - {line[place]}:
            changed = line[:place] + bytes([value]) + line[place + 1 :] + after
            assert first_break(copy.copy(before), changed) is not None, (place, value)
            changes += 1
    return changes


def main() -> int:
    """Cut and flip at every byte; 0 if every damage was named."""
    entries = int(sys.argv[1]) if len(sys.argv) > 1 else ENTRIES
    seed = int(sys.argv[2]) if len(sys.argv) > 2 else time.time_ns() % 1_000_000
    with tempfile.TemporaryDirectory() as folder:
        content = written(Path(folder) / "attempt.jsonl", entries).read_bytes()
    print(f"{entries} entries, {len(content):,} bytes, seed {seed}")
    print(f"cut at {cut_everywhere(content):,} places: each named, every complete entry before it holds", flush=True)
    print(
        f"flipped {flip_everywhere(content, seed):,} bytes: each named in its line, every entry before it holds",
        flush=True,
    )
    print(f"set one entry's bytes to {change_one_entry(content):,} other values: none was taken for it")
    return 0


if __name__ == "__main__":
    sys.exit(main())
