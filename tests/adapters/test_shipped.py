"""Copies of a model's files: what is checked is what is loaded, also where the disk is full."""

import gzip
import hashlib
from pathlib import Path

import pytest

from assistant.adapters.shipped import copies, pinned_copies
from assistant.errors import ModelError

CONTENTS = {"model.bin": b"weights", "words.json.gz": gzip.compress(b'["ten"]', mtime=0)}
WHOLE = {"model.bin": b"weights", "words.json": b'["ten"]'}
PINNED = {name: hashlib.sha256(content).hexdigest() for name, content in CONTENTS.items()}


@pytest.fixture
def folder(tmp_path):
    """Files in the place of a model's, one of them packed."""
    for name, content in CONTENTS.items():
        (tmp_path / name).write_bytes(content)
    return tmp_path


def loaded(first, files=None):
    """What a library would read: of a folder, or of contents that it is handed."""
    if files is not None:
        assert not first
        return files
    return {path.name: path.read_bytes() for path in Path(first).iterdir()}


def test_copies_are_unpacked_and_gone_afterwards(folder):
    """A library reads them from a folder of their own, which only this user can open, and which is gone then."""
    with pinned_copies("model", folder, PINNED, "Install it again.") as made:
        assert made.loaded_by(loaded) == WHOLE
        assert {name: made.read(name) for name in WHOLE} == WHOLE
        assert dict(made.digests) == PINNED
        assert made.folder.stat().st_mode & 0o077 == 0
        (folder / "model.bin").write_bytes(b"others")  # afterwards: nobody reads it any more
        assert made.read("model.bin") == b"weights"
    assert not made.folder.exists()


@pytest.mark.parametrize("full", ["model.bin", "words.json", "model.bin words.json"])
def test_what_has_no_room_is_kept_in_memory(folder, monkeypatch, full):
    """Where the disk is full half-way, nothing is lost: the library is handed everything."""
    write = Path.write_bytes

    def write_if_room(path, content):
        if path.name in full.split():
            raise OSError(28, "No space left on device")
        return write(path, content)

    monkeypatch.setattr(Path, "write_bytes", write_if_room)
    with copies(folder, tuple(PINNED), "") as made:
        assert made.loaded_by(loaded) == WHOLE
        assert {name: made.read(name) for name in WHOLE} == WHOLE


@pytest.mark.parametrize(
    "content",
    [b"", b"not packed", CONTENTS["words.json.gz"][:-4], b"\x1f\x8b\x08" + bytes(40)],
    ids=["empty", "not packed", "ends early", "nothing in it"],
)
def test_a_broken_packed_file_is_another_file(folder, content):
    """It is told as such, and not as an error of what unpacks it."""
    (folder / "words.json.gz").write_bytes(content)
    with (
        pytest.raises(ModelError, match=r"words\.json\.gz .* is not what was tested"),
        pinned_copies("model", folder, PINNED, ""),
    ):
        pass


def test_a_missing_file_is_named(folder):
    """With what to do."""
    (folder / "model.bin").unlink()
    with pytest.raises(ModelError, match=r"model\.bin cannot be read") as raised, copies(folder, tuple(PINNED), "Do."):
        pass
    assert raised.value.remedy == "Do."
