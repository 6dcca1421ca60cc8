"""What comes from outside and is wrong: one clear sentence, no traceback, and a record that is whole."""

import subprocess
import sys

import pytest

from assistant.record.verify import verify
from tests.attempt.program import here, process

WRONG = [
    # arguments, exit code, what standard error says
    (["run", "primry-line", "--typed"], 1, 'There is no checklist called "primry-line". Did you mean "primary-line"'),
    (["run", "--order", "oh-999", "--typed"], 1, "There is no order called"),
    (["run", "--learner", "Jo Public", "--typed"], 2, "Use a code, not a name"),
    (["run", "--short-waits", "--mode", "check-off", "--typed"], 2, "A check-off has no short waits."),
    (["run", "secondary-line", "--order", "oh-105", "--typed"], 1, "but the order does not include it"),
    (["demo", "--slip", "sleeping"], 2, "invalid choice"),
    (["dance"], 2, "There is no verb"),
    (["run", "--typed", "--voice"], 2, "not allowed with"),
    (["resume", "no-such-record"], 1, "no-such-record"),
    (["verify", "no-such-record"], 1, "no-such-record"),
    (["report", "no-such-record"], 1, "no-such-record"),
    (["run", "--ear", "nobody", "--voice"], 1, 'No recogniser on this machine is called "nobody"'),
]


@pytest.mark.parametrize(("arguments", "code", "sentence"), WRONG, ids=[" ".join(row[0])[:50] for row in WRONG])
def test_wrong_arguments_end_in_one_sentence(capsys, tmp_path, monkeypatch, arguments, code, sentence):
    """The sentence says what is wrong and what to do; the exit code tells the kind."""
    monkeypatch.chdir(tmp_path)
    extra = ["--records", str(tmp_path)] if arguments[0] in ("run", "demo") else []
    ended = here(capsys, *arguments, *extra)
    assert ended.code == code
    assert sentence in "\n".join([*map(str, ended.lines), ended.console])
    assert "Traceback" not in ended.console


BROKEN_FILES = [
    ("not TOML", "title = 'A", "this is not TOML"),
    ("no steps", "title = 'A'\nversion = '1'\npurpose = 'x'\norder = 'oh-101'\n", "there are no steps"),
    ("unknown field", "titel = 'A'\n", "line 1"),
    ("binary", "\x00\x01\x02", "control character"),
]


@pytest.mark.parametrize(("name", "text", "sentence"), BROKEN_FILES, ids=[row[0] for row in BROKEN_FILES])
def test_broken_checklists_name_file_and_line(capsys, tmp_path, name, text, sentence):
    """A broken file is told with its name, never a traceback."""
    file = tmp_path / "broken.toml"
    file.write_text(text, encoding="utf-8")
    ended = here(capsys, "run", str(file), "--typed", "--records", str(tmp_path / "records"))
    assert ended.code == 1
    assert "broken.toml" in ended.console
    assert not (tmp_path / "records").exists()


TYPED = [
    ("ten megabytes in one line", b"x" * 10_000_000 + b"\n"),
    ("control characters", b"\x1b[2J\x07\x00done\r\n"),
    ("no UTF-8", b"\xff\xfe\xff\n"),
    ("right-to-left marks", "\u202edone\u202c\n".encode()),
    ("blank lines only", b"\n\n   \n\t\n"),
    ("nothing at all", b""),
    ("no line end", b"yes"),
    ("one thousand lines of chatter", b"what is the time\n" * 1000),
]


@pytest.mark.parametrize(("name", "typed"), TYPED, ids=[row[0] for row in TYPED])
def test_hostile_lines_leave_the_record_whole(tmp_path, name, typed):
    """Whatever is typed, the attempt answers politely, stops at the end of input, and its record holds."""
    ended = process("run", "primary-line", "--typed", "--records", str(tmp_path), typed=typed)
    assert ended.code == 4
    assert "Traceback" not in ended.console
    (record,) = tmp_path.glob("*.jsonl")
    assert verify(record).intact
    assert record.stat().st_size < 3_000_000
    shown = "\n".join(ended.lines)
    assert not any(letter < " " for letter in shown if letter != "\n")
    assert "\u202e" not in shown


def test_a_records_folder_that_cannot_be_made(capsys, tmp_path):
    """The folder that is a file is named, with the option that mends it."""
    (tmp_path / "file").write_text("")
    ended = here(capsys, "demo", "--records", str(tmp_path / "file" / "records"))
    assert ended.code == 1
    assert "--records" in ended.console


def test_without_sound_the_attempt_goes_on_by_keyboard(tmp_path):
    """On a machine whose sound system has nothing, one sentence tells, and typing works."""
    ended = process("run", "primary-line", "--voice", "--records", str(tmp_path), typed=b"yes\n")
    assert ended.code == 4
    assert "Traceback" not in ended.console
    (record,) = tmp_path.glob("*.jsonl")
    assert verify(record).intact


def test_a_reader_that_goes_away(tmp_path):
    """Somebody who reads only the first line of our output causes no traceback."""
    command = [sys.executable, "-m", "assistant", "demo", "--records", str(tmp_path)]
    with subprocess.Popen(command, stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True) as running:
        assert running.stdout.readline()
        running.stdout.close()
        console = running.stderr.read()
    assert "Traceback" not in console
    assert "Exception" not in console
    (record,) = tmp_path.glob("*.jsonl")
    assert verify(record).intact
