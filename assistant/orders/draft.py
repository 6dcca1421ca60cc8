"""An order on its way: what was chosen, and what was planted in it."""

import random
from dataclasses import dataclass, field
from datetime import date, timedelta

from assistant.dosing import Amount, flow_rate
from assistant.orders.choices import Dosed, Pushed, Rated, WithSet, never
from assistant.orders.laid_out import CONTAINERS, LaidOut, OnPurpose
from assistant.orders.lines import Change, Flush, Running, Syringe
from assistant.orders.model import Paced
from assistant.orders.pairs import may_follow
from assistant.orders.protocol import Protocol

_SOONEST_DAYS, _LATEST_DAYS = 45, 700
_LONGEST_PAST_DAYS = 60


@dataclass
class Draft:
    """One order while it is drawn.

    Attributes:
        first, second: the secondaries, in the order in which they run.
        laid_out: by part, what a label says or how a bag looks, where that is not as ordered.
        found: everything else that is not as it should be, by what is looked at.
        expired: the part whose label has a date in the past.
        on_purpose: what is wrong in the order itself.
    """

    primary: WithSet | None = None
    first: Dosed | None = None
    second: Dosed | None = None
    rated: Rated | None = None
    pushed: Pushed | None = None
    protocol: Protocol | None = None
    syringe: Syringe | None = None
    flush: Flush | None = None
    running: Running | None = None
    change: Change | None = None
    allergies: tuple[str, ...] = ()
    illegible: tuple[Paced, ...] = ()
    laid_out: dict[str, dict[str, object]] = field(default_factory=dict)
    found: dict[str, str] = field(default_factory=dict)
    expired: str = ""
    on_purpose: tuple[OnPurpose, ...] = ()
    teaching: str = ""

    @property
    def content(self) -> object:
        """What makes two orders alike: the infusions, whoever they are for and whatever stays in the bag."""
        hung = self.primary
        line = hung and (
            hung.primary.fluid,
            hung.primary.bag_volume.in_unit("mL"),
            hung.primary.over,
            hung.primary.rate,
        )
        return (
            line,
            hung and hung.gravity,
            self.first and self.first.secondary,
            self.second and self.second.secondary,
            self.rated and (self.rated.dose, self.weight),
            self.pushed and self.pushed.push,
            self.protocol,
            self.flush,
            self.running,
            self.change,
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
        """Whether each drug may ride on the primary, at its rate, and the second may follow the first."""
        drugs = [dosed for dosed in (self.first, self.second) if dosed is not None]
        follows = len(drugs) < 2 or may_follow(drugs[0].drug.name, drugs[1].drug.name)
        by_hand = self.pushed is None or self.fluid is None or self.fluid in self.pushed.drug.with_fluids
        return follows and by_hand and all(map(self.may_ride, drugs))

    def may_ride(self, dosed: Dosed) -> bool:
        """Whether a drug may ride on the primary, where there is one."""
        if self.primary is None:
            return True
        primary, drug = self.primary.primary, dosed.drug
        rate = primary.rate or flow_rate(primary.bag_volume, primary.over or never()).amount
        slow_enough = drug.beside_at_most is None or rate.in_unit("mL/h") <= drug.beside_at_most.in_unit("mL/h")
        return primary.fluid in drug.with_fluids and slow_enough

    def has(self, part: str) -> bool:
        """Whether a part of an order was chosen."""
        return {
            "primary": self.primary is not None,
            "secondary": self.first is not None,
            "second_secondary": self.second is not None,
            "dose": self.rated is not None,
            "flush": self.flush is not None,
            "push": self.pushed is not None,
        }.get(part, False)

    def dosed(self, part: str) -> Dosed:
        """One of the secondaries, by its part."""
        dosed = self.first if part == "secondary" else self.second
        if dosed is None:
            raise KeyError(part)
        return dosed

    def set_dosed(self, part: str, dosed: Dosed) -> None:
        """Another one in its place."""
        if part == "secondary":
            self.first = dosed
        else:
            self.second = dosed

    def name_of(self, part: str) -> str:
        """What is ordered for a part: a fluid or a drug."""
        if part == "primary" and self.primary is not None:
            return self.primary.primary.fluid
        if part == "flush" and self.flush is not None:
            return self.flush.fluid
        if part == "dose" and self.rated is not None:
            return self.rated.drug.name
        if part == "push" and self.pushed is not None:
            return self.pushed.drug.name
        return self.dosed(part).drug.name

    def held_in(self, part: str) -> tuple[Amount, Amount]:
        """All the drug in a bag, and its volume."""
        if part == "dose" and self.rated is not None:
            return self.rated.dose.amount, self.rated.dose.volume
        if part == "push" and self.pushed is not None:
            return self.pushed.push.amount, self.pushed.push.volume
        secondary = self.dosed(part).secondary
        return secondary.dose, secondary.volume

    def sources(self) -> tuple[str, ...]:
        """Where doses, dilutions and times are published."""
        known = [one.drug.source for one in (self.first, self.second, self.rated, self.pushed) if one is not None]
        return tuple(dict.fromkeys(known)) or ("common practice, no source",)

    def bench(self, chance: random.Random, day: date) -> LaidOut:
        """What is laid out, with a date on every label: in the future, but where an expired one was planted."""
        past = day - timedelta(days=chance.randint(1, _LONGEST_PAST_DAYS))
        # The first two dates are drawn with everything else, the others aside: a seed gives what it always gave.
        first, second = _future(chance, day), _future(chance, day)
        aside = random.Random(second.toordinal())  # noqa: S311 - orders by chance are no secret
        drug = "secondary" if self.has("secondary") else "dose"
        parts: dict[str, object] = {}
        for part in CONTAINERS:
            date_on = {"primary": first, drug: second}.get(part) or _future(aside, day)
            if self.has(part):
                expires = past if part == self.expired else date_on
                parts[part] = {"expires": expires, **self.laid_out.get(part, {})}
        return LaidOut.model_validate({**parts, "found": self.found, "on_purpose": self.on_purpose})


def _future(chance: random.Random, day: date) -> date:
    return day + timedelta(days=chance.randint(_SOONEST_DAYS, _LATEST_DAYS))
