"""Clock times: over midnight, over months, and over the two clock changes of the year."""

from datetime import UTC, datetime
from fractions import Fraction

import pytest

from assistant.dosing import parse_amount
from assistant.dosing.clock import (
    completion_time,
    due_time,
    hours_and_minutes,
    later,
    nearest_minute,
    parse_start,
    wall,
)
from assistant.errors import QuantityError

LONDON, NEW_YORK = "Europe/London", "America/New_York"


@pytest.mark.parametrize(
    ("start", "zone", "duration", "text"),
    [
        ("08:00", "", "6 h 40 min", "14:40"),
        ("22:00", "", "6 h 40 min", "04:40 next day"),
        ("22:00", "", "2 h", "00:00 next day"),
        ("00:00", "", "24 h", "00:00 next day"),
        ("08:00", "", "96 h", "08:00 4 days later"),
        ("10:00", "", "522.3 min", "18:42"),
        ("10:00", "", "522.5 min", "18:43"),
        ("23:59", "", "30 s", "00:00 next day"),
        ("2024-02-28 20:00", "", "8 h", "04:00 next day"),
        ("2023-12-31 23:30", "", "1 h", "00:30 next day"),
        # The clocks of the zones as the IANA time zone database has them: forward on 29 March 2026, back on
        # 25 October 2026 in London; forward on 8 March 2026, back on 1 November 2026 in New York.
        ("2026-03-28 22:00", LONDON, "8 h", "07:00 BST next day"),
        ("2026-10-24 22:00", LONDON, "8 h", "05:00 GMT next day"),
        ("2026-03-07 22:00", NEW_YORK, "8 h", "07:00 EDT next day"),
        ("2026-10-31 22:00", NEW_YORK, "8 h", "05:00 EST next day"),
        ("2026-06-01 22:00", LONDON, "8 h", "06:00 next day"),
        ("2026-03-28 22:00", "UTC", "8 h", "06:00 next day"),
    ],
)
def test_completion_on_the_wall_clock(start: str, zone: str, duration: str, text: str) -> None:
    """An infusion takes its time whatever the clocks do; the end is read off the wall."""
    assert completion_time(parse_start(start, zone), duration=parse_amount(duration)).text == text


def test_a_clock_change_is_told() -> None:
    """The working says that the clocks change on the way."""
    moment = completion_time(parse_start("2026-10-24 22:00", LONDON), duration=parse_amount("8 h"))
    assert moment.working[-1] == "the clocks change on the way"
    assert moment.at.astimezone(UTC) == datetime(2026, 10, 25, 5, 0, tzinfo=UTC)


REFUSED = [
    ("2026-03-29 01:30", LONDON, None, "does not exist"),
    ("2026-03-29 01:30", LONDON, True, "does not exist"),
    ("2026-10-25 01:30", LONDON, None, "comes twice"),
    ("22:00", LONDON, None, "needs the date"),
    ("2026-02-30 10:00", "", None, "not a day"),
    ("24:00", "", None, "24-hour clock"),
    ("12:60", "", None, "24-hour clock"),
    ("noon", "", None, "24-hour clock"),
    ("", "", None, "24-hour clock"),
    ("8.30", "", None, "24-hour clock"),
    ("2026-01-01 10:00", "Nowhere/Land", None, "not a time zone"),
    ("2026-01-01 10:00", "../../etc/passwd", None, "not a time zone"),
    ("2026-01-01 10:00", "Europe", None, "not a time zone"),
    ("2026-01-01 10:00", "a\x00b", None, "not a time zone"),
]


@pytest.mark.parametrize(("text", "zone", "second", "words"), REFUSED)
def test_refuses_times_that_are_none(text: str, zone: str, second: bool | None, words: str) -> None:
    """A time that does not exist, or comes twice, is not guessed."""
    with pytest.raises(QuantityError, match=words):
        parse_start(text, zone, second=second)


def test_the_time_that_comes_twice_can_be_told_apart() -> None:
    """First and second 01:30 of the night on which clocks go back lie an hour apart."""
    first = parse_start("2026-10-25 01:30", LONDON, second=False)
    second = parse_start("2026-10-25 01:30", LONDON, second=True)
    assert (second.astimezone(UTC) - first.astimezone(UTC)).total_seconds() == 3600


def test_due_times_follow_from_the_policy() -> None:
    """A set hung at 08:00 with 96 h to its change is due four days later (CDC 2011)."""
    moment = due_time(parse_start("2026-11-25 08:00", LONDON), parse_amount("96 h"))
    assert moment.text == "08:00 4 days later"
    assert str(moment) == moment.text
    assert moment.working == ("08:00 and 96 h: 08:00 4 days later",)


@pytest.mark.parametrize(
    ("hours", "text"),
    [("0", "0 min"), ("0.5", "30 min"), ("1", "1 h"), ("6.5", "6 h 30 min"), ("8.705", "8 h 42.3 min")],
)
def test_writes_hours_and_minutes(hours: str, text: str) -> None:
    """A time is written in hours and minutes, as people say it."""
    assert hours_and_minutes(Fraction(hours)) == text


def test_minutes_are_rounded_half_up() -> None:
    """Thirty seconds make the next minute, twenty-nine do not."""
    at = datetime(2026, 1, 1, 12, 0, 29, 999_999, tzinfo=UTC)
    assert nearest_minute(at) == at.replace(second=0, microsecond=0)
    assert nearest_minute(later(at, Fraction(1, 3_600_000_000))).minute == 1
    assert wall(at, at) == "12:00"
