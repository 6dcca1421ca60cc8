"""Size of the paper and of the print."""

from dataclasses import dataclass
from enum import StrEnum


class Size(StrEnum):
    """Paper sizes: ISO 216 and ANSI/ASME Y14.1."""

    A4 = "a4"
    LETTER = "letter"


TYPST_NAMES = {Size.A4: "a4", Size.LETTER: "us-letter"}
NORMAL_PT, LARGE_PT = 12, 18
"""Print sizes: clear print has 12 points or more, large print 16 or more (RNIB and UKAAF clear print and large
print guidance, from memory)."""
SHEET_PT = 16
"""Sheets for the bench are in large print always: they are read at arm's length, and by everybody."""


@dataclass(frozen=True)
class Paper:
    """The paper that is printed on.

    Attributes:
        size: of the sheet.
        large_print: 18 points in place of the usual size.
        usual_points: size of the running text where large print is not asked for.
    """

    size: Size = Size.A4
    large_print: bool = False
    usual_points: int = NORMAL_PT

    @property
    def points(self) -> int:
        """Size of the running text."""
        return LARGE_PT if self.large_print else self.usual_points
