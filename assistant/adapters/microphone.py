"""Sound coming in: blocks of samples as the device gives them."""

import queue
import threading
import time
from dataclasses import dataclass
from typing import Any, Protocol

from assistant.adapters.sound_devices import DEVICES, OpenStream, SoundDevices

LONGEST_BACKLOG_S = 10.0
"""Sound that waits while the recogniser works; what comes beyond it is dropped and reported as a gap."""


@dataclass(frozen=True)
class SoundBlock:
    """Some sound.

    Attributes:
        samples: 16-bit, interleaved where there is more than one channel.
        arrived: when it arrived, on the steady clock, seconds.
        gap: sound was lost right before it.
    """

    samples: bytes
    arrived: float
    gap: bool = False


class SoundSource(Protocol):
    """Where an ear's sound comes from."""

    @property
    def rate_hz(self) -> int:
        """Samples a second; known once it is open."""

    @property
    def channels(self) -> int:
        """Interleaved channels; known once it is open."""

    @property
    def latency_s(self) -> float:
        """How much older than its arrival a block may be, seconds."""

    def open(self) -> None:
        """Let sound flow. Raises DeviceError where that is impossible."""

    def next_block(self, timeout: float) -> SoundBlock | None:
        """The next block, or None when the time ran out."""

    def has_ended(self) -> bool:
        """No further block will come: the device went away."""

    def close(self) -> None:
        """Give the device back; a source can be opened again afterwards."""


class Microphone:
    """A microphone of this machine, as a `SoundSource`."""

    def __init__(self, name: str | None = None, devices: SoundDevices = DEVICES) -> None:
        """Prepare the microphone with this name, or part of it; the default one for None."""
        self._name = name
        self._devices = devices
        self._opened: OpenStream | None = None
        self._was_opened = False
        self._inlet = _Inlet()

    @property
    def rate_hz(self) -> int:
        """Samples a second."""
        return self._stream().rate_hz

    @property
    def channels(self) -> int:
        """Interleaved channels."""
        return self._stream().channels

    @property
    def latency_s(self) -> float:
        """How much older than its arrival a block may be, seconds."""
        return self._stream().latency_s

    def open(self) -> None:
        """Open the device; from the second time on after looking for devices anew, if no other stream is open.

        Raises:
            DeviceError: there is none, it is taken, or PortAudio is missing.
        """
        self.close()
        if self._was_opened:
            self._devices.refresh()
        self._was_opened = True
        self._inlet = inlet = _Inlet()
        self._opened = self._devices.open_input(self._name, inlet.take, inlet.ended.set)
        inlet.limit_bytes = int(LONGEST_BACKLOG_S * self.rate_hz * self.channels * 2)

    def next_block(self, timeout: float) -> SoundBlock | None:
        """The next block, or None when the time ran out."""
        return self._inlet.next(timeout)

    def has_ended(self) -> bool:
        """The device went away: its stream has ended by itself."""
        return self._inlet.ended.is_set()

    def close(self) -> None:
        """Give the device back; returns within `sound_devices.CLOSE_LIMIT_S`."""
        if self._opened is not None:
            opened, self._opened = self._opened, None
            self._devices.close(opened)

    def _stream(self) -> OpenStream:
        if self._opened is None:
            raise RuntimeError("the microphone is not open")
        return self._opened


class _Inlet:
    """The end of the wire: filled by PortAudio's thread, emptied by the ear's."""

    def __init__(self) -> None:
        self.ended = threading.Event()
        self.limit_bytes = 10_000_000
        # SimpleQueue: its put takes no lock of Python's, so the sound thread never waits for the ear.
        self._blocks: queue.SimpleQueue[SoundBlock] = queue.SimpleQueue()
        self._put_bytes = 0
        self._got_bytes = 0
        self._lost = False

    def take(self, samples: Any, _count: int, _times: Any, status: Any) -> None:
        """Copy what came, and nothing else: time spent here is sound lost."""
        if status:
            self._lost = True
        if self._put_bytes - self._got_bytes > self.limit_bytes:
            self._lost = True
            return
        block = SoundBlock(bytes(samples), time.monotonic(), self._lost)
        self._lost = False
        self._put_bytes += len(block.samples)
        self._blocks.put(block)

    def next(self, timeout: float) -> SoundBlock | None:
        try:
            block = self._blocks.get(timeout=timeout)
        except queue.Empty:
            return None
        self._got_bytes += len(block.samples)
        return block
