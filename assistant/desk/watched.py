"""One attempt as the desk shows it, worked out from its entries. Pure."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Self

from assistant.link.messages import Begun


@dataclass(frozen=True)
class Watched:
    """An attempt, as far as its entries tell.

    Attributes:
        begun: where it goes on, and its steps.
        entries: how many entries were taken in.
        opening: its first entry.
        log: the other entries, oldest first.
    """

    begun: Begun
    entries: int = 0
    opening: Mapping[str, object] | None = None
    log: tuple[Mapping[str, object], ...] = ()

    @classmethod
    def of(cls, begun: Begun, bodies: Sequence[Mapping[str, object]]) -> Self:
        """An attempt with the entries that are there already."""
        return cls(begun).with_entries(bodies)

    def with_entries(self, bodies: Sequence[Mapping[str, object]]) -> Self:
        """The attempt after further entries."""
        if not bodies:
            return self
        opening = self.opening or bodies[0]
        return replace(self, opening=opening, entries=self.entries + len(bodies), log=(*self.log, *bodies))
