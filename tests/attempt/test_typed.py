"""The main job typed: a simulated learner over many seeds, every slip, and real pipes."""

import json
import shutil
import signal
import subprocess
import sys
import time
from pathlib import Path

import pytest

from assistant.checklist.load import load
from assistant.learner import Slip
from assistant.orders.load import load_order
from assistant.orders.solve import answer_key
from assistant.record.file import RecordFile
from assistant.record.verify import read_entries, verify
from tests.attempt.program import here, process

SEEDS = range(6)
"""With every slip and none: over fifty attempts. More: ``python -m tests.attempt.many``."""
UNTOUCHED = {"done unaided"}
NOT_HERE = {"p-own-clamp"}
"""A lab whose pumps have a clamp of their own says so in its file; the one of these attempts has none."""


@pytest.mark.slow
@pytest.mark.parametrize("seed", SEEDS)
def test_without_a_slip_everything_passes(capsys, tmp_path, seed):
    """Whatever the wording, an attempt without a slip is passed and its record holds."""
    ended = here(capsys, "demo", "--json", "--typed", "--seed", str(seed), "--records", str(tmp_path))
    assert ended.code == 0
    assert {line["ending"] for name, line in ended.results.items() if name not in NOT_HERE} == UNTOUCHED
    assert {ended.results[name]["ending"] for name in NOT_HERE} == {"not applicable"}
    assert verify(ended.last["record"]).ok


@pytest.mark.slow
@pytest.mark.parametrize("slip", list(Slip))
@pytest.mark.parametrize("seed", SEEDS)
def test_every_slip_is_caught_where_it_should_be(capsys, tmp_path, slip, seed):
    """The slip is held at its step, nothing else is disturbed, and practice is passed in the end."""
    ended = here(capsys, "demo", "--json", "--seed", str(seed), "--slip", slip.value, "--records", str(tmp_path))
    assert ended.code == 0
    assert verify(ended.last["record"]).ok
    disturbed = {
        name: line
        for name, line in ended.results.items()
        if (line["ending"] not in UNTOUCHED and name not in NOT_HERE)
        or line["expired"]
        or line["cues"]
        or line["found"]
    }
    if slip is Slip.TOO_SLOW:
        starts = [step for step in load("primary-and-secondary").steps if step.expires]
        assert set(disturbed) in [set(step.expires.reopen) for step in starts]
        assert {line["expired"] for line in disturbed.values()} == {1}
        return
    # A clamp that shows to be closed takes back the "done" of the step that opened it.
    taken_back = {name: disturbed.pop(name) for name in [*disturbed] if disturbed[name]["taken_back"]}
    ((name, line),) = disturbed.items()
    assert set(taken_back) == set(load("primary-and-secondary").step(name).takes_back if line["found"] else ())
    assert all(back["ending"] == "corrected by the learner" for back in taken_back.values())
    if slip is Slip.SKIP_CRITICAL:
        assert line["ending"] == "done after a cue"
        assert line["cues"] == ["gate"]
        return
    if line["kind"] in ("question", "choice"):
        # A fault that the learner sees and tells of is a finding, and costs nothing.
        assert (line["ending"], line["found"], line["wrong"]) == ("done unaided", 1, 0)
        return
    assert line["ending"] == "corrected by the learner"
    assert line["first"] != line["final"]
    entry = answer_key(load_order("oh-101")).get(_key_of(name))
    if entry is not None:
        assert line["slips"]
        assert line["final"].startswith(f"{entry.value}"[:1])


def _key_of(step_id: str) -> str:
    return getattr(load("primary-and-secondary").step(step_id).expect, "key", "")


SLIP_NAMES = [
    # slip, what the record calls it
    (Slip.TENFOLD, "tenfold"),
    (Slip.TEEN_TY, "teen-ty"),
    (Slip.SWAPPED, "swapped"),
    (Slip.WRONG_BAG, "another name"),
]


@pytest.mark.parametrize(("slip", "name"), SLIP_NAMES)
def test_a_slip_is_named(capsys, tmp_path, slip, name):
    """The result tells what kind of slip it was."""
    ended = here(capsys, "demo", "--json", "--slip", slip.value, "--records", str(tmp_path))
    assert [line["slips"] for line in ended.results.values() if line["slips"]] == [[name]]


CHECK_OFF = [
    # slip, exit code: what a hold or the gate had to find does not pass; what the learner saw and mended does
    (None, 0),
    (Slip.WRONG_RATE, 3),
    (Slip.WRONG_BAG, 3),
    (Slip.SKIP_CRITICAL, 3),
    (Slip.LEFT_CLAMP, 0),
    (Slip.TOO_SLOW, 0),
]


@pytest.mark.parametrize(("slip", "code"), CHECK_OFF)
def test_a_check_off_is_judged_by_its_rule(capsys, tmp_path, slip, code):
    """Completed but not passed has an exit code of its own."""
    erring = ["--slip", slip.value] if slip else []
    ended = here(capsys, "demo", "--json", "--mode", "check-off", *erring, "--records", str(tmp_path))
    assert ended.code == code


@pytest.mark.parametrize(("words", "outcome"), [(b"stop\nclose the attempt\n", "not completed"), (b"", "stopped")])
def test_an_attempt_that_is_not_brought_to_its_end_has_an_exit_code_of_its_own(tmp_path, words, outcome):
    """Stopped, or closed before its end: neither passed (0) nor completed and not passed (3), but 4 (README)."""
    ended = process("run", "primary-line", "--typed", "--json", "--records", str(tmp_path), typed=words)
    assert (ended.code, ended.last["outcome"]) == (4, outcome)


@pytest.mark.parametrize("order", ["oh-101", "oh-102", "oh-103", "oh-106"])
@pytest.mark.parametrize("checklist", ["primary-line", "secondary-line", "primary-and-secondary"])
def test_every_checklist_with_every_order(capsys, tmp_path, checklist, order):
    """Each checklist can be lived through by each order that has what it asks for.

    A fault that no step of the checklist asks for lets nobody pass, and that is told beforehand.
    """
    ended = here(capsys, "demo", checklist, "--order", order, "--json", "--records", str(tmp_path))
    unasked = (checklist, order) == ("primary-line", "oh-106")
    assert ended.code == (3 if unasked else 0)
    assert ("nobody can pass" in ended.console) is unasked


def test_a_check_off_gives_no_answer_away(capsys, tmp_path):
    """No computed number is said before the learner has said it, in a whole check-off with help asked everywhere."""
    key = answer_key(load_order("oh-101"))
    computed = {f"{key[name].value}" for name in ("primary.rate", "secondary.rate", "secondary.concentration")}
    lines = b"".join(b"i need help\nmore\ngo on\n" for _ in load("primary-line").steps)
    ended = process(
        *("run", "primary-line", "--typed", "--json", "--mode", "check-off", "--records", str(tmp_path)), typed=lines
    )
    said = " ".join(line.get("say", "") + " " + line.get("speech", "") for line in ended.lines)
    assert not [number for number in computed if f" {number} " in said or f" {number}." in said]


def test_a_stopped_check_off_gives_no_answer_away(capsys, tmp_path):
    """Neither the result nor the report of a check-off that can be taken up again tells a computed number."""
    ended = process(
        *("run", "primary-line", "--typed", "--json", "--mode", "check-off", "--records", str(tmp_path)),
        typed=b"yes\nyes\nstop\nyes\n",
    )
    assert ended.last["outcome"] == "stopped"
    told = json.dumps(ended.last) + " ".join(map(str, here(capsys, "report", ended.last["record"]).lines))
    key = answer_key(load_order("oh-101"))
    assert str(key["primary.rate"].value) not in told


WHOLE = "bag-change"
"""What is gone through as a process of its own: short, with numbers, names, a gate, and only two timed waits."""


def model(tmp_path: Path, capsys) -> list[dict]:
    """The typed answers of a simulated learner in a whole attempt, as entries of its record."""
    ended = here(capsys, "demo", WHOLE, "--json", "--records", str(tmp_path / "model"))
    return [entry for entry in read_entries(ended.last["record"]) if entry["kind"] == "typed"]


def answers(tmp_path: Path, capsys) -> list[str]:
    """What the simulated learner typed in a whole attempt."""
    return [entry["words"] for entry in model(tmp_path, capsys)]


def test_a_pipe_goes_through_the_whole_attempt(capsys, tmp_path):
    """Lines from a pipe are taken one by one as they are asked for, timed waits included."""
    typed = "\n".join(answers(tmp_path, capsys)).encode()
    ended = process(*("run", WHOLE, "--typed", "--json", "--short-waits", "--records", str(tmp_path)), typed=typed)
    assert ended.code == 0
    assert ended.last["outcome"] == "passed"
    assert verify(ended.last["record"]).ok


def test_the_end_of_a_pipe_stops_the_attempt(tmp_path):
    """End of input is told, the record is whole, and the exit code says stopped."""
    ended = process("run", "primary-line", "--typed", "--json", "--records", str(tmp_path), typed=b"yes\nyes\n")
    assert ended.code == 4
    assert ended.last["outcome"] == "stopped"
    assert verify(ended.last["record"]).intact
    assert "checkoff resume" in ended.console


def test_an_interrupt_stops_the_attempt(tmp_path):
    """An interrupt from the keyboard ends the attempt properly."""
    command = [sys.executable, "-m", "assistant", "run", "--typed", "--json", "--records", str(tmp_path)]
    pipe = subprocess.PIPE
    with subprocess.Popen(command, stdin=pipe, stdout=pipe, stderr=pipe, text=True) as running:
        for line in running.stdout:
            if '"tone": "step"' in line:
                break
        running.send_signal(signal.SIGINT)
        out, _ = running.communicate(timeout=60)
    assert running.returncode == 4
    assert json.loads(out.splitlines()[-1])["outcome"] == "stopped"


def after_what(typed: list[dict]) -> list[int]:
    """How many answers were given at the moments that matter: the first of each kind of entry, and before the seal."""
    verdicts = ("done", "wait started", "read back", "agrees")
    steps = load(WHOLE).steps
    gate = next(step.id for step in steps if step.gate)
    firsts = [next(n for n, entry in enumerate(typed, 1) if entry["verdict"] == verdict) for verdict in verdicts]
    behind = next(n for n, entry in enumerate(typed, 1) if entry["step"] == gate)
    return sorted({0, *firsts, behind, len(typed) - 1})


@pytest.mark.slow
@pytest.mark.parametrize("which", [slice(None), slice(-1, None)], ids=["at every moment in turn", "at the last alone"])
def test_killed_and_resumed(capsys, tmp_path, which):
    """Killed without warning, an attempt loses nothing that was acknowledged, and goes on; in the end it is finished.

    It dies before the first answer, after one, in a timed wait, in a read-back, with a number kept, behind the gate
    and one answer before its seal. At random moments a thousand times: ``python -m tests.record.kill_attempts``.
    """
    entries = model(tmp_path, capsys)
    typed = [entry["words"] for entry in entries]
    folder = tmp_path / "killed"
    begin = ["run", WHOLE, "--short-waits", "--records", str(folder)]
    before = 0
    for after in after_what(entries)[which]:
        record = next(folder.glob("*.jsonl"), None)
        acknowledged = killed(begin if record is None else ["resume", str(record)], typed[before:after])
        (record,) = folder.glob("*.jsonl")
        kept = [entry["words"] for entry in _entries(record) if "words" in entry]
        assert kept == [*typed[:before], *acknowledged]
        before = after
    ended = process("resume", str(record), "--typed", "--json", typed="\n".join(typed[before:]).encode())
    assert ended.code == 0, ended.console
    assert verify(record).ok
    assert [entry["words"] for entry in read_entries(record) if "words" in entry] == typed


def killed(words: list[str], typed: list[str]) -> list[str]:
    """Start the program, type these lines, kill it once they are acknowledged; what was acknowledged."""
    command = [sys.executable, "-m", "assistant", *words, "--typed", "--json"]
    acknowledged = []
    with subprocess.Popen(command, stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True) as running:
        running.stdin.write("".join(f"{line}\n" for line in typed))
        running.stdin.flush()
        running.stdout.readline()
        while len(acknowledged) < len(typed):
            line = json.loads(running.stdout.readline())
            if "typed" in line:
                acknowledged.append(line["typed"])
        running.kill()
    return acknowledged


def _entries(record: Path) -> list[dict]:
    """Complete entries; the last line may be torn."""
    lines = record.read_bytes().split(b"\n")[:-1]
    return [json.loads(line) for line in lines]


def test_a_stopped_attempt_goes_on_where_it_was(capsys, tmp_path):
    """Stopped by word, then resumed and finished: one record from first to last."""
    typed = answers(tmp_path, capsys)
    first = process(
        *("run", WHOLE, "--typed", "--json", "--short-waits", "--records", str(tmp_path / "stopped")),
        typed="\n".join([*typed[:8], "stop", "yes"]).encode(),
    )
    assert first.code == 4
    record = first.last["record"]
    second = process("resume", record, "--typed", "--json", typed="\n".join(typed[8:]).encode())
    assert second.code == 0
    assert verify(record).ok
    kinds = [entry["kind"] for entry in read_entries(record)]
    assert kinds.count("resumed") == 1
    assert kinds[-1] == "finished"


def test_a_record_in_use_is_not_resumed(capsys, tmp_path):
    """Two processes never write one record."""
    stopped = here(capsys, "demo", "--json", "--records", str(tmp_path))
    entries = read_entries(stopped.last["record"])
    path = tmp_path / "open.jsonl"
    opening = {name: value for name, value in entries[0].items() if name not in ("sequence", "previous", "digest")}
    with RecordFile.create(path, opening):
        ended = process("resume", str(path), "--typed")
    assert ended.code == 1
    assert "is in use" in ended.console


def test_a_changed_checklist_is_not_resumed(tmp_path):
    """An attempt goes on only with the papers it began with: here those kept beside the record are gone, too."""
    source = Path(__file__).parents[2] / "checklists" / "primary-line.toml"
    copy = tmp_path / "mine.toml"
    text = source.read_text(encoding="utf-8")
    copy.write_text(text, encoding="utf-8")
    ended = process("run", str(copy), "--typed", "--json", "--records", str(tmp_path), typed=b"yes\n")
    copy.write_text(
        source.read_text(encoding="utf-8").replace("Read the order.", "Look at the order."), encoding="utf-8"
    )
    shutil.rmtree(tmp_path / "papers")
    again = process("resume", ended.last["record"], "--typed")
    assert again.code == 1
    assert "has changed since" in again.console


def test_time_between_answers_is_recorded(tmp_path):
    """Each entry has its UTC time, and time does not run backwards."""
    ended = process("run", "primary-line", "--typed", "--json", "--records", str(tmp_path), typed=b"yes\nyes\n")
    times = [str(entry["at"]) for entry in read_entries(ended.last["record"])]
    assert times == sorted(times)
    assert times[0].endswith("+00:00")
    assert times[0][:10] == time.strftime("%Y-%m-%d", time.gmtime())
