"""The course of the infusion that an order asks for: words and a picture."""

import re
from collections.abc import Mapping
from decimal import Decimal
from fractions import Fraction

from assistant.dosing import TENTH, Amount, clock, show_number
from assistant.dosing.course import Primary, Secondary, course
from assistant.dosing.course_picture import picture
from assistant.errors import QuantityError
from assistant.orders.key import KeyEntry
from assistant.orders.model import Order
from assistant.report import content
from assistant.spoken.language import ReportWords

LONGEST_H = 24
"""Hours that are drawn at the most."""
FIRST_SECONDARY_H = 1
"""Where the first secondary is drawn: an order tells how often, not when it is hung."""
_EVERY = re.compile(r"every (\d{1,2}) hours?")
_MOST_LINE = 60


def infusion_course(order: Order, key: Mapping[str, KeyEntry], words: ReportWords) -> content.Course | None:
    """Who flows when by this order; None where its numbers make no such course.

    Args:
        order: the order.
        key: its answer key.
        words: the language of the report.
    """
    bag, vtbi, rate = (_amount(key, f"primary.{name}") for name in ("bag_volume", "vtbi", "rate"))
    if bag is None or vtbi is None or rate is None:
        return None
    try:
        return _course(order, key, bag, vtbi, rate, words)
    except QuantityError:
        return None


def _course(
    order: Order, key: Mapping[str, KeyEntry], bag: Amount, vtbi: Amount, rate: Amount, words: ReportWords
) -> content.Course:
    runs = vtbi.in_unit("mL") / rate.in_unit("mL/h")
    length = min(Fraction(-(-runs // 1)) + FIRST_SECONDARY_H, Fraction(LONGEST_H))
    reserve = bag.in_unit("mL") - vtbi.in_unit("mL")
    primary = Primary(_line(key, "primary.fluid", words.PRIMARY), rate, bag, _plain_amount(reserve, "mL"))
    doses = _doses(order, key, length, words)
    drawn = course(clock.parse_start("00:00"), Amount(Decimal(int(length)), "h"), primary, doses)
    assumed = words.COURSE_ASSUMPTIONS
    if doses:
        assumed += f" {words.first_secondary_at(FIRST_SECONDARY_H)}"
    hourly = [show_number(TENTH.apply(total)) for _, total in drawn.hourly()]
    return content.Course(
        sentences=(*words.working(drawn.sentences()), words.hourly(hourly)),
        assumptions=assumed,
        picture=picture(drawn),
    )


def _doses(order: Order, key: Mapping[str, KeyEntry], length: Fraction, words: ReportWords) -> list[Secondary]:
    volume, rate = _amount(key, "secondary.vtbi"), _amount(key, "secondary.rate")
    if volume is None or rate is None:
        return []
    every = _EVERY.search(getattr(order.secondary, "frequency", ""))
    gap = int(every[1]) if every else 0
    hours = list(range(FIRST_SECONDARY_H, int(length), gap)) if gap else [FIRST_SECONDARY_H]
    name = _line(key, "secondary.drug", words.SECONDARY)
    return [
        Secondary(name if len(hours) == 1 else words.dose(name, count), volume, Amount(Decimal(hour), "h"), rate)
        for count, hour in enumerate(hours, 1)
    ]


def _amount(key: Mapping[str, KeyEntry], name: str) -> Amount | None:
    entry = key.get(name)
    if entry is None or isinstance(entry.value, str) or entry.unit is None:
        return None
    return Amount(entry.value, entry.unit)


def _line(key: Mapping[str, KeyEntry], name: str, otherwise: str) -> str:
    entry = key.get(name)
    return str(entry.value)[:_MOST_LINE] if entry is not None else otherwise


def _plain_amount(value: Fraction, unit: str) -> Amount:
    return Amount(Decimal(value.numerator) / Decimal(value.denominator), unit)
