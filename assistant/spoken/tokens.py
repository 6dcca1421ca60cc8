"""Words as typed or as a recogniser writes them, cut into the pieces that the grammar reads.

Nothing is guessed here: a sign or a figure in a form that has no plain meaning becomes `UNKNOWN`, and the
grammar has no rule for that, so the whole utterance is refused.
"""

import re
from collections.abc import Iterable, Iterator
from functools import lru_cache

from assistant.spoken.tables import Writing

LONGEST = 400
"""Characters of one utterance; what is longer is refused before any other work is done on it."""

UNKNOWN = "[unk]"
"""A piece that has no meaning here; recognisers write it too."""

MINUS = "minus"

_PLAIN = str.maketrans(
    {
        "\u2018": "'",
        "\u2019": "'",
        "\u02bc": "'",
        "\u201c": '"',
        "\u201d": '"',
        "\u2010": "-",
        "\u2011": "-",
        "\u2012": "-",
        "\u2013": "-",
        "\u2014": " - ",
        "\u2212": "-",
        "\u2026": " ",
        "\u00a0": " ",
        "\u202f": " ",
        "\u2009": " ",
        "\u00bd": " 1/2 ",
        "\u00bc": " 1/4 ",
        "\u00be": " 3/4 ",
        # Both letters that look like a micro sign; only ever followed by g.
        "\u00b5": "mc",
        "\u03bc": "mc",
        "\t": " ",
        "\n": " ",
        "\r": " ",
    }
)

_THIN_GROUPS = re.compile(r"(?<![\d.,])(\d{1,3}(?:[\u2009\u202f\u00a0]\d{3})+)(?![\d,])", re.ASCII)
"""Thousands parted by a narrow space, as the SI style writes them; an ordinary space could part two numbers."""

_DIGIT_WORD = "(?:o|oh|zero|one|two|three|four|five|six|seven|eight|nine)"
_GLUED = re.compile(rf"(?i:(?<![a-z]){_DIGIT_WORD}\d|\d{_DIGIT_WORD}(?![a-z]))", re.ASCII)

_OPENING = "\"'(["
_CLOSING = "\"')].,;:!?"
_UNKNOWN_MARK = re.compile(r"\[(?:unk|noise)\]|<(?:unk|s|/s|sil|noise)>")


def clean_text(words: str) -> str:
    """The words on one line without doubled spaces; what cannot be printed stays out."""
    return " ".join("".join(c if c.isprintable() else " " for c in words).split())


def glued(words: str) -> bool:
    """Whether figures are run together with letters that are a digit in words: "1O0", "five5"; nobody says so."""
    return _GLUED.search(words) is not None


def printable(words: str) -> bool:
    """Whether the words hold nothing but what can be shown, and white space."""
    return words.isprintable() or all(c.isprintable() or c in " \t\r\n\u00a0\u202f\u2009" for c in words)


class Tokeniser:
    """Cuts utterances into pieces.

    Args:
        writing: how the language is written.
    """

    def __init__(self, writing: Writing) -> None:
        self._contractions = writing.contractions
        self._same_word = writing.same_word
        letter = f"[{writing.letters}]"
        inside = f"[{writing.letters}']"
        self._between_words = re.compile(
            rf"(?<={inside})[-.,;:!?]+(?={inside})|(?<=[0-9])-(?={letter})|(?<={letter})-(?=[0-9])"
        )
        self._piece = re.compile(
            rf"""
              (?P<fraction>[13]/[24](?![\d/.,]))
            | (?P<grouped>\d{{1,3}}(?:,\d{{3}})+(?:\.\d+)?(?![\d,.]))
            | (?P<list>\d(?:(?:,\d){{2,}}|(?:-\d){{2,}})(?![\d,.-]))
            | (?P<clock>\d{{1,2}}:\d\d(?![\d:,]|\.\d))
            | (?P<comma>\d+,\d+(?![\d,.]))
            | (?P<decimal>\d*\.\d+(?![\d,.]))
            | (?P<whole>\d+(?![\d,.:-]|/\d))
            | (?P<hyphened>\d+(?=-{letter}))
            | (?P<word>{letter}+(?:'{letter}+)*'?)
            | (?P<sign>[%/])
            """,
            re.VERBOSE | re.ASCII,
        )
        # The same few hundred words come again and again.
        self._pieces = lru_cache(maxsize=2048)(self._cut)

    def tokens_of(self, words: str) -> tuple[str, ...]:
        """The pieces of an utterance: small letters, figures as written, "%" and "/"; `UNKNOWN` for the rest.

        "83.3 mL/hr." gives ``83.3 ml / hr``; "twenty-five" gives ``twenty five``; "1,000" gives ``1000``;
        "83 .3" gives ``83.3``. A time ("14:30") and a decimal comma ("1,5") stay as written: no grammar reads the
        former, and of the latter it reads both meanings.
        """
        if not printable(words):
            return (UNKNOWN,)
        text = _THIN_GROUPS.sub(lambda m: re.sub(r"\D", "", m[1]), words)
        text = text.translate(_PLAIN).lower()
        text = _UNKNOWN_MARK.sub(" \x00 ", text)
        found: list[str] = []
        closed = True
        for chunk in text.split():
            pieces, ends_closed = self._pieces(chunk)
            joins = bool(not closed and pieces and found and found[-1].isdigit() and pieces[0].startswith("."))
            if joins:
                # A recogniser may write "83 .3".
                found[-1] += pieces[0]
            found.extend(pieces[1:] if joins else pieces)
            if pieces or joins:
                closed = ends_closed
        return tuple(found)

    def _cut(self, chunk: str) -> tuple[tuple[str, ...], bool]:
        """The pieces of what stands between two spaces, and whether it ends in a mark such as a comma."""
        if chunk == "\x00":
            return (UNKNOWN,), True
        core = chunk.lstrip(_OPENING)
        bare = core.rstrip(_CLOSING)
        closed = bare != core
        if not bare:
            # A lone mark says nothing; a lone point between figures must not join them.
            return (), True
        if bare in ("-", "--"):
            return (), True
        pieces: list[str] = []
        if re.match(r"-\.?\d", bare):
            pieces.append(MINUS)
            bare = bare[1:]
        at = 0
        while at < len(bare):
            between = self._between_words.match(bare, at)
            if between is not None:
                at = between.end()
                continue
            piece = self._piece.match(bare, at)
            if piece is None:
                return (UNKNOWN,), closed
            at = piece.end()
            text = piece.group()
            match piece.lastgroup:
                case "grouped":
                    pieces.append(text.replace(",", ""))
                case "list":
                    pieces.extend(re.findall(r"\d", text))
                case "word":
                    pieces.extend(self._word(text))
                case _:
                    pieces.append(text)
        return tuple(pieces), closed

    def _word(self, text: str) -> list[str]:
        """One word with contractions written out and apostrophes dropped."""
        if text in self._contractions:
            return self._contractions[text].split()
        bare = text.replace("'", "")
        if bare in self._contractions and "'" not in text:
            return self._contractions[bare].split()
        return self._same_word.get(bare, bare).split()


class Sentence:
    """What may stand around an answer and says nothing of it.

    Args:
        before: phrases that may stand before it, in any order and number: "it is", "the pump", "set to".
        behind: phrases one of which may stand behind it: "on the label".
    """

    def __init__(self, before: Iterable[str], behind: Iterable[str]) -> None:
        self._before = sorted((tuple(words.split()) for words in before), key=len, reverse=True)
        self._behind = tuple(tuple(words.split()) for words in behind)

    def inside(self, words: tuple[str, ...]) -> Iterator[tuple[str, ...]]:
        """The words without what stands before and behind, the fewest words first; never all of them."""
        starts = [0]
        while (length := self._length_before(words[starts[-1] :])) and starts[-1] + length < len(words):
            starts.append(starts[-1] + length)
        ends = (len(words), *(len(words) - len(said) for said in self._behind if words[-len(said) :] == said))
        for start in reversed(starts):
            for end in ends:
                if start < end and end - start < len(words):
                    yield words[start:end]

    def _length_before(self, words: tuple[str, ...]) -> int:
        return next((len(said) for said in self._before if words[: len(said)] == said), 0)
