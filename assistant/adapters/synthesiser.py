"""Text to samples: the neural voice or the system's, in processes of their own, and a memory for what recurs."""

import contextlib
import itertools
import tempfile
import threading
from collections import OrderedDict
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from functools import partial
from pathlib import Path

import numpy as np
import numpy.typing as npt
import soxr

from assistant.adapters.clarity import clearer
from assistant.adapters.hiss import up_to_hiss
from assistant.adapters.neural_voice import RATE_STEP, NeuralVoice
from assistant.adapters.speaking_process import (
    OWN_COMMAND,
    REMEDY,
    SpeakingProcesses,
    SynthesisCancelledError,
    WorkerFailedError,
)
from assistant.errors import DeviceError
from assistant.spoken.diction import Stretch

START_RATE_WPM = 165
"""Words a minute at rate step 0: a little slower than the engines' own 200, for people who work meanwhile."""
START_PITCH = 50
PITCH_STEP = 8
"""The engines' own middle on a scale of 0 to 100, and what a step adds to it."""
SENTENCE_LIMIT_S = 3.0
"""Longest wait for a sentence, beside `CHARACTER_LIMIT_S` for each character; the longest takes 0.1 s."""
CHARACTER_LIMIT_S = 0.02
REMEMBERED_BYTES = 8_000_000
"""Memory for sentences that recur: three minutes of speech. What was not said again within them hardly recurs."""
LEVEL = 0.1
"""Root mean square, of full scale, to which the loud parts of a sentence are brought (-20 dB), whatever speaks it."""
PEAK = 0.95
"""Part of full scale that no sample exceeds thereby."""

_LOOK_UP_S = 0.02
_FRAME_S = 0.02
_FAR_BELOW = 10 ** (-30 / 20)
"""Frames below this part of the loudest (-30 dB) are no speech."""
_QUIET = 1 / 500  # of full scale: what an engine leaves between words and at the end
_HEAD_S = 0.005
_TAIL_S = 0.08


@dataclass(frozen=True)
class Speech:
    """A sentence as sound.

    Attributes:
        samples: mono, 16-bit.
        rate_hz: samples a second.
    """

    samples: npt.NDArray[np.int16]
    rate_hz: int

    @property
    def length_s(self) -> float:
        """Seconds that it lasts."""
        return len(self.samples) / self.rate_hz


@dataclass(frozen=True)
class _Wanted:
    """A breath of the neural voice's, or a text of the system's, and how it is to sound."""

    said: Stretch | str
    rate: int
    pitch: int


class Synthesiser:
    """A voice of this machine, written into memory: the neural one where it is given and works, else the system's.

    Whenever the neural voice is not ready, fails or hangs, the system's says the rest of the sentence; it is asked
    again for the next one, until it has failed too often.

    The system's engine runs in worker processes, and each worker speaks one sentence: pyttsx3 finishes a file in a
    thread of its own after it says that it is done, and what is left of one sentence must never get into the sound
    of another, which may hold another number. Workers are always started ahead, so that nobody waits for one.
    A sentence that is not there in time is given up, its worker killed, and the sentence tried once more.

    Several threads may ask at once, and none waits for another one's sentence but for its own.
    """

    def __init__(
        self,
        command: tuple[str, ...] = OWN_COMMAND,
        sentence_limit_s: float = SENTENCE_LIMIT_S,
        workers: SpeakingProcesses | None = None,
        neural: NeuralVoice | None = None,
        *,
        is_clearer: bool = True,
    ) -> None:
        """Start the workers.

        Args:
            command: starts a worker.
            sentence_limit_s: longest wait for a sentence, beside what its length adds.
            workers: those that have been started already, in place of `command`; they belong to the synthesiser.
            neural: the neural voice; it belongs to the synthesiser.
            is_clearer: what it says is made clearer in noise.
        """
        self._neural = neural
        self._is_clearer = is_clearer
        self._workers = workers or SpeakingProcesses(command)
        self._sentence_limit_s = sentence_limit_s
        self._changed = threading.Condition()
        self._remembered = _Memory(REMEMBERED_BYTES)
        self._being_made: set[_Wanted] = set()
        self._folder = tempfile.TemporaryDirectory(prefix="speech-", ignore_cleanup_errors=True)
        self._numbers = itertools.count(1)

    def synthesise(
        self, text: str, rate: int = 0, is_cancelled: Callable[[], bool] = lambda: False, pitch: int = 0
    ) -> Speech:
        """A sentence as sound, whole: `breaths` joined, with the same arguments and errors; empty for none."""
        return _joined(list(self.breaths(text, rate, is_cancelled, pitch)))

    def breaths(
        self, text: str, rate: int = 0, is_cancelled: Callable[[], bool] = lambda: False, pitch: int = 0
    ) -> Iterator[Speech]:
        """A sentence as sound, breath by breath, so that the first one can sound while the others are made.

        Args:
            text: words as they are to be spoken.
            rate: steps from the normal speed, -5 to 4.
            is_cancelled: asked again and again during the wait.
            pitch: steps from the engine's own, -4 to 4; an engine without a pitch speaks as it does.

        Yields:
            Sounds that follow one another without a gap; their pauses are in them. None where there is nothing to say.

        Raises:
            DeviceError: there is no engine, it fails or hangs.
            SynthesisCancelledError: `is_cancelled` said so, or the synthesiser was closed.
        """
        rest = text
        if self._neural is not None and not self._neural.is_given_up:
            stretches = self._neural.stretches(text)
            for at, stretch in enumerate(stretches):
                make = partial(self._by_neural, self._neural, stretch, rate, pitch, is_cancelled)
                speech = self._remembered_or(_Wanted(stretch, rate, pitch), is_cancelled, make)
                if speech is None:
                    rest = " ".join(stretch.words for stretch in stretches[at:]) if at else text
                    break
                if at + 1 < len(stretches):
                    speech = _with_pause(speech, self._neural.pause_s(stretch, rate))
                yield speech
            else:
                return
        if any(character.isalnum() for character in rest):  # engines answer nothing at all to it
            made = partial(self._made, rest, rate, pitch, is_cancelled)
            speech = self._remembered_or(_Wanted(rest, rate, pitch), is_cancelled, made)
            if speech is not None:
                yield speech

    def close(self) -> None:
        """End the workers; a wait for a sentence under way ends as well."""
        if self._neural is not None:
            self._neural.close()
        self._workers.close()
        self._folder.cleanup()

    def _remembered_or(
        self, wanted: "_Wanted", is_cancelled: Callable[[], bool], make: Callable[[], Speech | None]
    ) -> Speech | None:
        """The sound where it is known, or made meanwhile; else it is made, and remembered. None where that fails."""
        with self._changed:
            while (known := self._remembered.get(wanted)) is None and wanted in self._being_made:
                self._changed.wait(_LOOK_UP_S)
                if is_cancelled():
                    raise SynthesisCancelledError
            if known is not None:
                return known
            self._being_made.add(wanted)
        try:
            made = make()
            if made is None:
                return None
            speech = _levelled(_clearer(made) if self._is_clearer else made)
            with self._changed:
                self._remembered.put(wanted, speech)
            return speech
        finally:
            with self._changed:
                self._being_made.discard(wanted)
                self._changed.notify_all()

    def _by_neural(
        self, neural: NeuralVoice, stretch: Stretch, rate: int, pitch: int, is_cancelled: Callable[[], bool]
    ) -> Speech | None:
        """A breath with the neural voice; None where the system's has to say it."""
        with self._new_file() as file, contextlib.suppress(WorkerFailedError):
            neural.write(stretch, rate, pitch, file, is_cancelled)
            speech = _read(file)
            if neural.ends_in_hiss(stretch):
                speech = Speech(up_to_hiss(speech.samples, speech.rate_hz), speech.rate_hz)
            return _trimmed(speech)
        return None

    @contextlib.contextmanager
    def _new_file(self) -> Iterator[Path]:
        file = Path(self._folder.name) / f"{next(self._numbers)}.wav"
        try:
            yield file
        finally:
            file.unlink(missing_ok=True)

    def _made(self, text: str, rate: int, pitch: int, is_cancelled: Callable[[], bool]) -> Speech:
        for _ in range(2):
            try:
                return self._asked(text, rate, pitch, is_cancelled)
            except WorkerFailedError as failed:
                failure = failed
        raise DeviceError(f"The speech synthesiser fails: {failure}.", REMEDY) from failure

    def _asked(self, text: str, rate: int, pitch: int, is_cancelled: Callable[[], bool]) -> Speech:
        with self._new_file() as file, self._workers.one() as worker:
            request: dict[str, object] = {
                "text": text,
                "rate": round(START_RATE_WPM * RATE_STEP**rate),
                "pitch": START_PITCH + PITCH_STEP * pitch,
                "file": str(file),
            }
            worker.wait_for_start(is_cancelled)
            worker.ask(request, self._sentence_limit_s + CHARACTER_LIMIT_S * len(text), is_cancelled)
            return _trimmed(_read(file))


class _Memory:
    """Sentences that recur, the longest unused dropped first."""

    def __init__(self, limit_bytes: int) -> None:
        self._limit = limit_bytes
        self._size = 0
        self._kept: OrderedDict[_Wanted, Speech] = OrderedDict()

    def get(self, key: _Wanted) -> Speech | None:
        speech = self._kept.get(key)
        if speech is not None:
            self._kept.move_to_end(key)
        return speech

    def put(self, key: _Wanted, speech: Speech) -> None:
        self._kept[key] = speech
        self._size += speech.samples.nbytes
        while self._size > self._limit:
            _, dropped = self._kept.popitem(last=False)
            self._size -= dropped.samples.nbytes


def _read(file: Path) -> Speech:
    import soundfile

    try:
        samples, rate_hz = soundfile.read(file, dtype="int16", always_2d=True)
    except (OSError, RuntimeError) as failure:  # soundfile's own errors are RuntimeErrors
        raise WorkerFailedError("it wrote no sound") from failure
    return Speech(np.ascontiguousarray(samples[:, 0]), int(rate_hz))


def _trimmed(speech: Speech) -> Speech:
    # Engines end with up to half a second of silence, in which the learner could already answer, and begin with up
    # to 50 ms, for which the learner would wait.
    loud = np.flatnonzero(np.abs(speech.samples.astype(np.int32)) > _QUIET * 32_768)
    if len(loud) == 0:
        raise WorkerFailedError("it wrote no sound")
    head, tail = (int(length_s * speech.rate_hz) for length_s in (_HEAD_S, _TAIL_S))
    return Speech(speech.samples[max(0, loud[0] - head) : loud[-1] + 1 + tail].copy(), speech.rate_hz)


def _clearer(speech: Speech) -> Speech:
    samples = clearer(speech.samples.astype(np.float32), speech.rate_hz)
    loudest = max(1.0, float(np.abs(samples).max()))
    return Speech((samples * (32_767 * PEAK / loudest)).astype(np.int16), speech.rate_hz)


def _levelled(speech: Speech) -> Speech:
    """As loud as every other sentence: voices and sentences differ by some decibels."""
    samples = speech.samples.astype(np.float32) / 32_768
    size = round(_FRAME_S * speech.rate_hz)
    frames = samples[: len(samples) // size * size].reshape(-1, size)
    if not len(frames):
        return speech
    powers = np.square(frames).mean(axis=1)
    level = float(np.sqrt(powers[powers >= powers.max() * _FAR_BELOW**2].mean()))
    gain = min(LEVEL / level, PEAK / float(np.abs(samples).max()))
    return Speech((samples * (gain * 32_767)).astype(np.int16), speech.rate_hz)


def _with_pause(speech: Speech, pause_s: float) -> Speech:
    """With so much silence behind its sound, what it ends with already counted."""
    silence = np.zeros(round(max(0.0, pause_s - _TAIL_S) * speech.rate_hz), np.int16)
    return Speech(np.concatenate([speech.samples, silence]), speech.rate_hz)


def _joined(breaths: list[Speech]) -> Speech:
    """Breaths as one sound, at the rate of the first one."""
    if not breaths:
        return Speech(np.zeros(0, np.int16), 22_050)
    first, *others = breaths
    samples = [at_rate(other, first.rate_hz) for other in others]
    return Speech(np.concatenate([first.samples, *samples]), first.rate_hz) if samples else first


def at_rate(speech: Speech, rate_hz: int) -> npt.NDArray[np.int16]:
    """The samples of a sound at another rate."""
    if speech.rate_hz == rate_hz or len(speech.samples) == 0:
        return speech.samples
    samples: npt.NDArray[np.int16] = soxr.resample(speech.samples, speech.rate_hz, rate_hz)
    return samples
