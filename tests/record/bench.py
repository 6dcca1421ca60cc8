# ruff: noqa: T201 - a command prints its answer
"""How fast is the record? Measures, and judges nothing: ``python -m tests.record.bench [FOLDER]``.

Appends 2,000 entries to a record in FOLDER (the system's temporary folder if none is named: mind that it may
lie in memory), each fsynced, and verifies a record of 200,000 entries.
"""

import platform
import statistics
import sys
import tempfile
import time
import tracemalloc
from pathlib import Path

from assistant.record.entry import GENESIS, link
from assistant.record.file import RecordFile
from assistant.record.verify import verify
from tests.record.examples import body, opening

APPENDS = 2_000
ENTRIES = 200_000


def main() -> None:
    """Measure and print."""
    folder = Path(sys.argv[1]) if len(sys.argv) > 1 else None
    with tempfile.TemporaryDirectory(dir=folder) as name:
        print(f"{platform.platform()}, Python {platform.python_version()}, files in {name}")
        _measure_append(Path(name) / "append.jsonl")
        _measure_verify(Path(name) / "verify.jsonl")


def _measure_append(path: Path) -> None:
    times_ms = []
    with RecordFile.create(path, opening()) as record:
        for number in range(APPENDS):
            entry = body(number)
            start = time.perf_counter()
            record.append(entry)
            times_ms.append(1000 * (time.perf_counter() - start))
    cuts = statistics.quantiles(times_ms, n=100)
    print(
        f"append with fsync, {APPENDS:,} entries of {path.stat().st_size // APPENDS} bytes: "
        f"median {statistics.median(times_ms):.2f} ms, 95 % {cuts[94]:.2f} ms, 99 % {cuts[98]:.2f} ms, "
        f"longest {max(times_ms):.2f} ms"
    )


def _measure_verify(path: Path) -> None:
    head, number = GENESIS, 0
    with path.open("wb") as stream:
        for number in range(1, ENTRIES + 1):
            entry = link(opening() if number == 1 else body(number), head, number)
            head = entry.digest
            stream.write(entry.line)
        stream.write(link({"kind": "sealed", "at": "", "seal": {"count": number, "head": head}}, head, number + 1).line)
    times_s, busy_s = [], []
    for _ in range(3):
        start, start_busy = time.perf_counter(), time.process_time()
        verdict = verify(path)
        times_s.append(time.perf_counter() - start)
        busy_s.append(time.process_time() - start_busy)
    if not verdict.ok:
        raise SystemExit(f"the record does not verify: {verdict}")
    tracemalloc.start()
    verify(path)
    peak = tracemalloc.get_traced_memory()[1]
    print(
        f"verify, {verdict.count:,} entries, {path.stat().st_size / 1e6:.0f} MB: "
        f"{verdict.count / min(times_s):,.0f} entries/s at best, {verdict.count / max(times_s):,.0f} at worst "
        f"of 3, {verdict.count / min(busy_s):,.0f} by processor time alone; peak memory {peak / 1e6:.2f} MB"
    )


if __name__ == "__main__":
    main()
