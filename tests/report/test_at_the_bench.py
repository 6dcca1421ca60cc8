"""What a report says of the bench: first what was laid out, what became of it, what would have reached the patient."""

from assistant.checklist.load import load
from assistant.guide.bench import Fate
from assistant.guide.progress import Mode
from assistant.record.signer import Right, Signer
from assistant.record.verify import verify
from assistant.report.bench import DEALT_WITH
from assistant.report.compose import compose
from assistant.report.content import Ended
from assistant.report.html import report_html
from assistant.report.lines import report_lines
from assistant.report.paper import Paper
from assistant.spoken import ENGLISH
from tests.report import attempts
from tests.report.test_earlier import EARLIER

WORDS = ENGLISH.report
ALLERGIC = ("lock-infusion", "--order", "oh-114", "--mode", Mode.CHECK_OFF.value)
DOUBLE_DOSE = ("secondary-line", "--order", "oh-106", "--mode", Mode.CHECK_OFF.value)


def test_a_fault_that_was_found_and_stopped_for():
    """The attempt passes, and the report names fault, step and danger."""
    report = attempts.report(*ALLERGIC)
    assert report.outcome is Ended.STOPPED_FOR_CAUSE
    (fault,) = report.laid_out
    assert "penicillin" in fault.what
    assert fault.fate == "found, and stopped for it"
    assert "allergies" in fault.step
    assert fault.step in fault.at
    assert "ampicillin" in fault.reaches
    assert not report.failures


def test_a_fault_that_was_put_right():
    """Found at the label: another bag was taken, and the attempt passes."""
    report = attempts.report(*DOUBLE_DOSE)
    assert report.outcome is Ended.PASSED
    (fault,) = report.laid_out
    assert fault.fate == "found, and put right"
    assert len(fault.at) >= 3


def test_a_fault_that_was_missed_is_told_before_the_steps():
    """Whoever reads the first lines knows what would have reached the patient."""
    report = attempts.report(*DOUBLE_DOSE, "--as", "unaware", "--seed", "1")
    assert report.outcome is Ended.NOT_PASSED
    assert report.failures[0].startswith("Missed: ")
    lines = report_lines(report, WORDS)
    laid_out = lines.index(f"{WORDS.LAID_OUT}:")
    assert laid_out < next(at for at, line in enumerate(lines) if WORDS.CRITICAL_STEPS in line)
    assert "Would have reached the patient" in lines[laid_out + 1]
    page = report_html(report, WORDS, Paper())
    assert page.index(WORDS.LAID_OUT) < page.index(f">{WORDS.FEEDBACK}<")


def test_findings_of_what_was_not_laid_out_stand_apart():
    """They are for the instructor to judge."""
    report = attempts.report("secondary-line", "--mode", "check-off", "--as", "over-cautious", "--seed", "4")
    assert report.not_laid_out
    assert report.laid_out == ()
    assert report.outcome in (Ended.OWN_REPORT, Ended.STOPPED)


def test_an_open_check_off_tells_nothing_of_the_bench(tmp_path):
    """It can be taken up again, and the fault is still to be found."""
    for path in (
        attempts.unsealed(attempts.attempt(tmp_path, *DOUBLE_DOSE), 12),
        attempts.attempt(tmp_path, *DOUBLE_DOSE, "--as", "unaware", "--seed", "3", name="stopped.jsonl"),
    ):
        for arguments in ([], ["--json"], ["--xapi"], ["-o", str(tmp_path / "report.csv")]):
            code, out, _ = attempts.run("report", path, *arguments)
            assert code == 0
            assert "2 g in place of 1 g" not in out
        assert "2 g in place of 1 g" not in (tmp_path / "report.csv").read_text(encoding="utf-8-sig")


def test_what_has_to_be_seen_until_it_is_marked():
    """Marks of the sign-off that counts fill what nobody saw at the bench."""
    checklist = load("saline-lock")
    steps = [
        {
            "id": step.id,
            "say": step.say,
            "ending": "done unaided",
            "evidence": "the learner's word",
            "to_be_seen": step.seen,
        }
        for step in checklist.steps
    ]
    unseen = [step.id for step in checklist.steps if step.seen]
    opening = {"kind": "opened", "mode": "check-off", "at": attempts.at(0)}
    seal = {
        "kind": "finished",
        "seal": {},
        "outcome": "complete by own report",
        "at": attempts.at(9),
        "results": {"steps": steps},
    }
    marked = {"kind": "signed off", "decision": "passed", "signature": "s", "at": attempts.at(19), "seen": unseen[1:]}
    marked["sequence"] = 3
    instructor = Signer(3, Right.VALID, "M. Lindqvist, RN")
    verdict = verify(EARLIER)
    before = compose("x", verdict, [opening, seal], words=WORDS)
    assert len(before.to_see) == len(unseen)
    stranger = compose("x", verdict, [opening, seal, marked], words=WORDS)
    assert len(stranger.to_see) == len(unseen), "who is not known as an instructor has seen nothing"
    after = compose("x", verdict, [opening, seal, marked], words=WORDS, signers=[instructor])
    assert len(after.to_see) == 1
    evidence = {line.id: line.evidence for line in after.steps}
    assert {evidence[name] for name in unseen[1:]} == {"seen by the instructor"}
    assert evidence[unseen[0]] == "the learner's word"


def test_what_a_fault_may_come_to_is_named_as_the_guide_names_it():
    """The report knows these by the record's words alone."""
    assert set(DEALT_WITH) == {Fate.STOPPED_FOR, Fate.PUT_RIGHT, Fate.SET_ASIDE}
