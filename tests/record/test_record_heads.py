"""The book of heads: what it remembers, how it survives crashes, and that it harms no attempt."""

import os
import threading
from pathlib import Path

import pytest

from assistant.errors import RecordError
from assistant.record import head_book
from assistant.record.entry import GENESIS, link, read_line
from assistant.record.file import RecordFile
from assistant.record.head_book import HeadBook
from assistant.record.heads import Seen, Sighting, stands
from assistant.record.signing import load_key, new_key
from assistant.record.verify import read_entries
from tests.record.examples import at, body, opening


@pytest.fixture
def told():
    return []


@pytest.fixture
def book(tmp_path, told):
    return HeadBook(tmp_path / "book", None, told.append)


@pytest.fixture
def copied(tmp_path, told):
    (tmp_path / "stick").mkdir()
    return HeadBook(tmp_path / "book", tmp_path / "stick", told.append)


def lines(path: Path) -> list[dict]:
    return [dict(read_line(line).fields) for line in path.read_bytes().splitlines(keepends=True)]


def kinds(path: Path) -> list[str]:
    return [line["kind"] for line in lines(path)]


def seen(count, head, when=1):
    return Sighting("stopped", at(when), "a.jsonl", "d1", count, head)


@pytest.mark.parametrize(
    ("sightings", "expected", "why"),
    [
        ([], Seen.NEVER, ""),
        ([seen(3, "d3")], Seen.AS_LAST_SEEN, "Last seen stopped at 2026-11-25 08:00:01 UTC as a.jsonl."),
        ([seen(1, "d1"), seen(3, "d3")], Seen.AS_LAST_SEEN, "Last seen"),
        ([seen(1, "d1")], Seen.LONGER, "2 entries have been added since"),
        ([seen(2, "d2")], Seen.LONGER, "1 entry has been added since"),
        ([seen(5, "d5")], Seen.OLDER, "2 entries are missing: it had 5 when it was last seen here"),
        ([seen(4, "d4")], Seen.OLDER, "1 entry is missing"),
        ([seen(3, "x3")], Seen.OTHER, "Entry 3 or one before it is not what was seen here"),
        ([seen(2, "x2"), seen(3, "d3", 2)], Seen.OTHER, "Entry 2 or one before it"),
        ([seen(2, "x2"), seen(9, "d9")], Seen.OLDER, "6 entries are missing"),
    ],
)
def test_how_a_record_stands(sightings, expected, why):
    """A record of three entries, held against what was seen of it."""
    standing = stands(["d1", "d2", "d3"], sightings)
    assert (standing.seen, why in standing.why) == (expected, True)
    assert standing.is_denied is (expected in (Seen.OLDER, Seen.OTHER))


@pytest.mark.parametrize(("others", "first_had"), [([seen(1, "d1")], 1), ([seen(2, "d2")], 2), ([], 3)])
def test_what_was_not_begun_here(others, first_had):
    """How many entries a record had already when it was first seen."""
    assert stands(["d1", "d2", "d3"], [seen(3, "d3"), *others]).first_had == first_had


def test_each_moment_has_its_line(book, tmp_path, told):
    """Opening, stop, resumption, seal, signed entry, erasure; nothing for the entries in between."""
    path = tmp_path / "a.jsonl"
    with RecordFile.create(path, opening(), book) as record:
        record.append(body(2))
        record.append(body(3))
    with RecordFile.reopen(path, book=book) as record:
        record.append({"kind": "resumed", "at": at(4)})
        record.append(body(5))
        record.seal({"at": at(6)})
    new_key(tmp_path / "keys", "lindqvist")
    RecordFile.add_signed(path, {"kind": "signed off", "at": at(7)}, load_key(tmp_path / "keys", "lindqvist"), book)
    RecordFile.erase_sound(path, "asked for", book)
    noted = lines(book.path)
    entries = read_entries(path)
    assert [(line["kind"], line.get("entries")) for line in noted] == [
        ("book opened", None),
        ("opened", 1),
        ("stopped", 3),
        ("resumed", 4),
        ("sealed", 6),
        ("signed", 7),
        ("sound erased", 8),
    ]
    for line in noted[1:]:
        assert line["head"] == entries[line["entries"] - 1]["digest"]
        assert (line["attempt"], line["record"]) == (entries[0]["digest"], "a.jsonl")
    assert book.path.stat().st_mode & 0o777 == 0o600
    assert (told, book.problems()) == ([], ())
    assert book.standing(entries).seen is Seen.AS_LAST_SEEN


def test_the_book_is_never_ahead_of_its_record(tmp_path, told, monkeypatch):
    """When a line of the book is written, its entry is on disk; and a failing book costs no entry."""
    path = tmp_path / "a.jsonl"
    on_disk = []

    class Watched(HeadBook):
        def note(self, kind, record, attempt, count, head):
            on_disk.append((count, read_entries(record)[-1]["sequence"], synced[-1]))
            raise KeyboardInterrupt

    synced = [None]
    real = os.fsync
    monkeypatch.setattr(os, "fsync", lambda descriptor: (real(descriptor), synced.append(path.stat().st_size))[0])
    with pytest.raises(KeyboardInterrupt):
        RecordFile.create(path, opening(), Watched(tmp_path / "book", None, told.append))
    assert on_disk[0] == (1, 1, path.stat().st_size)
    assert len(read_entries(path)) == 1


@pytest.mark.parametrize("torn", [b'{"at":"2026', b"\0" * 40, b"{"])
def test_a_torn_last_line_is_mended(book, torn):
    """What a crash left of a line is set aside, and the next line says so; what was there before still counts."""
    book.note("opened", Path("a.jsonl"), "d1", 1, "d1")
    with book.path.open("ab") as stream:
        stream.write(torn)
    assert book.problems() == ()
    assert book.standing([{"digest": "d1"}]).seen is Seen.AS_LAST_SEEN
    book.note("stopped", Path("a.jsonl"), "d1", 2, "d2")
    assert kinds(book.path) == ["book opened", "opened", "recovered", "stopped"]
    assert book.path.with_name("heads.jsonl.torn").read_bytes() == torn
    assert lines(book.path)[2]["bytes"] == len(torn)
    assert (book.problems(), book.standing([{"digest": "d1"}]).seen) == ((), Seen.OLDER)


def test_power_cut_at_every_place(book):
    """Wherever the writing broke off: nothing of it is taken for damage, and the next line mends it."""
    for count in (1, 2, 3):
        book.note("stopped", Path("a.jsonl"), "d1", count, f"d{count}")
    content = book.path.read_bytes()
    for length in range(0, len(content) + 1, 9):
        book.path.write_bytes(content[:length])
        again = HeadBook(book.path.parent, None, print)
        seen_so_far = max(0, content[:length].count(b"\n") - 1)
        assert again.problems() == ()
        standing = again.standing(
            [{"digest": f"d{number}"} for number in range(1, seen_so_far + 1)] or [{"digest": "d1"}]
        )
        assert standing.seen is (Seen.AS_LAST_SEEN if seen_so_far else Seen.NEVER)
        again.note("sealed", Path("a.jsonl"), "d1", 4, "d4")
        assert again.problems() == ()
        assert kinds(book.path)[-1] == "sealed"


def test_a_file_name_of_stray_bytes(book, told):
    """It is remembered as it is shown."""
    book.note("opened", Path("a\udcff.jsonl"), "d1", 1, "d1")
    assert (lines(book.path)[1]["record"], told) == (r"a\xff.jsonl", [])


def test_a_first_line_that_was_torn(book):
    """Power failed while the book was made: it is begun anew."""
    book.path.parent.mkdir()
    book.path.write_bytes(b'{"at"')
    book.note("opened", Path("a.jsonl"), "d1", 1, "d1")
    assert kinds(book.path) == ["book opened", "recovered", "opened"]
    assert book.problems() == ()


@pytest.mark.parametrize(
    ("damage", "why"),
    [
        (lambda content: content.replace(b'"entries":2', b'"entries":1', 1), "edited"),
        (lambda content: b"".join(content.splitlines(keepends=True)[i] for i in (0, 1, 3)), "removed"),
        (lambda content: b"no book\n" + content, "not a record"),
    ],
)
def test_a_book_that_was_changed_says_where(book, damage, why):
    """The first line that does not hold is named, and what can still be read behind it still denies."""
    for count in (1, 2, 3):
        book.note("stopped", Path("a.jsonl"), "d1", count, f"d{count}")
    book.path.write_bytes(damage(book.path.read_bytes()))
    read = HeadBook(book.path.parent, None, print)
    (problem,) = read.problems()
    assert f": {why}. " in problem
    assert read.standing([{"digest": "d1"}]).seen is Seen.OLDER


def test_a_book_that_cannot_be_continued_harms_no_attempt(book, told, tmp_path):
    """Said once, with what to do; the record is written all the same."""
    book.path.parent.mkdir()
    book.path.write_bytes(b"some other file\n")
    with RecordFile.create(tmp_path / "a.jsonl", opening(), book) as record:
        record.append(body(2))
    assert len(read_entries(tmp_path / "a.jsonl")) == 2
    (sentence,) = told
    assert "is not a book that could be continued" in sentence
    assert "under another name" in sentence
    assert book.path.read_bytes() == b"some other file\n"


def test_a_folder_that_cannot_be_made_harms_no_attempt(told, tmp_path):
    """A file in the folder's place: said once."""
    (tmp_path / "taken").write_text("x")
    book = HeadBook(tmp_path / "taken", None, told.append)
    with RecordFile.create(tmp_path / "a.jsonl", opening(), book) as record:
        record.append(body(2))
    assert len(told) == 1
    assert len(read_entries(tmp_path / "a.jsonl")) == 2


def test_many_write_one_book(tmp_path):
    """Eight attempts at once: every line is there, and the chain holds."""

    def write(name):
        told = []
        book = HeadBook(tmp_path / "book", None, told.append)
        for count in range(1, 6):
            book.note("stopped", Path(name), f"d{name}", count, f"h{count}")
        assert told == []

    threads = [threading.Thread(target=write, args=(str(number),)) for number in range(8)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    book = HeadBook(tmp_path / "book", None, print)
    assert book.problems() == ()
    assert len(lines(book.path)) == 41


def test_the_copy_is_the_book_so_far(copied, told, tmp_path):
    """Byte by byte; a copy that was away is brought up to date when it is there again."""
    copied.note("opened", Path("a.jsonl"), "d1", 1, "d1")
    (copy,) = (tmp_path / "stick").iterdir()
    assert copy.read_bytes() == copied.path.read_bytes()
    (tmp_path / "stick").rename(tmp_path / "away")
    copied.note("stopped", Path("a.jsonl"), "d1", 2, "d2")
    copied.note("stopped", Path("a.jsonl"), "d1", 3, "d3")
    assert not (tmp_path / "stick").exists()
    (sentence,) = told  # once, though it happened twice
    assert "is not up to date: no such file or directory." in sentence
    (tmp_path / "away").rename(tmp_path / "stick")
    with copy.open("ab") as stream:
        stream.write(copied.path.read_bytes()[copy.stat().st_size :][:30])  # as a crash may leave it
    copied.note("sealed", Path("a.jsonl"), "d1", 4, "d4")
    assert copy.read_bytes() == copied.path.read_bytes()
    assert copied.problems() == ()


def test_what_was_taken_out_of_the_book_the_copy_still_knows(copied, told, tmp_path):
    """Lines cut from the book, or the book removed: the copy denies the older record, and tells of the book."""
    for count in (1, 2, 3):
        copied.note("stopped", Path("a.jsonl"), "d1", count, f"d{count}")
    copied.path.write_bytes(b"".join(copied.path.read_bytes().splitlines(keepends=True)[:2]))
    again = HeadBook(copied.path.parent, tmp_path / "stick", told.append)
    assert again.standing([{"digest": "d1"}]).seen is Seen.OLDER
    (problem,) = again.problems()
    assert "holds entries that the book itself does not" in problem
    again.note("stopped", Path("b.jsonl"), "e1", 1, "e1")
    assert "holds entries that the book does not" in told[0]
    copied.path.unlink()
    again = HeadBook(copied.path.parent, tmp_path / "stick", told.append)
    assert again.standing([{"digest": "d1"}]).seen is Seen.OLDER


def test_books_of_several_machines_share_a_place(tmp_path, told):
    """Each has its own copy there, and each machine knows what the others have seen."""
    (tmp_path / "share").mkdir()
    books = [HeadBook(tmp_path / name, tmp_path / "share", told.append) for name in ("one", "two")]
    for number, book in enumerate(books, 1):
        book.note("stopped", Path("a.jsonl"), "d1", number, f"d{number}")
    assert len(list((tmp_path / "share").iterdir())) == 2
    again = HeadBook(tmp_path / "one", tmp_path / "share", told.append)
    assert again.standing([{"digest": "d1"}]).seen is Seen.OLDER
    assert (again.problems(), told) == ((), [])


def test_a_place_that_never_answers_is_not_waited_for(copied, told, monkeypatch):
    """A network folder that hangs costs its limit once, and then nothing."""
    monkeypatch.setattr(head_book, "_COPY_WAIT_S", 0.05)
    ended = threading.Event()
    monkeypatch.setattr(head_book, "_copy_on", lambda *_: ended.wait(30))
    for count in (1, 2):
        copied.note("stopped", Path("a.jsonl"), "d1", count, f"d{count}")
    ended.set()
    assert len(told) == 1
    assert "its place does not answer" in told[0]
    assert copied.standing([{"digest": "d1"}]).seen is Seen.OLDER


@pytest.mark.parametrize("change", [{"entries": "2"}, {"entries": 0}, {"head": None}, {"record": 7}, {"entries": True}])
def test_a_line_of_another_form_says_nothing(book, change):
    """Whatever else is chained into a book is no sighting."""
    first = link({"kind": "book opened", "at": at(0), "format": "1"}, GENESIS, 1)
    told = {"kind": "stopped", "at": at(1), "record": "a", "attempt": "d1", "entries": 2, "head": "d2"}
    book.path.parent.mkdir()
    book.path.write_bytes(first.line + link(told | change, first.digest, 2).line)
    assert (book.problems(), book.standing([{"digest": "d1"}]).seen) == ((), Seen.NEVER)


def test_nothing_is_added_to_what_was_cut(book, tmp_path):
    """Neither by its learner nor by an instructor; the file stays as it is, and no tail is set aside."""
    path = tmp_path / "a.jsonl"
    with RecordFile.create(path, opening(), book) as record:
        for number in range(2, 6):
            record.append(body(number))
    content = path.read_bytes()
    path.write_bytes(content[:-400])
    with pytest.raises(RecordError, match="older than last seen here") as caught:
        RecordFile.reopen(path, book=book)
    assert "entries are missing" in caught.value.what or "entry is missing" in caught.value.what
    assert path.read_bytes() == content[:-400]
    path.write_bytes(content)
    before = book.path.read_bytes()
    RecordFile.reopen(path, book=book).close()
    assert book.path.read_bytes() == before  # nothing was added, so there is nothing to remember
