"""Drawn orders against published rules, by a checker of its own: ``python -m tests.orders.published [5000]``.

It shares no figure and no code with the shelf, the limits, the pairs or the drawing: what a label, a standard or a
textbook says is written down here once more, each row with its source. A row that was not read anew says "from memory".
"""

import re
import sys
from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction

from assistant.dosing import Amount
from assistant.orders.draw import LEVELS, Wanted, draw
from assistant.orders.lines import ByDoseRate, Primary, Push, Secondary
from assistant.orders.model import Order
from tests.orders.many import DAY, KINDS

CLASS = 30
SALINE, HALF_SALINE = "0.9 % sodium chloride", "0.45 % sodium chloride"
DEXTROSE, RINGER = "5 % dextrose in water", "lactated Ringer's solution"
DEXTROSE_SALINE = "5 % dextrose in 0.45 % sodium chloride"


@dataclass(frozen=True)
class Rule:
    """What is published of an intermittent drug, for an adult and a peripheral vein.

    Attributes:
        lowest, highest: one dose, mg.
        minutes: the shortest time.
        fastest: mg a minute.
        strongest: mg/mL.
        hours: between two doses; 0 is once.
        fluids: what it may ride on.
        source: where it is published.
    """

    lowest: int
    highest: int
    minutes: int
    fastest: str
    strongest: str
    hours: frozenset[int]
    fluids: frozenset[str]
    source: str


def _rule(
    doses: tuple[int, int], minutes: int, fastest: str, strongest: str, hours: set[int], fluids: set[str], source: str
) -> Rule:
    return Rule(*doses, minutes, fastest, strongest, frozenset(hours), frozenset(fluids), source)


RULES = {
    "famotidine": _rule(
        *((20, 20), 15, "1.4", "0.4", {12}, {SALINE, DEXTROSE, RINGER}),
        "FDA label text, famotidine injection: 20 mg in 50 mL over 15 to 30 minutes, every 12 hours",
    ),
    "cefazolin": _rule(
        *((250, 2000), 30, "67", "40", {6, 8, 12}, {SALINE, DEXTROSE, DEXTROSE_SALINE, RINGER}),
        "FDA label text, cefazolin injection (premixed bag), section 2.3; doses and fluids from memory",
    ),
    "ceftriaxone": _rule(
        *((1000, 2000), 30, "67", "40", {12, 24}, {SALINE, DEXTROSE}),
        "FDA label text, ceftriaxone for injection: 10 to 40 mg/mL, 30 minutes, no calcium (from memory)",
    ),
    "cefepime": _rule(
        *((500, 2000), 30, "67", "40", {8, 12}, {SALINE, DEXTROSE}),
        "FDA label text, cefepime for injection: 1 to 40 mg/mL, about 30 minutes (from memory)",
    ),
    "ampicillin": _rule(
        *((250, 2000), 10, "133", "30", {4, 6}, {SALINE}),
        "FDA label text, ampicillin for injection: 2 g over 15 minutes, up to 30 mg/mL (from memory)",
    ),
    "vancomycin": _rule(
        *((500, 2000), 60, "10", "5", {6, 8, 12}, {DEXTROSE}),
        "FDA label text, vancomycin: 10 mg/min, 60 minutes, 5 mg/mL; here never on a line of saline",
    ),
    "metronidazole": _rule(
        *((500, 1000), 60, "17", "8", {6, 8}, {SALINE, DEXTROSE}),
        "FDA label text, metronidazole injection: over one hour, up to 8 mg/mL (from memory)",
    ),
    "levofloxacin": _rule(
        *((250, 750), 60, "8.4", "5", {24}, {SALINE, DEXTROSE}),
        "FDA label text, levofloxacin injection: 500 mg over 60 and 750 mg over 90 minutes, 5 mg/mL",
    ),
    "ciprofloxacin": _rule(
        *((200, 400), 60, "6.7", "2", {8, 12}, {SALINE, DEXTROSE}),
        "FDA label text, ciprofloxacin injection: over 60 minutes, 1 to 2 mg/mL (from memory)",
    ),
    "azithromycin": _rule(
        *((500, 500), 60, "8.4", "2", {24}, {SALINE, DEXTROSE, RINGER}),
        "FDA label text, azithromycin for injection: 2 mg/mL over 1 hour or 1 mg/mL over 3 (from memory)",
    ),
    "fluconazole": _rule(
        *((100, 800), 30, "3.34", "2", {24}, {SALINE, DEXTROSE}),
        "FDA label text, fluconazole injection: 2 mg/mL, at most 200 mg an hour (from memory)",
    ),
    "ondansetron": _rule(
        *((4, 16), 15, "1.1", "1", {8}, {SALINE, DEXTROSE}),
        "FDA label text, ondansetron injection: in 50 mL over 15 minutes, no dose above 16 mg (from memory)",
    ),
    "pantoprazole": _rule(
        *((40, 40), 15, "2.7", "0.4", {24}, {SALINE, DEXTROSE, RINGER}),
        "FDA label text, pantoprazole for injection: 40 mg once a day, in 100 mL over 15 minutes (from memory)",
    ),
    "gentamicin": _rule(
        *((60, 160), 30, "5", "2", {8}, {SALINE, DEXTROSE}),
        "FDA label text, gentamicin injection: 3 mg/kg a day in three doses, over 30 to 120 minutes (from memory)",
    ),
    "magnesium sulfate": _rule(
        *((1000, 4000), 30, "34", "40", {0}, {SALINE, DEXTROSE}),
        "FDA label text, magnesium sulfate: at most 150 mg/min; 2 g an hour is common practice, no source",
    ),
    "furosemide": _rule(
        *((20, 80), 5, "4", "2", {0, 6, 8, 12, 24}, {SALINE, RINGER}),
        "FDA label text, furosemide injection: at most 4 mg/min as an infusion",
    ),
}
BETA_LACTAMS = frozenset({"cefazolin", "ceftriaxone", "cefepime", "ampicillin"})
FAMILIES = {
    **dict.fromkeys(BETA_LACTAMS, frozenset({"penicillin", "cephalosporins"})),
    "levofloxacin": frozenset({"fluoroquinolones"}),
    "ciprofloxacin": frozenset({"fluoroquinolones"}),
    "azithromycin": frozenset({"macrolides"}),
    "gentamicin": frozenset({"aminoglycosides"}),
    "furosemide": frozenset({"sulfonamides"}),
}
"""Allergies to a whole group that forbid one of it (common practice, no source)."""
NEVER_AFTER = (
    # FDA label text, ceftriaxone (quoted second-hand): vancomycin, aminoglycosides, fluconazole.
    ({"ceftriaxone"}, {"vancomycin", "gentamicin", "fluconazole"}),
    # FDA label text of each (from memory): vancomycin and aminoglycosides with beta-lactams.
    ({"vancomycin", "gentamicin"}, {"ampicillin", "cefepime", "ceftriaxone"}),
    ({"vancomycin"}, {"cefazolin"}),
    # FDA label text, furosemide: acidic solutions, ciprofloxacin among them; the others from memory.
    (
        {"furosemide"},
        {
            "ciprofloxacin",
            "gentamicin",
            "vancomycin",
            "ondansetron",
            "levofloxacin",
            "fluconazole",
            "magnesium sulfate",
        },
    ),
    # FDA label text, levofloxacin: multivalent cations such as magnesium; ciprofloxacin binds them too (from memory).
    ({"magnesium sulfate"}, {"levofloxacin", "ciprofloxacin"}),
    # Pharmacy Practice News, table of 2011: azithromycin, and ampicillin with fluconazole.
    ({"azithromycin"}, {"ceftriaxone", "ciprofloxacin", "famotidine", "furosemide", "gentamicin"}),
    ({"ampicillin"}, {"fluconazole", "ondansetron"}),
    # Elmore et al. 1996, Clinical Therapeutics 18(2):246-255: ciprofloxacin with ampicillin and its like.
    ({"ciprofloxacin"}, {"ampicillin"}),
    # Handbook on Injectable Drugs (from memory).
    ({"cefepime"}, {"famotidine", "ciprofloxacin", "ondansetron"}),
    # Two of one family treat nothing twice (common practice, no source).
    (BETA_LACTAMS, BETA_LACTAMS),
    ({"levofloxacin"}, {"ciprofloxacin"}),
)
"""Which drugs never follow each other through one set."""
BY_DOSE_RATE = {
    # lowest, highest, unit, strongest mg/mL (units/mL), source
    "dopamine": (
        "2",
        "20",
        "mcg/kg/min",
        "3.2",
        "FDA label text, dopamine in dextrose, section 2.2; 3.2 mg/mL premixed",
    ),
    "dobutamine": (
        "0.5",
        "20",
        "mcg/kg/min",
        "5",
        "FDA label text, dobutamine: up to 20 mcg/kg/min, 5 mg/mL (from memory)",
    ),
    "nitroprusside": ("0.3", "10", "mcg/kg/min", "1", "FDA label text, sodium nitroprusside: 0.3 to 10 mcg/kg/min"),
    "heparin": ("10", "20", "units/kg/h", "100", "common practice, no source"),
    "diltiazem": ("5", "15", "mg/h", "1", "FDA label text, diltiazem, continuous infusion: 5 to 15 mg/h"),
}
BY_HAND = {
    # lowest and highest dose in mg, fewest minutes, mg a minute, strengths in mg/mL, fluids, source
    "metoclopramide": (5, 10, 1, 10, {5}, {SALINE, DEXTROSE}, "FDA label text, metoclopramide injection (from memory)"),
    "diphenhydramine": (
        *(10, 50, 1, 25, {50}, {SALINE, DEXTROSE, RINGER}),
        "FDA label text, diphenhydramine injection: 10 to 50 mg, at most 25 mg/min (from memory)",
    ),
    "labetalol": (
        *(5, 80, 2, 40, {5}, {SALINE, DEXTROSE, RINGER}),
        "FDA label text, labetalol injection: 20 mg over 2 minutes, then 40 or 80 mg (from memory)",
    ),
    "metoprolol": (2, 5, 1, 5, {1}, {SALINE, DEXTROSE}, "FDA label text, metoprolol injection: 5 mg (from memory)"),
    "dexamethasone": (
        *(1, 20, 1, 10, {4}, {SALINE, DEXTROSE}),
        "FDA label text, dexamethasone sodium phosphate injection, 4 mg/mL (from memory)",
    ),
}
"""At least one minute: BCcampus, Clinical Procedures for Safer Patient Care (2015), section 7.5."""
STEERED = frozenset({"dopamine", "dobutamine", "nitroprusside", "diltiazem"})
"""By pressure or pulse: an order without its target cannot be carried out (common practice, no source)."""
FASTEST_ML_H = {SALINE: 250, RINGER: 250, HALF_SALINE: 125, DEXTROSE: 125, DEXTROSE_SALINE: 150}
"""Maintenance in an adult; what has free water runs more slowly (common practice, no source)."""
SLOWEST_ML_H = 10
SYRINGES_ML = (3, 5, 10)
DROP_FACTORS = (10, 15, 20, 60)
"""Open RN Nursing Skills, section 5.14: sets of 10, 15, 20 and 60 drops per mL. Eight to a hundred whole drops a
minute can be counted by eye (common practice, no source)."""


def against_rules(order: Order) -> Iterator[str]:
    """What in an order no published rule allows; nothing is what is wanted."""
    if order.primary is not None:
        yield from _primary(order.primary, order)
    drugs = [one for one in (order.secondary, order.second_secondary) if one is not None]
    for given in drugs:
        yield from _intermittent(given, order)
    if len(drugs) == 2:
        first, second = (one.drug for one in drugs)
        if first == second:
            yield f"pair: {first} twice"
        if any((first in a and second in b) or (second in a and first in b) for a, b in NEVER_AFTER):
            yield f"pair: {second} after {first}"
    if order.dose is not None:
        yield from _by_dose_rate(order.dose, order)
    if order.push is not None:
        yield from _by_hand(order.push, order)
    if order.flush is not None:
        volume = _ml(order.flush.volume)
        if volume not in SYRINGES_ML or order.flush.fluid != SALINE:
            yield f"flush: {order.flush.volume}"
        if (drugs or order.push) and order.flush.frequency != "before and after each use":
            yield f"flush: {order.flush.frequency} beside a drug"
    if re.search(r"\b0\.\d+ g\b", order.sentence()):  # error-prone dose designations (from memory)
        yield "label: less than a gram in grams"


def _primary(primary: Primary, order: Order) -> Iterator[str]:
    held, kept = _ml(primary.bag_volume), _ml(primary.reserve)
    rate = Fraction(primary.rate.value) if primary.rate else held / _hours(primary.over)
    fastest = FASTEST_ML_H.get(primary.fluid, 0)
    if not SLOWEST_ML_H <= rate <= fastest:
        yield f"fluid: {primary.fluid} at {float(rate):.1f} mL/h"
    if not 4 <= held / rate <= 24:
        yield f"time: a bag that lasts {float(held / rate):.1f} h"
    if primary.route != "intravenous":
        yield f"route: {primary.route}"
    if order.gravity is None and not 0 < kept < held / 4:
        yield f"reserve: {kept} of {held} mL by pump"
    if order.gravity is not None:
        if kept:
            yield "reserve: gravity keeps none"
        factor = Fraction(order.gravity.drop_factor.value)
        if factor not in DROP_FACTORS or not Fraction("7.5") <= rate * factor / 60 <= Fraction("100.5"):
            yield f"drops: {float(rate * factor / 60):.0f} a minute"
    if order.running is not None and _hours(order.running.since) >= (held - kept) / rate:
        yield "time: it has run in already"


def _intermittent(given: Secondary, order: Order) -> Iterator[str]:
    rule, dose, volume = RULES[given.drug], _mg(given.dose), _ml(given.volume)
    minutes = _hours(given.over) * 60
    if not rule.lowest <= dose <= rule.highest:
        yield f"dose: {given.drug} {dose} mg"
    if minutes < rule.minutes or minutes > 180 or dose / minutes > Fraction(rule.fastest):
        yield f"time: {given.drug} {dose} mg over {minutes} min"
    if dose / volume > Fraction(rule.strongest):
        yield f"strength: {given.drug} {float(dose / volume):.1f} mg/mL"
    hours = 0 if given.frequency == "once" else int(given.frequency.removeprefix("every ").partition(" ")[0])
    if hours not in rule.hours:
        yield f"frequency: {given.drug} {given.frequency}"
    if given.route != "intravenous":
        yield f"route: {given.route}"
    if order.primary is not None and order.primary.fluid not in rule.fluids:
        yield f"fluid: {given.drug} on {order.primary.fluid}"
    forbidden = {given.drug} | FAMILIES.get(given.drug, frozenset())
    if forbidden & set(order.patient.allergies):
        yield f"allergy: {given.drug}"


def _by_dose_rate(given: ByDoseRate, order: Order) -> Iterator[str]:
    lowest, highest, unit, strongest, _ = BY_DOSE_RATE[given.drug]
    ordered, volume, kept = given.ordered, _ml(given.volume), _ml(given.reserve)
    if ordered.unit != unit or not Decimal(lowest) <= ordered.value <= Decimal(highest):
        yield f"dose: {given.drug} {ordered}"
    held = Fraction(given.amount.value) if given.amount.unit == "units" else _mg(given.amount)
    if held / volume > Fraction(strongest):
        yield f"strength: {given.drug} {float(held / volume):.2f}"
    weight = order.patient.weight
    if ("/kg" in unit) != (weight is not None) or (weight is not None and not 40 <= _kg(weight) <= 120):
        yield f"weight: {weight} for {unit}"
    if (given.drug in STEERED) != bool(given.target):
        yield f"target: {given.drug}"
    if not 0 < kept < volume / 4:
        yield f"reserve: {kept} of {volume} mL by pump"
    per_hour = Fraction(ordered.value) * (_kg(weight) if weight else 1)
    if unit == "mcg/kg/min":
        per_hour = per_hour * 60 / 1000
    if volume / (per_hour / (held / volume)) > 24:
        yield "time: the bag hangs for more than 24 hours"


def _by_hand(given: Push, order: Order) -> Iterator[str]:
    lowest, highest, minutes, fastest, strengths, fluids, _ = BY_HAND[given.drug]
    dose, over = _mg(given.dose), _hours(given.over) * 60
    if not lowest <= dose <= highest or dose > _mg(given.amount):
        yield f"dose: {given.drug} {dose} mg by hand"
    if not minutes <= over <= 10 or dose / over > fastest:
        yield f"time: {given.drug} {dose} mg over {over} min by hand"
    if _mg(given.amount) / _ml(given.volume) not in strengths:
        yield f"strength: {given.drug} {given.amount} in {given.volume}"
    if order.primary is not None and order.primary.fluid not in fluids:
        yield f"fluid: {given.drug} on {order.primary.fluid}"
    if given.drug in order.patient.allergies:
        yield f"allergy: {given.drug}"


def learners_numbers(order: Order) -> object:
    """What makes two orders of a class the same work: all but people, dates and what stays in the bag."""
    primary, dose, push = order.primary, order.dose, order.push
    return (
        push and (push.drug, str(push.dose), str(push.amount), str(push.volume), str(push.over), push.frequency),
        primary and (primary.fluid, _ml(primary.bag_volume), str(primary.over), str(primary.rate)),
        order.gravity,
        order.secondary and (order.secondary.drug, str(order.secondary.dose), str(order.secondary.volume)),
        order.secondary and (str(order.secondary.over), order.secondary.frequency),
        order.second_secondary and (order.second_secondary.drug, str(order.second_secondary.dose)),
        order.second_secondary and (str(order.second_secondary.volume), str(order.second_secondary.over)),
        dose and (dose.drug, str(dose.ordered), str(dose.amount), str(dose.volume), str(order.patient.weight)),
        order.flush,
        order.running,
    )


def _ml(amount: Amount) -> Fraction:
    return Fraction(amount.value) * {"mL": 1, "L": 1000}[amount.unit]


def _mg(amount: Amount) -> Fraction:
    return Fraction(amount.value) * {"mg": 1, "g": 1000}[amount.unit]


def _kg(amount: Amount) -> Fraction:
    # NIST Special Publication 811, Appendix B.8: one pound is 0.453 592 37 kg exactly (from memory).
    return Fraction(amount.value) * {"kg": Fraction(1), "lb": Fraction("0.45359237")}[amount.unit]


def _hours(amount: Amount | None) -> Fraction:
    assert amount is not None
    return Fraction(amount.value) * {"h": Fraction(1), "min": Fraction(1, 60)}[amount.unit]


def look_at(count: int) -> tuple[Counter[tuple[str, ...]], list[str]]:
    """Classes of every kind and level until so many orders were looked at: how many of each kind, and what is wrong."""
    looked: Counter[tuple[str, ...]] = Counter()
    wrong: list[str] = []
    seed = 7_000
    while sum(looked.values()) < count:
        seed += 1
        for kind in KINDS:
            for level in LEVELS if kind != ("flush",) else LEVELS[:1]:
                orders = draw(Wanted(frozenset(kind)), seed=seed, level=level, count=CLASS, day=DAY)
                looked[kind] += len(orders)
                wrong += [f"{order.code} level {level}: {what}" for order in orders for what in against_rules(order)]
                if (apart := len(set(map(learners_numbers, orders)))) < CLASS:
                    wrong.append(f"{kind} seed {seed} level {level}: only {apart} of {CLASS} differ")
    return looked, wrong


def main() -> int:
    """Print the figures; 1 where an order is against a rule, or two of a class are alike."""
    looked, wrong = look_at(int(sys.argv[1]) if len(sys.argv) > 1 else 5_000)
    for kind, number in looked.items():
        sys.stdout.write(f"{number:,} {' with '.join(kind)}\n")
    sys.stdout.write(f"{sum(looked.values()):,} orders, {len(wrong)} against a rule or alike\n")
    for what in wrong[:40]:
        sys.stdout.write(f"  {what}\n")
    return int(bool(wrong))


if __name__ == "__main__":
    sys.exit(main())
