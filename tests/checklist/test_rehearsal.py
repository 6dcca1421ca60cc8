"""Reading a checklist through: every line as it sounds, and a time that adds up."""

import argparse
import json
from pathlib import Path

import pytest

from assistant.checklist.load import load
from assistant.checklist.rehearsal import rehearse
from assistant.cli.rehearse import add_parser
from tests.checklist.papers import changed, written


def rehearsed(*arguments: str) -> int:
    """Run the verb with these arguments."""
    parser = argparse.ArgumentParser()
    add_parser(parser.add_subparsers())
    parsed = parser.parse_args(["rehearse", *arguments])
    return int(parsed.run(parsed))


def test_every_step_is_read_as_it_sounds(tmp_path: Path) -> None:
    """Figures and units are words; what is expected is told in words."""
    text = changed("Start the pump.", "Give 1,000 mL.")
    lines = rehearse(load(written(tmp_path, text)))
    assert [line.number for line in lines] == [1, 2, 3]
    assert lines[2].spoken == "Give one thousand millilitres."
    assert [line.expected for line in lines] == ["yes", "a number in millilitres per hour", "done"]


def test_a_wait_counts_in_the_time(tmp_path: Path) -> None:
    """A step that waits 60 seconds longer takes 60 seconds more."""
    long, short = (
        rehearse(
            load(
                written(
                    tmp_path,
                    changed(
                        'say = "Start the pump."',
                        f'say = "Wait."\nexpect = {{ kind = "wait", seconds = {seconds} }}',
                    ),
                )
            )
        )[2].seconds
        for seconds in (75, 15)
    )
    assert long - short == 60


def test_the_printout_and_its_longer_form(capsys: pytest.CaptureFixture[str]) -> None:
    """Cautions first, parts as headings, marks and expectation beside each line, the time at the end."""
    assert rehearsed("secondary-line") == 0
    short = capsys.readouterr().out
    assert short.index("Caution:") < short.index("Order and first check")
    assert "Open the clamp on the secondary set fully.  [critical; done]" in short
    assert "[critical; gate; yes]" in short
    assert "46 steps, about" in short
    assert rehearsed("secondary-line", "--all") == 0
    long = capsys.readouterr().out
    assert "after 180 seconds of waiting: You waited too long" in long
    assert long.count("     source: ") > 32
    assert "why: " not in short


def test_json_has_one_object_a_step(capsys: pytest.CaptureFixture[str]) -> None:
    """Programs read the line, its speech, what is expected and the time."""
    assert rehearsed("primary-line", "--json") == 0
    rows = [json.loads(line) for line in capsys.readouterr().out.splitlines()]
    assert [row["id"] for row in rows] == [step.id for step in load("primary-line").steps]
    assert rows[3]["speech"].startswith("Clean your hands with hand rub for twenty seconds.")
    assert rows[3]["seconds"] > 20
