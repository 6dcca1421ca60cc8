"""Pauses made shorter: nothing that was said is lost, and what fits already stays as it is."""

from itertools import chain

import numpy as np
import pytest

from assistant.adapters.recognisers import pauses
from assistant.adapters.recognisers.front import samples_of
from assistant.adapters.recognisers.trained import open_trained, trained_folder
from assistant.ports import SAMPLE_RATE_HZ
from assistant.spoken.expect import ConfirmExpected, NumberExpected
from tests.speakers import spoken

LONGEST_S = 5.8


def quiet(seconds, level=1e-4, seed=0):
    return np.random.default_rng(seed).normal(scale=level, size=round(seconds * SAMPLE_RATE_HZ)).astype(np.float32)


def slow(gap_s, *levels, noise=1e-4):
    """Words of half a second at these levels, with pauses between them, in a little noise."""
    words = [quiet(0.5, level, seed=number) for number, level in enumerate(levels)]
    gaps = [np.zeros(round(gap_s * SAMPLE_RATE_HZ), np.float32) for _ in words]
    said = np.concatenate([gaps[0][:4_800], *chain.from_iterable(zip(words, gaps, strict=True))])
    return (
        said[: len(said) - len(gaps[0]) + 4_800] + quiet(1, noise)[np.arange(len(said) - len(gaps[0]) + 4_800) % 16_000]
    )


def loud_s(speech, level):
    """Seconds in which it is louder than that."""
    frames = speech[: len(speech) // 320 * 320].reshape(-1, 320)
    return float(np.sum(np.sqrt(np.mean(frames**2, axis=1)) > level) * 0.02)


def test_what_fits_stays_as_it_is():
    """Not a sample is touched where there is room for it."""
    speech = slow(0.8, 0.1, 0.1, 0.1, 0.1)
    assert len(speech) < LONGEST_S * SAMPLE_RATE_HZ
    assert pauses.shortened(speech, LONGEST_S) is speech


@pytest.mark.parametrize("noise", [1e-5, 1e-3, 0.01])
@pytest.mark.parametrize("gap_s", [1.4, 2.5, 4.0])
def test_slow_speech_fits_and_all_words_stay(gap_s, noise):
    """With pauses of up to four seconds four words fit, and every one is as long as it was, in noise too."""
    speech = slow(gap_s, 0.1, 0.1, 0.1, 0.1, noise=noise)
    assert len(speech) > LONGEST_S * SAMPLE_RATE_HZ
    shorter = pauses.shortened(speech, LONGEST_S)
    assert LONGEST_S - 0.05 < len(shorter) / SAMPLE_RATE_HZ <= LONGEST_S
    assert loud_s(shorter, 0.05) == pytest.approx(loud_s(speech, 0.05), abs=0.021 * 4)


def test_hum_is_a_pause_too():
    """The mains in the recording, as loud as the words: they fit nevertheless, and stay."""
    speech = slow(1.4, 0.1, 0.1, 0.1, 0.1)
    hum = (0.14 * np.sin(2 * np.pi * 50 * np.arange(len(speech)) / SAMPLE_RATE_HZ)).astype(np.float32)
    shorter = pauses.shortened(speech + hum, LONGEST_S)
    assert len(shorter) / SAMPLE_RATE_HZ <= LONGEST_S
    # A square is what hum, and what words, have in all.
    words = np.sum(shorter**2) - np.mean(hum**2) * len(shorter)
    assert words == pytest.approx(np.sum(speech**2), rel=0.05)


def test_a_soft_word_is_no_pause():
    """A "point" that is 25 dB softer than the digits around it stays: what is softest goes first."""
    speech = slow(1.4, 0.1, 0.0056, 0.1, 0.1)
    shorter = pauses.shortened(speech, LONGEST_S)
    assert len(shorter) < len(speech)
    assert loud_s(shorter, 0.003) == pytest.approx(loud_s(speech, 0.003), abs=0.021 * 4)


@pytest.mark.parametrize("speech", [quiet(9, 0.1), slow(0.3, *[0.1] * 12), np.zeros(150_000, np.float32)])
def test_what_cannot_fit_stays_as_it_is(speech):
    """Talk without pauses, or with too few, is not cut into."""
    assert pauses.shortened(speech, LONGEST_S) is speech


@pytest.mark.sound
@pytest.mark.skipif(trained_folder() is None, reason="the trained model is not there")
def test_a_slow_number_is_heard_and_a_slow_yes_is_not_cut(monkeypatch):
    """Digits with a second and a half between them are heard; of nothing but a number is a pause taken out."""
    ear = open_trained()
    speech = samples_of(
        b"".join(spoken(word, "flite:slt") + bytes(48_000) for word in ["seven", "one", "eight", "five"])
    )
    assert len(speech) > 7 * SAMPLE_RATE_HZ
    lengths = []
    encode = ear.model._model.encode
    monkeypatch.setattr(
        ear.model._model, "encode", lambda sound, window_s: lengths.append(window_s) or encode(sound, window_s)
    )
    judged = ear.model.recognise(speech, NumberExpected("mL", digits_only=True))
    assert (judged.words, judged.doubtful, lengths[0]) == ("seven one eight five", False, 6.0)
    lengths.clear()
    ear.model.recognise(speech, ConfirmExpected())
    assert lengths[0] == 12.0
    ear.close()
