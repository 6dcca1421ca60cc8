"""Where the words of somebody who counts are cut: at quiet places, near where a model places them."""

import numpy as np

from tests.bench.training.store import RATE_HZ

FRAME = RATE_HZ // 100
"""Samples."""
LAST = 20
"""How far people are asked to count."""
_SHORTEST, _LONGEST = 12, 200
"""Of a word with the quiet after it, frames."""
_VOICED_DB, _LEAST_VOICED, _NO_WORD = 30.0, 8, 20.0
"""In each word so many frames have to be as loud as that, below the loudest; and what it costs where they are not."""
_DEEP_DB = 50.0
"""What is softer than that counts as quiet."""
_QUIETER_DB = 20.0
"""Where one word is cut from the next it has to be that much quieter than the softer of them is at its loudest."""


def energy_db(sound: np.ndarray) -> np.ndarray:
    """How loud it is in each hundredth of a second, over three of them."""
    frames = np.square(sound[: len(sound) // FRAME * FRAME].reshape(-1, FRAME)).mean(axis=1)
    return np.asarray(10 * np.log10(np.convolve(frames, np.ones(3) / 3, mode="same") + 1e-9))


def boundaries(energy: np.ndarray, starts: list[int]) -> list[int]:
    """Where the words are cut, in frames: at quiet places near where they begin, at about even distances.

    Args:
        energy: of each frame, dB.
        starts: about where each word begins, frames; of the first word, and of teens, nothing is known.

    Returns:
        One more than there are words; the first is where the first word begins, the last where the recording ends.
    """
    count, words = len(energy), len(starts)
    lengths = np.arange(_SHORTEST, min(_LONGEST, count))
    uneven = [3.0 * np.log(lengths / usual) ** 2 for usual in _usual(starts, count)]
    loud = np.maximum(0.0, energy - energy.max() + _DEEP_DB) / 6
    voiced = np.cumsum(energy > energy.max() - _VOICED_DB)
    cost = np.full((words, count), np.inf)
    before = np.zeros((words, count), dtype=int)
    cost[0] = loud
    for word in range(1, words):
        near = loud + (np.minimum(6.0, 0.15 * np.abs(np.arange(count) - starts[word])) if _is_sure(word) else 0.0)
        for frame in range(word * _SHORTEST, count):
            known = lengths[lengths <= frame]
            silent = voiced[frame] - voiced[frame - known] < _LEAST_VOICED
            paths = cost[word - 1, frame - known] + uneven[word - 1][: len(known)] + _NO_WORD * silent
            best = int(np.argmin(paths))
            cost[word, frame] = paths[best] + near[frame]
            before[word, frame] = frame - known[best]
    rest = np.clip(count - np.arange(count) - _SHORTEST, 0, len(lengths) - 1)
    frame = int(np.argmin(cost[-1] + uneven[-1][rest] + _NO_WORD * (voiced[-1] - voiced < _LEAST_VOICED)))
    cuts = [frame]
    for word in range(words - 1, 0, -1):
        frame = int(before[word, frame])
        cuts.append(frame)
    return [*reversed(cuts), count]


def _is_sure(place: int) -> bool:
    """Whether the model places that word well: neither the first one nor a teen."""
    return 0 < place < 12 or place == LAST - 1


def _usual(starts: list[int], count: int) -> list[float]:
    """How long each word usually is, with the quiet after it, frames."""
    gaps = np.diff(starts[1:12]) if len(starts) > 3 else np.array([count / len(starts)])
    usual = max(1.5 * _SHORTEST, float(np.median(gaps)))
    return [usual if place < 12 else 1.15 * usual for place in range(len(starts))]


def is_quiet(energy: np.ndarray, around: list[int]) -> bool:
    """Whether two words are apart: by where the former begins, where it ends, and where the latter ends."""
    first, cut, last = around
    softer = min(energy[first:cut].max(initial=-90), energy[cut:last].max(initial=-90))
    return bool(energy[cut] < softer - _QUIETER_DB)
