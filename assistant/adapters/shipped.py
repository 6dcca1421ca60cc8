"""Models that come with the program: where they lie, and whether their files are the tested ones."""

import gzip
import hashlib
from collections.abc import Mapping
from pathlib import Path

from assistant.adapters.models import Check, compare, file_digest
from assistant.errors import ModelError

_PACKED = ".gz"


def shipped_folder(name: str) -> Path | None:
    """Where a model of this name lies: in an installed package, or beside it in a checkout; None where it does not."""
    package = Path(__file__).resolve().parents[1]
    places = (package / "_models" / name, package.parent / "models" / name)
    return next((place for place in places if (place / "model.bin").is_file()), None)


def check_shipped(name: str, folder: Path, pinned: Mapping[str, str]) -> Check:
    """Compare a model's files with the tested ones.

    Args:
        name: the model's.
        folder: where it lies.
        pinned: SHA-256 (hex) by file name.

    Raises:
        ModelError: a file cannot be read.
    """
    present = [file for file in pinned if (folder / file).is_file()]
    return compare(name, dict(pinned), {file: file_digest(folder / file) for file in present})


def read_pinned(what: str, folder: Path, pinned: Mapping[str, str], remedy: str) -> dict[str, bytes]:
    """The files of a model, where they are the tested ones.

    Args:
        what: the model, as a message names it: "recogniser whisper-tiny.en".
        folder: where it lies.
        pinned: SHA-256 (hex) by file name.
        remedy: what to do where they are others.

    Raises:
        ModelError: they are others, or one cannot be read.
    """
    # Digests are taken of the very bytes that are loaded, so nothing can be put in between.
    files = read_files(folder, tuple(pinned), remedy)
    found = digests_of(files)
    wrong = sorted(file for file in pinned if found[file] != pinned[file])
    if wrong:
        raise ModelError(
            f"The {what}'s {' and '.join(wrong)} in {folder} is not what was tested with this program.", remedy
        )
    return files


def read_files(folder: Path, names: tuple[str, ...], remedy: str) -> dict[str, bytes]:
    """The contents of files by their names.

    Raises:
        ModelError: one cannot be read; `remedy` says what to do.
    """
    files = {}
    for name in names:
        try:
            files[name] = (folder / name).read_bytes()
        except OSError as cause:
            raise ModelError(f"The model file {folder / name} cannot be read ({cause.strerror}).", remedy) from cause
    return files


def digests_of(files: Mapping[str, bytes]) -> dict[str, str]:
    """SHA-256 (hex) by file name."""
    return {name: hashlib.sha256(content).hexdigest() for name, content in files.items()}


def unpacked(files: Mapping[str, bytes]) -> dict[str, bytes]:
    """Each file by its own name; tables of words are kept packed."""
    return {
        name.removesuffix(_PACKED): gzip.decompress(content) if name.endswith(_PACKED) else content
        for name, content in files.items()
    }
