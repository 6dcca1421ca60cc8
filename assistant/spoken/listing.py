"""What may be said: every word and every finite sentence, for recognisers.

Nothing here knows the right answer: the number words are those of the whole range.
"""

from functools import lru_cache

from assistant.errors import QuantityError
from assistant.spoken.aloud import Aloud
from assistant.spoken.expect import (
    AnyExpected,
    ChoiceExpected,
    ConfirmExpected,
    Expect,
    NameExpected,
    NumberExpected,
    TextExpected,
)
from assistant.spoken.grammar import Rule, words_of
from assistant.spoken.names import NameWords
from assistant.spoken.statement import Asked, Sense, Want
from assistant.spoken.tables import Tables
from assistant.spoken.units import UnitWords


class Listing:
    """What may be said in a language.

    Args:
        tables: the language.
        slot: the grammar of an utterance where a number is expected.
        names, units, aloud: its names, units, and what is spoken for what is written.

    Attributes:
        phrases: every finite sentence that may be said: commands, confirmations, names. Numbers are not among them.
        vocabulary: every single word that may be said: of the phrases, of numbers and of units, where they are
            expected.
    """

    def __init__(self, tables: Tables, slot: Rule, names: NameWords, units: UnitWords, aloud: Aloud) -> None:
        self._tables = tables
        self._slot = slot
        self._names = names
        self._units = units
        self._speech = aloud.speech
        self._opposed = tables.statements.opposed if tables.statements else lambda _saying: ()
        self._sayings = tables.statements.sayings if tables.statements else lambda _asked: ()
        self._written_only = tables.numbers.written_only | tables.units.abbreviated
        self.phrases = lru_cache(maxsize=64)(self._phrases)
        self.vocabulary = lru_cache(maxsize=64)(self._vocabulary)

    def is_said(self, word: str) -> bool:
        """Whether a word of the grammar is spoken, and not only written ("hrs", "o", "to" for two)."""
        if not word.isalpha() or word in self._written_only:
            return False
        return len(word) > 1 or word in self._tables.writing.one_letter_words

    def _phrases(self, expect: Expect) -> tuple[str, ...]:
        table = self._tables.phrases
        said = [phrase for known in table.commands.values() for phrase in known]
        if isinstance(expect, NameExpected) and expect.alone:
            said = []
        confirmations = (*table.yes, *table.no, *table.done, *table.acknowledged)
        match expect:
            case ConfirmExpected(asked=Asked() as asked):
                said += [*confirmations, *(saying for saying, _sense in self._sayings(asked))]
            case AnyExpected():
                # No line is known; what is easily misheard as a yes or a done is said all the same.
                near = self._sayings(Asked("", Want.DONE))
                said += [*confirmations, *(saying for saying, sense in near if sense is not Sense.GOOD)]
            case ConfirmExpected() | NumberExpected():
                # Where a number is expected they are no answers, but they are said, and must be heard as what they are.
                said += confirmations
            case NameExpected(names=expected):
                known = self._names.spellings(expected) if expect.alone else self._names.forms(expected)
                said += [self._speech(name).lower().replace("'", "") for name in known]
            case ChoiceExpected():
                known_ways = [self._speech(saying).lower() for saying, _choice in expect.sayings()]
                opposed = (other for way in known_ways for other in self._opposed(way) if other not in known_ways)
                said += [*confirmations, *known_ways, *opposed]
            case TextExpected():
                pass
        return tuple(dict.fromkeys(form for phrase in said for form in self._forms(phrase)))

    def _vocabulary(self, expect: Expect) -> tuple[str, ...]:
        sentences = (*self.phrases(expect), *self._tables.writing.said_after)
        words = [word for sentence in sentences for word in sentence.split()]
        if isinstance(expect, NumberExpected | AnyExpected):
            words += [word for word in words_of(self._slot) if self.is_said(word)]
        if isinstance(expect, NumberExpected):
            try:
                words += [word for form in self._units.forms_of(expect.unit) for word in form.split()]
            except QuantityError:
                words += expect.unit.split()
        return tuple(dict.fromkeys(words))

    def _forms(self, phrase: str) -> tuple[str, ...]:
        """A phrase as written out and in its short form."""
        short = phrase
        for long_form, short_form in self._tables.writing.short_forms.items():
            padded = f" {short} ".replace(f" {long_form} ", f" {short_form} ")
            short = padded.strip()
        return (phrase,) if short == phrase else (phrase, short)
