"""A sample of the second working-out of every formula; `tests.dosing.second` tells where its rules come from."""

from collections.abc import Sequence
from dataclasses import replace
from fractions import Fraction

import pytest

from assistant.dosing.formulas import FORMULAS
from tests.dosing import second
from tests.dosing.second import CASES, Case, Draw, Expected, differences

SAMPLE = 40
"""Cases of each formula here; the command takes ten thousand."""


def test_every_formula_is_worked_out_a_second_time() -> None:
    """No formula is without its own second rule."""
    assert set(CASES) == set(FORMULAS)


@pytest.mark.parametrize("name", FORMULAS)
def test_both_ways_give_the_same(name: str) -> None:
    """Exact value, unit and rounded value are the same both ways."""
    assert list(differences(name, 7, SAMPLE)) == []


@pytest.mark.parametrize("name", ["rate", "pump-rate", "alligation", "electrolyte", "live-count"])
def test_a_wrong_rule_is_noticed(name: str, monkeypatch: pytest.MonkeyPatch) -> None:
    """An answer that is off by one part in a million differs, in every case."""

    def wrong(draw: Draw) -> Case:
        inputs, expected = CASES[name](draw)
        assert isinstance(expected, Sequence) and not isinstance(expected, str)
        off: list[Expected] = [replace(one, value=one.value * Fraction(1_000_001, 1_000_000)) for one in expected]
        return inputs, off

    monkeypatch.setattr(second, "CASES", {name: wrong})
    assert len(list(differences(name, 7, SAMPLE))) == SAMPLE
