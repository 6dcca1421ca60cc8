"""A sealed record lived again: whatever can happen in an attempt comes out the same."""

from datetime import datetime

import pytest

from assistant.adapters import answer_reader
from assistant.attempts.pins import JUDGING, program_pins
from assistant.attempts.relived import live_again_with
from assistant.guide.progress import Mode
from assistant.record.file import RecordFile
from assistant.record.lived import Finding
from assistant.record.verify import read_entries
from tests.guide.lived import again
from tests.record.test_record_prefixes import lived_through


class SmallPapers:
    """Those of the guide's tests."""

    def __init__(self, lived):
        self._lived = lived

    def guide(self, _mode, _pins):
        return again(self._lived)


def steady(entry):
    """The entry's body with a steady clock that fits its time."""
    seconds = datetime.fromisoformat(entry["at"]).timestamp()
    return {name: value for name, value in entry.items() if name != "sequence"} | {"ticks": f"{seconds:.6f}"}


@pytest.mark.parametrize("mode", list(Mode))
def test_an_eventful_attempt_comes_out_the_same(mode, tmp_path):
    """Names, numbers, reasons, holds, pauses, waits, lost settings, lost devices, consent, kept sound, a recovery."""
    lived, _ = lived_through(mode)
    assert lived.sealed is not None
    bodies = [steady(entry) for entry in lived.entries]
    heard = next(body for body in bodies if body["kind"] == "heard")
    heard["sound"] = {"file": "0001.flac", "digest": "0" * 64}
    with RecordFile.create(tmp_path / "a.jsonl", bodies[0]) as record:
        for body in bodies[1:]:
            record.append(body)
            record.append(steady({"kind": "latency", "at": body["at"], "of": 1, "whole": "300"}))
        record.append({"kind": "recovered", "at": bodies[-1]["at"], "bytes": 3, "aside": "a.jsonl.torn"})
        record.seal(steady(lived.sealed))
    entries = read_entries(tmp_path / "a.jsonl")
    assert live_again_with(SmallPapers(lived), entries).finding is Finding.SAME


def test_what_judges_is_pinned():
    """The version, and one digest over the code of every room that decides on an entry or a result."""
    assert set(JUDGING) == {"checklist", "dosing", "guide", "orders", "spoken"}
    pinned = program_pins()
    assert pinned["program"].startswith("checkoff ")
    assert len(bytes.fromhex(pinned["program_digest"])) == 32


def test_the_reader_of_answers_judges_too(monkeypatch):
    """Where another one reads, or none, another program judges: what comes out otherwise accuses nobody."""
    found = {program_pins()["program_digest"]}
    for digest in ("", "ab" * 32):
        monkeypatch.setattr(answer_reader, "reader_digest", lambda digest=digest: digest)
        found.add(program_pins.__wrapped__()["program_digest"])
    assert len(found) == 3
