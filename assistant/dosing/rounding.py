"""Rounding by a stated rule, once, at the last step."""

import re
from dataclasses import dataclass
from decimal import ROUND_HALF_EVEN, Context, Decimal
from enum import StrEnum
from fractions import Fraction

from assistant.errors import QuantityError
from assistant.text import quoted

_DIGITS = 28
_CONTEXT = Context(prec=_DIGITS, rounding=ROUND_HALF_EVEN)
WIDE = Context(prec=80)
"""For decimals that must stay exact whatever the surrounding context is set to."""


class Direction(StrEnum):
    """What happens between two steps."""

    HALF_UP = "half up"
    HALF_EVEN = "half even"
    UP = "up"
    DOWN = "down"


@dataclass(frozen=True)
class Rounding:
    """A rounding rule.

    Attributes:
        step: the result is a multiple of this; None keeps every digit (28 where decimals do not end).
        direction: what happens between two steps.
    """

    step: Decimal | None
    direction: Direction = Direction.HALF_UP

    def __post_init__(self) -> None:
        if self.step is not None and (not self.step.is_finite() or self.step <= 0):
            raise QuantityError("A rounding step above zero was expected.", "Use 1, 0.1 or 0.01.")

    def __str__(self) -> str:
        if self.step is None:
            return "exact"
        place = _PLACES.get(self.step, f"multiple of {self.step}")
        return f"nearest {place}, {self.direction}" if "half" in self.direction else f"{place}, {self.direction}"

    def apply(self, exact: Fraction) -> Decimal:
        """The exact ratio by this rule, as a decimal number."""
        if self.step is None:
            return decimal(exact)
        step_top, step_bottom = self.step.as_integer_ratio()
        whole = exact.denominator * step_top
        low, rest = divmod(exact.numerator * step_bottom, whole)
        if self.direction is Direction.UP:
            count = low + (rest > 0)
        elif self.direction is Direction.DOWN:
            count = low
        elif self.direction is Direction.HALF_UP:
            count = low + (2 * rest >= whole)
        else:
            count = low + (2 * rest > whole or (2 * rest == whole and low % 2 == 1))
        return WIDE.multiply(Decimal(count), self.step)


_PLACES = {
    Decimal(1): "whole number",
    Decimal("0.1"): "tenth",
    Decimal("0.01"): "hundredth",
    Decimal("0.001"): "thousandth",
    **{
        Decimal(1).scaleb(-places): f"{name} decimal"
        for places, name in enumerate(
            ("fourth", "fifth", "sixth", "seventh", "eighth", "ninth", "tenth", "eleventh", "twelfth"), 4
        )
    },
}

EXACT = Rounding(None)
TENTH = Rounding(Decimal("0.1"))
"""Pump rates where the pump takes tenths; body weight in kg (common practice, no source)."""
WHOLE = Rounding(Decimal(1))
"""Pump rates where the pump takes no tenths; drops (US Army Subcourse MD0904, Lesson 2 Section IV)."""
HUNDREDTH = Rounding(Decimal("0.01"))
THOUSANDTH = Rounding(Decimal("0.001"))

_NAMES = {
    "exact": EXACT,
    "none": EXACT,
    "whole": WHOLE,
    "tenth": TENTH,
    "hundredth": HUNDREDTH,
    "thousandth": THOUSANDTH,
    "1": WHOLE,
    "0.1": TENTH,
    "0.01": HUNDREDTH,
    "0.001": THOUSANDTH,
}


SYRINGES = {
    "1": HUNDREDTH,
    "3": TENTH,
    "5": Rounding(Decimal("0.2")),
    "10": Rounding(Decimal("0.2")),
    "20": WHOLE,
    "50": WHOLE,
    "60": WHOLE,
}
"""What can be read off a syringe, by its size in mL (from memory; the marks on the syringe in hand decide)."""
_SYRINGE = re.compile(r"(?P<size>\d{1,2})\s*ml\s+syringe", re.ASCII)


def parse_rounding(text: str) -> Rounding:
    """Read a rule: ``whole``, ``tenth``, ``0.1``, ``hundredth down``, ``exact``, ``10 mL syringe``.

    Raises:
        QuantityError: no such rule.
    """
    if (drawn := _SYRINGE.fullmatch(" ".join(text.lower().split()))) is not None:
        if (by_size := SYRINGES.get(drawn["size"])) is None:
            raise QuantityError(
                f"No marks of a syringe of {drawn['size']} mL are known here.", f"Use one of: {', '.join(SYRINGES)} mL."
            )
        return by_size
    words = (
        text.lower().replace(",", " ").replace("nearest", " ").replace("number", " ").replace("half-", "half ").split()
    )
    direction = Direction.HALF_UP
    for name in Direction:
        tail = name.value.split()
        if words[-len(tail) :] == tail and len(words) > len(tail):
            direction, words = name, words[: -len(tail)]
            break
    rule = _NAMES.get(words[0]) if len(words) == 1 else None
    if rule is None:
        raise QuantityError(
            f"{quoted(text)} is not a rounding rule.",
            "Use exact, whole, tenth, hundredth, thousandth or 10 mL syringe; with up or down.",
        )
    return Rounding(rule.step, direction)


def syringe(volume: Fraction) -> Rounding:
    """The rule for a volume drawn up in mL: hundredths below 1 mL, tenths from 1 mL up.

    Source: Texas Woman's University College of Nursing, calculation and rounding policy (2005 form).
    """
    return HUNDREDTH if volume < 1 else TENTH


def decimal(exact: Fraction) -> Decimal:
    """The ratio in decimals: exact where they end within 60 digits, else 28 digits."""
    bare = exact.denominator
    for prime in (2, 5):
        while bare % prime == 0:
            bare //= prime
    if bare == 1:
        return WIDE.divide(Decimal(exact.numerator), Decimal(exact.denominator))
    return _CONTEXT.divide(Decimal(exact.numerator), Decimal(exact.denominator))


def root(square: Fraction) -> Fraction:
    """The square root, to 50 digits: the only step that a ratio cannot hold exactly."""
    wide = Context(prec=50)
    return Fraction(wide.sqrt(wide.divide(Decimal(square.numerator), Decimal(square.denominator))))
