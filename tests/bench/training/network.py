"""Whisper as PyTorch runs it, on weights with the names that CTranslate2 gives them.

The architecture: Radford et al. 2022 (see `assistant.adapters.recognisers.features`). Nothing but functions of weights,
so that what is trained is what is stored.
"""

import torch.nn.functional as nn
from torch import Tensor

Weights = dict[str, Tensor]

HEADS = 6
FROZEN = ("decoder/embeddings/weight", "position_encodings/encodings")
"""Weights that training leaves as they are: half of the model, and all that says how words are spelt."""


def layers(weights: Weights, half: str) -> int:
    """How many layers a half of the model has."""
    names = {name.split("/")[1] for name in weights if name.startswith(f"{half}/layer_")}
    return len(names - {"layer_norm"})


def encode(weights: Weights, picture: Tensor) -> Tensor:
    """What the decoder attends to: a row for each 20 ms.

    Args:
        weights: of the model.
        picture: log-mel energies; clips, bands, columns of 10 ms.
    """
    one = nn.gelu(nn.conv1d(picture, weights["encoder/conv1/weight"], weights["encoder/conv1/bias"], padding=1))
    two = nn.conv1d(one, weights["encoder/conv2/weight"], weights["encoder/conv2/bias"], stride=2, padding=1)
    state = nn.gelu(two).transpose(1, 2)
    state = state + weights["encoder/position_encodings/encodings"][: state.shape[1]]
    for number in range(layers(weights, "encoder")):
        name = f"encoder/layer_{number}"
        state = state + _attend_itself(weights, f"{name}/self_attention", state, causal=False)
        state = state + _forward(weights, f"{name}/ffn", state)
    return _norm(weights, "encoder/layer_norm", state)


def decode(weights: Weights, tokens: Tensor, sound: Tensor) -> Tensor:
    """What is to follow each token, as `logits` takes it: clips, tokens, width.

    Args:
        weights: of the model.
        tokens: what is written so far; clips, tokens.
        sound: what `encode` gives.
    """
    embedding, places = weights["decoder/embeddings/weight"], weights["decoder/position_encodings/encodings"]
    state = embedding[tokens] + places[: tokens.shape[1]]
    for number in range(layers(weights, "decoder")):
        name = f"decoder/layer_{number}"
        state = state + _attend_itself(weights, f"{name}/self_attention", state, causal=True)
        state = state + _attend_sound(weights, f"{name}/attention", state, sound)
        state = state + _forward(weights, f"{name}/ffn", state)
    return _norm(weights, "decoder/layer_norm", state)


def logits(weights: Weights, states: Tensor) -> Tensor:
    """Logits of every next token: vocabulary last. Most of what the decoder costs, so not for what nobody asks about.

    Args:
        weights: of the model.
        states: some of what `decode` gives.
    """
    return states @ weights["decoder/embeddings/weight"].T


def _attend_itself(weights: Weights, name: str, state: Tensor, *, causal: bool) -> Tensor:
    parts = _linear(weights, f"{name}/linear_0", _norm(weights, f"{name}/layer_norm", state)).chunk(3, dim=-1)
    seen = nn.scaled_dot_product_attention(*(_split(part) for part in parts), is_causal=causal)
    return _linear(weights, f"{name}/linear_1", _joined(seen))


def _attend_sound(weights: Weights, name: str, state: Tensor, sound: Tensor) -> Tensor:
    asked = _linear(weights, f"{name}/linear_0", _norm(weights, f"{name}/layer_norm", state))
    keys, values = _linear(weights, f"{name}/linear_1", sound).chunk(2, dim=-1)
    heard = nn.scaled_dot_product_attention(_split(asked), _split(keys), _split(values))
    return _linear(weights, f"{name}/linear_2", _joined(heard))


def _forward(weights: Weights, name: str, state: Tensor) -> Tensor:
    inner = _linear(weights, f"{name}/linear_0", _norm(weights, f"{name}/layer_norm", state))
    return _linear(weights, f"{name}/linear_1", nn.gelu(inner))


def _norm(weights: Weights, name: str, state: Tensor) -> Tensor:
    return nn.layer_norm(state, state.shape[-1:], weights[f"{name}/gamma"], weights[f"{name}/beta"])


def _linear(weights: Weights, name: str, state: Tensor) -> Tensor:
    return nn.linear(state, weights[f"{name}/weight"], weights[f"{name}/bias"])


def _split(state: Tensor) -> Tensor:
    return state.unflatten(-1, (HEADS, -1)).transpose(1, 2)


def _joined(state: Tensor) -> Tensor:
    return state.transpose(1, 2).flatten(2)
