"""A number or a name in a whole sentence: what may stand before and behind it, and what is left without that."""

from collections.abc import Iterable, Iterator

Tokens = tuple[str, ...]


class Sentence:
    """What may stand around an answer and says nothing of it.

    Args:
        before: phrases that may stand before it, in any order and number: "it is", "the pump", "set to".
        behind: phrases one of which may stand behind it: "on the label".
    """

    def __init__(self, before: Iterable[str], behind: Iterable[str]) -> None:
        self._before = sorted((tuple(words.split()) for words in before), key=len, reverse=True)
        self._behind = tuple(tuple(words.split()) for words in behind)

    def inside(self, words: Tokens) -> Iterator[Tokens]:
        """The words without what stands before and behind, the fewest words first; never all of them."""
        starts = [0]
        while (length := self._length_before(words[starts[-1] :])) and starts[-1] + length < len(words):
            starts.append(starts[-1] + length)
        ends = (len(words), *(len(words) - len(said) for said in self._behind if words[-len(said) :] == said))
        for start in reversed(starts):
            for end in ends:
                if start < end and end - start < len(words):
                    yield words[start:end]

    def _length_before(self, words: Tokens) -> int:
        return next((len(said) for said in self._before if words[: len(said)] == said), 0)
