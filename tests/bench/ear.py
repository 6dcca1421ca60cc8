"""A real ear and recogniser that hear sound without devices, for benches: as fast as they can, or in real time."""

import contextlib
import queue
import time
from collections.abc import Iterator

import numpy as np

from assistant.adapters.clock import SystemClock
from assistant.adapters.listener import Listener
from assistant.adapters.microphone import SoundBlock
from assistant.adapters.recognisers.choose import open_recogniser
from assistant.guide.events import Heard, NotUnderstood
from assistant.ports import AnswerHeard

RATE_HZ = 16_000


class PlayedSound:
    """Sound for an ear without devices, as a `SoundSource`; blocks of 30 ms."""

    rate_hz = RATE_HZ
    channels = 1
    latency_s = 0.0

    def __init__(self, *, is_real_time: bool) -> None:
        self._sound: queue.Queue[np.ndarray] = queue.Queue()
        self._is_real_time = is_real_time
        self.silent_s = 0.0
        self._due = time.monotonic()

    def say(self, samples: np.ndarray) -> None:
        size = 480
        for start in range(0, len(samples) - size + 1, size):
            self._sound.put(samples[start : start + size])
        self.silent_s = 0.0

    def open(self) -> None:
        pass

    def close(self) -> None:
        pass

    def has_ended(self) -> bool:
        return False

    def next_block(self, timeout: float) -> SoundBlock:
        if self._is_real_time:
            self._due = max(self._due + 0.03, time.monotonic() - 0.3)
            time.sleep(max(0.0, self._due - time.monotonic()))
        try:
            block = self._sound.get_nowait()
        except queue.Empty:
            self.silent_s += 0.03
            block = np.zeros(480, np.int16)
            time.sleep(0.002)
        return SoundBlock(block.astype("<i2").tobytes(), time.monotonic(), False)


@contextlib.contextmanager
def ear(fixed_s: float | None = None, *, is_real_time: bool = True) -> Iterator[tuple]:
    """The source, the ear, and the queue of its events."""
    events: queue.Queue[object] = queue.Queue()
    source = PlayedSound(is_real_time=is_real_time)
    listener = Listener(open_recogniser(None), events.put, SystemClock(), source=source, fixed_pause_s=fixed_s)
    try:
        yield source, listener, events
    finally:
        listener.close()


def answers(events: "queue.Queue[object]", silence_s: float, source: PlayedSound) -> list[Heard | NotUnderstood]:
    """What was heard until the room had been silent for so long and the recogniser had come to rest."""
    found = []
    while source.silent_s < silence_s:
        with contextlib.suppress(queue.Empty):
            event = events.get(timeout=0.05)
            if isinstance(event, AnswerHeard):
                found.append(event.event)
    return found
