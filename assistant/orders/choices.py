"""Every infusion that can be drawn, by how much arithmetic it asks: made from the shelf, kept within the limits."""

import itertools
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction
from functools import lru_cache

from assistant.dosing import EXACT, TENTH, Amount, Measure, flow_rate, parse_amount
from assistant.dosing.body import body_weight
from assistant.dosing.dose_rate import pump_rate
from assistant.dosing.gravity import drop_rate
from assistant.dosing.limits import Finding, Limits
from assistant.dosing.result import Result
from assistant.dosing.strength import concentration
from assistant.dosing.units import unit
from assistant.orders.by_hand import drawn_up, each_minute
from assistant.orders.lines import ByDoseRate, Gravity, Primary, Push, Secondary
from assistant.orders.plausible import stopping, table
from assistant.orders.shelf import DoseRateDrug, Drug, PushDrug, shelf

_BAGS = ("250 mL", "500 mL", "1,000 mL", "1 L")
_HOURS = (
    *("4 h", "5 h", "6 h", "7 h", "8 h", "9 h", "10 h", "12 h", "14 h", "15 h", "16 h", "18 h", "20 h", "22 h", "24 h"),
)
RATES = ("40 mL/h", "50 mL/h", "60 mL/h", "75 mL/h", "80 mL/h", "100 mL/h", "110 mL/h", "125 mL/h", "150 mL/h")
"""At which a primary is ordered by rate."""
_RESERVES = ("25 mL", "50 mL")
"""What stays in a primary's bag, so that a pump never runs it dry (common practice, no source)."""
_NOTHING_KEPT = "0 mL"
"""By gravity nothing stops the flow at a reserve."""
_SMALL_RESERVE, _SMALL_BAG_ML = "10 mL", 150
_DOSE_RESERVE = "20 mL"
"""What stays in a bag by dose rate: less of a small bag (common practice, no source)."""
_SHORTEST_H, _LONGEST_H = 4, 24
"""What is ordered as continuous runs at least so long (common practice, no source); a bag hangs at most so long
(policy of the Ostrey Harbour Teaching Lab, in ``limits.toml``)."""
_FACTORS = ("10 gtt/mL", "15 gtt/mL", "20 gtt/mL", "60 gtt/mL")
_KILOGRAMS = range(48, 111, 2)
_POUNDS = range(110, 241, 10)
_LOWEST_RATE, _HIGHEST_RATE = 1, 250
"""mL/h that an infusion by dose rate is drawn with (common practice, no source)."""
_FEWEST_DROPS, _MOST_DROPS = 8, 100
"""Drops a minute that an eye can count (common practice, no source)."""
_EASY_MINUTES = (15, 20, 30)
"""Minutes that are a plain part of an hour."""


@dataclass(frozen=True)
class WithSet:
    """A primary that can be drawn, with a gravity set where it runs without a pump.

    Attributes:
        primary, gravity: parts of the order.
        hurdles: roundings and conversions of units that its key asks for.
    """

    primary: Primary
    gravity: Gravity | None
    hurdles: int


@dataclass(frozen=True)
class Dosed:
    """A secondary that can be drawn, with what the shelf knows of its drug."""

    secondary: Secondary
    drug: Drug
    hurdles: int


@dataclass(frozen=True)
class Rated:
    """An infusion by dose rate with the body weight for which it is drawn (None where it is not by weight)."""

    dose: ByDoseRate
    weight: Amount | None
    drug: DoseRateDrug
    hurdles: int


@dataclass(frozen=True)
class Pushed:
    """A drug by hand that can be drawn, with what the shelf knows of it."""

    push: Push
    drug: PushDrug
    hurdles: int


@lru_cache(maxsize=2)
def primaries(by_gravity: bool) -> tuple[WithSet, ...]:
    """Every primary within the limits: each fluid, bag, reserve, and time or rate.

    Args:
        by_gravity: with a gravity set of each usual drop factor, instead of a pump.
    """
    return tuple(_gravities() if by_gravity else _primaries())


def _primaries(reserves: Sequence[str] = _RESERVES) -> Iterator[WithSet]:
    for bag in map(parse_amount, _BAGS):
        for speed in map(parse_amount, (*_HOURS, *RATES)):
            by_time = unit(speed.unit).kind == "duration"
            worked = flow_rate(bag, speed) if by_time else None
            if not _is_continuous(bag, worked or speed):
                continue
            fluids = [fluid.name for fluid in shelf().fluids if _runs(fluid.name, worked or speed)]
            hurdles = _cut(worked) + (bag.unit != "mL")
            for reserve in map(parse_amount, reserves):
                if not by_time and not _whole_minutes(bag, reserve, speed):
                    continue
                for fluid in fluids:
                    over, rate = (speed, None) if by_time else (None, speed)
                    primary = Primary(fluid=fluid, bag_volume=bag, over=over, rate=rate, reserve=reserve)
                    yield WithSet(primary, None, hurdles)


def _is_continuous(bag: Amount, rate: Measure) -> bool:
    """Whether a bag lasts for a time that anybody would call continuous, and no longer than a bag may hang."""
    return _SHORTEST_H <= bag.in_unit("mL") / rate.in_unit("mL/h") <= _LONGEST_H


def _runs(fluid: str, rate: Measure) -> bool:
    return not stopping(table().check(fluid, rate=rate))


def _gravities() -> Iterator[WithSet]:
    sets = [Gravity(drop_factor=parse_amount(text)) for text in _FACTORS]
    for hung in _primaries((_NOTHING_KEPT,)):
        for gravity in sets:
            drops = _drops(hung.primary.bag_volume, hung.primary.over, hung.primary.rate, gravity.drop_factor)
            if _FEWEST_DROPS <= drops.value <= _MOST_DROPS:
                yield WithSet(hung.primary, gravity, hung.hurdles + _cut(drops))


def can_be_counted(rate: Amount, gravity: Gravity | None) -> bool:
    """Whether an eye can count the drops of a rate; through a pump nobody counts any."""
    return gravity is None or _FEWEST_DROPS <= drop_rate(gravity.drop_factor, rate=rate).value <= _MOST_DROPS


@lru_cache(maxsize=2048)
def _drops(volume: Amount, over: Amount | None, rate: Amount | None, factor: Amount) -> Result:
    return drop_rate(factor, rate=rate or flow_rate(volume, over or never()).amount)


def never() -> Amount:
    """What takes the place of a duration that an infusion by rate does not have."""
    raise TypeError("an infusion has either a duration or a rate")


def _whole_minutes(volume: Amount, reserve: Amount, rate: Amount) -> bool:
    """Whether the time comes out in whole minutes: nobody is asked for a part of one."""
    infused = volume.in_unit("mL") - reserve.in_unit("mL")
    return infused > 0 and (infused * 60 / rate.ratio).denominator == 1


@lru_cache(maxsize=1)
def secondaries() -> tuple[Dosed, ...]:
    """Every intermittent infusion within the limits: each drug, bag, time and frequency."""
    limits = table()
    found: list[Dosed] = []
    for drug in (*shelf().drugs, *shelf().electrolytes):
        for dose, volume in drug.bags:
            for over in drug.over:
                if stopping(check(limits, drug.name, dose, volume, over)):
                    continue
                hurdles = _cut(flow_rate(volume, over)) + (dose.unit == "g") + _odd(over)
                for frequency in drug.frequency:
                    secondary = Secondary(drug=drug.name, dose=dose, volume=volume, over=over, frequency=frequency)
                    found.append(Dosed(secondary, drug, hurdles))
    return tuple(found)


def check(limits: Limits, drug: str, dose: Amount, volume: Amount, over: Amount) -> tuple[Finding, ...]:
    """What the limits say about one intermittent dose through a peripheral line."""
    return limits.check(drug, dose=dose, duration=over, concentration=concentration(dose, volume))


@lru_cache(maxsize=1)
def rated() -> tuple[Rated, ...]:
    """Every infusion by dose rate within the limits: each drug, bag, step and body weight."""
    limits = table()
    kilos = [Amount(Decimal(number), "kg") for number in _KILOGRAMS]
    found: list[Rated] = []
    for drug in shelf().rates:
        for amount, volume in drug.bags:
            strength = concentration(amount, volume)
            for ordered in drug.ordered:
                by_weight = unit(ordered.unit).kind == "dose rate per weight"
                dose = ByDoseRate(
                    drug=drug.name,
                    ordered=ordered,
                    amount=amount,
                    volume=volume,
                    reserve=parse_amount(_SMALL_RESERVE if volume.in_unit("mL") < _SMALL_BAG_ML else _DOSE_RESERVE),
                    target=drug.target,
                )
                if stopping(limits.check(drug.name, dose_rate=ordered, concentration=strength, weight=kilos[0])):
                    continue
                grams = amount.unit == "g"
                if not by_weight:
                    rate = pump_rate(ordered, strength)
                    if _lasts(volume, rate.exact):
                        found.append(Rated(dose, None, drug, _cut(rate) + grams))
                    continue
                per_kilo = pump_rate(ordered, strength, unit="mL/kg/h", rounding=EXACT)
                for weight, hurdles in _weights(per_kilo):
                    if _lasts(volume, per_kilo.exact * weight.in_unit("kg")):
                        found.append(Rated(dose, weight, drug, hurdles + grams))
    return tuple(found)


@lru_cache(maxsize=1)
def pushes() -> tuple[Pushed, ...]:
    """Every drug by hand within the limits: each vial, dose, time and frequency."""
    found: list[Pushed] = []
    for drug, (amount, volume) in ((one, vial) for one in shelf().pushes for vial in one.vials):
        strength = concentration(amount, volume)
        for dose, over in itertools.product(drug.doses, drug.over):
            if dose.ratio > amount.in_unit(dose.unit) or stopping(table().check(drug.name, dose=dose, duration=over)):
                continue
            for frequency in drug.frequency:
                push = Push(drug=drug.name, dose=dose, amount=amount, volume=volume, over=over, frequency=frequency)
                drawn = drawn_up(push, strength)
                in_part = dose.ratio < amount.in_unit(dose.unit)
                found.append(Pushed(push, drug, _cut(drawn) + _cut(each_minute(push, drawn)) + in_part))
    return tuple(found)


def _lasts(volume: Amount, rate: Fraction) -> bool:
    """Whether a bag is used up, at a rate in mL/h, before it has hung too long."""
    return volume.in_unit("mL") / rate <= _LONGEST_H


def _weights(per_kilo: Result) -> Iterator[tuple[Amount, int]]:
    """Body weights for which a pump takes the rate well, with what they ask of the learner.

    Pounds are taken only where the rate is the same whether they are rounded to 0.1 kg before or not.
    """
    for number in _KILOGRAMS:
        exact = per_kilo.exact * number
        if _LOWEST_RATE <= exact <= _HIGHEST_RATE:
            yield Amount(Decimal(number), "kg"), int(TENTH.apply(exact) != exact)
    for number in _POUNDS:
        weight = Amount(Decimal(number), "lb")
        rate = TENTH.apply(per_kilo.exact * weight.in_unit("kg"))
        if _LOWEST_RATE <= rate <= _HIGHEST_RATE and _is_same_either_way(per_kilo, weight):
            yield weight, 2


def _is_same_either_way(per_kilo: Result, weight: Amount) -> bool:
    """Whether the rate is the same whether a weight in pounds is rounded to 0.1 kg before or not."""
    rate = TENTH.apply(per_kilo.exact * weight.in_unit("kg"))
    return rate == TENTH.apply(per_kilo.exact * body_weight(weight).amount.ratio)


def is_weighed_alike(dose: ByDoseRate, weight: Amount | None) -> bool:
    """The same of an order by dose rate; always where no weight, or one in kilograms, goes into it."""
    if weight is None or unit(dose.ordered.unit).kind != "dose rate per weight":
        return True
    strength = concentration(dose.amount, dose.volume)
    return _is_same_either_way(pump_rate(dose.ordered, strength, unit="mL/kg/h", rounding=EXACT), weight)


def _cut(result: Result | None) -> bool:
    """Whether a result had to be rounded."""
    return result is not None and result.exact != result.amount.ratio


def _odd(over: Amount) -> bool:
    """Whether the minutes have to be turned into hours with care."""
    minutes = over.in_unit("min")
    return minutes not in _EASY_MINUTES and minutes % 60 != 0
