"""What a lint rule is given, and what it says."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from enum import StrEnum

from assistant.checklist.load import Sheet
from assistant.checklist.model import Step
from assistant.dosing import Amount


class Severity(StrEnum):
    """How bad a finding is."""

    ERROR = "error"
    WARNING = "warning"


@dataclass(frozen=True)
class Finding:
    """One thing to mend.

    Attributes:
        file, line: where it stands.
        rule: the rule's name.
        severity: an error breaks the procedure; a warning makes it worse.
        what: what is wrong.
        mend: what to do.
    """

    file: str
    line: int
    rule: str
    severity: Severity
    what: str
    mend: str


@dataclass(frozen=True)
class Known:
    """What a checklist may refer to outside itself.

    Attributes:
        keys: names of the answer key, each with a unit of its kind, or None where it is a name.
        orders: names of orders.
        answers: the answer key of each order: a text or an amount, by name; an order that is not there is not
            looked at.
        vocabularies: words that a recogniser on this machine can hear, by its name; one that hears every word
            is left out.
    """

    keys: Mapping[str, str | None]
    orders: frozenset[str]
    answers: Mapping[str, Mapping[str, str | Amount]] = field(default_factory=dict)
    vocabularies: Mapping[str, frozenset[str]] = field(default_factory=dict)


@dataclass(frozen=True)
class Complaint:
    """What a rule says about one field.

    Attributes:
        field: its name, or the way to it, outer name first.
        found: the piece of its text that is meant, where it is one: it may stand lines below the name.
    """

    rule: str
    severity: Severity
    field: str | tuple[str, ...]
    what: str
    mend: str
    found: str = ""

    @property
    def way(self) -> tuple[str, ...]:
        """The way to the field."""
        return (self.field,) if isinstance(self.field, str) else self.field


@dataclass(frozen=True)
class Bench:
    """What a rule about a step looks at.

    Attributes:
        sheet, known: as given to `lint`.
        at: the place of each step in the checklist.
        needed: ids of the steps that each step waits for, directly or by way of others.
    """

    sheet: Sheet
    known: Known
    at: Mapping[str, int]
    needed: Mapping[str, set[str]]

    @classmethod
    def of(cls, sheet: Sheet, known: Known) -> "Bench":
        """The bench for a checklist."""
        at = {step.id: number for number, step in enumerate(sheet.checklist.steps)}
        return cls(sheet, known, at, _needed(sheet))

    def earlier(self, number: int) -> tuple[Step, ...]:
        """The steps before a place."""
        return self.sheet.checklist.steps[:number]


def error(rule: str, place: str | tuple[str, ...], what: str, mend: str, found: str = "") -> Complaint:
    """A complaint that breaks the procedure."""
    return Complaint(rule, Severity.ERROR, place, what, mend, found)


def warning(rule: str, place: str | tuple[str, ...], what: str, mend: str, found: str = "") -> Complaint:
    """A complaint that makes the procedure worse."""
    return Complaint(rule, Severity.WARNING, place, what, mend, found)


def _needed(sheet: Sheet) -> dict[str, set[str]]:
    after = {step.id: step.after for step in sheet.checklist.steps}
    needed: dict[str, set[str]] = {}
    for step_id in after:
        found: set[str] = set()
        left = list(after[step_id])
        while left:
            name = left.pop()
            if name not in found:
                found.add(name)
                left += after[name]
        needed[step_id] = found
    return needed
