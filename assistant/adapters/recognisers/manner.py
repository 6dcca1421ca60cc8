"""How a model is used: what its training was like decides what it is shown, and how far it is believed."""

from dataclasses import dataclass

from assistant.adapters.recognisers import limits


@dataclass(frozen=True)
class Manner:
    """How a Whisper model is used.

    Attributes:
        window_s: the picture of sound that it usually gets, seconds; longer sound gets a longer one.
        figures: it writes numbers in figures as well as in words.
        limits: how clear a meaning must be.
    """

    window_s: float
    figures: bool
    limits: limits.LimitSet


AS_IT_COMES = Manner(window_s=12.0, figures=True, limits=limits.GENERAL)
"""A model trained on speech of all kinds. A shorter picture is no help: it loses numbers, and runs astray."""

TRAINED = Manner(window_s=6.0, figures=False, limits=limits.TRAINED)
"""The model that was trained for the bench, on pictures of this length, with numbers in words."""
