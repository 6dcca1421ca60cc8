"""Drawn orders, edited as by hand, walked to their end: ``python -m tests.orders.edited [100000] [--results FILE]``.

For every checklist of the library orders are drawn; each is then changed as a person changes a file (another number, a
digit more or less, another unit, a line taken out or put in), loaded and linted. Every one that lint lets pass without
an error is lived from its opening to its end by a learner who looks and reckons carefully: it has to pass, or to stop
for a cause that is laid out. With ``--results`` each piece of `PIECE` orders is kept in the file, one JSON object a
line, and a later call goes on behind the last one.
"""

import argparse
import json
import random
import re
import sys
import tempfile
from collections import Counter
from collections.abc import Callable, Iterator
from dataclasses import dataclass, field
from datetime import date
from pathlib import Path

from assistant.checklist.finding import Severity
from assistant.checklist.load import available
from assistant.errors import AssistantError, UsageError
from assistant.guide import Guide, Mode, Opened, Papers
from assistant.learner import Character, SimulatedLearner
from assistant.orders.checked import findings_of_order
from assistant.orders.draw import LEVELS, draw, wanted_by
from assistant.orders.draw_for import keys_asked
from assistant.orders.load import load_order
from assistant.orders.plausible import table
from assistant.orders.solve import answer_key
from assistant.orders.truth import truth_of
from assistant.orders.write import text_of
from assistant.spoken import ENGLISH
from tests.bench.learners import PASSES, checklist_of, turns
from tests.guide.lived import Lived

PIECE = 250
"""Orders of a piece: one checklist, one class of drawn orders, each with several edits."""
_DRAWN = 25
_DAY = date(2031, 5, 6)
_AMOUNT = re.compile(r'(?m)^(?P<key>\w+) = "(?P<number>[\d,.]+) (?P<unit>[^"]+)"$')
_NUMBERS = (0.1, 0.2, 0.25, 0.5, 0.75, 0.9, 1.1, 1.25, 1.5, 2, 3, 4, 5, 10)
_OTHER_UNITS = {
    "mL": ("L",),
    "L": ("mL",),
    "min": ("h", "s"),
    "h": ("min",),
    "mg": ("g", "mcg"),
    "g": ("mg",),
    "kg": ("lb",),
    "mcg/kg/min": ("mg/kg/h", "mcg/min", "mg/kg/min"),
    "mg/h": ("mg/min", "mcg/min"),
    "units/kg/h": ("units/h",),
    "mL/h": ("mL/min",),
}
_PUT_IN = (
    ("", 'rounding = "whole"'),
    ("", 'rounding = "hundredth"'),
    ("", 'pounds_per_kg = "2.2"'),
    ("", 'pounds_per_kg = "2.20462"'),
    ("[primary]", 'reserve = "25 mL"'),
    ("[secondary]", 'reserve = "5 mL"'),
    ("[dose]", 'reserve = "10 mL"'),
)
"""Lines that a person adds, with the table that they belong to."""


def _another_number(text: str, found: re.Match[str], chance: random.Random) -> str:
    value = float(found["number"].replace(",", "")) * chance.choice(_NUMBERS)
    return _with(text, found, f"{value:.{chance.choice((0, 1, 2))}f}", found["unit"])


def _another_digit(text: str, found: re.Match[str], chance: random.Random) -> str:
    number = found["number"]
    place = chance.randrange(len(number))
    digit = str(chance.randrange(10))
    ways = (number[:place] + digit + number[place + 1 :], number[:place] + digit + number[place:])
    return _with(text, found, chance.choice((*ways, number[:place] + number[place + 1 :])), found["unit"])


def _another_unit(text: str, found: re.Match[str], chance: random.Random) -> str:
    return _with(text, found, found["number"], chance.choice(_OTHER_UNITS.get(found["unit"], (found["unit"],))))


def _in_pounds(text: str, found: re.Match[str], chance: random.Random) -> str:
    weight = re.search(r'(?m)^weight = "([\d.]+) kg"$', text)
    if weight is None:
        return _another_number(text, found, chance)
    return text.replace(weight.group(0), f'weight = "{round(float(weight.group(1)) * 2.2)} lb"')


def _without_line(text: str, found: re.Match[str], _chance: random.Random) -> str:
    return text[: found.start()] + text[found.end() + 1 :]


def _with_line(text: str, _found: re.Match[str], chance: random.Random) -> str:
    under, line = chance.choice(_PUT_IN)
    if line.partition(" ")[0] in text and not under:
        return text
    return text.replace(f"{under}\n", f"{under}\n{line}\n", 1) if under else f"{line}\n{text}"


def _rate_for_time(text: str, found: re.Match[str], chance: random.Random) -> str:
    over = re.search(r'(?m)^over = "[^"]+"$', text)
    if over is None:
        return _another_number(text, found, chance)
    return text.replace(over.group(0), f'rate = "{chance.choice((25, 42, 62.5, 75, 83, 100, 125, 150))} mL/h"', 1)


_EDITS: tuple[Callable[[str, re.Match[str], random.Random], str], ...] = (
    _another_number,
    _another_number,
    _another_number,
    _another_digit,
    _another_digit,
    _another_unit,
    _in_pounds,
    _without_line,
    _with_line,
    _rate_for_time,
)


def _with(text: str, found: re.Match[str], number: str, unit: str) -> str:
    return f'{text[: found.start()]}{found["key"]} = "{number} {unit}"{text[found.end() :]}'


def edited(text: str, chance: random.Random) -> str:
    """The text of an order with one to three changes, as a person makes them."""
    for _ in range(chance.choice((1, 1, 2, 3))):
        amounts = list(_AMOUNT.finditer(text))
        if not amounts:
            return text
        text = chance.choice(_EDITS)(text, chance.choice(amounts), chance)
    return text


@dataclass
class Looked:
    """What became of some edited orders: how many of each kind, and those that cannot be walked."""

    counts: Counter[str] = field(default_factory=Counter)
    stuck: list[str] = field(default_factory=list)


def look_at(piece: int, count: int = PIECE) -> Looked:
    """Draw, edit, lint and walk the orders of one piece.

    Args:
        piece: its number, from 0; the same piece is always the same orders.
        count: how many.
    """
    names = sorted(available())
    name, chance = names[piece % len(names)], random.Random(piece)  # noqa: S311 - orders to repeat
    looked = Looked()
    texts = _drawn_for(name, piece)
    if not texts:
        looked.counts["nothing to draw"] += count
        return looked
    with tempfile.TemporaryDirectory() as folder:
        for place in range(count):
            path = Path(folder) / f"o{place}.toml"
            path.write_text(edited(texts[place % len(texts)], chance), encoding="utf-8")
            _look(looked, name, path, seed=piece * count + place)
    return looked


def _drawn_for(name: str, piece: int) -> list[str]:
    checklist = checklist_of(name)
    wanted = wanted_by(keys_asked(checklist), load_order(checklist.order))
    for level in (LEVELS[piece % len(LEVELS)], *LEVELS):
        try:
            orders = draw(wanted, seed=piece + 1, level=level, count=_DRAWN, day=_DAY)
        except UsageError:
            continue
        return [text_of(order) for order in orders]
    return []


def _look(looked: Looked, name: str, path: Path, seed: int) -> None:
    findings = findings_of_order(str(path))
    if findings is None or any(one.severity is Severity.ERROR for one in findings):
        looked.counts["an error"] += 1
        return
    order, checklist = load_order(str(path)), checklist_of(name)
    truth = truth_of(order, table())
    if any(not any(fault in truth.seen_at(step) for step in checklist.steps) for fault in truth.faults):
        looked.counts["a fault that no step looks at"] += 1  # an instructor is warned of it before the attempt
        return
    try:
        papers = Papers(checklist, order.sentence(), answer_key(order), ENGLISH, truth)
    except AssistantError as refused:
        looked.counts[f"refused at the opening: {refused.what.partition(':')[0][:60]}"] += 1
        return
    looked.counts["with a warning, walked" if findings else "clean, walked"] += 1
    if why := _walked(papers, seed):
        looked.stuck.append(f"{name}: {why}\n{path.read_text(encoding='utf-8')}")


def _walked(papers: Papers, seed: int) -> str:
    """Live an attempt to its end; why it does not come to a good one, or ""."""
    learner = SimulatedLearner(
        papers.checklist,
        papers.key,
        None,
        seed,
        truth=papers.truth,
        character=Character.ATTENTIVE,
        with_instructor=True,
    )
    lived = Lived(Guide(papers, Mode.CHECK_OFF, {}))
    lived.give(Opened(lived.at))
    breaches = list(turns(lived, learner, papers.truth))
    if lived.outcome is None:
        step = papers.checklist.steps[lived.guide.progress.cursor]
        return f"no end, at {step.id}: {' / '.join(one.text for one in lived.says[-3:])}"
    if lived.outcome not in PASSES or not lived.guide.results().passed:
        return f"{lived.outcome.value}: {'; '.join(lived.guide.results().failures[:3])}"
    return "; ".join(breaches)


def _done(results: Path | None) -> Iterator[tuple[int, Looked]]:
    """The pieces that a file of results has."""
    if results is None or not results.exists():
        return
    for line in results.read_text(encoding="utf-8").splitlines():
        row = json.loads(line)
        yield row["piece"], Looked(Counter(row["counts"]), row["stuck"])


def main(words: list[str] | None = None) -> int:
    """Look at so many orders, and print what became of them; 1 where one cannot be walked."""
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("count", type=int, nargs="?", default=100_000)
    parser.add_argument("--results", type=Path, metavar="FILE")
    args = parser.parse_args(words)
    total = Looked()
    done = dict(_done(args.results))
    for piece in range(-(-args.count // PIECE)):
        looked = done.get(piece)
        if looked is None:
            looked = look_at(piece)
            if args.results is not None:
                row = {"piece": piece, "counts": dict(looked.counts), "stuck": looked.stuck}
                with args.results.open("a", encoding="utf-8") as stream:
                    stream.write(json.dumps(row) + "\n")
        total.counts += looked.counts
        total.stuck += looked.stuck
    sys.stdout.write(f"{total.counts.total():,} orders: {dict(total.counts)}; {len(total.stuck)} cannot be walked\n")
    sys.stdout.write("".join(f"{one}\n" for one in total.stuck[:5]))
    return 1 if total.stuck else 0


if __name__ == "__main__":
    sys.exit(main())
