"""How else people say the alternatives that lines at the bench name, in English: "no bubbles" for "none".

Words of the bench and of every day (common practice, no source). An author's own phrases come first;
what here would fit two alternatives of one line is taken for neither.
"""

from collections.abc import Mapping
from dataclasses import dataclass

from assistant.spoken.english import ways_bags as bags
from assistant.spoken.english import ways_felt as felt
from assistant.spoken.english import ways_lines as lines
from assistant.spoken.english import ways_patients as patients
from assistant.spoken.english import ways_pumps as pumps
from assistant.spoken.english import ways_read as read
from assistant.spoken.english import ways_seen as seen
from assistant.spoken.english import ways_told as told
from assistant.spoken.english.ways_patterns import rows_of


@dataclass(frozen=True)
class Aspect:
    """A part of an alternative, "in date" of "sealed and in date".

    Attributes:
        so: what also says that it is so.
        not_so: what says that it is not.
    """

    so: tuple[str, ...]
    not_so: tuple[str, ...] = ()


_ASPECTS = """
# part | so | not so
clear | crystal clear, transparent, see through | cloudy, hazy, murky, milky, discoloured, discolored, particles, \
bits, bits in, flakes, something floating
dry | bone dry, all dry | wet, damp, leaking, leaks, leak, dripping, soaked
in date | date fine, date good, date okay, date right, dates fine, dates good, within date, still good, date valid | \
expired, out of date, past its date, overdue
sealed | intact, unopened, untorn, closed, whole, undamaged, seal intact, seal good, seal fine | torn, ripped, open, \
opened, unsealed, broken, damaged, tear, tears, hole, holes
quiet | silent, running quietly, running, running well, running fine, fine, good, quietly, pump fine, pump good | \
alarm, alarms, alarming, beeping, beeps
healthy | fine, good, normal, looks good, unchanged, no change, site fine, site good | red, swollen, puffy, change, \
changed, sore, redness, swelling
fine | good, well, okay, comfortable, happy, calm, patient fine | unwell, poorly, ill, sick, worse
cool | cold, chilly | warm, hot
swollen | puffy, puffed up, swelling, swelled up | flat
red | reddened, pink, inflamed, redness | pale
sore | painful, hurts, tender, pain, hurting | painless
freely | easily, easy, smooth, smoothly, no resistance, flushes fine, flushes well, went in easily, goes in easily | \
hard, stiff, blocked, resistance, hard to push
blood return | blood, blood back, good blood return, blood comes back, blood coming back, flashback, see blood, \
blood comes | no blood, no return
complete | all there, nothing missing, everything there, full, all of it | incomplete, missing, left out
right | correct, all right, all correct, accurate, nothing wrong | wrong, incorrect, mistake, mistakes
plugged in | plugged, on mains, mains | unplugged, on battery
loud | loud enough, audible, hear it, hear it well | quiet, too quiet
soft | | hard, firm, stiff
primed | filled, full | unprimed, not primed
loaded | in the pump | unloaded, not loaded
no air | no bubbles, air free, free of air, bubble free | air, bubbles, bubble, some air
"""

_PARTS = {
    "fit to use": ("clear", "in date"),
    "all three": ("primed", "loaded", "no air"),
    "freely with blood return": ("freely", "blood return"),
}
"""Alternatives of several parts that their own words do not show."""


def _read() -> dict[str, tuple[str, ...]]:
    table = f"{bags.WAYS}{lines.WAYS}{patients.WAYS}".replace("\\\n", "").replace("\n\n", "\n")
    rows = (row.partition("|") for row in table.strip().splitlines())
    return {name.strip(): tuple(way.strip() for way in ways.split(",")) for name, _, ways in rows}


def _read_aspects() -> dict[str, Aspect]:
    rows = [row.split("|") for row in _ASPECTS.replace("\\\n", "").strip().splitlines() if not row.startswith("#")]
    return {
        part.strip(): Aspect(*(tuple(way.strip() for way in cell.split(",") if way.strip()) for cell in cells))
        for part, *cells in rows
    }


_WAYS = _read()
_PATTERNS = rows_of("".join(one.PATTERNS for one in (read, seen, pumps, felt, told)))
ASPECTS = _read_aspects()
"""By the part of an alternative: what says that it is so, or not."""


def parts_of(choice: str) -> tuple[str, ...]:
    """The parts that make an alternative; none where it is not made of several."""
    named = _PARTS.get(choice) or tuple(choice.split(" and "))
    return named if len(named) > 1 and all(part in ASPECTS for part in named) else ()


def ways_of(choice: str, choices: tuple[str, ...]) -> tuple[str, ...]:
    """Other ways to say an alternative among these; some are ways to say it only beside another one: "none / some"."""
    return _of(_WAYS, choice, choices)


def patterns_of(choice: str, choices: tuple[str, ...]) -> tuple[str, ...]:
    """The same as patterns: see `ways_patterns`."""
    return _of(_PATTERNS, choice, choices)


def _of(table: Mapping[str, tuple[str, ...]], choice: str, choices: tuple[str, ...]) -> tuple[str, ...]:
    name = choice.lower()
    beside = (f"{name} / {other.lower()}" for other in choices if other != choice)
    return (*table.get(name, ()), *(way for key in beside for way in table.get(key, ())))


EITHER_OR = tuple(
    {one.strip(), other.strip()}
    for one, _, other in (
        pair.partition("/")
        for pair in (
            *("none/some", "dry/still bleeding", "still fluid/empty", "the same/different", "all open/one closed"),
            *("safe to give/allergic", "safe to use/allergic", "held firmly/a gap", "run in/some left"),
            *("as ordered/a slip", "together/apart", "share one set/apart", "comes out/stays in", "in date/overdue"),
            *("it stays/it comes out", "enough/too little", "none/bleeding", "none/a bleeding risk", "dry/leaking"),
            *("blood return/no blood", "all there/something missing", "all three/something missing"),
            *("within range/out of range", "same fluid/something else", "whole/piece missing", "healthy/changed"),
            *("clear/another alert", "it has moved/where it was", "a free port/none", "large vein/small vein"),
        )
    )
)
"""Pairs of alternatives that leave nothing between them: whoever denies one of them says the other."""

OF_A_PART = frozenset(
    {"some", "still bleeding", "something missing", "something wrong", "cloudy", "leaking", "expired", "torn", "opened"}
    | {"red", "swollen", "painful", "an alarm", "alarming", "a change", "changed", "a kink", "kinked", "air"}
    | {"something loose", "loose connection", "one closed", "different", "a gap", "a slip", "overdue", "pus", "wet"}
    | {"hard cord", "resistance", "pain", "swelling", "piece missing", "some left", "allergic", "short of breath"}
    | {"in pain", "itching", "dizzy", "burning", "bleeding", "a bleeding risk", "low", "high", "too little", "too much"}
    | {"nearly empty", "red and sore", "cool and swollen", "far above", "loaded wrongly", "no label", "patient unwell"}
    | {"the secondary", "the primary", "another infusion", "another alert", "something else", "out of range"}
    | {"it has moved", "too early"}
    | {"hard to hear", "hanging too long", "no blood", "unplugged", "small vein", "large vein"}
)
"""What is so where it is so of a part, or to a degree; everything else is said of the whole."""

MADE = frozenset({"ready-mixed", "mixed on this ward"})
"""What came about at a time that may be told: "mixed here this morning"."""

TOLD_LATER = MADE | {
    "allergic",
    "too early",
    "expired",
    "overdue",
    "hanging too long",
    "opened",
    "something missing",
    "bleeding",
}
"""What is still so where it was so some time ago: "it expired last month"."""

PAST = MADE | {
    *("from the library", "by hand", "not listed", "complete and right", "something missing", "something wrong")
}
"""What may be told of what was: how something was chosen, or said."""

ORDERED = (
    *("signature", "weight", "dose", "rate", "date", "name", "route", "volume", "time", "fluid", "drug", "drip rate"),
    *("concentration", "frequency", "unit", "units", "amount", "duration", "line", "allergies", "prescriber"),
)
"""What an order, or a colleague who repeats it, may lack."""

ALSO_NEUTRAL = frozenset(
    {"coming", "inside", "she", "he", "her", "him", "his", "patient", "key", "typed", "keyed", "chose", "chosen"}
    | {"selected", "picked", "used", "took", "got", "found", "gums", "nose", "mouth", "running", "flushing"}
    | {"dripping", "drips", "flushes", "runs", "anywhere", "doctor", "peeing", "passing", "urine"}
    | {"sealed", "unopened", "intact", "point", "ordered"}
)
"""Words beside those of `bench_words.NEUTRAL` that change nothing about which alternative it is."""

AT_FAULT = frozenset(
    {
        "hub",
        "joint",
        "connection",
        "tubing",
        "tube",
        "line",
        "port",
        "chamber",
        "spike",
        "clamp",
        "dressing",
        "connector",
    }
    | {"valve", "cap", "site", "skin", "arm", "hand", "vein", "tip", "seal", "label", "package", "outlet", "bag", "set"}
    | {
        "plunger",
        "flange",
        "syringe",
        "pump",
        "roller",
        "slide",
        "catheter",
        "cannula",
        "packet",
        "wrapper",
        "luer",
        "fluid",
        "solution",
    }
)
"""What a fault may be said of, though the line does not name it: "the hub is leaking"."""

FELT = frozenset(
    {"painful", "in pain", "pain", "itching", "burning", "comfortable", "feeling fine", "short of breath", "dizzy"}
    | {"breathing easily", "swelling"}
)
"""What a patient tells: "she says it hurts"."""

DENIED_BY = {
    "loaded wrongly": ("loaded right", "loaded correctly", "loaded properly", "loaded well", "well loaded", "in right"),
    "kinked": ("straight", "straight all the way"),
    "a kink": ("straight", "straight all the way"),
    "leaking": ("tight", "all tight", "sealed", "dry", "all dry"),
    "something loose": ("tight", "all tight", "everything tight"),
    "loose connection": ("tight", "all tight", "everything tight"),
}
"""What says that an alternative is not so: "loaded right" of "loaded wrongly"."""
