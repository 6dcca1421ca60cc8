"""A fault at the bench, the truth of an attempt, and which steps of a checklist look at it.

A fact is named as a checklist's steps name what they look at: ``secondary.drug`` is what that label says,
``secondary.bag`` how the bag looks, ``secondary.allergy`` whether the patient may have the drug. Silence means
that the fact is as it should be.
"""

from dataclasses import dataclass

from assistant.checklist.model import ChoiceAsked, NameAsked, NumberAsked, QuestionAsked, Step
from assistant.dosing import Amount
from assistant.orders.laid_out import CONTAINERS, LABELS


@dataclass(frozen=True)
class Fault:
    """Something at the bench that is not as it should be.

    Attributes:
        fact: what it concerns.
        state: how it is: what the label says, or the word in which a step's answer tells of it.
        what: the same in a sentence, for the instructor.
        reaches: what would have reached the patient.
        at: id of the one step at which it is so; "" from beginning to end.
        say: what the instructor says or does then.
        grave: it is not only a soft limit.
    """

    fact: str
    state: str | Amount
    what: str
    reaches: str
    at: str = ""
    say: str = ""
    grave: bool = True

    @property
    def key(self) -> str:
        """What tells it from every other fault of the attempt: of a bag, how it is too, for it can leak and be old."""
        named = f"{self.fact}:{self.state}" if self.fact.endswith(".bag") else self.fact
        return f"{named}@{self.at}" if self.at else named

    @property
    def container(self) -> str:
        """As `container_of` has it."""
        return container_of(self.fact)


def container_of(fact: str) -> str:
    """The bag, syringe or set that another one can take the place of; "" where a fact concerns none."""
    part, _, name = fact.partition(".")
    return part if name in LABELS.get(part, ()) or (name == "bag" and part in CONTAINERS) else ""


@dataclass(frozen=True)
class Truth:
    """Every fault of one attempt; none: all is as ordered."""

    faults: tuple[Fault, ...] = ()

    def gone_with(self, fault: Fault) -> tuple[str, ...]:
        """Keys of the faults that are so no longer once one of them is put right: with a bag goes all that is wrong."""
        return tuple(
            other.key
            for other in self.faults
            if other is fault or (fault.container and other.container == fault.container)
        )

    def seen_at(self, step: Step) -> tuple[Fault, ...]:
        """The faults that a step of a checklist looks at."""
        wanted = facts_of(step)
        return tuple(fault for fault in self.faults if fault.fact in wanted and fault.at in ("", step.id))


def facts_of(step: Step) -> frozenset[str]:
    """Every fact that a step looks at: what it names, and what it has read from a label.

    ``secondary.label`` stands for all that the label says.
    """
    named: set[str] = set()
    for fact in step.looks_at:
        part, _, name = fact.partition(".")
        named |= {f"{part}.{each}" for each in LABELS.get(part, ())} if name == "label" else {fact}
    match step.expect:
        case NameAsked(key=key) | NumberAsked(key=key):
            part, _, name = key.partition(".")
            if name in LABELS.get(part, ()):
                named.add(key)
    return frozenset(named)


def told_by(step: Step, state: str | Amount) -> tuple[str, ...]:
    """The answers to a question or a choice that tell of a state; those that tell of any fault where none names it."""
    match step.expect:
        case QuestionAsked(right=right):
            return ("no" if right == "yes" else "yes",)
        case ChoiceAsked(choices=choices, right=right, phrases=phrases, faults=faults):
            others = tuple(one for one in choices if one != right)
            return tuple(one for one in others if state in (one, *phrases.get(one, ()))) or faults or others
    return ()


def can_be_put_right(step: Step, fact: str) -> bool:
    """Whether the learner goes on from a fault that a step found, once it has been put right."""
    return step.way_on == "put right" or (step.way_on is None and bool(container_of(fact)))


def ends_attempt(step: Step) -> bool:
    """Whether a fault that a step can find is a cause to stop: what is no bag and no label, no other bag puts right."""
    facts = facts_of(step)
    return bool(facts) and not any(can_be_put_right(step, fact) for fact in facts)


NOTHING_WRONG = Truth()
"""All is as ordered."""
