"""Amounts that English says in another way than as a number with its unit: "half a litre", "an hour and fifteen"."""

from decimal import Decimal

from assistant.dosing.amount import normal
from assistant.dosing.twins import twin
from assistant.spoken.english.numbers import AND, PART, WHOLE_NUMBER
from assistant.spoken.grammar import Opt, Rule, Word, Words, alt, seq
from assistant.spoken.quantities import SaidAmount
from assistant.spoken.said import Said
from assistant.spoken.tables import UnitRules

_ARTICLE = Words({"a": None, "an": None})
_HOURS = Words(dict.fromkeys(("hour", "hours", "h", "hr", "hrs"), "min"))
_MINUTES = Words(dict.fromkeys(("minute", "minutes", "min", "mins"), "s"))
_SECONDS = Words(dict.fromkeys(("second", "seconds", "sec", "secs", "s")))
_WHOLE = alt(WHOLE_NUMBER, seq(_ARTICLE, build=lambda _: Said(Decimal(1))))


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


def amounts(rules: UnitRules) -> tuple[Rule, ...]:
    """The grammar of these amounts."""
    return (
        seq(_ARTICLE, rules.unit, build=lambda _, unit: SaidAmount(Said(Decimal(1)), unit)),
        # "half a litre", "a quarter of an hour"
        seq(
            PART,
            Opt(Word("of")),
            _ARTICLE,
            rules.unit,
            build=lambda part, _of, _a, unit: SaidAmount(Said(part), unit),
        ),
        # "an hour and a half", "two litres and a half"
        seq(
            _WHOLE,
            rules.simple,
            Word(AND),
            PART,
            build=lambda whole, unit, _, part: SaidAmount(Said(normal(whole.value + part)), unit),
        ),
        # "an hour and fifteen", "two hours thirty minutes", "one minute and ten seconds"
        seq(_WHOLE, _HOURS, Opt(Word(AND)), WHOLE_NUMBER, Opt(_MINUTES), build=_together),
        seq(_WHOLE, _MINUTES, Opt(Word(AND)), WHOLE_NUMBER, _SECONDS, build=_together),
    )
