"""Every formula by name, with its declared inputs: what the command line and bulk files ask."""

import inspect
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from enum import StrEnum
from types import MappingProxyType
from typing import Any

from assistant.dosing import body, clock, dose, flow, gravity, residual, strength
from assistant.dosing.amount import parse_amount, parse_number
from assistant.dosing.clock import Moment
from assistant.dosing.outside import told
from assistant.dosing.result import Result
from assistant.dosing.rounding import parse_rounding
from assistant.dosing.units import unit
from assistant.errors import QuantityError

Answer = Result | Moment
Given = str | Sequence[str]


class Form(StrEnum):
    """How an input is written."""

    AMOUNT = "an amount with its unit"
    CONCENTRATION = "a concentration"
    AMOUNTS = "amounts, one or more"
    NUMBERS = "numbers, three or more"
    UNIT = "a unit"
    TEXT = "a name"
    START = "a time such as 22:00, or with its date 2026-10-24 22:00"
    ROUNDING = "a rounding rule: exact, whole, tenth, hundredth, thousandth; with up, down or half even"
    FLAG = "yes or no"


@dataclass(frozen=True)
class Input:
    """One declared input.

    Attributes:
        name: as it is given on the command line, without the dashes.
        form: how it is written.
        example: a value as people write it.
        needed: the formula cannot do without; others have a default or stand in for one another.
    """

    name: str
    form: Form
    example: str
    needed: bool = True

    @property
    def parameter(self) -> str:
        """The function's own name for it."""
        return self.name.replace("-", "_")


@dataclass(frozen=True)
class Formula:
    """A named formula.

    Attributes:
        name: as it is asked for.
        gives: unit of the answer, or what it is where the unit follows from the inputs.
        inputs: in order.
        function: what works it out.
    """

    name: str
    gives: str
    inputs: tuple[Input, ...]
    function: Callable[..., Any]

    @property
    def about(self) -> str:
        """What it answers: the first line of its docstring."""
        return (inspect.getdoc(self.function) or self.name).split("\n", 1)[0].rstrip(".")

    @property
    def source(self) -> str:
        """Where it stands: the docstring's source."""
        text = inspect.getdoc(self.function) or ""
        return " ".join(text.partition("Source")[2].partition(":")[2].split())

    @property
    def example(self) -> str:
        """The options of an example on the command line."""
        return " ".join(f'--{one.name} "{one.example}"' for one in self.inputs if one.needed)


def _amount(name: str, example: str, needed: bool = True) -> Input:
    return Input(name, Form.AMOUNT, example, needed)


_RULE = Input("rounding", Form.ROUNDING, "tenth", needed=False)
_VOLUME = _amount("volume", "100 mL")
_DURATION = _amount("duration", "30 min")
_RATE = _amount("rate", "75 mL/h")
_FACTOR = _amount("drop-factor", "20 gtt/mL")
_STRENGTH = Input("concentration", Form.CONCENTRATION, "400 mg in 250 mL")
_WEIGHT = _amount("weight", "70 kg", needed=False)
_START = Input("start", Form.START, "22:00")
_ZONE = Input("zone", Form.TEXT, "Europe/London", needed=False)
_SECOND = Input("second", Form.FLAG, "yes", needed=False)


def _unit(example: str, needed: bool = False) -> Input:
    return Input("unit", Form.UNIT, example, needed)


def _optional(one: Input) -> Input:
    return Input(one.name, one.form, one.example, needed=False)


def _bolus(**given: Any) -> Result:
    return dose.bolus(**given)[1]


_bolus.__doc__ = dose.bolus.__doc__

_ALL = (
    Formula("rate", "mL/h", (_VOLUME, _DURATION, _RULE), flow.flow_rate),
    Formula("volume", "mL", (_RATE, _DURATION, _RULE), flow.volume),
    Formula("duration", "min", (_VOLUME, _RATE, _unit("h"), _RULE), flow.duration),
    Formula("piggyback-rate", "mL/h", (_VOLUME, _DURATION, _RULE), flow.piggyback_rate),
    Formula(
        "vtbi",
        "mL",
        (_amount("bag-volume", "1,000 mL"), _amount("reserve", "50 mL"), _amount("overfill", "50 mL", False), _RULE),
        flow.vtbi,
    ),
    Formula("remaining-volume", "mL", (_VOLUME, _RATE, _amount("elapsed", "20 min"), _RULE), flow.remaining),
    Formula(
        "remaining-time", "min", (_VOLUME, _RATE, _amount("elapsed", "20 min"), _unit("h"), _RULE), flow.remaining_time
    ),
    Formula(
        "bag-lasts",
        "mL missing",
        (_amount("available", "950 mL"), _RATE, _amount("wanted", "12 h")),
        flow.lasts,
    ),
    Formula(
        "completion-time",
        "clock time",
        (_START, _optional(_VOLUME), _optional(_RATE), _optional(_DURATION), _ZONE, _SECOND),
        clock.completion_time,
    ),
    Formula("due-time", "clock time", (_START, _amount("interval", "96 h"), _ZONE, _SECOND), clock.due_time),
    Formula(
        "drop-rate",
        "gtt/min",
        (_FACTOR, _optional(_RATE), _optional(_VOLUME), _optional(_DURATION), _RULE),
        gravity.drop_rate,
    ),
    Formula(
        "rate-from-drops",
        "mL/h",
        (_amount("drops", "15 gtt"), _amount("window", "30 s"), _FACTOR, _RULE),
        gravity.rate_from_drops,
    ),
    Formula(
        "rate-from-drop-rate",
        "mL/h",
        (_amount("drop-rate", "30 gtt/min"), _FACTOR, _RULE),
        gravity.rate_from_drop_rate,
    ),
    Formula(
        "percent-off",
        "%",
        (_amount("found", "120 mL/h"), _amount("ordered", "125 mL/h"), _amount("tolerance", "10 %", False), _RULE),
        gravity.percent_off,
    ),
    Formula(
        "live-count",
        "mL/h, then its uncertainty in mL/h",
        (Input("times", Form.NUMBERS, "0, 1.1, 2.0, 3.1"), _FACTOR, _RULE),
        gravity.live_count,
    ),
    Formula(
        "concentration",
        "mg/mL, units/mL, mmol/mL or mEq/mL",
        (
            _amount("dose", "400 mg"),
            _amount("volume", "250 mL"),
            _amount("added", "10 mL", False),
            _unit("mcg/mL"),
            _RULE,
        ),
        strength.concentration,
    ),
    Formula("volume-for-dose", "mL", (_amount("dose", "80 mg"), _STRENGTH, _RULE), dose.volume_for_dose),
    Formula("dose-in-volume", "the dose's unit", (_VOLUME, _STRENGTH, _unit("mg"), _RULE), dose.dose_in_volume),
    Formula(
        "dose-by-weight",
        "the order's unit",
        (_amount("ordered", "0.2 mg/kg"), _amount("weight", "14 kg"), _unit("mg"), _RULE),
        dose.dose_by_weight,
    ),
    Formula(
        "volume-by-weight",
        "mL or mL/h",
        (_amount("ordered", "20 mL/kg"), _amount("weight", "14 kg"), _unit("mL"), _RULE),
        dose.volume_by_weight,
    ),
    Formula(
        "dose-by-area",
        "the order's unit",
        (_amount("ordered", "75 mg/m\u00b2"), _amount("area", "1.8 m\u00b2"), _unit("mg"), _RULE),
        dose.dose_by_area,
    ),
    Formula(
        "pump-rate",
        "mL/h",
        (
            _amount("dose-rate", "10 mg/h"),
            _STRENGTH,
            _WEIGHT,
            _amount("area", "1.8 m\u00b2", False),
            _unit("mL/kg/min"),
            _RULE,
        ),
        dose.pump_rate,
    ),
    Formula(
        "dose-rate",
        "the concentration's unit per hour, or mcg/kg/min",
        (_RATE, _STRENGTH, _WEIGHT, _unit("mg/h"), _RULE),
        dose.dose_rate,
    ),
    Formula(
        "rate-factor",
        "mL/h per the dose rate's unit",
        (_STRENGTH, Input("per", Form.UNIT, "mcg/min", False), _RULE),
        dose.rate_factor,
    ),
    Formula(
        "mean-dose-rate",
        "the dose's unit per minute",
        (_amount("dose", "150 mg"), _amount("duration", "10 min"), _unit("mg/h"), _RULE),
        dose.mean_dose_rate,
    ),
    Formula(
        "dose-over-time",
        "mg, units, mmol or mEq",
        (
            _amount("dose-rate", "0.5 mg/min"),
            _amount("duration", "18 h"),
            _WEIGHT,
            _amount("loading", "150 mg", False),
            _unit("g"),
            _RULE,
        ),
        dose.dose_over_time,
    ),
    Formula(
        "sum-of-doses",
        "the first dose's unit",
        (Input("doses", Form.AMOUNTS, "150 mg; 360 mg; 540 mg"), _unit("g"), _RULE),
        dose.sum_of_doses,
    ),
    Formula(
        "dose-lasts",
        "min",
        (_amount("dose", "400 mg"), _amount("dose-rate", "200 mcg/min"), _WEIGHT, _unit("h"), _RULE),
        dose.dose_lasts,
    ),
    Formula(
        "shortest-time",
        "min",
        (
            _amount("dose", "1,500 mg"),
            _amount("highest-rate", "10 mg/min"),
            _amount("never-under", "60 min", False),
            _WEIGHT,
            _unit("h"),
            _RULE,
        ),
        dose.shortest_time,
    ),
    Formula(
        "bolus",
        "mL/h",
        (_amount("dose", "4,000 units"), Input("concentration", Form.CONCENTRATION, "50 units/mL"), _DURATION, _RULE),
        _bolus,
    ),
    Formula(
        "titration",
        "mL/h, one a step",
        (
            _amount("start", "5 mg/h"),
            _amount("step", "2.5 mg/h"),
            _amount("highest", "15 mg/h"),
            _STRENGTH,
            _WEIGHT,
            _RULE,
        ),
        dose.titration,
    ),
    Formula(
        "body-weight",
        "kg",
        (_amount("weight", "154 lb"), Input("adult", Form.FLAG, "yes", False), _RULE),
        body.body_weight,
    ),
    Formula(
        "convert",
        "the wanted unit",
        (_amount("given", "110 lb"), _unit("kg", needed=True), _amount("factor", "2.2 lb/kg", False), _RULE),
        body.convert,
    ),
    Formula(
        "round",
        "the same unit",
        (_amount("given", "62.5 mL/h"), Input("rounding", Form.ROUNDING, "whole")),
        body.rounded,
    ),
    Formula(
        "surface-area",
        "m\u00b2",
        (
            _amount("height", "170 cm"),
            _amount("weight", "70 kg"),
            Input("method", Form.TEXT, "mosteller", False),
            _RULE,
        ),
        body.surface_area,
    ),
    Formula(
        "share-delivered",
        "%",
        (_amount("volume", "50 mL"), _amount("tubing", "18 mL"), _amount("flush", "20 mL", False), _RULE),
        residual.share_delivered,
    ),
    Formula(
        "dose-left-behind",
        "the dose's unit",
        (
            _amount("dose", "1 g"),
            _amount("volume", "50 mL"),
            _amount("tubing", "18 mL"),
            _amount("flush", "20 mL", False),
            _RULE,
        ),
        residual.dose_left_behind,
    ),
    Formula(
        "head-difference",
        "cm",
        (
            _amount("secondary", "100 cm"),
            _amount("primary", "75 cm"),
            _amount("falls", "10 cm", False),
            _amount("margin", "20 cm", False),
        ),
        residual.head_difference,
    ),
)

FORMULAS: Mapping[str, Formula] = MappingProxyType({formula.name: formula for formula in _ALL})
"""Every formula by name."""

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

        near = get_close_matches(wanted[:40], list(FORMULAS), n=3, cutoff=0.4)
        raise QuantityError(
            f'There is no formula "{told(name)}".',
            f"Did you mean {' or '.join(near)}?" if near else "The list of formulas shows them all.",
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
            raise QuantityError(f'{formula.name} takes no input "{told(key)}".', f"It takes: {', '.join(inputs)}.")
        values[one.parameter] = _read(one, text)
    for one in formula.inputs:
        if one.needed and one.parameter not in values:
            raise QuantityError(
                f"{formula.name} needs {one.name}, {one.form}, but none came.",
                f'Give {one.name}, for example "{one.example}".',
            )
    answer = formula.function(*_positional(formula, values), **_with_start(values))
    return tuple(answer) if isinstance(answer, (tuple, list)) else (answer,)


def _positional(formula: Formula, values: dict[str, Any]) -> tuple[Any, ...]:
    """Inputs that a function takes as many of as come."""
    many = [one.parameter for one in formula.inputs if one.form is Form.AMOUNTS]
    return tuple(values.pop(many[0])) if many else ()


def _with_start(values: dict[str, Any]) -> dict[str, Any]:
    """A start with its zone becomes one moment; everything else stays as it is."""
    zone, second = values.pop("zone", ""), values.pop("second", None)
    if isinstance(values.get("start"), str):
        values["start"] = clock.parse_start(values["start"], zone, second=second)
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
        raise QuantityError(what, cause.remedy) from cause


def _flag(text: str) -> bool:
    found = _YES.get(text.strip().lower())
    if found is None:
        raise QuantityError(f'Yes or no was expected, but "{told(text)}" came.', "Write yes or no.")
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
