"""The station's clock."""

from datetime import UTC, datetime, timedelta

import pytest

from assistant.adapters import clock as clock_module
from assistant.adapters.clock import SystemClock


def test_now_is_utc_and_close_to_the_wall():
    """At the start the clock shows the wall's time, in UTC."""
    before = datetime.now(UTC)
    now = SystemClock().now()
    assert now.utcoffset() == timedelta(0)
    assert before <= now <= before + timedelta(minutes=1)


def test_wall_clock_set_back_is_not_noticed(monkeypatch):
    """Setting the wall clock back by an hour in mid-attempt moves no later event before an earlier one."""
    clock = SystemClock()
    first = clock.now()

    class SetBack(datetime):
        @classmethod
        def now(cls, tz=None):
            return first.astimezone(tz) - timedelta(hours=1)

    monkeypatch.setattr(clock_module, "datetime", SetBack)
    assert clock.now() >= first


@pytest.mark.parametrize(
    ("ahead_s", "lowest", "highest"),
    [(None, None, None), (-5, 0.0, 0.0), (0, 0.0, 0.0), (60, 1.0, 60.0)],
)
def test_sleep_limit(ahead_s, lowest, highest):
    """A wait lasts until its moment, no time for a moment that has passed, and has no limit without one."""
    clock = SystemClock()
    limit = clock.sleep_limit(None if ahead_s is None else clock.now() + timedelta(seconds=ahead_s))
    if ahead_s is None:
        assert limit is None
    else:
        assert lowest <= limit <= highest
