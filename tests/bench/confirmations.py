"""Whether a yes that is heard was said: near-misses and clear positives of the library's own lines, by ear.

    python -m tests.bench.confirmations                                   the report half
    python -m tests.bench.confirmations --half tuning --keep kept.pickle  the half that limits are chosen on
    python -m tests.bench.confirmations --again kept.pickle --curve       judged again, with each limit moved
    python -m tests.bench.confirmations --condition clean --voices flite neural

What it needs is what `tests.bench.hearing` needs. Half of the clips are clean, half have noise at 10 dB (pink noise and
babble in turn). The neural voice speaks in the report half alone.
"""

import argparse
import pickle
import sys
import time
from collections import Counter, defaultdict
from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

import numpy as np

from assistant.adapters.answer_reader import answer_reader
from assistant.adapters.recognisers.choose import open_recogniser
from assistant.adapters.recognisers.limits import Limits, LimitSet
from assistant.spoken import ENGLISH
from assistant.spoken.meaning import NoMatch
from tests.bench import voices
from tests.bench.clips import NEURAL, Clip, sound_of
from tests.bench.conditions import CLEAN, NOISY_10_DB
from tests.bench.hearing import hear
from tests.bench.limits import MANNERS, STEPS, again
from tests.bench.near_misses import NEAR_MISSES, POSITIVE, is_positive, sayings, scatter
from tests.bench.printing import say
from tests.bench.sayings import Saying
from tests.bench.scoring import Heard, Outcome, interval

CONDITIONS = {"clean": (CLEAN,), "noise10": NOISY_10_DB}
_NEURAL_SHARE = 4
"""How many times the one neural voice stands among the voices."""


def clips(half: str, condition: str | None = None, programs: tuple[str, ...] = ()) -> Iterator[Clip]:
    """The clips of a half, in an order that has nothing to do with their kinds.

    Args:
        half: "tuning" or "report".
        condition: one of `CONDITIONS`; None for all.
        programs: only voices of these.
    """
    speakers = [voice for voice in voices.synthesisers() if not voice.startswith(NEURAL)]
    if half == "report":
        speakers += [voice for voice in voices.synthesisers() if voice.startswith(NEURAL)] * _NEURAL_SHARE
    found = []
    for saying in sayings(half):
        asked = saying.expect.asked
        name = f"{asked.line}/{saying.words}"
        voice = speakers[scatter(f"voice/{name}") % len(speakers)]
        chance = scatter(f"condition/{name}")
        kind = tuple(CONDITIONS)[chance % 2]
        noise = CONDITIONS[kind][chance // 2 % len(CONDITIONS[kind])]
        is_wanted = condition in (None, kind) and (not programs or voice.startswith(programs))
        if is_wanted and not _says_alike(voice, saying):
            found.append((scatter(name), Clip(saying, voice, noise)))
    return (clip for _, clip in sorted(found, key=lambda one: one[0]))


def _says_alike(voice: str, saying: Saying) -> bool:
    """Whether a voice says a question ("closed?") sample for sample as the positive, so that no ear could tell."""
    words = saying.words.removesuffix("?")
    if saying.kind == POSITIVE or words == saying.words or not is_positive(ENGLISH.interpret(words, saying.expect)):
        return False
    return np.array_equal(voices.synthesise(voice, words), voices.synthesise(voice, saying.words))


def outcome(heard: Heard) -> Outcome:
    """What the guide would do, and whether that is right.

    A near-miss that is refused, asked about or taken for a no is all right; only a positive is WRONG.
    """
    language = ENGLISH.weighed_by(answer_reader())
    meaning = language.interpret(heard.words, heard.clip.saying.expect, heard=True) if heard.words else None
    said = heard.clip.saying.kind == POSITIVE
    if is_positive(meaning):
        if heard.doubtful:
            return Outcome.ASKED
        return Outcome.RIGHT if said else Outcome.WRONG
    taken = meaning is not None and said and not isinstance(meaning, NoMatch)
    return Outcome.WRONG if taken else Outcome.REFUSED


def group(heard: Heard) -> str:
    """Whose voice: made by formants, or of recordings and by the neural model."""
    return "formants" if heard.clip.speaker.startswith("espeak") else "recorded and neural"


def condition_of(heard: Heard) -> str:
    """The name of the clip's condition among `CONDITIONS`."""
    return next(name for name, known in CONDITIONS.items() if heard.clip.condition in known)


def table(all_heard: list[Heard]) -> Iterator[str]:
    """What became of positives and near-misses, in Markdown, in percent."""
    yield "| positives | taken at first hearing | asked once more | WRONG | refused |"
    yield "| --- | --- | --- | --- | --- |"
    yield from _rows([h for h in all_heard if h.clip.saying.kind == POSITIVE], by_kind=False)
    yield ""
    yield "| near-misses | taken as a positive | asked about | refused, or a no |"
    yield "| --- | --- | --- | --- |"
    yield from _rows([h for h in all_heard if h.clip.saying.kind != POSITIVE], by_kind=True)


def _rows(all_heard: list[Heard], *, by_kind: bool) -> Iterator[str]:
    rows: dict[str, Counter[Outcome]] = defaultdict(Counter)
    for heard in all_heard:
        result = outcome(heard)
        rows[f"{group(heard)}, {condition_of(heard)}"][result] += 1
        rows["all"][result] += 1
        if by_kind:
            rows[heard.clip.saying.kind][result] += 1
    shown = (
        (Outcome.WRONG, Outcome.ASKED, Outcome.REFUSED)
        if by_kind
        else (Outcome.RIGHT, Outcome.ASKED, Outcome.WRONG, Outcome.REFUSED)
    )
    for name in sorted(rows, key=lambda one: (one == "all", one in NEAR_MISSES, one)):
        counts = rows[name]
        cells = [f"{100 * counts[one] / counts.total():.1f}" for one in shown]
        if by_kind:
            low, high = interval(counts[Outcome.WRONG], counts.total())
            cells[0] = f"{counts[Outcome.WRONG]} ({low:.1f} to {high:.1f} %)"
        yield f"| {name} ({counts.total()}) | {' | '.join(cells)} |"


def listed(all_heard: list[Heard], *, verbose: bool) -> Iterator[str]:
    """Each clip that went wrong; with `verbose` each positive that was not taken too."""
    for heard in all_heard:
        result, saying = outcome(heard), heard.clip.saying
        if result is Outcome.WRONG or (verbose and saying.kind == POSITIVE and result is not Outcome.RIGHT):
            free = "" if heard.evidence is None else heard.evidence.free.text.strip()
            yield (
                f'{result}: {saying.kind} "{saying.words}" at "{saying.expect.asked.line}" '
                f"({heard.clip.speaker}, {heard.clip.condition}): {heard.words!r}; free {free!r}"
            )


def curves(all_heard: list[Heard], limits: LimitSet) -> Iterator[str]:
    """What becomes of the clips when one limit for positives is moved and the others stay as they are."""
    for name in ("positive", "doubtful_positive"):
        kept: Limits = getattr(limits, name)
        for field in STEPS:
            yield ""
            yield f"| {name}.{field} | taken | asked | refused | near-misses taken | near-misses asked about |"
            yield "| --- | --- | --- | --- | --- | --- |"
            for value in sorted({*STEPS[field], getattr(kept, field)}):
                moved = replace(limits, **{name: replace(kept, **{field: value})})
                counts = Counter((h.clip.saying.kind == POSITIVE, outcome(h)) for h in again(all_heard, moved))
                said = sum(count for (positive, _), count in counts.items() if positive)
                shares = [
                    f"{100 * counts[True, one] / max(1, said):.1f}"
                    for one in (Outcome.RIGHT, Outcome.ASKED, Outcome.REFUSED)
                ]
                mark = " (now)" if value == getattr(kept, field) else ""
                yield (
                    f"| {value}{mark} | {' | '.join(shares)} | {counts[False, Outcome.WRONG]} "
                    f"| {counts[False, Outcome.ASKED]} |"
                )


def _heard(args: argparse.Namespace) -> list[Heard]:
    if args.again is not None:
        # This file is our own; pickle must not read anybody else's.
        manner = MANNERS[args.manner]
        return again(pickle.loads(args.again.read_bytes()), manner.limits, own_words=manner.own_words)  # noqa: S301
    recogniser = open_recogniser(args.ear, args.models)
    found = []
    for number, clip in enumerate(list(clips(args.half, args.condition, tuple(args.voices)))[: args.most], 1):
        found.append(hear(recogniser, clip, sound_of(clip)))
        if number % 100 == 0:
            sys.stderr.write(f"{number} clips\n")
    return found


def main() -> None:
    """Run the bench."""
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--half", choices=("report", "tuning"), default="report")
    parser.add_argument("--condition", choices=tuple(CONDITIONS), help="only this one")
    parser.add_argument("--voices", nargs="+", default=(), help="only voices whose names begin so")
    parser.add_argument("--ear", help="which recogniser (see: checkoff models list)")
    parser.add_argument("--models", type=Path, help="the models folder")
    parser.add_argument("--most", type=int, help="this many clips only")
    parser.add_argument("--verbose", action="store_true", help="each positive that was not taken")
    parser.add_argument("--keep", type=Path, help="keep the evidence in this file")
    parser.add_argument("--again", type=Path, help="judge what such a file keeps with the limits as they are now")
    parser.add_argument("--manner", choices=tuple(MANNERS), default="general", help="whose limits --again judges with")
    parser.add_argument("--curve", action="store_true", help="move each limit")
    args = parser.parse_args()
    began = time.monotonic()
    all_heard = _heard(args)
    if args.keep is not None:
        args.keep.write_bytes(pickle.dumps(all_heard))
    say(f"{len(all_heard)} clips, {time.monotonic() - began:.0f} s\n")
    for line in table(all_heard):
        say(line)
    seconds = [heard.compute_s for heard in all_heard]
    say(f"\ntime for a clip: median {np.median(seconds):.3f} s, nine of ten under {np.quantile(seconds, 0.9):.3f} s\n")
    for line in listed(all_heard, verbose=args.verbose):
        say(line)
    if args.curve:
        for line in curves(all_heard, MANNERS[args.manner].limits):
            say(line)


if __name__ == "__main__":
    main()
