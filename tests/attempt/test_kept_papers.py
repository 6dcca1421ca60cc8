"""Papers are kept beside their records: verified, reported and resumed after the library's have changed."""

import shutil
from pathlib import Path

import pytest

from assistant.attempts import relived
from assistant.attempts.kept_papers import FOLDER
from assistant.checklist.library import library_folder
from assistant.checklist.load import load
from assistant.record.verify import read_entries
from tests.attempt.program import here, process


@pytest.fixture
def mine(tmp_path, monkeypatch):
    """Checklist with a part and order of one's own, which can change."""
    folder = tmp_path / "mine"
    (folder / "parts").mkdir(parents=True)
    (folder / "orders").mkdir()
    monkeypatch.setenv("CHECKOFF_CHECKLISTS", str(folder))
    library = library_folder()
    shutil.copy(library / "bag-change.toml", folder / "my-bag.toml")
    for part in (library / "parts").glob("*.toml"):
        shutil.copy(part, folder / "parts" / part.name)
    shutil.copy(library / "orders" / f"{load('bag-change').order}.toml", folder / "orders" / "my-order.toml")
    return folder


def demo(capsys, tmp_path):
    given = ("demo", "my-bag", "--order", "my-order", "--json", "--records", str(tmp_path / "records"))
    return Path(here(capsys, *given).last["record"])


def change(mine, what):
    """Every file of that kind gets another byte."""
    for path in mine.rglob(what):
        path.write_text(path.read_text(encoding="utf-8") + "\n# changed\n", encoding="utf-8")
    relived._READ.clear()


def finding(capsys, path):
    return here(capsys, "verify", "--json", str(path)).last["lived_again"]


@pytest.mark.parametrize("what", ["my-bag.toml", "parts/*.toml", "orders/*.toml"])
def test_a_change_takes_no_record_with_it(capsys, tmp_path, mine, what):
    """Lived again the same, and the report has its pass rule and workings, whatever the library says by now."""
    path = demo(capsys, tmp_path)
    before = here(capsys, "report", "--json", str(path)).last
    change(mine, what)
    assert finding(capsys, path)["finding"] == "same"
    after = here(capsys, "report", "--json", str(path)).last
    assert (after["rule"], after["numbers"], after["title"]) == (before["rule"], before["numbers"], before["title"])
    ended = here(capsys, "verify", "--papers", "--json", str(path))
    assert (ended.code, ended.last["problem"]) == (1, "pinned file differs"), "those on this machine are others"
    shutil.rmtree(path.parent / FOLDER)
    relived._READ.clear()
    assert "has changed since" in finding(capsys, path)["why"]


def test_kept_once_and_for_their_owner(capsys, tmp_path, mine):
    """Two attempts by the same papers keep them once."""
    path = demo(capsys, tmp_path)
    kept = {file: file.stat().st_mtime_ns for file in (path.parent / FOLDER).rglob("*")}
    demo(capsys, tmp_path)
    assert {file: file.stat().st_mtime_ns for file in (path.parent / FOLDER).rglob("*")} == kept
    opening = read_entries(path)[0]
    assert {file.name for file in (path.parent / FOLDER).iterdir()} >= {
        opening["checklist_digest"],
        opening["order_digest"],
    }
    assert all(file.stat().st_mode & 0o077 == 0 for file in kept)


def test_kept_papers_that_somebody_changed_are_not_believed(capsys, tmp_path, mine):
    """They have to give the digest that the record pins."""
    path = demo(capsys, tmp_path)
    change(mine, "my-bag.toml")
    for file in (path.parent / FOLDER).rglob("my-bag.toml"):
        text = file.read_text(encoding="utf-8").replace("critical = true", "critical = false")
        file.write_text(text, encoding="utf-8")
    assert finding(capsys, path)["finding"] == "could not be lived again"


def test_an_attempt_is_resumed_after_its_checklist_changed(tmp_path, mine):
    """An update in the middle of an attempt does not end it."""
    records = str(tmp_path / "records")
    ended = process("run", "my-bag", "--typed", "--json", "--records", records, typed=b"yes\nstop\nyes\n")
    change(mine, "my-bag.toml")
    again = process("resume", ended.last["record"], "--typed", "--json", typed=b"yes\nstop\nyes\n")
    assert again.code == 4, again.console
    kinds = [entry["kind"] for entry in read_entries(again.last["record"])]
    assert kinds.count("resumed") == 1


def test_what_cannot_be_kept_costs_no_attempt(capsys, tmp_path, mine):
    """A folder that takes no further files: the attempt goes on."""
    (tmp_path / "records").mkdir()
    (tmp_path / "records" / FOLDER).write_text("in the way")
    assert demo(capsys, tmp_path).is_file()
