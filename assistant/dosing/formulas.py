"""Formulas asked by name, with inputs as people write them: what the command line and bulk files ask."""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import replace
from typing import Any

from assistant.dosing import body, clock, strength
from assistant.dosing.amount import Amount, parse_amount, parse_number
from assistant.dosing.clock import Moment
from assistant.dosing.declared import Form, Formula, Input
from assistant.dosing.formula_table import FORMULAS
from assistant.dosing.result import Result
from assistant.dosing.rounding import parse_rounding
from assistant.dosing.units import unit
from assistant.errors import QuantityError
from assistant.text import quoted

__all__ = ["FORMULAS", "Answer", "Form", "Formula", "Given", "Input", "find", "solve"]

Answer = Result | Moment
Given = str | Sequence[str]

_YES = {"yes": True, "true": True, "no": False, "false": False}


def find(name: str) -> Formula:
    """The formula with this name; an underscore or a space is taken for the dash.

    Raises:
        QuantityError: there is none; the remedy offers the nearest.
    """
    wanted = "-".join(name.strip().lower().replace("_", " ").split())
    found = FORMULAS.get(wanted)
    if found is None:
        from difflib import get_close_matches  # only needed on the way to an error

        from assistant.dosing.formula_groups import looked_for

        near = get_close_matches(wanted[:40], list(FORMULAS), n=3, cutoff=0.8)
        near = near or [one.name for one in looked_for(wanted[:40])[:3]]
        near = near or get_close_matches(wanted[:40], list(FORMULAS), n=3, cutoff=0.4)
        raise QuantityError(
            f"There is no formula {quoted(name)}.",
            f"Did you mean {' or '.join(near)}?" if near else "checkoff calc --list shows them all.",
        )
    return found


def solve(name: str, given: Mapping[str, Given]) -> tuple[Answer, ...]:
    """Work out a formula from inputs as people write them; the order of the inputs does not matter.

    Args:
        name: a key of `FORMULAS`.
        given: texts by input name; several texts where an input takes several.

    Returns:
        One answer, or several for a formula that gives several.

    Raises:
        QuantityError: no such formula; an input is missing, unknown or wrong.
    """
    formula = find(name)
    inputs = {one.name: one for one in formula.inputs}
    values: dict[str, Any] = {}
    for key, text in given.items():
        one = inputs.get(key.replace("_", "-"))
        if one is None:
            raise QuantityError(f"{formula.name} takes no input {quoted(key)}.", f"It takes: {', '.join(inputs)}.")
        values[one.parameter] = _read(one, text)
    for one in formula.inputs:
        if one.needed and one.parameter not in values:
            raise QuantityError(
                f"{formula.name} needs {one.name}, {one.form}, but none came.",
                f'Give {one.name}, for example "{one.example}".',
            )
    return work_out(formula.name, values)


def work_out(name: str, values: dict[str, Any]) -> tuple[Answer, ...]:
    """Work out a formula from values that were read already.

    Args:
        name: a key of `FORMULAS`.
        values: by the function's own names of its parameters.

    Raises:
        QuantityError: the formula refuses a value.
    """
    formula = FORMULAS[name]
    told_of_weight = _weigh(values)
    answer = formula.function(*_positional(formula, values), **_with_start(values))
    answers = tuple(answer) if isinstance(answer, (tuple, list)) else (answer,)
    return tuple(_with_weight(one, *told_of_weight) for one in answers)


def _weigh(values: dict[str, Any]) -> tuple[tuple[str, ...], tuple[str, ...]]:
    """Bring in the factor that a question states for its pounds; lines and cautions that this adds."""
    factor, weight = values.pop("weight_factor", None), values.get("weight")
    lines: tuple[str, ...] = ()
    cautions: tuple[str, ...] = ()
    if factor is not None:
        if weight is None:
            raise QuantityError("A weight factor came without a weight.", "Give the weight, or leave the factor out.")
        turned = body.convert(weight, "kg", factor=factor)
        values["weight"], lines, cautions = turned, turned.working, turned.cautions
    if isinstance(weight, Amount) and weight.unit == "lb" and body.light_for_an_adult(weight):
        cautions += (f"{weight} is a child's weight: if kg was meant, give the unit kg.",)
    return lines, cautions


def _with_weight(answer: Answer, lines: tuple[str, ...], cautions: tuple[str, ...]) -> Answer:
    if not isinstance(answer, Result) or not (lines or cautions):
        return answer
    return replace(answer, working=(*lines, *answer.working), cautions=(*answer.cautions, *cautions))


def _positional(formula: Formula, values: dict[str, Any]) -> tuple[Any, ...]:
    """Inputs that a function takes as many of as come."""
    many = [one.parameter for one in formula.inputs if one.form is Form.AMOUNTS]
    return tuple(values.pop(many[0])) if many else ()


def _with_start(values: dict[str, Any]) -> dict[str, Any]:
    """A start with its zone becomes one moment; everything else stays as it is."""
    zone, second = values.pop("zone", ""), values.pop("second", None)
    for name in ("start", "end"):
        if isinstance(values.get(name), str):
            values[name] = clock.parse_start(values[name], zone, second=second)
    return values


def _read(one: Input, given: Given) -> Any:
    texts = [given] if isinstance(given, str) else list(given)
    if not all(isinstance(text, str) for text in texts):
        raise QuantityError(f"{one.name} must be a text, {one.form}.", f'Write it like "{one.example}".')
    if one.form in (Form.AMOUNTS, Form.NUMBERS):
        # A comma also parts thousands ("1,000 mg"), so amounts are parted by semicolons.
        mark = ";" if one.form is Form.AMOUNTS else ","
        parts = [part for text in texts for part in text.replace("\n", mark).split(mark) if part.strip()]
        reader: Callable[[str], object] = parse_amount if one.form is Form.AMOUNTS else parse_number
        return [_placed(one, reader, part) for part in parts]
    if len(texts) != 1:
        raise QuantityError(f"{one.name} takes one value, but {len(texts)} came.", f'Write it like "{one.example}".')
    return _placed(one, _READERS[one.form], texts[0])


def _placed(one: Input, reader: Callable[[str], object], text: str) -> object:
    try:
        return reader(text)
    except QuantityError as cause:
        # A reader that names the input itself needs no name before its sentence.
        what = cause.what if cause.what.startswith(f"{one.name} ") else f"{one.name}: {cause.what}"
        remedy = f'Write it like "{one.example}".' if cause.what.endswith("came without a unit.") else cause.remedy
        raise QuantityError(what, remedy) from cause


def _flag(text: str) -> bool:
    found = _YES.get(text.strip().lower())
    if found is None:
        raise QuantityError(f"Expected yes or no, got {quoted(text)}.", "Write yes or no.")
    return found


_READERS: Mapping[Form, Callable[[str], object]] = {
    Form.AMOUNT: parse_amount,
    Form.CONCENTRATION: strength.parse_concentration,
    Form.UNIT: lambda text: unit(text).name,
    Form.TEXT: str.strip,
    Form.START: str.strip,
    Form.ROUNDING: parse_rounding,
    Form.FLAG: _flag,
}
