"""Throws words at the language core until time is up: ``python -m tests.spoken.fuzz --minutes 30``.

Sayings of the tables are cut, joined, doubled and sprinkled with strange characters. Whatever comes, the
answer must be a meaning, printable as JSON, and quick; a number that is taken must be one of a saying that
holds no foreign word.
"""

import argparse
import json
import random
import sys
import time

from assistant.cli.parse import as_text, parsed
from assistant.spoken import interpret, vocabulary
from assistant.spoken.expect import NumberExpected
from assistant.spoken.meaning import Answer, Kind

from .tables import frame, read

STRANGE = [
    "\x00",
    "\x1b[31m",
    "\u202e",
    "\u200b",
    "\ufeff",
    "\ud800",
    "\U0001f489",
    "\u0661",
    "\uff11",
    "\u00bd",
    "\u00b2",
    "1e9",
    "14:30",
    "12:5",
    "1,0,0",
    "..",
    "%",
    "/",
    "--",
    "'",
    '"',
    "[unk]",
    "9" * 50,
    "\u0301",
]
LONGEST_S = 0.5
"""Processor time that no utterance may take."""


def utterances(seed: int) -> "list[tuple[str, str]]":
    """A thousand utterances with what is expected."""
    chance = random.Random(seed)  # noqa: S311 - a test, and repeatable
    rows = [
        *read("spoken_numbers.tsv"),
        *read("spoken_phrases.tsv"),
        *read("spoken_names.tsv"),
    ]
    words = vocabulary(NumberExpected("mL/h"))
    made = []
    for _ in range(1000):
        row = chance.choice(rows)
        text = row.words
        for _ in range(chance.randrange(5)):
            at = chance.randrange(len(text) + 1)
            match chance.randrange(7):
                case 0:
                    text = text[:at] + chance.choice(STRANGE) + text[at:]
                case 1:
                    text = text[:at] + text[at + 1 + chance.randrange(4) :]
                case 2:
                    text = f"{text} {chance.choice(rows).words}"
                case 3:
                    text = f"{text[:at]} {chance.choice(words)} {text[at:]}"
                case 4:
                    text = text * chance.randrange(1, 4)
                case 5:
                    text = text[:at] + chr(chance.randrange(0x110000)) + text[at:]
                case 6:
                    text = " ".join(chance.choice(words) for _ in range(chance.randrange(1, 30)))
        made.append((text, chance.choice(rows).expect))
    return made


def attack(seed: int) -> float:
    """One thousand utterances; returns the longest time that one took, seconds."""
    longest = 0.0
    for text, expected in utterances(seed):
        expect, heard = frame(expected)
        began = time.process_time()
        meaning = interpret(text, expect, heard=heard)
        longest = max(longest, time.process_time() - began)
        found = parsed(text, meaning, expect)
        json.loads(json.dumps(found))
        as_text(found)
        if isinstance(meaning, Answer) and meaning.kind is Kind.NUMBER and "[unk]" in text:
            raise AssertionError(f"seed {seed}: {text!r} was taken as {meaning}")
    return longest


def main(arguments: list[str]) -> int:
    """Attack until the time is up; 1 if an utterance took too long."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--minutes", type=float, default=1.0)
    parser.add_argument("--seed", type=int, default=0)
    args = parser.parse_args(arguments)
    until = time.monotonic() + 60 * args.minutes
    seed, longest = args.seed, 0.0
    while time.monotonic() < until:
        longest = max(longest, attack(seed))
        seed += 1
    count = 1000 * (seed - args.seed)
    sys.stdout.write(
        f"{count:,} utterances, none broke anything; the slowest took {1000 * longest:.0f} ms of processor time.\n"
    )
    return 0 if longest < LONGEST_S else 1


if __name__ == "__main__":
    raise SystemExit(main(sys.argv[1:]))
