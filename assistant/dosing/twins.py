"""Numbers whose words differ only in a teen against a ten: 15 and 50, 115 and 150, 15,000 and 50,000."""

from collections.abc import Iterator
from decimal import Decimal

TWINS = {13: 30, 14: 40, 15: 50, 16: 60, 17: 70, 18: 80, 19: 90}
"""Teens and their tens (ISMP and NCC MERP guidance, the full series; from memory)."""

_OTHER = TWINS | {ten: teen for teen, ten in TWINS.items()}


def twin(value: Decimal) -> Decimal | None:
    """The number that differs in a teen or a ten only; None where there is none, the nearest where there are two."""
    return next(_twins(value), None)


def are_twins(one: Decimal, other: Decimal) -> bool:
    """Whether two numbers differ in one teen or ten only."""
    return other in _twins(one)


def _twins(value: Decimal) -> Iterator[Decimal]:
    """One for each group of three digits that ends in a teen or a ten, from the last one on."""
    left, size = int(value), 1
    while left > 0:
        left, group = divmod(left, 1000)
        other = _OTHER.get(group % 100)
        if other is not None:
            yield value + size * (other - group % 100)
        size *= 1000
