"""How well a recogniser hears numbers and commands: a bench, not part of the tests.

    python -m tests.bench.hearing                       the report half, the bundled recogniser
    python -m tests.bench.hearing --half tuning         the half that thresholds are chosen on
    python -m tests.bench.hearing --most 300 --voices   fewer clips; each voice by itself
    python -m tests.bench.hearing --json new.json --compare old.json
    python -m tests.bench.hearing --keep heard.pickle   keeps the evidence for tests.bench.limits

What it needs beside the tests' own packages, each left out where it is missing: pip install ".[bench]" (a neural
voice); Debian's asterisk-core-sounds-en-wav, pocketsphinx-testdata, espeak-ng, flite, festival,
festvox-kallpc16k, festvox-us-slt-hts, sox. Sound is made once and kept in the platform's cache folder.
"""

import argparse
import json
import pickle
import resource
import sys
import time
from collections.abc import Iterable, Iterator
from dataclasses import asdict
from pathlib import Path

import numpy as np

from assistant.adapters.recognisers.choose import open_recogniser
from assistant.adapters.recognisers.front import samples_of
from assistant.adapters.recognisers.judgement import NOTHING
from assistant.adapters.recognisers.replay import hear_sound
from assistant.adapters.recognisers.trained import TrainedEar
from assistant.adapters.recognisers.whisper import WhisperRecogniser
from assistant.ports import Recogniser
from tests.bench import scoring
from tests.bench.clips import Clip, clips
from tests.bench.printing import say
from tests.bench.scoring import Heard, Outcome, Row


def hear(recogniser: Recogniser, clip: Clip, sound: bytes) -> Heard:
    """One clip through the recogniser, with its evidence where it gives some."""
    if isinstance(recogniser, TrainedEar):
        recogniser = recogniser.model
    if not isinstance(recogniser, WhisperRecogniser):
        hearing = hear_sound(recogniser, sound, clip.saying.expect)
        return Heard(clip, hearing.words, hearing.doubtful, hearing.compute_s, told_apart=hearing.told_apart)
    recogniser.begin(clip.saying.expect)
    began = time.perf_counter()
    samples, expect = samples_of(sound), clip.saying.expect
    evidence = recogniser.evidence(samples, expect)
    verdict = NOTHING if evidence is None else recogniser.judged(evidence, samples, expect)
    seconds = time.perf_counter() - began
    return Heard(clip, verdict.words, verdict.doubtful, seconds, evidence, verdict.told_apart)


def hear_all(recogniser: Recogniser, made: Iterable[tuple[Clip, bytes]], keep: Path | None = None) -> list[Heard]:
    """Every clip through the recogniser, with a word about how far it is; kept in a file where one is named."""
    found = []
    for number, (clip, sound) in enumerate(made, 1):
        found.append(hear(recogniser, clip, sound))
        if number % 100 == 0:
            sys.stderr.write(f"{number} clips\n")
    if keep is not None:
        keep.write_bytes(pickle.dumps(found))
    return found


def table(rows: list[Row]) -> Iterator[str]:
    """The rows in Markdown, in percent, with the 95 % interval of what is wrong."""
    yield "| clips | right | asked | right or asked | WRONG | refused |"
    yield "| --- | --- | --- | --- | --- | --- |"
    for row in rows:
        low, high = scoring.interval(row.counts.get(Outcome.WRONG, 0), row.clips)
        cells = [f"{row.percent(one):.1f}" for one in (Outcome.RIGHT, Outcome.ASKED)]
        cells.append(f"{row.percent(Outcome.RIGHT, Outcome.ASKED):.1f}")
        cells.append(f"{row.percent(Outcome.WRONG):.1f} ({low:.1f} to {high:.1f})")
        cells.append(f"{row.percent(Outcome.REFUSED):.1f}")
        yield f"| {row.name} ({row.clips}) | {' | '.join(cells)} |"


def summary(all_heard: list[Heard]) -> dict[str, object]:
    """Everything that is measured, as it goes into the file."""
    accepted, asked, minutes = scoring.false_accepts(all_heard)
    seconds = sorted(heard.compute_s for heard in all_heard)
    vain = scoring.asked_in_vain(all_heard)
    whole = scoring.asked_in_vain(all_heard, decimals=False)
    return {
        "rows": {row.name: dict(row.counts) for row in scoring.rows(all_heard)},
        "false_accepts": {"answers": accepted, "digits_asked": asked, "minutes": round(minutes, 2)},
        "asked_in_vain_percent": round(vain.percent(Outcome.ASKED), 1),
        "asked_in_vain_whole_numbers_percent": round(whole.percent(Outcome.ASKED), 1),
        "dialogues": asdict(scoring.dialogues(all_heard)),
        "compute_s": {
            "median": round(float(np.median(seconds)), 3),
            "nine_of_ten": round(seconds[len(seconds) * 9 // 10], 3),
        },
        "memory_mb": resource.getrusage(resource.RUSAGE_SELF).ru_maxrss // 1024,
    }


def differences(before: dict[str, dict[str, int]], now: dict[str, dict[str, int]]) -> Iterator[str]:
    """Subsets whose share of right or of WRONG has moved since a saved run, in points of percent."""
    for name in sorted(before.keys() & now.keys()):
        old, new = before[name], now[name]
        moved = []
        for one in (Outcome.RIGHT, Outcome.ASKED, Outcome.WRONG, Outcome.REFUSED):
            change = 100 * (new.get(one, 0) / sum(new.values()) - old.get(one, 0) / sum(old.values()))
            if abs(change) >= 0.05:
                moved.append(f"{one} {change:+.1f}")
        if moved:
            yield f"{name}: {', '.join(moved)}"


def report(all_heard: list[Heard], *, voices: bool) -> None:
    """Print the table and what stands below it."""
    for line in table(scoring.rows(all_heard, voices=voices)):
        say(line)
    found = summary(all_heard)
    for name in [name for name in found if name != "rows"]:
        say(f"{name}: {json.dumps(found[name])}")


def main() -> None:
    """Run the bench."""
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--half", choices=("report", "tuning", "both"), default="report")
    parser.add_argument("--ear", help="which recogniser (see: checkoff models list)")
    parser.add_argument("--models", type=Path, help="the models folder")
    parser.add_argument("--most", type=int, help="this many clips only")
    parser.add_argument("--voices", action="store_true", help="each voice by itself as well")
    parser.add_argument("--verbose", action="store_true", help="each clip that was not heard right")
    parser.add_argument("--json", type=Path, help="write what was measured to this file")
    parser.add_argument("--compare", type=Path, help="a file written by an earlier run")
    parser.add_argument("--keep", type=Path, help="keep the evidence in this file")
    args = parser.parse_args()
    recogniser = open_recogniser(args.ear, args.models)
    all_heard = []
    for number, (clip, sound) in enumerate(clips(None if args.half == "both" else args.half, args.most), 1):
        heard = hear(recogniser, clip, sound)
        all_heard.append(heard)
        result = scoring.outcome(heard)
        expected = Outcome.REFUSED if scoring.is_outside(heard) else Outcome.RIGHT
        if args.verbose and result is not expected:
            say(f"{result:8}{clip.key}: {heard.words!r}")
        if number % 100 == 0:
            sys.stderr.write(f"{number} clips\n")
            if args.keep is not None:
                args.keep.write_bytes(pickle.dumps(all_heard))
    say(f"{recogniser.name}, {args.half} half, {len(all_heard)} clips\n")
    report(all_heard, voices=args.voices)
    if args.keep is not None:
        args.keep.write_bytes(pickle.dumps(all_heard))
    found = summary(all_heard)
    if args.json is not None:
        args.json.write_text(json.dumps(found, indent=1))
    if args.compare is not None:
        before = json.loads(args.compare.read_text())
        now = {row.name: {str(one): count for one, count in row.counts.items()} for row in scoring.rows(all_heard)}
        for line in differences(before["rows"], now):
            say(line)


if __name__ == "__main__":
    main()
