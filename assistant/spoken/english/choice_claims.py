"""What phrases say of several alternatives, in English: "murky" of "cloudy", "in date" of a part of "fit to use"."""

from collections.abc import Iterator
from dataclasses import dataclass
from functools import lru_cache

from assistant.spoken.english.bench_words import AUXILIARIES, FRAME, NEUTRAL, NOUNS, PREPOSITIONS, PRONOUNS
from assistant.spoken.english.choices import ASPECTS, DENIED_BY, ORDERED, parts_of, patterns_of, ways_of
from assistant.spoken.english.deeds import cut
from assistant.spoken.english.verbs import VERBS
from assistant.spoken.english.ways_patterns import Pattern, compiled
from assistant.spoken.statement import Tokens

DENIALS = frozenset({"not", "no", "none", "nothing", "nobody", "neither", "never", "without", "nor"})
"""Words that deny an alternative."""
ALSO_VERBS = {"stay": "staying"}
"""Verbs of alternatives that no line asks for as a deed."""
_NEAR = ("nearly", "almost")
SKIPPED = (FRAME | {"has", "am", "been"}) - {"one", "this", "there", "here", "okay", "see"}
_SAY_LITTLE = (
    NEUTRAL | NOUNS | PREPOSITIONS | AUXILIARIES | PRONOUNS | {"than", "what", "as", "holds", "contains", "must"}
)
"""Words of which two say too little for a pattern."""
WHOLE = ""
"""In the place of a part: the whole alternative."""


@dataclass(frozen=True)
class Claim:
    """What a phrase says: parts of alternatives that are so, and parts that are not; "" is a whole one."""

    so: frozenset[tuple[str, str]]
    not_so: frozenset[tuple[str, str]] = frozenset()


class Claims:
    """What phrases say of the alternatives of one line.

    Attributes:
        table: what each listed phrase says.
    """

    def __init__(self, table: dict[Tokens, Claim], patterns: list[tuple[Pattern, Claim]]) -> None:
        self.table = table
        self._longest = max(map(len, table), default=0)
        self._patterns: dict[str, list[tuple[Pattern, Claim]]] = {}
        for pattern, claim in patterns:
            for word in pattern.firsts:
                self._patterns.setdefault(word, []).append((pattern, claim))

    def __contains__(self, words: Tokens) -> bool:
        return words in self.table

    def listed(self, words: Tokens, at: int) -> Iterator[tuple[int, Claim]]:
        """The listed phrases that begin there, the longest first: their lengths, and what they say."""
        for length in range(min(self._longest, len(words) - at), 0, -1):
            claim = self.table.get(words[at : at + length])
            if claim is not None:
                yield length, claim

    def patterned(self, words: Tokens, at: int) -> tuple[int, Claim] | None:
        """The longest way of a pattern that begins there, and what it says; None for none."""
        longest, said = 0, Claim(frozenset())
        for pattern, claim in self._patterns.get(words[at], ()):
            length = pattern.longest(words, at)
            if length > longest:
                longest, said = length, claim
            elif length == longest:
                said = Claim(said.so | claim.so)
        if longest < 2 or (longest == 2 and _SAY_LITTLE.issuperset(words[at : at + 2])):
            return None  # "finished": what is? "the bag holds": what?
        return longest, said


@lru_cache(maxsize=256)
def claims_of(choices: Tokens, sayings: tuple[tuple[str, str], ...]) -> Claims:
    """What each phrase says: an author's first, then what is listed of whole alternatives, then what is of parts."""
    table: dict[Tokens, Claim] = {}
    authored = [*((choice, choice) for choice in choices), *sayings]
    authored += [(f"{choice} one", choice) for choice in choices]
    authored += [(short, choice) for said, choice in sayings if (short := _without_one(said))]
    _add(table, [(said, Claim(frozenset({(choice, WHOLE)}))) for said, choice in authored])
    whole = [
        (way, choice)
        for choice in choices
        for way in (*ways_of(choice, choices), *_missing(choice, choices), *_going_on(choice), *_nearly(choice))
    ]
    _add(table, [(way, Claim(frozenset({(choice, WHOLE)}))) for way, choice in whole])
    of_parts: list[tuple[str, Claim]] = []
    for choice in choices:
        for part in parts_of(choice.lower()):
            aspect = ASPECTS[part]
            mine = frozenset({(choice, part)})
            of_parts += [(way, Claim(mine)) for way in (part, *aspect.so)]
            of_parts += [(way, Claim(frozenset(), mine)) for way in aspect.not_so]
        denied = frozenset({(choice, WHOLE)})
        of_parts += [(way, Claim(frozenset(), denied)) for way in DENIED_BY.get(choice.lower(), ())]
    _add(table, of_parts, over=True)
    patterns = (
        (compiled(pattern, content), Claim(frozenset({(choice, WHOLE)})))
        for choice in choices
        for pattern in patterns_of(choice, choices)
    )
    return Claims(table, [(pattern, claim) for pattern, claim in patterns if pattern is not None])


def _add(table: dict[Tokens, Claim], rows: list[tuple[str, Claim]], *, over: bool = False) -> None:
    """Add rows to a table; what it held before counts first, but for what `over` adds that it is not."""
    before = dict(table)
    for way, claim in rows:
        said = cut(way)
        words = content(said)
        # "Has fluid" must not make a claim of every "fluid".
        worn_down = len(words) == 1 < len(said) and words[0] in (NEUTRAL | NOUNS | DENIALS) - {"hear"}
        if not words or worn_down or (words in before and not over):
            continue
        old = table.get(words, Claim(frozenset()))
        if words in before:
            claim = Claim(frozenset(), claim.not_so)
        table[words] = Claim(old.so | claim.so, old.not_so | claim.not_so)


def _going_on(choice: str) -> tuple[str, ...]:
    """What is so, as it comes about: "staying in" of "stays in"."""
    words = choice.lower().removeprefix("it ").split()
    base = words[0].removesuffix("s")
    if base == words[0] or base not in VERBS | ALSO_VERBS:
        return ()
    return (" ".join((VERBS[base].ing if base in VERBS else ALSO_VERBS[base], *words[1:])),)


def _nearly(choice: str) -> tuple[str, ...]:
    """What is nearly so, in all the words for what is so: "almost used up" of "nearly empty"."""
    near, _, so = choice.lower().partition(" ")
    return tuple(f"{word} {way}" for way in (so, *ways_of(so, ())) for word in _NEAR) if near in _NEAR else ()


def _without_one(said: str) -> str:
    """The words between: "left" of "the left one"; empty where it is nothing of the kind."""
    words = cut(said)
    return " ".join(words[1:-1]) if len(words) > 2 and words[0] in ("the", "a") and words[-1] == "one" else ""


def _missing(choice: str, choices: Tokens) -> tuple[str, ...]:
    """How it is said that a part of an order is not there."""
    if choice != "something missing":
        return ()
    taken = {word for other in choices for part in parts_of(other) for word in part.split()}
    forms = (
        *("no {}", "{} missing", "{} not there", "not see {}", "not find {}", "without {}", "forgot {}"),
        *(
            "left out {}",
            "left {} out",
            "{} left out",
            "missing {}",
            "lacks {}",
            "lacking {}",
            "not say {}",
            "not give {}",
        ),
        *(
            "not state {}",
            "{} not written",
            "{} not given",
            "{} not stated",
            "{} not filled in",
            "{} blank",
            "{} empty",
        ),
        *("not got {}", "not have {}", "{} absent", "{} gone", "not any {}", "{} not on it", "not mention {}"),
    )
    return tuple(form.format(noun) for noun in ORDERED if noun not in taken for form in forms)


def content(tokens: Tokens) -> Tokens:
    """The words that say something, without those that only make a sentence of them."""
    return tuple(one_of(word) for word in tokens if word not in SKIPPED and word not in ("do", "does", "did", "can"))


def one_of(word: str) -> str:
    """A thing at the bench without its s, which may be a short "is": "site's changed" comes as "sites changed"."""
    return word[:-1] if word[-1:] == "s" and word[:-1] in NOUNS else word
