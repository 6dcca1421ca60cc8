"""The verb `parse`: what it prints, in text and in JSON, and its exit codes."""

import json
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from assistant.cli.main import main
from assistant.spoken.tokens import LONGEST

Call = Callable[..., tuple[int, str, str]]
_ROOT = Path(__file__).parents[2]
RATE = "number mL/h"


@pytest.fixture
def call(capsys: pytest.CaptureFixture[str]) -> Call:
    """Run the program in this process; exit code, what it printed, what it complained of."""

    def run(*arguments: str) -> tuple[int, str, str]:
        try:
            code = main(arguments)
        except SystemExit as stopped:  # argparse: wrong usage or --help
            code = int(stopped.code or 0)
        out, err = capsys.readouterr()
        return code, out, err

    return run


def parsed(call: Call, words: str, expect: str, *options: str) -> dict[str, Any]:
    """The one JSON object that is printed; anything else fails the test."""
    code, out, err = call("parse", words, "--expect", expect, "--json", *options)
    assert (code, err, out.count("\n")) == (0, "", 1)
    found: dict[str, Any] = json.loads(out)
    assert list(found) == ["words", "answer", "readings", "reject", "readback"]
    return found


def test_prints_a_number_with_its_read_back(call: Call) -> None:
    """The object of the interface: values as decimal text, units as the trade prints them."""
    assert parsed(call, "a hundred and twenty-five mils an hour", RATE) == {
        "words": "a hundred and twenty-five mils an hour",
        "answer": {"kind": "number", "value": "125", "unit": "mL/h"},
        "readings": [],
        "reject": None,
        "readback": "I have one hundred and twenty five millilitres per hour. Is that right?",
    }


@pytest.mark.parametrize(
    ("words", "expect", "answer"),
    [
        ("yes", "confirm", {"kind": "confirm", "value": "yes", "unit": None}),
        ("no, that's wrong", "confirm", {"kind": "confirm", "value": "no", "unit": None}),
        ("done", "confirm", {"kind": "done", "value": "done", "unit": None}),
        ("what's my order?", "confirm", {"kind": "command", "value": "what is my order", "unit": None}),
        ("stop", RATE, {"kind": "command", "value": "stop", "unit": None}),
        ("eighty three point three", RATE, {"kind": "number", "value": "83.3", "unit": "mL/h"}),
        ("83.30 mL/hr", RATE, {"kind": "number", "value": "83.3", "unit": "mL/h"}),
        ("one litre", "number mL", {"kind": "number", "value": "1", "unit": "L"}),
        ("half an hour", "number min", {"kind": "number", "value": "0.5", "unit": "h"}),
        ("5 mcg/kg/min", "any", {"kind": "number", "value": "5", "unit": "mcg/kg/min"}),
        ("forty drops a minute", "number drops per minute", {"kind": "number", "value": "40", "unit": "gtt/min"}),
        ("the wrist hurts", "text", {"kind": "text", "value": "the wrist hurts", "unit": None}),
    ],
)
def test_prints_answers(call: Call, words: str, expect: str, answer: dict[str, str | None]) -> None:
    """Every kind of answer has its kind, its value and its unit; nothing is rejected."""
    found = parsed(call, words, expect)
    assert (found["answer"], found["readings"], found["reject"]) == (answer, [], None)
    assert found["readback"]


def test_prints_both_readings(call: Call) -> None:
    """What could be two numbers is no answer and no rejection: it is asked about."""
    found = parsed(call, "twelve fifty", "number mL")
    assert (found["answer"], found["readings"], found["reject"]) == (None, ["1250", "12.5"], None)
    assert found["readback"] == ("That could be one two five zero or one two point five. Please say it digit by digit.")


@pytest.mark.parametrize(
    ("words", "expect", "reject"),
    [
        ("", RATE, "nothing was said"),
        ("bananas", RATE, "unknown words"),
        ("hundred", RATE, "not a number"),
        ("one twenty five milligrams", RATE, "wrong unit"),
        ("fifty fifteen", RATE, "two numbers"),
        ("ten thousand", RATE, "out of range"),
        ("fifteen", "digits mL/h", "digits wanted"),
        ("x" * 401, RATE, "too long"),
        ("yes", RATE, "not an answer here"),
        ("five", "confirm", "not an answer here"),
    ],
)
def test_prints_refusals(call: Call, words: str, expect: str, reject: str) -> None:
    """Each reason by its name, with a sentence to say."""
    found = parsed(call, words, expect)
    assert (found["answer"], found["readings"], found["reject"]) == (None, [], reject)
    assert found["readback"].endswith(".")


def test_a_wrong_unit_is_told_the_right_one(call: Call) -> None:
    """The sentence names the unit that is needed, in words."""
    found = parsed(call, "125 mg", RATE)
    assert found["readback"] == "That is not the unit I need here. I need a number in millilitres per hour."


def test_figures_that_were_heard_are_not_digits(call: Call) -> None:
    """Typed figures show every digit; those of a recogniser do not show how they were said."""
    assert parsed(call, "15", "digits mL/h")["answer"] is not None
    assert parsed(call, "15", "digits mL/h", "--heard")["reject"] == "digits wanted"


def test_a_number_that_sounds_like_another_is_no_answer_when_heard(call: Call) -> None:
    """As in an attempt: the digits are asked for, and practice offers both."""
    found = parsed(call, "fifteen", RATE, "--heard")
    assert (found["answer"], found["readings"], found["reject"]) == (None, ["15", "50"], None)
    assert found["readback"] == "Was that one five, or five zero? Say the digits, please."
    assert parsed(call, "fifteen", RATE)["answer"] == {"kind": "number", "value": "15", "unit": "mL/h"}


@pytest.mark.parametrize(
    ("words", "text"),
    [
        ("seventy five", "number: 75 mL/h. I have seventy five millilitres per hour. Is that right?\n"),
        ("again", "command: again. Again.\n"),
        (
            "fifty fifteen",
            "not taken: two numbers. I heard two numbers. Please say one. I need a number in millilitres per hour.\n",
        ),
    ],
)
def test_prints_text_for_people(call: Call, words: str, text: str) -> None:
    """Without --json it is one line to read."""
    assert call("parse", words, "--expect", RATE) == (0, text, "")


def test_takes_words_without_quotation_marks(call: Call) -> None:
    """Several arguments are one utterance."""
    code, out, _ = call("parse", "one", "twenty", "five", "--expect", RATE)
    assert code == 0 and out.startswith("number: 125 mL/h.")


@pytest.mark.parametrize("expect", ["", "numbers", "number", "number furlongs", "confirm yes", "\x1b[31m", "x" * 9999])
def test_refuses_what_cannot_be_expected(call: Call, expect: str) -> None:
    """One sentence with what to write, no traceback, and the exit code of wrong usage."""
    code, out, err = call("parse", "five", "--expect", expect)
    assert (code, out, err.count("\n")) == (2, "", 1)
    assert "Use" in err and "\x1b" not in err and len(err) < 300


def test_wants_its_arguments(call: Call) -> None:
    """Without words or without an expectation it is wrong usage."""
    assert call("parse", "five")[0] == 2
    assert call("parse", "--expect", RATE)[0] == 2


def test_control_characters_reach_no_terminal(call: Call) -> None:
    """Words that would move a cursor are refused, and nothing of them is printed raw."""
    code, out, _ = call("parse", "five\x1b[2J\x07", "--expect", RATE)
    assert code == 0 and out.isprintable() is False and out.rstrip("\n").isprintable()
    found = parsed(call, "five\x1b[2J", RATE)
    assert found["reject"] == "unknown words"


def test_reads_lines_of_any_bytes() -> None:
    """One answer a line, in order, whatever comes: bytes that are no text, an endless line, no last newline."""
    lines = [b"one twenty five", b"\xff\xfe five", b"", b"a" * 10_000_000, b"\x00\x1b", b"yes"]
    done = subprocess.run(
        [sys.executable, "-m", "assistant", "parse", "-", "--expect", RATE, "--json"],
        input=b"\n".join(lines),
        capture_output=True,
        cwd=_ROOT,
        timeout=60,
    )
    found = [json.loads(line) for line in done.stdout.decode("ascii").splitlines()]
    assert (done.returncode, done.stderr) == (0, b"")
    assert [one["answer"]["value"] if one["answer"] else one["reject"] for one in found] == [
        "125",
        "unknown words",
        "nothing was said",
        "too long",
        "unknown words",
        "not an answer here",
    ]
    assert all(len(one["words"]) <= LONGEST for one in found)


LINES = [
    ("the clamp's shut", "done: Close the roller clamp.", {"kind": "done", "value": "done", "unit": None}),
    ("start now", "start: Scrub the hub for 15 seconds.", {"kind": "done", "value": "done", "unit": None}),
    ("there's a bubble", "question: Is the line free of air?", {"kind": "confirm", "value": "no", "unit": None}),
    ("no bubbles", "choice: none, some", {"kind": "choice", "value": "none", "unit": None}),
    ("it's leaking", "done: Close the roller clamp.", {"kind": "trouble", "value": "a leak", "unit": None}),
]


@pytest.mark.parametrize(("words", "expect", "answer"), LINES)
def test_answers_to_a_line_of_a_checklist(call: Call, words: str, expect: str, answer: dict[str, str | None]) -> None:
    """What may be said of a step, in its own words."""
    assert parsed(call, words, expect)["answer"] == answer


@pytest.mark.parametrize("words", ["is it shut", "almost shut", "okay", "I didn't", "shut?", "close the roller clamp"])
def test_what_closes_no_step(call: Call, words: str) -> None:
    """A question, a doubt, an acknowledgement, the line said after the assistant."""
    assert parsed(call, words, "done: Close the roller clamp.")["answer"] in (
        None,
        {"kind": "confirm", "value": "no", "unit": None},
    )
