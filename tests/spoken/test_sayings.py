"""The tables of sayings: values and refusals side by side."""

from collections import Counter

import pytest

from assistant.spoken import interpret
from assistant.spoken.meaning import Reason

from .tables import Saying, frame, notation, read

SAYINGS = [
    *read("spoken_numbers.tsv"),
    *read("spoken_phrases.tsv"),
    *read("spoken_names.tsv"),
]


@pytest.mark.parametrize("saying", SAYINGS, ids=lambda s: f"{s.line}: {s.words[:30]}")
def test_means_what_the_table_says(saying: Saying) -> None:
    """Words mean exactly what their row says, or are refused for the reason that it names."""
    expect, heard = frame(saying.expect)
    assert notation(interpret(saying.words, expect, heard=heard), expect) == saying.meaning, saying.shows


def test_the_tables_are_large_and_hold_refusals() -> None:
    """At least 400 sayings, each once, a quarter of them refusals, and every reason but a too long line."""
    keys = Counter((s.words, s.expect) for s in SAYINGS)
    assert [key for key, count in keys.items() if count > 1] == []
    assert len(SAYINGS) >= 400
    refusals = [s.meaning.removeprefix("! ") for s in SAYINGS if s.meaning.startswith("! ")]
    assert len(refusals) > len(SAYINGS) / 4
    assert set(refusals) == {reason.value for reason in Reason} - {Reason.TOO_LONG.value}
