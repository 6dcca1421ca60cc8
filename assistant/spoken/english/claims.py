"""What each phrase says of what a line asks for, in English: "shut" of a clamp that is to be closed."""

from collections.abc import Iterator
from dataclasses import dataclass
from functools import lru_cache

from assistant.spoken.english.bench_words import ALL_GOOD, ALL_RIGHT, FINISHED, STARTED, UNFINISHED
from assistant.spoken.english.deeds import Deed
from assistant.spoken.english.lines import Line, read_line
from assistant.spoken.english.qualities import GOOD_FINDINGS
from assistant.spoken.english.verbs import VERBS
from assistant.spoken.statement import Asked, Tokens, Want

TAKEN_UP = {
    **{"do": ("do",), "does": ("does", "do"), "did": ("did",)},
    **{"have": ("have",), "has": ("has", "have"), "can": ("can",)},
}


@dataclass(frozen=True)
class Says:
    """What a phrase says.

    Attributes:
        about: the places of the points in their row.
        so: whether they are so.
        thing: the phrase names something that is there or is not, so that a lone "no" before it denies it.
    """

    about: frozenset[int]
    so: bool = True
    thing: bool = False


def every_of(line: Line) -> frozenset[int]:
    """The places of all that a line asks for; what only leads to a later deed needs no words of its own."""
    if line.deeds:
        return frozenset(at for at, deed in enumerate(line.deeds) if not deed.leads)
    return frozenset(range(len(line.points) or 1))


@lru_cache(maxsize=512)
def phrases_at(asked: Asked) -> dict[Tokens, Says]:
    """What each phrase says here."""
    line = read_line(asked)
    found: dict[Tokens, Says] = {}
    unclear: set[Tokens] = set()
    for phrase, says in (*_of_points(line), *_of_deeds(line)):
        words = tuple(phrase.split())
        old = found.get(words)
        if old is None:
            found[words] = says
        elif old.so is says.so:
            found[words] = Says(old.about | says.about, says.so, old.thing or says.thing)
        elif says.so:
            # "Take the cap off, and screw it onto the port": what "on" says depends on the moment.
            unclear.add(words)
    for words in unclear:
        del found[words]
    # "No questions" is "no more questions" too.
    more = tuple(
        f"no {also} {good[3:]}" for good in asked.good if good.startswith("no ") for also in ("more", "further")
    )
    for so, phrases in ((True, (*asked.good, *more)), (False, asked.bad)):
        found |= {tuple(phrase.split()): Says(every_of(line), so) for phrase in phrases}
    return found


_ALL = ("all", "everything is", "it is all", "they are all", "all of it is", "all of them are")
_ALL_OF_IT = (
    "all of it",
    "all of them",
    "yes to all",
    "to all",
    "yes to both",
    "to both",
    "yes to everything",
    "all of the above",
    "all of those",
    "the lot",
    "all three",
    "all four",
    "all five",
    "all set",
    "everything is set",
)


def _ends(line: Line) -> Iterator[str]:
    """What may be said of everything at once: "all done", where one of several points is that something is done."""
    for name in ("done", "ready", "fine", "good"):
        if name in ("fine", "good") or any(point.asked == name for point in line.points):
            yield name
    if "ready" in line.words:
        yield "set"


def _of_points(line: Line) -> list[tuple[str, Says]]:
    if line.want is not Want.ANSWER:
        return []
    every = every_of(line)
    if not line.points:
        return [(phrase, Says(every)) for phrase in _ALL_OF_IT] if len(line.asked_at_once) > 1 else []
    rows: list[tuple[str, Says]] = []
    for at, point in enumerate(line.points):
        mine = frozenset({at})
        rows += [(phrase, Says(mine)) for phrase in point.so if not phrase.startswith(("expiry", "their time"))]
        rows += [(phrase, Says(mine, so=False)) for phrase in point.not_so]
        rows += [(phrase, Says(mine, thing=True)) for phrase in point.there]
        rows += [(phrase, Says(mine, so=False, thing=True)) for phrase in point.flaws]
    findings = [point.asked for point in line.points if point.finding]
    feared = [name for name in findings if name not in GOOD_FINDINGS]
    if line.absent:
        nouns = {noun for point in line.points for noun in point.flaws}
        rows += [(f"{word}{of}", Says(every)) for word in ("free", "clear") for of in ("", " of it")]
        rows += [(f"{word} of {noun}", Says(every)) for word in ("free", "clear", "rid") for noun in nouns]
        rows += [(f"{noun} free", Says(every)) for noun in nouns]
        rows += [
            (f"{noun}{be} {gone}", Says(every))
            for noun in nouns
            for be in (" is", " is all", " are", " are all", " has", "")
            for gone in ("out", "gone")
        ]
    if len(feared) == len(findings):
        rows += [(phrase, Says(every, so=line.absent or not feared)) for phrase in ALL_GOOD]
    if not findings:
        rows += [(phrase, Says(every)) for phrase in ALL_RIGHT]
    if not feared:
        rows += [(phrase, Says(every)) for phrase in _ALL_OF_IT]
        rows += [(f"{word} {end}", Says(every)) for word in _ALL for end in _ends(line)]
    verbs = TAKEN_UP.get(line.asks, ())
    if "ready" in line.words[-2:]:
        rows += [
            (f"{who} {be} {ready}", Says(every))
            for who, be in (("i", "am"), ("we", "are"))
            for ready in ("ready", "set", "all set", "good to go", "good", "all ready", "all good")
        ]
        rows += [
            (f"{lead}good to go", Says(every))
            for lead in ("", "all ", "it is ", "it is all ", "everything is ", "they are ")
        ]
    subjects = ("i", "we") if "you" in line.words else ("it", "they", "that", "everything", "both", "she", "he")
    for subject in subjects:
        if not feared or line.absent:
            rows += [(f"{subject} {verb}", Says(every)) for verb in verbs]
    return rows


def _also(deed: Deed) -> tuple[str, ...]:
    """Other verbs for the same deed: "rub" for "clean"."""
    return tuple(sorted(verb.base for verb in VERBS.values() if verb.past[0] in deed.verb.past))


def _doing(deed: Deed) -> tuple[str, ...]:
    """How it is said that it is being done, by other verbs for it too: "rubbing" for hands that are to be cleaned."""
    others = {verb.ing for verb in VERBS.values() if verb.past[0] in deed.verb.past}
    let = ("letting it dry", "letting dry", "let it dry", "leaving it to dry") if deed.verb.base == "dry" else ()
    return (deed.verb.ing, *sorted(others), *let)


_ASKS = frozenset({"call", "ask"})


def _of_deeds(line: Line) -> list[tuple[str, Says]]:
    if line.want is Want.ANSWER:
        return []
    every = every_of(line)
    rows: list[tuple[str, Says]] = []
    for at, deed in enumerate(line.deeds):
        mine = frozenset({at})
        base, ing = deed.verb.base, deed.verb.ing
        ends = (
            f"finished {ing}",
            f"done {ing}",
            f"{ing} is done",
            f"{ing} is finished",
            f"{ing}s done",
            f"did {base}",
            f"i did {base}",
            *(f"{gave} it a {good}{base}" for gave in ("gave", "given") for good in ("", "good ", "little ")),
            f"managed to {base}",
            f"i managed to {base}",
        )
        done = deed.so if line.want is not Want.START or base != "dry" else ()
        if line.answered and deed.verb.base in _ASKS:
            rows += [(phrase, Says(frozenset())) for phrase in done]  # who has asked has no answer yet
            continue
        rows += [(phrase, Says(mine)) for phrase in (*done, *(ends if done else ()))]
        rows += [(f"{ing}s finished", Says(mine)), (f"{ing}s not done", Says(mine, so=False))]
        rows += [(phrase, Says(mine, so=False)) for phrase in (*deed.not_so, f"did not {base}", f"not {base}")]
    rows += [(phrase, Says(every)) for phrase in line.instead]
    if line.kept:
        beside = frozenset({len(line.deeds)})
        rows += [(phrase, Says(beside)) for phrase in line.kept.so]
        rows += [(phrase, Says(beside, so=False)) for phrase in line.kept.not_so]
    rows += [(phrase, Says(every)) for phrase in (*FINISHED, *line.answered)]
    rows += [(phrase, Says(every, so=False)) for phrase in UNFINISHED]
    if line.want is Want.START:
        rows += [(phrase, Says(every)) for phrase in (*STARTED, *(ing for deed in line.deeds for ing in _doing(deed)))]
        rows += [
            (f"{start} to {base}", Says(every))
            for deed in line.deeds
            for base in (deed.verb.base, *_also(deed))
            for start in ("starting", "i start")
        ]
        rows += [(f"start {what}", Says(every)) for what in ("timing", "the time", "the timer now")]
    return rows
