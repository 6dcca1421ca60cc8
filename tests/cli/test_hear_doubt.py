"""A number that the recogniser doubts is not an answer."""

from decimal import Decimal

import pytest

from assistant.cli.hear import reply_to
from assistant.one_step import OneStep
from assistant.ports import Alternative, Hearing
from assistant.spoken import ENGLISH
from assistant.spoken.expect import ConfirmExpected, NumberExpected

RATE = OneStep(NumberExpected("mL/h"), ENGLISH)
CONFIRM = OneStep(ConfirmExpected(), ENGLISH)
FIFTY = Hearing("50", (Alternative("50", 0.6), Alternative("15", 0.38), Alternative("yes", 0.02)), 1.0, 0.1, True)


@pytest.mark.parametrize(
    ("hearing", "step", "answered", "readings"),
    [
        (FIFTY, RATE, False, (50, 15)),
        (Hearing("125", (Alternative("125", 0.9),), 1.0, 0.1), RATE, True, ()),
        (Hearing("125", (Alternative("125", 0.9), Alternative("120", 0.04)), 1.0, 0.1, True), RATE, False, (125,)),
        (Hearing("50", (Alternative("50", 0.9),), 1.0, 0.1), RATE, False, (50, 15)),
        (Hearing("", (), 1.0, 0.1, True), RATE, False, ()),
        (Hearing("yes", (Alternative("yes", 0.9),), 1.0, 0.1), CONFIRM, True, ()),
        (Hearing("it's done", (Alternative("it's done", 0.9),), 1.0, 0.1, True), CONFIRM, False, ()),
    ],
)
def test_what_is_doubted_is_given_as_possible(hearing, step, answered, readings):
    """Only a number without doubt is an answer; the others that are likely are given, likeliest first."""
    reply = reply_to(hearing, step)
    assert (reply.answer is not None) is answered
    assert reply.readings == tuple(map(Decimal, readings))


def test_a_doubtful_number_is_asked_for_as_in_an_attempt():
    """What is printed is what the guide would say."""
    assert reply_to(FIFTY, RATE).readback == "Say the digits, please."
