# ruff: noqa: S311 - chance for tests, not for secrets
"""Verification: each way to tamper with a record has its own verdict, and nothing brings it down."""

import codecs
import os
import random
import subprocess
import sys

import pytest

from assistant.errors import RecordError
from assistant.record.chain import UNDO_LINE_ENDS, Problem
from assistant.record.entry import GENESIS, LONGEST_LINE, link, read_line
from assistant.record.verify import LARGEST_READ, read_entries, read_record, verify
from tests.record.examples import at, body, opening, written


@pytest.fixture
def record(tmp_path):
    return written(tmp_path / "attempt.jsonl", 12)


def relinked(lines, start):
    """The same bodies linked anew from line `start` (from 1) on, as a forger without a key can do."""
    head = read_line(lines[start - 2]).digest if start > 1 else GENESIS
    result = lines[: start - 1]
    for number, line in enumerate(lines[start - 1 :], start):
        fields = read_line(line).fields
        content = {name: value for name, value in fields.items() if name not in ("sequence", "previous", "digest")}
        entry = link(content, head, number)
        head = entry.digest
        result.append(entry.line)
    return result


def test_untouched_record_holds(record):
    """A sealed record holds, with its count and head."""
    verdict = verify(record)
    last = read_line(record.read_bytes().splitlines(keepends=True)[-1])
    assert (verdict.ok, verdict.sealed, verdict.intact, verdict.problem) == (True, True, True, None)
    assert (verdict.count, verdict.head) == (12, last.digest)
    assert last.fields["seal"] == {"count": 11, "head": last.previous}


DIGEST = "Its content does not fit its digest."
LINE_ENDS = (
    "Something that copied this file put a mark before its first line or a carriage return behind its lines; "
    f"this entry itself is whole. Undo that in a copy and verify the copy: {UNDO_LINE_ENDS}."
)
NO_JSON = "The line is not an entry in JSON."
OPEN = "No seal closes it: the attempt goes on, was interrupted, or its end was cut off."
TORN = "The last {} bytes are no complete entry: the writing of one was cut short."


def swap(lines):
    lines[4], lines[5] = lines[5], lines[4]
    return lines


def replace_one(lines):
    entry = read_line(lines[4])
    forged = {**entry.fields, "verdict": "agrees, honestly"}
    for name in ("sequence", "previous", "digest"):
        del forged[name]
    return [*lines[:4], link(forged, entry.previous, 5).line, *lines[5:]]


def false_seal(lines):
    entry = read_line(lines[-1])
    content = {**body(12), "seal": {"count": 10, "head": entry.previous}}
    return [*lines[:-1], link(content, entry.previous, 12).line]


def after_seal(lines):
    return [*lines, link(body(13), read_line(lines[-1]).digest, 13).line]


def other_form(lines):
    return relinked([link({**opening(), "format": "99"}, GENESIS, 1).line, *lines[1:]], 2)


@pytest.mark.parametrize(
    ("tamper", "problem", "line", "count", "why"),
    [
        (lambda x: [*x[:4], x[4].replace(b"agrees", b"agreed"), *x[5:]], Problem.EDITED, 5, 4, DIGEST),
        (lambda x: [x[0].replace(b"L-014", b"L-015"), *x[1:]], Problem.EDITED, 1, 0, DIGEST),
        (replace_one, Problem.EDITED, 6, 5, "It was not made to follow entry 5: one of the two was replaced."),
        (false_seal, Problem.EDITED, 12, 11, "The seal does not fit the entries before it."),
        (lambda x: [*x[:4], b"\n", *x[4:]], Problem.EDITED, 5, 4, NO_JSON),
        (lambda x: [*x[:4], x[4].replace(b"\n", b"\r\n"), *x[5:]], Problem.LINE_ENDS, 5, 4, LINE_ENDS),
        (lambda x: [*x[:4], x[4][:-1], *x[5:]], Problem.EDITED, 5, 4, NO_JSON),
        (swap, Problem.REORDERED, 5, 4, "Entry 5 stands further down in the file."),
        (lambda x: x[::-1], Problem.REORDERED, 1, 0, "Entry 1 stands further down in the file."),
        (lambda x: [*x[:4], *x[5:], x[4]], Problem.REORDERED, 5, 4, "Entry 5 stands further down in the file."),
        (lambda x: [*x[:4], *x[5:]], Problem.REMOVED, 5, 4, "Entry 5 is missing: entry 6 stands in its place."),
        (lambda x: x[1:], Problem.REMOVED, 1, 0, "Entry 1 is missing: entry 2 stands in its place."),
        (lambda x: [*x[:10], x[11]], Problem.REMOVED, 11, 10, "Entry 11 is missing: entry 12 stands in its place."),
        (lambda x: [*x[:5], *x[4:]], Problem.INSERTED, 6, 5, "Entry 5 stands here, where entry 6 belongs."),
        (after_seal, Problem.AFTER_SEAL, 13, 12, "It stands after the seal and is not signed."),
        (lambda x: x[:11], Problem.NOT_SEALED, None, 11, OPEN),
        (lambda x: x[:1], Problem.NOT_SEALED, None, 1, OPEN),
        (lambda x: [*x[:11], x[11][:40]], Problem.TORN_TAIL, 12, 11, TORN.format(40)),
        (lambda x: [*x[:11], x[11][:40] + bytes(100) + b"\n"], Problem.TORN_TAIL, 12, 11, TORN.format(141)),
        (lambda x: [*x[:10], x[10][:40] + bytes(100) + b"\n", x[11]], Problem.EDITED, 11, 10, NO_JSON),
        (lambda x: [x[0][:40]], Problem.TORN_TAIL, 1, 0, TORN.format(40)),
        (lambda x: [x[0] + x[11]], Problem.REMOVED, 2, 1, "Entry 2 is missing: entry 12 stands in its place."),
        (other_form, Problem.NOT_A_RECORD, 1, 0, "Its form is not the form 1 that is known here."),
    ],
)
def test_each_way_to_tamper_is_named(record, tamper, problem, line, count, why):
    """The verdict names what was done and the first line that does not hold, and says so in a sentence."""
    record.write_bytes(b"".join(tamper(record.read_bytes().splitlines(keepends=True))))
    verdict = verify(record)
    assert (verdict.ok, verdict.problem, verdict.line, verdict.count) == (False, problem, line, count)
    assert verdict.why == why
    assert verdict.intact is (problem is Problem.NOT_SEALED)
    if not verdict.intact:
        with pytest.raises(RecordError) as refusal:
            read_entries(record)
        assert refusal.value.what == f"{record}, line {line}: {problem.value}. {why}"


def test_a_last_line_without_its_end_counts(record):
    """A valid sign-off is not lost over one byte: the entry is whole, and what is missing is told."""
    head = verify(record).head
    record.write_bytes(record.read_bytes()[:-1])
    verdict = verify(record)
    assert (verdict.ok, verdict.count, verdict.head) == (True, 12, head)
    assert verdict.notes == ("The line feed behind the last entry is missing; the entry itself is whole.",)


@pytest.mark.parametrize("change", ["carriage returns", "a mark", "both"])
def test_changed_line_ends_are_named_and_cured(record, change):
    """What a copying program does to text is called by its name, and the cure that is given works."""
    before = record.read_bytes()
    content = before if change == "a mark" else before.replace(b"\n", b"\r\n")
    record.write_bytes(content if change == "carriage returns" else codecs.BOM_UTF8 + content)
    verdict = verify(record)
    assert (verdict.problem, verdict.line, verdict.why) == (Problem.LINE_ENDS, 1, LINE_ENDS)
    copy = record.with_name("copy")
    cure = UNDO_LINE_ENDS.replace("RECORD", str(record)).replace("COPY", str(copy))
    subprocess.run(["sh", "-c", cure], check=True)
    assert copy.read_bytes() == before


def test_chain_alone_does_not_stop_a_forger_who_relinks(record):
    """Honest limit: who rewrites everything from the edit on makes a chain that holds; the printed head tells."""
    head = verify(record).head
    lines = record.read_bytes().splitlines(keepends=True)
    forged = relinked([*lines[:4], *relinked(lines, 5)[4:11]], 5)
    content = {"kind": "finished", "at": at(1), "seal": {"count": 11, "head": read_line(forged[-1]).digest}}
    record.write_bytes(b"".join([*forged, link(content, read_line(forged[-1]).digest, 12).line]))
    assert verify(record).ok
    assert verify(record, head=head).problem is Problem.TAIL_MISSING


@pytest.mark.parametrize("kept", range(1, 12))
def test_cut_off_tail_is_shown_by_the_head(record, kept):
    """With the head that was printed, a tail cut off between two entries is named as missing."""
    head = verify(record).head
    assert verify(record, head=head.upper()).ok
    record.write_bytes(b"".join(record.read_bytes().splitlines(keepends=True)[:kept]))
    assert verify(record).problem is Problem.NOT_SEALED
    verdict = verify(record, head=head)
    assert (verdict.ok, verdict.intact, verdict.problem) == (False, False, Problem.TAIL_MISSING)
    assert verdict.line is None
    assert verdict.why == f"It ends with {verdict.head} and never reaches the head that was given."


def test_open_record_is_whole_but_does_not_count_as_finished(tmp_path):
    """An interrupted attempt verifies as unbroken and unsealed, and its entries can be read."""
    record = written(tmp_path / "open.jsonl", 5, sealed=False)
    verdict = verify(record)
    assert (verdict.ok, verdict.intact, verdict.sealed, verdict.count) == (False, True, False, 5)
    entries = read_entries(record)
    assert [entry["sequence"] for entry in entries] == [1, 2, 3, 4, 5]
    assert entries[1]["words"] == body(2)["words"]


def test_clock_set_back_is_noted_and_breaks_nothing(tmp_path):
    """A clock that was set back an hour is remarked on; the record holds, its order is the chain's."""
    record = written(tmp_path / "clock.jsonl", 6, of=lambda n: {**body(n), "at": at(2 * n - (3600 if n > 3 else 0))})
    verdict = verify(record)
    assert verdict.ok
    assert verdict.notes == (
        "The clock of entry 4 is 3,598 s behind that of entry 3: the clock was set back in between.",
    )


@pytest.mark.parametrize("times", [["now", ""], ["2026-11-25T08:00:00", "2026-11-25T07:00:00Z"], ["9", "1"]])
def test_times_that_are_no_times_bring_nothing_down(tmp_path, times):
    """Verification never needs a time to be one."""
    path = written(tmp_path / "times.jsonl", 6, of=lambda n: {**body(n), "at": times[n % 2]})
    assert verify(path).ok


def test_clock_notes_are_limited(tmp_path):
    """A record cannot make its verdict grow without bound."""
    path = written(tmp_path / "times.jsonl", 60, of=lambda n: {**body(n), "at": at(n % 2)})
    assert len(verify(path).notes) == 10


def junk(size, seed=5):
    return random.Random(seed).randbytes(size)


@pytest.mark.parametrize(
    ("content", "problem"),
    [
        (b"", Problem.NOT_A_RECORD),
        (b"\n", Problem.NOT_A_RECORD),
        (b"hello\n", Problem.NOT_A_RECORD),
        (b"hello", Problem.NOT_A_RECORD),
        (b"{}\n", Problem.NOT_A_RECORD),
        (b'{"a":1}\n', Problem.NOT_A_RECORD),
        (b"\x89PNG\r\n\x1a\n" + junk(4000), Problem.NOT_A_RECORD),
        (b"RIFF" + bytes(3000) + b"WAVE", Problem.NOT_A_RECORD),
        (junk(100_000), Problem.NOT_A_RECORD),
        (bytes(100_000), Problem.NOT_A_RECORD),
        (b"[" * 900_000 + b"\n", Problem.NOT_A_RECORD),
        (b'{"a":' * 150_000 + b"\n", Problem.NOT_A_RECORD),
        (b"x" * (2 * LONGEST_LINE), Problem.NOT_A_RECORD),
        (b'{"sequence":1}\n', Problem.EDITED),
        ("\ufeff{}\n".encode(), Problem.NOT_A_RECORD),
        ("{}\n".encode("utf-16"), Problem.NOT_A_RECORD),
    ],
)
def test_what_is_no_record_gets_a_verdict(tmp_path, content, problem):
    """Binary, hostile or empty content gets a verdict, never a traceback."""
    path = tmp_path / "any"
    path.write_bytes(content)
    verdict = verify(path)
    assert (verdict.ok, verdict.problem, verdict.count) == (False, problem, 0)
    with pytest.raises(RecordError):
        read_entries(path)


@pytest.mark.parametrize("seed", range(40))
def test_mangled_records_get_a_verdict(record, seed):
    """Records cut up and glued together at random never hold and never bring verification down."""
    chance = random.Random(seed)
    content = record.read_bytes()
    for _ in range(chance.randint(1, 4)):
        start, end = sorted(chance.choices(range(len(content)), k=2))
        content = (
            content[:start] + chance.choice([b"", content[end:] + content[:start], junk(20, seed)]) + content[end:]
        )
    record.write_bytes(content)
    assert not verify(record).ok


def test_places_that_hold_no_record(tmp_path):
    """A folder, a pipe, a device, a missing file and a broken path get a verdict at once."""
    os.mkfifo(tmp_path / "pipe")
    for path in (tmp_path, tmp_path / "pipe", "/dev/zero", tmp_path / "missing", "nul\0byte", "x" * 5000):
        verdict = verify(path)
        assert verdict.problem is Problem.CANNOT_BE_READ
        with pytest.raises(RecordError):
            read_entries(path)


def test_endless_file_costs_bounded_memory(tmp_path):
    """A file of 3 GB, without a line end or with bad lines, is refused within 160 MB of address space more."""
    program = f"""
import resource, sys
from assistant.record.verify import verify, read_entries
from assistant.errors import RecordError
with open("/proc/self/statm") as statm:
    now = int(statm.read().split()[0]) * resource.getpagesize()
resource.setrlimit(resource.RLIMIT_AS, (now + {160 << 20},) * 2)
print(verify(sys.argv[1]).problem)
try:
    read_entries(sys.argv[1])
except RecordError as error:
    print(error)
"""
    huge = tmp_path / "huge"
    with huge.open("wb") as stream:
        stream.write(link(opening(), GENESIS, 1).line)
        stream.truncate(3 << 30)
    answer = subprocess.run(
        [sys.executable, "-c", program, huge], capture_output=True, text=True, check=True, timeout=60
    )
    assert answer.stdout.splitlines()[0] == Problem.EDITED
    assert "3,221,225,472 bytes" in answer.stdout.splitlines()[1]


def test_what_follows_a_missing_entry_costs_bounded_memory(tmp_path):
    """Whether the entry stands further down is looked for piece by piece, also where no line ends."""
    program = f"""
import resource, sys
from assistant.record.verify import verify
with open("/proc/self/statm") as statm:
    now = int(statm.read().split()[0]) * resource.getpagesize()
resource.setrlimit(resource.RLIMIT_AS, (now + {60 << 20},) * 2)
print(verify(sys.argv[1]).problem)
"""
    huge = tmp_path / "huge"
    with huge.open("wb") as stream:
        stream.write(link(opening(), GENESIS, 1).line + link(body(3), GENESIS, 3).line)
        stream.truncate(200 << 20)
    answer = subprocess.run(
        [sys.executable, "-c", program, huge], capture_output=True, text=True, check=True, timeout=60
    )
    assert answer.stdout.strip() == Problem.REMOVED


@pytest.mark.parametrize(
    ("tamper", "problem", "count"),
    [
        (lambda content: content, None, 12),
        (lambda content: content[:-7], Problem.TORN_TAIL, 11),
        (lambda content: b"".join(content.splitlines(keepends=True)[:-1]), Problem.NOT_SEALED, 11),
        (lambda content: content.replace(b'"sequence":7', b'"sequence":8'), Problem.EDITED, 6),
        (lambda content: b"".join(content.splitlines(keepends=True)[1:]), Problem.REMOVED, 0),
        (lambda content: b"no record at all\n", Problem.NOT_A_RECORD, 0),
        (lambda content: b"", Problem.NOT_A_RECORD, 0),
    ],
)
def test_reading_gives_what_holds_and_what_is_wrong(record, tamper, problem, count):
    """A damaged record can still be shown: its entries up to the break, with the verdict of the whole."""
    whole = read_entries(record)
    record.write_bytes(tamper(record.read_bytes()))
    reading = read_record(record)
    assert reading.verdict == verify(record)
    assert (reading.verdict.problem, reading.verdict.count) == (problem, count)
    assert reading.entries == whole[:count]


def test_reading_what_is_not_there(tmp_path):
    """No file, a folder, a record larger than any attempt's: a verdict, no entries."""
    large = tmp_path / "large.jsonl"
    with large.open("wb") as stream:
        stream.truncate(LARGEST_READ + 1)
    for path in (tmp_path / "none.jsonl", tmp_path, large):
        reading = read_record(path)
        assert reading.entries == ()
        assert reading.verdict.problem is Problem.CANNOT_BE_READ
        assert str(path) in reading.verdict.why
