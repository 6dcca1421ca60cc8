"""A question that sums up what it names, in English: "pump stopped, line clamped, flush at hand: is everything ready?".

Who answers it by naming each part of it, with its state, has said yes: "yes, stopped, clamped, flush is right here".
Every word has to belong to a part, or to be a small one; a part that is left out, denied or put off is none.
"""

import re
from functools import lru_cache

from assistant.spoken.english.bench_words import ARTICLES, NOUNS
from assistant.spoken.english.writing import SAME_WORD
from assistant.spoken.statement import Tokens

_ALSO = {
    "stopped": "stopped off paused halted",
    "clamped": "clamped closed shut clamp",
    "hand": "hand here ready beside by got nearby reach",
    "primed": "primed",
    "checked": "checked done right correct fine good",
    "labelled": "labelled labeled label",
    "sight": "sight see here on visible",
    "open": "open patent flushing",
    "found": "found got",
    "dry": "dry dried",
    "done": "done complete finished",
}
"""By the state that a part asks for: the words that say it (words of every day)."""
_THINGS = {
    "line": "line tubing set tube",
    "flush": "flush syringe saline",
    "set": "set line tubing",
    "catheter": "catheter cannula",
    "patient": "patient",
}
_SMALL = frozenset(
    [
        "the",
        "a",
        "an",
        "and",
        "is",
        "are",
        "it",
        "they",
        "all",
        "both",
        "everything",
        "every",
        "one",
        "i",
        "have",
        "has",
        "got",
        "my",
        "new",
        "right",
        "there",
        "now",
        "too",
        "also",
        "already",
        "just",
        "so",
        "that",
        "this",
        "yes",
        "with",
        "in",
        "at",
        "me",
        "of",
        "to",
        "fully",
        "properly",
        "nice",
        "nicely",
        "well",
    ]
)
_NAMES_THE_END = re.compile(r":? ?(?:is|are) everything (?:ready|set)\b.*")


@lru_cache(maxsize=512)
def parts_of(line: str) -> tuple[tuple[frozenset[str], frozenset[str]], ...]:
    """The parts that the last sentence of a line sums up: the words of each thing, and those that say its state."""
    last = re.split(r"(?<=[.!])\s+", line.strip().lower())[-1].rstrip("?")
    listed = _NAMES_THE_END.sub("", last)
    found: list[tuple[frozenset[str], frozenset[str]]] = []
    for part in re.split(r", and |, | and ", listed):
        words = [word for word in re.findall(r"[a-z]+", part) if word not in ARTICLES | {"is", "are", "in", "at"}]
        if len(words) < 2 or words[-1] not in _ALSO:
            if words == ["clamped"] and found:
                found.append((frozenset(), frozenset(_ALSO["clamped"].split())))
                continue
            return ()
        things = {other for word in words[:-1] for other in _THINGS.get(word, word).split()} - {"everything", "new"}
        found.append((frozenset(things & NOUNS), frozenset(_ALSO[words[-1]].split())))
    return tuple(found) if len(found) > 1 else ()


def names_all(tokens: Tokens, line: str) -> bool:
    """Whether the words name each part that the line sums up, with its state, and nothing else."""
    parts = parts_of(line)
    if not parts or tokens[0] in ("is", "are"):
        return False
    words = {SAME_WORD.get(word, word) for word in tokens}
    words = {word[:-1] if word[-1:] == "s" and word[:-1] in NOUNS else word for word in words}
    allowed = _SMALL.union(*(things | states for things, states in parts))
    once = {frozenset(states) for _things, states in parts}
    named = all(states & words for _things, states in parts)
    of_each = all(not things or things & words or sum(s == states for _t, s in parts) == 1 for things, states in parts)
    return words <= allowed and named and of_each and (len(once) > 1 or len(tokens) > len(parts))
