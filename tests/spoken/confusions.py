"""Prints the table of numbers that sound alike: ``python -m tests.spoken.confusions [LOWEST HIGHEST]``.

Without a range it covers the whole numbers that rates and volumes use, 1 to 999; decimals are named by rule.
"""

import sys
from collections import defaultdict
from decimal import Decimal

from assistant.spoken.alike import NEARLY_THE_SAME, Confusion, confusions, wants_digits

LISTED = 24
"""Pairs that are printed for each kind; the rest is counted."""


def table(lowest: int, highest: int) -> str:
    """Every kind of confusion with its pairs, as a table in Markdown."""
    pairs: dict[Confusion, set[tuple[Decimal, Decimal]]] = defaultdict(set)
    asked = 0
    low, high = Decimal(lowest), Decimal(highest)
    for number in range(lowest, highest + 1):
        value = Decimal(number)
        asked += wants_digits(value, "mL/h", low, high)
        for neighbour in confusions(value, low, high):
            pairs[neighbour.kind].add((min(value, neighbour.value), max(value, neighbour.value)))
    lines = ["| kind | pairs | digits asked | examples |", "| --- | --- | --- | --- |"]
    for kind in Confusion:
        found = sorted(pairs[kind])
        shown = ", ".join(f"{a:f}/{b:f}" for a, b in found[:LISTED]) + (", ..." if len(found) > LISTED else "")
        lines.append(f"| {kind.value} | {len(found)} | {'yes' if kind in NEARLY_THE_SAME else 'no'} | {shown} |")
    count = highest - lowest + 1
    lines.append("")
    lines.append(f"Asked for digits: {asked} of {count} whole numbers, and every decimal.")
    return "\n".join(lines)


def main(arguments: list[str]) -> int:
    """Print the table for a range."""
    lowest, highest = (int(arguments[0]), int(arguments[1])) if len(arguments) == 2 else (1, 999)
    sys.stdout.write(table(lowest, highest) + "\n")
    return 0


if __name__ == "__main__":
    raise SystemExit(main(sys.argv[1:]))
