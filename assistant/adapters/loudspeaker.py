"""Sound going out: plays samples so that they can be stopped at once."""

import threading
import time
from collections.abc import Callable, Iterable
from typing import Any

import numpy as np

from assistant.adapters.played import Played
from assistant.adapters.sound_devices import DEVICES, OpenStream, SoundDevices
from assistant.adapters.synthesiser import Speech, at_rate
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

    def play(
        self,
        speech: Speech,
        gain: float,
        on_start: Callable[[], None],
        stop: threading.Event,
        following: Iterable[Speech] = (),
    ) -> bool:
        """Play to the end, or until `stop` is set.

        Args:
            speech: what to play.
            gain: factor on the samples; what goes beyond full scale is clipped.
            on_start: called once, when the device has taken the first samples.
            stop: set by another thread; sound ends within some tens of milliseconds.
            following: what comes behind it without a gap; taken while it sounds, so that it can still be made then.
                Whoever makes it has to look at `stop` as well. What it raises is passed on, and ends the sound.

        Returns:
            True when all was played, False when it was stopped.

        Raises:
            DeviceError: there is no loudspeaker, it is taken, or it stopped taking samples.
        """
        outlet = _Outlet(gain, self._played)
        opened = self._devices.open_output(self._name, outlet.give, outlet.ended.set)
        try:
            outlet.connect(opened, speech)
            if not self._waited(outlet.started, outlet, stop, START_LIMIT_S):
                return False
            on_start()
            length_s = speech.length_s
            for more in following:
                if stop.is_set():
                    return False
                outlet.add(more)
                length_s += more.length_s
            outlet.complete.set()
            if not self._waited(outlet.drained, outlet, stop, length_s + opened.latency_s + DRAIN_LIMIT_S):
                return False
            return not stop.wait(opened.latency_s)  # what the device still holds sounds to its end
        finally:
            self._devices.close(opened)

    def _waited(self, event: threading.Event, outlet: "_Outlet", stop: threading.Event, limit_s: float) -> bool:
        """Whether the event came; False where it was stopped before."""
        deadline = time.monotonic() + limit_s
        while not event.wait(_LOOK_UP_S):
            if stop.is_set():
                return False
            if outlet.ended.is_set() or time.monotonic() > deadline:
                raise DeviceError("The loudspeaker takes no sound any more.", "Check its plug.")
        return True


class _Outlet:
    """The end of the wire, emptied by PortAudio's thread while it may still be filled.

    Attributes:
        started: the first samples were taken.
        complete: set by the owner when nothing more comes.
        drained: everything was taken.
        ended: the stream has ended.
    """

    def __init__(self, gain: float, played: Played | None) -> None:
        self.started = threading.Event()
        self.complete = threading.Event()
        self.drained = threading.Event()
        self.ended = threading.Event()
        self._gain = gain
        self._played = played
        self._opened: OpenStream | None = None
        self._sound = memoryview(b"")
        self._at = 0

    def connect(self, opened: OpenStream, speech: Speech) -> None:
        """Let the sound flow at what the device has agreed to."""
        self._opened = opened
        self.add(speech)

    def add(self, speech: Speech) -> None:
        """Put a sound behind what is there."""
        if self._opened is None:
            return
        samples = at_rate(speech, self._opened.rate_hz).astype(np.float32) * self._gain
        mono = np.clip(samples, -32_768, 32_767).astype(np.int16)
        # Put in its place at once, for the other thread may read at any time.
        self._sound = memoryview(bytes(self._sound) + np.repeat(mono, self._opened.channels).tobytes())

    def give(self, out: Any, _count: int, times: Any, _status: Any) -> None:
        """Fill what the device asks for, with silence before, between and after the sounds."""
        size = len(out)
        is_complete = self.complete.is_set()  # before the sound is looked at: what comes later may be more
        sound = self._sound
        part = sound[self._at : self._at + size]
        out[: len(part)] = part
        if len(part) < size:
            out[len(part) :] = bytes(size - len(part))
        self._at += len(part)
        if self._played is not None and self._opened is not None and len(part):
            delay_s = times.outputBufferDacTime - times.currentTime
            sounds = time.monotonic() + (delay_s if 0 < delay_s < _LONGEST_DELAY_S else self._opened.latency_s)
            self._played.add(self, bytes(part), self._opened.rate_hz, self._opened.channels, sounds)
        if len(part):
            self.started.set()
        if is_complete and self._at >= len(sound):
            self.drained.set()
