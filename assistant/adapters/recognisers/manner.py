"""How a model is used: what its training was like decides what it is shown, and how far it is believed."""

from dataclasses import dataclass

from assistant.adapters.recognisers import limits


@dataclass(frozen=True)
class Manner:
    """How a Whisper model is used.

    Attributes:
        window_s: the picture of sound that it usually gets, seconds; longer sound gets a longer one.
        figures: it writes numbers in figures as well as in words.
        small: it writes small letters, even where a capital is usual ("i").
        limits: how clear a meaning must be.
        own_words: what it writes without limits is weighed where nothing listed stands: it has heard such words.
        loses_words: in longer pictures it loses some: it was trained on those of `window_s` alone.
    """

    window_s: float
    figures: bool
    small: bool
    limits: limits.LimitSet
    own_words: bool = False
    loses_words: bool = False


AS_IT_COMES = Manner(window_s=12.0, figures=True, small=False, limits=limits.GENERAL)
"""A model trained on speech of all kinds. A shorter picture is no help: it loses numbers, and runs astray."""

TRAINED = Manner(window_s=6.0, figures=False, small=True, limits=limits.TRAINED, own_words=True, loses_words=True)
"""The model that was trained for the bench, on pictures of this length, with numbers in words."""
