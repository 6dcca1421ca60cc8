"""Advice on a microphone's level, from sound of known level."""

import numpy as np
import pytest

from assistant.adapters.level import CLIPPED, MUTED, NOISY, SHOWN_S, SOFT, STEPS_DBFS, Level, Loudness, dbfs

RATE_HZ, FRAME = 16_000, 512


def tone(db, seconds=1.0):
    """A sine of this level, dB of full scale (a sine's mean square is half of its peak's)."""
    peak = 32_768 * 10 ** (db / 20) * 2**0.5
    wave = peak * np.sin(2 * np.pi * 300 * np.arange(int(RATE_HZ * seconds)) / RATE_HZ)
    return np.clip(wave, -32_768, 32_767).astype(np.int16)


def frames(level, samples):
    return {
        level.frame(samples[start : start + FRAME], is_speech=False) for start in range(0, len(samples) - FRAME, FRAME)
    }


@pytest.mark.parametrize(
    ("room_db", "speech_db", "advice"),
    [(-60, -25, ""), (-60, -50, SOFT), (-30, -25, NOISY), (-60, 1, CLIPPED), (-34, -22, ""), (-60, -41, "")],
)
def test_advice_on_an_utterance(room_db, speech_db, advice):
    """Too soft, too loud, hardly above the room; otherwise nothing. Each is told once."""
    level = Level(FRAME / RATE_HZ)
    assert frames(level, tone(room_db, 3)) == {""}
    assert level.utterance(tone(speech_db)) == advice
    assert level.utterance(tone(speech_db)) == ""


def test_perfect_silence_is_a_muted_microphone():
    """No sound at all for seconds is told once; the faintest noise is a microphone that is open."""
    level = Level(FRAME / RATE_HZ)
    assert frames(level, np.zeros(10 * RATE_HZ, np.int16)) == {"", MUTED}
    assert frames(level, np.zeros(10 * RATE_HZ, np.int16)) == {""}
    level = Level(FRAME / RATE_HZ)
    faint = np.zeros(10 * RATE_HZ, np.int16)
    faint[100] = 1
    assert frames(level, faint) == {""}


def test_the_level_is_shown_in_steps_where_it_changes_and_while_one_listens():
    """Two changes are at most one flash, of which WCAG 2.2 (2.3.1, from memory) allows three in a second."""
    shown = []
    loudness = Loudness(FRAME / RATE_HZ, shown.append)

    def take(sound, *, listens=True):
        for start in range(0, len(sound) - FRAME, FRAME):
            loudness.frame(sound[start : start + FRAME], listens=listens)

    take(tone(-20, 2), listens=False)
    assert shown == []
    for db in (-60, *(limit + 5 for limit in STEPS_DBFS), -60):
        take(tone(db, 2))
    # Where one sound ends within a stretch, the louder one counts for all of it.
    assert shown == [1, 2, 3, 4, 0]
    assert 1 / (2 * SHOWN_S) < 3
    del shown[:]
    take(np.concatenate([tone(db, 0.1) for db in (-20, -60) * 10]))
    assert shown == [4]
    take(tone(-20), listens=False)
    take(tone(-20))
    assert shown == [4, 4]


def test_level_of_a_sine():
    """A sine of full scale has -3.01 dB."""
    full = 32_768 * np.sin(2 * np.pi * np.arange(16_000) / 160)
    assert dbfs(float(np.mean(np.square(full)))) == pytest.approx(-3.01, abs=0.01)
