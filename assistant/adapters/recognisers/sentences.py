"""What may be written next: the sentences of a step as an automaton over a model's tokens.

The sentences are those of `Language.continuations`. A place in a sentence is the words so far, and what
is written of the next one.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from decimal import Decimal
from functools import lru_cache

import numpy as np
import numpy.typing as npt
import tokenizers

from assistant.adapters.recognisers.forms import Form
from assistant.spoken import Language
from assistant.spoken.expect import AnyExpected, ConfirmExpected, Expect, NameExpected, NumberExpected

Said = tuple[str, ...]
"""Words in a row."""
Tokens = npt.NDArray[np.int64]

_FIGURES = frozenset("0123456789")
_MOST_WORDS = 24
_LONGEST_WHOLE = 5
_LONGEST_FRACTION = 3
_STANDS_FOR = {1: "7", 2: "25", 3: "125"}
"""Figures of the same length may be followed by the same words; one of each is looked up."""

_ANY_NUMBER = NumberExpected("mL")
"""How a sentence with a number goes on does not depend on unit or range; so all steps share what was found."""


@dataclass(frozen=True)
class Following:
    """What may follow some words.

    Attributes:
        words: the next words.
        short: short forms that may come next, with the words that they stand for.
        figures: a number in figures may come next.
        complete: the words are a sentence already.
    """

    words: frozenset[str]
    short: frozenset[tuple[str, Said]]
    figures: bool
    complete: bool


@dataclass(frozen=True)
class Place:
    """One way of reading what is written so far.

    Attributes:
        said: complete words.
        rest: tokens that are still to come of the words under way.
        then: the words that are said when those are written.
        figures: what is written of a number in figures; "" where none is under way.
    """

    said: Said
    rest: tuple[int, ...] = ()
    then: Said = ()
    figures: str = ""


Places = frozenset[Place]
"""Every way of reading what is written so far; none once the sentence is closed."""

START: Places = frozenset({Place(())})
CLOSED: Places = frozenset()


def _representative(word: str) -> str:
    if word.isdigit():
        return _STANDS_FOR.get(len(word), "1250")
    return "2.5" if word[:1].isdigit() else word


class Spelling:
    """How a model may write the words of a language.

    Attributes:
        point: the word for the decimal point.
        figures: words in figures, as names have a few ("glucose five percent").
        short: short forms by the first word for which they stand, each with all its words.
    """

    def __init__(self, language: Language, *, small: bool = False) -> None:
        self._small = small
        numbers, units, writing = language.tables.numbers, language.tables.units, language.tables.writing
        self.point = numbers.point
        self._per = units.per
        self._digits = frozenset(numbers.digits)
        self._tens = frozenset(language.say_number(Decimal(ten)) for ten in range(20, 100, 10))
        self._capitals = writing.capitals
        named = (*range(20), *range(20, 100, 10))
        self.figures = {language.say_number(Decimal(number)): str(number) for number in named} | {self.point: "."}
        self._others: dict[str, list[str]] = {}
        for other, word in writing.same_word.items():
            self._others.setdefault(word, []).append(other)
        self._abbreviations: dict[str, set[str]] = {self._per: {"/"}}
        for unit in units.units:
            written = {unit.name, *(form for form in unit.forms if not language.is_said(form) and " " not in form)}
            if unit.name == "%":
                written.add("%.")  # one token, where a sentence ends in a percentage
            for name in (unit.one, unit.many):
                self._abbreviations.setdefault(name, set()).update(written)
        self.short: dict[str, list[tuple[str, Said]]] = {}
        for other, full in writing.contractions.items():
            if "'" in other:
                self.short.setdefault(full.split()[0], []).append((other, tuple(full.split())))

    def last(self, said: Said) -> str:
        """What matters of the last word for how the next is written; "" before the first."""
        if not said:
            return ""
        last = said[-1]
        if last in self._tens or last in (self._per, self.point):
            return last
        return "7" if last[-1].isdigit() else "-"

    def of(self, before: str, word: str) -> Iterator[tuple[str, Said]]:
        """How a word may be written after another, and which words that makes."""
        then = (word,)
        for short in sorted(self._abbreviations.get(word, ())):
            # "125 mL/h", "125mL"
            if before in (self._per, "7") or short[0] in "/%":
                yield short, then
            yield f" {short}", then
        if before in self._tens and word in self._digits:
            yield f"-{word}", then
        for text in (word, *self._others.get(word, ())):
            yield f" {self._capitals.get(text, text)}", then
            if self._small and text in self._capitals:
                yield f" {text}", then
            if not before and text not in self._capitals:
                yield f" {text[:1].upper()}{text[1:]}", then


class Sentences:
    """The automaton for one model's tokens.

    Args:
        tokeniser: the model's.
        end: the token that ends a text.
        language: in which the sentences are.
        small: the model writes small letters, even where a capital is usual ("i").
    """

    def __init__(self, tokeniser: tokenizers.Tokenizer, end: int, language: Language, *, small: bool = False) -> None:
        self._tokeniser = tokeniser
        self.end = end
        self._language = language
        self._spelling = Spelling(language, small=small)
        self._digits: dict[int, str] = {}
        self._first_digits: dict[int, str] = {}
        for token, number in tokeniser.get_vocab().items():
            bare = token.removeprefix("\u0120")  # the tokeniser writes a leading space like this
            if bare.isascii() and bare.isdigit() and len(bare) <= 4:
                (self._digits if bare == token else self._first_digits)[number] = bare
        (self._point,) = self._ids(".")
        (self._comma,) = self._ids(",")
        self.closing = frozenset(token for sign in ".!?" for token in self._ids(sign))
        self._following = lru_cache(maxsize=1_000)(self._find_following)
        self._arcs = lru_cache(maxsize=200)(self._find_arcs)
        self.allowed = lru_cache(maxsize=1_000)(self._find_allowed)

    def following(self, said: Said, expect: Expect) -> Following:
        """What may follow the words where `expect` is expected."""
        frame = _ANY_NUMBER if isinstance(expect, NumberExpected) else expect
        return self._following(tuple(_representative(word) for word in said), frame)

    def _find_following(self, said: Said, expect: Expect) -> Following:
        ahead = self._language.continuations(expect, said)
        # What is written with figures is left to the figures; as words they would make two ways of one.
        words = frozenset(word for word in ahead.words if word[0] not in _FIGURES)
        if not isinstance(expect, NumberExpected | AnyExpected | ConfirmExpected):
            return Following(words, frozenset(), figures=False, complete=ahead.complete)
        short = {
            (form, full)
            for word in words & self._spelling.short.keys()
            for form, full in self._spelling.short[word]
            if len(full) == 1 or full[1] in self._language.continuations(expect, (*said, word)).words
        }
        return Following(words, frozenset(short), figures=ahead.figures, complete=ahead.complete)

    def _find_allowed(self, places: Places, expect: Expect, form: Form) -> Tokens:
        """Every token that may come next."""
        found: set[int] = {self.end} if not places else set()
        for place in places:
            if place.rest:
                found.add(place.rest[0])
                continue
            if place.figures:
                found.update(self._more_figures(place.figures))
            said = self._settled(place)
            if said is None or len(said) >= _MOST_WORDS:
                continue
            ahead = self.following(said, expect)
            found.update(
                self._arcs(self._spelling.last(said), ahead.words, ahead.short, isinstance(expect, NameExpected))
            )
            if ahead.figures and form is Form.DIGITS:
                found.update(self._first_digits)
            if said and ahead.words and not place.figures:
                found.add(self._comma)
            if said and ahead.complete:
                found.add(self.end)
                found.update(self.closing)
        return np.array(sorted(found), dtype=np.int64)

    def advance(self, places: Places, token: int, expect: Expect, form: Form) -> Places:
        """Where an allowed token leads."""
        found: set[Place] = set()
        for place in places:
            if place.rest:
                if place.rest[0] == token:
                    found.add(_after(place.said, place.rest[1:], place.then))
                continue
            if place.figures:
                more = self._more_figures(place.figures).get(token)
                if more is not None:
                    found.add(Place(place.said, figures=more))
            said = self._settled(place)
            if said is None or len(said) >= _MOST_WORDS:
                continue
            ahead = self.following(said, expect)
            for rest, then in self._arcs(
                self._spelling.last(said), ahead.words, ahead.short, isinstance(expect, NameExpected)
            ).get(token, ()):
                found.add(_after(said, rest, (*said, *then)))
            if ahead.figures and form is Form.DIGITS and token in self._first_digits:
                found.add(Place(said, figures=self._first_digits[token]))
            if token == self._comma and said and ahead.words and not place.figures:
                # "one, two, five": a mark that changes nothing.
                found.add(place)
        return frozenset(found)

    def _more_figures(self, text: str) -> dict[int, str]:
        """Each token that may go on with a number in figures, and the number then."""
        whole, point, fraction = text.partition(".")
        if text.endswith(","):
            return {token: text[:-1] + more for token, more in self._digits.items() if len(more) == 3}
        room = _LONGEST_FRACTION - len(fraction) if point else _LONGEST_WHOLE - len(whole)
        found = {token: text + more for token, more in self._digits.items() if len(more) <= room}
        if not point:
            found[self._point] = f"{text}."
            if len(text) <= 2:
                found[self._comma] = f"{text},"
        return found

    def _find_arcs(
        self, before: str, words: frozenset[str], short: frozenset[tuple[str, Said]], in_name: bool
    ) -> dict[int, list[tuple[tuple[int, ...], Said]]]:
        """By first token: the tokens after it, and the words that are said then."""
        arcs: dict[int, list[tuple[tuple[int, ...], Said]]] = {}
        spelling = self._spelling
        ways = [way for word in sorted(words) for way in spelling.of(before, word)]
        ways += [(f" {form}", full) for form, full in sorted(short)]
        if in_name:
            ways += [
                (text if spelling.point in (before, word) else f" {text}", (word,))
                for word, text in sorted(spelling.figures.items())
                if word in words
            ]
        ways += [(f" {form.capitalize()}", full) for form, full in sorted(short) if not before]
        for text, then in ways:
            token, *rest = self._ids(text)
            arcs.setdefault(token, []).append((tuple(rest), then))
        return arcs

    def _settled(self, place: Place) -> Said | None:
        """The words so far, where none is half written."""
        if place.rest:
            return None
        if not place.figures:
            return place.said
        if place.figures[-1] in ".,":
            return None
        whole, point, fraction = place.figures.partition(".")
        if point and len(whole) == 1 and place.said[-1:] and place.said[-1].isdigit():
            # "8 3.3" is how the model writes "eight three point three"; see `ranking.plain`.
            return (*place.said, whole, self._spelling.point, fraction)
        return (*place.said, place.figures)

    def _ids(self, text: str) -> tuple[int, ...]:
        return tuple(self._tokeniser.encode(text, add_special_tokens=False).ids)


def _after(said: Said, rest: tuple[int, ...], then: Said) -> Place:
    return Place(said, rest, then) if rest else Place(then)
