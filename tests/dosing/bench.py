"""How fast the arithmetic is, against plain pint arithmetic in the same run: python -m tests.dosing.bench.

Not a test. Times are of the processor, so that another program on the machine does not count; a machine that is
busy still measures higher, for its caches are not ours alone.
"""

import sys
import time
from collections.abc import Callable
from decimal import Decimal

import pint

from assistant.dosing import compare, parse_amount, parse_concentration
from assistant.dosing.clock import parse_start
from assistant.dosing.course import Primary, Secondary, course
from assistant.dosing.course_picture import picture
from assistant.dosing.dose_rate import pump_rate
from assistant.dosing.flow import flow_rate
from assistant.dosing.formulas import FORMULAS, solve
from tests.dosing.test_formulas import INSTEAD

FORMULA_LIMIT_MS = 1
COURSE_LIMIT_MS = 20


def milliseconds(work: Callable[[], object], times: int) -> float:
    """The best of five averages: the least disturbed one."""
    work()
    best = float("inf")
    for _ in range(5):
        began = time.process_time()
        for _ in range(times):
            work()
        best = min(best, (time.process_time() - began) / times * 1000)
    return best


def _with_pint() -> tuple[Callable[[], object], Callable[[], object]]:
    registry = pint.UnitRegistry(non_int_type=Decimal)
    quantity = registry.Quantity
    volume, hours = quantity(Decimal(1000), "mL"), quantity(Decimal(12), "hour")
    ordered, weight = quantity(Decimal(5), "microgram/kg/minute"), quantity(Decimal(95), "kg")
    drug, bag = quantity(Decimal(200), "mg"), quantity(Decimal(250), "mL")
    return (lambda: (volume / hours).to("mL/hour")), (lambda: (ordered * weight / (drug / bag)).to("mL/hour"))


def main() -> int:
    """Print the figures; 1 where one is over its limit."""
    too_slow: list[str] = []

    def row(name: str, took: float, limit: float | None = None) -> None:
        per_second = f"{1000 / took:>9,.0f} a second"
        sys.stdout.write(f"{name:44} {took:8.3f} ms {per_second}" + (f"  (limit {limit:g} ms)\n" if limit else "\n"))
        if limit is not None and took > limit:
            too_slow.append(name)

    plain_rate, plain_pump = _with_pint()
    volume, hours = parse_amount("1,000 mL"), parse_amount("12 h")
    ordered, weight = parse_amount("5 mcg/kg/min"), parse_amount("95 kg")
    strength = parse_concentration("200 mg in 250 mL")
    row("rate: pint alone, no working, no rounding", milliseconds(plain_rate, 200))
    row("rate: with working and rounding", milliseconds(lambda: flow_rate(volume, hours), 200), FORMULA_LIMIT_MS)
    row("pump rate: pint alone", milliseconds(plain_pump, 200))
    row(
        "pump rate: with working and rounding",
        milliseconds(lambda: pump_rate(ordered, strength, weight=weight), 200),
        FORMULA_LIMIT_MS,
    )
    stated, expected = parse_amount("750 mL/h"), parse_amount("75 mL/h")
    row("cross-check of a slip", milliseconds(lambda: compare(stated, expected), 200), FORMULA_LIMIT_MS)

    slowest, took = "", 0.0
    for name, formula in FORMULAS.items():
        given = {one.name: one.example for one in formula.inputs if one.needed}
        given |= INSTEAD.get(name, {})
        spent = milliseconds(lambda name=name, given=given: solve(name, given), 50) / len(solve(name, given))
        if spent > took:
            slowest, took = name, spent
    row(f"slowest of {len(FORMULAS)}, text to answer: {slowest}", took, FORMULA_LIMIT_MS)

    start = parse_start("2026-10-24 08:00", "Europe/London")
    primary = Primary("primary", parse_amount("83.3 mL/h"), parse_amount("1,000 mL"), parse_amount("50 mL"), 3)
    doses = [
        Secondary(f"dose {n}", parse_amount("50 mL"), parse_amount(f"{2 * n + 1} h"), duration=parse_amount("30 min"))
        for n in range(12)
    ]
    day = parse_amount("24 h")
    row("a day with 12 secondaries", milliseconds(lambda: course(start, day, primary, doses), 20), COURSE_LIMIT_MS)

    def whole() -> object:
        found = course(start, day, primary, doses)
        return found.sentences(), found.hourly(), picture(found)

    row("the same with words, hours and picture", milliseconds(whole, 10))
    for name in too_slow:
        sys.stdout.write(f"over its limit: {name}\n")
    return 1 if too_slow else 0


if __name__ == "__main__":
    sys.exit(main())
