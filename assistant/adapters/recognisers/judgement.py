"""From hypotheses to one wording, or to none: a number that nobody said must not get through.

Hypotheses are grouped by what they mean for the step, and their probabilities added up: "125", "one twenty-five"
and "a hundred and twenty five" stand together. The best meaning is taken only where it clearly leads in figures
and in words, is clear by itself, and where the model, left free, would write nothing much likelier. Otherwise the
utterance is refused.
The thresholds were chosen on one half of the clips of ``tests/bench/hearing.py`` and are reported on the other.
"""

import math
import re
from collections.abc import Hashable, Mapping
from dataclasses import dataclass, replace

from assistant import spoken
from assistant.adapters.recognisers.forms import Form, has_a_say
from assistant.ports import Alternative
from assistant.spoken.expect import Expect, NumberExpected, TextExpected
from assistant.spoken.meaning import Ambiguous, Answer, Meaning, NoMatch, Reason

LEAST_SHARE = 0.7
"""Least share of the best meaning among the sentences of the step."""
LEAST_RATIO = -3.0
"""Least logarithm of (probability of the meaning / probability of what the free decoder writes)."""
LEAST_SCORE = -4.5
"""Least logarithm of the meaning's own probability; what is less clear than that may be anything."""
LEAST_NAME_SHARE = 0.9
"""Least share of a name among names alone."""
LEAST_NAME_SCORE = -4.0
"""Least logarithm of a name's probability a token: a long name is less likely than a short one by its length."""
LEAST_NAME_RATIO = -15.0
"""Least logarithm of (probability of a name / probability of what the free decoder writes), among names alone."""
_UNHEARD = 1e-4
"""Share of a meaning that one form has not heard at all; not nothing, for a search gives up what is unlikely."""
_LEAST_LOGARITHM = -700.0
"""Below this a probability would be rounded to nothing, and its logarithm be lost."""
_NO_SPEECH = 0.6
_LEAST_FREE_LOGARITHM = -1.0
_TELLING = frozenset(
    {
        Reason.WRONG_UNIT,
        Reason.OUT_OF_RANGE,
        Reason.TWO_NUMBERS,
        Reason.DIGITS_WANTED,
        Reason.NOT_AN_ANSWER_HERE,
    }
)
"""Reasons that help the learner more than "I did not understand"; `interpret` will refuse the words again."""


@dataclass(frozen=True)
class Hypothesis:
    """A wording with the logarithm of its probability among all that the model could write.

    Attributes:
        text: the wording.
        score: the logarithm.
        tokens: how many tokens it was written in, the end included; 0 where nobody asks.
    """

    text: str
    score: float
    tokens: int = 0


@dataclass(frozen=True)
class Evidence:
    """What a decoder made of one utterance.

    Attributes:
        free: the wording without limits.
        free_tokens: how many tokens it has, the end included.
        no_speech: the model's probability that nobody speaks.
        bounded: sentences of the step, by form of numbers.
        named: where a name is expected, names alone.
    """

    free: Hypothesis
    free_tokens: int
    no_speech: float
    bounded: Mapping[Form, tuple[Hypothesis, ...]]
    named: tuple[Hypothesis, ...] = ()


@dataclass(frozen=True)
class Group:
    """Hypotheses of one meaning.

    Attributes:
        meaning: what all of them mean.
        text: the likeliest wording.
        share: their part of the probability of all sentences of the step, 0 to 1.
        score: logarithm of their probability among all that the model could write.
    """

    meaning: Meaning
    text: str
    share: float
    score: float


def judge(evidence: Evidence, expect: Expect) -> tuple[str, tuple[Alternative, ...]]:
    """The wording to stand for, empty for none, and all wordings with confidence, best first."""
    if isinstance(expect, TextExpected):
        return _free_words(evidence)
    ranked = rank(evidence.bounded, expect)
    alternatives = tuple(Alternative(group.text, group.share) for group in ranked)
    if not ranked:
        return "", ()
    best = ranked[0]
    stands = (
        best.share >= LEAST_SHARE
        and best.score >= LEAST_SCORE
        and best.score - evidence.free.score >= LEAST_RATIO
        and (not isinstance(best.meaning, NoMatch) or best.meaning.reason in _TELLING)
    )
    if not stands and evidence.named:
        return _closest_name(evidence, expect)
    return (best.text if stands else ""), alternatives


def _closest_name(evidence: Evidence, expect: Expect) -> tuple[str, tuple[Alternative, ...]]:
    """The name of the list that fits best, where it leads clearly.

    The model has hardly ever heard a drug's name, and left free it writes everyday words in its place: "female
    tie-dine". So a name is chosen among names. What is chosen is read back by the guide before it counts.
    """
    ranked = rank({Form.WORDS: evidence.named}, expect)
    alternatives = tuple(Alternative(group.text, group.share) for group in ranked)
    if not ranked:
        return "", ()
    best = ranked[0]
    tokens = next(one.tokens for one in evidence.named if plain(one.text) == best.text)
    stands = (
        isinstance(best.meaning, Answer)
        and best.share >= LEAST_NAME_SHARE
        and best.score / tokens >= LEAST_NAME_SCORE
        and best.score - evidence.free.score >= LEAST_NAME_RATIO
    )
    return (best.text if stands else ""), alternatives


def rank(bounded: Mapping[Form, tuple[Hypothesis, ...]], expect: Expect) -> tuple[Group, ...]:
    """The meanings of the hypotheses, likeliest first.

    Figures and words are two opinions of one number, so their shares are multiplied (geometric mean): a point
    that only the figures have heard, or a digit that only the words have, counts for little.
    """
    opinions: list[dict[Hashable, float]] = []
    masses: dict[Hashable, float] = {}
    best: dict[Hashable, tuple[float, str, Meaning, Hashable]] = {}
    for form, hypotheses in bounded.items():
        sums: dict[Hashable, float] = {}
        loose_sums: dict[Hashable, float] = {}
        for one in hypotheses:
            text, part = plain(one.text), math.exp(max(one.score, _LEAST_LOGARITHM))
            meaning, loose = _meanings(text, expect)
            loose_sums[loose] = loose_sums.get(loose, 0.0) + part
            if has_a_say(form, expect):
                key = _same(meaning)
                sums[key] = sums.get(key, 0.0) + part
                if key not in best or best[key][0] < one.score:
                    best[key] = (one.score, text, meaning, loose)
        if sums:
            opinions.append(_shares(sums))
        for key, part in loose_sums.items():
            # The forms overlap, so their masses are not added.
            masses[key] = max(masses.get(key, 0.0), part)
    joint = {
        key: math.prod(max(one.get(key, 0.0), _UNHEARD) for one in opinions) ** (1 / len(opinions)) for key in best
    }
    groups = []
    for key, share in _shares(joint).items():
        _, text, meaning, loose = best[key]
        groups.append(Group(meaning, text, share, math.log(masses[loose])))
    return tuple(sorted(groups, key=lambda group: -group.share))


def _meanings(text: str, expect: Expect) -> tuple[Meaning, Hashable]:
    """What a wording means here, and what it would mean if the number might be said in any way.

    The model prefers figures. So whether a number was said at all shows in its figures, even where only its
    words show that it was said digit by digit.
    """
    meaning = spoken.interpret(text, expect, heard=True)
    if isinstance(expect, NumberExpected) and expect.digits_only:
        return meaning, _same(spoken.interpret(text, replace(expect, digits_only=False), heard=True))
    return meaning, _same(meaning)


def _shares(parts: dict[Hashable, float]) -> dict[Hashable, float]:
    total = math.fsum(parts.values())
    return {key: part / total for key, part in parts.items()}


def plain(text: str) -> str:
    """A wording without the signs of a written sentence; points within numbers stay.

    "8 3.3" becomes "8 3 point 3": so the model writes "eight three point three".
    """
    text = re.sub(r"[!?;:\"]|[.,](?![0-9])|(?<![0-9])[.,](?=\s)", " ", text.lower())
    text = " ".join(text.split())
    return re.sub(r"(?<=\b[0-9] [0-9])\.(?=[0-9])", " point ", text)


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
