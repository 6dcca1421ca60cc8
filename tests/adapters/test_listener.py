"""The ear's thread with the real speech detector, on synthesised words, from a scripted source of sound."""

import queue
import threading
import time
from collections import deque

import numpy as np
import pytest

from assistant.adapters import listener as listener_module
from assistant.adapters import recognition as recognition_module
from assistant.adapters.clock import SystemClock
from assistant.adapters.level import SOFT
from assistant.adapters.listener import Listener
from assistant.adapters.microphone import SoundBlock
from assistant.errors import DeviceError
from assistant.guide.events import EarBack, EarLost, Heard, NotUnderstood
from assistant.ports import (
    Alternative,
    AnswerHeard,
    Hearing,
    LearnerSilent,
    LearnerSpeaks,
    LevelAdvice,
    ListeningStarted,
)
from assistant.spoken.expect import ConfirmExpected, NumberExpected, TextExpected
from tests.spoken_words import missing_programs, words

pytestmark = [
    pytest.mark.sound,
    pytest.mark.skipif(bool(missing_programs()), reason="espeak-ng and flite are not installed"),
]

RATE_HZ = 16_000
NUMBER = NumberExpected("mL/h")


class ScriptedSource:
    """Sound as a test plays it; faster than it would sound, because the ear counts samples and not time."""

    def __init__(self, rate_hz=RATE_HZ, channels=1, block=480, open_failures=0):
        self.rate_hz = rate_hz
        self.channels = channels
        self.latency_s = 0.0
        self.block = block
        self.open_failures = open_failures
        self.opened = 0
        self.pulled = False
        self.deaf = False
        self.holds = False
        self.silence_s = 0.0
        self.playing = threading.Lock()
        self.waiting = threading.Event()
        self.sound = deque()

    def open(self):
        self.opened += 1
        if self.open_failures:
            self.open_failures -= 1
            raise DeviceError("The microphone is taken.")
        self.pulled = False

    def next_block(self, timeout):
        if self.pulled or self.deaf:
            time.sleep(0.005)
            return None
        with self.playing:
            played = self.sound.popleft() if self.sound else None
            if played is None:
                self.waiting.set()
        if self.holds and played is None:
            time.sleep(0.005)
            return None
        if played is not None:
            samples, gap = played
        else:
            self.silence_s += self.block / self.rate_hz
            time.sleep(0.001)  # between two things that are played, the room is silent
            samples, gap = np.zeros(self.block * self.channels, np.int16), False
        return SoundBlock(samples.tobytes(), time.monotonic(), gap)

    def has_ended(self):
        return self.pulled

    def close(self):
        pass

    def play(self, samples, gap_at=None):
        """Play mono samples; `gap_at` marks a block, as a part of the whole, before which sound was lost."""
        samples = np.repeat(samples, self.channels)
        size = self.block * self.channels
        starts = range(0, len(samples) - size + 1, size)
        marked = None if gap_at is None else int(gap_at * len(starts))
        with self.playing:
            self.waiting.clear()
            self.sound.extend((samples[start : start + size], n == marked) for n, start in enumerate(starts))

    def wait_played(self):
        assert self.waiting.wait(30)


class WritingRecogniser:
    """Keeps what it is fed, and says what it was told to say."""

    name = "writing"
    model_digest = "00"

    def __init__(self, said="one hundred"):
        self.said = said
        self.doubtful = False
        self.fed = []
        self.expected = []
        self.threads = set()
        self.fail_in = None
        self.hang = threading.Event()
        self.hang.set()
        self.finishing = threading.Event()
        self.given_up = 0
        self.gives_up = False
        self.closed = False

    def begin(self, expect):
        self._called("begin")
        self.expected.append(expect)
        return _Writing(self)

    def close(self):
        self._called("close")
        self.closed = True

    def _called(self, what):
        self.threads.add(threading.current_thread().name)
        if self.fail_in == what:
            raise RuntimeError("model.bin:\n cannot be read")


class _Writing:
    def __init__(self, recogniser):
        self.recogniser = recogniser
        self.sound = bytearray()

    def feed(self, block):
        self.recogniser._called("feed")
        self.sound += block

    def finish(self):
        self.recogniser._called("finish")
        self.recogniser.finishing.set()
        self.recogniser.hang.wait(30)
        samples = np.frombuffer(bytes(self.sound), np.int16)
        self.recogniser.fed.append(samples)
        said = self.recogniser.said
        others = (Alternative(said, 0.9), Alternative("one thousand", 0.05)) if said else ()
        return Hearing(said, others, len(samples) / RATE_HZ, 0.0, self.recogniser.doubtful)

    def give_up(self):
        self.recogniser.given_up += 1
        if self.recogniser.gives_up:
            self.recogniser.hang.set()


class Bench:
    """An ear with its source and recogniser, and what it posts."""

    def __init__(self, reopen=None, advises=False, **source):
        self.posted = queue.Queue()
        self.levels = []
        self.source = ScriptedSource(**source)
        self.recogniser = WritingRecogniser()
        self.ear = Listener(
            self.recogniser,
            self.posted.put,
            SystemClock(),
            source=self.source,
            reopen=reopen,
            advises=advises,
            show_level=self.levels.append,
        )

    def await_guess(self):
        deadline = time.monotonic() + 30
        while not self.recogniser.fed:
            assert time.monotonic() < deadline
            time.sleep(0.01)
        time.sleep(0.1)

    def listen(self, expect=NUMBER):
        self.ear.listen(expect)
        assert isinstance(self.next(), ListeningStarted)

    def say(self, text, **how):
        self.source.play(words("en-us", text, self.source.rate_hz), **how)

    def next(self):
        """What comes next, but for the signs that somebody has begun to speak; of an answer, what was heard."""
        while True:
            event = self.posted.get(timeout=30)
            if not isinstance(event, LearnerSpeaks | LearnerSilent):
                return event.event if isinstance(event, AnswerHeard) else event

    def assert_nothing_more(self):
        self.source.wait_played()
        end_s = self.source.silence_s + 2  # longer than the longest pause that ends an utterance
        while self.source.silence_s < end_s:
            time.sleep(0.01)
        self.assert_nothing_said()

    def assert_nothing_said(self):
        while not self.posted.empty():
            assert isinstance(event := self.posted.get(), LearnerSpeaks | LearnerSilent), event


@pytest.fixture
def bench(monkeypatch):
    monkeypatch.setattr(listener_module, "RETRY_S", 0.05)
    benches = []

    def make(**source):
        benches.append(Bench(**source))
        return benches[-1]

    yield make
    for each in benches:
        each.recogniser.hang.set()
        each.ear.close()


@pytest.mark.parametrize(
    ("rate_hz", "channels", "block"), [(16_000, 1, 512), (44_100, 1, 383), (48_000, 2, 4_800), (8_000, 1, 80)]
)
def test_hears_the_whole_utterance_at_any_rate(bench, rate_hz, channels, block):
    """Whatever the device gives, the recogniser gets the whole utterance at its rate, with what led to it."""
    bench = bench(rate_hz=rate_hz, channels=channels, block=block)
    bench.listen()
    bench.say("one hundred twenty five")
    heard = bench.next()
    assert isinstance(heard, Heard)
    assert (heard.words, heard.alternatives, heard.confidence) == ("one hundred", ("one thousand",), "0.900")
    assert (heard.ear, heard.gap, heard.during_speech) == ("writing", False, False)
    fed = bench.recogniser.fed[-1]  # a guess in a short pause may have come before
    spoken = words("en-us", "one hundred twenty five", RATE_HZ).astype(float)
    loud = np.flatnonzero(np.abs(spoken) > 50)
    assert loud[-1] - loud[0] < len(fed) < loud[-1] - loud[0] + 1.5 * RATE_HZ
    # All of the sound's energy arrives; the loss at 8 kHz is what such a microphone does not pick up.
    assert np.square(fed.astype(float)).sum() > (0.5 if rate_hz == 8_000 else 0.97) * np.square(spoken).sum()
    assert set(bench.recogniser.expected) == {NUMBER}
    assert max(bench.levels) >= 3


def test_two_utterances_are_two_events(bench):
    """The ear goes on listening, with the same expectation, until it is told otherwise."""
    bench = bench()
    bench.listen()
    for number in ("seventy five", "fifteen"):
        bench.say(number)
        assert isinstance(bench.next(), Heard)
    bench.assert_nothing_more()


def test_speech_without_wording_is_not_understood(bench):
    """Speech for which the recogniser will not stand is posted as such."""
    bench = bench()
    bench.recogniser.said = ""
    bench.listen()
    bench.say("what a lovely morning")
    assert isinstance(bench.next(), NotUnderstood)


def test_noise_is_no_speech(bench):
    """Hiss, hum, knocks and clicks post nothing."""
    bench = bench()
    bench.listen()
    chance = np.random.default_rng(5)
    hiss = chance.normal(0, 800, 3 * RATE_HZ)
    hum = 3_000 * np.sin(np.arange(3 * RATE_HZ) * 2 * np.pi * 50 / RATE_HZ)
    knocks = np.zeros(3 * RATE_HZ)
    knocks[:: RATE_HZ // 2] = 20_000
    for sound in (hiss, hum, knocks):
        bench.source.play(sound.astype(np.int16))
    bench.assert_nothing_more()


def test_muted_ear_hears_nothing(bench):
    """Before the first listen, and after mute, nothing reaches the recogniser."""
    bench = bench()
    bench.say("seventy five")
    bench.assert_nothing_more()
    bench.listen()
    bench.ear.mute()
    bench.say("seventy five")
    bench.assert_nothing_more()
    assert bench.recogniser.expected == []
    assert bench.levels == []


def test_mute_drops_what_is_being_recognised(bench):
    """An utterance that is still being recognised when the assistant begins to speak is dropped."""
    bench = bench()
    bench.recogniser.hang.clear()
    bench.listen()
    bench.say("seventy five")
    assert bench.recogniser.finishing.wait(30)
    bench.ear.mute()
    bench.recogniser.hang.set()
    bench.assert_nothing_more()


def test_new_question_drops_the_utterance_under_way(bench):
    """What was being said to one question is no answer to the next, although both expect the same."""
    bench = bench()
    bench.listen()
    spoken = words("en-us", "one hundred twenty five millilitres an hour")
    bench.source.holds = True  # the two halves follow each other without silence, however busy the machine is
    bench.source.play(spoken[: len(spoken) // 2])
    bench.source.wait_played()
    bench.ear.listen(NUMBER)
    bench.source.play(spoken[len(spoken) // 2 :])
    bench.source.holds = False
    assert isinstance(bench.next(), ListeningStarted)
    bench.assert_nothing_more()
    assert len(bench.recogniser.expected) == 1
    _assert_only_seventy_five_is_heard(bench)


def test_what_began_before_listening_is_not_heard(bench):
    """The end of a number is another number: of an utterance that began too early nothing is heard at all."""
    bench = bench()
    spoken = words("en-us", "one hundred twenty five millilitres an hour")
    begun = len(spoken) // 3
    bench.source.holds = True  # the rest follows without a moment of silence, as it would in a room
    bench.source.play(spoken[:begun])
    bench.source.wait_played()
    bench.ear.listen(NUMBER)
    bench.source.play(spoken[begun:])
    bench.source.holds = False
    assert isinstance(bench.next(), ListeningStarted)
    bench.assert_nothing_more()
    _assert_only_seventy_five_is_heard(bench)


def _assert_only_seventy_five_is_heard(bench):
    """What is said next is heard, and nothing of what came before it."""
    bench.say("seventy five")
    assert isinstance(bench.next(), Heard)
    spoken = len(words("en-us", "seventy five"))
    assert max(len(fed) for fed in bench.recogniser.fed) < spoken + 1.5 * RATE_HZ


@pytest.mark.parametrize(("gap_at", "gap"), [(None, False), (0.5, True)])
def test_lost_sound_is_told(bench, gap_at, gap):
    """An utterance in which sound was lost says so: a digit may be missing."""
    bench = bench()
    bench.listen()
    bench.say("seventy five", gap_at=gap_at)
    heard = bench.next()
    assert isinstance(heard, Heard)
    assert heard.gap is gap
    bench.say("seventy five")
    assert bench.next().gap is False


def test_gap_long_before_an_utterance_does_not_count(bench):
    """Sound lost in a silence ten seconds earlier makes no utterance doubtful."""
    bench = bench()
    bench.listen()
    bench.source.play(np.zeros(10 * RATE_HZ, np.int16), gap_at=0.0)
    bench.say("seventy five")
    assert bench.next().gap is False


def test_endless_speech_is_cut_and_marked(bench):
    """Speech beyond the limit is cut, marked as incomplete, and its rest is no new answer."""
    bench = bench()
    bench.listen()
    piece = words("en-us", "seventy five and eighty six and ninety seven and")
    loud = piece[np.abs(piece.astype(int)) > 50]  # without any pause
    bench.source.play(np.tile(loud, 20 * RATE_HZ // len(loud)))
    heard = bench.next()
    assert isinstance(heard, Heard)
    assert heard.gap is True
    bench.assert_nothing_more()


@pytest.mark.parametrize(
    ("expect", "said", "utterances"),
    [
        (ConfirmExpected(), "yes", 2),
        (ConfirmExpected(), "that is", 1),
        (ConfirmExpected(), "", 1),
        (NUMBER, "seventy five millilitres per hour", 2),
        (NUMBER, "one hundred", 1),
        (NUMBER, "one two", 1),
        (NUMBER, "eighty three point", 1),
        (TextExpected(), "the bag is wrong", 1),
    ],
)
def test_what_has_been_said_ends_an_utterance(bench, expect, said, utterances):
    """A silence of 0.75 s ends what is finished; a number without its unit is heard to its end."""
    bench = bench()
    bench.recogniser.said = said
    _say_twice(bench, expect, utterances, apart_s=0.75)


@pytest.mark.parametrize(("doubtful", "utterances"), [(False, 2), (True, 1)])
def test_what_is_in_doubt_may_go_on(bench, doubtful, utterances):
    """A silence of 0.45 s ends a yes, and none that is heard with doubt: perhaps more is to come."""
    bench = bench()
    bench.recogniser.said, bench.recogniser.doubtful = "yes", doubtful
    _say_twice(bench, ConfirmExpected(), utterances, apart_s=0.45)


def _say_twice(bench, expect, utterances, apart_s):
    """Something is said twice, so much apart, and heard as so many utterances."""
    bench.listen(expect)
    spoken = words("en-us", "seventy five")
    spoken = spoken[: np.flatnonzero(np.abs(spoken.astype(int)) > 200)[-1]]
    bench.source.holds = True
    bench.source.play(np.concatenate([spoken, np.zeros(int(0.25 * RATE_HZ), np.int16)]))
    bench.await_guess()
    bench.source.play(np.concatenate([np.zeros(int((apart_s - 0.25) * RATE_HZ), np.int16), spoken]))
    bench.source.holds = False
    for _ in range(utterances):
        assert isinstance(bench.next(), Heard | NotUnderstood)
    bench.assert_nothing_more()
    whole = len(spoken) if utterances == 2 else 2 * len(spoken) + apart_s * RATE_HZ
    assert len(bench.recogniser.fed[-1]) > 0.9 * whole


def test_an_answer_carries_its_question_and_its_times(bench):
    """Which question was open, and when the learner began, ended, was understood, goes with the answer."""
    bench = bench()
    bench.ear.listen(NUMBER, 7)
    bench.say("seventy five")
    events = []
    while not events or not isinstance(events[-1], AnswerHeard):
        events.append(bench.posted.get(timeout=30))
    kinds = [type(event) for event in events]
    assert kinds == [ListeningStarted, LearnerSpeaks, AnswerHeard]
    assert {event.question for event in events[1:]} == {7}
    timing = events[-1].timing
    assert timing.began < timing.ended <= timing.decided
    assert timing.ended <= timing.understood


def test_recogniser_that_hangs_is_replaced(bench, monkeypatch):
    """A recogniser that does not answer costs nobody a word: another one is opened, and hears the same sound."""
    monkeypatch.setattr(recognition_module, "FIRST_LIMIT_S", 0.5)
    second = WritingRecogniser("fifty")
    bench = bench(reopen=lambda: second)
    bench.recogniser.hang.clear()
    bench.listen()
    spoken = words("en-us", "seventy five")
    for _ in range(2):
        bench.say("seventy five")
        assert bench.next().words == "fifty"
        assert 0.8 * len(spoken) < len(second.fed[-1]) < len(spoken) + 1.5 * RATE_HZ


def test_the_end_comes_with_the_words(bench, monkeypatch):
    """Where it has been silent for long enough the recogniser's words end the utterance, without any more sound."""
    monkeypatch.setattr(listener_module, "NEXT_BLOCK_LIMIT_S", 60)
    bench = bench()
    bench.recogniser.said = "yes"
    bench.recogniser.hang.clear()
    bench.listen(ConfirmExpected())
    bench.source.holds = True
    spoken = words("en-us", "yes")
    spoken = spoken[: np.flatnonzero(np.abs(spoken.astype(int)) > 200)[-1]]
    bench.source.play(np.concatenate([spoken, np.zeros(int(0.45 * RATE_HZ), np.int16)]))
    assert bench.recogniser.finishing.wait(30)
    deadline = time.monotonic() + 30
    while bench.source.sound:
        assert time.monotonic() < deadline
        time.sleep(0.005)
    time.sleep(0.05)
    bench.recogniser.hang.set()
    assert bench.next().words == "yes"
    bench.source.holds = False
    bench.assert_nothing_more()


def test_two_recognisers_that_hang_lose_one_utterance(bench, monkeypatch):
    """Where the second one hangs as well the learner is told; the third one hears the next utterance."""
    monkeypatch.setattr(recognition_module, "FIRST_LIMIT_S", 0.3)
    monkeypatch.setattr(recognition_module, "ANSWER_LIMIT_S", 0.5)
    hangs, hears = WritingRecogniser(), WritingRecogniser("fifty")
    hangs.hang.clear()
    others = [hears, hangs]
    bench = bench(reopen=others.pop)
    bench.recogniser.hang.clear()
    bench.listen()
    bench.say("seventy five")
    lost = bench.next()
    assert (type(lost), lost.reason) == (EarLost, "The recogniser does not answer.")
    assert isinstance(bench.next(), EarBack)
    assert isinstance(bench.next(), ListeningStarted)
    bench.say("seventy five")
    assert bench.next().words == "fifty"
    hangs.hang.set()


def test_a_guess_that_no_longer_holds_is_given_up(bench):
    """When the speaker goes on, the recogniser leaves the guess it is about, and hears the whole."""
    bench = bench()
    bench.recogniser.gives_up = True
    bench.recogniser.hang.clear()
    bench.listen()
    spoken = words("en-us", "seventy five")
    bench.source.holds = True
    bench.source.play(np.concatenate([spoken, np.zeros(int(0.3 * RATE_HZ), np.int16)]))
    assert bench.recogniser.finishing.wait(30)
    bench.source.play(spoken)
    bench.source.holds = False
    assert isinstance(bench.next(), Heard)
    assert bench.recogniser.given_up
    assert len(bench.recogniser.fed[-1]) > 1.5 * len(spoken)
    bench.assert_nothing_more()


@pytest.mark.parametrize("call", ["begin", "feed", "finish"])
def test_recogniser_that_raises_loses_the_ear_once(bench, call):
    """A failing recogniser is told once, in one line; when it works again the ear is back and hears."""
    bench = bench()
    bench.listen()
    bench.recogniser.fail_in = call
    bench.say("seventy five")
    lost = bench.next()
    assert isinstance(lost, EarLost)
    assert lost.reason == "The recogniser has failed: model.bin: cannot be read."
    time.sleep(0.3)
    bench.assert_nothing_said()
    bench.recogniser.fail_in = None
    assert isinstance(bench.next(), EarBack)
    assert isinstance(bench.next(), ListeningStarted)
    bench.say("seventy five")
    assert isinstance(bench.next(), Heard)


def test_microphone_that_is_not_there_is_told_once(bench):
    """A microphone that cannot be opened is told once, tried again, and told when it is there."""
    bench = bench(open_failures=4)
    lost, back = bench.next(), bench.next()
    assert (type(lost), type(back)) == (EarLost, EarBack)
    assert lost.reason == "The microphone is taken."
    assert bench.source.opened == 5


@pytest.mark.parametrize("fault", ["pulled", "deaf"])
def test_microphone_that_goes_is_told_once(bench, monkeypatch, fault):
    """A microphone that ends, or that gives no sound any more, is told once, and told when it is back."""
    monkeypatch.setattr(listener_module, "NEXT_BLOCK_LIMIT_S", 0.3)
    monkeypatch.setattr(listener_module, "FIRST_BLOCK_LIMIT_S", 0.3)
    bench = bench()
    bench.listen()
    bench.source.open_failures = 3
    setattr(bench.source, fault, True)
    assert isinstance(bench.next(), EarLost)
    setattr(bench.source, fault, False)
    assert isinstance(bench.next(), EarBack)
    assert isinstance(bench.next(), ListeningStarted)
    bench.say("seventy five")
    assert isinstance(bench.next(), Heard)


def test_recogniser_is_called_in_the_ear_thread_only(bench):
    """Recognisers need not be safe for threads: one thread begins, feeds, finishes and closes."""
    bench = bench()
    bench.listen()
    bench.say("seventy five")
    bench.next()
    bench.ear.close()
    assert bench.recogniser.closed
    assert bench.recogniser.threads == {"recogniser"}


def test_close_does_not_wait_for_a_recogniser_that_hangs(bench):
    """Closing gives up on a recogniser that does not return."""
    bench = bench()
    bench.recogniser.hang.clear()
    bench.listen()
    bench.say("seventy five")
    bench.source.wait_played()
    closing = threading.Thread(target=bench.ear.close)
    closing.start()
    closing.join(10)
    assert not closing.is_alive()


def test_advice_comes_after_the_answer(bench):
    """Somebody too soft is told so once, and no answer is lost for it."""
    bench = bench(advises=True)
    bench.listen()
    soft = (words("en-us", "seventy five").astype(float) * 0.02).astype(np.int16)
    for advice in (LevelAdvice(SOFT), None):
        bench.source.play(soft)
        heard = bench.next()
        assert isinstance(heard, Heard)
        assert heard.sound == b""
        if advice:
            assert bench.next() == advice
    bench.assert_nothing_more()
