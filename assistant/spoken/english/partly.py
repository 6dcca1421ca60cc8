"""Whether a statement only speaks of some of what was asked, in English: "the name matches" of name and date."""

import re
from collections.abc import Sequence
from functools import lru_cache
from itertools import pairwise

from assistant.spoken.english.bench_words import ARTICLES, NOUNS, PRONOUNS
from assistant.spoken.english.deeds import Deed, cut
from assistant.spoken.english.lines import Line
from assistant.spoken.english.verbs import VERBS
from assistant.spoken.statement import Tokens, Want

_ALL = frozenset({"every", "all", "each", "both"})
_SOME = frozenset({"one", "two", "some", "few", "couple", "half", "most"})
_FROM_TO = re.compile(r"\bfrom (?:the )?(\w+) to (?:the )?(\w+)")
_LEADS_TO_THING = frozenset({"new", "old", "down", "up", "off", "clean"})
_COUNTED = frozenset({"one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten"})
_NO_MORE = re.compile(r"\b(?:and )?that is all (?=$|i )")
"""What says of itself that there was no more to it: "I told him it stays, that's all"."""
_NOT_LEFT = frozenset({"out", "off", "away", "removed", "goes"})
_ONE_OF_TWO = frozenset({"one", "left", "right", "first"})
_OF_THE_WHOLE = re.compile(
    r"\b(?:everything|all of (?:it|them|those)|(?:it|they|these|those) (?:is |are |do |does )?all|the (?:whole )?lot|"
    r"all (?:two|three|four|five|six|seven|eight))\b"
)
"""What speaks of all that is asked about, whatever else is named beside."""
WRITES = frozenset({"document", "chart", "record"})
"""Where something is written down, all sorts of things may be named."""
_HOW_THE_PATIENT_IS = frozenset({"patient", "patients"})
_A_BIT = frozenset({("a", "bit"), ("a", "little"), ("little", "bit")})


def _things_of(deeds: Sequence[Deed]) -> list[frozenset[str]]:
    """Words for what each of the deeds is done to; where somebody is written of, for the patient at the list's end."""
    found = [frozenset(word for name in deed.things for word in name.split()) for deed in deeds]
    writes = bool(found) and deeds[0].verb.base in WRITES
    return [group or _HOW_THE_PATIENT_IS for group in found] if writes else found


def _names_one_of(tokens: Tokens, line: Line) -> bool:
    """Whether one verb is to be done to several things, and is said to be done to fewer than half, or one of two."""
    first = [deed for deed in line.deeds if deed.verb == line.deeds[0].verb]
    groups = _things_of(first)
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


@lru_cache(maxsize=512)
def _two_of(text: str) -> tuple[frozenset[str], ...]:
    """What tells apart the two things that one verb is done to: roller and extension of two clamps; else nothing."""
    first = re.split(r"[.:]", text.lower())[0]
    parts = re.split(r",? and ", first)
    if len(parts) != 2 or "," in parts[0] or "with" in first.split() or next(iter(parts[1].split()), "") in VERBS:
        return ()
    one, other = (NOUNS & set(cut(part)) for part in parts)
    return (one - other, other - one) if one - other and other - one else ()


_LABELLED_WITH = re.compile(r"\b(?:label|mark)\b.* with ([a-z ,]+)")
_AS_TOLD = {
    "time": frozenset({"oclock", "past", "quarter", "hour", "clock", "am", "pm", "when", "now"}),
    "date": frozenset({"today", "todays", "day"}),
    "volume": frozenset({"mil", "mils", "ml", "millilitres", "milliliters", "amount"}),
    "dose": frozenset({"mg", "milligrams", "grams", "gram", "micrograms", "amount", "strength"}),
    "drug": frozenset({"name", "medicine", "medication"}),
}
"""How what belongs on a label may be told."""


@lru_cache(maxsize=512)
def _on_the_label(text: str) -> tuple[frozenset[str], ...]:
    """What a line wants on a label, each by its words."""
    found = _LABELLED_WITH.search(text.lower())
    names = re.split(r", and |, | and ", found[1]) if found and " and " in found[1] else []
    groups = (frozenset(name.split()) - ARTICLES for name in names)
    return tuple(group.union(*(_AS_TOLD.get(word, frozenset()) for word in group)) for group in groups)


def _begins_with_some(tokens: Tokens, line: Line) -> bool:
    """Whether some of the things of a list are the subject: "time and volume are down", of five."""
    at = next((at for at, word in enumerate(tokens) if word in ("is", "are")), 0)
    groups = _things_of(line.deeds)
    if not at or len(groups) < 2 or not all(groups) or any(deed.verb != line.deeds[0].verb for deed in line.deeds):
        return False
    names = frozenset().union(*groups)
    subject = set(tokens[:at])
    named = sum(bool(group & subject) for group in groups)
    return bool(named) and subject <= names | ARTICLES | {"and", "both", "that"} and 2 * named <= len(groups)


def _counts_some(tokens: Tokens) -> bool:
    """Whether a number of several things is told: "two of them"; not "all three of them", "three of three"."""
    for at, word in enumerate(tokens[:-2]):
        if word in _COUNTED and tokens[at + 1] == "of" and not _ALL & set(tokens[:at]):
            whole = next((other for other in tokens[at + 2 :] if other not in ARTICLES), "")
            if whole in _COUNTED - {word} or whole in ("them", "those", "these"):
                return True
    return False


def of_a_part(tokens: Tokens, line: Line) -> bool:
    """Whether only some of what the question joins is named: "the name matches" says nothing of the date."""
    words = set(line.words)
    tokens = tuple(_NO_MORE.sub("", f"{' '.join(tokens)} ").split())
    if _ALL & words and _SOME & set(tokens) - words and not _ALL & set(tokens):
        return True  # "I undid one"
    told = set(tokens)
    if line.want is Want.DONE and not _ALL & told:
        things = {word for deed in line.deeds for thing in deed.things for word in thing.split()} & set(line.words)
        pairs = {word for word in things & NOUNS if word[-1:] == "s" and word[:-1] in NOUNS}
        pairs -= {f"{owner}s" for owner in re.findall(r"(\w+)'s\b", line.text.lower())}
        single = {word[:-1] for word in pairs} & told
        # "Glove's" comes as "gloves".
        of_one = any(one in _ONE_OF_TWO and word in pairs for one, word in pairwise(tokens))
        if of_one or (single and not pairs & told):
            return True  # "one glove is on"
    if (
        line.want is Want.DONE
        and not words & {"little", "bit"}
        and (told & {"slightly"} or _A_BIT & set(pairwise(tokens)))
        and not told & {"over", "under", "less", "above", "below"}
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
    if line.want is Want.DONE and not _ALL & told:
        singular = told | {word.removesuffix("s") for word in told}
        if len({bool(group & singular) for group in _two_of(line.text)}) > 1:
            return True  # "the roller's closed", of roller and extension
    with_it = [
        bool(group & told) or (numbers and "time" in group)
        for group in _on_the_label(line.text)
        for numbers in [bool(_COUNTED & told)]
    ]
    if any(with_it) and not all(with_it) and not told & {"everything", "both"}:
        return True  # "I wrote the date on it"
    if not _ALL & told and line.want is Want.DONE and _begins_with_some(tokens, line):
        return True
    if _counts_some(tokens):
        return True  # "four of the five match"
    if not _ALL & told and _names_one_of(tokens, line):
        return True  # "I labelled the bag"
    said = [bool(group & told) for group in line.told] if not _ALL & told else []
    if any(said) and 2 * sum(said) <= len(said):
        return True  # "told them why"
    if _OF_THE_WHOLE.search(" ".join(tokens)):
        return False
    named = [bool(group & set(tokens)) for group in line.joined]
    return any(named) and not all(named)
