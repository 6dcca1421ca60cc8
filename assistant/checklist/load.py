"""Authored text to a checked `Checklist`; every complaint names file, line and step."""

import hashlib
from collections.abc import Mapping
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

from pydantic import ValidationError

from assistant.checklist import library
from assistant.checklist.model import Checklist, Step
from assistant.checklist.paper_file import SET_BY_LOADER, PaperFile, read_paper
from assistant.errors import ChecklistError

MOST_FILES = 50
"""Files that one checklist may be put together from."""


@dataclass(frozen=True)
class Place:
    """Where a step stands: its file and its place among the file's own steps."""

    paper: PaperFile
    number: int

    @property
    def line(self) -> int:
        """The line of the step's header."""
        return self.paper.line_of(("steps", self.number))

    def line_of(self, *inside: str) -> int:
        """The line of a field of the step."""
        return self.paper.line_of(("steps", self.number, *inside))


@dataclass
class Sheet:
    """A checklist with the places of its steps, for what has to point at a line.

    Attributes:
        checklist: what was read.
        paper: the file that was named.
        places: file and place of each step, by its id.
    """

    checklist: Checklist
    paper: PaperFile
    places: dict[str, Place]


@dataclass
class _Gathering:
    """What is collected while files and what they include are read."""

    root: Path
    digest: Any = field(default_factory=hashlib.sha256)
    seen: set[Path] = field(default_factory=set)
    steps: list[Step] = field(default_factory=list)
    places: dict[str, Place] = field(default_factory=dict)


def available() -> Mapping[str, Path]:
    """Names and files of every checklist in the user's folder and in the library."""
    return library.available()


def load(name_or_path: str) -> Checklist:
    """Read a checklist.

    Args:
        name_or_path: a file stem, looked up in the user's folder and then in the library; a path where it
            ends with ``.toml`` or holds a separator.

    Raises:
        ChecklistError: it cannot be used; the sentence names file, line and step, and what to do.
    """
    return load_sheet(name_or_path).checklist


def load_sheet(name_or_path: str) -> Sheet:
    """As `load`, with the places of the steps."""
    path = library.find(name_or_path, "checklist", ChecklistError)
    paper = read_paper(path, ChecklistError)
    gathering = _Gathering(root=path.parent.resolve())
    _gather(paper, gathering)
    head = {key: value for key, value in paper.table.items() if key not in ("steps", "include")}
    if not gathering.steps:
        raise paper.complain(("steps",), "there are no steps.", "Add [[steps]] or include a checklist.")
    try:
        checklist = Checklist.model_validate(
            {
                **head,
                "name": path.stem,
                "steps": tuple(gathering.steps),
                "digest": gathering.digest.hexdigest(),
            }
        )
    except ValidationError as invalid:
        raise paper.complain_about(invalid, (), Checklist) from invalid
    _check_ids(gathering)
    return Sheet(checklist, paper, gathering.places)


def _gather(paper: PaperFile, into: _Gathering) -> None:
    """Take in what a file includes, then its own steps."""
    into.seen.add(paper.path.resolve())
    into.digest.update(paper.content)
    _refuse_unknown(paper)
    for name in _included(paper):
        into_path = _inside(paper, name, into)
        _gather(read_paper(into_path, ChecklistError), into)
    steps = paper.table.get("steps", [])
    if not isinstance(steps, list):
        raise paper.complain(("steps",), '"steps" must be a list of tables.', "Begin each step with [[steps]].")
    for number, raw in enumerate(steps):
        where = ("steps", number)
        if not isinstance(raw, dict):
            raise paper.complain(where, "this is no step.", "Begin each step with [[steps]].")
        try:
            step = Step.model_validate(raw)
        except ValidationError as invalid:
            raise paper.complain_about(invalid, where, Step) from invalid
        if step.id in into.places:
            first = into.places[step.id]
            raise paper.complain(
                (*where, "id"),
                f"this id is taken already, at {first.paper.path}, line {first.line_of('id')}.",
                "Give the step an id of its own.",
            )
        into.places[step.id] = Place(paper, number)
        into.steps.append(step)


def _refuse_unknown(paper: PaperFile) -> None:
    """A misspelt field is an error in a file that is included too, though its head is not used there."""
    written = [name for name in ("include", *Checklist.model_fields) if name not in SET_BY_LOADER]
    for name in paper.table:
        if name in SET_BY_LOADER:
            raise paper.complain((name,), f'"{name}" is not written in the file.', "Take the line out.")
        if name not in written:
            raise paper.complain(
                (name,),
                f"{library.quoted(name)} is not a field here.",
                library.nearest(name, written) or f"Known are: {', '.join(written)}.",
            )


def _included(paper: PaperFile) -> list[str]:
    names = paper.table.get("include", [])
    if not isinstance(names, list) or not all(isinstance(name, str) for name in names):
        raise paper.complain(
            ("include",), '"include" must be a list of names.', 'Write include = ["name-of-a-checklist"].'
        )
    return names


def _inside(paper: PaperFile, name: str, into: _Gathering) -> Path:
    """The file that an include means; never outside the folder of the checklist that was named."""
    where = ("include",)
    stem = name.removesuffix(".toml")
    if not stem or "\0" in stem:
        raise paper.complain(where, f"{library.quoted(name)} names no file.", "Name a checklist beside this one.")
    try:
        path = (paper.path.parent / f"{stem}.toml").resolve()
        there = path.is_file()
    except (OSError, RuntimeError):  # a name that is too long, links that lead in a circle
        path, there = into.root, False
    if not path.is_relative_to(into.root):
        raise paper.complain(
            where,
            f"{library.quoted(name)} lies outside the folder of this checklist.",
            "Put a copy beside this file.",
        )
    if path in into.seen:
        raise paper.complain(
            where,
            f"{library.quoted(name)} is included already, or includes this file.",
            "Include each file once.",
        )
    if len(into.seen) >= MOST_FILES:
        raise paper.complain(where, f"more than {MOST_FILES} files are put together.", "Include fewer files.")
    if not there:
        raise paper.complain(
            where,
            f"there is no checklist {library.quoted(name)} beside this file.",
            "Check the name and the folder.",
        )
    return path


def _check_ids(gathering: _Gathering) -> None:
    """Every id that a step names must be the id of another step."""
    for step in gathering.steps:
        place = gathering.places[step.id]
        named = [("after", other) for other in step.after]
        named += [("expires", other) for other in (step.expires.reopen if step.expires else ())]
        for where, other in named:
            if other == step.id:
                raise place.paper.complain(
                    ("steps", place.number, where),
                    f'the step names itself in "{where}".',
                    "Take its own id out.",
                )
            if other not in gathering.places:
                near = library.nearest(other, gathering.places)
                raise place.paper.complain(
                    ("steps", place.number, where),
                    f'"{where}" names {library.quoted(other)}, and no step has that id.',
                    near or "Name the id of a step of this checklist.",
                )
