"""The instructor at the keyboard of a station: the typed line, the code, and what the record holds of it."""

import pytest

from assistant.adapters.instructor_line import InstructorLine, read_instructor_line
from assistant.attempts.instructor_code import code_of, code_pins
from assistant.errors import UsageError
from assistant.record.verify import read_entries, verify
from tests.attempt.program import here, process

LINES = [
    # typed, code that was set, what it is
    ("instructor 4711", "4711", InstructorLine(proven=True, words="")),
    ("Instructor 4711: seen", "4711", InstructorLine(proven=True, words="seen")),
    ("instructor 4712: seen", "4711", InstructorLine(proven=False, words="")),
    ("instructor: overrule", "4711", InstructorLine(proven=False, words="")),
    ("instructor: overrule", "", InstructorLine(proven=False, words="overrule")),
    ("instructor here", "", InstructorLine(proven=False, words="")),
    ("instructor 4711", "", InstructorLine(proven=False, words="")),
    ("the instructor said so", "4711", None),
    ("instructor said so", "4711", None),
    ("done", "4711", None),
]


@pytest.mark.parametrize(("line", "code", "read"), LINES, ids=[f"{row[0]} / {row[1]}" for row in LINES])
def test_the_instructors_line(line, code, read):
    """Only the right code proves the instructor; without a code nobody is proven."""
    assert read_instructor_line(line, code) == read


def test_the_code_never_reaches_the_record(tmp_path):
    """A cue with the right code is the instructor's; a wrong code is refused; neither stands in the file."""
    typed = b"instructor 9999: cue given\ninstructor 4711: cue given\ngo on\nyes\n"
    ended = process(
        *("run", "primary-line", "--typed", "--json", "--mode", "check-off", "--instructor-code", "4711"),
        *("--records", str(tmp_path)),
        typed=typed,
    )
    record = ended.last["record"]
    assert verify(record).intact
    entries = read_entries(record)
    assert [entry.get("verdict") for entry in entries if entry["kind"] == "instructor here"] == [
        "refused",
        "instructor admitted",
    ]
    assert [entry["by"] for entry in entries if entry.get("cue")] == ["instructor"]
    text = " ".join(f"{entry.get('words', '')}{entry.get('verdict', '')}" for entry in entries)
    assert "4711" not in text
    assert "9999" not in text


def test_an_attempt_is_taken_up_with_its_own_code_only():
    """A learner who takes an attempt up cannot bring a code of their own."""
    opening = code_pins("4711")
    assert code_of(opening, "4711") == "4711"
    assert code_of(opening, "") == ""
    assert code_of({}, "4711") == ""
    with pytest.raises(UsageError):
        code_of(opening, "0815")


@pytest.mark.parametrize("code", ["123", "two words", "a:b:c", "x" * 65])
def test_a_code_that_cannot_be_used(capsys, tmp_path, code):
    """One sentence tells what a code is."""
    ended = here(capsys, "run", "--typed", "--instructor-code", code, "--records", str(tmp_path))
    assert ended.code == 2
    assert "letters and digits" in ended.console
