"""Amounts: how text is read, refused and printed."""

from decimal import Decimal
from fractions import Fraction

import pytest

from assistant.dosing import Amount, parse_amount, parse_number, show, show_number
from assistant.errors import QuantityError

READ = [
    ("1,000 mL", "1000", "mL"),
    ("1000mL", "1000", "mL"),
    ("1\u202f000 mL", "1000", "mL"),
    ("12,345,678 units", "12345678", "units"),
    ("30 min", "30", "min"),
    ("12 h", "12", "h"),
    ("1 h 30 min", "90", "min"),
    ("2h15min", "135", "min"),
    ("1 hour and 5 minutes", "65", "min"),
    ("20 mg", "20", "mg"),
    ("5 units", "5", "units"),  # five micronits to a general parser
    ("5 mcg/kg/min", "5", "mcg/kg/min"),
    ("0.5 mg", "0.5", "mg"),
    ("083.3 mL/h", "83.3", "mL/h"),
    ("0.9 %", "0.9", "%"),
    ("-5 mL", "-5", "mL"),
    ("  100   ml/hr ", "100", "mL/h"),
    ("5 fl oz", "5", "fl oz"),
]

REFUSED = [
    ("", "Expected a number with its unit"),
    ("   ", "Expected a number with its unit"),
    ("mL", "Expected a number with its unit"),
    ("100", "without a unit"),
    ("1,00 mL", "Expected a number"),
    ("0,5 mL", "Expected a number"),
    # Error-prone by the ISMP list (from memory), and what is a thousand in one country and one in another.
    ("0,125 mg", "may be 0.125 or 125"),
    ("00,125 mg", "may be 0.125 or 125"),
    ("1.000 mL", "may be 1 or 1,000"),
    ("12.500 mL", "may be 12.5 or 12,500"),
    (".5 mg", "no zero before its point"),
    ("5.0 mg", "a zero too many"),
    ("0.50 mg", "a zero too many"),
    ("0.000 mg", "a zero too many"),
    ("1,000.50 mL", "a zero too many"),
    ("12,5 mL", "Expected a number"),
    ("1,0000 mL", "Expected a number"),
    ("1.000,5 mL", "Expected a number"),
    ("5. mL", "Expected a number"),
    ("1..5 mL", "Expected a number"),
    ("1 000 mL", "may be two numbers"),
    ("--5 mL", "Expected a number"),
    ("1e400 mL", "not a unit"),
    ("1e3 mL", "not a unit"),
    ("NaN mL", "Expected a number with its unit"),
    ("inf mL", "Expected a number with its unit"),
    ("\u0661\u0662 mL", "Expected a number with its unit"),
    ("5 M", "not a unit"),
    ("5 Mg", "easily misread"),
    ("5 U", "easily misread"),
    ("100 mL 30 min", "not a unit"),
    ("1 h 75 min", "up to 59"),
    ("99999999999999 mL", "beyond any clinical size"),
    ("0.00000000000001 mg", "beyond any clinical size"),
    ("1" * 70 + " mL", "Expected a number"),
    ("9" * 10_000 + " mL", "too long"),
    ("100 mL\x00", "not a unit"),
    ("100 mL; rm", "not a unit"),
]


@pytest.mark.parametrize(("text", "value", "unit"), READ)
def test_reads_amounts_as_people_write_them(text: str, value: str, unit: str) -> None:
    """A written amount is read exactly."""
    assert parse_amount(text) == Amount(Decimal(value), unit)


@pytest.mark.parametrize(("text", "what"), REFUSED)
def test_refuses_anything_else(text: str, what: str) -> None:
    """What can mean two things, or nothing, is refused in one printable line."""
    with pytest.raises(QuantityError) as refused:
        parse_amount(text)
    assert what in refused.value.what
    assert str(refused.value).isprintable() and len(str(refused.value)) < 250
    assert refused.value.remedy


PRINTED = [
    # ISMP, List of Error-Prone Abbreviations, Symbols, and Dose Designations: a leading zero, no trailing zero,
    # commas from 1,000 up, "units" and "mcg" written out, a space between number and unit.
    ("0.5", "mg", "0.5 mg"),
    ("1.0", "mg", "1 mg"),
    ("83.30", "mL/h", "83.3 mL/h"),
    ("1000", "mL", "1,000 mL"),
    ("25000", "units", "25,000 units"),
    ("1E+3", "mL", "1,000 mL"),
    ("100", "mcg", "100 mcg"),
    ("1", "units", "1 unit"),
    ("1", "milliunits", "1 milliunit"),
    ("1", "days", "1 day"),
    ("1", "mg", "1 mg"),
    ("0", "mL", "0 mL"),
    ("0.000001", "mg", "0.000001 mg"),
    ("1234567.125", "mL", "1,234,567.125 mL"),
    ("-0.5", "mL", "-0.5 mL"),
    ("0.90", "%", "0.9 %"),
]


@pytest.mark.parametrize(("value", "unit", "text"), PRINTED)
def test_prints_by_the_rules_on_dose_designations(value: str, unit: str, text: str) -> None:
    """Printing follows the published rules, and what is printed reads back as the same amount."""
    amount = Amount(Decimal(value), unit)
    assert show(amount) == str(amount) == text
    assert parse_amount(text) == amount


@pytest.mark.parametrize("value", ["NaN", "sNaN", "Infinity", "-Infinity", "1e400", "1e13", "1e-400", "1e-13"])
def test_no_amount_beyond_clinical_size(value: str) -> None:
    """Not a number, infinity and numbers of no clinical size make no amount."""
    with pytest.raises(QuantityError):
        Amount(Decimal(value), "mL")


def test_an_amount_has_no_endless_digits() -> None:
    """Sixty decimals are more than any quantity needs; more are refused."""
    assert Amount(Decimal("1." + "1" * 60), "mL")
    with pytest.raises(QuantityError, match="too many digits"):
        Amount(Decimal("1." + "1" * 61), "mL")


@pytest.mark.parametrize("value", [1.5, 1, "1", None])
def test_only_decimals_are_amounts(value: object) -> None:
    """A float or an int where a decimal belongs is a fault of the program, not of its input."""
    with pytest.raises(TypeError, match="Decimal"):
        Amount(value, "mL")  # type: ignore[arg-type]


def test_turns_into_another_unit_exactly() -> None:
    """An amount gives its value in another unit as a ratio."""
    assert Amount(Decimal(1), "mL/h").in_unit("ml/min") == Fraction(1, 60)
    assert Amount(Decimal("0.1"), "g").ratio == Fraction(1, 10)


@pytest.mark.parametrize(
    ("text", "value"), [("1,000", "1000"), ("0.125", "0.125"), ("1.125", "1.125"), ("\u22125", "-5")]
)
def test_reads_bare_numbers(text: str, value: str) -> None:
    """Numbers without a unit are read by the same rules."""
    assert parse_number(text) == Decimal(value)
    assert show_number(parse_number(text)) == show_number(Decimal(value))


@pytest.mark.parametrize("text", ["", ".", "1 2", "1,0", "1.2.3", "five", "1_000", "+5", "0x10", "1,000,00"])
def test_refuses_bare_words(text: str) -> None:
    """What is no number by those rules is refused."""
    with pytest.raises(QuantityError):
        parse_number(text)
