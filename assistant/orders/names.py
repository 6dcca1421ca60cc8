"""The names that a label in the lab may carry: what a learner could read, right or wrong."""

from functools import lru_cache

from pydantic import Field, ValidationError

from assistant.checklist.library import library_folder
from assistant.checklist.model import Paper
from assistant.checklist.paper_file import read_paper
from assistant.errors import OrderError


class LabelNames(Paper):
    """Names by what they are; written in the library's ``names.toml``."""

    fluids: tuple[str, ...] = Field(min_length=2)
    drugs: tuple[str, ...] = Field(min_length=2)


@lru_cache(maxsize=1)
def label_names() -> LabelNames:
    """The library's names.

    Raises:
        OrderError: the file cannot be used.
    """
    paper = read_paper(library_folder() / "names.toml", OrderError)
    try:
        return LabelNames.model_validate(paper.table)
    except ValidationError as invalid:
        raise paper.complain_about(invalid, (), LabelNames) from invalid


@lru_cache(maxsize=1024)
def with_own(names: tuple[str, ...], *own: str) -> tuple[str, ...]:
    """The names in alphabetical order, with those of an order among them: place tells nothing."""
    return tuple(sorted({*names, *own}, key=str.casefold))
