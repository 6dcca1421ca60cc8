"""The station's clock: the wall's time at the start, carried on by a clock that never jumps."""

import time
from datetime import UTC, datetime, timedelta


class SystemClock:
    """UTC that never runs backwards within one run, even where the wall clock is set back.

    Implements `assistant.ports.Clock`.
    """

    def __init__(self) -> None:
        self._wall_at_start = datetime.now(UTC)
        self._ticks_at_start = time.monotonic()

    def now(self) -> datetime:
        """The time in UTC: the wall clock at the start plus what the steady clock has counted since."""
        return self._wall_at_start + timedelta(seconds=time.monotonic() - self._ticks_at_start)

    def sleep_limit(self, until: datetime | None) -> float | None:
        """Seconds that a wait for input may last until `until`, never below 0; None for no limit."""
        if until is None:
            return None
        return max(0.0, (until - self.now()).total_seconds())
