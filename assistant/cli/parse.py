"""`checkoff parse WORDS --expect EXPECT`: what the words mean, as an attempt would take them."""

import argparse
import sys
from collections.abc import Iterator
from decimal import Decimal
from io import TextIOWrapper
from typing import TypedDict

from assistant.adapters.answer_reader import answer_reader
from assistant.cli.printing import say_line, write_json
from assistant.cli.verbs import Subparsers, add_verb
from assistant.guide import Heard, Typed
from assistant.one_step import NOW, OneStep, Reply
from assistant.spoken import ENGLISH, parse_expect
from assistant.spoken.tokens import LONGEST
from assistant.text import shown


class AnswerShown(TypedDict):
    """An answer, as it is printed."""

    kind: str
    value: str
    unit: str | None


class Parsed(TypedDict):
    """What words mean, as it is printed."""

    words: str
    answer: AnswerShown | None
    readings: list[str]
    reject: str | None
    readback: str


_EXAMPLES = """\
  checkoff parse "83.3 mL/hr" --expect "number mL/h"
  checkoff parse one two five --expect "number mL/h"
  checkoff parse fifteen --expect "number mL/h" --heard    as if a recogniser had heard it
  checkoff parse "that is right" --expect confirm --json
  checkoff parse "the clamp's shut" --expect "done: Close the roller clamp."
  checkoff parse "no bubbles" --expect "choice: none, some"
  checkoff parse - --expect any < sayings.txt              one utterance a line

A refusal is an answer too: the exit code is 0 whenever the words could be looked at."""


def add_parser(subparsers: Subparsers) -> None:
    """Add the verb `parse`."""
    parser = add_verb(
        subparsers,
        "parse",
        "Interprets the words as an attempt would, where this kind of answer is expected.",
        _EXAMPLES,
    )
    parser.add_argument(
        "words", nargs="+", metavar="WORDS", help="what was said or typed; - reads one utterance a line"
    )
    parser.add_argument(
        "--expect",
        required=True,
        metavar="EXPECT",
        help='"confirm", "any", "text", "number" with a unit ("number mL/h"), or a line of a checklist behind what it'
        ' asks for: "done: Close the roller clamp.", "start: ...", "question: ...", "choice: none, some"',
    )
    parser.add_argument(
        "--heard",
        action="store_true",
        help="the words come from a recogniser: figures do not count as said digit by digit",
    )
    parser.add_argument("--json", action="store_true", help="one JSON object per utterance")
    parser.set_defaults(run=run)


def run(args: argparse.Namespace) -> int:
    """Print what each utterance means; 0.

    Raises:
        UsageError: EXPECT is none that is known.
    """
    step = OneStep(parse_expect(args.expect), ENGLISH.weighed_by(answer_reader()))
    for words in _typed_lines() if args.words == ["-"] else [" ".join(args.words)]:
        found = parsed(words, step.reply(Heard(NOW, words) if args.heard else Typed(NOW, words)))
        if args.json:
            write_json(found)
        else:
            say_line(shown(as_text(found)))
    return 0


def _typed_lines() -> Iterator[str]:
    """The lines of standard input; bytes that are no text become a mark that nothing means."""
    if isinstance(sys.stdin, TextIOWrapper):
        sys.stdin.reconfigure(encoding="utf-8", errors="replace")
    for line in sys.stdin:
        yield line.rstrip("\r\n")


def parsed(words: str, reply: Reply) -> Parsed:
    """What words mean, in the form in which it is printed.

    Args:
        words: as said or typed; printed no further than the longest utterance, and as text that any program
            can read.
        reply: what an attempt would make of them.
    """
    answer = reply.answer
    return {
        "words": words[:LONGEST].encode("utf-8", "replace").decode("utf-8"),
        "answer": None
        if answer is None
        else {
            "kind": answer.kind.value,
            "value": f"{answer.value:f}" if isinstance(answer.value, Decimal) else str(answer.value),
            "unit": answer.unit,
        },
        "readings": [f"{reading:f}" for reading in reply.readings],
        "reject": None if reply.reject is None else reply.reject.value,
        "readback": reply.readback,
    }


def as_text(found: Parsed) -> str:
    """The same for people, on one line."""
    answer = found["answer"]
    if answer is not None:
        amount = f"{answer['value']} {answer['unit']}" if answer["unit"] else answer["value"]
        text = f"{answer['kind']}: {amount}"
    elif found["readings"]:
        text = f"could be: {' or '.join(found['readings'])}"
    else:
        text = f"not taken: {found['reject']}"
    return f"{text}. {found['readback']}".strip()
