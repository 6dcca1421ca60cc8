"""Devices by name, and a machine without PortAudio. The library is scripted; `test_real_sound` has the real one."""

import importlib.abc
import subprocess
import sys
import threading
from types import ModuleType, SimpleNamespace

import pytest

from assistant.adapters import sound_devices
from assistant.adapters.sound_devices import SoundDevices, looks_like_headset
from assistant.errors import DeviceError


class RefusalError(Exception):
    """What the library raises."""


class ScriptedStream:
    latency = 0.03

    def __init__(self, library, **how):
        library.tried.append((how["device"], how["samplerate"], how["channels"]))
        if (how["samplerate"], how["channels"]) in library.refused:
            raise RefusalError("Error opening RawInputStream: Device unavailable [PaErrorCode -9985]")
        self._library = library
        self.closed = False

    def start(self):
        pass

    def abort(self):
        self._library.hang.wait(30)

    def close(self):
        self.closed = True


class ScriptedPortAudio(ModuleType):
    def __init__(self):
        super().__init__("sounddevice")
        self.PortAudioError = RefusalError
        self.refused = set()
        self.tried = []
        self.restarts = 0
        self.hang = threading.Event()
        self.hang.set()
        self.default = SimpleNamespace(device=[1, 2])
        self.devices = [
            _device("Webcam", 1, 0, 16_000.0),
            _device("USB Headset", 2, 2, 48_000.0),
            _device("Monitor", 0, 2, 44_100.0),
            _device("Headset", 1, 0, 44_100.0),
        ]

    def query_devices(self):
        return self.devices

    def query_hostapis(self):
        return [{"name": "ALSA"}]

    def RawInputStream(self, **how):  # noqa: N802 - the library's name
        return ScriptedStream(self, **how)

    def _terminate(self):
        self.restarts += 1

    def _initialize(self):
        pass


def _device(name, inputs, outputs, rate):
    return {
        "name": name,
        "hostapi": 0,
        "max_input_channels": inputs,
        "max_output_channels": outputs,
        "default_samplerate": rate,
    }


@pytest.fixture
def library(monkeypatch):
    scripted = ScriptedPortAudio()
    monkeypatch.setitem(sys.modules, "sounddevice", scripted)
    monkeypatch.setattr(sound_devices, "keep_native_noise_out", lambda: None)
    return scripted


def open_input(devices, name=None):
    return devices.open_input(name, lambda *_: None, lambda: None)


@pytest.mark.parametrize(
    ("kind", "name", "found"),
    [
        ("microphone", None, "USB Headset"),
        ("microphone", "webcam", "Webcam"),
        ("microphone", "cam", "Webcam"),
        ("microphone", "headset", "Headset"),  # the whole name goes before a part of another
        ("microphone", "usb", "USB Headset"),
        ("loudspeaker", None, "Monitor"),
        ("loudspeaker", "head", "USB Headset"),
    ],
)
def test_device_by_name(library, kind, name, found):
    """A device is found by its name or part of it, in any case; without a name it is the default one."""
    assert getattr(SoundDevices(), kind)(name).name == found


@pytest.mark.parametrize(
    ("kind", "name", "there"),
    [
        ("microphone", "Monitor", '"Webcam", "USB Headset", "Headset"'),
        ("loudspeaker", "Webcam", '"USB Headset", "Monitor"'),
    ],
)
def test_unknown_device_is_told_with_those_that_are_there(library, kind, name, there):
    """A name that fits no device of this kind is an error that names those that are there."""
    with pytest.raises(DeviceError) as caught:
        getattr(SoundDevices(), kind)(name)
    assert caught.value.what == f'There is no {kind} called "{name}".'
    assert caught.value.remedy == f"On this machine: {there}."


def test_machine_without_microphone(library):
    """Without any microphone the error says so."""
    library.devices = [_device("Monitor", 0, 2, 44_100.0)]
    library.default.device = [-1, 0]
    with pytest.raises(DeviceError, match=r"^This machine has no microphone\."):
        SoundDevices().microphone()


@pytest.mark.parametrize(
    ("refused", "rate_hz", "channels"),
    [
        (set(), 48_000, 1),
        ({(48_000, 1)}, 48_000, 2),
        ({(48_000, 1), (48_000, 2)}, 44_100, 1),
        ({(48_000, 1), (48_000, 2), (44_100, 1), (44_100, 2)}, 16_000, 1),
    ],
)
def test_opens_at_its_own_rate_in_mono_or_as_near_as_it_can(library, refused, rate_hz, channels):
    """The device's own rate in mono comes first, then what devices commonly can."""
    library.refused = refused
    opened = open_input(SoundDevices())
    assert (opened.rate_hz, opened.channels, opened.latency_s) == (rate_hz, channels, 0.03)
    assert library.tried[0] == (1, 48_000, 1)


def test_taken_device_is_told(library):
    """A device that refuses everything is told with its name, the reason and what to do."""
    library.refused = {(rate, channels) for rate in (48_000, 44_100, 16_000) for channels in (1, 2)}
    with pytest.raises(DeviceError) as caught:
        open_input(SoundDevices())
    assert caught.value.what == (
        '"USB Headset" cannot be opened (RawInputStream: Device unavailable [PaErrorCode -9985]).'
    )
    assert "no other program holds it" in caught.value.remedy


def test_looks_for_devices_only_while_nothing_is_open(library):
    """Devices are looked for anew while no stream is open, because that would end every stream."""
    devices = SoundDevices()
    assert devices.refresh() is True
    opened = open_input(devices)
    assert devices.refresh() is False
    assert devices.close(opened) is True
    assert devices.close(opened) is True
    assert opened.stream.closed
    assert devices.refresh() is True
    assert library.restarts == 2


def test_driver_that_hangs_holds_nobody_up(library, monkeypatch):
    """A driver that does not answer is given up after a while, and others get an error, not a wait without end."""
    monkeypatch.setattr(sound_devices, "CLOSE_LIMIT_S", 0.05)
    monkeypatch.setattr(sound_devices, "_LOCK_LIMIT_S", 0.05)
    devices = SoundDevices()
    opened = open_input(devices)
    library.hang.clear()
    assert devices.close(opened) is False
    with pytest.raises(DeviceError, match="does not answer"):
        devices.all()
    library.hang.set()


class _Refuses(importlib.abc.MetaPathFinder):
    def find_spec(self, name, path, target=None):
        if name == "sounddevice":
            raise OSError("PortAudio library not found")


def test_missing_portaudio_is_told_with_what_to_install(monkeypatch):
    """Without PortAudio the package's import fails; the user reads how to get it, and the keyboard goes on."""
    monkeypatch.delitem(sys.modules, "sounddevice", raising=False)
    monkeypatch.setattr(sys, "meta_path", [_Refuses(), *sys.meta_path])
    monkeypatch.setattr(sound_devices, "keep_native_noise_out", lambda: None)
    with pytest.raises(DeviceError) as caught:
        SoundDevices().microphone()
    assert caught.value.what == "The sound library PortAudio is not installed."
    assert sys.platform != "linux" or "libportaudio2" in caught.value.remedy


def test_native_noise_stays_off_the_console():
    """What libraries write to descriptor 2 goes nowhere; what the program says, and its tracebacks, are seen."""
    script = """
import os, sys
from assistant.adapters.quiet_console import keep_native_noise_out
keep_native_noise_out()
keep_native_noise_out()
os.write(2, b"ALSA lib pcm.c: noise\\n")
print("told", file=sys.stderr)
raise RuntimeError("seen")
"""
    ended = subprocess.run([sys.executable, "-c", script], capture_output=True, text=True, timeout=60)
    assert ended.stderr.startswith("told\nTraceback")
    assert ended.stderr.endswith("RuntimeError: seen\n")
    assert "ALSA" not in ended.stderr


def test_console_that_is_closed():
    """A program without an error output at all is no problem."""
    script = "from assistant.adapters.quiet_console import keep_native_noise_out as k; k(); print('fine')"
    ended = subprocess.run(
        ["sh", "-c", '"$0" -c "$1" 2>&-', sys.executable, script], capture_output=True, text=True, timeout=60
    )
    assert (ended.returncode, ended.stdout) == (0, "fine\n")


@pytest.mark.parametrize(
    ("name", "is_one"),
    [("USB Headset Mono", True), ("Headphones (Bluetooth)", True), ("Earphone", True), ("Built-in Audio", False)],
)
def test_a_headset_is_known_by_its_name(name, is_one):
    """Common practice, no source: makers and sound systems call it so."""
    assert looks_like_headset(name) is is_one
