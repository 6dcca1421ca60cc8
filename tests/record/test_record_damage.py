# ruff: noqa: S311 - chance for tests, not for secrets
"""A record cut at every byte and with every byte flipped: never whole, nothing lost before the damage.

The verdict on a line depends only on that line, what follows it and the chain so far (`follow` knows nothing
else), so every place in a long record is tried by going on from the chain as it stood before the line, instead
of reading the lines before it some hundred thousand times. Sampled places go through the whole file as well.
"""

import copy
import io
import random
import tempfile
from contextlib import suppress
from pathlib import Path

import pytest

from assistant.errors import RecordError
from assistant.record.chain import BrokenError, Chain, Problem, follow
from assistant.record.entry import read_line
from assistant.record.file import RecordFile
from assistant.record.verify import read_entries, verify
from tests.record.examples import at, body, written

ENTRIES = 500
FLIPS = [*(1 << bit for bit in range(8)), 0xFF]
"""One bit, or all of a byte."""


@pytest.fixture(scope="module")
def content(tmp_path_factory):
    return written(tmp_path_factory.mktemp("damage") / "attempt.jsonl", ENTRIES).read_bytes()


def places(content):
    """Each line with the line after it, where it starts and the chain before it."""
    chain = Chain()
    lines = content.splitlines(keepends=True)
    start = 0
    for line, after in zip(lines, [*lines[1:], b""], strict=True):
        yield chain, start, line, after
        chain = copy.copy(chain)
        chain.notes = []
        chain.take(line)
        start += len(line)


def first_break(chain, content):
    """Follow on from `chain`; the break, or None where everything holds."""
    try:
        for _ in follow(chain, io.BytesIO(content)):
            pass
    except BrokenError as broken:
        return broken
    return None


STRIDES = pytest.mark.parametrize("stride", [13, pytest.param(1, marks=pytest.mark.slow)])
"""Every 13th byte at once, every byte in the full run."""


@STRIDES
def test_cut_at_every_byte_of_500_entries(content, stride):
    """Wherever a record is cut, it is not whole, and every complete entry before the cut still holds."""
    for before, start, line, _ in places(content):
        assert not before.sealed
        for kept in range(1 + start % stride, len(line), stride):
            chain = copy.copy(before)
            broken = first_break(chain, line[:kept])
            expected = Problem.NOT_A_RECORD if before.count == 0 and kept == 1 else Problem.TORN_TAIL
            assert broken is not None
            assert (broken.problem, broken.line, chain.count) == (expected, before.count + 1, before.count)


@STRIDES
def test_every_byte_flipped_of_500_entries(content, stride):
    """Whichever byte changes, the record breaks in just that line; the entries before it hold."""
    chance = random.Random(stride)
    flipped = chance.choices(FLIPS, k=len(content))
    for before, start, line, after in places(content):
        for place in range(start % stride, len(line), stride):
            chain = copy.copy(before)
            damaged = bytearray(line + after)
            damaged[place] ^= flipped[start + place]
            broken = first_break(chain, bytes(damaged))
            assert broken is not None, (start + place, flipped[start + place])
            assert (broken.line, chain.count) == (before.count + 1, before.count)


@pytest.mark.slow
def test_every_change_of_every_byte_of_one_entry(content):
    """One entry with each byte set to each other value: no value is taken for the entry."""
    before, _, line, after = list(places(content))[7]
    for place in range(len(line)):
        for value in range(256):
            if value != line[place]:
                chain = copy.copy(before)
                changed = line[:place] + bytes([value]) + line[place + 1 :] + after
                assert first_break(chain, changed) is not None, (place, value)


@pytest.mark.parametrize("seed", range(30))
def test_damage_seen_through_the_whole_file(content, tmp_path, seed):
    """The same through files: verdict, entries and resumption all agree on where the damage is."""
    chance = random.Random(seed)
    place = chance.randrange(len(content))
    number = content.count(b"\n", 0, place) + 1
    path = tmp_path / "attempt.jsonl"

    path.write_bytes(content[:place])
    verdict = verify(path)
    assert (verdict.ok, verdict.count) == (False, number - 1)

    damaged = bytearray(content)
    damaged[place] ^= chance.choice(FLIPS)
    path.write_bytes(damaged)
    verdict = verify(path)
    assert (verdict.ok, verdict.line, verdict.count) == (False, number, number - 1)
    with pytest.raises(RecordError, match=f"line {number}"):
        read_entries(path)
    with pytest.raises(RecordError, match=f"line {number}"):
        RecordFile.reopen(path)
    assert path.read_bytes() == damaged


@pytest.fixture
def quick_folder(tmp_path):
    """A folder in memory where there is one: thousands of fsyncs to a busy disk take their time."""
    memory = Path("/dev/shm")  # noqa: S108 - a fresh folder is made in it
    if not memory.is_dir():
        yield tmp_path
        return
    with tempfile.TemporaryDirectory(dir=memory) as folder:
        yield Path(folder)


def test_resuming_after_a_cut_at_every_byte(quick_folder):
    """Cut anywhere, a record resumes with every complete entry, and not one byte is thrown away."""
    tmp_path = quick_folder
    short = {"kind": "typed", "at": at(2), "ticks": "2.5", "words": "yes"}
    with RecordFile.create(tmp_path / "whole.jsonl", {"kind": "opened", "at": at(0), "ticks": "0.5"}) as record:
        record.append(short)
        record.append({**short, "words": "37\u00b0"})
    whole = record.path.read_bytes()
    first = whole.index(b"\n") + 1
    for cut in range(1, len(whole) + 1):
        path = tmp_path / f"{cut}.jsonl"
        path.write_bytes(whole[:cut])
        complete = whole.count(b"\n", 0, cut)
        if cut < first:
            with pytest.raises(RecordError, match=r"nothing was recorded|not a record"):
                RecordFile.reopen(path)
            assert path.read_bytes() == whole[:cut]
            continue
        torn = cut - whole.rfind(b"\n", 0, cut) - 1
        with RecordFile.reopen(path, at=at(99)) as record:
            assert len(record.entries) == complete + (1 if torn else 0)
            record.append(body(99))
            record.seal({"at": at(100)})
        entries = read_entries(path)
        assert verify(path).ok
        assert path.read_bytes().startswith(whole[: cut - torn])
        if torn:
            recovered = entries[complete]
            assert (recovered["kind"], recovered["bytes"], recovered["at"]) == ("recovered", torn, at(99))
            assert (tmp_path / f"{recovered['aside']}").read_bytes() == whole[cut - torn : cut]
        else:
            assert not path.with_name(f"{path.name}.torn").exists()
        for leftover in tmp_path.glob(f"{cut}.jsonl*"):
            with suppress(OSError):
                leftover.unlink()


@pytest.mark.parametrize("tail", [bytes(4096), b'{"at":"2026-11-25T' + bytes(300) + b'"}\n'])
def test_zeros_at_the_end_are_a_torn_tail(tmp_path, tail):
    """A block of zeros, as a power cut leaves them on some disks, is set aside like half a line."""
    path = written(tmp_path / "zeros.jsonl", 4, sealed=False)
    path.write_bytes(path.read_bytes() + tail)
    assert verify(path).problem is Problem.TORN_TAIL
    with RecordFile.reopen(path) as record:
        assert record.entries[-1]["bytes"] == len(tail)
    assert path.with_name("zeros.jsonl.torn").read_bytes() == tail


def test_crash_during_recovery_is_made_up_for(tmp_path):
    """A tail that was cut off by a recovery which itself was cut short is told of by the next one."""
    path = written(tmp_path / "twice.jsonl", 4, sealed=False)
    whole = path.read_bytes()
    path.write_bytes(whole + b"torn")
    RecordFile.reopen(path).close()
    path.write_bytes(whole)  # as if the entry `recovered` had not got through
    with RecordFile.reopen(path) as record:
        assert (record.entries[-1]["kind"], record.entries[-1]["bytes"]) == ("recovered", 4)
    with RecordFile.reopen(path) as record:
        assert len(record.entries) == 5, "told once, not again"


def test_complete_entry_without_its_line_end_is_not_kept_half(tmp_path):
    """An entry that lacks only its line feed was never acknowledged: it is set aside, not glued to the next."""
    path = written(tmp_path / "glue.jsonl", 4, sealed=False)
    whole = path.read_bytes()
    path.write_bytes(whole[:-1])
    with RecordFile.reopen(path) as record:
        record.append(body(5))
    kinds = [read_line(line).fields["kind"] for line in path.read_bytes().splitlines(keepends=True)]
    assert kinds == ["opened", "heard", "typed", "recovered", "heard"]
