"""Slips by name, measured: ``python -m tests.dosing.slips_bench [2000]``.

Orders are drawn by seed from plain fractions, each with every kind of slip that fits it, worked out here and not by
the comparison. A name is right where the slip that was made is the likeliest or one of those that fit as well; it is
misleading where the likeliest does not explain the number. Random wrong numbers must get a name only where one does.
"""

import random
import sys
from collections import Counter
from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction

from assistant.dosing import TENTH, WHOLE, Amount, Disagrees, Rounding, Slip, compare
from assistant.dosing.amount import normal
from assistant.dosing.rounding import HUNDREDTH


@dataclass(frozen=True)
class Drawn:
    """An order's number: what is right, the exact value, its other numbers, its rounding."""

    right: Amount
    exact: Fraction
    others: dict[str, Amount]
    rule: Rounding


def drawn(chance: random.Random) -> Drawn:
    """A rate by volume and time, a drop rate, a rate by dose and weight, or a weight in kg."""
    kind = chance.choice(("rate", "drops", "dose", "weight"))
    if kind == "weight":
        pounds = Fraction(chance.randrange(90, 300))
        return _made(pounds * Fraction(45_359_237, 10**8), "kg", {}, TENTH)
    if kind == "dose":
        kilos, ordered = Fraction(chance.randrange(400, 1200), 10), Fraction(chance.randrange(1, 40), 2)
        bag, volume = chance.choice((200, 400, 800)), chance.choice((250, 500))
        others = {
            "patient.weight": _amount(kilos, "kg"),
            "dose.ordered": _amount(ordered, "mcg/kg/min"),
            "dose.amount": _amount(Fraction(bag), "mg"),
            "dose.volume": _amount(Fraction(volume), "mL"),
        }
        return _made(ordered * kilos * 60 / 1000 * volume / bag, "mL/h", others, TENTH)
    volume, hours = chance.choice((50, 100, 150, 250, 500, 1000)), chance.choice((1, 2, 4, 6, 8, 10, 12))
    others = {"primary.bag_volume": _amount(Fraction(volume), "mL"), "primary.duration": _amount(Fraction(hours), "h")}
    if kind == "rate":
        return _made(Fraction(volume, hours), "mL/h", others, TENTH)
    factor = chance.choice((10, 15, 20, 60))
    others |= {"gravity.drop_factor": _amount(Fraction(factor), "gtt/mL")}
    others |= {"primary.rate": _amount(Fraction(TENTH.apply(Fraction(volume, hours))), "mL/h")}
    return _made(Fraction(volume * factor, hours * 60), "gtt/min", others, WHOLE)


def _amount(value: Fraction, unit: str) -> Amount:
    return Amount(normal(HUNDREDTH.apply(value)), unit)


def _made(exact: Fraction, unit: str, others: dict[str, Amount], rule: Rounding) -> Drawn:
    return Drawn(Amount(normal(rule.apply(exact)), unit), exact, others, rule)


def slips(order: Drawn, chance: random.Random) -> Iterator[tuple[str, Slip, Amount]]:
    """Every slip that fits the order: its kind, the name it should get, and the number that comes of it."""
    right, rule = order.right, order.rule
    unit, text = right.unit, f"{right.value:f}"

    def by(name: str, slip: Slip, factor: Fraction, *, rounded: bool = False) -> tuple[str, Slip, Amount]:
        value = rule.apply((right.ratio if rounded else order.exact) * factor)
        return name, slip, Amount(normal(value), unit)

    yield by("tenfold", Slip.TENFOLD, Fraction(10), rounded=True)
    yield by("tenfold of the unrounded", Slip.TENFOLD, Fraction(10))
    yield "a tenth", Slip.TENFOLD, Amount(normal(right.value / 10), unit)
    yield "mg for mcg", Slip.THOUSANDFOLD, Amount(normal(right.value * 1000), unit)
    yield "mcg for mg", Slip.THOUSANDFOLD, Amount(normal(right.value / 1000), unit)
    yield by("double", Slip.DOUBLE, Fraction(2), rounded=True)
    yield by("double of the unrounded", Slip.DOUBLE, Fraction(2))
    yield by("half", Slip.DOUBLE, Fraction(1, 2))
    if unit != "kg":
        yield by("times sixty", Slip.TIME_UNIT, Fraction(60))
        yield "a sixtieth", Slip.TIME_UNIT, Amount(normal(HUNDREDTH.apply(order.exact / 60)), unit)
    for name, step in (("to whole numbers", WHOLE), ("to hundredths", HUNDREDTH)):
        value = normal(step.apply(order.exact))
        if value:
            yield name, Slip.PLACE, Amount(value, unit)
    if unit == "kg" or "patient.weight" in order.others:
        yield by("pounds by 2.2", Slip.POUNDS, Fraction(22, 10))
    if "patient.weight" in order.others:
        yield by("weight left out", Slip.WEIGHT, 1 / order.others["patient.weight"].ratio)
    if (factor := order.others.get("gravity.drop_factor")) is not None:
        size = chance.choice([one for one in (10, 15, 20, 60) if one != factor.value])
        yield by("another set", Slip.DROP_FACTOR, Fraction(size) / factor.ratio)
        yield "mL/h for gtt/min", Slip.SWAPPED, Amount(order.others["primary.rate"].value, unit)
    for key in ("primary.bag_volume", "dose.volume", "patient.weight", "dose.amount"):
        if key in order.others:
            yield f"the order's {key}", Slip.SWAPPED, Amount(order.others[key].value, unit)
            break
    digits = [at for at, one in enumerate(text) if one.isdigit()]
    if len(digits) > 2:
        at = chance.choice(digits)
        lost = text[:at] + text[at + 1 :]
        if lost[0] != "." and lost[-1] != "." and lost[0] != "0":
            yield "a digit lost", Slip.DIGIT, Amount(normal(Decimal(lost)), unit)
    # A zero written twice is tenfold, and has its name above.
    if len(digits) > 1 and (others := [at for at in digits if text[at] != "0"]):
        at = chance.choice(others)
        yield "a digit doubled", Slip.DIGIT, Amount(normal(Decimal(text[:at] + text[at] + text[at:])), unit)
        if text[0].isdigit() and text[1].isdigit() and text[1] != "0":
            swapped = text[1] + text[0] + text[2:]
            yield "two digits exchanged", Slip.TRANSPOSED, Amount(normal(Decimal(swapped)), unit)


def _near(ones: Iterable[Fraction], *others: Fraction) -> bool:
    """Within what a rounding to the last shown digit may move it."""
    return any(abs(one - other) * 20 <= abs(other) for one in ones for other in others)


def explains(verdict: Disagrees, order: Drawn) -> bool:
    """Whether the name that was given explains the number, worked out apart from the comparison."""
    said, exact, match = verdict.stated.ratio, order.exact, verdict.match
    ratios = (said / exact, said / order.right.ratio)
    text, stated = f"{order.right.value:f}", f"{verdict.stated.value:f}"
    tests: dict[Slip, Callable[[], bool]] = {
        Slip.TENFOLD: lambda: _near(ratios, *(Fraction(10) ** power for power in (-2, -1, 1, 2))),
        Slip.THOUSANDFOLD: lambda: _near(ratios, *(Fraction(10) ** power for power in (-3, 3))),
        Slip.DECIMAL_POINT: lambda: (
            stated.replace(".", "").strip("0") in text.replace(".", "")
            or text.replace(".", "").strip("0") == stated.replace(".", "").strip("0")
        ),
        Slip.DOUBLE: lambda: _near(ratios, Fraction(2), Fraction(1, 2)),
        Slip.TIME_UNIT: lambda: _near(ratios, Fraction(60), Fraction(1, 60)),
        Slip.POUNDS: lambda: _near(ratios, Fraction(22, 10), Fraction(10, 22)),
        Slip.PLACE: lambda: _near((said,), exact),
        Slip.SWAPPED: lambda: order.others[match.other].value == verdict.stated.value,
        Slip.DROP_FACTOR: lambda: _near(
            ratios, Fraction(match.other.split(" ")[0]) / order.others["gravity.drop_factor"].ratio
        ),
        Slip.WEIGHT: lambda: _near(ratios, 1 / order.others["patient.weight"].ratio),
        Slip.TRANSPOSED: lambda: sorted(text) == sorted(stated),
        Slip.TEEN_TY: lambda: True,  # every pair is listed in test_compare
        Slip.DIGIT: lambda: abs(len(text) - len(stated)) == 1,
    }
    return verdict.slip is Slip.OTHER or tests[verdict.slip]()


def measure(count: int) -> tuple[Counter[str], Counter[str], list[str]]:
    """How often each kind was right, first or among those that fit; and what misled."""
    chance = random.Random(20261128)  # noqa: S311 - a bench that repeats
    tried: Counter[str] = Counter()
    right: Counter[str] = Counter()
    misled: list[str] = []
    for _ in range(count):
        order = drawn(chance)
        for name, slip, stated in slips(order, chance):
            verdict = compare(stated, order.right, order.others, order.exact)
            if not isinstance(verdict, Disagrees):
                continue  # the slip changes nothing in this order
            tried[name] += 1
            right[name] += slip in (verdict.slip, *verdict.also)
            tried["first"] += 1
            right["first"] += slip is verdict.slip
            if not explains(verdict, order):
                misled.append(f"{name}: {stated} for {order.right}: {verdict.slip}")
    return tried, right, misled


def random_numbers(count: int) -> tuple[int, list[str]]:
    """Wrong numbers by chance: how many get a name, and those whose name does not explain them."""
    chance = random.Random(7)  # noqa: S311 - a bench that repeats
    named, misled = 0, []
    for _ in range(count):
        order = drawn(chance)
        value = normal(Decimal(chance.randrange(1, 20_000)).scaleb(-chance.choice((0, 1))))
        verdict = compare(Amount(value, order.right.unit), order.right, order.others, order.exact)
        if isinstance(verdict, Disagrees) and verdict.slip is not Slip.OTHER:
            named += 1
            if not explains(verdict, order):
                misled.append(f"{value} for {order.right}: {verdict.slip}")
    return named, misled


if __name__ == "__main__":
    how_many = int(sys.argv[1]) if len(sys.argv) > 1 else 2000
    tries, rights, misleading = measure(how_many)
    first_tries, firsts = tries.pop("first"), rights.pop("first")
    told = [
        f"{kind}: {rights[kind]} of {number} ({100 * rights[kind] / number:.1f} %)" for kind, number in tries.items()
    ]
    told.append(
        f"all: {rights.total()} of {tries.total()} ({100 * rights.total() / tries.total():.1f} %), {firsts} first"
    )
    told += [f"misleading: {len(misleading)}", *misleading[:20]]
    by_chance, wrongly = random_numbers(2000)
    told += [f"by chance: {by_chance} of 2,000 named, {len(wrongly)} of them misleading", *wrongly[:10]]
    sys.stdout.write("\n".join(told) + "\n")
