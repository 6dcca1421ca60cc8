"""PortAudio as one shared thing: which devices there are, opening streams, looking for devices anew.

PortAudio belongs to the whole process: it finds devices once, when it is initialised, and can be initialised
anew only while no stream is open. So every stream of the program is opened and closed here, under one lock.
"""

import atexit
import contextlib
import sys
import threading
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from types import ModuleType
from typing import Any, Protocol

from assistant.adapters.quiet_console import keep_native_noise_out
from assistant.errors import DeviceError

CLOSE_LIMIT_S = 0.8
"""Longest wait for a stream to close; a driver whose device is gone may never answer."""
INPUT_BLOCK_S = 0.02
"""Sound of a microphone comes in blocks of this length: left to the driver they are so short that passing them on
takes more of the processor than hearing does."""
OUTPUT_LATENCY_S = 0.3
"""Sound that a loudspeaker holds ahead: left to the driver it is 35 ms, and the voice has holes where the processor
is busy for longer. It delays neither the first sound nor the silence after a hush, for `close` drops what is left."""
_LOCK_LIMIT_S = 4.0
_COMMON_RATES_HZ = (48_000, 44_100, 16_000)

InputCallback = Callable[[Any, int, Any, Any], None]
"""Called by PortAudio: samples in, how many, times, status flags."""
OutputCallback = Callable[[Any, int, Any, Any], None]
"""Called by PortAudio: samples to fill, how many, times, status flags."""

if sys.platform == "linux":
    PORTAUDIO_REMEDY = "Install the system packages libportaudio2 and espeak-ng (Debian, Ubuntu: apt install them)."
else:
    PORTAUDIO_REMEDY = "Install the Python package sounddevice again; it brings PortAudio along."


@dataclass(frozen=True)
class Device:
    """A microphone or loudspeaker as the sound system names it.

    Attributes:
        index: PortAudio's number for it, valid until the next `SoundDevices.refresh`.
        name: as the sound system calls it.
        system: the sound system below, for example "ALSA".
        inputs, outputs: how many channels it records and plays.
        rate_hz: its own sample rate.
        default_input, default_output: the one that is used where no name is given.
    """

    index: int
    name: str
    system: str
    inputs: int
    outputs: int
    rate_hz: int
    default_input: bool = False
    default_output: bool = False


class Stream(Protocol):
    """The part of a PortAudio stream that is used here."""

    @property
    def latency(self) -> float:
        """Seconds between the air and the program."""

    def start(self) -> None:
        """Let sound flow."""

    def abort(self) -> None:
        """Stop at once; what is not yet played is dropped."""

    def close(self) -> None:
        """Give the device back."""


@dataclass(frozen=True)
class OpenStream:
    """A stream that runs, with what the device agreed to."""

    stream: Stream
    rate_hz: int
    channels: int
    latency_s: float


class SoundDevices:
    """The devices of this machine."""

    def __init__(self) -> None:
        self._lock = threading.RLock()
        self._open: set[int] = set()
        self._library: ModuleType | None = None

    def all(self) -> list[Device]:
        """Every device, microphones and loudspeakers together.

        Raises:
            DeviceError: there is no PortAudio, or it does not answer.
        """
        with self._locked():
            library = self._portaudio()
            try:
                default_in, default_out = (int(number) for number in library.default.device)
                systems = [str(system["name"]) for system in library.query_hostapis()]
                return [
                    Device(
                        index=number,
                        name=str(found["name"]),
                        system=systems[found["hostapi"]],
                        inputs=int(found["max_input_channels"]),
                        outputs=int(found["max_output_channels"]),
                        rate_hz=round(found["default_samplerate"]),
                        default_input=number == default_in,
                        default_output=number == default_out,
                    )
                    for number, found in enumerate(library.query_devices())
                ]
            except library.PortAudioError as failure:
                raise DeviceError(f"The sound system does not list its devices: {failure}.") from failure

    def microphone(self, name: str | None = None) -> Device:
        """The microphone with this name, or part of it; the default one for None.

        Raises:
            DeviceError: there is none, or no PortAudio.
        """
        found = [device for device in self.all() if device.inputs > 0]
        return _chosen(found, name, "microphone", lambda device: device.default_input)

    def loudspeaker(self, name: str | None = None) -> Device:
        """The loudspeaker with this name, or part of it; the default one for None.

        Raises:
            DeviceError: there is none, or no PortAudio.
        """
        found = [device for device in self.all() if device.outputs > 0]
        return _chosen(found, name, "loudspeaker", lambda device: device.default_output)

    def refresh(self) -> bool:
        """Look for devices anew; False, and nothing done, while a stream is open.

        Raises:
            DeviceError: there is no PortAudio, or it does not answer.
        """
        with self._locked():
            if self._open:
                return False
            library = self._portaudio()
            try:
                # The package has no public way to find devices that have come; these two calls are its own.
                library._terminate()
                library._initialize()
            except library.PortAudioError as failure:
                raise DeviceError(f"The sound system could not be started again: {failure}.") from failure
            return True

    def open_input(self, name: str | None, callback: InputCallback, finished: Callable[[], None]) -> OpenStream:
        """Open a microphone at its own rate, mono where it can, 16-bit, and let sound flow.

        Args:
            name: the device's name or part of it; None for the default.
            callback: gets each block of samples, in PortAudio's thread.
            finished: called when the stream has ended, also when the device went away.

        Raises:
            DeviceError: there is none, or it is taken.
        """
        with self._locked():
            device = self.microphone(name)
            library = self._portaudio()
            kind = library.RawInputStream
            return self._opened(kind, device, device.inputs, device.rate_hz, callback, finished, INPUT_BLOCK_S)

    def open_output(self, name: str | None, callback: OutputCallback, finished: Callable[[], None]) -> OpenStream:
        """Open a loudspeaker at its own rate, mono where it can, 16-bit, and let sound flow.

        Raises:
            DeviceError: there is none, or it is taken.
        """
        with self._locked():
            device = self.loudspeaker(name)
            library = self._portaudio()
            kind = library.RawOutputStream
            return self._opened(
                kind, device, device.outputs, device.rate_hz, callback, finished, latency_s=OUTPUT_LATENCY_S
            )

    def close(self, opened: OpenStream) -> bool:
        """Stop a stream at once and give its device back; closing twice does no harm.

        Returns:
            False where the driver did not answer within `CLOSE_LIMIT_S`; the stream then counts as open,
            because initialising PortAudio anew would hang as well.
        """
        if id(opened.stream) not in self._open:
            return True
        done = threading.Event()

        def close() -> None:
            library = self._portaudio()
            with self._lock:
                if id(opened.stream) in self._open:
                    for act in (opened.stream.abort, opened.stream.close):
                        with contextlib.suppress(library.PortAudioError):
                            act()
                    self._open.discard(id(opened.stream))
            done.set()

        threading.Thread(target=close, name="closing sound", daemon=True).start()
        if done.wait(CLOSE_LIMIT_S):
            return True
        # The package closes PortAudio when the program ends; with such a driver the program would never end.
        handler: Callable[[], None] | None = getattr(self._portaudio(), "_exit_handler", None)
        if handler is not None:
            atexit.unregister(handler)
        return False

    def _opened(
        self,
        kind: Callable[..., Any],
        device: Device,
        most_channels: int,
        own_rate_hz: int,
        callback: Callable[[Any, int, Any, Any], None],
        finished: Callable[[], None],
        block_s: float = 0.0,
        latency_s: float | None = None,
    ) -> OpenStream:
        library = self._portaudio()
        failure: Exception | None = None
        rates = dict.fromkeys((own_rate_hz, *_COMMON_RATES_HZ))
        channel_counts = dict.fromkeys((1, min(2, most_channels)))
        for rate_hz in rates:
            for channels in channel_counts:
                try:
                    stream = kind(
                        device=device.index,
                        samplerate=rate_hz,
                        channels=channels,
                        blocksize=round(block_s * rate_hz),
                        dtype="int16",
                        latency=latency_s,
                        callback=callback,
                        finished_callback=finished,
                    )
                except library.PortAudioError as refused:
                    failure = failure or refused
                    continue
                try:
                    stream.start()
                except library.PortAudioError as refused:
                    failure = failure or refused
                    with contextlib.suppress(library.PortAudioError):
                        stream.close()
                    continue
                self._open.add(id(stream))
                return OpenStream(stream, rate_hz, channels, float(stream.latency))
        raise DeviceError(
            f'"{device.name}" cannot be opened ({_short(failure)}).',
            "Check that it is plugged in and that no other program holds it.",
        ) from failure

    def _portaudio(self) -> ModuleType:
        if self._library is None:
            keep_native_noise_out()
            try:
                # Here and not above: it fails where PortAudio is missing, and the keyboard needs none.
                import sounddevice
            except OSError as failure:
                raise DeviceError("The sound library PortAudio is not installed.", PORTAUDIO_REMEDY) from failure
            except Exception as failure:  # its own error class comes with the module that failed
                raise DeviceError(f"The sound system does not start: {failure}.", PORTAUDIO_REMEDY) from failure
            self._library = sounddevice
        return self._library

    @contextlib.contextmanager
    def _locked(self) -> Iterator[None]:
        if not self._lock.acquire(timeout=_LOCK_LIMIT_S):
            raise DeviceError("The sound system does not answer.", "Unplug the device that hangs and start again.")
        try:
            yield
        finally:
            self._lock.release()


DEVICES = SoundDevices()
"""The one instance: PortAudio exists once in a process."""


def looks_like_headset(name: str) -> bool:
    """Whether a device's name says that it is worn on the head (common practice, no source)."""
    return any(word in name.casefold() for word in ("headset", "headphone", "earphone", "earbud"))


def _chosen(found: list[Device], name: str | None, what: str, is_default: Callable[[Device], bool]) -> Device:
    if name is None:
        for device in found:
            if is_default(device):
                return device
        if not found:
            raise DeviceError(f"This machine has no {what}.", "Plug one in. You can keep typing in the meantime.")
        return found[0]
    wanted = name.casefold()
    for fits in (lambda known: known == wanted, lambda known: wanted in known):
        for device in found:
            if fits(device.name.casefold()):
                return device
    there = ", ".join(f'"{device.name}"' for device in found) or "none"
    raise DeviceError(f'There is no {what} called "{name}".', f"On this machine: {there}.")


def _short(failure: Exception | None) -> str:
    if failure is None:
        return "no rate fits"
    return str(failure.args[0]).removeprefix("Error opening ").rstrip(".")
