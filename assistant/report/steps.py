"""Steps and numbers of a result as lines of a report."""

from collections.abc import Mapping, Sequence
from decimal import Decimal

from assistant import dosing
from assistant.checklist.model import Checklist, DoubleCheckAsked, NameAsked, NumberAsked
from assistant.dosing import Amount, parse_amount
from assistant.errors import QuantityError
from assistant.orders.key import KeyEntry
from assistant.report.content import NumberLine, StepLine
from assistant.report.reading import count, mapping, text, texts

DONE_WELL = ("done unaided", "not applicable")
"""Endings that need no second look."""
NOT_DONE = ("left out", "wrong", "not reached", "not seen by the instructor")
"""Endings of steps that were not closed as they should be."""
NOT_SCORED = "not scored"
"""The ending where nothing can tell how a step ended."""

CUES = {
    "help": "asked for help",
    "more": "asked for more",
    "spelled": "had a word spelled",
    "gate": "led back by a gate",
    "order": "led back by a later step",
    "hint": "given a hint",
    "instructor": "helped by the instructor",
}
"""Cues by their names in a record, in words."""

_SHOWN = frozenset(
    {"id", "say", "critical", "gate", "kind", "ending", "first", "final", "slips", "cues", "expected"}
    | {"first_difference", "difference", "tries"}
)
_IN_WORDS = {
    "wrong": "answers that were not right: {}",
    "corrections": "taken up again by the learner: {} times",
    "expired": "done again because the settings were lost by waiting: {} times",
    "out_of_order": "done out of order",
    "reason": "reason: {}",
    "by": "by: {}",
}


def step_lines(
    results: Mapping[str, object], checklist: Checklist | None, seconds: Mapping[str, Decimal]
) -> tuple[StepLine, ...]:
    """The steps of a result in the order of the checklist; critical ones first where it is not at hand.

    Args:
        results: the result as a record holds it.
        checklist: the one of the attempt, or None.
        seconds: time at work, by step id.
    """
    places = {step.id: place for place, step in enumerate(checklist.steps)} if checklist else {}
    lines = [_step_line(row, checklist, places, seconds) for row in _rows(results)]
    return tuple(sorted(lines, key=lambda line: line.number))


def _rows(results: Mapping[str, object]) -> list[Mapping[str, object]]:
    steps = results.get("steps")
    return [row for row in steps if isinstance(row, Mapping)] if isinstance(steps, list | tuple) else []


def _step_line(
    row: Mapping[str, object],
    checklist: Checklist | None,
    places: Mapping[str, int],
    seconds: Mapping[str, Decimal],
) -> StepLine:
    name = text(row.get("id"))
    place = places.get(name)
    step = checklist.steps[place] if checklist is not None and place is not None else None
    ending = text(row.get("ending"))
    details = [
        words.format(text(row[field]))
        for field, words in _IN_WORDS.items()
        if row.get(field) not in (None, "", 0) and (field, row[field]) != ("by", "learner")
    ]
    details += [f"{field}: {text(value)}" for field, value in row.items() if field not in (*_SHOWN, *_IN_WORDS)]
    return StepLine(
        number=0 if place is None else place + 1,
        id=name,
        part=step.part if step else "",
        say=text(row.get("say")) or (step.say if step else name),
        critical=bool(row.get("critical")),
        gate=bool(row.get("gate", step.gate if step else False)),
        ending=ending,
        needs_a_look=ending not in DONE_WELL or bool(row.get("cues")) or bool(row.get("slips")),
        first=text(row.get("first")),
        final=text(row.get("final")),
        slips=texts(row.get("slips")),
        cues=in_words(texts(row.get("cues"))),
        details=tuple(details),
        seconds=f"{seconds.get(name, Decimal(0))}",
    )


def in_words(cues: Sequence[str]) -> tuple[str, ...]:
    """Cues by their names, in words, each once with its count."""
    found = []
    for cue in dict.fromkeys(cues):
        times = cues.count(cue)
        found.append(CUES.get(cue, cue) + (f" ({times} times)" if times > 1 else ""))
    return tuple(found)


def number_lines(
    results: Mapping[str, object],
    lines: Sequence[StepLine],
    checklist: Checklist | None,
    key: Mapping[str, KeyEntry],
) -> tuple[NumberLine, ...]:
    """Every number and name that had to agree with the order, in the order of the checklist."""
    rows = {text(row.get("id")): row for row in _rows(results)}
    found = []
    for line in lines:
        row = rows[line.id]
        name, unit = _asked(checklist, line) if checklist and line.number else ("", "")
        if not name and text(row.get("kind")) not in ("number", "name", "double-check"):
            continue
        entry = key.get(name)
        expected = text(row.get("expected")) or _expected(entry, unit)
        found.append(_number_line(line, row, expected, entry))
    return tuple(found)


def _asked(checklist: Checklist, line: StepLine) -> tuple[str, str]:
    """The name in the answer key that a step asks for, and its unit; a second person is asked for another step's."""
    asked = checklist.step(line.id).expect
    if isinstance(asked, DoubleCheckAsked):
        asked = checklist.step(asked.of).expect
    match asked:
        case NumberAsked(key=key, unit=unit):
            return key, unit
        case NameAsked(key=key):
            return key, ""
        case _:
            return "", ""


def _number_line(line: StepLine, row: Mapping[str, object], expected: str, entry: KeyEntry | None) -> NumberLine:
    return NumberLine(
        step=line.number,
        id=line.id,
        say=line.say,
        critical=line.critical,
        first=line.first,
        final=line.final,
        expected=expected,
        difference=_apart(line.first, expected) or _in_words(text(row.get("first_difference"))),
        slips=line.slips,
        working=entry.working if entry is not None else (),
        verdict=_verdict(line, count(row.get("wrong"))),
    )


def _expected(entry: KeyEntry | None, unit: str) -> str:
    """What the answer key holds, in the unit that was asked for where it ends in decimals there."""
    if entry is None:
        return ""
    if isinstance(entry.value, str):
        return entry.value
    amount = Amount(entry.value, entry.unit or "")
    if unit and unit != amount.unit:
        try:
            turned = amount.in_unit(unit)
        except QuantityError:
            return dosing.show(amount)
        value = dosing.EXACT.apply(turned)
        return dosing.show(Amount(value, unit))
    return dosing.show(amount)


def _apart(first: str, expected: str) -> str:
    """How far the first answer was off, in words; empty where nothing can be subtracted."""
    try:
        said, right = parse_amount(first), parse_amount(expected)
        apart = said.in_unit(right.unit) - right.ratio
    except QuantityError:
        return ""
    if not apart:
        return "none"
    size = dosing.show(Amount(dosing.HUNDREDTH.apply(abs(apart)), right.unit))
    return f"{size} too {'high' if apart > 0 else 'low'}"


def _in_words(difference: str) -> str:
    """A difference with its sign, in words."""
    if difference[:1] in ("+", "-"):
        return f"{difference[1:]} too {'high' if difference[0] == '+' else 'low'}"
    return difference


def _verdict(line: StepLine, wrong: int) -> str:
    if line.ending == "not applicable":
        return "not applicable"
    if not line.final:
        return "not given"
    if line.ending in NOT_DONE:
        return "wrong at the end" if wrong else line.ending
    if wrong or line.slips:
        return "right only after a hold"
    if line.first != line.final:
        return "put right by the learner"
    return "right the first time"


def from_entries(entries: Sequence[Mapping[str, object]]) -> dict[str, object]:
    """What can be told of steps where neither a seal nor the papers are at hand: which were reached, cues, slips."""
    steps: dict[str, dict[str, object]] = {}
    for entry in entries:
        if not entry.get("step"):
            continue
        name = text(entry["step"])
        row = steps.setdefault(name, {"id": name, "say": "", "ending": NOT_SCORED, "first": "", "final": ""})
        for field, into in (("cue", "cues"), ("slip", "slips")):
            if entry.get(field):
                row[into] = [*texts(row.get(into)), text(entry[field])]
        kept = text(entry.get("kept")) or text(mapping(entry.get("kept")).get("value"))
        if kept:
            row["first"] = row["first"] or kept
            row["final"] = kept
    return {"steps": list(steps.values())}


def without_answers(results: Mapping[str, object]) -> dict[str, object]:
    """The result without anything that tells what would have been right."""
    told = ("expected", "first_difference", "difference")
    rows = [{name: value for name, value in row.items() if name not in told} for row in _rows(results)]
    return {**results, "steps": rows}
