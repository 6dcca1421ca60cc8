"""A question in a line: what it states, what it asks for, by which formula it is answered.

Nothing is guessed. Every amount has to find its place in a formula (what may be left over is named), every word that
could turn the question round has to be known, and where two formulas fit, or a thing lacks, it is asked for.
"""

import itertools
import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from decimal import Decimal
from typing import Any

from assistant.dosing import question_words as words
from assistant.dosing import units
from assistant.dosing.amount import Amount
from assistant.dosing.electrolyte import SALTS
from assistant.dosing.formulas import FORMULAS, Answer, work_out
from assistant.dosing.question_scan import Line, Taken, scan
from assistant.dosing.question_ways import WAYS, Slot, Way
from assistant.dosing.result import Measure, Result, conclude, tell, tell_exact
from assistant.dosing.rounding import HUNDREDTH, TENTH, parse_rounding
from assistant.errors import QuantityError, UsageError
from assistant.text import quoted

_WEAK = (
    (re.compile(r"\bivpb\b|\bpiggyback\b|\brate\b"), frozenset({"rate", "drop rate"})),
    (re.compile(r"\bvolume\b|\bvtbi\b"), frozenset({"volume"})),
    (re.compile(r"\bdose\b"), frozenset({"dose"})),
)
"""Words that name what is given as often as what is asked for; they count where nothing stronger stands."""


@dataclass(frozen=True)
class Worked:
    """A question with its answer.

    Attributes:
        taken: what each thing was taken for: its name and its text.
        spared: amounts and words that were not needed.
        formulas: their names, in the order in which they were used.
        answers: the last one is the answer; where a formula gives two, both.
        working: the lines of every step.
        cautions: of every step.
    """

    taken: tuple[tuple[str, str], ...]
    spared: tuple[str, ...]
    formulas: tuple[str, ...]
    answers: tuple[Answer, ...]
    working: tuple[str, ...]
    cautions: tuple[str, ...]

    @property
    def answer(self) -> Answer:
        """The one that was asked for."""
        return self.answers[0]


def ask(text: str, pounds_per_kg: Decimal | None = None) -> Worked:
    """Answer a question in a line.

    Args:
        text: such as "5 mcg/kg/min, 70 kg, 400 mg in 250 mL".
        pounds_per_kg: by what a school turns pounds into kilograms; None for the exact factor.

    Raises:
        UsageError: something lacks, or one of two things may be meant; the sentence says what.
        QuantityError: an amount or a formula refuses.
    """
    line = scan(text)
    _refuse_what_turns(line)
    if not line.takens:
        raise UsageError("There is no amount in this question.", 'Ask like "1 g in 200 mL over 60 min in mL/h".')
    factor = Amount(pounds_per_kg, "lb/kg") if pounds_per_kg is not None else None
    if (plain := _conversion(line, factor)) is not None:
        return plain
    wanted = _wanted(line)
    special = words.specials(line.left)
    fits = list(_fitting(line, wanted, special))
    if not fits:
        raise _lacking(line, wanted, special)
    fewest = min(len(spared) for _, _, spared in fits)
    fits = [fit for fit in fits if len(fit[2]) == fewest]
    if len({way.gives for way, _, _ in fits}) > 1 or len({way.steps[-1].formula for way, _, _ in fits}) > 1:
        kinds = list(dict.fromkeys(_asked_for(way) for way, _, _ in fits))
        raise UsageError(f"This may ask for {_listed(kinds)}.", "Say which, for example with the unit: in mL/h.")
    way, filled, spared = fits[0]
    return _worked(line, way, filled, spared, factor)


def _refuse_what_turns(line: Line) -> None:
    if (other := words.NOT_WORKED_OUT.search(line.left)) is not None:
        raise QuantityError(f"{other.group(1)} are not worked out here.", "Ask for a dose or for a volume.")
    if (count := words.COUNTS.search(line.left)) is not None:
        raise UsageError(f"{quoted(count.group(0))} is no amount.", "Write every amount in digits, with its unit.")
    if any(taken.text.endswith("%") and re.match(r"\s*of\s*(?:the\s*)?$", taken.behind) for taken in line.takens):
        raise UsageError("A percentage of an amount is not worked out here.", "Ask it in plain steps.")
    found = words.TURNING.search(line.left)
    special = words.specials(line.left)
    while found is not None:
        word = found.group(0)
        allowed = (word == "after" and "left" in special) or (
            word in ("faster", "slower") and special & {"off", "most"}
        )
        allowed = allowed or (
            word == "then" and any(taken.kind in _GOES_ON and _after_then(taken) for taken in line.takens)
        )
        if not (allowed or (word == "less" and "reserve" in special) or (word == "behind" and "tubing" in special)):
            raise UsageError(
                f"{quoted(word)} changes the question in a way that no formula here takes.", "Ask it in plain steps."
            )
        found = words.TURNING.search(line.left, found.end())


def _conversion(line: Line, factor: Amount | None) -> Worked | None:
    """One amount, and another unit of the same quantity."""
    if len(line.takens) != 1 or line.wanted is None:
        return None
    [taken] = line.takens
    if not isinstance(taken.value, Amount) or not units.same_dimension(taken.value.unit, line.wanted):
        return _of_salt(line, taken, line.wanted)
    values: dict[str, Any] = {"given": taken.value, "unit": line.wanted}
    if taken.kind == "weight" and line.wanted == "kg":
        values = {"weight": taken.value} | _by_factor("body-weight", taken.value, factor)
    if line.rounding is not None:
        values["rounding"] = parse_rounding(line.rounding)
    formula = "body-weight" if "weight" in values else "convert"
    answers = work_out(formula, values)
    return _told(line, (("given", taken.text),), (), (formula,), answers, list(answers))


def _counted_alike(unit: str) -> str:
    """The kind of a unit, where a mass is a dose like any other."""
    kind = units.unit(unit).kind
    return "dose" if kind == "mass" else kind.replace("percentage", "concentration")


_GOES_ON = ("rate", "dose rate", "dose rate per weight")
"""At what an infusion may go on, "then": a formula takes that, and no other thing that comes then."""


def _after_then(taken: Taken) -> bool:
    return re.search(words.SPECIAL["then"], taken.cue) is not None


def _of_salt(line: Line, taken: Taken, wanted: str) -> Worked | None:
    """Mass, millimoles or milliequivalents of a salt that the line names, one from another; None for anything else.

    Raises:
        UsageError: a salt is named without the water of its crystals.
    """
    given = taken.value
    if isinstance(given, str) or _counted_alike(given.unit) != _counted_alike(wanted):
        return None
    named = [name for name in SALTS if re.search(rf"\b{name}\b", line.left)]
    if not named:
        forms = [name for name in SALTS if re.search(rf"\b{name.rpartition(' ')[0]}\b", line.left)]
        if len(forms) == 1 and len(forms[0].split()) > 2:
            raise UsageError(f"Which form of the salt is meant, {forms[0]}?", "Write its whole name.")
        return None
    salt = max(named, key=len)
    answers = work_out("electrolyte", {"given": given, "salt": salt, "unit": wanted} | _options(line, "electrolyte"))
    return _told(line, (("given", taken.text), ("salt", salt)), (), ("electrolyte",), answers, list(answers))


def _wanted(line: Line) -> frozenset[str]:
    """The kinds of answer that are asked for; empty where the line does not say."""
    if line.wanted is not None:
        kind = units.unit(line.wanted).kind
        asked = frozenset({kind if kind != "mass" or line.wanted in ("kg", "lb") else "dose"})
        return asked | ({"volume balance"} if kind == "volume" else frozenset())
    asked = words.after(line.left)
    if any(taken.kind == "area" for taken in line.takens):
        asked -= {"area"}
    if "volume" in asked:
        asked |= {"volume balance"}
    if asked:
        return asked
    given = {taken.kind for taken in line.takens}
    for pattern, kinds in _WEAK:
        if pattern.search(line.left) and not kinds & given:
            return kinds
    return frozenset()


Filled = Mapping[str, tuple[Slot, Taken]]


def _fitting(line: Line, wanted: frozenset[str], special: frozenset[str]) -> Iterator[tuple[Way, Filled, list[Taken]]]:
    """Every way that has a place for every amount that it does not spare, and whose slots are all filled."""
    for way in _suitable(wanted, special):
        if (filled := _fill(way.slots, line.takens)) is None:
            continue
        used = {taken.at for _, taken in filled.values()}
        spared = [taken for taken in line.takens if taken.at not in used]
        if all(taken.kind in way.spares and not _turns_when_spared(taken, line) for taken in spared):
            yield way, filled, spared


def _turns_when_spared(taken: Taken, line: Line) -> bool:
    """Whether the answer without it is not the one that was asked for.

    A drop factor counts where drops are asked for; a percentage behind no name of a drug may be a part of the dose.
    """
    if taken.kind == "drop factor":
        return re.search(r"\bdrops\b|\bgtts?\b", line.left) is not None
    if taken.kind != "concentration" or not taken.text.endswith(("%", "percent", "per cent")):
        return False
    before = re.search(r"([a-z]+)\s*$", taken.cue)
    return before is None or before.group(1) not in ("of", *line.unread)


def _suitable(wanted: frozenset[str], special: frozenset[str]) -> Iterator[Way]:
    for way in WAYS:
        if way.special <= special <= way.special | way.lets and (way.gives in wanted or not (wanted or way.only_asked)):
            yield way


def _fill(
    slots: Sequence[Slot], takens: Sequence[Taken], lacking: bool = False
) -> dict[str, tuple[Slot, Taken]] | None:
    """Which amount goes where; None where a slot stays empty, or where two amounts of a kind could fill one."""
    filled: dict[str, tuple[Slot, Taken]] = {}
    used: set[tuple[int, str]] = set()
    by_strength = [slot for slot in slots if slot.cue in _BY_STRENGTH]
    strengths = [taken for taken in takens if by_strength and _fits(by_strength[0], taken)]
    for slot in slots:
        found = [(taken, part) for taken in takens for part in _parts(slot, taken) if (taken.at, part) not in used]
        if slot.cue in _BY_STRENGTH:
            if len(strengths) != len(by_strength):
                return None
            found = [(sorted(strengths, key=_strength)[_BY_STRENGTH[slot.cue]], "")]
        elif slot.cue:
            found = [pair for pair in found if _cued(slot, pair[0])]
        if len(found) > 1 or (not found and not lacking):
            return None
        if found:
            filled[slot.name] = (slot, found[0][0])
            used.add((found[0][0].at, found[0][1]))
    return filled


_BY_STRENGTH = {"weakest": 0, "middle": 1, "strongest": -1}
"""Where among the strengths of a line, the weakest first, a slot finds its own."""


def _strength(taken: Taken) -> Any:
    return (
        taken.value.exact
        if isinstance(taken.value, Result)
        else taken.value.ratio
        if isinstance(taken.value, Amount)
        else 0
    )


def _fits(slot: Slot, taken: Taken) -> bool:
    return bool(list(_parts(slot, taken)))


def _parts(slot: Slot, taken: Taken) -> Iterator[str]:
    for kind in slot.kinds:
        whole, _, part = kind.partition(":")
        if taken.kind == whole:
            yield part


def _cued(slot: Slot, taken: Taken) -> bool:
    before, _, behind = slot.cue.partition(">")
    return bool((before and re.search(before.rstrip("|"), taken.cue)) or (behind and re.search(behind, taken.behind)))


def _value(slot: Slot, taken: Taken) -> Measure | str:
    if taken.bag is not None:
        for part in _parts(slot, taken):
            if part:
                return taken.bag[part == "volume"]
    return taken.value


def _by_factor(formula: str, weight: object, factor: Amount | None) -> dict[str, Amount]:
    """The factor by which a formula turns a weight, where that came in pounds."""
    takes = any(one.name == "weight-factor" for one in FORMULAS[formula].inputs)
    in_pounds = isinstance(weight, Amount) and weight.unit == "lb"
    return {"weight_factor": factor} if factor is not None and takes and in_pounds else {}


def _worked(line: Line, way: Way, filled: Filled, spared: Sequence[Taken], factor: Amount | None) -> Worked:
    answers: tuple[Answer, ...] = ()
    every: list[Answer] = []
    for place, step in enumerate(way.steps):
        last = place == len(way.steps) - 1
        values: dict[str, Any] = {
            name.replace("-", "_"): answers[0] if source == "=" else _value(*filled[source])
            for name, source in step.inputs.items()
        }
        values |= _by_factor(step.formula, values.get("weight"), factor)
        if last:
            values |= _options(line, step.formula)
        answers = work_out(step.formula, values)
        every += answers if last else answers[:1]
    taken = tuple((name, _shown(slot, one)) for name, (slot, one) in filled.items())
    formulas = tuple(step.formula for step in way.steps)
    left_aside = [*_left_in_bags(filled), *(one.text for one in spared)]
    return _told(line, taken, left_aside, formulas, _in_unit(answers, line), every)


def _left_in_bags(filled: Filled) -> Iterator[str]:
    """Of a bag whose volume alone counts, its dose; and the other way round."""
    parts: dict[int, set[str]] = {}
    bags = {one.at: one.bag for _, one in filled.values() if one.bag is not None}
    for slot, one in filled.values():
        parts.setdefault(one.at, set()).update(_parts(slot, one))
    for at, (dose, volume) in bags.items():
        if parts[at] == {"volume"}:
            yield tell(dose)
        elif parts[at] == {"dose"}:
            yield tell(volume)


def _shown(slot: Slot, taken: Taken) -> str:
    value = _value(slot, taken)
    return taken.text if value is taken.value else str(value)


def _options(line: Line, formula: str) -> dict[str, Any]:
    takes = {one.name for one in FORMULAS[formula].inputs}
    found: dict[str, Any] = {}
    if line.rounding is not None:
        if "rounding" not in takes:
            raise QuantityError(f"{formula} takes no rule for rounding.", "Leave it out.")
        found["rounding"] = parse_rounding(line.rounding)
    if line.wanted is not None and "unit" in takes:
        found["unit"] = line.wanted
    if line.wanted is None and formula in ("duration", "dose-lasts", "remaining-time") and _in_hours(line.left):
        found["unit"] = "h"
    return found


def _in_hours(left: str) -> bool:
    return re.search(r"how many (?:hours|hrs|h)\b", left) is not None


def _in_unit(answers: tuple[Answer, ...], line: Line) -> tuple[Answer, ...]:
    """The answer in the unit that was asked for, where the formula has its own."""
    first, wanted = answers[0], line.wanted
    if wanted is None or not isinstance(first, Result) or first.unit == wanted:
        return answers
    exact = first.in_unit(wanted)
    rule = first.rounding
    if line.rounding is None and rule == TENTH and abs(exact) < 10:
        rule = HUNDREDTH
    working = tuple(one for one in first.working if not one.startswith("rounded ("))
    line_of_unit = f"{tell_exact(first.exact, first.unit)} = {tell_exact(exact, wanted)}"
    turned = conclude(first.formula, first.inputs, exact, wanted, rule, (*working, line_of_unit))
    return (replace(turned, cautions=(*first.cautions, *turned.cautions)), *answers[1:])


def _told(
    line: Line,
    taken: tuple[tuple[str, str], ...],
    left_aside: Sequence[str],
    formulas: tuple[str, ...],
    answers: tuple[Answer, ...],
    every: Sequence[Answer],
) -> Worked:
    steps = [*(one for one in every if one not in answers), *answers] if len(formulas) > 1 else list(answers)
    working = tuple(dict.fromkeys(text for one in steps for text in one.working))
    cautions = dict.fromkeys(text for one in steps if isinstance(one, Result) for text in one.cautions)
    return Worked(taken, (*left_aside, *line.unread), formulas, answers, working, tuple(cautions))


def _asked_for(way: Way) -> str:
    gives = {"clock": "a clock time", "mass": "a weight", "dose rate per weight": "a dose rate per kg"}.get(way.gives)
    return f"{gives or _article(way.gives)} ({way.steps[-1].formula})"


def _article(name: str) -> str:
    return f"{'an' if name[0] in 'aeiou' else 'a'} {name}"


def _listed(names: Sequence[str]) -> str:
    return names[0] if len(names) == 1 else f"{', '.join(names[:-1])} or {names[-1]}"


def _lacking(line: Line, wanted: frozenset[str], special: frozenset[str]) -> UsageError:
    """What lacks, by the ways that would take all that is there and need the least beside it."""
    near: list[tuple[int, list[Slot]]] = []
    for way in _suitable(wanted, special):
        filled = _fill(way.slots, line.takens, lacking=True)
        if not filled or any(
            t.at not in {one.at for _, one in filled.values()} for t in line.takens if t.kind not in way.spares
        ):
            continue
        missing = [slot for slot in way.slots if slot.name not in filled]
        if missing:
            near.append((len(missing), missing))
    if near:
        least = min(count for count, _ in near)
        ways = dict.fromkeys(
            " and ".join(f'{_article(slot.name)} such as "{slot.example}"' for slot in missing)
            for count, missing in near
            if count == least
        )
        return UsageError(f"This lacks {', or '.join(list(ways)[:3])}.", "Ask again with it.")
    return UsageError(f"{_clash(line.takens)}.", "Ask one thing at a time, and leave out what it does not need.")


def _clash(takens: Sequence[Taken]) -> str:
    by_kind = {
        kind: [one.text for one in group]
        for kind, group in itertools.groupby(sorted(takens, key=lambda one: one.kind), key=lambda one: one.kind)
    }
    for kind, texts in by_kind.items():
        if len(texts) > 1:
            return f"Which {'time' if kind == 'duration' else kind} is meant, {_listed(texts)}"
    return f"No formula here joins {' and '.join(one.text for one in takens)} to what is asked"
