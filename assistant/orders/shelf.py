"""What drawn orders are made of: the library's ``shelf.toml``, read and checked."""

from functools import lru_cache
from typing import Annotated

from pydantic import Field, ValidationError

from assistant.checklist.library import library_folder
from assistant.checklist.model import Paper
from assistant.checklist.paper_file import read_paper
from assistant.dosing.limits import key_of
from assistant.errors import OrderError
from assistant.orders.reading import Dose, DoseRate, Duration, Name, Rate, Volume

Bag = tuple[Dose, Volume]
"""All the drug in a bag, and its volume."""


class Fluid(Paper):
    """A fluid that a primary may be ordered with."""

    name: Name
    source: str


class Drug(Paper):
    """A drug in ready bags, given over a time.

    Attributes:
        bags: dose and volume of each.
        over: times over which it is ordered.
        frequency: how often, as the order words it.
        with_fluids: primaries on which it may ride.
        avoid: allergies with which it is not drawn.
        beside_at_most: the fastest primary on which it is drawn; None: any.
        source: where doses, dilution and times are published.
    """

    name: Name
    bags: tuple[Bag, ...] = Field(min_length=1)
    over: tuple[Duration, ...] = Field(min_length=1)
    frequency: tuple[Name, ...] = Field(min_length=1)
    with_fluids: tuple[Name, ...] = Field(alias="with", min_length=1)
    avoid: tuple[Name, ...] = ()
    beside_at_most: Rate | None = None
    source: str


class Electrolyte(Drug):
    """A salt in ready bags, ordered in milliequivalents; drawn only where a checklist asks for these.

    Attributes:
        mixed_up_with: what other bags of the same look hold.
    """

    mixed_up_with: tuple[Name, ...] = Field(min_length=1)


class DoseRateDrug(Paper):
    """A drug that is ordered by dose rate, with its bags and the steps that are drawn.

    Attributes:
        target: what its dose is steered by, as the order words it; "" where by nothing.
    """

    name: Name
    bags: tuple[Bag, ...] = Field(min_length=1)
    ordered: tuple[DoseRate, ...] = Field(min_length=1)
    avoid: tuple[Name, ...] = ()
    target: Annotated[str, Field(max_length=120)] = ""
    source: str


class PushDrug(Paper):
    """A drug that is given by hand, with its vials.

    Attributes:
        vials: drug and volume of each.
        doses: what is ordered, each no more than a vial holds.
        over: times in which a dose goes in.
        frequency, with_fluids, avoid, source: as in `Drug`.
    """

    name: Name
    vials: tuple[Bag, ...] = Field(min_length=1)
    doses: tuple[Dose, ...] = Field(min_length=1)
    over: tuple[Duration, ...] = Field(min_length=1)
    frequency: tuple[Name, ...] = Field(min_length=1)
    with_fluids: tuple[Name, ...] = Field(alias="with", min_length=1)
    avoid: tuple[Name, ...] = ()
    source: str


class People(Paper):
    """Parts of invented names, and allergies that concern no drug of the shelf."""

    first: tuple[Name, ...] = Field(min_length=20)
    last: tuple[Name, ...] = Field(min_length=20)
    ordered_by: tuple[Name, ...] = Field(min_length=1)
    other_allergies: tuple[Name, ...] = Field(min_length=1)


class Shelf(Paper):
    """The whole table."""

    fluids: tuple[Fluid, ...] = Field(min_length=2)
    drugs: tuple[Drug, ...] = Field(min_length=2)
    electrolytes: tuple[Electrolyte, ...] = Field(min_length=1)
    rates: tuple[DoseRateDrug, ...] = Field(min_length=1)
    pushes: tuple[PushDrug, ...] = Field(min_length=2)
    people: People


@lru_cache(maxsize=256)
def avoided_with(drug: str) -> tuple[str, ...]:
    """Allergies with which a drug is not given; none where the shelf does not know it.

    Args:
        drug: its name, capitals aside.
    """
    known: tuple[Drug | DoseRateDrug | PushDrug, ...] = (
        *shelf().drugs,
        *shelf().electrolytes,
        *shelf().rates,
        *shelf().pushes,
    )
    return next((one.avoid for one in known if key_of(one.name) == key_of(drug)), ())


@lru_cache(maxsize=1)
def shelf() -> Shelf:
    """The library's shelf.

    Raises:
        OrderError: the file cannot be used.
    """
    paper = read_paper(library_folder() / "shelf.toml", OrderError)
    try:
        return Shelf.model_validate(paper.table)
    except ValidationError as invalid:
        raise paper.complain_about(invalid, (), Shelf) from invalid
