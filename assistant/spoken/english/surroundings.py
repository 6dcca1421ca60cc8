"""What stands around a word of a statement, in English: where it leads, and which thing of the line it belongs to."""

from assistant.spoken.english.bench_words import ARTICLES, DETERMINERS, NOUNS, PREPOSITIONS
from assistant.spoken.english.known import Known
from assistant.spoken.statement import Tokens

LINKS = frozenset(
    {"is", "are", "has", "have", "been", "all", "now", "still", "already", "just", "about", "fully", "nicely"}
)
"""What may stand between a thing and what is said of it."""
_ENDS_OF_ALL = frozenset(
    {"end", "ends", "side", "mark", "top", "bottom", "level", "middle", "tip", "place", "position", "time", "hand"}
    | {"line"}
)
"""Ends of a thing, by which no other thing is named."""
_ENDS_OPEN = frozenset({"on", "in", "over"})
_ENDS_OF_PLACES = frozenset({"side", "end", "top", "now"})


class Surroundings:
    """One statement, and a place in it.

    Attributes:
        tokens: its words.
        known: what is known of the line.
        line: the line.
        at: the place.
    """

    def __init__(self, tokens: Tokens, known: Known) -> None:
        self.tokens = tokens
        self.known = known
        self.line = known.line
        self.at = 0

    def after(self, steps: int = 1) -> str:
        """The word that many places on; empty beyond the end."""
        return self.tokens[self.at + steps] if self.at + steps < len(self.tokens) else ""

    def before(self) -> str:
        """The word before; empty at the beginning."""
        return self.tokens[self.at - 1] if self.at else ""

    def leads_elsewhere(self, at: int) -> bool:
        """Whether the particle there leads to a place that the line does not name: "put gloves on | the patient"."""
        rest = [word for word in self.tokens[at + 1 :] if word not in ARTICLES]
        beyond = len(self.tokens) > at + 1 and self.tokens[at + 1] in ARTICLES and bool(rest)
        return beyond and rest[0] in NOUNS and rest[0] not in {*self.line.words, "hand", "hands"}

    def ends_elsewhere(self, at: int) -> bool:
        """Whether what follows "to" there is another end than the line names: "connected it to the bag"."""
        rest = [word for word in self.tokens[at + 1 :] if word not in ARTICLES]
        return bool(rest) and rest[0] in NOUNS - _ENDS_OF_ALL and not self.is_thing(rest[0])

    def leads_off(self) -> bool:
        """Whether it leads off or out of what the line itself names: "off the hub", "out of the pump"."""
        rest = [word for word in self.tokens[self.at : self.at + 5] if word not in ARTICLES]
        line = [word for word in self.line.words if word not in ARTICLES]
        length = 3 if rest[1:2] == ["of"] else 2
        told = [word.removesuffix("s") for word in rest[:length]]
        plain = [word.removesuffix("s") for word in line]
        if rest[0] == "away" and rest[1:2] == ["from"]:
            return self._leaves()
        return rest[0] in ("off", "out") and any(
            plain[at] == rest[0] and told[-1] in plain[at + 1 : at + 5] for at in range(len(plain))
        )

    def _leaves(self) -> bool:
        """Whether "away from" leads from what the line wants a thing off: "away from the lock"."""
        named = next((word for word in self.tokens[self.at + 2 : self.at + 5] if word not in ARTICLES), "")
        line = [word for word in self.line.words if word not in ARTICLES]
        return any(word in ("off", "from") and named in line[at + 1 : at + 4] for at, word in enumerate(line))

    def is_thing(self, word: str) -> bool:
        """Whether a word names a thing that the line names."""
        singular = word.removesuffix("s")
        return bool({word, singular} & NOUNS and {word, singular} & self.known.things)

    def is_own(self, at: int) -> bool:
        """Whether the thing named there is one that is to be done something to."""
        things = [word for word in self.tokens[at:] if word not in ARTICLES]
        return bool(things) and bool({things[0], things[0].removesuffix("s")} & self.known.own)

    def is_another_one(self, word: str, singular: str) -> bool:
        """Whether it tells one thing from others by a place that the line does not name: "the one at the bag"."""
        words = [w for w in self.tokens[max(self.at - 4, 0) : self.at] if w not in ARTICLES]
        return words[-2:-1] == ["one"] and words[-1] in PREPOSITIONS and not {word, singular} & set(self.line.words)

    def is_elsewhere(self, word: str, singular: str) -> bool:
        """Whether it names another place than the one by which the line tells a thing from others of its kind."""
        before = [other for other in self.tokens[: self.at] if other not in ARTICLES]
        near = before[-1:] and before[-1] in ("by", "near", "above", "below", "under", "beside", "next")
        return bool(near) and "nearest" in self.line.words and not {word, singular} & self.known.named

    def is_place_before(self) -> bool:
        """Whether the noun before only says where: "taped the line to the arm, secure"."""
        before = [word for word in self.tokens[: self.at] if word not in LINKS]
        at = len(before) - 1
        while at >= 0 and (before[at] in DETERMINERS or before[at] in NOUNS):
            at -= 1
        return at >= 0 and (before[at] in PREPOSITIONS or before[at] in self.known.doing or at < len(before) - 2)

    def is_place(self) -> bool:
        """Whether the noun here only says where or by what: "on the drip stand"."""
        before = self.at - 1
        while before >= 0 and (self.tokens[before] in DETERMINERS or self.tokens[before] in NOUNS):
            before -= 1
        return before >= 0 and self.tokens[before] in PREPOSITIONS

    def leads_on(self, at: int, end: int) -> bool:
        """Whether a phrase goes on to a thing that is not the line's: "cover is on | the trolley"."""
        last, rest = self.tokens[end - 1], self.tokens[end : end + 3]
        if last in _ENDS_OPEN and rest[:1] and rest[0] in ARTICLES:
            named = next((word for word in rest if word not in ARTICLES), "")
            return named.removesuffix("s") in NOUNS and not self.is_thing(named)
        compound = rest[:1] and self.tokens[at] in ("in", "on") and rest[0] in NOUNS
        return bool(compound) and not self.is_thing(rest[0]) and rest[0] not in _ENDS_OF_PLACES
