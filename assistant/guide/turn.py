"""One event being worked on: the draft of the progress, what is said, what the entry will tell."""

from dataclasses import dataclass, field
from datetime import datetime

from assistant.checklist.model import Step
from assistant.guide.effects import Adjust, Cover, Effect, Outcome, Say, Tone, WakeAt
from assistant.guide.given import Given
from assistant.guide.progress import Progress, StepProgress
from assistant.spoken.meaning import Meaning


@dataclass
class Turn:
    """What one event does; becomes true only when its entry is on disk.

    Attributes:
        given: the attempt's papers and mode.
        draft: a copy of the progress, to be changed.
        at: the event's time.
        spoken: the event came by voice.
        doubtful: the recogniser holds another number for possible.
        meaning: what its words mean, if it had words.
        proven: the instructor's code was given.
        detail: a device's reason, a wake-up's token.
        said: sentences and settings, in order.
        wakes: wake-up calls.
        note: what the entry tells beside the event itself.
        outcome: set where the attempt ends.
    """

    given: Given
    draft: Progress
    at: datetime
    spoken: bool = False
    doubtful: bool = False
    meaning: Meaning | None = None
    proven: bool = False
    detail: str = ""
    said: list[Effect] = field(default_factory=list)
    wakes: list[WakeAt] = field(default_factory=list)
    note: dict[str, object] = field(default_factory=dict)
    outcome: Outcome | None = None

    @property
    def step(self) -> Step:
        """The current step."""
        return self.given.checklist.steps[self.draft.cursor]

    @property
    def done(self) -> StepProgress:
        """What happened at the current step, to be changed."""
        return self.draft.steps[self.step.id]

    def say(self, text: str, tone: Tone, spoken_text: str | None = None) -> None:
        """Show `text` and speak it, or `spoken_text` in its place ("" speaks nothing)."""
        words = self.given.checklist.aloud(text) if spoken_text is None else spoken_text
        self.said.append(Say(text, words, tone))

    def adjust(self) -> None:
        """Tell the voice its new settings."""
        self.said.append(Adjust(self.draft.rate, self.draft.loudness, self.draft.pitch))

    def cover(self) -> None:
        """Take what was shown so far off the screen."""
        self.said.append(Cover())

    def cue(self, name: str) -> None:
        """Count a cue at the current step."""
        self.done.cues.append(name)
        self.note["cue"] = name

    def wake_at(self, kind: str, due: datetime) -> None:
        """Ask for one wake-up call; it replaces the earlier one."""
        self.draft.tokens += 1
        self.draft.token = f"{kind}:{self.draft.tokens}"
        self.draft.wakes_at = due
        self.wakes.append(WakeAt(self.draft.token, due))
