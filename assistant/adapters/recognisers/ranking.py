"""What the hypotheses of an utterance mean for a step: their probabilities added up by meaning, likeliest first."""

import math
import re
from collections.abc import Hashable, Mapping
from dataclasses import dataclass, replace

from assistant.adapters.recognisers.evidence import Evidence, Hypothesis
from assistant.adapters.recognisers.forms import Form, has_a_say
from assistant.adapters.recognisers.limits import Limits
from assistant.adapters.recognisers.positives import is_asked, is_positive
from assistant.spoken import Language
from assistant.spoken.expect import Expect, NumberExpected
from assistant.spoken.meaning import Ambiguous, Answer, Kind, Meaning, NoMatch, Reason

_UNHEARD = 1e-4
"""Share of a meaning that one form has not heard at all; not nothing, for a search gives up what is unlikely."""
LEAST_LOGARITHM = -700.0
"""Below this a probability would be rounded to nothing, and its logarithm be lost."""


@dataclass(frozen=True)
class Group:
    """Hypotheses of one meaning.

    Attributes:
        meaning: what all of them mean.
        text: the likeliest wording.
        share: their part of the probability of all sentences of the step, 0 to 1.
        score: logarithm of their probability among all that the model could write.
        tokens: length of the wording that is likeliest among all that the model could write.
        ending: logarithm of the probability that nothing follows that wording.
    """

    meaning: Meaning
    text: str
    share: float
    score: float
    tokens: int = 1
    ending: float = 0.0

    @property
    def is_number(self) -> bool:
        """Whether it is a number, or one of two."""
        return is_number(self.meaning)

    def reaches(self, limits: Limits, evidence: Evidence) -> bool:
        """Whether it is as clear as the limits want it."""
        return (
            self.share >= limits.share
            and self.score >= limits.least
            and self.score / self.tokens >= limits.clear
            and self.score - evidence.free.score >= limits.ratio
            and self.ending >= limits.ending
            and self.score - evidence.of_noise.get(self.text, math.inf) >= limits.gain
        )


def is_number(meaning: Meaning) -> bool:
    """Whether it is a number, or one of two."""
    return isinstance(meaning, Ambiguous) or (isinstance(meaning, Answer) and meaning.kind is Kind.NUMBER)


def rank(bounded: Mapping[Form, tuple[Hypothesis, ...]], expect: Expect, language: Language) -> tuple[Group, ...]:
    """The meanings of the hypotheses, likeliest first.

    Figures and words are two opinions of one number, so their shares are multiplied (geometric mean): a point
    that only the figures have heard, or a digit that only the words have, counts for little.
    """
    opinions: list[dict[Hashable, float]] = []
    masses: dict[Hashable, float] = {}
    likeliest: dict[Hashable, Hypothesis] = {}
    best: dict[Hashable, tuple[float, str, Meaning, Hashable]] = {}
    for form, hypotheses in bounded.items():
        sums: dict[Hashable, float] = {}
        loose_sums: dict[Hashable, float] = {}
        for one in hypotheses:
            text, part = plain(one.text, language), math.exp(max(one.score, LEAST_LOGARITHM))
            meaning, loose = meanings(text, expect, language)
            if is_asked(one.text, meaning, expect):
                text = f"{text}?"
                meaning, loose = meanings(text, expect, language)
            loose_sums[loose] = loose_sums.get(loose, 0.0) + part
            if loose not in likeliest or likeliest[loose].score < one.score:
                likeliest[loose] = one
            if has_a_say(form, expect):
                key = same(meaning, expect)
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
        one = likeliest[loose]
        groups.append(Group(meaning, text, share, math.log(masses[loose]), max(1, one.tokens), one.ending))
    return tuple(sorted(groups, key=lambda group: -group.share))


def meanings(text: str, expect: Expect, language: Language) -> tuple[Meaning, Hashable]:
    """What a wording means here, and what it would mean if the number might be said in any way.

    The model prefers figures. So whether a number was said at all shows in its figures, even where only its
    words show that it was said digit by digit.
    """
    meaning = language.interpret(text, expect, heard=True)
    if meaning == NoMatch(Reason.OUT_OF_RANGE):
        # Said, or only written, twice: "two one three two one three".
        words = text.split()
        half = len(words) // 2
        if half > 1 and words[:half] == words[half:]:
            return meanings(" ".join(words[:half]), expect, language)
    if isinstance(expect, NumberExpected) and expect.digits_only:
        return meaning, same(language.interpret(text, replace(expect, digits_only=False), heard=True), expect)
    return meaning, same(meaning, expect)


def _shares(parts: dict[Hashable, float]) -> dict[Hashable, float]:
    total = math.fsum(parts.values())
    return {key: part / total for key, part in parts.items()}


def plain(text: str, language: Language) -> str:
    """A wording without the signs of a written sentence; points within numbers stay.

    "8 3.3" becomes "8 3 point 3": so the model writes "eight three point three".
    """
    text = re.sub(r"[!?;:\"]|[.,](?![0-9])|(?<![0-9])[.,](?=\s)", " ", text.lower())
    text = " ".join(text.split())
    return re.sub(r"(?<=\b[0-9] [0-9])\.(?=[0-9])", f" {language.tables.numbers.point} ", text)


def same(meaning: Meaning, expect: Expect) -> Hashable:
    """Equal for meanings that the guide would treat alike."""
    if is_positive(meaning, expect):
        return "positive"
    match meaning:
        case Answer(kind=kind, value=value, unit=unit):
            return (kind, value, unit)
        case Ambiguous(readings=readings, unit=unit):
            return (readings, unit)
        case NoMatch(reason=reason):
            return reason
