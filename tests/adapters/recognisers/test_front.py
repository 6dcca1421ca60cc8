"""Sound as it comes is brought to a usual level, with a little quiet around the speech."""

import numpy as np
import pytest

from assistant.adapters.recognisers.front import LEVEL, QUIET_S, prepared, samples_of

RATE = 16_000
CHANCE = np.random.default_rng(7)


def tone(seconds, level):
    return (level * np.sqrt(2) * np.sin(2 * np.pi * 300 * np.arange(round(seconds * RATE)) / RATE)).astype(np.float32)


def quiet(seconds, level=0.0):
    return (level * CHANCE.standard_normal(round(seconds * RATE))).astype(np.float32)


@pytest.mark.parametrize("level", [0.001, 0.03, 0.1, 0.6])
def test_loud_and_soft_speech_come_to_one_level(level):
    """A learner far from the microphone and one close to it are heard alike."""
    speech = prepared(np.concatenate([quiet(0.5), tone(1, level), quiet(0.5)]))
    assert speech is not None
    assert np.sqrt(np.mean(np.square(speech[RATE // 2 : RATE]))) == pytest.approx(LEVEL, rel=0.05)


@pytest.mark.parametrize(("before", "after"), [(0.0, 0.0), (0.1, 2.0), (20.0, 15.0)])
def test_a_little_quiet_stands_around_the_speech(before, after):
    """Sound that begins with the first word gets some quiet, sound with half a minute of it loses most."""
    speech = prepared(np.concatenate([quiet(before, 1e-5), tone(1, 0.1), quiet(after, 1e-5)]))
    assert speech is not None
    assert len(speech) / RATE == pytest.approx(1 + 2 * QUIET_S, abs=0.05)


@pytest.mark.parametrize("samples", [quiet(0), quiet(2), quiet(2, 1e-6), quiet(2) + np.float32(0.3)])
def test_no_sound_is_nothing(samples):
    """Nothing, silence, and a microphone that only gives a steady voltage."""
    assert prepared(samples) is None


def test_a_click_does_not_set_the_level():
    """A bump against the microphone is short; the speech after it is what counts."""
    click = np.concatenate([tone(0.04, 0.9), quiet(0.3), tone(1, 0.02)])
    speech = prepared(click)
    assert speech is not None
    assert np.sqrt(np.mean(np.square(speech[-RATE : -RATE // 2]))) > LEVEL / 2


def test_an_odd_byte_is_left_out():
    """Half a sample is none."""
    assert len(samples_of(b"\x00\x40\x00")) == 1
