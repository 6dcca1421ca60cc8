"""Authored text to a checked `Checklist`; every complaint names file, line and step."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from graphlib import CycleError, TopologicalSorter
from pathlib import Path

from pydantic import ValidationError

from assistant.checklist import library
from assistant.checklist.gather import Gathering, gather, unknown_fields
from assistant.checklist.includes import PARTS, Place
from assistant.checklist.model import Checklist, NumberAsked
from assistant.checklist.paper_file import PaperFile, read_paper
from assistant.errors import AssistantError, ChecklistError
from assistant.text import quoted

_PART_HEAD = {"title": "A part", "version": "1.0.0", "purpose": "Stands inside checklists.", "cautions": ("Training.",)}
"""What a part does not say about itself, because the checklist that includes it does."""


@dataclass
class Sheet:
    """A checklist with the places of its steps, for what has to point at a line.

    Attributes:
        checklist: what was read.
        paper: the file that was named.
        places: file and place of each step, by its id.
        is_part: the file is a part: it is read by itself only to be looked at.
        plans: file and place of each of its plans for trouble.
    """

    checklist: Checklist
    paper: PaperFile
    places: dict[str, Place]
    is_part: bool = False
    plans: tuple[Place, ...] = ()


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
    if sheet.is_part:
        raise ChecklistError(
            f"{sheet.paper.path} is a part, and no checklist.",
            f'Name a checklist that includes it by include = "{PARTS}/{sheet.checklist.name}".',
        )
    _check_order(sheet)
    return sheet.checklist


def load_sheet(name_or_path: str) -> Sheet:
    """As `load`, with the places of the steps; steps that wait for each other are left to the linter."""
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
    gathering = Gathering(Path())
    try:
        sheet = _read(name_or_path, gathering)
    except ChecklistError as error:  # what leaves nothing to go on with: no file, no TOML, no such include
        return None, (*gathering.faults, error)
    return (None, tuple(gathering.faults)) if gathering.faults else (sheet, ())


def _read(name_or_path: str, gathering: Gathering) -> Sheet | None:
    path = library.find(name_or_path, "checklist", ChecklistError)
    paper = read_paper(path, ChecklistError)
    folder = path.parent.resolve()
    is_part = gathering.alone = folder.name == PARTS
    gathering.root = folder.parent if is_part else folder
    gather(paper, gathering)
    if not gathering.steps:
        gathering.faults += unknown_fields(paper)  # perhaps the steps stand under another name
        if gathering.faults:
            return None
        raise paper.complain(("steps",), "there are no steps.", "Add [[steps]] or include a checklist.")
    gathering.faults += _wrong_references(gathering)
    head = {key: value for key, value in paper.table.items() if key not in ("steps", "troubles", "include")}
    if gathering.abbreviations:
        head["abbreviations"] = gathering.abbreviations
    try:
        checklist = Checklist.model_validate(
            {
                **(_PART_HEAD if is_part else {}),
                **head,
                "name": path.stem,
                "steps": tuple(gathering.steps),
                "troubles": tuple(plan for plan, _ in gathering.troubles),
                "digest": gathering.digest.hexdigest(),
            }
        )
    except ValidationError as invalid:
        gathering.faults += paper.complaints_about(invalid, (), Checklist)
        return None
    return Sheet(checklist, paper, gathering.places, is_part, tuple(place for _, place in gathering.troubles))


def _wrong_references(gathering: Gathering) -> Iterator[AssistantError]:
    """Every id that is named must be the id of another step; a double check names one that asks for a number."""
    steps = {step.id: step for step in gathering.steps}
    for reference in gathering.references:
        name, place, inside = reference.name, reference.place, reference.inside
        if name == reference.own:
            yield place.complain(inside, f'the step names itself in "{inside}".', "Take its own id out.")
        elif name not in steps:
            if name in gathering.faulty or gathering.ids_uncertain:
                continue
            yield place.complain(
                inside,
                f'"{inside}" names {quoted(name)}, and no step has that id.',
                library.nearest(name, steps) or "Name the id of a step of this checklist.",
            )
        elif inside == "of" and not isinstance(steps[name].expect, NumberAsked):
            yield place.complain(inside, f"{quoted(name)} asks for no number.", "Name a step whose kind is number.")


def _check_order(sheet: Sheet) -> None:
    """No step may wait for itself by way of others."""
    needs = {step.id: step.after for step in sheet.checklist.steps}
    try:
        TopologicalSorter(needs).prepare()
    except CycleError as cause:
        circle = list(dict.fromkeys(cause.args[1]))
        place = sheet.places[circle[0]]
        raise place.complain(
            "after",
            f"the steps {library.either(circle)} wait for each other.",
            "Take one of them out of an after list.",
        ) from cause
