"""The verb `resume` on records that no attempt of this program could have made: one sentence, never a traceback."""

import pytest

from assistant.attempts.papers import take_papers
from assistant.attempts.pins import pins
from assistant.guide.progress import Mode
from assistant.record.file import RecordFile
from assistant.record.verify import verify
from tests.attempt.program import here
from tests.record.examples import at, written


@pytest.fixture
def made(tmp_path):
    """Makes the record of an attempt with one answer, with changes to its two entries."""

    def make(opening, entry):
        pinned = pins(take_papers("primary-line", None), Mode.PRACTICE, "A17", "primary-line", None)
        answer = {
            "kind": "typed",
            "at": at(2),
            "source": "typed",
            "words": "all there",
            "input": "a choice",
            "step": "p-order",
            "meaning": {"kind": "choice", "value": "all there"},
            "verdict": "agrees",
        }
        begun = {"kind": "opened", "at": at(0), "input": "opened", **pinned}
        with RecordFile.create(tmp_path / "a.jsonl", begun | opening) as record:
            record.append(answer | entry)
        return record.path

    return make


def test_what_was_lived_is_taken_up(made, capsys):
    """Without a change the same record goes on at its second step."""
    path = made({}, {})
    ended = here(capsys, "resume", str(path), "--typed")
    assert ended.code == 4
    assert "Step 2 of" in "\n".join(ended.lines)
    assert verify(path).count == 4


def test_the_only_open_attempt_needs_no_name(made, capsys, monkeypatch, tmp_path):
    """One attempt that is not over: it is taken up. None, or several: said, with their names."""
    monkeypatch.setenv("CHECKOFF_SETTINGS", str(tmp_path / "settings.toml"))
    here(capsys, "settings", "set", "records.folder", str(tmp_path))
    ended = here(capsys, "resume", "--typed")
    assert (ended.code, "There is no unfinished attempt in" in ended.console) == (2, True)
    written(tmp_path / "sealed.jsonl", 3)
    (tmp_path / "other.jsonl").write_text("no record\n", encoding="utf-8")
    path = made({}, {})
    ended = here(capsys, "resume", "--typed")
    assert (ended.code, f"Resuming {path}." in ended.console) == (4, True)
    written(tmp_path / "b.jsonl", 3, sealed=False)
    ended = here(capsys, "resume", "--typed")
    assert (ended.code, "are unfinished: b.jsonl, a.jsonl." in ended.console) == (2, True)


@pytest.mark.parametrize("verb", ["resume", "report"])
@pytest.mark.parametrize(
    ("opening", "entry"),
    [
        ({"mode": "guessing"}, {}),
        ({"mode": None}, {}),
        ({"checklist": "no-such-checklist"}, {}),
        ({"checklist_digest": "0" * 64}, {}),
        ({"at": "yesterday"}, {}),
        ({"at": "2026-11-25T08:00:00"}, {}),  # no zone
        ({}, {"at": "nonsense"}),
        ({}, {"at": ""}),
        ({}, {"kind": "opened"}),
        ({}, {"input": "done", "meaning": {}}),
        ({}, {"words": "no"}),
        ({}, {"step": None}),
    ],
)
def test_what_no_attempt_wrote_is_not_lived_again(verb, opening, entry, made, capsys):
    """The chain holds, but what it says cannot have happened: told in words, and nothing is added."""
    path = made(opening, entry)
    content = path.read_bytes()
    assert verify(path).intact
    ended = here(capsys, verb, str(path), *(["--typed"] if verb == "resume" else []))
    assert ended.code in ((1,) if verb == "resume" else (0, 1))
    assert path.read_bytes() == content
    assert "a.jsonl" in ended.console or "no-such-checklist" in ended.console or verb == "report"
