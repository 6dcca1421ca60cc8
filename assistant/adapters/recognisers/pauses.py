"""Pauses made shorter, so that who speaks slowly still fits into the picture that a model is used to.

Four digits with a second between them are longer than six seconds. A model that was trained on pictures of six hears
them in one of twelve, where it loses the last words; with shorter pauses they are what it was trained on. Of 57 such
strings of people (tuning part) it heard 16 as they came, and 55 with their pauses shortened.
"""

import numpy as np
import numpy.typing as npt

from assistant.adapters.recognisers.features import Floats
from assistant.adapters.recognisers.front import FRAME, loudest, powers
from assistant.ports import SAMPLE_RATE_HZ

LOWEST_HZ = 200
"""What is below is hum rather than speech: in a recording that hums nothing else would be a pause."""
KEPT = 6
"""Frames of 20 ms that stay at each end of a pause: the soft end of a word ("six") is no pause."""
LEAST_CUT = 4
"""Frames that are taken out of a pause at least."""
LEAST_BELOW_DB = 12.0
"""A pause is so far below the loud frames, and no louder than it has to be."""
MOST_BELOW_DB = 40.0
"""What is so far below is a pause in any case."""
_STEP_DB = 1.0
_AVERAGED = 5
"""Frames over which the level is averaged: noise goes up and down faster than words do."""

Pauses = list[tuple[int, int]]
"""First frame of each, and the one after its last."""


def shortened(speech: Floats, longest_s: float) -> Floats:
    """The same speech with each pause shorter in proportion, so that it is no longer than that; or just as it is.

    It stays as it is where it is short enough, and where even without its pauses it would be too long.

    Args:
        speech: mono at 16 kHz, with a little quiet at both ends.
        longest_s: how long it may be, seconds.
    """
    over = len(speech) - round(longest_s * SAMPLE_RATE_HZ)
    if over <= 0:
        return speech
    levels = _levels(speech)
    loud = loudest(levels)
    # What is softest goes first: in noise a pause is little softer than the end of a word.
    lowest = max(float(levels.min()), loud - MOST_BELOW_DB)
    for limit in np.arange(lowest + _STEP_DB, loud - LEAST_BELOW_DB + _STEP_DB / 2, _STEP_DB):
        pauses = _pauses(levels < limit)
        quiet = FRAME * sum(after - first for first, after in pauses)
        if quiet >= over:
            return _without(speech, pauses, over / quiet)
    return speech


def _levels(speech: Floats) -> npt.NDArray[np.float64]:
    """Level of each frame, averaged with those beside it, decibels."""
    power = np.pad(powers(speech, LOWEST_HZ, SAMPLE_RATE_HZ / 2), _AVERAGED // 2, mode="edge")
    return np.asarray(10 * np.log10(np.convolve(power, np.full(_AVERAGED, 1 / _AVERAGED), mode="valid") + 1e-10))


def _pauses(is_quiet: npt.NDArray[np.bool_]) -> Pauses:
    """The middle of each pause that is long enough."""
    edges = np.flatnonzero(np.diff(is_quiet.astype(np.int8), prepend=0, append=0))
    return [
        (int(first) + KEPT, int(after) - KEPT)
        for first, after in zip(edges[::2], edges[1::2], strict=True)
        if after - first >= 2 * KEPT + LEAST_CUT
    ]


def _without(speech: Floats, pauses: Pauses, part: float) -> Floats:
    """The speech without this part of each pause, from its middle."""
    is_kept = np.ones(len(speech), dtype=np.bool_)
    for first, after in pauses:
        length = FRAME * (after - first)
        taken = int(np.ceil(part * length))
        begin = FRAME * first + (length - taken) // 2
        is_kept[begin : begin + taken] = False
    return speech[is_kept]
