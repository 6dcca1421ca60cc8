"""`checkoff hear`: what sound files mean, as text and as JSON, and files that are none."""

import itertools
import json

import numpy as np
import pytest
import soundfile

from assistant.adapters.recognisers import choose
from assistant.cli import hear
from assistant.cli.main import main
from assistant.ports import Alternative, Hearing
from tests.speakers import spoken as speak

KEYS = {"words", "answer", "readings", "reject", "readback", "file", "ear", "confidence", "audio_s", "compute_s"}


class Scripted:
    """A recogniser that hears the length of the sound: one word for each tenth of a second."""

    name, model_digest = "scripted", "00"
    closed = 0

    def __init__(self, *hearings):
        self.hearings = list(hearings)

    def begin(self, expect):
        self.size = 0
        return self

    def feed(self, block):
        self.size += len(block)

    def finish(self):
        words, confidence = self.hearings.pop(0)
        alternatives = (Alternative(words, confidence), Alternative("other", 0.01)) if confidence else ()
        return Hearing(words, alternatives, self.size / 32_000, 0.25)

    def close(self):
        type(self).closed += 1


@pytest.fixture
def ear(monkeypatch):
    def scripted(*hearings):
        recogniser = Scripted(*hearings)
        monkeypatch.setattr(hear, "open_recogniser", lambda name, folder: recogniser)
        return recogniser

    return scripted


@pytest.fixture
def sound(tmp_path):
    def written(name="said.wav", rate_hz=44_100, length_s=0.5):
        path = tmp_path / name
        tone = 0.3 * np.sin(np.arange(round(rate_hz * length_s)) / 10)
        soundfile.write(path, np.column_stack([tone, tone]), rate_hz)
        return str(path)

    return written


def test_json_is_that_of_parse_and_more(ear, sound, capsys):
    """One object a file: what `parse` says of the words, the file, the recogniser, its confidence and times."""
    ear(("125 ml/h", 0.91234))
    path = sound()
    assert main(["hear", path, "--expect", "number mL/h", "--json"]) == 0
    found = json.loads(capsys.readouterr().out)
    assert set(found) == KEYS
    assert found["answer"] == {"kind": "number", "value": "125", "unit": "mL/h"}
    assert found["reject"] is None
    assert (found["file"], found["ear"], found["confidence"]) == (path, "scripted", 0.912)
    assert (found["audio_s"], found["compute_s"]) == (pytest.approx(0.5, abs=0.001), 0.25)
    assert main(["parse", "125 ml/h", "--expect", "number mL/h", "--heard", "--json"]) == 0
    assert json.loads(capsys.readouterr().out) == {key: found[key] for key in found if key in KEYS_OF_PARSE}


KEYS_OF_PARSE = {"words", "answer", "readings", "reject", "readback"}


@pytest.mark.parametrize(
    ("heard", "expect", "reject"),
    [
        (("", 0.0), "confirm", True),
        (("yes", 0.9), "confirm", False),
        (("fifty", 0.9), "confirm", True),
        (("fifty milligrams", 0.9), "number mL", True),
    ],
)
def test_refusals_beside_answers(ear, sound, capsys, heard, expect, reject):
    """What is refused is told with a reason, what is taken has none; both are exit code 0."""
    ear(heard)
    assert main(["hear", sound(), "--expect", expect, "--json"]) == 0
    found = json.loads(capsys.readouterr().out)
    assert (found["reject"] is not None) is reject
    assert (found["answer"] is None) is reject
    assert found["words"] == heard[0]


@pytest.mark.parametrize(
    ("heard", "expect", "readings"),
    [
        # An attempt would ask for the digits of these, so they are no answers yet.
        ("fifty", "number mL", ["50", "15"]),
        ("one fifteen", "number mL/h", ["115", "150"]),
        ("eighty three point three", "number mL/h", ["83.3", "833"]),
        ("one twenty, no, one twenty five", "number mL/h", ["125"]),
        ("five zero", "digits mL", []),
        ("eight three point three", "digits mL/h", []),
        ("one twenty five", "number mL/h", []),
    ],
)
def test_a_number_whose_digits_are_asked_for_is_no_answer_yet(ear, sound, capsys, heard, expect, readings):
    """What is heard is what an attempt would make of it."""
    ear((heard, 0.9))
    assert main(["hear", sound(), "--expect", expect, "--json"]) == 0
    found = json.loads(capsys.readouterr().out)
    assert found["readings"] == readings
    assert (found["answer"] is None) is bool(readings)
    assert found["reject"] is None


def test_one_bad_file_among_good_ones(ear, sound, tmp_path, capsys):
    """The others are heard all the same; the bad one is told on standard error, and the exit code is 1."""
    ear(("yes", 0.9), ("no", 0.9))
    bad = tmp_path / "bad.wav"
    bad.write_text("this is text")
    before = Scripted.closed
    assert main(["hear", sound("a.wav"), str(bad), sound("b.flac", 8_000), "--expect", "confirm"]) == 1
    told = capsys.readouterr()
    assert told.out.count("\n") == 2
    assert '"yes"' in told.out
    assert '"no"' in told.out
    assert told.err.count("\n") == 1
    assert "bad.wav" in told.err
    assert Scripted.closed == before + 1


@pytest.mark.parametrize(
    "arguments", [["--expect", "nonsense"], ["--expect", "number parsecs"], ["--expect", "confirm", "--ear", "nobody"]]
)
def test_wrong_use_is_one_sentence(sound, tmp_path, capsys, arguments):
    """An unknown expectation or recogniser is one line on standard error."""
    assert main(["hear", sound(), *arguments, "--models", str(tmp_path)]) != 0
    told = capsys.readouterr()
    assert (told.out, told.err.count("\n")) == ("", 1)


@pytest.mark.sound
def test_hears_a_real_voice(tmp_path, capsys):
    """From the file to the meaning with the bundled recogniser, at the synthesiser's own rate."""
    if not choose.available(tmp_path):
        pytest.skip("the bundled model's package is not installed")
    paths = []
    for number, words in enumerate(("seventy five millilitres per hour", "the bus leaves in ten minutes")):
        path = tmp_path / f"{number}.wav"
        samples = np.frombuffer(speak(words), "<i2")
        soundfile.write(path, np.repeat(samples, 3), 48_000)
        paths.append(str(path))
    assert main(["hear", *paths, "--expect", "number mL/h", "--models", str(tmp_path), "--json"]) == 0
    first, second = map(json.loads, capsys.readouterr().out.splitlines())
    assert first["answer"] == {"kind": "number", "value": "75", "unit": "mL/h"}
    assert first["confidence"] > 0.7
    assert second["answer"] is None
    assert second["confidence"] is None


@pytest.mark.sound
@pytest.mark.parametrize("expect", ["confirm", "any", "done: Close the roller clamp."])
def test_no_near_miss_of_a_yes_is_heard_as_one(tmp_path, capsys, expect):
    """Whatever is expected: a denial, a question, an almost."""
    said = ["I didn't", "is it done", "not complete", "almost done", "is it finished"]
    files = [tmp_path / f"{number}.wav" for number in range(2 * len(said))]
    voices = ("espeak-ng:en-gb-scotland", "flite:slt")
    for path, (words, voice) in zip(files, itertools.product(said, voices), strict=True):
        soundfile.write(path, np.frombuffer(speak(words, voice), "<i2"), 16_000)
    assert main(["hear", *map(str, files), "--expect", expect, "--ear", "bundled", "--json"]) == 0
    for line in capsys.readouterr().out.splitlines():
        answer = json.loads(line)["answer"] or {}
        assert (answer.get("kind"), answer.get("value")) not in (("done", "done"), ("confirm", "yes")), line
