"""Whisper's decoder in plain arrays, for a search that a library's own beam search cannot do.

CTranslate2 can forbid tokens for a whole utterance, but cannot be told what may follow what. Here a search sees
the probability of every next token and chooses itself. The arithmetic is that of Vaswani et al., "Attention Is All
You Need", 2017, with layer normalisation first, as in Radford et al. 2022 (see `features`); a test compares it
with CTranslate2 token by token.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any, BinaryIO

import numpy as np
import numpy.typing as npt

from assistant.adapters.recognisers.features import Floats
from assistant.adapters.recognisers.weights import Eight, arrays, in_eight_bits
from assistant.errors import ModelError

Cache = tuple[tuple[Floats, Floats], ...]
"""Keys and values of what has been written, by layer: rows, heads, tokens, width."""

_EPSILON = 1e-5
_PART = "decoder/"
_COLUMNS = 256
"""Columns of a matrix that are widened at a time: they and the outcome stay where the processor is fast."""

Stored = dict[str, npt.NDArray[Any]]
"""The decoder's arrays by name, as the file has them."""


class Decoder:
    """The decoder half of a Whisper model.

    Args:
        model: a ``model.bin`` as CTranslate2's converter writes it, at its beginning.

    Raises:
        ModelError: it is something else.
    """

    def __init__(self, model: BinaryIO) -> None:
        try:
            weights = dict(arrays(model, _PART))
            self._tokens = Matrix.of(weights, "embeddings")
            self._positions = _wide(weights, "position_encodings/encodings")
            self._last = _Norm.of(weights, "layer_norm")
            self._heads = int(weights["num_heads"])
            count = 1 + max(
                int(name.split("/")[0][6:])
                for name in weights
                if name.startswith("layer_") and "/" in name and name[6].isdigit()
            )
            self._layers = tuple(_Layer.of(weights, f"layer_{number}/") for number in range(count))
        except (KeyError, ValueError) as cause:
            raise ModelError(
                "The model is in a form that this program does not read.", "Convert it with CTranslate2 4."
            ) from cause
        self._width = self._positions.shape[1] // self._heads

    def listen(self, sound: Floats) -> "Listening":
        """Prepare for one utterance.

        Args:
            sound: the encoder's output, one row for each 20 ms.
        """
        keys_and_values = []
        for layer in self._layers:
            both = layer.sound_in(sound).reshape(len(sound), 2, self._heads, self._width)
            keys = np.ascontiguousarray(both[:, 0].transpose(1, 2, 0))
            values = np.ascontiguousarray(both[:, 1].transpose(1, 0, 2))
            keys_and_values.append((keys, values))
        return Listening(self, tuple(keys_and_values))

    def step(
        self,
        sound: tuple[tuple[Floats, Floats], ...],
        tokens: Sequence[int],
        position: int,
        cache: Cache | None,
    ) -> tuple[Floats, Cache]:
        """What is thought after each of `tokens` (see `logarithms`), a row for each, and the cache with them."""
        rows, heads, width = len(tokens), self._heads, self._width
        scale = np.float32(1 / math.sqrt(width))
        state = self._tokens.columns(tokens) + self._positions[position]
        written = []
        for number, layer in enumerate(self._layers):
            parts = layer.self_in(layer.self_norm(state)).reshape(rows, 3, heads, 1, width)
            keys, values = parts[:, 1], parts[:, 2]
            if cache is not None:
                keys = np.concatenate([cache[number][0], keys], axis=2)
                values = np.concatenate([cache[number][1], values], axis=2)
            written.append((keys, values))
            seen = _softmax(np.multiply(parts[:, 0], scale, dtype=np.float32) @ keys.transpose(0, 1, 3, 2)) @ values
            state = state + layer.self_out(seen.reshape(rows, -1))

            asked = layer.sound_ask(layer.sound_norm(state)).reshape(rows, heads, width).transpose(1, 0, 2)
            heard = _softmax(np.multiply(asked, scale, dtype=np.float32) @ sound[number][0]) @ sound[number][1]
            state = state + layer.sound_out(heard.transpose(1, 0, 2).reshape(rows, -1))

            state = state + layer.out(_gelu(layer.inner(layer.norm(state))))
        return state, tuple(written)

    def logarithms(self, state: Floats) -> Floats:
        """Logarithms of the probabilities of every next token, a row for each row of what `step` gives."""
        scores = self._tokens.multiplied(self._last(state))
        scores -= scores.max(axis=1, keepdims=True)
        for row in scores:
            # Row by row: forty rows of fifty thousand tokens are not needed a second time.
            row -= np.log(np.exp(row).sum())
        return scores


class Listening:
    """One utterance before the decoder."""

    def __init__(self, decoder: Decoder, sound: tuple[tuple[Floats, Floats], ...]) -> None:
        self._decoder = decoder
        self._sound = sound

    def start(self, prompt: Sequence[int]) -> tuple[Floats, Cache]:
        """What may follow the prompt, one token or more: one row."""
        first, *others = prompt
        state, cache = self._decoder.step(self._sound, [first], 0, None)
        for position, token in enumerate(others, 1):
            state, cache = self._decoder.step(self._sound, [token], position, cache)
        return self._decoder.logarithms(state), cache

    def step(self, tokens: Sequence[int], rows: Sequence[int], cache: Cache) -> tuple[Floats, Cache]:
        """What may follow when each of `tokens` is written after the row of the same place in `rows`."""
        chosen = list(rows)
        position = cache[0][0].shape[2]
        kept = tuple((keys[chosen], values[chosen]) for keys, values in cache)
        state, longer = self._decoder.step(self._sound, tokens, position, kept)
        return self._decoder.logarithms(state), longer


@dataclass(frozen=True)
class _Norm:
    gamma: Floats
    beta: Floats

    @classmethod
    def of(cls, weights: Stored, name: str) -> "_Norm":
        return cls(_wide(weights, f"{name}/gamma"), _wide(weights, f"{name}/beta"))

    def __call__(self, state: Floats) -> Floats:
        centred = state - state.mean(axis=1, keepdims=True)
        spread = np.sqrt(np.mean(np.square(centred), axis=1, keepdims=True) + np.float32(_EPSILON))
        return np.asarray(centred / spread * self.gamma + self.beta)


@dataclass(frozen=True)
class Matrix:
    """A matrix in eight bits, a column for each outcome, widened block by block where it is multiplied.

    That takes a quarter of the memory, and no longer: what is read from memory is a quarter too.

    Attributes:
        blocks: `_COLUMNS` columns each, the last one fewer.
        scale: what each column was multiplied with.
    """

    blocks: tuple[Eight, ...]
    scale: Floats

    @classmethod
    def of(cls, weights: Stored, name: str) -> "Matrix":
        """Of the file's arrays the matrix of this name, which is stored with a row for each outcome."""
        # Taken out: the largest is not there twice for long.
        rows, scale = weights.pop(f"{name}/weight"), weights.pop(f"{name}/weight_scale", None)
        if rows.dtype != np.int8 or scale is None:
            rows, scale = in_eight_bits(rows if scale is None else rows / scale.reshape(-1, 1))
        blocks = (rows[first : first + _COLUMNS].T for first in range(0, len(rows), _COLUMNS))
        return cls(tuple(np.ascontiguousarray(block) for block in blocks), np.asarray(scale, np.float32))

    def columns(self, numbers: Sequence[int]) -> Floats:
        """Some of its columns, each as a row."""
        chosen = (self.blocks[number // _COLUMNS][:, number % _COLUMNS] for number in numbers)
        return np.stack([*chosen]).astype(np.float32) / self.scale[list(numbers)][:, None]

    def multiplied(self, state: Floats) -> Floats:
        """The state's rows times it."""
        outcome = np.empty((len(state), len(self.scale)), np.float32)
        first = 0
        for block in self.blocks:
            after = first + block.shape[-1]
            np.matmul(state, block.astype(np.float32), out=outcome[:, first:after])
            first = after
        outcome /= self.scale
        return outcome


@dataclass(frozen=True)
class _Linear:
    weight: Matrix
    bias: Floats

    @classmethod
    def of(cls, weights: Stored, name: str) -> "_Linear":
        return cls(Matrix.of(weights, name), _wide(weights, f"{name}/bias"))

    def __call__(self, state: Floats) -> Floats:
        return self.weight.multiplied(state) + self.bias


@dataclass(frozen=True)
class _Layer:
    self_norm: _Norm
    self_in: _Linear
    self_out: _Linear
    sound_norm: _Norm
    sound_ask: _Linear
    sound_in: _Linear
    sound_out: _Linear
    norm: _Norm
    inner: _Linear
    out: _Linear

    @classmethod
    def of(cls, weights: Stored, name: str) -> "_Layer":
        return cls(
            self_norm=_Norm.of(weights, f"{name}self_attention/layer_norm"),
            self_in=_Linear.of(weights, f"{name}self_attention/linear_0"),
            self_out=_Linear.of(weights, f"{name}self_attention/linear_1"),
            sound_norm=_Norm.of(weights, f"{name}attention/layer_norm"),
            sound_ask=_Linear.of(weights, f"{name}attention/linear_0"),
            sound_in=_Linear.of(weights, f"{name}attention/linear_1"),
            sound_out=_Linear.of(weights, f"{name}attention/linear_2"),
            norm=_Norm.of(weights, f"{name}ffn/layer_norm"),
            inner=_Linear.of(weights, f"{name}ffn/linear_0"),
            out=_Linear.of(weights, f"{name}ffn/linear_1"),
        )


def _softmax(scores: Floats) -> Floats:
    powers = np.exp(scores - scores.max(axis=-1, keepdims=True))
    return np.asarray(powers / powers.sum(axis=-1, keepdims=True))


def _gelu(state: Floats) -> Floats:
    """The usual approximation by tanh (Hendrycks and Gimpel 2016, section 2); it is off by less than 0.001."""
    # Written as products: a power takes thirty times as long.
    cubed = state * (1 + np.float32(0.044715) * (state * state))
    return np.asarray(np.float32(0.5) * state * (1 + np.tanh(np.float32(0.7978845608) * cubed)))


def _wide(weights: Stored, name: str) -> Floats:
    return np.array(weights[name], np.float32)
