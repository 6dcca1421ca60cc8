"""What a simulated learner sees at the bench, and what it takes for seen.

It looks at what is laid out (`assistant.orders.fault.Truth`), never at what the guide makes of an answer.
"""

from collections.abc import Sequence
from dataclasses import dataclass, field
from enum import StrEnum
from random import Random

from assistant.checklist.model import ChoiceAsked, QuestionAsked, Step
from assistant.orders.fault import Fault, Truth, facts_of


class Character(StrEnum):
    """Kinds of learner."""

    ATTENTIVE = "attentive"
    """Sees what is there, says so, puts it right or stops."""
    UNAWARE = "unaware"
    """Overlooks faults, and says what would be right by the order."""
    YES_SAYER = "yes-sayer"
    """Looks at nothing, and says that all is well."""
    OVER_CAUTIOUS = "over-cautious"
    """Sees what is there, and now and then a fault that is not."""
    CARELESS = "careless"
    """Sees what is there, and errs with numbers."""


STUBBORN = 3
"""How often one who overlooks a fault says again that all is well before giving up (common practice, no source)."""
_IMAGINES = 0.05
"""Share of further looks at which the over-cautious sees a fault that is not there."""


def _can_be_imagined(step: Step) -> bool:
    tells = isinstance(step.expect, QuestionAsked) or (
        isinstance(step.expect, ChoiceAsked) and bool(step.expect.faults)
    )
    return tells and bool(facts_of(step)) and not step.applies


@dataclass
class Sight:
    """The bench through a learner's eyes.

    Attributes:
        truth: what is laid out.
        character: the kind of learner.
        chance: where it depends.
        miss_rate: share of faults that the unaware overlooks.
        gone: keys of faults that are so no longer: another bag was taken, or the learner put it right.
        told: keys of faults that this learner has told of.
        imagined_at: ids of the steps at which the over-cautious will see a fault that is not there.
    """

    truth: Truth
    character: Character
    chance: Random
    miss_rate: float = 1.0
    gone: set[str] = field(default_factory=set)
    told: set[str] = field(default_factory=set)
    imagined_at: set[str] = field(default_factory=set)
    _overlooks: dict[str, bool] = field(default_factory=dict)

    def faults(self, step: Step) -> tuple[Fault, ...]:
        """What is wrong where a step looks, as far as this learner sees it."""
        return tuple(
            fault for fault in self.truth.seen_at(step) if fault.key not in self.gone and not self._is_blind_to(fault)
        )

    def overlooks(self, step: Step) -> bool:
        """Whether there is a fault where a step looks that this learner does not see."""
        return len(self.faults(step)) < sum(fault.key not in self.gone for fault in self.truth.seen_at(step))

    def foresee(self, steps: Sequence[Step]) -> None:
        """Settle where the over-cautious sees a fault that is not there: at one step for certain, others by chance."""
        if self.character is not Character.OVER_CAUTIOUS:
            return
        places = [step.id for step in steps if _can_be_imagined(step) and not self.truth.seen_at(step)]
        if places:
            self.imagined_at = {self.chance.choice(places)}
            self.imagined_at |= {name for name in places if self.chance.random() < _IMAGINES}

    def imagines(self, step: Step) -> bool:
        """Whether the learner sees a fault at a step where none is; once for each step."""
        if step.id not in self.imagined_at:
            return False
        self.imagined_at.remove(step.id)
        return True

    def opens_eyes(self, step: Step) -> None:
        """Told to look again for the last time, the learner sees what is there."""
        for fault in self.truth.seen_at(step):
            self._overlooks[fault.key] = False

    def puts_right(self, fault: Fault) -> None:
        """The fault is so no longer, nor is anything else about the same bag."""
        self.gone |= {*self.truth.gone_with(fault)}

    def _is_blind_to(self, fault: Fault) -> bool:
        match self.character:
            case Character.YES_SAYER:
                return self._overlooks.setdefault(fault.key, True)
            case Character.UNAWARE:
                return self._overlooks.setdefault(fault.key, self.chance.random() < self.miss_rate)
        return False
