"""Rules about texts: what is misread, what cannot be said, what is too long or too hard to hold in mind."""

import re
from collections.abc import Iterator
from statistics import median

from assistant.checklist.finding import Bench, Complaint, error, warning
from assistant.checklist.model import Checklist, ChoiceAsked, Step, TroublePlan
from assistant.checklist.wording import error_prone, unspeakable
from assistant.spoken import ENGLISH
from assistant.text import quoted

LONGEST_SAY_WORDS = 20
"""Words of a line that is read aloud; a longer one is not held in mind (common practice, no source)."""
MEDIAN_SAY_WORDS = 12
"""Words of the middle one of a checklist's lines: who hears forty lines in a row needs most of them short (common
practice, no source)."""
LONGEST_SENTENCE_WORDS = 30
"""Words of any other spoken sentence (plain-language guides ask for 15 to 20 on average, from memory)."""
HARDEST_GRADE = 13
"""Reading grade of all that a step says: 12 ends secondary school; what lies above was not written plainly
(chosen on the library's own steps, no source)."""
FEWEST_WORDS = 40
"""Below that, one long word moves the grade of a step too much."""
HARDEST_TEXT_GRADE, FEWEST_TEXT_WORDS = 18, 8
"""The same for one text alone, where a single long word counts for more."""
LONGEST_TEXT_WORDS = 80
"""Words of one text that is said at once (common practice, no source)."""
_TRADE_WORDS = frozenset(
    (
        *("concentration", "infusion", "injection", "medication", "intravenous", "secondary", "sodium", "potassium"),
        *("chloride", "dextrose", "lactated", "piggyback", "wristband", "antiseptic", "identifiers", "prescriber"),
    )
) | {word for known in ENGLISH.tables.units.units for name in (known.one, known.many) for word in name.split()}
"""Words that the trade cannot do without: they are not held against a text."""


def step_texts(step: Step) -> Iterator[tuple[str | tuple[str, ...], str]]:
    """Every text of a step that is shown, spoken or printed, with its field."""
    for name in ("part", "say", "more", "hint", "why", "if_wrong"):
        yield name, getattr(step, name)
    for text in step.stronger:
        yield "stronger", text
    if step.tries is not None:
        yield "tries_spent", step.tries_spent
    if step.expires is not None:
        yield ("expires", "say"), step.expires.say
    if isinstance(step.expect, ChoiceAsked):
        for text in step.expect.advice.values():
            yield ("expect", "advice"), text


def length(step: Step, _number: int, _bench: Bench) -> Iterator[Complaint]:
    """A line that is read aloud is short, and so is every sentence of the rest."""
    words = len(step.say.split())
    if words > LONGEST_SAY_WORDS:
        yield warning(
            "say-length",
            "say",
            f"the line has {words} words; more than {LONGEST_SAY_WORDS} are not held in mind.",
            "Say one thing; move the rest into more.",
        )
    for field, text in step_texts(step):
        longest = max((len(sentence.split()) for sentence in sentences(text)), default=0)
        if field != "say" and len(text.split()) > LONGEST_TEXT_WORDS:
            yield warning(
                "sentence-length",
                field,
                f"this text has {len(text.split())} words; more than {LONGEST_TEXT_WORDS} at once are not listened to.",
                "Keep what is needed at this step.",
            )
        elif field not in ("say", "why") and longest > LONGEST_SENTENCE_WORDS:
            yield warning(
                "sentence-length",
                field,
                f"a sentence has {longest} words; more than {LONGEST_SENTENCE_WORDS} are lost by ear.",
                "Make two of it.",
            )


_ASIDE = re.compile(r"[;()\[\]]|\s[-\u2013\u2014]\s|\u2014")


def asides(step: Step, _number: int, _bench: Bench) -> Iterator[Complaint]:
    """A line that is heard once holds nothing in brackets, between dashes or behind a semicolon."""
    found = _ASIDE.search(step.say)
    if found:
        yield warning(
            "aside",
            "say",
            f"the line holds an aside ({quoted(found[0].strip())}), which is lost by ear.",
            "Say one thing; move the rest into more.",
        )


def middle_length(checklist: Checklist) -> Iterator[Complaint]:
    """Most lines of a checklist are short."""
    middle = median(len(step.say.split()) for step in checklist.steps)
    if middle > MEDIAN_SAY_WORDS:
        yield warning(
            "say-median",
            "title",
            f"the middle one of the lines has {middle:g} words; more than {MEDIAN_SAY_WORDS} are too many in a row.",
            "Shorten the longest ones, or make two steps of one.",
        )


def reading(step: Step, _number: int, bench: Bench) -> Iterator[Complaint]:
    """What is spoken is plain enough to be followed by ear."""
    texts = {name: bench.sheet.checklist.aloud(getattr(step, name)) for name in ("say", "more", "hint", "if_wrong")}
    for name, text in texts.items():
        if len(text.split()) >= FEWEST_TEXT_WORDS and reading_grade(text) > HARDEST_TEXT_GRADE:
            yield _hard(name, f"{name} reads", reading_grade(text), HARDEST_TEXT_GRADE)
            return
    said = " ".join(texts.values())
    if len(said.split()) >= FEWEST_WORDS and reading_grade(said) > HARDEST_GRADE:
        name = "more" if step.more else "say"
        yield _hard(name, "what this step says reads", reading_grade(said), HARDEST_GRADE)


def _hard(name: str, what: str, grade: float, hardest: int) -> Complaint:
    return warning(
        "reading-level",
        name,
        f"{what} like school grade {grade:.0f}; {hardest} is hard enough by ear.",
        "Use shorter sentences and shorter words.",
    )


def reading_grade(text: str) -> float:
    """The Automated Readability Index of a text, as a school grade; 0 for a text without words.

    A word of the trade counts as one of five letters at most.

    Source: E. A. Smith and R. J. Senter, Automated Readability Index, AMRL-TR-66-220 (1967):
    4.71 x letters per word + 0.5 x words per sentence - 21.43 (from memory).
    """
    words = re.findall(r"[\w'-]+", text)
    if not words:
        return 0
    letters = sum(min(len(word), 5) if word.lower() in _TRADE_WORDS else len(word) for word in words)
    return 4.71 * letters / len(words) + 0.5 * len(words) / max(1, len(list(sentences(text)))) - 21.43


def sentences(text: str) -> Iterator[str]:
    """The sentences of a text; a colon or a semicolon ends one for the ear."""
    return (part for part in re.split(r"(?<=[.!?:;])\s+", text.strip()) if part)


def wording(step: Step, _number: int, bench: Bench) -> Iterator[Complaint]:
    """Nothing that is misread, nothing that cannot be spoken."""
    for field, text in step_texts(step):
        name = field if isinstance(field, str) else field[-1]
        yield from _slips(field, name, text, bench.sheet.checklist)
    if isinstance(step.expect, ChoiceAsked):
        for text in (*step.expect.choices, *(way for ways in step.expect.phrases.values() for way in ways)):
            yield from _slips(("expect", "choices"), "choices", text, bench.sheet.checklist)


def plan_wording(plan: TroublePlan, checklist: Checklist) -> Iterator[Complaint]:
    """The same for what is said about trouble."""
    yield from _slips("say", "say", plan.say, checklist)


def head_wording(checklist: Checklist) -> Iterator[Complaint]:
    """The same for what the head says."""
    for name, texts in (
        ("title", (checklist.title,)),
        ("purpose", (checklist.purpose,)),
        ("cautions", checklist.cautions),
        ("equipment", checklist.equipment),
        ("abbreviations", tuple(checklist.abbreviations.values())),
    ):
        for text in texts:
            yield from _slips(name, name, text, checklist)


def _slips(field: str | tuple[str, ...], name: str, text: str, checklist: Checklist) -> Iterator[Complaint]:
    for slip in error_prone(text):
        yield error("error-prone", field, f"{quoted(slip.found)} in {name} {slip.reason}.", slip.mend, slip.found)
    for slip in unspeakable(text):
        if slip.found not in checklist.abbreviations:
            yield error("speakable", field, f"{quoted(slip.found)} in {name} {slip.reason}.", slip.mend, slip.found)


def said_twice(step: Step, number: int, bench: Bench) -> Iterator[Complaint]:
    """Two steps of one file with the same line cannot be told apart by ear."""
    place = bench.sheet.places[step.id]
    for earlier in bench.earlier(number):
        other = bench.sheet.places[earlier.id]
        # One step of a part that stands twice is the same step at another place of the procedure.
        if earlier.say == step.say and other.paper.path == place.paper.path and other.number != place.number:
            yield warning(
                "said-twice",
                "say",
                f"{quoted(earlier.id)} says the same line.",
                "Word one of them so that the learner hears which it is.",
            )
            return
