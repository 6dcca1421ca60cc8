"""Which drugs may follow each other through one set: the library's ``pairs.toml``, read and checked."""

from collections.abc import Mapping
from functools import lru_cache
from typing import Annotated, Literal

from pydantic import Field, ValidationError

from assistant.checklist.library import library_folder
from assistant.checklist.paper import Paper
from assistant.checklist.paper_file import read_paper
from assistant.dosing.limits import key_of
from assistant.errors import OrderError
from assistant.orders.reading import Name

ASK_THE_PHARMACIST = "ask the pharmacist"
"""What is to be done about a pair that nobody has listed."""


class Pair(Paper):
    """Two drugs that would meet in one line.

    Attributes:
        drugs: their generic names.
        may: what is known of them.
        source: where it is published.
    """

    drugs: tuple[Name, Name]
    may: Literal["follow", "stay apart"]
    source: Annotated[str, Field(min_length=1)]


class _Pairs(Paper):
    pairs: Annotated[tuple[Pair, ...], Field(min_length=1)]


@lru_cache(maxsize=1)
def pairs() -> Mapping[frozenset[str], Pair]:
    """The library's pairs, by the names of both drugs as they are compared.

    Raises:
        OrderError: the file cannot be used, or names a pair twice.
    """
    paper = read_paper(library_folder() / "pairs.toml", OrderError)
    try:
        listed = _Pairs.model_validate(paper.table).pairs
    except ValidationError as invalid:
        raise paper.complain_about(invalid, (), _Pairs) from invalid
    found: dict[frozenset[str], Pair] = {}
    for number, pair in enumerate(listed):
        both = frozenset(map(key_of, pair.drugs))
        if len(both) < len(pair.drugs) or both in found:
            raise paper.complain(("pairs", number), f"{' and '.join(pair.drugs)} are no new pair.", "Take it out.")
        found[both] = pair
    return found


def pair_of(first: str, second: str) -> Pair | None:
    """What is known of two drugs, in either order; None: ask the pharmacist."""
    return pairs().get(frozenset((key_of(first), key_of(second))))


def may_follow(first: str, second: str) -> bool:
    """Whether a drug is known to be one that may run through the set of another."""
    pair = pair_of(first, second)
    return pair is not None and pair.may == "follow"
