"""A lab's own table by which an infusion by weight is changed, for a result of the laboratory."""

from typing import Annotated, Self

from pydantic import Field, model_validator

from assistant.checklist.paper import Paper, refuse
from assistant.dosing import Amount, show
from assistant.orders.reading import DoseRate, Duration

Seconds = Annotated[int, Field(strict=True, gt=0, le=999)]
"""A clotting time."""


class Row(Paper):
    """A line of the table.

    Attributes:
        below: it holds for results below so many seconds; None: for all that are left.
        raise_by, lower_by: how much more or less each kilogram gets in an hour; neither: no change.
        hold: for how long nothing runs before that.
    """

    below: Seconds | None = None
    raise_by: DoseRate | None = None
    lower_by: DoseRate | None = None
    hold: Duration | None = None

    def says(self) -> str:
        """What is to be done, as the table says it."""
        if self.raise_by is not None:
            return f"raise by {show(self.raise_by)}"
        held = f"hold for {show(self.hold)}, then " if self.hold is not None else ""
        return f"{held}lower by {show(self.lower_by)}" if self.lower_by is not None else "no change"


class Protocol(Paper):
    """The table with the newest result.

    Attributes:
        result: the clotting time, in seconds.
        rows: by rising limits; only the last one has none.
    """

    result: Seconds
    rows: Annotated[tuple[Row, ...], Field(min_length=2, max_length=12)]

    @model_validator(mode="after")
    def _is_a_ladder(self) -> Self:
        limits = [row.below for row in self.rows[:-1]]
        known = [limit for limit in limits if limit is not None]
        if len(known) < len(limits) or known != sorted(set(known)) or self.rows[-1].below is not None:
            raise refuse("The rows do not rise.", "Give each row but the last one a higher limit than the one before.")
        if any(row.raise_by is not None and row.lower_by is not None for row in self.rows):
            raise refuse("A row raises and lowers at once.", "Leave one of the two out.")
        if any(row.hold is not None and row.lower_by is None for row in self.rows):
            raise refuse("A row holds and lowers nothing.", "Add lower_by.")
        return self

    @property
    def row(self) -> Row:
        """The line that the result falls into."""
        return next(row for row in self.rows if row.below is None or self.result < row.below)

    def applied_to(self, ordered: Amount) -> Amount:
        """The dose rate that follows from the result.

        Args:
            ordered: the one that runs.

        Returns:
            In the same unit.
        """
        row, value = self.row, ordered.value
        for change, sign in ((row.raise_by, 1), (row.lower_by, -1)):
            if change is not None:
                value += sign * change.value
        return Amount(value, ordered.unit)

    def sentence(self) -> str:
        """As the order states it."""
        lines = [f"below {row.below} s {row.says()}" for row in self.rows[:-1]]
        lines.append(f"from {self.rows[-2].below} s on {self.rows[-1].says()}")
        return f"By the lab's own table: {'; '.join(lines)}. Newest result {self.result} s."
