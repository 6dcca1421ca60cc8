"""The voice: synthesiser and loudspeaker together, in one thread of their own."""

import contextlib
import queue
import threading
import time
from collections.abc import Generator
from dataclasses import dataclass

import numpy as np

from assistant.adapters.loudspeaker import Loudspeaker
from assistant.adapters.signals import sound_of
from assistant.adapters.speaking_process import SynthesisCancelledError
from assistant.adapters.synthesiser import Speech, Synthesiser
from assistant.errors import AssistantError
from assistant.guide.events import VoiceLost
from assistant.ports import Clock, Post, Signal, SpeechEnded, SpeechStarted

STEPS = 4
"""Rate, loudness and pitch go from -STEPS to STEPS."""
START_GAIN = 0.4
LOUDNESS_STEP = 1.25
"""Factor a step, about 2 dB; four steps up from the start reach full scale."""
CAREFUL_STEPS = 1
"""A sentence said carefully is so many steps slower."""
MOST_AHEAD = 8
"""So many sentences wait at most to be made ready."""
RETRY_S = 5.0
"""Time between two attempts to get a lost voice back."""

_JOIN_LIMIT_S = 1.0
_SILENCE = Speech(np.zeros(1_600, np.int16), 16_000)


@dataclass(frozen=True)
class _Sentence:
    utterance: int
    text: str
    round: int
    rate: int
    pitch: int
    signal: Signal | None = None


@dataclass(frozen=True)
class _Ahead:
    """A sentence to be made ready; `after` so many had been said, where it is only likely to be the next."""

    text: str
    rate: int
    pitch: int
    after: int | None = None


class SpeakingVoice:
    """Speaks sentences one after the other. Implements `assistant.ports.Voice`.

    Every sentence ends in exactly one `SpeechEnded`, also when it was hushed, could not be spoken, or the voice is
    lost. `VoiceLost` is posted once for each loss; while the voice is lost, sentences end at once. It is tried
    again in the background, and speaks again when that works.
    """

    def __init__(
        self,
        post: Post,
        clock: Clock,
        device: str | None = None,
        synthesiser: Synthesiser | None = None,
        loudspeaker: Loudspeaker | None = None,
        *,
        rate: int = 0,
        pitch: int = 0,
        loudness: int = 0,
    ) -> None:
        """Start the voice.

        Args:
            post: where events go.
            clock: stamps them.
            device: the loudspeaker's name or part of it; None for the default one.
            synthesiser: belongs to the voice from now on; None for the machine's own.
            loudspeaker: where sound goes instead of `device`.
            rate: steps that the voice starts with, -4 to 4.
            pitch: the same for its pitch.
            loudness: the same for its loudness.
        """
        self._post = post
        self._clock = clock
        self._synthesiser = synthesiser if synthesiser is not None else Synthesiser()
        self._loudspeaker = loudspeaker if loudspeaker is not None else Loudspeaker(device)
        self._sentences: queue.SimpleQueue[_Sentence | None] = queue.SimpleQueue()
        self._lock = threading.Lock()
        self._round = 0
        self._hushed = threading.Event()
        self._said = 0
        self._ahead: queue.SimpleQueue[_Ahead | None] = queue.SimpleQueue()
        self._may_make_ahead = threading.Event()
        self._may_make_ahead.set()
        self._start = (rate, loudness, pitch)
        self._rate = rate
        self._loudness = loudness
        self._pitch = pitch
        self._is_lost = False
        self._retry_at = 0.0
        self._closing = threading.Event()
        self._thread = threading.Thread(target=self._run, name="voice", daemon=True)
        self._thread.start()
        threading.Thread(target=self._make_ahead, name="voice ahead", daemon=True).start()

    def prepare(self, text: str, *, careful: bool = False) -> None:
        """Make the sound of a sentence that may be said next, while there is time."""
        self._put_ahead(_Ahead(text, self._rate_of(careful=careful), self._pitch, self._said))

    def say(self, utterance: int, text: str, *, careful: bool = False) -> None:
        """Queue a sentence, as it is to be spoken; returns at once. One said carefully is a step slower."""
        with self._lock:
            is_lost = self._is_lost
            if not is_lost:
                # Made ready while the ones before it sound.
                self._said += 1
                rate = self._rate_of(careful=careful)
                self._put_ahead(_Ahead(text, rate, self._pitch))
                self._sentences.put(_Sentence(utterance, text, self._round, rate, self._pitch))
        self._end_at_once(utterance, is_lost=is_lost)

    def signal(self, utterance: int, signal: Signal) -> None:
        """Queue a short sound among the sentences; it begins and ends as one of them."""
        with self._lock:
            is_lost = self._is_lost
            if not is_lost:
                self._sentences.put(_Sentence(utterance, "", self._round, 0, 0, signal))
        self._end_at_once(utterance, is_lost=is_lost)

    def _end_at_once(self, utterance: int, *, is_lost: bool) -> None:
        if is_lost:
            # It neither waits for the attempt to get the voice back nor disturbs it: were each sentence to end an
            # attempt, somebody who talks often enough would never get the voice back.
            self._post(SpeechEnded(utterance, at=self._clock.now()))

    def hush(self) -> None:
        """Stop sounding at once and drop what is queued; each dropped sentence still posts `SpeechEnded`."""
        with self._lock:
            self._round += 1
            self._hushed.set()

    def adjust(self, rate: int, loudness: int, pitch: int) -> None:
        """Set steps relative to the start, from the next sentence on; beyond -4 to 4 the limit holds."""
        wanted = zip(self._start, (rate, loudness, pitch), strict=True)
        self._rate, self._loudness, self._pitch = (max(-STEPS, min(STEPS, start + step)) for start, step in wanted)

    def close(self) -> None:
        """Stop the thread and free the device; returns within 2 s."""
        self._closing.set()
        self.hush()
        self._sentences.put(None)
        self._ahead.put(None)
        self._thread.join(_JOIN_LIMIT_S)
        self._synthesiser.close()

    def _rate_of(self, *, careful: bool) -> int:
        return self._rate - CAREFUL_STEPS if careful else self._rate

    def _put_ahead(self, wanted: _Ahead) -> None:
        if self._ahead.qsize() < MOST_AHEAD:
            self._ahead.put(wanted)

    def _make_ahead(self) -> None:
        while not self._closing.is_set():
            wanted = self._ahead.get()
            if wanted is None:
                return
            # The sentence that is to sound now comes first.
            self._may_make_ahead.wait()
            if wanted.after is not None and wanted.after != self._said:
                continue  # something else was said
            # What fails here fails again, and is told, when the sentence is said.
            with contextlib.suppress(Exception):
                self._synthesiser.synthesise(wanted.text, wanted.rate, self._closing.is_set, wanted.pitch)

    def _run(self) -> None:
        while not self._closing.is_set():
            try:
                sentence = self._sentences.get(timeout=RETRY_S if self._is_lost else None)
            except queue.Empty:
                sentence = None
            if sentence is not None:
                self._end(sentence)
            if (
                self._is_lost
                and self._sentences.empty()
                and time.monotonic() >= self._retry_at
                and not self._closing.is_set()
            ):
                self._try_again()

    def _end(self, sentence: _Sentence) -> None:
        """Speak a sentence where that is possible, and say that it is over."""
        try:
            if not self._is_lost:
                self._speak(sentence)
        except SynthesisCancelledError:
            pass
        except AssistantError as failure:
            self._lose(str(failure))
        except Exception as failure:  # noqa: BLE001 - a dead voice would leave everybody waiting
            self._lose(f"The voice has failed: {failure}.")
        self._post(SpeechEnded(sentence.utterance, at=self._clock.now()))

    def _speak(self, sentence: _Sentence) -> None:
        with self._lock:
            if sentence.round != self._round:
                return
            self._hushed.clear()
        gain = START_GAIN * LOUDNESS_STEP**self._loudness
        with contextlib.closing(self._breaths(sentence)) as breaths:
            first = next(breaths, None)
            if first is not None:
                self._loudspeaker.play(
                    first,
                    gain,
                    on_start=lambda: self._post(SpeechStarted(sentence.utterance, at=self._clock.now())),
                    stop=self._hushed,
                    following=breaths,
                )

    def _breaths(self, sentence: _Sentence) -> Generator[Speech, None, None]:
        """What sounds, breath by breath; nothing else is made ready until all of them are made."""
        if sentence.signal is not None:
            yield sound_of(sentence.signal)
            return
        self._may_make_ahead.clear()
        try:
            yield from self._synthesiser.breaths(sentence.text, sentence.rate, self._hushed.is_set, sentence.pitch)
        finally:
            self._may_make_ahead.set()

    def _lose(self, reason: str) -> None:
        with self._lock:
            self._is_lost = True
        self._retry_at = time.monotonic() + RETRY_S
        if not self._closing.is_set():
            self._post(VoiceLost(at=self._clock.now(), reason=reason))

    def _try_again(self) -> None:
        self._retry_at = time.monotonic() + RETRY_S
        with contextlib.suppress(AssistantError, SynthesisCancelledError):
            self._synthesiser.synthesise("ready", 0, self._closing.is_set)
            self._loudspeaker.refresh()
            # A device may be listed and yet take no sound: only one that has taken some is back.
            if self._loudspeaker.play(_SILENCE, 1.0, on_start=lambda: None, stop=self._closing):
                with self._lock:
                    self._is_lost = False
