"""One process that speaks sentence after sentence, and what becomes of it when it ends or hangs."""

import threading
from collections.abc import Callable

from assistant.adapters.speaking_process import (
    LOOK_UP_S,
    START_LIMIT_S,
    SpeakingProcess,
    SynthesisCancelledError,
    WorkerFailedError,
)
from assistant.errors import DeviceError

PATIENCE_S = 1.0
"""So long after its start a lasting process is waited for; under load another voice is there earlier."""
MOST_FAILURES = 3
"""So many failures in a row, and a lasting process is given up."""


class LastingProcess:
    """One process for all sentences, started anew when it ends or hangs; given up when that happens again and again.

    Args:
        command: starts it.
        patience_s: so long after its start a sentence waits for it to be ready, and no longer.
    """

    def __init__(self, command: tuple[str, ...], patience_s: float = PATIENCE_S) -> None:
        self._command = command
        self._patience_s = patience_s
        self._asking = threading.Lock()
        self._failures = 0
        self._closed = False
        self._process: SpeakingProcess | None = None
        self._start()

    @property
    def number(self) -> int | None:
        """The system's number of the process; None where there is none."""
        return None if self._process is None else self._process.number

    @property
    def is_given_up(self) -> bool:
        """Whether it will speak no more."""
        return self._failures >= MOST_FAILURES

    def ask(self, request: dict[str, object], limit_s: float, is_cancelled: Callable[[], bool]) -> None:
        """Have a sentence written into its file; one after the other, whoever asks.

        Raises:
            WorkerFailedError: it is not ready yet, failed, or is given up.
            SynthesisCancelledError: `is_cancelled` said so, or it was closed.
        """
        while not self._asking.acquire(timeout=LOOK_UP_S):
            if is_cancelled():
                raise SynthesisCancelledError
        try:
            self._ask(request, limit_s, lambda: self._closed or is_cancelled())
        finally:
            self._asking.release()

    def close(self) -> None:
        """End the process; a wait for a sentence ends as well."""
        self._closed = True
        if self._process is not None:
            self._process.kill()

    def _ask(self, request: dict[str, object], limit_s: float, is_cancelled: Callable[[], bool]) -> None:
        process = self._process
        if process is None or self.is_given_up:
            raise WorkerFailedError("it is given up")
        try:
            process.wait_for_start(is_cancelled, self._patience_s)
        except DeviceError as missing:
            self._failures = MOST_FAILURES  # another start would find the same
            process.kill()
            raise WorkerFailedError(str(missing)) from missing
        except WorkerFailedError:
            if process.has_ended or process.age_s > START_LIMIT_S:
                self._replace(process)
            raise
        try:
            process.ask(request, limit_s, is_cancelled)
        except WorkerFailedError:
            self._replace(process)
            raise
        self._failures = 0

    def _replace(self, process: SpeakingProcess) -> None:
        process.kill()
        self._failures += 1
        if not self._closed and not self.is_given_up:
            self._start()

    def _start(self) -> None:
        try:
            self._process = SpeakingProcess(self._command)
        except DeviceError:
            self._process = None
        if self._closed and self._process is not None:
            self._process.kill()  # closed meanwhile
