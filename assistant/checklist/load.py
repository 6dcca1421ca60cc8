"""Authored text to a checked `Checklist`; every complaint names file, line and step."""

import hashlib
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from graphlib import CycleError, TopologicalSorter
from pathlib import Path
from typing import Any

from pydantic import ValidationError

from assistant.checklist import library
from assistant.checklist.model import Checklist, Step
from assistant.checklist.paper_file import MOST_FAULTS, SET_BY_LOADER, PaperFile, read_paper
from assistant.errors import AssistantError, ChecklistError

MOST_STEPS = 500
"""Steps of one checklist, what it includes among them."""
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

    root: Path = Path()
    digest: Any = field(default_factory=hashlib.sha256)
    seen: set[Path] = field(default_factory=set)
    steps: list[Step] = field(default_factory=list)
    places: dict[str, Place] = field(default_factory=dict)
    faulty: set[str] = field(default_factory=set)
    faults: list[AssistantError] = field(default_factory=list)


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
    sheet = load_sheet(name_or_path)
    _check_order(sheet)
    return sheet.checklist


def load_sheet(name_or_path: str) -> Sheet:
    """As `load`, with the places of the steps."""
    sheet, found = read_sheet(name_or_path)
    if sheet is None:
        raise found[0]
    return sheet


def read_sheet(name_or_path: str) -> tuple[Sheet | None, tuple[AssistantError, ...]]:
    """The checklist, or every fault that keeps it from loading.

    Args:
        name_or_path: as in `load`.

    Returns:
        The sheet and no faults, or None and at least one fault, each naming file and line where it has one.
    """
    gathering = _Gathering()
    try:
        sheet = _read(name_or_path, gathering)
    except ChecklistError as error:  # what leaves nothing to go on with: no file, no TOML, no such include
        return None, (*gathering.faults, error)
    return (None, tuple(gathering.faults)) if gathering.faults else (sheet, ())


def _read(name_or_path: str, gathering: _Gathering) -> Sheet | None:
    path = library.find(name_or_path, "checklist", ChecklistError)
    paper = read_paper(path, ChecklistError)
    gathering.root = path.parent.resolve()
    _gather(paper, gathering)
    head = {key: value for key, value in paper.table.items() if key not in ("steps", "include")}
    if not gathering.steps:
        gathering.faults += _unknown(paper)  # perhaps the steps stand under another name
        if gathering.faults:
            return None
        raise paper.complain(("steps",), "there are no steps.", "Add [[steps]] or include a checklist.")
    _check_ids(gathering)
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
        gathering.faults += paper.complaints_about(invalid, (), Checklist)
        return None
    return Sheet(checklist, paper, gathering.places)


def _gather(paper: PaperFile, into: _Gathering) -> None:
    """Take in what a file includes, then its own steps."""
    into.seen.add(paper.path.resolve())
    into.digest.update(paper.content)
    into.faults += _set_by_loader(paper)
    if len(into.seen) > 1:  # the head of the first file is checked as a whole, later
        into.faults += _unknown(paper)
    for name in _included(paper):
        into_path = _inside(paper, name, into)
        _gather(read_paper(into_path, ChecklistError), into)
    steps = paper.table.get("steps", [])
    if not isinstance(steps, list):
        raise paper.complain(("steps",), '"steps" must be a list of tables.', "Begin each step with [[steps]].")
    if len(steps) + len(into.steps) > MOST_STEPS:
        raise paper.complain(("steps",), f"there are more than {MOST_STEPS} steps.", "Split the procedure.")
    for number, raw in enumerate(steps):
        if len(into.faults) >= MOST_FAULTS:
            break
        where = ("steps", number)
        if not isinstance(raw, dict):
            into.faults.append(paper.complain(where, "this is no step.", "Begin each step with [[steps]]."))
            continue
        try:
            step = Step.model_validate(raw)
        except ValidationError as invalid:
            into.faults += paper.complaints_about(invalid, where, Step)
            into.faulty.add(str(raw.get("id")))  # a step that names it in after names a step that is there
            continue
        if step.id in into.places:
            first = into.places[step.id]
            into.faults.append(
                paper.complain(
                    (*where, "id"),
                    f"this id is taken already, at {first.paper.path}, line {first.line_of('id')}.",
                    "Give the step an id of its own.",
                )
            )
            continue
        into.places[step.id] = Place(paper, number)
        into.steps.append(step)


def _set_by_loader(paper: PaperFile) -> Iterator[AssistantError]:
    """What the loader works out itself is not written in a file."""
    for name in SET_BY_LOADER:
        if name in paper.table:
            yield paper.complain((name,), f'"{name}" is not written in the file.', "Take the line out.")


def _unknown(paper: PaperFile) -> Iterator[AssistantError]:
    """A misspelt field is an error in a file that is included too, though its head is not used there."""
    written = [name for name in ("include", *Checklist.model_fields) if name not in SET_BY_LOADER]
    for name in list(paper.table)[:MOST_FAULTS]:
        if name not in written and name not in SET_BY_LOADER:
            yield paper.complain(
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


def _check_order(sheet: Sheet) -> None:
    """No step may wait for itself by way of others."""
    needs = {step.id: step.after for step in sheet.checklist.steps}
    try:
        TopologicalSorter(needs).prepare()
    except CycleError as cause:
        circle = list(dict.fromkeys(cause.args[1]))
        place = sheet.places[circle[0]]
        raise place.paper.complain(
            ("steps", place.number, "after"),
            f"the steps {library.either(circle)} wait for each other.",
            "Take one of them out of an after list.",
        ) from cause


def _check_ids(gathering: _Gathering) -> None:
    """Every id that a step names must be the id of another step."""
    for step in gathering.steps:
        place = gathering.places[step.id]
        named = [("after", other) for other in step.after]
        named += [("expires", other) for other in (step.expires.reopen if step.expires else ())]
        for field_name, other in named:
            where = ("steps", place.number, field_name)
            if other == step.id:
                gathering.faults.append(
                    place.paper.complain(where, f'the step names itself in "{field_name}".', "Take its own id out.")
                )
            elif other not in gathering.places and other not in gathering.faulty:
                gathering.faults.append(
                    place.paper.complain(
                        where,
                        f'"{field_name}" names {library.quoted(other)}, and no step has that id.',
                        library.nearest(other, gathering.places) or "Name the id of a step of this checklist.",
                    )
                )
