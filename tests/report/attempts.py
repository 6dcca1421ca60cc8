"""Records for the tests of the report: of the real program, and written by hand where the program writes none such."""

import contextlib
import functools
import io
import shutil
import tempfile
from collections.abc import Mapping
from datetime import UTC, datetime, timedelta
from pathlib import Path

from assistant.cli.main import main
from assistant.cli.report import report_of
from assistant.record.file import RecordFile
from assistant.report.content import Report

CHECKLISTS = Path(__file__).parents[2] / "checklists"
START = datetime(2026, 11, 25, 8, 0, tzinfo=UTC)


def run(*arguments: object) -> tuple[int, str, str]:
    """The program in this process: exit code, standard output, standard error."""
    out, console = io.StringIO(), io.StringIO()
    with contextlib.redirect_stdout(out), contextlib.redirect_stderr(console):
        try:
            code = main([str(one) for one in arguments])
        except SystemExit as left:  # argparse ends like this
            code = int(left.code or 0)
    return code, out.getvalue(), console.getvalue()


@functools.cache
def _content(*arguments: str) -> bytes:
    with tempfile.TemporaryDirectory() as folder:
        run("demo", "--json", "--records", folder, *arguments)
        (path,) = Path(folder).glob("*.jsonl")
        return path.read_bytes()


def attempt(folder: Path, *arguments: str, name: str = "attempt.jsonl") -> Path:
    """The record of a demonstration with these arguments (made once, then copied)."""
    path = folder / name
    path.write_bytes(_content(*arguments))
    return path


@functools.cache
def report(*arguments: str) -> Report:
    """The report of such a demonstration."""
    with tempfile.TemporaryDirectory() as folder:
        return report_of(attempt(Path(folder), *arguments), folder)


def at(seconds: int) -> str:
    """UTC time this many seconds after the start."""
    return (START + timedelta(seconds=seconds)).isoformat(timespec="microseconds")


def written(path: Path, words: str, *, sealed: bool = True, entries: int = 1) -> Path:
    """A record that holds `words` wherever free text can stand, written by the real thing."""
    opening = {"kind": "opened", "at": at(0), "learner": words, "checklist": words, "order": words, "mode": "check-off"}
    with RecordFile.create(path, opening) as record:
        for number in range(1, entries + 1):
            record.append(entry(number, words))
        if sealed:
            record.seal({"kind": "finished", "at": at(5 * entries), "outcome": "not passed", "results": results(words)})
    return path


def entry(number: int, words: str) -> dict[str, object]:
    """One answer, as the program records it."""
    return {
        "kind": "typed",
        "at": at(5 * number),
        "source": "typed",
        "step": "one",
        "state": "asking",
        "words": words,
        "meaning": {"kind": "text", "value": words},
        "verdict": "not applicable",
        "reason": words,
    }


def results(words: str) -> Mapping[str, object]:
    """A result with these words in each of its texts."""
    step = {
        **{"id": "one", "say": words, "critical": True, "gate": False, "kind": "number", "ending": "wrong"},
        **{"first": words, "final": words, "expected": words, "slips": [words], "cues": [words], "reason": words},
    }
    return {
        "steps": [step],
        "unaided": 0,
        "applicable": 1,
        "score_percent": "0",
        "passed": False,
        "failures": [words],
    }


def torn(path: Path) -> Path:
    """The record as a crash leaves it: unsealed, its last line cut short."""
    lines = path.read_bytes().splitlines(keepends=True)
    path.write_bytes(b"".join(lines[:-2]) + lines[-2][:40])
    return path


def unsealed(path: Path, entries: int = 30) -> Path:
    """The record as a killed process leaves it: whole lines, no seal."""
    path.write_bytes(b"".join(path.read_bytes().splitlines(keepends=True)[:entries]))
    return path


def changed(path: Path) -> Path:
    """The record after somebody turned a slip into a right answer, in the line that tells it."""
    text = path.read_bytes()
    assert b'"kept":"833 mL/h"' in text
    path.write_bytes(text.replace(b'"kept":"833 mL/h"', b'"kept":"83.3 mL/h"', 1))
    return path


def copied(path: Path, to: Path) -> Path:
    """A copy."""
    return Path(shutil.copyfile(path, to))
