"""Sentences with the neural voice: words to its sounds, pace and pitch; one process speaks them all."""

import re
from collections.abc import Callable
from pathlib import Path

from assistant.adapters.lasting_process import LastingProcess
from assistant.spoken.diction import Diction

START_PACE = 0.92
"""Factor on the model's own speed at step 0: then 180 words a minute, as the system's voice says them."""
NUMBER_PACE = 0.88
"""Factor on the speed of a stretch that holds a number."""
SLOWEST, FASTEST = 0.5, 2.0
"""Limits of the speed that the voice was made for."""
RATE_STEP = 1.15
"""Factor on the speed for a step of rate, whatever speaks: four up are 1.75 times as fast, four down 0.57 times."""
PITCH_STEP = 2 ** (1 / 12)
"""Factor on the pitch for a step: a semitone."""
SENTENCE_LIMIT_S = 1.5
"""Longest wait for a sentence, beside `CHARACTER_LIMIT_S` for each character; the longest takes 0.1 s."""
CHARACTER_LIMIT_S = 0.02

_ITS_SIGNS = {
    "t\u0283": "\u02a7",
    "d\u0292": "\u02a4",
    "e\u026a": "A",
    "a\u026a": "I",
    "o\u028a": "O",
    "a\u028a": "W",
    "\u0254\u026a": "Y",
    "g": "\u0261",
    "r": "\u0279",
    "\u025d": "\u025c\u0279",
    "\u02d0": "",
}
"""The model's own signs for sounds that the International Phonetic Alphabet writes otherwise."""


class NeuralVoice:
    """The neural voice.

    Args:
        process: speaks; it belongs to the voice.
        diction: how the language is said.
    """

    def __init__(self, process: LastingProcess, diction: Diction) -> None:
        self._process = process
        self._diction = diction
        self._marked = {word: f"[{word}](/{its_sounds(sounds)}/)" for word, sounds in diction.sounds.items()}
        words = "|".join(sorted(map(re.escape, self._marked), key=len, reverse=True))
        self._word = re.compile(rf"(?<![\w'])(?:{words or '(?!)'})(?![\w'])", re.IGNORECASE)

    @property
    def is_given_up(self) -> bool:
        """Whether it will speak no more."""
        return self._process.is_given_up

    def write(self, text: str, rate: int, pitch: int, file: Path, is_cancelled: Callable[[], bool]) -> None:
        """Write a sentence into a sound file.

        Args:
            text: words as they are to be spoken.
            rate: steps from the normal speed.
            pitch: steps from the normal pitch.
            file: where to.
            is_cancelled: asked again and again during the wait.

        Raises:
            WorkerFailedError: it is not ready, failed or hangs.
            SynthesisCancelledError: `is_cancelled` said so.
        """
        request: dict[str, object] = {
            "parts": self.parts(text, rate),
            "pitch": PITCH_STEP**pitch,
            "file": str(file),
        }
        self._process.ask(request, SENTENCE_LIMIT_S + CHARACTER_LIMIT_S * len(text), is_cancelled)

    def parts(self, text: str, rate: int = 0) -> list[tuple[str, float]]:
        """What the process is asked for: words, some with their sounds, each part with its speed."""
        pace = START_PACE * RATE_STEP**rate
        return [
            (self._with_sounds(stretch.words), _within(pace * (NUMBER_PACE if stretch.is_number else 1)))
            for stretch in self._diction.stretches(text)
        ]

    def close(self) -> None:
        """End the process."""
        self._process.close()

    def _with_sounds(self, words: str) -> str:
        return self._word.sub(lambda match: self._marked[match[0].lower()], words)


def its_sounds(ipa: str) -> str:
    """Sounds of the International Phonetic Alphabet in the model's signs."""
    for theirs, own in _ITS_SIGNS.items():
        ipa = ipa.replace(theirs, own)
    return ipa


def _within(speed: float) -> float:
    return max(SLOWEST, min(FASTEST, speed))
