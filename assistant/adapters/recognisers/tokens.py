"""Which of the model's tokens may be written for what a step expects."""

import re
from collections.abc import Iterable
from enum import Enum

import tokenizers

from assistant import spoken
from assistant.spoken.expect import AnyExpected, Expect, NumberExpected

_DIGITS = re.compile(r"\u0120?[0-9]{1,4}")  # the tokeniser writes a leading space as U+0120
_SENTENCE_SIGNS = (".", ",", "!", "?", "-", "'")
_WRITTEN_UNITS = ("mL", "ml", "mg", "mcg", "g", "h", "hr", "min", "/", "%")


class Form(Enum):
    """How numbers are written: 125, or one hundred and twenty-five."""

    DIGITS = "digits"
    WORDS = "words"


def forms(expect: Expect) -> tuple[Form, ...]:
    """The forms worth asking for: digits only where a number can come that may be joined."""
    match expect:
        case NumberExpected(digits_only=False) | AnyExpected():
            return (Form.DIGITS, Form.WORDS)
        case _:
            return (Form.WORDS,)


class TokenLimits:
    """The tokens of one model's vocabulary, and which of them an expectation allows."""

    def __init__(self, tokeniser: tokenizers.Tokenizer) -> None:
        self._tokeniser = tokeniser
        vocabulary = tokeniser.get_vocab()
        self.end: int | None = vocabulary.get("<|endoftext|>")
        self._all = frozenset(vocabulary.values())
        self._digits = frozenset(number for token, number in vocabulary.items() if _DIGITS.fullmatch(token))

    def suppressed(self, expect: Expect, form: Form) -> tuple[int, ...]:
        """Every token that may not be written."""
        allowed = {self.end, *self._of(_SENTENCE_SIGNS)}
        allowed |= self._of(_spellings(spoken.vocabulary(expect)))
        for phrase in spoken.phrases(expect):
            allowed |= self._of(_spellings((phrase, *phrase.split())))
        if form is Form.DIGITS:
            allowed |= self._digits | self._of(_spellings(_WRITTEN_UNITS))
        return tuple(sorted(self._all - allowed))

    def _of(self, texts: Iterable[str]) -> set[int]:
        return {token for text in texts for token in self._tokeniser.encode(text, add_special_tokens=False).ids}


def _spellings(words: Iterable[str]) -> Iterable[str]:
    """Each word as the model may write it: within a sentence, at its start, at the start of the text."""
    for word in words:
        for spelling in (word, word[:1].upper() + word[1:]):
            yield f" {spelling}"
            yield spelling
