"""What the words may have been meant to be: for asking only. Nothing here accepts anything."""

from assistant.spoken.expect import Expect
from assistant.spoken.listing import phrases
from assistant.spoken.tokens import LONGEST, clean_text

_NEAR_ENOUGH = 75
"""Similarity in percent below which a suggestion would only puzzle."""
_MOST = 3


def suggest(words: str, expect: Expect) -> tuple[str, ...]:
    """At most three phrases that these words are near to, nearest first; none is ever taken by itself.

    The phrases are those that may be said here: the right answer is not preferred.
    """
    if not words.strip() or len(words) > LONGEST:
        return ()
    from rapidfuzz import fuzz, process  # a compiled library that only failures need

    found = process.extract(
        clean_text(words).lower(), phrases(expect), scorer=fuzz.ratio, score_cutoff=_NEAR_ENOUGH, limit=_MOST
    )
    return tuple(phrase for phrase, _, _ in found)
