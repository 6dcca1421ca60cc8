"""Models that come with the program: where they lie, and whether their files are the tested ones."""

import gzip
import hashlib
import io
import os
import tempfile
import zlib
from collections.abc import Callable, Iterator, Mapping
from contextlib import ExitStack, contextmanager
from dataclasses import dataclass
from pathlib import Path
from typing import BinaryIO, TypeVar

from assistant.adapters.models import Check, compare, file_digest
from assistant.errors import ModelError

T = TypeVar("T")
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


@dataclass(frozen=True)
class Copies:
    """A model's files as they were read: what is checked is loaded, and no other user can put anything in between.

    Attributes:
        digests: SHA-256 (hex) of each file, by its name.
        folder: where the files lie, unpacked; only this user can open it.
        kept: contents of those for which there was no room on the disk.
    """

    digests: Mapping[str, str]
    folder: Path
    kept: Mapping[str, bytes]

    def open(self, name: str) -> BinaryIO:
        """One of the files, at its beginning.

        Raises:
            OSError: it is not there.
        """
        return io.BytesIO(self.kept[name]) if name in self.kept else (self.folder / name).open("rb")

    def read(self, name: str) -> bytes:
        """The contents of one of the files.

        Raises:
            OSError: it is not there.
        """
        with self.open(name) as file:
            return file.read()

    def loaded_by(self, load: Callable[..., T]) -> T:
        """What CTranslate2 makes of them.

        It keeps in memory what it is handed as long as the model lives; what it reads from a folder it does not.

        Args:
            load: the library's class, and all but its first argument.
        """
        if not self.kept:
            return load(str(self.folder))
        return load("", files={name: self.read(name) for name in map(_own, self.digests)})


@contextmanager
def pinned_copies(what: str, folder: Path, pinned: Mapping[str, str], remedy: str) -> Iterator[Copies]:
    """The files of a model, where they are the tested ones, each unpacked and by its own name.

    Args:
        what: the model, as a message names it: "recogniser whisper-tiny.en".
        folder: where it lies.
        pinned: SHA-256 (hex) by file name.
        remedy: what to do where they are others.

    Raises:
        ModelError: they are others, or one cannot be read.
    """
    with copies(folder, tuple(pinned), remedy) as made:
        wrong = sorted(file for file in pinned if made.digests[file] != pinned[file])
        if wrong:
            raise ModelError(
                f"The {what}'s {' and '.join(wrong)} in {folder} is not what was tested with this program.", remedy
            )
        yield made


@contextmanager
def copies(folder: Path, names: tuple[str, ...], remedy: str) -> Iterator[Copies]:
    """Copies of files, unpacked, for as long as it takes to load them.

    Raises:
        ModelError: one cannot be read; `remedy` says what to do.
    """
    kept: dict[str, bytes] = {}
    with ExitStack() as stack:
        place = _private_folder(stack)
        digests = {name: _copy(folder / name, place, kept, remedy) for name in names}
        yield Copies(digests, place, kept)


def _private_folder(stack: ExitStack) -> Path:
    """A folder that only this user can open; where there is no room for one, a place where nothing can be written."""
    try:
        return Path(stack.enter_context(tempfile.TemporaryDirectory(prefix="model-")))
    except OSError:
        return Path(os.devnull)


def _copy(source: Path, place: Path, kept: dict[str, bytes], remedy: str) -> str:
    """Copy a file, unpacked, to its place, or keep it where there is no room there; its digest."""
    content = _content(source, remedy)
    name = _own(source.name)
    whole = content if name == source.name else _unpacked(content)
    try:
        (place / name).write_bytes(whole)
    except OSError:
        kept[name] = whole
    return hashlib.sha256(content).hexdigest()


def _own(name: str) -> str:
    """What a file is called once it is unpacked."""
    return name.removesuffix(_PACKED)


def _content(path: Path, remedy: str) -> bytes:
    try:
        return path.read_bytes()
    except OSError as cause:
        raise ModelError(f"The model file {path} cannot be read ({cause.strerror}).", remedy) from cause


def _unpacked(content: bytes) -> bytes:
    """What is packed; nothing where it is broken, which its digest tells."""
    try:
        return gzip.decompress(content)
    except (OSError, EOFError, zlib.error):
        return b""
