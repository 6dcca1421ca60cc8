"""The published worked examples as rows: `tests/data/worked_examples.csv`, and further ones beside it.

Columns: what was published (given, asked, published, source, locator), how the answer stands
(published; published answer wrong; worked out from a published question; own example), a remark, and the
question in this project's own terms (formula, inputs parted by " | ", expected).
"""

import csv
from dataclasses import dataclass
from pathlib import Path

_FILES = ("worked_examples.csv", "worked_examples_further.csv")
_DATA = Path(__file__).parents[1] / "data"


@dataclass(frozen=True)
class Example:
    """One row."""

    id: str
    kind: str
    given: str
    asked: str
    published: str
    unit: str
    standing: str
    source: str
    locator: str
    remark: str
    formula: str
    inputs: str
    expected: str

    @property
    def texts(self) -> dict[str, str]:
        """The inputs by name."""
        pairs = (part.partition("=") for part in self.inputs.split(" | "))
        return {name: text for name, _, text in pairs}

    @property
    def why(self) -> str:
        """What a failing test says: the source, and what is odd about the published answer."""
        return f"{self.id}: {self.given}; {self.source}, {self.locator}; {self.standing}; {self.remark}"


def examples() -> list[Example]:
    """Every row of the files."""
    found: list[Example] = []
    for name in _FILES:
        with (_DATA / name).open(encoding="utf-8", newline="") as stream:
            found += [Example(**row) for row in csv.DictReader(stream)]
    return found
