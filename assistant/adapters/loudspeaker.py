"""Sound going out: plays samples so that they can be stopped at once."""

import threading
import time
from collections.abc import Callable
from typing import Any

import numpy as np
import numpy.typing as npt
import soxr

from assistant.adapters.played import Played
from assistant.adapters.sound_devices import DEVICES, OpenStream, SoundDevices
from assistant.adapters.synthesiser import Speech
from assistant.errors import DeviceError

START_LIMIT_S = 4.0
"""Longest wait for a device to take the first samples."""
DRAIN_LIMIT_S = 3.0
"""Longest wait beyond the length of the sound."""
_LOOK_UP_S = 0.005
"""A hush is seen so quickly."""
_LONGEST_DELAY_S = 2.0


class Loudspeaker:
    """A loudspeaker of this machine, open only while something sounds."""

    def __init__(self, name: str | None = None, devices: SoundDevices = DEVICES, played: Played | None = None) -> None:
        """Prepare the loudspeaker with this name, or part of it; the default one for None.

        Args:
            name: the device.
            devices: this machine's.
            played: is told everything that is played, for whoever must know it in the microphone.
        """
        self._name = name
        self._devices = devices
        self._played = played

    def refresh(self) -> None:
        """Look for devices anew, where no other stream is open.

        Raises:
            DeviceError: PortAudio does not answer.
        """
        self._devices.refresh()

    def play(self, speech: Speech, gain: float, on_start: Callable[[], None], stop: threading.Event) -> bool:
        """Play to the end, or until `stop` is set.

        Args:
            speech: what to play.
            gain: factor on the samples; what goes beyond full scale is clipped.
            on_start: called once, when the device has taken the first samples.
            stop: set by another thread; sound ends within some tens of milliseconds.

        Returns:
            True when all was played, False when it was stopped.

        Raises:
            DeviceError: there is no loudspeaker, it is taken, or it stopped taking samples.
        """
        outlet = _Outlet(speech, gain, self._played)
        opened = self._devices.open_output(self._name, outlet.give, outlet.ended.set)
        outlet.connect(opened)
        try:
            start_deadline = time.monotonic() + START_LIMIT_S
            deadline = start_deadline + speech.length_s + opened.latency_s + DRAIN_LIMIT_S
            is_told = False
            while not outlet.drained.wait(_LOOK_UP_S):
                if stop.is_set():
                    return False
                if outlet.started.is_set() and not is_told:
                    is_told = True
                    on_start()
                late = not is_told and time.monotonic() > start_deadline
                if outlet.ended.is_set() or late or time.monotonic() > deadline:
                    raise DeviceError("The loudspeaker takes no sound any more.", "Check its plug.")
            if not is_told:
                on_start()
            return not stop.wait(opened.latency_s)  # what the device still holds sounds to its end
        finally:
            self._devices.close(opened)


class _Outlet:
    """The end of the wire: filled before it opens, emptied by PortAudio's thread."""

    def __init__(self, speech: Speech, gain: float, played: Played | None) -> None:
        self.started = threading.Event()
        self.drained = threading.Event()
        self.ended = threading.Event()
        self._speech = speech
        self._gain = gain
        self._played = played
        self._opened: OpenStream | None = None
        self._sound: memoryview | None = None
        self._at = 0

    def connect(self, opened: OpenStream) -> None:
        """Let the sound flow at what the device has agreed to."""
        self._opened = opened
        samples = _at_rate(self._speech, opened.rate_hz).astype(np.float32) * self._gain
        mono = np.clip(samples, -32_768, 32_767).astype(np.int16)
        self._sound = memoryview(np.repeat(mono, opened.channels).tobytes())

    def give(self, out: Any, _count: int, times: Any, _status: Any) -> None:
        """Fill what the device asks for, with silence before and after the sound."""
        size = len(out)
        sound = self._sound
        if sound is None:
            out[:] = bytes(size)
            return
        part = sound[self._at : self._at + size]
        out[: len(part)] = part
        if len(part) < size:
            out[len(part) :] = bytes(size - len(part))
        self._at += size
        if self._played is not None and self._opened is not None and len(part):
            delay_s = times.outputBufferDacTime - times.currentTime
            sounds = time.monotonic() + (delay_s if 0 < delay_s < _LONGEST_DELAY_S else self._opened.latency_s)
            self._played.add(self, bytes(part), self._opened.rate_hz, self._opened.channels, sounds)
        self.started.set()
        if self._at >= len(sound):
            self.drained.set()


def _at_rate(speech: Speech, rate_hz: int) -> npt.NDArray[np.int16]:
    if speech.rate_hz == rate_hz or len(speech.samples) == 0:
        return speech.samples
    samples: npt.NDArray[np.int16] = soxr.resample(speech.samples, speech.rate_hz, rate_hz)
    return samples
