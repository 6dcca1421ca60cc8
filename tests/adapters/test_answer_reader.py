"""The second reader of typed answers as it comes with the program: its files, its figures, and how well it reads."""

import shutil
import sys
import tomllib
from pathlib import Path

import pytest

from assistant.adapters import answer_reader as module
from assistant.adapters.answer_reader import (
    NAME,
    PINNED,
    AnswerReader,
    answer_reader,
    check_reader,
    reader_digest,
    reader_folder,
)
from assistant.errors import ModelError
from assistant.spoken import ENGLISH
from assistant.spoken.meaning import Surety
from tests.spoken.answers import rows, weighed

ROLLER = "Close the roller clamp."


def test_its_files_are_the_tested_ones():
    """Every digest fits, and nothing that the folder needs is left out of the installed package."""
    assert check_reader().is_whole
    forced = tomllib.loads(Path("pyproject.toml").read_text())["tool"]["hatch"]["build"]["targets"]["wheel"]
    assert f"models/{NAME}" in forced["force-include"]


@pytest.mark.parametrize("name", PINNED)
def test_other_files_are_refused(name, tmp_path):
    """A changed file, or one that is gone; an attempt then goes on by the rules alone."""
    folder = tmp_path / NAME
    shutil.copytree(reader_folder(), folder)
    content = bytearray((folder / name).read_bytes())
    content[len(content) // 2] ^= 1
    (folder / name).write_bytes(content)
    with pytest.raises(ModelError, match="not what was tested"):
        AnswerReader(folder).load()
    assert AnswerReader(folder).weigh(ROLLER, ("done",), "it is shut") == ()
    (folder / name).unlink()
    with pytest.raises(ModelError, match="cannot be read"):
        AnswerReader(folder).load()
    assert AnswerReader(folder).weigh(ROLLER, ("done",), "it is shut") == ()


def test_without_its_library_the_rules_read_alone(monkeypatch):
    """Some machines cannot load what runs it; no attempt ends for that."""
    monkeypatch.setitem(sys.modules, "ctranslate2", None)
    with pytest.raises(ModelError, match="cannot be loaded"):
        AnswerReader().load()
    assert AnswerReader().weigh(ROLLER, ("done",), "it is shut") == ()


def test_its_digest_is_of_what_reads_here(monkeypatch, tmp_path):
    """Another one where a file is another; none where a file is gone, the folder was left out, or nothing runs it."""
    folder = tmp_path / NAME
    shutil.copytree(reader_folder(), folder)
    found = {reader_digest()}
    monkeypatch.setattr(module, "reader_folder", lambda: folder)
    assert reader_digest.__wrapped__() in found
    (folder / "last.json").write_text("{}")
    found.add(reader_digest.__wrapped__())
    assert len(found) == 2
    (folder / "last.json").unlink()
    assert reader_digest.__wrapped__() == ""
    monkeypatch.setattr(module, "reader_folder", lambda: None)
    assert reader_digest.__wrapped__() == ""
    monkeypatch.undo()
    monkeypatch.setattr(module, "find_spec", lambda _name: None)
    assert reader_digest.__wrapped__() == ""


def test_it_weighs_what_is_meant():
    """Clear answers heavily, what is near them as nothing; the same in every order."""
    reader = answer_reader()
    assert reader is not None
    (clear,) = reader.weigh(ROLLER, ("done",), "rolled it down until it stopped")
    (near,) = reader.weigh(ROLLER, ("done",), "the wheel's almost all the way down")
    assert clear > 3
    assert near < -3
    line, words = "Follow the line from chamber to patient. Air in the line: none, or some?", "not one bubble in it"
    none, some = reader.weigh(line, ("none", "some"), words)
    assert none > 3 > -3 > some
    assert reader.weigh(line, ("some", "none"), words) == pytest.approx((some, none), abs=0.02)


def test_what_is_too_long_is_not_weighed():
    """Nothing is said of it."""
    assert AnswerReader().weigh(ROLLER, ("done",), "shut " * 100) == ()


READ = {"first_lab": (0.77, 0.94, 0), "ten_manners": (0.54, 0.93, 1)}
"""Of clear answers the share that is taken at once, and with what a yes takes, at least; near misses taken, at most."""


@pytest.mark.parametrize("name", READ)
def test_answers_that_nothing_was_chosen_on(name):
    """Rules and reader together, on sayings of writers whose rows were never learnt (figures as in the card)."""
    at_once, with_a_yes, most = READ[name]
    language = ENGLISH.weighed_by(answer_reader())
    # Every other row; `tests.bench.answers` counts them all.
    found = [(row, *weighed(row, language)) for row in rows(f"held_out/{name}")[::2]]
    clear = [(surety, meaning == row.means) for row, meaning, surety in found if row.is_clear]
    assert sum(right and surety is not Surety.LIKELY for surety, right in clear) >= at_once * len(clear)
    assert sum(right for _, right in clear) >= with_a_yes * len(clear)
    taken = [
        row for row, meaning, surety in found if meaning not in ("", "no", row.means) and surety is not Surety.LIKELY
    ]
    assert len(taken) <= most, taken
