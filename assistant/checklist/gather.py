"""What a checklist file says, put together with every file that it includes; faults are collected on the way.

Two ways to include: the head's ``include = ["primary-line"]`` takes in the steps of whole checklists beside the
file, before its own; an entry of ``[[steps]]`` with ``include = "parts/..."`` stands for the steps of a part.
No name leads out of the folder of the checklist or the library's folder of parts, nothing includes itself, and
files, depth and steps are limited before anything is read.
"""

import hashlib
from collections.abc import Iterator
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

from pydantic import ValidationError

from assistant.checklist import library
from assistant.checklist.includes import Place, beside, included, part_file
from assistant.checklist.model import (
    HUNG,
    LONGEST_ID,
    Checklist,
    Condition,
    DoubleCheckAsked,
    Inclusion,
    Step,
    TroublePlan,
)
from assistant.checklist.paper_file import MOST_FAULTS, SET_BY_LOADER, PaperFile, read_paper
from assistant.errors import AssistantError, ChecklistError
from assistant.text import quoted

MOST_STEPS = 500
"""Steps of one checklist, what it includes among them."""
MOST_FILES = 50
"""Files that one checklist may be put together from; a part counts each time it is used."""


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
        troubles: what to do about trouble, the most specific first, with where each is written.
        references: every id that is named.
        faulty: ids of steps that could not be used.
        ids_uncertain: an id or a part could not be used, so a name that nobody has may mean it.
        prefixes: prefixes of the parts so far.
        abbreviations: of all files; the outer file's win.
        faults: what is to be mended.
        alone: the file is a part that is read by itself, so that nothing is hung yet.
    """

    root: Path
    digest: Any = field(default_factory=hashlib.sha256)
    seen: set[Path] = field(default_factory=set)
    files: int = 0
    steps: list[Step] = field(default_factory=list)
    places: dict[str, Place] = field(default_factory=dict)
    troubles: list[tuple[TroublePlan, Place]] = field(default_factory=list)
    references: list[Reference] = field(default_factory=list)
    faulty: set[str] = field(default_factory=set)
    ids_uncertain: bool = False
    prefixes: set[str] = field(default_factory=set)
    abbreviations: dict[str, object] = field(default_factory=dict)
    faults: list[AssistantError] = field(default_factory=list)
    alone: bool = False


@dataclass(frozen=True)
class _Within:
    """Where the steps of a part go.

    Attributes:
        parts: the parts that stand around it, itself last.
        prefix: what stands before each id, "" outside of parts.
        heading: the heading of all its steps, "" for their own.
        applies: what its inclusions add to each step.
        hangs: the bag that is handled there.
    """

    parts: tuple[Path, ...] = ()
    prefix: str = ""
    heading: str = ""
    applies: tuple[Condition, ...] = ()
    hangs: str = ""

    def fact(self, named: str) -> str:
        """What a step looks at, with the bag that is handled there."""
        part, dot, what = named.partition(".")
        return f"{self.hangs}{dot}{what}" if self.hangs and part == HUNG else named

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
            "reopen": tuple(map(self.id, step.reopen)),
            "takes_back": tuple(map(self.id, step.takes_back)),
            "looks_at": tuple(map(self.fact, step.looks_at)),
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

    def planned(self, plan: TroublePlan, steps: list[Step], *, whole: bool) -> TroublePlan:
        """A plan for trouble as it stands in the whole checklist.

        Args:
            plan: as it was read.
            steps: the steps of its file.
            whole: the file is the checklist itself, so that the plan holds at every step.
        """
        here = () if whole else tuple(step.id for step in steps)
        return plan.model_copy(
            update={
                "back_to": plan.back_to and self.id(plan.back_to),
                "reopen": tuple(map(self.id, plan.reopen)),
                "at": tuple(map(self.id, plan.at)) or here,
            }
        )


def gather(paper: PaperFile, into: Gathering) -> None:
    """Take in what a file includes as a whole, then its own steps.

    Raises:
        ChecklistError: what leaves nothing to go on with: an include that names no file, too many files.
    """
    whole, before = not into.seen, len(into.steps)
    into.seen.add(paper.path.resolve())
    _take_head(paper, into)
    if len(into.seen) > 1:  # the head of the first file is checked as a whole, later
        into.faults += unknown_fields(paper)
    for name in included(paper):
        gather(read_paper(beside(paper, name, into.root, into.seen), ChecklistError), into)
    _take_steps(paper, into, _Within())
    _take_troubles(paper, into, _Within(), before, whole=whole)


def unknown_fields(paper: PaperFile) -> Iterator[AssistantError]:
    """A misspelt field is an error in a file that is included too, though its head is not used there."""
    written = [name for name in ("include", *Checklist.model_fields) if name not in SET_BY_LOADER]
    for name in list(paper.table)[:MOST_FAULTS]:
        if name not in written and name not in SET_BY_LOADER:
            yield paper.complain(
                (name,),
                f"{quoted(name)} is not a field here.",
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
    # Steps that stand under a misspelt name have ids, too.
    into.ids_uncertain |= any(
        isinstance(value, list) and value and isinstance(value[0], dict)
        for name, value in paper.table.items()
        if name not in ("steps", "troubles")
    )
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
    if not into.alone and any(fact.partition(".")[0] == HUNG for fact in step.looks_at):
        into.faults.append(
            place.complain(
                "looks_at",
                "it is not said which bag hung is.",
                'In a checklist name the bag; where a part is included, write hangs = "primary".',
            )
        )
        return
    if len(step.id) > LONGEST_ID:
        into.faults.append(
            place.complain("id", f"with its prefix it is {quoted(step.id)}, too long.", "Shorten the prefix.")
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
    named = [(inside, name) for inside in ("after", "reopen", "takes_back") for name in getattr(step, inside)]
    # What an inclusion adds is told at the inclusion.
    named += [("applies", condition.step) for condition in step.applies[len(within.applies) :] if condition.step]
    named += [("expires", name) for name in (step.expires.reopen if step.expires else ())]
    named += [("of", step.expect.of)] if isinstance(step.expect, DoubleCheckAsked) else []
    into.references += [Reference(place, inside, step.id, name) for inside, name in named]


def _take_troubles(paper: PaperFile, into: Gathering, within: _Within, before: int, *, whole: bool = False) -> None:
    """Take in what a file says about trouble, once its steps are there: they begin at the place `before`."""
    troubles = paper.table.get("troubles", [])
    if not isinstance(troubles, list):
        into.faults.append(
            paper.complain(("troubles",), '"troubles" must be a list of tables.', "Begin each one with [[troubles]].")
        )
        return
    for number, raw in enumerate(troubles):
        if len(into.faults) >= MOST_FAULTS:
            break
        place = Place(paper, number, "troubles")
        try:
            plan = within.planned(TroublePlan.model_validate(raw), into.steps[before:], whole=whole)
        except ValidationError as invalid:
            into.faults += paper.complaints_about(invalid, ("troubles", number), TroublePlan)
            continue
        into.troubles.append((plan, place))
        named = [("back_to", plan.back_to)] if plan.back_to else []
        named += [("reopen", name) for name in plan.reopen]
        named += [("at", name) for name in plan.at]
        into.references += [Reference(place, inside, "", name) for inside, name in named]


def _take_part(place: Place, raw: dict[str, Any], into: Gathering, within: _Within) -> None:
    try:
        wanted = Inclusion.model_validate(raw)
    except ValidationError as invalid:
        into.faults += place.paper.complaints_about(invalid, ("steps", place.number), Inclusion)
        into.ids_uncertain = True
        return
    inner = _Within(prefix=within.id(wanted.prefix or wanted.include.rpartition("/")[2]))
    try:
        path = part_file(place, wanted.include, into.root, within.parts)
        if inner.prefix in into.prefixes:
            raise place.complain(
                "include",
                f"a part stands under the prefix {quoted(inner.prefix)} already.",
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
    inner = _Within(
        (*within.parts, path),
        inner.prefix,
        within.heading or wanted.part,
        (*within.applies, *conditions),
        wanted.hangs or within.hangs,
    )
    _take_head(part, into)
    into.faults += unknown_fields(part)
    before = len(into.steps)
    _take_steps(part, into, inner)
    _take_troubles(part, into, inner, before)
    if len(into.steps) == before and not into.faults:
        into.faults.append(part.complain(("steps",), "this part has no steps.", "Add [[steps]]."))
    elif after and len(into.steps) > before:
        first = into.steps[before]
        into.steps[before] = first.model_copy(update={"after": (*after, *first.after)})
