"""The clips of the hearing bench: who says what under which condition, and their sound, kept in a cache."""

import hashlib
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from decimal import Decimal
from pathlib import Path

from platformdirs import user_cache_path

from assistant import spoken
from assistant.ports import SAMPLE_RATE_HZ
from assistant.spoken.expect import NumberExpected
from tests.bench import conditions, voices
from tests.bench.conditions import CLEAN, CONDITIONS
from tests.bench.sayings import Saying, commands, more_numbers, numbers, outside, spelled

_CACHE_VERSION = "1"
NEURAL = "neural"
HESITATION, CORRECTION = "uh", "correction"
"""Conditions that are a matter of words: "uh" before the number, and a slip that the speaker corrects."""
_CLEAN_SHARE = 0.4
_OFTEN = ("pink 10 dB", "babble 10 dB")
"""Conditions that have a limit of their own, and so get twice the clips."""


@dataclass(frozen=True)
class Clip:
    """One recording and what is right for it.

    Attributes:
        saying: what is said and what is right.
        speaker: whose voice; "human" for recordings of people.
        condition: what happened to the sound.
        seconds: its length.
    """

    saying: Saying
    speaker: str
    condition: str
    seconds: float = 0.0

    @property
    def key(self) -> str:
        """Names the clip; the same in every run."""
        return f"{self.speaker}/{self.saying.words}/{self.saying.frame}/{self.condition}"

    @property
    def group(self) -> str:
        """Whether a person or a machine speaks."""
        return "human" if self.speaker == "human" else "synthetic"

    @property
    def half(self) -> str:
        """ "tuning" or "report": no wording is in both, and people and the neural voice are never tuned on."""
        if self.speaker == "human" or self.speaker.startswith(NEURAL):
            return "report"
        return "tuning" if _scatter(self.saying.words) % 2 else "report"


def clips(half: str | None, most: int | None = None) -> Iterator[tuple[Clip, bytes]]:
    """Every clip of a half with its sound as recognisers take it.

    Args:
        half: "tuning", "report" or None for both.
        most: this many only, in an order that has nothing to do with their kinds: a part is a fair sample.
    """
    sources = {clip.key: (clip, make) for clip, make in _all() if half in (None, clip.half)}
    order = sorted(sources, key=_scatter)
    for key in order[:most]:
        clip, make = sources[key]
        sound = _cached(clip, make)
        yield Clip(clip.saying, clip.speaker, clip.condition, len(sound) / 2 / SAMPLE_RATE_HZ), sound


Make = Callable[[], voices.Sound]


def _all() -> Iterator[tuple[Clip, Make]]:
    for saying, sound in voices.human():
        make = _ready(sound)
        yield Clip(saying, "human", CLEAN), make
        # Prompts are plenty: a part of them is enough in noise.
        if saying.kind in ("number", "digits") or (saying.kind == "outside" and _scatter(saying.words) % 4 == 0):
            yield Clip(saying, "human", _condition(f"human/{saying.words}", clean=0.0)), make
    for name, sound in conditions.noises().items():
        for expect in {saying.expect: None for saying in outside()}:
            yield Clip(Saying(name, "outside", expect, None), "noise", CLEAN), _ready(sound)
    speakers = voices.synthesisers()
    for number, saying in enumerate([*numbers(), *commands(), *outside()]):
        # Each saying by three of the voices, so that all of them get their share.
        for step in range(3):
            voice = speakers[(number * 3 + step) % len(speakers)]
            yield _spoken(saying, voice)
            if saying.kind == "number":
                yield _spoken(spelled(saying), voice)
                if step == 0:
                    yield from _in_other_words(saying, voice)
    yield from _more([voice for voice in speakers if not voice.startswith(NEURAL)])


def _more(speakers: list[str]) -> Iterator[tuple[Clip, Make]]:
    """Further numbers for the tuning half alone."""
    for number, saying in enumerate(more_numbers()):
        for said in (saying, spelled(saying)):
            for voice in (speakers[(2 * number + step) % len(speakers)] for step in range(2)):
                clip, make = _spoken(said, voice)
                if clip.half == "tuning":
                    yield clip, make


def sound_of(clip: Clip) -> bytes:
    """What a synthetic speaker says, as recognisers take it."""
    return _cached(clip, _to_speak(clip.speaker, clip.saying.words))


def _spoken(saying: Saying, voice: str) -> tuple[Clip, Make]:
    return Clip(saying, voice, _condition(f"{voice}/{saying.words}")), _to_speak(voice, saying.words)


def _in_other_words(saying: Saying, voice: str) -> Iterator[tuple[Clip, Make]]:
    if not isinstance(saying.right, Decimal) or not isinstance(saying.expect, NumberExpected):
        raise TypeError(f'"{saying.words}" is no number')
    slip = spoken.say_number(saying.right + 10)
    for condition, words in (
        (HESITATION, f"uh, {saying.words}"),
        (CORRECTION, f"{slip}, no, {saying.words}"),
    ):
        if _scatter(words) % 4 == 0:
            said = Saying(words, "number", saying.expect, saying.right)
            yield Clip(said, voice, condition), _to_speak(voice, words)


def _ready(sound: voices.Sound) -> Make:
    return lambda: sound


def _to_speak(voice: str, words: str) -> Make:
    return lambda: voices.synthesise(voice, words)


def _condition(name: str, clean: float = _CLEAN_SHARE) -> str:
    place = _scatter(f"condition of {name}") / 2**32
    if place < clean:
        return CLEAN
    others = [*(name for name in CONDITIONS if name != CLEAN), *_OFTEN]
    return others[int((place - clean) / (1 - clean) * len(others))]


def _cached(clip: Clip, make: Make) -> bytes:
    name = hashlib.sha256(f"{_CACHE_VERSION}/{clip.key}".encode()).hexdigest()
    path = cache_folder() / name[:2] / name
    if path.is_file():
        return path.read_bytes()
    sound = make()
    level = float(abs(sound).max())
    if level:
        sound = sound / level
    change = CONDITIONS.get(clip.condition)
    made = conditions.as_recorded(change(sound, clip.key) if change else sound)
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_bytes(made)
    return made


def cache_folder() -> Path:
    """Where the sound is kept; it may be deleted at any time."""
    return user_cache_path("checkoff") / "hearing-bench"


def _scatter(text: str) -> int:
    return int.from_bytes(hashlib.sha256(text.encode()).digest()[:4], "big")
