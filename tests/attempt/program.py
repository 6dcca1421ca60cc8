"""The program as the tests start it: in this process for speed, or as a process of its own."""

import json
import subprocess
import sys
from dataclasses import dataclass

from assistant.cli.main import main


@dataclass(frozen=True)
class Ended:
    """How a run ended.

    Attributes:
        code: the exit code.
        lines: the JSON objects of standard output, or its text lines.
        console: standard error.
    """

    code: int
    lines: list
    console: str

    @property
    def last(self):
        return self.lines[-1]

    @property
    def results(self):
        return {line["id"]: line for line in self.last["results"]["steps"]}


def here(capsys, *arguments: str) -> Ended:
    """Run the program in this process; ``--json`` output is read."""
    try:
        code = main(arguments)
    except SystemExit as left:  # argparse ends like this
        code = int(left.code or 0)
    said = capsys.readouterr()
    return Ended(code, _lines(said.out), said.err)


def process(*arguments: str, typed: bytes = b"", timeout: float = 100) -> Ended:
    """Run the program as a process of its own, with these bytes on a pipe."""
    done = subprocess.run(
        [sys.executable, "-m", "assistant", *arguments], input=typed, capture_output=True, timeout=timeout
    )
    return Ended(done.returncode, _lines(done.stdout.decode()), done.stderr.decode())


def _lines(text: str) -> list:
    lines = text.splitlines()
    try:
        return [json.loads(line) for line in lines]
    except json.JSONDecodeError:
        return lines
