"""Rounding: by the rule that is asked for, once, at the end."""

from decimal import Decimal
from fractions import Fraction

import pytest

from assistant.dosing.rounding import (
    EXACT,
    HUNDREDTH,
    TENTH,
    WHOLE,
    Direction,
    Rounding,
    decimal,
    parse_rounding,
    root,
    syringe,
)
from assistant.errors import QuantityError


@pytest.mark.parametrize(
    ("exact", "rule", "value"),
    [
        # Texas Woman's University College of Nursing, calculation and rounding policy (2005 form)
        ("62.5", "whole", "63"),
        ("33.3", "whole", "33"),
        ("1.45", "tenth", "1.5"),
        ("0.429", "hundredth", "0.43"),
        # the definitions of the rules themselves
        ("62.5", "whole half even", "62"),
        ("63.5", "whole half even", "64"),
        ("62.51", "whole half even", "63"),
        ("1.41", "tenth up", "1.5"),
        ("1.4", "tenth up", "1.4"),
        ("1.49", "tenth down", "1.4"),
        ("1.44999999999999999999999999999999", "tenth", "1.4"),
        ("0.0005", "thousandth", "0.001"),
        ("-1.45", "tenth", "-1.4"),
        ("7.8125", "exact", "7.8125"),
        ("125", "nearest multiple of 5", None),
    ],
)
def test_rounds_by_the_rule(exact: str, rule: str, value: str | None) -> None:
    """Each rule gives its published or defined value; an unknown rule is refused."""
    if value is None:
        with pytest.raises(QuantityError, match="not a rounding rule"):
            parse_rounding(rule)
    else:
        assert parse_rounding(rule).apply(Fraction(exact)) == Decimal(value)


@pytest.mark.parametrize(
    ("text", "rule"),
    [
        ("tenth", TENTH),
        ("0.1", TENTH),
        ("nearest tenth, half up", TENTH),
        ("Nearest whole number, half up", WHOLE),
        ("1", WHOLE),
        ("hundredth", HUNDREDTH),
        ("exact", EXACT),
        ("hundredth down", Rounding(Decimal("0.01"), Direction.DOWN)),
        ("whole half-even", Rounding(Decimal(1), Direction.HALF_EVEN)),
    ],
)
def test_reads_rules(text: str, rule: Rounding) -> None:
    """A rule is read from words, and what it prints reads as itself."""
    assert parse_rounding(text) == rule
    assert parse_rounding(str(rule)) == rule


REFUSED = ["", "up", "tenths of", "0", "-1", "half up", "tenth sideways", "9" * 10_000]


@pytest.mark.parametrize("text", REFUSED)
def test_refuses_other_rules(text: str) -> None:
    """Anything else is refused."""
    with pytest.raises(QuantityError, match="not a rounding rule"):
        parse_rounding(text)


@pytest.mark.parametrize("step", ["0", "-0.1", "NaN", "Infinity"])
def test_a_step_is_above_zero(step: str) -> None:
    """A rule needs a step that can be counted in."""
    with pytest.raises(QuantityError, match="above zero"):
        Rounding(Decimal(step))


def test_a_rule_of_its_own_says_so() -> None:
    """Any step can be a rule; it is named in the result."""
    quarter = Rounding(Decimal("0.25"), Direction.DOWN)
    assert quarter.apply(Fraction("1.3")) == Decimal("1.25")
    assert str(quarter) == "multiple of 0.25, down"
    assert str(TENTH) == "nearest tenth, half up"
    assert str(EXACT) == "exact"


@pytest.mark.parametrize(
    ("volume", "rule"), [("0.125", HUNDREDTH), ("0.999", HUNDREDTH), ("1", TENTH), ("4.82", TENTH)]
)
def test_rounds_a_syringe_by_its_size(volume: str, rule: Rounding) -> None:
    """Below 1 mL hundredths, from 1 mL up tenths (Texas Woman's University policy)."""
    assert syringe(Fraction(volume)) == rule


@pytest.mark.parametrize(
    ("exact", "text"),
    [
        (Fraction(1, 3), "0." + "3" * 28),
        (Fraction(2, 3), "0." + "6" * 27 + "7"),
        (Fraction(1, 8), "0.125"),
        (Fraction(1000, 1), "1000"),
        (Fraction(1, 2**40), f"{Decimal(1) / Decimal(2) ** 10 / Decimal(2) ** 30:f}"),
    ],
)
def test_decimals_are_exact_where_they_end(exact: Fraction, text: str) -> None:
    """A ratio whose decimals end is given whole; another to 28 digits."""
    assert decimal(exact) == Decimal(text)


def test_root_of_a_square_is_exact_to_fifty_digits() -> None:
    """A root squared is the number again."""
    assert root(Fraction(9, 4)) == Fraction(3, 2)
    assert abs(root(Fraction(2)) ** 2 - 2) < Fraction(1, 10**48)
