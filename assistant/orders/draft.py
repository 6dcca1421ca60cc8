"""An order on its way: what was chosen, and what was planted in it."""

import random
from dataclasses import dataclass, field
from datetime import date, timedelta

from assistant.dosing import Amount
from assistant.orders.choices import Dosed, Rated, WithSet
from assistant.orders.lines import Flush, Running
from assistant.orders.model import Fault, Hung, Paced

_SOONEST_DAYS, _LATEST_DAYS = 45, 700
_LONGEST_PAST_DAYS = 60


@dataclass
class Draft:
    """One order while it is drawn.

    Attributes:
        first, second: the secondaries, in the order in which they run.
        labels: what hangs, where it is not what is ordered.
        expired: "fluid" or "drug": which label has a date in the past.
    """

    primary: WithSet | None = None
    first: Dosed | None = None
    second: Dosed | None = None
    rated: Rated | None = None
    flush: Flush | None = None
    running: Running | None = None
    allergies: tuple[str, ...] = ()
    illegible: tuple[Paced, ...] = ()
    labels: Hung = field(default_factory=Hung)
    expired: str = ""
    planted: Fault | None = None
    teaching: str = ""

    @property
    def content(self) -> object:
        """What makes two orders alike: the infusions, whoever they are for."""
        return (
            self.primary and (self.primary.primary, self.primary.gravity),
            self.first and self.first.secondary,
            self.second and self.second.secondary,
            self.rated and (self.rated.dose, self.weight),
            self.flush,
            self.running,
        )

    @property
    def weight(self) -> Amount | None:
        """The body weight, where the dose needs one."""
        return self.rated.weight if self.rated else None

    @property
    def fluid(self) -> str | None:
        """What the primary is ordered with."""
        return self.primary.primary.fluid if self.primary else None

    def rides_together(self) -> bool:
        """Whether each drug may ride on the primary, and the two are not the same."""
        drugs = [dosed.drug for dosed in (self.first, self.second) if dosed is not None]
        if len(drugs) == 2 and drugs[0].name == drugs[1].name:
            return False
        return self.fluid is None or all(self.fluid in drug.with_fluids for drug in drugs)

    def avoided(self) -> tuple[str, ...]:
        """Allergies with which these drugs are not given."""
        known = [one.drug.avoid for one in (self.first, self.second, self.rated) if one is not None]
        return tuple(dict.fromkeys(name for names in known for name in names))

    def sources(self) -> tuple[str, ...]:
        """Where doses, dilutions and times are published."""
        known = [one.drug.source for one in (self.first, self.second, self.rated) if one is not None]
        return tuple(dict.fromkeys(known)) or ("common practice, no source",)

    def dated(self, chance: random.Random, day: date) -> Hung:
        """The labels with their dates: in the future, but where an expired one was planted."""
        past = day - timedelta(days=chance.randint(1, _LONGEST_PAST_DAYS))
        dates = [day + timedelta(days=chance.randint(_SOONEST_DAYS, _LATEST_DAYS)) for _ in range(2)]
        holds_drug = self.first is not None or self.rated is not None
        fluid = None if self.primary is None else past if self.expired == "fluid" else dates[0]
        drug = None if not holds_drug else past if self.expired == "drug" else dates[1]
        return self.labels.model_copy(update={"expires": fluid, "drug_expires": drug})
