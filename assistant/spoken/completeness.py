"""How likely it is that somebody who falls silent has said all: what has been said decides how long to wait."""

from dataclasses import replace
from decimal import Decimal
from enum import StrEnum

from assistant.spoken.expect import AnyExpected, Expect, NumberExpected, TextExpected
from assistant.spoken.interpretation import Interpreter
from assistant.spoken.listing import Listing
from assistant.spoken.meaning import Answer, Kind, NoMatch
from assistant.spoken.tables import Numbers
from assistant.spoken.tokens import Tokeniser

_GOES_ON_AFTER = frozenset({"h", "L", "g", "kg"})
"""Units after which an amount often goes on: "two hours and thirty minutes", "a litre and a half"."""


class Completeness(StrEnum):
    """What words are, that came before a silence."""

    FINISHED = "finished"
    MAY_GO_ON = "may go on"  # whole, but also the beginning of something else that may be said
    DIGITS = "digits"  # a number said digit by digit, without its unit: another digit may follow each
    OPEN = "open"  # no answer yet, or a number whose unit has not been said


class Silence:
    """What a silence after some words of a language is.

    Args:
        numbers: its numbers.
        tokeniser, listing, interpreter: how it is written, its finite sentences, and what they mean.
    """

    def __init__(self, numbers: Numbers, tokeniser: Tokeniser, listing: Listing, interpreter: Interpreter) -> None:
        self._a_digit = numbers.digits[5]
        self._tokens_of = tokeniser.tokens_of
        self._phrases = listing.phrases
        self._interpret = interpreter.interpret

    def completeness(self, words: str, expect: Expect) -> Completeness:
        """Whether what has been heard so far is all that will come.

        A number is never finished before its unit: "one hundred" may go on with "twenty five", "eighty three" with
        "point three". With the unit that is expected it is.

        Args:
            words: as a recogniser wrote them, up to the silence.
            expect: the frame.
        """
        if isinstance(expect, NumberExpected) and self._are_digits(words, expect):
            return Completeness.DIGITS
        meaning = self._interpret(words, expect, heard=True)
        if not isinstance(meaning, Answer) or meaning.kind is Kind.TEXT:
            return Completeness.OPEN
        if meaning.kind is Kind.NUMBER:
            whole = meaning.unit_said and not meaning.corrected and meaning.unit not in _GOES_ON_AFTER
            # "one hour thirty" has a unit, but may go on as "one hour thirty five".
            whole = whole and not self._takes_a_digit(words, expect)
            if isinstance(expect, NumberExpected):
                whole = whole and meaning.unit == expect.unit
            elif isinstance(expect, AnyExpected):
                whole = whole and "/" in (meaning.unit or "")
            return Completeness.FINISHED if whole else Completeness.OPEN
        if isinstance(expect, TextExpected):
            return Completeness.MAY_GO_ON  # a reason may begin with the words of a command
        return Completeness.MAY_GO_ON if self._is_a_beginning(words, expect, meaning) else Completeness.FINISHED

    def _are_digits(self, words: str, expect: NumberExpected) -> bool:
        """Whether the words are digits said one by one, without a unit, that another one can follow."""
        digits = replace(expect, digits_only=True, lowest=Decimal(0))
        return bool(words) and self._takes_a_digit(words, digits)

    def _takes_a_digit(self, words: str, expect: Expect) -> bool:
        """Whether the words go on with a digit: "one hour thirty" and "one hour thirty five"."""
        return not isinstance(self._interpret(f"{words} {self._a_digit}", expect, heard=True), NoMatch)

    def _is_a_beginning(self, words: str, expect: Expect, meaning: Answer) -> bool:
        """Whether something with another meaning begins with these words: "correct" and "correct that"."""
        said = self._tokens_of(words)
        return any(
            sentence[: len(said)] == said and len(sentence) > len(said) and self._interpret(phrase, expect) != meaning
            for phrase in self._phrases(expect)
            if (sentence := tuple(phrase.split()))
        )
