"""One event being worked on: what it amounts to, the draft of the progress, what is said, what the entry will say."""

from dataclasses import dataclass, field, replace
from datetime import datetime
from enum import StrEnum

from assistant.checklist.model import Step
from assistant.dosing.amount import Amount
from assistant.guide.effects import Adjust, Cover, Effect, Outcome, Say, StepLine, Tone, WakeAt
from assistant.guide.events import (
    LONGEST_WORDS,
    Directed,
    Direction,
    EarBack,
    EarLost,
    Event,
    FromDesk,
    Happened,
    Heard,
    InputEnded,
    InstructorCame,
    Mark,
    Marked,
    NotUnderstood,
    Opened,
    Recorded,
    Resumed,
    Typed,
    VoiceLost,
    Woke,
)
from assistant.guide.papers import Papers
from assistant.guide.progress import Mode, Progress, State, StepProgress, Wake, WakeUp
from assistant.orders.fault import Fault
from assistant.spoken.expect import Expect
from assistant.spoken.language import Sentences
from assistant.spoken.meaning import Ambiguous, Answer, Command, Kind, Meaning, NoMatch, Reason, Surety


class Input(StrEnum):
    """What an event amounts to in the present state: the column by which the transition table is read."""

    OPENED = "opened"
    RESUMED = "resumed"
    YES = "yes"
    NO = "no"
    DONE = "done"
    ACKNOWLEDGED = "acknowledged"
    DOUBTFUL = "heard with doubt"
    LIKELY = "understood with doubt"
    TROUBLE = "trouble"
    NUMBER = "a number"
    NAME = "a name"
    TEXT = "free words"
    CHOICE = "a choice"
    AMBIGUOUS = "two meanings"
    UNCLEAR = "not understood"
    DROPPED = "dropped sound"
    WOKE = "time is up"
    EAR_LOST = "microphone lost"
    EAR_BACK = "microphone back"
    VOICE_LOST = "voice lost"
    INPUT_ENDED = "input ended"
    MARKED = "marked"
    MARKED_SEEN = "marked as seen or not"
    MARKED_ASIDE = "set aside at the desk"
    MARKED_UNSAFE = "marked as unsafe"
    UNDONE = "a mark taken back"
    HAPPENED = "happened"
    DIRECTED_PAUSE = "pause from the desk"
    DIRECTED_GO_ON = "go on from the desk"
    DIRECTED_STOP = "stop from the desk"
    AGAIN = Command.AGAIN.value
    MORE = Command.MORE.value
    BACK = Command.BACK.value
    WHERE = Command.WHERE.value
    ORDER = Command.ORDER.value
    SLOWER = Command.SLOWER.value
    FASTER = Command.FASTER.value
    LOUDER = Command.LOUDER.value
    SOFTER = Command.SOFTER.value
    HIGHER = Command.HIGHER.value
    DEEPER = Command.DEEPER.value
    SPELL = Command.SPELL.value
    PAUSE = Command.PAUSE.value
    GO_ON = Command.GO_ON.value
    CORRECT = Command.CORRECT.value
    HELP = Command.HELP.value
    CALL = Command.CALL.value
    NOT_APPLICABLE = Command.NOT_APPLICABLE.value
    INSTRUCTOR = Command.INSTRUCTOR.value
    STOP = Command.STOP.value
    CLOSE = Command.CLOSE.value
    HOLD_ON = Command.HOLD_ON.value
    OPTIONS = Command.OPTIONS.value


_TAKEN_AT_ONCE = frozenset({Input.YES, Input.NO, Input.DONE, Input.CHOICE})
"""What no read-back follows: heard with doubt, it is asked once more."""


@dataclass(frozen=True)
class Terms:
    """How an attempt is taken; fixed for its whole length.

    Attributes:
        mode: practice or check-off.
        asks_consent: sound is to be kept, if the learner agrees.
        instructor_code: the instructor has a code, and speaks only with it.
    """

    mode: Mode
    asks_consent: bool = False
    instructor_code: bool = False

    @property
    def practice(self) -> bool:
        """Whether answers and their working may be given away."""
        return self.mode is Mode.PRACTICE


@dataclass
class Turn:
    """What one event does; it becomes true only when its entry is on disk.

    Attributes:
        papers: what the attempt is made from.
        terms: how it is taken.
        event: what happened.
        meaning: what its words mean, if it had words.
        draft: a copy of the progress, to be changed.
        said: sentences and settings, in order.
        wakes: wake-up calls.
        note: what the entry says beside the event itself.
        outcome: set where the attempt ends.
    """

    papers: Papers
    terms: Terms
    event: Event
    meaning: Meaning | None
    draft: Progress
    said: list[Effect] = field(default_factory=list)
    wakes: list[WakeAt] = field(default_factory=list)
    note: dict[str, object] = field(default_factory=dict)
    outcome: Outcome | None = None

    @property
    def at(self) -> datetime:
        """The event's time."""
        if isinstance(self.event, Recorded):
            raise TypeError("an acknowledgement has no turn of its own")
        return self.event.at

    @property
    def words(self) -> str:
        """What was said or typed, as far as an entry keeps it; "" where the event has no words."""
        return self.event.words[:LONGEST_WORDS] if isinstance(self.event, Heard | Typed) else ""

    @property
    def steps(self) -> tuple[Step, ...]:
        """Every step of the checklist."""
        return self.papers.checklist.steps

    @property
    def step(self) -> Step:
        """The current step."""
        return self.steps[self.draft.cursor]

    @property
    def done(self) -> StepProgress:
        """What happened at the current step, to be changed."""
        return self.draft.steps[self.step.id]

    @property
    def faults(self) -> tuple[Fault, ...]:
        """The faults that the current step looks at, and that have not been put right."""
        return tuple(
            fault for fault in self.papers.faults.get(self.step.id, ()) if fault.key not in self.draft.put_right
        )

    @property
    def sentences(self) -> Sentences:
        """What the guide can say."""
        return self.papers.language.sentences

    def aloud(self, text: str) -> str:
        """A text as a voice says it, with the checklist's own short forms in full."""
        return self.papers.language.speech(text, self.papers.checklist.abbreviations)

    def say(
        self,
        text: str,
        tone: Tone,
        spoken_text: str | None = None,
        step: StepLine | None = None,
        *,
        number: Amount | None = None,
        order: bool = False,
    ) -> None:
        """Show `text` and speak it, or `spoken_text` in its place ("" speaks nothing); the rest as in `Say`."""
        words = self.aloud(text) if spoken_text is None else spoken_text
        worded = self.papers.language.worded
        worded_step = step and replace(step, line=worded(step.line))
        self.said.append(Say(worded(text), worded(words), tone, worded_step, number, order))

    def adjust(self) -> None:
        """Give the voice its new settings."""
        self.said.append(Adjust(self.draft.rate, self.draft.loudness, self.draft.pitch))

    def cover(self) -> None:
        """Take what was shown so far off the screen."""
        self.said.append(Cover())

    def cue(self, name: str) -> None:
        """Count a cue at the current step."""
        self.done.cues.append(name)
        self.note["cue"] = name

    def wake_at(self, reason: Wake, due: datetime) -> None:
        """Ask for one wake-up call; it replaces the earlier one."""
        self.draft.tokens += 1
        token = f"{reason.value}:{self.draft.tokens}"
        self.draft.wake_up = WakeUp(reason, token, due)
        self.wakes.append(WakeAt(token, due))


def draft_of(progress: Progress) -> Progress:
    """A copy that shares nothing that changes: the draft of one turn."""
    return replace(
        progress,
        steps={name: _draft_of_step(step) for name, step in progress.steps.items()},
        before=[*progress.before],
        history=[*progress.history],
        troubles=[*progress.troubles],
        found={**progress.found},
        missed={**progress.missed},
        put_right=[*progress.put_right],
        told_otherwise=[*progress.told_otherwise],
        not_laid_out=[*progress.not_laid_out],
        orders=[*progress.orders],
        marks=[*progress.marks],
    )


def _draft_of_step(step: StepProgress) -> StepProgress:
    """The same of one step; every event makes one of every step, so the constructor of two dozen fields is spared."""
    twin = object.__new__(StepProgress)
    twin.__dict__.update(step.__dict__, slips=[*step.slips], cues=[*step.cues])
    return twin


def classify(event: Event, papers: Papers, progress: Progress, expect: Expect) -> tuple[Input | None, Meaning | None]:
    """What an event amounts to now, and what its words mean; None for what never amounts to anything."""
    match event:
        case Heard(during_speech=True) | Heard(gap=True):
            return Input.DROPPED, None
        case Heard(words=words) | Typed(words=words):
            # What a recogniser writes in figures does not show that it was said digit by digit.
            meaning = papers.language.interpret(words, expect, heard=isinstance(event, Heard))
            kind = input_of(meaning)
            doubtful = isinstance(event, Heard) and event.doubtful and kind in _TAKEN_AT_ONCE
            if isinstance(meaning, Answer) and meaning.surety is not Surety.PLAIN:
                return _weighed(meaning, kind, papers, progress)
            return (Input.DOUBTFUL if doubtful else kind), meaning
        case Woke(token=token):
            return (Input.WOKE if progress.wake_up is not None and token == progress.wake_up.token else None), None
        case InstructorCame():
            return Input.INSTRUCTOR, None
        case Opened():
            return Input.OPENED, None
        case Resumed():
            return Input.RESUMED, None
        case NotUnderstood():
            return Input.UNCLEAR, None
        case EarLost():
            return Input.EAR_LOST, None
        case EarBack():
            return Input.EAR_BACK, None
        case VoiceLost():
            return Input.VOICE_LOST, None
        case InputEnded():
            return Input.INPUT_ENDED, None
        case Marked(order=order) | Happened(order=order) | Directed(order=order):
            return (None if order and order in progress.orders else _from_desk(event)), None
        case Recorded():
            return None, None


def _weighed(answer: Answer, kind: Input, papers: Papers, progress: Progress) -> tuple[Input, Meaning]:
    """What was weighed answers nothing but the step itself, and a critical step only once the learner was asked."""
    if progress.state is not State.ASKING:
        return Input.UNCLEAR, NoMatch(Reason.UNKNOWN_WORDS)
    is_taken = answer.surety is Surety.SURE and not papers.checklist.steps[progress.cursor].critical
    return (kind if is_taken else Input.LIKELY), answer


_MARKS = {
    Mark.SEEN: Input.MARKED_SEEN,
    Mark.NOT_SEEN: Input.MARKED_SEEN,
    Mark.CUE: Input.MARKED,
    Mark.NOTE: Input.MARKED,
    Mark.UNSAFE: Input.MARKED_UNSAFE,
    Mark.NOT_APPLICABLE: Input.MARKED_ASIDE,
    Mark.OVERRULE: Input.MARKED_ASIDE,
    Mark.UNDO: Input.UNDONE,
}
_DIRECTIONS = {
    Direction.PAUSE: Input.DIRECTED_PAUSE,
    Direction.GO_ON: Input.DIRECTED_GO_ON,
    Direction.STOP: Input.DIRECTED_STOP,
}


def _from_desk(event: FromDesk) -> Input:
    match event:
        case Marked(mark=mark):
            return _MARKS[mark]
        case Happened():
            return Input.HAPPENED
        case Directed(what=what):
            return _DIRECTIONS[what]


def input_of(meaning: Meaning) -> Input:
    """The input that words amount to by what they mean."""
    match meaning:
        case Ambiguous():
            return Input.AMBIGUOUS
        case NoMatch():
            return Input.UNCLEAR
        case Answer(kind=Kind.CONFIRM, value="yes"):
            return Input.YES
        case Answer(kind=Kind.CONFIRM):
            return Input.NO
        case Answer(kind=Kind.DONE):
            return Input.DONE
        case Answer(kind=Kind.ACKNOWLEDGED):
            return Input.ACKNOWLEDGED
        case Answer(kind=Kind.TROUBLE):
            return Input.TROUBLE
        case Answer(kind=Kind.NUMBER):
            return Input.NUMBER
        case Answer(kind=Kind.NAME):
            return Input.NAME
        case Answer(kind=Kind.CHOICE):
            return Input.CHOICE
        case Answer(kind=Kind.TEXT):
            return Input.TEXT
        case Answer(value=command):
            return Input(str(command))
