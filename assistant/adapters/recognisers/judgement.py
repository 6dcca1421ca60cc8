"""From hypotheses to one wording, or to none: a number that nobody said must not get through.

Hypotheses are grouped by what they mean for the step, and their probabilities added up: "125", "one twenty-five"
and "a hundred and twenty five" stand together. The best meaning is taken only where it clearly leads, and where
the model, left free, would write nothing much likelier. Otherwise the utterance is refused.
"""

import math
import re
from collections.abc import Callable, Hashable, Mapping
from dataclasses import dataclass

from assistant import spoken
from assistant.adapters.recognisers.tokens import Form
from assistant.ports import Alternative
from assistant.spoken.expect import Expect, TextExpected
from assistant.spoken.meaning import Ambiguous, Answer, Meaning, NoMatch, Reason

LEAST_SHARE = 0.8
"""Least share of the best meaning among the hypotheses."""
LEAST_RATIO = -4.0
"""Least logarithm of (probability of the wording / probability of what the free decoder writes)."""
_NO_SPEECH = 0.6
_LEAST_FREE_LOGARITHM = -1.0
_TELLING = frozenset({Reason.WRONG_UNIT, Reason.OUT_OF_RANGE, Reason.TWO_NUMBERS, Reason.DIGITS_WANTED})
"""Reasons that help the learner more than "I did not understand"; `interpret` will refuse the words again."""


@dataclass(frozen=True)
class Hypothesis:
    """A wording with the logarithm of its probability."""

    text: str
    score: float


@dataclass(frozen=True)
class Evidence:
    """What a decoder made of one utterance.

    Attributes:
        free: the wording without limits.
        free_tokens: how many tokens it has, the end included.
        no_speech: the model's probability that nobody speaks.
        bounded: hypotheses held to the expectation, by form of numbers.
        score: logarithm of the probability that the model, without limits, writes a text.
    """

    free: Hypothesis
    free_tokens: int
    no_speech: float
    bounded: Mapping[Form, tuple[Hypothesis, ...]]
    score: Callable[[str], float]


def judge(evidence: Evidence, expect: Expect) -> tuple[str, tuple[Alternative, ...]]:
    """The wording to stand for, empty for none, and all wordings with confidence, best first."""
    if isinstance(expect, TextExpected):
        return _free_words(evidence)
    ranked = rank(evidence.bounded, expect)
    alternatives = tuple(Alternative(plain(group.text), group.share) for group in ranked)
    if not ranked or ranked[0].share < LEAST_SHARE or not worth_telling(ranked[0].meaning):
        return "", alternatives
    if evidence.score(ranked[0].text) - evidence.free.score < LEAST_RATIO:
        return "", alternatives
    return alternatives[0].words, alternatives


@dataclass(frozen=True)
class Group:
    """Hypotheses of one meaning.

    Attributes:
        meaning: what all of them mean.
        text: the likeliest wording.
        share: their part of the probability, 0 to 1.
    """

    meaning: Meaning
    text: str
    share: float


def rank(bounded: Mapping[Form, tuple[Hypothesis, ...]], expect: Expect) -> tuple[Group, ...]:
    """The meanings of the hypotheses, likeliest first; each form of numbers has the same weight."""
    shares: dict[Hashable, float] = {}
    best: dict[Hashable, tuple[float, str, Meaning]] = {}
    for hypotheses in bounded.values():
        total = math.fsum(math.exp(one.score) for one in hypotheses)
        for one in hypotheses:
            meaning = spoken.interpret(plain(one.text), expect, heard=True)
            key = _same(meaning)
            part = math.exp(one.score) / total / len(bounded)
            shares[key] = shares.get(key, 0.0) + part
            if key not in best or best[key][0] < part:
                best[key] = (part, one.text, meaning)
    groups = [Group(best[key][2], best[key][1], share) for key, share in shares.items()]
    return tuple(sorted(groups, key=lambda group: -group.share))


def worth_telling(meaning: Meaning) -> bool:
    """Whether the guide can do something with it."""
    return not isinstance(meaning, NoMatch) or meaning.reason in _TELLING


def plain(text: str) -> str:
    """A wording without the signs of a written sentence; points within numbers stay."""
    text = re.sub(r"[!?;:\"]|[.,](?![0-9])|(?<![0-9])[.,](?=\s)", " ", text.lower())
    return " ".join(text.split())


def _same(meaning: Meaning) -> Hashable:
    """Equal for meanings that the guide would treat alike."""
    match meaning:
        case Answer(kind=kind, value=value, unit=unit):
            return (kind, value, unit)
        case Ambiguous(readings=readings, unit=unit):
            return (readings, unit)
        case NoMatch(reason=reason):
            return reason


def _free_words(evidence: Evidence) -> tuple[str, tuple[Alternative, ...]]:
    """Free words, unless the model itself doubts that anybody spoke (both of Whisper's own limits)."""
    words = " ".join(evidence.free.text.split())
    mean = evidence.free.score / evidence.free_tokens
    alternatives = (Alternative(words, math.exp(mean)),)
    doubtful = evidence.no_speech > _NO_SPEECH and mean < _LEAST_FREE_LOGARITHM
    return ("" if doubtful else words), alternatives
