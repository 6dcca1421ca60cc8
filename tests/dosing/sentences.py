"""Every sentence that the arithmetic tells, kept in `tests/data/dosing_sentences.jsonl`.

A learner hears these words, so a change of a word is a change to be seen: the test compares all of them, and
``python -m tests.dosing.sentences`` writes the file anew for somebody to read before it is kept.
"""

import json
import sys
import tomllib
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

from assistant.dosing import CannotCheck, Disagrees, compare, parse_amount, parse_concentration
from assistant.dosing.clock import Moment, parse_start
from assistant.dosing.course_file import course_from
from assistant.dosing.course_picture import picture
from assistant.dosing.formulas import FORMULAS, Answer, Form, solve
from assistant.dosing.limits_file import limits_from
from assistant.dosing.rounding import parse_rounding
from assistant.dosing.units import unit
from assistant.errors import QuantityError
from assistant.spoken.english.slips import different_things, explained, not_needed
from tests.dosing import test_amount, test_clock, test_compare, test_course, test_limits, test_rounding, test_units
from tests.dosing.test_formulas import ANSWERS, CAUTIONED, INSTEAD, REFUSALS, texts
from tests.dosing.worked import examples

FILE = Path(__file__).parent.parent / "data" / "dosing_sentences.jsonl"
_LIMITS = Path(__file__).parents[2] / "checklists" / "limits.toml"


_OTHER_UNITS = (
    ("mL", "L"),
    ("min", "s"),
    ("min", "days"),
    ("h", "min"),
    ("mg", "g"),
    ("g", "mcg"),
    ("kg", "lb"),
    ("units", "milliunits"),
    ("mL/h", "mL/min"),
    ("gtt/min", "gtt/h"),
    ("gtt/mL", "gtt/L"),
    ("mg/h", "mcg/min"),
    ("mg/min", "mg/h"),
    ("mg/h", "mcg/kg/min"),
    ("mcg/min", "mg/kg/day"),
    ("mg/kg", "mcg/lb"),
    ("mL/kg", "L/kg/day"),
    ("mg/m\u00b2", "g/m\u00b2"),
    ("cm", "in"),
    ("units/mL", "milliunits/L"),
)
"""Another unit of the same kind: an input is taken in any."""


_INSTEAD = {**INSTEAD, "drop-rate": {"rate": "75 mL/h"}}
"""Inputs that stand in for one another: one of them has to be given."""


def told() -> Iterator[tuple[str, Any]]:
    """Every question with everything that is told in answer."""
    yield from _formulas()
    yield from _readers()
    yield from _limits()
    yield from _courses()
    for stated, expected, *_ in test_compare.SLIPS:
        verdict = compare(parse_amount(stated), parse_amount(expected), test_compare.OTHERS)
        assert isinstance(verdict, Disagrees)
        yield (
            f"compare {stated} with {expected}",
            {
                "slip": verdict.slip,
                "sentence": explained(verdict),
                "plain": not_needed(verdict.stated),
                "also": verdict.also,
            },
        )
    unlike = compare(parse_amount("5 mL"), parse_amount("5 mL/h"))
    assert isinstance(unlike, CannotCheck)
    yield "compare mL with mL/h", different_things(unlike)


def _answer(work: Callable[[], Any]) -> Any:
    try:
        return work()
    except QuantityError as refused:
        return {"what": refused.what, "remedy": refused.remedy}


def _shown(answer: Answer) -> dict[str, Any]:
    found = {
        "formula": answer.formula,
        "text": str(answer),
        "working": list(answer.working),
        "inputs": {name: str(given) for name, given in answer.inputs.items()},
    }
    if isinstance(answer, Moment):
        return found
    return found | {"unit": answer.unit, "rounding": str(answer.rounding), "cautions": list(answer.cautions)}


def _solved(formula: str, given: dict[str, str]) -> Any:
    return _answer(lambda: [_shown(answer) for answer in solve(formula, given)])


def _formulas() -> Iterator[tuple[str, Any]]:
    for formula, line, *_ in (*ANSWERS, *REFUSALS, *CAUTIONED):
        yield f"{formula}: {line}", _solved(formula, texts(line))
    for example in examples():
        yield example.id, _solved(example.formula, example.texts)
    for name, formula in FORMULAS.items():
        yield (
            f"{name}: declared",
            [
                formula.about,
                formula.gives,
                formula.source,
                formula.example,
                [[one.name, one.form.value, one.example, one.needed] for one in formula.inputs],
            ],
        )
        plain = {one.name: one.example for one in formula.inputs if one.needed} | _INSTEAD.get(name, {})
        for one in formula.inputs:
            yield f"{name}: with {one.name}", _solved(name, plain | {one.name: one.example})
            if one.form in (Form.AMOUNT, Form.CONCENTRATION, Form.AMOUNTS):
                negative = "-" + one.example
                yield f"{name}: {one.name}={negative}", _solved(name, plain | {one.name: negative})
                other = "7 gtt" if "cm" in one.example else "7 cm"
                yield f"{name}: {one.name}={other}", _solved(name, plain | {one.name: other})
        for one in formula.inputs:
            if one.form is Form.ROUNDING:
                yield f"{name}: rounded another way", _solved(name, plain | {one.name: "hundredth up"})
            if one.form in (Form.AMOUNT, Form.CONCENTRATION):
                for old, new in _OTHER_UNITS:
                    if one.example.endswith(f" {old}"):
                        text = one.example[: -len(old)] + new
                        yield f"{name}: {one.name}={text}", _solved(name, plain | {one.name: text})
        for one in formula.inputs:
            if one.needed:
                rest = {key: text for key, text in plain.items() if key != one.name}
                yield f"{name}: without {one.name}", _solved(name, rest)


def _readers() -> Iterator[tuple[str, Any]]:
    for text, *_ in test_units.REFUSED:
        yield f"unit {text[:40]!r}", _answer(lambda text=text: unit(text).name)
    for text, *_ in test_amount.REFUSED:
        yield f"amount {text[:40]!r}", _answer(lambda text=text: str(parse_amount(text)))
    for text in ("strong", "x" * 100, "5 mL", "1 g in", "1:0", "1 g in 0 mL"):
        yield f"concentration {text[:40]!r}", _answer(lambda text=text: str(parse_concentration(text)))
    for text in test_rounding.REFUSED:
        yield f"rounding {text[:40]!r}", _answer(lambda text=text: str(parse_rounding(text)))
    for text, zone, second, _ in test_clock.REFUSED:
        yield (
            f"start {text!r} {zone!r} {second}",
            _answer(lambda t=text, z=zone, s=second: str(parse_start(t, z, second=s))),
        )


def _limits() -> Iterator[tuple[str, Any]]:
    table = limits_from(tomllib.loads(_LIMITS.read_text(encoding="utf-8")))
    for name, given, *_ in test_limits.CHECKS:
        measures: dict[str, Any] = {
            key: parse_concentration(text) if key == "concentration" else parse_amount(text)
            for key, text in given.items()
        }
        yield f"limits {name} {given}", [repr(one) for one in table.check(name, **measures)]
    yield "limits together", [repr(one) for one in table.check("ceftriaxone", together_with=["calcium chloride", "x"])]
    for place, (wrong, _) in enumerate(test_limits.WRONG):
        yield f"limits {place} of {wrong}"[:120], _answer(lambda wrong=wrong: str(limits_from(wrong)))


def _courses() -> Iterator[tuple[str, Any]]:
    for place, (changed, _) in enumerate(test_course.REFUSED):
        yield (
            f"course {place} {changed}"[:160],
            _answer(lambda c=changed: course_from(test_course.table(**c)).sentences()),
        )
    found = course_from(test_course.DAY)
    yield "course in words", list(found.sentences())
    yield "course by the hour", [[f"{hour:%H:%M %Z}", str(total)] for hour, total in found.hourly()]
    yield "course as a picture", picture(found).splitlines()


def lines() -> Iterator[str]:
    """The file's lines."""
    for asked, answer in told():
        yield json.dumps({"asked": asked, "told": answer}, ensure_ascii=False, sort_keys=True)


if __name__ == "__main__":
    FILE.write_text("".join(f"{line}\n" for line in lines()), encoding="utf-8")
    sys.stdout.write(f"{FILE.name} written anew: read what has changed before you keep it\n")
