"""Draw a sample, try it, print what was noticed: see the package."""

import argparse
import json
import os
import random
import sys
import time
from collections import Counter
from pathlib import Path

from tests.mutate.bench import COLLECTING, brought_up_to_date, copied, digests, in_child, load_beforehand, run_tests
from tests.mutate.equivalent import digest_of, listed
from tests.mutate.mutants import Mutant, mutants
from tests.mutate.reach import Reach, learn

ROOMS = ("guide", "spoken", "orders", "record")
BESIDE = ("checklist", "attempt", "report", "cli")
"""Rooms of tests that reach the core from outside; what notices a fault there has noticed it."""
LEARNING_S = 3600
NOTICED, TIMED_OUT, SURVIVED, NOT_REACHED = "noticed", "timed out", "survived", "not reached"
UNSOUND = "noticed, and so is no fault at all"
LEFT = (SURVIVED, NOT_REACHED, UNSOUND)


class Trial:
    """Tries one mutant after the other.

    What a test notices counts only where the same tests pass without the fault: that is tried once for each test
    that notices something.

    Args:
        tree: the copy to work in.
        reach: which tests reach what.
        most_s: tests for one mutant, by the time that they take without a fault.
        also: files of tests that are run for every mutant.
    """

    def __init__(self, tree: Path, reach: Reach, most_s: float, also: list[str]) -> None:
        self._tree, self._reach, self._most_s, self._also = tree, reach, most_s, also
        self._holds: dict[str, bool] = {}

    def attempt(self, mutant: Mutant) -> dict[str, object]:
        """Put one fault in, run the tests that reach it, take it out again; the result as it is kept."""
        began = time.monotonic()
        reached = self._reach.tests(mutant.path, mutant.first, mutant.last)
        tests, expected_s = self._within_the_time(reached)
        limit_s = 20 + 5 * expected_s
        verdict, by = NOT_REACHED, ""
        # What a room's own tests notice need not wait for those of the others.
        also = sorted(self._also, key=lambda file: not file.startswith(f"tests/{mutant.room}/"))
        if tests or also:
            file = self._tree / mutant.path
            unharmed, times = file.read_bytes(), file.stat()
            try:
                file.write_text(mutant.text(), encoding="utf-8")
                failed = in_child(self._tree, lambda: run_tests(tests, also), limit_s)
            finally:
                file.write_bytes(unharmed)
                os.utime(file, ns=(times.st_atime_ns, times.st_mtime_ns))
            verdict = TIMED_OUT if failed is None else NOTICED if failed else SURVIVED
            by = failed or ""
            # Without a fault every file was collected when its reach was learned.
            if failed != "" and not by.startswith(COLLECTING) and not self._passes_without(tests, also, by, limit_s):
                verdict = UNSOUND
        return {
            "name": mutant.name,
            "room": mutant.room,
            "verdict": verdict,
            "by": by,
            "tests": len(tests),
            "untried": len(reached) - len(tests),
            "seconds": round(time.monotonic() - began, 1),
            "diff": mutant.diff(),
        }

    def _within_the_time(self, reached: list[str]) -> tuple[list[str], float]:
        """As many of these tests as may be run, and how long they take without a fault."""
        tests, expected_s = [], 0.0
        for test in reached:
            if tests and expected_s + self._reach.seconds[test] > self._most_s:
                break
            tests.append(test)
            expected_s += self._reach.seconds[test]
        return tests, expected_s

    def _passes_without(self, tests: list[str], also: list[str], by: str, limit_s: float) -> bool:
        if by not in self._holds or "::" not in by:
            file = by.partition("::")[0]
            if file in also:
                tests, also = [], also[: also.index(file) + 1]
            elif by in tests:
                tests = tests[: tests.index(by) + 1]
            self._holds[by] = in_child(self._tree, lambda: run_tests(tests, also), limit_s) == ""
        return self._holds[by]


def kept(file: Path) -> dict[str, dict[str, object]]:
    """The results so far, by name; of several for one mutant the last."""
    if not file.is_file():
        return {}
    lines = file.read_text(encoding="utf-8").splitlines()
    return {result["name"]: result for result in map(json.loads, lines)}


def show(results: list[dict[str, object]]) -> None:
    """One line a room, then every survivor; what is listed as equivalent and was not noticed is counted apart."""
    digest = {str(result["name"]): digest_of(str(result["diff"])) for result in results}
    known = listed()
    equivalent = {name for name, now in digest.items() if known.get(name) == now}
    say(f"{'room':<10}{'tried':>7}{'noticed':>9}{'by time':>9}{'equivalent':>12}{'left':>6}{'noticed of faults':>19}")
    for room in [*sorted({str(result["room"]) for result in results}), "all"]:
        of_room = [result for result in results if room in (result["room"], "all")]
        count = Counter(result["verdict"] for result in of_room)
        noticed = count[NOTICED] + count[TIMED_OUT]
        same = sum(result["verdict"] in LEFT and result["name"] in equivalent for result in of_room)
        share = f"{100 * noticed / max(1, len(of_room) - same):.1f} %"
        left = len(of_room) - noticed - same
        say(f"{room:<10}{len(of_room):>7}{noticed:>9}{count[TIMED_OUT]:>9}{same:>12}{left:>6}{share:>19}")
    for result in results:
        name = str(result["name"])
        if result["verdict"] in LEFT and name not in equivalent:
            ran = f"{result['tests']} tests, {result['untried']} more not run"
            say(f"\n{name}: {result['verdict']} ({ran}), {digest[name]}\n{result['diff']}")
        if result["verdict"] not in LEFT and name in equivalent:
            say(f"\n{name}: listed as equivalent, but {result['verdict']} by {result['by']}")


def stale(every: dict[str, Mutant], rooms: list[str]) -> list[str]:
    """Names that are listed as equivalent for what this program no longer has."""
    return [
        name
        for name, digest in listed().items()
        if name.split(".")[1] in rooms and (name not in every or digest_of(every[name].diff()) != digest)
    ]


def say(line: str) -> None:
    """Print a line at once."""
    sys.stdout.write(f"{line}\n")
    sys.stdout.flush()


def main() -> None:
    """List, draw, learn, try."""
    parser = argparse.ArgumentParser(prog="python -m tests.mutate", description="How many small faults are noticed.")
    parser.add_argument("--state", type=Path, required=True, metavar="FOLDER", help="results, and the copy to work in")
    parser.add_argument("--sample", type=int, default=0, metavar="N", help="a random sample instead of all")
    parser.add_argument("--seed", type=int, default=1, metavar="K", help="of the sample")
    parser.add_argument("--rooms", default=",".join(ROOMS), help="folders of assistant/, with commas between")
    parser.add_argument("--tests", default="", help="folders of tests/ instead of those of the rooms and some more")
    parser.add_argument("--tables", action="store_true", help="constants, tables and phrases, too")
    parser.add_argument("--only", nargs="+", metavar="NAME", help="these mutants alone, by the tests as they are now")
    parser.add_argument("--most", type=float, default=60, metavar="SECONDS", help="of tests for one mutant")
    args = parser.parse_args()
    rooms = args.rooms.split(",")
    folder = args.state.resolve()
    folder.mkdir(parents=True, exist_ok=True)
    tree, results = copied(folder), folder / "results.jsonl"
    every = {mutant.name: mutant for mutant in mutants(folder / "unharmed", rooms, tables=args.tables)}
    names = args.only or sorted(every)
    if args.sample and not args.only:
        names = random.Random(args.seed).sample(names, min(args.sample, len(names)))  # noqa: S311 - guards nothing
    if not (folder / "tests.json").is_file():
        places = args.tests.split(",") if args.tests else dict.fromkeys((*rooms, *BESIDE))
        tests = [f"tests/{place}" for place in places if (tree / "tests" / place).is_dir()]
        say(f"{len(every)} mutants; learning what {', '.join(tests)} reach ...")
        began = time.monotonic()
        known = digests(tree)
        in_child(tree, lambda: learn(tree, folder, rooms, tests, known) or "", LEARNING_S, writes_bytecode=True)
        say(f"learned in {time.monotonic() - began:.0f} s")
    reach = Reach(tree, folder)
    load_beforehand(reach.modules)
    trial = Trial(tree, reach, args.most, brought_up_to_date(tree, reach.files) if args.only else [])
    done = {} if args.only else kept(results)
    for number, name in enumerate(names, 1):
        if name in done:
            continue
        result = trial.attempt(every[name])
        with results.open("a", encoding="utf-8") as file:
            file.write(json.dumps(result) + "\n")
        say(f"{number} of {len(names)}: {name}: {result['verdict']} in {result['seconds']} s {result['by']}")
    tried = kept(results)
    show([tried[name] for name in names])
    for name in stale(every, rooms):
        say(f"\n{name}: listed as equivalent, but no longer what it was")


if __name__ == "__main__":
    main()
