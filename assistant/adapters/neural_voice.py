"""The neural voice, breath by breath: words to its sounds, pace, pauses and pitch; one process speaks them all."""

import re
from collections.abc import Callable
from pathlib import Path

from assistant.adapters.lasting_process import LastingProcess
from assistant.spoken.diction import Diction, Stretch

START_PACE = 0.92
"""Factor on the model's own speed at step 0: then 180 words a minute, as the system's voice says them."""
NUMBER_PACE = 0.88
"""Factor on the speed of a stretch that holds a number."""
PAUSES_S = {",": 0.2, ";": 0.24, ":": 0.24, ".": 0.4, "?": 0.4, "!": 0.4}
"""Silence behind a breath that ends so, at step 0."""
SHORT_PAUSE_S = 0.12
"""Silence behind a breath that ends without a mark."""
DIGIT_PAUSE_S = 0.24
"""Silence behind a digit of a row."""
AGAIN_PITCH = 2 ** (-3 / 12)
"""Factor on the pitch of a digit that was said just before: three semitones below, two alike are not heard as one."""
SLOWEST, FASTEST = 0.5, 2.0
"""Limits of the speed that the voice was made for."""
RATE_STEP = 1.15
"""Factor on the speed for a step of rate, whatever speaks: four up are 1.75 times as fast, four down 0.57 times."""
PITCH_STEP = 2 ** (1 / 12)
"""Factor on the pitch for a step: a semitone."""
BREATH_LIMIT_S = 1.5
"""Longest wait for a breath, beside `CHARACTER_LIMIT_S` for each character; the longest takes 0.1 s."""
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

    def stretches(self, text: str) -> tuple[Stretch, ...]:
        """A text as it is to be spoken, breath by breath; one without anything to say is left out."""
        return tuple(s for s in self._diction.stretches(text) if any(character.isalnum() for character in s.words))

    def write(self, stretch: Stretch, rate: int, pitch: int, file: Path, is_cancelled: Callable[[], bool]) -> None:
        """Write what is said in one breath into a sound file.

        Args:
            stretch: one of `stretches`.
            rate: steps from the normal speed.
            pitch: steps from the normal pitch.
            file: where to.
            is_cancelled: asked again and again during the wait.

        Raises:
            WorkerFailedError: it is not ready, failed or hangs.
            SynthesisCancelledError: `is_cancelled` said so.
        """
        request = {**self.request(stretch, rate, pitch), "file": str(file)}
        self._process.ask(request, BREATH_LIMIT_S + CHARACTER_LIMIT_S * len(stretch.words), is_cancelled)

    def request(self, stretch: Stretch, rate: int = 0, pitch: int = 0) -> dict[str, object]:
        """What the process is asked for: words, some with their sounds, their speed and their pitch."""
        pace = START_PACE * RATE_STEP**rate * (NUMBER_PACE if stretch.is_number else 1)
        words = self._word.sub(lambda match: self._marked[match[0].lower()], stretch.words)
        if hissed := self._diction.hissed(stretch):
            digit = stretch.words.rstrip(".,;:!?")
            words = f"[{digit}](/{its_sounds(hissed)}/){stretch.words[len(digit) :]}"
        tone = PITCH_STEP**pitch * (AGAIN_PITCH if stretch.is_again else 1)
        return {"words": words, "speed": max(SLOWEST, min(FASTEST, pace)), "pitch": tone}

    def ends_in_hiss(self, stretch: Stretch) -> bool:
        """Whether nothing of this breath may sound behind its last hiss."""
        return bool(self._diction.hissed(stretch))

    def pause_s(self, stretch: Stretch, rate: int) -> float:
        """Seconds of silence behind a breath, where another one follows."""
        pause_s = DIGIT_PAUSE_S if stretch.is_digit else PAUSES_S.get(stretch.words[-1], SHORT_PAUSE_S)
        return pause_s / RATE_STEP**rate

    def close(self) -> None:
        """End the process."""
        self._process.close()


def its_sounds(ipa: str) -> str:
    """Sounds of the International Phonetic Alphabet in the model's signs."""
    for theirs, own in _ITS_SIGNS.items():
        ipa = ipa.replace(theirs, own)
    return ipa
