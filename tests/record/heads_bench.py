"""What the book of heads costs: ``python -m tests.record.heads_bench [FOLDER]`` (default: the temporary folder)."""

import statistics
import sys
import tempfile
import time
from collections.abc import Callable
from pathlib import Path

from assistant.record.file import RecordFile
from assistant.record.head_book import HeadBook
from tests.record.examples import at, body, opening

COUNT = 200


def median_ms(work: Callable[[int], object]) -> float:
    """Median time of one call, ms."""
    took = []
    for number in range(1, COUNT + 1):
        began = time.perf_counter()
        work(number)
        took.append((time.perf_counter() - began) * 1000)
    return statistics.median(took)


def main() -> None:
    """Measure and print."""
    with tempfile.TemporaryDirectory(dir=sys.argv[1] if len(sys.argv) > 1 else None) as name:
        folder = Path(name)
        (folder / "copy").mkdir()
        for what, book in (
            ("no book", None),
            ("a book", HeadBook(folder / "book", None, print)),
            ("a book with a copy", HeadBook(folder / "copied", folder / "copy", print)),
        ):
            with RecordFile.create(folder / f"{what}.jsonl", opening(), book) as record:
                plain = median_ms(lambda number, record=record: record.append(body(number)))
                noted = median_ms(lambda number, record=record: record.append({"kind": "resumed", "at": at(number)}))
            print(f"{what}: an entry {plain:.1f} ms, one that a book notes {noted:.1f} ms")  # noqa: T201


if __name__ == "__main__":
    main()
