"""The instructor at the keyboard of a station: the typed line, the code, and what the record holds of it."""

import hashlib
import os
import stat
import time
from datetime import UTC, datetime, timedelta

import pytest

from assistant.adapters.instructor_line import FREE_TRIES, LONGEST_PAUSE_S, Doorkeeper, InstructorLine
from assistant.attempts.instructor_code import FOLDER, KEPT_DAYS, code_of, code_pins, keep_code, refused_in_a_row
from assistant.errors import UsageError
from assistant.record.verify import read_entries, verify
from tests.attempt.program import here, process

NOW = datetime(2026, 11, 25, 8, 0, tzinfo=UTC)
LINES = [
    # typed, code that was set, what it is
    ("instructor 4711", "4711", InstructorLine(proven=True, words="")),
    ("Instructor 4711: seen", "4711", InstructorLine(proven=True, words="seen")),
    ("instructor 4712: seen", "4711", InstructorLine(proven=False, words="")),
    ("instructor: overrule", "4711", InstructorLine(proven=False, words="")),
    ("instructor: overrule", "", InstructorLine(proven=False, words="overrule")),
    ("instructor here", "", InstructorLine(proven=False, words="")),
    ("instructor 4711", "", InstructorLine(proven=False, words="")),
    ("the instructor said so", "4711", None),
    ("instructor said so", "4711", None),
    ("done", "4711", None),
]


@pytest.mark.parametrize(("line", "code", "read"), LINES, ids=[f"{row[0]} / {row[1]}" for row in LINES])
def test_the_instructors_line(line, code, read):
    """Only the right code proves the instructor; without a code nobody is proven."""
    assert Doorkeeper(code).read(line, NOW) == read


def test_the_code_never_reaches_the_record(tmp_path):
    """A cue with the right code is the instructor's; a wrong code is refused; neither stands in the file."""
    typed = b"instructor 9999: cue given\ninstructor 4711: cue given\ngo on\nyes\n"
    ended = process(
        *("run", "primary-line", "--typed", "--json", "--mode", "check-off", "--instructor-code", "4711"),
        *("--records", str(tmp_path)),
        typed=typed,
    )
    record = ended.last["record"]
    assert verify(record).intact
    entries = read_entries(record)
    assert [entry.get("verdict") for entry in entries if entry["kind"] == "instructor here"] == [
        "refused",
        "instructor admitted",
    ]
    assert [entry["by"] for entry in entries if entry.get("cue")] == ["instructor"]
    text = " ".join(f"{entry.get('words', '')}{entry.get('verdict', '')}" for entry in entries)
    assert "4711" not in text
    assert "9999" not in text


def test_an_attempt_is_taken_up_with_its_own_code_only(tmp_path):
    """A learner who takes an attempt up cannot bring a code of their own."""
    opening = {**code_pins("4711"), "digest": "ab" * 32}
    keep_code(tmp_path, "ab" * 32, "4711")
    assert code_of(opening, "4711", tmp_path) == "4711"
    assert code_of(opening, "", tmp_path) == ""
    assert code_of({}, "4711", tmp_path) == ""
    with pytest.raises(UsageError, match="another instructor's code"):
        code_of(opening, "0815", tmp_path)
    with pytest.raises(UsageError, match="not known on this machine"):
        code_of(opening, "4711", tmp_path / "elsewhere")


def test_no_hash_of_a_code_is_in_the_record(tmp_path):
    """All four-digit codes are tried out in minutes, and a record travels: it says only that there is a code."""
    assert code_pins("4711") == {"instructor": "with a code"}
    keep_code(tmp_path, "ab" * 32, "4711")
    kept = tmp_path / FOLDER / ("ab" * 32)
    assert stat.S_IMODE(kept.stat().st_mode) == 0o600
    assert b"4711" not in kept.read_bytes()
    os.utime(kept, (0, time.time() - (KEPT_DAYS + 1) * 86_400))
    keep_code(tmp_path, "cd" * 32, "4711")
    assert not kept.exists(), "past its time"


def test_an_earlier_record_is_taken_up_with_its_code(tmp_path):
    """Those from before hold a hash of the code."""
    salt = bytes(16)
    hashed = hashlib.scrypt(b"4711", salt=salt, n=2**14, r=8, p=1).hex()
    opening = {"instructor": "with a code", "instructor_code": f"{salt.hex()}:{hashed}"}
    assert code_of(opening, "4711", tmp_path) == "4711"
    with pytest.raises(UsageError, match="another instructor's code"):
        code_of(opening, "0815", tmp_path)


def test_wrong_codes_slow_down():
    """Two are free; each further one doubles the time for which no code is looked at, the right one neither."""
    keeper, now = Doorkeeper("4711"), NOW
    pauses = []
    for _ in range(FREE_TRIES + 12):
        read = keeper.read("instructor 0000", now)
        assert not read.proven
        pauses.append(read.pause_s)
        if read.pause_s:
            early = keeper.read("instructor 4711: overrule", now + timedelta(seconds=read.pause_s - 1))
            assert (early.proven, early.words, early.pause_s > 0) == (False, "", True)
        now += timedelta(seconds=read.pause_s)
    assert pauses == [0, 0, 2, 4, 8, 16, 32, 64, 128, 256, *[LONGEST_PAUSE_S] * 4]
    assert keeper.read("instructor 4711: overrule", now) == InstructorLine(proven=True, words="overrule")
    assert keeper.read("instructor 0000", now).pause_s == 0, "after the right one it begins anew"


def test_ten_thousand_codes_take_weeks():
    """711 wrong guesses took four seconds once."""
    keeper, now = Doorkeeper("zzzz"), NOW
    for number in range(711):
        now += timedelta(seconds=keeper.read(f"instructor {number:04d}", now).pause_s)
    assert now - NOW > timedelta(hours=48)


def test_a_resumption_does_not_begin_the_count_anew():
    """What was refused before, in a row, counts on."""
    refused, admitted = (
        {"kind": "instructor here", "verdict": verdict} for verdict in ("refused", "instructor admitted")
    )
    assert refused_in_a_row([refused, admitted, refused, {"kind": "typed"}, refused]) == 2
    assert Doorkeeper("4711", wrong=2).read("instructor 0000", NOW).pause_s == 2


@pytest.mark.parametrize("line", ["my instructor 4711", "instructor code 4711", "intructor is here: instructor 4711"])
def test_a_slip_does_not_put_the_code_into_the_record(line):
    """A line with the word and the code is the instructor's, and proves nothing."""
    assert Doorkeeper("4711").read(line, NOW) == InstructorLine(proven=False, words="")


def test_refused_codes_are_in_the_report(tmp_path, capsys):
    """In the text as well: somebody tried."""
    codes = (b"9999", b"8888", b"7777", b"4711: cue given")
    typed = b"".join(b"instructor %b\n" % code for code in codes) + b"yes\n"
    ended = process(
        *("run", "primary-line", "--typed", "--json", "--mode", "check-off", "--instructor-code", "4711"),
        *("--records", str(tmp_path)),
        typed=typed,
    )
    record = ended.last["record"]
    verdicts = [entry.get("verdict") for entry in read_entries(record) if entry["kind"] == "instructor here"]
    assert verdicts == ["refused"] * 4, "the right one comes too early as well"
    assert any("No code is looked at for 2 seconds." in str(line) for line in ended.lines)
    lines = here(capsys, "report", record).lines
    assert "CAUTION: Somebody asked for the instructor 4 times with a wrong code, or with none." in lines


@pytest.mark.parametrize("code", ["123", "two words", "a:b:c", "x" * 65])
def test_a_code_that_cannot_be_used(capsys, tmp_path, code):
    """One sentence tells what a code is."""
    ended = here(capsys, "run", "--typed", "--instructor-code", code, "--records", str(tmp_path))
    assert ended.code == 2
    assert "letters and digits" in ended.console
