"""The station: this machine's ports around one guide; one inbox, one thread that decides.

It performs what the guide asks for, in order, and holds no rule of the procedure. Nothing is shown or said
about an event before its entry is on disk, because the guide gives those effects only on `Recorded`.
"""

import queue
import time
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from datetime import datetime
from typing import Protocol

from assistant.guide.effects import Adjust, Append, Cover, Effect, Finish, Listen, Outcome, Say, WakeAt
from assistant.guide.events import (
    EarBack,
    EarLost,
    Event,
    Heard,
    InputEnded,
    InstructorCame,
    NotUnderstood,
    Opened,
    Recorded,
    Resumed,
    Typed,
    VoiceLost,
    Woke,
)
from assistant.guide.guide import Guide
from assistant.ports import Clock, Ear, ListeningStarted, SpeechEnded, SpeechStarted, Voice

SPEECH_GRACE_S = 8
"""Longest time that a sentence may take beyond its length before it is given up."""
SPEECH_S_A_CHARACTER = 0.12
"""Slow speech; a sentence that is not over by then is not waited for."""
POLL_S = 0.5
"""Longest wait without looking up, so that an interrupt from the keyboard is seen."""


@dataclass(frozen=True)
class Interrupted:
    """The user or the system asked the program to end; posted by a signal's handler."""


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

    def cover(self) -> None:
        """Take away what was shown so far: another person must not read it."""

    def taken(self, event: Event) -> None:
        """What was heard or typed, once it is on disk."""


class Source(Protocol):
    """Input that is fetched one at a time, only when an answer is wanted: a pipe, a simulated learner."""

    def next_event(self, due: datetime | None) -> Event | None:
        """The next input, or None when `due` came first."""


class Station:
    """One attempt on this machine.

    Args:
        guide: the procedure.
        new_record: makes the record with this body as its first entry on disk.
        clock: the time.
        screen: where text goes.
        inbox: where the ports post their events.
        ear, voice: this machine's ports, None where there is none.
        source: input to be fetched, None where a keyboard posts into the inbox.
        sounds: where sound is kept if the learner agrees; None where none is to be.
    """

    def __init__(
        self,
        guide: Guide,
        new_record: Callable[[Mapping[str, object]], Keeper],
        clock: Clock,
        screen: Screen,
        inbox: "queue.SimpleQueue[object]",
        ear: Ear | None = None,
        voice: Voice | None = None,
        source: Source | None = None,
        sounds: SoundStore | None = None,
    ) -> None:
        self._guide = guide
        self._new_record = new_record
        self._clock = clock
        self._screen = screen
        self._inbox = inbox
        self._ear = ear
        self._voice = voice
        self._source = source
        self._sounds = sounds
        self._record: Keeper | None = None
        self._wakes: list[WakeAt] = []
        self._listen: Listen | None = None
        self._outcome: Outcome | None = None
        self._utterance = 0
        self._speaking = 0
        self._speech_due_s = 0.0
        self._ear_alive = ear is not None
        self._typed_ended = False

    def run(self, resumed: Keeper | None = None) -> Outcome:
        """Live through the attempt; return how it ended.

        Args:
            resumed: the record of the attempt that is taken up, None for a new attempt.

        Raises:
            RecordError: an entry could not be put on disk; the attempt ends, the file stays as it is.
        """
        self._record = resumed
        try:
            self._give(self._resumed() if resumed else Opened(self._clock.now()))
            while self._outcome is None:
                self._take(self._next())
            self._let_speak()
        finally:
            self.close()
        return self._outcome

    def close(self) -> None:
        """Let go of every device and of the record."""
        for port in (self._ear, self._voice, self._record):
            if port is not None:
                port.close()

    # Input.

    def _next(self) -> object:
        """The next thing that happens: posted, due, or fetched."""
        while True:
            try:
                return self._inbox.get_nowait()
            except queue.Empty:
                pass
            due = min((wake.at for wake in self._wakes), default=None)
            if due is not None and self._clock.now() >= due:
                return self._woken(due)
            if self._speaking:
                ended = self._wait_for_voice()
                if ended is not None:
                    return ended
                continue
            if self._source is not None and self._listen is not None and self._listen.wanted:
                event = self._source.next_event(due)
                if event is not None:
                    return event
                continue
            limit = self._clock.sleep_limit(due)
            try:
                return self._inbox.get(timeout=POLL_S if limit is None else min(limit, POLL_S))
            except queue.Empty:
                continue

    def _woken(self, due: datetime) -> Woke:
        wake = next(wake for wake in self._wakes if wake.at == due)
        self._wakes.remove(wake)
        return Woke(self._clock.now(), wake.token)

    def _wait_for_voice(self) -> object | None:
        """What comes while the voice sounds; a voice that never tells its end is not waited for."""
        try:
            return self._inbox.get(timeout=POLL_S)
        except queue.Empty:
            if time.monotonic() < self._speech_due_s:
                return None
            self._speaking = 1
            return SpeechEnded(self._utterance, self._clock.now())

    def _take(self, happening: object) -> None:
        match happening:
            case SpeechStarted():
                return
            case SpeechEnded():
                self._speech_ended()
            case ListeningStarted():
                self._screen.listening()
            case Typed(words=words) if not words.strip():
                self._hush()  # Enter alone hushes the voice
            case Interrupted():
                self._hush()
                self._give(InputEnded(self._clock.now()))
            case InputEnded() if self._ear_alive:
                self._typed_ended = True
            case Typed():
                self._hush()
                self._give(happening)
            case EarLost():
                self._ear_alive = False
                self._give(happening)
                if self._typed_ended:
                    self._give(InputEnded(self._clock.now()))
            case EarBack():
                self._ear_alive = True
                self._give(happening)
            case Heard() | NotUnderstood() | InstructorCame() | Woke() | VoiceLost() | InputEnded():
                self._give(happening)
            case _:
                raise TypeError(f"nobody posts {type(happening).__name__} here")

    # The guide and what it asks for.

    def _give(self, event: Event) -> None:
        if self._outcome is not None:
            return
        effects = self._guide.receive(event)
        for effect in effects:
            self._perform(effect, event)

    def _perform(self, effect: Effect, event: Event) -> None:
        match effect:
            case Append(body):
                recorded = self._append(self._with_sound(body, event))
                self._screen.taken(event)
                for following in self._guide.receive(recorded):
                    self._perform(following, event)
            case Say():
                self._say(effect)
            case Listen():
                self._listen = effect
                self._open_ear()
            case WakeAt():
                self._wakes = [effect]  # the guide counts one call; an earlier one is stale
            case Adjust(rate, loudness):
                if self._voice is not None:
                    self._voice.adjust(rate, loudness)
            case Cover():
                self._screen.cover()
            case Finish(outcome, seal):
                if seal is not None and self._record is not None:
                    self._record.seal(seal)
                self._outcome = outcome

    def _resumed(self) -> Resumed:
        now = self._clock.now()
        return Resumed(now) if self._ear is None else Resumed(now, self._ear.name, self._ear.model_digest)

    def _with_sound(self, body: Mapping[str, object], event: Event) -> Mapping[str, object]:
        """The body with what is kept of the event's sound; the very answer that agrees is not kept."""
        if self._sounds is None or not isinstance(event, Heard | NotUnderstood) or not event.sound:
            return body
        return {**body, "sound": self._sounds.keep(event.sound)} if self._guide.may_keep_sound() else body

    def _append(self, body: Mapping[str, object]) -> Recorded:
        if self._record is None:
            self._record = self._new_record(body)
            return Recorded(1, self._record.head)
        return Recorded(*self._record.append(body))

    # The voice and the ear: one at a time.

    def _say(self, say: Say) -> None:
        self._screen.show(say)
        if self._voice is None or not say.speech:
            return
        if self._ear is not None:
            self._ear.mute()
        self._utterance += 1
        self._speaking += 1
        begins_s = max(self._speech_due_s, time.monotonic())
        self._speech_due_s = begins_s + SPEECH_GRACE_S + SPEECH_S_A_CHARACTER * len(say.speech)
        self._voice.say(self._utterance, say.speech)

    def _speech_ended(self) -> None:
        self._speaking = max(0, self._speaking - 1)
        if not self._speaking:
            self._speech_due_s = 0.0
            self._open_ear()

    def _hush(self) -> None:
        if self._voice is not None and self._speaking:
            self._voice.hush()

    def _open_ear(self) -> None:
        if self._ear is not None and self._ear_alive and self._listen is not None and not self._speaking:
            if self._sounds is not None and self._guide.may_keep_sound():
                self._ear.keep_sound()
            self._ear.listen(self._listen.expect)

    def _let_speak(self) -> None:
        """After the end: let the voice finish the result."""
        self._wakes = []
        self._listen = None
        while self._speaking:
            self._take(self._next())
