"""Words and what is expected: the one way from an utterance to its meaning.

The whole utterance must have a meaning; nothing is spotted inside other words, and nothing that only comes
near is accepted. Typed words come the same way.
"""

from collections.abc import Iterable
from decimal import Decimal

from assistant.errors import QuantityError
from assistant.spoken.aloud import Aloud
from assistant.spoken.expect import (
    AnyExpected,
    ChoiceExpected,
    ConfirmExpected,
    Expect,
    NameExpected,
    NumberExpected,
    TextExpected,
)
from assistant.spoken.grammar import words_of
from assistant.spoken.listing import Listing
from assistant.spoken.meaning import Ambiguous, Answer, Kind, Meaning, NoMatch, Reason
from assistant.spoken.names import NameWords
from assistant.spoken.quantities import Quantities, SaidAmount
from assistant.spoken.tables import Tables
from assistant.spoken.tokens import LONGEST, UNKNOWN, Tokeniser, clean_text, printable
from assistant.spoken.units import UnitWords

_MOST_TOKENS = 60
"""Words of an utterance that can still be an answer; free text may be longer."""


class Interpreter:
    """What words mean in a language.

    Args:
        tables: the language.
        tokeniser, units, quantities, names, aloud, listing: its parts.
    """

    def __init__(
        self,
        tables: Tables,
        tokeniser: Tokeniser,
        units: UnitWords,
        quantities: Quantities,
        names: NameWords,
        aloud: Aloud,
        listing: Listing,
    ) -> None:
        self._tokens_of = tokeniser.tokens_of
        self._canonical_name = units.canonical
        self._dimension_of = units.dimension
        self._readings = quantities.readings
        self._compounds = quantities.compounds
        self._several = quantities.several
        self._find_name = names.find
        self._speech = aloud.speech
        phrases = tables.phrases
        self._commands = {phrase: command for command, known in phrases.commands.items() for phrase in known}
        self._confirmations = {
            tuple(phrase.split()): label
            for label, known in (("yes", phrases.yes), ("no", phrases.no), ("done", phrases.done))
            for phrase in known
        }
        self._longest_confirmation = max(map(len, self._confirmations))
        self._hesitations = tables.writing.hesitations
        self._courtesies = tuple(tuple(words.split()) for words in tables.writing.courtesies)
        self._carriers = tuple(tuple(words.split()) for words, kind in phrases.carriers.items() if kind is None)
        self._number_words = frozenset(words_of(tables.numbers.number)) - tables.numbers.small_words
        self._known_words = frozenset(words_of(quantities.slot)) | phrases.between_numbers

    def interpret(self, words: str, expect: Expect, *, heard: bool = False) -> Meaning:
        """What the words mean where `expect` is expected.

        Args:
            words: as typed, or as a recogniser wrote them.
            expect: the frame.
            heard: the words come from a recogniser: a number in figures ("125") then does not show how it was
                said, so it does not count as said digit by digit. Typed figures do.

        Returns:
            `Answer`, `Ambiguous` or `NoMatch` with the reason.
        """
        if len(words) > LONGEST:
            return NoMatch(Reason.TOO_LONG)
        tokens = self._tokens_of(words)
        bare = self._without_courtesies(tuple(t for t in tokens if t not in self._hesitations))
        if not bare:
            return NoMatch(Reason.EMPTY)
        command = self._commands.get(" ".join(bare)) or self._commands.get(" ".join(tokens))
        if command is not None:
            return Answer(Kind.COMMAND, command)
        if isinstance(expect, TextExpected):
            if not printable(words):
                return NoMatch(Reason.UNKNOWN_WORDS)
            return Answer(Kind.TEXT, clean_text(words))
        if len(bare) > _MOST_TOKENS:
            return NoMatch(Reason.TOO_LONG)
        if words.rstrip().endswith("?") and not isinstance(expect, NumberExpected | AnyExpected):
            # "Done?" asks. A number is read back; everything else would be taken at once.
            return NoMatch(Reason.QUESTION)
        return self._answer(tokens, bare, expect, heard)

    def _answer(self, tokens: tuple[str, ...], bare: tuple[str, ...], expect: Expect, heard: bool) -> Meaning:
        label = self._confirmation(bare)
        match expect:
            case ConfirmExpected(done_is_yes=done_is_yes):
                if label in ("yes", "no"):
                    return Answer(Kind.CONFIRM, label)
                if label == "done" and done_is_yes:
                    return Answer(Kind.DONE, "done")
                if label is not None or self._readings(bare):
                    return NoMatch(Reason.NOT_AN_ANSWER_HERE)
                return NoMatch(Reason.UNKNOWN_WORDS)
            case NumberExpected():
                if label is not None:
                    return NoMatch(Reason.NOT_AN_ANSWER_HERE)
                return self._number(tokens, bare, expect, heard)
            case NameExpected(names=expected):
                name = self._find_name(bare, expected) or self._find_name(self._after_carrier(bare), expected)
                if name is not None:
                    return Answer(Kind.NAME, name)
                if label is not None or self._readings(bare):
                    return NoMatch(Reason.NOT_AN_ANSWER_HERE)
                return NoMatch(Reason.UNKNOWN_WORDS)
            case ChoiceExpected():
                choice = self._choice(bare, expect) or self._choice(self._after_carrier(bare), expect)
                if choice is not None:
                    return Answer(Kind.CHOICE, choice)
                if label is not None or self._readings(bare):
                    return NoMatch(Reason.NOT_AN_ANSWER_HERE)
                return NoMatch(Reason.UNKNOWN_WORDS)
            case AnyExpected():
                if label in ("yes", "no"):
                    return Answer(Kind.CONFIRM, label)
                if label == "done":
                    return Answer(Kind.DONE, "done")
                if label is not None:
                    return NoMatch(Reason.NOT_AN_ANSWER_HERE)
                return self._number(tokens, bare, None, heard)
            case TextExpected():  # pragma: no cover - answered before
                raise AssertionError("free words are answered before this")

    def _choice(self, bare: tuple[str, ...], expect: ChoiceExpected) -> str | None:
        """The choice that these words are, written or spoken; None for none."""
        for saying, choice in expect.sayings():
            if bare and bare in (self._tokens_of(saying), self._tokens_of(self._speech(saying))):
                return choice
        return None

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

    def _confirmation(self, bare: tuple[str, ...]) -> str | None:
        """What the words confirm: "yes", "no", "done", or "mixed" where they contradict themselves."""
        # Every way to cut the words into phrases, as the kinds of phrase that it takes.
        reached: dict[int, set[frozenset[str]]] = {0: {frozenset()}}
        for at in range(len(bare)):
            for end in range(at + 1, min(at + self._longest_confirmation, len(bare)) + 1):
                label = self._confirmations.get(bare[at:end])
                if label is not None and at in reached:
                    reached.setdefault(end, set()).update(kinds | {label} for kinds in reached[at])
        ways = reached.get(len(bare), set())
        if not ways:
            return None
        if ways == {frozenset({"done"})}:
            return "done"
        if all(kinds <= {"yes", "done"} for kinds in ways):
            return "yes"
        # "it is not right" is also "it is not" and "right": a no that can be read as one is one.
        pure_no = frozenset({"no"}) in ways and not any(kinds <= {"yes", "done"} for kinds in ways)
        return "no" if pure_no else "mixed"

    def _after_carrier(self, bare: tuple[str, ...]) -> tuple[str, ...]:
        """The words after "it is" or "the label says"; none where nothing of the kind stands before them."""
        for words in self._carriers:
            if bare[: len(words)] == words:
                return bare[len(words) :]
        return ()

    def _without_courtesies(self, tokens: tuple[str, ...]) -> tuple[str, ...]:
        """The words without "please" and its like at either end; all of them where nothing else is left."""
        bare = tokens
        changed = True
        while changed and bare:
            changed = False
            for words in self._courtesies:
                if bare[: len(words)] == words:
                    bare, changed = bare[len(words) :], True
                elif bare[-len(words) :] == words:
                    bare, changed = bare[: -len(words)], True
        return bare


def _by_digits(amount: SaidAmount, heard: bool) -> bool:
    return amount.said.digits or (amount.said.figures and not heard)


def _distinct(values: Iterable[Decimal]) -> tuple[Decimal, ...]:
    return tuple(dict.fromkeys(values))
