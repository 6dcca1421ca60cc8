"""An eventful attempt through a real record: from every prefix of the file it goes on as it was lived."""

import copy
from dataclasses import replace

import pytest

from assistant.guide.events import EarLost, Heard, InputEnded, NotUnderstood, Resumed
from assistant.guide.guide import KEEP_SOUND
from assistant.guide.progress import Mode
from assistant.record.file import RecordFile
from assistant.record.verify import read_record
from tests.guide.lived import START, again, begin

EVENTFUL = (
    "yes",  # sound may be kept
    "i need help", "no", "done",
    "not applicable", "the learner reacts to latex", "no", "the learner has a dressing on", "yes",
    "normal saline", Heard(START, "lactated ringer's"), "correct that", "no", "lactated ringer's",
    "done", 5, "no", "done", 3, "pause", 30, Heard(START, "go on", gap=True), "go on", NotUnderstood(START), 20,
    "fifty", "no", "833", "yes", EarLost(START, "pulled"), "83.3", "correct that", "83.3", "yes",
    "volume please", "950 mL", "stop", InputEnded(START), Resumed(START), "no", "950 mL", "yes",
    "back", "950", "yes", "done", 200,  # the pump forgets its settings
    "83.3", "yes", "950", "yes", "done", "done", "no", "yes", "done",
)  # fmt: skip
"""Words, seconds of waiting, and events, whose times are set when they come."""


def lived_through(mode):
    """The attempt with its progress after every entry, None where it is not known."""
    lived = begin(mode, sound=KEEP_SOUND)
    seen = [copy.deepcopy(lived.guide.progress)]
    for item in EVENTFUL:
        before = len(lived.entries)
        if isinstance(item, str | int):
            lived.do((item,))
        else:
            lived.give(replace(item, at=lived.at))
        # Several entries at once come from a wait: only the progress after the last of them is known.
        seen += [None] * (len(lived.entries) - before - 1)
        seen += [copy.deepcopy(lived.guide.progress)] if len(lived.entries) > before else []
    return lived, seen


@pytest.mark.parametrize("mode", list(Mode))
def test_every_prefix_of_an_eventful_record_resumes_as_it_was_lived(mode, tmp_path):
    """Names, numbers, reasons, holds, pauses, waits, lost settings, lost devices, consent: wherever it breaks off."""
    lived, seen = lived_through(mode)
    verdicts = " ".join(str(entry.get("verdict")) for entry in lived.entries)
    states = {str(entry.get("state")) for entry in lived.entries}
    assert {"asking", "reading back", "giving a reason", "paused", "waiting", "stopping", "finished"} <= states
    for happened in ("consent given", "does not agree", "agrees", "found", "settings lost", "not applicable", "waited"):
        assert happened in verdicts, verdicts
    whole = tmp_path / "whole.jsonl"
    bodies = [{name: value for name, value in entry.items() if name != "sequence"} for entry in lived.entries]
    with RecordFile.create(whole, bodies[0]) as record:
        for body in bodies[1:]:
            record.append(body)
    lines = whole.read_bytes().splitlines(keepends=True)
    for length in range(1, len(lines) + 1):
        path = tmp_path / "prefix.jsonl"
        path.write_bytes(b"".join(lines[:length]) + (lines[length][:40] if length < len(lines) else b""))
        entries = read_record(path).entries
        assert len(entries) == length
        guide = again(lived)
        guide.replay(entries)
        if seen[length - 1] is not None:
            assert guide.progress == seen[length - 1], f"after entry {length}"
        # Nothing that the eye does not see is missing: from here, the rest gives the same entries again.
        if length % 7 == 0:
            guide.replay(read_record(whole).entries[length:])
            assert guide.progress == seen[-1]
    assert len(lines) > 50
