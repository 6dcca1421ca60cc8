"""What a course gives: who flowed when, what was given, what to look out for."""

from dataclasses import dataclass, field
from datetime import datetime, timedelta
from fractions import Fraction

from assistant.dosing import clock
from assistant.dosing.result import tell_exact


@dataclass(frozen=True)
class Segment:
    """One line flowing at one rate; times in hours after the start, rate in mL/h."""

    line: str
    begins: Fraction
    ends: Fraction
    rate: Fraction

    @property
    def volume(self) -> Fraction:
        """What flowed, in mL."""
        return (self.ends - self.begins) * self.rate


@dataclass(frozen=True)
class BagEnd:
    """A bag is empty down to its reserve.

    Attributes:
        line: whose bag.
        number: 1 for the first.
        at: hours after the start.
        then: what the pump does next.
    """

    line: str
    number: int
    at: Fraction
    then: str


@dataclass(frozen=True)
class Collision:
    """A secondary that was due while another one ran.

    Attributes:
        line: the one that waits.
        running: the one that it waits for.
        due: hours after the start.
        begins: hours after the start; None where it never came to begin.
    """

    line: str
    running: str
    due: Fraction
    begins: Fraction | None


@dataclass(frozen=True)
class Standstill:
    """A time in which nothing flows; times in hours after the start.

    Attributes:
        begins, ends: of that time.
        why: in words, such as "the pump is paused".
    """

    begins: Fraction
    ends: Fraction
    why: str


@dataclass(frozen=True)
class Residual:
    """What of a dose stays in its tubing when its bag has run dry.

    Attributes:
        line: the secondary.
        at: hours after the start.
        volume: mL in the tubing.
        share: of the dose, as a part of one.
    """

    line: str
    at: Fraction
    volume: Fraction
    share: Fraction


@dataclass(frozen=True)
class Course:
    """A timeline with its sums.

    Attributes:
        start: clock time of the start; with or without a zone.
        length: hours.
        lines: names in the order of the timeline's rows, the primary first.
        segments: in order of time; gaps are times when nothing flows.
        bag_ends: in order of time.
        collisions: in order of time.
        unfinished: mL that each secondary still holds at the end, by name; only where there is any.
        left_in_bag: mL in the primary's last bag at the end, its reserve included.
        standstills: in order of time; with the segments they fill the whole length.
        residuals: what stays in the tubing of each dose that has run in, in order of time.
    """

    start: datetime
    length: Fraction
    lines: tuple[str, ...]
    segments: tuple[Segment, ...]
    bag_ends: tuple[BagEnd, ...]
    collisions: tuple[Collision, ...]
    unfinished: dict[str, Fraction] = field(default_factory=dict)
    left_in_bag: Fraction = Fraction(0)
    standstills: tuple[Standstill, ...] = ()
    residuals: tuple[Residual, ...] = ()

    def intake(self, line: str = "") -> Fraction:
        """Total in mL, of one line or of all."""
        return sum((s.volume for s in self.segments if line in ("", s.line)), Fraction(0))

    def hourly(self, line: str = "") -> tuple[tuple[datetime, Fraction], ...]:
        """Intake by clock hour: when each hour on the wall begins, and the mL in it.

        The first hour begins at the full hour before the start. Where clocks change, each hour that passes
        has its own row.
        """
        into = self.start - self.start.replace(minute=0, second=0, microsecond=0)
        offset = Fraction(int(into / timedelta(microseconds=1)), 3_600_000_000)
        count = -(-(self.length + offset) // 1)
        sums = [Fraction(0)] * int(count)
        for segment in self.segments:
            if line not in ("", segment.line):
                continue
            first = int((segment.begins + offset) // 1)
            last = int(-(-(segment.ends + offset) // 1))
            for hour in range(first, last):
                begins = max(segment.begins + offset, Fraction(hour))
                ends = min(segment.ends + offset, Fraction(hour + 1))
                sums[hour] += (ends - begins) * segment.rate
        return tuple((clock.later(self.start, hour - offset), total) for hour, total in enumerate(sums))

    def at(self, hours: Fraction) -> datetime:
        """A time of the course on the clock, to the microsecond."""
        return clock.later(self.start, hours)

    def when(self, hours: Fraction) -> str:
        """A time of the course as it stands on the wall, to the nearest minute."""
        return clock.wall(clock.nearest_minute(self.at(hours)), self.start)

    def flowing(self, hours: Fraction) -> Segment | None:
        """What flows at a time, if anything does."""
        return next((s for s in self.segments if s.begins <= hours < s.ends), None)

    def label(self, hours: Fraction) -> str:
        """A time of the course for an axis: without its day, with its zone once the clocks have changed."""
        at = clock.nearest_minute(self.at(hours))
        changed = at.tzinfo is not None and at.utcoffset() != self.start.utcoffset()
        return f"{at:%H:%M} {at.tzname()}" if changed else f"{at:%H:%M}"

    def sentences(self) -> tuple[str, ...]:
        """The course in words, in order of time: who flows when, what stands still and why, what to look out for."""
        ends = [
            (end.at, f"{self.when(end.at)}: bag {end.number} of {end.line} ends; {end.then}") for end in self.bag_ends
        ]
        ends += [
            (
                left.at,
                f"{self.when(left.at)}: {tell_exact(left.volume, 'mL')} of {left.line} stay in the tubing,"
                f" {tell_exact(left.share * 100, '%')} of the dose",
            )
            for left in self.residuals
        ]
        spans: list[tuple[Fraction, str]] = []
        before: Segment | None = None
        for segment in self.segments:
            back = ""
            primary = segment.line == self.lines[0]
            if primary and before is not None and before.line != segment.line and before.ends == segment.begins:
                back = " (the pump falls back to the primary)"
            flows = f"{segment.line} at {tell_exact(segment.rate, 'mL/h')}, {tell_exact(segment.volume, 'mL')}{back}"
            spans.append((segment.begins, f"{self._span(segment.begins, segment.ends)}: {flows}"))
            before = segment
        spans += [
            (still.begins, f"{self._span(still.begins, still.ends)}: nothing flows; {still.why}")
            for still in self.standstills
        ]
        for clash in self.collisions:
            wait = f"it begins at {self.when(clash.begins)}" if clash.begins is not None else "it does not begin"
            spans.append((clash.due, f"{self.when(clash.due)}: {clash.line} is due while {clash.running} runs; {wait}"))
        # What ends at a time comes before what begins at that time.
        lines = [sentence for _, sentence in sorted([*ends, *spans], key=lambda one: one[0])]
        lines += [f"{name}: {tell_exact(rest, 'mL')} not given by the end" for name, rest in self.unfinished.items()]
        return tuple(lines)

    def _span(self, begins: Fraction, ends: Fraction) -> str:
        return f"{self.when(begins)} to {self.when(ends)}"
