"""How long replies took, as a record tells it."""

import pytest

from assistant.record.file import RecordFile
from assistant.report.latency import latencies
from tests.attempt.program import here

YES = {"kind": "heard", "words": "yes", "meaning": {"kind": "confirm", "value": "yes"}}
RATE = {"kind": "heard", "words": "83.3", "meaning": {"kind": "number", "value": "83.3", "unit": "mL/h"}}


def timed(of, sounded):
    return {
        "kind": "latency",
        "of": of,
        "decided_ms": 250,
        "understood_ms": 240,
        "recorded_ms": sounded - 100,
        "sounded_ms": sounded,
    }


ENTRIES = [
    {"kind": "opened", "sequence": 1},
    {**YES, "sequence": 2},
    timed(2, 400),
    {**RATE, "sequence": 4},
    timed(4, 600),
    *({**YES, "sequence": 6 + 2 * n} for n in range(3)),
    *(timed(6 + 2 * n, 410 + 100 * n) for n in range(3)),
]


def test_latencies_by_sort_of_answer():
    """Confirmations and numbers are told apart; the median of 400, 410, 510, 610 is 460."""
    confirmations, numbers = latencies(ENTRIES)
    assert (confirmations.sort, confirmations.answers) == ("confirmations", 4)
    assert (numbers.sort, numbers.answers) == ("numbers", 1)
    assert (confirmations.stages["sounded_ms"].median_ms, confirmations.stages["sounded_ms"].most_ms) == (460, 610)
    assert numbers.stages["decided_ms"].median_ms == 250


@pytest.mark.parametrize("timings", [True, False])
def test_the_verb_shows_them(tmp_path, capsys, timings):
    """``checkoff audio --latency`` tells them in ms; a record without any is told as such."""
    record = RecordFile.create(tmp_path / "r.jsonl", {"kind": "opened", "at": "2026-11-25T12:00:00.000000+00:00"})
    record.append({**YES, "at": "2026-11-25T12:00:01.000000+00:00"})
    if timings:
        record.append({**timed(2, 400), "at": "2026-11-25T12:00:02.000000+00:00"})
    record.close()
    ended = here(capsys, "audio", "--latency", str(tmp_path / "r.jsonl"), "--json")
    if not timings:
        assert ended.code == 1
        assert "holds no timed answer" in ended.console
        return
    assert ended.code == 0
    (found,) = ended.last["latency"]
    assert found["stages"]["sounded_ms"] == {"median_ms": 400, "most_ms": 400}
