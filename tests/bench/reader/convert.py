"""From trained weights to the folder that the program loads: CTranslate2's form in 8 bits, and the last map apart.

    python -m tests.bench.reader.convert TRAINED MODEL OUT

TRAINED is the folder that `train` has written, MODEL the one that it began with.
"""

import argparse
import gzip
import json
from pathlib import Path
from typing import Any

import numpy as np
from ctranslate2.specs.attention_spec import MultiHeadAttentionSpec
from ctranslate2.specs.common_spec import Activation, EmbeddingsMerge, LayerNormSpec, LinearSpec
from ctranslate2.specs.transformer_spec import TransformerEncoderModelSpec, TransformerEncoderSpec

_LAYERS, _HEADS = 6, 12
_PACKED = ("tokenizer.json", "vocabulary.json")
_SMALLEST_SPREAD = 1e-12


class _Trained:
    """The arrays of a training, put where CTranslate2 wants them."""

    def __init__(self, arrays: dict[str, np.ndarray]) -> None:
        self._arrays = {name.removeprefix("encoder."): value.astype(np.float32) for name, value in arrays.items()}

    def __getitem__(self, name: str) -> np.ndarray:
        return self._arrays[name]

    def linear(self, spec: LinearSpec, *names: str) -> None:
        """One linear map, or several of the same input as one."""
        spec.weight = np.concatenate([self[f"{name}.weight"] for name in names])
        spec.bias = np.concatenate([self[f"{name}.bias"] for name in names])

    def evened(self, spec: LayerNormSpec, name: str) -> None:
        """What evens the figures after a map."""
        spec.gamma, spec.beta = self[f"{name}.weight"], self[f"{name}.bias"]

    def attention(self, spec: MultiHeadAttentionSpec, name: str) -> None:
        """What each piece takes from the others."""
        self.linear(spec.linear[0], *(f"{name}.self.{part}" for part in ("query", "key", "value")))
        self.linear(spec.linear[1], f"{name}.output.dense")
        self.evened(spec.layer_norm, f"{name}.output.LayerNorm")


def write_model(arrays: dict[str, np.ndarray], tokeniser: Path, out: Path) -> None:
    """Write the folder.

    Args:
        arrays: the training's, by its names.
        tokeniser: the file of the tokeniser.
        out: the new folder.
    """
    trained = _Trained(arrays)
    encoder: Any = TransformerEncoderSpec(
        *(_LAYERS, _HEADS),
        pre_norm=False,
        activation=Activation.GELUTanh,
        layernorm_embedding=True,
        num_source_embeddings=2,
        embeddings_merge=EmbeddingsMerge.ADD,
    )
    encoder.scale_embeddings = False
    encoder.embeddings[0].weight = trained["embeddings.word_embeddings.weight"]
    encoder.embeddings[1].weight = trained["embeddings.token_type_embeddings.weight"]
    encoder.position_encodings.encodings = trained["embeddings.position_embeddings.weight"]
    trained.evened(encoder.layernorm_embedding, "embeddings.LayerNorm")
    for number, layer in enumerate(encoder.layer):
        name = f"encoder.layer.{number}"
        trained.attention(layer.self_attention, f"{name}.attention")
        trained.linear(layer.ffn.linear_0, f"{name}.intermediate.dense")
        trained.linear(layer.ffn.linear_1, f"{name}.output.dense")
        trained.evened(layer.ffn.layer_norm, f"{name}.output.LayerNorm")
    spec = TransformerEncoderModelSpec(encoder)
    words = json.loads(tokeniser.read_text(encoding="utf-8"))["model"]["vocab"]
    spec.register_vocabulary(sorted(words, key=words.__getitem__))
    spec.config.layer_norm_epsilon = _SMALLEST_SPREAD
    spec.validate()
    spec.optimize(quantization="int8")
    out.mkdir(parents=True, exist_ok=True)
    spec.save(str(out))
    (out / tokeniser.name).write_bytes(tokeniser.read_bytes())
    for name in _PACKED:
        # The same bytes each time: their digest is pinned.
        (out / f"{name}.gz").write_bytes(gzip.compress((out / name).read_bytes(), 9, mtime=0))
        (out / name).unlink()
    last = {"weights": trained["head.weight"][0].tolist(), "bias": float(trained["head.bias"][0])}
    (out / "last.json").write_text(f"{json.dumps(last)}\n", encoding="utf-8")


def main() -> None:
    """Convert."""
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    for name in ("trained", "model", "out"):
        parser.add_argument(name, type=Path)
    args = parser.parse_args()
    with np.load(args.trained / "trained.npz") as file:
        write_model({name: file[name] for name in file.files}, args.model / "tokenizer.json", args.out)


if __name__ == "__main__":
    main()
