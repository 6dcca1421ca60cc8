"""Sentences that the grammar allows, for tests and for recognisers."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from decimal import Decimal

from assistant.spoken import quantities
from assistant.spoken.alike import wordings
from assistant.spoken.english.numbers import NUMBER
from assistant.spoken.english.writing import SAID_AFTER
from assistant.spoken.expect import AnyExpected, Expect, NumberExpected
from assistant.spoken.grammar import Parse, walk
from assistant.spoken.interpretation import interpret
from assistant.spoken.listing import is_said, phrases
from assistant.spoken.meaning import Meaning, NoMatch
from assistant.spoken.units import forms_of, say_unit

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


def continuations(expect: Expect, said: tuple[str, ...]) -> Continuations:
    """How words that were said so far can go on, by the whole grammar of what is expected, and "please" behind it.

    This is the grammar as an automaton: a decoder keeps to sentences that can be understood by asking it after
    each word. A word may lead to an end that has no meaning ("fifty fifteen"); `interpret` tells.

    Args:
        expect: the frame.
        said: words in small letters, as in `vocabulary`.
    """
    found = _within(expect, said)
    words, complete = set(found.words), found.complete
    if complete:
        words |= {ending.split()[0] for ending in SAID_AFTER}
    for ending in (tuple(ending.split()) for ending in SAID_AFTER):
        for spoken in range(1, len(ending) + 1):
            before = said[:-spoken]
            if said[-spoken:] == ending[:spoken] and before and _within(expect, before).complete:
                complete = complete or spoken == len(ending)
                words |= set(ending[spoken : spoken + 1])
    return Continuations(frozenset(words), complete, found.figures)


def _within(expect: Expect, said: tuple[str, ...]) -> Continuations:
    """How words can go on by the grammar alone."""
    words: set[str] = set()
    complete = figures = False
    for phrase in phrases(expect):
        sentence = tuple(phrase.split())
        if sentence[: len(said)] == said:
            if len(sentence) == len(said):
                complete = True
            else:
                words.add(sentence[len(said)])
    if isinstance(expect, NumberExpected | AnyExpected):
        parse = Parse(said, wanting=True)
        complete = bool(parse.whole(quantities.SLOT)) or complete
        words |= {word for word in parse.wanted if is_said(word)}
        # Single figures are listed as digits: "8 3.3" goes on with one.
        figures = parse.wants_written or any(word.isdigit() for word in parse.wanted)
    return Continuations(frozenset(words), complete, figures)


def number_sentences(expect: NumberExpected, values: Iterator[Decimal]) -> Iterator[tuple[str, Decimal]]:
    """Every plain sentence for these numbers, with and without the unit, and the number that it means.

    Args:
        expect: gives the unit; with `digits_only`, only sentences digit by digit.
        values: numbers, for example the whole range that could be said.
    """
    units = ("", f" {say_unit(expect.unit)}", *(f" {form}" for form in forms_of(expect.unit)[2:4]))
    for value in values:
        for way in wordings(value):
            for unit in units:
                sentence = way + unit
                if not isinstance(interpret(sentence, expect, heard=True), NoMatch):
                    yield sentence, value


def sample_sentences(expect: Expect, seed: int, count: int) -> tuple[tuple[str, Meaning], ...]:
    """Sentences that may be said where `expect` is expected, each with what it means.

    The same seed gives the same sentences on every machine. Half of them are numbers where numbers may be
    said; some of those have two meanings (`Ambiguous`), none is refused.
    """
    choose = _chooser(seed)
    known = phrases(expect)
    found: list[tuple[str, Meaning]] = []
    while len(found) < count:
        numbers = isinstance(expect, NumberExpected | AnyExpected) and choose(2) == 1
        sentence = _number_sentence(expect, choose) if numbers else known[choose(len(known))]
        meaning = interpret(sentence, expect, heard=True)
        if sentence and not isinstance(meaning, NoMatch):
            found.append((sentence, meaning))
    return tuple(found)


def _number_sentence(expect: Expect, choose: Callable[[int], int]) -> str:
    if not isinstance(expect, NumberExpected):
        words = walk(quantities.SLOT, choose)
        return " ".join(words) if words is not None and _all_said(words) else ""
    words = walk(NUMBER, choose)
    if words is None or not _all_said(words):
        return ""
    units = ("", *forms_of(expect.unit))
    return f"{' '.join(words)} {units[choose(len(units))]}".strip()


def _all_said(words: tuple[str, ...]) -> bool:
    return all(is_said(word) for word in words)


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
