"""One attempt as the desk shows it. Pure; what makes it of entries is `assistant.desk.followed`."""

import math
from collections.abc import Mapping
from dataclasses import dataclass
from datetime import datetime
from enum import StrEnum

from assistant.checklist.rehearsal import WORDS_A_MINUTE
from assistant.link.messages import Begun, PlanStep


class Standing(StrEnum):
    """How a step stands."""

    AHEAD = "ahead"
    DONE = "done"
    LOOK = "done, worth a look"
    HELD = "held"
    LEFT = "left open"
    NOT_APPLICABLE = "not applicable"
    SET_ASIDE = "set aside by the instructor"


_OPEN = frozenset({Standing.AHEAD, Standing.HELD, Standing.LEFT})


class Turn(StrEnum):
    """What goes on."""

    STARTING = "starting"
    ASKED = "asked"
    READING_BACK = "reading back"
    WAITING = "timed wait"
    PAUSED = "paused"
    WITH_INSTRUCTOR = "with the instructor"
    HELD = "held by the instructor"
    STOPPED = "stopped"
    OVER = "over"


@dataclass(frozen=True)
class StepSeen:
    """A step as it stands.

    Attributes:
        plan: what is to be done.
        number: its place, from 1.
        standing: how it stands.
        first, said: the first and the last number, name or words that were kept.
        wrong: how many answers were held.
        cues: help that was given.
        seen: "seen" or "not seen" by an instructor; empty where nobody marked it.
        marked: that came from the desk, so that it can be undone there: id of the order.
        took_s: from its line to "done", seconds; None where it was not closed so.
        closed: how many entries there were when it was closed last; 0 where it is open.
    """

    plan: PlanStep
    number: int
    standing: Standing = Standing.AHEAD
    first: str = ""
    said: str = ""
    wrong: int = 0
    cues: tuple[str, ...] = ()
    seen: str = ""
    marked: str = ""
    took_s: int | None = None
    closed: int = 0

    @property
    def is_open(self) -> bool:
        """Whether it still has to be dealt with."""
        return self.standing in _OPEN

    @property
    def is_fast(self) -> bool:
        """Whether "done" came sooner than its line can be read aloud."""
        return self.took_s is not None and self.took_s < self.reading_s

    @property
    def reading_s(self) -> int:
        """Seconds that reading its line aloud takes, as `assistant.checklist.rehearsal` estimates it."""
        return math.ceil(len(self.plan.say.split()) * 60 / WORDS_A_MINUTE)


@dataclass(frozen=True)
class MarkSeen:
    """A mark, an event or a direction of the instructor that is on record.

    Attributes:
        order: its id.
        what: "seen", "unsafe", "alarm", "pause", ...
        step: id of its step, or empty.
        words: reason or note.
        at: when, UTC.
        undone: a later mark took it back.
        holds: it is unsafe, and the attempt is held for it.
        refused: why the guide did not take it; empty where it did.
    """

    order: str
    what: str
    step: str
    words: str
    at: datetime | None
    undone: bool = False
    holds: bool = False
    refused: str = ""


@dataclass(frozen=True)
class Watched:
    """An attempt, as far as its entries tell.

    Attributes:
        begun: where it goes on, and its steps.
        entries: how many entries were taken in.
        opening: its first entry.
        log: the other entries, oldest first.
        steps: its steps, in order.
        now: id of the step that is asked; empty where there is none.
        since: when that began, by the station's clock.
        last_at: when the last entry was made, by the station's clock.
        turn: what goes on.
        heard, understood: the last words of whoever answers, and what they were taken for.
        unclear: how many answers in a row were not understood.
        trouble: what went wrong, in the learner's words; empty once a step was closed after it.
        found: a fault that the learner told of, in the same way.
        calls: why the learner waits for the instructor; empty where they do not.
        deaf: the station cannot hear.
        outcome: as the seal says it; empty where there is none.
        marks: what the instructor did from the desk, oldest first.
        fast: id of the step that was closed last, where that was faster than it can be read.
    """

    begun: Begun
    entries: int = 0
    opening: Mapping[str, object] | None = None
    log: tuple[Mapping[str, object], ...] = ()
    steps: tuple[StepSeen, ...] = ()
    now: str = ""
    since: datetime | None = None
    last_at: datetime | None = None
    turn: Turn = Turn.STARTING
    heard: str = ""
    understood: str = ""
    unclear: int = 0
    trouble: str = ""
    found: str = ""
    calls: str = ""
    deaf: bool = False
    outcome: str = ""
    marks: tuple[MarkSeen, ...] = ()
    fast: str = ""

    @property
    def unsafe(self) -> str:
        """The reason of the last unsafe mark for which the attempt is held; empty where it is held for none."""
        return next((mark.words or "no reason" for mark in reversed(self.marks) if mark.holds), "")

    @property
    def learner(self) -> str:
        """The learner's code."""
        return self._pinned("learner") or "no code"

    @property
    def checklist(self) -> str:
        """The name of the checklist."""
        return self._pinned("checklist")

    @property
    def mode(self) -> str:
        """Practice or check-off."""
        return self._pinned("mode")

    @property
    def step(self) -> StepSeen | None:
        """The step that is asked now."""
        return self.step_of(self.now)

    @property
    def goes_on(self) -> bool:
        """Whether it has begun and is neither over nor stopped."""
        return self.turn not in (Turn.OVER, Turn.STOPPED)

    @property
    def to_see(self) -> tuple[StepSeen, ...]:
        """Steps that an instructor has to see, and has not yet, in their order."""
        return tuple(
            step
            for step in self.steps
            if step.plan.seen
            and step.seen != "seen"
            and step.standing not in (Standing.NOT_APPLICABLE, Standing.SET_ASIDE)
        )

    @property
    def to_mark(self) -> StepSeen | None:
        """The step that "seen" and "not seen" are for: the one done last that has to be seen and has no mark."""
        done = [step for step in self.to_see if step.closed and not step.seen]
        return max(done, key=lambda step: step.closed, default=None)

    def step_of(self, name: str) -> StepSeen | None:
        """The step with this id."""
        return next((step for step in self.steps if step.plan.id == name), None)

    def _pinned(self, name: str) -> str:
        return str((self.opening or {}).get(name, ""))
