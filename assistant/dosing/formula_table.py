"""Every formula with its declared inputs."""

from collections.abc import Mapping
from types import MappingProxyType
from typing import Any

from assistant.dosing import (
    body,
    clock,
    dose,
    dose_in_time,
    dose_rate,
    doses_in_a_day,
    electrolyte,
    flow,
    fluid,
    gravity,
    preparation,
    residual,
    safe_dose,
    strength,
    two_rates,
)
from assistant.dosing.declared import Form, Formula, Input
from assistant.dosing.result import Result


def _amount(name: str, example: str, needed: bool = True) -> Input:
    return Input(name, Form.AMOUNT, example, needed)


_RULE = Input("rounding", Form.ROUNDING, "tenth", needed=False)
_VOLUME = _amount("volume", "100 mL")
_DURATION = _amount("duration", "30 min")
_RATE = _amount("rate", "75 mL/h")
_FACTOR = _amount("drop-factor", "20 gtt/mL")
_STRENGTH = Input("concentration", Form.CONCENTRATION, "400 mg in 250 mL")
_WEIGHT = _amount("weight", "70 kg", needed=False)
_BY_FACTOR = _amount("weight-factor", "2.2 lb/kg", needed=False)
"""How many lb make a kg where the question says so: the exact factor is used without it."""
_START = Input("start", Form.START, "22:00")
_ZONE = Input("zone", Form.TEXT, "Europe/London", needed=False)
_SECOND = Input("second", Form.FLAG, "yes", needed=False)


def _unit(example: str, needed: bool = False) -> Input:
    return Input("unit", Form.UNIT, example, needed)


def _optional(one: Input) -> Input:
    return Input(one.name, one.form, one.example, needed=False)


def _bolus(**given: Any) -> tuple[Result, Result]:
    drawn, rate = dose.bolus(**given)
    return rate, drawn


_bolus.__doc__ = dose.bolus.__doc__

_ALL = (
    Formula("rate", "mL/h", (_VOLUME, _DURATION, _RULE), flow.flow_rate),
    Formula("volume", "mL", (_RATE, _DURATION, _RULE), flow.volume),
    Formula("duration", "min", (_VOLUME, _RATE, _optional(_FACTOR), _unit("h"), _RULE), flow.duration),
    Formula("piggyback-rate", "mL/h", (_VOLUME, _DURATION, _RULE), flow.piggyback_rate),
    Formula(
        "two-rate-time",
        "min",
        (
            _amount("volume", "300 mL"),
            _amount("first-rate", "120 mL/h"),
            _amount("first-duration", "15 min"),
            _amount("rate", "150 mL/h"),
            _unit("h"),
            _RULE,
        ),
        two_rates.two_rate_time,
    ),
    Formula(
        "rate-for-the-rest",
        "mL/h",
        (
            _amount("volume", "1,000 mL"),
            _amount("first-rate", "75 mL/h"),
            _amount("first-duration", "4 h"),
            _amount("duration", "10 h"),
            _RULE,
        ),
        two_rates.rate_for_the_rest,
    ),
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
        (
            _START,
            _optional(_VOLUME),
            _optional(_RATE),
            _optional(_DURATION),
            _optional(_FACTOR),
            _ZONE,
            _SECOND,
        ),
        clock.completion_time,
        ("volume", "rate"),
    ),
    Formula(
        "latest-start",
        "clock time",
        (
            Input("end", Form.START, "16:00"),
            _optional(_VOLUME),
            _optional(_RATE),
            _optional(_DURATION),
            _ZONE,
            _SECOND,
        ),
        clock.latest_start,
        ("volume", "rate"),
    ),
    Formula(
        "next-bag-due",
        "clock time",
        (
            _START,
            _amount("bag-volume", "1,000 mL"),
            _RATE,
            _amount("reserve", "50 mL", False),
            _amount("ahead", "30 min", False),
            _ZONE,
            _SECOND,
        ),
        clock.next_bag_due,
    ),
    Formula("due-time", "clock time", (_START, _amount("interval", "96 h"), _ZONE, _SECOND), clock.due_time),
    Formula(
        "drop-rate",
        "gtt/min",
        (_FACTOR, _optional(_RATE), _optional(_VOLUME), _optional(_DURATION), _RULE),
        gravity.drop_rate,
        ("volume", "duration"),
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
        (Input("times", Form.NUMBERS, "0, 1.1, 2, 3.1"), _FACTOR, _RULE),
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
    Formula(
        "volume-for-dose",
        "mL",
        (_amount("dose", "80 mg"), _STRENGTH, _WEIGHT, _BY_FACTOR, _RULE),
        dose.volume_for_dose,
    ),
    Formula("dose-in-volume", "the dose's unit", (_VOLUME, _STRENGTH, _unit("mg"), _RULE), dose.dose_in_volume),
    Formula(
        "dose-by-weight",
        "the order's unit",
        (_amount("ordered", "0.2 mg/kg"), _amount("weight", "14 kg"), _BY_FACTOR, _unit("mg"), _RULE),
        dose.dose_by_weight,
    ),
    Formula(
        "dose-with-maximum",
        "the order's unit",
        (
            _amount("ordered", "15 mg/kg"),
            _amount("weight", "80 kg"),
            _amount("maximum", "1,000 mg"),
            _BY_FACTOR,
            _unit("mg"),
            _RULE,
        ),
        safe_dose.dose_with_maximum,
    ),
    Formula(
        "dose-per-kg",
        "the dose's unit per kg",
        (
            _amount("dose", "500 mg"),
            _amount("weight", "40 kg"),
            _amount("lowest", "10 mg/kg", False),
            _amount("highest", "15 mg/kg", False),
            _BY_FACTOR,
            _unit("mg/kg"),
            _RULE,
        ),
        safe_dose.dose_per_kg,
    ),
    Formula(
        "volume-by-weight",
        "mL or mL/h",
        (_amount("ordered", "20 mL/kg"), _amount("weight", "14 kg"), _BY_FACTOR, _unit("mL"), _RULE),
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
            _BY_FACTOR,
            _amount("area", "1.8 m\u00b2", False),
            _unit("mL/kg/min"),
            _RULE,
        ),
        dose_rate.pump_rate,
    ),
    Formula(
        "dose-rate",
        "the concentration's unit per hour, or mcg/kg/min",
        (_RATE, _STRENGTH, _WEIGHT, _BY_FACTOR, _unit("mg/h"), _RULE),
        dose_rate.dose_rate,
    ),
    Formula(
        "rate-factor",
        "mL/h per the dose rate's unit",
        (_STRENGTH, Input("per", Form.UNIT, "mcg/min", False), _RULE),
        dose_rate.rate_factor,
    ),
    Formula(
        "mean-dose-rate",
        "the dose's unit per minute",
        (_amount("dose", "150 mg"), _amount("duration", "10 min"), _unit("mg/h"), _RULE),
        dose_rate.mean_dose_rate,
    ),
    Formula(
        "dose-over-time",
        "mg, units, mmol or mEq",
        (
            _amount("dose-rate", "0.5 mg/min"),
            _amount("duration", "18 h"),
            _WEIGHT,
            _BY_FACTOR,
            _amount("loading", "150 mg", False),
            _unit("g"),
            _RULE,
        ),
        dose_in_time.dose_over_time,
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
        (_amount("dose", "400 mg"), _amount("dose-rate", "200 mcg/min"), _WEIGHT, _BY_FACTOR, _unit("h"), _RULE),
        dose_in_time.dose_lasts,
    ),
    Formula(
        "shortest-time",
        "min",
        (
            _amount("dose", "1,500 mg"),
            _amount("highest-rate", "10 mg/min"),
            _amount("never-under", "60 min", False),
            _WEIGHT,
            _BY_FACTOR,
            _unit("h"),
            _RULE,
        ),
        dose_in_time.shortest_time,
    ),
    Formula(
        "bolus",
        "mL/h, then the volume in mL",
        (
            _amount("dose", "4,000 units"),
            Input("concentration", Form.CONCENTRATION, "50 units/mL"),
            _DURATION,
            _WEIGHT,
            _BY_FACTOR,
            _RULE,
        ),
        _bolus,
    ),
    Formula(
        "loading-then-maintenance",
        "mL/h of each, then the volume in mL",
        (
            _amount("loading", "80 units/kg"),
            _amount("loading-duration", "10 min"),
            _amount("maintenance", "18 units/kg/h"),
            Input("concentration", Form.CONCENTRATION, "25,000 units in 250 mL"),
            _WEIGHT,
            _BY_FACTOR,
            _RULE,
        ),
        two_rates.loading_then_maintenance,
        ("weight",),
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
            _BY_FACTOR,
            _RULE,
        ),
        dose_rate.titration,
    ),
    Formula(
        "body-weight",
        "kg",
        (_amount("weight", "154 lb"), Input("adult", Form.FLAG, "yes", False), _BY_FACTOR, _RULE),
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
        "divided-dose",
        "the daily dose's unit",
        (
            _amount("daily", "2 g/day"),
            _amount("interval", "6 h", False),
            _amount("doses", "4 doses", False),
            _WEIGHT,
            _BY_FACTOR,
            _unit("mg"),
            _RULE,
        ),
        doses_in_a_day.divided_dose,
        ("interval",),
    ),
    Formula(
        "daily-dose",
        "the dose's unit a day",
        (
            _amount("dose", "1 g"),
            _amount("interval", "8 h", False),
            _amount("doses", "3 doses", False),
            _unit("mg/day"),
            _RULE,
        ),
        doses_in_a_day.daily_dose,
        ("interval",),
    ),
    Formula(
        "maintenance",
        "mL/h, or mL/day",
        (
            _amount("weight", "14 kg"),
            Input("method", Form.TEXT, "4-2-1", False),
            _BY_FACTOR,
            _unit("mL/h"),
            _RULE,
        ),
        fluid.maintenance,
    ),
    Formula(
        "sum-of-volumes",
        "mL",
        (Input("volumes", Form.AMOUNTS, "240 mL; 0.5 L; 50 mL"), _unit("L"), _RULE),
        fluid.sum_of_volumes,
    ),
    Formula(
        "fluid-balance",
        "mL",
        (_amount("intake", "2,150 mL"), _amount("output", "1,800 mL"), _RULE),
        fluid.fluid_balance,
    ),
    Formula(
        "hourly-intake",
        "mL, one a clock hour",
        (Input("start", Form.START, "08:20"), _RATE, _amount("duration", "4 h"), _ZONE, _SECOND),
        fluid.hourly_intake,
    ),
    Formula(
        "diluent",
        "mL",
        (
            _amount("dose", "1 g"),
            Input("concentration", Form.CONCENTRATION, "100 mg/mL"),
            _amount("displacement", "0.6 mL", False),
            _RULE,
        ),
        preparation.diluent,
    ),
    Formula(
        "dilution",
        "mL of the stock, then mL of diluent",
        (
            Input("stock", Form.CONCENTRATION, "50 %"),
            Input("concentration", Form.CONCENTRATION, "10 %"),
            _VOLUME,
            _RULE,
        ),
        preparation.dilution,
    ),
    Formula(
        "alligation",
        "mL of the stronger stock, then mL of the weaker",
        (
            Input("stronger", Form.CONCENTRATION, "50 %"),
            Input("weaker", Form.CONCENTRATION, "5 %"),
            Input("concentration", Form.CONCENTRATION, "10 %"),
            _amount("volume", "500 mL"),
            _RULE,
        ),
        preparation.alligation,
    ),
    Formula(
        "mixture",
        "the first concentration's unit",
        (
            Input("concentration", Form.CONCENTRATION, "50 %"),
            _VOLUME,
            Input("added-concentration", Form.CONCENTRATION, "5 %"),
            _amount("added-volume", "400 mL"),
            _unit("%"),
            _RULE,
        ),
        preparation.mixture,
    ),
    Formula(
        "electrolyte",
        "mg, mmol or mEq; per mL or per hour where they are given so",
        (
            _amount("given", "1 g"),
            Input("salt", Form.TEXT, "magnesium sulfate heptahydrate"),
            _unit("mEq"),
            _RULE,
        ),
        electrolyte.electrolyte,
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
