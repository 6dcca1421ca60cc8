"""What the loudspeaker plays, sample by sample and with its time: the reference for what the microphone hears of it."""

import contextlib
import queue
from dataclasses import dataclass
from typing import Any

import numpy as np
import numpy.typing as npt
import soxr

from assistant.ports import SAMPLE_RATE_HZ

CHUNK = SAMPLE_RATE_HZ // 100
"""Samples that are looked at together (10 ms): the WebRTC module takes so many."""
AHEAD_S = 0.04
"""The reference is given so much earlier than it sounds: times of devices are not exact, and an echo that seems to
come before its sound cannot be cancelled."""
MOST_OFF_S = 0.03
"""Sound that seems to come so much off its place belongs there, for a device has stumbled."""
MOST_PARTS = 1_000
"""So many parts wait at most, tens of seconds of sound; the oldest go first."""
_RING = 16 * SAMPLE_RATE_HZ

Samples = npt.NDArray[np.int16]


@dataclass(frozen=True)
class _Part:
    """What a loudspeaker took: 16-bit interleaved samples and when the first one sounds, steady clock, seconds."""

    stream: object
    samples: bytes
    rate_hz: int
    channels: int
    sounds: float


class Played:
    """What the loudspeaker plays, on its way to whoever must know it."""

    def __init__(self) -> None:
        # SimpleQueue, as in the microphone: PortAudio's thread never waits.
        self._parts: queue.SimpleQueue[_Part] = queue.SimpleQueue()

    def add(self, stream: object, samples: bytes, rate_hz: int, channels: int, sounds: float) -> None:
        """The loudspeaker has taken these samples of this stream; the first one sounds at this time."""
        if self._parts.qsize() >= MOST_PARTS:  # nobody looks, for the microphone has gone
            with contextlib.suppress(queue.Empty):
                self._parts.get_nowait()
        self._parts.put(_Part(stream, samples, rate_hz, channels, sounds))

    def taken(self) -> list[_Part]:
        """What came since the last call."""
        parts = []
        while True:
            try:
                parts.append(self._parts.get_nowait())
            except queue.Empty:
                return parts


class Reference:
    """What the loudspeaker plays as mono samples at `SAMPLE_RATE_HZ`, each at its place on the steady clock."""

    def __init__(self, played: Played) -> None:
        self._played = played
        self._ring = np.zeros(_RING, np.int16)
        self._stream: object = None
        self._resampler: Any = None
        self._due_s = 0.0
        self._next = 0
        self.beginnings = 0
        """How many streams have begun, or stumbled: after each the voice may come back with another delay."""

    def collect(self, place: int) -> None:
        """Take in what was played since the last call; what lies before `place` comes too late to be of use."""
        for part in self._played.taken():
            if part.stream is not self._stream or abs(part.sounds - self._due_s) > MOST_OFF_S:
                self._begin(part)
            # Within a stream one part follows the other; the times of parts tremble.
            samples = np.frombuffer(part.samples, np.int16)[:: part.channels]
            self._due_s += len(samples) / part.rate_hz
            resampled = self._resampler.resample_chunk(samples)
            at = np.arange(self._next, self._next + len(resampled))
            self._ring[at[at >= place] % _RING] = resampled[at >= place]
            self._next += len(resampled)

    def _begin(self, part: _Part) -> None:
        self._stream = part.stream
        self._resampler = soxr.ResampleStream(part.rate_hz, SAMPLE_RATE_HZ, 1, dtype="int16")
        self._due_s = part.sounds
        self._next = round((part.sounds - AHEAD_S) * SAMPLE_RATE_HZ)
        self.beginnings += 1

    def take(self, place: int) -> Samples:
        """`CHUNK` samples from this place on, once: nothing sounds there a second time."""
        at = np.arange(place, place + CHUNK) % _RING
        samples = self._ring[at]
        self._ring[at] = 0
        return samples
