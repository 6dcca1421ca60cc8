"""Sentences that the grammar allows, for tests and for recognisers."""

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from decimal import Decimal
from functools import lru_cache

from assistant.spoken.alike import SoundAlikes
from assistant.spoken.expect import AnyExpected, Expect, NumberExpected
from assistant.spoken.grammar import Parse, Rule, walk
from assistant.spoken.interpretation import Interpreter
from assistant.spoken.listing import Listing
from assistant.spoken.meaning import Meaning, NoMatch
from assistant.spoken.tables import Tables
from assistant.spoken.units import UnitWords

_MASK = (1 << 64) - 1


@dataclass(frozen=True)
class Continuations:
    """How an utterance can go on.

    Attributes:
        words: the words that may come next.
        complete: the words so far may also be all.
        figures: a number in figures may come next.
    """

    words: frozenset[str]
    complete: bool
    figures: bool = False


class Sampler:
    """The sentences of a language.

    Args:
        tables: the language.
        slot: the grammar of an utterance where a number is expected.
        listing: its finite sentences.
        units: its units.
        alike: the ways to say its numbers.
        interpreter: what its sentences mean.
    """

    def __init__(
        self,
        tables: Tables,
        slot: Rule,
        listing: Listing,
        units: UnitWords,
        alike: SoundAlikes,
        interpreter: Interpreter,
    ) -> None:
        self._tables = tables
        self._slot = slot
        self._listing = listing
        self._units = units
        self._wordings = alike.wordings
        self._interpret = interpreter.interpret
        self._beginnings = lru_cache(maxsize=64)(self._find_beginnings)

    def continuations(self, expect: Expect, said: tuple[str, ...]) -> Continuations:
        """How words that were said so far can go on, by the whole grammar of what is expected, and "please" behind it.

        This is the grammar as an automaton: a decoder keeps to sentences that can be understood by asking it after
        each word. A word may lead to an end that has no meaning ("fifty fifteen"); `interpret` tells.

        Args:
            expect: the frame.
            said: words in small letters, as in `vocabulary`.
        """
        found = self._within(expect, said)
        words, complete = set(found.words), found.complete
        if complete:
            words |= {ending.split()[0] for ending in self._tables.writing.said_after}
        for ending in (tuple(ending.split()) for ending in self._tables.writing.said_after):
            for spoken in range(1, len(ending) + 1):
                before = said[:-spoken]
                if said[-spoken:] == ending[:spoken] and before and self._within(expect, before).complete:
                    complete = complete or spoken == len(ending)
                    words |= set(ending[spoken : spoken + 1])
        return Continuations(frozenset(words), complete, found.figures)

    def _within(self, expect: Expect, said: tuple[str, ...]) -> Continuations:
        """How words can go on by the grammar alone."""
        words: set[str] = set()
        figures = False
        after, whole = self._beginnings(expect)
        words |= after.get(said, frozenset())
        complete = said in whole
        if isinstance(expect, NumberExpected | AnyExpected):
            parse = Parse(said, wanting=True)
            complete = bool(parse.whole(self._slot)) or complete
            words |= {word for word in parse.wanted if self._listing.is_said(word)}
            # Single figures are listed as digits: "8 3.3" goes on with one.
            figures = parse.wants_written or any(word.isdigit() for word in parse.wanted)
        return Continuations(frozenset(words), complete, figures)

    def _find_beginnings(
        self, expect: Expect
    ) -> tuple[Mapping[tuple[str, ...], frozenset[str]], frozenset[tuple[str, ...]]]:
        """By each beginning of a phrase the words that come next, and the phrases; a line has hundreds."""
        after: dict[tuple[str, ...], set[str]] = {}
        sentences = [tuple(phrase.split()) for phrase in self._listing.phrases(expect)]
        for sentence in sentences:
            for at, word in enumerate(sentence):
                after.setdefault(sentence[:at], set()).add(word)
        return {said: frozenset(words) for said, words in after.items()}, frozenset(sentences)

    def number_sentences(self, expect: NumberExpected, values: Iterator[Decimal]) -> Iterator[tuple[str, Decimal]]:
        """Every plain sentence for these numbers, with and without the unit, and the number that it means.

        Args:
            expect: gives the unit; with `digits_only`, only sentences digit by digit.
            values: numbers, for example the whole range that could be said.
        """
        units = (
            "",
            f" {self._units.say_unit(expect.unit)}",
            *(f" {form}" for form in self._units.forms_of(expect.unit)[2:4]),
        )
        for value in values:
            for way in self._wordings(value):
                for unit in units:
                    sentence = way + unit
                    if not isinstance(self._interpret(sentence, expect, heard=True), NoMatch):
                        yield sentence, value

    def sample_sentences(self, expect: Expect, seed: int, count: int) -> tuple[tuple[str, Meaning], ...]:
        """Sentences that may be said where `expect` is expected, each with what it means.

        The same seed gives the same sentences on every machine. Half of them are numbers where numbers may be
        said; some of those have two meanings (`Ambiguous`), none is refused.
        """
        choose = _chooser(seed)
        known = self._listing.phrases(expect)
        found: list[tuple[str, Meaning]] = []
        while len(found) < count:
            numbers = isinstance(expect, NumberExpected | AnyExpected) and choose(2) == 1
            sentence = self._number_sentence(expect, choose) if numbers else known[choose(len(known))]
            meaning = self._interpret(sentence, expect, heard=True)
            if sentence and not isinstance(meaning, NoMatch):
                found.append((sentence, meaning))
        return tuple(found)

    def _number_sentence(self, expect: Expect, choose: Callable[[int], int]) -> str:
        if not isinstance(expect, NumberExpected):
            words = walk(self._slot, choose)
            return " ".join(words) if words is not None and self._all_said(words) else ""
        words = walk(self._tables.numbers.number, choose)
        if words is None or not self._all_said(words):
            return ""
        units = ("", *self._units.forms_of(expect.unit))
        return f"{' '.join(words)} {units[choose(len(units))]}".strip()

    def _all_said(self, words: tuple[str, ...]) -> bool:
        return all(self._listing.is_said(word) for word in words)


def _chooser(seed: int) -> Callable[[int], int]:
    """Picks in a fixed but scattered order (splitmix64, Steele, Lea and Flood 2014; from memory)."""
    state = seed & _MASK

    def choose(ways: int) -> int:
        nonlocal state
        state = (state + 0x9E3779B97F4A7C15) & _MASK
        mixed = state
        mixed = ((mixed ^ (mixed >> 30)) * 0xBF58476D1CE4E5B9) & _MASK
        mixed = ((mixed ^ (mixed >> 27)) * 0x94D049BB133111EB) & _MASK
        return (mixed ^ (mixed >> 31)) % ways

    return choose
