"""What is known of a line before a word of an answer is read, in English."""

from dataclasses import dataclass
from functools import cached_property, lru_cache

from assistant.spoken.english.bench_words import CLAMPED_AT_THE_VEIN, NOUNS, PARTICLES
from assistant.spoken.english.claims import Says, every_of, phrases_at
from assistant.spoken.english.consequences import BESIDE
from assistant.spoken.english.deeds import ALSO_CALLED
from assistant.spoken.english.lines import Line, read_line
from assistant.spoken.english.terms import means_of
from assistant.spoken.english.verbs import VERBS
from assistant.spoken.statement import Asked, Tokens, Want


@dataclass(frozen=True)
class Known:
    """What is known before a word is read: all that depends on the line alone.

    Attributes:
        line: what is asked for.
        table: what each phrase says.
        lengths: how long the phrases are that begin with a word, the longest first.
        longest: the length of the longest phrase.
        own: the things that its deeds are done to.
        things: every thing that it names, by each of its words.
        split: verbs with particles that other words may stand between.
        doing: its verbs, as they are while it is being done.
        every: the places of all that it asks for.
        named: its words, also without their s.
        compared: things that it only compares with: "higher than the primary".
        beside: what may be seen once it is done, by its first word, the longest first: "it is quiet".
        tells_figures: something is written down, measured or set: a figure may be named.
        spoken: every word of the phrases of the table.
    """

    line: Line
    table: dict[Tokens, Says]
    lengths: dict[str, tuple[int, ...]]
    longest: int
    own: frozenset[str]
    things: frozenset[str]
    split: dict[str, tuple[str, ...]]
    doing: frozenset[str]
    every: frozenset[int]
    named: frozenset[str]
    compared: frozenset[str]
    beside: dict[str, tuple[Tokens, ...]]
    tells_figures: bool
    spoken: frozenset[str]

    @cached_property
    def all_named(self) -> frozenset[str]:
        """The words of the line and those of its things, together."""
        return self.things | self.named


_COMPARED = {
    "below": {"lower", "below", "than", "under", "beneath"},
    "low": {"lower", "below", "than", "under", "beneath"},
    "above": {"higher", "above", "than", "over"},
    "high": {"higher", "above", "than", "over"},
}
"""By a word of the line: in which other words it may be compared."""
_MOVED = frozenset({"hang", "lower", "raise", "place", "put", "move", "keep", "hold", "lift"})
"""What is done to a thing to bring it above or below another one."""
_OWNERS = frozenset({"secondarys", "primarys", "sets", "bags", "patients"})
"""Things that own one: "the secondary's clamp"."""
_AT_THE_PATIENT = ("arm", "forearm", "hand", "wrist")
_BESIDES = {
    "to patient": _AT_THE_PATIENT,
    "nearest the patient": _AT_THE_PATIENT,
    "both rates": ("old", "new", "change"),
    "both doses": ("old", "new", "first", "second"),
    "first values": ("vitals", "vital", "obs", "observations", "signs", "readings", "figures", "bp", "pulse"),
    "run fluid": ("line", "tubing", "set", "tube"),
    "how it looks": ("site", "arm"),
    "how line and site looked": ("state",),
    "thin line": ("small", "skinny", "narrow", "fine", "little", "tube"),
    "third to half full": ("fluid", "level", "chamber"),
    "a pinch of your fingers": ("pinch", "pinched"),
    "what has changed": ("change", "changes", "rate", "dose"),
    "find what blocks": (
        "clamp",
        "clamps",
        "slide",
        "roller",
        "stopcock",
        "tube",
        "tubing",
        "kink",
        "arm",
        "elbow",
        "wrist",
    ),
    "report": ("biomed", "engineering", "supervisor", "manager", "broken", "faulty", "report"),
    "discard": ("lot", "stuff", "rest", "everything"),
    "how the patient is": ("patient", "condition", "state"),
    "close the line": ("clamp", "pinch"),
}
"""What else is meant by words of a line."""
_WITH_FIGURES = frozenset(
    {"write", "note", "measure", "document", "set", "arrange", "label", "record", "count", "mark"}
)


@lru_cache(maxsize=512)
def known_of(asked: Asked) -> Known:
    """What is known of the line, and of its things by their other names."""
    line, table = read_line(asked), phrases_at(asked)
    lengths: dict[str, set[int]] = {}
    for words in filter(None, table):
        lengths.setdefault(words[0], set()).add(len(words))
    own = {thing for deed in line.deeds for thing in deed.things}
    also = (
        other
        for word in line.words
        for other in ALSO_CALLED.get(word, ALSO_CALLED.get(word.removesuffix("s"), ()) if word in _OWNERS else ())
    )
    things = {word for thing in (*line.things, *own, *also, *line.words) for word in thing.split()}
    things |= {word[:-1] for word in things if word[-1:] == "s" and word[:-1] in NOUNS}
    if things & {"clamp", "clamps", "unclamp", "clip"}:
        things |= {"clamp", "clip", "slide"}
        if not things & CLAMPED_AT_THE_VEIN:
            things |= {"roller", "wheel"}
    if line.deeds:
        things |= means_of(asked.line) | {deed.verb.ing for deed in line.deeds if deed.leads}
        things |= {
            word for deed in line.deeds if deed.leads for past in deed.verb.past for word in (past, *deed.verb.states)
        }
        things |= {"kept", "steady"} if {"hold", "keep"} & set(line.words) else set()
        things |= {"turned", "flipped", "inverted"} if "upside" in line.words else set()
    if any(deed.verb.base in ("tell", "say", "explain") for deed in line.deeds):
        things |= {VERBS[word[:-1]].ing for word in line.words if word[-1:] == "s" and word[:-1] in VERBS}
    if any(deed.verb.base in ("tell", "inform", "report", "ask") for deed in line.deeds):
        things |= {"called", "phoned", "rang", "rung", "paged"}
    things |= (
        {"hanging", "hangs", "hung"} if any(d.verb.base in ("hang", "lower", "raise") for d in line.deeds) else set()
    )
    things |= {"slow"} if "slowly" in line.words else set()
    things |= {other for word, others in _BESIDES.items() if word in line.text.lower() for other in others}
    for word, others in _COMPARED.items():
        things |= others if {word, f"{word}er"} & set(line.words) else set()
    named = {*line.words, *(word.removesuffix("s") for word in line.words)}
    if "clamp" in own | named and not {"roller", "slide"} & named:
        named |= {"roller", "slide"}
    than = min((line.words.index(word) for word in ("than", "below", "above") if word in line.words), default=None)
    return Known(
        line,
        table,
        {word: tuple(sorted(found, reverse=True)) for word, found in lengths.items()},
        max(map(len, table), default=1),
        frozenset(own),
        frozenset(things),
        _split(table),
        frozenset(word for deed in line.deeds if not deed.leads for word in (deed.verb.base, deed.verb.ing))
        | frozenset(deed.verb.base for deed in line.deeds),
        every_of(line),
        frozenset(named),
        frozenset()
        if than is None
        or not ("than" in line.words or line.want is Want.ANSWER or _MOVED & {d.verb.base for d in line.deeds})
        else NOUNS.intersection(line.words[than:]).difference(line.words[:than]),
        _beside(line, table),
        any(deed.verb.base in _WITH_FIGURES for deed in line.deeds),
        frozenset(word for words in table for word in words),
    )


def _split(table: dict[Tokens, Says]) -> dict[str, tuple[str, ...]]:
    found: dict[str, tuple[str, ...]] = {}
    for words in table:
        if len(words) == 2 and words[1] in PARTICLES:
            found[words[0]] = (*found.get(words[0], ()), words[1])
    return found


def _beside(line: Line, table: dict[Tokens, Says]) -> dict[str, tuple[Tokens, ...]]:
    """What may be seen once the deeds are done, and is no claim itself."""
    found: dict[str, list[Tokens]] = {}
    for deed in line.deeds if line.want is Want.DONE else ():
        for words in BESIDE.get(deed.verb.base, ()):
            if not any(words[at:end] in table for at in range(len(words)) for end in range(at + 1, len(words) + 1)):
                found.setdefault(words[0], []).append(words)
    return {first: tuple(sorted(phrases, key=len, reverse=True)) for first, phrases in found.items()}
