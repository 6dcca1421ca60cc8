"""What a line asks for, in English: the deeds of an instruction, the points of a question."""

import re
from dataclasses import dataclass, replace
from functools import lru_cache

from assistant.spoken.english.qualities import DEEDS, FINDINGS, QUALITIES
from assistant.spoken.english.verbs import VERBS, Verb
from assistant.spoken.english.writing import CONTRACTIONS, SAME_WORD
from assistant.spoken.statement import Asked, Tokens, Want

AUXILIARIES = frozenset(
    {"is", "are", "am", "do", "does", "did", "have", "has", "can", "could", "should", "shall", "will", "would", "may"}
    | {"might", "must", "was", "were"}
)
PARTICLES = frozenset({"on", "off", "up", "down", "in", "out", "away", "over", "together"})
_OPPOSITE = {"on": "off", "off": "on", "up": "down", "down": "up", "in": "out", "out": "in"}
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
    r"\b(?:until|while|so|as|what|when|how|which|who|whom|since|whose|without|neither|if|because|that)\b.*"
)
_ADVERBS = frozenset({"now", "first", "gently", "slowly", "firmly", "fully", "again", "then", "clean", "old", "new"})
_NOT_DEEDS = (
    *("do not", "touch neither", "lose no", "touching", "see that", "untouched", "keep its", "say start", "say done"),
    *("level", "best", "hour by"),
)
"""Beginnings of what is said of how it is done, or of what is not to be done."""
_ALSO_NOUNS = frozenset({"start", "date", "set", "flush", "time", "label", "tape"})
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
ALSO_CALLED = {
    "roller clamp": ("roller",),
    "line": ("tubing", "tube", "set"),
    "tubing": ("line", "tube", "set", "loop"),
    "set": ("line", "tubing", "tube"),
    "port": ("bag",),
    "spike": ("bag",),
    "birth date": ("birthday", "date of birth"),
    "date of birth": ("birthday", "birth date"),
    "chamber": ("drip chamber",),
    "bell": ("call bell", "call light", "buzzer"),
    "wrap": ("wrapper", "outer bag", "overwrap"),
    "wipes": ("wipe",),
    "dressing": ("one", "old one"),
    "patient": ("she", "he", "him", "her", "mum", "client"),
    "gloves": ("glove", "pair"),
    "infusion": ("pump", "drip"),
    "pump": ("infusion", "machine", "device"),
    "tubing to": (),
    "hands": ("hand",),
    "clamp": ("clamps",),
}
"""Other names for a thing at the bench (common practice, no source)."""
NUMBERS = {"2": "two", "10": "ten", "15": "fifteen", "20": "twenty", "30": "thirty", "60": "sixty"}


@dataclass(frozen=True)
class Deed:
    """Something to do.

    Attributes:
        verb: what.
        things: to what, as it may be called; none where the line does not say.
        so, not_so: what says that it is done, and that it is not: "shut", "still open".
        places: where it then is: "on the pole".
    """

    verb: Verb
    things: tuple[str, ...]
    so: frozenset[str]
    not_so: frozenset[str]
    places: tuple[str, ...] = ()


@dataclass(frozen=True)
class Point:
    """Something that a question asks about.

    Attributes:
        asked: its name.
        so, not_so: what says that it is as asked, and that it is not.
        there: what is there when it is as asked.
        flaws: what is there when it is not.
        finding: the question is whether something is there.
    """

    asked: str
    so: frozenset[str] = frozenset()
    not_so: frozenset[str] = frozenset()
    there: frozenset[str] = frozenset()
    flaws: frozenset[str] = frozenset()
    finding: bool = False


@dataclass(frozen=True)
class Line:
    """What a line asks for.

    Attributes:
        want: what sort of answer.
        words: the words of the line.
        deeds: of an instruction.
        points: of a question.
        things: what a question is about.
        either: any one of the points makes the answer a yes ("redness or swelling").
        asks: the verb with which a question begins, as it may be taken up: "is", "do", "did".
        absent: the question asks for something to be absent, so that a bare no may mean either.
    """

    want: Want
    words: Tokens
    deeds: tuple[Deed, ...] = ()
    points: tuple[Point, ...] = ()
    things: tuple[str, ...] = ()
    either: bool = False
    asks: str = ""
    absent: bool = False


def cut(text: str) -> Tokens:
    """A line, or an author's words, as an utterance is cut: small letters, short forms written out."""
    found: list[str] = []
    for word in re.findall(r"[a-z0-9]+(?:'[a-z]+)?", text.lower().replace("\u2019", "'")):
        found += CONTRACTIONS.get(word, SAME_WORD.get(word, word)).replace("'", "").split()
    return tuple(found)


@lru_cache(maxsize=512)
def read_line(asked: Asked) -> Line:
    """What the line asks for."""
    if asked.want is Want.ANSWER:
        return _question(asked.line)
    return Line(asked.want, cut(asked.line), deeds=_deeds(asked.line))


def _deeds(line: str) -> tuple[Deed, ...]:
    deeds: list[Deed] = []
    placed = False
    for part in re.split(r"[.,;:]|\band\b|\bthen\b", line.lower().replace("-", " ")):
        text = " ".join(cut(part))
        if text.startswith(_NOT_DEEDS):
            continue
        words = text.split()
        while words and words[0] in _ADVERBS and words[0] not in VERBS:
            words = words[1:]
        verb = VERBS.get(words[0]) or (None if deeds else _unlisted(words)) if words else None
        also_noun = len(words) == 1 and verb is not None and verb.base in _ALSO_NOUNS
        if deeds and (also_noun or (placed and len(words) == 2 and words[1] == "motion")):
            verb = None
        if verb is not None:
            if verb.base == "let" and "dry" in words:
                verb = VERBS["dry"]
            deed = _deed(verb, " ".join(words[1:]))
            deeds.append(replace(deed, things=deeds[-1].things) if words[1:2] == ["it"] and deeds else deed)
            placed = any(word in PREPOSITIONS for word in words[2:])
        elif deeds and words and words[0] not in PREPOSITIONS and not placed:
            # "the bag and the set": one more thing for the same verb.
            deeds.append(_deed(deeds[-1].verb, _SUBORDINATE.sub("", text)))
    for at, deed in enumerate(deeds):
        later = next((other.things for other in deeds[at + 1 :] if other.things), ())
        if not deed.things and later and deed.verb.base in ("turn", "uncover"):
            deeds[at] = replace(deed, things=later)
    return tuple(deeds)


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
    return Verb(base, (_past_of(base),), f"{base.removesuffix('e')}ing")


def _past_of(base: str) -> str:
    """The regular past: "rinsed", "wrapped", "carried"."""
    if base.endswith("e"):
        return f"{base}d"
    if base.endswith("y") and base[-2] not in "aeiou":
        return f"{base[:-1]}ied"
    doubled = len(base) == 3 and base[-1] not in "aeiouwxy" and base[-2] in "aeiou"
    return f"{base}{base[-1] if doubled else ''}ed"


def _deed(verb: Verb, rest: str) -> Deed:
    words = _SUBORDINATE.sub("", rest).split()
    noun, place, particle = _parts(words)
    so = {*verb.past, *verb.states}
    not_so = set(verb.undone)
    if particle:
        so = (so - {_OPPOSITE.get(particle, "")}) | {particle, *(f"{past} {particle}" for past in verb.past)}
        not_so = (not_so - {particle}) | ({_OPPOSITE[particle]} if particle in _OPPOSITE else set())
    full = re.search(r"\b(half full|third to half full)\b", rest)
    if full:
        so |= {"about half", "to half", "to the half", "half way", "third full", "third", "between a third and half"}
        so |= {"half full", "half", "at half", "about half full", "halfway", "at the halfway mark", "halfway full"}
        so -= {"full", "in"}
        not_so |= {"empty", "too full", "full", "overfull", "too low"}
    if "upside down" in rest:
        so |= {"upside down", "over", "turned over", "flipped over", "turned upside down"}
    if words[-1:] == ["shut"] or " shut" in rest:
        so |= {"shut", "closed"}
    so |= _by_thing(verb, noun, rest)
    places = _places(place)
    so |= set(places)
    return Deed(verb, _called(noun), frozenset(so), frozenset(not_so - so), places)


_UN = {"cap": "uncapped", "wrap": "unwrapped", "wrapper": "unwrapped", "cover": "uncovered", "tape": "untaped"}


def _by_thing(verb: Verb, noun: list[str], rest: str) -> set[str]:
    """What also says that it is done, by what it is done to: "uncapped", "gloved up", "the bag is spiked"."""
    so: set[str] = set()
    if verb.base in ("take", "remove", "pull", "peel", "tear"):
        so |= {_UN[word] for word in rest.split() if word in _UN}
        so |= {"out of the wrapper", "out of its wrapper"} if "wrap" in noun else set()
        so |= {f"out of the {word}" for word in noun} | {f"out of its {word}" for word in noun}
    if verb.base in ("push", "insert", "put", "stick", "connect", "attach", "apply", "place"):
        for word in set(noun) & {"spike", "label", "tape", "cap", "flush", "clamp"}:
            so |= set(VERBS[word].past)
    if "gloves" in rest.split() and verb.base in ("put", "don", "wear", "pull"):
        so |= {"gloved", "gloved up", "on my hands"}
    if verb.base in ("press", "hit", "push") and "start" in noun[:1]:
        so |= {*VERBS["start"].past, *VERBS["start"].states}
    if verb.base in ("press", "hit", "push") and noun[:1] in (["stop"], ["pause"]):
        so |= {*VERBS[noun[0]].past, *VERBS[noun[0]].states}
    if "reach" in rest:
        so |= {"by her hand", "by his hand", "in her hand", "in his hand", "next to her", "next to him", "next to the"}
        so |= {
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
    lead = PREPOSITIONS[place[0]]
    ends = [" ".join(words[at:]) for at in range(len(words))]
    return tuple(f"{lead} {article}{end}" for end in ends for article in ("the ", "", "a "))


def _question(line: str) -> Line:
    parts = [part for part in re.split(r"(?<=[.!?:;])\s+", line.strip()) if part]
    text = " ".join(cut((parts or [""])[-1].replace("-", " ")))
    words = text.split()
    asks = words[0] if words and words[0] in AUXILIARIES else ""
    if text.startswith("no "):
        asks, text = "is", f"is all well without {text.removeprefix('no ')}"
    before, mark, feared = _feared(text)
    points: list[Point] = []
    either = False
    about = before
    seen = re.search(
        r"\b(?:(?:do|can|did) you (?:see|feel|hear|notice|find)|is there|are there|does the patient \w+)\b(.*)", before
    )
    if seen and (found := _findings(seen[1])):
        points += found
        either = re.search(r"\bor\b", seen[1]) is not None or len(found) == 1
    else:
        more, about = _qualities(before)
        points += more
    if not _reads_straight(text, points, marked=bool(mark)):
        points, either = [], False
    elif asks in ("did", "have", "has", "can") and not points:
        points.append(_did(before))
    elif asks and not points and not mark:
        points += _predicate(words)
        either = either or "or" in words
    if mark:
        points += [
            Point(p.asked, p.not_so, p.so, frozenset(), p.there, finding=True)
            for p in (_findings(feared) or (Point(feared, there=frozenset({feared}), finding=True),))
        ]
    return Line(
        Want.ANSWER,
        cut(line),
        points=tuple(points),
        things=_about(about),
        either=either,
        asks=asks,
        absent=bool(mark),
    )


_TURNS_ROUND = re.compile(
    r"\b(?:passed|past|lost|missing|stopped|failed|forgotten|ended|more than|less than|older|longer|not|never|nor|only"
    r"|too|fewer|out of|instead|wrong|different)\b"
)
"""Words that may turn round what a question asks: "has it passed its expiry date?"."""


def _reads_straight(text: str, points: list[Point], *, marked: bool) -> bool:
    """Whether each part of a question is understood, and none may mean the opposite; else only its own words count."""
    if _TURNS_ROUND.search(text):
        return False
    if not points or marked or all(point.finding for point in points):
        return True
    places = [text.find(point.asked) for point in points]
    behind = text[min(places) :]
    return len(re.findall(r"\b(?:and|or)\b", behind)) < len(points)


def _feared(text: str) -> tuple[str, str, str]:
    """A question, and what it asks to be absent."""
    found = re.search(r"\b(free of|free from|clear of|without|with no)\b", text)
    return (text[: found.start()], found[1], text[found.end() :]) if found else (text, "", "")


def _findings(text: str) -> list[Point]:
    found: list[Point] = []
    for finding in sorted(FINDINGS, key=lambda f: -len(f.asked)):
        if any(re.search(rf"\b{re.escape(noun)}\b", text) for noun in finding.nouns[:2]):
            text = re.sub(rf"\b{re.escape(finding.asked)}\b", " ", text)
            if not any(finding.asked in point.asked for point in found):
                nouns = frozenset(finding.nouns)
                so = frozenset(finding.so)
                found.append(Point(finding.asked, so, frozenset(finding.not_so), nouns, finding=True))
    return found


def _qualities(text: str) -> tuple[list[Point], str]:
    """The qualities that a question asks about, and what is left of it."""
    found: list[tuple[int, Point]] = []
    for quality in sorted((*QUALITIES, *DEEDS), key=lambda q: -len(q.asked)):
        # The "drip chamber" asks about no drip.
        at = re.search(rf"\b{re.escape(quality.asked)}\b(?! chamber)", text)
        if at:
            text = text[: at.start()] + "~ " + text[at.end() :]
            point = Point(
                quality.asked, frozenset(quality.so), frozenset(quality.not_so), flaws=frozenset(quality.flaws)
            )
            found.append((at.start(), point))
    return [point for _at, point in sorted(found, key=lambda pair: pair[0])], text.replace("~", "and")


_PARTICIPLES = {past: verb for verb in reversed(VERBS.values()) for past in verb.past[:2] if " " not in past}
"""A verb by its participle: "have you written"."""
_BY_ING = {verb.ing: verb for verb in reversed(VERBS.values())}

_OPPOSITES = (
    *(("open", "closed"), ("open", "shut"), ("open", "clamped"), ("clean", "dirty"), ("dry", "wet"), ("dry", "damp")),
    *(("full", "empty"), ("on", "off"), ("in", "out"), ("tight", "loose"), ("secure", "loose"), ("running", "stopped")),
    *(("visible", "hidden"), ("high", "low"), ("right", "wrong"), ("correct", "wrong"), ("same", "different")),
    *(("present", "missing"), ("complete", "incomplete"), ("warm", "cold"), ("soft", "hard"), ("flat", "swollen")),
    *(("straight", "kinked"), ("intact", "broken"), ("intact", "torn"), ("attached", "loose"), ("clear", "cloudy")),
    *(("clear", "blocked"), ("free", "blocked"), ("comfortable", "uncomfortable"), ("safe", "unsafe"), ("up", "down")),
    *(("there", "gone"), ("there", "missing"), ("ready", "missing"), ("awake", "asleep"), ("calm", "upset")),
    *(("legible", "illegible"), ("legible", "smudged"), ("readable", "smudged"), ("still", "moving"), ("near", "far")),
    *(("enough", "too little"), ("sealed", "opened"), ("sealed", "open"), ("valid", "expired"), ("green", "red")),
    *(("connected", "disconnected"), ("locked", "unlocked"), ("working", "broken"), ("charged", "flat")),
)
"""What is so, and what is then not so; each pair holds both ways (words of every day)."""


def _predicate(words: list[str]) -> list[Point]:
    """What a question asks of its subject, where no table knows it: the words after the subject, one point a quality.

    "Is the tray wiped and dry?" asks for "wiped" and for "dry"; "Does she understand?" for "understand".
    """
    rest = [word for word in words[1:] if word not in DETERMINERS and word not in ("again", "still", "now", "already")]
    clipped = rest
    for at, word in enumerate(rest):
        if at and (word in PREPOSITIONS or word in ("before", "after", "than", "when", "if", "until")):
            clipped = rest[:at]
            break
    heads = re.split(r" and | or ", " ".join(clipped))
    qualities = [part.split()[-1] for part in heads if part.split()]
    # The first part holds the subject, too: it needs a word beside it.
    if not qualities or len(heads[0].split()) < 2:
        return []
    found = []
    for word in qualities if len(heads) > 1 and len(heads[0].split()) > 1 else qualities[-1:]:
        opposite = {b for a, b in _OPPOSITES if a == word} | {a for a, b in _OPPOSITES if b == word}
        verb = VERBS.get(word) or _PARTICIPLES.get(word) or _BY_ING.get(word)
        so = {word, f"{word}s", _past_of(word), *((*verb.past, verb.ing, *verb.states) if verb else ())}
        undone = {f"un{word}", word.removeprefix("un")} | set(verb.undone if verb else ()) | opposite
        found.append(Point(word, frozenset(so), frozenset(undone - so)))
    return found


def _did(text: str) -> Point:
    """A deed that is asked about: "did you use the library", "has it dried", "can she reach the bell"."""
    words = text.split()
    if "do" in words[2:3]:
        # "the second check": done, or checked.
        done = {*VERBS["do"].past, *(past for word in words[3:] if word in VERBS for past in VERBS[word].past)}
        return Point("done", frozenset(done), frozenset({"skipped it"}))
    known = _PARTICIPLES if words[0] in ("have", "has") else VERBS
    at = next((at for at, word in enumerate(words) if at > 1 and word in known), None)
    if at is None:
        return Point("done")
    verb = known[words[at]]
    deed = _deed(verb, " ".join(words[at + 1 :]))
    said = (verb.base, f"{verb.base}s") if words[0] == "can" else verb.past
    things = {f"{past} {rest}".strip() for past in said for rest in _rests(deed)}
    skipped = {"skipped it", *(f"skipped the {thing}" for thing in deed.things)}
    by_hand = {"by hand", "manually", "typed it in"} if "library" in words else set()
    return Point(verb.base, frozenset(things | set(verb.states)), frozenset({*skipped, *by_hand, *verb.undone}))


def _rests(deed: Deed) -> tuple[str, ...]:
    named = tuple(f"{article}{thing}" for thing in deed.things for article in ("the ", ""))
    return ("it", "that", "", *named, *(f"it from the {thing}" for thing in deed.things))


def _about(text: str) -> tuple[str, ...]:
    """What a question is about: the words between its verb and what it asks."""
    words = text.split()
    names: list[str] = []
    for word in words[1:]:
        if word in ("within", "still", "between", "of", "for", "on", "with"):
            break
        names.append(word)
    kept: list[str] = []
    run: list[str] = []
    for word in (*names, "and"):
        if word in ("and", "or"):
            kept += [" ".join(run[at:]) for at in range(len(run))]
            run = []
        elif word not in DETERMINERS and word not in ("all", "you", "it", "there", "any"):
            run.append(word)
    for name in list(kept):
        kept += ALSO_CALLED.get(name, ())
    return tuple(dict.fromkeys(kept))
