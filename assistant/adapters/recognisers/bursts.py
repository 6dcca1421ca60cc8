"""How many stretches of voice an utterance has: a word that a model lost still sounded.

A model may write "six" of "six seven", and be certain. Two stretches of voice with a clear pause between them are no
single word, though. One stretch may be several words, so that they are counted says nothing the other way round.
"""

import numpy as np

from assistant.adapters.recognisers.features import Floats
from assistant.adapters.recognisers.front import loudest, powers

LOWEST_HZ, HIGHEST_HZ = 200, 1_000
"""Vowels are loud there; "s", the end of "eight" and most noise are not."""
FAR_BELOW_DB = 18.0
"""Frames so far below the loud ones are a pause."""
LEAST_LOUD_DB = 10.0
"""A word comes this near to the loudest; what others say in the background, and breath, does not."""
LEAST_PAUSE = 7
"""Frames of 20 ms that part two stretches; the stop within "six" is shorter."""
LEAST_VOICE = 5
"""Frames of 20 ms that a stretch has; a click is shorter."""


def count(speech: Floats) -> int:
    """Stretches of voice that a clear pause parts.

    Args:
        speech: mono at 16 kHz.
    """
    levels = 10 * np.log10(powers(speech, LOWEST_HZ, HIGHEST_HZ) + 1e-12)
    if not len(levels):
        return 0
    loud = loudest(levels)
    (heard,) = np.nonzero(levels > loud - FAR_BELOW_DB)
    parted = np.flatnonzero(np.diff(heard) > LEAST_PAUSE)
    starts, ends = heard[np.append(0, parted + 1)], heard[np.append(parted, len(heard) - 1)] + 1
    return sum(
        int(end - start >= LEAST_VOICE and levels[start:end].max() > loud - LEAST_LOUD_DB)
        for start, end in zip(starts, ends, strict=True)
    )
