"""One table of ways to write an amount, through every door by which one comes in: the same value or a refusal."""

from fractions import Fraction
from pathlib import Path

import pytest

from assistant.dosing import parse_amount
from assistant.errors import QuantityError
from tests.orders.doors import DOORS

_FILE = Path(__file__).parents[1] / "data" / "written_amounts.tsv"
# Narrow spaces stand in the texts, so lines end at "\n" alone.
_LINES = _FILE.read_text(encoding="utf-8").split("\n")[1:-1]
ROWS = [tuple(line.split("\t")) for line in _LINES]
"""Text, the unit that is asked for, what it means, and what a recogniser means by it."""


def _value(text: str) -> Fraction | None:
    return None if text == "refused" else Fraction(text)


@pytest.mark.parametrize("door", DOORS)
def test_every_door_reads_alike(door: str) -> None:
    """What one door reads all read, and to the same value; what one refuses all refuse.

    Speech has its own column: a recogniser writes "half" as 1/2, puts a full stop behind the sentence and a bracket
    or commas around figures, begins a word with a capital, and writes "cc" because that was said. Nobody chose these
    ways of writing, so the number that they mean is read back and not refused. What no recogniser makes of speech,
    figures and letters run together, is refused there as well.
    """
    assert len(ROWS) == 300
    for text, wanted, means, heard in ROWS:
        assert DOORS[door](text, wanted) == _value(heard if door == "speech" else means), text


def test_a_recognisers_writing_never_means_another_number() -> None:
    """Where speech has a column of its own, all other doors refuse: no text has two values."""
    assert all(heard == means or means == "refused" for _, _, means, heard in ROWS)
    assert sum(heard != means for _, _, means, heard in ROWS) == 21


REMEDIES = [
    ("1 000 mL", "Write 1,000 mL."),
    ("12 500.5 mL", "Write 12,500.5 mL."),
    ("1 1/2 L", "Write 1.5 L."),
    ("\u00bd L", "Write 0.5 L."),
    ("1/3 L", "Write it in decimals, such as 0.5."),
    ("1:10 000", "A strength may be a ratio, written like 1:10,000."),
    ("70 Kg", 'Write "kg" if that is meant.'),
    ("1O0 mL", "Write 0 if that is meant."),
    ("l0 mL", "Write 1 if that is meant."),
    (".5 mg", "Write 0.5."),
    ("5.0 mg", "Write 5."),
]


@pytest.mark.parametrize(("text", "remedy"), REMEDIES)
def test_the_right_way_to_write_it_is_said(text: str, remedy: str) -> None:
    """A refusal says how it is written."""
    with pytest.raises(QuantityError) as refused:
        parse_amount(text)
    assert refused.value.remedy == remedy
