"""Ways to say an alternative, written as patterns: "no {air|bubbles} {left|at all|}" is six ways in one.

Their ways are too many to be listed: a pattern is matched word by word, against words that say something (see
`choice_claims.content`).
"""

import re
from collections.abc import Callable, Iterable
from dataclasses import dataclass
from itertools import product

from assistant.spoken.english.deeds import cut
from assistant.spoken.statement import Tokens

_SLOT = re.compile(r"\{([^{}]*)\}")


@dataclass(frozen=True)
class Slot:
    """One place of a pattern.

    Attributes:
        options: what may stand there, by its first word.
        optional: whether it may be left out.
    """

    options: dict[str, tuple[Tokens, ...]]
    optional: bool


@dataclass(frozen=True)
class Pattern:
    """A pattern, ready to be matched; its `firsts` are the words with which it may begin."""

    slots: tuple[Slot, ...]
    firsts: frozenset[str]

    def longest(self, words: Tokens, at: int) -> int:
        """How many of the words from there on it matches; 0 for none."""
        places = {at}
        for slot in self.slots:
            found = set(places) if slot.optional else set()
            for place in places:
                for option in slot.options.get(words[place], ()) if place < len(words) else ():
                    if words[place : place + len(option)] == option:
                        found.add(place + len(option))
            if not found:
                return 0
            places = found
        return max(places) - at


def rows_of(table: str) -> dict[str, tuple[str, ...]]:
    """The patterns of a table by the alternative; its rows are "name = pattern, pattern", and go on without a name."""
    found: dict[str, tuple[str, ...]] = {}
    name = ""
    for row in filter(None, map(str.strip, table.splitlines())):
        head, has_name, patterns = row.rpartition(" = ")
        name = head.strip() if has_name else name
        found[name] = (*found.get(name, ()), *(one.strip() for one in patterns.split(",") if one.strip()))
    return found


def compiled(pattern: str, content: Callable[[Tokens], Tokens]) -> Pattern | None:
    """A pattern of the words that say something; None where nothing of it does.

    Args:
        pattern: as it is written.
        content: what leaves out of words those that say nothing.
    """
    slots = []
    for at, piece in enumerate(_SLOT.split(pattern)):
        options = {content(cut(option)) for option in (piece.split("|") if at % 2 else [piece])}
        words = sorted(filter(None, options))
        if words:
            first = {option[0] for option in words}
            by_first = {word: tuple(option for option in words if option[0] == word) for word in first}
            slots.append(Slot(by_first, () in options))
    return Pattern(tuple(slots), _firsts(slots)) if slots else None


def _firsts(slots: Iterable[Slot]) -> frozenset[str]:
    """The words with which one of the slots may begin, up to the first that has to be there."""
    found: set[str] = set()
    for slot in slots:
        found |= slot.options.keys()
        if not slot.optional:
            break
    return frozenset(found)


def expanded(pattern: str) -> tuple[str, ...]:
    """Every way that a pattern stands for: one option of each of its braces, in their place."""
    options = [piece.split("|") if at % 2 else [piece] for at, piece in enumerate(_SLOT.split(pattern))]
    return tuple(dict.fromkeys(" ".join(" ".join(chosen).split()) for chosen in product(*options)))
