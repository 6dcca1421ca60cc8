"""What the desk keeps: entries that follow from each other, each once, in a file that nobody else's report reaches."""

import json
import resource
import signal

import pytest

from assistant.desk.keeping import KeptRecords
from assistant.errors import RecordError
from assistant.link.messages import Begun, Lines
from assistant.record.copied import CopiedRecord
from assistant.record.entry import GENESIS, link
from assistant.record.following import RecordLines
from assistant.record.verify import verify

AT = "2026-11-28T09:00:00.000000+00:00"


def chain(count, *, seal=False, words="yes"):
    """The lines of a record, as they are on disk but for their line feeds."""
    made, previous = [], GENESIS
    for number in range(1, count + 1):
        body = {"kind": "typed", "at": AT, "words": words, "ticks": str(number)}
        if number == 1:
            body |= {"format": "1", "kind": "opened"}
        if seal and number == count:
            body |= {"kind": "finished", "seal": {"count": count - 1, "head": previous}}
        entry = link(body, previous, number)
        previous = entry.digest
        made.append(entry.line[:-1].decode())
    return made


def attempt_of(lines):
    return json.loads(lines[0])["digest"]


def begun(lines, station="bench-1", file="20261128T090000-x-A1.jsonl", papers=None):
    return Begun(station=station, attempt=attempt_of(lines), file=file, plan=(), papers=papers or {})


def report(lines, first=1, attempt=None):
    return Lines(attempt=attempt or attempt_of(lines), first=first, lines=tuple(lines[first - 1 :]))


@pytest.fixture
def kept(tmp_path):
    return KeptRecords(tmp_path / "records", tmp_path / "link")


def test_lines_that_come_twice_are_kept_once(kept):
    """Overlapping, repeated, and after a gap: the answer says from where to go on."""
    lines = chain(6, seal=True)
    assert kept.begun(begun(lines), here=False) == 0
    assert kept.lines(report(lines[:3])) == 3
    assert kept.lines(report(lines[:3])) == 3
    assert kept.lines(Lines(attempt=attempt_of(lines), first=6, lines=(lines[5],))) == 3
    assert kept.lines(report(lines[:5], 2)) == 5
    assert kept.lines(report(lines)) == 6
    assert kept.path(attempt_of(lines)).read_text().splitlines() == lines
    assert verify(kept.path(attempt_of(lines))).ok


def test_a_new_desk_goes_on_with_its_copy(kept, tmp_path):
    """A torn tail is cut off, and comes again; a line that lacks only its line feed counts."""
    lines = chain(4)
    kept.begun(begun(lines), here=False)
    kept.lines(report(lines[:2]))
    path = kept.path(attempt_of(lines))
    with path.open("a") as torn:
        torn.write(lines[2][:40])
    later = KeptRecords(tmp_path / "records", tmp_path / "link")
    assert later.begun(begun(lines, file="another-name.jsonl"), here=False) == 2
    assert later.lines(report(lines[:3], 3)) == 3
    path.write_bytes(path.read_bytes() + lines[3].encode())
    last = KeptRecords(tmp_path / "records", tmp_path / "link")
    assert last.begun(begun(lines), here=False) == 4
    assert last.lines(report(lines, 4)) == 4


def forged(lines):
    """Reports that no station of this attempt makes, by what is wrong with them."""
    other = chain(5, words="no")
    changed = lines[3].replace('"yes"', '"no!"')
    spaced = lines[3].replace('","', '", "')
    signed = json.loads(lines[3]) | {"signature": "AAAA", "key": "ssh-ed25519 AAAA"}
    return {
        "a changed word": changed,
        "not canonical": spaced,
        "another attempt's line": other[3],
        "no JSON": "{",
        "nothing": "",
        "two lines in one": f"{lines[3]}\n{lines[4]}",
        "a line feed within": f"{lines[3]}\n",
        "a false signature": json.dumps(signed, separators=(",", ":"), sort_keys=True),
        "the next but one": lines[4],
        "a megabyte": lines[3].replace("yes", "y" * 1_000_000),
    }


@pytest.mark.parametrize("what", list(forged(chain(5))))
def test_a_forged_line_is_refused_and_nothing_reaches_the_record(kept, what):
    """The copy stays as it was, and the true line is still taken."""
    lines = chain(5)
    kept.begun(begun(lines), here=False)
    kept.lines(report(lines[:3]))
    path = kept.path(attempt_of(lines))
    before = path.read_bytes()
    with pytest.raises(RecordError):
        kept.lines(Lines(attempt=attempt_of(lines), first=4, lines=(forged(lines)[what],)))
    assert path.read_bytes() == before
    assert kept.lines(report(lines, 4)) == 5


def test_what_came_before_cannot_be_told_otherwise(kept):
    """A report whose earlier lines differ is refused whole."""
    lines = chain(5)
    kept.begun(begun(lines), here=False)
    kept.lines(report(lines[:3]))
    other = [lines[0], chain(5, words="no")[1], *lines[2:]]
    with pytest.raises(RecordError, match="not the one that came before"):
        kept.lines(Lines(attempt=attempt_of(lines), first=1, lines=tuple(other)))
    assert len(kept.bodies(attempt_of(lines))) == 3


def test_the_first_line_is_the_attempt_s_own(kept):
    """The digest that was announced is that of the first entry."""
    lines, other = chain(3), chain(3, words="no")
    kept.begun(begun(lines), here=False)
    with pytest.raises(RecordError, match="another attempt"):
        kept.lines(Lines(attempt=attempt_of(lines), first=1, lines=(other[0],)))
    assert not kept.path(attempt_of(lines)).exists()
    assert kept.lines(report(lines)) == 3


def test_no_station_reports_another_one_s_record(kept, tmp_path):
    """Neither a copy of another station's nor a record that this machine writes itself."""
    lines, own = chain(3), chain(2, words="own")
    kept.begun(begun(lines), here=False)
    kept.lines(report(lines))
    later = KeptRecords(tmp_path / "records", tmp_path / "link")
    with pytest.raises(RecordError, match="another station"):
        later.begun(begun(lines, "bench-2"), here=False)
    (tmp_path / "records" / "own.jsonl").write_text("".join(f"{line}\n" for line in own))
    with pytest.raises(RecordError, match="own machine"):
        later.begun(begun(own, file="own.jsonl"), here=False)
    assert later.begun(begun(own, file="own.jsonl"), here=True) == 0


def test_a_name_that_is_taken_is_not_written_over(kept, tmp_path):
    """Another attempt's file of the same name stays as it is."""
    (tmp_path / "records").mkdir()
    taken = tmp_path / "records" / "20261128T090000-x-A1.jsonl"
    taken.write_text("something else\n")
    lines = chain(2)
    kept.begun(begun(lines), here=False)
    kept.lines(report(lines))
    assert taken.read_text() == "something else\n"
    assert kept.path(attempt_of(lines)).name == "20261128T090000-x-A1-2.jsonl"


def test_a_record_of_this_machine_is_read_as_far_as_it_was_reported(kept, tmp_path):
    """What may not be on the disk yet is not shown, and nothing is written."""
    (tmp_path / "records").mkdir()
    path = tmp_path / "records" / "own.jsonl"
    lines = chain(4)
    path.write_text("".join(f"{line}\n" for line in lines))
    kept.begun(begun(lines, file="own.jsonl"), here=True)
    before = path.read_bytes()
    assert kept.lines(report(lines[:2])) == 2
    assert kept.lines(report(lines[:3], 3)) == 3
    assert [entry["sequence"] for entry in kept.bodies(attempt_of(lines))] == [1, 2, 3]
    assert path.read_bytes() == before
    assert [one.name for one in (tmp_path / "records").iterdir()] == ["own.jsonl"]


def test_papers_of_another_machine_stay_in_their_folder(kept, tmp_path):
    """A name that leads elsewhere, and a paper that is not what the first entry pins, are not kept."""
    digest = "ab" * 32
    body = {"kind": "opened", "at": AT, "format": "1", "order": "x", "order_digest": digest}
    entry = link(body, GENESIS, 1)
    line = entry.line[:-1].decode()
    for name in ("../../evil.toml", "/evil.toml", "x.toml", ".hidden.toml", "a/../../b.toml", "x.py"):
        one = KeptRecords(tmp_path / name.replace("/", "_"), tmp_path / "link" / name.replace("/", "_"))
        one.begun(begun([line], papers={digest: {name: "title = 'x'"}}), here=False)
        assert one.lines(report([line])) == 1
    assert sorted({path.suffix for path in tmp_path.rglob("*") if path.is_file()}) == ["", ".jsonl", ".lock"]


def test_a_copy_that_was_cut_or_replaced_is_not_gone_on_with(tmp_path):
    """Somebody at the desk has touched it."""
    lines = chain(4)
    copy = CopiedRecord(tmp_path / "copy.jsonl", attempt_of(lines))
    copy.add(line.encode() for line in lines[:3])
    copy.path.write_text(f"{lines[0]}\n")
    with pytest.raises(RecordError, match="cut or replaced"):
        copy.add([lines[3].encode()])
    copy.path.write_text(f"{chain(1, words='no')[0]}\n")
    with pytest.raises(RecordError, match="another attempt"):
        CopiedRecord(copy.path, attempt_of(lines))


def test_a_disk_that_is_full_for_a_while_leaves_whole_lines(tmp_path):
    """A limit on the file's size lets 20 bytes of a line through; what was cut short is cut off, and comes again."""
    lines = chain(4)
    copy = CopiedRecord(tmp_path / "copy.jsonl", attempt_of(lines))
    copy.add(line.encode() for line in lines[:2])
    soft, hard = resource.getrlimit(resource.RLIMIT_FSIZE)
    before = signal.signal(signal.SIGXFSZ, signal.SIG_IGN)
    resource.setrlimit(resource.RLIMIT_FSIZE, (copy.path.stat().st_size + 20, hard))
    try:
        with pytest.raises(RecordError, match="cannot be written"):
            copy.add(line.encode() for line in lines[2:])
    finally:
        resource.setrlimit(resource.RLIMIT_FSIZE, (soft, hard))
        signal.signal(signal.SIGXFSZ, before)
    copy.add(line.encode() for line in lines[2:])
    assert copy.path.read_text().splitlines() == lines
    assert [entry["sequence"] for entry in copy.entries] == [1, 2, 3, 4]


def test_lines_are_followed_while_they_are_written(tmp_path):
    """Half a line is none; what was read is found again from any number."""
    path = tmp_path / "r.jsonl"
    path.write_bytes(b"one\ntwo\nthr")
    lines = RecordLines(path)
    assert lines.read(1, 10, 1_000) == [b"one", b"two"]
    path.write_bytes(b"one\ntwo\nthree\nfour\n")
    assert lines.read(3, 3, 1_000) == [b"three"]
    assert lines.read(2, 9, 1_000) == [b"two", b"three", b"four"]
    assert lines.read(1, 9, 1) == [b"one"]
