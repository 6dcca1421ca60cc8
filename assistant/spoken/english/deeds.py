"""What an instruction asks for, in English: its deeds, and what says that they are done."""

import re
from dataclasses import dataclass, replace
from functools import cached_property

from assistant.spoken.english.done_words import AIR, HALF_FULL, NOT_HALF_FULL, by_thing, is_gone, until
from assistant.spoken.english.numbers import ONES, TEENS, TENS
from assistant.spoken.english.verbs import VERBS, Verb
from assistant.spoken.english.writing import CONTRACTIONS, SAME_WORD
from assistant.spoken.statement import Tokens

PARTICLES = frozenset({"on", "off", "up", "down", "in", "out", "away", "over", "together"})
OPPOSITE = {"on": "off", "off": "on", "up": "down", "down": "up", "in": "out", "out": "in"}
PREPOSITIONS = {
    "to": "on",
    "into": "in",
    "onto": "on",
    "on": "on",
    "in": "in",
    "at": "at",
    "with": "with",
    "over": "over",
    "round": "round",
    "from": "",
    "of": "",
    "for": "",
    "by": "",
    "near": "near",
    "above": "above",
    "below": "below",
    "along": "along",
    "within": "within",
    "between": "",
    "against": "",
    "through": "through",
}
"""What leads to a place, and how the place is said once the thing is there."""
DETERMINERS = frozenset(
    {"the", "a", "an", "my", "your", "its", "this", "that", "these", "those", "every", "each", "both"}
)
_SUBORDINATE = re.compile(
    r"\b(?:until|while|so|as|what|when|how|which|who|whom|since|whose|without|neither|if|because|that(?! (?:port|"
    r"line|bag|clamp|site|hub|set)\b))\b.*"
)
_ADVERBS = frozenset({"now", "first", "gently", "slowly", "firmly", "fully", "again", "then", "clean", "old", "new"})
_NOT_DEEDS = (
    *("do not", "touch neither", "lose no", "touching", "see that", "untouched", "keep its", "say start", "say done"),
    *("level", "best", "hour by"),
)
"""Beginnings of what is said of how it is done, or of what is not to be done."""
_ALSO_NOUNS = frozenset({"start", "date", "set", "flush", "time", "label", "tape", "spike"})
_NO_THINGS = frozenset(
    {
        "about",
        "higher",
        "lower",
        "than",
        "nearest",
        "still",
        "paused",
        "dry",
        "run",
        "yourself",
        "open",
        "shut",
        "upside",
    }
    | {"once", "more", "or"}
)
"""Words that end the name of a thing."""
_LEADS_A_CLAUSE = frozenset({"when", "if", "once", "while", "after", "before", "unless", "as"})
_BESIDE = frozenset({"hold", "go", "keep", "watch"})
"""How a deed is done, or what is looked at meanwhile: whoever says that it is done need not say so besides."""
_LEADS = {
    "push": frozenset({"uncover", "uncap", "open", "connect"}),
    "tap": frozenset({"turn", "invert", "hold"}),
    "clear": frozenset({"go"}),
    "rise": frozenset({"open", "lower"}),
    "chase": frozenset({"tap", "flick"}),
}
"""By a deed: what has to be done before it, so that it need not be said besides."""
ALSO_CALLED = {
    "roller clamp": ("roller",),
    "line": ("tubing", "tube", "set"),
    "tubing": ("line", "tube", "set", "loop"),
    "set": ("line", "tubing", "tube"),
    "port": ("bag",),
    "spike": ("bag",),
    "birth date": ("birthday", "date of birth"),
    "birth": ("birthday",),
    "date of birth": ("birthday", "birth date"),
    "chamber": ("drip chamber",),
    "bell": ("call bell", "call light", "buzzer", "call button", "button"),
    "connection": ("connections", "joint", "joints", "luer", "luers", "one"),
    "block": ("blockage", "kink", "clot", "problem"),
    "entry": ("screen", "display"),
    "pharmacist": ("pharmacy", "chemist"),
    "prescriber": ("doctor", "physician"),
    "colleague": ("she", "he", "partner", "nurse"),
    "catheter": ("cannula",),
    "cannula": ("catheter",),
    "syringe": ("flush",),
    "drug": ("medicine", "medication", "dose", "rest"),
    "wrap": ("wrapper", "outer bag", "overwrap"),
    "basin": ("bowl", "sink", "dish"),
    "wipes": ("wipe",),
    "dressing": ("one", "old one"),
    "patient": ("she", "he", "him", "her", "mum", "client"),
    "gloves": ("glove", "pair"),
    "secondary": ("small bag", "small one", "piggyback", "little bag"),
    "infusion": ("pump", "drip"),
    "pump": ("infusion", "machine", "device"),
    "tubing to": (),
    "hands": ("hand",),
    "compress": ("pack", "cold pack", "warm pack", "ice pack", "heat pack", "ice", "cold compress", "warm compress"),
    "stopper": ("top", "bung", "rubber"),
    "gauze": ("pad", "gauze pad"),
    "pole": ("stand", "drip stand", "hanger"),
    "pillow": ("cushion",),
    "label": ("sticker", "tag"),
    "strip": ("tape",),
    "clamp": ("clamps",),
}
"""Other names for a thing at the bench (common practice, no source)."""
NUMBERS = {"2": "two", "10": "ten", "15": "fifteen", "20": "twenty", "30": "thirty", "60": "sixty"}

ONES_AND_TENS = frozenset({*ONES[1:], *TEENS, *TENS[:4], "hundred", "oclock", "past", "point", "half", "quarter"})
ONE_PRESS = frozenset({"pause", "start", "stop", "press", "hit", "restart", "switch"})
"""What a button does that undoes it when it is pressed once more."""


@dataclass(frozen=True)
class Deed:
    """Something to do.

    Attributes:
        verb: what.
        things: to what, as it may be called; none where the line does not say.
        so, not_so: what says that it is done, and that it is not: "shut", "still open".
        places: where it then is: "on the pole".
        leads: it only leads to a later one, which says that both are done: "uncover the port, and push the spike in".
    """

    verb: Verb
    things: tuple[str, ...]
    so: frozenset[str]
    not_so: frozenset[str]
    places: tuple[str, ...] = ()
    leads: bool = False

    @cached_property
    def result_words(self) -> frozenset[str]:
        """The single words of what says that it is done, and of where it then is; of some deeds there are thousands."""
        return frozenset(word for phrase in (*self.so, *self.places) for word in phrase.split())


def cut(text: str) -> Tokens:
    """A line, or an author's words, as an utterance is cut: small letters, short forms written out."""
    found: list[str] = []
    for word in re.findall(r"[a-z0-9]+(?:'[a-z]+)?", text.lower().replace("\u2019", "'")):
        found += CONTRACTIONS.get(word, SAME_WORD.get(word, word)).replace("'", "").split()
    return tuple(found)


def deeds_of(line: str) -> tuple[Deed, ...]:
    """Every deed that a line asks for, in its order."""
    deeds: list[Deed] = []
    placed = False
    for part in re.split(r"[.,;:]|\band\b|\bthen\b", line.lower().replace("-", " ")):
        text = " ".join(cut(part))
        words = text.split()
        if text.startswith(_NOT_DEEDS) or "nothing" in words:
            continue
        while words and words[0] in _ADVERBS and words[0] not in VERBS:
            words = words[1:]
        verb = VERBS.get(words[0]) or (None if deeds else _unlisted(words)) if words else None
        also_noun = len(words) == 1 and verb is not None and verb.base in _ALSO_NOUNS
        if deeds and (also_noun or (placed and len(words) == 2 and words[1] == "motion")):
            verb = None
        if verb is not None:
            if verb.base == "let":
                verb = next((VERBS[word] for word in words if word in ("dry", "rise")), verb)
            deed = deed_of(verb, " ".join(words[1:]))
            if words[1:2] == ["it"]:
                # "The pump alarms. Pause it."
                deed = replace(deed, things=deeds[-1].things if deeds else _called(_first_named(line)))
            deeds.append(deed)
            placed = any(word in PREPOSITIONS for word in words[2:])
        elif deeds and words and words[0] not in PREPOSITIONS and not placed:
            # "the bag and the set": one more thing for the same verb.
            deeds.append(deed_of(deeds[-1].verb, _SUBORDINATE.sub("", text)))
    for at, deed in enumerate(deeds):
        later = next((other.things for other in deeds[at + 1 :] if other.things), ())
        if not deed.things and later and deed.verb.base in ("turn", "uncover"):
            deeds[at] = replace(deed, things=later)
    return tuple(
        replace(deed, leads=_is_beside(deed, deeds) or any(_only_leads(deed, then) for then in deeds[at + 1 :]))
        for at, deed in enumerate(deeds)
    )


def _first_named(line: str) -> list[str]:
    """What a line begins with, where something is told of it first: "The pump alarms"."""
    found = re.match(r"the (\w+) ", line.lower())
    return [found[1]] if found else []


def _is_beside(deed: Deed, deeds: list[Deed]) -> bool:
    return deed.verb.base in _BESIDE and any(other.verb.base not in _BESIDE for other in deeds)


def _only_leads(deed: Deed, then: Deed) -> bool:
    """Whether nobody can have done what follows without it."""
    return deed.verb.base in _LEADS.get(then.verb.base, frozenset())


def _unlisted(words: list[str]) -> Verb | None:
    """A verb that the table does not hold, with its regular forms: a line begins with one."""
    base = words[0]
    if (
        len(words) < 2
        or len(base) < 3
        or base in DETERMINERS
        or base in _LEADS_A_CLAUSE
        or base in PREPOSITIONS
        or base.endswith(("s", "ed", "ly"))
    ):
        return None
    return Verb(base, (past_of(base),), f"{base.removesuffix('e')}ing")


def past_of(base: str) -> str:
    """The regular past: "rinsed", "wrapped", "carried"."""
    if base.endswith("e"):
        return f"{base}d"
    if base.endswith("y") and base[-2] not in "aeiou":
        return f"{base[:-1]}ied"
    doubled = len(base) == 3 and base[-1] not in "aeiouwxy" and base[-2] in "aeiou"
    return f"{base}{base[-1] if doubled else ''}ed"


def deed_of(verb: Verb, rest: str) -> Deed:
    """The deed of a verb and what follows it in the line."""
    words = _SUBORDINATE.sub("", rest).split()
    noun, place, particle = _parts(words)
    so = {*verb.past, *verb.states}
    not_so = set(verb.undone)
    if particle:
        so = (so - {OPPOSITE.get(particle, "")}) | {particle, *(f"{past} {particle}" for past in verb.past)}
        not_so = (not_so - {particle}) | ({OPPOSITE[particle]} if particle in OPPOSITE else set())
    if particle in ("out", "off", "up", "down", "in"):
        so |= {f"{came} {particle}" for came in ("come", "came", "comes", "slid", "slipped")}
    if particle and verb.base in _BY_PARTICLE:
        # "I put the gloves down": the particle says what was done.
        so -= {past for past in verb.past if past in _BARE}
    if re.search(r"\b(?:half full|third to half full)\b", rest):
        so = (so | HALF_FULL) - {"full", "in"}
        not_so |= NOT_HALF_FULL
    if particle == "up":
        so = {said for said in so if "out" not in said.split() and said != "removed"}
    if verb.base in ("leave", "keep") and "paused" in rest:
        not_so |= {"running", "going", "started"}
    so |= is_gone(AIR) if set(noun) & set(AIR) else set()
    so |= until(rest)
    if "upside down" in rest and verb.base not in ("tap", "flick"):
        so |= {"upside down", "over", "turned over", "flipped over", "turned upside down"}
    if words[-1:] == ["shut"] or " shut" in rest:
        so |= {"shut", "closed"}
    so |= by_thing(verb, noun, rest)
    if place[:1] in (["into"], ["onto"]):
        so |= {PREPOSITIONS[place[0]]}
    if place[:1] == ["into"] and "pump" in place:
        so |= {*VERBS["load"].past, *VERBS["load"].states}
    if verb.base == "press":
        so -= {"on"}  # "the gauze is on" is not yet pressed
    if verb.base == "run" and "until" not in rest:
        so |= {"running", "running in"}
    if rest.startswith("what blocks"):
        noun = ["block"]
    # "The drug left in the set": that is where it still is.
    places = () if noun[-1:] == ["left"] or verb.base in _WHERE_IT_IS else _places(place)
    if verb.base == "run" and "until" in rest:
        so, places = so - {"in"}, ()  # fluid is in the basin long before the air is out
    noun = noun[:-1] if noun[-1:] == ["left"] else noun
    so |= set(places)
    noun = noun or (["line"] if verb.base == "prime" else [])
    return Deed(verb, _called(noun), frozenset(so), frozenset(not_so - so), places)


_ALSO_THERE = {
    "over": ("over", "on"),
    "below": ("below", "under", "underneath", "beneath", "lower than"),
    "above": ("above", "over", "higher than"),
}
"""Where a thing is that was put there, in other words."""
_BY_PARTICLE = frozenset({"put", "pull", "get", "turn", "switch"})
_BARE = frozenset({"put", "got", "pulled", "placed", "turned", "switched", "popped"})
_WHERE_IT_IS = frozenset(
    {"close", "open", "clamp", "unclamp", "shut", "clip", "pause", "start", "stop", "scrub", "clean", "wash", "rub"}
    | {"wipe", "prime", "tap", "flush", "squeeze", "release"}
)
"""What is done to a thing where it is: "the clamp on the lock" is there before it is closed."""


def _parts(words: list[str]) -> tuple[list[str], list[str], str]:
    """The thing, the place and the particle after a verb."""
    noun: list[str] = []
    particle = ""
    for at, word in enumerate(words):
        nothing_yet = not noun and word in PARTICLES
        last = at == len(words) - 1
        if word in PARTICLES and not particle and (nothing_yet or last or word in ("off", "out", "up", "away")):
            particle = word
            if noun:
                return noun, [], particle
        elif noun and word == "in" and words[at + 1 : at + 2] and words[at + 1] in PREPOSITIONS:
            return noun, words[at + 1 :], word  # "run this rest in | at the drug's rate"
        elif word in PREPOSITIONS or word == "towards":
            return noun, words[at:], particle
        elif word in _NO_THINGS:
            return noun, [], particle
        elif word not in DETERMINERS and word not in _ADVERBS and word != "it":
            noun.append(word)
        elif noun and word in DETERMINERS:
            break
    return noun, [], particle


def _called(noun: list[str]) -> tuple[str, ...]:
    """What a thing may be called: "roller clamp", "clamp", "roller"."""
    if not noun or len(noun) > 4:
        return ()
    names = [" ".join(noun[at:]) for at in range(len(noun))]
    for name in list(names):
        names += ALSO_CALLED.get(name, ())
    return tuple(dict.fromkeys(names))


def _places(place: list[str]) -> tuple[str, ...]:
    """Where a thing then is: "on the pole", "on pole"."""
    if len(place) < 2 or not PREPOSITIONS.get(place[0]):
        return ()
    stop = next((at for at, word in enumerate(place[1:], 1) if word in PREPOSITIONS or word in PARTICLES), len(place))
    words = [word for word in place[1:stop] if word not in DETERMINERS]
    if not words:
        return ()
    leads = _ALSO_THERE.get(place[0], (PREPOSITIONS[place[0]],))
    ends = [" ".join(words[at:]) for at in range(len(words))]
    return tuple(f"{lead} {article}{end}" for lead in leads for end in ends for article in ("the ", "", "a "))
