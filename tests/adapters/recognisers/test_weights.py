"""The library's file of weights, read and written anew, beside what the library itself makes of it."""

import io

import ctranslate2
import numpy as np
import pytest
from ctranslate2.specs.common_spec import LinearSpec

from assistant.adapters.recognisers import bundled
from assistant.adapters.recognisers.decoder import Matrix
from assistant.adapters.recognisers.features import log_mel
from assistant.adapters.recognisers.weights import arrays, has_wide, in_eight_bits, write_in_eight_bits
from tests.speakers import spoken


@pytest.mark.parametrize("shape", [(7, 5), (1, 300), (600, 1)])
def test_eight_bits_are_the_library_s(shape):
    """CTranslate2's own converter makes the same numbers of a matrix, a row of zeros among them."""
    rows = np.random.default_rng(3).normal(scale=0.05, size=shape).astype(np.float32)
    rows[0] = 0
    theirs = LinearSpec()
    theirs.weight = rows.copy()
    theirs.validate()
    theirs.optimize("int8")
    eight, scale = in_eight_bits(rows)
    assert np.array_equal(eight, theirs.weight.numpy())
    assert np.allclose(scale, theirs.weight_scale.numpy(), rtol=1e-6)


@pytest.mark.parametrize(("rows", "columns"), [(3, 700), (1, 256), (40, 255), (2, 1)])
@pytest.mark.parametrize("stored", [np.float16, np.float32, np.int8])
def test_a_matrix_in_eight_bits_multiplies_as_a_wide_one(rows, columns, stored):
    """Block by block the outcome is that of one multiplication, however many columns the last block has."""
    chance = np.random.default_rng(columns)
    weights = {"some/weight": chance.normal(scale=30, size=(columns, 64)).astype(stored)}
    if stored is np.int8:
        weights["some/weight_scale"] = chance.uniform(500, 900, columns).astype(np.float32)
        wide = weights["some/weight"] / weights["some/weight_scale"][:, None]
    else:
        eight, scale = in_eight_bits(weights["some/weight"])
        wide = eight / scale[:, None]
    matrix, state = Matrix.of(weights, "some"), chance.normal(size=(rows, 64)).astype(np.float32)
    assert np.allclose(matrix.multiplied(state), state @ wide.T, rtol=1e-4, atol=1e-4)
    assert np.allclose(matrix.columns([0, columns - 1]), wide[[0, columns - 1]])


@pytest.fixture(scope="module")
def small(tmp_path_factory):
    """The model as published, which is in sixteen bits, written anew, and where it lies."""
    folder, published = tmp_path_factory.mktemp("small"), bundled.bundled_folder()
    for file in published.iterdir():
        if file.name != "model.bin":
            (folder / file.name).write_bytes(file.read_bytes())
    with (published / "model.bin").open("rb") as stored, (folder / "model.bin").open("wb") as target:
        write_in_eight_bits(stored, target)
    return folder


def test_the_library_hears_the_same(small):
    """Loaded in eight bits, the model writes what it writes where the library itself made eight bits of sixteen."""
    samples = np.frombuffer(spoken("one hundred and twenty five millilitres per hour"), "<i2") / np.float32(32_768)
    heard = []
    for folder in (bundled.bundled_folder(), small):
        model = ctranslate2.models.Whisper(str(folder), device="cpu", compute_type="int8", intra_threads=1)
        sound = model.encode(ctranslate2.StorageView.from_array(log_mel(samples, 12.0)[None]))
        (found,) = model.generate(
            sound, [[50_257, 50_362]], beam_size=5, num_hypotheses=3, return_scores=True, length_penalty=0
        )
        heard.append((found.sequences_ids, np.array(found.scores)))
    assert heard[0][0] == heard[1][0]
    assert np.allclose(heard[0][1], heard[1][1], atol=1e-3)


def test_what_is_in_eight_bits_stays_as_it_is(small):
    """Written once more, not a byte differs; all but the matrices are as they were published."""
    with (bundled.bundled_folder() / "model.bin").open("rb") as wide, (small / "model.bin").open("rb") as narrow:
        assert (has_wide(wide), has_wide(narrow)) == (True, False)
    with (small / "model.bin").open("rb") as stored:
        again = io.BytesIO()
        write_in_eight_bits(stored, again)
    assert again.getvalue() == (small / "model.bin").read_bytes()
    with (bundled.bundled_folder() / "model.bin").open("rb") as stored, io.BytesIO(again.getvalue()) as anew:
        before, now = dict(arrays(stored, "")), dict(arrays(anew, ""))
    assert now.keys() == before.keys() | {
        f"{name}_scale" for name in now if now[name].dtype == np.int8 and now[name].ndim > 1
    }
    for name, array in before.items():
        if array.ndim < 2 or not name.endswith("/weight"):
            assert np.array_equal(array, now[name]), name


@pytest.mark.parametrize("size", [0, 3, 20, 200, 100_000])
def test_a_file_that_ends_early_is_none(small, size):
    """It is refused, and nothing is read beyond it."""
    content = (small / "model.bin").read_bytes()[:size]
    with pytest.raises(ValueError, match="ends early"):
        list(arrays(io.BytesIO(content), ""))
    with pytest.raises(ValueError, match="ends early"):
        write_in_eight_bits(io.BytesIO(content), io.BytesIO())
