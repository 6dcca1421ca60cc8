"""The program's rim: full disks, odd consoles, empty paths, a far year are sentences and never a traceback."""

import os
import stat
import subprocess
import sys
from pathlib import Path

import pytest

from tests.attempt.program import here
from tests.record.examples import written
from tests.record.forge import forged

FULL = Path("/dev/full")
"""A file that takes nothing (Linux, full(4))."""


def program(*arguments, **options):
    """A process of its own; its exit code and standard error."""
    done = subprocess.run(
        [sys.executable, "-m", "assistant", *map(str, arguments)], stdin=subprocess.DEVNULL, timeout=60, **options
    )
    return done.returncode, (done.stderr or b"").decode(errors="replace")


@pytest.mark.skipif(not FULL.exists(), reason="no /dev/full on this system")
@pytest.mark.parametrize("verb", [["calc", "--list"], ["demo", "bag-change", "--typed"]])
def test_standard_output_on_a_full_disk(tmp_path, verb):
    """One sentence and exit code 1; the record of an attempt is safe."""
    records = ["--records", str(tmp_path)] if verb[0] == "demo" else []
    with FULL.open("wb") as full:
        code, console = program(*verb, *records, stdout=full, stderr=subprocess.PIPE)
    assert (code, "Traceback" in console) == (1, False)
    assert "Standard output cannot be written: No space left on device." in console


@pytest.mark.parametrize("encoding", ["ascii", "cp1252"])
def test_a_console_that_lacks_letters(tmp_path, encoding):
    """What it cannot show is written out; nothing ends for it."""
    ended = here_demo(tmp_path)
    environment = {**os.environ, "PYTHONIOENCODING": encoding}
    code, console = program("report", ended, stdout=subprocess.DEVNULL, stderr=subprocess.PIPE, env=environment)
    assert (code, "Traceback" in console) == (0, False)


def here_demo(folder):
    """A record of this machine."""
    environment = {**os.environ}
    program("demo", "bag-change", "--typed", "--records", folder, stdout=subprocess.DEVNULL, env=environment)
    return next(folder.glob("*.jsonl"))


@pytest.mark.parametrize(
    "verb",
    [
        ["verify", ""],
        ["report", ""],
        ["erase-sound", ""],
        ["resume", "/"],
        ["verify", "/"],
        ["report", ".."],
        ["sign-off", "", "--signer", "x", "--decision", "passed"],
    ],
)
def test_a_path_that_names_no_file(capsys, verb):
    """An empty path, a folder: a sentence."""
    assert here(capsys, *verb).code in (1, 2)


def test_a_record_from_the_calendars_end(capsys, tmp_path):
    """Resumed, verified, reported: times beyond which there are none."""
    path = here_demo(tmp_path)
    lines = path.read_bytes().splitlines(keepends=True)
    path.write_bytes(b"".join(lines[:9]))
    far = "9999-12-31T23:59:59.999999+00:00"
    forged(path, lambda bodies: bodies[-1].update(at=far))
    (Path(os.environ["CHECKOFF_HEADS"]) / "heads.jsonl").unlink()
    for verb in (["resume", str(path), "--typed"], ["verify", str(path)], ["report", str(path)]):
        code, console = program(*verb, stdout=subprocess.DEVNULL, stderr=subprocess.PIPE)
        assert (code in (0, 1, 2, 4), "Traceback" in console) == (True, False), (verb, console)


def test_the_report_of_a_record_that_names_no_checklist(capsys, tmp_path):
    """Every kind of report is made, or refused in a sentence."""
    path = written(tmp_path / "a.jsonl", 4)
    forged(path, lambda bodies: bodies[0].pop("checklist"))
    for name in ("a.pdf", "a.html", "a.csv", "a.json"):
        assert here(capsys, "report", str(path), "-o", str(tmp_path / name)).code == 0


def test_answers_of_a_class_are_for_their_owner_alone(capsys, tmp_path):
    """Answer keys and faults, even under a lax umask."""
    before = os.umask(0)
    try:
        assert here(capsys, "orders", "draw", "primary-line", "--out", str(tmp_path / "class")).code == 0
    finally:
        os.umask(before)
    files = list((tmp_path / "class").iterdir())
    assert {stat.S_IMODE(file.stat().st_mode) for file in files} == {0o600}
    assert stat.S_IMODE((tmp_path / "class").stat().st_mode) == 0o700
