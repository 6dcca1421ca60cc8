"""The tables of public collections: which recording says what, by whom.

    python -m tests.bench.training.gather an4 CLONE              cmusphinx/an4
    python -m tests.bench.training.gather spoken-numbers CLONE   Sakshee5/alphanumeric-audio-dataset, cut at pauses
    python -m tests.bench.training.gather richard CLONE          racitup/freeswitch-sounds-en-gb-richard
    python -m tests.bench.training.gather games CLONE            gcompris/GCompris-voices
    python -m tests.bench.training.gather by-name FOLDER         announcers and clocks: one voice's files of numbers
    python -m tests.bench.training.gather by-folder CLONE        Picovoice/wake-word-benchmark
    python -m tests.bench.training.gather sentences CLONE        boomudo/nlp, rachanoniny/ASR_demo
    python -m tests.bench.training.gather dictated CLONE         adsorce/moshi-finetune (Apache-2.0)

CLONE is the collection's folder, as it was cloned or unpacked; its table ``clips.tsv`` is written into it, as
`tests.bench.training.people` reads it. Licences are on the model's card. Announcers are heard in training alone: each
is one voice, most of them in a studio, and nothing can be said of people by them.
"""

import argparse
import csv
import re
from collections import Counter
from collections.abc import Callable, Iterator
from difflib import SequenceMatcher
from functools import cache
from itertools import pairwise
from pathlib import Path

import numpy as np
import soundfile

from assistant.adapters.recognisers.trained import open_trained
from tests.bench.printing import say
from tests.bench.sayings import cardinal
from tests.bench.training.counting import written
from tests.bench.training.cuts import FRAME, energy_db
from tests.bench.training.people import DIGITS, read, write_table
from tests.bench.training.store import RATE_HZ, trimmed

Row = tuple[str, str, str, str]
"""A recording's path in the folder, its words, its speaker, and its part, or "" where the speaker decides."""
_STUDIO = "training"
_EVERY = 7
"""Of the announcers' single words, which are many, one in so many is heard."""
_MOST_TAKES = 5
"""So often one of these voices may say the same, or it alone would be heard."""
_PAUSE_FRAMES, _PAUSES_DB = 18, (32.0, 26.0, 20.0, 15.0)
"""So long it is so much softer than at the loudest, where a number is cut; the latter ones where it stays too long."""
_LONGEST_S = 5.5
_ALIKE = 0.7
"""How like its script, 0 to 1, what is written of a dictated string has to be at least."""


def an4(folder: Path) -> Iterator[Row]:
    """Strings, dates, spelled names and commands of some 80 people; both parts that the collection has."""
    for name, place in (("train", "an4_clstk"), ("test", "an4test_clstk")):
        for line in (folder / "etc" / f"an4_{name}.transcription").read_text().splitlines():
            found = re.fullmatch(r"(?:<s> )?(?P<words>.*?)(?: </s>)? \((?P<file>[^)]+)\)", line.strip())
            assert found is not None, line
            speaker = found["file"].split("-")[1]
            yield f"wav/{place}/{speaker}/{found['file']}.wav", found["words"].lower(), f"an4:{speaker}", ""


def spoken_numbers(folder: Path) -> Iterator[Row]:
    """Numbers of ten digits by people of many tongues, cut at pauses; the pieces are written beside the table.

    A piece is kept where the recogniser that comes with the program writes digits that are the next ones of the number.
    """
    ear = open_trained().model
    (folder / "pieces").mkdir(exist_ok=True)
    for row in csv.DictReader((folder / "metadata.csv").read_text(encoding="utf-8").splitlines()):
        path = folder / row["file_name"]
        if path.parent.name != "Numbers" or not path.is_file():
            continue
        pieces = at_pauses(trimmed(read(path)))
        texts = [written(ear, one) for one in pieces]
        for place in in_order(texts, row["Number"]):
            name = f"pieces/{row['Response_ID']}-{place}.flac"
            soundfile.write(folder / name, pieces[place], RATE_HZ)
            yield name, texts[place], row["Response_ID"], ""


def at_pauses(sound: np.ndarray) -> list[np.ndarray]:
    """Cut where it is much softer than at its loudest; what stays too long, where it is less so."""
    found = [sound]
    for softer_db in _PAUSES_DB:
        found = [part for one in found for part in ([one] if _is_short(one) else _parted(one, softer_db))]
    return [part for part in found if _is_short(part) and len(part) > 0.1 * RATE_HZ]


def _is_short(sound: np.ndarray) -> bool:
    return len(sound) < _LONGEST_S * RATE_HZ


def _parted(sound: np.ndarray, softer_db: float) -> list[np.ndarray]:
    energy = energy_db(sound)
    loud = np.flatnonzero(energy > energy.max() - softer_db)
    cuts = [0, *((one + later) // 2 for one, later in pairwise(loud) if later - one > _PAUSE_FRAMES), len(energy)]
    return [trimmed(sound[first * FRAME : last * FRAME]) for first, last in pairwise(cuts)]


def in_order(texts: list[str], number: str) -> list[int]:
    """Which pieces have digits that follow one another in the number: as many digits as can be.

    Args:
        texts: what the recogniser writes of each piece.
        number: in figures.
    """
    figures = [_figures(text) for text in texts]

    @cache
    def best(piece: int, place: int) -> tuple[int, tuple[int, ...]]:
        if piece == len(figures):
            return 0, ()
        without = best(piece + 1, place)
        found = number.find(figures[piece], place) if figures[piece] else -1
        if found < 0:
            return without
        count, others = best(piece + 1, found + len(figures[piece]))
        return max(without, (count + len(figures[piece]), (piece, *others)))

    return list(best(0, 0)[1])


def _figures(text: str) -> str:
    words = ["zero" if word == "oh" else word for word in text.split()]
    return "".join(str(DIGITS.index(word)) for word in words) if set(words) <= set(DIGITS) else ""


def richard(folder: Path) -> Iterator[Row]:
    """An announcer of Britain: numbers, letters, prompts of a telephone exchange, with the words of their table."""
    (table,) = (folder / "tools").glob("*.csv")
    prompts = {
        "/".join(Path(row["filepath"]).parts[-3:]): row["transcription"]
        for row in csv.DictReader(table.read_text(encoding="utf-8").splitlines())
    }
    for path in sorted(folder.glob("48000/**/*.wav")):
        words, name, group = prompts.get("/".join(path.parts[-3:]), ""), path.stem, path.parts[-3]
        if group == "digits" and name.isdigit():
            words = cardinal(int(name))
        is_ordinal = group == "digits" and name.removeprefix("h-") != name
        if words and not is_ordinal and "phonetic" not in group:
            yield str(path.relative_to(folder)), words, "announcer:richard", _STUDIO


def games(folder: Path) -> Iterator[Row]:
    """An announcer of children's games: digits, numbers to twenty, letters, words."""
    for path in sorted((folder / "en" / "alphabet").glob("*.ogg")):
        code = path.stem.removeprefix("U00")
        sign = chr(int(code, 16)) if code != path.stem else path.stem
        yield str(path.relative_to(folder)), _cardinal(sign), "announcer:games", _STUDIO
    for path in sorted((folder / "en" / "words").glob("*.ogg"))[::_EVERY]:
        yield str(path.relative_to(folder)), path.stem.replace("_", " "), "announcer:games", _STUDIO


def by_name(folder: Path) -> Iterator[Row]:
    """One voice a folder, files by their number: "7.wav", "en_m42.wav" (minutes), "seven_ref.wav", "x_E_7_12.wav"."""
    takes: Counter[tuple[str, str]] = Counter()
    for path in sorted(one for one in folder.rglob("*") if one.suffix in (".wav", ".au")):
        whose = path.parent
        name = re.sub(r"^.*_m(?=\d\d)|^.*_E_(?=\d_)|_ref$|_\d+$|(?<=[a-z])\d$", "", path.stem)
        if path.parent.name in DIGITS:
            name, whose = path.parent.name, path.parent.parent
        if name.isdigit() or name in (*DIGITS, "oh"):
            speaker, words = f"announcer:{folder.name}/{whose.relative_to(folder)}", _cardinal(name)
            takes[speaker, words] += 1
            if takes[speaker, words] <= _MOST_TAKES:
                yield str(path.relative_to(folder)), words, speaker, _STUDIO


def by_folder(folder: Path) -> Iterator[Row]:
    """Words that are not for the assistant, by people who are not named: Picovoice/wake-word-benchmark."""
    for path in sorted((folder / "audio").glob("*/*.wav"))[::_EVERY]:
        yield str(path.relative_to(folder)), path.parent.name, f"unnamed:{path.stem}", ""


def sentences(folder: Path) -> Iterator[Row]:
    """Sentences that are not for the assistant, as the table ``egs.csv`` has them."""
    for row in csv.DictReader((folder / "egs.csv").read_text(encoding="utf-8").splitlines()):
        yield row["path"], row["text"], f"reader:{folder.name}", _STUDIO


def dictated(folder: Path) -> Iterator[Row]:
    """Strings of five to ten digits by one person, as that person's script has them; what says another one is left out.

    Many have the same digit three times and more in a row, said fast, of which a recogniser likes to lose one. So the
    script decides what was said, and not what is written of it, where the two are alike.
    """
    ear = open_trained().model
    script = (folder / "RECORDING_SCRIPT.md").read_text(encoding="utf-8")
    for number, line in re.findall(r"\*\*Sample (\d+):\*\*.*\n(.*)", script):
        words = " ".join(re.findall(r"[a-z]+", re.sub(r"\(.*?\)", "", line)))
        name = f"datasets/numbers_training/processed/sample_{int(number):03}.wav"
        text = written(ear, trimmed(read(folder / name)))
        if SequenceMatcher(None, words.split(), text.split(), autojunk=False).ratio() >= _ALIKE:
            yield name, words, f"caller:{folder.name}", _STUDIO


def _cardinal(name: str) -> str:
    return cardinal(int(name)) if name.isdigit() else name


def _is_sound(path: Path) -> bool:
    """Some files of a copy are missing, or are no sound whatever their names say."""
    try:
        return path.is_file() and soundfile.info(path).frames > 0
    except soundfile.LibsndfileError:
        return False


COLLECTIONS: dict[str, Callable[[Path], Iterator[Row]]] = {
    "an4": an4,
    "spoken-numbers": spoken_numbers,
    "richard": richard,
    "games": games,
    "by-name": by_name,
    "by-folder": by_folder,
    "sentences": sentences,
    "dictated": dictated,
}


def main() -> None:
    """Write a collection's table."""
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("collection", choices=sorted(COLLECTIONS))
    parser.add_argument("folder", type=Path)
    args = parser.parse_args()
    rows = [row for row in COLLECTIONS[args.collection](args.folder) if _is_sound(args.folder / row[0])]
    write_table(args.folder, rows)
    say(f"{len(rows)} recordings of {len({row[2] for row in rows})} speakers")


if __name__ == "__main__":
    main()
