"""The messages between a station and the desk, as JSON: typed, bounded, the same on loopback and over a network. Pure.

A station reports what is on its disk, line by line, and takes orders. What it reports is never a command; an order is
never an entry: the station's guide makes one of it, or refuses it.
"""

from typing import Annotated, Literal

from pydantic import BaseModel, ConfigDict, Field

LONGEST_WORDS = 1_000
"""Characters of a reason or a note, as of a typed line."""
LONGEST_LINE = 1 << 20
"""Bytes of one entry's line (`assistant.record.entry.LONGEST_LINE`)."""
MOST_LINES = 500
"""Lines of one report; more come in the next one."""
LONGEST_ORDER = 4_000
"""Characters of an order in a sentence."""
LONGEST_PAPER = 1 << 18
"""Characters of one paper."""

WAIT_S = 10.0
"""A station that waits for orders is answered after so long, also where there are none, seconds."""

Name = Annotated[str, Field(min_length=1, max_length=64, pattern=r"^[^\x00-\x1f\x7f]+$")]
Digest = Annotated[str, Field(pattern=r"^[0-9a-f]{64}$")]
OrderId = Annotated[str, Field(pattern=r"^[0-9a-f]{32}$")]
"""Made by the desk; an order that is sent twice is carried out once."""
Code = Annotated[str, Field(pattern=r"^([A-Za-z0-9]{4,64})?$")]
"""An instructor's code (`assistant.attempts.instructor_code`), or none."""
Words = Annotated[str, Field(max_length=LONGEST_WORDS)]
StepId = Annotated[str, Field(max_length=64)]


class _Message(BaseModel):
    model_config = ConfigDict(frozen=True, extra="forbid", strict=True)


# A station's reports.


class PlanStep(_Message):
    """A step of the checklist as it applies to this attempt.

    Attributes:
        id, say, part: as in the checklist.
        critical, gate: whether it is one.
        seen: an instructor has to see it.
        asks: who answers it; at *instructor* the learner waits for one.
        needed: the value that follows from the order, as people read it; empty where there is none.
        working: how it follows, a line each.
        seconds: the checklist's own estimate of the time that it takes; 0 where it has none.
    """

    id: StepId
    say: Annotated[str, Field(max_length=2_000)]
    part: Annotated[str, Field(max_length=200)] = ""
    critical: bool = False
    gate: bool = False
    seen: bool = False
    asks: Literal["learner", "instructor", "second person"] = "learner"
    needed: Annotated[str, Field(max_length=200)] = ""
    working: Annotated[tuple[Annotated[str, Field(max_length=500)], ...], Field(max_length=20)] = ()
    seconds: Annotated[int, Field(ge=0, le=86_400)] = 0


class Hello(_Message):
    """A station is there.

    Attributes:
        station: its name in the lab.
        busy: an attempt is going on.
        sound: it has a microphone and a loudspeaker.
        left: records of attempts that were begun here by the desk, are not sealed and not going on: digests of their
            first entries.
    """

    station: Name
    busy: bool = False
    sound: bool = False
    left: Annotated[tuple[Digest, ...], Field(max_length=100)] = ()


class Begun(_Message):
    """An attempt goes on at a station: a new one, or one that was taken up; said again whenever the desk is new to it.

    Attributes:
        station: where.
        attempt: digest of its first entry.
        file: name of its record's file, without a folder.
        plan: its steps.
        order: the order in a sentence.
        papers: the text of each paper that the first entry pins, by its digest.
    """

    station: Name
    attempt: Digest
    file: Annotated[str, Field(max_length=200, pattern=r"^[^./\\:\x00-\x1f\x7f][^/\\:\x00-\x1f\x7f]*\.jsonl$")]
    plan: Annotated[tuple[PlanStep, ...], Field(max_length=500)]
    order: Annotated[str, Field(max_length=LONGEST_ORDER)] = ""
    papers: Annotated[
        dict[Digest, dict[Annotated[str, Field(max_length=200)], Annotated[str, Field(max_length=LONGEST_PAPER)]]],
        Field(max_length=10),
    ] = {}


class Lines(_Message):
    """Entries of a record, as they are on disk.

    Attributes:
        attempt: digest of the first entry.
        first: sequence number of the first of these lines.
        lines: each a whole entry in canonical JSON, without its line feed.
    """

    attempt: Digest
    first: Annotated[int, Field(ge=1)]
    lines: Annotated[tuple[Annotated[str, Field(max_length=LONGEST_LINE)], ...], Field(max_length=MOST_LINES)]


class Have(_Message):
    """The desk's answer to `Begun` and `Lines`: how many entries of that record it has on its disk."""

    have: Annotated[int, Field(ge=0)]


class Answered(_Message):
    """What became of an order.

    Attributes:
        order: its id.
        why: why it was refused; empty where it was carried out.
    """

    order: OrderId
    why: Annotated[str, Field(max_length=500)] = ""


# The desk's orders.


class Start(_Message):
    """Begin an attempt.

    Attributes:
        checklist: name in the library.
        order: name in the library; empty for the checklist's own.
        order_text: an order's file, where it is not in the library; `order` is then what it is called.
        learner: a code, not a name.
        mode: as `checkoff run --mode`.
        typed: by keyboard alone, silently.
        short_waits: timed waits last a second (practice only).
        code: what an instructor types at the station to be one; empty for one that nobody knows.
    """

    kind: Literal["start"] = "start"
    id: OrderId
    checklist: Name
    order: Annotated[str, Field(pattern=r"^[A-Za-z0-9_-]{0,64}$")] = ""
    order_text: Annotated[str, Field(max_length=LONGEST_PAPER)] = ""
    learner: Annotated[str, Field(pattern=r"^[A-Za-z0-9_-]{1,32}$")]
    mode: Literal["practice", "check-off"]
    typed: bool = False
    short_waits: bool = False
    code: Code = ""


class TakeUp(_Message):
    """Resume an attempt that was left at this station; `code` as in `Start`."""

    kind: Literal["take up"] = "take up"
    id: OrderId
    attempt: Digest
    code: Code = ""


MarkName = Literal["seen", "not seen", "cue", "unsafe", "not applicable", "note", "overrule", "undo"]


class Mark(_Message):
    """The instructor marks something.

    Attributes:
        attempt: which one.
        mark: what is marked. *Seen*, *not seen*, *not applicable* and *overrule* are for a step; *cue* is for the step
            that is asked; *unsafe* holds the attempt; *undo* takes back an earlier mark.
        step: id of the step; empty where the mark is for the whole attempt.
        words: the reason or the note.
        undoes: id of the mark that is taken back.
    """

    kind: Literal["mark"] = "mark"
    id: OrderId
    attempt: Digest
    mark: MarkName
    step: StepId = ""
    words: Words = ""
    undoes: Annotated[str, Field(pattern=r"^([0-9a-f]{32})?$")] = ""


class Happen(_Message):
    """The instructor lets something happen at the bench, for teaching.

    Attributes:
        what: its kind.
        words: what the learner is to hear; empty for the guide's own sentence.
    """

    kind: Literal["happen"] = "happen"
    id: OrderId
    attempt: Digest
    what: Literal["alarm", "pain", "settings lost", "other"]
    words: Words = ""


class Direct(_Message):
    """The instructor directs the attempt: lets it rest or go on, ends it, or answers in the learner's place.

    Attributes:
        what: *say* gives `words` as the instructor's own line at the station.
    """

    kind: Literal["direct"] = "direct"
    id: OrderId
    attempt: Digest
    what: Literal["pause", "go on", "stop", "say"]
    words: Words = ""


Order = Annotated[Start | TakeUp | Mark | Happen | Direct, Field(discriminator="kind")]


class Orders(_Message):
    """What a station is to do, oldest first; each stays until it is answered."""

    orders: Annotated[tuple[Order, ...], Field(max_length=1_000)] = ()


class Greeting(_Message):
    """The desk's answer to `Hello`: which start of the desk it is. Another one has forgotten what goes on where."""

    desk: Digest


class Waiting(_Message):
    """A station asks for orders; answered with `Orders` as soon as there is one beside those that it has.

    Attributes:
        station: who asks.
        have: ids of orders that it has and has not answered.
    """

    station: Name
    have: Annotated[tuple[OrderId, ...], Field(max_length=1_000)] = ()


class AnsweredBy(_Message):
    """An answer, and who gives it."""

    station: Name
    answered: Answered


class Pair(_Message):
    """A station wants to be paired; `secret` is the part of the pairing code that only the desk knows."""

    station: Name
    secret: Annotated[str, Field(pattern=r"^[0-9a-f]{10}$")]


class Paired(_Message):
    """The station is paired; with this token it is known from now on."""

    token: Annotated[str, Field(min_length=20, max_length=100)]
