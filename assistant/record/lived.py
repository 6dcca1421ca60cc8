"""What living a sealed record again came to. Pure data: those who report it need no guide."""

from dataclasses import dataclass
from enum import StrEnum


class Finding(StrEnum):
    """What living a record again came to."""

    SAME = "same"
    DIFFERS = "differs"
    OTHER_VERSION = "judged by another version"
    NOT_POSSIBLE = "could not be lived again"


@dataclass(frozen=True)
class Difference:
    """One field that comes out otherwise.

    Attributes:
        entry: its number in the record.
        step: id of the step; empty where it belongs to none.
        field: name of the field.
        recorded, lived: as it stands in the record, and as it comes out; empty where it is not there.
    """

    entry: int
    step: str
    field: str
    recorded: str
    lived: str

    def __str__(self) -> str:
        where = f"entry {self.entry}" + (f", step {self.step}" if self.step else "")
        return f"{where}, {self.field}: recorded {self.recorded or 'nothing'}, lived again {self.lived or 'nothing'}"


@dataclass(frozen=True)
class LivedAgain:
    """What living a record again came to.

    Attributes:
        finding: in a word.
        why: one or two sentences; empty where there is nothing to say.
        differences: the first of them, named.
        papers: which paper of the attempt is not the library's although it has its name; empty where none is.
    """

    finding: Finding
    why: str = ""
    differences: tuple[Difference, ...] = ()
    papers: str = ""
