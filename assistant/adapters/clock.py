"""The station's clock: the wall's time at the start, carried on by a clock that never jumps."""

import time
from datetime import UTC, datetime, timedelta


class SystemClock:
    """UTC that never runs backwards within one attempt, even where the wall clock is set back.

    Implements `assistant.ports.Clock`.

    Attributes:
        behind_s: seconds that the wall's clock was behind `not_before` at the start; 0 where it was not.

    Args:
        not_before: the last time that an attempt which is taken up knows of; the clock goes on from there, for a
            wait must not become an hour longer because somebody has set this machine's clock.
    """

    def __init__(self, not_before: datetime | None = None) -> None:
        wall = datetime.now(UTC)
        self._start = wall if not_before is None else max(wall, not_before)
        self._ticks_at_start = time.monotonic()
        self.behind_s = (self._start - wall).total_seconds()

    def now(self) -> datetime:
        """The time in UTC: that of the start plus what the steady clock has counted since."""
        return self._start + timedelta(seconds=time.monotonic() - self._ticks_at_start)

    def sleep_limit(self, until: datetime | None) -> float | None:
        """Seconds that a wait for input may last until `until`, never below 0; None for no limit."""
        if until is None:
            return None
        return max(0.0, (until - self.now()).total_seconds())
