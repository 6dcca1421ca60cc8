"""What learners say in words of their own, by ear: what is taken, asked about or refused, of answers and near misses.

    python -m tests.bench.own_words STYLES tests/data/answers/held_out/first_lab.tsv
    python -m tests.bench.own_words STYLES TABLE --half tuning --keep kept.pickle
    python -m tests.bench.own_words STYLES TABLE --again kept.pickle     judged again by what is written now

STYLES is the folder of speakers that `tests.bench.training.speech` names. Half of the clips are clean,
half are in noise at 10 dB. Sentences that are not for the assistant are said as well, at lines of the table.
"""

import argparse
import pickle
from collections import Counter, defaultdict
from collections.abc import Iterator
from functools import cache
from pathlib import Path
from random import Random

import numpy as np

from assistant.adapters.answer_reader import answer_reader
from assistant.adapters.recognisers.choose import open_recogniser
from assistant.adapters.recognisers.trained import TrainedEar
from assistant.adapters.recognisers.whisper import WhisperRecogniser
from assistant.ports import SAMPLE_RATE_HZ
from assistant.spoken import ENGLISH
from assistant.spoken.meaning import Answer, Kind, Surety
from tests.bench import conditions, neural, voices
from tests.bench.clips import NEURAL, Clip
from tests.bench.conditions import CLEAN, CONDITIONS
from tests.bench.hearing import hear_all
from tests.bench.limits import again
from tests.bench.near_misses import half_of, scatter
from tests.bench.printing import say
from tests.bench.sayings import Saying
from tests.bench.scoring import Heard
from tests.spoken.answers import WANTS, Row, expected

NOISY = ("babble 10 dB", "pink 10 dB")
LONGEST_WORDS = 16
"""Longer answers outlast the sound that a recogniser looks at."""
OUTSIDE = "outside"
_OUTSIDE_SHARE = 4
"""Of so many rows one is exchanged for a sentence that is not for the assistant."""


def rows(table: Path, half: str) -> list[Row]:
    """The rows of a table that a yes, a done or an alternative may answer, at the lines of a half, without figures."""
    found = [Row(*text.split("\t")) for text in table.read_text(encoding="utf-8").splitlines()[2:]]
    return [
        row
        for row in found
        if (row.kind in WANTS or row.choices)
        and row.means != "no"
        and half_of(row.line) == half
        and not any(sign.isdigit() for sign in row.words)
        and len(row.words.split()) <= LONGEST_WORDS
    ]


def clips(styles: Path, table: Path, half: str, most: int) -> Iterator[tuple[Clip, bytes]]:
    """Every clip with its sound, in an order that has nothing to do with their kinds."""
    speakers = [f"kokoro:{name}" for name in neural.SPEAKERS[half]]
    speakers += [voice for voice in voices.synthesisers() if not voice.startswith(NEURAL)]
    chosen = sorted(rows(table, half), key=lambda row: scatter(f"own/{row.line}/{row.words}"))[:most]
    others = _other_sentences(half)
    for number, row in enumerate(chosen):
        sayings = [Saying(row.words, "clear" if row.is_clear else "near", expected(row), None)]
        if number % _OUTSIDE_SHARE == 0:
            sayings.append(Saying(others[number % len(others)], OUTSIDE, expected(row), None))
        for saying in sayings:
            speaker = speakers[scatter(f"speaker/{row.line}/{saying.words}") % len(speakers)]
            condition = (CLEAN, NOISY[number // 2 % len(NOISY)])[number % 2]
            sound = _said(styles, speaker, saying.words)
            clip = Clip(saying, speaker, condition, len(sound) / SAMPLE_RATE_HZ)
            level = float(np.abs(sound).max()) or 1.0
            yield clip, conditions.as_recorded(CONDITIONS[condition](sound / level, clip.key))


def _said(styles: Path, speaker: str, words: str) -> voices.Sound:
    program, _, name = speaker.partition(":")
    return neural.said(styles, name, words) if program == "kokoro" else voices.synthesise(speaker, words)


@cache
def _other_sentences(half: str) -> list[str]:
    from tests.bench.training.wordings import collected

    sentences, _ = collected()
    if not sentences:
        raise SystemExit("Sentences that are not for the assistant are in Debian's package fortunes: install it.")
    return Random(f"own/{half}").sample(sentences, 300)  # noqa: S311 - no secret


def outcome(heard: Heard) -> tuple[str, str]:
    """What the guide would do ("taken", "asked" or ""), and with what meaning."""
    language = ENGLISH.weighed_by(answer_reader())
    meaning = language.interpret(heard.words, heard.clip.saying.expect, heard=True) if heard.words else None
    match meaning:
        case Answer(kind=Kind.ACKNOWLEDGED):
            return "asked", "done"
        case Answer(kind=Kind.CHOICE | Kind.DONE, value=str(value), surety=surety):
            pass
        case Answer(kind=Kind.CONFIRM, value="yes", surety=surety):
            value = "done" if heard.clip.saying.expect.done_is_yes else "yes"
        case _:
            return "", ""
    return ("asked" if surety is Surety.LIKELY or heard.doubtful else "taken"), value


def table_of(all_heard: list[Heard], right: dict[str, str]) -> Iterator[str]:
    """What became of them, in percent, in Markdown."""
    counts: dict[str, Counter[str]] = defaultdict(Counter)
    for heard in all_heard:
        what, value = outcome(heard)
        kind = heard.clip.saying.kind
        if what and kind == "clear":
            what = f"{what}, {'right' if value == right[heard.clip.saying.words] else 'WRONG'}"
        for name in (f"{kind}, {CLEAN if heard.clip.condition == CLEAN else '10 dB'}", kind):
            counts[name][what or "refused"] += 1
    for name, found in sorted(counts.items()):
        cells = ", ".join(f"{what} {100 * count / found.total():.1f} ({count})" for what, count in found.most_common())
        yield f"* {name} ({found.total()}): {cells}"


def main() -> None:
    """Run the bench."""
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("styles", type=Path)
    parser.add_argument("table", type=Path)
    parser.add_argument("--half", choices=tuple(neural.SPEAKERS), default="report")
    parser.add_argument("--most", type=int, default=400, help="rows that are said")
    parser.add_argument("--keep", type=Path, help="keep the evidence in this file")
    parser.add_argument("--again", type=Path, help="judge again what was kept in this file")
    parser.add_argument("--verbose", action="store_true", help="name what was taken or asked about")
    args = parser.parse_args()
    ear = open_recogniser(None, None)
    model = ear.model if isinstance(ear, TrainedEar) else ear
    if args.again:
        assert isinstance(model, WhisperRecogniser)
        kept = pickle.loads(args.again.read_bytes())  # noqa: S301 - the bench's own
        all_heard = again(kept, model.manner.limits, own_words=True)
    else:
        all_heard = hear_all(ear, clips(args.styles, args.table, args.half, args.most), args.keep)
    right = {row.words: {"start": "done"}.get(row.means, row.means) for row in rows(args.table, args.half)}
    for line in table_of(all_heard, right):
        say(line)
    for heard in all_heard if args.verbose else ():
        what, value = outcome(heard)
        if what and (heard.clip.saying.kind != "clear" or value != right[heard.clip.saying.words]):
            say(f"{what} {value!r}: {heard.clip.saying.kind} {heard.clip.key}: heard {heard.words!r}")


if __name__ == "__main__":
    main()
