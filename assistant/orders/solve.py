"""The answer key of an order: what it states, and what follows from it by the calculation core.

Names of the key, by the part of the order that gives them (`KEY_UNITS` holds a unit for each):

* always, where the patient has one: ``patient.weight`` (kg);
* ``[primary]``: ``primary.fluid``, ``.bag_volume``, ``.rate``, ``.vtbi``, ``.duration``;
* ``[gravity]``, beside a primary: ``gravity.drop_factor``, ``.drops_per_minute``, ``.drops_in_15_seconds``,
  ``.drops_in_30_seconds``;
* ``[running]``, beside a primary: ``running.infused``, ``.remaining``, ``.time_left``;
* ``[change]``, beside a primary: ``change.before``, ``.way`` (one of `WAYS`), and where the rate changes, ``.by``;
* ``[secondary]``: ``secondary.drug``, ``.dose``, ``.volume``, ``.concentration``, ``.rate``, ``.vtbi``,
  ``.duration``; without a primary it is an intermittent infusion by itself, under the same names;
* ``[second_secondary]``: ``second_secondary.`` with the same seven names;
* ``[dose]``, an infusion by dose rate, often by weight: ``dose.drug``, ``.ordered``, ``.amount``, ``.volume``,
  ``.concentration``, ``.hourly``, ``.rate``, ``.vtbi``, ``.duration``;
* ``[protocol]``, beside a dose by weight: ``protocol.result`` (s), ``.way`` (one of `BY_TABLE`), ``.ordered``,
  ``.rate``, and where the table says so, ``.by`` and ``.hold``;
* ``[syringe]``, beside a secondary alone: ``syringe.size``;
* ``[push]``, a drug by hand: ``push.drug``, ``.dose``, ``.amount``, ``.volume``, ``.concentration``, ``.to_draw``,
  ``.duration``, ``.per_minute``;
* ``[flush]``: ``flush.fluid``, ``flush.volume``.

Units: a mass in the bag is given in mg, ``dose.ordered`` as the order writes it (mcg/kg/min, units/kg/h, mg/h),
``dose.hourly`` in mg/h, units/h, mmol/h or mEq/h.
"""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import replace
from decimal import Decimal
from functools import lru_cache, partial

from assistant import dosing
from assistant.dosing import WHOLE, Amount, Result, Rounding
from assistant.dosing.amount import normal
from assistant.dosing.body import body_weight, convert
from assistant.dosing.dose import dose_by_weight
from assistant.dosing.dose_rate import pump_rate
from assistant.dosing.gravity import drop_rate
from assistant.dosing.result import tell_exact
from assistant.dosing.units import same_dimension, unit
from assistant.orders.by_hand import drawn_up, each_minute
from assistant.orders.key import KeyEntry
from assistant.orders.lines import ByDoseRate, Change, Flush, Gravity, Primary, Push, Running, Secondary
from assistant.orders.model import Order, PoundsPerKilogram
from assistant.orders.names import label_names, with_own
from assistant.orders.protocol import Protocol

_INTERMITTENT: Mapping[str, str | None] = {
    "drug": None,
    "dose": "mg",
    "volume": "mL",
    "concentration": "mg/mL",
    "rate": "mL/h",
    "vtbi": "mL",
    "duration": "min",
}
KEY_UNITS: Mapping[str, str | None] = {
    "patient.weight": "kg",
    "primary.fluid": None,
    "primary.bag_volume": "mL",
    "primary.rate": "mL/h",
    "primary.vtbi": "mL",
    "primary.duration": "min",
    "gravity.drop_factor": "gtt/mL",
    "gravity.drops_per_minute": "gtt/min",
    "gravity.drops_in_15_seconds": "gtt",
    "gravity.drops_in_30_seconds": "gtt",
    "running.infused": "mL",
    "running.remaining": "mL",
    "running.time_left": "min",
    "change.before": "mL/h",
    "change.way": None,
    "change.by": "mL/h",
    **{f"secondary.{name}": wanted for name, wanted in _INTERMITTENT.items()},
    **{f"second_secondary.{name}": wanted for name, wanted in _INTERMITTENT.items()},
    "dose.drug": None,
    "dose.ordered": "mcg/kg/min",
    "dose.amount": "mg",
    "dose.volume": "mL",
    "dose.concentration": "mg/mL",
    "dose.hourly": "mg/h",
    "dose.rate": "mL/h",
    "dose.vtbi": "mL",
    "dose.duration": "min",
    "protocol.result": "s",
    "protocol.way": None,
    "protocol.by": "units/kg/h",
    "protocol.ordered": "units/kg/h",
    "protocol.rate": "mL/h",
    "protocol.hold": "min",
    "syringe.size": "mL",
    "push.drug": None,
    "push.dose": "mg",
    "push.amount": "mg",
    "push.volume": "mL",
    "push.concentration": "mg/mL",
    "push.to_draw": "mL",
    "push.duration": "min",
    "push.per_minute": "mL/min",
    "flush.fluid": None,
    "flush.volume": "mL",
}
"""Every name that an answer key can hold, with a unit in which the number can be asked for; None for a name."""
KEY_NAMES = tuple(KEY_UNITS)
"""Every name that an answer key can hold, in the key's order."""

HOLD, LOWER, RAISE = WAYS = ("hold the infusion", "lower the rate", "raise the rate")
"""What a new order can ask of a running infusion."""
HOLD_FIRST, LEAVE = "hold, then lower the rate", "leave the rate"
BY_TABLE = (HOLD_FIRST, LEAVE, LOWER, RAISE)
"""What a lab's table can ask of one."""

_MOST_DECIMALS, _MOST_DIGITS = 4, 6
"""Of a number that can be said as it is."""
_SIGNIFICANT = 3
"""Digits of one that cannot."""


def answer_key(order: Order) -> Mapping[str, KeyEntry]:
    """Every value that follows from an order, by name, in the order of `KEY_NAMES`.

    Args:
        order: what is ordered.

    Returns:
        The entries of each part that the order has.

    Raises:
        QuantityError: a formula refuses the order's numbers.
    """
    entries: list[KeyEntry] = []
    weight = order.patient.weight
    if weight is not None:
        entries.append(_weight(weight, order.pounds_per_kg))
        # What follows from a weight follows from the kilograms that were agreed on, not from the pounds behind them.
        weight = amount_of(entries[-1])
    if order.primary is not None:
        primary = _primary(order.primary, order.laid_out.primary.fluid, order.rounding)
        entries += primary
        if order.gravity is not None:
            entries += _gravity(order.gravity, _named(primary, "primary.rate"))
        if order.running is not None:
            entries += _running(order.running, _named(primary, "primary.vtbi"), _named(primary, "primary.rate"))
        if order.change is not None:
            entries += _change(order.change, _named(primary, "primary.rate"))
    if order.secondary is not None:
        entries += _secondary("secondary", order.secondary, _drugs(order), order.rounding)
    if order.second_secondary is not None:
        entries += _secondary("second_secondary", order.second_secondary, _drugs(order), order.rounding)
    if order.dose is not None:
        entries += _by_dose_rate(order.dose, weight, _drugs(order), order.rounding)
    if order.protocol is not None and order.dose is not None:
        entries += _by_protocol(order.protocol, order.dose, weight, order.rounding)
    if order.syringe is not None:
        entries.append(_stated("syringe.size", order.syringe.size, "mL"))
    if order.push is not None:
        entries += _push(order.push, _drugs(order))
    if order.flush is not None:
        entries += _flush(order.flush, order)
    return {entry.name: entry for entry in entries}


def _weight(weight: Amount, pounds_per_kg: PoundsPerKilogram | None) -> KeyEntry:
    if weight.unit == "kg":
        return _stated("patient.weight", weight)
    if weight.unit == "lb" and pounds_per_kg is not None:
        factor = Amount(Decimal(pounds_per_kg), "lb/kg")
        return _worked_out("patient.weight", convert(weight, "kg", factor=factor, rounding=dosing.TENTH))
    return _worked_out("patient.weight", body_weight(weight))


# A class draws from the same bags again and again; a part of an order that was solved once is solved for all.
_solved_once = lru_cache(maxsize=8192)


@_solved_once
def _primary(primary: Primary, laid_out: str | None, rounding: Rounding) -> tuple[KeyEntry, ...]:
    volume = primary.volume or primary.bag_volume
    fluids = with_own(label_names().fluids, primary.fluid, laid_out or primary.fluid)
    if primary.volume is not None:
        to_infuse = _stated("primary.vtbi", primary.volume, "mL")
    else:
        to_infuse = _vtbi("primary.vtbi", primary.bag_volume, primary.reserve)
    return (
        KeyEntry("primary.fluid", primary.fluid, None, choices=fluids),
        _stated("primary.bag_volume", primary.bag_volume, "mL"),
        _rate("primary.rate", primary, volume, rounding),
        to_infuse,
        _duration("primary.duration", primary, amount_of(to_infuse)),
    )


@_solved_once
def _gravity(gravity: Gravity, rate: KeyEntry) -> tuple[KeyEntry, ...]:
    """Drops a minute, whole, from the rate as it stands in the key; the counts of a shorter watch."""
    factor = gravity.drop_factor
    per_minute = drop_rate(factor, rate=amount_of(rate))
    entries = [_stated("gravity.drop_factor", factor), _worked_out("gravity.drops_per_minute", per_minute)]
    for seconds, parts in ((15, 4), (30, 2)):
        exact = per_minute.exact / parts
        count = WHOLE.apply(exact)
        line = (
            f"{tell_exact(per_minute.exact, 'gtt/min')} \u00f7 {parts} = {dosing.show(Amount(count, 'gtt'))}"
            f" in {seconds} s, in whole drops"
        )
        name = f"gravity.drops_in_{seconds}_seconds"
        entries.append(KeyEntry(name, normal(count), "gtt", (*per_minute.working, line), "drop-rate"))
    return tuple(entries)


def _running(running: Running, to_infuse: KeyEntry, rate: KeyEntry) -> list[KeyEntry]:
    """Where the pump stands: infused and still to come in tenths of mL, the time left in whole minutes."""
    whole, speed = amount_of(to_infuse), amount_of(rate)
    left = dosing.remaining(whole, speed, running.since, rounding=dosing.TENTH)
    infused = dosing.volume(speed, running.since, rounding=dosing.TENTH)
    given = min(infused.value, whole.value)
    entries = [
        KeyEntry("running.infused", normal(given), "mL", infused.working, infused.formula),
        _worked_out("running.remaining", left),
    ]
    if left.exact:
        entries.append(_worked_out("running.time_left", dosing.duration(left, speed, unit="min", rounding=WHOLE)))
    return entries


def _change(change: Change, rate: KeyEntry) -> list[KeyEntry]:
    """What a running infusion has done until now, which way it goes, and by how much."""
    before, after = change.before.in_unit("mL/h"), amount_of(rate).in_unit("mL/h")
    way = HOLD if change.hold else RAISE if after > before else LOWER
    entries = [_stated("change.before", change.before, "mL/h"), KeyEntry("change.way", way, None, choices=WAYS)]
    if not change.hold:
        by = normal(dosing.EXACT.apply(abs(after - before)))
        larger, smaller = (tell_exact(one, "mL/h") for one in (max(after, before), min(after, before)))
        working = f"{larger} \u2212 {smaller} = {dosing.show(Amount(by, 'mL/h'))}"
        entries.append(KeyEntry("change.by", by, "mL/h", (working,)))
    return entries


@_solved_once
def _secondary(line: str, secondary: Secondary, drugs: tuple[str, ...], rounding: Rounding) -> tuple[KeyEntry, ...]:
    to_infuse = _vtbi(f"{line}.vtbi", secondary.volume, secondary.reserve)
    return (
        KeyEntry(f"{line}.drug", secondary.drug, None, choices=drugs),
        _held(f"{line}.dose", secondary.dose),
        _stated(f"{line}.volume", secondary.volume, "mL"),
        _worked_out(f"{line}.concentration", strength_of(secondary.dose, secondary.volume)),
        _rate(f"{line}.rate", secondary, secondary.volume, rounding),
        to_infuse,
        _duration(f"{line}.duration", secondary, amount_of(to_infuse)),
    )


@_solved_once
def _by_dose_rate(
    dose: ByDoseRate, weight: Amount | None, drugs: tuple[str, ...], rounding: Rounding
) -> tuple[KeyEntry, ...]:
    strength = strength_of(dose.amount, dose.volume)
    weight = weight if unit(dose.ordered.unit).kind == "dose rate per weight" else None
    plain = pump_rate(dose.ordered, strength.amount, weight=weight, rounding=rounding)
    rate = replace(plain, working=(*strength.working, *plain.working))
    to_infuse = _vtbi("dose.vtbi", dose.volume, dose.reserve)
    per_hour = f"{strength.unit.split('/')[0]}/h"
    if weight is not None:
        by_weight = partial(dose_by_weight, dose.ordered, weight, unit=per_hour)
        hourly = _worked_out("dose.hourly", _sayable(lambda rounding: by_weight(rounding=rounding)))
    else:
        hourly = _stated("dose.hourly", dose.ordered, per_hour)
    return (
        KeyEntry("dose.drug", dose.drug, None, choices=drugs),
        _stated("dose.ordered", dose.ordered),
        _held("dose.amount", dose.amount),
        _stated("dose.volume", dose.volume, "mL"),
        _worked_out("dose.concentration", strength),
        hourly,
        _worked_out("dose.rate", rate),
        to_infuse,
        _worked_out("dose.duration", dosing.duration(amount_of(to_infuse), rate.amount, unit="min", rounding=WHOLE)),
    )


def _by_protocol(protocol: Protocol, dose: ByDoseRate, weight: Amount | None, rounding: Rounding) -> list[KeyEntry]:
    """What the table says for the newest result, and the rate that follows from it."""
    row, after = protocol.row, protocol.applied_to(dose.ordered)
    change = row.raise_by or row.lower_by
    way = HOLD_FIRST if row.hold is not None else RAISE if row.raise_by else LOWER if row.lower_by else LEAVE
    entries = [
        _stated("protocol.result", Amount(Decimal(protocol.result), "s")),
        KeyEntry("protocol.way", way, None, choices=BY_TABLE),
    ]
    working: tuple[str, ...] = ()
    if change is not None:
        entries.append(_stated("protocol.by", change))
        sign = "+" if row.raise_by is not None else "\u2212"
        working = (f"{dosing.show(dose.ordered)} {sign} {dosing.show(change)} = {dosing.show(after)}",)
    strength = strength_of(dose.amount, dose.volume)
    rate = pump_rate(after, strength.amount, weight=weight, rounding=rounding)
    entries.append(KeyEntry("protocol.ordered", normal(after.value), after.unit, working))
    entries.append(_worked_out("protocol.rate", replace(rate, working=(*working, *strength.working, *rate.working))))
    if row.hold is not None:
        entries.append(_stated("protocol.hold", row.hold, "min"))
    return entries


@_solved_once
def _push(push: Push, drugs: tuple[str, ...]) -> tuple[KeyEntry, ...]:
    """What is drawn up from the vial, and how much of it goes in each minute."""
    strength = strength_of(push.amount, push.volume)
    drawn = drawn_up(push, strength.amount)
    speed = each_minute(push, drawn)
    return (
        KeyEntry("push.drug", push.drug, None, choices=drugs),
        _held("push.dose", push.dose),
        _held("push.amount", push.amount),
        _stated("push.volume", push.volume, "mL"),
        _worked_out("push.concentration", strength),
        _worked_out("push.to_draw", drawn),
        _stated("push.duration", push.over, "min"),
        _worked_out("push.per_minute", speed),
    )


def strength_of(dose: Amount, volume: Amount) -> Result:
    """The concentration of a bag, as it can be said."""
    return _sayable(lambda rounding: dosing.concentration(dose, volume, rounding=rounding))


def _sayable(work_out: Callable[[Rounding], Result]) -> Result:
    """A result as it can be said: exact where its decimals are few, else in three significant digits.

    What follows from it follows from these digits (common practice, no source).
    """
    exact = work_out(dosing.EXACT)
    value = normal(exact.exact_decimal)
    if can_be_said(value):
        return exact
    return work_out(Rounding(Decimal(1).scaleb(value.adjusted() - _SIGNIFICANT + 1)))


def can_be_said(value: Decimal) -> bool:
    """Whether a number has so few digits that a person can say it and hear it read back."""
    digits, exponent = value.as_tuple().digits, value.as_tuple().exponent
    return isinstance(exponent, int) and exponent >= -_MOST_DECIMALS and len(digits) <= _MOST_DIGITS


def _flush(flush: Flush, order: Order) -> list[KeyEntry]:
    fluids = with_own(label_names().fluids, flush.fluid, order.laid_out.flush.fluid or flush.fluid)
    return [
        KeyEntry("flush.fluid", flush.fluid, None, choices=fluids),
        _stated("flush.volume", flush.volume, "mL"),
    ]


def _drugs(order: Order) -> tuple[str, ...]:
    """Every drug that a label may name, those of the order and those that are laid out among them."""
    ordered = [
        part.drug for part in (order.secondary, order.second_secondary, order.dose, order.push) if part is not None
    ]
    bench = order.laid_out
    laid_out = (bench.secondary, bench.second_secondary, bench.dose, bench.push)
    return with_own(label_names().drugs, *ordered, *(bag.drug for bag in laid_out if bag.drug is not None))


def _rate(name: str, infusion: Primary | Secondary, volume: Amount, rounding: Rounding) -> KeyEntry:
    if infusion.over is None:
        if infusion.rate is None:
            raise TypeError("an infusion has either a duration or a rate")
        return _stated(name, infusion.rate, "mL/h")
    formula = dosing.piggyback_rate if isinstance(infusion, Secondary) else dosing.flow_rate
    return _worked_out(name, formula(volume, infusion.over, rounding=rounding))


def _duration(name: str, infusion: Primary | Secondary, volume: Amount) -> KeyEntry:
    if infusion.over is not None:
        return _stated(name, infusion.over, "min")
    if infusion.rate is None:
        raise TypeError("an infusion has either a duration or a rate")
    return _worked_out(name, dosing.duration(volume, infusion.rate, unit="min", rounding=WHOLE))


def _vtbi(name: str, bag: Amount, reserve: Amount) -> KeyEntry:
    return _worked_out(name, dosing.vtbi(bag, reserve)) if reserve.value else _stated(name, bag, "mL")


def _held(name: str, dose: Amount) -> KeyEntry:
    """A dose as the key gives it: a mass in mg, whatever the order writes, as the checklists ask for it."""
    return _stated(name, dose, "mg" if same_dimension(dose.unit, "mg") else None)


def _stated(name: str, amount: Amount, wanted: str | None = None) -> KeyEntry:
    """What the order states itself, in the unit in which the key gives it."""
    wanted = wanted or amount.unit
    if wanted == amount.unit:
        return KeyEntry(name, normal(amount.value), amount.unit)
    value = normal(dosing.EXACT.apply(amount.in_unit(wanted)))
    working = f"{dosing.show(amount)} = {dosing.show(Amount(value, wanted))}"
    return KeyEntry(name, value, wanted, (working,))


def _worked_out(name: str, result: Result) -> KeyEntry:
    return KeyEntry(name, normal(result.value), result.unit, result.working, result.formula, result.exact)


def _named(entries: Sequence[KeyEntry], name: str) -> KeyEntry:
    return next(entry for entry in entries if entry.name == name)


def amount_of(entry: KeyEntry) -> Amount:
    """The number of an entry with its unit; a name is a mistake of the caller."""
    if isinstance(entry.value, str) or entry.unit is None:
        raise TypeError(f"{entry.name} is a name and no number")
    return Amount(entry.value, entry.unit)
