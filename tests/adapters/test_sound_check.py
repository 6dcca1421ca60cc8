"""What the sound check makes of what it measured."""

from datetime import UTC, datetime

import numpy as np
import pytest

from assistant.adapters.microphone import SoundBlock
from assistant.adapters.sound_check import Meter, judged
from assistant.guide.events import Heard, NotUnderstood

NOW = datetime(2026, 11, 25, tzinfo=UTC)
LENGTH = 4_800


def heard(words: str) -> Heard:
    return Heard(NOW, words)


class OneBlock:
    """A source that gives sine waves of the levels that it is told."""

    rate_hz = 48_000
    channels = 1
    latency_s = 0.01

    def __init__(self, *amplitudes):
        wave = np.sin(np.arange(LENGTH) * 2 * np.pi / 48)
        self.blocks = [
            SoundBlock((wave * amplitude).clip(-32_768, 32_767).astype(np.int16).tobytes(), 0.0)
            for amplitude in amplitudes
        ]

    def open(self):
        pass

    def next_block(self, timeout):
        return self.blocks.pop(0) if self.blocks else None

    def has_ended(self):
        return not self.blocks

    def close(self):
        pass


def measured(room: float, voice: float) -> Meter:
    meter = Meter(OneBlock(room, voice))
    meter.next_block(0)
    meter.in_room = False
    meter.next_block(0)
    assert meter.has_ended()
    assert meter.next_block(0) is None
    return meter


@pytest.mark.parametrize(
    ("amplitude", "dbfs"),
    # A sine's level is its amplitude over the square root of two: 20 log10(a / 32768) - 3.01 dB.
    [(32_767, -3.0), (16_384, -9.0), (3_277, -23.0), (328, -43.0), (0, None)],
)
def test_level(amplitude, dbfs):
    """Levels are in decibels below full scale; silence without any noise has none."""
    meter = measured(amplitude, amplitude)
    assert meter.room_dbfs == (None if dbfs is None else pytest.approx(dbfs, abs=0.1))
    assert meter.loudest_dbfs == meter.room_dbfs


@pytest.mark.parametrize(
    ("room", "voice", "found", "by_mouth", "faults"),
    [
        (30, 6_000, heard("75"), False, []),
        (30, 6_000, heard("seventy five"), True, []),
        (30, 6_000, heard("seventy five mils an hour"), False, []),
        (30, 6_000, heard("79"), False, ['was heard as "79"']),
        (30, 6_000, heard("yes"), False, ['was heard as "yes"']),
        (30, 6_000, NotUnderstood(NOW), False, ["was heard, but not understood"]),
        (30, 6_000, None, False, ["no speech"]),
        (30, 35, None, False, ["does not pick up the loudspeaker"]),
        (30, 35, None, True, ["Nothing was heard."]),
        (0, 0, None, False, ["no sound at all"]),
        (0, 6_000, heard("75"), False, []),
        (1_500, 6_000, heard("75"), False, ["The room is loud."]),
        (30, 90_000, heard("75"), False, ["too loud for the microphone"]),
        (1_500, 90_000, NotUnderstood(NOW), False, ["room is loud", "too loud", "not understood"]),
    ],
)
def test_faults(room, voice, found, by_mouth, faults):
    """Each thing that is wrong is one sentence, in the order in which one would mend them."""
    told = judged(measured(room, voice), found, by_mouth=by_mouth)
    assert len(told) == len(faults)
    assert all(part in sentence for part, sentence in zip(faults, told, strict=True))
