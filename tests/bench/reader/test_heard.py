"""What the ear wrote of an answer is learnt to mean the same only where it may still mean it."""

import pytest

from tests.bench.reader.examples import Row
from tests.bench.reader.heard import may_mean_it, rows

_CLAMP = "Close the roller clamp, just below the drip chamber."
_AIR = "Follow the line from chamber to tip. Air in the line: none, or some?"


@pytest.mark.parametrize(
    ("row", "written", "may"),
    [
        (Row(_CLAMP, ("done",), "the roller's all the way down", "done"), "the rolls all the way down", True),
        (Row(_CLAMP, ("done",), "I rolled it shut", "done"), "i rolled that shut", True),
        (Row(_CLAMP, ("done",), "I rolled it shut", "done"), "i wrote a letter to her", False),
        (Row(_CLAMP, ("done",), "it's nearly closed", ""), "it's nearly clothes", True),
        (Row(_CLAMP, ("done",), "it isn't closed", ""), "it is closed", False),
        (Row(_AIR, ("none", "some"), "there is no air", "none"), "there is more air", False),
        (Row(_AIR, ("none", "some"), "no air", "none"), "air", False),
    ],
)
def test_what_was_written_may_be_learnt(row, written, may):
    assert may_mean_it(row, written) is may


def test_the_same_rows_are_said_in_every_run():
    found = rows(0, 40)
    assert found == rows(0, 30) + rows(30, 10)
    assert all(row.means != "no" and kind.split()[0] in ("done", "wait", "question", "choice") for kind, row in found)
