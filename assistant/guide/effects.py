"""What is to be done: the guide's only output. Imperative; the station performs them in order."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import datetime
from decimal import Decimal
from enum import StrEnum

from assistant.dosing.amount import Amount
from assistant.spoken.expect import Expect


class Tone(StrEnum):
    """What a sentence is for: the screen and a later sound may tell them apart."""

    NOTICE = "notice"
    STEP = "step"
    READ_BACK = "read-back"
    AGREES = "agrees"
    HOLD = "hold"
    CUE = "cue"
    UNCLEAR = "unclear"
    RESULT = "result"


class Outcome(StrEnum):
    """How an attempt ended; only a stopped one can be taken up again.

    Complete by own report is a check-off that an instructor has not seen as far as its checklist asks; stopped for
    cause is one that ended rightly before its end, for a fault that is there.
    """

    PASSED = "passed"
    OWN_REPORT = "complete by own report"
    STOPPED_FOR_CAUSE = "stopped for cause"
    NOT_PASSED = "not passed"
    NOT_COMPLETED = "not completed"
    STOPPED = "stopped"


@dataclass(frozen=True)
class StepLine:
    """The step that a sentence asks for, in its pieces: a screen may set each of them in its own way.

    Attributes:
        number, count: its place among all steps, from 1.
        critical: whether it is one.
        part: the part of the checklist that it belongs to.
        line: what is to be done, as the checklist words it.
    """

    number: int
    count: int
    critical: bool
    part: str
    line: str


@dataclass(frozen=True)
class Say:
    """Show `text` and speak `speech` (empty: show only).

    Attributes:
        text: the whole sentence.
        speech: as a voice says it.
        tone: what it is for.
        step: where it asks for a step, that step; `text` says the same in one line.
        number: where it reads a number back, that number.
        order: it is the order, as it was written.
    """

    text: str
    speech: str
    tone: Tone
    step: StepLine | None = None
    number: Amount | None = None
    order: bool = False


@dataclass(frozen=True)
class Listen:
    """Take input with this expectation.

    Attributes:
        expect: the frame.
        wanted: False while a timed wait runs: commands are heard, but nothing is asked for.
        pause_s: silence that ends an utterance, seconds; None as the ear is set.
        paused: the attempt rests until the learner goes on, or the instructor who holds it.
    """

    expect: Expect
    wanted: bool = True
    pause_s: Decimal | None = None
    paused: bool = False


@dataclass(frozen=True)
class Append:
    """Put this entry on disk, then tell the guide `Recorded`."""

    body: Mapping[str, object]


@dataclass(frozen=True)
class WakeAt:
    """Tell the guide `Woke(token)` at this time; stale tokens do no harm."""

    token: str
    at: datetime


@dataclass(frozen=True)
class Adjust:
    """Set the voice's rate, loudness and pitch, steps from -4 to 4."""

    rate: int
    loudness: int
    pitch: int


@dataclass(frozen=True)
class Cover:
    """Take what was shown so far off the screen: the next person must not read it."""


@dataclass(frozen=True)
class Finish:
    """End the attempt; `seal` is the record's last entry, None where the attempt can be resumed."""

    outcome: Outcome
    seal: Mapping[str, object] | None


Effect = Say | Listen | Append | WakeAt | Adjust | Cover | Finish
