"""One writer for one file, whatever it is called; and a file that is not what it was a moment ago takes no entry."""

import os

import pytest

from assistant.errors import RecordError
from assistant.record.disk import make_folder
from assistant.record.file import RecordFile
from assistant.record.head_book import HeadBook
from assistant.record.heads import Seen
from assistant.record.paths import lock_path
from assistant.record.verify import read_entries
from tests.record.examples import at, body, opening, written


@pytest.fixture
def record(tmp_path):
    return written(tmp_path / "attempt.jsonl", 4, sealed=False)


def linked(record):
    path = record.with_name("linked.jsonl")
    path.symlink_to(record)
    return path


def named_twice(record):
    path = record.with_name("twice.jsonl")
    path.hardlink_to(record)
    return path


def without_lock_file(record):
    lock_path(record).unlink()
    return record


@pytest.mark.parametrize("way_in", [linked, named_twice, without_lock_file])
def test_nobody_else_gets_in(record, way_in):
    """The lock is on the file itself: a link, a second name, a deleted lock file open no second door."""
    with RecordFile.reopen(record) as held:
        with pytest.raises(RecordError, match="is in use by another process"):
            RecordFile.reopen(way_in(record))
        held.append(body(5))
    assert len(read_entries(record)) == 5
    RecordFile.reopen(record).close()


def moved(path):
    path.rename(path.with_name("moved.jsonl"))


def removed(path):
    path.unlink()


def replaced(path):
    copy = path.with_name("copy.jsonl")
    copy.write_bytes(path.read_bytes())
    copy.replace(path)


@pytest.mark.parametrize("happening", [moved, removed, replaced])
def test_a_record_that_is_not_there_any_more_takes_no_entry(record, happening):
    """Noticed at the next entry, which is not acknowledged, and nothing after it either."""
    with RecordFile.reopen(record) as held:
        happening(record)
        for _ in range(2):
            with pytest.raises(RecordError, match="moved, removed or replaced"):
                held.append(body(4))
        assert len(held.entries) == 4


@pytest.mark.parametrize("change", [lambda content: content[:-9], lambda content: content + b"{}\n"])
def test_a_record_that_somebody_else_writes_takes_no_entry(record, change):
    """Cut or lengthened in place during the attempt: noticed at the next entry."""
    with RecordFile.reopen(record) as held:
        record.write_bytes(change(record.read_bytes()))
        with pytest.raises(RecordError, match="written into"):
            held.append(body(4))


def test_new_folders_have_their_names_on_disk(tmp_path, monkeypatch):
    """A new folder is in its parent only once the parent is synced (fsync(2)): every parent is."""
    synced = []
    real = os.fsync
    monkeypatch.setattr(os, "fsync", lambda number: (synced.append(os.fstat(number).st_ino), real(number)))
    make_folder(tmp_path / "a" / "b" / "c")
    expected = [path.stat().st_ino for path in (tmp_path, tmp_path / "a", tmp_path / "a" / "b")]
    assert synced == expected
    make_folder(tmp_path / "a")
    assert synced == expected
    (tmp_path / "file").write_text("")
    with pytest.raises(OSError, match="Not a directory"):
        make_folder(tmp_path / "file")


def test_a_first_entry_that_fails_leaves_no_empty_record(tmp_path, monkeypatch):
    """An empty file would be refused at a resumption, though nothing was ever in it."""

    def full(_descriptor, _content):
        raise OSError(28, os.strerror(28))

    monkeypatch.setattr("assistant.record.file.write_all", full)
    with pytest.raises(RecordError, match="Nothing was recorded"):
        RecordFile.create(tmp_path / "a.jsonl", opening())
    assert not (tmp_path / "a.jsonl").exists()


# Between two lines of the book.


@pytest.fixture
def book(tmp_path):
    return HeadBook(tmp_path / "heads", None, print)


def killed(tmp_path, book, entries=6):
    """A record whose process was killed: nothing was said of a stop."""
    record = RecordFile.create(tmp_path / "killed.jsonl", opening(), book)
    for number in range(2, entries + 1):
        record.append(body(number))
    os.close(record._descriptor)
    record._descriptor = None
    record._lock.release(force=True)
    return record.path


def test_what_is_cut_between_two_lines_of_the_book_is_noticed(tmp_path, book):
    """The head of each acknowledged entry is remembered until the book says it with a line."""
    path = killed(tmp_path, book)
    assert book.standing(read_entries(path)).seen is Seen.AS_LAST_SEEN
    lines = path.read_bytes().splitlines(keepends=True)
    path.write_bytes(b"".join(lines[:4]))
    standing = book.standing(read_entries(path))
    assert (standing.seen, "2 entries are missing" in standing.why) == (Seen.OLDER, True)
    with pytest.raises(RecordError, match="older than last seen here"):
        RecordFile.reopen(path, book=book)
    path.write_bytes(b"".join(lines))
    with RecordFile.reopen(path, book=book) as record:
        record.append(body(7))
    assert list((tmp_path / "heads" / "running").iterdir()) == [], "the line of the stop says it now"


@pytest.mark.parametrize("rest", [b"", b"{", bytes(300), b"half of it"])
def test_a_running_head_that_a_power_cut_took_raises_no_alarm(tmp_path, book, rest):
    """It is not synced: gone, or half of it there, it says nothing."""
    path = killed(tmp_path, book)
    (running,) = (tmp_path / "heads" / "running").iterdir()
    running.write_bytes(rest)
    assert book.standing(read_entries(path)).seen is Seen.LONGER
    RecordFile.reopen(path, book=book).close()


def test_a_running_head_goes_on_after_a_line_of_the_book(tmp_path, book):
    """Resumed in the same sitting: the entries after that line are remembered as well."""
    path = killed(tmp_path, book)
    with RecordFile.reopen(path, book=book) as record:
        record.append({"kind": "resumed", "at": at(9)})
        record.append(body(8))
        record.append(body(9))
        entries = record.entries
        assert book.standing(entries).seen is Seen.AS_LAST_SEEN
        assert book.standing(entries[:-1]).seen is Seen.OLDER
