"""What models write of people of the tuning part, without any limits: which of several trainings hears best.

    python -m tests.bench.training.written DATA MODEL... [--listed FOLDER...]

DATA is the folder of `people`, a MODEL the folder that `convert` has written; a folder that is listed has a table as
`people` reads it. Every clip is heard clean, and one in four in pink noise and in babble at 10 dB.
"""

import argparse
import hashlib
from collections import Counter
from collections.abc import Iterator
from pathlib import Path

import numpy as np

from assistant.adapters.recognisers.trained import PINNED, open_trained
from assistant.adapters.recognisers.whisper import WhisperRecogniser
from tests.bench import conditions
from tests.bench.conditions import CLEAN, CONDITIONS, NOISY_10_DB
from tests.bench.printing import say
from tests.bench.training.counting import written
from tests.bench.training.people import listed
from tests.bench.training.store import Clip, Store, trimmed

_ONE_IN = 4


def people(data: Path, folders: list[Path]) -> Iterator[tuple[Clip, np.ndarray]]:
    """Clips of the tuning part in which somebody says what is known."""
    store = Store.read(data / "people.npz")
    found = [(clip, sound.astype(np.float32) / 32_768) for clip, sound in zip(store.clips, store.sounds, strict=True)]
    for folder in folders:
        found += [(clip, trimmed(sound).astype(np.float32)) for clip, sound in listed(folder)]
    return ((clip, sound) for clip, sound in found if clip.part == "tuning" and clip.words and clip.kind != "order")


def in_noise(clip: Clip, sound: np.ndarray) -> Iterator[tuple[str, np.ndarray]]:
    """The clip clean, and for one in four in each of two noises."""
    yield CLEAN, sound
    key = f"{clip.speaker}/{clip.words}/{len(sound)}"
    for number, name in enumerate(NOISY_10_DB):
        if hashlib.sha256(key.encode()).digest()[0] % _ONE_IN == number:
            changed = CONDITIONS[name](sound / (np.abs(sound).max() or 1.0), key)
            yield name, np.frombuffer(conditions.as_recorded(changed), "<i2").astype(np.float32) / 32_768


def candidate(folder: Path) -> WhisperRecogniser:
    """A model that is not the one that ships, and would be refused for that."""
    return open_trained(
        folder, {name: hashlib.sha256((folder / name).read_bytes()).hexdigest() for name in PINNED}
    ).model


def main() -> None:
    """Let each model write."""
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("data", type=Path)
    parser.add_argument("models", type=Path, nargs="+")
    parser.add_argument("--listed", type=Path, nargs="+", default=[])
    args = parser.parse_args()
    for folder in args.models:
        ear = candidate(folder)
        right: Counter[tuple[str, str]] = Counter()
        count: Counter[tuple[str, str]] = Counter()
        for clip, clean in people(args.data, args.listed):
            for name, sound in in_noise(clip, clean):
                count[clip.kind, name] += 1
                right[clip.kind, name] += written(ear, sound) == clip.words
        say(f"\n| {folder.name} | n | written as it was said, percent |\n| --- | --- | --- |")
        for (kind, name), total in sorted(count.items()):
            say(f"| {kind}, {name} | {total} | {100 * right[kind, name] / total:.1f} |")


if __name__ == "__main__":
    main()
