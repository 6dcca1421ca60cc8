"""Which file an include means: names that lead nowhere, out of the folder or round in a circle are refused."""

import re
from collections.abc import Set
from dataclasses import dataclass
from pathlib import Path

from assistant.checklist import library
from assistant.checklist.paper_file import PaperFile
from assistant.errors import AssistantError
from assistant.text import quoted

DEEPEST = 4
"""How many parts may stand one inside the other."""
PARTS = "parts"
"""Folder of the parts, beside the checklists."""
_PART_NAME = re.compile(rf"{PARTS}/[a-z0-9][a-z0-9-]{{0,60}}")


@dataclass(frozen=True)
class Place:
    """Where a step stands, or a plan for trouble: its file, its place in the list, and which list that is."""

    paper: PaperFile
    number: int
    table: str = "steps"

    @property
    def line(self) -> int:
        """The line of the step's header."""
        return self.paper.line_of((self.table, self.number))

    def line_of(self, *inside: str) -> int:
        """The line of a field of the step."""
        return self.paper.line_of((self.table, self.number, *inside))

    def complain(self, inside: str, what: str, remedy: str) -> AssistantError:
        """The error that names the file, the line of a field, and the step."""
        return self.paper.complain((self.table, self.number, inside), what, remedy)


def part_file(place: Place, name: str, root: Path, around: tuple[Path, ...]) -> Path:
    """The file of a part: beside the checklist, or else of the library; never outside these two folders.

    Args:
        place: the entry that includes it.
        name: as written.
        root: the folder of the checklist.
        around: the parts that the entry stands in.

    Raises:
        ChecklistError: there is none, or it includes itself.
    """
    shown = quoted(name)
    name = name.removesuffix(".toml")
    if not _PART_NAME.fullmatch(name):
        raise place.complain("include", f"{shown} names no part.", f'Write it like include = "{PARTS}/hand-hygiene".')
    if len(around) >= DEEPEST:
        raise place.complain(
            "include", f"more than {DEEPEST} parts stand one inside the other.", "Put the steps into one part."
        )
    for folder in (root, library.library_folder().resolve()):
        try:
            path = (folder / f"{name}.toml").resolve()
            there = path.is_file()
        except (OSError, RuntimeError):  # links that lead in a circle
            continue
        if not path.is_relative_to(folder):
            raise place.complain(
                "include", f"{shown} lies outside the folder of this checklist.", f"Put a copy into {PARTS}."
            )
        if path in around or path == place.paper.path.resolve():
            raise place.complain("include", f"{shown} includes itself.", "Take one of the includes out.")
        if there:
            return path
    known = known_parts(root)
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


def included(paper: PaperFile) -> list[str]:
    """Names of the whole checklists that a file includes.

    Raises:
        ChecklistError: it is no list of names.
    """
    names = paper.table.get("include", [])
    if not isinstance(names, list) or not all(isinstance(name, str) for name in names):
        raise paper.complain(
            ("include",), '"include" must be a list of names.', 'Write include = ["name-of-a-checklist"].'
        )
    return names


def beside(paper: PaperFile, name: str, root: Path, seen: Set[Path]) -> Path:
    """The file that an include of a whole checklist means; never outside the folder of the one that was named.

    Args:
        paper: the file that includes it.
        name: as written.
        root: the folder of the checklist.
        seen: files that were read already.

    Raises:
        ChecklistError: there is none, or it was read already.
    """
    where = ("include",)
    stem = name.removesuffix(".toml")
    if not stem or "\0" in stem:
        raise paper.complain(where, f"{quoted(name)} names no file.", "Name a checklist beside this one.")
    try:
        path = (paper.path.parent / f"{stem}.toml").resolve()
        there = path.is_file()
    except (OSError, RuntimeError):  # a name that is too long, links that lead in a circle
        path, there = root, False
    if not path.is_relative_to(root):
        raise paper.complain(
            where,
            f"{quoted(name)} lies outside the folder of this checklist.",
            "Put a copy beside this file.",
        )
    if path in seen:
        raise paper.complain(
            where,
            f"{quoted(name)} is included already, or includes this file.",
            "Include each file once.",
        )
    if not there:
        raise paper.complain(
            where,
            f"there is no checklist {quoted(name)} beside this file.",
            "Check the name and the folder.",
        )
    return path
