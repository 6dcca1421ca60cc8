"""From trained weights to a model that the recogniser loads, in 8 bits.

    python -m tests.bench.training.convert TRAINED... MODEL OUT --part 0.7

TRAINED is what `train` has written, of several trainings their average (a file that is named twice counts twice),
MODEL the folder of the model that they began with (that in models/, say), OUT the new model's folder. The weights come
from between the two: `--part` of the way from the untrained to the trained ones.
"""

import argparse
import gzip
import json
import shutil
from pathlib import Path
from typing import Any

import numpy as np
from ctranslate2.specs import WhisperSpec

from tests.bench.training.weights import mean, read_model, restored, table

_LAYERS, _HEADS = 4, 6
_PACKED = ("tokenizer.json", "vocabulary.json")


def write_model(weights: dict[str, np.ndarray], like: Path, out: Path) -> None:
    """Write a model's folder.

    Args:
        weights: every array by CTranslate2's name.
        like: the folder of a model of the same size, whose other files are taken.
        out: the new folder.
    """
    spec = WhisperSpec(_LAYERS, _HEADS, _LAYERS, _HEADS)
    for name, value in weights.items():
        *parents, last = name.split("/")
        holder: Any = spec
        for parent in parents:
            stem, _, number = parent.rpartition("_")
            holder = getattr(holder, parent) if hasattr(holder, parent) else getattr(holder, stem)[int(number)]
        setattr(holder, last, value.astype(np.float32))
    spec.decoder.projection.weight = spec.decoder.embeddings.weight
    spec.register_vocabulary(_vocabulary(like))
    spec.validate()
    spec.optimize(quantization="int8")
    out.mkdir(parents=True, exist_ok=True)
    spec.save(str(out))
    shutil.copyfile(like / "config.json", out / "config.json")
    (out / "tokenizer.json").write_text(table(like, "tokenizer.json"), encoding="utf-8")


def _vocabulary(folder: Path) -> list[str]:
    lines = folder / "vocabulary.txt"
    if lines.is_file():
        return lines.read_text(encoding="utf-8").removesuffix("\n").split("\n")
    return list(json.loads(table(folder, "vocabulary.json")))


def pack(folder: Path) -> None:
    """Pack a model's tables of words, as the one that comes with the program has them."""
    for name in _PACKED:
        # The same bytes each time: their digest is pinned.
        (folder / f"{name}.gz").write_bytes(gzip.compress((folder / name).read_bytes(), 9, mtime=0))
        (folder / name).unlink()


def main() -> None:
    """Write the model."""
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("trained", type=Path, nargs="+")
    parser.add_argument("model", type=Path)
    parser.add_argument("out", type=Path)
    parser.add_argument("--part", type=float, default=1.0)
    args = parser.parse_args()
    write_model(restored(mean(args.trained), read_model(args.model / "model.bin"), args.part), args.model, args.out)
    pack(args.out)


if __name__ == "__main__":
    main()
