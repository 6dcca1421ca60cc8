"""Numbers that differ in a teen or a ten only."""

from decimal import Decimal

import pytest

from assistant.dosing.twins import TWINS, are_twins, twin


@pytest.mark.parametrize(
    ("one", "other"),
    [
        # Pennsylvania Patient Safety Authority advisory, June 2006, and ISMP, 24 January 2001: 15 heard as 50.
        ("15", "50"),
        ("115", "150"),
        ("1315", "1350"),
        ("13.5", "30.5"),
        ("15000", "50000"),
        ("115000", "150000"),
        ("15015", "15050"),
    ],
)
def test_a_number_and_its_twin(one: str, other: str) -> None:
    """Each is the other's twin, whichever comes first; what stands around the teen stays."""
    assert twin(Decimal(one)) == Decimal(other)
    assert twin(Decimal(other)) == Decimal(one)
    assert are_twins(Decimal(one), Decimal(other)) and are_twins(Decimal(other), Decimal(one))


def test_of_two_twins_either_is_one() -> None:
    """15,015 sounds like 15,050 and like 50,015, and 15,050 does not sound like 50,015 by one change."""
    assert are_twins(Decimal(15015), Decimal(50015))
    assert not are_twins(Decimal(15050), Decimal(50015))


@pytest.mark.parametrize("value", ["0", "5", "10", "12", "20", "83.3", "100", "125", "-15", "0.5"])
def test_others_have_none(value: str) -> None:
    """Ten, eleven, twelve and twenty have no twin; nor has a negative number."""
    assert twin(Decimal(value)) is None


def test_nothing_else_is_a_twin() -> None:
    """Below 1,000, by the whole table of pairs: same hundreds, and a teen with its ten."""
    pairs = {(h + teen, h + ten) for h in range(0, 1000, 100) for teen, ten in TWINS.items()}
    found = {
        (one, other) for one in range(1000) for other in range(one + 1, 1000) if are_twins(Decimal(one), Decimal(other))
    }
    assert found == pairs
    assert not are_twins(Decimal("15.5"), Decimal("50.4"))
