"""How a sentence is to be said: where a voice pauses, what it says more slowly, and words by their sounds."""

import itertools
import re
from collections.abc import Mapping
from dataclasses import dataclass

from assistant.spoken.tables import Numbers

_PAUSE = re.compile(r"(?<=[.,;:!?])\s+")
_WORD = re.compile(r"[^\W\d_]+")


@dataclass(frozen=True)
class Stretch:
    """A part of a sentence, with the mark at which it ends.

    Attributes:
        words: what is said; digits and letters in a row are parted by commas, at which every voice pauses.
        is_number: it holds a number, and is said more slowly.
    """

    words: str
    is_number: bool


class Diction:
    """How a language is said.

    Args:
        numbers: how its numbers are said.
        sounds: words whose sounds a voice may not know, in small letters, by the International Phonetic Alphabet.
    """

    def __init__(self, numbers: Numbers, sounds: Mapping[str, str]) -> None:
        self.sounds = sounds
        self._one = numbers.cardinal(1)
        said = (numbers.cardinal(number) for number in (*range(1, 101), 1_000, 1_000_000))
        self._number_words = frozenset(word for words in said for word in words.split()) - numbers.small_words
        self._digits = frozenset(numbers.digits)
        self._point = numbers.point

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

    def _is_digit_of_row(self, words: list[str], at: int) -> bool:
        """Whether this word is a digit that is said by itself, and so is the next one; not behind a point."""
        if at + 1 >= len(words) or not {words[at].lower(), _bare(words[at + 1]).lower()} <= self._digits:
            return False
        before = itertools.dropwhile(self._digits.__contains__, (word.lower() for word in reversed(words[:at])))
        first = next(before, "")
        return first != self._point and first not in self._number_words

    def stretches(self, text: str) -> tuple[Stretch, ...]:
        """The text, `spaced`, in parts that each hold a number or none; they meet where the text itself pauses.

        Two of the same digit are parts of their own: in one breath, "five, five" is heard as one.
        """
        parts: list[Stretch] = []
        for words in filter(None, _PAUSE.split(text)):
            is_number = self._holds_number(words)
            first, *doubled = _between_doubles(self.spaced(words))
            if parts and parts[-1].is_number is is_number:
                parts[-1] = Stretch(f"{parts[-1].words} {first}", is_number)
            else:
                parts.append(Stretch(first, is_number))
            parts += (Stretch(said, is_number) for said in doubled)
        return tuple(parts)

    def _holds_number(self, words: str) -> bool:
        found = [word for word in _WORD.findall(words.lower()) if word in self._number_words or word in self._digits]
        return bool(found) and found != [self._one]  # "say it once more, one at a time" holds none


def _bare(word: str) -> str:
    return word.rstrip(".,;:!?")


def _between_doubles(spaced: str) -> list[str]:
    """A text cut between two of the same word with nothing but a comma between them."""
    words = spaced.split(" ")
    ends = [
        at
        for at, (word, following) in enumerate(itertools.pairwise(words), 1)
        if word.endswith(",") and word[:-1].lower() == _bare(following).lower()
    ]
    return [" ".join(words[start:end]) for start, end in itertools.pairwise((0, *ends, len(words)))]


def _is_letter(word: str) -> bool:
    return len(word) == 1 and word.isupper()
