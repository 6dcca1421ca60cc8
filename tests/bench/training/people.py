"""People in training: single words of several hundred, spoken orders of others, and rooms in which nobody speaks.

    python -m tests.bench.training.people WORDS ORDERS ISOLATED FOLDER [--listed FOLDER...]

WORDS is the folder of the test files of Speech Commands 0.02 (CC BY 4.0; a folder for each of twelve words), ORDERS the
folder ``data`` of the public repository Picovoice/speech-to-intent-benchmark (Apache-2.0), ISOLATED the folder
``speech_data`` of the public repository zhongyuchen/DSPSpeech-20 (MIT; 34 students of Shanghai, single words). Nobody
wrote down what the orders say, so the model that is to be trained writes it first. A folder that is listed holds a
table ``clips.tsv`` of its recordings: path, words, speaker, and the part where chance is not to decide (`gather` writes
such tables; whose the recordings are the model's card says). The Free Spoken Digit Dataset, AudioMNIST and Speech
Commands 0.01 are for measuring alone: nothing of them may be learnt here.
"""

import argparse
import csv
import hashlib
from collections.abc import Iterable, Iterator
from itertools import chain
from pathlib import Path

import numpy as np
import soundfile
import soxr

from tests.bench.training.store import RATE_HZ, Clip, Store, trimmed
from tests.bench.training.wordings import as_written

DIGITS = ("zero", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine")
_COMMANDS = ("yes", "no", "stop", "go", "right")
_NUMBERS = frozenset(
    {*DIGITS, "oh", "ten", "eleven", "twelve", "and", "a", "hundred", "thousand", "million", "point", "half"}
    | {f"{stem}teen" for stem in ("thir", "four", "fif", "six", "seven", "eigh", "nine")}
    | {f"{stem}ty" for stem in ("twen", "thir", "for", "fif", "six", "seven", "eigh", "nine")}
)
_REPORT, _TUNING = 0.15, 0.25
"""Speakers whose place is below the first are kept for the report, below the second for choosing limits."""
_LEAST_CONTRAST = 4.0
"""How much louder the loudest tenth of a second has to be than the quietest; what is below was cut, or is silent."""
_LONGEST_S = 5.6
_ISOLATED = {
    **{"12": "speech", "13": "speaker", "14": "signal", "15": "process", "16": "print", "17": "open", "18": "close"},
    "19": "project",
}
"""English words of that collection by the number in their files' names."""
_TAKES = {"open": 10, "close": 10}
"""Takes of each speaker that are heard; of other words two."""


def part_of(speaker: str) -> str:
    """ "report", "tuning" or "training": by the speaker, so that nobody is in two of them."""
    place = int.from_bytes(hashlib.sha256(speaker.encode()).digest()[:4], "big") / 2**32
    return "report" if place < _REPORT else "tuning" if place < _TUNING else "training"


def read(path: Path) -> np.ndarray:
    """A sound file as 16 kHz mono."""
    samples, rate = soundfile.read(path, dtype="float32", always_2d=True)
    return np.asarray(soxr.resample(samples.mean(axis=1), rate, RATE_HZ))


def words(folder: Path) -> Iterator[tuple[Clip, np.ndarray]]:
    """Single words: digits, five that the assistant knows, and some that are not for it."""
    for path in sorted(folder.glob("*/*.wav")):
        label = path.parent.name
        sound = read(path)
        if label == "_silence_":
            yield Clip("", f"room {path.stem}", "silence", part_of(path.stem)), sound
            continue
        stem = path.name.split(".")[0]
        word, speaker = (stem.split("_")[:2]) if label == "_unknown_" else (label, stem.split("_")[0])
        kind = "digit" if word in DIGITS else "command" if word in _COMMANDS else "other"
        tenths = np.sqrt(np.mean(np.square(sound[: len(sound) // 1600 * 1600].reshape(-1, 1600)), axis=1))
        edge = max(tenths[0], tenths[-1])
        if len(tenths) < 3 or tenths.max() < _LEAST_CONTRAST * (tenths.min() + 1e-5) or edge > 0.8 * tenths.max():
            continue
        yield Clip(word, f"person:{speaker}", f"person, {kind}", part_of(speaker)), sound


def isolated(folder: Path) -> Iterator[tuple[Clip, np.ndarray]]:
    """Single words of students whose language is Chinese: "open", "close", and some that are not for the assistant."""
    for path in sorted(folder.glob("*/*.wav")):
        speaker, label, take = path.stem.split("-")
        word = _ISOLATED.get(label)
        if word is not None and int(take) <= _TAKES.get(word, 2):
            kind = "command" if word in _TAKES else "other"
            yield Clip(word, f"person:{speaker}", f"person, {kind}", part_of(speaker)), read(path)


def listed(folder: Path) -> Iterator[tuple[Clip, np.ndarray]]:
    """Recordings with what is said in them and by whom, as the folder's table has it."""
    for row in csv.DictReader((folder / "clips.tsv").read_text().splitlines(), delimiter="\t", quoting=csv.QUOTE_NONE):
        said = as_written(row["words"])
        sound = read(folder / row["path"])
        if not said or len(sound) / RATE_HZ > _LONGEST_S:
            continue
        speaker = f"person:{row['speaker']}"
        part = row.get("part") or part_of(speaker.removeprefix("person:"))
        yield Clip(said, speaker, f"person, {kind_of(said)}", part), sound


def write_table(folder: Path, rows: Iterable[tuple[object, str, str, str]]) -> None:
    """Write a folder's table, as `listed` reads it, row by row as they come.

    Args:
        folder: of the recordings.
        rows: a recording's path, its words, its speaker, and its part, or "" where the speaker decides.
    """
    with (folder / "clips.tsv").open("w", newline="") as file:
        table = csv.writer(file, delimiter="\t", lineterminator="\n", quoting=csv.QUOTE_NONE, quotechar=None)
        table.writerow(("path", "words", "speaker", "part"))
        table.writerows(rows)


def kind_of(said: str) -> str:
    """What sort of words a person says."""
    if said in DIGITS:
        return "digit"
    if said in _COMMANDS:
        return "command"
    return "number" if set(said.split()) <= _NUMBERS else "other"


def orders(folder: Path) -> Iterator[tuple[Clip, np.ndarray]]:
    """Spoken orders, as the untuned model writes them."""
    import ctranslate2
    import tokenizers

    from assistant.adapters.recognisers.bundled import bundled_folder
    from assistant.adapters.recognisers.features import log_mel

    place = bundled_folder()
    assert place is not None
    model = ctranslate2.models.Whisper(str(place), device="cpu", compute_type="int8", intra_threads=1)
    tokeniser = tokenizers.Tokenizer.from_file(str(place / "tokenizer.json"))
    for path in sorted((folder / "speech" / "clean").glob("*.wav")):
        sound = trimmed(read(path))
        if len(sound) / RATE_HZ > _LONGEST_S:
            continue
        picture = ctranslate2.StorageView.from_array(log_mel(sound.astype(np.float32), 12.0)[None])
        found = model.generate(picture, [[50257, 50362]], beam_size=5, return_scores=True)[0]
        text = as_written(tokeniser.decode(found.sequences_ids[0]))
        if found.scores[0] > -0.5 and text and "thank you" not in text:
            yield Clip(text, f"order:{path.stem}", "order", part_of(path.stem)), sound


def main() -> None:
    """Gather what people said."""
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("words", type=Path)
    parser.add_argument("orders", type=Path)
    parser.add_argument("isolated", type=Path)
    parser.add_argument("folder", type=Path)
    parser.add_argument("--listed", type=Path, nargs="+", default=[], help="folders with a table of their recordings")
    args = parser.parse_args()
    store = Store()
    others = (clip for folder in args.listed for clip in listed(folder))
    for clip, sound in chain(words(args.words), orders(args.orders), isolated(args.isolated), others):
        store.add(clip, sound)
    kitchen = args.orders / "noise" / "kitchen.wav"
    noise = read(kitchen) if kitchen.is_file() else np.zeros(0, dtype=np.float32)
    for start in range(0, len(noise) - 5 * RATE_HZ, 5 * RATE_HZ):
        store.add(Clip("", "kitchen", "silence"), noise[start : start + 5 * RATE_HZ])
    args.folder.mkdir(parents=True, exist_ok=True)
    store.write(args.folder / "people.npz")


if __name__ == "__main__":
    main()
