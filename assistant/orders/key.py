"""The answer key: every value that follows from an order, with its working."""

from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction


@dataclass(frozen=True)
class KeyEntry:
    """One value that follows from an order.

    Attributes:
        name: for example ``primary.rate``.
        value: Decimal for a number, text for a name.
        unit: canonical unit of a number, else None.
        working: lines that can be shown and spoken; empty where the order states the value itself.
        formula: the calculation core's name of the formula, or "" where the order states the value.
        exact: the unrounded number, in `unit`; None where the value itself is exact.
        choices: for a name, every name that a label in the lab may carry, the right one among them in
            alphabetical order; this is what a recogniser is given, so that a wrong label is heard as it is.
    """

    name: str
    value: Decimal | str
    unit: str | None
    working: tuple[str, ...] = ()
    formula: str = ""
    exact: Fraction | None = None
    choices: tuple[str, ...] = ()
