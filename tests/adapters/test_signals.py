"""Short sounds: told apart by rhythm alone, short, without clicks."""

import itertools

import numpy as np

from assistant.adapters.signals import SCORE, sound_of
from assistant.ports import Signal


def rhythm(signal):
    """Beginnings and lengths of what sounds, in hundredths of a second, read off the samples."""
    speech = sound_of(signal)
    size = speech.rate_hz // 100
    blocks = np.abs(speech.samples[: len(speech.samples) // size * size].reshape(-1, size).astype(int)).max(axis=1)
    return "".join("x" if loud > 500 else "." for loud in blocks)


def test_every_signal_has_a_rhythm_of_its_own():
    """Somebody who hears only one pitch can tell them apart: by how many sounds there are and how long they are."""
    beats = {signal: [len(beat) for beat in rhythm(signal).split(".") if beat] for signal in Signal}
    assert set(SCORE) == set(Signal)
    for one, other in itertools.combinations(beats.values(), 2):
        assert len(one) != len(other) or max(abs(a - b) for a, b in zip(one, other, strict=True)) >= 5


def test_signals_are_short_and_begin_and_end_softly():
    """None keeps anybody waiting, and none clicks."""
    for signal in Signal:
        speech = sound_of(signal)
        assert speech.length_s <= 0.4
        assert abs(int(speech.samples[0])) < 50
        assert np.abs(speech.samples.astype(int)).max() < 0.35 * 32_768
