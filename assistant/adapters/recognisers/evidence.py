"""What a decoder made of one utterance."""

from collections.abc import Mapping
from dataclasses import dataclass, field

from assistant.adapters.recognisers.forms import Form


@dataclass(frozen=True)
class Hypothesis:
    """A wording with the logarithm of its probability among all that the model could write.

    Attributes:
        text: the wording.
        score: the logarithm.
        tokens: how many tokens it was written in, the end included; 0 where nobody asks.
        ending: logarithm of the probability that nothing follows its words.
    """

    text: str
    score: float
    tokens: int = 0
    ending: float = 0.0


Bounded = dict[Form, tuple[Hypothesis, ...]]
"""Sentences of a step, likeliest first, by form of numbers."""


@dataclass(frozen=True)
class Evidence:
    """What a decoder made of one utterance.

    Attributes:
        free: the wording without limits.
        free_tokens: how many tokens it has, the end included.
        no_speech: the model's probability that nobody speaks.
        bounded: sentences of the step, by form of numbers.
        others: what else the model would write without limits, where a yes closes a step; likeliest first.
        named: where a name is expected, names alone.
        of_noise: logarithms of the probability of wordings (as `plain` makes them) where there is nothing but
            noise, for those that are unlikely in this utterance too.
        bursts: stretches of voice that pauses part; 0 where they are not counted.
        voiced: how nearly the sound repeats itself, as a voice does (`voicing`), 0 to 1; 1 where nobody looks.
        rivals: logarithms of the probability of what would ask or deny a positive that is written freely, by wording;
            of what is far behind no less than that.
        is_whole: whether the picture was one in which the model loses no words.
    """

    free: Hypothesis
    free_tokens: int
    no_speech: float
    bounded: Mapping[Form, tuple[Hypothesis, ...]]
    others: tuple[Hypothesis, ...] = ()
    named: tuple[Hypothesis, ...] = ()
    of_noise: Mapping[str, float] = field(default_factory=dict)
    bursts: int = 0
    voiced: float = 1.0
    rivals: Mapping[str, float] = field(default_factory=dict)
    is_whole: bool = True
