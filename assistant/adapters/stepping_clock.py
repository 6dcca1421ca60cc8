"""A clock for demonstrations and tests: time passes when it is told to, at once."""

from datetime import UTC, datetime


class SteppingClock:
    """Time that stands still until somebody waits; implements `assistant.ports.Clock`."""

    def __init__(self, start: datetime | None = None) -> None:
        self._now = datetime.now(UTC) if start is None else start

    def now(self) -> datetime:
        """The time in UTC."""
        return self._now

    def move_to(self, at: datetime) -> None:
        """Let time pass up to `at`; an earlier time changes nothing."""
        self._now = max(self._now, at)

    def sleep_limit(self, until: datetime | None) -> float | None:
        """Waiting until a time is over at once: the clock moves there; None for no limit."""
        if until is None:
            return None
        self.move_to(until)
        return 0.0
