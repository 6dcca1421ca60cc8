"""What is really laid out at the bench, where it is not what the order says: the other half of an attempt's truth.

Silence means: as ordered, and nothing wrong.
"""

from collections.abc import Mapping
from datetime import date
from typing import Annotated, Literal, Self

from pydantic import Field, model_validator

from assistant.checklist.paper import Paper, Phrase, StepId, Text, refuse
from assistant.orders.reading import Dose, DropFactor, Name, Volume

BagState = Literal["cloudy", "leaking", "expired"]
"""What may be wrong with a bag or a syringe that bears the right label."""
OnPurpose = Literal["allergy", "limits", "pair", "drugs"]
"""What may be wrong in an order itself, for the learner to notice."""
Thing = Annotated[str, Field(pattern=r"^[a-z][a-z -]*$", max_length=40)]
"""What is looked at beside bags and syringes, as a checklist's `looks_at` names it: ``site``, ``wristband``."""


class _Container(Paper):
    """A bag or a syringe.

    Attributes:
        expires: the date on it; past on the day of the order means that it has expired.
        state: how it looks.
    """

    expires: date | None = None
    state: BagState | None = None


class LaidOutFluid(_Container):
    """The primary's bag; each field is what its label says."""

    fluid: Name | None = None
    bag_volume: Volume | None = None


class LaidOutDrug(_Container):
    """A bag that holds the drug of a secondary; each field is what its label says."""

    drug: Name | None = None
    dose: Dose | None = None
    volume: Volume | None = None


class LaidOutByRate(_Container):
    """A bag that holds a drug ordered by dose rate; each field is what its label says."""

    drug: Name | None = None
    amount: Dose | None = None
    volume: Volume | None = None


class LaidOutVial(_Container):
    """The vial of a drug that is given by hand; each field is what its label says."""

    drug: Name | None = None
    amount: Dose | None = None
    volume: Volume | None = None


class LaidOutSyringe(_Container):
    """The flush syringe; each field is what its label says."""

    fluid: Name | None = None
    volume: Volume | None = None


class LaidOutSet(Paper):
    """The administration set: what its package says."""

    drop_factor: DropFactor | None = None


class Happening(Paper):
    """Something that happens at a step: an alarm, pain, a bag that runs empty. The instructor sees to it.

    Attributes:
        at: id of the step.
        thing, state: as in `LaidOut.found`; it is so at that step alone.
        say: what the instructor says or does then.
    """

    at: StepId
    thing: Thing
    state: Phrase
    say: Text = ""


class LaidOut(Paper):
    """The bench.

    Attributes:
        primary, secondary, second_secondary, dose, flush, push: bags, syringe and vial, by the order's own names.
        gravity: the set of a gravity infusion.
        found: everything else that is looked at, and how it is: ``site = "red"``, ``wristband = "another patient"``.
        happens: what changes on the way.
        on_purpose: what is wrong in the order itself to be noticed, so that the linter does not name it.
    """

    primary: LaidOutFluid = LaidOutFluid()
    secondary: LaidOutDrug = LaidOutDrug()
    second_secondary: LaidOutDrug = LaidOutDrug()
    dose: LaidOutByRate = LaidOutByRate()
    flush: LaidOutSyringe = LaidOutSyringe()
    push: LaidOutVial = LaidOutVial()
    gravity: LaidOutSet = LaidOutSet()
    found: Annotated[Mapping[Thing, Phrase], Field(max_length=30)] = {}
    happens: Annotated[tuple[Happening, ...], Field(max_length=30)] = ()
    on_purpose: tuple[OnPurpose, ...] = ()

    @model_validator(mode="after")
    def _happens_once(self) -> Self:
        places = [(one.at, one.thing) for one in self.happens]
        twice = next((place for place in places if places.count(place) > 1), None)
        if twice is not None:
            raise refuse(f"Two things happen to the {twice[1]} at the step {twice[0]}.", "Leave one of them out.")
        return self


CONTAINERS = ("primary", "secondary", "second_secondary", "dose", "flush", "push")
"""Parts of an order that hang or are pushed in: each a bag, a syringe or a vial with a label."""
LABELS: Mapping[str, tuple[str, ...]] = {
    "primary": ("fluid", "bag_volume"),
    "secondary": ("drug", "dose", "volume"),
    "second_secondary": ("drug", "dose", "volume"),
    "dose": ("drug", "amount", "volume"),
    "flush": ("fluid", "volume"),
    "gravity": ("drop_factor",),
    "push": ("drug", "amount", "volume"),
}
"""What the label of each part says, by the names that the answer key has for it."""
