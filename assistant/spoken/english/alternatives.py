"""Which of several alternatives words say, in English: "not torn, in date" of "sealed and in date, torn or expired".

As in `gist`, every word has to be known, and whatever may turn the meaning round ends the reading. An alternative
of several parts is said where all its parts are; one may also be said by denying all others, and one of two that
leave nothing between them by denying the other.
"""

import re
from dataclasses import dataclass, field
from functools import lru_cache
from itertools import pairwise

from assistant.spoken.english.bench_words import (
    DETERMINERS,
    FRAME,
    LOOKED,
    NEUTRAL,
    NOUNS,
    OTHER_PLACES,
    PLAIN,
    PLAIN_TO_A_QUESTION,
    PREPOSITIONS,
    PRONOUNS,
    TOLD_APART,
    TURNING,
    UNFINISHED_ENDS,
)
from assistant.spoken.english.bound import is_not_quite
from assistant.spoken.english.choices import (
    ALSO_NEUTRAL,
    ASPECTS,
    AT_FAULT,
    DENIED_BY,
    EITHER_OR,
    FELT,
    OF_A_PART,
    ORDERED,
    PAST,
    parts_of,
    ways_of,
)
from assistant.spoken.english.deeds import cut
from assistant.spoken.english.framing import asks_at_its_end, is_put_off
from assistant.spoken.english.verbs import VERBS
from assistant.spoken.statement import Tokens

_DENIALS = frozenset({"not", "no", "none", "nothing", "nobody", "neither", "never", "without", "nor"})
_BETWEEN = frozenset(
    {"see", "any", "more", "sign", "signs", "of", "them", "to", "single", "all", "longer", "visible", "been"}
)
"""What may stand between a denial and what it denies."""
_FEWER = frozenset(
    {"one", "two", "three", "four", "some", "most", "few", "couple", "first", "second", "third", "last", "only"}
    | {"bit", "little", "slightly", "small", "tiny", "big", "like", "quite", "pretty", "fairly"}
)
"""Words by which something is said of a part, or of a degree."""
_ORDINALS = frozenset({"first", "second", "third", "last"})
_BEYOND = frozenset({"above", "below", "over", "under", "outside", "beyond", "than"})
"""What puts a thing out of what follows: "above the usual rate"."""
_DEGREES = frozenset({"bit", "little", "slightly", "small", "tiny", "big", "few", "couple", "lots", "loads", "some"})
_SEEN = (
    "as far as i can see",
    "as far as i can tell",
    "so far as i can see",
    "that i can see",
    "that i can find",
    "this time",
    "by itself",
)
"""What only tells that it was looked at."""
_ONLY_HEARD = frozenset({"okay", "right", "alright", "all", "sure", "ready", "great", "yes"})
_PAST = frozenset({"was", "were", "had"})
_EARLIER = re.compile(
    r" (?:this (?:morning|afternoon)|last (?:night|time)|earlier|yesterday|before|at first|at the start) "
)
"""When something was so that need not be so any more."""
_FOR_A_WHILE = re.compile(r" for (?:\w+ ){1,3}(?:seconds?|minutes?|mins?|hours?|days?) ")
_TAKE_OF = frozenset(
    {
        "free",
        "clear",
        "full",
        "none",
        "some",
        "nothing",
        "plenty",
        "lots",
        "neither",
        "both",
        "all",
        "out",
        "rid",
        "one",
    }
    | {"above", "below", "upstream", "downstream", "short"}
)
"""Words that say what they say before an "of", too: "free of air"; "a sound of dripping" is nothing sound."""
_ALSO_VERBS = {"stay": "staying"}
_NEAR = ("nearly", "almost")
_WHEN = frozenset({"yesterday", "ago", "already"})
_SKIPPED = (FRAME | {"has", "am", "been"}) - {"one", "this", "there", "here", "okay", "see"}
_BUT = re.compile(r" (?:apart from|aside from|except(?: for)?) ")
_TOUCHED = re.compile(r" when i (?:push|press|touch|feel|flush|move)(?: (?:on )?(?:it|there|the syringe))? ")
_LEAVES_OUT = frozenset({"but", "except"})
_CARRIES = frozenset({"do", "does", "did", "has", "have", "can"})
_SOURCES = frozenset({"book", "chart", "table", "list", "label", "guide", "reference", "display", "screen", "policy"})
"""What is looked things up in: "the book says"."""
_ASKED_OF = re.compile(r"^(?:is|are) the (\w+)")
_ELSEWHERE = re.compile(
    r"\bnext (?:door|bed|bay|room|patient|station|bench)\b|\b(?:neither|none|both|one) of (?:us|you)\b"
)
_DENIED_BUT = re.compile(r"\b(?:not|never)\b.*\b(?:but|except|apart)\b")
_OF_THE_LEARNER = re.compile(
    r"\bmy (?:\w+ )?(?:hands?|arms?|fingers?|wrists?|skin|bag|back|head|chest|side)\b|\b(?:for|with) me\b"
)
"""What is the learner's own, where a patient or a thing is asked about: "my hand's swollen"."""
_OFF_OR_BACK = re.compile(r"\balarms? (?:is |are |has |was |now )*off\b|\bmoved back\b")
"""An alarm that is off may have gone off; what moved back is where it was."""
_FURNITURE = frozenset(
    ["curtain", "table", "room", "floor", "desk", "shelf", "drawer", "sink", "bin", "chair", "counter"]
)
"""What no fault of a line, a bag or a patient is found at."""
_SOMEBODY = frozenset({"somebody", "someone"})
_SPEAKERS = frozenset({"he", "she", "they", "you", "nurse", "partner", "colleague", "somebody", "someone"})
_WHOLE = ""


@dataclass(frozen=True)
class _Claim:
    """What a phrase says: parts of alternatives that are so, and parts that are not; "" is a whole one."""

    so: frozenset[tuple[str, str]]
    not_so: frozenset[tuple[str, str]] = frozenset()


def chosen(tokens: Tokens, choices: Tokens, sayings: tuple[tuple[str, str], ...], line: str) -> str | None:
    """The alternative that the words say; None where they say none, more than one, or are not wholly understood.

    Args:
        tokens: the words.
        choices: the alternatives.
        sayings: an author's ways to say one: the words, and the alternative.
        line: what was asked, "" where it is not known.
    """
    if not tokens or set(tokens) <= _ONLY_HEARD:
        return None
    tokens = tuple(_TOUCHED.sub(" ", _BUT.sub(" but ", f" {' '.join(tokens)} ")).split())
    exact = _listed(choices).get(tokens, frozenset())
    if len(exact) == 1:
        return next(iter(exact))
    if (
        len(tokens) > 1
        and tokens[-1] in ("is", "are")
        and tokens[0] in ("neither", "both", "none", "only", "the", "just")
    ):
        tokens = tokens[:-1]  # "neither one is"
    tokens = tokens[:-1] if tokens[-1:] == ("yet",) and set(tokens) & _DENIALS else tokens
    claims = _claims(choices, sayings)
    if not tokens or is_put_off(tokens) or tokens[-1] in UNFINISHED_ENDS or _asks(tokens, claims):
        return None
    if (
        tokens[0] == "a"
        and len(tokens) > 3
        and any(word.removesuffix("s") in NOUNS and word.removesuffix("s") in cut(line) for word in tokens[1:3])
    ):
        return None  # "a cloudy bag's no good": not this one
    if _repeats(tokens, cut(line)) or _goes_on(tokens) or ("looked", "like") in pairwise(tokens):
        return None
    for at, word in enumerate(tokens[:-3]):
        if word == "not" and tokens[at + 2] == "and" and tokens[at + 3 : at + 4] in claims:
            return None  # "not dry and hard": is it hard, or is it not?
    text = " ".join(tokens)
    if any(turned.search(text) for turned in (_DENIED_BUT, _ELSEWHERE, _OF_THE_LEARNER, _OFF_OR_BACK)) or is_not_quite(
        text
    ):
        return None  # "it is not sound except a kink"; "the pump next door is alarming"
    reading = _Reading(tokens, claims, line)
    found = reading.choice(choices) if reading.read() else None
    if found is not None and _is_with_another(tokens, found, line):
        return None
    if found is not None and tokens[:2] in (("i", "am"), ("we", "are")) and "not sure" not in found:
        return None  # "I'm comfortable": it is not the learner who is asked about
    if found is not None and found.startswith("a ") and tokens[:2] == ("this", "is") and len(tokens) == 3:
        return None  # "this is hard"
    of_things = found is not None and (found.startswith("it has ") or found == "together")
    return None if of_things and {"i", "we"} & set(tokens) else found  # "I moved it", "we looked it up together"


def _is_with_another(tokens: Tokens, choice: str, line: str) -> bool:
    """Whether it is compared with another thing than the line names: "level with the pump"."""
    named = re.search(rf"\b{re.escape(choice.lower())} with the (\w+)", line.lower())
    told = re.search(r"\bwith (?:the |my |her |his )?(\w+)", " ".join(tokens))
    return named is not None and told is not None and told[1] in NOUNS and told[1] != named[1]


@lru_cache(maxsize=256)
def _listed(choices: Tokens) -> dict[Tokens, frozenset[str]]:
    """The alternatives that a listed way to say one means, by its words."""
    found: dict[Tokens, frozenset[str]] = {}
    for choice in choices:
        for way in ways_of(choice, choices):
            found[cut(way)] = found.get(cut(way), frozenset()) | {choice}
    return found


def _repeats(tokens: Tokens, line: Tokens) -> bool:
    """Whether it is a piece of the line, said after the assistant: "air in the set"."""
    return (
        len(tokens) > 1
        and tokens[-1] in NOUNS
        and any(line[at : at + len(tokens)] == tokens for at in range(len(line)))
    )


def _asks(tokens: Tokens, claims: dict[Tokens, _Claim]) -> bool:
    """Whether the end asks: "it's dry, right"; not in "complete and right"."""
    said = _content(tokens)
    return asks_at_its_end(tokens) and not (
        tokens[-1] == "right" and any(said[-length:] in claims for length in range(2, len(said) + 1))
    )


def _goes_on(tokens: Tokens) -> bool:
    """Whether the end only names what comes next: "the bag's fine, now the set"."""
    bare = tuple(word for word in tokens if word not in DETERMINERS)
    return len(bare) > 1 and bare[-1] in NOUNS and bare[-2] in ("now", "then", "next")


@lru_cache(maxsize=256)
def _claims(choices: Tokens, sayings: tuple[tuple[str, str], ...]) -> dict[Tokens, _Claim]:
    """What each phrase says: an author's first, then what is listed of whole alternatives, then what is of parts."""
    table: dict[Tokens, _Claim] = {}
    authored = [*((choice, choice) for choice in choices), *sayings]
    authored += [(f"{choice} one", choice) for choice in choices]
    authored += [(short, choice) for said, choice in sayings if (short := _without_one(said))]
    _add(table, [(said, _Claim(frozenset({(choice, _WHOLE)}))) for said, choice in authored])
    whole = [
        (way, choice)
        for choice in choices
        for way in (*ways_of(choice, choices), *_missing(choice, choices), *_going_on(choice), *_nearly(choice))
    ]
    _add(table, [(way, _Claim(frozenset({(choice, _WHOLE)}))) for way, choice in whole])
    of_parts: list[tuple[str, _Claim]] = []
    for choice in choices:
        for part in parts_of(choice.lower()):
            aspect = ASPECTS[part]
            mine = frozenset({(choice, part)})
            of_parts += [(way, _Claim(mine)) for way in (part, *aspect.so)]
            of_parts += [(way, _Claim(frozenset(), mine)) for way in aspect.not_so]
        denied = frozenset({(choice, _WHOLE)})
        of_parts += [(way, _Claim(frozenset(), denied)) for way in DENIED_BY.get(choice.lower(), ())]
    _add(table, of_parts, over=True)
    return table


def _add(table: dict[Tokens, _Claim], rows: list[tuple[str, _Claim]], *, over: bool = False) -> None:
    """Add rows to a table; what it held before counts first, but for what `over` adds that it is not."""
    before = dict(table)
    for way, claim in rows:
        said = cut(way)
        words = _content(said)
        # "Has fluid" must not make a claim of every "fluid".
        worn_down = len(words) == 1 < len(said) and words[0] in (NEUTRAL | NOUNS | _DENIALS) - {"hear"}
        if not words or worn_down or (words in before and not over):
            continue
        old = table.get(words, _Claim(frozenset()))
        if words in before:
            claim = _Claim(frozenset(), claim.not_so)
        table[words] = _Claim(old.so | claim.so, old.not_so | claim.not_so)


def _going_on(choice: str) -> tuple[str, ...]:
    """What is so, as it comes about: "staying in" of "stays in"."""
    words = choice.lower().removeprefix("it ").split()
    base = words[0].removesuffix("s")
    if base == words[0] or base not in VERBS | _ALSO_VERBS:
        return ()
    return (" ".join((VERBS[base].ing if base in VERBS else _ALSO_VERBS[base], *words[1:])),)


def _nearly(choice: str) -> tuple[str, ...]:
    """What is nearly so, in all the words for what is so: "almost used up" of "nearly empty"."""
    near, _, so = choice.lower().partition(" ")
    return tuple(f"{word} {way}" for way in (so, *ways_of(so, ())) for word in _NEAR) if near in _NEAR else ()


def _without_one(said: str) -> str:
    """The words between: "left" of "the left one"; empty where it is nothing of the kind."""
    words = cut(said)
    return " ".join(words[1:-1]) if len(words) > 2 and words[0] in ("the", "a") and words[-1] == "one" else ""


def _missing(choice: str, choices: Tokens) -> tuple[str, ...]:
    """How it is said that a part of an order is not there."""
    if choice != "something missing":
        return ()
    taken = {word for other in choices for part in parts_of(other) for word in part.split()}
    forms = (
        *("no {}", "{} missing", "{} not there", "not see {}", "not find {}", "without {}", "forgot {}"),
        *("left out {}", "left {} out", "{} left out"),
    )
    return tuple(form.format(noun) for noun in ORDERED if noun not in taken for form in forms)


def _content(tokens: Tokens) -> Tokens:
    return tuple(_one(word) for word in tokens if word not in _SKIPPED and word not in ("do", "does", "did", "can"))


def _one(word: str) -> str:
    """A thing at the bench without its s, which may be a short "is": "site's changed" comes as "sites changed"."""
    return word[:-1] if word[-1:] == "s" and word[:-1] in NOUNS else word


@dataclass
class _Reading:
    """One statement, read word by word.

    Attributes:
        tokens, claims, line: what is read, by which table, in answer to what.
        so, not_so: what it says.
        of_a_part: it speaks of a part, or of a degree.
        left_out: it holds a "but": nothing may be left of what it says beside.
        past: it speaks of what was.
        told: somebody else says so.
    """

    tokens: Tokens
    claims: dict[Tokens, _Claim]
    line: str
    so: set[tuple[str, str]] = field(default_factory=set)
    not_so: set[tuple[str, str]] = field(default_factory=set)
    of_a_part: bool = False
    left_out: bool = False
    past: bool = False
    told: bool = False
    _denied: bool = False
    _again: bool = False
    _named: set[str] = field(default_factory=set)
    _in_claims: set[str] = field(default_factory=set)

    def read(self) -> bool:
        """Whether every word is understood, and something is said."""
        line = frozenset(cut(self.line))
        words = self._words()
        longest = max(map(len, self.claims), default=0)
        at = 0
        while at < len(words):
            for length in range(min(longest, len(words) - at), 0, -1):
                claim = self.claims.get(words[at : at + length])
                if claim is not None and at and words[at - 1] in _BEYOND - line:
                    return False
                if claim is not None and not self._leads_on(words, at, length):
                    if not self._take(claim, words[at : at + length], words[at + length : at + length + 1]):
                        return False
                    at += length
                    break
            else:
                if not self._word(words, at, line):
                    return False
                at += 1
        text = f" {' '.join(self.tokens)} "
        earlier = _EARLIER.search(text) is not None
        self.past |= earlier and "looked" in self.tokens
        self.of_a_part |= earlier or self._names_a_part() or _FOR_A_WHILE.search(text) is not None
        return not self._denied and bool(self.so | self.not_so or self._lacks_one())

    def choice(self, choices: Tokens) -> str | None:
        """The one alternative that all of it fits."""
        if self.so & self.not_so:
            return None
        if "something missing" in choices and self._lacks_one():
            return "something missing"
        said = {choice for choice, _part in self.so}
        complete = {choice for choice in said if self._is_complete(choice)}
        left = [choice for choice in choices if all(choice != denied for denied, _part in self.not_so)]
        worse = complete & OF_A_PART
        if self.left_out and len(worse) == 1 and said == complete:
            (found,) = worse  # "breathing easily, but her chest hurts"
        elif len(complete) == 1 and (len(said) == 1 or complete <= OF_A_PART):
            (found,) = complete
        elif (
            not complete
            and len(left) == 1
            and not self._named & set(ORDERED)
            and said <= set(left)
            and (len(choices) > 2 or set(choices) in EITHER_OR)
        ):
            (found,) = left
        else:
            return None
        if found not in left or ((self.of_a_part or self.left_out) and found not in OF_A_PART):
            return None
        return None if (self.past and found not in PAST) or (self.told and found not in FELT) else found

    def _lacks_one(self) -> bool:
        """Whether all is there except one thing that an order has: "everything but the signature"."""
        words = [word for word in self.tokens if word not in DETERMINERS or word == "all"]
        at = next((at for at, word in enumerate(words) if word in _LEAVES_OUT), 0)
        return self.left_out and words[0] in ("everything", "all") and len(words) == at + 2 and words[-1] in ORDERED

    def _is_complete(self, choice: str) -> bool:
        parts = {part for other, part in self.so if other == choice}
        return _WHOLE in parts or set(parts_of(choice.lower())) <= parts

    def _words(self) -> Tokens:
        """The words without those that only make a sentence of them."""
        text = f" {' '.join(self.tokens)} "
        for seen in _SEEN:
            text = text.replace(f" {seen} ", " ")
        tokens = tuple(text.split())
        while tokens[:1] == ("okay",) and len(tokens) > 1:
            tokens = tokens[1:]
        if tokens[:1] == ("no",) and tokens[1:2] and tokens[1] in PRONOUNS | _DENIALS:
            tokens = tokens[1:]
        kept = []
        for at, word in enumerate(tokens):
            follows = tokens[at + 1 : at + 2]
            if word in _CARRIES and follows in (("not",), ("see",), ("feel",), ("hear",)):
                continue
            if word in ("can", "may") and tokens[at - 1 : at] in (("they",), ("it",), ("both",)) and follows:
                continue
            if word == "this" and follows == ("one",):
                continue
            if word == "one" and tokens[at - 1 : at] in (("this",), ("that",), ("the",)):
                continue
            if word not in _SKIPPED:
                kept.append(_one(word))
        return tuple(kept)

    def _leads_on(self, words: Tokens, at: int, length: int) -> bool:
        """Whether what looks like a claim only leads to another word: "right at the hub", "left hand"."""
        end = at + length
        if words[end - 1] == "any" and end < len(words):
            return True  # "I don't see any | air"
        follows = words[end : end + 1]
        if words[at] in _DENIALS and follows and words[at + 1 : end + 1] in self.claims:
            return True  # "it's not running | quietly"
        if length == 1 and follows == ("of",) and words[at] not in _TAKE_OF:
            return True  # "a sound of dripping"
        return length == 1 and words[at] in ("right", "left") and follows in (("at",), ("hand",))

    def _take(self, claim: _Claim, words: Tokens, follows: Tokens) -> bool:
        denies = self._denied or self._again
        if denies and (words[0] in (*_DENIALS, "too") or _DEGREES & set(words)):
            return False  # "not no air"; "no big bubbles"; "not too high" says nothing of too low
        self._in_claims |= set(words)
        if denies:
            claim = _Claim(claim.not_so, claim.so)
            self._again = follows in (("or",), ("nor",))
            self._denied = False
        self.so |= claim.so
        self.not_so |= claim.not_so
        return True

    def _word(self, words: Tokens, at: int, line: frozenset[str]) -> bool:
        """Whether a word beside the claims is understood."""
        word = words[at]
        if word in _DENIALS:
            return self._deny(word)
        if word == "or":
            return self._again
        if self._denied:
            return word in _BETWEEN
        if word in _LEAVES_OUT:
            self.left_out = word == "but"
            return self.left_out
        if word in _PAST:
            self.past = True
            return True
        if word in _WHEN:
            return True
        if word in _FEWER - (_ORDINALS & line):
            self.of_a_part = True
            return True
        if word in _SOURCES and words[at + 1 : at + 2] == ("says",):
            return True
        if word == "says" and words[at - 1 : at] and words[at - 1] in _SOURCES:
            return True
        if word in _SOMEBODY and at == 0:
            self.of_a_part = True  # of a fault it does not matter who brought it about
            return True
        if word == "says" and words[at - 1 : at] and words[at - 1] in _SPEAKERS:
            self.told = words[at - 1] in ("he", "she")
            return self.told
        apart = word in TOLD_APART or OTHER_PLACES.get(word, frozenset()) & line
        if (word in TURNING and not (word == "until" and set(words[at : at + 2]) <= line | {"next"})) or (
            apart and word not in line
        ):
            return False
        self._named |= {word, word.removesuffix("ed")}
        if word in ALSO_NEUTRAL:
            return True
        if word in NOUNS:
            known = word in line or f"{word}s" in line
            is_in = words[at - 1 : at] == ("in",)
            self.of_a_part |= not known or (self._is_an_end(word) and is_in) or (not at and self._is_beside(word))
            if word in _FURNITURE and not known:
                return False
            return known or word in AT_FAULT or (at > 0 and words[at - 1] in PREPOSITIONS | _LEAVES_OUT)
        self.of_a_part |= word in NEUTRAL and word not in PLAIN | PLAIN_TO_A_QUESTION | _BETWEEN | LOOKED | line
        named = word in line or word.removesuffix("s") in line  # "potassium's low" comes as "potassiums low"
        return word in NEUTRAL or named or word in _BETWEEN or word.isdigit()

    def _deny(self, word: str) -> bool:
        if self._denied:
            return False
        self._denied = True
        self._again = self._again or word == "neither"
        return True

    def _is_an_end(self, word: str) -> bool:
        """Whether a line leads from there or to there: "in the chamber" is a part of "from chamber to tip"."""
        return re.search(rf"\b(?:from|to) (?:the )?{word}\b", self.line.lower()) is not None

    def _is_beside(self, word: str) -> bool:
        """Whether the line asks about something else: "the gauze" at "Lift the gauze. Is the site dry?"."""
        asked = _ASKED_OF.search(" ".join(cut(self.line.rpartition(". ")[2])))
        return asked is not None and asked[1] in NOUNS and asked[1] not in (word, f"{word}s")

    def _names_a_part(self) -> bool:
        """Whether it is said of some of what the line names together: "none in the syringe" of syringe and line."""
        for group, owned in _together(self.line):
            named = [_one(word) in self._named or word in self._named for word in group]
            besides = [_one(word) in self._in_claims for word in group]
            # "The bag and its date": whoever speaks of the bag speaks of the whole.
            rest = zip(named, besides, owned, strict=True)
            if any(named) and not all(said or beside or its for said, beside, its in rest):
                return True
        return False


@lru_cache(maxsize=256)
def _together(line: str) -> tuple[tuple[tuple[str, ...], tuple[bool, ...]], ...]:
    """What a line names side by side, and which of it belongs to another: "bag and its date"."""
    found = []
    lead = r"(?:the |each |new |old |small )?"
    for match in re.finditer(rf"\b{lead}(\w+)((?:, \w+)*),? and ((?:its |the )?)(?:new |old )?(\w+)", line.lower()):
        first, further, owner, last = match.groups()
        group = (first, *re.findall(r"\w+", further), last)
        if any((word in VERBS or word in _ALSO_VERBS) and word not in NOUNS for word in group):
            continue  # "the site, and feel it"
        found.append((group, (*[False] * (len(group) - 1), owner == "its ")))
    return tuple(found)
