"""What is listened for does not know the right answer."""

from decimal import Decimal

from .favour import NEUTRAL, RIGHT, expected_at, pairs


def test_what_a_check_off_listens_for_is_the_neutral_vocabulary() -> None:
    """Whatever the right answer is, the guide listens for the same, and for every number that could be said."""
    assert {expected_at(right) for right in (*RIGHT, Decimal(1), Decimal(9999))} == {NEUTRAL}


def test_neighbours_are_wrong_numbers() -> None:
    """Two hundred pairs can be spoken, none of them the right answer itself."""
    found = list(pairs(200))
    assert len(found) == 200
    assert all(right != wrong for right, wrong in found)
