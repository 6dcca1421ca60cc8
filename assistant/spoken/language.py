"""A language as guide, scoring and reports see it: one object for all that is said and understood.

Whoever needs words is handed a `Language`; only who puts an attempt together names one (`assistant.spoken.ENGLISH`).
"""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from decimal import Decimal
from typing import Protocol

from assistant.spoken.english.report_words import ReportWords
from assistant.spoken.english.sentences import Sentences
from assistant.spoken.expect import Expect
from assistant.spoken.meaning import Meaning

__all__ = ["Interpret", "Language", "ReadBack", "ReportWords", "Sentences", "Speech"]


class Interpret(Protocol):
    """The way from words to their meaning."""

    def __call__(self, words: str, expect: Expect, *, heard: bool = False) -> Meaning:
        """What the words mean where `expect` is expected; `heard` where a recogniser wrote them."""


class Speech(Protocol):
    """The way from a text that is shown to what a voice says."""

    def __call__(self, text: str, short_forms: Mapping[str, str] = ...) -> str:
        """Numbers, units and abbreviations in words; `short_forms` are an author's own, with their full form."""


class ReadBack(Protocol):
    """A number that was heard, said for a yes or a no."""

    def __call__(self, value: Decimal, unit: str) -> str:
        """The sentence; raises ValueError or QuantityError for what cannot be said."""


@dataclass(frozen=True, eq=False)
class Language:
    """One language.

    Attributes:
        code: its code, ISO 639-1.
        sentences: what the guide says.
        report: what reports and forms say.
        interpret: what words mean.
        speech: a text that is shown, as a voice says it.
        say_digits: a number digit by digit.
        read_back: a number with its unit, for a yes or a no.
        wants_digits: whether a number that was heard, with its unit, is asked for digit by digit.
        pair_to_offer: a number that was heard and the one other that it could be; None where there is not just one.
        likely_answers: what is likeliest said where a confirmation is asked for.
        instructor_words: further ways to say what only an instructor says, with the instructor's word.
    """

    code: str
    sentences: Sentences
    report: ReportWords
    interpret: Interpret
    speech: Speech
    say_digits: Callable[[Decimal], str]
    read_back: ReadBack
    wants_digits: Callable[[Decimal, str], bool]
    pair_to_offer: Callable[[Decimal], tuple[Decimal, Decimal] | None]
    likely_answers: tuple[str, ...]
    instructor_words: tuple[tuple[str, str], ...]
