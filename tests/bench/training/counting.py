"""People who count: recordings of "one, two, three" cut into their words.

    python -m tests.bench.training.counting RECORDINGS OUT --without-last

RECORDINGS holds a folder for each person, with recordings in which that person counts upwards from one (Coswara, Indian
Institute of Science, CC BY 4.0: to twenty, once slowly and once fast). OUT takes the pieces and their table
``clips.tsv``, as `tests.bench.training.people` reads it: a word where it is quiet on both sides of it, else as many
words as run together.

Nobody wrote down how far each of them counted. The model as published says where the words of "1, 2, 3" lie up to some
last one, and the quiet near there is where they are cut. A recording is kept where the recogniser that comes with the
program writes half of the pieces as they should be, or a fifth of them where the model as published writes the whole
as counting. Of those a piece is what its place says, whatever is written of it: what is misheard is what has to be
learnt. Only what is written as another stretch of the same counting is left out, for it was cut at a wrong place, and
with it what is misheard beside it: where one cut is a word too early or too late, the next ones are too.
"""

import argparse
import re
from collections.abc import Iterator
from dataclasses import dataclass
from difflib import SequenceMatcher
from itertools import groupby, pairwise
from pathlib import Path

import ctranslate2
import numpy as np
import soundfile
import tokenizers

from assistant.adapters.recognisers.bundled import bundled_folder
from assistant.adapters.recognisers.features import log_mel
from assistant.adapters.recognisers.trained import open_trained
from assistant.adapters.recognisers.whisper import WhisperRecogniser
from assistant.spoken.expect import TextExpected
from tests.bench.printing import say
from tests.bench.sayings import cardinal
from tests.bench.training.cuts import FRAME, LAST, boundaries, energy_db, is_quiet
from tests.bench.training.people import read, write_table
from tests.bench.training.store import RATE_HZ, trimmed

_WHOLE_S = 30.0
"""What the model as published looks at."""
_PROMPT = (50_257, 50_362)
"""Start, and no times: as the model as published was trained to write."""
_TOKEN_S = 0.02
_LATE = 10
"""By so many frames the model places a word later than it begins."""
_NUMBERS = {cardinal(number): number for number in range(1, 21)}
_WELL_UNDERSTOOD, _UNDERSTOOD, _HARDLY_UNDERSTOOD = 0.85, 0.5, 0.2
_ALIKE = 0.85
WINDOW_S, _ROOM_S = 6.0, 0.2
"""What the trained recogniser looks at, and how much of it stays quiet."""
_SILENT = 0.002
"""A microphone that was off."""


@dataclass(frozen=True)
class Piece:
    """A part of a recording, and what is said in it."""

    words: str
    sound: np.ndarray


class Cutter:
    """Finds words of somebody who counts, by the model as published."""

    def __init__(self) -> None:
        place = bundled_folder()
        assert place is not None
        self._model = ctranslate2.models.Whisper(str(place), device="cpu", compute_type="int8", intra_threads=1)
        self._tokeniser = tokenizers.Tokenizer.from_file(str(place / "tokenizer.json"))

    def heard(self, sound: np.ndarray) -> ctranslate2.StorageView:
        """What the model makes of a recording, 16 kHz mono, 30 s at most."""
        return self._model.encode(ctranslate2.StorageView.from_array(log_mel(sound.astype(np.float32), _WHOLE_S)[None]))

    def numbers(self, heard: ctranslate2.StorageView) -> list[int]:
        """The numbers that the model writes."""
        (written,) = self._model.generate(heard, [list(_PROMPT)])
        return [int(number) for number in re.findall(r"\d+", self._tokeniser.decode(written.sequences_ids[0]))]

    def pieces(self, sound: np.ndarray, heard: ctranslate2.StorageView, last: int) -> list[Piece]:
        """The words from "one" to `last`, those together that run together.

        Args:
            sound: the recording.
            heard: what the model makes of it.
            last: how far is counted.
        """
        energy = energy_db(sound)
        cuts = boundaries(energy, self._starts(heard, len(sound), last))
        found, first = [], 0
        for number in range(1, last + 1):
            if number < last and not is_quiet(energy, cuts[number - 1 : number + 2]):
                continue
            words = " ".join(cardinal(one + 1) for one in range(first, number))
            found.append(Piece(words, trimmed(sound[cuts[first] * FRAME : cuts[number] * FRAME])))
            first = number
        return found

    def _starts(self, heard: ctranslate2.StorageView, length: int, last: int) -> list[int]:
        """About where each word begins, in frames."""
        numbers = [self._tokeniser.encode(f" {one},", add_special_tokens=False).ids for one in range(1, last + 1)]
        tokens = [token for ids in numbers for token in ids]
        (placed,) = self._model.align(heard, list(_PROMPT), [tokens], length // FRAME)
        first = dict(reversed(placed.alignments))
        begins = np.cumsum([0, *map(len, numbers)])[:-1]
        return [max(0, round(first.get(int(token), 0) * _TOKEN_S * RATE_HZ / FRAME) - _LATE) for token in begins]


def written(ear: WhisperRecogniser, sound: np.ndarray) -> str:
    """What the recogniser writes of a piece, without any limits."""
    evidence = ear.evidence(sound.astype(np.float32), TextExpected())
    return "" if evidence is None else evidence.free.text.strip()


@dataclass(frozen=True)
class Counted:
    """A recording in pieces.

    Attributes:
        pieces: what is in it.
        right: the share of them that the recogniser writes as it should be.
        beside: the share that was cut at a wrong place or is misheard beside such a cut, and is left out.
        alike: how like counting the whole of it is, as the model as published writes it, 0 to 1.
    """

    pieces: list[Piece]
    right: float
    beside: float
    alike: float

    def is_sure(self) -> bool:
        """Whether the pieces say what they should."""
        return self.right >= _UNDERSTOOD or (
            self.alike >= _ALIKE and self.right >= _HARDLY_UNDERSTOOD and self.right > 4 * self.beside
        )


def counted(sound: np.ndarray, cutter: Cutter, ear: WhisperRecogniser) -> Counted:
    """The pieces of a recording of somebody who counts."""
    best = Counted([], 0.0, 0.0, 0.0)
    heard = cutter.heard(sound)
    numbers = cutter.numbers(heard)
    for last in dict.fromkeys((LAST, *(min(LAST, max(2, number)) for number in numbers[-1:]))):
        cut = cutter.pieces(sound, heard, last)
        pieces = [piece for piece in cut if 0.1 < len(piece.sound) / RATE_HZ < WINDOW_S - _ROOM_S]
        if not pieces:
            continue
        texts = [written(ear, piece.sound) for piece in pieces]
        right = sum(text == piece.words for piece, text in zip(pieces, texts, strict=True)) / len(pieces)
        kept = [piece for piece, well in zip(pieces, well_cut([p.words for p in pieces], texts), strict=True) if well]
        alike = SequenceMatcher(None, numbers, range(1, last + 1), autojunk=False).ratio()
        if right > best.right:
            best = Counted(kept, right, 1 - len(kept) / len(pieces), alike)
        if best.right > _WELL_UNDERSTOOD:
            break
    return best


def well_cut(words: list[str], written: list[str]) -> list[bool]:
    """Which pieces of a recording were cut at the right places, as far as can be heard.

    Args:
        words: what each piece says by its place.
        written: what the recogniser writes of each.
    """
    found: list[bool] = []
    for right, run in groupby(zip(words, written, strict=True), lambda piece: piece[0] == piece[1]):
        pieces = list(run)
        found += [right or not any(is_cut_wrongly(*piece) for piece in pieces)] * len(pieces)
    return found


def is_cut_wrongly(words: str, written: str) -> bool:
    """Whether what is written is another stretch of the same counting, next to the words or over their ends."""
    (first, last), (begin, end) = (_stretch(words), _stretch(written))
    return written != words and begin > 0 and begin <= last + 1 and end >= first - 1


def _stretch(words: str) -> tuple[int, int]:
    """The first and the last number of words that count upwards; noughts where they do not."""
    numbers = [_NUMBERS.get(word, 0) for word in words.split()]
    counts = numbers and all(later == one + 1 for one, later in pairwise(numbers)) and numbers[0]
    return (numbers[0], numbers[-1]) if counts else (0, 0)


def recordings(folder: Path) -> Iterator[tuple[str, Path]]:
    """Each person and a recording of them."""
    for path in sorted(folder.glob("*/*.wav")):
        yield path.parent.name, path


def cut(folder: Path, out: Path, *, without_last: bool) -> Iterator[tuple[str, str, str, str]]:
    """Cut all recordings into pieces, and a table's row for each.

    Args:
        folder: of a folder for each person.
        out: takes the pieces.
        without_last: leave out the last one of each recording.
    """
    cutter, ear = Cutter(), open_trained().model
    for person, path in recordings(folder):
        sound = read(path)
        if np.abs(sound).max(initial=0.0) < _SILENT:
            continue
        found = counted(trimmed(sound)[: round(_WHOLE_S * RATE_HZ)], cutter, ear)
        kept = found.pieces[: -1 if without_last else None] if found.is_sure() else []
        say(
            f"{person} {path.stem}: {len(found.pieces)} pieces, {100 * found.right:.0f} % as they should be, "
            f"{100 * found.beside:.0f} % cut wrongly, {found.alike:.2f} like counting, {len(kept)} kept"
        )
        for number, piece in enumerate(kept):
            name = f"{person}-{path.stem}-{number}.flac"
            soundfile.write(out / name, piece.sound, RATE_HZ)
            yield name, piece.words, person, ""


def main() -> None:
    """Cut all recordings."""
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("recordings", type=Path)
    parser.add_argument("out", type=Path)
    parser.add_argument(
        "--without-last",
        action="store_true",
        help="leave out the last piece of each recording: there is often noise in it",
    )
    args = parser.parse_args()
    args.out.mkdir(parents=True, exist_ok=True)
    write_table(args.out, cut(args.recordings, args.out, without_last=args.without_last))


if __name__ == "__main__":
    main()
