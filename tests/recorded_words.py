"""Words as recorded people say them: digits and numbers, and yes, no, stop and go where such recordings lie about.

Numbers come from Debian's asterisk-core-sounds-en-wav (one announcer, as far as a point, which she calls a dot). A
folder named by CHECKOFF_PEOPLE, the test files of Speech Commands 0.02 (CC BY 4.0; a folder for each word), gives many
people for digits, yes, no, stop and go. What nobody has recorded is spoken by a synthesiser.
"""

import functools
import os
from pathlib import Path

import numpy as np
import numpy.typing as npt
import soundfile

from assistant.ports import SAMPLE_RATE_HZ as RATE_HZ
from tests import spoken_words
from tests.bench import voices
from tests.bench.people import spoken_words as words_of_people
from tests.bench.voices import Sound

LEVEL = 0.1
"""Mean level (root of the mean square, of 1) of what is said: other people's talk is set against it."""
_ANNOUNCED = {**voices.ANNOUNCED, "no": "vm-no"}
_QUIET = 0.02
_GAP_S = 0.08


def missing_recordings() -> list[str]:
    """What is to be installed before numbers can be said by somebody who was recorded."""
    return [] if voices.ASTERISK.is_dir() else ["asterisk-core-sounds-en-wav"]


class Mouth:
    """Says words with recordings of people as far as there are any.

    Args:
        folder: people's single words; `None` for the announcer alone.

    Attributes:
        by_people: how many sayings had a recorded word.
        by_machine: how many were a synthesiser's altogether.
    """

    def __init__(self, folder: Path | None = None) -> None:
        self._folder = folder
        self.by_people = self.by_machine = 0

    @classmethod
    def of_this_machine(cls) -> "Mouth":
        """With the folder that the environment names."""
        named = os.environ.get("CHECKOFF_PEOPLE")
        return cls(Path(named) if named else None)

    def write_words(self, voice: str, text: str, file: Path) -> None:
        """Write `text` into a WAV file, as `tests.spoken_words.write_words` does; `voice` for what nobody recorded.

        A person says a word by itself or a row of digits; the announcer says numbers, and the voice the unit.
        """
        words = text.replace("-", " ").split()
        sound = self._people(words, voice)
        if sound is None and not missing_recordings():
            sound = self._announcer(words, voice)
        self.by_people += sound is not None
        self.by_machine += sound is None
        if sound is None:
            sound = _machine(voice, text)
        soundfile.write(file, _level(sound) * LEVEL, RATE_HZ, subtype="PCM_16")

    def _people(self, words: list[str], voice: str) -> Sound | None:
        spoken_by = {} if self._folder is None else _people(self._folder)
        able = [said for _, said in sorted(spoken_by.items()) if said.keys() >= set(words)]
        if not able or not words:
            return None
        said = able[sum(map(ord, f"{voice}{words}")) % len(able)]
        return _joined([_level(said[word]) for word in words])

    def _announcer(self, words: list[str], voice: str) -> Sound | None:
        ahead = next((place for place, word in enumerate(words) if word not in _ANNOUNCED), len(words))
        if not ahead:
            return None
        rest = [_level(_machine(voice, " ".join(words[ahead:])))] if words[ahead:] else []
        return _joined([*(_announced(word) for word in words[:ahead]), *rest])


def babble(seconds: float, below_db: float, seed: int = 1) -> npt.NDArray[np.int16]:
    """Four voices that talk at once, without end, so far below what a learner says; 16 bits at `RATE_HZ`.

    Args:
        seconds: length.
        below_db: decibels below `LEVEL`.
        seed: of where each begins.
    """
    chance = np.random.default_rng(seed)
    length = round(seconds * RATE_HZ)
    mixed = np.zeros(length, dtype=np.float32)
    for voice, text in _CHATTER.items():
        talk = _level(_machine(voice, text))
        mixed += np.take(talk, np.arange(length) + int(chance.integers(len(talk))), mode="wrap")
    return (_level(mixed) * LEVEL * 10 ** (-below_db / 20) * 32_767).astype("<i2")


_CHATTER = {
    "slt": "My sister moved to the coast in the spring, and we meet there on most weekends. Last time it rained.",
    "rms": "They have changed the timetable again, so the last bus leaves before the lecture ends, and we walk home.",
    "awb": "You would not believe how long the queue was, right around the corner, and all that for a sandwich.",
    "kal16": "If the weather holds we could row across to the island, take some bread, and be back before dark.",
}
"""What others in the room talk about, each with a voice of flite."""


def _machine(voice: str, text: str) -> Sound:
    return spoken_words.words(voice, text, RATE_HZ).astype(np.float32) / 32_768


def _joined(sounds: list[Sound]) -> Sound:
    gap = np.zeros(round(_GAP_S * RATE_HZ), dtype=np.float32)
    parts = [part for sound in sounds for part in (sound, gap)]
    return np.concatenate(parts[:-1])


def _level(sound: Sound) -> Sound:
    """At a mean level of 1 where there is sound."""
    loud = sound[np.abs(sound) > _QUIET * np.abs(sound).max()]
    return sound / max(1e-6, float(np.sqrt(np.mean(np.square(loud)))))


@functools.cache
def _announced(word: str) -> Sound:
    return _level(voices.trimmed(voices.read(voices.ASTERISK / f"{_ANNOUNCED[word]}.wav")))


@functools.cache
def _people(folder: Path) -> dict[str, dict[str, Sound]]:
    """One recording of each word, by speakers whom the trained recogniser has not heard."""
    return {speaker: dict(said) for speaker, said in words_of_people(folder, "report").items()}
