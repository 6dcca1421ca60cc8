"""Names of fluids and drugs in words: exact, however their numbers are said or written."""

from functools import cached_property, lru_cache

from assistant.spoken.grammar import Parse, Rule
from assistant.spoken.said import Said
from assistant.spoken.tables import Names
from assistant.spoken.tokens import Tokeniser


class NameWords:
    """The names of a language.

    Args:
        names: their table.
        number: the grammar of a number.
        tokeniser: cuts a name that is written.
    """

    def __init__(self, names: Names, number: Rule, tokeniser: Tokeniser) -> None:
        self._names = names
        self._number = number
        self._one_word = [(tuple(run.split()), word) for run, word in names.one_word.items()]
        self._key = lru_cache(maxsize=512)(lambda name: self._key_of(tokeniser.tokens_of(name)))

    @cached_property
    def _known(self) -> dict[str, str]:
        """Canonical name by the key of each form; worked out once a name is wanted, for it takes a while."""
        return {self._key(form): forms[0] for forms in self._names.known for form in forms}

    def find(self, tokens: tuple[str, ...], expected: tuple[str, ...]) -> str | None:
        """The name that these words are: as the order spells it where it is expected, else as the table does."""
        key = self._key_of(tokens)
        if not key:
            return None
        canonical = self._known.get(key)
        for name in expected:
            if self._key(name) == key or (canonical is not None and self._known.get(self._key(name)) == canonical):
                return name
        return canonical

    def spellings(self, expected: tuple[str, ...]) -> tuple[str, ...]:
        """Every way in which one of these names may be said."""
        wanted = {self._known.get(self._key(name), name) for name in expected}
        said = {form for forms in self._names.known if forms[0] in wanted for form in forms}
        return tuple(sorted({*expected, *said}, key=str.casefold))

    def forms(self, expected: tuple[str, ...]) -> tuple[str, ...]:
        """Every name that may be heard, written: those expected and the whole table, in an order that tells nothing."""
        known = (form for forms in self._names.known for form in forms)
        return tuple(sorted({*expected, *known}, key=str.casefold))

    def _key_of(self, tokens: tuple[str, ...]) -> str:
        """A name in the one form in which names are compared: numbers in figures, "%" as a word."""
        parse = Parse(tokens)
        words: list[str] = []
        at = 0
        while at < len(tokens):
            spans: dict[int, set[str]] = {}
            for end, said in parse.at(self._number, at):
                if isinstance(said, Said):
                    spans.setdefault(end, set()).add(f"{said.value:f}")
            longest = max(spans, default=at)
            if longest > at and len(spans[longest]) == 1 and tokens[at] not in self._names.no_numbers:
                words.append(spans[longest].pop())
                at = longest
                continue
            word, length = tokens[at], 1
            for run, one in self._one_word:
                if tokens[at : at + len(run)] == run:
                    word, length = one, len(run)
            if word not in self._names.left_out:
                words.append(word)
            at += length
        return " ".join(words)
