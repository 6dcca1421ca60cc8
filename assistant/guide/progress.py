"""Where an attempt stands: plain state, no rules."""

import copy
from dataclasses import dataclass, field
from datetime import datetime
from decimal import Decimal
from enum import StrEnum

from assistant.dosing import Amount


class Mode(StrEnum):
    """The two ways to go through a checklist."""

    PRACTICE = "practice"
    CHECK_OFF = "check-off"


class Consent(StrEnum):
    """Whether the learner's sound may be kept."""

    NOT_ASKED = "not asked"
    GIVEN = "given"
    REFUSED = "refused"


class State(StrEnum):
    """What the guide is doing."""

    READY = "ready"
    ASKING_CONSENT = "asking for consent"
    ASKING = "asking"
    READING_BACK = "reading back"
    GIVING_REASON = "giving a reason"
    WAITING = "waiting"
    WITH_INSTRUCTOR = "with the instructor"
    PAUSED = "paused"
    STOPPING = "stopping"
    FINISHED = "finished"


class Person(StrEnum):
    """Whose answer it is."""

    LEARNER = "learner"
    SECOND = "second person"
    INSTRUCTOR = "instructor"
    INSTRUCTOR_UNPROVEN = "instructor, without a code"


class Purpose(StrEnum):
    """What free words are for."""

    NOTE = "note"
    NOT_APPLICABLE = "not applicable"
    OVERRULED = "overruled"


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
        opened: it was asked at least once.
        first, final: first and final answer as shown, with unit; empty where there was none.
        first_amount, final_amount: the same as amounts; None where no number was kept.
        tries: answers that were kept and compared, or a question's answers.
        wrong: how many of them were not right.
        slips: kinds of slip found, in order.
        cues: names of the cues given, in order.
        corrections: how often the learner corrected a closed answer by own will.
        expired: how often the settings had to be entered again after waiting too long.
        late: a later step had been closed already when it was closed first.
        reason: why it does not apply.
        by: who answered or set it aside.
        passed_over: why it did not apply when that was last told in an entry.
        brought_back: it applied after all, once it had been told that it does not.
        closed_at: when it was last closed.
    """

    status: Status = Status.OPEN
    opened: bool = False
    first: str = ""
    final: str = ""
    first_amount: Amount | None = None
    final_amount: Amount | None = None
    tries: int = 0
    wrong: int = 0
    slips: list[str] = field(default_factory=list)
    cues: list[str] = field(default_factory=list)
    corrections: int = 0
    expired: int = 0
    late: bool = False
    reason: str = ""
    by: Person = Person.LEARNER
    passed_over: str = ""
    brought_back: bool = False
    closed_at: datetime | None = None

    def __deepcopy__(self, _memo: object) -> "StepProgress":
        """A copy that shares nothing that changes: each event copies every step, and few fields are lists."""
        other = copy.copy(self)
        other.slips, other.cues = list(self.slips), list(self.cues)
        return other


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
        words: the note or the reason that is being read back.
        purpose: what the words are for.
        speaker: whose words are taken now.
        digits_only: take the next number digit by digit only.
        failures: utterances not understood in a row.
        history: ids of closed steps, latest last.
        last_pass: the end was reached once; what is left open now is left out.
        token: the one wake-up call that counts; others are stale.
        tokens: how many wake-up calls were asked for.
        wakes_at: when the call that counts is due.
        wait_over: the timed wait ended during a pause.
        reminded: a reminder was given at this step.
        told: how many breaths of the detail were told at this step.
        rate, loudness, pitch: steps of the voice.
        consent: whether the learner's sound may be kept.
        closed_early: the attempt was closed before its end, as not completed.
    """

    steps: dict[str, StepProgress]
    state: State = State.READY
    before: list[State] = field(default_factory=list)
    cursor: int = 0
    number: Decimal | None = None
    unit: str = ""
    name: str = ""
    words: str = ""
    purpose: Purpose = Purpose.NOTE
    speaker: Person = Person.LEARNER
    digits_only: bool = False
    failures: int = 0
    history: list[str] = field(default_factory=list)
    last_pass: bool = False
    token: str = ""
    tokens: int = 0
    wakes_at: datetime | None = None
    wait_over: bool = False
    reminded: bool = False
    told: int = 0
    rate: int = 0
    loudness: int = 0
    pitch: int = 0
    consent: Consent = Consent.NOT_ASKED
    closed_early: bool = False
