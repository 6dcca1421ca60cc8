"""How far an attempt has come: plain state, no rules."""

from dataclasses import dataclass, field
from datetime import datetime
from decimal import Decimal
from enum import StrEnum

from assistant.dosing import Amount
from assistant.guide.events import Mark
from assistant.spoken.meaning import Answer


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
    OFFERING_CUE = "offering a cue"
    WITH_INSTRUCTOR = "with the instructor"
    PAUSED = "paused"
    HELD = "held"
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


class Wake(StrEnum):
    """Why the guide asked to be woken."""

    REMINDER = "reminder"
    SETTINGS = "settings"
    WAIT = "wait"


@dataclass(frozen=True)
class WakeUp:
    """The one wake-up call that counts; a call with another token is stale."""

    reason: Wake
    token: str
    at: datetime


@dataclass(frozen=True)
class NumberRead:
    """A number that is being read back; the unit is the one that was said, or the one asked for."""

    value: Decimal
    unit: str


@dataclass(frozen=True)
class NameRead:
    """A name from a label that is being read back, as the order spells it."""

    name: str


@dataclass(frozen=True)
class WordsRead:
    """A note, or the reason why a step is set aside, that is being read back."""

    words: str


@dataclass(frozen=True)
class AnswerRead:
    """An answer that was heard with doubt twice and is read back, as a number is.

    Attributes:
        words: as they were heard.
        answer: what they mean.
    """

    words: str
    answer: Answer


ReadBack = NumberRead | NameRead | WordsRead | AnswerRead


FINDING = "a finding"
"""What an honest answer is called that tells of a fault."""


@dataclass(frozen=True)
class Found:
    """What the learner found: a report of trouble, or a fault that an honest answer told of.

    Attributes:
        step: the step at which it was told.
        kind: a kind of `assistant.spoken.meaning.Trouble`, or `FINDING`.
        words: the learner's own.
    """

    step: str
    kind: str
    words: str


@dataclass(frozen=True)
class Sighting:
    """What the instructor saw of a closed step, or that it was not done.

    Attributes:
        by: who marked it, as a result names it.
        seen: it was seen done.
        order: id of the mark; empty where it was said at the station.
    """

    by: str
    seen: bool
    order: str = ""


@dataclass(frozen=True)
class SetAside:
    """A step whose verdict the instructor set aside from the desk.

    Attributes:
        reason: why.
        by: the instructor.
        order: id of the mark.
        was_by: who had answered the step before.
    """

    reason: str
    by: Person
    order: str
    was_by: Person


@dataclass(frozen=True)
class MarkMade:
    """A mark from the desk that was taken.

    Attributes:
        mark: what was marked.
        step: id of the step, empty where it is for the attempt.
        words: the reason, or the note.
        order: its id.
        answers: it was the answer to an observation that was asked.
        holds: the attempt is held for it.
        undone: it was taken back.
    """

    mark: Mark
    step: str
    words: str
    order: str
    answers: bool = False
    holds: bool = False
    undone: bool = False


class Status(StrEnum):
    """How far one step has come."""

    OPEN = "open"
    CLOSED = "closed"
    NOT_APPLICABLE = "not applicable"
    LEFT_OUT = "left out"


@dataclass
class StepProgress:
    """What happened at one step.

    Attributes:
        status: how far it has come.
        opened: it was asked at least once.
        first, final: first and final answer as shown, with unit; empty where there was none.
        first_amount, final_amount: the same as amounts; None where no number was kept.
        tries: answers that were kept and compared, or a question's answers.
        wrong: how many of them were not right, and were held.
        found: how often an honest answer told of a fault; it costs nothing.
        fault: a fault was found that has not been put right yet.
        reopened: how often it was asked again because of a fault or of trouble, at no cost.
        slips: kinds of slip found, in order.
        cues: names of the cues given, in order.
        corrections: how often the learner corrected a closed answer by own will.
        expired: how often the settings had to be entered again after waiting too long.
        late: a later step had been closed already when it was closed first.
        reason: why it does not apply.
        by: who answered or set it aside.
        passed_over: why it did not apply, as the last entry about it says.
        brought_back: it applied after all, though an entry says that it does not.
        closed_at: when it was last closed.
        took_s: whole seconds from its line to the answer that closed it last; None where it never was.
        taken_back: its "done" was proved false by what was found later.
        sightings: what the instructor marked of it since it was closed, latest last.
        set_aside: its verdict was set aside from the desk; None where it was not.
    """

    status: Status = Status.OPEN
    opened: bool = False
    first: str = ""
    final: str = ""
    first_amount: Amount | None = None
    final_amount: Amount | None = None
    tries: int = 0
    wrong: int = 0
    found: int = 0
    fault: bool = False
    reopened: int = 0
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
    took_s: int | None = None
    taken_back: bool = False
    sightings: tuple[Sighting, ...] = ()
    set_aside: SetAside | None = None

    @property
    def seen_by(self) -> str:
        """Who saw it done, by the latest mark; empty where nobody did."""
        return self.sightings[-1].by if self.sightings and self.sightings[-1].seen else ""

    @property
    def marked_not_seen(self) -> bool:
        """The instructor's latest mark says that it was not done."""
        return bool(self.sightings) and not self.sightings[-1].seen


@dataclass
class Progress:
    """How far the whole attempt has come.

    Attributes:
        state: what the guide is doing.
        before: states to return to from a pause and from a stop that was asked about, latest last.
        cursor: index of the current step.
        steps: one entry a step, in the checklist's order.
        reading_back: what is being read back; None where nothing is.
        purpose: what free words are for.
        speaker: whose words are taken now.
        digits_only: take the next number digit by digit only.
        failures: utterances not understood in a row.
        history: ids of closed steps, latest last.
        last_pass: the end was reached once; what is left open now is left out.
        wake_up: the wake-up call that counts; None where none does.
        tokens: how many wake-up calls were asked for.
        wait_over: the timed wait ended during a pause.
        reminded: a reminder was given at this step.
        doubted: the last answer to this step was heard with doubt, and asked once more.
        breaths: how many breaths of the detail have been said at this step.
        rate, loudness, pitch: steps of the voice.
        consent: whether the learner's sound may be kept.
        closed_early: the attempt was closed before its end, as not completed.
        troubles: what the learner found, in order.
        mending: the learner reported a mistake, and is on the way to mend it: that answer costs nothing.
        cue_agreed: the learner knows what a cue is, and wanted one; it is not asked again.
        options_given: what can be said was told in full, once.
        asked_at: when the current step was asked first.
        found: faults that are laid out and were found, by key, with the id of the step.
        missed: those that an answer overlooked, likewise.
        put_right: keys of those that are so no longer.
        told_otherwise: keys of those at whose step another fault was told of than the one that is laid out.
        not_laid_out: findings of what is not laid out: id of the step, answer. For the instructor to judge.
        stopped_for: keys of the faults for which the learner stopped.
        orders: ids of the orders from the desk that were dealt with.
        marks: marks from the desk that were taken, in order.
    """

    steps: dict[str, StepProgress]
    state: State = State.READY
    before: list[State] = field(default_factory=list)
    cursor: int = 0
    reading_back: ReadBack | None = None
    purpose: Purpose = Purpose.NOTE
    speaker: Person = Person.LEARNER
    digits_only: bool = False
    failures: int = 0
    history: list[str] = field(default_factory=list)
    last_pass: bool = False
    wake_up: WakeUp | None = None
    tokens: int = 0
    wait_over: bool = False
    reminded: bool = False
    breaths: int = 0
    doubted: bool = False
    rate: int = 0
    loudness: int = 0
    pitch: int = 0
    consent: Consent = Consent.NOT_ASKED
    closed_early: bool = False
    troubles: list[Found] = field(default_factory=list)
    mending: bool = False
    cue_agreed: bool = False
    options_given: bool = False
    asked_at: datetime | None = None
    found: dict[str, str] = field(default_factory=dict)
    missed: dict[str, str] = field(default_factory=dict)
    put_right: list[str] = field(default_factory=list)
    told_otherwise: list[str] = field(default_factory=list)
    not_laid_out: list[tuple[str, str]] = field(default_factory=list)
    stopped_for: tuple[str, ...] = ()
    orders: list[str] = field(default_factory=list)
    marks: list[MarkMade] = field(default_factory=list)

    @property
    def standing_marks(self) -> tuple[MarkMade, ...]:
        """The marks that were not taken back."""
        return tuple(mark for mark in self.marks if not mark.undone)
