"""A model's weights in CTranslate2's file: read for training, written when it is over."""

import gzip
import struct
from pathlib import Path

import numpy as np

_TYPES = {0: "<f4", 1: "i1", 2: "<i2", 3: "<i4", 4: "<f2"}


def read_model(path: Path) -> dict[str, np.ndarray]:
    """Every array of weights by its name, as numbers of 32 bits; what is quantised is restored."""
    content, place = path.read_bytes(), 0

    def number(kind: str) -> int:
        nonlocal place
        (value,) = struct.unpack_from(f"<{kind}", content, place)
        place += struct.calcsize(kind)
        return int(value)

    def text() -> str:
        nonlocal place
        length = number("H")
        place += length
        return content[place - length : place - 1].decode()

    number("I")
    text()
    number("I")
    raw = {}
    for _ in range(number("I")):
        name = text()
        shape = [number("I") for _ in range(number("B"))]
        kind, size = np.dtype(_TYPES[number("B")]), number("I")
        if shape and kind.kind in "fi" and not name.startswith("decoder/alignment"):
            raw[name] = np.frombuffer(content, kind, size // kind.itemsize, place).reshape(shape)
        place += size
    found = {}
    for name, array in raw.items():
        if not name.endswith("_scale"):
            scale = raw.get(f"{name}_scale")
            values = array.astype(np.float32)
            found[name] = values if scale is None else values / scale.reshape(-1, *[1] * (values.ndim - 1))
    return found


def table(folder: Path, name: str) -> str:
    """A table of words from a model's folder, which may be packed there."""
    packed = folder / f"{name}.gz"
    if packed.is_file():
        return gzip.decompress(packed.read_bytes()).decode()
    return (folder / name).read_text(encoding="utf-8")


def restored(trained: dict[str, np.ndarray], untrained: dict[str, np.ndarray], part: float) -> dict[str, np.ndarray]:
    """Weights between the trained ones and those that training began with.

    Args:
        trained: what training has changed.
        untrained: every weight before it.
        part: of the trained ones, 0 to 1; half of each halves the wrong answers of some models.
    """
    return {name: before + part * (trained.get(name, before) - before) for name, before in untrained.items()}


def mean(files: list[Path]) -> dict[str, np.ndarray]:
    """The average of what several trainings have changed: it errs less often than each of them.

    Args:
        files: what `train` has written, of the same weights.
    """
    trainings = [np.load(file) for file in files]
    return {name: np.mean([one[name] for one in trainings], axis=0) for name in trainings[0].files}
