"""Prints the tables of numbers that sound alike: ``python -m tests.spoken.confusions [--all] [LOWEST HIGHEST]``.

Without a range: those of the ranges in use, which are the right answers of every checklist of the library with every
order of the library. With a range: its whole numbers; decimals are named by rule. With --all every pair is listed.
"""

import argparse
import sys
from collections import defaultdict
from collections.abc import Iterable, Mapping
from decimal import Decimal
from fractions import Fraction

from assistant import dosing
from assistant.checklist.load import available, load
from assistant.checklist.model import NumberAsked
from assistant.dosing.units import same_dimension
from assistant.orders.load import available_orders, load_order
from assistant.orders.solve import answer_key
from assistant.spoken import confusions, pair_to_offer, wants_digits
from assistant.spoken.confusion import NEARLY_THE_SAME, Confusion
from assistant.spoken.expect import NumberExpected

LISTED = 24
"""Pairs that are printed for each kind; the rest is counted."""
EXAMPLES = 4
"""Pairs of numbers in use that are printed for each kind."""

HIGHEST_SAID = NumberExpected.highest
Pair = tuple[Decimal, Decimal]

HOW = {
    Confusion.TEEN_TY: '"fifteen" and "fifty"',
    Confusion.ONE_TEN: '"six" and "sixty" at the end',
    Confusion.PAIR: '"nine eighty" and "ninety"',
    Confusion.EIGHT_A: '"a hundred" and "eight hundred"',
    Confusion.HUNDRED_LOST: '"hundred" not heard',
    Confusion.POINT_LOST: '"point" not heard',
    Confusion.DIGIT_LOST: "one digit of several not heard",
    Confusion.FIVE_NINE: '"five" and "nine"',
    Confusion.TWO_TEN: '"two" and "ten"',
}
"""How two numbers come to sound alike, by example."""


def numbers_in_use() -> Mapping[str, tuple[Decimal, ...]]:
    """The right answers that the library asks for, by unit, in order."""
    keys = [answer_key(load_order(name)) for name in available_orders()]
    found: dict[str, set[Decimal]] = defaultdict(set)
    for name in available():
        for step in load(name).steps:
            if not isinstance(step.expect, NumberAsked):
                continue
            unit = step.expect.unit
            for entry in (key[step.expect.key] for key in keys if step.expect.key in key):
                if isinstance(entry.value, Decimal) and same_dimension(entry.unit or unit, unit):
                    found[unit].add(_decimal(dosing.Amount(entry.value, entry.unit or unit).in_unit(unit)))
    return {unit: tuple(sorted(values)) for unit, values in sorted(found.items())}


def _decimal(value: Fraction) -> Decimal:
    return Decimal(value.numerator) / value.denominator


def pairs_of(values: Iterable[Decimal], lowest: Decimal, highest: Decimal) -> Mapping[Confusion, list[Pair]]:
    """Every pair of one of these numbers and one of the range that sounds like it, by kind, in order."""
    pairs: dict[Confusion, set[Pair]] = defaultdict(set)
    for value in values:
        for neighbour in confusions(value, lowest, highest):
            pairs[neighbour.kind].add((min(value, neighbour.value), max(value, neighbour.value)))
    return {kind: sorted(pairs[kind]) for kind in Confusion}


def _whole(lowest: int, highest: int) -> tuple[Decimal, ...]:
    return tuple(map(Decimal, range(lowest, highest + 1)))


def _listed(pairs: list[Pair], most: int) -> str:
    shown = ", ".join(f"{a:f}/{b:f}" for a, b in pairs[:most]) + (", ..." if len(pairs) > most else "")
    return shown or "none"


def table(lowest: int, highest: int, most: int = LISTED) -> str:
    """Every kind of confusion with its pairs in a range of whole numbers, as a table in Markdown."""
    values, low, high = _whole(lowest, highest), Decimal(lowest), Decimal(highest)
    lines = ["| kind | pairs | digits asked | examples |", "| --- | --- | --- | --- |"]
    for kind, found in pairs_of(values, low, high).items():
        asked = "yes" if kind in NEARLY_THE_SAME else "no"
        lines.append(f"| {kind.value} | {len(found)} | {asked} | {_listed(found, most)} |")
    count = sum(wants_digits(value, "mL/h", low, high) for value in values)
    lines += ["", f"Asked for digits: {count} of {len(values)} whole numbers, and every decimal."]
    return "\n".join(lines)


def in_use() -> str:
    """The numbers in use by unit, and every kind of confusion in their range, as two tables in Markdown."""
    used = numbers_in_use()
    values = sorted({value for found in used.values() for value in found})
    highest = int(max(values))
    lines = ["| unit | right answers in the library | asked for by digits when heard |", "| --- | --- | --- |"]
    for unit, found in used.items():
        asked = [f"{value:f}" for value in found if wants_digits(value, unit)]
        lines.append(f"| {unit} | {len(found)}, {found[0]:f} to {found[-1]:f} | {', '.join(asked) or 'none'} |")
    lines += [
        "",
        f"| kind | how | pairs, 1 to {highest:,} | of numbers in use | for example | what the guide does |",
        "| --- | --- | --- | --- | --- | --- |",
    ]
    every = _whole(1, highest)
    whole, near = (pairs_of(of, Decimal(0), HIGHEST_SAID) for of in (every, values))
    for kind in Confusion:
        lines.append(
            f"| {kind.value} | {HOW[kind]} | {sum(pair[1] <= highest for pair in whole[kind])} | {len(near[kind])} "
            f"| {_listed(near[kind], EXAMPLES)} | {_done(kind)} |"
        )
    asked_for = [value for value in every if wants_digits(value, "mL/h")]
    offered = sum(pair_to_offer(value) is not None for value in asked_for)
    lines += [
        "",
        f"Of the whole numbers from 1 to {highest:,}, {len(asked_for)} are asked for by digits when they were heard; "
        f"in practice {offered} of them together with the one other that they could be. So is every decimal, alone.",
    ]
    return "\n".join(lines)


def _done(kind: Confusion) -> str:
    if kind in NEARLY_THE_SAME:
        return "asks for the digits; in practice offers both where there is one other"
    if kind is Confusion.POINT_LOST:
        return "asks for the digits of the decimal; the whole number is read back"
    return "reads back; teens and tens by digits too"


def main(arguments: list[str]) -> int:
    """Print the tables in use, or that of a range."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--all", action="store_true", help="list every pair")
    parser.add_argument("range", nargs="*", type=int, metavar="NUMBER", help="lowest and highest whole number")
    args = parser.parse_args(arguments)
    if len(args.range) not in (0, 2):
        parser.error("give both the lowest and the highest number, or neither")
    most = sys.maxsize if args.all else LISTED
    if args.range:
        text = table(args.range[0], args.range[1], most)
    elif args.all:
        text = table(1, int(max(value for found in numbers_in_use().values() for value in found)), most)
    else:
        text = in_use()
    sys.stdout.write(text + "\n")
    return 0


if __name__ == "__main__":
    raise SystemExit(main(sys.argv[1:]))
