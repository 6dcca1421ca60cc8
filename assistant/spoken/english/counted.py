"""How long or how much was told, beside what a line wants, in English: "five seconds" where fifteen were asked for."""

from collections.abc import Iterator
from decimal import Decimal
from functools import lru_cache

from assistant.spoken.english.deeds import cut
from assistant.spoken.statement import Tokens

_ONES = (
    *("zero", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve"),
    *("thirteen", "fourteen", "fifteen", "sixteen", "seventeen", "eighteen", "nineteen"),
)
_TENS = ("twenty", "thirty", "forty", "fifty", "sixty")
_NUMBERS = {
    **{word: Decimal(value) for value, word in enumerate(_ONES)},
    **{word: Decimal(10 * value) for value, word in enumerate(_TENS, 2)},
    **{"half": Decimal("0.5"), "a": Decimal(1), "an": Decimal(1)},
}
_UNITS = {
    **dict.fromkeys(("second", "seconds", "sec", "secs"), ("time", Decimal(1))),
    **dict.fromkeys(("minute", "minutes", "min", "mins"), ("time", Decimal(60))),
    **dict.fromkeys(
        ("millilitre", "millilitres", "milliliter", "milliliters", "ml", "mil", "mils"), ("mL", Decimal(1))
    ),
    **dict.fromkeys(("metre", "metres", "meter", "meters"), ("m", Decimal(1))),
}
"""Units that lines count in: of what, and how many of its smallest they are."""
_BETWEEN = frozenset({"a", "of", "full", "whole", "more"})


def _amounts(tokens: Tokens) -> Iterator[tuple[str, Decimal]]:
    """Each amount that is told: of what, and how much in its smallest unit; "a minute ago" tells none."""
    for at, word in enumerate(tokens):
        if word not in _UNITS or tokens[at + 1 : at + 2] == ("ago",):
            continue
        before = list(tokens[max(at - 4, 0) : at])
        while len(before) > 1 and before[-1] in _BETWEEN and _number(before[-2]) is not None:
            before.pop()
        number = _number(before[-1]) if before else None
        if number is None:
            continue
        leads = before[-2] if len(before) > 1 else ""
        if leads == "point" or leads.isdigit():
            number = Decimal(leads if leads.isdigit() else 0) + number / 10  # "0.5" comes as two words
        elif leads in _TENS:
            number += _NUMBERS[leads]
        kind, size = _UNITS[word]
        yield kind, number * size


def _number(word: str) -> Decimal | None:
    return Decimal(word) if word.isdecimal() else _NUMBERS.get(word)


@lru_cache(maxsize=512)
def _wanted(line: str) -> dict[str, frozenset[Decimal]]:
    found: dict[str, set[Decimal]] = {}
    for kind, amount in _amounts(cut(line.lower())):
        found.setdefault(kind, set()).add(amount)
    return {kind: frozenset(amounts) for kind, amounts in found.items()}


def counts_otherwise(tokens: Tokens, line: str) -> bool:
    """Whether another amount is told than the line wants, in the same kind of unit; for longer is no fault.

    Args:
        tokens: the words.
        line: what was asked.
    """
    wanted = _wanted(line)
    return any(
        kind in wanted and amount not in wanted[kind] and not (kind == "time" and amount > max(wanted[kind]))
        for kind, amount in _amounts(tokens)
    )
