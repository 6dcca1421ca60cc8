"""Records of earlier versions verify, and are reported as they were sealed."""

import json
import shutil
from pathlib import Path

import pytest

from tests.attempt.program import here

EARLIER = Path(__file__).parents[1] / "data" / "earlier" / "saline-lock.jsonl"
"""A check-off of a simulated learner, sealed before results told of what was laid out, or who saw what."""


@pytest.fixture
def record(tmp_path: Path) -> Path:
    """A copy, for whoever opens it with a lock."""
    return Path(shutil.copy(EARLIER, tmp_path))


def test_an_earlier_record_holds(capsys, record: Path) -> None:
    """Nothing in it is asked for that it could not know."""
    assert here(capsys, "verify", str(record)).code == 5, "whole, unsigned and never seen here"


def test_an_earlier_record_is_reported_as_it_was_sealed(capsys, record: Path) -> None:
    """Its outcome counts; what it does not tell is left empty, and nobody has to see anything afterwards."""
    ended = here(capsys, "report", str(record), "--json")
    report = ended.last
    assert report["outcome"] == "passed"
    assert (report["laid_out"], report["not_laid_out"], report["to_see"]) == ([], [], [])
    assert {step["evidence"] for step in report["steps"]} == {""}


@pytest.mark.parametrize("ending", ["html", "csv", "json", "pdf"])
def test_an_earlier_record_in_every_form(capsys, record: Path, tmp_path: Path, ending: str) -> None:
    """Pages, paper and tables are made of it."""
    made = tmp_path / f"report.{ending}"
    assert here(capsys, "report", str(record), "-o", str(made)).code == 0
    assert made.stat().st_size > 1000
    if ending == "json":
        assert json.loads(made.read_text(encoding="utf-8"))["outcome"] == "passed"
