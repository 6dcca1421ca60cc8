"""Ear and voice on a sound server: PortAudio, real time, devices that are pulled and put back."""

import json
import queue
import subprocess
import sys
import threading
import time

import numpy as np
import pytest

from tests import spoken_words, virtual_sound
from tests.spoken_words import words
from tests.virtual_sound import SINK_RATE_HZ

_MISSING = virtual_sound.missing_programs() + spoken_words.missing_programs()
pytestmark = [
    pytest.mark.sound,
    pytest.mark.slow,
    pytest.mark.skipif(bool(_MISSING), reason=f"not installed: {', '.join(_MISSING)}"),
]

LIMIT_S = 30


class Process:
    """The process with ear and voice, its events and its console."""

    def __init__(self, environment, ear="length", microphone="microphone", loudspeaker="loudspeaker", how=()):
        self._process = subprocess.Popen(
            [sys.executable, "-m", "tests.adapters.ear_and_voice", ear, microphone, loudspeaker, *how],
            env=environment,
            stdin=subprocess.PIPE,
            stdout=subprocess.PIPE,
            stderr=subprocess.PIPE,
            text=True,
        )
        self._events = queue.Queue()
        self._console = []
        threading.Thread(target=self._read, daemon=True).start()
        self._console_reader = threading.Thread(target=self._read_console, daemon=True)
        self._console_reader.start()

    def tell(self, line):
        self._process.stdin.write(line + "\n")
        self._process.stdin.flush()

    def next(self, kind):
        """The next event, which must be of this kind."""
        event = self._events.get(timeout=LIMIT_S)
        assert event["event"] == kind, event
        return event

    def assert_quiet_for(self, seconds):
        time.sleep(seconds)
        assert self._events.empty(), self._events.get()

    def close(self):
        """End the process; return what it wrote to its console."""
        self.tell("close")
        assert self.next("Closed")["took_s"] < 2  # the promise of the ports
        assert self._process.wait(LIMIT_S) == 0
        self._console_reader.join(LIMIT_S)
        self._end()
        return "".join(self._console)

    def _end(self):
        if self._process.poll() is None:
            self._process.kill()
            self._process.wait()
        for pipe in (self._process.stdin, self._process.stdout, self._process.stderr):
            pipe.close()

    def _read(self):
        for line in self._process.stdout:
            self._events.put(json.loads(line))

    def _read_console(self):
        self._console.extend(self._process.stderr)


@pytest.fixture(scope="module")
def sound():
    with virtual_sound.virtual_sound() as running:
        yield running


@pytest.fixture
def process(sound):
    started = []

    def start(environment=sound.environment, **how):
        started.append(Process(environment, **how))
        return started[-1]

    yield start
    for each in started:
        each._end()


def listening(process, expect="number mL/h"):
    process.tell(f"listen {expect}")
    process.next("ListeningStarted")
    return process


@pytest.mark.parametrize("microphone", ["microphone", "MICRO", "default"])
def test_ear_hears_through_the_sound_system(sound, process, microphone):
    """What somebody says into the microphone arrives whole; the device is found by its name or part of it."""
    process = listening(process(microphone=microphone))
    spoken = words("en-us", "one hundred twenty five", SINK_RATE_HZ)
    sound.play_samples(spoken, SINK_RATE_HZ)
    tenths = int(process.next("Heard")["words"])
    assert -6 < tenths - 10 * len(spoken) / SINK_RATE_HZ < 15  # the silence after the last sound may be left out
    assert process.close() == ""


def test_bundled_recogniser_hears_a_number(sound, process):
    """The recogniser that comes along hears a number from the microphone."""
    bundled = pytest.importorskip("assistant.adapters.recognisers.bundled")
    if bundled.bundled_folder() is None:
        pytest.skip("the bundled model is not installed")
    process = listening(process(ear="bundled"))
    sound.play_samples(words("en-us", "seventy five", SINK_RATE_HZ), SINK_RATE_HZ)
    assert process.next("Heard")["words"] in ("75", "seventy five", "seventy-five")
    assert process.close() == ""


def test_voice_sounds_and_stops(sound, process):
    """A sentence arrives at the loudspeaker and ends when it is over; hushed, it ends at once."""
    process = process(ear="none")
    sentence = "Close the roller clamp before you spike the bag, and keep it closed."
    with sound.recording() as recording:
        process.tell(f"say 1 {sentence}")
        started, ended = process.next("SpeechStarted"), process.next("SpeechEnded")
        whole_s = ended["ticks"] - started["ticks"]
        time.sleep(0.3)
        heard_s = recording.loud_s()
        assert 0.6 * whole_s < heard_s < whole_s + 0.3
        assert np.abs(recording.samples().astype(int)).max() > 3_000
        process.tell(f"say 2 {sentence}")
        process.tell("say 3 And another one.")
        process.next("SpeechStarted")
        time.sleep(0.5)
        process.tell("hush")
        assert process.next("SpeechEnded")["utterance"] == 2
        assert process.next("SpeechEnded")["utterance"] == 3
        time.sleep(0.3)
        after_hush_s = recording.loud_s()
        assert 0 < after_hush_s - heard_s < 0.5 * whole_s
        time.sleep(0.7)
        assert recording.loud_s() == after_hush_s
    assert process.close() == ""


def test_louder_is_louder(sound, process):
    """The loudspeaker's level follows the sentence, and never reaches the limit of the samples."""
    process = process(ear="none")
    with sound.recording() as recording:
        process.tell("say 1 Louder.")
        process.next("SpeechStarted")
        process.next("SpeechEnded")
        time.sleep(0.2)
        assert 1_000 < np.abs(recording.samples().astype(int)).max() < 32_000
    process.close()


def test_pulled_microphone(sound, process):
    """A microphone that is pulled is told once; put back, it is told and heard; the console stays clean."""
    process = listening(process())
    sound.pull_microphone()
    try:
        lost = process.next("EarLost")
        assert lost["reason"].startswith("The microphone has gone")
        process.assert_quiet_for(3)  # more than one further attempt in vain
    finally:
        sound.plug_in_microphone()
    process.next("EarBack")
    process.next("ListeningStarted")
    sound.play_samples(words("en-gb", "seventy five", SINK_RATE_HZ), SINK_RATE_HZ)
    process.next("Heard")
    assert process.close() == ""


@pytest.mark.timeout(240)
def test_pulled_loudspeaker(sound, process):
    """A loudspeaker that goes is told once, sentences end at once; back again, the next ones sound."""
    process = process(ear="none")
    process.tell("say 1 Close the roller clamp, then spike the bag, and fill the chamber to one half.")
    process.next("SpeechStarted")
    sound.pull_loudspeaker()
    try:
        process.next("VoiceLost")
        process.next("SpeechEnded")
        process.tell("say 2 Are you there?")
        process.next("SpeechEnded")
    finally:
        sound.plug_in_loudspeaker()
    # Only against waiting for ever: each attempt to get it back takes seconds, more on a busy machine.
    deadline = time.monotonic() + 3 * LIMIT_S
    utterance = 3
    while True:
        process.tell(f"say {utterance} Are you there?")
        event = process._events.get(timeout=LIMIT_S)
        if event["event"] == "SpeechStarted":
            process.next("SpeechEnded")
            break
        assert event["event"] == "SpeechEnded"
        assert time.monotonic() < deadline
        time.sleep(0.5)
        utterance += 1
    assert process.close() == ""


def test_machine_without_any_device(sound, process):
    """Without microphone and loudspeaker both are told, with what to do, and nobody waits or crashes."""
    # ALSA's own configuration and no sound server. (Under an empty one PortAudio 19.6 aborts by itself.)
    environment = sound.environment | {"PULSE_SERVER": f"unix:{sound.folder}/none"}
    del environment["ALSA_CONFIG_PATH"]
    process = process(environment)
    process.tell("listen confirm")
    process.tell("say 1 Hello.")
    events = sorted((process._events.get(timeout=LIMIT_S) for _ in range(3)), key=lambda event: event["event"])
    assert [event["event"] for event in events] == ["EarLost", "SpeechEnded", "VoiceLost"]
    assert 'no microphone called "microphone"' in events[0]["reason"]
    assert 'no loudspeaker called "loudspeaker"' in events[2]["reason"]
    assert process.close() == ""


@pytest.mark.parametrize("latency_ms", [20, 300])
def test_own_voice_is_not_heard(sound, process, latency_ms):
    """Where the microphone picks up the loudspeaker, even late, the ear hears nothing of the own voice."""
    process = process()
    with sound.loop_back(latency_ms):
        process.tell("mute")
        process.tell("say 1 The rate is one hundred and twenty five millilitres an hour. Yes or no?")
        process.next("SpeechStarted")
        process.next("SpeechEnded")
        listening(process, "confirm")
        process.assert_quiet_for(2)
        # To prove that the room is not deaf: not muted, the ear hears it.
        process.tell("say 2 The rate is seventy five.")
        process.next("SpeechStarted")
        kinds = {process._events.get(timeout=LIMIT_S)["event"] for _ in range(2)}
        assert kinds == {"SpeechEnded", "Heard"}
    assert process.close() == ""


def test_own_voice_is_not_heard_with_an_open_ear(sound, process):
    """With the canceller the ear stays open: it hears nothing of the voice at -20 dB, and the learner after it.

    Whether it hears a learner in the voice depends on how quiet the machine is; `tests.bench.room` measures that.
    """
    process = process(how=["canceller"])
    listening(process)
    with sound.loop_back(level_db=-20):
        for utterance, text in enumerate(("The rate is one hundred and twenty five. Yes or no?", "Close the clamp.")):
            process.tell(f"say {utterance} {text}")
            process.next("SpeechStarted")
            process.next("SpeechEnded")
        process.assert_quiet_for(1.5)
        spoken = words("en-us", "seventy five", SINK_RATE_HZ)
        sound.play_samples(spoken, SINK_RATE_HZ)
        tenths = int(process.next("Heard")["words"])
        assert -6 < tenths - 10 * len(spoken) / SINK_RATE_HZ < 15
    assert process.close() == ""
