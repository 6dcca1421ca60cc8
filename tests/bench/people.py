"""How well a recogniser hears people: words of many, joined to strings of one speaker, and speech from outside.

    python -m tests.bench.people --words WORDS --orders ORDERS               the report part, the bundled recogniser
    python -m tests.bench.people --words WORDS --half tuning --keep kept.pickle
    python -m tests.bench.people --listed FOLDER                             sentences of people, as its table has them
    python -m tests.bench.people --listed FOLDER --slow                      strings of digits with pauses between them
    python -m tests.bench.people --listed FOLDER --at-10-db --only digits    each string in pink noise and in babble
    python -m tests.bench.people --digits RECORDINGS                         digits that nothing was learnt or chosen on

No recording lies here. WORDS and ORDERS are what `tests.bench.training.people` names, with its parts: nobody who was
heard in training is heard here. RECORDINGS is the folder of that name of the Free Spoken Digit Dataset (CC BY-SA 4.0,
six speakers), which is for measuring alone.
"""

import argparse
import hashlib
from collections import Counter, defaultdict
from collections.abc import Iterator
from dataclasses import replace
from decimal import Decimal
from itertools import chain
from pathlib import Path
from random import Random

import numpy as np

from assistant import spoken
from assistant.adapters.recognisers.choose import open_recogniser
from assistant.ports import SAMPLE_RATE_HZ
from assistant.spoken.expect import AnyExpected, ConfirmExpected, Expect, NumberExpected
from assistant.spoken.meaning import Ambiguous, Answer
from assistant.spoken.statement import Asked, Want
from tests.bench import conditions
from tests.bench.clips import Clip
from tests.bench.conditions import CLEAN, CONDITIONS
from tests.bench.hearing import hear_all
from tests.bench.printing import say
from tests.bench.sayings import FRAMES, Saying, cardinal, one_by_one
from tests.bench.scoring import Heard, Outcome, interval, outcome
from tests.bench.training.people import DIGITS, listed, orders, read, words
from tests.bench.training.store import trimmed
from tests.bench.voices import Sound

COMMANDS = {"yes": "yes", "no": "no", "stop": "stop", "right": "yes"}
"""Words of people that mean something where a yes or a no is expected, with what each means."""
NOISY = ("pink 10 dB", "babble 10 dB", "pink 5 dB", "babble 5 dB")
OTHER = ("8 kHz", "echo", "fast")
_ANY_LENGTH = Decimal(10**11)
"""Strings of people are often longer than a number at a bench."""
_START = ConfirmExpected(asked=Asked("Start the infusion.", Want.START))
_TEENS = frozenset(cardinal(number) for number in range(10, 21))
_GAPS_S = (0.05, 0.35)
_SLOW_GAPS_S = (0.6, 2.2)
_STRINGS, _SINGLES, _LEAST_SINGLES = 72, 40, 5
"""Strings and single digits of each speaker of many digits; of few there are as many strings as there are digits."""

Words = dict[str, list[tuple[str, Sound]]]
"""Words and their sounds, by speaker."""


Gaps = tuple[float, float]
"""The shortest and the longest pause between two words of a string, seconds."""


def clips(spoken_by: Words, sentences: list[tuple[str, Sound]], gaps_s: Gaps = _GAPS_S) -> Iterator[tuple[Clip, Sound]]:
    """What is said on the bench, clean: the same in every run.

    Args:
        spoken_by: single words.
        sentences: speech that is not for the assistant, by the name of its recording.
        gaps_s: between the words of a string.
    """
    for speaker in sorted(spoken_by):
        chance = Random(f"people/{speaker}")  # noqa: S311 - no secret
        said = spoken_by[speaker]
        digits = [(word, sound) for word, sound in said if word in DIGITS]
        for number, (word, sound) in enumerate(said):
            if word in DIGITS:
                if number < _SINGLES:
                    yield _clip(word, "single digit", NumberExpected("mL"), Decimal(DIGITS.index(word)), speaker), sound
            elif word in COMMANDS:
                yield _clip(word, "command", ConfirmExpected(), COMMANDS[word], speaker), sound
                if word in ("yes", "stop"):
                    yield _clip(word, "command", _START, COMMANDS[word], speaker), sound
            elif word != "go":
                yield _clip(word, "outside", FRAMES[number % len(FRAMES)], None, speaker), sound
        yield from _strings(speaker, digits, chance, gaps_s)
    for number, (name, sound) in enumerate(sentences):
        yield _clip(name, "outside", FRAMES[number % len(FRAMES)], None, f"order:{name}"), sound


def _strings(
    speaker: str, digits: list[tuple[str, Sound]], chance: Random, gaps_s: Gaps
) -> Iterator[tuple[Clip, Sound]]:
    """Strings of two to four digits of a speaker, each as an answer of digits and as a number."""
    for number in range(min(_STRINGS, len(digits) if len(digits) > 1 else 0)):
        picked = [chance.choice(digits) for _ in range(2 + number % 3)]
        sound = _joined([sound for _, sound in picked], chance, gaps_s)
        figures = "".join(str(DIGITS.index(word)) for word, _ in picked)
        value, text = Decimal(figures), f"{one_by_one(figures)} {number}"
        # No number begins so, but where a point was lost: the guide asks again.
        kind = "digits after a zero" if figures.startswith("0") else "digits"
        yield _clip(text, kind, NumberExpected("mL", digits_only=True), value, speaker), sound
        if kind == "digits":
            yield _clip(text, "digit by digit", NumberExpected("mL"), value, speaker), sound


def joined_sayings(folder: Path, part: str, gaps_s: Gaps = _GAPS_S) -> Iterator[tuple[Clip, Sound]]:
    """Strings of the single digits of a folder's table, of each speaker who says at least five.

    Args:
        folder: its table is as `tests.bench.training.people` reads it.
        part: whose.
        gaps_s: between the words of a string.
    """
    spoken_by: Words = defaultdict(list)
    for said, sound in listed(folder):
        if said.part == part and said.words in DIGITS:
            spoken_by[said.speaker].append((said.words, trimmed(sound)))
    for speaker, digits in spoken_by.items():
        if len(digits) >= _LEAST_SINGLES:
            yield from _strings(speaker, digits, Random(f"people/{speaker}"), gaps_s)  # noqa: S311 - no secret


def whole_sayings(folder: Path, part: str) -> Iterator[tuple[Clip, Sound]]:
    """What people said in one breath: strings of digits, numbers, commands, and what is not for the assistant.

    Args:
        folder: its table is as `tests.bench.training.people` reads it.
        part: whose.
    """
    for number, (said, sound) in enumerate(listed(folder)):
        if said.part != part:
            continue
        text, name = said.words, f"{said.words} {number}"
        as_number = NumberExpected("mL", highest=_ANY_LENGTH)
        meaning = spoken.interpret(text, as_number)
        if set(text.split()) <= {*DIGITS, "oh"} and len(text.split()) > 1 and isinstance(meaning, Answer):
            digits = replace(as_number, digits_only=True)
            yield _clip(name, "digits in one breath", digits, Decimal(str(meaning.value)), said.speaker), sound
        elif text in _TEENS and isinstance(meaning, Answer):
            yield _clip(name, "ten to twenty", as_number, Decimal(str(meaning.value)), said.speaker), sound
        elif isinstance(meaning, Answer) and isinstance(meaning.value, Decimal):
            yield _clip(name, "number in one breath", as_number, meaning.value, said.speaker), sound
        elif text in COMMANDS:
            yield _clip(name, "command", ConfirmExpected(), COMMANDS[text], said.speaker), sound
        elif not isinstance(spoken.interpret(text, AnyExpected()), Answer | Ambiguous):
            yield _clip(name, "outside", FRAMES[number % len(FRAMES)], None, said.speaker), sound


def in_conditions(clean: Iterator[tuple[Clip, Sound]], names: tuple[str, ...]) -> Iterator[tuple[Clip, bytes]]:
    """Each clip clean, and in one of the other conditions."""
    for clip, sound in clean:
        place = int.from_bytes(hashlib.sha256(clip.key.encode()).digest()[:4], "big")
        yield from _changed(clip, sound, (CLEAN, names[place % len(names)]) if names else (CLEAN,))


def at_10_db(clean: Iterator[tuple[Clip, Sound]]) -> Iterator[tuple[Clip, bytes]]:
    """Each clip in pink noise and in babble at 10 dB: more of them than where one condition is drawn for each."""
    for clip, sound in clean:
        yield from _changed(clip, sound, conditions.NOISY_10_DB)


def _changed(clip: Clip, sound: Sound, names: tuple[str, ...]) -> Iterator[tuple[Clip, bytes]]:
    level = float(np.abs(sound).max()) or 1.0
    for condition in names:
        changed = conditions.as_recorded(CONDITIONS[condition](sound / level, clip.key))
        yield Clip(clip.saying, clip.speaker, condition, len(changed) / 2 / SAMPLE_RATE_HZ), changed


def rows(all_heard: list[Heard]) -> Iterator[str]:
    """What became of the clips, in Markdown, in percent, with the 95 % interval of what is wrong."""
    counts: dict[str, Counter[Outcome]] = defaultdict(Counter)
    minutes: dict[str, float] = defaultdict(float)
    for heard in all_heard:
        kind, condition = heard.clip.saying.kind, heard.clip.condition
        group = f"{condition[-5:]}" if condition in NOISY else condition if condition == CLEAN else "other conditions"
        counts[f"{kind}, {group}"][outcome(heard)] += 1
        minutes[f"{kind}, {group}"] += heard.clip.seconds / 60
    yield "| people | right | asked | WRONG | refused |"
    yield "| --- | --- | --- | --- | --- |"
    for name in sorted(counts):
        found = counts[name]
        cells = [f"{100 * found[one] / found.total():.1f}" for one in Outcome]
        low, high = interval(found[Outcome.WRONG], found.total())
        cells[2] = f"{cells[2]} ({low:.1f} to {high:.1f}; {found[Outcome.WRONG]})"
        length = f", {minutes[name]:.1f} min" if name.startswith("outside") else ""
        yield f"| {name} ({found.total()}{length}) | {' | '.join(cells)} |"


def wrong(all_heard: list[Heard]) -> Iterator[str]:
    """Each clip that was taken for something else."""
    for heard in all_heard:
        if outcome(heard) is Outcome.WRONG:
            free = "" if heard.evidence is None else heard.evidence.free.text
            yield f"{heard.clip.key}: {heard.words!r}; free {free!r}"


def spoken_words(folder: Path, part: str) -> Words:
    """The words of the speakers of a part of `tests.bench.training.people`."""
    found: Words = defaultdict(list)
    for clip, sound in words(folder):
        if clip.part == part and clip.words:
            found[clip.speaker].append((clip.words, trimmed(sound)))
    return found


def spoken_digits(folder: Path) -> Words:
    """The digits of a folder whose files are named "7_jackson_32.wav"."""
    found: Words = defaultdict(list)
    for path in sorted(folder.glob("*_*_*.wav"), key=lambda path: hashlib.sha256(path.name.encode()).digest()):
        digit, speaker, _ = path.stem.split("_")
        found[f"person:{speaker}"].append((DIGITS[int(digit)], trimmed(read(path))))
    return found


def _clip(words: str, kind: str, expect: Expect, right: Decimal | str | None, speaker: str) -> Clip:
    return Clip(Saying(words, kind, expect, right), speaker, CLEAN)


def _joined(sounds: list[Sound], chance: Random, gaps_s: Gaps) -> Sound:
    parts: list[Sound] = []
    for sound in sounds:
        parts += [sound, np.zeros(round(chance.uniform(*gaps_s) * SAMPLE_RATE_HZ), dtype=np.float32)]
    return np.concatenate(parts[:-1]).astype(np.float32)


def main() -> None:
    """Run the bench."""
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--words", type=Path)
    parser.add_argument("--orders", type=Path)
    parser.add_argument("--listed", type=Path)
    parser.add_argument("--digits", type=Path)
    parser.add_argument("--slow", action="store_true", help="0.6 to 2.2 s between the digits of a string")
    parser.add_argument("--half", choices=("report", "tuning"), default="report")
    parser.add_argument("--ear", help="which recogniser (see: checkoff models list)")
    parser.add_argument("--models", type=Path, help="the models folder")
    parser.add_argument("--most", type=int, help="this many clips only")
    parser.add_argument("--clean", action="store_true", help="no noise")
    parser.add_argument("--at-10-db", action="store_true", help="in both noises at 10 dB, each clip, and nothing else")
    parser.add_argument("--only", metavar="KIND", help="clips whose kind begins so")
    parser.add_argument("--keep", type=Path, help="keep the evidence in this file")
    args = parser.parse_args()
    spoken_by: Words = {}
    if args.words is not None:
        spoken_by |= spoken_words(args.words, args.half)
    if args.digits is not None:
        spoken_by |= spoken_digits(args.digits)
    sentences = []
    if args.orders is not None:
        sentences = [(clip.speaker, sound) for clip, sound in orders(args.orders) if clip.part == args.half]
    recogniser = open_recogniser(args.ear, args.models)
    gaps_s = _SLOW_GAPS_S if args.slow else _GAPS_S
    clean = clips(spoken_by, sentences, gaps_s)
    if args.listed is not None:
        clean = chain(clean, whole_sayings(args.listed, args.half), joined_sayings(args.listed, args.half, gaps_s))
    if args.only is not None:
        clean = (one for one in clean if one[0].saying.kind.startswith(args.only))
    names = () if args.clean else (*NOISY, *NOISY[:2], *OTHER)
    made = list(at_10_db(clean) if args.at_10_db else in_conditions(clean, names))
    made.sort(key=lambda one: hashlib.sha256(one[0].key.encode()).digest())
    all_heard = hear_all(recogniser, made[: args.most], args.keep)
    say(f"{recogniser.name}, {args.half} part, {len(all_heard)} clips\n")
    for line in (*rows(all_heard), "", *wrong(all_heard)):
        say(line)
    seconds = [heard.compute_s for heard in all_heard]
    say(f"\ntime for a clip: median {np.median(seconds):.3f} s, nine of ten under {np.quantile(seconds, 0.9):.3f} s")


if __name__ == "__main__":
    main()
