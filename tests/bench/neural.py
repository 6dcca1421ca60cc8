"""Numbers by neural voices that the recogniser has not met: is fifteen told from fifty, and is a point ever lost?

    python -m tests.bench.neural STYLES                     speakers of the report part
    python -m tests.bench.neural STYLES --half tuning --keep kept.pickle

STYLES is the folder of speakers that `tests.bench.training.speech` names; those who speak here were left out of
training, and those on whom limits are chosen do not speak in the report. Sound is made once and kept in the platform's
cache folder. Synthetic voices stand in for people here, of whom there are no free teens, tens and decimals.
"""

import argparse
import hashlib
from collections import Counter, defaultdict
from collections.abc import Iterator
from decimal import Decimal
from pathlib import Path
from random import Random

import numpy as np

from assistant.adapters.recognisers.choose import open_recogniser
from assistant.ports import SAMPLE_RATE_HZ
from assistant.spoken.expect import NumberExpected
from tests.bench import conditions
from tests.bench.clips import Clip, cache_folder
from tests.bench.conditions import CLEAN, CONDITIONS
from tests.bench.hearing import hear_all
from tests.bench.printing import say
from tests.bench.sayings import UNITS, Saying, ways
from tests.bench.scoring import Heard, Outcome, interval, is_like_another, outcome
from tests.bench.training.speech import kokoro_says, style_of
from tests.bench.voices import Sound

SPEAKERS = {
    "tuning": ("af_bella", "am_fenrir", "bm_george", "hm_psi", "zf_xiaoni", "jf_nezumi"),
    "report": ("af_nova", "am_michael", "bf_emma", "hf_beta", "im_nicola", "jf_gongitsune", "jf_tebukuro"),
}
"""All of `HELD_BACK`; of either half some speak as those do whose first language is another one."""
NOISY = ("babble 10 dB", "pink 10 dB")
_TEENS_AND_TENS = tuple(map(str, (13, 14, 15, 16, 17, 18, 19, 30, 40, 50, 60, 70, 80, 90)))


def numbers(speaker: str, count: int) -> Iterator[Saying]:
    """What a speaker says: a third teens, tens and hundreds with them, a third decimals, the same in every run."""
    chance = Random(f"neural/{speaker}")  # noqa: S311 - no secret
    for number in range(count):
        near = chance.choice(_TEENS_AND_TENS)
        value = (
            chance.choice((near, near, f"{chance.randrange(1, 10)}{near}")),
            chance.choice((f"{chance.randrange(200)}.{chance.randrange(1, 10)}", f"{near}.{chance.randrange(1, 10)}")),
            str(chance.choice((chance.randrange(2, 100), chance.randrange(100, 1000), chance.randrange(20, 200) * 5))),
        )[number % 3]
        unit = chance.choice(tuple(UNITS))
        spoken = f"{chance.choice(ways(value))} {chance.choice(UNITS[unit]) if chance.random() < 0.7 else ''}".strip()
        yield Saying(spoken, "number", NumberExpected(unit), Decimal(value))


def kind_of(saying: Saying) -> str:
    """What sort of number it is."""
    value = saying.right
    assert isinstance(value, Decimal)
    if value != value.to_integral_value():
        return "decimals"
    return "teens, tens and their like" if is_like_another(value) else "other whole numbers"


def clips(styles: Path, half: str, count: int) -> Iterator[tuple[Clip, bytes]]:
    """Every clip, clean and in noise."""
    for speaker in SPEAKERS[half]:
        for number, saying in enumerate(numbers(speaker, count)):
            sound = said(styles, speaker, saying.words)
            for condition in (CLEAN, NOISY[number % len(NOISY)]):
                clip = Clip(saying, f"kokoro:{speaker}", condition, len(sound) / SAMPLE_RATE_HZ)
                level = float(np.abs(sound).max()) or 1.0
                yield clip, conditions.as_recorded(CONDITIONS[condition](sound / level, clip.key))


def said(styles: Path, speaker: str, words: str) -> Sound:
    """The words by one of `SPEAKERS`, made once."""
    name = hashlib.sha256(f"neural/1/{speaker}/{words}".encode()).hexdigest()
    place = cache_folder() / name[:2] / f"{name}.npy"
    if not place.is_file():
        place.parent.mkdir(parents=True, exist_ok=True)
        made = kokoro_says(words, style_of(styles / f"{speaker}.bin"), Random(name))  # noqa: S311 - no secret
        np.save(place, made.astype(np.float32))
    return np.asarray(np.load(place))


def rows(all_heard: list[Heard]) -> Iterator[str]:
    """What became of them, in percent, with the 95 % interval of what is wrong."""
    counts: dict[str, Counter[Outcome]] = defaultdict(Counter)
    for heard in all_heard:
        condition = CLEAN if heard.clip.condition == CLEAN else "10 dB"
        for kind in (kind_of(heard.clip.saying), "all"):
            counts[f"{kind}, {condition}"][outcome(heard)] += 1
    yield "| numbers | right | asked | WRONG | refused |"
    yield "| --- | --- | --- | --- | --- |"
    for name, found in sorted(counts.items()):
        cells = [f"{100 * found[one] / found.total():.1f}" for one in Outcome]
        low, high = interval(found[Outcome.WRONG], found.total())
        cells[2] = f"{cells[2]} ({low:.1f} to {high:.1f}; {found[Outcome.WRONG]})"
        yield f"| {name} ({found.total()}) | {' | '.join(cells)} |"


def main() -> None:
    """Run the bench."""
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("styles", type=Path)
    parser.add_argument("--half", choices=tuple(SPEAKERS), default="report")
    parser.add_argument("--ear", help="which recogniser (see: checkoff models list)")
    parser.add_argument("--models", type=Path, help="the models folder")
    parser.add_argument("--count", type=int, default=60, help="numbers of each speaker")
    parser.add_argument("--keep", type=Path, help="keep the evidence in this file")
    parser.add_argument("--only-make", action="store_true", help="make the sound, and hear nothing")
    args = parser.parse_args()
    if args.only_make:
        say(f"{sum(1 for _ in clips(args.styles, args.half, args.count))} clips")
        return
    recogniser = open_recogniser(args.ear, args.models)
    all_heard = hear_all(recogniser, clips(args.styles, args.half, args.count), args.keep)
    say(f"{recogniser.name}, {args.half} part, {len(all_heard)} clips\n")
    for line in rows(all_heard):
        say(line)
    for heard in all_heard:
        if outcome(heard) is Outcome.WRONG:
            say(f"{heard.clip.key}: {heard.words!r}")


if __name__ == "__main__":
    main()
