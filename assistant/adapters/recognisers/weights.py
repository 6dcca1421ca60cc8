"""CTranslate2's file of weights: read array by array, and written anew in eight bits.

A model in sixteen bits takes twice the memory while it is loaded, for the library makes eight of them only then.
"""

import os
import struct
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any, BinaryIO

import numpy as np
import numpy.typing as npt

from assistant.adapters.recognisers.features import Floats

Eight = npt.NDArray[np.int8]
"""Numbers in eight bits."""

_KNOWN_FORMAT = 6
_KIND_OF_MODEL = "WhisperSpec"
_TYPES: dict[int, np.dtype[Any]] = {
    0: np.dtype("<f4"),
    1: np.dtype("i1"),
    2: np.dtype("<i2"),
    3: np.dtype("<i4"),
    4: np.dtype("<f2"),
}
_EIGHT, _THIRTY_TWO = 1, 0
_ROWS = 256
"""Rows that are turned into eight bits at a time: the largest table has fifty thousand."""


@dataclass(frozen=True)
class Header:
    """What stands before an array in the file.

    Attributes:
        name: of the array.
        shape: of the array.
        kind: the file's number for the type of its elements.
    """

    name: str
    shape: tuple[int, ...]
    kind: int

    @property
    def dtype(self) -> np.dtype[Any]:
        """Type of an element."""
        return _TYPES[self.kind]

    @property
    def size(self) -> int:
        """Bytes of the array."""
        return int(np.prod(self.shape, dtype=np.int64)) * self.dtype.itemsize

    @property
    def is_wide(self) -> bool:
        """A matrix in more bits than the library has it in once it is loaded; what a convolution needs is none."""
        return self.name.endswith("/weight") and len(self.shape) == 2 and self.dtype.kind == "f"


def arrays(source: BinaryIO, part: str) -> Iterator[tuple[str, npt.NDArray[Any]]]:
    """The arrays of a part of a model, each as it is stored, one after the other.

    Args:
        source: a ``model.bin`` at its beginning.
        part: what their names begin with: "decoder/"; it is taken off.

    Raises:
        ValueError: the file is something else, or ends early.
        KeyError: it holds a type of number that is not known here.
    """
    _, count = _begin(source)
    for header in _headers(source, count):
        content = _read(source, header.size)
        if header.name.startswith(part):
            yield header.name.removeprefix(part), np.frombuffer(content, header.dtype).reshape(header.shape)


def in_eight_bits(rows: npt.NDArray[Any]) -> tuple[Eight, Floats]:
    """Each row in whole numbers, at most 127, and what it was multiplied with, as the library's converter does it."""
    wide = rows.astype(np.float32).reshape(len(rows), -1)
    largest = np.abs(wide).max(axis=1)
    largest[largest == 0] = 127
    scale = np.float32(127) / largest
    return np.rint(wide * scale[:, None]).astype(np.int8).reshape(rows.shape), scale


def has_wide(source: BinaryIO) -> bool:
    """Whether a matrix of a model would be smaller in eight bits.

    Args:
        source: a ``model.bin`` at its beginning.

    Raises:
        ValueError, KeyError: as `arrays`.
    """
    _, count = _begin(source)
    for header in _headers(source, count):
        if header.is_wide:
            return True
        source.seek(header.size, os.SEEK_CUR)
    return False


def write_in_eight_bits(source: BinaryIO, target: BinaryIO) -> None:
    """Write a model anew, its matrices in eight bits; what is no matrix of sixteen or thirty-two stays as it is.

    Args:
        source: a ``model.bin`` at its beginning.
        target: an empty file that can be written at any place.

    Raises:
        ValueError, KeyError: as `arrays`.
    """
    revision, count = _begin(source)
    target.write(_begun(revision, count))
    written = 0
    for header in _headers(source, count):
        written += 1
        if header.is_wide:
            written += 1
            _write_matrix(source, target, header)
        else:
            target.write(_head(header))
            target.write(_read(source, header.size))
    while rest := source.read(1 << 16):  # the second names of arrays
        target.write(rest)
    target.seek(0)
    target.write(_begun(revision, written))


def _write_matrix(source: BinaryIO, target: BinaryIO, header: Header) -> None:
    length = header.shape[1]
    target.write(_head(Header(header.name, header.shape, _EIGHT)))
    scales = []
    for first in range(0, header.shape[0], _ROWS):
        rows = min(_ROWS, header.shape[0] - first)
        stored = np.frombuffer(_read(source, rows * length * header.dtype.itemsize), header.dtype)
        eight, scale = in_eight_bits(stored.reshape(rows, length))
        target.write(eight.tobytes())
        scales.append(scale.astype("<f4").tobytes())
    target.write(_head(Header(f"{header.name}_scale", header.shape[:1], _THIRTY_TWO)))
    target.write(b"".join(scales))


def _begin(source: BinaryIO) -> tuple[int, int]:
    """The revision of such models, and how many arrays follow."""
    if _number(source, "I") != _KNOWN_FORMAT or _text(source) != _KIND_OF_MODEL:
        raise ValueError("not a Whisper model of the known format")
    return _number(source, "I"), _number(source, "I")


def _headers(source: BinaryIO, count: int) -> Iterator[Header]:
    """Each array's header; whoever asks for the next one has left the array behind."""
    for _ in range(count):
        name = _text(source)
        shape = tuple(_number(source, "I") for _ in range(_number(source, "B")))
        kind = _number(source, "B")
        header = Header(name, shape, kind)
        if _number(source, "I") != header.size:
            raise ValueError(f"{name} is longer or shorter than it says")
        yield header


def _begun(revision: int, count: int) -> bytes:
    return struct.pack("<I", _KNOWN_FORMAT) + _named(_KIND_OF_MODEL) + struct.pack("<II", revision, count)


def _head(header: Header) -> bytes:
    shape = struct.pack(f"<B{len(header.shape)}I", len(header.shape), *header.shape)
    return _named(header.name) + shape + struct.pack("<BI", header.kind, header.size)


def _named(text: str) -> bytes:
    name = text.encode()
    return struct.pack("<H", len(name) + 1) + name + b"\0"


def _number(source: BinaryIO, kind: str) -> int:
    (value,) = struct.unpack(f"<{kind}", _read(source, struct.calcsize(kind)))
    return int(value)


def _text(source: BinaryIO) -> str:
    return _read(source, _number(source, "H"))[:-1].decode()


def _read(source: BinaryIO, size: int) -> bytes:
    content = source.read(size)
    if len(content) < size:
        raise ValueError("the file ends early")
    return content
