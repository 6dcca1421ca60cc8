"""What pumps take, what people count and what people receive: beyond it, a result is given with a caution."""

from dataclasses import dataclass
from fractions import Fraction

from assistant.dosing import units


@dataclass(frozen=True)
class Usual:
    """The usual range of one kind of quantity.

    Attributes:
        unit: of the two bounds.
        lowest: None where nothing is too little.
        highest: the most.
        sentence: what is said beyond them, with its source.
    """

    unit: str
    lowest: Fraction | None
    highest: Fraction
    sentence: str


_COMMON = "(common practice, no source)"
_USUAL = (
    Usual(
        "mL/h",
        Fraction(1, 10),
        Fraction(999),
        f"Infusion pumps take 0.1 to 999 mL/h as a rule {_COMMON}: look at the units and the dose.",
    ),
    Usual(
        "gtt/min",
        Fraction(1),
        Fraction(250),
        f"Nobody counts more than 250 drops a minute {_COMMON}: look at the numbers, or use a pump.",
    ),
    Usual("mL", None, Fraction(10_000), f"More than 10 L is more than people receive {_COMMON}: look at the units."),
    Usual("g", None, Fraction(500), f"More than 500 g of a drug is more than people receive {_COMMON}: look again."),
    Usual("mEq", None, Fraction(1000), f"More than 1,000 mEq is more than people receive {_COMMON}: look again."),
    Usual("mmol", None, Fraction(1000), f"More than 1,000 mmol is more than people receive {_COMMON}: look again."),
    Usual(
        "units",
        None,
        Fraction(100_000_000),
        f"More than 100 million units are more than people receive {_COMMON}: look again.",
    ),
    Usual(
        "g/mL",
        None,
        Fraction(1),
        f"No solution for infusion holds more than 1 g in 1 mL {_COMMON}: look at the dose and the volume.",
    ),
    Usual(
        "h",
        None,
        Fraction(168),
        "Longer than 7 days: a set is changed within 7 days (CDC, Guidelines for the Prevention of Intravascular"
        " Catheter-Related Infections, 2011, administration sets; from memory).",
    ),
)
"""One range for each kind of quantity that has one."""
_BY_SIGNATURE = {units.unit(one.unit).signature: one for one in _USUAL}
_BODY_WEIGHTS = ("kg", "lb")
"""In these nobody orders a drug; a body weight has bounds of its own (`body.kilograms`)."""


def beyond_usual(value: Fraction, unit: str) -> tuple[str, ...]:
    """The caution for a value that no pump takes, nobody counts or nobody receives; nothing for any other.

    Args:
        value: in `unit`; zero never has a caution.
        unit: canonical unit.
    """
    found = units.unit(unit)
    usual = _BY_SIGNATURE.get(found.signature)
    if usual is None or value <= 0 or found.name in _BODY_WEIGHTS:
        return ()
    value *= found.factor / units.unit(usual.unit).factor
    too_little = usual.lowest is not None and value < usual.lowest
    return (usual.sentence,) if too_little or value > usual.highest else ()
