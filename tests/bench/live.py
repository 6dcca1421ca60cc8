"""What the ear itself makes of people's strings of digits: played as fast as they were said, and ended as it ends them.

    python -m tests.bench.live --listed FOLDER                           0.05 to 0.35 s between the digits
    python -m tests.bench.live --listed FOLDER --gaps 0.6 1.1            other pauses, seconds, least and most
    python -m tests.bench.live --listed FOLDER --gaps 0.6 1.1 --slow-speaker

`tests.bench.people` hands a recogniser whole strings. In an attempt the ear decides when an answer is over, and who
makes long pauses is cut. FOLDER has a table as `tests.bench.training.people` reads it. The first thing that the ear
posts is what counts, for the guide speaks then. Several listeners run side by side, each in a process of its own.
"""

import argparse
import hashlib
import multiprocessing
import queue
import time
from functools import cache, partial
from pathlib import Path

import numpy as np

from assistant.adapters.clock import SystemClock
from assistant.adapters.listener import Listener
from assistant.adapters.microphone import SoundBlock
from assistant.adapters.recognisers.choose import open_recogniser
from assistant.guide.events import EarLost, Heard, NotUnderstood
from assistant.ports import SAMPLE_RATE_HZ, AnswerHeard, Utterance
from assistant.spoken.expect import Expect
from tests.bench import people, scoring
from tests.bench.clips import Clip
from tests.bench.conditions import chance_of
from tests.bench.printing import say
from tests.bench.voices import Sound

_BLOCK = SAMPLE_RATE_HZ // 50
_BEFORE_S, _AFTER_S = 0.8, 6.0
_LEVEL, _ROOM = 0.3, 0.0005
"""Of full scale: where the voice is loudest, and the hiss of a quiet room."""


class Player:
    """A microphone that hears a recording, no faster than it was said. Implements `SoundSource`.

    Args:
        sound: mono at `SAMPLE_RATE_HZ`; then it is quiet for ever.
    """

    rate_hz = SAMPLE_RATE_HZ
    channels = 1
    latency_s = 0.0

    def __init__(self, sound: Sound) -> None:
        self._samples = (np.clip(sound, -1, 1) * 32_767).astype("<i2")
        self._played = 0
        self._began = 0.0

    def open(self) -> None:
        """Begin."""
        self._began = time.monotonic()

    def next_block(self, timeout: float) -> SoundBlock | None:
        """20 ms, once they have passed."""
        due = self._began + (self._played + _BLOCK) / SAMPLE_RATE_HZ
        wait_s = due - time.monotonic()
        time.sleep(max(0.0, min(wait_s, timeout)))
        if wait_s > timeout:
            return None
        block = self._samples[self._played : self._played + _BLOCK]
        self._played += _BLOCK
        return SoundBlock(np.pad(block, (0, _BLOCK - len(block))).tobytes(), due)

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


def hear(clip: Clip, sound: Sound, *, slow_speaker: bool) -> scoring.Heard:
    """What a listener posts first."""
    quiet = [np.zeros(round(length_s * SAMPLE_RATE_HZ), dtype=np.float32) for length_s in (_BEFORE_S, _AFTER_S)]
    whole = np.concatenate([quiet[0], sound * (_LEVEL / (np.abs(sound).max() or 1.0)), quiet[1]])
    whole = whole + _ROOM * chance_of(clip.key).standard_normal(len(whole)).astype(np.float32)
    posted: queue.Queue[Heard | NotUnderstood | EarLost] = queue.Queue()

    def post(event: object) -> None:
        if isinstance(event, AnswerHeard | EarLost):
            posted.put(event.event if isinstance(event, AnswerHeard) else event)

    began = time.monotonic()
    ear = Listener(_shared(), post, SystemClock(), source=Player(whole), slow_speaker=slow_speaker)
    ear.listen(clip.saying.expect)
    try:
        event = posted.get(timeout=len(whole) / SAMPLE_RATE_HZ + 5)
    except queue.Empty:
        event = None
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


def main() -> None:
    """Run the bench."""
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--listed", type=Path, required=True)
    parser.add_argument("--half", choices=("report", "tuning"), default="report")
    parser.add_argument("--gaps", nargs=2, type=float, default=(0.05, 0.35), metavar=("LEAST", "MOST"))
    parser.add_argument("--slow-speaker", action="store_true", help="as the setting of that name")
    parser.add_argument("--most", type=int, help="this many strings only")
    parser.add_argument("--at-once", type=int, default=4, help="so many listeners")
    args = parser.parse_args()
    made = [
        (clip, sound)
        for clip, sound in people.joined_sayings(args.listed, args.half, tuple(args.gaps))
        if clip.saying.kind == "digits"
    ]
    made = sorted(made, key=lambda one: hashlib.sha256(one[0].key.encode()).digest())[: args.most]
    with multiprocessing.get_context("spawn").Pool(args.at_once) as pool:
        all_heard = pool.starmap(partial(hear, slow_speaker=args.slow_speaker), made, chunksize=1)
    lengths = np.array([len(sound) for _, sound in made]) / SAMPLE_RATE_HZ
    gaps = f"{args.gaps[0]} to {args.gaps[1]} s between digits"
    say(f"{len(all_heard)} strings, median {np.median(lengths):.1f} s, {gaps}")
    for line in (*people.rows(all_heard), "", *people.wrong(all_heard)):
        say(line)


if __name__ == "__main__":
    main()
