"""The bundled recogniser on synthesised speech: hears what is said to it and refuses what is not."""

import errno
import subprocess
import sys
import tempfile

import numpy as np
import pytest

from assistant import spoken
from assistant.adapters.recognisers import bundled
from assistant.adapters.recognisers.front import samples_of
from assistant.adapters.recognisers.replay import hear_sound
from assistant.spoken.expect import AnyExpected, ConfirmExpected, NameExpected, NumberExpected, TextExpected
from assistant.spoken.meaning import Answer
from tests.speakers import spoken as speak

pytestmark = pytest.mark.sound

RATE, VOLUME, TIME = NumberExpected("mL/h"), NumberExpected("mL"), NumberExpected("min")


@pytest.mark.parametrize(
    ("words", "voice", "expect", "value"),
    [
        ("one hundred and twenty five millilitres per hour", "flite:slt", RATE, "125"),
        ("eighty three point three millilitres per hour", "flite:slt", RATE, "83.3"),
        ("fifty millilitres", "flite:rms", VOLUME, "50"),
        ("fifteen minutes", "flite:slt", TIME, "15"),
        ("ninety minutes", "flite:rms", TIME, "90"),
        ("a thousand millilitres", "flite:slt", VOLUME, "1000"),
        ("yes", "flite:slt", ConfirmExpected(), "yes"),
        ("yes", "espeak-ng:en-us", ConfirmExpected(), "yes"),
        ("no", "flite:rms", ConfirmExpected(), "no"),
        ("that's right", "flite:slt", ConfirmExpected(), "yes"),
        ("done", "flite:rms", ConfirmExpected(), "done"),
        ("again", "flite:slt", RATE, "again"),
        ("what is my order", "flite:slt", TIME, "what is my order"),
        ("I need help", "flite:slt", AnyExpected(), "I need help"),
    ],
)
def test_hears_what_is_said(whisper, words, voice, expect, value):
    """Plain answers by clear voices are heard as what they mean."""
    hearing = hear_sound(whisper, speak(words, voice), expect)
    meaning = spoken.interpret(hearing.words, expect, heard=True)
    assert isinstance(meaning, Answer), hearing
    assert str(meaning.value) == value
    assert hearing.alternatives[0].words == hearing.words
    assert 0.5 < hearing.alternatives[0].confidence <= 1


@pytest.mark.parametrize(
    ("words", "expect"),
    [
        ("the bus leaves at ten fifteen from the station", TIME),
        ("I have done that now and the weather is nice", ConfirmExpected()),
        ("there were fifty people at the party", VOLUME),
        ("that is right but wait a moment I see something", ConfirmExpected()),
        ("I need help with my homework tonight", ConfirmExpected()),
        ("could somebody open the window please", AnyExpected()),
        ("she has two brothers and one dog", RATE),
    ],
)
@pytest.mark.parametrize("voice", ["flite:slt", "espeak-ng:en-gb"])
def test_refuses_what_is_not_said_to_it(whisper, words, expect, voice):
    """Talk in the room is no answer, even where it begins or ends like one."""
    assert hear_sound(whisper, speak(words, voice), expect).words == ""


def noise(kind, length_s=2.0):
    chance = np.random.default_rng(7)
    count = round(16_000 * length_s)
    samples = {
        "nothing": np.zeros(0),
        "silence": np.zeros(count),
        "hiss": 0.05 * chance.standard_normal(count),
        "hum": 0.2 * np.sin(2 * np.pi * 50 * np.arange(count) / 16_000),
        "click": np.where(np.arange(count) == count // 2, 0.9, 0.0),
        "clipped": np.sign(chance.standard_normal(count)),
    }[kind]
    return (np.clip(samples, -1, 1) * 32_767).astype("<i2").tobytes()


@pytest.mark.parametrize("kind", ["nothing", "silence", "hiss", "hum", "click", "clipped"])
@pytest.mark.parametrize("expect", [RATE, ConfirmExpected(), AnyExpected()])
def test_refuses_noise(whisper, kind, expect):
    """Where nobody speaks, nothing is heard."""
    assert hear_sound(whisper, noise(kind), expect).words == ""


def test_refuses_what_is_longer_than_any_answer(whisper):
    """A minute of talk is no answer, and what goes on for more than two minutes is not even kept."""
    talk = speak("yes") * 40
    assert hear_sound(whisper, talk, ConfirmExpected()).words == ""
    utterance = whisper.begin(ConfirmExpected())
    for _ in range(10):
        utterance.feed(talk)
    hearing = utterance.finish()
    assert hearing.words == ""
    assert hearing.audio_s <= 121


def test_blocks_of_any_size_are_heard_alike(whisper):
    """How sound is cut into blocks, odd sizes too, changes nothing."""
    sound = speak("seventy five millilitres")
    heard = []
    for size in (320, 1_001, len(sound)):
        utterance = whisper.begin(VOLUME)
        for start in range(0, len(sound), size):
            assert utterance.feed(sound[start : start + size]) is None
        heard.append(utterance.finish())
    assert {hearing.words for hearing in heard} == {heard[0].words}
    assert heard[0].words
    assert heard[0].audio_s == pytest.approx(len(sound) / 32_000)


def test_free_words_where_free_words_are_expected(whisper):
    """A reason is heard as it is said; a command keeps its meaning there."""
    hearing = hear_sound(whisper, speak("the clamp was stuck"), TextExpected())
    assert "clamp" in hearing.words.lower()
    hearing = hear_sound(whisper, speak("stop"), TextExpected())
    meaning = spoken.interpret(hearing.words, TextExpected(), heard=True)
    assert meaning.value == "stop"


def test_names(whisper):
    """One of several names is heard as that name."""
    expect = NameExpected(("sodium chloride 0.9 %", "glucose 5 %"))
    hearing = hear_sound(whisper, speak("glucose five percent"), expect)
    meaning = spoken.interpret(hearing.words, expect, heard=True)
    assert isinstance(meaning, Answer), hearing
    assert meaning.value == "glucose 5 %"


def test_a_wrong_answer_is_heard_as_what_it_is(whisper):
    """Nothing but the frame goes in: the same frame hears 50 as 50 and 150 as 150, whatever the order says."""
    for words, value in (("fifty millilitres", "50"), ("one hundred and fifty millilitres", "150")):
        hearing = hear_sound(whisper, speak(words), VOLUME)
        assert str(spoken.interpret(hearing.words, VOLUME, heard=True).value) == value


def test_console_stays_silent():
    """Loading and hearing write nothing to either stream, whatever native libraries would like to say."""
    script = (
        "from assistant.adapters.recognisers.choose import open_recogniser\n"
        "from assistant.spoken.expect import ConfirmExpected\n"
        "ear = open_recogniser('bundled')\n"
        "utterance = ear.begin(ConfirmExpected())\n"
        "utterance.feed(b'\\x00\\x10' * 16000)\n"
        "utterance.finish()\n"
        "ear.close()\n"
    )
    done = subprocess.run([sys.executable, "-c", script], capture_output=True, check=True)
    assert (done.stdout, done.stderr) == (b"", b"")


def test_an_answer_that_nobody_wants_any_more_is_given_up(whisper):
    """Given up, an utterance ends with nothing, and the next one is heard as ever."""
    sound = speak("one hundred and twenty five millilitres per hour", "flite:slt")
    stale = whisper.begin(RATE)
    stale.feed(sound)
    stale.give_up()
    assert stale.finish().words == ""
    assert spoken.interpret(hear_sound(whisper, sound, RATE).words, RATE, heard=True).value == 125


def test_an_answer_is_given_up_while_it_is_worked_out(whisper):
    """The search looks at each token whether anybody waits for it."""
    asked = []

    def after_five():
        asked.append(True)
        return len(asked) > 5

    samples = samples_of(speak("one hundred and twenty five millilitres per hour", "flite:slt"))
    assert whisper.recognise(samples, RATE, after_five).words == ""
    assert len(asked) == 7


def test_loads_where_the_disk_is_full(monkeypatch):
    """Without room for a copy of its files the model is loaded from memory, and hears the same."""

    def full(**_kwargs):
        raise OSError(errno.ENOSPC, "No space left on device")

    monkeypatch.setattr(tempfile, "TemporaryDirectory", full)
    recogniser = bundled.open_bundled()
    assert hear_sound(recogniser, speak("yes", "flite:slt"), ConfirmExpected()).words == "yes"
    recogniser.close()
