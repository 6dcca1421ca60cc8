"""What the words may have been meant to be: for asking only. Nothing here accepts anything."""

from collections.abc import Sequence

from assistant.spoken.tokens import LONGEST, clean_text

_NEAR_ENOUGH = 75
"""Similarity in percent below which a suggestion would only puzzle."""
_MOST = 3


def nearest(words: str, phrases: Sequence[str]) -> tuple[str, ...]:
    """At most three of the phrases that these words are near to, nearest first; none is ever taken by itself.

    Args:
        words: as said or typed.
        phrases: those that may be said here: the right answer is not preferred.
    """
    if not words.strip() or len(words) > LONGEST:
        return ()
    from rapidfuzz import fuzz, process  # a compiled library that only failures need

    found = process.extract(
        clean_text(words).lower(), phrases, scorer=fuzz.ratio, score_cutoff=_NEAR_ENOUGH, limit=_MOST
    )
    return tuple(phrase for phrase, _, _ in found)
