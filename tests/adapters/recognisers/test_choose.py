"""Which recogniser listens: order of preference, names, and what is said where there is none."""

import sys

import pytest

from assistant.adapters import models
from assistant.adapters.models import Engine
from assistant.adapters.recognisers import bundled, choose, trained
from assistant.errors import ModelError
from tests.adapters.recognisers.test_vosk import korean_model


def vosk_model(folder, name, words):
    """The outline of a Vosk model: enough to be seen as one."""
    (folder / name / "am").mkdir(parents=True)
    (folder / name / "graph").mkdir()
    (folder / name / "am" / "final.mdl").write_bytes(b"model")
    table = "".join(f"{word} {number}\n" for number, word in enumerate(["<eps>", *words]))
    (folder / name / "graph" / "words.txt").write_text(table)


def whisper_model(folder, name):
    (folder / name).mkdir()
    for file in ("model.bin", "tokenizer.json", "config.json", "vocabulary.txt"):
        (folder / name / file).write_bytes(b"x")


ENGLISH = ("one", "seven", "thirty", "hundred", "yes")
HAS_BUNDLED = bundled.bundled_folder() is not None
HAS_TRAINED = trained.trained_folder() is not None
BUNDLED = [trained.NAME] * HAS_TRAINED + [bundled.NAME] * HAS_BUNDLED
"""The recognisers that come with the program, as far as they are on this machine."""


def names(found):
    return [one.name for one in found]


def test_the_bundled_one_leads_and_an_english_vosk_model_gives_a_second_opinion(tmp_path):
    """Those that come with the program, then English Vosk, then what listens only where it is named."""
    vosk_model(tmp_path, "vosk-c", ENGLISH)
    vosk_model(tmp_path, "vosk-b", ENGLISH)
    vosk_model(tmp_path, "vosk-a-other-tongue", ("hana", "dul"))
    whisper_model(tmp_path, "another-whisper")
    found = choose.available(tmp_path)
    assert names(found) == [*BUNDLED, "vosk-b", "vosk-c", "another-whisper", "vosk-a-other-tongue"]
    assert [bool(one.note) for one in found] == [*[False] * len(BUNDLED), False, False, True, True]
    # A second model of the same engine would err as the first does.
    assert names(choose.listening(found)) == [*BUNDLED[:1], "vosk-b"]
    assert found[-1].engine is Engine.VOSK


class Loaded:
    """A recogniser by its name alone."""

    def __init__(self, one):
        self.name, self.model_digest = one.name, "00"

    def close(self):
        pass


@pytest.mark.parametrize(
    ("broken", "name", "listens"),
    [
        ((), None, "whisper-tiny.en-bench and vosk-b"),
        (("vosk-b",), None, "whisper-tiny.en-bench and vosk-c"),
        (("vosk-b", "vosk-c"), None, "whisper-tiny.en-bench"),
        (("whisper-tiny.en-bench",), None, "whisper-tiny.en and vosk-b"),
        (("whisper-tiny.en-bench", "whisper-tiny.en"), None, "vosk-b"),
        ((), "bundled", "whisper-tiny.en"),
        ((), "trained", "whisper-tiny.en-bench"),
        ((), "whisper", "whisper-tiny.en-bench"),
        ((), "vosk", "vosk-b"),
        ((), "vosk-c", "vosk-c"),
    ],
)
def test_two_listen_where_none_is_named(tmp_path, monkeypatch, broken, name, listens):
    """One of each engine; a broken model is passed over; named, each listens alone."""

    def load(one):
        if one.name in broken:
            raise ModelError(f"{one.name} is broken.", "Add it again.")
        return Loaded(one)

    monkeypatch.setattr(choose, "_load", load)
    monkeypatch.setattr(bundled, "bundled_folder", lambda: tmp_path)
    monkeypatch.setattr(trained, "trained_folder", lambda: tmp_path)
    vosk_model(tmp_path, "vosk-b", ENGLISH)
    vosk_model(tmp_path, "vosk-c", ENGLISH)
    recogniser = choose.open_recogniser(name, tmp_path)
    assert recogniser.name == listens
    recogniser.close()


@pytest.mark.sound
def test_two_real_ones_listen_together(tmp_path, monkeypatch):
    """The bundled one with a Vosk model of the models folder: both are named, and both are pinned."""
    if not HAS_TRAINED:
        pytest.skip("the trained model is not here")
    model = korean_model()
    (tmp_path / model.name).symlink_to(model.path)
    monkeypatch.setattr(models, "knows_english", lambda model: True)
    recogniser = choose.open_recogniser(None, tmp_path)
    assert recogniser.name == f"{trained.NAME} and {model.name}"
    *first, second = recogniser.model_digest.split()
    assert " ".join(first) == trained.digest()
    assert second == models.joint_digest(models.digests(model.path))
    recogniser.close()


def test_english_is_told_by_words_inside_a_graph(tmp_path):
    """A small model has its words inside the graph, each after its length; a longer word does not count."""
    vosk_model(tmp_path, "small", ())
    (tmp_path / "small" / "graph" / "words.txt").unlink()
    graph = tmp_path / "small" / "graph" / "Gr.fst"
    entry = lambda word: len(word).to_bytes(4, "little") + word.encode() + bytes(8)  # noqa: E731
    graph.write_bytes(b"head" + b"".join(entry(word) for word in ("seventy", "thirty", "hundred")))
    small = next(one for one in choose.available(tmp_path) if one.name == "small")
    assert small.note == "knows no English"
    graph.write_bytes(b"head" + b"".join(entry(word) for word in ("seven", "thirty", "hundred")))
    assert not next(one for one in choose.available(tmp_path) if one.name == "small").note


def test_an_empty_or_missing_folder(tmp_path):
    """Nothing there is no error: the bundled recogniser listens."""
    assert names(choose.available(tmp_path)) == BUNDLED
    assert names(choose.available(tmp_path / "missing")) == BUNDLED


def test_what_is_no_model_is_left_out(tmp_path):
    """Files, half models and hidden folders are no recognisers."""
    (tmp_path / "notes.txt").write_text("x")
    (tmp_path / "half").mkdir()
    (tmp_path / "half" / "model.bin").write_bytes(b"x")
    whisper_model(tmp_path, ".adding-1")
    assert names(choose.available(tmp_path)) == BUNDLED


@pytest.mark.parametrize("name", ["nobody", "", "vosk"])
def test_an_unknown_name_is_refused_with_the_known_ones(tmp_path, name):
    """The sentence names what is here and how to add more."""
    whisper_model(tmp_path, "mine")
    with pytest.raises(ModelError) as raised:
        choose.open_recogniser(name, tmp_path)
    assert "mine" in raised.value.what
    assert "checkoff models add" in raised.value.remedy


def test_none_at_all(tmp_path, monkeypatch):
    """Without any recogniser there is a sentence that says how to get one."""
    monkeypatch.setattr(bundled, "_PACKAGE", "no_such_package_here")
    monkeypatch.setattr(trained, "trained_folder", lambda: None)
    assert choose.available(tmp_path) == []
    with pytest.raises(ModelError) as raised:
        choose.open_recogniser(None, tmp_path)
    assert "pip install" in raised.value.remedy


def test_a_broken_model_is_one_sentence(tmp_path):
    """A model that cannot be loaded is named, never a traceback."""
    whisper_model(tmp_path, "mine")
    with pytest.raises(ModelError, match="mine"):
        choose.open_recogniser("mine", tmp_path)


@pytest.mark.sound
def test_a_broken_model_does_not_keep_the_next_from_listening(tmp_path):
    """Unasked, the next recogniser listens; asked for by name, the broken one is an error."""
    if not HAS_TRAINED:
        pytest.skip("the trained model is not here")
    vosk_model(tmp_path, "broken", ENGLISH)
    recogniser = choose.open_recogniser(None, tmp_path)
    assert recogniser.name == trained.NAME
    recogniser.close()
    with pytest.raises(ModelError, match="broken"):
        choose.open_recogniser("broken", tmp_path)


@pytest.mark.parametrize(
    ("module", "make", "library"),
    [
        ("whisper", lambda folder: whisper_model(folder, "mine"), "CTranslate2"),
        ("vosk_ear", lambda folder: vosk_model(folder, "mine", ENGLISH), "Vosk"),
    ],
)
def test_a_missing_library_is_one_sentence(tmp_path, monkeypatch, module, make, library):
    """Where a recogniser's library cannot be loaded, the sentence names it and how to get it."""
    monkeypatch.setitem(sys.modules, f"assistant.adapters.recognisers.{module}", None)
    make(tmp_path)
    with pytest.raises(ModelError, match=library) as raised:
        choose.open_recogniser("mine", tmp_path)
    assert "pip install" in raised.value.remedy


@pytest.mark.sound
@pytest.mark.parametrize("name", ["bundled", bundled.NAME, bundled.NAME.upper()])
def test_opens_the_bundled_one(tmp_path, name):
    """Its own name and the short one mean the model as it was published."""
    if not HAS_BUNDLED:
        pytest.skip("the bundled model's package is not installed")
    recogniser = choose.open_recogniser(name, tmp_path)
    assert recogniser.name == bundled.NAME
    assert len(recogniser.model_digest) == 64
    recogniser.close()


@pytest.mark.sound
@pytest.mark.parametrize("name", [None, "trained", "whisper", trained.NAME])
def test_opens_the_trained_one(tmp_path, name):
    """No name, its own, and the short ones all mean the trained recogniser where nothing else is."""
    if not HAS_TRAINED:
        pytest.skip("the trained model is not here")
    recogniser = choose.open_recogniser(name, tmp_path)
    assert recogniser.name == trained.NAME
    assert recogniser.model_digest == trained.digest()
    recogniser.close()
