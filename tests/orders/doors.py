"""The five doors through which an amount comes in, and what each of them takes a text for."""

from collections.abc import Callable, Mapping
from decimal import Decimal
from fractions import Fraction

from assistant.dosing.formulas import solve
from assistant.dosing.question import ask
from assistant.dosing.result import Result
from assistant.dosing.units import convert, unit
from assistant.errors import AssistantError
from assistant.orders.reading import amount_of
from assistant.spoken import ENGLISH
from assistant.spoken.expect import NumberExpected
from assistant.spoken.meaning import Answer, Kind

Door = Callable[[str, str], Fraction | None]
"""From a text and the unit that is asked for to the value in that unit; None where it is refused or asked about."""


def _words(text: str, wanted: str, *, heard: bool) -> Fraction | None:
    meaning = ENGLISH.interpret(text, NumberExpected(wanted, highest=Decimal(10**6)), heard=heard)
    if not isinstance(meaning, Answer) or meaning.kind is not Kind.NUMBER or not isinstance(meaning.value, Decimal):
        return None
    return convert(Fraction(meaning.value), meaning.unit or wanted, wanted)


def _order(text: str, wanted: str) -> Fraction | None:
    try:
        return amount_of(unit(wanted).kind, zero=True)(text).in_unit(wanted)
    except (AssistantError, ValueError):
        return None


def _option(text: str, wanted: str) -> Fraction | None:
    try:
        [answer] = solve("convert", {"given": text, "unit": wanted})
    except AssistantError:
        return None
    return answer.exact if isinstance(answer, Result) else None


def _question(text: str, wanted: str) -> Fraction | None:
    try:
        answer = ask(f"{text} in {wanted}").answer
    except AssistantError:
        return None
    return answer.in_unit(wanted) if isinstance(answer, Result) else None


DOORS: Mapping[str, Door] = {
    "speech": lambda text, wanted: _words(text, wanted, heard=True),
    "typing": lambda text, wanted: _words(text, wanted, heard=False),
    "order": _order,
    "option": _option,
    "question": _question,
}
