"""What an order can hold: infusions, a flush, and where a running one stands."""

from typing import Annotated, Self

from pydantic import Field, StrictBool, model_validator

from assistant.checklist.paper import Paper, refuse
from assistant.dosing import Amount, parse_amount, show
from assistant.dosing.units import same_dimension
from assistant.orders.reading import Dose, DoseRate, DropFactor, Duration, Name, Rate, Reserve, Volume


def _check_reserve(reserve: Amount, bag: Amount) -> None:
    """What stays in the bag is less than the bag."""
    if reserve.in_unit("mL") >= bag.in_unit("mL"):
        raise refuse("The reserve is as large as the bag.", "Give a smaller reserve.")


def _kept(reserve: Amount) -> str:
    """The sentence about what stays in the bag, after a space; "" where nothing does."""
    return f" Reserve {show(reserve)}." if reserve.value else ""


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

    def speed(self, illegible: str = "") -> str:
        """``over 12 h`` or ``at 75 mL/h``: as the order states it, or where it cannot be read, what stands there."""
        if self.over is not None:
            return f"over {illegible or show(self.over)}"
        return f"at {illegible or show(self.rate)}" if self.rate else ""


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
        _check_reserve(self.reserve, self.bag_volume)
        return self

    def sentence(self, illegible: str = "") -> str:
        """As the order states it."""
        bag = f" from a bag of {show(self.bag_volume)}" if self.volume else ""
        return (
            f"Primary: {self.fluid}, {show(self.volume or self.bag_volume)}{bag} {self.speed(illegible)},"
            f" {self.route}, {self.frequency}.{_kept(self.reserve)}"
        )


class Secondary(Infusion):
    """The intermittent infusion: rides on the primary, or runs alone through a saline lock."""

    drug: Name
    dose: Dose
    volume: Volume
    reserve: Reserve = parse_amount("0 mL")
    frequency: Name

    @model_validator(mode="after")
    def _keeps_something(self) -> Self:
        _check_reserve(self.reserve, self.volume)
        return self

    def sentence(self, illegible: str = "") -> str:
        """As the order states it, without the word for its line."""
        return (
            f"{self.drug} {show(self.dose)} in {show(self.volume)} {self.speed(illegible)},"
            f" {self.route}, {self.frequency}.{_kept(self.reserve)}"
        )


class ByDoseRate(Paper):
    """A continuous infusion that is ordered by its dose in a time, often by weight.

    Attributes:
        drug: generic name.
        ordered: for example ``5 mcg/kg/min``, ``18 units/kg/h`` or ``10 mg/h``.
        amount: all the drug in the bag.
        volume: of the bag, the drug's own volume included.
        target: what the dose is steered by, such as ``mean arterial pressure 65 mmHg or more``; "" where by nothing.
    """

    drug: Name
    ordered: DoseRate
    amount: Dose
    volume: Volume
    reserve: Reserve = parse_amount("0 mL")
    route: Name = "intravenous"
    frequency: Name = "continuous"
    target: Annotated[str, Field(max_length=120)] = ""

    @model_validator(mode="after")
    def _keeps_something(self) -> Self:
        _check_reserve(self.reserve, self.volume)
        return self

    def sentence(self, illegible: str = "") -> str:
        """As the order states it."""
        return (
            f"By pump: {self.drug} {show(self.amount)} in {show(self.volume)} at {illegible or show(self.ordered)},"
            f" {self.route}, {self.frequency}.{_kept(self.reserve)}{self._steered()}"
        )

    def _steered(self) -> str:
        """The sentence about the target, after a space; "" where there is none."""
        return f" Target: {self.target}." if self.target else ""


class Push(Paper):
    """A drug that is given by hand from a syringe, straight into the vein.

    Attributes:
        drug: generic name.
        dose: what is ordered.
        amount, volume: all the drug in the vial, and its volume.
        over: the shortest time in which the dose goes in.
    """

    drug: Name
    dose: Dose
    amount: Dose
    volume: Volume
    over: Duration
    route: Name = "by hand into the vein"
    frequency: Name

    @model_validator(mode="after")
    def _is_in_the_vial(self) -> Self:
        if same_dimension(self.dose.unit, self.amount.unit) and self.dose.ratio > self.amount.in_unit(self.dose.unit):
            raise refuse("The vial holds less than the dose.", "Give a smaller dose or a larger vial.")
        return self

    def sentence(self) -> str:
        """As the order states it."""
        return (
            f"Direct: {self.drug} {show(self.dose)} from a vial of {show(self.amount)} in {show(self.volume)},"
            f" over {show(self.over)}, {self.route}, {self.frequency}."
        )


class Gravity(Paper):
    """The set that the primary runs through without a pump: the drop factor stands on its package."""

    drop_factor: DropFactor


class Syringe(Paper):
    """The syringe in which an intermittent drug lies in a syringe pump."""

    size: Volume

    def sentence(self) -> str:
        """As the order states it."""
        return f"By syringe pump, in a syringe of {show(self.size)}."


class Flush(Paper):
    """A saline flush of the lock, before and after."""

    fluid: Name = "0.9 % sodium chloride"
    volume: Volume
    frequency: Name = "before and after each use"

    def sentence(self) -> str:
        """As the order states it."""
        return f"Flush: {self.fluid} {show(self.volume)}, {self.frequency}."


class Running(Paper):
    """For how long the primary has been running when the learner comes to it: a round, or a hand-over."""

    since: Duration


class Change(Paper):
    """A new order for a primary that is running already: what stands under the primary is the new order.

    Attributes:
        before: the rate at which it has run until now.
        hold: it is to stop for now; the primary's rate is for when it goes on.
    """

    before: Rate
    hold: StrictBool = False

    def check_against(self, rate: Amount | None) -> None:
        """Refuse an order that changes nothing.

        Args:
            rate: the new one, as the primary states it.
        """
        if rate is None or rate.in_unit("mL/h") == self.before.in_unit("mL/h"):
            raise refuse("A change of rate needs a new rate.", 'Give the primary one that differs: rate = "75 mL/h".')

    def sentence(self) -> str:
        """As the order states it."""
        held = " Hold it until the prescriber lets it go on." if self.hold else ""
        return f"New order for a running infusion: until now it ran at {show(self.before)}.{held}"
