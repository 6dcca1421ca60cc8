"""The picture of sound, against an independent implementation and the scale's published corner points."""

import json
from pathlib import Path

import numpy as np
import pytest

from assistant.adapters.recognisers.features import BANDS, log_mel, mel_filters

REFERENCE = json.loads((Path(__file__).parents[2] / "data" / "log_mel.json").read_text())


def reference_signal():
    t = np.arange(16_000) / 16_000
    sweep = 0.4 * np.sin(2 * np.pi * (100 * t + 2000 * t**2)) + 0.1 * np.sin(2 * np.pi * 440 * t)
    return sweep.astype(np.float32)


def test_equals_an_independent_implementation():
    """Every band of nine frames, edges and padding among them, is what another library's extractor gives.

    Source: faster-whisper 1.2.1 (MIT), FeatureExtractor; the numbers and the signal stand in log_mel.json.
    """
    picture = log_mel(reference_signal(), 2.0)
    assert picture.shape == (BANDS, 200)
    expected = np.array([REFERENCE["bands"][str(band)] for band in range(BANDS)])
    assert np.abs(picture[:, REFERENCE["frames"]] - expected).max() < 1e-3


@pytest.mark.parametrize("band", [0, 1, 20, 41, 60, 79])
def test_filters_equal_an_independent_implementation(band):
    """A band's triangle has the same bins and weights as in another library. Source: as above."""
    expected = np.zeros(201)
    for place, weight in REFERENCE["filters"][str(band)]:
        expected[place] = weight
    assert np.abs(mel_filters()[band] - expected).max() < 1e-5


@pytest.mark.parametrize("hertz", [250, 500, 1000, 2000, 4000, 7000])
def test_a_tone_lies_in_its_own_band(hertz):
    """A pure tone is loudest in the band whose triangle has its peak nearest to it."""
    tone = np.sin(2 * np.pi * hertz * np.arange(16_000) / 16_000).astype(np.float32)
    loudest = int(log_mel(tone, 1.0)[:, 50].argmax())
    centres_hz = mel_filters().argmax(axis=1) * 40
    assert abs(centres_hz[loudest] - hertz) <= max(40, 0.04 * hertz)


def test_what_is_too_long_is_cut_and_what_is_short_is_padded():
    """The picture has the length that was asked for, whatever the sound's length."""
    assert log_mel(np.ones(100_000, np.float32), 1.0).shape == (BANDS, 100)
    assert log_mel(np.ones(10, np.float32), 1.0).shape == (BANDS, 100)
