"""How the recogniser's limits are chosen: the curve of wrong against refused, on evidence that a run has kept.

    python -m tests.bench.hearing --half tuning --keep tuning.pickle
    python -m tests.bench.limits tuning.pickle

For each kind of speech one limit is moved at a time; the others stay as they are in `recognisers/limits.py`. The
safe point is the one with the fewest WRONG; among equals, the one with the fewest refused.
"""

import argparse
import math
import pickle
from collections import Counter
from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

from assistant.adapters.answer_reader import answer_reader
from assistant.adapters.recognisers.judgement import judge
from assistant.adapters.recognisers.limits import GENERAL, Limits, LimitSet
from assistant.adapters.recognisers.manner import AS_IT_COMES, TRAINED
from assistant.adapters.recognisers.own_words import in_own_words
from assistant.spoken import ENGLISH
from tests.bench import scoring
from tests.bench.printing import say
from tests.bench.scoring import Heard, Outcome

STEPS: dict[str, tuple[float, ...]] = {
    "share": (0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 0.95, 0.98),
    "clear": (-3.0, -2.5, -2.0, -1.6, -1.4, -1.2, -1.0, -0.8, -0.6),
    "least": (-12.0, -10.0, -8.0, -7.0, -6.0, -5.0, -4.5, -4.0, -3.0),
    "ending": (-math.inf, -4.0, -3.0, -2.5, -2.0, -1.5, -1.0, -0.5),
    "longer": (0.01, 0.02, 0.03, 0.05, 0.1, 0.2, 0.3, 1.0),
    "gain": (-math.inf, 5.0, 8.0, 10.0, 12.0, 15.0, 20.0),
    "ratio": (-8.0, -6.0, -5.0, -4.0, -3.0, -2.0, -1.0, 0.0, 1.0),
}
MANNERS = {"general": AS_IT_COMES, "trained": TRAINED}
KINDS = {
    "number": "number",
    "doubtful": "number",
    "digits": "digits",
    "clear_command": "command",
    "command": "command",
    "faint_command": "command",
}
"""For each set of limits the kind of clips that it decides on; speech from outside is always counted."""


def again(all_heard: list[Heard], limits: LimitSet = GENERAL, *, own_words: bool = False) -> list[Heard]:
    """The same evidence, judged with these limits; with `own_words` the second reader has its say, as in an attempt."""
    weighed = ENGLISH.weighed_by(answer_reader())
    judged = []
    for heard in all_heard:
        if heard.evidence is None:
            judged.append(heard)
            continue
        expect = heard.clip.saying.expect
        verdict = judge(heard.evidence, expect, ENGLISH, limits)
        if own_words:
            verdict = in_own_words(verdict, heard.evidence, expect, weighed)
        judged.append(replace(heard, words=verdict.words, doubtful=verdict.doubtful))
    return judged


def curve(all_heard: list[Heard], limits: LimitSet, name: str, field: str) -> Iterator[str]:
    """One line for each value of one limit."""
    kept: Limits = getattr(limits, name)
    yield f"| {name}.{field} | right | asked | WRONG | refused | from outside: taken | asked |"
    yield "| --- | --- | --- | --- | --- | --- | --- |"
    wanted = [h for h in all_heard if scoring.is_outside(h) or h.clip.saying.kind == KINDS[name]]
    for value in sorted({*STEPS[field], getattr(kept, field)}):
        judged = again(wanted, replace(limits, **{name: replace(kept, **{field: value})}))
        counts = Counter(scoring.outcome(h) for h in judged if not scoring.is_outside(h))
        outside = Counter(scoring.outcome(h) for h in judged if scoring.is_outside(h))
        mark = " (now)" if value == getattr(kept, field) else ""
        shares = " | ".join(f"{100 * counts[one] / max(1, counts.total()):.1f}" for one in Outcome)
        yield f"| {value}{mark} | {shares} | {outside[Outcome.WRONG]} | {outside[Outcome.ASKED]} |"


def main() -> None:
    """Print every curve."""
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("kept", type=Path, nargs="+", help="what tests.bench.hearing --keep has written")
    parser.add_argument("--only", choices=tuple(KINDS), help="one set of limits")
    parser.add_argument("--manner", choices=tuple(MANNERS), default="general", help="whose limits are moved")
    args = parser.parse_args()
    # These files are our own; pickle must not read anybody else's.
    all_heard = [heard for path in args.kept for heard in pickle.loads(path.read_bytes())]  # noqa: S301
    say(f"{len(all_heard)} clips")
    for name in KINDS if args.only is None else (args.only,):
        for field in STEPS:
            say("")
            for line in curve(all_heard, MANNERS[args.manner].limits, name, field):
                say(line)


if __name__ == "__main__":
    main()
