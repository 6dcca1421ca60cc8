"""What an attempt is made from: procedure, order, answer key, language; and what its answers are compared with."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from decimal import Decimal
from fractions import Fraction

from assistant import dosing
from assistant.checklist.model import Checklist, ChoiceAsked, Condition, NameAsked, NumberAsked, QuestionAsked, Step
from assistant.dosing.units import same_dimension
from assistant.errors import OrderError, QuantityError
from assistant.orders.fault import NOTHING_WRONG, Fault, Truth
from assistant.orders.key import KeyEntry
from assistant.orders.solve import can_be_said
from assistant.spoken.expect import NameExpected, NumberExpected
from assistant.spoken.language import Language
from assistant.spoken.meaning import Answer

FEWEST_NAMES = 2
"""Names among which a label is heard; with one alone, the right answer would be favoured."""
_DECIMALS = 6
"""Decimals of a difference between units whose quotient does not end, far below any clinical meaning."""


@dataclass(frozen=True)
class Papers:
    """The papers of one attempt; they never change while it goes on.

    Attributes:
        checklist: the authored procedure.
        order_text: the order in sentences, as shown.
        key: the answer key; it must hold every name that the checklist asks for.
        language: all that is said and understood.
        truth: what is not as it should be at the bench; nothing, unless it is told.
        order_in_short: what is spoken of the order as the attempt begins; the whole of it where empty.
        values: the answer key as conditions compare it: names as text, numbers as amounts.
        never: why steps do not apply with this order, whatever is answered; by the step's id.
        by_answers: the conditions of a step that depend on earlier answers; by the step's id.
        numbers: the number that a step asks for, of the learner or of a second person; by the step's id.
        faults: the faults that a step looks at, where there are any; by the step's id.

    Raises:
        OrderError: the order does not give what the checklist asks for, in a way that can be said.
    """

    checklist: Checklist
    order_text: str
    key: Mapping[str, KeyEntry]
    language: Language
    truth: Truth = NOTHING_WRONG
    order_in_short: str = ""
    values: Mapping[str, str | dosing.Amount] = field(init=False, repr=False, compare=False)
    never: Mapping[str, str] = field(init=False, repr=False, compare=False)
    by_answers: Mapping[str, tuple[Condition, ...]] = field(init=False, repr=False, compare=False)
    numbers: Mapping[str, NumberAsked] = field(init=False, repr=False, compare=False)
    faults: Mapping[str, tuple[Fault, ...]] = field(init=False, repr=False, compare=False)

    def __post_init__(self) -> None:
        values = {
            name: entry.value if isinstance(entry.value, str) else dosing.Amount(entry.value, entry.unit or "")
            for name, entry in self.key.items()
        }
        object.__setattr__(self, "values", values)
        # Order and lab never change, so what they alone decide is decided once.
        never: dict[str, str] = {}
        for step in self.checklist.steps:
            fixed = (c for c in step.applies if not c.step)
            unmet = next((c for c in fixed if not c.met(values, {}, self.checklist.lab_has)), None)
            if unmet is not None:
                never[step.id] = unmet.unmet_reason(self.language.sentences)
        object.__setattr__(self, "never", never)
        by_answers = {
            step.id: tuple(c for c in step.applies if c.step) for step in self.checklist.steps if step.applies
        }
        object.__setattr__(self, "by_answers", by_answers)
        asked = ((step.id, self.checklist.number_asked(step)) for step in self.checklist.steps)
        object.__setattr__(self, "numbers", {name: number for name, number in asked if number is not None})
        faults = {step.id: self.truth.seen_at(step) for step in self.checklist.steps} if self.truth.faults else {}
        object.__setattr__(self, "faults", {name: found for name, found in faults.items() if found})
        for step in self.checklist.steps:
            if step.id not in never:
                _check_answerable(self, step)

    def amount(self, key: str) -> dosing.Amount:
        """The number with this name in the answer key.

        Raises:
            TypeError: it is a name.
        """
        value = self.values[key]
        if isinstance(value, str):
            raise TypeError(f"{key} is a name, not a number")
        return value

    def working(self, key: str) -> tuple[str, ...]:
        """The working of a value; none where the order states it, or where the key does not hold it."""
        return self.key[key].working if key in self.key else ()

    def compare(self, asked: NumberAsked, stated: dosing.Amount) -> dosing.Verdict:
        """The cross-check of a stated number: with the key (and its allowance), then with the range."""
        verdict: dosing.Verdict = dosing.Agrees()
        if asked.key:
            others = {n: a for n, a in self.values.items() if n != asked.key and isinstance(a, dosing.Amount)}
            verdict = dosing.compare(stated, self.amount(asked.key), others, self.key[asked.key].exact)
            if isinstance(verdict, dosing.Disagrees) and self._is_within(asked, stated):
                verdict = dosing.Agrees()
        if isinstance(verdict, dosing.Agrees) and not _is_in_range(asked, stated):
            return dosing.Disagrees(stated, None, dosing.Match(dosing.Slip.OTHER))
        return verdict

    def _is_within(self, asked: NumberAsked, stated: dosing.Amount) -> bool:
        apart = stated.in_unit(asked.unit) - self.amount(asked.key).in_unit(asked.unit)
        return abs(apart) <= Fraction(asked.within)

    def expected(self, step: Step) -> str:
        """What the answer is compared with, as shown; empty where it is compared with nothing, or never asked."""
        sentences = self.language.sentences
        match step.expect:
            case QuestionAsked(right=right) | ChoiceAsked(right=right):
                return right
            case NameAsked(key=key):
                return str(self.key[key].value) if key in self.key else ""
        asked = self.numbers.get(step.id)
        if asked is None or (asked.key and asked.key not in self.key):
            return ""
        if asked.key:
            shown = dosing.show(self.amount(asked.key))
            return (
                sentences.within(shown, dosing.show(dosing.Amount(asked.within, asked.unit))) if asked.within else shown
            )
        lowest, highest = (
            "" if bound is None else dosing.show(dosing.Amount(bound, asked.unit))
            for bound in (asked.lowest, asked.highest)
        )
        return sentences.between(lowest, highest)

    def difference(self, step: Step, stated: dosing.Amount | None) -> str:
        """The stated number less the expected one, with its sign, in the unit of the key; empty where there is none."""
        asked = self.numbers.get(step.id)
        if asked is None or stated is None or not asked.key:
            return ""
        right = self.amount(asked.key)
        if not same_dimension(stated.unit, right.unit):
            return ""
        apart = stated.in_unit(right.unit) - right.ratio
        value = (Decimal(apart.numerator) / Decimal(apart.denominator)).quantize(Decimal(1).scaleb(-_DECIMALS))
        shown = dosing.show(dosing.Amount(abs(value), right.unit))
        return f"-{shown}" if value < 0 else f"+{shown}" if value else shown


def _is_in_range(asked: NumberAsked, stated: dosing.Amount) -> bool:
    if asked.lowest is None and asked.highest is None:
        return True
    if not same_dimension(stated.unit, asked.unit):
        return False
    value = stated.in_unit(asked.unit)
    return (asked.lowest is None or value >= Fraction(asked.lowest)) and (
        asked.highest is None or value <= Fraction(asked.highest)
    )


def _check_answerable(papers: Papers, step: Step) -> None:
    """What no learner could answer is refused before the attempt.

    Raises:
        OrderError: the order does not give what the step asks for, or not in a way that can be said.
    """
    asked = step.expect
    if not isinstance(asked, NumberAsked | NameAsked) or not asked.key:
        return
    entry = papers.key.get(asked.key)
    if entry is None:
        raise OrderError(
            f"The checklist {papers.checklist.name} needs {asked.key}, but the order does not include it.",
            "Choose an order with that line, or another checklist.",
        )
    if isinstance(asked, NumberAsked):
        _check_sayable(entry, asked.unit)
    elif len(entry.choices) < FEWEST_NAMES:
        raise OrderError(
            f"The order names {entry.name} without another name to tell it from.",
            "Choose another order for this checklist.",
        )
    elif isinstance(entry.value, str):
        _check_understood(papers.language, entry, entry.value)


def _check_understood(language: Language, entry: KeyEntry, name: str) -> None:
    """A name that is understood as another one could never be answered."""
    meaning = language.interpret(name, NameExpected(entry.choices))
    if not isinstance(meaning, Answer) or meaning.value != name:
        raise OrderError(
            f"{entry.name} is {name}, which is not understood as itself.",
            "Write it in the order as the library's names.toml has it: checkoff lint tells how.",
        )


def _check_sayable(entry: KeyEntry, unit: str) -> None:
    """A number that cannot be said in the unit that is asked for could never be answered."""
    remedy = "Choose another order for this checklist."
    if not isinstance(entry.value, Decimal):
        raise OrderError(f"The checklist asks for a number, but {entry.name} is a name in this order.", remedy)
    try:
        value = dosing.Amount(entry.value, entry.unit or "").in_unit(unit)
    except QuantityError as cause:
        raise OrderError(f"The order gives {entry.name} in {entry.unit}, not in {unit}.", remedy) from cause
    if not can_be_said(dosing.EXACT.apply(value)):
        raise OrderError(f"{entry.name} has too many digits in {unit} to be said.", remedy)
    if value > NumberExpected.highest:
        raise OrderError(
            f"{entry.name} is more than {NumberExpected.highest} {unit}, the most that can be said.", remedy
        )
