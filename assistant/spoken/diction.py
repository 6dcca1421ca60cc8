"""How a sentence is to be said: where a voice pauses, what it says more slowly, and words by their sounds."""

import itertools
import re
from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType

from assistant.spoken.tables import Numbers

LONG = 30
"""Characters from which the beginning of a text is cut short, so that its first word is not long in coming."""

_SENTENCE = re.compile(r"(?<=[.!?])\s+")
_CLAUSE = re.compile(r"(?<=[,;:])\s+")
_WORD = re.compile(r"[^\W\d_]+")
_ROW = 2
_LEAD = 2


@dataclass(frozen=True)
class Stretch:
    """What is said in one breath, with the mark at which it ends.

    Attributes:
        words: what is said; digits and letters in a row are parted by commas, at which every voice pauses.
        is_number: it holds a number, and is said more slowly.
        is_digit: it is a digit of a row that is said one by one, and the row goes on.
        is_again: it begins with the digit that was said just before; of three alike, only the second one is.
    """

    words: str
    is_number: bool
    is_digit: bool = False
    is_again: bool = False

    def joined(self, following: "Stretch") -> "Stretch | None":
        """Both in one breath; None where a breath has to be taken between them."""
        if self.is_number is not following.is_number or self.is_digit or following.is_digit or following.is_again:
            return None
        return Stretch(f"{self.words} {following.words}", self.is_number)


class Diction:
    """How a language is said.

    Args:
        numbers: how its numbers are said.
        sounds: words whose sounds a voice may not know, in small letters, by the International Phonetic Alphabet.
        hissed: the same for digits that end in a hiss, where one is a breath of its own.
    """

    def __init__(
        self, numbers: Numbers, sounds: Mapping[str, str], hissed: Mapping[str, str] = MappingProxyType({})
    ) -> None:
        self.sounds = sounds
        self._hissed = hissed
        self._one = numbers.cardinal(1)
        said = (numbers.cardinal(number) for number in (*range(1, 101), 1_000, 1_000_000))
        self._number_words = frozenset(word for words in said for word in words.split()) - numbers.small_words
        self._digits = frozenset(numbers.digits)
        self._point = numbers.point

    def hissed(self, stretch: Stretch) -> str:
        """The sounds of a digit that is a breath of its own and ends in a hiss; empty for any other breath."""
        return self._hissed.get(_bare(stretch.words).lower(), "")

    def spaced(self, text: str) -> str:
        """The text with commas between digits, and between letters, that are said one by one: "one, two, five".

        A letter by itself would be read as a word: "A" as the article.
        """
        words = text.split(" ")
        parted = list(words)
        for at, (word, following) in enumerate(itertools.pairwise(words)):
            if self._is_digit_of_row(words, at) or (
                _is_letter(word) and (_is_letter(_bare(following)) or self._is_digit_of_row(words, at + 1))
            ):
                parted[at] = f"{word},"
        return " ".join(parted)

    def stretches(self, text: str) -> tuple[Stretch, ...]:
        """The text, `spaced`, breath by breath; joined by spaces they are the text again.

        A breath ends with its sentence, at a mark where a number begins or ends, and behind every digit of a row: in
        one breath, "five, five" is heard as one. The first breath is short.
        """
        found: list[Stretch] = []
        for sentence in filter(None, _SENTENCE.split(text)):
            breaths: list[Stretch] = []
            for clause in filter(None, _CLAUSE.split(sentence)):
                for breath in self._cut(clause, is_start=not found and not breaths):
                    is_long_start = not found and len(breaths) == 1 and len(breaths[0].words) >= LONG
                    joined = breaths[-1].joined(breath) if breaths and not is_long_start else None
                    breaths[-1:] = [joined] if joined else [*breaths[-1:], breath]
            found += breaths
        return tuple(found)

    def _cut(self, clause: str, *, is_start: bool) -> list[Stretch]:
        """A clause, cut behind every digit of a row, and where its first number begins.

        The latter at the start of a text, and before a row: what leads to a number ("I have") recurs, and is known
        already while the number is still being made.
        """
        words = clause.split(" ")
        rows = {at for at in range(len(words)) if self._is_digit_of_row(words, at)}
        is_number = self._holds_number(clause)
        lead = sum(1 for _ in itertools.takewhile(lambda word: not self._is_of_number(word), words))
        is_led = lead in rows or (is_start and is_number and len(clause) >= LONG)
        edges = {0, len(words), *(at + 1 for at in rows), *({lead} if is_led and lead >= _LEAD else ())}
        spaced = self.spaced(clause).split(" ")
        found: list[Stretch] = []
        for start, end in itertools.pairwise(sorted(edges)):
            holds = is_number and any(self._is_of_number(word) for word in words[start:end])
            is_doubled = start - 1 in rows and _bare(words[start]).lower() == words[start - 1].lower()
            is_again = is_doubled and not found[-1].is_again
            found.append(Stretch(" ".join(spaced[start:end]), holds, end - 1 in rows, is_again))
        return found

    def _is_digit_of_row(self, words: list[str], at: int) -> bool:
        """Whether this word is a digit that is said by itself, and its row goes on: with a digit, or with the point.

        Not so in "eighty three point three" and "zero point zero five": there, the digits belong to a number.
        """
        if at + 1 >= len(words) or words[at].lower() not in self._digits:
            return False
        said = [_bare(word).lower() for word in words]
        row = self._digits_before(said, at)
        if said[at + 1] == self._point:
            return row > 0 and self._is_by_itself(said, at - row)
        if said[at + 1] not in self._digits:
            return False
        before = at - row
        if before and said[before - 1] == self._point:
            whole = self._digits_before(said, before - 1)
            return whole >= _ROW and self._is_by_itself(said, before - 1 - whole)
        return self._is_by_itself(said, before)

    def _digits_before(self, said: list[str], end: int) -> int:
        return sum(1 for _ in itertools.takewhile(self._digits.__contains__, reversed(said[:end])))

    def _is_by_itself(self, said: list[str], start: int) -> bool:
        """Whether a row that begins there is none of a number's: "one hundred and five"."""
        return start == 0 or said[start - 1] not in self._number_words

    def _is_of_number(self, word: str) -> bool:
        return _bare(word).lower() in self._number_words | self._digits

    def _holds_number(self, words: str) -> bool:
        found = [word for word in _WORD.findall(words.lower()) if word in self._number_words or word in self._digits]
        return bool(found) and found != [self._one]  # "say it once more, one at a time" holds none


def _bare(word: str) -> str:
    return word.rstrip(".,;:!?")


def _is_letter(word: str) -> bool:
    return len(word) == 1 and word.isupper()
