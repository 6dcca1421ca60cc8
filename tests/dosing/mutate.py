"""How many small faults in the arithmetic the tests notice: ``python -m tests.dosing.mutate``.

Copies the room with its tests into a fresh folder and lets mutmut change it there, one small fault at a time.
The slow witnesses (properties, published examples through the command line) are left out: what is counted is
what the plain tables of the room notice by themselves. The two modules that hold nothing but a table are not
changed: they are worked out while they load, before a fault can be switched on. Needs the extra ``mutation``:
``python -m pip install -e ".[test,mutation]"``.
"""

import argparse
import os
import random
import re
import shutil
import subprocess
import sys
import tempfile
from collections import Counter
from pathlib import Path

HOUSE = Path(__file__).parents[2]
LEFT_OUT = ("test_properties.py", "bench.py", "mutate.py")
"""Slow, or of chance: a fault must be noticed by a table."""
SETTINGS = """

[tool.mutmut]
source_paths = ["assistant/dosing"]
pytest_add_cli_args_test_selection = ["tests/dosing"]
also_copy = ["assistant", "checklists", "tests"]
do_not_mutate = ["*/formula_table.py", "*/unit_table.py"]
"""
_NAME = re.compile(r"^\s*(?P<name>assistant\.dosing\.\S+__mutmut_\d+): (?P<state>.+)$", re.MULTILINE)


def prepare(bench: Path) -> None:
    """Copy what the run needs."""
    for part in ("assistant", "checklists", "tests/dosing", "tests/data"):
        shutil.copytree(HOUSE / part, bench / part, ignore=shutil.ignore_patterns("__pycache__"))
    shutil.copy(HOUSE / "tests/__init__.py", bench / "tests/__init__.py")
    (bench / "tests/orders").mkdir()
    for name in LEFT_OUT:
        (bench / "tests/dosing" / name).unlink(missing_ok=True)
    text = (HOUSE / "pyproject.toml").read_text(encoding="utf-8")
    (bench / "pyproject.toml").write_text(text + SETTINGS, encoding="utf-8")


def run(bench: Path, *words: str, told: bool = False) -> str:
    """Run mutmut in the folder and give what it printed; `told` leaves that on standard error, as progress."""
    program = [sys.executable, "-m", "mutmut", *words]
    if told:
        subprocess.run(program, cwd=bench, stdout=sys.stderr, check=False, env=_environment())
        return ""
    done = subprocess.run(program, cwd=bench, capture_output=True, text=True, check=False, env=_environment())
    return done.stdout + done.stderr


def _environment() -> dict[str, str]:
    return {**os.environ, "PYTHONDONTWRITEBYTECODE": "1"}


def states(bench: Path) -> dict[str, str]:
    """What became of each fault, by name."""
    return {found["name"]: found["state"] for found in _NAME.finditer(run(bench, "results", "--all", "true"))}


def say(line: str) -> None:
    """Print a line at once."""
    sys.stdout.write(f"{line}\n")
    sys.stdout.flush()


def main() -> None:
    """Run and print."""
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--sample", type=int, default=0, metavar="N", help="a random sample instead of all")
    parser.add_argument("--seed", type=int, default=1, metavar="S", help="of the sample")
    parser.add_argument("--folder", type=Path, help="where to work; kept afterwards")
    parser.add_argument("--children", type=int, default=1, help="tests at the same time")
    args = parser.parse_args()
    bench = args.folder or Path(tempfile.mkdtemp(prefix="mutate-"))
    prepare(bench)
    names: list[str] = []
    if args.sample:
        # A run of one fault makes them all; then some are chosen by the seed.
        run(bench, "run", "--max-children", "1", "assistant.dosing.substance.x_substance__mutmut_1")
        every = sorted(states(bench))
        names = random.Random(args.seed).sample(every, min(args.sample, len(every)))  # noqa: S311 - a sample is no secret
    run(bench, "run", "--max-children", str(args.children), *names, told=True)
    found = states(bench)
    tried = {name: found[name] for name in (names or found) if found.get(name) != "not checked"}
    count = Counter(tried.values())
    killed = count["killed"] + count["timeout"]
    say(f"{killed} of {len(tried)} noticed ({100 * killed / max(1, len(tried)):.1f} %), {dict(count)}, in {bench}")
    for name, state in sorted(tried.items()):
        if state not in ("killed", "timeout"):
            say(f"  {name}: {state}")


if __name__ == "__main__":
    main()
