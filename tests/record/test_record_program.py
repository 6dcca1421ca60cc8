"""The program itself on machines that fail it: disk full, read-only, a second writer, a clock set back."""

import json
import os
import shutil
import subprocess
import sys
from datetime import datetime, timedelta

import pytest

from assistant.record.verify import read_entries, verify
from tests.attempt.program import here, process
from tests.record.instructors import lone_instructor
from tests.record.test_record_file import small_disk

TYPED = ("--typed", "--json")


def taken(ended):
    """The words that the program told as taken: they are on disk, or it lied."""
    return [line["typed"] for line in ended.lines if "typed" in line]


def words_in(record):
    return [entry["words"] for entry in read_entries(record) if entry["kind"] == "typed"]


def assert_polite(ended, *told):
    """It failed in one plain sentence with what to do, and no traceback."""
    assert ended.code == 1, ended
    assert "Traceback" not in ended.console
    for part in told:
        assert part in ended.console


def test_full_disk_ends_the_attempt_and_loses_nothing_told():
    """The disk fills up in mid-attempt: plain words, what was told as taken stands, and it is resumed."""
    with small_disk() as folder:
        ended = process("run", "primary-line", *TYPED, "--records", str(folder), typed=b"yes\n" + b"again\n" * 500)
        assert_polite(ended, "no space left on device", "entries are safe", "See to the disk, then resume it.")
        (record,) = folder.glob("*.jsonl")
        assert len(taken(ended)) > 20
        before = taken(ended)
        subprocess.run(["mount", "-o", "remount,size=1m", folder], check=True)
        again = process("resume", str(record), *TYPED, typed=b"stop\nyes\n")
        assert again.code == 4
        assert words_in(record)[: len(before)] == before
        assert words_in(record)[-2:] == ["stop", "yes"]
        assert verify(record).intact


def test_read_only_disk_is_told_before_anything_is_said(tmp_path, capsys):
    """Where nothing can be written, no step is read out, nothing is taken, and nothing is closed or signed."""
    keys = ("--keys", str(tmp_path / "keys"))
    lone_instructor(tmp_path / "keys")
    closing = ("--close", "--decision", "not-passed", "--reason", "Left.", "--signer", "M. Lindqvist, RN", *keys)
    with small_disk("size=1m") as folder:
        process("run", "primary-line", *TYPED, "--records", str(folder), typed=b"yes\n")
        (record,) = folder.glob("*.jsonl")
        content = record.read_bytes()
        subprocess.run(["mount", "-o", "remount,ro", folder], check=True)
        for ended in (
            process("run", "primary-line", *TYPED, "--records", str(folder), typed=b"yes\n"),
            process("resume", str(record), *TYPED, typed=b"yes\n"),
            here(capsys, "sign-off", str(record), *closing),
        ):
            assert_polite(ended, "read-only file system", "Check that the folder exists")
            assert taken(ended) == []
        assert record.read_bytes() == content


def test_second_writer_is_refused_and_disturbs_nothing(tmp_path):
    """While an attempt goes on, resuming, closing and erasing refuse in words and the attempt finishes."""
    with subprocess.Popen(
        [sys.executable, "-m", "assistant", "run", "primary-line", *TYPED, "--records", tmp_path],
        stdin=subprocess.PIPE, stdout=subprocess.PIPE, stderr=subprocess.DEVNULL, text=True,
    ) as attempt:  # fmt: skip
        attempt.stdin.write("yes\n")
        attempt.stdin.flush()
        while "typed" not in json.loads(attempt.stdout.readline()):
            pass
        (record,) = tmp_path.glob("*.jsonl")
        ended = process("resume", str(record), *TYPED, typed=b"no\n")
        assert_polite(ended, f"is in use by process {attempt.pid}", "Close the other attempt first")
        out, _ = attempt.communicate("stop\nyes\n", timeout=60)
    assert attempt.returncode == 4
    assert json.loads(out.splitlines()[-1])["outcome"] == "stopped"
    assert words_in(record) == ["yes", "stop", "yes"]
    assert verify(record).intact


@pytest.mark.skipif(shutil.which("faketime") is None, reason="faketime is not on this machine")
def test_clock_set_back_an_hour(tmp_path):
    """Resumed with the clock an hour behind: it is said and recorded, times go on, and no wait grows by an hour."""
    process("run", "primary-line", *TYPED, "--records", str(tmp_path), typed=b"yes\n")
    (record,) = tmp_path.glob("*.jsonl")
    last = datetime.fromisoformat(str(read_entries(record)[-1]["at"]))
    done = subprocess.run(
        ["faketime", "-f", "-1h", sys.executable, "-m", "assistant", "resume", record, *TYPED],
        input=b"yes\nstop\nyes\n", capture_output=True, timeout=100,
        env={**os.environ, "FAKETIME_DONT_FAKE_MONOTONIC": "1"},
    )  # fmt: skip
    assert done.returncode == 4
    assert b"s behind the record" in done.stderr
    entries = read_entries(record)
    resumed = next(entry for entry in entries if entry["kind"] == "resumed")
    assert 3_500 < int(resumed["clock_behind_s"]) <= 3_600
    times = [datetime.fromisoformat(str(entry["at"])) for entry in entries]
    assert times == sorted(times)
    assert times[-1] - last < timedelta(minutes=2)
    assert words_in(record) == ["yes", "yes", "stop", "yes"]
    assert verify(record).notes == ()
