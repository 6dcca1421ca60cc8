"""The voice's thread, with a synthesiser and a loudspeaker that a test can hold and break."""

import queue
import threading
import time

import numpy as np
import pytest

from assistant.adapters import voice as voice_module
from assistant.adapters.clock import SystemClock
from assistant.adapters.speaking_process import SynthesisCancelledError
from assistant.adapters.synthesiser import Speech
from assistant.adapters.voice import SpeakingVoice
from assistant.errors import DeviceError
from assistant.guide.events import VoiceLost
from assistant.ports import SpeechEnded, SpeechStarted


class ScriptedSynthesiser:
    def __init__(self):
        self.asked = []
        self.pitches = []
        self.failure = None
        self.slow = False
        self.closed = False

    def breaths(self, text, rate, is_cancelled, pitch=0):
        self.asked.append((text, rate))
        self.pitches.append(pitch)
        while self.slow:
            if is_cancelled():
                raise SynthesisCancelledError
            time.sleep(0.005)
        if self.failure:
            raise self.failure
        for part in filter(None, text.split("|")):
            yield Speech(np.ones(len(part), np.int16), 16_000)

    def synthesise(self, *wanted):
        return list(self.breaths(*wanted))

    def close(self):
        self.closed = True


class ScriptedLoudspeaker:
    def __init__(self):
        self.played = []
        self.failure = None
        self.go_on = threading.Event()
        self.go_on.set()

    def refresh(self):
        pass

    def play(self, speech, gain, on_start, stop, following=()):
        if self.failure:
            raise self.failure
        self.played.append((len(speech.samples), gain))
        on_start()
        self.played += [(len(more.samples), gain) for more in following]
        while not self.go_on.is_set() and not stop.is_set():
            time.sleep(0.005)
        return not stop.is_set()


class Bench:
    def __init__(self):
        self.posted = queue.Queue()
        self.synthesiser = ScriptedSynthesiser()
        self.loudspeaker = ScriptedLoudspeaker()
        self.voice = SpeakingVoice(
            self.posted.put, SystemClock(), synthesiser=self.synthesiser, loudspeaker=self.loudspeaker
        )

    def next(self):
        """The next event as a word, with its utterance where it has one."""
        event = self.posted.get(timeout=30)
        kind = {SpeechStarted: "started", SpeechEnded: "ended", VoiceLost: "lost"}[type(event)]
        return f"{kind} {event.utterance}" if kind != "lost" else f"lost: {event.reason}"

    def events(self, count):
        return [self.next() for _ in range(count)]


@pytest.fixture
def bench(monkeypatch):
    monkeypatch.setattr(voice_module, "RETRY_S", 0.05)
    bench = Bench()
    yield bench
    bench.loudspeaker.go_on.set()
    bench.synthesiser.slow = False
    bench.voice.close()
    assert bench.synthesiser.closed


def test_sentences_one_after_the_other(bench):
    """Sentences sound in order, each with its beginning and its end."""
    bench.voice.say(1, "one")
    bench.voice.say(2, "three")
    assert bench.events(4) == ["started 1", "ended 1", "started 2", "ended 2"]
    assert [length for length, _ in bench.loudspeaker.played] == [3, 5]


def test_breath_by_breath(bench):
    """A sentence of several breaths begins once and ends once, and all of it sounds."""
    bench.voice.say(1, "one|two|three")
    assert bench.events(2) == ["started 1", "ended 1"]
    assert [length for length, _ in bench.loudspeaker.played] == [3, 3, 5]


def test_sentence_without_sound_ends(bench):
    """A sentence in which there is nothing to say ends without having begun."""
    bench.voice.say(1, "")
    assert bench.next() == "ended 1"


def test_hush_ends_all_and_leaves_the_next_alone(bench):
    """Hush ends what sounds and what is queued, each with its end; a sentence said afterwards sounds."""
    bench.loudspeaker.go_on.clear()
    for utterance in (1, 2, 3):
        bench.voice.say(utterance, "words")
    assert bench.next() == "started 1"
    bench.voice.hush()
    bench.voice.say(4, "four")
    assert bench.events(4) == ["ended 1", "ended 2", "ended 3", "started 4"]
    bench.loudspeaker.go_on.set()
    assert bench.next() == "ended 4"


def test_hush_while_the_synthesiser_works(bench):
    """A sentence that is still being synthesised is given up, and ends."""
    bench.synthesiser.slow = True
    bench.voice.say(1, "one")
    while not bench.synthesiser.asked:
        time.sleep(0.005)
    bench.voice.hush()
    assert bench.next() == "ended 1"


def test_hush_when_nothing_sounds(bench):
    """Hush in a silence does no harm to the next sentence."""
    bench.voice.hush()
    bench.voice.say(1, "one")
    assert bench.events(2) == ["started 1", "ended 1"]


@pytest.mark.parametrize("part", ["synthesiser", "loudspeaker"])
@pytest.mark.parametrize(
    ("failure", "reason"),
    [
        (
            DeviceError("This machine has no loudspeaker.", "Plug it in."),
            "This machine has no loudspeaker. Plug it in.",
        ),
        (ValueError("odd"), "The voice has failed: odd."),
    ],
)
def test_failure_is_told_once_and_nobody_waits(bench, part, failure, reason):
    """A lost voice is told once; every sentence still ends, and when it works again it speaks."""
    getattr(bench, part).failure = failure
    bench.voice.say(1, "one")
    bench.voice.say(2, "two")
    assert bench.events(3) == [f"lost: {reason}", "ended 1", "ended 2"]
    bench.voice.say(3, "three")
    assert bench.next() == "ended 3"
    getattr(bench, part).failure = None
    played = len(bench.loudspeaker.played)
    while len(bench.loudspeaker.played) == played:  # until it has tried by itself, with silence
        time.sleep(0.01)
    time.sleep(0.05)
    bench.voice.say(4, "four")
    assert bench.events(2) == ["started 4", "ended 4"]


def test_talk_does_not_keep_a_lost_voice_away(bench):
    """Sentences that come faster than an attempt to get the voice back takes do not end that attempt."""
    bench.loudspeaker.failure = DeviceError("This machine has no loudspeaker.", "Plug it in.")
    bench.voice.say(1, "one")
    assert bench.events(2)[1] == "ended 1"
    bench.loudspeaker.failure = None
    bench.synthesiser.slow = True
    attempt = ("ready", 0)
    while attempt not in bench.synthesiser.asked:
        time.sleep(0.005)
    for utterance in range(2, 20):
        bench.voice.say(utterance, "Are you there?")
        assert bench.next() == f"ended {utterance}"
        time.sleep(0.01)
    assert bench.synthesiser.asked.count(attempt) == 1
    bench.synthesiser.slow = False
    while not bench.loudspeaker.played:
        time.sleep(0.005)
    time.sleep(0.05)
    bench.voice.say(20, "twenty")
    assert bench.events(2) == ["started 20", "ended 20"]


def test_adjusted_steps_hold_from_the_next_sentence_on(bench):
    """Rate, loudness and pitch are steps with a limit; at the loudest nothing goes beyond full scale."""
    for rate, loudness, pitch in ((0, 0, 0), (2, 1, 3), (-9, -9, -9), (9, 9, 9)):
        bench.voice.adjust(rate, loudness, pitch)
        bench.voice.say(1, "one")
        assert bench.events(2) == ["started 1", "ended 1"]
    assert list(dict.fromkeys(rate for _, rate in bench.synthesiser.asked)) == [0, 2, -4, 4]
    assert list(dict.fromkeys(bench.synthesiser.pitches)) == [0, 3, -4, 4]
    gains = [gain for _, gain in bench.loudspeaker.played]
    assert gains[2] < gains[0] < gains[1] < gains[3] <= 1


def test_close_while_it_sounds():
    """Closing ends a sentence under way; every sentence has had its end."""
    bench = Bench()
    bench.loudspeaker.go_on.clear()
    bench.voice.say(1, "one")
    assert bench.next() == "started 1"
    bench.voice.close()
    assert bench.next() == "ended 1"


def test_careful_sentences_are_slower(bench):
    """A sentence with numbers to be checked is a step slower than the others."""
    for careful in (False, True):
        bench.voice.say(1, "one", careful=careful)
        assert bench.events(2) == ["started 1", "ended 1"]
    assert {rate for _, rate in bench.synthesiser.asked} == {0, -1}


def test_a_prepared_sentence_does_not_sound(bench):
    """What may be said soon is made ready, and nothing else happens."""
    bench.voice.prepare("perhaps", careful=True)
    deadline = time.monotonic() + 30
    while not bench.synthesiser.asked:
        assert time.monotonic() < deadline
        time.sleep(0.01)
    assert bench.synthesiser.asked == [("perhaps", -1)]
    assert bench.loudspeaker.played == []
    assert bench.posted.empty()


def test_what_is_likely_no_more_is_not_made_ready(bench):
    """Once something is said, what was likely before it is nobody's business any more."""
    bench.synthesiser.slow = True
    bench.voice.prepare("first")
    deadline = time.monotonic() + 30
    while not bench.synthesiser.asked:
        assert time.monotonic() < deadline
        time.sleep(0.01)
    bench.voice.prepare("second")
    bench.voice.say(1, "said")
    bench.voice.prepare("third")
    bench.synthesiser.slow = False
    assert bench.events(2) == ["started 1", "ended 1"]
    while ("third", 0) not in bench.synthesiser.asked:
        assert time.monotonic() < deadline
        time.sleep(0.01)
    assert {text for text, _ in bench.synthesiser.asked} == {"first", "said", "third"}
