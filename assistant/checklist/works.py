"""The works that sources name, with year and address: the library's ``works.toml``, read and checked."""

from collections.abc import Iterable
from functools import lru_cache
from typing import Annotated, Literal

from pydantic import Field, ValidationError

from assistant.checklist.library import library_folder
from assistant.checklist.paper import Paper, Text
from assistant.checklist.paper_file import read_paper
from assistant.errors import ChecklistError

UNPUBLISHED = ("common practice, no source", "from memory")
"""Words in which a source says that nothing published bears the step."""


class Work(Paper):
    """A book, an article, a guideline or a page.

    Attributes:
        title: with what every source that names it begins.
        year: of its publication; None where it bears none.
        address: where it was read; "" where nowhere.
        read: how it was read.
    """

    title: Annotated[str, Field(min_length=1)]
    year: Annotated[int, Field(strict=True, ge=1900, le=2100)] | None = None
    address: Annotated[str, Field(pattern=r"^(https?://\S+)?$")] = ""
    read: Literal["as published", "in a copy", "as quoted", "from memory"]


class _Works(Paper):
    works: Annotated[tuple[Work, ...], Field(min_length=1)]


@lru_cache(maxsize=1)
def works() -> tuple[Work, ...]:
    """The library's works, the longest title first.

    Raises:
        ChecklistError: the file cannot be used.
    """
    paper = read_paper(library_folder() / "works.toml", ChecklistError)
    try:
        found = _Works.model_validate(paper.table).works
    except ValidationError as invalid:
        raise paper.complain_about(invalid, (), _Works) from invalid
    return tuple(sorted(found, key=lambda work: -len(work.title)))


def work_of(source: Text) -> Work | None:
    """The work that a source names; None where it is not listed, as in a school's own checklists."""
    return next((work for work in works() if source.startswith(work.title)), None)


def works_of(sources: Iterable[Text]) -> tuple[Work, ...]:
    """The works that sources name, each once, in the order of their titles."""
    found = {work.title: work for work in map(work_of, sources) if work is not None}
    return tuple(found[title] for title in sorted(found, key=str.casefold))
