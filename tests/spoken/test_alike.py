"""Which numbers sound alike."""

from decimal import Decimal

import pytest

from assistant.spoken import confusions, neighbours, wants_digits
from assistant.spoken.confusion import Confusion

from .confusions import numbers_in_use, pairs_of, table


@pytest.mark.parametrize(
    ("value", "other", "kind"),
    [
        # Pennsylvania Patient Safety Authority advisory, June 2006, and ISMP, 24 January 2001: 15 heard as 50.
        ("15", "50", Confusion.TEEN_TY),
        # ISMP and NCC MERP guidance, extended to the full series (from memory).
        ("13", "30", Confusion.TEEN_TY),
        ("14", "40", Confusion.TEEN_TY),
        ("16", "60", Confusion.TEEN_TY),
        ("17", "70", Confusion.TEEN_TY),
        ("18", "80", Confusion.TEEN_TY),
        ("19", "90", Confusion.TEEN_TY),
        ("115", "150", Confusion.TEEN_TY),
        ("1215", "1250", Confusion.TEEN_TY),
        # ISMP, 24 January 2001: morphine 2 mg heard as 10 mg.
        ("2", "10", Confusion.TWO_TEN),
        # Measured on recognisers with human and synthetic speech.
        ("918", "980", Confusion.TEEN_TY),
        ("715", "750", Confusion.TEEN_TY),
        ("90", "980", Confusion.PAIR),
        ("11", "117", Confusion.DIGIT_LOST),
        ("8", "28", Confusion.DIGIT_LOST),
        ("10.5", "105", Confusion.POINT_LOST),
        # Common practice, no source.
        ("5", "9", Confusion.FIVE_NINE),
        ("125", "129", Confusion.FIVE_NINE),
        ("6", "60", Confusion.ONE_TEN),
        ("100", "800", Confusion.EIGHT_A),
        ("2", "200", Confusion.HUNDRED_LOST),
        ("25", "205", Confusion.HUNDRED_LOST),
        ("83.3", "833", Confusion.POINT_LOST),
    ],
)
def test_sound_alike_both_ways(value: str, other: str, kind: Confusion) -> None:
    """A pair sounds alike whichever of the two is said."""
    one, two = Decimal(value), Decimal(other)
    assert (two, kind) in {(n.value, n.kind) for n in confusions(one)}
    assert (one, kind) in {(n.value, n.kind) for n in confusions(two)}
    assert two in neighbours(one, "mL/h") and one in neighbours(two, "mL/h")


@pytest.mark.parametrize(("value", "other"), [("75", "42"), ("125", "126"), ("30", "31"), ("100", "200")])
def test_do_not_sound_alike(value: str, other: str) -> None:
    """Numbers that differ in a whole word which nothing else sounds like are no neighbours."""
    assert Decimal(other) not in neighbours(Decimal(value), "mL/h")


def test_every_relation_goes_both_ways() -> None:
    """Below 1,000, whatever sounds like a number is sounded like by it."""
    highest = Decimal(999)
    known = {
        number: {(n.value, n.kind) for n in confusions(Decimal(number), Decimal(0), highest)}
        for number in range(1, 1000, 3)
    }
    for number, found in known.items():
        for value, kind in found:
            back = known.get(int(value)) if value == value.to_integral_value() else None
            if back is not None:
                assert (Decimal(number), kind) in back, (number, value, kind)


def test_neighbours_stay_in_the_range() -> None:
    """Only numbers that could be said at the step, in order, each once, never the number itself."""
    found = neighbours(Decimal(50), "mL/h", Decimal(10), Decimal(99))
    assert Decimal(15) in found
    assert list(found) == sorted(set(found))
    assert all(10 <= value <= 99 and value != 50 for value in found)
    assert neighbours(Decimal(50), "mL/h", Decimal(40), Decimal(60)) == ()


@pytest.mark.parametrize("value", ["10", "13", "50", "115", "150", "918", "980", "83.3", "0.5", "1250"])
def test_wants_digits(value: str) -> None:
    """Ten, teens, tens, pairs that run together, and decimals are taken only digit by digit."""
    assert wants_digits(Decimal(value), "mL/h")


@pytest.mark.parametrize("value", ["5", "12", "25", "75", "100", "125", "999"])
def test_wants_no_digits(value: str) -> None:
    """Other numbers are left to the read-back."""
    assert not wants_digits(Decimal(value), "mL/h")


def test_a_neighbour_out_of_range_asks_for_nothing() -> None:
    """Where 50 cannot be said, 15 is clear."""
    assert not wants_digits(Decimal(15), "mL/h", Decimal(1), Decimal(20))


def test_few_numbers_without_teens_and_tens_want_digits() -> None:
    """Under a quarter of them, or the learner would spell all day."""
    others = [n for n in range(1, 1000, 7) if n % 100 not in (*range(13, 20), *range(20, 100, 10))]
    asked = [n for n in others if wants_digits(Decimal(n), "mL/h")]
    assert len(asked) < len(others) / 4


def test_the_table_names_every_kind() -> None:
    """The printed table has a row for each kind, with the classic pair in its row."""
    printed = table(1, 99)
    assert all(f"| {kind.value} |" in printed for kind in Confusion)
    assert "15/50" in printed


def test_the_numbers_in_use_are_those_of_the_library() -> None:
    """Every unit that a checklist asks for, and of each number in use its neighbours, by kind."""
    used = numbers_in_use()
    assert Decimal("83.3") in used["mL/h"] and Decimal(950) in used["mL"]
    assert all(found == tuple(sorted(set(found))) for found in used.values())
    pairs = pairs_of(used["mL/h"], Decimal(0), Decimal(9999))
    assert (Decimal("83.3"), Decimal(833)) in pairs[Confusion.POINT_LOST]
    assert (Decimal(90), Decimal(980)) in pairs[Confusion.PAIR]
    assert all(one < other for found in pairs.values() for one, other in found)
