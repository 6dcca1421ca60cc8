"""The gist of a statement, in English: what its words say of what a line asks for, whatever their order.

Nothing is spotted among other words: every word has to be known, as something that the line asks about, as a denial,
or as one that changes nothing. A word that may turn the meaning round (of doubt, intention, exception, of another
thing) ends the reading, and so does a word that is not known.
"""

import re
from dataclasses import replace
from itertools import pairwise

from assistant.spoken.english.bench_words import (
    ARTICLES,
    ASKED_OF,
    ASKING_ENDS,
    AUXILIARIES,
    CLAMPED_AT_THE_VEIN,
    DENIALS,
    DENIALS_ALONE,
    DETERMINERS,
    FLAWLESS,
    LOOKED,
    NEUTRAL,
    NEUTRAL_PHRASES,
    NOUNS,
    OTHER_PLACES,
    OTHERS,
    PARTICLES,
    PREPOSITIONS,
    PRONOUNS,
    SIDES,
    SMALL_WORDS,
    SUBJECTS,
    TOLD_APART,
    TURNING,
    TURNS_ONLY_GOOD,
    UNFINISHED_ENDS,
    UNTOUCHED,
)
from assistant.spoken.english.claims import TAKEN_UP, Says, every_of, phrases_at
from assistant.spoken.english.deeds import ALSO_CALLED, NUMBERS
from assistant.spoken.english.lines import Line, read_line
from assistant.spoken.english.troubles import trouble_of
from assistant.spoken.statement import Asked, Sense, Tokens, Want

_ALL = frozenset({"every", "all", "each", "both"})
_SOME = frozenset({"one", "two", "some", "few", "couple", "half", "most"})
_CONDITIONS = frozenset({"until", "till", "when", "while", "before", "after", "if", "unless", "once"})
_PUT_OFF = re.compile(
    r" in (?:a|an|one|two|another|just a|half a) (?:bit|while|tick|minutes?|moments?|seconds?|secs?|mins?|hours?|few) "
    r"| (?:one|another) (?:moment|second|minute|sec|min) | going to "
)
_LINKS = frozenset(
    {"is", "are", "has", "have", "been", "all", "now", "still", "already", "just", "about", "fully", "nicely"}
)
_UNHARMED = frozenset({"fine", "good", "okay", "sterile", "clean", "untouched"})
_A_BIT = frozenset({("a", "bit"), ("a", "little"), ("little", "bit")})
_PARTICLE_WITHIN = 7
"""How many words later a particle may follow its verb: "rolled the clamp all the way down"."""


def gist(tokens: Tokens, asked: Asked) -> Sense | None:
    """What the words say of all that is asked: good, bad, a part of it (acknowledged), or nothing (None)."""
    line = read_line(asked)
    reading = _Reading(_written_out(tokens), line, phrases_at(asked))
    if not reading.read():
        return None
    so = frozenset(at for says in reading.said if says.so for at in says.about)
    not_so = frozenset(at for says in reading.said if not says.so for at in says.about)
    if not so | not_so or (so & not_so and not reading.turned):
        return None
    every = every_of(line)
    if line.either:
        sense = Sense.GOOD if so else Sense.BAD if not_so == every else Sense.ACKNOWLEDGED
    else:
        sense = Sense.BAD if not_so else Sense.GOOD if so >= every else Sense.ACKNOWLEDGED
    if sense is Sense.GOOD and reading.led_by_no and not line.absent:
        return None
    if sense is Sense.GOOD and line.want is not Want.ANSWER and trouble_of(reading.beside()) is not None:
        return None
    if sense is Sense.GOOD and (reading.turned or _of_a_part(tokens, line)):
        return None if reading.turned else Sense.ACKNOWLEDGED
    return sense


def asks_at_its_end(tokens: Tokens) -> bool:
    """Whether an end makes a question of a statement: "it's closed, right"."""
    return any(tokens[-len(end) :] == end for end in ASKING_ENDS if len(end) < len(tokens))


def is_put_off(tokens: Tokens) -> bool:
    """Whether words say that it will be so: "in a minute", "going to", or "until it is full" at their beginning."""
    text = f" {' '.join(tokens)} "
    return tokens[0] in _CONDITIONS or _PUT_OFF.search(text) is not None


def _written_out(tokens: Tokens) -> Tokens:
    """Without what only leads to what is seen: "I can see a drop"."""
    kept = [
        word
        for at, word in enumerate(tokens)
        if not (word == "can" and tokens[at + 1 : at + 2] in (("see",), ("feel",), ("hear",), ("reach",), ("move",)))
    ]
    return tuple(kept)


_NEUTRAL_BY_FIRST = {
    first: tuple(words for words in NEUTRAL_PHRASES if words[0] == first)
    for first in {words[0] for words in NEUTRAL_PHRASES}
}
"""The same by their first word: there are hundreds, and each word of an answer is looked at."""


class _Reading:
    """One statement, read word by word.

    Attributes:
        said: what its phrases say, in their order.
        turned: a word was there with which nothing is taken for good ("but").
        led_by_no: it began with a no of its own.
    """

    def __init__(self, tokens: Tokens, line: Line, table: dict[Tokens, Says]) -> None:
        self._tokens = tokens
        self._line = line
        self._table = table
        self._longest = max(map(len, table), default=1)
        named = (*line.things, *(thing for deed in line.deeds for thing in deed.things))
        self._own = {thing for deed in line.deeds for thing in deed.things}
        also = (other for word in line.words for other in ALSO_CALLED.get(word, ()))
        self._things = {word for thing in (*named, *also, *line.words) for word in thing.split()}
        self._things |= {word[:-1] for word in self._things if word[-1:] == "s" and word[:-1] in NOUNS}
        if self._things & {"clamp", "clamps", "unclamp", "clip"}:
            self._things |= {"clamp", "clip", "slide"}
            if not self._things & CLAMPED_AT_THE_VEIN:
                self._things |= {"roller", "wheel"}
        self._split = {words for words in table if len(words) == 2 and words[1] in PARTICLES}
        self._doing = {word for deed in line.deeds for word in (deed.verb.base, deed.verb.ing)}
        self._every = every_of(line)
        self._named = {*line.words, *(word.removesuffix("s") for word in line.words)}
        if "clamp" in self._own | self._named and not {"roller", "slide"} & self._named:
            self._named |= {"roller", "slide"}
        than = min((line.words.index(word) for word in ("than", "below", "above") if word in line.words), default=None)
        self._compared = set() if than is None else set(line.words[than:]) & NOUNS - set(line.words[:than])
        self._at = 0
        self._denied = ""
        self._deny_again = False
        self._used: set[int] = set()
        self.said: list[Says] = []
        self.turned = False
        self.led_by_no = False

    def read(self) -> bool:
        """Whether every word is understood."""
        tokens = self._tokens
        if not tokens or (len(tokens) > 1 and tokens[0] in AUXILIARIES and tokens[1] not in DENIALS):
            return False
        if asks_at_its_end(tokens) or is_put_off(tokens) or tokens[-1] in UNFINISHED_ENDS:
            return False
        if any(tokens[0] == deed.verb.base and tokens[1:2] and tokens[1] in ARTICLES for deed in self._line.deeds):
            return False  # the line said after the assistant: "open the clamp"
        while self._at < len(tokens):
            length = self._neutral_phrase() or self._phrase() or self._word()
            if length < 1:
                return False
            self._at += length
        return not self._denied or self._denies_all()

    def beside(self) -> Tokens:
        """What is said beside the claims and the names of the line's own things: there may be trouble in it."""
        own = self._things & NOUNS
        return tuple(word for at, word in enumerate(self._tokens) if at not in self._used and word not in own)

    def _after(self, steps: int = 1) -> str:
        return self._tokens[self._at + steps] if self._at + steps < len(self._tokens) else ""

    def _before(self) -> str:
        return self._tokens[self._at - 1] if self._at else ""

    def _neutral_phrase(self) -> int:
        """The length of a phrase here that says nothing of what is asked: "without touching the tip"."""
        rest = self._tokens[self._at :]
        here = (*_NEUTRAL_BY_FIRST.get(rest[0], ()), *self._line.meanwhile)
        listed = max((len(words) for words in here if rest[: len(words)] == words), default=0)
        return listed or (0 if self._denied else self._says_beside(self._at))

    def _says_beside(self, at: int) -> int:
        """How many words there only say that nothing went wrong with what was to be done: "did not touch it"."""
        rest = " ".join((*self._tokens[at:], ""))
        untouched = UNTOUCHED.match(rest)
        if (untouched and not (self._line.want is Want.ANSWER and "touch" in untouched[0])) or (
            untouched and not any(self._tokens[at : at + n] in self._table for n in range(2, self._longest + 1))
        ):
            return len(untouched[0].split())
        flawless = FLAWLESS.match(rest) if self._line.want is not Want.ANSWER else None
        words = flawless[0].split() if flawless else []
        return 0 if self._own & {"air", "bubbles"} & set(words) else len(words)

    def _phrase(self) -> int:
        """The length of the phrase here that says something; 0 where there is none, -1 where it cannot be taken."""
        tokens, at = self._tokens, self._at
        for length in range(min(self._longest, len(tokens) - at), 0, -1):
            says = self._table.get(tokens[at : at + length])
            if says is None or self._goes_round(at + length):
                continue
            if length > 1 or self._stands_alone():
                return length if self._take(says, length) else -1
        for first, particle in self._split:
            if tokens[at] == first and particle in tokens[at + 2 : at + _PARTICLE_WITHIN]:
                return 1 if self._take(self._table[first, particle], 1) else -1
        return 0

    def _goes_round(self, end: int) -> bool:
        """Whether what follows belongs to the words before it: "they do | not agree", "I have not | done it"."""
        follows = self._tokens[end : end + 1]
        if self._tokens[end - 1] == "not":
            return follows not in ((), ("yet",), ("at",), ("and",), ("so",))
        return follows == ("not",) and self._tokens[end - 1] in AUXILIARIES

    def _take(self, says: Says, length: int) -> bool:
        word = self._tokens[self._at]
        if self._line.want is not Want.ANSWER and self._before() in OTHERS:
            return False  # somebody else did
        if self._is_of_another(self._tokens[self._at : self._at + length]):
            return False
        if length == 1 and self._line.want is Want.DONE and self._goes_on(word):
            return False
        if length == 1 and self._before() in ARTICLES and not says.thing and word not in NOUNS | {"match"}:
            return False  # "the closed": no statement
        if self._denied or self._deny_again:
            if self._denied == "no" and not says.thing and word not in NOUNS:
                return False
            if not says.so and not says.thing and self._line.want is not Want.ANSWER:
                return False  # "not open": nothing is done because what is undone is denied
            says = replace(says, so=not says.so)
            self._deny_again = self._after(length) == "or"
            self._denied = ""
        self.said.append(says)
        self._used |= set(range(self._at, self._at + length))
        return True

    def _is_of_another(self, words: Tokens) -> bool:
        """Whether what is said belongs to one thing of the line, and is said of another: "the bag is half full"."""
        before = [word for word in self._tokens[: self._at] if word not in _LINKS]
        subject = before[-1] if before else ""
        names = {subject, subject.removesuffix("s")}
        owners = [deed for deed in self._line.deeds if " ".join(words) in deed.so]
        others = [deed for deed in self._line.deeds if deed not in owners]
        own = {name for deed in owners for thing in deed.things for name in thing.split()}
        if owners and own and not names & own and any(names & set(deed.things) for deed in others):
            return True
        undone = [deed for deed in self._line.deeds if " ".join(words) in deed.not_so]
        return bool(undone) and bool(names & NOUNS) and not names & self._things

    def _goes_on(self, word: str) -> bool:
        """Whether it is still being done: "I'm hanging it", "hanging it up now"."""
        if all(word != deed.verb.ing for deed in self._line.deeds):
            return False
        return self._before() in ("am", "just", "still") or self._after() in ("it", "the", "them") or not self._at

    def _stands_alone(self) -> bool:
        """Whether it is a state and does not lead to a place: "the gloves are on", not "on the tray"."""
        if self._tokens[self._at] not in PREPOSITIONS:
            return True
        if self._after() in ("", "now", "already", "and", "fine", "all", "nice", "okay", "i", "it", "properly"):
            return True
        if self._after() in ("higher", "lower", "high", "slowly", "gently", "together", "again"):
            return True
        follows = tuple(word for word in self._tokens[self._at + 1 :] if word not in (*ARTICLES, "is", "are", "still"))
        return self._says_beside(self._at + 1) > 0 or (
            len(follows) > 1
            and self._is_thing(follows[0])
            and (
                follows[1] in _UNHARMED
                or any(follows[:n] in self._table for n in (2, 3, 4))
                or any(follows[1:][:n] in self._table for n in (1, 2, 3))
            )
        )

    def _is_thing(self, word: str) -> bool:
        singular = word.removesuffix("s")
        return bool({word, singular} & NOUNS and {word, singular} & self._things)

    def _word(self) -> int:
        """1 where the word here is understood, 0 where it is not."""
        word = self._tokens[self._at]
        if word in DENIALS:
            return self._deny(word)
        if self._line.want is Want.START and word in ("then", "second", "moment", "minute"):
            return 0  # "one second, then I start"
        if word == "still" and self._after() in _UNHARMED:
            return 1
        once_more = {"again", "more"} & set(self._line.words)
        if word == "again" and once_more:
            return 1
        if word in TURNS_ONLY_GOOD or (word in ("still", "again") and self._line.want is not Want.ANSWER):
            self.turned = True
            return 1
        if word == "or" and self._deny_again:
            return 1
        if word in self._doing and word not in NOUNS | NEUTRAL and self._before() != "not":
            return 0  # the line said after the assistant, or something that is being done
        if word in SIDES and self._after().removesuffix("s") in NOUNS | {"one"} and not SIDES & self._named:
            self.turned = True
        apart = word in TOLD_APART or OTHER_PLACES.get(word, frozenset()) & self._named
        self.turned |= bool(apart) and word not in self._named
        if word in TURNING and (word not in self._line.words or self._after() == "to"):
            return 0
        if word in AUXILIARIES and word not in NEUTRAL and self._after() not in DENIALS:
            return 0
        turned_round = self._after() in PRONOUNS and (self._after(),) not in self._table
        if word in AUXILIARIES and turned_round and self._before() not in PRONOUNS:
            return 0  # "is that the blue one"
        singular = word.removesuffix("s")
        if word in NOUNS or singular in NOUNS:
            known = word in self._things or singular in self._things or self._is_place()
            self.turned |= bool({word, singular} & self._compared) and not self._is_place()
            self.turned |= self._is_another_one(word, singular) or self._is_elsewhere(word, singular)
            self.turned |= not (known or (self._line.want is Want.ANSWER and singular in ASKED_OF))
            return 1
        plain = word in NEUTRAL or word in AUXILIARIES or word in self._things or singular in self._things
        looked = self._line.want is Want.ANSWER and word in LOOKED
        return int(plain or looked or word.isdigit() or word in NUMBERS.values())

    def _is_another_one(self, word: str, singular: str) -> bool:
        """Whether it tells one thing from others by a place that the line does not name: "the one at the bag"."""
        words = [w for w in self._tokens[max(self._at - 4, 0) : self._at] if w not in ARTICLES]
        return words[-2:-1] == ["one"] and words[-1] in PREPOSITIONS and not {word, singular} & set(self._line.words)

    def _is_elsewhere(self, word: str, singular: str) -> bool:
        """Whether it names another place than the one by which the line tells a thing from others of its kind."""
        before = [other for other in self._tokens[: self._at] if other not in ARTICLES]
        near = before[-1:] and before[-1] in ("by", "near", "above", "below", "under", "beside", "next")
        return bool(near) and "nearest" in self._line.words and not {word, singular} & self._named

    def _deny(self, word: str) -> int:
        if self._denied:
            return 0
        follows = self._phrase_after()
        if word == "no" and (follows is None or not (follows.thing or self._after() in NOUNS)):
            if self._after() in self._things and self._at + 2 == len(self._tokens):
                return self._nothing(word)
            self.led_by_no = not self._at
            return int(self.led_by_no)
        if word in DENIALS_ALONE and follows is None and self._after() in SUBJECTS:
            return self._nothing(word)
        if word == "not" and self._before() in AUXILIARIES and follows is None and self._after() in PRONOUNS:
            self.said.append(Says(self._every, so=False))
            return 1
        self._denied = word
        return 1

    def _phrase_after(self) -> Says | None:
        """What the phrase after the word here says, articles and the like left out."""
        at = self._at + 1
        while at < len(self._tokens):
            for length in range(min(self._longest, len(self._tokens) - at), 0, -1):
                if self._tokens[at : at + length] in self._table:
                    return self._table[self._tokens[at : at + length]]
            if self._tokens[at] not in SMALL_WORDS:
                return None
            at += 1
        return None

    def _nothing(self, word: str) -> int:
        """Whether that none of what was asked for is there can be taken: "nothing, it looks normal"."""
        findings = bool(self._line.points) and all(point.finding for point in self._line.points)
        if word in DENIALS_ALONE and not findings:
            return 0
        self.said.append(Says(self._every, so=self._line.absent and word in DENIALS_ALONE))
        return 1

    def _denies_all(self) -> bool:
        """At the end: "they do not", "nothing"."""
        if self._denied in DENIALS_ALONE:
            return not self.said and bool(self._nothing(self._denied))
        # "I do not" may be "I do not know" cut short: only the question's own verb is taken up.
        taken_up = ("is", "are", "did", "have", "has", *TAKEN_UP.get(self._line.asks, ()))
        if self._denied != "not" or self._tokens[-1] != "not" or self._tokens[-2:-1] not in [(v,) for v in taken_up]:
            return False
        self.said.append(Says(self._every, so=False))
        return True

    def _is_place(self) -> bool:
        """Whether the noun here only says where or by what: "on the drip stand"."""
        before = self._at - 1
        while before >= 0 and (self._tokens[before] in DETERMINERS or self._tokens[before] in NOUNS):
            before -= 1
        return before >= 0 and self._tokens[before] in PREPOSITIONS


def _of_a_part(tokens: Tokens, line: Line) -> bool:
    """Whether only some of what the question joins is named: "the name matches" says nothing of the date."""
    words = set(line.words)
    if _ALL & words and _SOME & set(tokens) - words and not _ALL & set(tokens):
        return True  # "I undid one"
    told = set(tokens)
    if (
        line.want is Want.DONE
        and not words & {"little", "bit"}
        and (told & {"slightly"} or _A_BIT & set(pairwise(tokens)))
    ):
        return True  # "opened it a little"
    if line.want is Want.DONE and {"every", "each"} & words and not (_ALL | {"everything"}) & told:
        once = {thing for deed in line.deeds for thing in deed.things if f"{thing}s" not in told}
        if once & told:
            return True  # "the syringe clamp is open"
    if line.want is Want.ANSWER and not any(point.finding for point in line.points) and not _ALL & told:
        few = told & {"some", "few", "couple", "most", "half"} - words
        if few or (tokens[:1] == ("one",) and "one" not in words):
            return True  # "some are there"
    named = [bool(group & set(tokens)) for group in line.joined]
    return any(named) and not all(named)
