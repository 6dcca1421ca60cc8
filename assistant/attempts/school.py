"""What one school does otherwise: critical steps, what it takes to pass, cues, weights, its pumps, its words.

One small file lies over the checklists and orders of the library, so that nothing in them has to be copied.
"""

import hashlib
from collections.abc import Mapping
from pathlib import Path
from typing import Annotated

from pydantic import BeforeValidator, Field, ValidationError

from assistant.checklist.condition import LabTrait
from assistant.checklist.model import Checklist, Cue, Expiry, Paper, PassRule, StepId, Text
from assistant.checklist.paper import Number
from assistant.checklist.paper_file import SET_BY_LOADER, PaperFile, read_paper
from assistant.dosing import Rounding
from assistant.errors import SettingsError
from assistant.orders.model import Order, PoundsPerKilogram
from assistant.orders.reading import read_rounding
from assistant.spoken.language import Variety


class PassRuleChanges(Paper):
    """Fields of a checklist's `PassRule` that the school sets for all of its checklists; None leaves one as it is."""

    score_percent: Annotated[Number, Field(ge=0, le=100)] | None = None
    critical_corrections: Annotated[int, Field(strict=True, ge=0)] | None = None
    critical_cues: Annotated[int, Field(strict=True, ge=0)] | None = None
    cues: tuple[Cue, ...] | None = None


class StepChanges(Paper):
    """What changes in one checklist.

    Attributes:
        critical: ids of steps that are critical here.
        not_critical: ids of steps that are not.
        seen: ids of steps that an instructor has to see here.
        not_seen: ids of steps that need not be seen.
    """

    critical: tuple[StepId, ...] = ()
    not_critical: tuple[StepId, ...] = ()
    seen: tuple[StepId, ...] = ()
    not_seen: tuple[StepId, ...] = ()


class School(Paper):
    """A school's file.

    Attributes:
        title: whose it is.
        pass_rule: what it takes to pass a check-off.
        checklists: changes by the checklist's name.
        lab: what its pumps and sets have; steps that are for something else are passed over. None: the usual lab.
        settings_last_s: seconds after which its pumps forget settings, where they do; None: as the checklist says.
        words: the variety of English that is shown and spoken.
        rate: the place to which the pumps take a rate, where an order does not say it.
        pounds_per_kg: the factor by which weights in pounds are turned, where an order does not say it.
        digest: SHA-256 (hex) over the bytes of the file.
    """

    title: Text = ""
    pass_rule: PassRuleChanges = PassRuleChanges()
    checklists: Annotated[Mapping[str, StepChanges], Field(max_length=500)] = {}
    lab: frozenset[LabTrait] | None = None
    settings_last_s: Annotated[int, Field(strict=True, gt=0, le=3600)] | None = None
    words: Variety = "British"
    rate: Annotated[Rounding, BeforeValidator(read_rounding)] | None = None
    pounds_per_kg: PoundsPerKilogram | None = None
    digest: str


def load_school(path: Path) -> School:
    """Read a school's file.

    Raises:
        SettingsError: it cannot be used; the sentence names file and line, and what to do.
    """
    paper = read_paper(path, SettingsError)
    for name in SET_BY_LOADER:
        if name in paper.table:
            raise paper.complain((name,), f'"{name}" is not written in the file.', "Take the line out.")
    try:
        return School.model_validate({**paper.table, "digest": hashlib.sha256(paper.content).hexdigest()})
    except ValidationError as invalid:
        raise paper.complain_about(invalid, (), School) from invalid


def checklist_at(school: School, checklist: Checklist, path: Path) -> Checklist:
    """A checklist as the school has it.

    Args:
        school: what it changes.
        checklist: as its author wrote it.
        path: the school's file, for complaints.

    Raises:
        SettingsError: the file names a step that the checklist does not have.
    """
    changes = school.checklists.get(checklist.name, StepChanges())
    _check_ids(changes, checklist, path)
    lab_has = checklist.lab_has if school.lab is None else school.lab
    steps = tuple(
        step.model_copy(
            update={
                "critical": (step.critical or step.id in changes.critical) and step.id not in changes.not_critical,
                "seen": (step.seen or step.id in changes.seen) and step.id not in changes.not_seen,
                "expires": _expiry(step.expires, school.settings_last_s) if "settings lapse" in lab_has else None,
            }
        )
        for step in checklist.steps
    )
    rule = {name: value for name, value in school.pass_rule if value is not None}
    return checklist.model_copy(
        update={
            "steps": steps,
            "pass_rule": PassRule.model_validate({**dict(checklist.pass_rule), **rule}),
            "lab_has": lab_has,
        }
    )


def _expiry(expires: Expiry | None, after_s: int | None) -> Expiry | None:
    """When settings run out, by the school's own pumps where it says so."""
    if expires is None or after_s is None:
        return expires
    return expires.model_copy(update={"after_s": after_s})


def _check_ids(changes: StepChanges, checklist: Checklist, path: Path) -> None:
    known = {step.id for step in checklist.steps}
    for field, names in changes:
        for name in names:
            if name not in known:
                paper: PaperFile = read_paper(path, SettingsError)
                raise paper.complain(
                    ("checklists", checklist.name, field),
                    f"the checklist {checklist.name} has no step {name}.",
                    "Take the id from: checkoff rehearse, or the checklist's file.",
                )


def order_at(school: School, order: Order) -> Order:
    """An order as the school's pumps and scales take it; what the order says itself stays."""
    changes: dict[str, object] = {}
    if school.rate is not None and "rounding" not in order.model_fields_set:
        changes["rounding"] = school.rate
    if school.pounds_per_kg is not None and order.pounds_per_kg is None:
        changes["pounds_per_kg"] = school.pounds_per_kg
    return order.model_copy(update=changes) if changes else order
