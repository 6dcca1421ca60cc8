"""Orders by chance: seeded, fictional, within the limits, no two alike in a class."""

import itertools
import random
from collections.abc import Callable, Collection, Iterator, Sequence
from dataclasses import dataclass
from datetime import date, timedelta
from decimal import Decimal
from functools import lru_cache

from assistant.dosing import Amount, flow_rate, parse_amount
from assistant.dosing.units import same_dimension
from assistant.errors import UsageError
from assistant.orders.choices import RATES, Dosed, Pushed, Rated, WithSet, never, primaries, pushes, rated, secondaries
from assistant.orders.draft import Draft
from assistant.orders.lines import Change, Flush, Running, Syringe
from assistant.orders.model import Order, Patient
from assistant.orders.planting import FaultKind, Findable, has_place, plant
from assistant.orders.plausible import table
from assistant.orders.protocol import Protocol, Row
from assistant.orders.shelf import Electrolyte, shelf
from assistant.orders.truth import truth_of

LEVELS = (1, 2, 3)
"""How much arithmetic: no rounding and no conversion of units; one of them; two or more."""
PARTS = (
    "primary",
    "gravity",
    "running",
    "change",
    "secondary",
    "second_secondary",
    "dose",
    "protocol",
    "syringe",
    "push",
    "flush",
)
"""What a drawn order can hold."""
NOTHING_PLANTED = "Nothing is planted: the order is there for its numbers."
"""What a plain drawn order teaches."""
Choice = WithSet | Dosed | Rated | Pushed
_SYRINGE = Syringe(size=parse_amount("50 mL"))
"""The usual one of a syringe pump for an adult (common practice, no source)."""
_TRIES = 2000
_OLDEST, _YOUNGEST = 88, 19


@dataclass(frozen=True)
class Wanted:
    """What the orders of a draw must hold.

    Attributes:
        parts: some of `PARTS`.
        units: by name of the answer key, the unit in which a checklist asks for it.
        weight: the body weight is asked for.
        frequency: how the primary is ordered, so that it fits the procedure.
    """

    parts: frozenset[str]
    units: tuple[tuple[str, str], ...] = ()
    weight: bool = False
    frequency: str = "continuous"


def wanted_by(keys: Collection[tuple[str, str | None]], own: Order | None) -> Wanted:
    """What a checklist needs of an order: what it asks for, and what its own order holds.

    Args:
        keys: names of the answer key that it asks for, with the unit of each number.
        own: the checklist's own order, where it has one.

    Raises:
        UsageError: it asks for something that no drawn order holds.
    """
    parts = {name.partition(".")[0] for name, _ in keys} - {"patient"}
    if own is not None:
        parts |= {part for part in PARTS if getattr(own, part) is not None}
    if parts & {"gravity", "running", "change"}:
        parts.add("primary")
    if "protocol" in parts:
        parts.add("dose")
    if parts & {"second_secondary", "syringe"}:
        parts.add("secondary")
    if unknown := parts - set(PARTS):
        raise UsageError(f"No order with {', '.join(sorted(unknown))} can be drawn.", "Write the order by hand.")
    if not parts:
        raise UsageError("This checklist asks for nothing that an order states.", "It needs no drawn order.")
    units = tuple(sorted((name, asked) for name, asked in keys if asked is not None))
    weighs = any(name == "patient.weight" for name, _ in keys)
    if own is None or own.primary is None:
        return Wanted(frozenset(parts), units, weighs)
    return Wanted(frozenset(parts), units, weighs, own.primary.frequency)


def draw(
    wanted: Wanted,
    *,
    seed: int,
    level: int,
    count: int,
    day: date,
    fault: FaultKind | None = None,
    findable: Findable | None = None,
) -> list[Order]:
    """Draw orders for a class.

    Args:
        wanted: what they must hold (see `wanted_by`).
        seed: the same seed gives the same orders.
        level: 1 to 3, see `LEVELS`.
        count: how many; no two have the same infusions.
        day: the day of the orders and of the dates on the labels.
        fault: what to plant in each; only where it can be found.
        findable: where the checklist looks; needed with a fault.

    Raises:
        UsageError: the shelf has not so many different orders, or the fault has no place in them.
    """
    if level not in LEVELS:
        raise UsageError(f"There is no level {level}.", "Levels are 1, 2 and 3.")
    planting = None
    if fault is not None:
        if findable is None:
            raise TypeError("a fault is planted only where a checklist looks")
        if not has_place(fault, findable):
            raise _no_place(fault)
        planting = fault, findable
    chance = random.Random(f"{seed}/{level}")  # noqa: S311 - orders by chance are no secret
    names = _names(chance, count)
    seen: set[object] = set()
    drawn: list[Order] = []
    contents = _contents(chance, wanted, level)
    for number in range(1, count + 1):
        for _ in range(_TRIES):
            draft = next(contents)
            if planting is not None and not plant(draft, *planting, chance):
                continue
            if draft.content in seen:
                continue
            order = _order(draft, chance, names[number - 1], number, seed, day, wanted.frequency)
            if not _is_fair(order, planting):
                continue
            seen.add(draft.content)
            drawn.append(order)
            break
        else:
            if fault is not None and not drawn:
                raise _no_place(fault)
            raise UsageError(
                f"Only {len(drawn)} different orders of this kind could be drawn, but {count} are wanted.",
                "Ask for fewer, another level or another fault.",
            )
    return drawn


def _no_place(fault: FaultKind) -> UsageError:
    return UsageError(
        f"No step of this checklist can find the fault {fault} in the orders that are drawn for it.",
        "Ask for another fault.",
    )


def _is_fair(order: Order, planting: tuple[FaultKind, Findable] | None) -> bool:
    """Whether an order has the one fault that was planted, where a step can find it, and no other one beside it."""
    faults = truth_of(order, table()).faults
    if planting is None:
        return not faults
    _, findable = planting
    return len(faults) == 1 and findable.finds(faults[0], order)


def _contents(chance: random.Random, wanted: Wanted, level: int) -> Iterator[Draft]:
    """Drafts without end, at the wanted level.

    Raises:
        UsageError: nothing on the shelf has this level.
    """
    pools = _pools(wanted)
    shares = _shares(wanted, level)
    if not shares:
        raise UsageError(f"Nothing on the shelf has level {level} for this checklist.", "Ask for another level.")
    while True:
        draft = Draft()
        for part, hurdles in zip(pools, chance.choice(shares), strict=True):
            choice = chance.choice(pools[part][hurdles])
            if isinstance(choice, WithSet):
                draft.primary = choice
            elif isinstance(choice, Rated):
                draft.rated = choice
            elif isinstance(choice, Pushed):
                draft.pushed = choice
            elif part == "secondary":
                draft.first = choice
            else:
                draft.second = choice
        if not draft.rides_together():
            continue
        if "running" in wanted.parts:
            draft.running = _since(draft, chance)
            if draft.running is None:
                continue
        if "protocol" in wanted.parts:
            draft.protocol = _protocol(chance)
        if "syringe" in wanted.parts:
            draft.syringe = _SYRINGE
        if "change" in wanted.parts:
            draft.change = _change(draft, chance)
        if "flush" in wanted.parts:
            draft.flush = chance.choice(_FLUSHES_OF_A_DRUG if wanted.parts & {"secondary", "push"} else _FLUSHES)
        yield draft


@lru_cache(maxsize=64)
def _shares(wanted: Wanted, level: int) -> tuple[tuple[int, ...], ...]:
    """How the hurdles of a level can be shared among the parts of an order."""
    every = itertools.product(*(sorted(by_hurdles) for by_hurdles in _pools(wanted).values()))
    return tuple(share for share in every if min(sum(share), LEVELS[-1] - 1) == level - 1 or not share)


_SYRINGES = ("3 mL", "5 mL", "10 mL")
"""Flush syringes as they are filled (common practice, no source)."""
_FLUSHES = tuple(
    Flush(volume=parse_amount(volume), frequency=frequency)
    for volume in _SYRINGES
    for frequency in (
        "before and after each use",
        "after each use",
        "every 6 hours",
        "every 8 hours",
        "every 8 hours, and after each use",
        "every 8 hours, and before and after each use",
        "every 12 hours",
        "every 12 hours, and before and after each use",
        "every 24 hours",
        "once a shift",
    )
)
"""Adult locks by habit; local policy names volume and frequency.

BCcampus, Clinical Procedures for Safer Patient Care, section 8.5: 3 to 5 mL, before and after a drug, and every 12
hours where the lock is not used; the others are common practice, no source.
"""
_FLUSHES_OF_A_DRUG = tuple(Flush(volume=parse_amount(volume)) for volume in _SYRINGES)
"""Beside an intermittent drug: before and after each dose, and at no other time (the same section)."""


@lru_cache(maxsize=64)
def _pools(wanted: Wanted) -> dict[str, dict[int, Sequence[Choice]]]:
    """For each part of an order what can be drawn, by hurdles."""
    kinds: dict[str, Callable[[], Sequence[Choice]]] = {
        "primary": lambda: primaries("gravity" in wanted.parts),
        "secondary": secondaries,
        "second_secondary": secondaries,
        "dose": rated,
        "push": pushes,
    }
    pools: dict[str, dict[int, Sequence[Choice]]] = {}
    for part, all_of in kinds.items():
        if part not in wanted.parts:
            continue
        by_hurdles: dict[int, list[Choice]] = {}
        for choice in all_of():
            if _can_be_asked(part, choice, wanted):
                by_hurdles.setdefault(choice.hurdles, []).append(choice)
        if not by_hurdles:
            raise UsageError(
                "Nothing on the shelf can be asked for in the units of this checklist.", "Write the order by hand."
            )
        pools[part] = {n: tuple(found) for n, found in by_hurdles.items()}
    return pools


def _can_be_asked(part: str, choice: Choice, wanted: Wanted) -> bool:
    """Whether the numbers of a choice come in the kind of unit that the checklist asks for."""
    if isinstance(choice, WithSet):
        return "change" not in wanted.parts or choice.primary.rate is not None
    if isinstance(choice, Dosed):
        if isinstance(choice.drug, Electrolyte) and f"{part}.dose" not in dict(wanted.units):
            return False
        if "syringe" in wanted.parts and choice.secondary.volume.in_unit("mL") > _SYRINGE.size.in_unit("mL"):
            return False
        held = {f"{part}.dose": choice.secondary.dose.unit}
        held[f"{part}.concentration"] = f"{choice.secondary.dose.unit}/mL"
    elif isinstance(choice, Pushed):
        held = {"push.dose": choice.push.dose.unit, "push.amount": choice.push.amount.unit}
    else:
        if wanted.weight and choice.weight is None:
            return False
        if "protocol" in wanted.parts and choice.dose.ordered.unit != _TABLE_UNIT:
            return False
        top = choice.dose.amount.unit
        held = {"dose.ordered": choice.dose.ordered.unit, "dose.amount": top}
        held |= {"dose.concentration": f"{top}/mL", "dose.hourly": f"{top}/h"}
    return all(same_dimension(held[name], asked) for name, asked in wanted.units if name in held)


def _since(draft: Draft, chance: random.Random) -> Running | None:
    """For how long the primary has been running: whole hours, before it ends."""
    if draft.primary is None:
        return None
    primary = draft.primary.primary
    held = primary.bag_volume.in_unit("mL") - primary.reserve.in_unit("mL")
    rate = primary.rate or flow_rate(primary.bag_volume, primary.over or never()).amount
    hours = [n for n in range(1, 12) if n < held / rate.in_unit("mL/h")]
    return Running(since=Amount(Decimal(chance.choice(hours)), "h")) if hours else None


_TABLE_UNIT = "units/kg/h"
_TABLE = (
    Row(below=45, raise_by=Amount(Decimal(3), _TABLE_UNIT)),
    Row(below=60, raise_by=Amount(Decimal(2), _TABLE_UNIT)),
    Row(below=91),
    Row(below=111, lower_by=Amount(Decimal(2), _TABLE_UNIT)),
    Row(hold=parse_amount("60 min"), lower_by=Amount(Decimal(3), _TABLE_UNIT)),
)
"""The table of the Ostrey Harbour Teaching Lab (fictional) for heparin: made for training, no advice for treatment."""


def _protocol(chance: random.Random) -> Protocol:
    """The lab's table with a result that falls into one of its rows, each as often."""
    lowest, highest = chance.choice(((30, 44), (45, 59), (60, 90), (91, 110), (111, 140)))
    return Protocol(result=chance.randint(lowest, highest), rows=_TABLE)


def _change(draft: Draft, chance: random.Random) -> Change:
    """Another rate until now; one order in four is to hold."""
    new = draft.primary.primary.rate if draft.primary is not None else None
    before = chance.choice([rate for rate in map(parse_amount, RATES) if rate != new])
    return Change(before=before, hold=chance.random() < 0.25)


def _names(chance: random.Random, count: int) -> list[str]:
    """Invented names, all different while there are enough."""
    people = shelf().people
    pairs = len(people.first) * len(people.last)
    places = chance.sample(range(pairs), min(count, pairs))
    return [
        f"{people.first[place % len(people.first)]} {people.last[place // len(people.first)]}"
        for place in (places[n % pairs] for n in range(count))
    ]


def _order(draft: Draft, chance: random.Random, name: str, number: int, seed: int, day: date, frequency: str) -> Order:
    people = shelf().people
    born = day - timedelta(days=chance.randint(_YOUNGEST * 365, _OLDEST * 365))
    allergies = list(draft.allergies)
    if chance.random() < 0.4:
        allergies.append(chance.choice(people.other_allergies))
    chance.shuffle(allergies)
    code = f"D{seed}-{number:02}"
    return Order(
        name=code.lower(),
        title=f"Drawn order {number}",
        code=code,
        ordered_by=chance.choice(people.ordered_by),
        patient=Patient(
            name=name,
            born=born,
            number=f"L-{chance.randint(50000, 99999)}",
            allergies=tuple(allergies),
            weight=draft.weight,
        ),
        primary=draft.primary.primary.model_copy(update={"frequency": frequency}) if draft.primary else None,
        gravity=draft.primary.gravity if draft.primary else None,
        secondary=draft.first.secondary if draft.first else None,
        second_secondary=draft.second.secondary if draft.second else None,
        dose=draft.rated.dose if draft.rated else None,
        protocol=draft.protocol,
        syringe=draft.syringe,
        push=draft.pushed.push if draft.pushed else None,
        flush=draft.flush,
        running=draft.running,
        change=draft.change,
        laid_out=draft.bench(chance, day),
        illegible=draft.illegible,
        written=day,
        teaching=draft.teaching or NOTHING_PLANTED,
        sources=draft.sources(),
        digest="drawn",
    )
