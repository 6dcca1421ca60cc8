"""A guide that is lived with: every entry is put on disk at once, time passes when told."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import UTC, datetime, timedelta
from decimal import Decimal

from assistant.checklist.model import (
    Checklist,
    Expiry,
    NameAsked,
    NumberAsked,
    QuestionAsked,
    Step,
    WaitAsked,
)
from assistant.guide import (
    KEEP_SOUND,
    WITH_CODE,
    Append,
    Cover,
    Directed,
    Direction,
    EarLost,
    Effect,
    Event,
    Finish,
    Guide,
    GuideMisuseError,
    Happened,
    Happening,
    Heard,
    InputEnded,
    InstructorCame,
    Listen,
    Mark,
    Marked,
    Mode,
    Opened,
    Outcome,
    Papers,
    Person,
    Progress,
    Recorded,
    Resumed,
    Say,
    State,
    Status,
    Tone,
    Typed,
    WakeAt,
    Woke,
)
from assistant.guide.events import FromDesk
from assistant.orders.fault import NOTHING_WRONG, Truth
from assistant.orders.key import KeyEntry
from assistant.spoken import ENGLISH

__all__ = [
    "CHECKLIST",
    "KEEP_SOUND",
    "KEY",
    "SMOOTH",
    "START",
    "WITH_CODE",
    "Append",
    "Direction",
    "EarLost",
    "Effect",
    "Event",
    "FromDesk",
    "Guide",
    "Happening",
    "Heard",
    "InputEnded",
    "InstructorCame",
    "Lived",
    "Mark",
    "Marked",
    "Mode",
    "Opened",
    "Outcome",
    "Person",
    "Progress",
    "Recorded",
    "Resumed",
    "Say",
    "State",
    "Status",
    "Tone",
    "Typed",
    "Woke",
    "again",
    "begin",
    "guide",
    "is_refused",
    "reach",
]
"""The guide as tests take hold of it: what it is made of stands here, and in few other places."""

START = datetime(2031, 5, 6, 9, 0, tzinfo=UTC)

CHECKLIST = Checklist(
    name="small",
    title="A small line",
    version="1",
    purpose="Set up a line that exists for tests only.",
    cautions=("Training only.",),
    order="none",
    digest="0" * 64,
    steps=(
        Step(
            id="hands",
            part="Prepare",
            say="Clean your hands.",
            more="All surfaces, until dry.",
            why="Hands carry germs.",
            hint="Think of the five moments.",
            critical=True,
        ),
        Step(id="gloves", part="Prepare", say="Put on gloves.", more="Of your size."),
        Step(
            id="fluid",
            part="Prepare",
            say="Read the name of the fluid from the label.",
            expect=NameAsked(kind="name", key="primary.fluid"),
            critical=True,
        ),
        Step(
            id="scrub",
            part="Prepare",
            say="Scrub the hub for fifteen seconds.",
            expect=WaitAsked(kind="wait", seconds=15),
        ),
        Step(
            id="rate",
            part="Set",
            say="Enter the rate and tell me the rate.",
            expect=NumberAsked(kind="number", unit="mL/h", key="primary.rate"),
            critical=True,
        ),
        Step(
            id="volume",
            part="Set",
            say="Enter the volume to be infused and tell me.",
            expect=NumberAsked(kind="number", unit="mL", key="primary.vtbi"),
            critical=True,
        ),
        Step(id="gate", part="Connect", say="Look over every setting.", gate=True, critical=True),
        Step(
            id="start",
            part="Connect",
            say="Start the infusion.",
            critical=True,
            after=("gloves",),
            expires=Expiry(after_s=180, reopen=("rate", "volume"), say="The pump has forgotten its settings."),
        ),
        Step(
            id="drops",
            part="Check",
            say="Do you see drops?",
            expect=QuestionAsked(kind="question", right="yes"),
            if_wrong="Look for a closed clamp.",
            critical=True,
        ),
        Step(id="note", part="Check", say="Document."),
    ),
)

LABELS = ("0.9 % sodium chloride", "5 % dextrose in water", "lactated Ringer's solution")

KEY: Mapping[str, KeyEntry] = {
    "primary.fluid": KeyEntry("primary.fluid", "lactated Ringer's solution", None, choices=LABELS),
    "primary.rate": KeyEntry("primary.rate", Decimal("83.3"), "mL/h", ("1,000 mL over 12 h is 83.3 mL/h.",), "rate"),
    "primary.vtbi": KeyEntry("primary.vtbi", Decimal(950), "mL", ("1,000 mL less 50 mL is 950 mL.",), "vtbi"),
}

SMOOTH = (
    "done",
    "done",
    "lactated ringer's",
    "done",
    15,
    "eighty three point three",
    "yes",
    "950 mL",
    "yes",
    "done",
    "done",
    "yes",
    "done",
)
"""Answers, and seconds of waiting, that go through `CHECKLIST` without a slip."""


@dataclass
class Lived:
    """One attempt in a test.

    Attributes:
        entries: bodies as they were put on disk.
        says: every sentence, in order.
        listen: what is listened for.
        wake: the last wake-up call asked for.
        outcome: how it ended, or None.
        sealed: the seal's body, or None.
        covered: how often the screen was covered.
    """

    guide: Guide
    at: datetime = START
    entries: list[dict[str, object]] = field(default_factory=list)
    says: list[Say] = field(default_factory=list)
    listen: Listen | None = None
    wake: WakeAt | None = None
    outcome: Outcome | None = None
    sealed: Mapping[str, object] | None = None
    covered: int = 0

    def give(self, event: Event) -> list[Effect]:
        """Give one event, put its entry on disk; return what followed the entry."""
        first = self.guide.receive(event)
        if not first:
            return []
        (append,) = first
        assert isinstance(append, Append)
        self.write(append)
        effects = self.guide.receive(Recorded(len(self.entries), "d" * 64))
        for effect in effects:
            match effect:
                case Say():
                    self.says.append(effect)
                case Listen():
                    self.listen = effect
                case WakeAt():
                    self.wake = effect
                case Cover():
                    self.covered += 1
                case Finish(outcome, seal):
                    self.outcome, self.sealed = outcome, seal
        return effects

    def write(self, append: Append) -> None:
        """Put an entry on disk; the guide has not been told yet."""
        self.entries.append(dict(append.body) | {"sequence": len(self.entries) + 1})

    def type(self, *words: str) -> None:
        """Type lines, a second apart."""
        for line in words:
            self.at += timedelta(seconds=1)
            self.give(Typed(self.at, line))

    def hear(self, words: str, **more: object) -> list[Effect]:
        """Hear an utterance."""
        self.at += timedelta(seconds=1)
        return self.give(Heard(self.at, words, **more))  # type: ignore[arg-type]

    def mark(self, mark: Mark, step: str = "", **more: object) -> list[Effect]:
        """Mark something at the desk; `more` as in `Marked`."""
        self.at += timedelta(seconds=1)
        order = f"{len(self.entries):032x}"
        return self.give(Marked(self.at, mark, step, **({"order": order} | more)))  # type: ignore[arg-type]

    def happen(self, what: Happening, words: str = "") -> list[Effect]:
        """Let something happen at the bench."""
        self.at += timedelta(seconds=1)
        return self.give(Happened(self.at, what, words, f"{len(self.entries):032x}"))

    def direct(self, what: Direction) -> list[Effect]:
        """Direct the attempt from the desk."""
        self.at += timedelta(seconds=1)
        return self.give(Directed(self.at, what, f"{len(self.entries):032x}"))

    def wait(self, seconds: int) -> None:
        """Let time pass; a wake-up call that is due is given at its time."""
        until = self.at + timedelta(seconds=seconds)
        while self.wake is not None and self.wake.at <= until:
            wake, self.wake = self.wake, None
            self.at = max(self.at, wake.at)
            self.give(Woke(self.at, wake.token))
        self.at = until

    def do(self, script: tuple[str | int, ...]) -> None:
        """Answers are typed, numbers are seconds of waiting."""
        for item in script:
            if isinstance(item, int):
                self.wait(item)
            else:
                self.type(item)

    @property
    def state(self) -> State:
        return self.guide.progress.state

    @property
    def step(self) -> str:
        return self.checklist.steps[self.guide.progress.cursor].id

    @property
    def checklist(self) -> Checklist:
        return self.guide.papers.checklist

    def texts(self, tone: Tone | None = None) -> str:
        """Everything said so far, or all of one tone."""
        return "\n".join(say.text for say in self.says if tone in (None, say.tone))


def guide(
    mode: Mode = Mode.PRACTICE,
    checklist: Checklist = CHECKLIST,
    key: Mapping[str, KeyEntry] = KEY,
    order: str = "The order.",
    truth: Truth = NOTHING_WRONG,
    **pins: str,
) -> Guide:
    """A guide that has lived through nothing yet: the one place where tests of the guide build one."""
    return Guide(Papers(checklist, order, key, ENGLISH, truth), mode, {"mode": mode.value, **pins})


def is_refused(guide: Guide, event: Event) -> bool:
    """Whether an event is not taken now."""
    try:
        return guide.receive(event) == []
    except GuideMisuseError:
        return True


def begin(mode: Mode = Mode.PRACTICE, checklist: Checklist = CHECKLIST, **pins: str) -> Lived:
    """An opened attempt."""
    lived = Lived(guide(mode, checklist, **pins))
    lived.give(Opened(lived.at))
    return lived


def again(lived: Lived) -> Guide:
    """A fresh guide with the same papers, mode and pins."""
    pins = {name: value for name, value in lived.entries[0].items() if isinstance(value, str)}
    return Guide(lived.guide.papers, Mode(pins["mode"]), pins)


def reach(state: State) -> Lived:
    """An attempt in this state."""
    mode = Mode.CHECK_OFF if state is State.OFFERING_CUE else Mode.PRACTICE
    lived = begin(mode, sound=KEEP_SOUND) if state is State.ASKING_CONSENT else begin(mode)
    ways: dict[State, tuple[str | int, ...]] = {
        State.ASKING_CONSENT: (),
        State.ASKING: (),
        State.WAITING: SMOOTH[:4],
        State.READING_BACK: SMOOTH[:6],
        State.GIVING_REASON: ("done", "not applicable"),
        State.OFFERING_CUE: ("i need help",),
        State.WITH_INSTRUCTOR: ("instructor here",),
        State.PAUSED: ("pause",),
        State.HELD: (),
        State.STOPPING: ("stop",),
        State.FINISHED: SMOOTH,
    }
    lived.do(ways[state])
    if state is State.HELD:
        lived.mark(Mark.UNSAFE, words="the line is open")
    assert lived.state is state
    return lived
