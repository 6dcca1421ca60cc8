"""A number that the recogniser doubts is no answer."""

from decimal import Decimal

import pytest

from assistant.cli.hear import meaning_of
from assistant.ports import Alternative, Hearing
from assistant.spoken.expect import ConfirmExpected, NumberExpected
from assistant.spoken.meaning import Ambiguous, Answer, NoMatch

RATE = NumberExpected("mL/h")
FIFTY = Hearing("50", (Alternative("50", 0.6), Alternative("15", 0.38), Alternative("yes", 0.02)), 1.0, 0.1, True)


@pytest.mark.parametrize(
    ("hearing", "expect", "kind"),
    [
        (FIFTY, RATE, Ambiguous),
        (Hearing("125", (Alternative("125", 0.9),), 1.0, 0.1), RATE, Answer),
        (Hearing("50", (Alternative("50", 0.9),), 1.0, 0.1), RATE, Ambiguous),
        (Hearing("", (), 1.0, 0.1, True), RATE, NoMatch),
        (Hearing("yes", (Alternative("yes", 0.9),), 1.0, 0.1), ConfirmExpected(), Answer),
    ],
)
def test_what_is_doubted_is_told_as_possible(hearing, expect, kind):
    """Only a number without doubt is an answer."""
    assert isinstance(meaning_of(hearing, expect), kind)


def test_the_possible_numbers_are_told_likeliest_first():
    """Fifty or fifteen: both, and nothing that is hardly possible."""
    assert meaning_of(FIFTY, RATE) == Ambiguous((Decimal(50), Decimal(15)), "mL/h")
