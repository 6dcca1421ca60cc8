"""What a checklist file says, put together with every file that it includes; faults are collected on the way.

Two ways to include: the head's ``include = ["primary-line"]`` takes in the steps of whole checklists beside the
file, before its own; an entry of ``[[steps]]`` with ``include = "parts/..."`` stands for the steps of a part.
No name leads out of the folder of the checklist or the library's folder of parts, nothing includes itself, and
files, depth and steps are limited before anything is read.
"""

import hashlib
import re
from collections.abc import Iterator
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

from pydantic import ValidationError

from assistant.checklist import library
from assistant.checklist.model import LONGEST_ID, Checklist, Condition, DoubleCheckAsked, Inclusion, Step
from assistant.checklist.paper_file import MOST_FAULTS, SET_BY_LOADER, PaperFile, read_paper
from assistant.errors import AssistantError, ChecklistError

MOST_STEPS = 500
"""Steps of one checklist, what it includes among them."""
MOST_FILES = 50
"""Files that one checklist may be put together from; a part counts each time it is used."""
DEEPEST = 4
"""How many parts may stand one inside the other."""
PARTS = "parts"
"""Folder of the parts, beside the checklists."""
_PART_NAME = re.compile(rf"{PARTS}/[a-z0-9][a-z0-9-]{{0,60}}")


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

    def complain(self, inside: str, what: str, remedy: str) -> AssistantError:
        """The error that names the file, the line of a field, and the step."""
        return self.paper.complain(("steps", self.number, inside), what, remedy)


@dataclass(frozen=True)
class Reference:
    """A step's id that is named in another place.

    Attributes:
        place, inside: the step or inclusion that names it, and in which field.
        own: the id of the step that names it; "" for an inclusion.
        name: the id that is named, prefix included.
    """

    place: Place
    inside: str
    own: str
    name: str


@dataclass
class Gathering:
    """What is collected while files and what they include are read.

    Attributes:
        root: the folder that no name of an include leads out of.
        digest: SHA-256 over the bytes of each file, in the order in which they were read.
        seen: whole checklists read so far.
        files: how many files were read, repeated ones counted again.
        steps, places: the steps in order, and where each stands.
        references: every id that is named.
        faulty: ids of steps that could not be used.
        ids_uncertain: an id or a part could not be used, so a name that nobody has may mean it.
        prefixes: prefixes of the parts so far.
        abbreviations: of all files; the outer file's win.
        faults: what is to be mended.
    """

    root: Path
    digest: Any = field(default_factory=hashlib.sha256)
    seen: set[Path] = field(default_factory=set)
    files: int = 0
    steps: list[Step] = field(default_factory=list)
    places: dict[str, Place] = field(default_factory=dict)
    references: list[Reference] = field(default_factory=list)
    faulty: set[str] = field(default_factory=set)
    ids_uncertain: bool = False
    prefixes: set[str] = field(default_factory=set)
    abbreviations: dict[str, object] = field(default_factory=dict)
    faults: list[AssistantError] = field(default_factory=list)


@dataclass(frozen=True)
class _Within:
    """Where the steps of a part go.

    Attributes:
        parts: the parts that stand around it, itself last.
        prefix: what stands before each id, "" outside of parts.
        heading: the heading of all its steps, "" for their own.
        applies: what its inclusions add to each step.
    """

    parts: tuple[Path, ...] = ()
    prefix: str = ""
    heading: str = ""
    applies: tuple[Condition, ...] = ()

    def id(self, own: str) -> str:
        """An id with its prefix."""
        return f"{self.prefix}-{own}" if self.prefix else own

    def conditions(self, given: tuple[Condition, ...]) -> tuple[Condition, ...]:
        """Conditions with the prefix on the steps that they name."""
        return tuple(
            condition.model_copy(update={"step": self.id(condition.step)}) if condition.step else condition
            for condition in given
        )

    def moved(self, step: Step) -> Step:
        """A step as it stands in the whole checklist."""
        if not self.prefix:
            return step
        changes: dict[str, object] = {
            "id": self.id(step.id),
            "after": tuple(map(self.id, step.after)),
            "applies": self.applies + self.conditions(step.applies),
        }
        if self.heading:
            changes["part"] = self.heading
        if step.expires is not None:
            reopen = tuple(map(self.id, step.expires.reopen))
            changes["expires"] = step.expires.model_copy(update={"reopen": reopen})
        if isinstance(step.expect, DoubleCheckAsked):
            changes["expect"] = step.expect.model_copy(update={"of": self.id(step.expect.of)})
        return step.model_copy(update=changes)


def gather(paper: PaperFile, into: Gathering) -> None:
    """Take in what a file includes as a whole, then its own steps.

    Raises:
        ChecklistError: what leaves nothing to go on with: an include that names no file, too many files.
    """
    into.seen.add(paper.path.resolve())
    _take_head(paper, into)
    if len(into.seen) > 1:  # the head of the first file is checked as a whole, later
        into.faults += unknown_fields(paper)
    for name in _included(paper):
        gather(read_paper(_beside(paper, name, into), ChecklistError), into)
    _take_steps(paper, into, _Within())


def unknown_fields(paper: PaperFile) -> Iterator[AssistantError]:
    """A misspelt field is an error in a file that is included too, though its head is not used there."""
    written = [name for name in ("include", *Checklist.model_fields) if name not in SET_BY_LOADER]
    for name in list(paper.table)[:MOST_FAULTS]:
        if name not in written and name not in SET_BY_LOADER:
            yield paper.complain(
                (name,),
                f"{library.quoted(name)} is not a field here.",
                library.nearest(name, written) or f"Known are: {', '.join(written)}.",
            )


def _take_head(paper: PaperFile, into: Gathering) -> None:
    if into.files >= MOST_FILES:
        raise paper.complain((), f"more than {MOST_FILES} files are put together.", "Include fewer files.")
    into.files += 1
    into.digest.update(paper.content)
    for name in SET_BY_LOADER:
        if name in paper.table:
            into.faults.append(paper.complain((name,), f'"{name}" is not written in the file.', "Take the line out."))
    short = paper.table.get("abbreviations", {})
    if isinstance(short, dict):  # else the model complains
        into.abbreviations = {**short, **into.abbreviations}


def _take_steps(paper: PaperFile, into: Gathering, within: _Within) -> None:
    """Take in the steps of one file and of the parts that stand among them."""
    steps = paper.table.get("steps", [])
    if not isinstance(steps, list):
        raise paper.complain(("steps",), '"steps" must be a list of tables.', "Begin each step with [[steps]].")
    if len(steps) + len(into.steps) > MOST_STEPS:
        raise paper.complain(("steps",), f"there are more than {MOST_STEPS} steps.", "Split the procedure.")
    for number, raw in enumerate(steps):
        if len(into.faults) >= MOST_FAULTS:
            break
        place = Place(paper, number)
        if not isinstance(raw, dict):
            into.faults.append(paper.complain(("steps", number), "this is no step.", "Begin each step with [[steps]]."))
        elif "include" in raw:
            _take_part(place, raw, into, within)
        else:
            _take_step(place, raw, into, within)


def _take_step(place: Place, raw: dict[str, Any], into: Gathering, within: _Within) -> None:
    try:
        step = within.moved(Step.model_validate(raw))
    except ValidationError as invalid:
        into.faults += place.paper.complaints_about(invalid, ("steps", place.number), Step)
        into.faulty.add(within.id(str(raw.get("id"))))  # whoever names it names a step that is there
        into.ids_uncertain |= any(wrong["loc"][:1] == ("id",) for wrong in invalid.errors(include_url=False))
        return
    if len(step.id) > LONGEST_ID:
        into.faults.append(
            place.complain("id", f"with its prefix it is {library.quoted(step.id)}, too long.", "Shorten the prefix.")
        )
        return
    if step.id in into.places:
        first = into.places[step.id]
        into.faults.append(
            place.complain(
                "id",
                f"this id is taken already, at {first.paper.path}, line {first.line_of('id')}.",
                "Give the step an id of its own.",
            )
        )
        return
    into.places[step.id] = place
    into.steps.append(step)
    named = [("after", name) for name in step.after]
    # What an inclusion adds is told at the inclusion.
    named += [("applies", condition.step) for condition in step.applies[len(within.applies) :] if condition.step]
    named += [("expires", name) for name in (step.expires.reopen if step.expires else ())]
    named += [("of", step.expect.of)] if isinstance(step.expect, DoubleCheckAsked) else []
    into.references += [Reference(place, inside, step.id, name) for inside, name in named]


def _take_part(place: Place, raw: dict[str, Any], into: Gathering, within: _Within) -> None:
    try:
        wanted = Inclusion.model_validate(raw)
    except ValidationError as invalid:
        into.faults += place.paper.complaints_about(invalid, ("steps", place.number), Inclusion)
        into.ids_uncertain = True
        return
    inner = _Within(prefix=within.id(wanted.prefix or wanted.include.rpartition("/")[2]))
    try:
        path = _part_file(place, wanted.include, into, within)
        if inner.prefix in into.prefixes:
            raise place.complain(
                "include",
                f"a part stands under the prefix {library.quoted(inner.prefix)} already.",
                'Give this one a prefix of its own, such as prefix = "again".',
            )
        part = read_paper(path, ChecklistError)
    except ChecklistError as fault:
        into.faults.append(fault)
        into.ids_uncertain = True
        return
    into.prefixes.add(inner.prefix)
    conditions = within.conditions(wanted.applies)
    after = tuple(map(within.id, wanted.after))
    into.references += [Reference(place, "after", "", name) for name in after]
    into.references += [Reference(place, "applies", "", condition.step) for condition in conditions if condition.step]
    inner = _Within((*within.parts, path), inner.prefix, within.heading or wanted.part, (*within.applies, *conditions))
    _take_head(part, into)
    into.faults += unknown_fields(part)
    before = len(into.steps)
    _take_steps(part, into, inner)
    if len(into.steps) == before and not into.faults:
        into.faults.append(part.complain(("steps",), "this part has no steps.", "Add [[steps]]."))
    elif after and len(into.steps) > before:
        first = into.steps[before]
        into.steps[before] = first.model_copy(update={"after": (*after, *first.after)})


def _part_file(place: Place, name: str, into: Gathering, within: _Within) -> Path:
    """The file of a part: beside the checklist, or else of the library; never outside these two folders."""
    shown = library.quoted(name)
    name = name.removesuffix(".toml")
    if not _PART_NAME.fullmatch(name):
        raise place.complain("include", f"{shown} names no part.", f'Write it like include = "{PARTS}/hand-hygiene".')
    if len(within.parts) >= DEEPEST:
        raise place.complain(
            "include", f"more than {DEEPEST} parts stand one inside the other.", "Put the steps into one part."
        )
    for folder in (into.root, library.library_folder().resolve()):
        try:
            path = (folder / f"{name}.toml").resolve()
            there = path.is_file()
        except (OSError, RuntimeError):  # links that lead in a circle
            continue
        if not path.is_relative_to(folder):
            raise place.complain(
                "include", f"{shown} lies outside the folder of this checklist.", f"Put a copy into {PARTS}."
            )
        if path in within.parts or path == place.paper.path.resolve():
            raise place.complain("include", f"{shown} includes itself.", "Take one of the includes out.")
        if there:
            return path
    known = known_parts(into.root)
    raise place.complain(
        "include",
        f"there is no part {shown}.",
        library.nearest(name, known) or (f"There are: {', '.join(known)}." if known else "Check the name."),
    )


def known_parts(root: Path | None = None) -> list[str]:
    """Names of the parts beside a folder's checklists (the user's, where none is given) and of the library."""
    folders = (root or library.user_folder(), library.library_folder())
    return sorted({f"{PARTS}/{path.stem}" for folder in folders for path in parts_in(folder)})


def parts_in(folder: Path) -> list[Path]:
    """The files of the parts below a folder of checklists, in the order of their names."""
    try:
        return sorted((folder / PARTS).glob("*.toml"))
    except OSError:
        return []


def _included(paper: PaperFile) -> list[str]:
    names = paper.table.get("include", [])
    if not isinstance(names, list) or not all(isinstance(name, str) for name in names):
        raise paper.complain(
            ("include",), '"include" must be a list of names.', 'Write include = ["name-of-a-checklist"].'
        )
    return names


def _beside(paper: PaperFile, name: str, into: Gathering) -> Path:
    """The file that an include of a whole checklist means; never outside the folder of the one that was named."""
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
    if into.files >= MOST_FILES:
        raise paper.complain(where, f"more than {MOST_FILES} files are put together.", "Include fewer files.")
    if not there:
        raise paper.complain(
            where,
            f"there is no checklist {library.quoted(name)} beside this file.",
            "Check the name and the folder.",
        )
    return path
