"""A number as it was said or written; every language's grammar of a number gives these."""

from dataclasses import dataclass
from decimal import Decimal


@dataclass(frozen=True)
class Said:
    """One reading of a number.

    Attributes:
        value: the number.
        digits: every digit was said by itself.
        figures: it was written in figures, so that how it was said cannot be known.
        foreign: it holds only if the point is a thousands mark ("1.250"), as some countries write it.
        doubtful: a word in it is a number only because it sounds like one ("one to five").
    """

    value: Decimal
    digits: bool = False
    figures: bool = False
    foreign: bool = False
    doubtful: bool = False
