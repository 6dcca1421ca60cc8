"""Orders by the thousand, each looked at: ``python -m tests.orders.many [100000]``.

Draws classes of thirty over seeds, levels, kinds of order and faults, and proves of each order that it keeps the
table of limits (or has the fault that was asked for, that one alone, where a step looks), that every number of its
key is solved and is what plain fractions give, and that no two in a class are alike. Then it times the drawing alone.
"""

import sys
import time
from collections import Counter
from collections.abc import Iterator
from datetime import date
from decimal import ROUND_HALF_UP, Decimal
from fractions import Fraction

from assistant.dosing import Amount
from assistant.dosing.limits import Level
from assistant.orders.draw import LEVELS, NOTHING_PLANTED, Wanted, draw
from assistant.orders.lines import ByDoseRate
from assistant.orders.model import Order
from assistant.orders.pairs import pair_of
from assistant.orders.planting import FAULTS, FaultKind, Findable
from assistant.orders.plausible import table
from assistant.orders.shelf import shelf
from assistant.orders.solve import amount_of, answer_key
from assistant.orders.truth import truth_of
from tests.orders.looking import findable_in

CLASS = 30
DAY = date(2026, 11, 25)
KINDS = (
    ("primary",),
    ("primary", "secondary"),
    ("primary", "secondary", "second_secondary"),
    ("primary", "gravity"),
    ("primary", "running"),
    ("secondary", "flush"),
    ("dose",),
    ("flush",),
    ("push", "flush"),
    ("primary", "push"),
)
"""What the checklists of the library ask for."""
PLACES: dict[FaultKind, tuple[tuple[str, ...], ...]] = {
    "wrong-bag": KINDS,
    "expired-bag": KINDS,
    "unfit-bag": KINDS,
    "wrong-concentration": (KINDS[1], KINDS[2], KINDS[5], KINDS[6], KINDS[8], KINDS[9]),
    "over-limit": (*KINDS[:7], *KINDS[8:]),
    "illegible-rate": (*KINDS[:7], *KINDS[9:]),
    "allergy": (KINDS[1], KINDS[2], KINDS[5], KINDS[6], KINDS[8], KINDS[9]),
    "incompatible-pair": (KINDS[1], KINDS[2]),
    "wrong-patient": KINDS,
    "finding": KINDS,
}
"""Kinds of order in which each fault has a place."""
FINDABLE = {kind: findable_in(kind) for kind in KINDS}
"""What a checklist that looks at everything of these parts can find."""
CONCERNS: dict[FaultKind, tuple[str, ...]] = {
    "wrong-bag": ("fluid", "drug"),
    "expired-bag": ("bag expired",),
    "unfit-bag": ("bag cloudy", "bag leaking"),
    "wrong-concentration": ("dose", "amount"),
    "over-limit": ("limits",),
    "illegible-rate": ("paper",),
    "allergy": ("allergy",),
    "incompatible-pair": ("pair", "drugs"),
    "wrong-patient": ("wristband",),
    "finding": ("site",),
}
"""What each fault is a fault of, as `noticed` words it after the name of the part."""


def classes() -> Iterator[tuple[tuple[str, ...], int, int, FaultKind | None]]:
    """Kinds, seeds, levels and faults without end; every fourth class has a fault."""
    seed = 0
    while True:
        for kind in KINDS:
            for level in LEVELS:
                seed += 1
                fault = FAULTS[seed // 4 % len(FAULTS)] if seed % 4 == 0 else None
                places = PLACES[fault] if fault is not None else (kind,)
                yield places[seed % len(places)], seed, level, fault


def drawn_for(
    kind: tuple[str, ...], *, seed: int, level: int, count: int, fault: FaultKind | None = None
) -> list[Order]:
    """Orders of a kind, for a checklist that looks at everything."""
    wanted = Wanted(frozenset(kind))
    return draw(wanted, seed=seed, level=level, count=count, day=DAY, fault=fault, findable=FINDABLE[kind])


def faults_of(order: Order, fault: FaultKind | None, findable: Findable) -> list[str]:
    """What is wrong with one order; empty is what is wanted."""
    found: list[str] = []
    if (order.teaching == NOTHING_PLANTED) != (fault is None):
        found.append(f"teaching {order.teaching}, wanted {fault}")
    seen, facts = noticed(order), [one.fact for one in truth_of(order, table()).faults]
    matters = {name.rpartition(".")[2] for name in seen}
    if len(seen) != (fault is not None) or not matters <= set(CONCERNS[fault] if fault is not None else ()):
        found.append(f"to be noticed: {seen}, wanted {fault}")
    if {name.partition(" ")[0] for name in seen} != set(facts) or len(seen) != len(facts):
        found.append(f"to be noticed: {seen}, and the truth is {facts}")
    if not set(facts) <= findable.facts:
        found.append(f"no step looks at {facts}")
    key = answer_key(order)
    for name, entry in key.items():
        if not entry.value and name != "running.remaining":
            found.append(f"{name} is not solved")
    found += [
        f"{name} is {key[name].value} and not {value}"
        for name, value in plain_sums(order).items()
        if key[name].value != value
    ]
    return found


def noticed(order: Order) -> set[str]:
    """What a learner who looks at order and bench could notice, worked out without the planting and the truth."""
    seen: set[str] = set()
    labels, bench = order.labels(), order.laid_out
    ordered = {
        "primary.fluid": order.primary and order.primary.fluid,
        "primary.bag_volume": order.primary and order.primary.bag_volume,
        "gravity.drop_factor": order.gravity and order.gravity.drop_factor,
        "secondary.drug": order.secondary and order.secondary.drug,
        "secondary.dose": order.secondary and order.secondary.dose,
        "secondary.volume": order.secondary and order.secondary.volume,
        "second_secondary.drug": order.second_secondary and order.second_secondary.drug,
        "second_secondary.dose": order.second_secondary and order.second_secondary.dose,
        "second_secondary.volume": order.second_secondary and order.second_secondary.volume,
        "dose.drug": order.dose and order.dose.drug,
        "dose.amount": order.dose and order.dose.amount,
        "dose.volume": order.dose and order.dose.volume,
        "flush.fluid": order.flush and order.flush.fluid,
        "flush.volume": order.flush and order.flush.volume,
        "push.drug": order.push and order.push.drug,
        "push.amount": order.push and order.push.amount,
        "push.volume": order.push and order.push.volume,
    }
    seen |= {name for name, right in ordered.items() if right is not None and labels[name] != right}
    for part in ("primary", "secondary", "second_secondary", "dose", "flush", "push"):
        bag = getattr(bench, part)
        if bag.expires is not None and bag.expires < DAY:
            seen.add(f"{part}.bag expired")
        if bag.state is not None:
            seen.add(f"{part}.bag {bag.state}")
    lines = {"Primary:": "primary", "Secondary:": "secondary", "Intermittent:": "secondary", "By pump:": "dose"}
    for sentence in order.sentences():
        if "cannot be read" in sentence:
            seen |= {f"{part}.paper" for start, part in lines.items() if sentence.startswith(start)}
    seen |= {f"{part}.allergy" for part, names in _avoided(order).items() if names & set(order.patient.allergies)}
    return seen | beyond(order) | set(bench.found)


def _avoided(order: Order) -> dict[str, set[str]]:
    """By part, the allergies with which its drug is not given."""
    on_shelf = shelf()
    avoid = {drug.name: {*drug.avoid, drug.name} for drug in (*on_shelf.drugs, *on_shelf.rates, *on_shelf.pushes)}
    parts = {
        "secondary": order.secondary,
        "second_secondary": order.second_secondary,
        "dose": order.dose,
        "push": order.push,
    }
    return {part: avoid[given.drug] for part, given in parts.items() if given is not None}


def beyond(order: Order) -> set[str]:
    """The limits that the ordered infusions pass, looked up once more."""
    limits, key = table(), answer_key(order)
    parts = {"secondary": order.secondary, "second_secondary": order.second_secondary, "dose": order.dose}
    found = {}
    if order.primary is not None:
        found["primary.limits"] = limits.check(order.primary.fluid, rate=amount_of(key["primary.rate"]))
    for part, given in parts.items():
        if given is None:
            continue
        if order.primary is not None:
            found[f"{part}.pair"] = limits.check(given.drug, together_with=(order.primary.fluid,))
        strength = amount_of(key[f"{part}.concentration"])
        if isinstance(given, ByDoseRate):
            found[f"{part}.limits"] = limits.check(
                given.drug, dose_rate=given.ordered, concentration=strength, weight=order.patient.weight
            )
        else:
            time = amount_of(key[f"{part}.duration"])
            found[f"{part}.limits"] = limits.check(given.drug, dose=given.dose, duration=time, concentration=strength)
    if order.push is not None:
        push = order.push
        found["push.limits"] = limits.check(push.drug, dose=push.dose, duration=push.over)
        if order.primary is not None:
            found["push.pair"] = limits.check(push.drug, together_with=(order.primary.fluid,))
    if order.secondary is not None and order.second_secondary is not None:
        pair = pair_of(order.secondary.drug, order.second_secondary.drug)
        if pair is None or pair.may == "stay apart":
            return {"second_secondary.drugs"}
    stops = (Level.SOFT, Level.HARD)
    return {fact for fact, said in found.items() if any(one.level in stops for one in said)}


def plain_sums(order: Order) -> dict[str, Decimal]:
    """Rates and drops of an order by plain fractions, a second working-out that shares no code with the first."""
    sums: dict[str, Decimal] = {}
    if order.primary is not None and order.primary.over is not None:
        sums["primary.rate"] = _rounded(_plain(order.primary.bag_volume) / _plain(order.primary.over), "0.1")
    if order.primary is not None and order.primary.rate is not None:
        sums["primary.rate"] = order.primary.rate.value
    if order.secondary is not None and order.secondary.over is not None:
        sums["secondary.rate"] = _rounded(_plain(order.secondary.volume) / _plain(order.secondary.over), "0.1")
    if order.gravity is not None:
        rate = sums["primary.rate"]
        sums["gravity.drops_per_minute"] = _rounded(Fraction(rate) * _plain(order.gravity.drop_factor) / 60, "1")
    if order.dose is not None:
        strength = _plain(order.dose.amount) / _plain(order.dose.volume)
        by_weight = order.patient.weight is not None and "/kg" in order.dose.ordered.unit
        weight = _plain(order.patient.weight) if by_weight and order.patient.weight else Fraction(1)
        sums["dose.rate"] = _rounded(_plain(order.dose.ordered) * weight / strength, "0.1")
    if order.push is not None:
        drawn = _plain(order.push.dose) * _plain(order.push.volume) / _plain(order.push.amount)
        sums["push.to_draw"] = _rounded(drawn, "0.1" if drawn >= 1 else "0.01")
        sums["push.per_minute"] = _rounded(Fraction(sums["push.to_draw"]) / (_plain(order.push.over) * 60), "0.01")
    if order.change is not None and not order.change.hold:
        sums["change.by"] = abs(sums["primary.rate"] - order.change.before.value)
    return sums


_SIZES: dict[str, Fraction] = {
    # to mL, h, mg, units, kg: NIST Special Publication 811, Appendix B, for the pound
    "mL": Fraction(1),
    "L": Fraction(1000),
    "h": Fraction(1),
    "min": Fraction(1, 60),
    "s": Fraction(1, 3600),
    "mg": Fraction(1),
    "g": Fraction(1000),
    "units": Fraction(1),
    "kg": Fraction(1),
    "lb": Fraction("0.45359237"),
    "gtt/mL": Fraction(1),
    "mcg/kg/min": Fraction(60, 1000),
    "units/kg/h": Fraction(1),
    "mg/h": Fraction(1),
}


def _plain(amount: Amount) -> Fraction:
    return Fraction(amount.value) * _SIZES[amount.unit]


def _rounded(exact: Fraction, step: str) -> Decimal:
    wide = Decimal(exact.numerator) / Decimal(exact.denominator)
    return wide.quantize(Decimal(step), ROUND_HALF_UP)


def look_at(count: int) -> tuple[int, Counter[str], list[str]]:
    """Draw and look: how many orders, how many of each fault, and what was wrong with any."""
    looked = 0
    planted: Counter[str] = Counter()
    wrong: list[str] = []
    for kind, seed, level, fault in classes():
        orders = drawn_for(kind, seed=seed, level=level, count=CLASS, fault=fault)
        alike = {
            (
                *(o.primary, o.gravity, o.secondary, o.second_secondary, o.dose, o.push, o.flush),
                *(o.patient.weight, o.running),
            )
            for o in orders
        }
        if len(alike) != len(orders) or len({o.code for o in orders}) != len(orders):
            wrong.append(f"{kind}, seed {seed}, level {level}, {fault}: some are alike")
        for order in orders:
            wrong += [f"{order.code} {kind} level {level}: {what}" for what in faults_of(order, fault, FINDABLE[kind])]
        planted[fault or "none"] += len(orders)
        looked += len(orders)
        if looked % 10_000 < CLASS <= looked:
            sys.stderr.write(f"{looked:,} looked at, {len(wrong)} wrong\n")
        if looked >= count:
            return looked, planted, wrong
    raise AssertionError("the classes have no end")


def main() -> int:
    """Print the figures; 1 where an order is not as it should be."""
    count = int(sys.argv[1]) if len(sys.argv) > 1 else 100_000
    looked, planted, wrong = look_at(count)
    sys.stdout.write(f"{looked:,} orders looked at: {dict(planted)}\n{len(wrong)} wrong\n")
    for what in wrong[:20]:
        sys.stdout.write(f"  {what}\n")
    began, busy, drawn = time.perf_counter(), time.process_time(), 0
    for kind, seed, level, fault in classes():
        for order in drawn_for(kind, seed=seed, level=level, count=CLASS, fault=fault):
            answer_key(order)
            drawn += 1
        if drawn >= min(count, 20_000):
            break
    took, spent = time.perf_counter() - began, time.process_time() - busy
    sys.stdout.write(f"drawn with key: {drawn / took:,.0f} a second, {drawn / spent:,.0f} a second of this processor\n")
    return 1 if wrong else 0


if __name__ == "__main__":
    sys.exit(main())
