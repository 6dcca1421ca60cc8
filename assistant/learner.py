"""A simulated learner: shows a newcomer the whole job without a microphone, and drives the tests.

It does what it is asked, says it in varying words, and makes one slip where it is told to.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from decimal import Decimal
from enum import StrEnum
from random import Random

from assistant.checklist.model import (
    Checklist,
    ChoiceAsked,
    DoneAsked,
    DoubleCheckAsked,
    NameAsked,
    NoteAsked,
    NumberAsked,
    ObservationAsked,
    QuestionAsked,
    Step,
    WaitAsked,
)
from assistant.dosing.twins import twin
from assistant.errors import UsageError
from assistant.guide.progress import NameRead, NumberRead, Progress, State
from assistant.orders.key import KeyEntry
from assistant.spoken import say_amount, say_digits, say_number, say_unit
from assistant.spoken.meaning import Command


class Slip(StrEnum):
    """The ways in which the simulated learner can err."""

    WRONG_RATE = "wrong-rate"
    TEEN_TY = "teen-ty"
    TENFOLD = "tenfold"
    SWAPPED = "swapped"
    LEFT_CLAMP = "left-clamp"
    SKIP_CRITICAL = "skip-critical"
    WRONG_BAG = "wrong-bag"
    TOO_SLOW = "too-slow"


@dataclass(frozen=True)
class Reply:
    """What the learner says, and how long it takes before saying it, seconds."""

    words: str
    after_s: int = 2


OTHER_BAGS = ("0.9 % sodium chloride", "5 % dextrose in water")
"""Bags that a learner may take by mistake; the first one that was not ordered is taken."""


class SimulatedLearner:
    """Answers what the guide asks.

    Args:
        checklist: the procedure.
        key: the answer key.
        slip: the one mistake to make, or None.
        seed: varies the wording and, where several steps would do, the place of the slip.

    Raises:
        UsageError: this checklist and order leave no place for that slip.
    """

    def __init__(self, checklist: Checklist, key: Mapping[str, KeyEntry], slip: Slip | None, seed: int) -> None:
        self._checklist = checklist
        self._key = key
        self._slip = slip
        self._random = Random(seed)  # noqa: S311 - varies words, guards nothing
        self._slipped = False
        self._digits = False
        self._said: Decimal | str = ""
        self.place = self._place_of(slip) if slip is not None else ""

    def reply(self, progress: Progress) -> Reply:
        """What the learner says to what is asked now."""
        step = self._checklist.steps[progress.cursor]
        match progress.state:
            case State.READING_BACK:
                right = ("yes", "correct", "that is right")
                return Reply(self._random.choice(right) if self._is_meant(progress) else "no")
            case State.ASKING_CONSENT:
                return Reply("yes")
            case State.STOPPING | State.PAUSED:
                return Reply(Command.GO_ON.value)
            case State.GIVING_REASON:
                return Reply("the instructor said so")
        self._digits = progress.digits_only
        if step.id == self.place and not self._slipped:
            self._slipped = True
            return self._err(step)
        return self._right(step)

    def _is_meant(self, progress: Progress) -> bool:
        """A truthful answer to a read-back: is it what was said? A reason always is."""
        match progress.reading_back:
            case NumberRead(value=said) | NameRead(name=said):
                return said == self._said
            case _:
                return True

    def _right(self, step: Step) -> Reply:
        match step.expect:
            case NumberAsked(key=name, unit=unit):
                return Reply(self._number(self._value(name), unit))
            case NameAsked(key=name):
                return Reply(self._name(str(self._key[name].value)))
            case DoubleCheckAsked(of=of):
                return self._right(self._checklist.step(of))
            case QuestionAsked(right=right, good=good, bad=bad):
                return Reply(self._random.choice((good if right == "yes" else bad) or (right,)))
            case ChoiceAsked(right=right, choices=choices):
                return Reply(right or choices[0])
            case DoneAsked(good=good) | WaitAsked(good=good) if good:
                return Reply(self._random.choice(good))
            case NoteAsked():
                return Reply("as it is on the chart")
            case ObservationAsked():
                return Reply("seen")
        return Reply(self._random.choice(("done", "that is done", "finished", "yes")))

    def _name(self, name: str) -> str:
        self._said = name
        return name

    def _number(self, value: Decimal, unit: str) -> str:
        """A number as learners say it; with and without the unit, sometimes digit by digit."""
        self._said = value
        digits = f"{say_digits(value)} {say_unit(unit)}"
        ways = [say_amount(value, unit), say_number(value), digits]
        return digits if self._digits else self._random.choice(ways)

    def _value(self, name: str) -> Decimal:
        value = self._key[name].value
        if not isinstance(value, Decimal):
            raise TypeError(f"{name} is a name, not a number")
        return value

    # The slips.

    def _place_of(self, slip: Slip) -> str:
        """The id of the step at which the slip happens."""
        places = [step.id for step in self._checklist.steps if self._fits(slip, step)]
        if not places:
            raise UsageError(
                f"The slip {slip.value} has no place in {self._checklist.name} with this order.",
                "Choose another slip, checklist or order.",
            )
        return self._random.choice(places)

    def _fits(self, slip: Slip, step: Step) -> bool:
        asked = step.expect
        match slip:
            case Slip.WRONG_RATE | Slip.TENFOLD:
                return isinstance(asked, NumberAsked) and asked.key.endswith((".rate", ".drops_per_minute"))
            case Slip.SWAPPED:
                return (
                    isinstance(asked, NumberAsked)
                    and asked.key.endswith(".rate")
                    and self._value(self._volume_key(asked.key)) != self._value(asked.key)
                )
            case Slip.TEEN_TY:
                return isinstance(asked, NumberAsked) and twin(self._value(asked.key)) is not None
            case Slip.LEFT_CLAMP:
                return (
                    isinstance(asked, QuestionAsked) or (isinstance(asked, ChoiceAsked) and asked.right != "")
                ) and "clamp" in step.if_wrong
            case Slip.SKIP_CRITICAL:
                return self._before_a_gate(step)
            case Slip.WRONG_BAG:
                return isinstance(asked, NameAsked)
            case Slip.TOO_SLOW:
                return step.expires is not None

    def _before_a_gate(self, step: Step) -> bool:
        ids = [other.id for other in self._checklist.steps]
        later = self._checklist.steps[ids.index(step.id) + 1 :]
        # Whoever skips what a later step waits for is led back at once, and nothing was skipped.
        waited_for = any(step.id in other.after for other in later)
        return step.critical and not step.gate and not waited_for and any(other.gate for other in later)

    @staticmethod
    def _volume_key(rate_key: str) -> str:
        return rate_key.removesuffix(".rate") + ".vtbi"

    def _err(self, step: Step) -> Reply:
        asked = step.expect
        match self._slip, asked:
            case Slip.WRONG_RATE, NumberAsked(key=name, unit=unit):
                return Reply(self._number(_another_rate(self._value(name)), unit))
            case Slip.TENFOLD, NumberAsked(key=name, unit=unit):
                return Reply(self._number(_shifted(self._value(name)), unit))
            case Slip.SWAPPED, NumberAsked(key=name, unit=unit):
                return Reply(self._number(self._value(self._volume_key(name)), unit))
            case Slip.TEEN_TY, NumberAsked(key=name, unit=unit):
                return Reply(self._number(twin(self._value(name)) or Decimal(0), unit))
            case Slip.LEFT_CLAMP, QuestionAsked(right=right):
                return Reply("no" if right == "yes" else "yes")
            case Slip.LEFT_CLAMP, ChoiceAsked(right=right, choices=choices):
                return Reply(next(choice for choice in choices if choice != right))
            case Slip.SKIP_CRITICAL, _:
                return Reply(Command.GO_ON.value)
            case Slip.WRONG_BAG, NameAsked(key=name):
                return Reply(self._name(next(bag for bag in OTHER_BAGS if bag != self._key[name].value)))
        wait_s = step.expires.after_s + 1 if step.expires else 0
        return Reply(self._right(step).words, after_s=wait_s)


def _another_rate(value: Decimal) -> Decimal:
    """A rate that does not follow from the order: half as much again, as a whole number."""
    return (value * 3 / 2).to_integral_value() + 1


def _shifted(value: Decimal) -> Decimal:
    """The same digits with the decimal point one place on."""
    return value * 10
