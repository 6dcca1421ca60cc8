"""Every formula worked out a second time: ``python -m tests.dosing.second [10000] [FORMULA ...]``.

Written from the textbook's rule and not from the code: a case is drawn as people write it, goes through the public door
as text, and is worked out beside it in plain fractions. What a unit is worth is asked of pint (in fractions), never of
this project's own list; salts have their molar masses from a table of their own. A case that the project refuses must
be one that has no answer by its own words: it rounds to nothing, or is beyond clinical size.

Sources of the rules: Open RN, Nursing Skills, chapter 5 (flow, drops, times); US Army Subcourse MD0904, Lesson 2 (dose,
drops); BCcampus, A Guide to Numeracy in Nursing (weight); Mosteller 1987 (surface area); Holliday and Segar 1957
(maintenance); JCGM 100:2008 (uncertainty of a mean). Where nothing is named, the rule is the meaning of the words.
"""

import itertools
import random
import sys
from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from decimal import Context, Decimal
from fractions import Fraction
from functools import lru_cache

import pint

from assistant.dosing.clock import Moment
from assistant.dosing.formulas import FORMULAS, solve
from assistant.dosing.result import Result
from assistant.errors import QuantityError

_REGISTRY = pint.UnitRegistry(non_int_type=Fraction)
_PLAIN = {
    "ng": "nanogram",
    "mcg": "microgram",
    "mg": "milligram",
    "g": "gram",
    "kg": "kilogram",
    "lb": "pound",
    "mL": "milliliter",
    "L": "liter",
    "s": "second",
    "min": "minute",
    "h": "hour",
    "day": "day",
    "days": "day",
    "cm": "centimeter",
    "m": "meter",
    "in": "inch",
    "mmol": "millimole",
}
_BASES = ("milligram", "milliliter", "hour", "centimeter", "millimole")
_COUNTED = {
    "units": 1,
    "milliunits": Fraction(1, 1000),
    "gtt": 1,
    "mEq": 1,
    "%": 1,
    "dose": 1,
    "doses": 1,
    "m\u00b2": 1,
}
"""What has no other size than its own number."""


@lru_cache(maxsize=1000)
def size(unit: str) -> Fraction:
    """How much one of a unit is in mg, mL, h, cm, mmol, gtt, units, mEq, m\u00b2; kg in a denominator."""
    top, *below = unit.split("/")
    value = _simple(top)
    for part in below:
        value /= _simple(part) / (_simple("kg") if part in ("kg", "lb") else 1)
    return value


def _simple(name: str) -> Fraction:
    if name in _COUNTED:
        return Fraction(_COUNTED[name])
    quantity = _REGISTRY.Quantity(Fraction(1), _PLAIN[name])
    base = next(one for one in _BASES if quantity.is_compatible_with(one))
    return Fraction(quantity.to(base).magnitude)


@dataclass(frozen=True)
class Written:
    """An amount as it is written, and what it is in the units of `size`."""

    text: str
    value: Fraction

    @property
    def unit(self) -> str:
        """The unit as it is written."""
        return self.text.partition(" ")[2]


@dataclass(frozen=True)
class Expected:
    """One answer: its exact value and its unit; the decimals to which it is rounded, None where it is not."""

    value: Fraction
    unit: str
    places: int | None = None
    step: Fraction | None = None

    def rounded(self) -> Fraction:
        """Half up, to the places or to the step."""
        step = self.step or Fraction(1, 10 ** (self.places or 0))
        count = self.value / step
        low = count.numerator // count.denominator
        return step * (low + (count - low >= Fraction(1, 2)))


Case = tuple[dict[str, str], Sequence[Expected] | str]
"""Inputs by name, and every answer; of a clock time, its text."""


class Draw:
    """Amounts by chance, as people write them."""

    def __init__(self, seed: int) -> None:
        self.chance = random.Random(seed)  # noqa: S311 - cases to repeat, no secret

    def number(self, low: Fraction, high: Fraction) -> Decimal:
        """A number with few decimals, and with enough for fifty different ones."""
        places = self.chance.choice((0, 0, 1, 2, 3))
        while high * 10**places < 50:
            places += 1
        bottom = max(1, (low * 10**places).__ceil__())
        return Decimal(self.chance.randint(bottom, (high * 10**places).__floor__())).scaleb(-places).normalize()

    def amount(self, low: float, high: float, *units: str) -> Written:
        """An amount whose bounds are in the first of the units."""
        unit = self.chance.choice(units)
        ratio = size(units[0]) / size(unit)
        value = self.number(Fraction(str(low)) * ratio, Fraction(str(high)) * ratio)
        return Written(f"{value:f} {unit}", Fraction(value) * size(unit))

    def one_of(self, *choices: str) -> str:
        """One of some texts."""
        return self.chance.choice(choices)

    def yes(self) -> bool:
        """A coin."""
        return self.chance.random() < 0.5

    def volume(self, low: float = 1, high: float = 5000) -> Written:
        """In mL or L."""
        return self.amount(low, high, "mL", "L")

    def time(self, low: float = 1, high: float = 1440) -> Written:
        """In min, h or s."""
        return self.amount(low, high, "min", "h", "s")

    def rate(self) -> Written:
        """In mL/h or mL/min."""
        return self.amount(1, 900, "mL/h", "mL/min")

    def factor(self) -> Written:
        """A set's drop factor."""
        return self.amount(10, 60, "gtt/mL")

    def kind(self) -> tuple[str, tuple[str, ...]]:
        """What a drug is counted in: the unit of the rule, and those in which it is written."""
        return self.chance.choice((("mg", ("mg", "g", "mcg")), ("units", ("units",)), ("mEq", ("mEq",))))

    def weight(self) -> Written:
        """A body weight whose value is in kg."""
        found = self.amount(40, 150, "kg", "lb")
        return Written(found.text, found.value / size("kg"))

    def strength(self, names: tuple[str, ...]) -> Written:
        """A concentration in one of four ways of writing; its value is per mL."""
        name = self.chance.choice(names)
        way = self.chance.randrange(4 if "mg" in names else 2)
        if way == 0:
            return self.amount(0.5, 500, f"{name}/mL")
        if way == 1:
            dose, volume = self.amount(1, 5000, name), self.volume()
            return Written(f"{dose.text} in {volume.text}", dose.value / volume.value)
        if way == 2:
            percent = self.number(Fraction(1, 10), Fraction(60))
            return Written(f"{percent:f} %", Fraction(percent) * 10)
        parts = self.chance.choice((100, 1000, 10_000))
        return Written(f"1:{parts}", Fraction(1000, parts))


def _texts(**given: Written | str | None) -> dict[str, str]:
    plain = {name.replace("_", "-"): one for name, one in given.items() if one is not None}
    return {name: one if isinstance(one, str) else one.text for name, one in plain.items()}


def _rate(draw: Draw) -> Case:
    volume, time = draw.volume(), draw.time()
    return _texts(volume=volume, duration=time), [Expected(volume.value / time.value, "mL/h", 1)]


def _volume(draw: Draw) -> Case:
    rate, time = draw.rate(), draw.time()
    return _texts(rate=rate, duration=time), [Expected(rate.value * time.value, "mL")]


def _duration(draw: Draw) -> Case:
    volume, unit = draw.volume(), draw.one_of("min", "h")
    if draw.yes():
        rate = draw.rate()
        hours = volume.value / rate.value
        return _texts(volume=volume, rate=rate, unit=unit), [Expected(hours / size(unit), unit, 1)]
    drops, factor = draw.amount(5, 100, "gtt/min"), draw.factor()
    hours = volume.value * factor.value / drops.value
    given = _texts(volume=volume, rate=drops, drop_factor=factor, unit=unit)
    return given, [Expected(hours / size(unit), unit, 1)]


def _vtbi(draw: Draw) -> Case:
    bag, reserve = draw.volume(200, 3000), draw.volume(1, 100)
    overfill = draw.volume(1, 90) if draw.yes() else None
    more = overfill.value if overfill else 0
    given = _texts(bag_volume=bag, reserve=reserve, overfill=overfill)
    return given, [Expected(bag.value + more - reserve.value, "mL")]


def _left(draw: Draw) -> tuple[dict[str, str], Fraction, Fraction]:
    volume, rate, elapsed = draw.volume(), draw.rate(), draw.time(1, 600)
    left = max(Fraction(0), volume.value - rate.value * elapsed.value)
    return _texts(volume=volume, rate=rate, elapsed=elapsed), left, rate.value


def _remaining_volume(draw: Draw) -> Case:
    given, left, _ = _left(draw)
    return given, [Expected(left, "mL")]


def _remaining_time(draw: Draw) -> Case:
    given, left, rate = _left(draw)
    return given, [Expected(left / rate * 60, "min", 1)]


def _bag_lasts(draw: Draw) -> Case:
    bag, rate, wanted = draw.volume(), draw.rate(), draw.time()
    return _texts(available=bag, rate=rate, wanted=wanted), [
        Expected(max(Fraction(0), rate.value * wanted.value - bag.value), "mL")
    ]


def _two_rates(draw: Draw) -> tuple[Written, Written, Written, Fraction]:
    while True:
        volume, first, time = draw.volume(100, 3000), draw.rate(), draw.time(5, 300)
        if (left := volume.value - first.value * time.value) > 0:
            return volume, first, time, left


def _two_rate_time(draw: Draw) -> Case:
    (volume, first, time, left), then = _two_rates(draw), draw.rate()
    given = _texts(volume=volume, first_rate=first, first_duration=time, rate=then)
    return given, [Expected((time.value + left / then.value) * 60, "min", 1)]


def _rate_for_the_rest(draw: Draw) -> Case:
    volume, first, time, left = _two_rates(draw)
    whole = draw.time(301, 2000)
    given = _texts(volume=volume, first_rate=first, first_duration=time, duration=whole)
    return given, [Expected(left / (whole.value - time.value), "mL/h", 1)]


def _clock(minutes: Fraction, after: int) -> str:
    """A time of the clock, so many minutes after another one: rounded half up to the minute."""
    at = (minutes + Fraction(1, 2)).__floor__() + after
    days, rest = divmod(at, 1440)
    text = f"{rest // 60:02}:{rest % 60:02}"
    words = {0: "", 1: " next day", -1: " the day before"}
    return text + words.get(days, f" {days} days later" if days > 0 else f" {-days} days before")


def _start(draw: Draw) -> tuple[str, int]:
    minute = draw.chance.randrange(1440)
    return f"{minute // 60:02}:{minute % 60:02}", minute


def _completion_time(draw: Draw) -> Case:
    (start, at), volume, rate = _start(draw), draw.volume(), draw.rate()
    return _texts(start=start, volume=volume, rate=rate), _clock(volume.value / rate.value * 60, at)


def _latest_start(draw: Draw) -> Case:
    (end, at), time = _start(draw), draw.time(1, 4000)
    return _texts(end=end, duration=time), _clock(-time.value * 60, at)


def _next_bag_due(draw: Draw) -> Case:
    (start, at), bag, rate = _start(draw), draw.volume(500, 3000), draw.amount(20, 200, "mL/h")
    reserve, ahead = draw.volume(1, 100), draw.time(1, 60)
    given = _texts(start=start, bag_volume=bag, rate=rate, reserve=reserve, ahead=ahead)
    return given, _clock(((bag.value - reserve.value) / rate.value - ahead.value) * 60, at)


def _due_time(draw: Draw) -> Case:
    (start, at), interval = _start(draw), draw.amount(1, 200, "h", "days", "min")
    return _texts(start=start, interval=interval), _clock(interval.value * 60, at)


def _drop_rate(draw: Draw) -> Case:
    factor, volume, time = draw.factor(), draw.volume(20, 2000), draw.time(20, 1440)
    if draw.yes():
        exact = volume.value * factor.value / (time.value * 60)
        return _texts(drop_factor=factor, volume=volume, duration=time), [Expected(exact, "gtt/min", 0)]
    rate = draw.rate()
    return _texts(drop_factor=factor, rate=rate), [Expected(rate.value * factor.value / 60, "gtt/min", 0)]


def _rate_from_drops(draw: Draw) -> Case:
    drops, window, factor = draw.chance.randint(3, 200), draw.amount(15, 120, "s", "min"), draw.factor()
    given = _texts(drops=f"{drops} gtt", window=window, drop_factor=factor)
    return given, [Expected(drops / window.value / factor.value, "mL/h", 1)]


def _rate_from_drop_rate(draw: Draw) -> Case:
    drops, factor = draw.amount(5, 100, "gtt/min"), draw.factor()
    return _texts(drop_rate=drops, drop_factor=factor), [Expected(drops.value / factor.value, "mL/h", 1)]


def _percent_off(draw: Draw) -> Case:
    found, ordered = draw.rate(), draw.rate()
    return _texts(found=found, ordered=ordered), [Expected(100 * (found.value / ordered.value - 1), "%", 1)]


def _live_count(draw: Draw) -> Case:
    seconds, factor = [Decimal(0)], draw.factor()
    for _ in range(draw.chance.randint(2, 8)):
        seconds.append(seconds[-1] + Decimal(draw.chance.randint(5, 300)).scaleb(-2))
    times = [Fraction(one) for one in seconds]
    written = [f"{one.normalize():f}" for one in seconds]
    gaps = [after - before for before, after in itertools.pairwise(times)]
    mean = sum(gaps, Fraction(0)) / len(gaps)
    rate = 3600 / mean / factor.value
    variance = sum(((gap - mean) ** 2 for gap in gaps), Fraction(0)) / (len(gaps) - 1)
    spread = 2 * rate * _root(variance / len(gaps)) / mean
    return _texts(times=", ".join(written), drop_factor=factor), [
        Expected(rate, "mL/h", 1),
        Expected(spread, "mL/h", 1),
    ]


def _root(square: Fraction) -> Fraction:
    wide = Context(prec=60)
    return Fraction(wide.sqrt(wide.divide(Decimal(square.numerator), Decimal(square.denominator))))


def _concentration(draw: Draw) -> Case:
    rule, names = draw.kind()
    dose, volume = draw.amount(1, 5000, *names), draw.volume()
    added = draw.volume(0.5, 50) if draw.yes() else None
    whole = volume.value + (added.value if added else 0)
    given = _texts(dose=dose, volume=volume, added=added)
    if rule == "mg" and draw.yes():
        return given | {"unit": "%"}, [Expected(dose.value / 1000 / whole * 100, "%")]
    return given, [Expected(dose.value / whole, f"{rule}/mL")]


def _drawn_up(exact: Fraction) -> Expected:
    return Expected(exact, "mL", 2 if exact < 1 else 1)


def _volume_for_dose(draw: Draw) -> Case:
    _, names = draw.kind()
    strength = draw.strength(names)
    if draw.yes():
        weight, dose = draw.weight(), draw.amount(0.5, 100, *(f"{name}/kg" for name in names))
        given = _texts(dose=dose, concentration=strength, weight=weight)
        return given, [_drawn_up(dose.value * weight.value / strength.value)]
    dose = draw.amount(1, 5000, *names)
    return _texts(dose=dose, concentration=strength), [_drawn_up(dose.value / strength.value)]


def _dose_in_volume(draw: Draw) -> Case:
    rule, names = draw.kind()
    volume, strength = draw.volume(0.5, 1000), draw.strength(names)
    given = _texts(volume=volume, concentration=strength, unit=rule)
    return given, [Expected(volume.value * strength.value, rule)]


def _dose_by_weight(draw: Draw) -> Case:
    _, names = draw.kind()
    weight, top, time = draw.weight(), draw.one_of(*names), draw.one_of("", "/h", "/min", "/day")
    ordered, wanted = draw.amount(0.5, 100, f"{top}/kg{time}"), draw.one_of(*names)
    exact = ordered.value * weight.value / size(f"{wanted}{time}")
    return _texts(ordered=ordered, weight=weight, unit=f"{wanted}{time}"), [Expected(exact, f"{wanted}{time}")]


def _dose_with_maximum(draw: Draw) -> Case:
    weight, ordered, most = draw.weight(), draw.amount(1, 50, "mg/kg", "mcg/kg"), draw.amount(100, 2000, "mg", "g")
    exact = min(ordered.value * weight.value, most.value)
    return _texts(ordered=ordered, weight=weight, maximum=most, unit="mg"), [Expected(exact, "mg")]


def _dose_per_kg(draw: Draw) -> Case:
    dose, weight = draw.amount(10, 5000, "mg", "g"), draw.weight()
    return _texts(dose=dose, weight=weight, unit="mg/kg"), [Expected(dose.value / weight.value, "mg/kg")]


def _volume_by_weight(draw: Draw) -> Case:
    weight, per = draw.weight(), draw.one_of("mL/kg", "mL/kg/h", "mL/kg/day")
    ordered = draw.amount(0.5, 50, per)
    unit = "mL" if per == "mL/kg" else "mL/h"
    return _texts(ordered=ordered, weight=weight), [Expected(ordered.value * weight.value, unit, 1)]


def _dose_by_area(draw: Draw) -> Case:
    ordered, area = draw.amount(1, 500, "mg/m\u00b2", "g/m\u00b2"), draw.amount(0.5, 2.5, "m\u00b2")
    return _texts(ordered=ordered, area=area, unit="mg"), [Expected(ordered.value * area.value, "mg")]


def _dose_rate_of(draw: Draw, names: tuple[str, ...]) -> tuple[Written, Written | None, Fraction]:
    """A dose rate, with a weight where it is per kg; what it is in an hour."""
    time, name = draw.one_of("h", "min"), draw.one_of(*names)
    if draw.yes():
        weight, rate = draw.weight(), draw.amount(0.1, 100, f"{name}/kg/{time}")
        return rate, weight, rate.value * weight.value
    rate = draw.amount(0.5, 2000, f"{name}/{time}")
    return rate, None, rate.value


def _pump_rate(draw: Draw) -> Case:
    _, names = draw.kind()
    rate, weight, hourly = _dose_rate_of(draw, names)
    strength = draw.strength(names)
    given = _texts(dose_rate=rate, concentration=strength, weight=weight)
    return given, [Expected(hourly / strength.value, "mL/h", 1)]


def _dose_rate(draw: Draw) -> Case:
    _, names = draw.kind()
    rate, strength, name, time = draw.rate(), draw.strength(names), draw.one_of(*names), draw.one_of("h", "min")
    if draw.yes():
        weight = draw.weight()
        unit = f"{name}/kg/{time}"
        given = _texts(rate=rate, concentration=strength, weight=weight, unit=unit)
        return given, [Expected(rate.value * strength.value / weight.value / size(unit), unit, 3)]
    unit = f"{name}/{time}"
    given = _texts(rate=rate, concentration=strength, unit=unit)
    return given, [Expected(rate.value * strength.value / size(unit), unit, 3)]


def _rate_factor(draw: Draw) -> Case:
    _, names = draw.kind()
    strength, per = draw.strength(names), f"{draw.one_of(*names)}/{draw.one_of('h', 'min')}"
    return _texts(concentration=strength, per=per), [Expected(size(per) / strength.value, f"mL/h per {per}")]


def _mean_dose_rate(draw: Draw) -> Case:
    _, names = draw.kind()
    dose, time = draw.amount(1, 5000, *names), draw.time()
    unit = f"{draw.one_of(*names)}/{draw.one_of('h', 'min')}"
    exact = dose.value / time.value / size(unit)
    return _texts(dose=dose, duration=time, unit=unit), [Expected(exact, unit)]


def _dose_over_time(draw: Draw) -> Case:
    rule, names = draw.kind()
    rate, weight, hourly = _dose_rate_of(draw, names)
    time, loading = draw.time(), draw.amount(1, 500, *names) if draw.yes() else None
    exact = hourly * time.value + (loading.value if loading else 0)
    return _texts(dose_rate=rate, duration=time, weight=weight, loading=loading), [Expected(exact, rule)]


def _sum_of_doses(draw: Draw) -> Case:
    rule, names = draw.kind()
    doses = [draw.amount(1, 5000, *names) for _ in range(draw.chance.randint(1, 5))]
    given = {"doses": "; ".join(dose.text for dose in doses), "unit": rule}
    return given, [Expected(sum((dose.value for dose in doses), Fraction(0)), rule)]


def _lasting(draw: Draw, name: str) -> tuple[dict[str, str], Fraction]:
    _, names = draw.kind()
    rate, weight, hourly = _dose_rate_of(draw, names)
    dose = draw.amount(10, 5000, *names)
    return _texts(dose=dose, weight=weight) | {name: rate.text}, dose.value / hourly


def _dose_lasts(draw: Draw) -> Case:
    given, hours = _lasting(draw, "dose-rate")
    unit = draw.one_of("min", "h")
    return given | {"unit": unit}, [Expected(hours / size(unit), unit, 1)]


def _shortest_time(draw: Draw) -> Case:
    given, hours = _lasting(draw, "highest-rate")
    never = draw.time(5, 120)
    return given | {"never-under": never.text}, [Expected(max(hours, never.value) * 60, "min")]


def _loading_dose(draw: Draw, names: tuple[str, ...], by_weight: bool) -> Written:
    return draw.amount(1, 50, *(f"{name}/kg" for name in names)) if by_weight else draw.amount(50, 5000, *names)


def _bolus(draw: Draw) -> Case:
    _, names = draw.kind()
    strength, time, by_weight = draw.strength(names), draw.time(1, 120), draw.yes()
    dose, weight = _loading_dose(draw, names, by_weight), draw.weight() if by_weight else None
    volume = dose.value * (weight.value if weight else 1) / strength.value
    given = _texts(dose=dose, concentration=strength, duration=time, weight=weight)
    return given, [Expected(volume / time.value, "mL/h", 1), _drawn_up(volume)]


def _loading(draw: Draw) -> Case:
    _, names = draw.kind()
    strength, time, by_weight = draw.strength(names), draw.time(5, 120), draw.yes()
    then, weight, hourly = _dose_rate_of(draw, names)
    if by_weight and weight is None:
        weight = draw.weight()
    dose = _loading_dose(draw, names, by_weight)
    volume = dose.value * (weight.value if by_weight and weight else 1) / strength.value
    given = _texts(loading=dose, loading_duration=time, maintenance=then, concentration=strength, weight=weight)
    return given, [
        Expected(volume / time.value, "mL/h", 1),
        Expected(hourly / strength.value, "mL/h", 1),
        _drawn_up(volume),
    ]


def _titration(draw: Draw) -> Case:
    strength, start = draw.strength(("mg", "mcg")), draw.amount(1, 10, "mg/h")
    step, highest = draw.amount(1, 5, "mg/h"), draw.amount(10, 40, "mg/h")
    at, rates = start.value, []
    while at <= highest.value:
        rates.append(Expected(at / strength.value, "mL/h", 1))
        at += step.value
    return _texts(start=start, step=step, highest=highest, concentration=strength), rates


def _body_weight(draw: Draw) -> Case:
    weight = draw.amount(1, 300, "kg", "lb", "g")
    return _texts(weight=weight), [Expected(weight.value / size("kg"), "kg", 1)]


_ALIKE = (("mg", "g", "mcg", "ng"), ("mL", "L"), ("min", "h", "s", "days"), ("mL/h", "mL/min"), ("cm", "in", "m"))
_ALIKE += (("mg/kg/h", "mcg/kg/min"), ("mg/mL", "g/L"), ("kg", "lb"))


def _convert(draw: Draw) -> Case:
    names = draw.chance.choice(_ALIKE)
    given, wanted = draw.amount(1, 500, *names), draw.one_of(*names)
    if names == ("kg", "lb") and given.unit != wanted:
        factor = draw.amount(2.1, 2.3, "lb/kg")
        number = Fraction(given.text.split(" ")[0])
        plain = Fraction(factor.text.split(" ")[0])
        exact = number / plain if wanted == "kg" else number * plain
        return _texts(given=given, unit=wanted, factor=factor), [Expected(exact, wanted)]
    return _texts(given=given, unit=wanted), [Expected(given.value / size(wanted), wanted)]


def _round(draw: Draw) -> Case:
    given, (rule, step) = (
        draw.amount(1, 500, "mL/h"),
        draw.chance.choice((("whole", 1), ("tenth", Fraction(1, 10)), ("hundredth", Fraction(1, 100)))),
    )
    return _texts(given=given, rounding=rule), [Expected(given.value, "mL/h", step=Fraction(step))]


def _surface_area(draw: Draw) -> Case:
    height, weight = draw.amount(50, 210, "cm", "m", "in"), draw.weight()
    exact = _root(height.value * weight.value / 3600)
    return _texts(height=height, weight=weight), [Expected(exact, "m\u00b2", 2)]


def _parted(draw: Draw) -> tuple[dict[str, str], Fraction]:
    if draw.yes():
        count = draw.chance.randint(1, 8)
        return {"doses": f"{count} {'dose' if count == 1 else 'doses'}"}, Fraction(count)
    hours = draw.chance.choice((4, 6, 8, 12, 24))
    return {"interval": f"{hours} h"}, Fraction(24, hours)


def _divided_dose(draw: Draw) -> Case:
    (how, times), weight = _parted(draw), draw.weight() if draw.yes() else None
    daily = draw.amount(1, 100, "mg/kg/day") if weight else draw.amount(100, 4000, "mg/day", "g/day")
    exact = daily.value * 24 * (weight.value if weight else 1) / times
    return _texts(daily=daily, weight=weight, unit="mg") | how, [Expected(exact, "mg")]


def _daily_dose(draw: Draw) -> Case:
    (how, times), dose = _parted(draw), draw.amount(10, 2000, "mg", "g")
    return _texts(dose=dose, unit="mg/day") | how, [Expected(dose.value * times, "mg/day")]


def _maintenance(draw: Draw) -> Case:
    weight, method = draw.amount(1, 70, "kg", "lb"), draw.one_of("4-2-1", "100-50-20")
    kilos = weight.value / size("kg")
    each = (4, 2, 1) if method == "4-2-1" else (100, 50, 20)
    if kilos <= 10:
        exact = kilos * each[0]
    elif kilos <= 20:
        exact = 10 * each[0] + (kilos - 10) * each[1]
    else:
        exact = Fraction(10 * each[0] + 10 * each[1]) + (kilos - 20) * each[2]
    unit = "mL/h" if method == "4-2-1" else "mL/day"
    return _texts(weight=weight, method=method), [Expected(exact, unit, 1)]


def _sum_of_volumes(draw: Draw) -> Case:
    volumes = [draw.volume() for _ in range(draw.chance.randint(1, 5))]
    given = {"volumes": "; ".join(volume.text for volume in volumes)}
    return given, [Expected(sum((volume.value for volume in volumes), Fraction(0)), "mL")]


def _fluid_balance(draw: Draw) -> Case:
    came, went = draw.volume(), draw.volume()
    return _texts(intake=came, output=went), [Expected(came.value - went.value, "mL")]


def _hourly_intake(draw: Draw) -> Case:
    (start, at), rate, minutes = _start(draw), draw.amount(10, 200, "mL/h"), draw.chance.randint(1, 720)
    expected = []
    minute = at
    while minute < at + minutes:
        end = min((minute // 60 + 1) * 60, at + minutes)
        expected.append(Expected(rate.value * (end - minute) / 60, "mL", 1))
        minute = end
    return _texts(start=start, rate=rate, duration=f"{minutes} min"), expected


def _diluent(draw: Draw) -> Case:
    _, names = draw.kind()
    while True:
        dose, strength, own = draw.amount(100, 5000, *names), draw.strength(names), draw.volume(0.1, 2)
        if (exact := dose.value / strength.value - own.value) > 0:
            return _texts(dose=dose, concentration=strength, displacement=own), [Expected(exact, "mL", 1)]


def _dilution(draw: Draw) -> Case:
    _, names = draw.kind()
    one, other = sorted((draw.strength(names), draw.strength(names)), key=lambda made: made.value)
    volume = draw.volume()
    stock = one.value * volume.value / other.value
    return _texts(stock=other, concentration=one, volume=volume), [
        Expected(stock, "mL", 1),
        Expected(volume.value - stock, "mL", 1),
    ]


def _alligation(draw: Draw) -> Case:
    _, names = draw.kind()
    while True:
        weak, wanted, strong = sorted((draw.strength(names) for _ in range(3)), key=lambda made: made.value)
        if weak.value < wanted.value < strong.value:
            break
    volume = draw.volume()
    # x of the strong and the rest of the weak hold the wanted dose: x s + (v - x) w = v m.
    dose = wanted.value * volume.value
    exact = (dose - weak.value * volume.value) / (strong.value - weak.value)
    given = _texts(stronger=strong, weaker=weak, concentration=wanted, volume=volume)
    return given, [Expected(exact, "mL", 1), Expected(volume.value - exact, "mL", 1)]


def _mixture(draw: Draw) -> Case:
    rule, names = draw.kind()
    one, other, first, second = draw.strength(names), draw.strength(names), draw.volume(), draw.volume()
    exact = (one.value * first.value + other.value * second.value) / (first.value + second.value)
    given = _texts(concentration=one, volume=first, added_concentration=other, added_volume=second)
    return given | {"unit": f"{rule}/mL"}, [Expected(exact, f"{rule}/mL")]


MOLAR: Mapping[str, tuple[str, int]] = {
    # As handbooks print them, g/mol (from memory); the charge of the ion that counts.
    "potassium chloride": ("74.55", 1),
    "potassium acetate": ("98.14", 1),
    "sodium chloride": ("58.44", 1),
    "sodium bicarbonate": ("84.01", 1),
    "sodium acetate": ("82.03", 1),
    "sodium acetate trihydrate": ("136.08", 1),
    "calcium chloride dihydrate": ("147.01", 2),
    "calcium gluconate monohydrate": ("448.39", 2),
    "magnesium sulfate heptahydrate": ("246.47", 2),
    "magnesium chloride hexahydrate": ("203.30", 2),
    "ammonium chloride": ("53.49", 1),
}
"""Molar masses as they are printed, apart from the project's own, which come from atomic weights."""


def _electrolyte(draw: Draw) -> Case:
    salt = draw.one_of(*MOLAR)
    molar, charge = Fraction(MOLAR[salt][0]), MOLAR[salt][1]
    rest = draw.one_of("", "/mL", "/h")
    given = draw.amount(1, 500, *(f"{name}{rest}" for name in (draw.one_of("mg", "g", "mmol", "mEq"),)))
    top = given.unit.split("/")[0]
    mmol = given.value / {"mg": molar, "g": molar, "mmol": Fraction(1), "mEq": Fraction(charge)}[top]
    wanted = draw.one_of("mg", "mmol", "mEq")
    exact = mmol * {"mg": molar, "mmol": Fraction(1), "mEq": Fraction(charge)}[wanted]
    return _texts(given=given, salt=salt, unit=f"{wanted}{rest}"), [Expected(exact, f"{wanted}{rest}")]


def _share(draw: Draw) -> tuple[dict[str, str], Fraction]:
    volume, tubing = draw.volume(20, 500), draw.volume(1, 20)
    flush = draw.volume(1, 30) if draw.yes() else None
    left = max(Fraction(0), tubing.value - flush.value) if flush else tubing.value
    return _texts(volume=volume, tubing=tubing, flush=flush), left / volume.value


def _share_delivered(draw: Draw) -> Case:
    given, left = _share(draw)
    return given, [Expected(100 * (1 - left), "%", 1)]


def _dose_left_behind(draw: Draw) -> Case:
    given, left = _share(draw)
    dose = draw.amount(1, 5000, "mg", "g")
    return given | {"dose": dose.text}, [Expected(dose.value * left / size(dose.unit), dose.unit, 3)]


def _head_difference(draw: Draw) -> Case:
    high, low, falls = (draw.amount(1, 150, "cm", "in") for _ in range(3))
    given = _texts(secondary=high, primary=low, falls=falls)
    return given, [Expected(high.value - falls.value - low.value, "cm", 1)]


CASES: Mapping[str, Callable[[Draw], Case]] = {
    "rate": _rate,
    "piggyback-rate": _rate,
    "volume": _volume,
    "duration": _duration,
    "vtbi": _vtbi,
    "remaining-volume": _remaining_volume,
    "remaining-time": _remaining_time,
    "bag-lasts": _bag_lasts,
    "two-rate-time": _two_rate_time,
    "rate-for-the-rest": _rate_for_the_rest,
    "completion-time": _completion_time,
    "latest-start": _latest_start,
    "next-bag-due": _next_bag_due,
    "due-time": _due_time,
    "drop-rate": _drop_rate,
    "rate-from-drops": _rate_from_drops,
    "rate-from-drop-rate": _rate_from_drop_rate,
    "percent-off": _percent_off,
    "live-count": _live_count,
    "concentration": _concentration,
    "volume-for-dose": _volume_for_dose,
    "dose-in-volume": _dose_in_volume,
    "dose-by-weight": _dose_by_weight,
    "dose-with-maximum": _dose_with_maximum,
    "dose-per-kg": _dose_per_kg,
    "volume-by-weight": _volume_by_weight,
    "dose-by-area": _dose_by_area,
    "pump-rate": _pump_rate,
    "dose-rate": _dose_rate,
    "rate-factor": _rate_factor,
    "mean-dose-rate": _mean_dose_rate,
    "dose-over-time": _dose_over_time,
    "sum-of-doses": _sum_of_doses,
    "dose-lasts": _dose_lasts,
    "shortest-time": _shortest_time,
    "bolus": _bolus,
    "loading-then-maintenance": _loading,
    "titration": _titration,
    "body-weight": _body_weight,
    "convert": _convert,
    "round": _round,
    "surface-area": _surface_area,
    "divided-dose": _divided_dose,
    "daily-dose": _daily_dose,
    "maintenance": _maintenance,
    "sum-of-volumes": _sum_of_volumes,
    "fluid-balance": _fluid_balance,
    "hourly-intake": _hourly_intake,
    "diluent": _diluent,
    "dilution": _dilution,
    "alligation": _alligation,
    "mixture": _mixture,
    "electrolyte": _electrolyte,
    "share-delivered": _share_delivered,
    "dose-left-behind": _dose_left_behind,
    "head-difference": _head_difference,
}
"""For every formula, a case by chance with its answers."""
_ROOTS = ("surface-area", "live-count")
"""Their roots have no end: compared to thirty digits."""
_LEAST, _MOST = Fraction(1, 10**12), Fraction(10) ** 13


def differences(name: str, seed: int, count: int) -> Iterator[str]:
    """What differs in so many cases of a formula that have an answer; nothing is what is wanted."""
    draw, asked = Draw(seed), 0
    while asked < count:
        inputs, expected = CASES[name](draw)
        try:
            answers = solve(name, inputs)
        except QuantityError as refused:
            if not _has_no_answer(expected):
                yield f"{name} {inputs}: refused, {refused}"
                asked += 1
            continue
        asked += 1
        if not _same(name, answers, expected):
            yield f"{name} {inputs}: {[str(one) for one in answers]}, not {expected}"


def _has_no_answer(expected: Sequence[Expected] | str) -> bool:
    """Whether an answer rounds to nothing, or is beyond clinical size: these are refused."""
    if isinstance(expected, str):
        return False
    rounded = [one for one in expected if one.places is not None and one.value and not one.rounded()]
    return bool(rounded) or any(one.value and not _LEAST <= abs(one.value) < _MOST for one in expected)


def _same(name: str, answers: Sequence[Result | Moment], expected: Sequence[Expected] | str) -> bool:
    if isinstance(expected, str):
        [moment] = answers
        return isinstance(moment, Moment) and moment.text == expected
    if len(answers) != len(expected):
        return False
    return all(_alike(name, one, right) for one, right in zip(answers, expected, strict=True))


def _alike(name: str, answer: Result | Moment, right: Expected) -> bool:
    if not isinstance(answer, Result) or answer.unit != right.unit:
        return False
    apart = abs(answer.exact - right.value)
    exactly = apart <= abs(right.value) / 10**30 if name in _ROOTS else apart == 0
    if right.places is not None or right.step is not None:
        return exactly and Fraction(answer.value) == right.rounded()
    # Without a rule, four digits at least are shown of what has no end.
    return exactly and abs(Fraction(answer.value) - right.value) * 2000 <= abs(right.value)


def main() -> int:
    """Print what differs, and the sum; 1 where anything does."""
    count = int(sys.argv[1]) if len(sys.argv) > 1 else 10_000
    names = sys.argv[2:] or list(FORMULAS)
    wrong = 0
    for name in names:
        found = list(differences(name, 15_000 + list(FORMULAS).index(name), count))
        wrong += len(found)
        sys.stdout.write(f"{name}: {len(found)} of {count:,} differ\n" + "".join(f"  {one}\n" for one in found[:3]))
        sys.stdout.flush()
    sys.stdout.write(f"{len(names)} formulas, {len(names) * count:,} cases, {wrong} differ\n")
    return 1 if wrong else 0


if __name__ == "__main__":
    sys.exit(main())
