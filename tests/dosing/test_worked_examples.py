"""Published worked examples, each with its source, through the public formulas."""

from decimal import Decimal

import pytest

from assistant.dosing.clock import Moment
from assistant.dosing.formulas import FORMULAS, solve
from assistant.dosing.result import Result
from assistant.dosing.units import unit
from tests.dosing.worked import Example, examples

EXAMPLES = examples()


@pytest.mark.parametrize("example", EXAMPLES, ids=lambda example: example.id)
def test_gives_the_published_answer(example: Example) -> None:
    """Every worked example comes out as its source has it, by the source's own rounding."""
    answer, *_ = solve(example.formula, example.texts)
    if isinstance(answer, Moment):
        assert answer.text == example.expected, example.why
        return
    assert isinstance(answer, Result)
    assert answer.value == Decimal(example.expected), example.why
    assert answer.unit == unit(example.unit).name, example.why


def test_the_expected_answers_are_the_published_ones() -> None:
    """Only where the file says so does the expected answer differ from the published one."""
    for example in EXAMPLES:
        if example.standing == "published" and example.published != "6 h 40 min":
            assert Decimal(example.expected) == Decimal(example.published), example.why
        else:
            assert example.expected != example.published, example.why


def test_wrong_published_answers_are_named() -> None:
    """One published answer is wrong: 7.8175 gtt/min, two digits of 7.8125 exchanged in print."""
    wrong = [example for example in EXAMPLES if example.standing == "published answer wrong"]
    assert [(example.id, example.published, example.expected) for example in wrong] == [("GT17", "7.8175", "7.8125")]
    assert "transposes" in wrong[0].remark


def test_every_example_names_its_source() -> None:
    """No row stands without a source and a place in it."""
    assert len(EXAMPLES) > 170
    assert len({example.id for example in EXAMPLES}) == len(EXAMPLES)
    for example in EXAMPLES:
        assert example.source and example.locator, example.id
        assert example.formula in FORMULAS, example.id


@pytest.mark.parametrize("example", EXAMPLES, ids=lambda example: example.id)
def test_the_order_of_inputs_is_irrelevant(example: Example) -> None:
    """Inputs given backwards give the same answer, working and all."""
    backwards = dict(reversed(example.texts.items()))
    assert [str(a) + repr(a.working) for a in solve(example.formula, backwards)] == [
        str(a) + repr(a.working) for a in solve(example.formula, example.texts)
    ]


def test_no_example_is_told_twice() -> None:
    """Two rows never ask the same formula the same question."""
    asked = [(example.formula, frozenset(example.texts.items())) for example in EXAMPLES]
    twice = {one for one in asked if asked.count(one) > 1}
    assert not twice
