"""Recordings of people who count are cut into their words; what was cut at a wrong place is left out."""

import shutil
import sys

import numpy as np
import pytest

from assistant.adapters.recognisers import bundled
from assistant.adapters.recognisers.trained import open_trained
from tests.bench.sayings import cardinal
from tests.bench.training import counting, cuts
from tests.bench.training.people import read
from tests.bench.training.store import RATE_HZ, trimmed

NUMBERS = [cardinal(number) for number in range(1, 21)]


def _loudness(*words: tuple[int, int], length: int) -> np.ndarray:
    """Loud where there is a word, from one frame to another, else quiet."""
    energy = np.full(length, -80.0)
    for first, last in words:
        energy[first:last] = -20.0
    return energy


def test_words_are_cut_where_it_is_quiet():
    """Three words: each lies between two cuts, though the model places the second and third too late."""
    energy = _loudness((10, 50), (70, 110), (140, 185), length=200)
    found = cuts.boundaries(energy, [0, 78, 150])
    assert len(found) == 4
    assert found[0] <= 10
    assert 50 <= found[1] <= 70
    assert 110 <= found[2] <= 140
    assert found[3] == 200


@pytest.mark.parametrize(
    ("words", "written", "wrongly"),
    [
        ("five", "five", False),
        ("five", "five six", True),
        ("five six", "six", True),
        ("nine", "ten", True),
        # What is misheard has to be learnt.
        ("eleven", "learn", False),
        ("thirteen", "thirty", False),
        ("sixteen", "six", False),
        ("two", "", False),
    ],
)
def test_what_is_written_as_the_next_words_was_cut_at_a_wrong_place(words, written, wrongly):
    """Another stretch of the same counting is not what was misheard, but what is in the piece."""
    assert counting.is_cut_wrongly(words, written) is wrongly


def test_what_is_misheard_beside_a_wrong_cut_is_left_out_too():
    """From "ten" on every piece holds the next word; one of them is misheard, and says nothing of its own place."""
    words = ["nine", "ten", "eleven", "twelve", "thirteen", "fourteen", "fifteen"]
    written = ["nine", "eleven", "twelve", "nine", "fourteen", "fourteen", "fifty"]
    assert counting.well_cut(words, written) == [True, False, False, False, False, True, True]


@pytest.mark.sound
def test_somebody_counts(tmp_path, monkeypatch):
    """A voice that counts to twenty, a pause after each word: twenty pieces, each of one word, and nearly all right."""
    if bundled.bundled_folder() is None or not shutil.which("espeak-ng"):
        pytest.skip("the bundled model's package or espeak-ng is not installed")
    from tests.bench.training.speech import espeak_at

    said = [trimmed(espeak_at(word, "en-us", 140, 50)) for word in NUMBERS]
    pause = np.zeros(RATE_HZ // 3, dtype=np.float32)
    recording = np.concatenate([part for word in said for part in (word, pause)])
    found = counting.counted(trimmed(recording), counting.Cutter(), open_trained().model)
    assert found.is_sure()
    assert len(found.pieces) >= 18
    assert all(len(piece.words.split()) == 1 for piece in found.pieces)
    lengths = {word: len(sound) for word, sound in zip(NUMBERS, said, strict=True)}
    assert all(abs(len(piece.sound) - lengths[piece.words]) < RATE_HZ // 5 for piece in found.pieces)

    import soundfile

    (tmp_path / "in" / "somebody").mkdir(parents=True)
    soundfile.write(tmp_path / "in" / "somebody" / "slowly.wav", recording, RATE_HZ)
    soundfile.write(tmp_path / "in" / "somebody" / "off.wav", np.zeros(RATE_HZ), RATE_HZ)
    monkeypatch.setattr(sys, "argv", ["counting", str(tmp_path / "in"), str(tmp_path / "out")])
    counting.main()
    rows = (tmp_path / "out" / "clips.tsv").read_text().splitlines()
    assert rows[0].split("\t") == ["path", "words", "speaker", "part"]
    assert len(rows) == len(found.pieces) + 1
    path, words, speaker, part = rows[1].split("\t")
    assert (words, speaker, part) == ("one", "somebody", "")
    assert 0.1 < len(read(tmp_path / "out" / path)) / RATE_HZ < 1.5
