"""The model that was trained for the bench: whole, hearing as its card says, and free words left to the other one."""

import numpy as np
import pytest

from assistant.adapters.recognisers import bundled, trained
from assistant.adapters.recognisers.positives import is_positive
from assistant.adapters.recognisers.replay import hear_sound
from assistant.adapters.recognisers.witness import Witness
from assistant.errors import ModelError
from assistant.ports import SAMPLE_RATE_HZ, Hearing
from assistant.spoken import ENGLISH
from assistant.spoken.expect import ChoiceExpected, ConfirmExpected, NumberExpected, TextExpected
from assistant.spoken.meaning import Answer, Kind
from assistant.spoken.statement import Asked, Want
from tests.bench import voices
from tests.bench.conditions import as_recorded
from tests.bench.sayings import one_by_one


def test_its_files_are_the_tested_ones():
    """What lies in the models folder has the pinned digests."""
    if trained.trained_folder() is None:
        pytest.skip("the trained model is not here")
    assert trained.check_trained().is_whole


def test_other_files_are_refused(tmp_path):
    """One changed file, and nothing is loaded; a missing one as well."""
    (tmp_path / "model.bin").write_bytes(b"x")
    with pytest.raises(ModelError, match="not what was tested") as raised:
        trained.open_trained(tmp_path, {"model.bin": "00"})
    assert "--ear" in raised.value.remedy
    with pytest.raises(ModelError):
        trained.open_trained(tmp_path, {"config.json": "00"})


def test_none_at_all(monkeypatch):
    """Where it is not installed a sentence says what to do."""
    monkeypatch.setattr(trained, "trained_folder", lambda: None)
    with pytest.raises(ModelError, match="not installed"):
        trained.open_trained()


class Named:
    """A recogniser that says only which one it is."""

    def __init__(self, name):
        self.name, self.model_digest, self.closed = name, f"digest of {name}", False

    def begin(self, expect):
        return Hearing(self.name, (), 0.0, 0.0)

    def close(self):
        self.closed = True


def test_free_words_are_heard_by_the_other_model():
    """It is loaded when the first free words are expected, once; records name both models' digests."""
    loads = []

    def load():
        loads.append(Named("other"))
        return loads[-1]

    model = Named("trained")
    ear = trained.TrainedEar(model, Witness("digest of other", load))
    assert (ear.name, ear.model_digest) == ("trained", "digest of trained digest of other")
    assert ear.begin(ConfirmExpected()).words == "trained"
    assert not loads
    assert [ear.begin(TextExpected()).words for _ in range(2)] == ["other", "other"]
    assert len(loads) == 1
    ear.close()
    assert model.closed
    assert loads[0].closed


def test_free_words_without_another_model():
    """The trained one hears them, too, where the package of the other is missing."""
    ear = trained.TrainedEar(Named("trained"), None)
    assert ear.begin(TextExpected()).words == "trained"
    assert ear.model_digest == "digest of trained"


def test_what_listens_is_known_before_it_is_loaded(ear):
    """Both digests, in the order of the models."""
    assert ear.model_digest == trained.digest()
    assert trained.digest().split() == [ear.model.model_digest, bundled.open_bundled().model_digest]


VOICES = ("flite:slt", "espeak:en-gb-scotland")
"""Voices of which the model heard nothing in training."""
CLAMP = ConfirmExpected(asked=Asked("Close the roller clamp.", Want.DONE))


def heard(recogniser, voice, words, expect):
    if voice not in voices.synthesisers():
        pytest.skip(f"{voice} is not installed")
    return hear_sound(recogniser, as_recorded(voices.synthesise(voice, words)), expect)


@pytest.mark.sound
@pytest.mark.parametrize("voice", VOICES)
def test_digits_in_a_voice_that_it_had_not_met(ear, voice):
    """Nine of ten strings right, as its card says of 26 (96 %), and none wrong."""
    strings = ("125", "80", "316", "47", "905", "2500", "62", "738", "194", "510")
    found = [heard(ear, voice, one_by_one(digits), NumberExpected("mL", digits_only=True)).words for digits in strings]
    right = [words == one_by_one(digits) for words, digits in zip(found, strings, strict=True)]
    assert sum(right) >= 9
    assert all(is_right or not words for is_right, words in zip(right, found, strict=True))


@pytest.mark.sound
@pytest.mark.parametrize("voice", VOICES)
def test_near_misses_in_a_voice_that_it_had_not_met(ear, voice):
    """A yes closes the step; none of ten near-misses does."""
    assert heard(ear, voice, "it's closed", CLAMP).words == "it's closed"
    near = (
        *("it's not closed", "I haven't closed it", "is it closed", "almost closed", "I'm closing it"),
        *("I didn't close it", "should I close it", "it's still open", "about to close it", "I think it's closed"),
    )
    for words in near:
        hearing = heard(ear, voice, words, CLAMP)
        meaning = ENGLISH.interpret(hearing.words, CLAMP, heard=True) if hearing.words else None
        assert hearing.doubtful or not (isinstance(meaning, Answer) and meaning.kind is Kind.DONE), words


@pytest.mark.sound
@pytest.mark.parametrize("voice", VOICES)
@pytest.mark.parametrize("pause_s", [2.0, 3.0])
def test_a_denial_said_too_slowly_is_never_the_positive(ear, voice, pause_s):
    """In a picture longer than the one it is used to it loses words; "it is done" is not even asked about then."""
    if voice not in voices.synthesisers():
        pytest.skip(f"{voice} is not installed")
    pause = np.zeros(round(pause_s * SAMPLE_RATE_HZ), dtype=np.float32)
    parts = [voices.synthesise(voice, words) for words in ("it is", "not", "done")]
    sound = np.concatenate([parts[0], pause, parts[1], pause, parts[2]])
    words = hear_sound(ear, as_recorded(sound), CLAMP).words
    assert not is_positive(ENGLISH.interpret(words, CLAMP, heard=True), CLAMP)


CHOICES = (
    ("pale", "flushed cheeks", "mottled", "jaundiced"),
    ("walking frame", "crutches", "wheelchair"),
    ("nasal cannula", "simple mask", "venturi mask"),
)
"""Of lines of an author's own: nobody said them in training."""


@pytest.mark.sound
@pytest.mark.parametrize("voice", VOICES)
def test_choices_that_it_never_heard_are_asked_about(ear, voice):
    """The model as published hears them too: of ten nine are taken or asked about, and none becomes another one."""
    found = [(choice, heard(ear, voice, choice, ChoiceExpected(choices))) for choices in CHOICES for choice in choices]
    assert all(hearing.words in (choice, "") for choice, hearing in found)
    assert sum(bool(hearing.words) for _, hearing in found) >= 9
    assert [hearing.doubtful for choice, hearing in found if choice in ("flushed cheeks", "venturi mask")] == [True] * 2
