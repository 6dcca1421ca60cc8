"""What became of each clip by the guide's own rule, counted, with intervals."""

import math
from collections import Counter, defaultdict
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from decimal import Decimal
from enum import StrEnum

from assistant import spoken
from assistant.adapters.recognisers.evidence import Evidence
from assistant.guide.read_back import digits_follow
from assistant.spoken import ENGLISH
from assistant.spoken.confusion import NEARLY_THE_SAME
from assistant.spoken.expect import NumberExpected
from assistant.spoken.meaning import Ambiguous, Answer, Kind
from tests.bench.clips import CORRECTION, Clip


class Outcome(StrEnum):
    """What became of a clip."""

    RIGHT = "right"  # taken for what it is; a number goes on with the short read-back
    ASKED = "asked"  # a number is asked for digit by digit
    WRONG = "WRONG"  # taken for something else, and goes on; for speech from outside: taken at all
    REFUSED = "refused"  # the learner says it again


@dataclass(frozen=True)
class Heard:
    """A clip with what was heard.

    Attributes:
        clip: what was said.
        words: the wording; empty where none is stood for.
        doubtful: the recogniser wants the digits.
        compute_s: time spent, seconds.
        told_apart: the recogniser tells a number from those that sound like it.
        evidence: what thresholds are chosen on; None for recognisers that give none.
    """

    clip: Clip
    words: str
    doubtful: bool
    compute_s: float
    evidence: Evidence | None = None
    told_apart: bool = False


def outcome(heard: Heard) -> Outcome:
    """What the guide would do, and whether that is right."""
    right = heard.clip.saying.right
    meaning = spoken.interpret(heard.words, heard.clip.saying.expect, heard=True) if heard.words else None
    match meaning:
        case Answer(kind=Kind.NUMBER) if digits_follow(
            meaning, ENGLISH, doubtful=heard.doubtful, told_apart=heard.told_apart
        ):
            return Outcome.ASKED
        case Ambiguous():
            return Outcome.ASKED
        case Answer(kind=Kind.NUMBER, value=value):
            return Outcome.RIGHT if value == right else Outcome.WRONG
        case Answer(value=value):
            return Outcome.RIGHT if str(value) == right else Outcome.WRONG
        case _:
            return Outcome.REFUSED


def is_asked_in_vain(heard: Heard) -> bool:
    """Whether digits are asked for although the number was heard right."""
    meaning = spoken.interpret(heard.words, heard.clip.saying.expect, heard=True)
    return outcome(heard) is Outcome.ASKED and isinstance(meaning, Answer) and meaning.value == heard.clip.saying.right


def is_like_another(value: Decimal) -> bool:
    """Whether a number is a teen, a ten or their like, for which digits are always asked."""
    return any(neighbour.kind in NEARLY_THE_SAME for neighbour in spoken.confusions(value))


def is_outside(heard: Heard) -> bool:
    """Whether the speech was not for the assistant."""
    return heard.clip.saying.right is None


@dataclass(frozen=True)
class Row:
    """One line of the table.

    Attributes:
        name: the subset.
        counts: clips by outcome.
    """

    name: str
    counts: Mapping[Outcome, int]

    @property
    def clips(self) -> int:
        """How many."""
        return sum(self.counts.values())

    def percent(self, *outcomes: Outcome) -> float:
        """How many of a hundred had one of these outcomes."""
        return 100 * sum(self.counts.get(one, 0) for one in outcomes) / max(1, self.clips)


def interval(hits: int, trials: int) -> tuple[float, float]:
    """The 95 % interval of a share, in percent (Wilson 1927, "Probable Inference", JASA 22)."""
    if not trials:
        return 0.0, 100.0
    z = 1.96
    share, square = hits / trials, z * z / trials
    centre = (share + square / 2) / (1 + square)
    half = z * math.sqrt(share * (1 - share) / trials + square / trials / 4) / (1 + square)
    return 100 * max(0.0, centre - half), 100 * min(1.0, centre + half)


def rows(all_heard: Iterable[Heard], *, voices: bool = False) -> list[Row]:
    """The subsets: what was said, by whom, under which condition; each voice by itself where asked for."""
    counts: dict[str, Counter[Outcome]] = defaultdict(Counter)
    for heard in all_heard:
        clip, result = heard.clip, outcome(heard)
        start = f"{clip.saying.kind}, {clip.group if clip.speaker != 'noise' else 'noise'}"
        counts[f"{start}, {clip.condition}" if not is_outside(heard) else start][result] += 1
        if clip.condition.endswith("10 dB") and not is_outside(heard):
            counts[f"{start}, noise at 10 dB"][result] += 1
        if voices and clip.condition == "clean":
            counts[f"{start}, clean, {clip.speaker}"][result] += 1
    return [Row(name, counts[name]) for name in sorted(counts)]


def false_accepts(all_heard: Iterable[Heard]) -> tuple[int, int, float]:
    """Answers taken, digits asked for, and minutes of speech from outside."""
    outside = [heard for heard in all_heard if is_outside(heard)]
    results = Counter(outcome(heard) for heard in outside)
    return results[Outcome.WRONG], results[Outcome.ASKED], sum(heard.clip.seconds for heard in outside) / 60


def asked_in_vain(all_heard: Iterable[Heard], *, decimals: bool = True) -> Row:
    """Numbers outside teens, tens and their like: for how many digits were asked though heard right.

    Args:
        all_heard: clips of every kind.
        decimals: count them, though digits are always asked for theirs.
    """
    counts: Counter[Outcome] = Counter()
    for heard in all_heard:
        right = heard.clip.saying.right
        plain = heard.clip.saying.kind == "number" and heard.clip.condition != CORRECTION
        if not plain or not isinstance(right, Decimal) or is_like_another(right):
            continue
        if decimals or right == right.to_integral_value():
            counts[Outcome.ASKED if is_asked_in_vain(heard) else Outcome.RIGHT] += 1
    return Row("asked for digits although heard right, outside teens and tens", counts)


@dataclass(frozen=True)
class Dialogues:
    """What numbers become after the whole dialogue.

    Attributes:
        count: how many numbers were said.
        kept_right, kept_wrong: kept after read-backs that a truthful learner answers.
        kept_wrong_by_assent: expected number kept wrong where the learner says yes to everything in 10 %.
        not_kept: given up by voice (the keyboard is offered).
        misheard_no: "no" taken for "yes" among the clips with a no.
    """

    count: int
    kept_right: int
    kept_wrong: int
    kept_wrong_by_assent: float
    not_kept: int
    misheard_no: int


ASSENT = 0.1
"""Part of the learners who say yes to whatever is read back."""


def dialogues(all_heard: list[Heard]) -> Dialogues:
    """Each number clip as the start of a dialogue; the digits are what the same voice says when asked for them.

    A read-back of a wrong number is answered with no, and the digits are asked for; whether a no can be taken
    for a yes is counted apart.
    """
    spelled: dict[tuple[str, object], list[Heard]] = defaultdict(list)
    for heard in all_heard:
        if heard.clip.saying.kind == "digits":
            spelled[heard.clip.speaker, heard.clip.saying.right].append(heard)
    right = wrong_reads = not_kept = count = 0
    for heard in all_heard:
        if heard.clip.saying.kind != "number" or not isinstance(heard.clip.saying.expect, NumberExpected):
            continue
        answers = spelled[heard.clip.speaker, heard.clip.saying.right]
        result = outcome(heard)
        if result is not Outcome.RIGHT and not answers:
            continue  # a part of the clips may lack this voice's digits
        count += 1
        wrong_reads += result is Outcome.WRONG
        if result is Outcome.RIGHT:
            right += 1
            continue
        # The same condition first: who speaks in noise spells in noise.
        answers = sorted(answers, key=lambda one: one.clip.condition != heard.clip.condition)[:1]
        then = [outcome(one) for one in answers]
        wrong_reads += Outcome.WRONG in then
        right += Outcome.RIGHT in then
        not_kept += Outcome.RIGHT not in then
    noes = [heard for heard in all_heard if heard.clip.saying.right == "no"]
    misheard = sum(outcome(heard) is Outcome.WRONG and "yes" in _confirmed(heard) for heard in noes)
    return Dialogues(count, right, 0 if not misheard else wrong_reads, ASSENT * wrong_reads, not_kept, misheard)


def _confirmed(heard: Heard) -> str:
    meaning = spoken.interpret(heard.words, heard.clip.saying.expect, heard=True)
    return str(meaning.value) if isinstance(meaning, Answer) and meaning.kind is Kind.CONFIRM else ""
