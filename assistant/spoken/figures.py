"""Numbers in figures, as people type them and recognisers write them in any language."""

import re
from collections.abc import Iterator
from decimal import Decimal

from assistant.dosing.amount import normal
from assistant.spoken.grammar import Written
from assistant.spoken.said import Said

LONGEST_FRACTION = 6
"""Decimals that any number here has at most."""
_LONGEST_WHOLE = 9


_WRITTEN_BADLY = re.compile(
    r"\d\s*/\s*\d|[\u00bc-\u00be]"  # a fraction
    r"|\d[oO](?=[\d.\s]|$)|\d[lI]\d|(?<![A-Za-z])[oOlI]\d|\d[SB](?=[\d.\s])"  # a letter among the digits
    r"|[a-z]{3,}\d|\d(?:zero|one|two|three|four|five|six|seven|eight|nine)"  # half in words
    r"|\d[.,]\s+[A-Za-z%]|\d\s*(?:cc|CC)\b|\d\s*(?:Mg|Kg|mgs)\b|\(\d[^)]*$",
    re.ASCII,
)


def written_badly(words: str) -> bool:
    """Whether typed words hold a number, or a unit, that the reader of written amounts refuses as easily misread.

    A zero at the end and a point without one before it are read, and asked for digit by digit: displays write them.
    A recogniser writes "half" as 1/2 and "oh" as o: of what was heard this says nothing.
    """
    return _WRITTEN_BADLY.search(words) is not None


def _figures(token: str) -> Iterator[Said]:
    """Readings of a number in figures; none for a form that has no plain meaning."""
    if not token[:1].isdigit() and token[:1] != ".":
        return
    if "," in token:
        # "1,5" is 1.5 in half of the world, and a list of digits to some recognisers.
        left, _, right = token.partition(",")
        if len(left) + len(right) <= _LONGEST_WHOLE:
            yield Said(normal(Decimal(f"{left}.{right}")), figures=True)
            yield Said(Decimal(left + right), figures=True)
        return
    left, point, right = token.partition(".")
    if len(left) > _LONGEST_WHOLE or len(right) > LONGEST_FRACTION or not (left + right).isdigit():
        return
    value = normal(Decimal(f"{left or '0'}.{right or '0'}"))
    yield Said(value, figures=True)
    if point and len(right) == 3 and 0 < len(left) <= 3 and left[0] != "0":
        yield Said(Decimal(left + right), figures=True, foreign=True)
    if len(left) > 1 and left[0] == "0" and value and not point:
        # "05" may be 0.5 with its point lost.
        yield Said(normal(Decimal(f"0.{left[1:]}")), figures=True)


def _whole_figures(token: str) -> Iterator[Said]:
    if token.isdigit() and len(token) <= _LONGEST_WHOLE and not (len(token) > 1 and token[0] == "0"):
        yield Said(Decimal(token), digits=len(token) == 1, figures=len(token) > 1)


FIGURES = Written("a number in figures", _figures)
"""A number in figures; its meanings are `Said`."""
WHOLE_FIGURES = Written("a whole number in figures", _whole_figures)
"""A whole number in figures, to which more may be said; its meanings are `Said`."""
