"""How much memory a process takes in which a recogniser listens.

    python -m tests.bench.memory

A process each: the model as published by itself; the one that was trained for the bench; and that one with the other
beside it, which is loaded when it is first asked. Each hears a number, digits and a yes; who has the published model
hears free words too.
"""

import argparse
import resource
import subprocess
import sys

from tests.bench.printing import say

WAYS = ("published alone", "trained alone", "both")


def listen(way: str) -> int:
    """Listen in this process; its largest memory so far, MB."""
    # Only here: the process that asks has to stay small, for its children begin with its size.
    import numpy as np

    from assistant.adapters.recognisers import bundled
    from assistant.adapters.recognisers.trained import open_trained
    from assistant.ports import SAMPLE_RATE_HZ
    from assistant.spoken.expect import ConfirmExpected, NumberExpected, TextExpected

    ear = bundled.open_bundled() if way == "published alone" else open_trained()
    hiss = np.random.default_rng(0).normal(scale=0.05, size=4 * SAMPLE_RATE_HZ) * 32_767
    block = hiss.astype("<i2").tobytes()
    expected = [NumberExpected("mL/h"), NumberExpected("mL", digits_only=True), ConfirmExpected()]
    if way != "trained alone":
        expected.append(TextExpected())
    for expect in expected * 2:
        utterance = ear.begin(expect)
        utterance.feed(block)
        utterance.finish()
    ear.close()
    return resource.getrusage(resource.RUSAGE_SELF).ru_maxrss // 1024


def main() -> None:
    """Run the bench."""
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--one", choices=WAYS, help="listen in this very process, and print MB")
    args = parser.parse_args()
    if args.one:
        say(str(listen(args.one)))
        return
    say("| a process that listens | MB at most |")
    say("| --- | --- |")
    for way in WAYS:
        command = [sys.executable, "-m", "tests.bench.memory", "--one", way]
        say(f"| {way} | {subprocess.run(command, check=True, capture_output=True, text=True).stdout.strip()} |")


if __name__ == "__main__":
    main()
