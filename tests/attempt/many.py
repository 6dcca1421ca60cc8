"""A hundred seeds with every slip and none: ``python -m tests.attempt.many [COUNT]``.

Prints one line a slip: attempts, exit codes, and how often anything but the slip's own step was disturbed.
"""

import contextlib
import io
import json
import sys
import tempfile
from collections import Counter

from assistant.checklist.load import load
from assistant.cli.main import main
from assistant.learner import Slip


def run(slip: Slip | None, seed: int, folder: str) -> tuple[int, int]:
    """Exit code, and how many steps were disturbed."""
    out = io.StringIO()
    erring = ["--slip", slip.value] if slip else []
    with contextlib.redirect_stdout(out), contextlib.redirect_stderr(io.StringIO()):
        code = main(["demo", "--json", "--seed", str(seed), "--records", folder, *erring])
    steps = json.loads(out.getvalue().splitlines()[-1])["results"]["steps"]
    return code, sum(line["ending"] != "done unaided" or line["expired"] > 0 for line in steps)


def report(count: int) -> None:
    """Run them all and print the table."""
    reopened = {len(step.expires.reopen) for step in load("primary-and-secondary").steps if step.expires}
    for slip in (None, *Slip):
        codes: Counter[int] = Counter()
        astray = 0
        with tempfile.TemporaryDirectory() as folder:
            for seed in range(count):
                code, disturbed = run(slip, seed, folder)
                codes[code] += 1
                wanted = {0} if slip is None else reopened if slip is Slip.TOO_SLOW else {1}
                astray += disturbed not in wanted
        name = slip.value if slip else "none"
        print(f"{name:14} attempts {count}  exit codes {dict(codes)}  other steps disturbed {astray}")  # noqa: T201


if __name__ == "__main__":
    report(int(sys.argv[1]) if len(sys.argv) > 1 else 100)
