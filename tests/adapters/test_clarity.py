"""Speech made clearer in noise: what lies high is raised, what is quiet comes nearer, nothing moves."""

import numpy as np
import pytest

from assistant.adapters.clarity import EVENED, RAISED_DB, clearer

RATE_HZ = 24_000
TIMES = np.arange(RATE_HZ) / RATE_HZ


def tone(pitch_hz: float) -> np.ndarray:
    """A second of it."""
    return (0.2 * np.sin(2 * np.pi * pitch_hz * TIMES)).astype(np.float32)


def part_db(samples: np.ndarray, pitch_hz: float) -> float:
    """How much of a pitch is in a second of sound, without its first and last tenth."""
    inner = samples[RATE_HZ // 10 : -RATE_HZ // 10]
    wave = np.exp(-2j * np.pi * pitch_hz * TIMES[: len(inner)])
    return 20 * float(np.log10(np.abs(np.mean(inner * wave))))


def test_what_lies_high_is_raised_beside_what_lies_low() -> None:
    """By the whole figure from one edge to the other, by half of it in the middle; less is the same as before."""
    mixed = tone(250) + tone(1_549) + tone(4_000)
    made = clearer(mixed, RATE_HZ)
    low, middle, high = (part_db(made, pitch) - part_db(mixed, pitch) for pitch in (250, 1_549, 4_000))
    assert high - low == pytest.approx(RAISED_DB, abs=0.5)
    assert middle - low == pytest.approx(RAISED_DB / 2, abs=0.5)


@pytest.mark.parametrize(("below_db", "left_db"), [(10, 10 * (1 - EVENED)), (20, 20 * (1 - EVENED)), (60, 45)])
def test_what_is_quiet_comes_nearer(below_db: float, left_db: float) -> None:
    """Part of the difference is taken away, and what is far below the loudest stays far below."""
    sound = tone(300) * np.where(TIMES < 0.5, 1, 10 ** (-below_db / 20)).astype(np.float32)
    made = clearer(sound, RATE_HZ)
    loud, quiet = (np.abs(made[int(a * RATE_HZ) : int(b * RATE_HZ)]).max() for a, b in ((0.1, 0.4), (0.6, 0.9)))
    assert 20 * np.log10(loud / quiet) == pytest.approx(left_db, abs=0.7)


def test_nothing_moves_and_nothing_rings() -> None:
    """Every sound stays where it was, silence before and behind it stays silence, and the length is the same."""
    sound = np.where((TIMES > 0.3) & (TIMES < 0.6), tone(1_000), 0).astype(np.float32)
    made = clearer(sound, RATE_HZ)
    assert len(made) == len(sound)
    outside = np.concatenate([made[: int(0.28 * RATE_HZ)], made[int(0.62 * RATE_HZ) :]])
    assert np.abs(outside).max() < 0.01 * np.abs(made).max()


@pytest.mark.parametrize("length", [1, 7, 300, 24_001])
def test_short_and_silent_sounds_come_through(length: int) -> None:
    """Whatever the length, it is kept, and no silence becomes a sound."""
    assert not clearer(np.zeros(length, np.float32), RATE_HZ).any()
    made = clearer(np.full(length, 0.5, np.float32), RATE_HZ)
    assert len(made) == length
    assert np.isfinite(made).all()
