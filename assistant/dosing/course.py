"""Who flows when: a primary with its secondaries, pauses, a late start, a stopped line, bag changes.

One pump channel gives one line at a time. A secondary interrupts the primary; when its volume is in, the pump
falls back to the primary. Times are exact hours from the start; nothing is rounded here.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime
from fractions import Fraction

from assistant.dosing.result import Measure, take
from assistant.dosing.timeline import BagEnd, Collision, Course, Residual, Segment, Standstill
from assistant.errors import QuantityError
from assistant.text import SHORT, quoted, shown

_MOST_PARTS = 5_000
ALL = "all"
"""Name of a pause that stops the whole pump."""


@dataclass(frozen=True)
class Primary:
    """The continuous line.

    Attributes:
        name: as it stands in the timeline.
        rate: mL/h.
        bag_volume: what each bag holds.
        reserve: what is left in each bag on purpose.
        bags: how many bags are at hand, the first included.
        change_takes: time that a bag change stops the line; None for none.
        starts: time after the course's start (a late start); None for at once.
        keep_open: mL/h at which the last bag's reserve keeps the vein open; None where the line stands still then.
    """

    name: str
    rate: Measure
    bag_volume: Measure
    reserve: Measure | None = None
    bags: int = 1
    change_takes: Measure | None = None
    starts: Measure | None = None
    keep_open: Measure | None = None


@dataclass(frozen=True)
class Secondary:
    """One intermittent dose.

    Attributes:
        name: as it stands in the timeline.
        volume: mL to be infused.
        due: time after the course's start; None for at the start.
        rate: mL/h; or else
        duration: the time that it takes.
        late: how much later than due it is hung; None for on time.
        tubing: what its own tubing holds when the bag has run dry, and what of the dose is not given then; the pump
            is told the volume without it. None where the tubing is flushed, or counts for nothing.
    """

    name: str
    volume: Measure
    due: Measure | None = None
    rate: Measure | None = None
    duration: Measure | None = None
    late: Measure | None = None
    tubing: Measure | None = None


@dataclass(frozen=True)
class Pause:
    """A time in which a line stands still; its volume is not lost but later.

    Attributes:
        line: a line's name, or `ALL`.
        at: time after the course's start; None for at the start.
        lasts: how long; None for until the end (a stopped line).
    """

    line: str
    at: Measure | None = None
    lasts: Measure | None = None


@dataclass(frozen=True)
class RateChange:
    """A new rate of the primary from a time on.

    Attributes:
        at: time after the course's start.
        rate: mL/h.
    """

    at: Measure
    rate: Measure


@dataclass
class _Dose:
    """A secondary on its way."""

    name: str
    hangs: Fraction
    rate: Fraction
    left: Fraction
    tubing: Fraction
    whole: Fraction
    begun: Fraction | None = None


def course(
    start: datetime,
    length: Measure,
    primary: Primary,
    secondaries: Sequence[Secondary] = (),
    pauses: Sequence[Pause] = (),
    changes: Sequence[RateChange] = (),
) -> Course:
    """Work out a timeline.

    Args:
        start: clock time of the start.
        length: how much of it is wanted, for example 24 h.
        primary: the continuous line.
        secondaries: intermittent doses, in any order; each needs its own name.
        pauses: in any order.
        changes: new rates of the primary, in any order.

    Raises:
        QuantityError: an input is missing, of another kind, out of range, or a name comes twice.

    Source: the flow formula, piece by piece; that the pump falls back to the primary's rate is how a
    piggyback works (BCcampus, Clinical Procedures for Safer Patient Care, section 7.7).
    """
    return _Run(start, length, primary, secondaries, pauses, changes).run()


class _Run:
    """The state of one working-out: from one moment at which something changes to the next."""

    def __init__(
        self,
        start: datetime,
        length: Measure,
        primary: Primary,
        secondaries: Sequence[Secondary],
        pauses: Sequence[Pause],
        changes: Sequence[RateChange],
    ) -> None:
        self.start = start
        self.end = take("length", length, "duration")
        if self.end > 24 * 31:
            raise QuantityError("A course takes 31 days at most.", "Give a shorter length.")
        self.name = primary.name
        names = [primary.name, *(s.name for s in secondaries)]
        if len(set(names)) != len(names) or ALL in names or "" in names:
            raise QuantityError('Each line needs a name of its own, and not "all".', "Give other names.")
        self.names = tuple(names)
        self.rate = take("rate", primary.rate, "rate")
        self.bag = take("bag volume", primary.bag_volume, "volume")
        self.reserve = _hours("reserve", primary.reserve, "volume")
        if self.reserve >= self.bag:
            raise QuantityError("The reserve leaves nothing of the bag.", "Give a smaller reserve.")
        if not 1 <= primary.bags <= 100:
            raise QuantityError(f"Between 1 and 100 bags were expected, but {primary.bags} came.", "Count again.")
        self.bags = primary.bags
        self.change_takes = _hours("change takes", primary.change_takes)
        self.keep_open = take("keep open", primary.keep_open, "rate") if primary.keep_open is not None else None
        if self.keep_open is not None and not 0 < self.keep_open < self.rate:
            raise QuantityError("The keep-open rate is not below the primary's rate.", "Look at the two rates.")
        if self.keep_open is not None and not self.reserve:
            raise QuantityError("A keep-open rate needs a reserve in the bag to flow from.", "Give a reserve.")
        self.keeping = False
        self.primary_starts = _hours("starts", primary.starts)
        self.doses = sorted((_dose(s) for s in secondaries), key=lambda dose: (dose.hangs, names.index(dose.name)))
        self.pauses = [self._pause(p) for p in pauses]
        self.changes = sorted((take("at", c.at, "duration", zero=True), take("rate", c.rate, "rate")) for c in changes)
        self.bag_number, self.in_bag = 1, self.bag - self.reserve
        self.bag_ready = Fraction(0)
        self.segments: list[Segment] = []
        self.standstills: list[Standstill] = []
        self.residuals: list[Residual] = []
        self.bag_ends: list[BagEnd] = []
        self.waiting: dict[str, tuple[str, Fraction]] = {}

    def _pause(self, pause: Pause) -> tuple[str, Fraction, Fraction]:
        if pause.line not in (*self.names, ALL):
            raise QuantityError(
                f"A pause names {quoted(pause.line)}, which is no line here.", f"Lines are: {', '.join(self.names)}."
            )
        begins = _hours("at", pause.at)
        lasts = take("lasts", pause.lasts, "duration") if pause.lasts is not None else self.end
        return pause.line, begins, begins + lasts

    def run(self) -> Course:
        now = Fraction(0)
        while now < self.end:
            now = self._step(now)
            if len(self.segments) > _MOST_PARTS:
                raise QuantityError(f"The course has more than {_MOST_PARTS:,} parts.", "Give a shorter length.")
        begun = {dose.name: dose.begun for dose in self.doses}
        clashes = sorted(
            (Collision(name, running, due, begun[name]) for name, (running, due) in self.waiting.items()),
            key=lambda clash: (clash.due, clash.line),
        )
        return Course(
            self.start,
            self.end,
            self.names,
            tuple(self.segments),
            tuple(self.bag_ends),
            tuple(clashes),
            {dose.name: dose.left for dose in self.doses if dose.left},
            self.in_bag + (0 if self.keeping else self.reserve),
            tuple(self.standstills),
            tuple(self.residuals),
        )

    def _step(self, now: Fraction) -> Fraction:
        """Go on to the next moment at which something changes."""
        for at, rate in self.changes:
            if at <= now:
                self.rate = rate
        dose = next((d for d in self.doses if d.left and d.hangs <= now), None)
        moments = [
            self.end,
            *(d.hangs for d in self.doses if d.hangs > now),
            *(at for at, _ in self.changes if at > now),
        ]
        moments += [edge for _, begins, ends in self.pauses for edge in (begins, ends) if edge > now]
        moments += [edge for edge in (self.primary_starts, self.bag_ready) if edge > now]
        if dose is not None:
            self._note_waiting(now, dose)
            if (why := self._paused(dose.name, now)) is None:
                dose.begun = now if dose.begun is None else dose.begun
                until = min(*moments, now + dose.left / dose.rate)
                dose.left -= (until - now) * dose.rate
                self._flow(dose.name, now, until, dose.rate)
                if not dose.left and dose.tubing:
                    self.residuals.append(Residual(dose.name, until, dose.tubing, dose.tubing / dose.whole))
                return until
            # A secondary that stands still on the pump keeps the channel: the primary does not run meanwhile.
            return self._stand_still(now, min(moments), why)
        if (why := self._why_not(now)) is not None:
            return self._stand_still(now, min(moments), why)
        rate = self.keep_open if self.keeping and self.keep_open is not None else self.rate
        until = min(*moments, now + self.in_bag / rate)
        self.in_bag -= (until - now) * rate
        self._flow(self.name, now, until, rate)
        if not self.in_bag:
            self._bag_ends(until)
        return until

    def _why_not(self, now: Fraction) -> str | None:
        """Why the primary does not flow; None where it does."""
        if now < self.primary_starts:
            return f"{self.name} has not begun"
        if now < self.bag_ready:
            return f"the bag of {self.name} is changed"
        return self._paused(self.name, now) or (None if self.in_bag else f"no bag of {self.name} is left")

    def _stand_still(self, begins: Fraction, ends: Fraction, why: str) -> Fraction:
        """Note that nothing flows, and for one reason once."""
        last = self.standstills[-1] if self.standstills else None
        if last is not None and (last.ends, last.why) == (begins, why):
            self.standstills[-1] = Standstill(last.begins, ends, why)
        else:
            self.standstills.append(Standstill(begins, ends, why))
        return ends

    def _bag_ends(self, at: Fraction) -> None:
        if self.bag_number < self.bags:
            then = "the next bag is hung"
            self.bag_ends.append(BagEnd(self.name, self.bag_number, at, then))
            self.bag_number, self.in_bag = self.bag_number + 1, self.bag - self.reserve
            self.bag_ready = at + self.change_takes
            return
        then = "no bag is left, the primary stands still"
        if self.keep_open is not None and not self.keeping:
            self.keeping, self.in_bag = True, self.reserve
            then = "no bag is left, its reserve keeps the vein open"
        elif self.keeping:
            then = "its reserve is used up, the primary stands still"
        self.bag_ends.append(BagEnd(self.name, self.bag_number, at, then))

    def _note_waiting(self, now: Fraction, running: _Dose) -> None:
        for other in self.doses:
            if other is not running and other.left and other.hangs <= now and other.name not in self.waiting:
                self.waiting[other.name] = (running.name, other.hangs)

    def _paused(self, name: str, now: Fraction) -> str | None:
        """That a line is paused, in words; None where it is not."""
        paused = {line for line, begins, ends in self.pauses if line in (name, ALL) and begins <= now < ends}
        return None if not paused else "the pump is paused" if ALL in paused else f"{name} is paused"

    def _flow(self, name: str, begins: Fraction, ends: Fraction, rate: Fraction) -> None:
        """Add a piece, or lengthen the last one where nothing has changed."""
        last = self.segments[-1] if self.segments else None
        if last is not None and (last.line, last.ends, last.rate) == (name, begins, rate):
            self.segments[-1] = Segment(name, last.begins, ends, rate)
        else:
            self.segments.append(Segment(name, begins, ends, rate))


def _hours(name: str, given: Measure | None, kind: str = "duration") -> Fraction:
    return Fraction(0) if given is None else take(name, given, kind, zero=True)


def _dose(given: Secondary) -> _Dose:
    volume = take("volume", given.volume, "volume")
    if given.rate is not None and given.duration is None:
        rate = take("rate", given.rate, "rate")
    elif given.rate is None and given.duration is not None:
        rate = volume / take("duration", given.duration, "duration")
    else:
        raise QuantityError(
            f"{shown(given.name, SHORT)} needs either a rate or a duration.", "Give one of the two and not both."
        )
    tubing = _hours("tubing", given.tubing, "volume")
    if tubing >= volume:
        raise QuantityError(
            f"The tubing of {shown(given.name, SHORT)} holds its whole volume.", "Look at the two volumes."
        )
    hangs = _hours("due", given.due) + _hours("late", given.late)
    return _Dose(given.name, hangs, rate, volume - tubing, tubing, volume)
