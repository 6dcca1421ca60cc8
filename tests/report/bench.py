"""How long a report takes: ``python -m tests.report.bench [ENTRIES]``, best on a quiet machine.

A real attempt is made with a simulated learner, then filled up with entries that change nothing ("again") before
its seal. Each kind of report is made by the program as a process of its own, as an instructor starts it.
"""

import resource
import subprocess
import sys
import tempfile
import time
from pathlib import Path

from assistant.record.file import RecordFile
from assistant.record.verify import read_entries
from tests.report import attempts

RUNS = 5


def filled(folder: Path, entries: int) -> Path:
    """A sealed record of a real attempt with as many entries."""
    source = read_entries(attempts.attempt(folder, name="short.jsonl"))
    own = ("sequence", "previous", "digest", "seal", "format", "ticks")
    bodies = [{name: value for name, value in entry.items() if name not in own} for entry in source]
    path = folder / "attempt.jsonl"
    with RecordFile.create(path, bodies[0]) as record:
        for _ in range(entries - len(bodies)):
            again = {"kind": "typed", "source": "typed", "step": bodies[1]["step"], "state": "asking", "words": "again"}
            record.append(again | {"at": bodies[0]["at"], "input": "again", "meaning": {"kind": "command"}})
        for body in bodies[1:-1]:
            record.append(body)
        record.seal(bodies[-1])
    return path


def main() -> None:
    """Measure each kind and print the median."""
    entries = int(sys.argv[1]) if len(sys.argv) > 1 else 500
    with tempfile.TemporaryDirectory() as name:
        path = filled(Path(name), entries)
        for kind in ("html", "pdf", "csv", "json"):
            target = Path(name) / f"report.{kind}"
            command = [sys.executable, "-m", "assistant", "report", str(path), "-o", str(target)]
            runs = sorted(_run(command) for _ in range(RUNS))
            wall, processor = runs[RUNS // 2]
            sys.stdout.write(
                f"{kind}: {entries} entries, median {wall:.2f} s ({processor:.2f} s of processor time), fastest"
                f" {runs[0][0]:.2f} s ({min(run[1] for run in runs):.2f} s), {target.stat().st_size:,} bytes\n"
            )


def _run(command: list[str]) -> tuple[float, float]:
    """Seconds on the clock and of processor time."""
    began, before = time.perf_counter(), resource.getrusage(resource.RUSAGE_CHILDREN)
    subprocess.run(command, check=True, capture_output=True)
    after = resource.getrusage(resource.RUSAGE_CHILDREN)
    used = after.ru_utime + after.ru_stime - before.ru_utime - before.ru_stime
    return time.perf_counter() - began, used


if __name__ == "__main__":
    main()
