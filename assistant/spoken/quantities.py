"""Amounts in words: a number, its unit, what people say around them, and slips that they correct."""

from dataclasses import dataclass, replace
from decimal import Decimal

from assistant.dosing.twins import twin
from assistant.spoken.english.numbers import NUMBER, PART, WHOLE_NUMBER, Said, plain
from assistant.spoken.english.phrases import BETWEEN_AMOUNTS, BETWEEN_NUMBERS, CARRIERS, CORRECTIONS
from assistant.spoken.grammar import Alt, Many, Opt, Parse, Rule, Word, Words, alt, seq
from assistant.spoken.units import BARE_DENOMINATOR, SIMPLE_UNIT, UNIT


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


_ARTICLE = Words({"a": None, "an": None})
_OF = Opt(Word("of"))


def _by_denominator(said: Said, unit: str) -> SaidAmount | None:
    """A number with "per hour" alone. "half an hour" is no half of something per hour."""
    return SaidAmount(said, unit) if said.value >= 1 else None


def _together(whole: Said, unit: str, _and: None, part: Said, _unit: None) -> SaidAmount | None:
    """Hours and minutes, or minutes and seconds, have no unit of their own: they are said in the smaller one."""
    if (
        whole.value != whole.value.to_integral_value()
        or part.value > 59
        or part.value != part.value.to_integral_value()
    ):
        return None
    # 75 minutes sound like nothing else, but "an hour fifteen" sounds like "an hour fifty".
    sounds_alike = twin(part.value) is not None and not part.figures
    return SaidAmount(
        Said(60 * whole.value + part.value, doubtful=sounds_alike or whole.doubtful or part.doubtful), unit
    )


_HOURS = Words(dict.fromkeys(("hour", "hours", "h", "hr", "hrs"), "min"))
_MINUTES = Words(dict.fromkeys(("minute", "minutes", "min", "mins"), "s"))
_SECONDS = Words(dict.fromkeys(("second", "seconds", "sec", "secs", "s")))
_ONE_UNIT = seq(_ARTICLE, build=lambda _: Said(Decimal(1)))

AMOUNT: Alt = alt(
    seq(NUMBER, build=lambda said: SaidAmount(said)),
    seq(NUMBER, UNIT, build=lambda said, unit: SaidAmount(said, unit)),
    seq(NUMBER, BARE_DENOMINATOR, build=_by_denominator),
    seq(_ARTICLE, UNIT, build=lambda _, unit: SaidAmount(Said(Decimal(1)), unit)),
    # "half a litre", "a quarter of an hour"
    seq(PART, _OF, _ARTICLE, UNIT, build=lambda part, _of, _a, unit: SaidAmount(Said(part), unit)),
    # "an hour and a half", "two litres and a half"
    seq(
        alt(WHOLE_NUMBER, _ONE_UNIT),
        SIMPLE_UNIT,
        Word("and"),
        PART,
        build=lambda whole, unit, _, part: SaidAmount(Said(plain(whole.value + part)), unit),
    ),
    # "an hour and fifteen", "two hours thirty minutes", "one minute and ten seconds"
    seq(alt(WHOLE_NUMBER, _ONE_UNIT), _HOURS, Opt(Word("and")), WHOLE_NUMBER, Opt(_MINUTES), build=_together),
    seq(alt(WHOLE_NUMBER, _ONE_UNIT), _MINUTES, Opt(Word("and")), WHOLE_NUMBER, _SECONDS, build=_together),
)
"""One amount; its meanings are `SaidAmount`."""

_CARRIER = Words(dict(CARRIERS))
_CORRECTION = seq(Words(dict.fromkeys(CORRECTIONS)), AMOUNT, build=lambda _, amount: amount)


def _last(carrier: str | None, first: SaidAmount, corrections: tuple[SaidAmount, ...]) -> SaidAmount:
    """The last amount counts; a unit said once holds for all."""
    if not corrections:
        return replace(first, carrier=carrier)
    units = [amount.unit for amount in (*corrections[::-1], first) if amount.unit is not None]
    return replace(corrections[-1], unit=units[0] if units else None, carrier=carrier, corrected=True)


SLOT: Rule = seq(Opt(_CARRIER), AMOUNT, Many(_CORRECTION, 0, 3), build=_last)
"""A whole utterance where a number is expected; its meanings are `SaidAmount`."""


_BETWEEN = Words(dict.fromkeys((*BETWEEN_AMOUNTS, *BETWEEN_NUMBERS)))
_AND_ANOTHER = seq(Words(dict.fromkeys(BETWEEN_AMOUNTS)), AMOUNT, build=lambda _, amount: amount)
_COMPOUND: Rule = seq(Opt(_CARRIER), AMOUNT, Many(_AND_ANOTHER, 1, 3), build=lambda _, first, others: (first, *others))


def compounds(tokens: tuple[str, ...]) -> tuple[tuple[SaidAmount, ...], ...]:
    """Every way to read the words as several amounts, each with its unit: "two grams in one hundred millilitres"."""
    found = Parse(tokens).whole(_COMPOUND)
    return tuple(
        amounts
        for amounts in found
        if isinstance(amounts, tuple) and all(a.unit is not None and not a.unit.startswith("/") for a in amounts)
    )


def readings(tokens: tuple[str, ...]) -> tuple[SaidAmount, ...]:
    """Every amount that all these words together can mean."""
    return tuple(value for value in Parse(tokens).whole(SLOT) if isinstance(value, SaidAmount))


def several(tokens: tuple[str, ...]) -> bool:
    """Whether the words are amounts one after the other, two or more."""
    parse = Parse(tokens)
    # The most amounts with which each place can be reached.
    most: dict[int, int] = {0: 0}
    for at in range(len(tokens)):
        if at not in most:
            continue
        starts = {at} | ({end for end, _ in parse.at(_BETWEEN, at)} if most[at] else set())
        for start in starts:
            for end, _ in parse.at(AMOUNT, start):
                most[end] = max(most.get(end, 0), most[at] + 1)
    return most.get(len(tokens), 0) > 1
