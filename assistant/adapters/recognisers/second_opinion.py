"""Two recognisers that hear the same sound: a number or a yes counts where both hear it.

Never "whichever is surer": the first one leads. Where the second hears another number than it or none, the digits are
asked for, as they are where two have heard a number that the first alone would not stand for. Digits that were asked
for are taken only where both have heard them. A number of the second one alone is never taken.
"""

import threading
import time
from dataclasses import replace
from decimal import Decimal

from assistant.adapters.recognisers.positives import is_positive
from assistant.adapters.recognition import ANSWER_LIMIT_S, Guess, Recognition
from assistant.ports import Alternative, Hearing, Recogniser, Utterance
from assistant.spoken import Language
from assistant.spoken.expect import ConfirmExpected, Expect, NumberExpected
from assistant.spoken.meaning import Answer

LIMIT_S = 1.0
"""Longest wait for the second recogniser once the first has heard a number; later it has no opinion."""
_LOOK_S = 0.01


def combined(first: Hearing, second: Hearing, expect: Expect, language: Language) -> Hearing:
    """What two recognisers stand for together; what each has heard is among the alternatives.

    Args:
        first: of the one that leads.
        second: of the other one.
        expect: what the step expects.
        language: in which both hear.
    """
    both = replace(first, alternatives=_alternatives(first, second))
    if says_yes(first.words, expect, language):
        if says_yes(second.words, expect, language):
            return replace(both, doubtful=first.doubtful or second.doubtful)
        of_a_line = isinstance(expect, ConfirmExpected) and expect.asked is not None
        # A clear other answer of the second one is no doubt any more.
        return replace(both, doubtful=True) if of_a_line and not second.words else replace(both, words="")
    number = number_in(first.words, expect, language)
    other = None if second.doubtful else number_in(second.words, expect, language)
    digits_only = isinstance(expect, NumberExpected) and expect.digits_only
    if number is not None and number != other:
        # Digits are not asked for in yet another way: the learner says them again.
        return replace(both, words="") if digits_only else replace(both, doubtful=True)
    if not first.words and other is not None and not digits_only:
        likeliest = first.alternatives[0].words if first.alternatives else ""
        if number_in(likeliest, expect, language) == other:
            # Not clear enough to the first one by itself, but two have heard it: worth asking for its digits.
            return replace(both, words=likeliest, doubtful=True)
    return both


def says_yes(words: str, expect: Expect, language: Language) -> bool:
    """Whether the words are a positive here."""
    return is_positive(language.interpret(words, expect, heard=True), expect)


def number_in(words: str, expect: Expect, language: Language) -> tuple[Decimal, str | None] | None:
    """The number that the words mean, with its unit; None for none and for one of two."""
    meaning = language.interpret(words, expect, heard=True)
    if isinstance(meaning, Answer) and isinstance(meaning.value, Decimal):
        return meaning.value, meaning.unit
    return None


def _alternatives(first: Hearing, second: Hearing) -> tuple[Alternative, ...]:
    """The first one's wordings, then those that only the second one has."""
    known = {one.words for one in first.alternatives}
    return (*first.alternatives, *(one for one in second.alternatives if one.words not in known))


class SecondOpinion:
    """Two recognisers as one; see `assistant.ports.Recogniser`.

    The second one works in a thread of its own: while it fails or hangs, the first one is on its own.

    Args:
        first: leads.
        second: is asked about numbers and positives.
        language: in which both hear.
        limit_s: see `LIMIT_S`.
    """

    def __init__(self, first: Recogniser, second: Recogniser, language: Language, limit_s: float = LIMIT_S) -> None:
        self.name = f"{first.name} and {second.name}"
        # Both, and not one of the two together: so each can be compared with its files.
        self.model_digest = f"{first.model_digest} {second.model_digest}"
        self._first = first
        self._second = Recognition(second)
        self._language = language
        self._limit_s = limit_s
        self._latest: DoubleUtterance | None = None
        self._asked: tuple[Guess, float] | None = None

    def begin(self, expect: Expect) -> "DoubleUtterance":
        """Start an utterance with both."""
        utterance = DoubleUtterance(self, self._first.begin(expect), expect, self._language, self._limit_s)
        # One that hangs would only pile up sound.
        self._latest = None if self._hangs() else utterance
        if self._latest is not None:
            self._second.begin(expect)
        return utterance

    def tell_second(self, utterance: "DoubleUtterance", block: bytes) -> None:
        """Give the second one sound, unless another utterance has begun since: it hears one at a time."""
        if utterance is self._latest:
            self._second.feed(block)

    def ask_second(self, utterance: "DoubleUtterance") -> Guess | None:
        """What the second one will have heard; None where another utterance has begun since."""
        if utterance is not self._latest:
            return None
        guess = self._second.guess()
        self._asked = guess, time.monotonic()
        return guess

    def close(self) -> None:
        """Free both."""
        self._first.close()
        self._second.close()

    def _hangs(self) -> bool:
        if self._asked is None:
            return False
        guess, asked_at = self._asked
        return not guess.done.is_set() and time.monotonic() - asked_at > ANSWER_LIMIT_S


class DoubleUtterance:
    """One utterance, heard by both."""

    def __init__(
        self, pair: SecondOpinion, first: Utterance, expect: Expect, language: Language, limit_s: float
    ) -> None:
        self._pair = pair
        self._first = first
        self._expect = expect
        self._language = language
        self._limit_s = limit_s
        self._is_given_up = threading.Event()

    def feed(self, block: bytes) -> str | None:
        """Give both the sound; the first one's words so far."""
        self._pair.tell_second(self, block)
        return self._first.feed(block)

    def finish(self) -> Hearing:
        """What the first one has heard, with its number held back where the second one does not bear it out."""
        began = time.perf_counter()
        guess = self._pair.ask_second(self)  # both work at the same time
        hearing = self._first.finish()
        if guess is not None and (
            not hearing.words
            or number_in(hearing.words, self._expect, self._language) is not None
            or says_yes(hearing.words, self._expect, self._language)
        ):
            second = self._opinion(guess)
            if second is not None:
                hearing = combined(hearing, second, self._expect, self._language)
        return replace(hearing, compute_s=time.perf_counter() - began)

    def give_up(self) -> None:
        """See `assistant.ports.Utterance`."""
        self._is_given_up.set()
        self._first.give_up()

    def _opinion(self, guess: Guess) -> Hearing | None:
        """What the second one has heard, where it says so in time."""
        deadline = time.monotonic() + self._limit_s
        while not guess.done.wait(_LOOK_S):
            if self._is_given_up.is_set() or time.monotonic() > deadline:
                guess.drop()  # so that the next utterance finds it free
                return None
        return guess.hearing
