"""Amounts as an order writes them: text to a checked amount of one kind."""

from collections.abc import Callable
from datetime import date
from typing import Annotated

from pydantic import BeforeValidator, Field

from assistant.checklist.paper import refuse
from assistant.dosing import Amount, Rounding, parse_amount, parse_rounding, show
from assistant.dosing.result import EXAMPLES
from assistant.dosing.units import unit
from assistant.errors import QuantityError

_ALSO = {
    "dose": ("mass",),
    "dose rate": ("dose rate per weight",),
}
"""Kinds that are taken where another one is named: a dose may be a mass, a dose rate may be by weight."""


def amount_of(kind: str, *, zero: bool = False) -> Callable[[object], Amount]:
    """Reads an amount of one kind of quantity from the text in which people write it."""

    def read(given: object) -> Amount:
        if isinstance(given, Amount):
            amount = given
        elif isinstance(given, str):
            try:
                amount = parse_amount(given)
            except QuantityError as cause:
                raise refuse(cause.what, cause.remedy) from cause
        else:
            raise refuse("An amount is a number with its unit.", f'Write it like "20 {EXAMPLES[kind]}".')
        found = unit(amount.unit).kind
        if found != kind and found not in _ALSO.get(kind, ()):
            raise refuse(
                f"{show(amount)} is a {found} where a {kind} belongs.", f"Use a unit such as {EXAMPLES[kind]}."
            )
        if amount.value < 0 or (amount.value == 0 and not zero):
            raise refuse(f"{show(amount)} is too little.", "Write an amount above zero.")
        return amount

    return read


def read_rounding(given: object) -> Rounding:
    """Reads a rounding rule from its words."""
    if isinstance(given, Rounding):
        return given
    try:
        return parse_rounding(str(given))
    except QuantityError as cause:
        raise refuse(cause.what, cause.remedy) from cause


Volume = Annotated[Amount, BeforeValidator(amount_of("volume"))]
Reserve = Annotated[Amount, BeforeValidator(amount_of("volume", zero=True))]
Rate = Annotated[Amount, BeforeValidator(amount_of("rate"))]
Duration = Annotated[Amount, BeforeValidator(amount_of("duration"))]
Dose = Annotated[Amount, BeforeValidator(amount_of("dose"))]
Weight = Annotated[Amount, BeforeValidator(amount_of("mass"))]
DoseRate = Annotated[Amount, BeforeValidator(amount_of("dose rate"))]
DropFactor = Annotated[Amount, BeforeValidator(amount_of("drop factor"))]
Name = Annotated[str, Field(min_length=1, max_length=80)]


def day_in_words(day: date) -> str:
    """A day as it stands on paper: 14 March 1961."""
    return f"{day.day} {day:%B} {day.year}"
