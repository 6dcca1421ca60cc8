"""The gist of a statement, in English: what its words say of what a line asks for, whatever their order.

Nothing is spotted among other words: every word has to be known, as something that the line asks about, as a denial,
or as one that changes nothing. A word that may turn the meaning round (of doubt, intention, exception, of another
thing) ends the reading, and so does a word that is not known.
"""

import re
from dataclasses import dataclass, replace
from functools import lru_cache
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
    PLAIN,
    PLAIN_TO_A_QUESTION,
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
    WHERE_OR_BY_WHAT,
)
from assistant.spoken.english.claims import TAKEN_UP, Says, every_of, phrases_at
from assistant.spoken.english.deeds import ALSO_CALLED, NUMBERS, means_of
from assistant.spoken.english.lines import Line, read_line
from assistant.spoken.english.troubles import trouble_of
from assistant.spoken.english.verbs import VERBS
from assistant.spoken.statement import Asked, Sense, Tokens, Want

_ALL = frozenset({"every", "all", "each", "both"})
_SOME = frozenset({"one", "two", "some", "few", "couple", "half", "most"})
_CONDITIONS = frozenset({"until", "till", "when", "while", "before", "after", "if", "unless", "once"})
_PUT_OFF = re.compile(
    r" in (?:a|an|one|two|another|just a|half a) (?:bit|while|tick|minutes?|moments?|seconds?|secs?|mins?|hours?|few) "
    r"| (?:one|another) (?:moment|second|minute|sec|min) | going to "
    r"| once (?:it|the|she|he|they|we|i|that|you|everything) "
)
_LOOK_OUT = re.compile(r"\b(look|watch) out for\b")
_FROM_TO = re.compile(r"\bfrom (?:the )?(\w+) to (?:the )?(\w+)")
_OFF = re.compile(r"\b(?:off|out of) (?:the |its )?(\w+)")
_FOUND = re.compile(r"\bhave you (\w+) (?:all )?(?:the )?(\w+)")
_RIGHT_PLACE = re.compile(r"\b(in(?:to)? the) (?:right|proper|correct) (bin|trash|waste|container|place)\b")
_AT_A_TIME = re.compile(
    r"\bat (?:half|quarter|five|ten|twenty|twenty five) (?:past|to) "
    r"(?:one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve)\b"
)
_ENDS = frozenset(map(len, ASKING_ENDS))
"""How long they are."""
_LINKS = frozenset(
    {"is", "are", "has", "have", "been", "all", "now", "still", "already", "just", "about", "fully", "nicely"}
)
_WHERE_NOTHING_BELONGS = frozenset({"floor", "ground", "bed", "sheet", "sheets", "lap"})
"""What drips or hangs there is not where a question asks for it."""
_REPORTED = re.compile(
    r"\b(?:he|she|they|somebody|someone|everybody|nurse|partner|colleague|instructor|teacher|patient|doctor)"
    r" (?:says?|said|thinks?|thought|reckons?|claims?|tells|told me|swears)\b"
)
_TELLING = frozenset({"answered", "say", "tell"})
_FELT = frozenset(
    {"comfortable", "well", "warm", "cool", "cold", "swollen", "red", "soft", "understand", "ask", "run in"}
)
_DENIED = frozenset({"not", "nothing", "never", "no", "without", "none", "neither"})
_TOWARDS = frozenset({"to", "into", "onto"})
_ENDS_OF_ALL = frozenset(
    {
        "end",
        "ends",
        "side",
        "mark",
        "top",
        "bottom",
        "level",
        "middle",
        "tip",
        "place",
        "position",
        "time",
        "hand",
        "line",
    }
)
"""Ends of a thing, by which no other thing is named."""
_LEADS_TO_THING = frozenset({"new", "old", "down", "up", "off", "clean"})
_COUNTED = frozenset({"one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten"})
_NOT_LEFT = frozenset({"out", "off", "away", "removed", "goes"})
_THE_ONE = frozenset({"that", "this", "every", "each", "the"})
_WRITTEN_AS = {"mil": "millilitre", "mils": "millilitre", "meter": "metre", "bit": "little"}
_UNHARMED = frozenset({"fine", "good", "okay", "sterile", "clean", "untouched"})
_ONE_OF_TWO = frozenset({"one", "left", "right", "first"})
_A_BIT = frozenset({("a", "bit"), ("a", "little"), ("little", "bit")})
_PARTICLE_WITHIN = 7
"""How many words later a particle may follow its verb: "rolled the clamp all the way down"."""


def gist(tokens: Tokens, asked: Asked) -> Sense | None:
    """What the words say of all that is asked: good, bad, a part of it (acknowledged), or nothing (None)."""
    known = _known_of(asked)
    line, every = known.line, known.every
    reading = _Reading(_written_out(tokens), known)
    if not reading.read():
        return None
    so = frozenset(at for says in reading.said if says.so for at in says.about)
    not_so = frozenset(at for says in reading.said if not says.so for at in says.about)
    if not so | not_so or (so & not_so and not reading.turned):
        return None
    if line.either:
        sense = Sense.GOOD if so else Sense.BAD if not_so == every else Sense.ACKNOWLEDGED
    else:
        sense = Sense.BAD if not_so else Sense.GOOD if so >= every else Sense.ACKNOWLEDGED
    if sense is Sense.GOOD and reading.led_by_no and not line.absent:
        return None
    if sense is Sense.GOOD and line.want is not Want.ANSWER and trouble_of(reading.beside()) is not None:
        return None
    if sense is Sense.GOOD and _is_reported(tokens, line):
        return None
    if sense is Sense.GOOD and line.unsaid & set(tokens) and not _DENIED & set(tokens):
        return None  # "I told her my number"
    if (
        sense is Sense.GOOD
        and line.want is Want.ANSWER
        and _WHERE_NOTHING_BELONGS.intersection(tokens) - set(line.words)
    ):
        return None  # "drops are falling on the floor"
    if sense is Sense.GOOD and _is_done_to_another(tokens, line):
        return None
    if sense is Sense.GOOD and (reading.turned or _of_a_part(tokens, line)):
        return None if reading.turned else Sense.ACKNOWLEDGED
    if sense is Sense.GOOD and (reading.loose or _is_of_oneself(tokens, known)):
        return Sense.ACKNOWLEDGED
    return sense


def _is_reported(tokens: Tokens, line: Line) -> bool:
    """Whether somebody else says so: "she says they match"; what a patient feels, only a patient can tell."""
    felt = any(point.finding or point.asked in _FELT for point in line.points) or bool(_TELLING & set(line.words))
    return not felt and _REPORTED.search(" ".join(tokens)) is not None


def _is_done_to_another(tokens: Tokens, line: Line) -> bool:
    """Whether it is said of what the thing was to come off, or found was another thing than the one asked about."""
    asked, text = " ".join(line.words), " ".join(tokens)
    stays = _OFF.search(asked)
    if stays is not None and re.search(rf"\b{stays[1]}s?(?: is| has)?(?: now| come)? (?:off|out)\b", text):
        return True  # "the extension's off" where the line was to come off it
    found = _FOUND.search(asked)
    if found is None or line.want is not Want.ANSWER:
        return False
    other = re.search(rf"\b{found[1]} (?:the|a|my) (\w+)", text)
    return other is not None and other[1] in NOUNS and other[1].removesuffix("s") != found[2].removesuffix("s")


def _is_of_oneself(tokens: Tokens, known: "_Known") -> bool:
    """Whether a learner says of themselves what is asked of things: "we agree" where they do."""
    asks_of_things = known.line.want is Want.ANSWER and "you" not in known.line.words
    return asks_of_things and tokens[0] in ("i", "we") and tokens[1:] in known.table


def asks_at_its_end(tokens: Tokens) -> bool:
    """Whether an end makes a question of a statement: "it's closed, right"."""
    return any(tokens[-length:] in ASKING_ENDS for length in _ENDS if length < len(tokens))


def is_put_off(tokens: Tokens) -> bool:
    """Whether words say that it will be so: "in a minute", "going to", or "until it is full" at their beginning."""
    text = f" {' '.join(tokens)} "
    return tokens[0] in _CONDITIONS or _PUT_OFF.search(text) is not None


def _written_out(tokens: Tokens) -> Tokens:
    """Without what only leads to what is seen: "I can see a drop"."""
    text = _AT_A_TIME.sub("", " ".join(tokens))
    text = _LOOK_OUT.sub(r"\1 for", _RIGHT_PLACE.sub(r"\1 \2", text))
    tokens = tuple(text.split())
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


@dataclass(frozen=True)
class _Known:
    """What is known before a word is read: all that depends on the line alone.

    Attributes:
        line: what is asked for.
        table: what each phrase says.
        lengths: how long the phrases are that begin with a word, the longest first.
        longest: the length of the longest phrase.
        own: the things that its deeds are done to.
        things: every thing that it names, by each of its words.
        split: verbs with a particle that other words may stand between.
        doing: its verbs, as they are while it is being done.
        every: the places of all that it asks for.
        named: its words, also without their s.
        compared: things that it only compares with: "higher than the primary".
    """

    line: Line
    table: dict[Tokens, Says]
    lengths: dict[str, tuple[int, ...]]
    longest: int
    own: frozenset[str]
    things: frozenset[str]
    split: tuple[Tokens, ...]
    doing: frozenset[str]
    every: frozenset[int]
    named: frozenset[str]
    compared: frozenset[str]


@lru_cache(maxsize=512)
def _known_of(asked: Asked) -> _Known:
    line, table = read_line(asked), phrases_at(asked)
    lengths: dict[str, set[int]] = {}
    for words in filter(None, table):
        lengths.setdefault(words[0], set()).add(len(words))
    own = {thing for deed in line.deeds for thing in deed.things}
    also = (other for word in line.words for other in ALSO_CALLED.get(word, ()))
    things = {word for thing in (*line.things, *own, *also, *line.words) for word in thing.split()}
    things |= {word[:-1] for word in things if word[-1:] == "s" and word[:-1] in NOUNS}
    if things & {"clamp", "clamps", "unclamp", "clip"}:
        things |= {"clamp", "clip", "slide"}
        if not things & CLAMPED_AT_THE_VEIN:
            things |= {"roller", "wheel"}
    if line.deeds:
        things |= means_of(asked.line) | {deed.verb.ing for deed in line.deeds if deed.leads}
    if any(deed.verb.base in ("tell", "say", "explain") for deed in line.deeds):
        things |= {VERBS[word[:-1]].ing for word in line.words if word[-1:] == "s" and word[:-1] in VERBS}
    if any(deed.verb.base in ("tell", "inform", "report", "ask") for deed in line.deeds):
        things |= {"called", "phoned", "rang", "rung", "paged"}
    named = {*line.words, *(word.removesuffix("s") for word in line.words)}
    if "clamp" in own | named and not {"roller", "slide"} & named:
        named |= {"roller", "slide"}
    than = min((line.words.index(word) for word in ("than", "below", "above") if word in line.words), default=None)
    return _Known(
        line,
        table,
        {word: tuple(sorted(found, reverse=True)) for word, found in lengths.items()},
        max(map(len, table), default=1),
        frozenset(own),
        frozenset(things),
        tuple(words for words in table if len(words) == 2 and words[1] in PARTICLES),
        frozenset(word for deed in line.deeds if not deed.leads for word in (deed.verb.base, deed.verb.ing))
        | frozenset(deed.verb.base for deed in line.deeds),
        every_of(line),
        frozenset(named),
        frozenset() if than is None else NOUNS.intersection(line.words[than:]).difference(line.words[:than]),
    )


class _Reading:
    """One statement, read word by word.

    Attributes:
        said: what its phrases say, in their order.
        turned: a word was there with which nothing is taken for good ("but").
        loose: a word was there that may say more than that it is done: "it looks clean", "I ran some".
        led_by_no: it began with a no of its own.
    """

    def __init__(self, tokens: Tokens, known: "_Known") -> None:
        self._tokens = tokens
        self._known = known
        self._line = known.line
        self._table = known.table
        self._at = 0
        self._denied = ""
        self._deny_again = False
        self._used: set[int] = set()
        self.said: list[Says] = []
        self.turned = False
        self.loose = known.line.want is Want.START and "already" in tokens  # "I scrubbed it already"
        self.led_by_no = False

    def read(self) -> bool:
        """Whether every word is understood."""
        tokens = self._tokens
        if not tokens or (len(tokens) > 1 and tokens[0] in AUXILIARIES and tokens[1] not in DENIALS):
            return False
        if asks_at_its_end(tokens) or is_put_off(tokens) or tokens[-1] in UNFINISHED_ENDS:
            return False
        begins = ARTICLES | self._known.own
        if any(tokens[0] == deed.verb.base and tokens[1:2] and tokens[1] in begins for deed in self._line.deeds):
            return False  # the line said after the assistant: "open the clamp", "open clamp"
        if "off" in tokens and any(deed.verb.base == "set" for deed in self._line.deeds):
            return False  # "I set the alarm off"
        while self._at < len(tokens):
            length = self._neutral_phrase() or self._phrase() or self._word()
            if length < 1:
                return False
            self._at += length
        return not self._denied or self._denies_all()

    def beside(self) -> Tokens:
        """What is said beside the claims and the names of the line's own things: there may be trouble in it."""
        own = self._known.things & NOUNS
        return tuple(word for at, word in enumerate(self._tokens) if at not in self._used and word not in own)

    def _after(self, steps: int = 1) -> str:
        return self._tokens[self._at + steps] if self._at + steps < len(self._tokens) else ""

    def _before(self) -> str:
        return self._tokens[self._at - 1] if self._at else ""

    def _neutral_phrase(self) -> int:
        """The length of a phrase here that says nothing of what is asked: "without touching the tip"."""
        rest = self._tokens[self._at :]
        here = (*_NEUTRAL_BY_FIRST.get(rest[0], ()), *self._line.meanwhile)
        listed = max((len(words) for words in here if rest[: len(words)] == words), default=0) if here else 0
        return listed or (0 if self._denied else self._says_beside(self._at))

    def _says_beside(self, at: int) -> int:
        """How many words there only say that nothing went wrong with what was to be done: "did not touch it"."""
        rest = " ".join((*self._tokens[at:], ""))
        untouched = UNTOUCHED.match(rest)
        if (untouched and not (self._line.want is Want.ANSWER and "touch" in untouched[0])) or (
            untouched and not any(self._tokens[at : at + n] in self._table for n in range(2, self._known.longest + 1))
        ):
            return len(untouched[0].split())
        flawless = FLAWLESS.match(rest) if self._line.want is not Want.ANSWER else None
        words = flawless[0].split() if flawless else []
        return 0 if self._known.own & {"air", "bubbles"} & set(words) else len(words)

    def _phrase(self) -> int:
        """The length of the phrase here that says something; 0 where there is none, -1 where it cannot be taken."""
        tokens, at = self._tokens, self._at
        for length in self._known.lengths.get(tokens[at], ()):
            says = self._table.get(tokens[at : at + length]) if at + length <= len(tokens) else None
            if says is None or self._goes_round(at + length):
                continue
            if length > 1 or self._stands_alone():
                return length if self._take(says, length) else -1
        for first, particle in self._known.split:
            within = tokens[at + 2 : at + _PARTICLE_WITHIN]
            if (
                tokens[at] == first
                and particle in within
                and not self._leads_elsewhere(at + 2 + within.index(particle))
            ):
                return 1 if self._take(self._table[first, particle], 1) else -1
        return 0

    def _leads_elsewhere(self, at: int) -> bool:
        """Whether the particle there leads to a place that the line does not name: "put gloves on | the patient"."""
        rest = [word for word in self._tokens[at + 1 :] if word not in ARTICLES]
        beyond = len(self._tokens) > at + 1 and self._tokens[at + 1] in ARTICLES and bool(rest)
        return beyond and rest[0] in NOUNS and rest[0] not in {*self._line.words, "hand", "hands"}

    def _ends_elsewhere(self, at: int) -> bool:
        """Whether what follows "to" there is another end than the line names: "connected it to the bag"."""
        rest = [word for word in self._tokens[at + 1 :] if word not in ARTICLES]
        return bool(rest) and rest[0] in NOUNS - _ENDS_OF_ALL and not self._is_thing(rest[0])

    def _goes_round(self, end: int) -> bool:
        """Whether what follows belongs to the words before it: "they do | not agree", "I have not | done it"."""
        follows = self._tokens[end : end + 1]
        if self._tokens[end - 1] == "not":
            return follows not in ((), ("yet",), ("at",), ("and",), ("so",))
        return follows == ("not",) and self._tokens[end - 1] in AUXILIARIES

    def _take(self, says: Says, length: int) -> bool:
        word = self._tokens[self._at]
        if self._line.want is not Want.ANSWER and self._before() in OTHERS and not self._knows(length):
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

    def _knows(self, length: int) -> bool:
        """Whether it tells that who was to be told knows it now: "she understands"."""
        said = " ".join(self._tokens[self._at : self._at + length])
        return any(self._before() in deed.things and said in deed.verb.states for deed in self._line.deeds)

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
        return bool(undone) and bool(names & NOUNS) and not names & self._known.things

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
                or UNTOUCHED.match(" ".join((*follows[1:], ""))) is not None
                or any(follows[:n] in self._table for n in (2, 3, 4))
                or any(follows[1:][:n] in self._table for n in (1, 2, 3))
            )
        )

    def _is_thing(self, word: str) -> bool:
        singular = word.removesuffix("s")
        return bool({word, singular} & NOUNS and {word, singular} & self._known.things)

    def _word(self) -> int:
        """1 where the word here is understood, 0 where it is not."""
        word = self._tokens[self._at]
        if word in DENIALS:
            return self._deny(word)
        if self._line.want is Want.START and word in ("then", "second", "moment", "minute"):
            return 0  # "one second, then I start"
        if word == "still" and self._after() in _UNHARMED:
            return 1
        if word == "so" and self._after() in AUXILIARIES and not self._is_own(self._at + 2):
            return 0  # "the line's off and so is the cap"
        once_more = {"again", "more"} & set(self._line.words)
        if word == "again" and once_more:
            return 1
        if word in TURNS_ONLY_GOOD or (word in ("still", "again") and self._line.want is not Want.ANSWER):
            self.turned = True
            return 1
        if word == "or" and self._deny_again:
            return 1
        if word in self._known.doing and word not in NOUNS | NEUTRAL and self._before() != "not":
            return 0  # the line said after the assistant, or something that is being done
        if word in SIDES and self._after().removesuffix("s") in NOUNS | {"one"} and not SIDES & self._known.named:
            self.turned = True
        apart = word in TOLD_APART or OTHER_PLACES.get(word, frozenset()) & self._known.named
        self.turned |= bool(apart) and word not in self._known.named
        self.turned |= word in _TOWARDS & set(self._line.words) and self._ends_elsewhere(self._at)
        leads_on = self._after() == "to" and (word, "to") not in pairwise(self._line.words)
        if word in TURNING and (word not in self._line.words or leads_on):
            return 0
        if word in AUXILIARIES and word not in NEUTRAL and self._after() not in DENIALS:
            return 0
        turned_round = self._after() in PRONOUNS and (self._after(),) not in self._table
        if word in AUXILIARIES and turned_round and self._before() not in PRONOUNS:
            return 0  # "is that the blue one"
        singular = word.removesuffix("s")
        if word in NOUNS or singular in NOUNS:
            own = word in self._known.things or singular in self._known.things
            known = own or (self._is_place() and not WHERE_OR_BY_WHAT.isdisjoint((word, singular)))
            self.turned |= bool({word, singular} & self._known.compared) and not self._is_place()
            self.turned |= self._is_another_one(word, singular) or self._is_elsewhere(word, singular)
            self.turned |= not (known or (self._line.want is Want.ANSWER and singular in ASKED_OF))
            return 1
        plain = word in NEUTRAL or word in AUXILIARIES or word in self._known.things or singular in self._known.things
        looked = self._line.want is Want.ANSWER and word in LOOKED
        self.loose |= not self._is_plain(word)
        return int(plain or looked or word.isdigit() or word in NUMBERS.values())

    def _is_plain(self, word: str) -> bool:
        """Whether a word beside the claims leaves no doubt about them."""
        own = self._known.things | self._known.named
        if word in PLAIN or word in LOOKED or not own.isdisjoint((word, word.removesuffix("s"), word[:-2])):
            return True
        match word:
            case "of":
                return not (_ALL | {"rest", "none"}).isdisjoint(self._tokens)
            case "one":
                return self._before() in _THE_ONE or self._before() in own
            case "right":
                return self._after() in PREPOSITIONS
            case "mil" | "mils" | "bit" | "meter":
                return _WRITTEN_AS[word] in own
        is_figure = any(NUMBERS.get(other) == word for other in self._line.words)
        is_whole = self._before() == "all" and word in _COUNTED
        return is_figure or is_whole or (self._line.want is Want.ANSWER and word in PLAIN_TO_A_QUESTION)

    def _is_own(self, at: int) -> bool:
        """Whether the thing named there is one that is to be done something to."""
        things = [word for word in self._tokens[at:] if word not in ARTICLES]
        return bool(things) and bool({things[0], things[0].removesuffix("s")} & self._known.own)

    def _is_another_one(self, word: str, singular: str) -> bool:
        """Whether it tells one thing from others by a place that the line does not name: "the one at the bag"."""
        words = [w for w in self._tokens[max(self._at - 4, 0) : self._at] if w not in ARTICLES]
        return words[-2:-1] == ["one"] and words[-1] in PREPOSITIONS and not {word, singular} & set(self._line.words)

    def _is_elsewhere(self, word: str, singular: str) -> bool:
        """Whether it names another place than the one by which the line tells a thing from others of its kind."""
        before = [other for other in self._tokens[: self._at] if other not in ARTICLES]
        near = before[-1:] and before[-1] in ("by", "near", "above", "below", "under", "beside", "next")
        return bool(near) and "nearest" in self._line.words and not {word, singular} & self._known.named

    def _deny(self, word: str) -> int:
        if self._denied:
            return 0
        follows = self._phrase_after()
        if word == "no" and (follows is None or not (follows.thing or self._after() in NOUNS)):
            if self._after() in self._known.things and self._at + 2 == len(self._tokens):
                return self._nothing(word)
            self.led_by_no = not self._at
            return int(self.led_by_no)
        if word in DENIALS_ALONE and follows is None and self._after() in SUBJECTS:
            return self._nothing(word)
        if word == "not" and self._before() in AUXILIARIES and follows is None and self._after() in PRONOUNS:
            self.said.append(Says(self._known.every, so=False))
            return 1
        self._denied = word
        return 1

    def _phrase_after(self) -> Says | None:
        """What the phrase after the word here says, articles and the like left out."""
        at = self._at + 1
        while at < len(self._tokens):
            for length in self._known.lengths.get(self._tokens[at], ()):
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
        self.said.append(Says(self._known.every, so=self._line.absent and word in DENIALS_ALONE))
        return 1

    def _denies_all(self) -> bool:
        """At the end: "they do not", "nothing"."""
        if self._denied in DENIALS_ALONE:
            return not self.said and bool(self._nothing(self._denied))
        # "I do not" may be "I do not know" cut short: only the question's own verb is taken up.
        taken_up = ("is", "are", "did", "have", "has", *TAKEN_UP.get(self._line.asks, ()))
        if self._denied != "not" or self._tokens[-1] != "not" or self._tokens[-2:-1] not in [(v,) for v in taken_up]:
            return False
        self.said.append(Says(self._known.every, so=False))
        return True

    def _is_place(self) -> bool:
        """Whether the noun here only says where or by what: "on the drip stand"."""
        before = self._at - 1
        while before >= 0 and (self._tokens[before] in DETERMINERS or self._tokens[before] in NOUNS):
            before -= 1
        return before >= 0 and self._tokens[before] in PREPOSITIONS


def _names_one_of(tokens: Tokens, line: Line) -> bool:
    """Whether one verb is to be done to several things, and is said to be done to fewer than half, or one of two."""
    first = [deed for deed in line.deeds if deed.verb == line.deeds[0].verb]
    groups = [frozenset(word for name in deed.things for word in name.split()) for deed in first]
    if line.told or len(groups) < 2 or not all(groups) or frozenset.intersection(*groups):
        return False
    done = {word for word in first[0].verb.past if " " not in word}
    objects = {
        next((word for word in tokens[at + 1 :] if word not in ARTICLES and word not in _LEADS_TO_THING), "")
        for at, word in enumerate(tokens)
        if word in done
    }
    named = [bool(group & set(tokens)) for group in groups]
    text = f" {' '.join(word for word in line.words if word not in ARTICLES)} "
    for (one, its), (other, others) in pairwise(zip(groups, named, strict=True)):
        if its != others and any(f" {a} and {b} " in text for a in one for b in other):
            return True  # "I wrote the date on the bag"
    return any(group & objects - PRONOUNS for group in groups) and 2 * sum(named) <= len(named)


def _counts_some(tokens: Tokens) -> bool:
    """Whether a number of several things is told: "two of them"; not "all three of them", "three of three"."""
    for at, word in enumerate(tokens[:-2]):
        if word in _COUNTED and tokens[at + 1] == "of" and not _ALL & set(tokens[:at]):
            whole = next((other for other in tokens[at + 2 :] if other not in ARTICLES), "")
            if whole in _COUNTED - {word} or whole in ("them", "those", "these"):
                return True
    return False


def _of_a_part(tokens: Tokens, line: Line) -> bool:
    """Whether only some of what the question joins is named: "the name matches" says nothing of the date."""
    words = set(line.words)
    if _ALL & words and _SOME & set(tokens) - words and not _ALL & set(tokens):
        return True  # "I undid one"
    told = set(tokens)
    if line.want is Want.DONE and not _ALL & told:
        things = {word for deed in line.deeds for thing in deed.things for word in thing.split()} & set(line.words)
        pairs = {word for word in things & NOUNS if word[-1:] == "s" and word[:-1] in NOUNS}
        single = {word[:-1] for word in pairs} & told
        # "Glove's" comes as "gloves".
        of_one = any(one in _ONE_OF_TWO and word in pairs for one, word in pairwise(tokens))
        if of_one or (single and not pairs & told):
            return True  # "one glove is on"
    if (
        line.want is Want.DONE
        and not words & {"little", "bit"}
        and (told & {"slightly"} or _A_BIT & set(pairwise(tokens)))
    ):
        return True  # "opened it a little"
    if line.want is Want.DONE and {"every", "each"} & words and not (_ALL | {"everything"}) & told:
        once = {thing for deed in line.deeds for thing in deed.things if f"{thing}s" not in told}
        ends = _FROM_TO.search(" ".join(line.words))
        single = {word.removesuffix("s") for word in told}  # "the hub's" comes as "hubs"
        if once & told or (ends is not None and single & set(ends.groups())):
            return True  # "the syringe clamp is open"; "the hub is tight", of all from spike to hub
    if line.want is Want.ANSWER and not any(point.finding for point in line.points) and not _ALL & told:
        few = told & {"some", "few", "couple", "most", "half"} - words
        if few or (tokens[:1] == ("one",) and "one" not in words):
            return True  # "some are there"
    if line.told and "stays" in line.words and told & _NOT_LEFT - set(line.words):
        return True  # "I told her that the catheter comes out"
    if _counts_some(tokens):
        return True  # "four of the five match"
    if not _ALL & told and _names_one_of(tokens, line):
        return True  # "I labelled the bag"
    said = [bool(group & told) for group in line.told] if not _ALL & told else []
    if any(said) and 2 * sum(said) <= len(said):
        return True  # "told them why"
    named = [bool(group & set(tokens)) for group in line.joined]
    return any(named) and not all(named)
