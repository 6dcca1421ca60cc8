"""What a station needs around it: the ports to this machine's hardware, to the record and to the learner's screen."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from datetime import datetime
from enum import StrEnum
from typing import Protocol

from assistant.guide.effects import Say
from assistant.guide.events import EarBack, EarLost, Event, Heard, NotUnderstood, VoiceLost
from assistant.spoken.expect import Expect

SAMPLE_RATE_HZ = 16_000
"""Every recogniser gets mono 16-bit samples at this rate; adapters resample."""


@dataclass(frozen=True)
class Alternative:
    """One wording with the recogniser's own confidence, 0 to 1 (a figure of the machine, not clinical)."""

    words: str
    confidence: float


@dataclass(frozen=True)
class Hearing:
    """What a recogniser makes of one utterance.

    Attributes:
        words: the best wording; empty where the recogniser will stand for none.
        alternatives: wordings with confidence, best first, the best included.
        audio_s, compute_s: length of the sound and time spent on it, seconds.
        doubtful: a number that has to be said digit by digit, for another one is possible.
        told_apart: a number that the sound itself tells from those that sound like it (fifteen, not fifty).
        borne_out: it was not sure, and stands for these words because another model heard them too.
        unaided: another model was to be asked too, and cannot be loaded.
    """

    words: str
    alternatives: tuple[Alternative, ...]
    audio_s: float
    compute_s: float
    doubtful: bool = False
    told_apart: bool = False
    borne_out: bool = False
    unaided: bool = False


class Utterance(Protocol):
    """One utterance being recognised."""

    def feed(self, block: bytes) -> str | None:
        """Take mono 16-bit little-endian samples at `SAMPLE_RATE_HZ`; return partial words or None."""

    def finish(self) -> Hearing:
        """End the utterance; called once."""

    def give_up(self) -> None:
        """Nobody wants this utterance any more: `finish`, running or to come, returns soon, with whatever it has.

        Safe from another thread, returns at once, and may do nothing where `finish` is quick. Another utterance
        of the same recogniser is heard as if this one had never been.
        """


class Recogniser(Protocol):
    """A speech recogniser with its model."""

    @property
    def name(self) -> str:
        """A short name for records and `--ear`."""

    @property
    def model_digest(self) -> str:
        """SHA-256 (hex) that pins the model in a record."""

    def begin(self, expect: Expect) -> Utterance:
        """Start an utterance with the vocabulary of what is expected."""

    def close(self) -> None:
        """Free the model."""


@dataclass(frozen=True)
class ListeningStarted:
    """The first block of sound has arrived after a `listen`: only now is "listening" shown."""

    at: datetime


@dataclass(frozen=True)
class Timing:
    """When an answer came about, on the steady clock, seconds.

    Attributes:
        began, ended: the learner's first and last sound.
        decided: it was settled that nothing more would come.
        understood: the recogniser was done.
    """

    began: float
    ended: float
    decided: float
    understood: float


@dataclass(frozen=True)
class AnswerHeard:
    """An utterance, with the question (`Ear.listen`) that was open when it began."""

    question: int
    event: Heard | NotUnderstood
    timing: Timing


@dataclass(frozen=True)
class LearnerSpeaks:
    """Somebody has begun to speak into the open microphone."""

    question: int


@dataclass(frozen=True)
class LearnerSilent:
    """The sound turned out to be noise, not speech."""

    question: int


@dataclass(frozen=True)
class LevelAdvice:
    """The microphone is muted, or its level makes hearing hard; `text` says so and what to do."""

    text: str


@dataclass(frozen=True)
class OwnVoiceHeard:
    """The assistant's own voice comes into a microphone that was said not to hear it; `text` says so."""

    text: str


@dataclass(frozen=True)
class SpeechStarted:
    """The voice began to sound."""

    utterance: int
    at: datetime


@dataclass(frozen=True)
class SpeechEnded:
    """The voice finished an utterance, or it was hushed."""

    utterance: int
    at: datetime


EarEvent = (
    AnswerHeard | LevelAdvice | LearnerSpeaks | LearnerSilent | OwnVoiceHeard | EarLost | EarBack | ListeningStarted
)
VoiceEvent = SpeechStarted | SpeechEnded | VoiceLost
Post = Callable[[object], None]
"""Puts an event into the station's inbox; safe from any thread, never blocks."""


class Ear(Protocol):
    """Microphone, endpointing and recogniser together; posts `EarEvent`s."""

    @property
    def name(self) -> str:
        """The recogniser's name."""

    @property
    def model_digest(self) -> str:
        """SHA-256 of the recogniser's model."""

    def listen(self, expect: Expect, question: int = 0, pause_s: float | None = None) -> None:
        """Listen with this vocabulary from now on; replaces an earlier `listen`.

        Args:
            expect: the frame.
            question: comes back in `AnswerHeard`.
            pause_s: silence that ends an unfinished utterance, seconds; None for the ear's own.
        """

    def mute(self) -> None:
        """Drop sound until the next `listen` (half-duplex while the voice sounds)."""

    def keep_sound(self) -> None:
        """From now on, give what is heard with its sound."""

    def close(self) -> None:
        """Stop the thread and free the device; returns within 2 s."""


class Signal(StrEnum):
    """What a short sound says."""

    LISTENING = "listening"
    UNDERSTOOD = "understood"
    NOT_UNDERSTOOD = "not understood"
    HOLD = "hold"


class Voice(Protocol):
    """Synthesiser and loudspeaker together; posts `VoiceEvent`s."""

    def prepare(self, text: str, *, careful: bool = False) -> None:
        """This sentence may be said soon; nothing sounds."""

    def say(self, utterance: int, text: str, *, careful: bool = False) -> None:
        """Queue a sentence; returns at once. One with numbers to be checked is said carefully: slower."""

    def signal(self, utterance: int, signal: Signal) -> None:
        """Queue a short sound among the sentences; it begins and ends as one of them."""

    def hush(self) -> None:
        """Stop sounding at once and drop what is queued."""

    def adjust(self, rate: int, loudness: int, pitch: int) -> None:
        """Set steps relative to the start, each -4 to 4."""

    def close(self) -> None:
        """Stop the thread and free the device; returns within 2 s."""


@dataclass(frozen=True)
class Sound:
    """What this machine can do with sound.

    Attributes:
        ear, voice: None where there is none.
        notices: one sentence for each thing that is missing, with how to get it.
        cancels_echo: the voice is taken out of what the ear hears.
    """

    ear: Ear | None = None
    voice: Voice | None = None
    notices: tuple[str, ...] = ()
    cancels_echo: bool = False


class Clock(Protocol):
    """The station's time."""

    def now(self) -> datetime:
        """UTC; never runs backwards within one run."""

    def sleep_limit(self, until: datetime | None) -> float | None:
        """Seconds that a wait for input may last until `until`; None for no limit."""


class Keeper(Protocol):
    """The record of one attempt, as far as the station needs it."""

    @property
    def head(self) -> str:
        """Digest of the last entry on disk."""

    def append(self, body: Mapping[str, object]) -> tuple[int, str]:
        """Put an entry on disk; return its sequence number and digest."""

    def seal(self, body: Mapping[str, object]) -> tuple[int, str]:
        """Put the last entry on disk."""

    def close(self) -> None:
        """Let go of the file."""


class SoundStore(Protocol):
    """Where the learner's sound is kept, once they have agreed."""

    def keep(self, sound: bytes) -> Mapping[str, object]:
        """Put an utterance on disk; return what its entry says of it."""


class Screen(Protocol):
    """Where the learner reads along."""

    def show(self, say: Say) -> None:
        """A sentence of the assistant."""

    def listening(self) -> None:
        """The microphone is open: sound has arrived."""

    def asked(self, *, paused: bool) -> None:
        """An answer is wanted now; `paused`: only "go on", whenever the learner is ready."""

    def speaks(self, *, sounds: bool) -> None:
        """The assistant's voice begins to sound, or is silent again."""

    def waits(self, seconds: int) -> None:
        """So many seconds of a timed wait are left; called again and again while it runs."""

    def cover(self) -> None:
        """Take away what was shown so far: another person must not read it."""

    def taken(self, event: Event) -> None:
        """What was heard or typed, once it is on disk."""


class Page(Screen, Protocol):
    """A screen on which one may also type."""

    def begins(self) -> None:
        """An attempt begins: nothing of an earlier one is shown any more."""

    def takes(self, give: Callable[[str], None]) -> None:
        """From now on, give each typed line to `give`, which is safe from any thread and never blocks."""

    def level(self, step: int) -> None:
        """So loud is what comes into the open microphone, 0 to 4; safe from any thread, never blocks, on no record."""


class Source(Protocol):
    """Input that is fetched one at a time, only when an answer is wanted: a pipe, a simulated learner."""

    def next_event(self, due: datetime | None) -> Event | None:
        """The next input, or None when `due` came first."""
