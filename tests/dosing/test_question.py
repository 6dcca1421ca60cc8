"""A question in a line: answered rightly, asked back or refused, and never guessed."""

import ast
import operator
from decimal import ROUND_HALF_UP, Decimal
from fractions import Fraction
from pathlib import Path

import pytest

from assistant.dosing.clock import Moment
from assistant.dosing.question import ask
from assistant.errors import AssistantError, QuantityError, UsageError

_DATA = Path(__file__).parents[1] / "data"
_SIGNS = {ast.Add: operator.add, ast.Sub: operator.sub, ast.Mult: operator.mul, ast.Div: operator.truediv}


def _rows(name: str) -> list[tuple[str, str, str]]:
    """Question, answer, and the sum by which a person gets there; "asks" where there is no answer."""
    lines = (_DATA / f"{name}.tsv").read_text(encoding="utf-8").splitlines()[1:]
    return [(question, answer, sum_) for question, answer, sum_ in (line.split("\t") for line in lines)]


ROWS = _rows("questions")
BLIND = [row for name in ("blind", "blind_two", "blind_three") for row in _rows(f"questions_{name}")]


def _worked_out(node: ast.expr) -> Fraction:
    match node:
        case ast.BinOp(left=left, op=op, right=right):
            return Fraction(_SIGNS[type(op)](_worked_out(left), _worked_out(right)))
        case ast.Constant():
            return Fraction(str(node.value))
    raise ValueError(ast.dump(node))


def _answered(question: str) -> str:
    try:
        return str(ask(question).answer).replace(",", "")
    except AssistantError:
        return "asks"


@pytest.mark.parametrize(("question", "answer", "sum_"), [row for row in ROWS + BLIND if row[1] != "asks"])
def test_the_tables_are_right(question: str, answer: str, sum_: str) -> None:
    """The answers of the tables follow from their own sums, in fractions; clock times have theirs by hand."""
    if ":" in answer:
        return
    number = Decimal(answer.split(" ")[0])
    exact = _worked_out(ast.parse(sum_, mode="eval").body)
    step = Decimal(1).scaleb(int(number.as_tuple().exponent))
    wide = Decimal(exact.numerator) / Decimal(exact.denominator)
    assert wide.quantize(step, rounding=ROUND_HALF_UP) == number


@pytest.mark.parametrize(("question", "answer", "sum_"), ROWS + BLIND)
def test_no_answer_is_wrong(question: str, answer: str, sum_: str) -> None:
    """What is answered is right; what is to be asked back is never answered."""
    assert _answered(question) in (answer, "asks")


@pytest.mark.parametrize(("rows", "least"), [(ROWS, 97), (BLIND, 156)], ids=["first", "blind"])
def test_most_are_answered(rows: list[tuple[str, str, str]], least: int) -> None:
    """As many as were measured are answered; the others ask back."""
    assert sum(_answered(question) == answer != "asks" for question, answer, _ in rows) >= least


ASKED = [
    ("drip rate 1000 mL over 8 h", "This lacks a drop factor"),
    ("5 mcg/kg/min, 400 mg in 250 mL, rate?", "This lacks a weight"),
    ("how fast is 1000 mL", "This lacks a duration"),
    ("125 mL/h in gtt/min", "This lacks a drop factor"),
    ("two 500 mL bags over 8 h rate", '"two" is no amount'),
    ("1 g q4-6h, 100 mL over 30 min rate", "no plain number"),
    ("what is 10% of 500 mL", "A percentage of an amount"),
    ("100 mL over 30 min then 50 mL over 1 h rate", '"then" changes the question'),
    ("rate for 1 L over 8 h, 300 mL already infused", '"already" changes the question'),
    ("half of 1000 mL over 4 h rate", '"half" changes the question'),
    ("5 mcg/kg/min for 70 kg 176 lb 400 mg in 250 mL", "Which weight is meant, 70 kg or 176 lb"),
    ("1 g in 20 mL added to 100 mL over 30 min rate", "No formula here joins"),
    ("how many mL in mg/h for 5 mg/mL", "Two things are asked for"),
    ("hello", "no amount in this question"),
]
"""What lacks, or may be two things, is asked for by its name."""


@pytest.mark.parametrize(("question", "what"), ASKED)
def test_asks_for_what_lacks(question: str, what: str) -> None:
    """One printable line names it; exit code 2 follows from the kind of error."""
    with pytest.raises((UsageError, QuantityError)) as asked:
        ask(question)
    assert what in str(asked.value)
    assert str(asked.value).isprintable()
    assert asked.value.remedy


REFUSED = [
    ("cc/hr for 1000 mL over 10 h", "easily misread"),
    ("10 cc over 5 min rate", "easily misread"),
    ("10 U/h from 100 units in 100 mL", "easily misread"),
    ("1.000 mL over 8 h rate", "may be 1 or 1,000"),
    ("give 0,5 mg from 1 mg/mL", "Expected a number"),
    ("give 0,125 mg from 1 mg/mL", "may be 0.125 or 125"),
    ("how many tablets of 250 mg for 500 mg", "not worked out here"),
    ("give 500 from 250 mg/5 mL how many mL", "came without a unit"),
]


@pytest.mark.parametrize(("question", "what"), REFUSED)
def test_no_unit_is_guessed(question: str, what: str) -> None:
    """An amount that the reader of amounts refuses is refused in a question too."""
    with pytest.raises(QuantityError, match=what):
        ask(question)


def test_says_what_it_took() -> None:
    """Each thing by its name, what was not needed, the formulas, and the working before the answer."""
    worked = ask("dopamine 5 mcg/kg/min, 70 kg, 400 mg in 250 mL")
    assert worked.taken == (("dose rate", "5 mcg/kg/min"), ("concentration", "400 mg in 250 mL"), ("weight", "70 kg"))
    assert worked.spared == ("dopamine",)
    assert worked.formulas == ("pump-rate",)
    assert worked.working[-1] == "rounded (nearest tenth, half up): 13.1 mL/h"
    assert str(worked.answer) == "13.1 mL/h"


def test_a_question_by_the_clock() -> None:
    """The end of an infusion, and the latest start for one that has to be over by a time."""
    assert isinstance(ask("1 L at 125 mL/h started at 08:00, when does it finish?").answer, Moment)
    assert str(ask("when to start 500 mL at 100 mL/h to finish by 16:00").answer) == "11:00"


def test_rounds_as_asked() -> None:
    """A rule that the question states goes before the formula's own."""
    assert str(ask("1000 mL over 12 h, rate to the nearest whole number").answer) == "83 mL/h"
    assert str(ask("1000 mL over 12 h in mL/h").answer) == "83.3 mL/h"
