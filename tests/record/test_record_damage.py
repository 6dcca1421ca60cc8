# ruff: noqa: S311 - chance for tests, not for secrets
"""A damaged record: never whole, nothing lost before the damage. At sampled places; `tests.record.damage` does all."""

import random
import tempfile
from contextlib import suppress
from pathlib import Path

import pytest

from assistant.errors import RecordError
from assistant.record.chain import Problem
from assistant.record.entry import read_line
from assistant.record.file import RecordFile
from assistant.record.verify import read_entries, verify
from tests.record.damage import ENTRIES, FLIPS, change_one_entry, cut_everywhere, flip_everywhere
from tests.record.examples import at, body, written

STRIDE = 29
"""Every 29th byte, beginning elsewhere in each line."""


@pytest.fixture(scope="module")
def content(tmp_path_factory):
    return written(tmp_path_factory.mktemp("damage") / "attempt.jsonl", ENTRIES).read_bytes()


def test_cut_in_500_entries(content):
    """Wherever a record is cut, it is not whole, and every complete entry before the cut still holds."""
    assert cut_everywhere(content, STRIDE) > len(content) // (STRIDE + 1)


def test_bytes_flipped_in_500_entries(content):
    """Whichever byte changes, the record breaks in just that line; the entries before it hold."""
    assert flip_everywhere(content, 1, STRIDE) > len(content) // (STRIDE + 1)


def test_every_change_of_a_byte_of_one_entry(content):
    """An entry with a byte set to each other value: no value is taken for the entry."""
    assert change_one_entry(content, STRIDE) > 15 * 255


@pytest.mark.parametrize("seed", range(12))
def test_damage_seen_through_the_whole_file(content, tmp_path, seed):
    """The same through files: verdict, entries and resumption all agree on where the damage is."""
    chance = random.Random(seed)
    place = chance.randrange(len(content))
    number = content.count(b"\n", 0, place) + 1
    path = tmp_path / "attempt.jsonl"

    path.write_bytes(content[:place])
    verdict = verify(path)
    lacks_end = content[place : place + 1] == b"\n"
    assert (verdict.ok, verdict.count) == (lacks_end and number == ENTRIES, number - 1 + lacks_end)

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
        lacks_end = whole[cut : cut + 1] == b"\n"
        complete = whole.count(b"\n", 0, cut) + lacks_end
        if cut < first - 1:
            with pytest.raises(RecordError, match=r"nothing was recorded|not a record"):
                RecordFile.reopen(path)
            assert path.read_bytes() == whole[:cut]
            continue
        torn = 0 if lacks_end else cut - whole.rfind(b"\n", 0, cut) - 1
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


def test_complete_entry_without_its_line_end_counts(tmp_path):
    """An entry that lacks only its line feed gets it back and is kept; the next one is not glued to it."""
    path = written(tmp_path / "glue.jsonl", 4, sealed=False)
    whole = path.read_bytes()
    path.write_bytes(whole[:-1])
    with RecordFile.reopen(path) as record:
        record.append(body(5))
    kinds = [read_line(line).fields["kind"] for line in path.read_bytes().splitlines(keepends=True)]
    assert kinds == ["opened", "heard", "typed", "heard", "heard"]
    assert path.read_bytes().startswith(whole)
