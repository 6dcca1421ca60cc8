"""Concentrations: every way of writing one, and what is no concentration."""

from decimal import Decimal

import pytest

from assistant.dosing import as_concentration, concentration, parse_amount, parse_concentration
from assistant.errors import QuantityError


@pytest.mark.parametrize(
    ("text", "value", "unit"),
    [
        ("1 g in 200 mL", "5", "mg/mL"),
        ("1 g in 0.2 L", "5", "mg/mL"),
        ("1g/200mL", "5", "mg/mL"),
        ("1 g per 200 mL", "5", "mg/mL"),
        ("2 g in 100 mL", "20", "mg/mL"),
        ("250 mg/5 mL", "50", "mg/mL"),
        ("25,000 units/500 mL", "50", "units/mL"),
        ("25,000 units in 250 mL", "100", "units/mL"),
        ("5 mg/mL", "5", "mg/mL"),
        ("5 mg per mL", "5", "mg/mL"),
        ("500 mcg/mL", "0.5", "mg/mL"),
        ("40 mEq/L", "0.04", "mEq/mL"),
        ("20 mmol in 1 L", "0.02", "mmol/mL"),
        ("10 milliunits/mL", "0.01", "units/mL"),
        # United States Pharmacopeia, General Notices: 1:1000 is 1 g in 1000 mL, percent is g in 100 mL (from memory)
        ("1:1000", "1", "mg/mL"),
        ("1 : 10,000", "0.1", "mg/mL"),
        ("1 in 1,000", "1", "mg/mL"),
        ("0.9 %", "9", "mg/mL"),
        ("5% w/v", "50", "mg/mL"),
        ("50 percent", "500", "mg/mL"),
    ],
)
def test_reads_every_way_of_writing(text: str, value: str, unit: str) -> None:
    """A written concentration is read exactly, into the usual unit."""
    found = parse_concentration(text)
    assert (found.value, found.unit) == (Decimal(value), unit)


@pytest.mark.parametrize(
    "text",
    [
        "",
        "strong",
        "5 mg",
        "5 mL",
        "5 mL/h",
        "1 g in",
        "in 200 mL",
        "1 g in 0 mL",
        "0 g in 200 mL",
        "1 g in 200 mg",
        "1 mL in 200 mL",
        "1:0",
        "2:1000",
        "0 %",
        "-5 %",
        "1:1,00",
        "1 g in 200 mL in 5 mL",
        "x" * 1000,
        "5 M",
    ],
)
def test_refuses_what_is_none(text: str) -> None:
    """Anything else is refused in one printable line."""
    with pytest.raises(QuantityError) as refused:
        parse_concentration(text)
    assert str(refused.value).isprintable() and len(str(refused.value)) < 250


@pytest.mark.parametrize(
    ("added", "value"),
    [(None, "1"), ("2.5 mL", "0.99")],  # FDA label text, argatroban: 250 mg in 2.5 mL, added to 250 mL
)
def test_counts_the_drug_volume_only_where_told(added: str | None, value: str) -> None:
    """Whether the drug's own volume counts is an input: labels differ."""
    extra = None if added is None else parse_amount(added)
    found = concentration(parse_amount("250 mg"), parse_amount("250 mL"), added=extra)
    assert round(found.value, 2) == Decimal(value)


def test_a_concentration_in_its_unit_is_itself() -> None:
    """A result that is a concentration already passes through; another unit is turned into the usual one."""
    found = parse_concentration("1 g in 300 mL")
    assert as_concentration(found) is found
    turned = as_concentration(concentration(parse_amount("1 g"), parse_amount("300 mL"), unit="mcg/mL"))
    assert (turned.exact, turned.unit) == (found.exact, "mg/mL")
