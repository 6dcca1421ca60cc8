"""A learner that does what it is asked, says it in varying words, and sees at the bench what its character sees."""

from collections.abc import Mapping
from dataclasses import dataclass
from decimal import Decimal
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
from assistant.dosing import Amount
from assistant.dosing.twins import twin
from assistant.errors import UsageError
from assistant.guide.progress import NameRead, NumberRead, Progress, State, Status
from assistant.learner.sight import STUBBORN, Character, Sight
from assistant.learner.slips import OTHER_BAGS, Slip, another_rate, number_of, places, shifted, volume_key
from assistant.orders.fault import NOTHING_WRONG, Fault, Truth, can_be_put_right, ends_attempt, told_by
from assistant.orders.key import KeyEntry
from assistant.spoken import say_amount, say_digits, say_number, say_unit
from assistant.spoken.meaning import Command, InstructorWord

_GIVES_UP = 0.5
"""Share of those held again and again who stop without having looked."""
_ERRS = 0.3
"""Share of numbers at which the careless errs at first, after the first one."""
_DONE = ("done", "that is done", "finished", "yes")


@dataclass(frozen=True)
class Reply:
    """What the learner says, and how long it takes before saying it, seconds."""

    words: str
    after_s: int = 2


class SimulatedLearner:
    """Answers what the guide asks, and for the instructor what has to be seen.

    Args:
        checklist: the procedure.
        key: the answer key.
        slip: the one mistake to make, or None.
        seed: varies the wording and, where several steps would do, the place of the slip.
        truth: what is laid out at the bench.
        character: the kind of learner.
        miss_rate: share of faults that the unaware overlooks.
        with_instructor: an instructor is there, and marks what has to be seen.

    Raises:
        UsageError: this checklist and order leave no place for that slip.
    """

    def __init__(
        self,
        checklist: Checklist,
        key: Mapping[str, KeyEntry],
        slip: Slip | None,
        seed: int,
        *,
        truth: Truth = NOTHING_WRONG,
        character: Character = Character.ATTENTIVE,
        miss_rate: float = 1.0,
        with_instructor: bool = False,
    ) -> None:
        self._checklist = checklist
        self._key = key
        self._slip = slip
        self._random = Random(seed)  # noqa: S311 - varies words, guards nothing
        self._sight = Sight(truth, character, self._random, miss_rate)
        self._sight.foresee(checklist.steps)
        self._with_instructor = with_instructor
        self._slipped = False
        self._stops = False
        self._imagined = ""
        self._erred: set[str] = set()
        self._asked: dict[str, int] = {}
        self._digits = False
        self._said: Decimal | str = ""
        self.place = self._place_of(slip) if slip is not None else ""

    @property
    def has_put_right(self) -> frozenset[str]:
        """Keys of the faults that are no longer there, because this learner put them right."""
        return frozenset(self._sight.gone)

    def reply(self, progress: Progress) -> Reply:
        """What the learner says to what is asked now."""
        step = self._checklist.steps[progress.cursor]
        match progress.state:
            case State.READING_BACK:
                right = ("yes", "correct", "that is right")
                return Reply(self._random.choice(right) if self._is_meant(progress) else "no")
            case State.ASKING_CONSENT:
                return Reply("yes")
            case State.STOPPING:
                return Reply("yes" if self._stops else Command.GO_ON.value)
            case State.PAUSED:
                return Reply(Command.GO_ON.value)
            case State.HELD:
                return Reply(Command.HOLD_ON.value, after_s=30)
            case State.GIVING_REASON:
                return Reply("the instructor said so")
            case State.WITH_INSTRUCTOR:
                to_mark = self._to_be_seen(progress)
                return Reply(InstructorWord.ALL_SEEN.value if to_mark else Command.GO_ON.value)
        if self._with_instructor and self._to_be_seen(progress):
            return Reply(Command.INSTRUCTOR.value)
        self._digits = progress.digits_only
        if step.id == self.place and not self._slipped:
            self._slipped = True
            return self._err(step)
        return self._look(step)

    def _to_be_seen(self, progress: Progress) -> bool:
        return any(
            step.seen and progress.steps[step.id].status is Status.CLOSED and not progress.steps[step.id].seen_by
            for step in self._checklist.steps
        )

    def _is_meant(self, progress: Progress) -> bool:
        """A truthful answer to a read-back: is it what was said? A reason always is."""
        match progress.reading_back:
            case NumberRead(value=said) | NameRead(name=said):
                return said == self._said
            case _:
                return True

    # What is seen at the bench.

    def _look(self, step: Step) -> Reply:
        """The answer by what the learner sees there."""
        times = self._asked[step.id] = self._asked.get(step.id, 0) + 1
        if times > STUBBORN and self._sight.overlooks(step):
            # Held again and again, some look at last, some give up.
            if self._random.random() < _GIVES_UP:
                return self._stop()
            self._sight.opens_eyes(step)
        for fault in self._sight.faults(step):
            return self._tell(step, fault)
        if self._sight.imagines(step):
            self._imagined = step.id
            return Reply(self._telling(step, ""))
        if self._imagined == step.id and ends_attempt(step):
            return self._stop()
        return self._right(step)

    def _tell(self, step: Step, fault: Fault) -> Reply:
        """Tell of a fault; then put it right, or stop for it."""
        if fault.key not in self._sight.told:
            self._sight.told.add(fault.key)
            return self._as_laid_out(step, fault)
        if not can_be_put_right(step, fault.fact):
            return self._stop()
        self._sight.puts_right(fault)
        return self._look(step)

    def _stop(self) -> Reply:
        self._stops = True
        return Reply(Command.STOP.value)

    def _as_laid_out(self, step: Step, fault: Fault) -> Reply:
        match step.expect:
            case NameAsked():
                return Reply(self._name(str(fault.state)))
            case NumberAsked(unit=unit) if isinstance(fault.state, Amount):
                exact = fault.state.in_unit(unit)
                return Reply(self._number(Decimal(exact.numerator) / Decimal(exact.denominator), unit))
        return Reply(self._telling(step, str(fault.state)))

    def _telling(self, step: Step, state: str) -> str:
        """The answer of a question or a choice that tells of a fault."""
        match step.expect:
            case QuestionAsked(right=right, good=good, bad=bad):
                return self._random.choice((bad if right == "yes" else good) or ("no" if right == "yes" else "yes",))
            case ChoiceAsked():
                return self._random.choice(told_by(step, state))
        raise TypeError(f"no answer to {step.id} tells of a fault")

    # What is right by the order, where all is well.

    def _right(self, step: Step) -> Reply:
        match step.expect:
            case NumberAsked(key=name, unit=unit):
                value = number_of(self._key, name, unit)
                if self._errs(step):
                    value = shifted(value)
                return Reply(self._number(value, unit))
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
        return Reply(self._random.choice(_DONE))

    def _errs(self, step: Step) -> bool:
        """Whether the careless errs at this number: once each, and at the first one for certain."""
        if self._sight.character is not Character.CARELESS or step.id in self._erred:
            return False
        errs = not self._erred or self._random.random() < _ERRS
        self._erred.add(step.id)
        return errs

    def _name(self, name: str) -> str:
        self._said = name
        return name

    def _number(self, value: Decimal, unit: str) -> str:
        """A number as learners say it; with and without the unit, sometimes digit by digit."""
        self._said = value
        digits = f"{say_digits(value)} {say_unit(unit)}"
        ways = [say_amount(value, unit), say_number(value), digits]
        return digits if self._digits else self._random.choice(ways)

    # The slips.

    def _place_of(self, slip: Slip) -> str:
        """The id of the step at which the slip happens."""
        found = places(slip, self._checklist, self._key)
        if not found:
            raise UsageError(
                f"The slip {slip.value} has no place in {self._checklist.name} with this order.",
                "Choose another slip, checklist or order.",
            )
        return self._random.choice(found)

    def _err(self, step: Step) -> Reply:
        asked = step.expect
        match self._slip, asked:
            case Slip.WRONG_RATE, NumberAsked(key=name, unit=unit):
                return Reply(self._number(another_rate(number_of(self._key, name, unit)), unit))
            case Slip.TENFOLD, NumberAsked(key=name, unit=unit):
                return Reply(self._number(shifted(number_of(self._key, name, unit)), unit))
            case Slip.SWAPPED, NumberAsked(key=name, unit=unit):
                return Reply(self._number(number_of(self._key, volume_key(name)), unit))
            case Slip.TEEN_TY, NumberAsked(key=name, unit=unit):
                return Reply(self._number(twin(number_of(self._key, name)) or Decimal(0), unit))
            case Slip.LEFT_CLAMP, QuestionAsked() | ChoiceAsked():
                return Reply(self._telling(step, ""))
            case Slip.SKIP_CRITICAL, _:
                return Reply(Command.GO_ON.value)
            case Slip.WRONG_BAG, NameAsked(key=name):
                return Reply(self._name(next(bag for bag in OTHER_BAGS if bag != self._key[name].value)))
        wait_s = step.expires.after_s + 1 if step.expires else 0
        return Reply(self._right(step).words, after_s=wait_s)
