"""Blocks of sound from the device to the ear: order, gaps, limits."""

import pytest

from assistant.adapters.microphone import LONGEST_BACKLOG_S, Microphone
from assistant.adapters.sound_devices import OpenStream
from assistant.errors import DeviceError


class ScriptedDevices:
    """Stands for PortAudio: a test plays the part of its sound thread."""

    def __init__(self):
        self.refreshed = 0
        self.closed = []
        self.missing = False

    def refresh(self):
        self.refreshed += 1
        return True

    def open_input(self, name, callback, finished):
        if self.missing:
            raise DeviceError("This machine has no microphone.")
        self.callback, self.finished = callback, finished
        return OpenStream(object(), 16_000, 1, 0.03)

    def close(self, opened):
        self.closed.append(opened)
        return True

    def give(self, samples, status=None):
        self.callback(memoryview(samples), len(samples) // 2, None, status)


@pytest.fixture
def devices():
    return ScriptedDevices()


@pytest.fixture
def microphone(devices):
    microphone = Microphone(devices=devices)
    microphone.open()
    return microphone


def test_blocks_in_order_with_their_time(devices, microphone):
    """Blocks come as they were given, copied, each with the time of its arrival."""
    sound = bytearray(b"\1\0\2\0")
    devices.give(sound)
    sound[:] = b"\0\0\0\0"  # PortAudio uses its buffer again
    devices.give(b"\3\0")
    blocks = [microphone.next_block(1), microphone.next_block(1)]
    assert [block.samples for block in blocks] == [b"\1\0\2\0", b"\3\0"]
    assert blocks[0].arrived <= blocks[1].arrived
    assert [block.gap for block in blocks] == [False, False]
    assert microphone.next_block(0.01) is None
    assert (microphone.rate_hz, microphone.channels, microphone.latency_s) == (16_000, 1, 0.03)


def test_lost_sound_marks_the_block_after_it(devices, microphone):
    """Where the device says that sound was lost, the block that comes with it is marked, and no later one."""
    devices.give(b"\1\0")
    devices.give(b"\2\0", status="input overflow")
    devices.give(b"\3\0")
    assert [microphone.next_block(1).gap for _ in range(3)] == [False, True, False]


def test_backlog_is_bounded(devices, microphone):
    """An ear that does not come loses sound beyond the limit, and is told where; afterwards all is as before."""
    second = bytes(2 * 16_000)
    for _ in range(60):
        devices.give(second)
    blocks = []
    while (block := microphone.next_block(0.01)) is not None:
        blocks.append(block)
    assert len(blocks) == LONGEST_BACKLOG_S + 1
    assert not any(block.gap for block in blocks)
    devices.give(second)
    devices.give(second)
    assert [microphone.next_block(1).gap for _ in range(2)] == [True, False]


def test_end_of_the_stream_is_seen(devices, microphone):
    """A stream that ends by itself is seen; opened again, it is a new one, after looking for devices."""
    assert (microphone.has_ended(), devices.refreshed) == (False, 0)
    devices.finished()
    assert microphone.has_ended()
    microphone.open()
    assert (microphone.has_ended(), devices.refreshed, len(devices.closed)) == (False, 1, 1)


def test_missing_microphone_can_be_tried_again(devices):
    """Opening fails as long as there is none, and works when there is."""
    microphone = Microphone(devices=devices)
    devices.missing = True
    for _ in range(2):
        with pytest.raises(DeviceError):
            microphone.open()
    devices.missing = False
    microphone.open()
    microphone.close()
    microphone.close()
    assert len(devices.closed) == 1
