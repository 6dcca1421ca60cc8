"""One statement about several alternatives, read word by word, in English: see `alternatives`."""

import re
from dataclasses import dataclass, field
from functools import lru_cache

from assistant.spoken.english.bench_words import (
    AUXILIARIES,
    DETERMINERS,
    FAULTS,
    LOOKED,
    NEUTRAL,
    NOUNS,
    OTHER_PLACES,
    PLAIN,
    PLAIN_TO_A_QUESTION,
    PREPOSITIONS,
    PRONOUNS,
    REPORTS,
    TOLD_APART,
    TURNING,
    TURNS_ONLY_GOOD,
    UNREAL,
)
from assistant.spoken.english.choice_claims import ALSO_VERBS, DENIALS, SKIPPED, WHOLE, Claim, Claims, one_of
from assistant.spoken.english.choices import (
    ALSO_NEUTRAL,
    AT_FAULT,
    EITHER_OR,
    FELT,
    OF_A_PART,
    ORDERED,
    PAST,
    TOLD_LATER,
    parts_of,
)
from assistant.spoken.english.deeds import cut
from assistant.spoken.english.verbs import VERBS
from assistant.spoken.statement import Tokens

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
_WHEN = frozenset({"yesterday", "ago", "already"})
_LEAVES_OUT = frozenset({"but", "except"})
_CARRIES = frozenset({"do", "does", "did", "has", "have", "can"})
_CARRIED = frozenset(
    {"not", "see", "feel", "hear", "hardly", "barely", "scarcely", "have", "use", "share", "mix", "make"}
)
_SOURCES = frozenset({"book", "chart", "table", "list", "label", "guide", "reference", "display", "screen", "policy"})
"""What is looked things up in: "the book says"."""
_ASKED_OF = re.compile(r"^(?:is|are) the (\w+)")
_FURNITURE = frozenset(
    ["curtain", "table", "room", "floor", "desk", "shelf", "drawer", "sink", "bin", "chair", "counter"]
)
"""What no fault of a line, a bag or a patient is found at."""
_SOMEBODY = frozenset({"somebody", "someone"})
_SPEAKERS = frozenset({"he", "she", "patient", "they", "you", "nurse", "partner", "colleague", "somebody", "someone"})
TURNS = TURNING | TURNS_ONLY_GOOD | REPORTS | {"or", "if", "used", "prefer", "wish", "never", "lest"} | UNREAL
"""What turns round, or may, beside a clause that is understood."""


@dataclass
class ChoiceReading:
    """One statement, read word by word.

    Attributes:
        tokens, claims, line: what is read, by which table, in answer to what.
        so, not_so: what it says.
        of_a_part: it speaks of a part, or of a degree.
        left_out: it holds a "but": nothing may be left of what it says beside.
        past, earlier: it speaks of what was, or of a time that is over.
        told: somebody else says so.
    """

    tokens: Tokens
    claims: Claims
    line: str
    so: set[tuple[str, str]] = field(default_factory=set)
    not_so: set[tuple[str, str]] = field(default_factory=set)
    of_a_part: bool = False
    left_out: bool = False
    past: bool = False
    earlier: bool = False
    told: bool = False
    _denied: bool = False
    _again: bool = False
    _named: set[str] = field(default_factory=set)
    _in_claims: set[str] = field(default_factory=set)

    def read(self) -> bool:
        """Whether every word is understood, and something is said."""
        line = frozenset(cut(self.line))
        words = self._words()
        beside: list[str] = []
        at = 0
        while at < len(words):
            for length, claim in self._claims_at(words, at):
                if at and words[at - 1] in _BEYOND - line:
                    return False
                if not self._leads_on(words, at, length):
                    said = words[at : at + length]
                    if said not in self.claims:
                        self._named |= NOUNS & set(said)  # of a pattern: what it is said of may be a part
                        self.of_a_part |= not at and said[0] in NOUNS and self._is_beside(said[0])
                    if not self._take(claim, said, words[at + length : at + length + 1]):
                        return False
                    at += length
                    break
            else:
                if not self._word(words, at, line):
                    return False
                beside.append(words[at])
                at += 1
        text = f" {' '.join(self.tokens)} "
        self.earlier = _EARLIER.search(f" {' '.join(beside)} ") is not None
        self.past |= self.earlier and "looked" in self.tokens
        self.of_a_part |= self._names_a_part() or _FOR_A_WHILE.search(text) is not None
        return not self._denied and bool(self.so | self.not_so or self._lacks_one())

    def take_in(self, other: "ChoiceReading") -> None:
        """Add what another clause of the same statement says."""
        self.so |= other.so
        self.not_so |= other.not_so
        self.of_a_part |= other.of_a_part
        self.left_out |= other.left_out
        self.past |= other.past
        self.earlier |= other.earlier
        self.told |= other.told
        self._named |= other._named
        self._in_claims |= other._in_claims

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
        of_a_part = self.of_a_part or self.left_out
        if found not in left or (of_a_part and found not in OF_A_PART) or (self.earlier and found not in TOLD_LATER):
            return None
        return None if (self.past and found not in PAST) or (self.told and found not in FELT) else found

    def _lacks_one(self) -> bool:
        """Whether all is there except one thing that an order has: "everything but the signature"."""
        words = [word for word in self.tokens if word not in DETERMINERS or word == "all"]
        at = next((at for at, word in enumerate(words) if word in _LEAVES_OUT), 0)
        return self.left_out and words[0] in ("everything", "all") and len(words) == at + 2 and words[-1] in ORDERED

    def _is_complete(self, choice: str) -> bool:
        parts = {part for other, part in self.so if other == choice}
        return WHOLE in parts or set(parts_of(choice.lower())) <= parts

    def _words(self) -> Tokens:
        """The words without those that only make a sentence of them."""
        text = f" {' '.join(self.tokens)} "
        for seen in _SEEN:
            text = text.replace(f" {seen} ", " ")
        tokens = tuple(text.split())
        while tokens[:1] == ("okay",) and len(tokens) > 1:
            tokens = tokens[1:]
        if tokens[:1] == ("no",) and tokens[1:2] and tokens[1] in PRONOUNS | DENIALS:
            tokens = tokens[1:]
        kept = []
        for at, word in enumerate(tokens):
            follows = tokens[at + 1 : at + 2]
            if word in _CARRIES and follows and follows[0] in _CARRIED:
                continue
            if word in ("can", "may") and tokens[at - 1 : at] in (("they",), ("it",), ("both",)) and follows:
                continue
            if word == "this" and follows == ("one",):
                continue
            if word == "one" and tokens[at - 1 : at] in (("this",), ("that",), ("the",)):
                continue
            if word not in SKIPPED:
                kept.append(one_of(word))
        return tuple(kept)

    def _claims_at(self, words: Tokens, at: int) -> list[tuple[int, Claim]]:
        """What begins there and says something, the longest first; a pattern is not denied."""
        found = list(self.claims.listed(words, at))
        more = None if self._denied or self._again else self.claims.patterned(words, at)
        return (
            [more, *found] if more is not None and more[0] > max((length for length, _ in found), default=0) else found
        )

    def _leads_on(self, words: Tokens, at: int, length: int) -> bool:
        """Whether what looks like a claim only leads to another word: "right at the hub", "left hand"."""
        end = at + length
        if words[end - 1] == "any" and end < len(words):
            return True  # "I don't see any | air"
        follows = words[end : end + 1]
        further = self.claims.table.get(words[at + 1 : end + 1]) if words[at] in DENIALS and follows else None
        if further is not None:
            own = self.claims.table.get(words[at:end])
            # "It's not running | quietly"; but "none, it's clear" says the same twice.
            return own is None or not further.so or not further.so <= own.so
        if length == 1 and follows == ("of",) and words[at] not in _TAKE_OF:
            return True  # "a sound of dripping"
        return length == 1 and words[at] in ("right", "left") and follows in (("at",), ("hand",))

    def _take(self, claim: Claim, words: Tokens, follows: Tokens) -> bool:
        denies = self._denied or self._again
        if denies and (words[0] in (*DENIALS, "too") or _DEGREES & set(words)):
            return False  # "not no air"; "no big bubbles"; "not too high" says nothing of too low
        if denies:
            self._named |= set(words)  # "no latex allergy": what of the tape?
        elif words in self.claims:
            self._in_claims |= set(words)
        if denies:
            claim = Claim(claim.not_so, claim.so)
            self._again = follows in (("or",), ("nor",))
            self._denied = False
        self.so |= claim.so
        self.not_so |= claim.not_so
        return True

    def _word(self, words: Tokens, at: int, line: frozenset[str]) -> bool:
        """Whether a word beside the claims is understood."""
        word = words[at]
        if word in DENIALS:
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
            self.told = words[at - 1] in ("he", "she", "patient")
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
        if word in NEUTRAL or named or word in _BETWEEN or word.isdigit():
            return True
        self.of_a_part = True  # where a fault is need not be understood: "dripping from the bottom seam"
        return word not in TURNS | FAULTS | AUXILIARIES and not PREPOSITIONS.isdisjoint(words[max(at - 3, 0) : at])

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
            named = [one_of(word) in self._named or word in self._named for word in group]
            besides = [one_of(word) in self._in_claims for word in group]
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
        if any((word in VERBS or word in ALSO_VERBS) and word not in NOUNS for word in group):
            continue  # "the site, and feel it"
        found.append((group, (*[False] * (len(group) - 1), owner == "its ")))
    return tuple(found)
