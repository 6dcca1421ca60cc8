"""Processes that speak: started ahead, asked with a deadline, killed when they hang."""

import contextlib
import json
import queue
import subprocess
import sys
import threading
import time
from collections import deque
from collections.abc import Callable, Iterator
from pathlib import Path

from assistant.errors import DeviceError

# -P: the script's folder is no place to import from, its modules have everyday names.
_WORKER = (sys.executable, "-P", str(Path(__file__).with_name("synthesiser_worker.py")))
OWN_COMMAND = (*_WORKER, "system")
"""Starts one that speaks a sentence with the system's voice."""
NEURAL_COMMAND = (*_WORKER, "neural")
"""Starts one that speaks sentence after sentence with the neural voice."""
START_LIMIT_S = 15.0
"""Longest wait for the engine to start."""
READY = 2
"""So many processes wait for a sentence: one for what is to sound now, one for what is made ready meanwhile.

A process takes 0.05 s of the processor to start, and 10 MB of its own while it waits.
"""

LOOK_UP_S = 0.02
"""Whoever waits for a sentence looks so often whether it is still wanted."""

if sys.platform == "linux":
    REMEDY = "Install the system packages libportaudio2 and espeak-ng (Debian, Ubuntu: apt install them)."
else:
    REMEDY = "Check that the system's own voices are installed."


class SynthesisCancelledError(Exception):
    """The one who asked for a sentence wants it no more."""


class WorkerFailedError(Exception):
    """The worker ended, reported a failure or did not answer in time."""


class SpeakingProcess:
    """One process, asked for one sentence after the other.

    Args:
        command: starts it.

    Raises:
        DeviceError: it cannot be started.
    """

    def __init__(self, command: tuple[str, ...]) -> None:
        try:
            self._process = subprocess.Popen(  # noqa: S603 - the program's own script
                command, stdin=subprocess.PIPE, stdout=subprocess.PIPE, stderr=subprocess.DEVNULL
            )
        except OSError as failure:
            raise DeviceError(f"The speech synthesiser cannot be started: {failure}.", REMEDY) from failure
        self._started_at = time.monotonic()
        self._is_ready = False
        self._has_ended = False
        self._owed = 0
        self._replies: queue.SimpleQueue[str | None] = queue.SimpleQueue()
        threading.Thread(target=self._read, name="synthesiser", daemon=True).start()

    @property
    def number(self) -> int:
        """The system's number of the process."""
        return self._process.pid

    @property
    def has_ended(self) -> bool:
        """Whether it is gone."""
        return self._has_ended

    @property
    def age_s(self) -> float:
        """Seconds since its start."""
        return time.monotonic() - self._started_at

    def wait_for_start(self, is_cancelled: Callable[[], bool], limit_s: float = START_LIMIT_S) -> None:
        """Wait until the engine is there.

        Args:
            is_cancelled: asked again and again during the wait.
            limit_s: longest time since the process was started.

        Raises:
            DeviceError: there is none.
            WorkerFailedError, SynthesisCancelledError: as they say.
        """
        if self._is_ready:
            return
        error = self._reply(self._started_at + limit_s, is_cancelled)
        self._is_ready = True
        if error:
            raise DeviceError(f"This machine has no speech synthesiser: {error}.", REMEDY)

    def ask(self, request: dict[str, object], limit_s: float, is_cancelled: Callable[[], bool]) -> None:
        """Have the sentence written into its file.

        Raises:
            WorkerFailedError, SynthesisCancelledError: as they say. A cancelled sentence is still made; the next
                one comes after it.
        """
        try:
            if self._process.stdin is not None:
                self._process.stdin.write(json.dumps(request).encode() + b"\n")
                self._process.stdin.flush()
        except (OSError, ValueError) as failure:
            raise WorkerFailedError("it has ended") from failure
        self._owed += 1
        deadline = time.monotonic() + limit_s
        while self._owed:
            error = self._reply(deadline, is_cancelled)
            self._owed -= 1
        if error:
            raise WorkerFailedError(error)

    def kill(self) -> None:
        """End the process at once; killing twice does no harm."""
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
                error = self._replies.get(timeout=LOOK_UP_S)
                if error is None:
                    raise WorkerFailedError("it has ended")
                return error
            if time.monotonic() > deadline:
                raise WorkerFailedError("it does not answer")
        raise SynthesisCancelledError

    def _read(self) -> None:
        output = self._process.stdout
        if output is not None:
            with output, contextlib.suppress(OSError, ValueError):
                for line in output:
                    self._replies.put(str(json.loads(line)["error"]))
        self._has_ended = True
        self._replies.put(None)


class SpeakingProcesses:
    """Processes that are started ahead of their sentence.

    Args:
        command: starts one.
    """

    def __init__(self, command: tuple[str, ...]) -> None:
        self._command = command
        self._lock = threading.Lock()
        self._ready: deque[SpeakingProcess] = deque()
        self._busy: set[SpeakingProcess] = set()
        self._closed = False
        self._start_ahead(1)  # the second one after the first sentence, for which somebody may be waiting already

    @contextlib.contextmanager
    def one(self) -> Iterator[SpeakingProcess]:
        """A process for one sentence; it is ended afterwards, and another one started where engines can be had.

        Raises:
            DeviceError: none can be started.
            SynthesisCancelledError: closed, or closed meanwhile.
        """
        process = self._taken()
        ready = READY
        try:
            yield process
        except WorkerFailedError:
            if self._closed:
                raise SynthesisCancelledError from None  # it was killed for that
            raise
        except DeviceError:
            ready = 0
            self._end_ready()  # none of them would be better
            raise
        finally:
            # Beside the one who waits for the sentence.
            threading.Thread(target=self._replace, args=(process, ready), name="next synthesiser", daemon=True).start()

    def close(self) -> None:
        """End all of them."""
        with self._lock:
            self._closed = True
            busy = list(self._busy)
        self._end_ready()
        for process in busy:
            process.kill()

    def numbers(self) -> list[int]:
        """The system's numbers of the processes that wait."""
        with self._lock:
            return [process.number for process in self._ready]

    def _taken(self) -> SpeakingProcess:
        with self._lock:
            if self._closed:
                raise SynthesisCancelledError
            process = self._ready.popleft() if self._ready else SpeakingProcess(self._command)
            self._busy.add(process)  # where `close` finds it
            return process

    def _end_ready(self) -> None:
        with self._lock:
            ended = list(self._ready)
            self._ready.clear()
        for process in ended:
            process.kill()

    def _replace(self, process: SpeakingProcess, ready: int) -> None:
        process.kill()
        with self._lock:
            self._busy.discard(process)
        self._start_ahead(ready)

    def _start_ahead(self, count: int) -> None:
        with self._lock, contextlib.suppress(DeviceError):  # told when the next sentence is wanted
            while not self._closed and len(self._ready) < count:
                self._ready.append(SpeakingProcess(self._command))
