"""What the ear writes of answers that are learnt: the reader of answers learns its mistakes as well.

    python -m tests.bench.reader.heard OUT.tsv --most 8000
    python -m tests.bench.reader.heard OUT.tsv --styles STYLES       speakers of `tests.bench.training.speech` as well

Synthesised voices say rows of `tests/data/answers/learnt`, half of them in noise at 10 dB, and the bundled ear writes
them freely. Only what it writes otherwise than it was said is a row of OUT.tsv, and only where that may still mean the
same: of "more air" nobody can know that it was "no air".
"""

import argparse
import subprocess
from collections.abc import Iterator
from difflib import SequenceMatcher
from pathlib import Path
from random import Random

import numpy as np

from assistant.adapters.answer_reader import answer_reader
from assistant.adapters.recognisers.choose import open_recogniser
from assistant.adapters.recognisers.front import samples_of
from assistant.adapters.recognisers.own_words import LEAST_CLEAR, LEAST_WORDS
from assistant.adapters.recognisers.ranking import plain
from assistant.adapters.recognisers.trained import TrainedEar
from assistant.adapters.recognisers.whisper import WhisperRecogniser
from assistant.spoken import ENGLISH
from assistant.spoken.expect import TextExpected
from tests.bench.conditions import CLEAN, CONDITIONS, as_recorded
from tests.bench.own_words import LONGEST_WORDS, NOISY
from tests.bench.printing import say
from tests.bench.reader.examples import Row, rows_of
from tests.bench.training.speech import Sound, Voice, voices

LEARNT = Path("tests/data/answers/learnt")
WRITTEN = "as_the_ear_writes"
"""The table that is made here; nobody says it again."""
LEAST_ALIKE = 0.6
"""Share of the letters that has to be the same: what is written quite otherwise says nothing of what was said."""
_HEAD = "# Answers of learnt/ as the ear writes them, where it writes them otherwise.\nkind\tline\twords\tmeans\n"
_STYLES_SHARE = 0.05
_REFUTED = -3.5
"""Logarithm of the odds from which on the reader of before holds what is written for something else."""
_MEANT = 2.0
"""The same, from which on it would hold a near miss, as it is written, for a clear answer."""


def rows(after: int, most: int) -> list[tuple[str, Row]]:
    """Rows with their kinds, in an order of chance that is the same in every run."""
    found = [
        (kind, row)
        for path in sorted(LEARNT.glob("*.tsv"))
        if path.stem != WRITTEN
        for kind, row in zip(_kinds(path), rows_of(path), strict=True)
        if row.means != "no" and LEAST_WORDS <= len(row.words.split()) <= LONGEST_WORDS and row.words.isascii()
    ]
    Random("heard").shuffle(found)  # noqa: S311 - no secret
    return found[after : after + most]


def _kinds(path: Path) -> list[str]:
    return [text.partition("\t")[0] for text in path.read_text(encoding="utf-8").splitlines()[2:]]


def said(row: Row, chance: Random, speakers: list[tuple[float, Voice]]) -> Sound | None:
    """The row's words by one of the speakers; None where the program does not say them."""
    (voice,) = chance.choices([one for _, one in speakers], [share for share, _ in speakers])
    try:
        _, sound = voice(row.words, chance)
    except (subprocess.CalledProcessError, RuntimeError, ValueError):
        return None
    level = float(np.abs(sound).max(initial=0))
    return np.asarray(sound / level, dtype=np.float32) if level > 0.01 else None


def written(model: WhisperRecogniser, sound: Sound, condition: str, key: str) -> str:
    """What the model writes freely, as the program reads it; "" where it is unsure."""
    samples = samples_of(as_recorded(CONDITIONS[condition](sound, key)))
    evidence = model.evidence(samples, TextExpected())
    if evidence is None or evidence.free.score / evidence.free_tokens < LEAST_CLEAR:
        return ""
    return plain(evidence.free.text, ENGLISH)


def may_mean_it(row: Row, text: str) -> bool:
    """Whether what was written may be learnt to mean what the row means."""
    alike = SequenceMatcher(None, text, plain(row.words, ENGLISH), autojunk=False).ratio()
    if len(text.split()) < LEAST_WORDS or alike < LEAST_ALIKE:
        return False
    reader = answer_reader()
    odds = reader.weigh(row.line, row.meanings, text) if reader is not None else ()
    if not odds or not row.means:
        return bool(odds) and max(odds) < _MEANT
    return odds[row.meanings.index(row.means)] == max(odds) > _REFUTED


def made(model: WhisperRecogniser, styles: Path | None, after: int, most: int) -> Iterator[tuple[str, Row, str]]:
    """Rows with their kinds and what was written of them, where it is another wording that may be learnt."""
    speakers = voices()
    if styles is not None:
        speakers = [(share * (1 - _STYLES_SHARE), voice) for share, voice in speakers]
        speakers += [(share * _STYLES_SHARE, voice) for share, voice in voices(styles)]
    for number, (kind, row) in enumerate(rows(after, most)):
        chance = Random(f"heard/{row.line}/{row.words}")  # noqa: S311 - no secret
        sound = said(row, chance, speakers)
        if sound is None:
            continue
        text = written(model, sound, (CLEAN, chance.choice(NOISY))[number % 2], f"{number}")
        if text != plain(row.words, ENGLISH) and may_mean_it(row, text):
            yield kind, row, text
        if number % 500 == 499:
            say(f"{number + 1} said")


def main() -> None:
    """Write the table."""
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("out", type=Path)
    parser.add_argument("--styles", type=Path)
    parser.add_argument("--after", type=int, default=0, help="so many of them are passed over")
    parser.add_argument("--most", type=int, default=8_000, help="rows that are said")
    args = parser.parse_args()
    ear = open_recogniser(None, None)
    model = ear.model if isinstance(ear, TrainedEar) else ear
    assert isinstance(model, WhisperRecogniser)
    with args.out.open("w", encoding="utf-8") as out:
        out.write(
            "# Answers of learnt/ as the ear writes them, where it writes them otherwise.\nkind\tline\twords\tmeans\n"
        )
        for kind, row, text in made(model, args.styles, args.after, args.most):
            means = {"started": "start"}.get(row.means, row.means) or "not taken"
            out.write(f"{kind}\t{row.line}\t{text}\t{means}\n")
            out.flush()


if __name__ == "__main__":
    main()
