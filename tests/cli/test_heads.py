"""The verb `heads` and `verify --day`: is every attempt of a day there, as it was?"""

import json
import shutil
from datetime import UTC, datetime, timedelta
from pathlib import Path

import pytest

from assistant.record.day_head import NotADayError, day_head, read_day
from assistant.record.entry import GENESIS, link
from assistant.record.file import RecordFile
from assistant.record.head_book import HeadBook
from assistant.record.heads import Sighting
from assistant.record.signing import load_key, new_key
from tests import HEADS
from tests.attempt.program import here
from tests.record.examples import at, body, opening
from tests.record.forge import forged
from tests.record.instructors import lone_instructor

TODAY = datetime.now(UTC).date().isoformat()


@pytest.fixture
def attempts(tmp_path):
    """Seven attempts of today, sealed, as the book has seen them."""
    book = HeadBook(HEADS, None, print)
    folder = tmp_path / "records"
    folder.mkdir()
    paths = []
    for number in range(1, 8):
        path = folder / f"{number}.jsonl"
        with RecordFile.create(path, {**opening(), "learner": f"A{number}"}, book) as record:
            record.append(body(2))
            record.seal({"at": at(9), "outcome": "passed"})
        paths.append(path)
    return paths


def verified(capsys, paths, *options):
    ended = here(capsys, "verify", *map(str, paths), *map(str, options))
    return ended.code, ended.lines[-1]


def test_the_list_of_a_day(capsys, attempts):
    """In the order in which they began, each with its name, its count and its short head."""
    lines = here(capsys, "heads").lines
    assert lines[0] == f"Attempts that began on {TODAY} (UTC): 7."
    assert [line.split(":")[0] for line in lines[1:]] == [f"{n:>4}  {n}.jsonl" for n in range(1, 8)]
    assert all(": 3 entries, sealed. Short head " in line for line in lines[1:])
    assert here(capsys, "heads", "2020-01-01").lines == ["Attempts that began on 2020-01-01 (UTC): 0."]
    told = here(capsys, "heads", "--json").last
    assert [one["record"] for one in told["attempts"]] == [path.name for path in attempts]
    assert here(capsys, "heads", "yesterday").code == 2


def test_what_is_missing_of_a_day_is_named(capsys, attempts):
    """Attempts 3 and 7 were removed: nothing else could tell."""
    assert verified(capsys, attempts, "--day", TODAY) == (0, f"Whole: all 7 attempts of {TODAY} are there.")
    there = [*attempts[:2], *attempts[3:6]]
    assert verified(capsys, there, "--day", TODAY) == (1, f"Not whole: attempts 3 and 7 of {TODAY} are missing.")
    assert verified(capsys, attempts[:6], "--day", TODAY) == (1, f"Not whole: attempt 7 of {TODAY} is missing.")
    told = here(capsys, "verify", *map(str, there), "--day", TODAY, "--json").last
    assert told == {"day": TODAY, "attempts": 7, "missing": [3, 7], "signed": ""}


def signed_day(capsys, tmp_path):
    lone_instructor(tmp_path / "keys")
    file = tmp_path / "day.head"
    ended = here(capsys, "heads", "-o", str(file), "--keys", str(tmp_path / "keys"))
    assert ended.code == 0
    return file, ended.lines[-1].removeprefix("Short head of the day ").rstrip(".")


def test_a_signed_day_tells_without_the_book(capsys, attempts, tmp_path):
    """An auditor elsewhere: what is missing, what was cut, and who signed the list."""
    file, short = signed_day(capsys, tmp_path)
    shutil.rmtree(HEADS)
    given = ("--day", file, "--keys", tmp_path / "keys", "--open")
    signed = f"Head of the day {short}, signed by M. Lindqvist, RN."
    assert verified(capsys, attempts, *given) == (5, f"Whole: all 7 attempts of {TODAY} are there. {signed}")
    code, last = verified(capsys, attempts[1:], *given)
    assert (code, last) == (1, f"Not whole: attempt 1 of {TODAY} is missing. {signed}")
    content = attempts[3].read_bytes()
    attempts[3].write_bytes(b"".join(content.splitlines(keepends=True)[:2]))
    ended = here(capsys, "verify", *map(str, attempts), *map(str, given))
    assert (ended.code, any("older than last seen here" in line for line in ended.lines)) == (1, True)
    attempts[3].write_bytes(content)
    forged(attempts[3], lambda bodies: bodies[-1].update(outcome="not passed"))
    ended = here(capsys, "verify", *map(str, attempts), *map(str, given))
    assert (ended.code, any("other than last seen here" in line for line in ended.lines)) == (1, True)


def test_a_signed_day_of_a_stranger_is_not_relied_on(capsys, attempts, tmp_path):
    """It says whose it is not; and one that was changed is none."""
    file, _ = signed_day(capsys, tmp_path)
    new_key(tmp_path / "other", "stranger")
    code, last = verified(capsys, attempts, "--day", file, "--keys", tmp_path / "other")
    assert (code, "signed by an unknown key. not known as an instructor's." in last) == (1, True)
    told = json.loads(file.read_bytes())
    told["attempts"].pop()
    for content in (json.dumps(told).encode(), b"", b"{}\n", file.read_bytes().replace(b"7.jsonl", b"9.jsonl")):
        file.write_bytes(content)
        ended = here(capsys, "verify", str(attempts[0]), "--day", str(file))
        assert (ended.code, "is not the head of a day" in ended.console) == (1, True)


def test_the_same_attempt_twice_is_told(capsys, attempts, tmp_path):
    """Two copies of one record both hold; that they are one attempt is said."""
    copy = Path(shutil.copy(attempts[0], tmp_path / "copy.jsonl"))
    assert verified(capsys, [attempts[0], copy]) == (0, f"  note: It is a record of the same attempt as {attempts[0]}.")


def test_attempts_belong_to_the_day_on_which_they_began():
    """By UTC; one that is resumed on the next day stays where it was."""
    midnight = datetime(2026, 11, 25, 23, 59, tzinfo=UTC)

    def seen(attempt, minutes, count, kind):
        moment = (midnight + timedelta(minutes=minutes)).isoformat()
        return Sighting(kind, moment, f"{attempt}.jsonl", attempt, count, f"{count:064x}")

    late = [seen("late", 0, 1, "opened"), seen("late", 2, 9, "sealed")]
    next_day = [seen("next", 1, 1, "opened")]
    unknown = [seen("copied", 0, 4, "stopped")]  # its opening was never seen here
    head = day_head(midnight.date(), [next_day, late, unknown])
    assert [(one.attempt, one.count) for one in head.attempts] == [("late", 9)]


def test_what_is_no_head_of_a_day(tmp_path):
    """An entry of another kind, however well it is signed."""
    new_key(tmp_path, "x")
    key = load_key(tmp_path, "x")
    for more in ({"kind": "signed off"}, {"day": "x"}, {"attempts": [1]}, {"attempts": "none"}):
        told = {"kind": "head of a day", "at": at(0), "day": TODAY, "attempts": [], "key": key.public.text, **more}
        with pytest.raises(NotADayError):
            read_day(link(told, GENESIS, 1, key.sign).line)
