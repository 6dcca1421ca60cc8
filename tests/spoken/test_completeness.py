"""Whether somebody who falls silent has said all."""

from decimal import Decimal

import pytest

from assistant.spoken import ENGLISH
from assistant.spoken.completeness import Completeness
from assistant.spoken.expect import (
    AnyExpected,
    ConfirmExpected,
    NameExpected,
    NumberExpected,
    TextExpected,
)

RATE, VOLUME, TIME = NumberExpected("mL/h"), NumberExpected("mL"), NumberExpected("h")
MINUTES = NumberExpected("min")
FINISHED, MAY_GO_ON, OPEN = Completeness.FINISHED, Completeness.MAY_GO_ON, Completeness.OPEN
DIGITS = Completeness.DIGITS


@pytest.mark.parametrize(
    ("words", "expect", "what"),
    [
        ("yes", ConfirmExpected(), FINISHED),
        ("Done.", ConfirmExpected(), FINISHED),
        ("no", ConfirmExpected(), FINISHED),
        ("correct", ConfirmExpected(), MAY_GO_ON),  # "correct that"
        ("correct that", ConfirmExpected(), FINISHED),
        ("that is", ConfirmExpected(), OPEN),
        ("", ConfirmExpected(), OPEN),
        # Numbers are finished with their unit alone, whatever the recogniser writes.
        ("one hundred", RATE, OPEN),
        ("100", RATE, OPEN),
        ("eighty three", RATE, OPEN),
        ("eighty three point", RATE, OPEN),
        ("point", RATE, OPEN),
        ("one hundred and", RATE, OPEN),
        # Another digit may follow each, whether digits were asked for or not.
        ("two", RATE, DIGITS),
        ("oh", RATE, DIGITS),
        ("one two", RATE, DIGITS),
        ("one two five", NumberExpected("mL/h", digits_only=True), DIGITS),
        ("eight three point", RATE, DIGITS),
        ("one five no one six", RATE, DIGITS),
        ("one two", NumberExpected("mL/h", lowest=Decimal(50)), DIGITS),  # of any size: it is not all yet
        ("one two five millilitres per hour", RATE, FINISHED),
        ("one twenty five", RATE, OPEN),
        ("five", AnyExpected(), OPEN),
        ("eighty three point three millilitres per hour", RATE, FINISHED),
        ("83.3 mL/h", RATE, FINISHED),
        ("83.3 milliliters", RATE, OPEN),  # "per hour" is missing
        ("950 milliliters", VOLUME, FINISHED),
        ("two hours", TIME, OPEN),  # "and thirty minutes"
        ("three kilograms", NumberExpected("kg"), OPEN),  # "and a half"
        ("five grams", NumberExpected("g"), OPEN),
        ("two litres", NumberExpected("L"), OPEN),
        ("one hour twenty", MINUTES, OPEN),  # "five"
        ("one hour twenty minutes", MINUTES, FINISHED),
        ("twenty minutes", MINUTES, FINISHED),
        ("seventy five hourly", RATE, FINISHED),
        ("one hundred millilitres an hour", AnyExpected(), FINISHED),
        ("one hundred millilitres", AnyExpected(), OPEN),
        ("one fifty no one fifteen millilitres per hour", RATE, OPEN),
        ("again", RATE, FINISHED),
        ("stop", RATE, FINISHED),
        ("heparin", NameExpected(("heparin", "insulin")), FINISHED),
        ("the wrong bag was hung", TextExpected(), OPEN),
        ("stop", TextExpected(), MAY_GO_ON),
    ],
)
def test_completeness(words, expect, what):
    """A confirmation, a command, a number with its whole unit are finished; everything else may go on."""
    assert ENGLISH.completeness(words, expect) is what
