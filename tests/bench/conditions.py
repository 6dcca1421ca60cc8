"""What happens to speech on its way to the microphone."""

import hashlib
import shutil
import subprocess
from collections.abc import Callable
from functools import lru_cache

import numpy as np
import soundfile
import soxr

from assistant.ports import SAMPLE_RATE_HZ
from tests.bench.voices import ASTERISK, SPHINX, Sound, read

CLEAN = "clean"
NOISY_10_DB = ("pink 10 dB", "babble 10 dB")
_ECHO_S = 0.4
_PADDING_S = 0.3


def pink(sound: Sound, snr_db: float, seed: str) -> Sound:
    """With pink noise, whose power falls with frequency as that of rooms does."""
    return _mixed(sound, _pink_noise(len(sound), chance_of(seed)), snr_db)


def babble(sound: Sound, snr_db: float, seed: str) -> Sound:
    """With four people talking: readings and prompts on top of each other."""
    chance, talk = chance_of(seed), _talk()
    noise = np.zeros(len(sound), dtype=np.float32)
    for _ in range(4):
        start = int(chance.integers(0, len(talk)))
        noise += np.take(talk, np.arange(start, start + len(sound)), mode="wrap")
    return _mixed(sound, noise, snr_db)


def echo(sound: Sound, seed: str) -> Sound:
    """In a bare room: noise that dies away by 60 dB in 0.4 s stands for its reflections."""
    length = round(_ECHO_S * SAMPLE_RATE_HZ)
    decay = 10 ** (-3 * np.arange(length) / length)
    room = (chance_of(seed).standard_normal(length) * decay).astype(np.float32)
    room *= np.float32(0.5 / np.sqrt(np.sum(room**2)))
    room[0] = 1
    size = len(sound) + length
    return np.fft.irfft(np.fft.rfft(sound, size) * np.fft.rfft(room, size), size).astype(np.float32)


def alarm(sound: Sound, snr_db: float, seed: str) -> Sound:
    """With a burst of alarm pulses behind it.

    Five pulses of a tone with four harmonics, 150 ms each, as IEC 60601-1-8 describes auditory alarm signals
    (from memory).
    """
    pitch = float(chance_of(seed).uniform(300, 900))
    times = np.arange(len(sound)) / SAMPLE_RATE_HZ
    tone = sum(np.sin(2 * np.pi * pitch * n * times) / n for n in range(1, 6))
    pulses = (times % 2.0 < 1.5) & (times % 0.3 < 0.15)
    return _mixed(sound, (tone * pulses).astype(np.float32), snr_db)


def narrow(sound: Sound) -> Sound:
    """As a line of 8 kHz leaves it."""
    lower = soxr.resample(sound, SAMPLE_RATE_HZ, 8_000)
    return np.asarray(soxr.resample(lower, 8_000, SAMPLE_RATE_HZ), dtype=np.float32)


def clipped(sound: Sound) -> Sound:
    """Recorded four times too loud."""
    return np.clip(4 * sound, -0.5, 0.5)


def tempo(sound: Sound, factor: float) -> Sound:
    """Faster or slower at the same pitch, by SoX; as it is where there is none."""
    if not shutil.which("sox"):
        return sound
    raw = ["-t", "f32", "-r", str(SAMPLE_RATE_HZ), "-c", "1", "-"]
    command = ["sox", "-V1", *raw, *raw, "tempo", "-s", str(factor)]
    made = subprocess.run(command, input=sound.astype("<f4").tobytes(), capture_output=True, check=True).stdout
    return np.asarray(np.frombuffer(made, "<f4"), dtype=np.float32)


CONDITIONS: dict[str, Callable[[Sound, str], Sound]] = {
    CLEAN: lambda sound, _: sound,
    "8 kHz": lambda sound, _: narrow(sound),
    "clipped": lambda sound, _: clipped(sound),
    "pink 20 dB": lambda sound, seed: pink(sound, 20, seed),
    "pink 10 dB": lambda sound, seed: pink(sound, 10, seed),
    "pink 5 dB": lambda sound, seed: pink(sound, 5, seed),
    "babble 20 dB": lambda sound, seed: babble(sound, 20, seed),
    "babble 10 dB": lambda sound, seed: babble(sound, 10, seed),
    "babble 5 dB": lambda sound, seed: babble(sound, 5, seed),
    "echo": echo,
    "alarm": lambda sound, seed: alarm(sound, 10, seed),
    "fast": lambda sound, _: tempo(sound, 1.25),
    "slow": lambda sound, _: tempo(sound, 0.8),
}
"""Each condition by its name; the second argument names the clip, so that chance is the same in every run."""


def noises() -> dict[str, Sound]:
    """Sound in which nobody speaks: silence, hum, coughs and clatter."""
    chance = chance_of("noises")
    second = SAMPLE_RATE_HZ
    made: dict[str, Sound] = {"silence": np.zeros(2 * second, dtype=np.float32)}
    made["hiss"] = (0.01 * chance.standard_normal(2 * second)).astype(np.float32)
    made["hum"] = (0.05 * np.sin(2 * np.pi * 50 * np.arange(2 * second) / second)).astype(np.float32)
    for number in range(8):
        length = int(chance.integers(second // 5, second // 2))
        burst = _pink_noise(length, chance) if number % 2 else chance.standard_normal(length)
        shape = np.exp(-np.arange(length) / (length / 5))
        one = np.concatenate([burst * shape, np.zeros(second // 8)])
        name = f"cough {number}" if number % 2 else f"clatter {number}"
        made[name] = (0.3 * np.tile(one, 1 + number % 3) / np.abs(one).max()).astype(np.float32)
    for number in range(3):
        made[f"alarm {number}"] = alarm(np.full(2 * second, 1e-3, dtype=np.float32), -40, f"alarm {number}")
    return made


def as_recorded(sound: Sound) -> bytes:
    """At a usual level with a little quiet around it, in the form that recognisers take."""
    level = float(np.abs(sound).max())
    quiet = np.zeros(round(_PADDING_S * SAMPLE_RATE_HZ), dtype=np.float32)
    padded = np.concatenate([quiet, sound * (0.5 / level) if level else sound, quiet])
    return bytes((np.clip(padded, -1, 1) * 32_767).astype("<i2").tobytes())


def _mixed(sound: Sound, noise: Sound, snr_db: float) -> Sound:
    gain = np.sqrt(np.mean(sound**2) / max(1e-12, float(np.mean(noise**2))) / 10 ** (snr_db / 10))
    return np.asarray(sound + gain * noise, dtype=np.float32)


def _pink_noise(length: int, chance: np.random.Generator) -> Sound:
    spectrum = np.fft.rfft(chance.standard_normal(length))
    shaped = spectrum / np.sqrt(np.maximum(np.arange(len(spectrum)), 1))
    return np.asarray(np.fft.irfft(shaped, length), dtype=np.float32)


@lru_cache(maxsize=1)
def _talk() -> Sound:
    paths = [*sorted((SPHINX / "librivox").glob("*.wav")), *sorted(ASTERISK.glob("conf-*menu*.wav"))]
    if not paths:
        raise SystemExit("Babble needs recorded speech: apt-get install pocketsphinx-testdata")
    talk = [read(path) for path in paths]
    return np.concatenate([sound / np.sqrt(np.mean(sound**2)) for sound in talk])


def chance_of(seed: str) -> np.random.Generator:
    """Chance that is the same in every run, by what it is for."""
    return np.random.default_rng(int.from_bytes(hashlib.sha256(seed.encode()).digest()[:4], "big"))


def write(path: str, sound: bytes) -> None:
    """One clip as a WAV file, to be listened to."""
    soundfile.write(path, np.frombuffer(sound, "<i2"), SAMPLE_RATE_HZ)
