"""What an instruction asks for, in English: its deeds, and what says that they are done."""

import re
from dataclasses import dataclass, replace

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


_SETS = ("line", "tubing", "tube", "set", "chamber", "syringe")
_AIR = ("air", "bubbles", "air bubbles")


def _is_gone(air: tuple[str, ...]) -> set[str]:
    """How it is said that there is none left."""
    said = {
        f"no {more}{name}{end}"
        for more in ("", "more ")
        for name in air
        for end in (
            "",
            " in it",
            " left",
            " coming",
            *(f"{left} in the {thing}" for left in ("", " left") for thing in _SETS),
        )
    }
    said |= {f"{name}{be} {out}" for name in (*air, "airs") for be in ("", " is", " is all") for out in ("out", "gone")}
    said |= {f"{only} fluid{end}" for only in ("just", "only", "all", "nothing but") for end in ("", " now", " left", " coming", " coming out")}
    said |= {f"{run} clear" for run in ("it is", "runs", "ran", "running", "it runs", "it ran", "all")}
    said |= {
        f"{every}{more} {name}" for every in ("every", "every last", "each") for more in ("", " single") for name in air
    }
    return said | {"gone", "all gone", "all out", "air free", "free of air", "got rid of it", "got rid of the air"}


def _until(line: str) -> set[str]:
    """What an end that a line names says: "push until the line is full"."""
    found = re.search(r"\buntil (?:the |a )?(\w+) (?:(?:is|are) )?(\w+)", line)
    if found is None or found[1] == "it":
        return set()
    thing, state = found.groups()
    if thing in _AIR:
        return _is_gone(_AIR)
    said = {f"{name}{be} {state}" for name in (thing, f"{thing}s") for be in ("", " is", " is all", " is now")}
    if state in ("shows", "appears"):
        said |= {
            f"{there} a {thing}" for there in ("there is", "i see", "i have", "got", "saw", "i have got", "there was")
        }
        said |= {
            f"{thing} {there}"
            for there in ("showed", "came out", "is showing", "is there", "appeared", "came", "is out", "showing", "is visible")
        } | {f"{thing}s {there}" for there in ("showing", "there", "out", "visible", "at the tip", "at the end", "hanging")}
        said |= {
            f"{see}the {thing}" for see in ("there is ", "i see ", "i have ", "got ", "saw ", "i have got ", "i can see ")
        }
        said |= {f"{see} a drip" for see in ("got", "there is", "i see", "i have got", "saw")} if thing == "drop" else set()
    return said | ({"full", f"filled the {thing}", f"{thing} filled"} if state == "full" else set())


def _unlisted(words: list[str]) -> Verb | None:
    """A verb that the table does not hold, with its regular forms: a line begins with one."""
    base = words[0]
    if (
        len(words) < 2
        or len(base) < 3
        or base in DETERMINERS
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
    full = re.search(r"\b(half full|third to half full)\b", rest)
    if full:
        so |= {"about half", "to half", "to the half", "half way", "third full", "third", "between a third and half"}
        so |= {
            f"{lead}{part}{end}"
            for lead in ("", "about ", "to ", "to about ")
            for part in ("a third", "half")
            for end in ("", " full")
        }
        so |= {f"{bit}{over} a third" for bit in ("", "a bit ", "a little ", "just ") for over in ("over", "above")}
        so |= {f"{bit}{under} half full" for bit in ("", "a bit ", "a little ", "just ") for under in ("under", "below")}
        so |= {f"{bit}{under} half" for bit in ("", "a bit ", "a little ", "just ") for under in ("under", "below")}
        so |= {f"{bit}less than half" for bit in ("", "a bit ", "a little ", "just ")}
        so |= {
            f"{to}half{mark}" for to in ("to the ", "at the ", "up to the ") for mark in (" line", " mark", "way line")
        }
        so |= {"half full", "half", "at half", "about half full", "halfway", "at the halfway mark", "halfway full"}
        so -= {"full", "in"}
        not_so |= {"empty", "too full", "full", "overfull", "too low", "to the top", "to the brim"}
    so |= _is_gone(_AIR) if set(noun) & set(_AIR) else set()
    so |= _until(rest)
    if "upside down" in rest and verb.base not in ("tap", "flick"):
        so |= {"upside down", "over", "turned over", "flipped over", "turned upside down"}
    if words[-1:] == ["shut"] or " shut" in rest:
        so |= {"shut", "closed"}
    so |= _by_thing(verb, noun, rest)
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


_HIGHER = ("raised", "higher up", "up higher", "hanging higher", "hangs higher", "is higher")
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
_BUTTONS = frozenset({"start", "stop", "pause", "silence", "confirm", "clear", "enter"})
_CLOCKS = ("alarm", "timer", "reminder")
_PILLOW = ("pillow", "pillow is", "pillows")
_UN = {"cap": "uncapped", "wrap": "unwrapped", "wrapper": "unwrapped", "cover": "uncovered", "tape": "untaped"}


_WRITTEN_UP = frozenset(
    f"{record}{be} {end}"
    for record in ("charting", "documenting", "documentation", "paperwork", "writing", "write up", "entry", "notes", "note")
    for be in ("", " is", " are", " is all", "s", "s all")
    for end in ("done", "complete", "completed", "finished", "in", "made", "up to date")
)
_WRITTEN_UP |= {
    f"{finished} {writing}"
    for finished in ("finished", "done", "completed", "done with", "finished with", "did", "just did")
    for writing in ("charting", "the charting", "documenting", "writing it up", "writing it all up", "writing up", "the notes")
} | {f"finished {writing}" for writing in ("writing", "writing it", "writing it down", "the write up", "the entry")}
"""How it is said that the writing is done: "charting's finished" comes as "chartings finished"."""


def _by_thing(verb: Verb, noun: list[str], rest: str) -> set[str]:
    """What also says that it is done, by what it is done to: "uncapped", "gloved up", "the bag is spiked"."""
    so: set[str] = set()
    if verb.base in ("take", "remove", "pull", "peel", "tear"):
        so |= {_UN[word] for word in rest.split() if word in _UN}
        so |= {"out of the wrapper", "out of its wrapper"} if "wrap" in noun else set()
        so |= {f"out of the {word}" for word in noun} | {f"out of its {word}" for word in noun}
    if verb.base in ("push", "insert", "put", "stick", "connect", "attach", "apply", "place", "move"):
        for word in set(noun) & {"spike", "label", "tape", "cap", "flush", "clamp"}:
            so |= set(VERBS[word].past)
    if "gloves" in rest.split() and verb.base in ("put", "don", "wear", "pull"):
        so |= {"gloved", "gloved up", "on my hands", "wearing them", "wearing gloves", "wearing", "worn", "wore", "on me"}
    if "pillow" in rest.split():
        so |= {f"{put}{pillow} under" for put in ("", "put a ", "put the ", "tucked a ", "slid a ") for pillow in _PILLOW}
    if verb.base in _BUTTONS:
        so |= {f"{pressed} {verb.base}" for pressed in ("hit", "pressed", "pushed")}
    if verb.base == "set" and re.search(r"\ba time\b", rest):
        so |= {f"{clock}{be} {on}" for clock in _CLOCKS for be in ("", "s", " is") for on in ("on", "running", "going", "ticking")}
        so |= {f"{have}a {clock}" for have in ("got ", "have ", "put on ", "made ") for clock in _CLOCKS}
        so |= {f"set my {clock}" for clock in ("watch", "phone", "clock")}
        so |= {f"set {a}{clock}" for a in ("a ", "an ", "the ", "my ", "") for clock in _CLOCKS}
        so |= {f"{clock} {is_}set" for is_ in ("is ", "") for clock in (*_CLOCKS, *(f"{name}s" for name in _CLOCKS))}
    if verb.base in ("press", "hit", "push") and "start" in noun[:1]:
        so |= {*VERBS["start"].past, *VERBS["start"].states}
    if verb.base in ("press", "hit", "push") and noun[:1] in (["stop"], ["pause"]):
        so |= {*VERBS[noun[0]].past, *VERBS[noun[0]].states}
    if verb.base in ("document", "chart", "record"):
        so |= _WRITTEN_UP
    if "again" in rest.split():
        so |= {f"re{past}" for past in verb.past if " " not in past}
    if verb.base in ("hang", "place", "put", "move") and {"lower", "higher"} & set(rest.split()):
        way = ("lowered", "lower", "lower down", "down lower") if "lower" in rest.split() else _HIGHER
        so |= {*way, *(f"{past} {where}" for past in ("moved", "brought", "put", "hung") for where in way[1:])}
    if verb.base == "rise":
        so |= {f"{went} up" for went in ("went", "gone", "came", "come", "going", "coming", "run", "ran", "flowed")}
    if "reach" in rest:
        so |= {"by her hand", "by his hand", "in her hand", "in his hand", "next to her", "next to him", "next to the"}
        so |= {
            *(f"{gave} {her} the" for gave in ("gave", "given", "handed") for her in ("her", "him", "them")),
            *(f"{gave} it to {her}" for gave in ("gave", "given", "handed") for her in ("her", "him", "them")),
            *(
                f"{she} {can}{get}"
                for can in ("can ", "")
                for she in ("she", "he", "they")
                for get in ("reach", "get to it", "grab it")
            ),
            "she has the",
            "he has the",
            "she has it",
            "he has it",
            "she is got",
            "he is got",
            "reach it",
            "reaches it",
        }
    return so


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
