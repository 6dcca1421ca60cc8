"""Whose it is, in English: whether what is said is said of the line's own thing, at its own place.

"The basin is free" says nothing of the block that was to be freed, "paused the alarm" nothing of the pump. What may be
meant of another thing is asked about; what goes the other way, or further than the line wants, is not taken.
"""

import itertools
import re
from collections.abc import Iterable

from assistant.spoken.english.bench_words import ARTICLES, NOUNS
from assistant.spoken.english.deeds import ALSO_CALLED, Deed
from assistant.spoken.english.known import Known
from assistant.spoken.statement import Tokens, Want

_NOT_QUITE = re.compile(
    r"\b(?:as good as|used to|more or less|all but|next to|close to) (?!new\b|her\b|him\b|the\b|it\b|them\b)"
)
_TOWARDS = frozenset({"into", "onto"})
_AWAY = frozenset({"off", "out", "from"})
_RESTS = frozenset(
    [
        "table",
        "tray",
        "counter",
        "floor",
        "bed",
        "trolley",
        "shelf",
        "desk",
        "drawer",
        "sink",
        "chair",
        "lap",
        "station",
        "bench",
        "bedside",
    ]
)
"""Where things lie that are at no place of their own."""
_AT = frozenset({"on", "in", "onto", "into", "over", "under", "beside", "at"})
_FURTHER = re.compile(r"\b(?:all the way|wide|fully|completely|full)\b")
_FOR_NOW = re.compile(r"\bfor (?:now|the moment|the minute|the time being|a (?:second|moment|minute|bit|while))\b")
"""What will not stay so."""
_TO_THE_END = re.compile(r"\b(?:to the (?:very )?end|to the bottom|all of it|the whole lot|it all|everything|empty)\b")
"""Too far, where some was to be left."""
_PART_OF_IT = frozenset({"clamp", "clamps", "clip"})
_OF_THE_WHOLE = frozenset({"rinse", "flush", "press", "hit"})
_SEEN_COMING = (("drop",), ("drip",), ("bead",), ("droplet",), ("label",), ("feel",), ("look",), ("click",))
"""What is seen or heard at the end, and not what was done something to."""
_TOLD_ME = re.compile(r"\b(?:told|informed|asked|called) (?:me|us)\b")
_TO_OTHERS = frozenset({"introduce", "present", "tell", "inform", "say", "explain", "name", "identify", "ask", "call"})
"""What is done to somebody else, or of somebody else."""
_TO_MYSELF = re.compile(
    r"\b(?:introduced|presented|told|informed|named|identified|asked|called|reminded|said to)(?: only| just)? "
    r"(?:me|myself|ourselves|us)\b|\b(?:gave|said|told (?:her|him|them)|knows|know) (?:her |him |them )?"
    r"(?:my|our) names?\b|\bwho (?:i am|we are)\b|\bsaid (?:hello|hi|good morning)\b"
)
_BETWEEN = ARTICLES | {
    "new",
    "old",
    "small",
    "big",
    "little",
    "own",
    "of",
    "all",
    "each",
    "every",
    "both",
    "second",
    "first",
}


_STILL_AT_IT = re.compile(
    r"\bi am (?:now |just |still )*(?:on|at|onto|on to|up to) (?:the |to the )?(\w+)(?= now| next|$)"
)
"""What somebody is busy with: "I'm on the time now"."""


_YET_TO_COME = re.compile(r"(?<!ready )(?<!good )(?<!set )(?<!timer )\bto (?:come|go|follow|do)\b(?! to)")
"""What is still to be done: "the rest to come"."""
_UNTOUCHED_ITSELF = re.compile(
    r"\b(?:not|never|without) (?:even )?touch(?:ed|ing)? (?:it|them|any|either|any of (?:it|them))$"
)
"""Whoever was to do something to a thing and did not touch it has not done it."""
_ONLY_LOOKS = re.compile(r"\b(?:look|looks|looked|seem|seems|seemed|felt|feels)\b")
_HUNG_ON = re.compile(r"\b(?:hang|put|place|lay|set) (?:the|your|its|a) .*?\bon (?:the|a|its) (\w+)")
_TOWARDS_IT = re.compile(r"\btowards the (\w+)")


def goes_astray(tokens: Tokens, known: Known) -> bool:
    """Whether it is not quite so, is further than the line wants, or was told the other way round."""
    text = " ".join(tokens)
    if is_not_quite(text):
        return True
    line = known.line
    if _YET_TO_COME.search(text) and "left" not in line.words and not {"nothing", "no", "none"} & set(tokens):
        return True
    towards = _TOWARDS_IT.search(" ".join(line.words))
    if towards is not None and re.search(rf"\baway from (?:the )?{towards[1]}\b", text):
        return True
    if _UNTOUCHED_ITSELF.search(text) and _ONLY_LOOKS.search(text):
        return True
    place = _HUNG_ON.search(" ".join(line.words))
    if place is not None and re.match(rf"(?:the |that |its )?{place[1]} is\b", text):
        return True  # "the pole is up", where the bag was to be hung on it
    if any(found[1] in NOUNS for found in _STILL_AT_IT.finditer(text)):
        return True
    if _FOR_NOW.search(text) and not {"pause", "stop", "hold"} & set(line.words):
        return True
    if line.want is Want.ANSWER:
        return False
    if {"little", "bit"} & set(line.words) and any(deed.verb.base == "open" for deed in line.deeds):
        return _FURTHER.search(text) is not None
    if "left" in line.words and "keep" in line.words and _TO_THE_END.search(text):
        return True
    if any(
        one == "half" and other in {word for deed in line.deeds for word in deed.verb.past} - {"filled"}
        for one, other in itertools.pairwise(tokens)
    ):
        return True
    of_others = line.deeds[:1] != () and line.deeds[0].verb.base in _TO_OTHERS and "yourself" not in line.words
    if of_others and _TO_MYSELF.search(text):
        return True  # "I introduced myself", where a colleague was to be introduced
    tells = line.deeds[:1] != () and line.deeds[0].verb.base in ("tell", "say", "explain")
    return tells and _TOLD_ME.search(text) is not None


def is_not_quite(text: str) -> bool:
    """Whether words say that it is nearly so, or was so once: "as good as stopped", "there used to be some"."""
    return _NOT_QUITE.search(text) is not None


def is_of_another(tokens: Tokens, known: Known) -> bool:
    """Whether a deed is told of another thing than the line's, or of another place."""
    line = known.line
    if line.want is Want.ANSWER:
        return False
    if _TOWARDS & set(tokens) and _AWAY & set(line.words) and not _TOWARDS & set(line.words):
        return True
    if any(deed.places for deed in line.deeds) and _lies_elsewhere(tokens, known):
        return True
    allowed = own_words(line.deeds, known)
    for at, word in enumerate(tokens[:-1]):
        done = any(word in deed.verb.past for deed in line.deeds)
        if word == "got" and tokens[at + 2 : at + 3] in _SEEN_COMING:
            continue  # "I've got a drop at the tip"
        if done and tokens[at + 1] in ARTICLES and all(deed.things for deed in line.deeds):
            named = next((other for other in tokens[at + 1 : at + 5] if other not in _BETWEEN), "")
            if named in NOUNS and not {named, named.removesuffix("s"), f"{named}s"} & allowed:
                return True
    return False


def _lies_elsewhere(tokens: Tokens, known: Known) -> bool:
    for at, word in enumerate(tokens[:-1]):
        named = next((other for other in tokens[at + 1 : at + 3] if other not in ARTICLES), "")
        if word in _AT and named in _RESTS - known.named - known.things:
            return True
    return False


def own_words(deeds: Iterable[Deed], known: Known) -> set[str]:
    """The words of the things that deeds are done to, and of what was to come about."""
    deeds = tuple(deeds)
    names = {name for deed in deeds for name in (*deed.things, deed.verb.base)}
    names |= {other for name in names for other in ALSO_CALLED.get(name, ())}
    words = {word for name in names for word in name.split()}
    words = words.union(*(deed.result_words for deed in deeds))
    if words & _PART_OF_IT or any(deed.verb.base in _OF_THE_WHOLE for deed in deeds):
        # A line whose clamp is closed is clamped itself.
        words |= known.named | known.things
    return words
