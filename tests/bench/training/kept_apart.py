"""Single digits of some fifty people that nothing is learnt from: their collections name no licence.

    python -m tests.bench.training.kept_apart CLONES OUT

CLONES is a folder with the public repositories of `COLLECTIONS`, each cloned into a folder of its own name; OUT takes
the table ``clips.tsv``, as `tests.bench.people --listed` reads it. Of each collection every second person is for
choosing limits, the others are for the report. Two of the repositories also hold recordings of the Free Spoken Digit
Dataset, which are left alone here.

Some were cut into words by a machine. A recording that is at its loudest as it begins was cut into ("six" without its
first hiss) and is left out; with ``--all`` it stays.
"""

import argparse
from collections import Counter
from collections.abc import Callable, Iterator
from pathlib import Path

import numpy as np

from tests.bench.printing import say
from tests.bench.sayings import cardinal
from tests.bench.training.people import read, write_table
from tests.bench.training.store import RATE_HZ

Spoken = tuple[Path, str, int]
"""A recording, its word, the number of its speaker."""
_MOST_TAKES = 4
"""Of each digit of each person."""
_BEGINNING, _AS_LOUD = RATE_HZ // 20, 0.89
"""Samples; and the part of its greatest level that such a beginning reaches (1 dB below it)."""


def bombay(folder: Path) -> Iterator[Spoken]:
    """Sixteen students of Bombay, four takes in a row of each digit, 8 kHz."""
    for path in folder.glob("Processed_Data/*/*.wav"):
        yield path, cardinal(int(path.parent.name)), (int(path.stem) - 1) // 4


def athens(folder: Path) -> Iterator[Spoken]:
    """Fifteen students of Athens, one to nine once: "seven12.wav"."""
    for path in folder.glob("Lab1/prelab/*/digits/*.wav"):
        word = path.stem.rstrip("0123456789")
        yield path, word, int(path.stem.removeprefix(word))


def guwahati(folder: Path) -> Iterator[Spoken]:
    """Twelve students of Guwahati: "160102032_7_3.wav"; they say vowels too."""
    found = [(path, *path.stem.split("_")) for path in folder.glob("train/*_*_*.wav")]
    numbers = sorted({one[1] for one in found})
    for path, speaker, word, _ in found:
        if word.isdigit():
            yield path, cardinal(int(word)), numbers.index(speaker)


def four(folder: Path) -> Iterator[Spoken]:
    """Four students, a folder each: "7_name_3_.wav"."""
    for number, person in enumerate(sorted(folder.glob("self_recorded/*/"))):
        for path in person.glob("*.wav"):
            yield path, cardinal(int(path.stem.split("_")[0])), number


def two(folder: Path) -> Iterator[Spoken]:
    """Two people of Vietnam: "7_huan_3.wav"."""
    for number, person in enumerate(("huan", "anh")):
        for path in folder.glob(f"recordings/*/*_{person}_*.wav"):
            yield path, cardinal(int(path.stem.split("_")[0])), number


COLLECTIONS: dict[str, Callable[[Path], Iterator[Spoken]]] = {
    "Digit-Speech-Recognition": bombay,
    "ntua-patrec": athens,
    "Isolated-vowel-digit-recognition-using-DTW": guwahati,
    "Spoken-Digit-Recognition": four,
    "KeywordSpottingService": two,
}
"""By the repositories' names: of Agrim9, dimitris-damianos, mathav95raj, altainmunkhg, Yud-Bet."""


def is_cut_into(sound: np.ndarray) -> bool:
    """Whether it begins at its loudest.

    Args:
        sound: 16 kHz mono.
    """
    parts = sound[: len(sound) // _BEGINNING * _BEGINNING].reshape(-1, _BEGINNING)
    levels = np.sqrt(np.mean(np.square(parts), axis=1))
    return bool(len(levels) and levels[0] > _AS_LOUD * levels.max())


def main() -> None:
    """Write the table."""
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("clones", type=Path)
    parser.add_argument("out", type=Path)
    parser.add_argument("--all", action="store_true", help="what was cut into too")
    args = parser.parse_args()
    rows, left_out = [], 0
    for name, spoken_in in COLLECTIONS.items():
        takes: Counter[tuple[str, int]] = Counter()
        for path, word, number in sorted(spoken_in(args.clones / name)):
            takes[word, number] += 1
            if takes[word, number] > _MOST_TAKES:
                continue
            if not args.all and is_cut_into(read(path)):
                left_out += 1
                continue
            rows.append((path.resolve(), word, f"{spoken_in.__name__} {number}", "tuning" if number % 2 else "report"))
    args.out.mkdir(parents=True, exist_ok=True)
    write_table(args.out, rows)
    say(f"{len(rows)} recordings of {len({row[2] for row in rows})} people, {left_out} that were cut into left out")


if __name__ == "__main__":
    main()
