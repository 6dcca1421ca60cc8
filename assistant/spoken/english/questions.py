"""What a question asks, in English: its points, and what says that they are so."""

import re
from dataclasses import dataclass

from assistant.spoken.english.bench_words import AUXILIARIES, NOUNS
from assistant.spoken.english.deeds import (
    ALSO_CALLED,
    DETERMINERS,
    PREPOSITIONS,
    Deed,
    cut,
    deed_of,
    past_of,
)
from assistant.spoken.english.qualities import DEEDS, FINDINGS, QUALITIES
from assistant.spoken.english.verbs import VERBS


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
class Question:
    """What a question asks.

    Attributes:
        points, things, joined, either, asks, absent: see `assistant.spoken.english.lines.Line`.
    """

    points: tuple[Point, ...]
    things: tuple[str, ...]
    joined: tuple[frozenset[str], ...]
    either: bool
    asks: str
    absent: bool


def read_question(line: str) -> Question:
    """What the last sentence of a line asks."""
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
    joined = _joined((parts or [""])[-1], points[0].asked if points else "")
    if not joined and points and len(parts) > 1 and {"both", "they"} & set(words[1:3]):
        joined = _named_before(parts[-2])
    return Question(tuple(points), _about(about), joined, either=either, asks=asks, absent=bool(mark))


def _joined(sentence: str, asked: str) -> tuple[frozenset[str], ...]:
    """What the question asks it of, each by its words: "do name, date of birth and wristband agree"."""
    if not asked:
        return ()
    subject, found, _ = sentence.lower().replace("-", " ").partition(asked)
    parts = re.split(r",|\band\b|\bor\b", subject.rpartition(":")[2]) if found else []
    words = (frozenset(cut(part)) - DETERMINERS - AUXILIARIES - {"all", "of", "on", "with"} for part in parts)
    named = tuple(group | {"birthday"} if "birth" in group else group for group in words if group)
    return named if len(named) > 1 else ()


def _named_before(sentence: str) -> tuple[frozenset[str], ...]:
    """What the sentence before a question names, where the question takes it up: "Ask for name and birth date."."""
    text = re.split(r" (?:from|beside|on|at|with) ", sentence.lower().replace("-", " "))[0]
    groups = []
    for part in re.split(r",|\band\b", text):
        words = frozenset(cut(part)) - DETERMINERS - PREPOSITIONS.keys() - (VERBS.keys() - NOUNS) - {"full"}
        groups.append(words | {"birthday"} if "birth" in words else words)
    named = tuple(group for group in groups if group)
    return named if len(named) > 1 else ()


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
    # "Match wristband and order": what is joined is what it is compared with.
    behind = re.sub(r"\b(match|agree|agree with) (?:the )?\w+ and (?:the )?\w+$", r"\1", text[min(places) :])
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
        so = {word, f"{word}s", past_of(word), *((*verb.past, verb.ing, *verb.states) if verb else ())}
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
    deed = deed_of(verb, " ".join(words[at + 1 :]))
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
