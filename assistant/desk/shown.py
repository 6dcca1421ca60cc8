"""What the learner's display shows, worked out from what the station gives a screen. Pure.

One thing at a time is in the middle: a step, a number that is read back, a hold, the order, the result, or what was
said. What was said beside it since the learner's last answer stands next to it, in smaller letters.
"""

from dataclasses import dataclass, replace
from enum import StrEnum

from assistant.dosing.amount import Amount
from assistant.guide.effects import Say, StepLine, Tone
from assistant.guide.events import EarBack, EarLost, Event, Heard, NotUnderstood, Opened, Typed, VoiceLost
from assistant.text import shown

LONGEST_ECHO = 32
"""Characters of the learner's own words that are shown back."""


class Kind(StrEnum):
    """What is in the middle."""

    IDLE = "idle"
    STARTING = "starting"
    STEP = "step"
    NUMBER = "number"
    HOLD = "hold"
    CUE = "cue"
    ORDER = "order"
    TALK = "talk"
    RESULT = "result"
    COVERED = "covered"


class Whose(StrEnum):
    """Whose turn it is, or why it is nobody's."""

    IDLE = "idle"
    STARTING = "starting"
    YOURS = "yours"
    LISTENING = "listening"
    SPEAKING = "speaking"
    WAIT = "wait"
    PAUSED = "paused"
    DEAF = "deaf"
    OVER = "over"


_STAYS = frozenset({Kind.HOLD, Kind.CUE})
"""What a step that is asked again in the same breath does not push out of the middle."""
_GROWS = frozenset({Kind.HOLD, Kind.CUE, Kind.TALK, Kind.RESULT})
"""What further sentences of its kind are added to."""


@dataclass(frozen=True)
class Middle:
    """The one thing in the middle.

    Attributes:
        kind: what it is.
        lines: its sentences; the first is the weightiest.
        number: where it is a number that is read back.
    """

    kind: Kind
    lines: tuple[str, ...] = ()
    number: Amount | None = None


@dataclass(frozen=True)
class Shown:
    """Everything on the display. Each method gives what is shown after something happened.

    Attributes:
        place: the step that was asked for last.
        asked: numbers of all steps that were asked for so far.
        middle: the one thing in the middle.
        asides: what was said beside it since the last answer.
        said: the learner's last words.
        seconds, whole_s: what is left of a timed wait, and how long it is, seconds; 0 where none runs.
        speaks, listens, deaf, paused, wanted, is_over: what whose turn it is depends on.
        covers: how often the display was cleared.
        events: how many events are on record: what is typed belongs to the question after the last of them.
        short_head: of the record, once the attempt is over.
        course: a picture of the infusion (SVG), which may be looked at once the attempt is over.
        answered, opening, is_set: since the last event nothing was said; it was the opening; the middle was set.
    """

    place: StepLine | None = None
    asked: frozenset[int] = frozenset()
    middle: Middle = Middle(Kind.STARTING)
    asides: tuple[str, ...] = ()
    said: str = ""
    seconds: int = 0
    whole_s: int = 0
    speaks: bool = False
    listens: bool = False
    deaf: bool = False
    paused: bool = False
    wanted: bool = False
    is_over: bool = False
    covers: int = 0
    events: int = 0
    short_head: str = ""
    course: str = ""
    answered: bool = False
    opening: bool = False
    is_set: bool = False

    @property
    def whose(self) -> Whose:
        """Whose turn it is: the first of these that holds."""
        order = (
            (self.middle.kind is Kind.IDLE, Whose.IDLE),
            (self.is_over, Whose.OVER),
            (self.paused, Whose.PAUSED),
            (self.speaks, Whose.SPEAKING),
            (self.seconds > 0, Whose.WAIT),
            (self.deaf and self.wanted, Whose.DEAF),
            (self.listens, Whose.LISTENING),
            (self.wanted, Whose.YOURS),
        )
        return next((whose for holds, whose in order if holds), Whose.STARTING)

    @property
    def beneath(self) -> str:
        """The step that is open while something else is in the middle; empty where there is none."""
        has_room = self.middle.kind in (Kind.HOLD, Kind.CUE, Kind.ORDER, Kind.TALK)
        return self.place.line if self.place is not None and has_room else ""

    def took(self, event: Event) -> "Shown":
        """An event is on record."""
        now = replace(self, answered=True, opening=isinstance(event, Opened), listens=False, events=self.events + 1)
        match event:
            case Heard(words=words) | Typed(words=words):
                return replace(now, said=shown(words, LONGEST_ECHO))
            case NotUnderstood():
                return replace(now, said="(not understood)")
            case EarLost():
                return replace(now, deaf=True)
            case EarBack():
                return replace(now, deaf=False)
            case VoiceLost():
                return replace(now, speaks=False)
        return now

    def told(self, say: Say) -> "Shown":
        """The assistant says something."""
        now = replace(self, answered=False, asides=(), is_set=False) if self.answered else self
        text = shown(say.text)
        if say.step is not None:
            return now._asks(say.step)
        if say.number is not None:
            return now._sets(Middle(Kind.NUMBER, (text,), say.number))
        if say.order:
            return now._sets(Middle(Kind.ORDER, (text,)))
        match say.tone:
            case Tone.HOLD:
                return now._adds(Kind.HOLD, text)
            case Tone.CUE:
                return now._adds(Kind.CUE, text)
            case Tone.RESULT:
                return now._adds(Kind.RESULT, text)
            case Tone.STEP | Tone.READ_BACK:
                return replace(now._sets(Middle(Kind.TALK, (text,))), asides=() if now.opening else now.asides)
            case Tone.NOTICE if not now.is_set or now.middle.kind is Kind.TALK:
                return now._adds(Kind.TALK, text)
            case _:
                return replace(now, asides=(*now.asides, text))

    def _asks(self, step: StepLine) -> "Shown":
        now = replace(self, place=step, asked=self.asked | {step.number}, is_set=True)
        if self.is_set and self.middle.kind in _STAYS:
            return now
        before = self.middle.lines if self.is_set and self.middle.kind is Kind.TALK else ()
        asides = () if self.opening else (*self.asides, *before)
        return replace(now, middle=Middle(Kind.STEP, (shown(step.line),)), asides=asides)

    def _sets(self, middle: Middle) -> "Shown":
        return replace(self, middle=middle, is_set=True)

    def _adds(self, kind: Kind, text: str) -> "Shown":
        goes_on = self.is_set and self.middle.kind is kind and kind in _GROWS
        return self._sets(Middle(kind, (*self.middle.lines, text) if goes_on else (text,)))

    def asks(self, *, paused: bool) -> "Shown":
        """An answer is wanted."""
        return replace(self, wanted=True, paused=paused, seconds=0, whole_s=0)

    def hears(self) -> "Shown":
        """The microphone is open."""
        return replace(self, listens=True, deaf=False)

    def sounds(self, *, sounds: bool) -> "Shown":
        """The voice begins or ends."""
        return replace(self, speaks=sounds, listens=self.listens and not sounds)

    def counts(self, seconds: int) -> "Shown":
        """So many seconds of a timed wait are left."""
        left = max(0, seconds)
        return replace(self, seconds=left, whole_s=max(self.whole_s, left), paused=False)

    def covered(self) -> "Shown":
        """Nothing that was shown so far may be read any more."""
        return replace(self, middle=Middle(Kind.COVERED), asides=(), said="", covers=self.covers + 1, is_set=False)

    def ended(self, short_head: str, course: str = "") -> "Shown":
        """The attempt is over."""
        return replace(self, is_over=True, short_head=short_head, course=course)
