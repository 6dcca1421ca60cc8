"""One statement, read word by word, in English: see `assistant.spoken.english.gist`."""

from dataclasses import replace
from itertools import pairwise

from assistant.spoken.english.bench_words import (
    ARTICLES,
    ASKED_OF,
    AUXILIARIES,
    DENIALS,
    DENIALS_ALONE,
    DETERMINERS,
    FLAWLESS,
    LOOKED,
    MANNER,
    NEUTRAL,
    NEUTRAL_PHRASES,
    NOUNS,
    OTHER_PLACES,
    OTHERS,
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
from assistant.spoken.english.bound import own_words
from assistant.spoken.english.claims import TAKEN_UP, Says
from assistant.spoken.english.deeds import NUMBERS, ONE_PRESS, ONES_AND_TENS
from assistant.spoken.english.framing import asks_at_its_end, is_put_off
from assistant.spoken.english.known import Known
from assistant.spoken.english.surroundings import LINKS, Surroundings
from assistant.spoken.statement import Tokens, Want

_ALL = frozenset({"every", "all", "each", "both"})
_TOWARDS = frozenset({"to", "into", "onto"})
_ABOUT = frozenset({"about", "around", "roughly", "approximately"})
_SPEAKS = frozenset({"tell", "inform", "explain", "say", "document", "report"})
_FRESH = frozenset({"fresh", "new", "clean", "sterile"})
_LEADS_NOWHERE = frozenset(
    {"", "now", "already", "and", "fine", "all", "nice", "okay", "i", "it", "properly", "by", "like"}
)
_LEADS_SOMEWHERE = (
    ARTICLES | DETERMINERS | PREPOSITIONS | PRONOUNS | {"of", "there", "here", "one", "some", "any", "no"}
)
_TOUCHES = frozenset({"touch", "touching", "untouched", "sterile", "neither", "nothing"})
_COUNTED = frozenset({"one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten"})
_THE_ONE = frozenset({"that", "this", "every", "each", "the"})
_WRITTEN_AS = {"mil": "millilitre", "mils": "millilitre", "meter": "metre", "bit": "little"}
_UNHARMED = frozenset({"fine", "good", "okay", "sterile", "clean", "untouched"})
_BODY = frozenset({"arm", "forearm", "hand", "wrist", "elbow"})
_MACHINES = frozenset({"computer", "tablet", "laptop", "system", "printer", "phone"})
_PARTICLE_WITHIN = 7
_NEUTRAL_BY_FIRST = {
    first: tuple(words for words in NEUTRAL_PHRASES if words[0] == first)
    for first in {words[0] for words in NEUTRAL_PHRASES}
}
"""The same by their first word: there are hundreds, and each word of an answer is looked at."""


class Reading(Surroundings):
    """One statement, read word by word.

    Attributes:
        said: what its phrases say, in their order.
        turned: a word was there with which nothing is taken for good ("but").
        other: a thing is named that is not the line's.
        loose: a word was there that may say more than that it is done: "it looks clean", "I ran some".
        led_by_no: it began with a no of its own.
    """

    def __init__(self, tokens: Tokens, known: Known) -> None:
        super().__init__(tokens, known)
        self._table = known.table
        self._denied = ""
        self._deny_again = False
        self._used: set[int] = set()
        self.said: list[Says] = []
        self.turned = False
        self.other = False
        self.loose = known.line.want is Want.START and "already" in tokens  # "I scrubbed it already"
        self.led_by_no = False

    def read(self) -> bool:
        """Whether every word is understood."""
        tokens = self.tokens
        if not tokens or (len(tokens) > 1 and tokens[0] in AUXILIARIES and tokens[1] not in DENIALS):
            return False
        if asks_at_its_end(tokens) or is_put_off(tokens) or tokens[-1] in UNFINISHED_ENDS:
            return False
        begins = ARTICLES | self.known.own
        if any(tokens[0] == deed.verb.base and tokens[1:2] and tokens[1] in begins for deed in self.line.deeds):
            return False  # the line said after the assistant: "open the clamp", "open clamp"
        if "off" in tokens and any(deed.verb.base == "set" for deed in self.line.deeds):
            return False  # "I set the alarm off"
        while self.at < len(tokens):
            length = self._neutral_phrase() or self._phrase() or self._seen_beside() or self._word()
            if length < 1:
                return False
            self.at += length
        return not self._denied or self._denies_all()

    def beside(self) -> Tokens:
        """What is said beside the claims and the names of the line's own things: there may be trouble in it."""
        own = self.known.things & (NOUNS | {"upside"})
        return tuple(word for at, word in enumerate(self.tokens) if at not in self._used and word not in own)

    def _neutral_phrase(self) -> int:
        """The length of a phrase here that says nothing of what is asked: "without touching the tip"."""
        rest = self.tokens[self.at :]
        here = (*_NEUTRAL_BY_FIRST.get(rest[0], ()), *self.line.meanwhile)
        listed = max((len(words) for words in here if rest[: len(words)] == words), default=0) if here else 0
        return listed or (0 if self._denied else self._says_beside(self.at))

    def _seen_beside(self) -> int:
        """The length of a phrase here that tells what may be seen once it is done: "it is quiet"."""
        if self._denied:
            return 0
        rest = self.tokens[self.at :]
        length = next((len(words) for words in self.known.beside.get(rest[0], ()) if rest[: len(words)] == words), 0)
        self._used |= set(range(self.at, self.at + length))
        return length

    def _says_beside(self, at: int) -> int:
        """How many words there only say that nothing went wrong with what was to be done: "did not touch it"."""
        rest = " ".join((*self.tokens[at:], ""))
        untouched = UNTOUCHED.match(rest)
        if (untouched and not (self.line.want is Want.ANSWER and "touch" in untouched[0])) or (
            untouched and not any(self.tokens[at : at + n] in self._table for n in range(2, self.known.longest + 1))
        ):
            return len(untouched[0].split())
        flawless = FLAWLESS.match(rest) if self.line.want is not Want.ANSWER else None
        words = flawless[0].split() if flawless else []
        says = (
            any(self.tokens[at : at + n] in self._table for n in range(2, self.known.longest + 1)) if words else False
        )
        return 0 if says or self.known.own & {"air", "bubbles"} & set(words) else len(words)

    def _phrase(self) -> int:
        """The length of the phrase here that says something; 0 where there is none, -1 where it cannot be taken."""
        tokens, at = self.tokens, self.at
        for length in self.known.lengths.get(tokens[at], ()):
            says = self._table.get(tokens[at : at + length]) if at + length <= len(tokens) else None
            if says is None or self._goes_round(at + length) or (length > 1 and self.leads_on(at, at + length)):
                continue
            if length > 1 or self._stands_alone():
                return length if self._take(says, length) else -1
        within = tokens[at + 2 : at + _PARTICLE_WITHIN]
        for particle in self.known.split.get(tokens[at], ()):
            if particle not in within:
                continue
            where = at + 2 + within.index(particle)
            is_place = any(tokens[where : where + n] in self._table for n in (2, 3, 4))
            if is_place or not self.leads_elsewhere(where):
                return 1 if self._take(self._table[tokens[at], particle], 1) else -1
        return 0

    def _goes_round(self, end: int) -> bool:
        """Whether what follows belongs to the words before it: "they do | not agree", "I have not | done it"."""
        follows = self.tokens[end : end + 1]
        if self.tokens[end - 1] == "not":
            return follows not in ((), ("yet",), ("at",), ("and",), ("so",))
        return follows == ("not",) and self.tokens[end - 1] in AUXILIARIES

    def _take(self, says: Says, length: int) -> bool:
        word = self.tokens[self.at]
        if self.line.want is not Want.ANSWER and self.before() in OTHERS and not self._knows(length):
            return False  # somebody else did
        if self._is_of_another(self.tokens[self.at : self.at + length]):
            return False
        if length == 1 and self.line.want is Want.DONE and self._goes_on(word):
            return False
        if length == 1 and self.before() in ARTICLES and not says.thing and word not in NOUNS | {"match"}:
            return False  # "the closed": no statement
        if self._denied or self._deny_again:
            if self._denied and (not says.about or (self._denied == "no" and not says.thing and word not in NOUNS)):
                return False
            if not says.so and not says.thing and self.line.want is not Want.ANSWER:
                return False  # "not open": nothing is done because what is undone is denied
            says = replace(says, so=not says.so)
            self._deny_again = self.after(length) == "or"
            self._denied = ""
        self.said.append(says)
        self._used |= set(range(self.at, self.at + length))
        return True

    def _knows(self, length: int) -> bool:
        """Whether it tells that who was to be told knows it now: "she understands"."""
        said = " ".join(self.tokens[self.at : self.at + length])
        return any(self.before() in deed.things and said in deed.verb.states for deed in self.line.deeds)

    def _is_of_another(self, words: Tokens) -> bool:
        """Whether what is said belongs to one thing of the line, and is said of another: "the bag is half full"."""
        before = [word for word in self.tokens[: self.at] if word not in LINKS]
        subject = before[-1] if before else ""
        names = {subject, subject.removesuffix("s")}
        if subject and {subject, subject.removesuffix("s")} & _MACHINES - self.known.named:
            return True  # "the computer's logged me out"
        if subject in _BODY - self.known.named and not self.is_place_before():
            return True  # "her arm is open"
        owners = [deed for deed in self.line.deeds if " ".join(words) in deed.so]
        others = [deed for deed in self.line.deeds if deed not in owners]
        own = {name for deed in owners for thing in deed.things for name in thing.split()}
        if owners and own and not names & own and any(names & set(deed.things) for deed in others):
            return True
        if (
            owners
            and all(deed.things for deed in owners)
            and names & NOUNS
            and before[-1:]
            and len(before) < len(self.tokens)
        ):
            # "The basin is free", where the block was to be freed.
            self.loose |= not names & own_words(owners, self.known) and not self.is_place_before()
        undone = [deed for deed in self.line.deeds if " ".join(words) in deed.not_so]
        return bool(undone) and bool(names & NOUNS) and not names & self.known.things

    def _goes_on(self, word: str) -> bool:
        """Whether it is still being done: "I'm hanging it", "hanging it up now"."""
        if all(word != deed.verb.ing for deed in self.line.deeds):
            return False
        return self.before() in ("am", "just", "still") or self.after() in ("it", "the", "them") or not self.at

    def _stands_alone(self) -> bool:
        """Whether it is a state and does not lead to a place: "the gloves are on", not "on the tray"."""
        if self.tokens[self.at] not in PREPOSITIONS:
            return True
        if self.after() in _LEADS_NOWHERE or (
            self.after() not in _LEADS_SOMEWHERE and self.after().removesuffix("s") not in NOUNS
        ):
            return True
        if self.leads_off():
            return True
        if self.after() in ("higher", "lower", "high", "slowly", "gently", "together", "again"):
            return True
        follows = tuple(word for word in self.tokens[self.at + 1 :] if word not in (*ARTICLES, "is", "are", "still"))
        beside = tuple(self.tokens[self.at + 1 :])
        if any(beside[: len(words)] == words for words in _NEUTRAL_BY_FIRST.get(self.after(), ())):
            return True
        return self._says_beside(self.at + 1) > 0 or (
            len(follows) > 1
            and self.is_thing(follows[0])
            and (
                follows[1] in _UNHARMED
                or UNTOUCHED.match(" ".join((*follows[1:], ""))) is not None
                or any(follows[:n] in self._table for n in (2, 3, 4))
                or any(follows[1:][:n] in self._table for n in (1, 2, 3))
            )
        )

    def _word(self) -> int:
        """1 where the word here is understood, 0 where it is not."""
        word = self.tokens[self.at]
        if word in DENIALS:
            return self._deny(word)
        if self.line.want is Want.START and word in ("then", "second", "moment", "minute"):
            return 0  # "one second, then I start"
        if word == "still" and self.after() in _UNHARMED:
            return 1
        if word == "so" and self.after() in AUXILIARIES and not self.is_own(self.at + 2):
            return 0  # "the line's off and so is the cap"
        if word in ("twice", "times"):
            # One press more on a button undoes the first.
            self.turned |= any(deed.verb.base in ONE_PRESS for deed in self.line.deeds)
            return 1
        if word in _ABOUT and "about" in self.line.words and self.after() in (*ARTICLES, *_COUNTED, "half", "at", "1"):
            return 1
        once_more = {"again", "more", "anew"} & set(self.line.words)
        if word == "again" and once_more:
            return 1
        speaks = any(deed.verb.base in _SPEAKS for deed in self.line.deeds[:1])
        if (
            word == "about"
            and speaks
            and self.at
            and self.after() in ARTICLES | DETERMINERS | NOUNS | {"it", "that", "this", "them", "everything"}
            and self.before() != "and"
        ):
            return 1  # "told her about the drip"
        if (word in TURNS_ONLY_GOOD and not (word == "first" and word in self.line.words)) or (
            word in ("still", "again") and self.line.want is not Want.ANSWER
        ):
            self.turned = True
            return 1
        if word == "or" and self._deny_again:
            return 1
        if word in self.known.doing and word not in NOUNS and word not in NEUTRAL and self.before() != "not":
            return 0  # the line said after the assistant, or something that is being done
        if word in SIDES and self.after().removesuffix("s") in NOUNS | {"one"} and not SIDES & self.known.named:
            self.turned = True
        apart = word in TOLD_APART or OTHER_PLACES.get(word, frozenset()) & self.known.named
        self.turned |= bool(apart) and word not in self.known.named
        self.turned |= word in _TOWARDS & set(self.line.words) and self.ends_elsewhere(self.at)
        leads_on = self.after() == "to" and (word, "to") not in pairwise(self.line.words)
        if word in TURNING and (word not in self.line.words or leads_on):
            return 0
        if word in AUXILIARIES and word not in NEUTRAL and self.after() not in DENIALS:
            return 0
        turned_round = self.after() in PRONOUNS and (self.after(),) not in self._table
        if word in AUXILIARIES and turned_round and self.before() not in PRONOUNS:
            return 0  # "is that the blue one"
        singular = word.removesuffix("s")
        if word in NOUNS or singular in NOUNS:
            own = word in self.known.things or singular in self.known.things
            known = own or (self.is_place() and not WHERE_OR_BY_WHAT.isdisjoint((word, singular)))
            self.turned |= bool({word, singular} & self.known.compared) and not self.is_place()
            self.turned |= self.is_another_one(word, singular) or self.is_elsewhere(word, singular)
            self.other |= not (known or (self.line.want is Want.ANSWER and singular in ASKED_OF))
            return 1
        plain = (
            word in NEUTRAL
            or word in MANNER
            or word in AUXILIARIES
            or word in self.known.things
            or singular in self.known.things
        )
        looked = self.line.want is Want.ANSWER and word in LOOKED
        self.loose |= not self._is_plain(word)
        return int(plain or looked or word.isdigit() or word in NUMBERS.values())

    def _is_plain(self, word: str) -> bool:
        """Whether a word beside the claims leaves no doubt about them."""
        own = self.known.all_named
        if word in _FRESH and _FRESH & own:
            return True
        if word == "some" and {"little", "bit"} & own:
            return True
        if word in _UNHARMED and _TOUCHES & own:
            return True
        if word in PLAIN or word in MANNER or word in LOOKED:
            return True
        if not own.isdisjoint((word, word.removesuffix("s"), word[:-2])):
            return True
        match word:
            case "of":
                return not (_ALL | {"rest", "none"}).isdisjoint(self.tokens)
            case "one":
                return self.before() in _THE_ONE | {"wee"} or self.before() in own
            case "right":
                return self.after() in PREPOSITIONS | {"here", "there", "beside", "now"} or self.before() == "fits"
            case "mil" | "mils" | "bit" | "meter":
                return _WRITTEN_AS[word] in own
        is_figure = any(NUMBERS.get(other) == word for other in self.line.words)
        is_figure |= (word.isdigit() or word in ONES_AND_TENS) and self.known.tells_figures
        is_whole = self.before() == "all" and word in _COUNTED
        return is_figure or is_whole or (self.line.want is Want.ANSWER and word in PLAIN_TO_A_QUESTION)

    def _deny(self, word: str) -> int:
        if self._denied:
            return 0
        follows = self._phrase_after()
        if word == "no" and (follows is None or not (follows.thing or self.after() in NOUNS)):
            if self.after() in self.known.things and self.at + 2 == len(self.tokens):
                return self._nothing(word)
            self.led_by_no = not self.at
            return int(self.led_by_no)
        if word in DENIALS_ALONE and follows is None and self.after() in SUBJECTS:
            return self._nothing(word)
        if word == "not" and self.before() in AUXILIARIES and follows is None and self.after() in PRONOUNS:
            self.said.append(Says(self.known.every, so=False))
            return 1
        self._denied = word
        return 1

    def _phrase_after(self) -> Says | None:
        """What the phrase after the word here says, articles and the like left out."""
        at = self.at + 1
        while at < len(self.tokens):
            for length in self.known.lengths.get(self.tokens[at], ()):
                if self.tokens[at : at + length] in self._table:
                    return self._table[self.tokens[at : at + length]]
            if self.tokens[at] not in SMALL_WORDS:
                return None
            at += 1
        return None

    def _nothing(self, word: str) -> int:
        """Whether that none of what was asked for is there can be taken: "nothing, it looks normal"."""
        findings = bool(self.line.points) and all(point.finding for point in self.line.points)
        if word in DENIALS_ALONE and not findings:
            return 0
        self.said.append(Says(self.known.every, so=self.line.absent and word in DENIALS_ALONE))
        return 1

    def _denies_all(self) -> bool:
        """At the end: "they do not", "nothing"."""
        if self._denied in DENIALS_ALONE:
            return not self.said and bool(self._nothing(self._denied))
        # "I do not" may be "I do not know" cut short: only the question's own verb is taken up.
        taken_up = ("is", "are", "did", "have", "has", *TAKEN_UP.get(self.line.asks, ()))
        if self._denied != "not" or self.tokens[-1] != "not" or self.tokens[-2:-1] not in [(v,) for v in taken_up]:
            return False
        self.said.append(Says(self.known.every, so=False))
        return True
