"""Steps and numbers of a result as lines of a report."""

from collections.abc import Iterator, Mapping, Sequence
from decimal import Decimal

from assistant import dosing
from assistant.checklist.model import Checklist, DoubleCheckAsked, NameAsked, NumberAsked
from assistant.dosing import Amount, parse_amount
from assistant.errors import QuantityError
from assistant.orders.key import KeyEntry
from assistant.report.content import NumberLine, StepLine
from assistant.report.reading import count, mapping, shown, text, texts
from assistant.spoken.language import ReportWords

DONE_WELL = ("done unaided", "not applicable", "found, and stopped for it")
"""Endings that need no second look."""
NOT_REACHED = "not reached"
NOT_ANSWERED = "not answered"
"""The ending of a step that was asked when the attempt was stopped: it is not held against anybody."""
NOT_DONE = (
    *("left out", "wrong", "found, and not put right", "not seen by the instructor"),
    *(NOT_REACHED, NOT_ANSWERED),
)
"""Endings of steps that were not closed as they should be."""
NOT_SCORED = "not scored"
"""The ending where nothing can tell how a step ended."""

NOT_GIVEN, WRONG_AT_THE_END, HELD = "not given", "wrong at the end", "right only after a hold"
PUT_RIGHT, RIGHT = "put right by the learner", "right the first time"
"""How a number or a name went; a step's ending may stand in their place."""

_SHOWN = frozenset(
    {"id", "say", "critical", "gate", "kind", "ending", "first", "final", "slips", "cues", "expected"}
    | {"first_difference", "difference", "tries", "evidence", "to_be_seen"}
)
_DETAILS = (
    "wrong",
    "taken_back",
    "seen_by",
    "marked_not_seen",
    "found",
    "reopened",
    "corrections",
    "expired",
    "out_of_order",
    "reason",
    "by",
)
"""Fields that are told in this order; others follow as the record has them."""


def step_lines(
    results: Mapping[str, object], checklist: Checklist | None, seconds: Mapping[str, Decimal], words: ReportWords
) -> tuple[StepLine, ...]:
    """The steps of a result in the order of the checklist; critical ones first where it is not at hand.

    Args:
        results: the result as a record holds it.
        checklist: the one of the attempt, or None.
        seconds: time at work, by step id.
        words: the language of the report.
    """
    places = {step.id: place for place, step in enumerate(checklist.steps)} if checklist else {}
    lines = [_step_line(row, checklist, places, seconds, words) for row in _rows(results)]
    return tuple(sorted(lines, key=lambda line: line.number))


def _rows(results: Mapping[str, object]) -> list[Mapping[str, object]]:
    steps = results.get("steps")
    return [row for row in steps if isinstance(row, Mapping)] if isinstance(steps, list | tuple) else []


def _step_line(
    row: Mapping[str, object],
    checklist: Checklist | None,
    places: Mapping[str, int],
    seconds: Mapping[str, Decimal],
    words: ReportWords,
) -> StepLine:
    name = text(row.get("id"))
    place = places.get(name)
    step = checklist.steps[place] if checklist is not None and place is not None else None
    ending = text(row.get("ending"))
    told = [name for name in _DETAILS if row.get(name) not in (None, "", 0) and (name, row[name]) != ("by", "learner")]
    others = [name for name in row if name not in (*_SHOWN, *_DETAILS)]
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
        cues=tuple(_cues(texts(row.get("cues")), words)),
        evidence=text(row.get("evidence")),
        details=tuple(words.step_detail(name, shown(row[name], words)) for name in (*told, *others)),
        seconds=f"{seconds.get(name, Decimal(0))}",
    )


def _cues(names: Sequence[str], words: ReportWords) -> Iterator[str]:
    """Cues in words, each once with its count."""
    for name in dict.fromkeys(names):
        yield words.cue(name, names.count(name))


def number_lines(
    results: Mapping[str, object],
    lines: Sequence[StepLine],
    checklist: Checklist | None,
    key: Mapping[str, KeyEntry],
    words: ReportWords,
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
        found.append(_number_line(line, row, expected, entry, words))
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


def _number_line(
    line: StepLine, row: Mapping[str, object], expected: str, entry: KeyEntry | None, words: ReportWords
) -> NumberLine:
    return NumberLine(
        step=line.number,
        id=line.id,
        say=line.say,
        critical=line.critical,
        first=line.first,
        final=line.final,
        expected=expected,
        difference=_apart(line.first, expected, words) or _signed(text(row.get("first_difference")), words),
        slips=line.slips,
        working=words.working(entry.working) if entry is not None else (),
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


def _apart(first: str, expected: str, words: ReportWords) -> str:
    """How far the first answer was off, in words; empty where nothing can be subtracted."""
    try:
        said, right = parse_amount(first), parse_amount(expected)
        apart = said.in_unit(right.unit) - right.ratio
    except QuantityError:
        return ""
    if not apart:
        return words.NO_DIFFERENCE
    size = dosing.show(Amount(dosing.HUNDREDTH.apply(abs(apart)), right.unit))
    return words.too_high(size) if apart > 0 else words.too_low(size)


def _signed(difference: str, words: ReportWords) -> str:
    """A difference with its sign, in words."""
    match difference[:1]:
        case "+":
            return words.too_high(difference[1:])
        case "-":
            return words.too_low(difference[1:])
        case _:
            return difference


def _verdict(line: StepLine, wrong: int) -> str:
    if line.ending == "not applicable":
        return "not applicable"
    if not line.final:
        return NOT_GIVEN
    if line.ending in NOT_DONE:
        return WRONG_AT_THE_END if wrong else line.ending
    if wrong or line.slips:
        return HELD
    if line.first != line.final:
        return PUT_RIGHT
    return RIGHT


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
