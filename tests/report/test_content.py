"""What a report says: of good attempts, slips, interruptions, damage."""

import json
import subprocess
from decimal import Decimal

import jsonschema
import pytest

from assistant.attempts.kept_papers import FOLDER
from assistant.checklist.load import load
from assistant.cli.report import report_of
from assistant.orders.load import load_order
from assistant.orders.solve import answer_key
from assistant.record.file import RecordFile
from assistant.record.verify import verify
from assistant.report.content import Ended, schema
from assistant.report.infusion import infusion_course
from assistant.report.times import times
from assistant.spoken import ENGLISH
from tests.report import attempts

TENFOLD = ("primary-line", "--mode", "check-off", "--slip", "tenfold", "--seed", "2")


def test_a_slip_is_told_with_expected_value_and_working():
    """First and final answer, what follows from the order, how far off, which slip, and how it is worked out."""
    report = attempts.report(*TENFOLD)
    (line,) = [line for line in report.numbers if line.slips]
    assert (line.first, line.final, line.expected) == ("833 mL/h", "83.3 mL/h", "83.3 mL/h")
    # 1,000 mL over 12 h: 83.3 mL/h; 833 less 83.3 is 749.7.
    assert line.difference == "749.7 mL/h too high"
    assert line.working == (
        "1,000 mL ÷ 12 h = about 83.3333 mL/h",
        "rounded (nearest tenth, half up): 83.3 mL/h",
    )
    assert line.verdict == "right only after a hold"
    assert report.outcome is Ended.NOT_PASSED
    (practise,) = report.feedback.practise
    assert practise.steps == (line.step,)
    assert "833 mL/h" in practise.sentence
    assert "83.3 mL/h" in practise.sentence


def test_a_good_attempt():
    """Everything unaided: passed, nothing to look at, nothing to practise, every number right the first time."""
    report = attempts.report("primary-line", "--mode", "check-off")
    assert report.outcome is Ended.PASSED
    assert report.sealed
    assert {line.verdict for line in report.numbers} == {"right the first time"}
    assert not [line for line in report.steps if line.needs_a_look]
    assert not report.feedback.practise
    assert any(sentence.startswith("All ") for sentence in report.feedback.went_well)


def test_help_is_told():
    """Where a cue was needed stands with the step, in words, and as a thing to practise."""
    report = attempts.report("primary-line", "--mode", "check-off", "--slip", "skip-critical")
    (line,) = [line for line in report.steps if line.needs_a_look]
    assert line.cues
    assert line.ending == "done after a cue"
    assert report.feedback.practise[0].steps == (line.number,)


def test_what_the_ear_did_not_understand_is_counted(tmp_path):
    """An utterance without words, and words that answer nothing; typed words are no matter of hearing."""
    path = tmp_path / "attempt.jsonl"
    said = {"step": "one", "state": "asking"}
    with RecordFile.create(
        path, {"kind": "opened", "at": attempts.at(0), "checklist": "", "mode": "practice"}
    ) as record:
        for number, kind in enumerate(("not understood", "heard", "heard", "typed"), 1):
            verdict = "done" if number == 3 else "not understood"
            record.append({"kind": kind, "at": attempts.at(number), **said, "words": "what", "verdict": verdict})
    attempt = report_of(path, tmp_path).attempt
    assert (attempt.spoken, attempt.typed, attempt.unheard) == (2, 1, 2)


def test_steps_stand_in_the_order_of_the_checklist():
    """Numbers are places in the checklist; each step has its part, its marks and its time."""
    report = attempts.report("primary-line")
    steps = load("primary-line").steps
    assert [line.id for line in report.steps] == [step.id for step in steps]
    assert [line.number for line in report.steps] == list(range(1, len(steps) + 1))
    assert [line.critical for line in report.steps] == [step.critical for step in steps]
    waits = {step.id: step.expect.seconds for step in steps if step.expect.kind == "wait"}
    assert all(float(line.seconds) >= waits.get(line.id, 0) for line in report.steps)


def test_the_times_of_the_steps_are_the_time_at_work():
    """Nothing is counted twice, nothing is lost."""
    report = attempts.report("primary-line")
    assert sum(float(line.seconds) for line in report.steps) == pytest.approx(float(report.attempt.seconds))


def lived_for(*moments):
    """What each step took, by entries that tell only how many seconds after the beginning, step and state."""
    return times([{"at": attempts.at(at), "kind": kind, "step": "one", "state": state} for at, kind, state in moments])


def test_a_pause_is_no_work():
    """Ten seconds of work, a pause of a minute, five more seconds; nor is the time while an attempt is stopped work."""
    work = (0, "typed", "asking"), (10, "typed", "asking")
    paused = lived_for(*work, (70, "typed", "paused"), (75, "typed", "asking"))
    assert (paused.steps, paused.work) == ({"one": Decimal(15)}, Decimal(15))
    stopped = lived_for((0, "typed", "asking"), (10, "typed", "stopping"), (900, "resumed", "finished"))
    assert stopped.work == Decimal(10)


def test_short_waits_are_told(tmp_path):
    """A rehearsal with timed waits of one second is never taken for the real thing."""
    for short, waits in (([], "full"), (["--short-waits"], "short")):
        folder = tmp_path / waits
        attempts.run("run", "primary-line", "--typed", "--json", "--records", folder, *short)
        (path,) = folder.glob("*.jsonl")
        report = report_of(path, str(tmp_path))
        assert report.attempt.waits == waits
        assert ("Timed waits were cut short, for a rehearsal." in report.trust.warnings) is (waits == "short")


WARNINGS = [
    # what happened to the record, how the attempt ended, what the first warning says
    (attempts.unsealed, Ended.INTERRUPTED, "not sealed: the attempt was interrupted"),
    (attempts.torn, Ended.INTERRUPTED, "The end of this record is torn"),
    (attempts.changed, Ended.NOT_KNOWN, "was changed or is damaged"),
]


@pytest.mark.parametrize(("happened", "ended", "words"), WARNINGS)
def test_a_record_that_does_not_hold_says_so_first(tmp_path, happened, ended, words):
    """Unsealed, torn, changed: reported as far as it holds, with a warning in words, and never as a result."""
    report = report_of(happened(attempts.attempt(tmp_path, *TENFOLD)), str(tmp_path))
    assert report.outcome is ended
    assert not report.sealed
    assert not report.trust.whole
    assert words in report.trust.warnings[0]
    assert report.steps
    assert not report.failures


def test_an_open_check_off_gives_no_answer_away(tmp_path):
    """It can be taken up again: neither the right rate nor how far off the learner was is in its report."""
    path = attempts.unsealed(attempts.attempt(tmp_path, *TENFOLD), 45)
    for arguments in ([], ["--json"], ["--xapi"]):
        code, out, _ = attempts.run("report", path, *arguments)
        assert code == 0
        assert "833 mL/h" in out
        assert "749.7" not in out
        assert not [line for line in out.splitlines() if "83.3 mL/h follows" in line or "12 h =" in line]
    practice = attempts.unsealed(attempts.attempt(tmp_path, "primary-line", "--slip", "tenfold", "--seed", "2"), 45)
    assert "749.7" in attempts.run("report", practice)[1]


def test_only_what_holds_of_a_changed_record_is_told(tmp_path):
    """Nothing from behind the break is repeated: the forged line is not in the report."""
    path = attempts.changed(attempts.attempt(tmp_path, *TENFOLD))
    report = report_of(path, str(tmp_path))
    verdict = verify(path)
    assert len(report.happenings) == verdict.count == verdict.line - 1
    assert f"line {verdict.line}" in report.trust.warnings[0]


def test_a_stopped_attempt_is_not_an_interrupted_one(tmp_path):
    """Stopped by the learner, or broken off without a word: the report keeps them apart."""
    code, out, _ = attempts.run("run", "primary-line", "--typed", "--json", "--records", tmp_path / "none-such-input")
    assert code == 4, out
    (path,) = (tmp_path / "none-such-input").glob("*.jsonl")
    assert report_of(path, str(tmp_path)).outcome is Ended.STOPPED


def test_changed_papers_leave_the_result_and_say_so(tmp_path):
    """A year later, and without the papers kept beside it: the sealed result is told, with a warning, no workings."""
    mine = tmp_path / "primary-line.toml"
    mine.write_bytes(attempts.CHECKLISTS.joinpath("primary-line.toml").read_bytes())
    for folder in ("parts", "orders"):
        if (attempts.CHECKLISTS / folder).is_dir():
            attempts.shutil.copytree(attempts.CHECKLISTS / folder, tmp_path / folder)
    code, out, _ = attempts.run("demo", mine, "--json", "--records", tmp_path / "r")
    assert code == 0, out
    (path,) = (tmp_path / "r").glob("*.jsonl")
    before = report_of(path, str(tmp_path))
    mine.write_text(mine.read_text(encoding="utf-8").replace("Read the order.", "Look at the order."), encoding="utf-8")
    assert not any("has changed" in warning for warning in report_of(path, str(tmp_path)).trust.warnings), "kept"
    attempts.shutil.rmtree(path.parent / FOLDER)
    after = report_of(path, str(tmp_path))
    assert any("has changed since the attempt" in warning for warning in after.trust.warnings)
    assert not any("has changed" in warning for warning in before.trust.warnings)
    assert after.outcome is before.outcome is Ended.PASSED
    assert {line.id: line.ending for line in after.steps} == {line.id: line.ending for line in before.steps}
    assert not any(line.working for line in after.numbers)


@pytest.mark.parametrize("order", ["oh-101", "oh-102", "oh-103"])
def test_the_course_agrees_with_the_order(order):
    """What flows by the picture is what the order's answer key infuses, and the picture has its words."""
    key = answer_key(load_order(order))
    course = infusion_course(load_order(order), key, ENGLISH.report)
    assert course is not None
    first = next(sentence for sentence in course.sentences if f"{key['primary.fluid'].value}" in sentence)
    assert f"{key['primary.rate'].value} mL/h" in first
    assert course.picture.startswith("<svg")
    assert "<title" in course.picture
    assert "<desc" in course.picture


def test_json_is_valid_against_its_schema(tmp_path):
    """The published schema takes every report, whole or damaged, and refuses a report with a field too many."""
    checker = jsonschema.Draft202012Validator(schema())
    checker.check_schema(schema())
    path = attempts.attempt(tmp_path, *TENFOLD)
    for made in (path, attempts.torn(attempts.copied(path, tmp_path / "t.jsonl")), attempts.changed(path)):
        code, out, _ = attempts.run("report", made, "--json")
        content = json.loads(out)
        assert code == (1 if content["trust"]["proven"] == "broken" else 0)
        checker.validate(content)
        assert not checker.is_valid(content | {"more": 1})
        assert not checker.is_valid({name: value for name, value in content.items() if name != "trust"})


def test_the_same_record_gives_the_same_report(tmp_path):
    """Nothing of the moment of printing is in it."""
    path = attempts.attempt(tmp_path, *TENFOLD)
    for kind in ("html", "pdf", "csv", "json"):
        one, two = tmp_path / f"one.{kind}", tmp_path / f"two.{kind}"
        for target in (one, two):
            assert attempts.run("report", path, "-o", target)[0] == 0
        assert one.read_bytes() == two.read_bytes(), kind


def test_one_line_of_trust_in_every_document(tmp_path):
    """Screen, page, paper, table, data, statements: the same words, and they claim what is proven."""
    path = attempts.attempt(tmp_path, *TENFOLD)
    claimed = "Nobody signed it, and this machine has never seen it: whoever could write this file could have made it."
    found = {"screen": attempts.run("report", path)[1]}
    for name in ("page.html", "table.csv", "data.json", "paper.pdf"):
        assert attempts.run("report", path, "-o", tmp_path / name)[0] == 0
        found[name] = (tmp_path / name).read_bytes().decode(errors="replace")
    found["statements"] = attempts.run("report", path, "--xapi")[1]
    shown = subprocess.run(["pdftotext", tmp_path / "paper.pdf", "-"], capture_output=True, check=True)
    found["paper.pdf"] = " ".join(shown.stdout.decode().split())
    assert [name for name, text in found.items() if claimed not in text] == []
