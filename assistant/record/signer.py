"""Who signed an entry, and whether it counts. Pure data: those who tell of it need no keys."""

from dataclasses import dataclass
from enum import StrEnum


class Right(StrEnum):
    """Whether a signed entry may decide."""

    VALID = "valid then"
    UNKNOWN = "not known as an instructor's"
    NOT_THEN = "not valid then"
    REVOKED = "revoked"


@dataclass(frozen=True)
class Signer:
    """Who signed an entry, as far as this machine can tell.

    Attributes:
        line: number of the entry.
        right: whether it may decide.
        title: name and role as the school has them, or the name under which the key is known; empty where it is not.
        school: the school on whose roster the key is; empty for a lone instructor and for nobody's.
        why: why it may not decide, in a sentence; empty where it may.
    """

    line: int
    right: Right
    title: str
    school: str = ""
    why: str = ""

    @property
    def decides(self) -> bool:
        """The entry counts."""
        return self.right is Right.VALID
