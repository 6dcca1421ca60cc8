"""Where an attempt stands: plain state, no rules."""

from dataclasses import dataclass, field
from datetime import datetime
from decimal import Decimal
from enum import StrEnum


class Mode(StrEnum):
    """The two ways to go through a checklist."""

    PRACTICE = "practice"
    CHECK_OFF = "check-off"


class State(StrEnum):
    """What the guide is doing."""

    READY = "ready"
    ASKING = "asking"
    READING_BACK = "reading back"
    GIVING_REASON = "giving a reason"
    WAITING = "waiting"
    PAUSED = "paused"
    STOPPING = "stopping"
    FINISHED = "finished"


class Status(StrEnum):
    """Where one step stands."""

    OPEN = "open"
    CLOSED = "closed"
    NOT_APPLICABLE = "not applicable"
    LEFT_OUT = "left out"


@dataclass
class StepProgress:
    """What happened at one step.

    Attributes:
        status: where it stands.
        first, final: first and final answer as shown, with unit; empty where there was none.
        tries: answers that were kept and compared, or a question's answers.
        wrong: how many of them were not right.
        slips: kinds of slip found, in order.
        cues: names of the cues given, in order.
        corrections: how often the learner corrected a closed answer by own will.
        expired: how often the settings had to be entered again after waiting too long.
        reason: why it does not apply.
        closed_at: when it was last closed.
    """

    status: Status = Status.OPEN
    first: str = ""
    final: str = ""
    tries: int = 0
    wrong: int = 0
    slips: list[str] = field(default_factory=list)
    cues: list[str] = field(default_factory=list)
    corrections: int = 0
    expired: int = 0
    reason: str = ""
    closed_at: datetime | None = None


@dataclass
class Progress:
    """Where the whole attempt stands.

    Attributes:
        state: what the guide is doing.
        before: states to return to from a pause and from a stop that was asked about, latest last.
        cursor: index of the current step.
        steps: one entry a step, in the checklist's order.
        number, unit: the number that is being read back.
        name: the name that is being read back.
        reason: the reason that is being read back.
        digits_only: take the next number digit by digit only.
        failures: utterances not understood in a row.
        history: ids of closed steps, latest last.
        last_pass: the end was reached once; what is left open now is left out.
        token: the one wake-up call that counts; others are stale.
        tokens: how many wake-up calls were asked for.
        wakes_at: when the call that counts is due.
        wait_over: the timed wait ended during a pause.
        reminded: a reminder was given at this step.
        rate, loudness: steps of the voice.
    """

    steps: dict[str, StepProgress]
    state: State = State.READY
    before: list[State] = field(default_factory=list)
    cursor: int = 0
    number: Decimal | None = None
    unit: str = ""
    name: str = ""
    reason: str = ""
    digits_only: bool = False
    failures: int = 0
    history: list[str] = field(default_factory=list)
    last_pass: bool = False
    token: str = ""
    tokens: int = 0
    wakes_at: datetime | None = None
    wait_over: bool = False
    reminded: bool = False
    rate: int = 0
    loudness: int = 0
