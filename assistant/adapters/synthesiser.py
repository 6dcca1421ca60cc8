"""Text to samples: pyttsx3 in a process of its own, with a deadline, and a memory for sentences that recur."""

import contextlib
import json
import queue
import subprocess
import sys
import tempfile
import threading
import time
from collections import OrderedDict
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path

import numpy as np
import numpy.typing as npt

from assistant.errors import DeviceError

START_RATE_WPM = 165
"""Words a minute at rate step 0: a little slower than the engines' own 200, for people who work meanwhile."""
START_PITCH = 50
PITCH_STEP = 8
"""The engines' own middle on a scale of 0 to 100, and what a step adds to it."""
RATE_STEP = 1.15
"""Factor a step: four steps up are 289 words a minute, four down 94."""
START_LIMIT_S = 15.0
"""Longest wait for the engine to start."""
SENTENCE_LIMIT_S = 10.0
"""Longest wait for a sentence, beside `CHARACTER_LIMIT_S` for each character."""
CHARACTER_LIMIT_S = 0.02
REMEMBERED_BYTES = 24_000_000
"""Memory for sentences that recur: about nine minutes of speech."""

_WORKER = Path(__file__).with_name("synthesiser_worker.py")
_LOOK_UP_S = 0.02
_QUIET = 1 / 500  # of full scale: what an engine leaves between words and at the end
_TAIL_S = 0.08

if sys.platform == "linux":
    _REMEDY = "Install the system packages libportaudio2 and espeak-ng (Debian, Ubuntu: apt install them)."
else:
    _REMEDY = "Check that the system's own voices are installed."


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
    """A sentence and how it is to sound."""

    text: str
    rate: int
    pitch: int


class SynthesisCancelledError(Exception):
    """The one who asked for a sentence wants it no more."""


class Synthesiser:
    """The machine's own voice, written into memory.

    The engine runs in a worker process, and each worker speaks one sentence: pyttsx3 finishes a file in a thread
    of its own after it says that it is done, and what is left of one sentence must never get into the sound of
    another, which may hold another number. The next worker is always started ahead, so that nobody waits for it.
    A sentence that is not there in time is given up, its worker killed, and the sentence tried once more.
    """

    def __init__(self, command: tuple[str, ...] | None = None, sentence_limit_s: float = SENTENCE_LIMIT_S) -> None:
        """Start the worker.

        Args:
            command: starts the worker; None for this program's own.
            sentence_limit_s: longest wait for a sentence, beside what its length adds.
        """
        # -P: the script's folder is no place to import from, its modules have everyday names.
        self._command = command or (sys.executable, "-P", str(_WORKER))
        self._sentence_limit_s = sentence_limit_s
        self._lock = threading.Lock()
        self._remembered = _Memory(REMEMBERED_BYTES)
        self._folder = tempfile.TemporaryDirectory(prefix="speech-", ignore_cleanup_errors=True)
        self._number = 0
        self._closed = False
        self._worker: _Worker | None = None
        self._start_ahead()

    def synthesise(
        self, text: str, rate: int = 0, is_cancelled: Callable[[], bool] = lambda: False, pitch: int = 0
    ) -> Speech:
        """A sentence as sound.

        Args:
            text: words as they are to be spoken.
            rate: steps from the normal speed, -5 to 4.
            is_cancelled: asked again and again during the wait.
            pitch: steps from the engine's own, -4 to 4; an engine without a pitch speaks as it does.

        Raises:
            DeviceError: there is no engine, it fails or hangs.
            SynthesisCancelledError: `is_cancelled` said so, or the synthesiser was closed.
        """
        if not any(character.isalnum() for character in text):
            return Speech(np.zeros(0, np.int16), 22_050)  # engines answer nothing at all to it
        with self._lock:
            wanted = _Wanted(text, rate, pitch)
            known = self._remembered.get(wanted)
            if known is not None:
                return known
            try:
                speech = self._asked(wanted, is_cancelled)
            except _WorkerFailedError:
                speech = self._asked_again(wanted, is_cancelled)
            self._remembered.put(wanted, speech)
            return speech

    def close(self) -> None:
        """End the worker; a wait for a sentence under way ends as well."""
        self._closed = True
        if self._worker is not None:
            self._worker.kill()
        self._folder.cleanup()

    def _asked_again(self, wanted: "_Wanted", is_cancelled: Callable[[], bool]) -> Speech:
        try:
            return self._asked(wanted, is_cancelled)
        except _WorkerFailedError as failure:
            raise DeviceError(f"The speech synthesiser fails: {failure}.", _REMEDY) from failure

    def _asked(self, wanted: "_Wanted", is_cancelled: Callable[[], bool]) -> Speech:
        if self._closed:
            raise SynthesisCancelledError
        worker = self._worker or _Worker(self._command)
        self._worker = worker  # where `close` finds it
        self._number += 1
        file = Path(self._folder.name) / f"{self._number}.wav"
        request: dict[str, object] = {
            "text": wanted.text,
            "rate": round(START_RATE_WPM * RATE_STEP**wanted.rate),
            "pitch": START_PITCH + PITCH_STEP * wanted.pitch,
            "file": str(file),
        }
        try:
            worker.wait_for_start(is_cancelled)
            worker.ask(request, self._sentence_limit_s + CHARACTER_LIMIT_S * len(wanted.text), is_cancelled)
            speech = _trimmed(_read(file))
        finally:
            worker.kill()
            self._worker = None
            file.unlink(missing_ok=True)
        self._start_ahead()
        return speech

    def _start_ahead(self) -> None:
        if not self._closed:
            with contextlib.suppress(DeviceError):  # told when the next sentence is wanted
                self._worker = _Worker(self._command)


class _WorkerFailedError(Exception):
    """The worker ended, reported a failure or did not answer in time."""


class _Worker:
    """One process for one sentence."""

    def __init__(self, command: tuple[str, ...]) -> None:
        try:
            self._process = subprocess.Popen(  # noqa: S603 - the program's own script
                command, stdin=subprocess.PIPE, stdout=subprocess.PIPE, stderr=subprocess.DEVNULL
            )
        except OSError as failure:
            raise DeviceError(f"The speech synthesiser cannot be started: {failure}.", _REMEDY) from failure
        self._start_limit = time.monotonic() + START_LIMIT_S
        self._replies: queue.SimpleQueue[str | None] = queue.SimpleQueue()
        threading.Thread(target=self._read, name="synthesiser", daemon=True).start()

    def wait_for_start(self, is_cancelled: Callable[[], bool]) -> None:
        error = self._reply(self._start_limit, is_cancelled)
        if error:
            raise DeviceError(f"This machine has no speech synthesiser: {error}.", _REMEDY)

    def ask(self, request: dict[str, object], limit_s: float, is_cancelled: Callable[[], bool]) -> None:
        try:
            if self._process.stdin is not None:
                self._process.stdin.write(json.dumps(request).encode() + b"\n")
                self._process.stdin.flush()
        except (OSError, ValueError) as failure:
            raise _WorkerFailedError("it has ended") from failure
        error = self._reply(time.monotonic() + limit_s, is_cancelled)
        if error:
            raise _WorkerFailedError(error)

    def kill(self) -> None:
        self._process.kill()
        with contextlib.suppress(subprocess.TimeoutExpired):
            self._process.wait(1.0)
        if self._process.stdin is not None:
            with contextlib.suppress(OSError):
                self._process.stdin.close()

    def _reply(self, deadline: float, is_cancelled: Callable[[], bool]) -> str:
        """The error in the next reply; empty where all is well."""
        while not is_cancelled():
            with contextlib.suppress(queue.Empty):
                error = self._replies.get(timeout=_LOOK_UP_S)
                if error is None:
                    raise _WorkerFailedError("it has ended")
                return error
            if time.monotonic() > deadline:
                raise _WorkerFailedError("it does not answer")
        raise SynthesisCancelledError

    def _read(self) -> None:
        output = self._process.stdout
        if output is not None:
            with output, contextlib.suppress(OSError, ValueError):
                for line in output:
                    self._replies.put(str(json.loads(line)["error"]))
        self._replies.put(None)


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
        raise _WorkerFailedError("it wrote no sound") from failure
    return Speech(np.ascontiguousarray(samples[:, 0]), int(rate_hz))


def _trimmed(speech: Speech) -> Speech:
    # Engines end with up to half a second of silence, in which the learner could already answer.
    loud = np.flatnonzero(np.abs(speech.samples.astype(np.int32)) > _QUIET * 32_768)
    if len(loud) == 0:
        raise _WorkerFailedError("it wrote no sound")
    tail = int(_TAIL_S * speech.rate_hz)
    return Speech(speech.samples[: loud[-1] + 1 + tail].copy(), speech.rate_hz)
