"""Amounts in words: a number, its unit, what people say around them, slips that they correct; and what they answer."""

from collections.abc import Iterable
from dataclasses import dataclass, replace
from decimal import Decimal

from assistant.errors import QuantityError
from assistant.spoken.expect import NumberExpected
from assistant.spoken.grammar import Many, Opt, Parse, Rule, Words, alt, seq, words_of
from assistant.spoken.meaning import Ambiguous, Answer, Kind, Meaning, NoMatch, Reason
from assistant.spoken.said import Said
from assistant.spoken.tables import Tables, UnitRules
from assistant.spoken.tokens import UNKNOWN, Sentence
from assistant.spoken.units import UnitWords

_COUNTED = "gtt"
"""What is counted, so that its number alone answers how many there are in a minute: "twenty one drops"."""


@dataclass(frozen=True)
class SaidAmount:
    """One reading of an amount.

    Attributes:
        said: the number.
        unit: canonical unit, or None where none was said; "/h" where only "per hour" was said.
        carrier: the kind of quantity that the words before it name ("the rate is"), or None.
        corrected: it comes after a slip of the tongue.
    """

    said: Said
    unit: str | None = None
    carrier: str | None = None
    corrected: bool = False


class Quantities:
    """The amounts of a language.

    Args:
        tables: the language.
        units: the grammar of its units.

    Attributes:
        slot: the grammar of a whole utterance where a number is expected; its meanings are `SaidAmount`.
    """

    def __init__(self, tables: Tables, units: UnitRules) -> None:
        phrases = tables.phrases
        number = tables.numbers.number
        self._amount = alt(
            seq(number, build=lambda said: SaidAmount(said)),
            seq(number, units.unit, build=lambda said, unit: SaidAmount(said, unit)),
            seq(number, units.denominator, build=_by_denominator),
            *tables.units.amounts(units),
        )
        carrier = Opt(Words(dict(phrases.carriers)))
        correction = seq(Words(dict.fromkeys(phrases.corrections)), self._amount, build=lambda _, amount: amount)
        self.slot: Rule = seq(carrier, self._amount, Many(correction, 0, 3), build=_last)
        another = seq(Words(dict.fromkeys(phrases.between_amounts)), self._amount, build=lambda _, amount: amount)
        self._several = seq(carrier, self._amount, Many(another, 1, 3), build=lambda _, first, others: (first, *others))
        self._between = Words(dict.fromkeys((*phrases.between_amounts, *phrases.between_numbers)))

    def readings(self, tokens: tuple[str, ...]) -> tuple[SaidAmount, ...]:
        """Every amount that all these words together can mean."""
        return tuple(value for value in Parse(tokens).whole(self.slot) if isinstance(value, SaidAmount))

    def compounds(self, tokens: tuple[str, ...]) -> tuple[tuple[SaidAmount, ...], ...]:
        """Every way to read the words as amounts, each with its unit: "two grams in one hundred millilitres"."""
        return tuple(
            amounts
            for amounts in Parse(tokens).whole(self._several)
            if isinstance(amounts, tuple) and all(a.unit is not None and not a.unit.startswith("/") for a in amounts)
        )

    def several(self, tokens: tuple[str, ...]) -> bool:
        """Whether the words are amounts one after the other, two or more."""
        parse = Parse(tokens)
        # The most amounts with which each place can be reached.
        most: dict[int, int] = {0: 0}
        for at in range(len(tokens)):
            if at not in most:
                continue
            starts = {at} | ({end for end, _ in parse.at(self._between, at)} if most[at] else set())
            for start in starts:
                for end, _ in parse.at(self._amount, start):
                    most[end] = max(most.get(end, 0), most[at] + 1)
        return most.get(len(tokens), 0) > 1


def _by_denominator(said: Said, unit: str) -> SaidAmount | None:
    """A number with "per hour" alone. "half an hour" is no half of something per hour."""
    return SaidAmount(said, unit) if said.value >= 1 else None


def _last(carrier: str | None, first: SaidAmount, corrections: tuple[SaidAmount, ...]) -> SaidAmount:
    """The last amount counts; a unit said once holds for all."""
    if not corrections:
        return replace(first, carrier=carrier)
    units = [amount.unit for amount in (*corrections[::-1], first) if amount.unit is not None]
    return replace(corrections[-1], unit=units[0] if units else None, carrier=carrier, corrected=True)


class NumberAnswers:
    """What words mean where a number is asked for.

    Args:
        tables: the language.
        units, quantities: its parts.
    """

    def __init__(self, tables: Tables, units: UnitWords, quantities: Quantities) -> None:
        self._canonical_name = units.canonical
        self._dimension_of = units.dimension
        self._readings = quantities.readings
        self._compounds = quantities.compounds
        self._several = quantities.several
        self._hesitations = tables.writing.hesitations
        self._number_words = frozenset(words_of(tables.numbers.number)) - tables.numbers.small_words
        self._known_words = frozenset(words_of(quantities.slot)) | tables.phrases.between_numbers
        self._sound_alikes = tables.numbers.written_only
        self._sentence = Sentence(tables.phrases.before_numbers, tables.phrases.behind_numbers)

    def number(
        self, tokens: tuple[str, ...], bare: tuple[str, ...], expect: NumberExpected | None, heard: bool
    ) -> Meaning:
        """The number that the words give.

        Args:
            tokens: all words, for the hesitations among them.
            bare: the words without hesitations and courtesies.
            expect: what is asked for; None where nothing is.
            heard: see `Interpreter.interpret`.
        """
        found = self._number(tokens, bare, expect, heard)
        if expect is None or not isinstance(found, NoMatch):
            return found
        for inside in self._sentence.inside(bare):
            within = self._number(tokens, inside, expect, heard)
            if isinstance(within, Answer):
                # "Set to fifty" may be heard for "two fifty": what only sounds like part of the number is asked for.
                before = bare[: len(bare) - len(inside)][-1:]
                return replace(within, corrected=within.corrected or (heard and before[0] in self._sound_alikes))
            if not isinstance(within, NoMatch):
                return within
        return found

    def _number(
        self, tokens: tuple[str, ...], bare: tuple[str, ...], expect: NumberExpected | None, heard: bool
    ) -> Meaning:
        found = self._readings(bare)
        if not found:
            part = None if expect is None else self._part_of_compound(bare, expect)
            return part or NoMatch(self._why_no_number(bare))
        # A reading with another unit than the rest cannot be chosen between: the words are then no one amount.
        units = {amount.unit for amount in found}
        if len(units) > 1:
            return NoMatch(Reason.TWO_NUMBERS)
        unit = units.pop()
        if expect is not None and unit is not None and unit.startswith("/"):
            unit = self._completed(unit, expect.unit)
        if expect is not None and unit is not None:
            unit = self._of_counted(unit, expect.unit)
        if expect is None:
            if unit is None or unit.startswith("/"):
                # Without a step that asks for it, a number has no unit and so no meaning.
                return NoMatch(Reason.NOT_AN_ANSWER_HERE)
        else:
            if unit is not None and not self._same_dimension(unit, expect.unit):
                return NoMatch(Reason.WRONG_UNIT)
            if any(a.carrier is not None and not self._carries(a.carrier, expect.unit) for a in found):
                return NoMatch(Reason.WRONG_UNIT)
            if unit is None or self._canonical(expect.unit) == unit:
                found = tuple(
                    amount
                    for amount in found
                    if not (amount.said.foreign and not expect.lowest <= amount.said.value <= expect.highest)
                )
        answer_unit = self._unit_of(unit, expect)
        values = _distinct(amount.said.value for amount in found)
        digits = all(any(_by_digits(a, heard) for a in found if a.said.value == value) for value in values)
        if expect is not None and expect.digits_only and not digits:
            return NoMatch(Reason.DIGITS_WANTED)
        if expect is not None and not self._in_range(values, unit, expect):
            return NoMatch(Reason.OUT_OF_RANGE)
        if len(values) > 1:
            return Ambiguous(values, answer_unit)
        return Answer(
            Kind.NUMBER,
            values[0],
            answer_unit,
            digit_by_digit=digits,
            unit_said=unit is not None,
            corrected=self._hesitated(tokens) or all(a.corrected or a.said.doubtful for a in found),
        )

    def _part_of_compound(self, bare: tuple[str, ...], expect: NumberExpected) -> Answer | None:
        """The one amount of several that is asked for; it is marked as corrected, so that its digits are asked for."""
        fitting = {
            (amount.said.value, amount.unit)
            for amounts in self._compounds(bare)
            if len({self._dimension_of(a.unit) for a in amounts if a.unit}) == len(amounts)
            for amount in amounts
            if amount.unit and self._same_dimension(amount.unit, expect.unit)
        }
        if len(fitting) != 1 or expect.digits_only:
            return None
        value, unit = fitting.pop()
        if not self._in_range((value,), unit, expect):
            return None
        return Answer(Kind.NUMBER, value, self._unit_of(unit, expect), unit_said=True, corrected=True)

    def _in_range(self, values: tuple[Decimal, ...], unit: str | None, expect: NumberExpected) -> bool:
        """Whether one of the readings can be said here. In another unit it is not for words to tell."""
        other_unit = unit is not None and unit != self._canonical(expect.unit)
        return other_unit or any(expect.lowest <= value <= expect.highest for value in values)

    def _unit_of(self, unit: str | None, expect: NumberExpected | None) -> str:
        if expect is None:
            return unit or ""
        if unit is None or unit == self._canonical(expect.unit):
            return expect.unit
        return unit

    def _canonical(self, unit: str) -> str:
        """The canonical name; a unit that cannot be said stays as it is and equals only itself."""
        try:
            return self._canonical_name(unit)
        except QuantityError:
            return unit

    def _completed(self, denominator: str, expected: str) -> str:
        """What "per hour" means where millilitres per hour are expected; as it is where it does not fit."""
        above, _, below = self._canonical(expected).partition("/")
        return f"{above}{denominator}" if f"/{below}" == denominator else denominator

    def _of_counted(self, unit: str, expected: str) -> str:
        """What "twenty one drops" means where drops per minute are expected."""
        whole = self._canonical(expected)
        return whole if unit == _COUNTED and whole.startswith(f"{_COUNTED}/") else unit

    def _same_dimension(self, said: str, expected: str) -> bool:
        try:
            return self._dimension_of(said) == self._dimension_of(expected)
        except QuantityError:
            return said == expected

    def _carries(self, kind: str, unit: str) -> bool:
        """Whether "the rate is" goes with the unit that is asked for."""
        try:
            above, *below = self._dimension_of(unit)
        except QuantityError:
            return True
        if kind == "rate":
            return "time" in below
        if kind == "mass":
            return above in ("mass", "activity", "amount", "equivalents") and "time" not in below
        return above == kind and not below

    def _hesitated(self, tokens: tuple[str, ...]) -> bool:
        """Whether a sound of thinking stands inside the number: "one, um, fifteen" may be a new start."""
        numbers = [i for i, token in enumerate(tokens) if token in self._number_words or token[0].isdigit()]
        return any(token in self._hesitations for token in tokens[numbers[0] : numbers[-1]]) if numbers else False

    def _why_no_number(self, bare: tuple[str, ...]) -> Reason:
        if UNKNOWN in bare:
            return Reason.UNKNOWN_WORDS
        if self._several(bare):
            return Reason.TWO_NUMBERS
        if all(token in self._known_words or token[0].isdigit() or token[0] == "." for token in bare):
            return Reason.NOT_A_NUMBER
        return Reason.UNKNOWN_WORDS


def _by_digits(amount: SaidAmount, heard: bool) -> bool:
    return amount.said.digits or (amount.said.figures and not heard)


def _distinct(values: Iterable[Decimal]) -> tuple[Decimal, ...]:
    return tuple(dict.fromkeys(values))
