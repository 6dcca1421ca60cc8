"""The record on disk: appending, sealing, resuming, one writer, and disks that refuse."""

import errno
import os
import resource
import shutil
import signal
import stat
import subprocess
import sys
import tempfile
from contextlib import contextmanager
from pathlib import Path

import pytest

from assistant.errors import RecordError
from assistant.record.chain import Problem
from assistant.record.entry import LONGEST_LINE
from assistant.record.file import RecordFile
from assistant.record.verify import read_entries, verify
from tests.record.examples import at, body, opening, written
from tests.record.kill import kill_often
from tests.record.kill_attempts import kill_attempts

NOBODY = 65534
"""An account without rights, on Linux and macOS alike by custom."""


def test_attempt_from_opening_to_seal(tmp_path):
    """Every append returns the number and digest that stand on disk by then; the seal ends it."""
    path = tmp_path / "attempt.jsonl"
    with RecordFile.create(path, opening()) as record:
        assert len(read_entries(path)) == 1
        for number in range(2, 6):
            recorded = record.append(body(number))
            on_disk = read_entries(path)[-1]
            assert (on_disk["sequence"], on_disk["digest"]) == (number, recorded.digest)
            assert on_disk["words"] == body(number)["words"]
        assert verify(path).problem is Problem.NOT_SEALED
        sealed = record.seal({"kind": "finished", "at": at(60), "outcome": "passed"})
        assert (record.sealed, record.head) == (True, sealed.digest)
        assert record.entries == read_entries(path)
        with pytest.raises(RecordError, match="sealed: nothing can be added"):
            record.append(body(7))
        with pytest.raises(RecordError, match="sealed: nothing can be added"):
            record.seal({"at": at(61)})
    verdict = verify(path)
    assert (verdict.ok, verdict.count, verdict.head) == (True, 6, sealed.digest)
    assert record.entries[0]["format"] == "1"
    assert record.entries[-1]["kind"] == "finished"


def test_only_the_owner_may_read_a_record(tmp_path):
    """Record, torn tail and lock are the owner's alone, even under a lax umask."""
    previous = os.umask(0)
    try:
        path = tmp_path / "attempt.jsonl"
        RecordFile.create(path, opening()).close()
        with path.open("ab") as stream:
            stream.write(b'{"at":')
        RecordFile.reopen(path).close()
    finally:
        os.umask(previous)
    files = sorted(tmp_path.iterdir())
    assert [file.name for file in files] == ["attempt.jsonl", "attempt.jsonl.lock", "attempt.jsonl.torn"]
    assert {stat.S_IMODE(file.stat().st_mode) for file in files} == {0o600}


def test_each_entry_is_fsynced_before_it_is_acknowledged(tmp_path, monkeypatch):
    """When `append` returns, the last call on the file was an fsync with the whole entry in it."""
    sizes = []
    real = os.fsync
    path = tmp_path / "attempt.jsonl"

    def counting(descriptor):
        real(descriptor)
        sizes.append((os.fstat(descriptor).st_ino, os.fstat(descriptor).st_size))

    monkeypatch.setattr(os, "fsync", counting)
    with RecordFile.create(path, opening()) as record:
        assert sizes[0][0] == tmp_path.stat().st_ino, "the folder, so that the name survives"
        for number in range(2, 5):
            record.append(body(number))
            assert sizes[-1] == (path.stat().st_ino, path.stat().st_size)
            assert len(sizes) == 1 + number


@pytest.mark.parametrize("missing", ["kind", "at"])
def test_body_without_kind_or_time_is_a_bug(tmp_path, missing):
    """A body that lacks what every entry has is refused and changes nothing."""
    with RecordFile.create(tmp_path / "a.jsonl", opening()) as record:
        content = body(2)
        del content[missing]
        with pytest.raises(TypeError, match=missing):
            record.append(content)
        assert record.append(body(2)).sequence == 2


def test_seal_is_made_by_the_record_alone(tmp_path):
    """No body may bring a seal of its own."""
    with RecordFile.create(tmp_path / "a.jsonl", opening()) as record:
        for call in (record.append, record.seal):
            with pytest.raises(TypeError):
                call({**body(2), "seal": {"count": 1, "head": record.head}})
        record.append(body(2))
        record.seal({"at": at(9)})
    assert verify(tmp_path / "a.jsonl").ok


def test_monotonic_time_is_added_where_it_is_not_told(tmp_path):
    """Entries carry the machine's monotonic time in seconds as text; one that is told stays."""
    with RecordFile.create(tmp_path / "a.jsonl", opening()) as record:
        record.append({"kind": "typed", "at": at(1), "ticks": "12.5"})
        record.append({"kind": "typed", "at": at(2)})
        first, told, added = (str(entry["ticks"]) for entry in record.entries)
    assert told == "12.5"
    assert float(first) <= float(added)


def test_bad_words_do_not_end_an_attempt(tmp_path):
    """Words too long or not Unicode are refused with a sentence; the next entry goes in."""
    path = tmp_path / "a.jsonl"
    with RecordFile.create(path, opening()) as record:
        for words in ("x" * LONGEST_LINE, "\udcff"):
            with pytest.raises(RecordError):
                record.append({**body(2), "words": words})
        record.append({**body(2), "words": "\u202e<b>=1+1\u0000 100 kB: " + "y" * 100_000})
        record.seal({"at": at(3)})
    assert verify(path).ok
    assert len(str(read_entries(path)[1]["words"])) > 100_000


def test_record_is_never_overwritten(tmp_path):
    """An existing file, or a link to nowhere, is left alone."""
    path = written(tmp_path / "a.jsonl", 3)
    before = path.read_bytes()
    with pytest.raises(RecordError, match="exists already"):
        RecordFile.create(path, opening())
    assert path.read_bytes() == before
    (tmp_path / "link.jsonl").symlink_to(tmp_path / "nowhere")
    with pytest.raises(RecordError, match="exists already"):
        RecordFile.create(tmp_path / "link.jsonl", opening())


@pytest.mark.parametrize(
    ("content", "message"),
    [
        (b"", "empty"),
        (b"hello\n", "line 1: not a record"),
        (b'{"kind":"op', "nothing was recorded"),
        (b"\x00" * 5000, "not a record"),
    ],
)
def test_what_is_no_record_is_not_resumed(tmp_path, content, message):
    """A file that holds no attempt is refused with a sentence and stays as it is."""
    path = tmp_path / "a.jsonl"
    path.write_bytes(content)
    with pytest.raises(RecordError, match=message):
        RecordFile.reopen(path)
    assert path.read_bytes() == content


def test_wrong_path_is_not_resumed_and_leaves_nothing(tmp_path):
    """Resuming a file that is not there creates none, nor a lock."""
    for path in (tmp_path / "missing.jsonl", tmp_path, tmp_path / "no" / "folder.jsonl"):
        with pytest.raises(RecordError, match=r"cannot be read|not a file"):
            RecordFile.reopen(path)
    assert list(tmp_path.iterdir()) == []


def test_sealed_record_is_not_resumed(tmp_path):
    """An attempt that is over stays over, whatever was added behind its seal."""
    path = written(tmp_path / "a.jsonl", 4)
    before = path.read_bytes()
    for tail, message in ((b"", "its attempt is over"), (b'{"at"', "its attempt is over"), (b"x\n", "line 5")):
        path.write_bytes(before + tail)
        with pytest.raises(RecordError, match=message):
            RecordFile.reopen(path)
        assert path.read_bytes() == before + tail


def test_damage_in_the_middle_stops_everything_and_names_the_line(tmp_path):
    """A break before the end is not repaired: the line is named, the file stays as it is."""
    path = written(tmp_path / "a.jsonl", 6, sealed=False)
    damaged = path.read_bytes().replace(b"one hundred and 3 ", b"one hundred and 4 ")
    path.write_bytes(damaged)
    with pytest.raises(RecordError, match="line 3: edited"):
        RecordFile.reopen(path)
    assert path.read_bytes() == damaged
    assert not path.with_name("a.jsonl.torn").exists()


def test_closed_record_takes_nothing(tmp_path):
    """After closing, nothing is appended, and closing again does no harm."""
    record = RecordFile.create(tmp_path / "a.jsonl", opening())
    record.close()
    record.close()
    with pytest.raises(RecordError, match="closed"):
        record.append(body(2))


def test_resuming_many_times_keeps_every_entry(tmp_path):
    """Open, append, leave, again and again, with the clock an hour back: all entries stay, in order."""
    path = written(tmp_path / "a.jsonl", 2, sealed=False)
    for number in range(3, 23):
        with RecordFile.reopen(path) as record:
            assert len(record.entries) == number - 1
            record.append({**body(number), "at": at(2 * number - (3600 if number > 12 else 0))})
    verdict = verify(path)
    assert (verdict.intact, verdict.count, len(verdict.notes)) == (True, 22, 1)
    assert [entry["sequence"] for entry in read_entries(path)] == list(range(1, 23))


# One writer.


def test_second_writer_in_another_process_is_refused_until_the_first_is_gone(tmp_path):
    """Another process that writes is named; when it is killed, its lock goes with it."""
    path = tmp_path / "a.jsonl"
    with subprocess.Popen(
        [sys.executable, "-m", "tests.record.writer", path], stdout=subprocess.PIPE, text=True
    ) as writer:
        assert writer.stdout is not None
        try:
            assert writer.stdout.readline() == "ready\n"
            with pytest.raises(RecordError, match=f"in use by process {writer.pid}") as refusal:
                RecordFile.reopen(path)
            assert refusal.value.remedy
            acknowledged = writer.stdout.readline()
        finally:
            writer.send_signal(signal.SIGKILL)
    number, digest = acknowledged.split()
    with RecordFile.reopen(path) as record:
        assert record.entries[int(number) - 1]["digest"] == digest


def test_second_writer_in_this_process_is_refused(tmp_path):
    """One process may not write a record twice at a time either; verifying and reading go on."""
    path = tmp_path / "a.jsonl"
    with RecordFile.create(path, opening()) as record:
        with pytest.raises(RecordError, match=f"process {os.getpid()}"):
            RecordFile.reopen(path)
        record.append(body(2))
        assert verify(path).intact
    RecordFile.reopen(path).close()


def test_lock_file_with_junk_in_it_does_no_harm(tmp_path):
    """What stands in a lock file is a courtesy: only the lock itself counts."""
    path = written(tmp_path / "a.jsonl", 2, sealed=False)
    lock = path.with_name("a.jsonl.lock")
    lock.write_bytes(b"\xff" * 50_000)
    with RecordFile.reopen(path):
        lock.write_bytes(b"not a number")
        with pytest.raises(RecordError, match="in use by another process"):
            RecordFile.reopen(path)


# Disks that refuse.


def recorded_until_refused(path):
    """Append until the disk refuses; the acknowledged digests and the refusal."""
    digests = []
    record = RecordFile.create(path, opening())
    with record:
        for number in range(2, 5000):
            try:
                digests.append(record.append(body(number)).digest)
            except RecordError as refusal:
                return record, digests, refusal
    raise AssertionError("the disk never refused")


def assert_nothing_lost(path, digests, grow):
    """What was acknowledged stands, and after `grow` the attempt goes on and finishes."""
    assert verify(path).count >= 1 + len(digests)
    grow()
    with RecordFile.reopen(path) as record:
        assert [entry["digest"] for entry in record.entries[1 : 1 + len(digests)]] == digests
        record.append(body(1))
        record.seal({"at": at(1)})
    assert verify(path).ok


@contextmanager
def small_disk(options="size=64k"):
    folder = Path(tempfile.mkdtemp())
    mounted = subprocess.run(["mount", "-t", "tmpfs", "-o", options, "tmpfs", folder], capture_output=True, check=False)
    try:
        if mounted.returncode != 0:
            pytest.skip("needs the right to mount a small file system")
        yield folder
    finally:
        subprocess.run(["umount", folder], capture_output=True, check=False)
        shutil.rmtree(folder, ignore_errors=True)


def test_full_disk_ends_the_attempt_with_all_that_was_acknowledged():
    """On a full file system the append fails at once, stays failed, and nothing acknowledged is lost."""
    with small_disk() as folder:
        path = folder / "a.jsonl"
        record, digests, refusal = recorded_until_refused(path)
        assert "no space left" in refusal.what
        assert f"first {1 + len(digests)} entries are safe" in refusal.remedy
        assert len(digests) > 50
        size = path.stat().st_size
        for _ in range(3):
            with pytest.raises(RecordError, match=r"no space left.*Nothing more can be recorded"):
                record.append({"kind": "x", "at": at(0)})
        assert path.stat().st_size == size
        # Still full: resuming is refused as well, and again nothing is lost.
        with pytest.raises(RecordError, match="no space left"):
            RecordFile.reopen(path).append(body(1))
        remount = ["mount", "-o", "remount,size=1m", folder]
        assert_nothing_lost(path, digests, lambda: subprocess.run(remount, check=True))


def test_file_size_limit_ends_the_attempt_the_same_way(tmp_path):
    """A limit on file sizes tears the last entry; it is set aside on resuming."""
    path = tmp_path / "a.jsonl"
    soft, hard = resource.getrlimit(resource.RLIMIT_FSIZE)
    resource.setrlimit(resource.RLIMIT_FSIZE, (40_000, hard))
    try:
        _, digests, refusal = recorded_until_refused(path)
    finally:
        resource.setrlimit(resource.RLIMIT_FSIZE, (soft, hard))
    assert "file too large" in refusal.what
    assert path.stat().st_size == 40_000
    assert verify(path).problem is Problem.TORN_TAIL
    assert_nothing_lost(path, digests, lambda: None)
    torn = path.with_name("a.jsonl.torn").stat().st_size
    assert [entry["bytes"] for entry in read_entries(path) if entry["kind"] == "recovered"] == [torn]


def test_failed_fsync_is_never_tried_again(tmp_path, monkeypatch):
    """After one failed fsync nothing is acknowledged any more, though the disk would seem well again."""
    path = tmp_path / "a.jsonl"
    with RecordFile.create(path, opening()) as record:
        record.append(body(2))

        def failing(descriptor):
            raise OSError(errno.EIO, os.strerror(errno.EIO))

        with monkeypatch.context() as patch:
            # No disk breaks on demand: the error is the one a kernel gives.
            patch.setattr(os, "fsync", failing)
            with pytest.raises(RecordError, match="input/output error"):
                record.append(body(3))
        for call in (record.append, record.seal):
            with pytest.raises(RecordError, match="input/output error"):
                call(body(3))
        assert len(record.entries) == 2
    assert verify(path).count == 3, "the entry that was not acknowledged may well be there"


def test_interrupted_append_marks_the_record_as_failed(tmp_path, monkeypatch):
    """An interrupt in the middle of a write may leave half a line: nothing is written behind it."""
    with RecordFile.create(tmp_path / "a.jsonl", opening()) as record:

        def interrupted(descriptor):
            raise KeyboardInterrupt

        with monkeypatch.context() as patch:
            patch.setattr(os, "fsync", interrupted)
            with pytest.raises(KeyboardInterrupt):
                record.append(body(2))
        with pytest.raises(RecordError, match="Nothing more can be recorded"):
            record.append(body(2))


def test_read_only_disk(tmp_path):
    """On a read-only file system nothing starts or resumes, and each says so; verifying works."""
    with small_disk("size=1m") as folder:
        path = written(folder / "a.jsonl", 4, sealed=False)
        subprocess.run(["mount", "-o", "remount,ro", folder], check=True)
        for refused in (lambda: RecordFile.create(folder / "b.jsonl", opening()), lambda: RecordFile.reopen(path)):
            with pytest.raises(RecordError, match="cannot be written: read-only file system") as refusal:
                refused()
            assert "may write" in refusal.value.remedy
        assert verify(path).intact


def test_folder_without_permission():
    """In a folder where this account may not write, a record neither starts nor resumes; it is said why."""
    folder = Path(tempfile.mkdtemp())
    try:
        path = written(folder / "a.jsonl", 4, sealed=False)
        for file in folder.iterdir():
            file.chmod(0o444)
        folder.chmod(0o555)
        if root := os.geteuid() == 0:
            os.seteuid(NOBODY)
        try:
            for refused in (
                lambda: RecordFile.create(folder / "b.jsonl", opening()),
                lambda: RecordFile.reopen(path),
            ):
                with pytest.raises(RecordError, match="cannot be written: permission denied"):
                    refused()
            assert verify(path).intact
        finally:
            if root:
                os.seteuid(0)
    finally:
        folder.chmod(0o700)
        shutil.rmtree(folder)


def test_folder_that_is_not_there(tmp_path):
    """The sentence about a missing folder names what to check."""
    with pytest.raises(RecordError, match="cannot be written: no such file or directory") as refusal:
        RecordFile.create(tmp_path / "no" / "a.jsonl", opening())
    assert "folder exists" in refusal.value.remedy


# Processes that are killed.


def test_killed_processes_lose_nothing_they_acknowledged(tmp_path):
    """30 processes killed with SIGKILL at random moments: every acknowledged entry stands, each resumes.

    ``python -m tests.record.kill 1000`` does it a thousand times.
    """
    tally = kill_often(tmp_path, 30, seed=1)
    assert (tally.kills, tally.lost, tally.sealed) == (30, 0, tally.records)
    assert tally.acknowledged > 100


@pytest.mark.slow
@pytest.mark.timeout(600)
def test_killed_attempts_go_on_where_they_were(tmp_path):
    """Real attempts killed and resumed 6 times: every answer told as taken stands, each attempt is passed.

    ``python -m tests.record.kill_attempts 1000`` does it a thousand times.
    """
    tally = kill_attempts(tmp_path, 6, 3)
    assert tally.troubles == []
    assert (tally.kills, tally.lost, tally.finished) == (6, 0, tally.attempts)
    assert tally.taken > 20
