"""Amounts in words: a number, its unit, what people say around them, and slips that they correct."""

from dataclasses import dataclass, replace

from assistant.spoken.grammar import Many, Opt, Parse, Rule, Words, alt, seq
from assistant.spoken.said import Said
from assistant.spoken.tables import Tables, UnitRules


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
