"""The training learns: a few steps on a few synthetic words bring the loss down, and what is written is a model."""

import os
import shutil
import subprocess
import sys

import numpy as np
import pytest

from assistant.adapters.recognisers import bundled
from tests.bench.training.store import Clip, Store, trimmed
from tests.bench.training.wordings import all_wordings, as_written

WORDS = ("yes", "no", "stop", "not done", "it's closed", "seven", "one five", "fifteen millilitres")


@pytest.mark.parametrize(
    ("words", "written"),
    [
        ("It\u2019s closed!", "it's closed"),
        ("Twenty-five mL", "twenty five ml"),
        ("'okay', so", "okay so"),
        ("", ""),
    ],
)
def test_what_is_said_is_written_without_marks(words, written):
    """Small letters, no marks but those within words."""
    assert as_written(words) == written


def test_nothing_that_the_benches_measure_is_learnt():
    """No near-miss of the bench of confirmations is among the wordings, in whatever short form.

    "done?" is measured as a question: "done" is learnt as the statement that it is too.
    """
    said = {words for _, words in all_wordings()}
    assert len(said) > 5_000
    assert not said & {"not done", "i didn't", "i did not", "is it done", "almost done", "it isn't done"}
    assert not said & {"done?", "closed?", "clear?"}
    assert {"yes", "it's not done yet", "seventeen", "done", "closed"} <= said


def test_the_same_in_every_run():
    """A seed decides what is said, and no set's order, which differs from one run of Python to the next."""
    listed = "from tests.bench.training.wordings import all_wordings; print(*all_wordings(3), sep='\\n')"
    first, second = (
        subprocess.run(
            [sys.executable, "-c", listed],
            env=os.environ | {"PYTHONHASHSEED": order},
            capture_output=True,
            text=True,
            check=True,
        ).stdout
        for order in ("1", "2")
    )
    assert first == second
    assert first.splitlines() != [str(said) for said in all_wordings(4)]


def test_a_store_keeps_words_and_sound(tmp_path):
    """What is written is read again; quiet ends are cut off, and silence is left out."""
    store = Store()
    sound = np.zeros(16_000, dtype=np.float32)
    sound[6_000:8_000] = 0.5 * np.sin(np.arange(2_000))
    store.add(Clip("yes", "person:a", "command"), sound)
    store.add(Clip("", "nobody", "silence"), np.zeros(100, dtype=np.float32))
    store.write(tmp_path / "clips.npz")
    again = Store.read(tmp_path / "clips.npz")
    assert again.clips == [Clip("yes", "person:a", "command")]
    assert 2_000 <= len(again.sounds[0]) <= 2_000 + 2 * 640
    assert len(trimmed(np.zeros(10, dtype=np.float32))) == 0


@pytest.mark.slow
@pytest.mark.sound
@pytest.mark.timeout(600)
def test_it_learns(tmp_path):
    """Two dozen steps on eight sayings of one voice halve the loss, and CTranslate2 loads the model that is written."""
    torch = pytest.importorskip("torch")
    folder = bundled.bundled_folder()
    if folder is None or not shutil.which("espeak-ng"):
        pytest.skip("the bundled model's package or espeak-ng is not installed")
    import ctranslate2

    from tests.bench.training.convert import write_model
    from tests.bench.training.speech import espeak_at
    from tests.bench.training.train import Lesson
    from tests.bench.training.weights import read_model, restored

    store = Store()
    for words in WORDS:
        store.add(Clip(words, "espeak:en-us", "command"), espeak_at(words, "en-us", 150, 50))
    lesson = Lesson(store, folder, ("training",), 1, torch.device("cpu"))
    losses = list(lesson.run(steps=24, batch=8, rate=1e-4, workers=0, seconds=500))
    assert sum(losses[-3:]) < 0.5 * sum(losses[:3])
    before = read_model(folder / "model.bin")
    after = {name: weight.detach().numpy() for name, weight in lesson.weights.items()}
    assert all(np.array_equal(after[name], before[name]) for name in before if "embeddings" in name)
    np.savez(tmp_path / "trained.npz", **after)
    further = Lesson(store, folder, ("training",), 1, torch.device("cpu"), begun=[tmp_path / "trained.npz"])
    assert next(further.run(steps=1, batch=8, rate=1e-4, workers=0, seconds=500)) < 0.6 * losses[0]
    write_model(restored(after, before, 0.5), folder, tmp_path)
    assert (tmp_path / "model.bin").stat().st_size < 45_000_000
    ctranslate2.models.Whisper(str(tmp_path), device="cpu", compute_type="int8")


def test_no_part_of_the_program_needs_what_training_needs():
    """PyTorch is no dependency: nothing in the package imports it."""
    found = subprocess.run(
        ["grep", "-rlE", r"^\s*(import|from) torch", "assistant"], capture_output=True, text=True, check=False
    )
    assert found.stdout == ""
