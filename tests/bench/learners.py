"""Learners of every kind at every checklist with every fault it can have: who passes?

    python -m tests.bench.learners [COUNT] [--seed N] [--processes 2]

Each attempt is a check-off at an order that was drawn for the checklist, without a fault or with one of a kind that
a step of the checklist can find, with an instructor who marks what has to be seen. The learner answers from what is
laid out, not from the order. Prints a table by fault and one by checklist, and whatever breaks these rules, with the
seed that does it again:

* an attentive learner passes: puts it right, or stops for cause;
* one who is unaware, or says yes to everything, never passes where a fault is;
* one who is over-cautious never passes without the instructor's judgement, unless nothing was there to be imagined;
* without a fault everybody passes but the over-cautious, and the careless where a critical number was held;
* no answer is taken as agreeing that contradicts what is laid out at that moment;
* whatever was missed is named in the result, and what was found is not called missed.
"""

import argparse
import sys
from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date
from functools import lru_cache
from itertools import count
from multiprocessing import Pool

from assistant.checklist.load import available, load
from assistant.checklist.model import Checklist, WaitAsked
from assistant.errors import UsageError
from assistant.guide import Guide, Mode, Opened, Outcome, Papers, State
from assistant.guide.bench import Fate
from assistant.learner import Character, SimulatedLearner
from assistant.orders.draw import LEVELS, draw, wanted_by
from assistant.orders.draw_for import keys_asked
from assistant.orders.fault import Truth
from assistant.orders.load import load_order
from assistant.orders.planting import FAULTS, FaultKind, Findable
from assistant.orders.plausible import table
from assistant.orders.solve import answer_key
from assistant.orders.truth import truth_of
from assistant.spoken import ENGLISH
from tests.bench.printing import say
from tests.guide.lived import Lived

DAY = date(2031, 5, 6)
MOST_TURNS = 3000
NO_FAULT = "none"
PASSES = frozenset({Outcome.PASSED, Outcome.STOPPED_FOR_CAUSE})


@dataclass(frozen=True)
class Trial:
    """One attempt to be lived: a checklist by name, a kind of fault or `NO_FAULT`, a learner, a seed."""

    checklist: str
    fault: str
    character: Character
    seed: int


@dataclass(frozen=True)
class Ended:
    """How a trial ended.

    Attributes:
        trial: which.
        outcome: of the attempt.
        passed: it counts as passed.
        judged: the result leaves something to the instructor.
        breaches: rules that it broke, in words.
    """

    trial: Trial
    outcome: Outcome
    passed: bool
    judged: bool
    breaches: tuple[str, ...]


@lru_cache(maxsize=64)
def checklist_of(name: str) -> Checklist:
    """A checklist of the library."""
    return load(name)


@lru_cache(maxsize=4096)
def papers_of(name: str, fault: str, seed: int) -> Papers | None:
    """The papers of a trial with their truth; None where the checklist cannot find that fault in drawn orders."""
    checklist = checklist_of(name)
    kind: FaultKind | None = None if fault == NO_FAULT else fault  # type: ignore[assignment]
    wanted = wanted_by(keys_asked(checklist), load_order(checklist.order))
    first = LEVELS[seed % len(LEVELS)]
    for level in (first, *(level for level in LEVELS if level != first)):
        try:
            (order,) = draw(
                wanted, seed=seed, level=level, count=1, day=DAY, fault=kind, findable=Findable.by(checklist)
            )
            break
        except UsageError:
            continue
    else:
        return None
    return Papers(checklist, order.sentence(), answer_key(order), ENGLISH, truth_of(order, table()))


def live(trial: Trial, papers: Papers) -> Ended:
    """Live one trial, and hold it against the rules."""
    learner = SimulatedLearner(
        papers.checklist,
        papers.key,
        None,
        trial.seed,
        truth=papers.truth,
        character=trial.character,
        with_instructor=True,
    )
    lived = Lived(Guide(papers, Mode.CHECK_OFF, {}))
    lived.give(Opened(lived.at))
    breaches = list(turns(lived, learner, papers.truth))
    results = lived.guide.results()
    outcome = lived.outcome or Outcome.NOT_COMPLETED
    if lived.outcome is None:
        breaches.append("it does not come to an end")
    ended = Ended(
        trial,
        outcome,
        results.passed and outcome in PASSES,
        bool(results.to_judge) or (outcome is Outcome.STOPPED and bool(results.not_laid_out)),
        (),
    )
    breaches += _broken(ended, papers.truth)
    if ended.passed and any(line.critical and line.slips for line in results.steps):
        breaches.append("passes though a critical answer was held")
    for fault in results.faults:
        if fault.fate is Fate.MISSED and not any(fault.what in failure for failure in results.failures):
            breaches.append(f"missed and not named: {fault.what}")
        if fault.fate is Fate.MISSED and trial.character is Character.ATTENTIVE:
            breaches.append(f"found and called missed: {fault.what}")
    return Ended(trial, ended.outcome, ended.passed, ended.judged, tuple(breaches))


def turns(lived: Lived, learner: SimulatedLearner, truth: Truth) -> Iterator[str]:
    """Answer until the end; yield each answer that was taken as agreeing though something else is laid out."""
    steps = lived.guide.papers.checklist.steps
    for _ in range(MOST_TURNS):
        if lived.outcome is not None:
            return
        progress = lived.guide.progress
        step = steps[progress.cursor]
        if progress.state is State.WAITING and isinstance(step.expect, WaitAsked):
            lived.wait(step.expect.seconds)
            continue
        lived.type(learner.reply(progress).words)
        entry = lived.entries[-1]
        if entry.get("verdict") == "agrees":
            there = [fault.what for fault in truth.seen_at(step) if fault.key not in learner.has_put_right]
            if there:
                yield f"taken as agreeing at {step.id}: {there[0]}"


def _broken(ended: Ended, truth: Truth) -> Iterator[str]:
    """The rule that a trial breaks by how it ended."""
    character, faulty = ended.trial.character, bool(truth.faults)
    match character:
        case Character.ATTENTIVE:
            if not ended.passed:
                yield f"the attentive does not pass: {ended.outcome.value}"
        case Character.UNAWARE | Character.YES_SAYER:
            if faulty and ended.passed:
                yield f"passes with a fault: {ended.outcome.value}"
            if not faulty and not ended.passed:
                yield f"does not pass without a fault: {ended.outcome.value}"
        case Character.OVER_CAUTIOUS:
            imagines = any(
                step.looks_at and not step.applies and not truth.seen_at(step)
                for step in checklist_of(ended.trial.checklist).steps
            )
            if not faulty and imagines and (ended.passed or not ended.judged):
                yield f"the over-cautious is not told apart: {ended.outcome.value}"


def trials(first_seed: int) -> Iterator[Trial]:
    """Every checklist by every fault by every learner, by seeds without end."""
    for seed in count(first_seed):
        for name in sorted(available()):
            for fault in (NO_FAULT, *FAULTS):
                for character in Character:
                    yield Trial(name, fault, character, seed)


def run(trial: Trial) -> Ended | None:
    """One trial; None where the checklist cannot find that fault."""
    papers = papers_of(trial.checklist, trial.fault, trial.seed)
    return None if papers is None else live(trial, papers)


def _by_fault(one: Ended) -> tuple[str, str]:
    return one.trial.fault, one.trial.character.value


def _by_checklist(one: Ended) -> tuple[str, str]:
    return one.trial.checklist, NO_FAULT if one.trial.fault == NO_FAULT else "a fault"


def tables(ends: list[Ended]) -> Iterator[str]:
    """How many attempts ended how: by fault and learner, then by checklist."""
    outcomes = ("passed", "stopped for cause", "complete by own report", "not passed", "stopped")
    for title, key in (
        ("fault, learner", _by_fault),
        ("checklist, fault or not", _by_checklist),
    ):
        counts: dict[tuple[str, str], Counter[str]] = {}
        for one in ends:
            counts.setdefault(key(one), Counter())[one.outcome.value] += 1
        yield f"{title:42}{'n':>8}" + "".join(f"{name:>24}" for name in outcomes)
        for (first, second), found in sorted(counts.items()):
            row = "".join(f"{found[name]:>24}" for name in outcomes)
            yield f"{first + ', ' + second:42}{found.total():>8}{row}"
        yield ""


def main(words: list[str] | None = None) -> int:
    """Live so many attempts; 0 where no rule was broken."""
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("count", type=int, nargs="?", default=20_000)
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--processes", type=int, default=2)
    args = parser.parse_args(words)
    ends: list[Ended] = []
    with Pool(args.processes) as pool:
        for ended in pool.imap(run, trials(args.seed), chunksize=len(Character)):
            if ended is None:
                continue
            ends.append(ended)
            if len(ends) % 1000 == 0:
                sys.stderr.write(f"{len(ends)} attempts\n")
            if len(ends) >= args.count:
                pool.terminate()
                break
    for line in tables(ends):
        say(line)
    broken = [one for one in ends if one.breaches]
    for one in broken[:40]:
        trial = one.trial
        say(f"{trial.checklist}, {trial.fault}, {trial.character.value}, seed {trial.seed}: {'; '.join(one.breaches)}")
    say(f"{len(ends)} attempts; {len(broken)} broke a rule.")
    return 1 if broken else 0


if __name__ == "__main__":
    sys.exit(main())
