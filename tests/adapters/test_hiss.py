"""A word that ends in a hiss is silent behind it; its hisses are raised, and nothing else changes."""

import numpy as np

from assistant.adapters.hiss import FADED_S, RAISED_DB, up_to_hiss

RATE_HZ = 24_000


def _hum(seconds: float, level: float) -> np.ndarray:
    return level * np.sin(2 * np.pi * 200 * np.arange(round(seconds * RATE_HZ)) / RATE_HZ)


def _hiss(seconds: float, level: float) -> np.ndarray:
    return level * np.sin(2 * np.pi * 7_000 * np.arange(round(seconds * RATE_HZ)) / RATE_HZ)


def _sound(*parts: np.ndarray) -> np.ndarray:
    return (np.concatenate(parts) * 32_767).astype(np.int16)


def test_what_hums_behind_the_last_hiss_is_silenced() -> None:
    """The vowel stays as it is, the hiss is raised, what follows fades within its time; the length stays."""
    sound = _sound(_hum(0.2, 0.5), _hiss(0.1, 0.1), _hum(0.2, 0.1))
    ended = up_to_hiss(sound, RATE_HZ)
    until = round(0.3 * RATE_HZ)
    assert len(ended) == len(sound)
    vowel, hiss = slice(0, round(0.19 * RATE_HZ)), slice(round(0.21 * RATE_HZ), round(0.29 * RATE_HZ))
    assert np.array_equal(ended[vowel], sound[vowel])
    assert np.allclose(ended[hiss], sound[hiss] * 10 ** (RAISED_DB / 20), atol=1)
    assert not ended[until + round((FADED_S + 0.011) * RATE_HZ) :].any()
    assert np.abs(sound[until:]).max() > 3_000


def test_a_sound_without_a_hiss_stays_as_it_is() -> None:
    """Neither a hum nor a hiss that is faint beside it ends a word; silence and no sound at all are nothing to end."""
    for sound in (
        _sound(_hum(0.3, 0.5)),
        _sound(_hum(0.2, 0.5), _hiss(0.1, 0.005), _hum(0.2, 0.5)),
        np.zeros(4_800, np.int16),
        np.zeros(0, np.int16),
    ):
        assert np.array_equal(up_to_hiss(sound, RATE_HZ), sound)
