"""A fictional order as the program holds it: typed, frozen, checked."""

from collections.abc import Callable, Mapping
from datetime import date
from typing import Annotated, Self

from pydantic import BeforeValidator, Field, model_validator
from pydantic_core import PydanticCustomError

from assistant.checklist.model import Paper, Text
from assistant.dosing import Amount, Rounding, parse_amount, parse_rounding, show
from assistant.dosing.result import EXAMPLES
from assistant.dosing.units import unit
from assistant.errors import QuantityError


def refuse(what: str, remedy: str) -> PydanticCustomError:
    """The refusal of a field, in words that the reader of the file sees."""
    return PydanticCustomError("authored", "{what}", {"what": what, "remedy": remedy})


def _amount_of(kind: str, *, zero: bool = False) -> Callable[[object], Amount]:
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
        if found != kind and not (kind == "dose" and found == "mass"):
            raise refuse(
                f"{show(amount)} is a {found} where a {kind} belongs.", f"Use a unit such as {EXAMPLES[kind]}."
            )
        if amount.value < 0 or (amount.value == 0 and not zero):
            raise refuse(f"{show(amount)} is too little.", "Write an amount above zero.")
        return amount

    return read


def _rounding(given: object) -> Rounding:
    if isinstance(given, Rounding):
        return given
    try:
        return parse_rounding(str(given))
    except QuantityError as cause:
        raise refuse(cause.what, cause.remedy) from cause


Volume = Annotated[Amount, BeforeValidator(_amount_of("volume"))]
Reserve = Annotated[Amount, BeforeValidator(_amount_of("volume", zero=True))]
Rate = Annotated[Amount, BeforeValidator(_amount_of("rate"))]
Duration = Annotated[Amount, BeforeValidator(_amount_of("duration"))]
Dose = Annotated[Amount, BeforeValidator(_amount_of("dose"))]
Weight = Annotated[Amount, BeforeValidator(_amount_of("mass"))]
Name = Annotated[str, Field(min_length=1, max_length=80)]


class Patient(Paper):
    """Whom the order is for: invented."""

    name: Name
    born: date
    number: Name
    allergies: tuple[Name, ...] = ()
    """Empty means: none known."""
    weight: Weight | None = None


class Infusion(Paper):
    """What a primary and a secondary share: by duration or by rate, never by both."""

    over: Duration | None = None
    rate: Rate | None = None
    route: Name = "intravenous"

    @model_validator(mode="after")
    def _one_of_both(self) -> Self:
        if (self.over is None) == (self.rate is None):
            raise refuse(
                "An infusion has either over or rate.", 'Write one of them: over = "12 h" or rate = "75 mL/h".'
            )
        return self

    def speed(self) -> str:
        """``over 12 h`` or ``at 75 mL/h``: as the order states it."""
        return f"over {show(self.over)}" if self.over is not None else f"at {show(self.rate)}" if self.rate else ""


class Primary(Infusion):
    """The continuous infusion.

    Attributes:
        volume: what is to be infused where it is less than the bag; else the bag less the reserve is.
    """

    fluid: Name
    bag_volume: Volume
    volume: Volume | None = None
    reserve: Reserve = parse_amount("0 mL")
    frequency: Name = "continuous"

    @model_validator(mode="after")
    def _fits_the_bag(self) -> Self:
        wanted = self.volume.in_unit("mL") if self.volume else 0
        if self.reserve.in_unit("mL") + wanted > self.bag_volume.in_unit("mL"):
            raise refuse(
                f"The bag of {show(self.bag_volume)} does not hold what is to be infused and kept back.",
                "Give less volume, a smaller reserve or a larger bag.",
            )
        if self.reserve.in_unit("mL") >= self.bag_volume.in_unit("mL"):
            raise refuse("The reserve is as large as the bag.", "Give a smaller reserve.")
        return self


class Secondary(Infusion):
    """The intermittent infusion that rides on the primary."""

    drug: Name
    dose: Dose
    volume: Volume
    reserve: Reserve = parse_amount("0 mL")
    frequency: Name

    @model_validator(mode="after")
    def _keeps_something(self) -> Self:
        if self.reserve.in_unit("mL") >= self.volume.in_unit("mL"):
            raise refuse("The reserve is as large as the bag.", "Give a smaller reserve.")
        return self


class Hung(Paper):
    """What the labels on the stand say where it is not what the order says, on purpose."""

    fluid: Name | None = None
    bag_volume: Volume | None = None
    drug: Name | None = None
    dose: Dose | None = None


class Order(Paper):
    """A fictional prescription that a learner carries out."""

    name: str
    """The file's stem."""
    title: Name
    code: Name
    """As it stands on the paper, for example ``OH-101``."""
    ordered_by: Name
    patient: Patient
    primary: Primary
    secondary: Secondary | None = None
    hung: Hung = Hung()
    rounding: Annotated[Rounding, BeforeValidator(_rounding)] = parse_rounding("tenth")
    """What the pump takes as a rate; the answer key rounds to it once, at the end."""
    teaching: Text = ""
    """For the instructor: what the order is there to teach; never shown to the learner."""
    sources: tuple[Text, ...] = ()
    """Where the dose, the dilution and the time are published."""
    digest: str
    """SHA-256 (hex) over the bytes of the file."""

    @model_validator(mode="after")
    def _hung_without_secondary(self) -> Self:
        if self.secondary is None and (self.hung.drug or self.hung.dose):
            raise refuse("A drug hangs, but the order has no secondary.", "Add [secondary], or take it off.")
        return self

    def sentences(self) -> tuple[str, ...]:
        """The order as it is shown, one sentence each; only what it states, nothing that follows from it."""
        patient, primary = self.patient, self.primary
        allergies = ", ".join(patient.allergies) or "none known"
        weight = f" Weight {show(patient.weight)}." if patient.weight else ""
        amount = primary.volume or primary.bag_volume
        bag = f" from a bag of {show(primary.bag_volume)}" if primary.volume else ""
        reserve = f" Reserve {show(primary.reserve)}." if primary.reserve.value else ""
        lines = [
            f"Order {self.code} for {patient.name}, born {_day(patient.born)}, number {patient.number}.",
            f"Allergies: {allergies}.{weight}",
            f"Primary: {primary.fluid}, {show(amount)}{bag} {primary.speed()},"
            f" {primary.route}, {primary.frequency}.{reserve}",
        ]
        if self.secondary is not None:
            second = self.secondary
            kept = f" Reserve {show(second.reserve)}." if second.reserve.value else ""
            lines.append(
                f"Secondary: {second.drug} {show(second.dose)} in {show(second.volume)} {second.speed()},"
                f" {second.route}, {second.frequency}.{kept}"
            )
        lines.append(f"Ordered by {self.ordered_by}.")
        return tuple(lines)

    def sentence(self) -> str:
        """All `sentences` in one text."""
        return " ".join(self.sentences())

    def labels(self) -> Mapping[str, str | Amount]:
        """What the labels on the stand say, by names of the answer key."""
        hung, primary, second = self.hung, self.primary, self.secondary
        found: dict[str, str | Amount] = {
            "primary.fluid": hung.fluid or primary.fluid,
            "primary.bag_volume": hung.bag_volume or primary.bag_volume,
        }
        if second is not None:
            found["secondary.drug"] = hung.drug or second.drug
            found["secondary.dose"] = hung.dose or second.dose
            found["secondary.volume"] = second.volume
        return found


def _day(day: date) -> str:
    return f"{day.day} {day:%B} {day.year}"
