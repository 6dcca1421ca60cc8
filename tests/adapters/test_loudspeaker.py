"""Samples from a sentence to the device: all of them, in time, and no longer than wanted."""

import threading
import time

import numpy as np
import pytest

from assistant.adapters import loudspeaker as loudspeaker_module
from assistant.adapters.loudspeaker import Loudspeaker
from assistant.adapters.sound_devices import OpenStream
from assistant.adapters.synthesiser import Speech
from assistant.errors import DeviceError

RATE_HZ = 16_000


class ScriptedDevices:
    """Stands for PortAudio: takes blocks from a thread of its own, much faster than real time."""

    def __init__(self, rate_hz=RATE_HZ, channels=1, takes=None):
        self.rate_hz = rate_hz
        self.channels = channels
        self.takes = takes
        self.ends = False
        self.taken = bytearray()
        self.is_open = False

    def open_output(self, name, callback, finished):
        self.is_open = True
        threading.Thread(target=self._take, args=(callback, finished), daemon=True).start()
        return OpenStream(object(), self.rate_hz, self.channels, 0.0)

    def close(self, opened):
        self.is_open = False
        return True

    def _take(self, callback, finished):
        blocks = 0
        while self.is_open and (self.takes is None or blocks < self.takes):
            block = bytearray(2 * 160 * self.channels)
            callback(memoryview(block), 160, None, None)
            self.taken += block
            blocks += 1
            time.sleep(0.0005)
        if self.ends:
            finished()

    def sound(self):
        """What was taken, without the silence around it."""
        samples = np.frombuffer(bytes(self.taken), np.int16)
        loud = np.flatnonzero(samples)
        return samples[loud[0] : loud[-1] + 1] if len(loud) else samples[:0]


class Started(threading.Event):
    count = 0

    def __call__(self):
        self.count += 1
        self.set()


def play(devices, samples, gain=1.0, rate_hz=RATE_HZ, stop=None):
    started = Started()
    speech = Speech(np.asarray(samples, np.int16), rate_hz)
    result = Loudspeaker(devices=devices).play(speech, gain, started, stop or threading.Event())
    assert not devices.is_open
    return result, started.count


def test_every_sample_is_played_once():
    """The whole sentence arrives, in order, once; its beginning is told once."""
    samples = np.arange(1, 5_001)
    devices = ScriptedDevices()
    assert play(devices, samples) == (True, 1)
    assert np.array_equal(devices.sound(), samples)


@pytest.mark.parametrize(("gain", "expected"), [(0.5, [50, -100, 15_000]), (2.0, [200, -400, 32_767])])
def test_gain_is_clipped_and_does_not_wrap(gain, expected):
    """Samples beyond full scale stay at full scale: wrapped around they would be a crack."""
    devices = ScriptedDevices()
    play(devices, [100, -200, 30_000], gain)
    assert devices.sound().tolist() == expected


def test_mono_reaches_every_channel():
    """A device that has no mono gets the same on every channel."""
    devices = ScriptedDevices(channels=2)
    play(devices, [1, 2, 3])
    assert devices.sound().tolist() == [1, 1, 2, 2, 3, 3]


def test_other_rate_is_resampled():
    """At three times the rate the same tone is three times as many samples."""
    tone = 10_000 * np.sin(np.arange(RATE_HZ) * 2 * np.pi * 440 / RATE_HZ)
    devices = ScriptedDevices(rate_hz=48_000)
    play(devices, tone)
    played = devices.sound().astype(float)
    assert len(played) == pytest.approx(3 * RATE_HZ, abs=300)
    spectrum = np.abs(np.fft.rfft(played, 48_000))
    assert int(np.argmax(spectrum)) == 440  # bins of 1 Hz


def test_what_follows_is_played_behind_it():
    """Sounds that are still being made when the first one begins come behind it, each sample once."""
    devices = ScriptedDevices()
    started = Started()

    def following():
        assert started.is_set()
        while not devices.taken:  # the device is ahead of whoever makes them
            time.sleep(0.001)
        yield Speech(np.full(1_000, 2, np.int16), RATE_HZ)
        yield Speech(np.full(1_000, 3, np.int16), RATE_HZ)

    first = Speech(np.ones(1_000, np.int16), RATE_HZ)
    assert Loudspeaker(devices=devices).play(first, 1.0, started, threading.Event(), following())
    assert started.count == 1
    sound = devices.sound()
    sound = sound[sound != 0]
    assert np.array_equal(sound, np.repeat([1, 2, 3], 1_000))


def test_what_fails_behind_it_ends_it():
    """Where the next sound cannot be made, the device is closed, and the failure is passed on."""
    devices = ScriptedDevices()

    def following():
        raise DeviceError("no voice", "none")
        yield

    first = Speech(np.ones(1_000, np.int16), RATE_HZ)
    with pytest.raises(DeviceError, match="no voice"):
        Loudspeaker(devices=devices).play(first, 1.0, Started(), threading.Event(), following())
    assert not devices.is_open


def test_stop_ends_it_early():
    """A sentence that is stopped after its beginning leaves most of itself unplayed."""
    stop = threading.Event()
    devices = ScriptedDevices()
    speech = Speech(np.ones(600 * RATE_HZ, np.int16), RATE_HZ)
    assert Loudspeaker(devices=devices).play(speech, 1, on_start=stop.set, stop=stop) is False
    assert not devices.is_open
    assert 0 < len(devices.sound()) < len(speech.samples) / 2


@pytest.mark.parametrize(("takes", "ends", "starts"), [(0, False, 0), (0, True, 0), (3, True, 1), (3, False, 1)])
def test_device_that_stops_taking_samples(monkeypatch, takes, ends, starts):
    """A device that never begins, goes away or stands still is an error and not a wait."""
    monkeypatch.setattr(loudspeaker_module, "START_LIMIT_S", 0.2)
    monkeypatch.setattr(loudspeaker_module, "DRAIN_LIMIT_S", 0.2)
    devices = ScriptedDevices(takes=takes)
    devices.ends = ends
    started = Started()
    with pytest.raises(DeviceError, match="takes no sound any more"):
        Loudspeaker(devices=devices).play(Speech(np.ones(8_000, np.int16), RATE_HZ), 1, started, threading.Event())
    assert started.count <= starts
    assert not devices.is_open
