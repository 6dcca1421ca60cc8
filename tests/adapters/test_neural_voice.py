"""The neural voice in its own process, for real: what it says, and who goes on where it does not."""

import importlib.util
import os
import shutil
import signal
import subprocess
import sys
import time
from pathlib import Path

import numpy as np
import pytest

from assistant.adapters import synthesiser_worker
from assistant.adapters.lasting_process import MOST_FAILURES, LastingProcess
from assistant.adapters.neural_voice import DIGIT_PAUSE_S, START_PACE, NeuralVoice, its_sounds
from assistant.adapters.speaking_process import NEURAL_COMMAND, SynthesisCancelledError, WorkerFailedError
from assistant.adapters.synthesiser import LEVEL, PEAK, Speech, Synthesiser
from assistant.spoken import ENGLISH
from assistant.spoken.diction import Diction

NEURAL_HZ, SYSTEM_HZ = 24_000, 22_050
"""By its sample rate a test knows whose sound it has."""
SENTENCE = "Close the roller clamp before you spike the bag."
LIMIT_S = 60

pytestmark = [
    pytest.mark.sound,
    pytest.mark.skipif(importlib.util.find_spec("hibari") is None, reason="the neural voice is not installed"),
    pytest.mark.skipif(shutil.which("espeak-ng") is None, reason="espeak-ng is not installed"),
]


def open_voice(command: tuple[str, ...] = NEURAL_COMMAND, patience_s: float = LIMIT_S) -> Synthesiser:
    return Synthesiser(neural=NeuralVoice(LastingProcess(command, patience_s), ENGLISH.diction))


@pytest.fixture(scope="module")
def voice():
    voice = open_voice()
    yield voice
    voice.close()


def number_of(voice: Synthesiser) -> int:
    """The process that speaks now."""
    return voice._neural._process.number


def level_of(speech: Speech) -> float:
    """Root mean square of the loud parts, of full scale: frames of 20 ms down to 30 dB below the loudest."""
    size = speech.rate_hz // 50
    samples = speech.samples[: len(speech.samples) // size * size] / 32_768
    powers = np.square(samples.reshape(-1, size)).mean(axis=1)
    return float(np.sqrt(powers[powers >= powers.max() / 1_000].mean()))


def test_speaks_slower_and_faster(voice):
    """It speaks, longer at a slower step and shorter at a faster one."""
    spoken = [voice.synthesise(SENTENCE, rate) for rate in (-5, 0, 4)]
    assert {speech.rate_hz for speech in spoken} == {NEURAL_HZ}
    lengths = [speech.length_s for speech in spoken]
    assert lengths == sorted(lengths, reverse=True)
    assert 1.5 < lengths[1] < 6


def test_higher_and_deeper(voice):
    """Steps of pitch move the voice's tone by as many semitones, and leave its pace."""

    def tone_hz(speech: Speech) -> float:
        # The middle of what autocorrelation finds in voiced frames of 50 ms, from 80 to 500 Hz (no source).
        found = []
        least, most, size = speech.rate_hz // 500, speech.rate_hz // 80, speech.rate_hz // 20
        for start in range(0, len(speech.samples) - size, size // 2):
            frame = speech.samples[start : start + size].astype(float)
            likeness = np.correlate(frame, frame, "full")[size - 1 :]
            best = least + int(np.argmax(likeness[least:most]))
            if likeness[best] > 0.5 * likeness[0]:
                found.append(speech.rate_hz / best)
        return float(np.median(found))

    low, normal, high = (voice.synthesise(SENTENCE, pitch=pitch) for pitch in (-4, 0, 4))
    assert tone_hz(high) / tone_hz(normal) == pytest.approx(2 ** (4 / 12), rel=0.06)
    assert tone_hz(low) / tone_hz(normal) == pytest.approx(2 ** (-4 / 12), rel=0.06)
    assert low.length_s == pytest.approx(high.length_s, abs=0.2)


def test_the_same_sentence_sounds_the_same(voice):
    """The same words make the same sound in another process: nothing is left to chance."""
    other = open_voice()
    try:
        assert np.array_equal(other.synthesise(SENTENCE).samples, voice.synthesise(SENTENCE).samples)
    finally:
        other.close()


def test_every_sentence_and_voice_is_equally_loud(voice):
    """A short word, a long sentence and the system's voice: the loud parts are at one level, and nothing is clipped."""
    system = Synthesiser()
    try:
        for speaks in (voice, system):
            for text in ("Agrees.", "Hold.", SENTENCE, "One two five millilitres an hour. Right?"):
                speech = speaks.synthesise(text)
                assert 20 * np.log10(level_of(speech) / LEVEL) == pytest.approx(0, abs=1), text
                assert np.abs(speech.samples).max() <= PEAK * 32_768
    finally:
        system.close()


def test_numbers_are_said_more_slowly():
    """A part with a number has a slower speed, digits in a row are parted, and the rest is as it was."""
    diction = Diction(ENGLISH.tables.numbers, {"cefazolin": "s\u025b\u02c8f\u00e6z\u0259l\u026an"})
    process = LastingProcess(("no-such-program",))
    spoken = NeuralVoice(process, diction)
    stretches = spoken.stretches("Cefazolin agrees. One two five millilitres an hour. Right?")
    requests = [spoken.request(stretch) for stretch in stretches]
    assert [request["words"] for request in requests] == [
        "[cefazolin](/s\u025b\u02c8f\u00e6z\u0259l\u026an/) agrees.",
        "One,",
        "two,",
        "five millilitres an hour.",
        "Right?",
    ]
    speeds = [request["speed"] for request in requests]
    assert speeds[1] == speeds[2] == speeds[3] < speeds[0] == speeds[4] == START_PACE
    pauses = [spoken.pause_s(stretch, 0) for stretch in stretches]
    assert pauses[1] == pauses[2] == DIGIT_PAUSE_S < pauses[0] == pauses[3]


def test_a_six_by_itself_ends_in_its_hiss(voice):
    """As a breath of its own it has its own sounds, a hiss as long as within a sentence (0.16 s), and no hum behind."""
    spoken = voice._neural
    requests = [spoken.request(stretch)["words"] for stretch in spoken.stretches("One six five, six six.")]
    six = its_sounds(ENGLISH.diction.hissed(spoken.stretches("Six.")[0]))
    assert requests == ["One,", f"[six](/{six}/),", "five,", f"[six](/{six}/),", f"[six](/{six}/)."]
    assert spoken.request(spoken.stretches("thirty six drops")[0])["words"] == "thirty six drops"
    for text in ("Six.", "Six five."):
        samples = next(iter(voice.breaths(text))).samples.astype(float)
        frames = samples[: len(samples) // 240 * 240].reshape(-1, 240)
        power = np.square(np.abs(np.fft.rfft(frames)))
        middle = power @ np.fft.rfftfreq(240, 1 / NEURAL_HZ) / np.maximum(power.sum(axis=1), 1)
        sounds = power.sum(axis=1) > power.sum(axis=1).max() / 1_000
        hiss = np.flatnonzero(sounds & (middle > 3_000))
        assert len(hiss[hiss > np.flatnonzero(sounds & (middle < 1_500)).min()]) * 0.01 >= 0.14, text
        # Two frames may hold what fades out.
        assert np.flatnonzero(sounds).max() <= hiss.max() + 2, text


def test_sounds_are_written_in_signs_that_the_model_knows():
    """Every sign of every word of the lexicon is one of the model's own.

    Source: vocab.json of hibari-tts.
    """
    from hibari import Hibari

    known = set(Hibari().vocab)
    alone = {"six": ENGLISH.diction.hissed(ENGLISH.diction.stretches("Six.")[0])}
    for word, sounds in {**ENGLISH.diction.sounds, **alone}.items():
        assert set(its_sounds(sounds)) <= known, word


def test_killed_or_hung_the_systems_voice_says_that_sentence(voice):
    """A process that is killed, or stands still, costs one sentence its voice; the next ones are its own again."""
    spoken = open_voice()
    try:
        assert spoken.synthesise(SENTENCE).rate_hz == NEURAL_HZ
        for number, way in enumerate((signal.SIGKILL, signal.SIGSTOP)):
            os.kill(number_of(spoken), way)
            began = time.monotonic()
            assert spoken.synthesise(f"Sentence {number} goes on.").rate_hz == SYSTEM_HZ
            assert time.monotonic() - began < LIMIT_S
            assert spoken.synthesise(f"After sentence {number}.").rate_hz == NEURAL_HZ
    finally:
        spoken.close()


def test_killed_within_a_sentence_the_systems_voice_goes_on(voice):
    """What was not said yet when the process ended is said by the system's voice: no word of the sentence is lost."""
    spoken = open_voice()
    try:
        breaths = spoken.breaths("Hold. Nine five zero is not what the order needs.")
        assert next(breaths).rate_hz == NEURAL_HZ
        os.kill(number_of(spoken), signal.SIGKILL)
        [rest] = breaths
        assert rest.rate_hz == SYSTEM_HZ
        whole = voice.synthesise("Nine five zero is not what the order needs.")
        assert rest.length_s == pytest.approx(whole.length_s, rel=0.4)
    finally:
        spoken.close()


def test_breaths_are_the_sentence(voice):
    """Breath by breath or whole, a sentence has the same sound, and its first breath is a small part of it."""
    text = "I have eleven point eight millilitres per hour, one one point eight. Is that right?"
    breaths = list(voice.breaths(text))
    whole = voice.synthesise(text)
    assert np.array_equal(np.concatenate([breath.samples for breath in breaths]), whole.samples)
    assert breaths[0].length_s < 0.25 * whole.length_s


def test_given_up_when_it_fails_again_and_again():
    """A process that is killed at every sentence is not started for ever; the system's voice has them all."""
    spoken = open_voice()
    try:
        spoken.synthesise("Ready.")
        for number in range(MOST_FAILURES):
            assert not spoken._neural.is_given_up
            os.kill(number_of(spoken), signal.SIGKILL)
            assert spoken.synthesise(f"Sentence {number}.").rate_hz == SYSTEM_HZ
        assert spoken._neural.is_given_up
        assert spoken.synthesise("And on.").rate_hz == SYSTEM_HZ
    finally:
        spoken.close()


def test_without_its_package_the_systems_voice_speaks():
    """A Python without installed packages finds no neural voice: the first sentence is the system's already."""
    spoken = open_voice((sys.executable, "-S", *NEURAL_COMMAND[1:]))
    try:
        assert spoken.synthesise(SENTENCE).rate_hz == SYSTEM_HZ
        assert spoken._neural.is_given_up
    finally:
        spoken.close()


def test_other_weights_are_not_loaded(tmp_path):
    """A package whose model is another one by a single byte is refused, with the file's name."""
    found = importlib.util.find_spec("hibari")
    package = Path(found.origin).parent
    shutil.copytree(package, tmp_path / "hibari")
    model = tmp_path / "hibari" / "assets" / "hibari.onnx"
    model.write_bytes(model.read_bytes()[:-1] + b"?")
    script = tmp_path / "worker.py"
    script.write_text(
        f"import sys; sys.path.insert(0, {str(tmp_path)!r})\nexec(open({synthesiser_worker.__file__!r}).read())\n"
    )
    process = LastingProcess((sys.executable, str(script), "neural"), LIMIT_S)
    try:
        with pytest.raises(WorkerFailedError, match=r"hibari\.onnx is not the one that was tried"):
            process.ask({}, 1, lambda: False)
    finally:
        process.close()


def test_a_sentence_that_is_not_wanted_any_more_is_never_the_next_one(voice):
    """Given up while it is made, a sentence leaves the next one its own sound."""
    wanted = voice.synthesise("Open the clamp.", 1).samples
    asked = []

    def is_cancelled() -> bool:
        asked.append(None)
        return len(asked) > 1

    with pytest.raises(SynthesisCancelledError):
        voice.synthesise("This is a long sentence that nobody wants to hear to its end. " * 5, 0, is_cancelled)
    other = open_voice()
    try:
        assert np.array_equal(
            voice.synthesise("Close the clamp.").samples, other.synthesise("Close the clamp.").samples
        )
    finally:
        other.close()
    assert np.array_equal(voice.synthesise("Open the clamp.", 1).samples, wanted)


def test_not_ready_yet_the_systems_voice_says_the_first_sentence():
    """Nobody waits for a slow start: the sentence comes from the system's voice, a later one from the neural one."""
    spoken = open_voice(patience_s=0)
    try:
        assert spoken.synthesise("Primary line.").rate_hz == SYSTEM_HZ
        deadline = time.monotonic() + LIMIT_S
        while spoken.synthesise("Primary line.").rate_hz == SYSTEM_HZ:
            assert time.monotonic() < deadline
            time.sleep(0.1)
    finally:
        spoken.close()


def test_its_process_ends_with_the_program():
    """A program that is killed leaves no process behind."""
    script = (
        "from assistant.adapters.lasting_process import LastingProcess;"
        "from assistant.adapters.speaking_process import NEURAL_COMMAND;"
        "print(LastingProcess(NEURAL_COMMAND).number, flush=True); import time; time.sleep(60)"
    )
    program = subprocess.Popen([sys.executable, "-c", script], stdout=subprocess.PIPE, text=True)
    worker = int(program.stdout.readline())
    program.kill()
    program.wait()
    program.stdout.close()
    deadline = time.monotonic() + LIMIT_S
    while Path(f"/proc/{worker}").exists() and "State:\tZ" not in Path(f"/proc/{worker}/status").read_text():
        assert time.monotonic() < deadline
        time.sleep(0.05)
