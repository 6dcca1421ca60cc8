"""Right is what agrees with what is laid out: found, put right, stopped for; missed; seen, and by own report."""

import pytest

from assistant.guide import Mode, Outcome, Papers, State, Status, Tone
from assistant.guide.bench import Fate
from assistant.guide.guide import Guide
from assistant.guide.result import Ending, Evidence
from assistant.orders.fault import Fault
from assistant.spoken import ENGLISH
from tests.guide.benches import (
    ALLERGY,
    BENCH,
    BENCH_KEY,
    CAUSES,
    LEAK,
    OTHER_PATIENT,
    PAIN,
    TELLS,
    UNASKED,
    WELL,
    WRONG_DOSE,
    WRONG_DRUG,
    truth,
)
from tests.guide.lived import WITH_CODE, InstructorCame, Lived, Opened, Resumed

EACH = pytest.mark.parametrize("fault", TELLS, ids=lambda fault: fault.fact)
SEEN = ("instructor here", "all seen", "go on")


def at_bench(*faults: Fault, mode: Mode = Mode.CHECK_OFF, code: bool = False) -> Lived:
    """An attempt that has begun; the instructor has a code where `code` says so."""
    pins = {"instructor": WITH_CODE} if code else {}
    lived = Lived(Guide(Papers(BENCH, "The order.", BENCH_KEY, ENGLISH, truth(*faults)), mode, pins))
    lived.give(Opened(lived.at))
    return lived


def up_to(lived: Lived, name: str, *, seen: bool = True) -> Lived:
    """All is well at every step before this one; "" goes to the end. What has to be seen is marked at the bench."""
    for _ in range(4 * len(BENCH.steps)):
        if lived.outcome is not None:
            return lived
        step = BENCH.steps[lived.guide.progress.cursor]
        if step.id == name:
            return lived
        lived.type(*WELL[step.id])
        if seen and step.seen:
            lived.type(*SEEN)
    raise AssertionError(f"it does not come to {name or 'its end'}: {lived.texts()[-300:]}")


def fates(lived: Lived) -> list[Fate]:
    """What became of what was laid out."""
    return [fault.fate for fault in lived.guide.results().faults]


def ending(lived: Lived, name: str) -> Ending:
    """How a step ended."""
    return next(line.ending for line in lived.guide.results().steps if line.id == name)


def test_nothing_laid_out_and_all_seen_passes():
    """Silence means: as ordered, and nothing wrong."""
    lived = up_to(at_bench(), "")
    assert lived.outcome is Outcome.PASSED
    assert lived.guide.results().faults == ()


@EACH
def test_a_fault_that_is_told_of_costs_nothing(fault: Fault):
    """It is found, the step is held, and nothing is held against the learner."""
    name, words = TELLS[fault]
    lived = up_to(at_bench(fault), name)
    lived.type(*words)
    assert lived.entries[-1]["verdict"] == "found"
    assert lived.entries[-1]["laid_out"] is True
    done = lived.guide.progress.steps[name]
    assert (done.status, done.wrong, done.found) == (Status.OPEN, 0, 1)
    assert lived.says[-2].tone is Tone.HOLD


@EACH
def test_what_is_overlooked_is_held_and_never_agrees(fault: Fault):
    """Whoever says that all is well is told to look again, as often as that is said; nobody passes after it."""
    name, words = TELLS[fault]
    lived = up_to(at_bench(fault), name)
    for _ in range(3):
        lived.type(*WELL[name])
        assert lived.entries[-1]["verdict"] == "does not agree"
        assert lived.guide.progress.steps[name].status is Status.OPEN
    lived.type(*words)
    if fault in CAUSES:
        lived.type("stop", "yes")
    else:
        up_to(lived, "")
    assert lived.outcome is Outcome.NOT_PASSED
    assert fates(lived) == [Fate.MISSED]
    assert any(fault.what in text for text in lived.guide.results().failures)


@pytest.mark.parametrize("mode", list(Mode))
@EACH
def test_the_advice_is_given_in_practice_alone(fault: Fault, mode: Mode):
    """In a check-off nothing tells what was overlooked."""
    name, _ = TELLS[fault]
    lived = up_to(at_bench(fault, mode=mode), name)
    count = len(lived.says)
    lived.type(*WELL[name])
    told = any(BENCH.step(name).if_wrong in say.text for say in lived.says[count:])
    assert told is (mode is Mode.PRACTICE)
    assert not any(fault.what in say.text for say in lived.says)


@pytest.mark.parametrize("fault", [WRONG_DRUG, WRONG_DOSE, LEAK], ids=lambda fault: fault.fact)
def test_another_bag_puts_it_right(fault: Fault):
    """Found, put right, the checks that hang on it are done again, and the attempt passes with every step unaided."""
    name, words = TELLS[fault]
    lived = up_to(at_bench(fault), name)
    lived.type(*words)
    up_to(lived, "")
    assert lived.outcome is Outcome.PASSED, lived.texts(Tone.RESULT)
    assert fates(lived) == [Fate.PUT_RIGHT]
    assert ending(lived, name) is Ending.UNAIDED
    if fault is LEAK:
        assert lived.guide.progress.steps["drug"].reopened == 1


@pytest.mark.parametrize("fault", CAUSES, ids=lambda fault: fault.fact)
def test_stopping_for_a_cause_that_is_there_passes(fault: Fault):
    """It ends the attempt for good, says why, and leaves out what would have come after."""
    name, words = TELLS[fault]
    lived = up_to(at_bench(fault), name)
    lived.type(*words, "stop")
    assert lived.guide.progress.state is State.STOPPING
    lived.type("yes")
    results = lived.guide.results()
    assert lived.outcome is Outcome.STOPPED_FOR_CAUSE
    assert lived.sealed is not None
    assert results.passed
    assert results.stopped_for == (fault.what,)
    assert fates(lived) == [Fate.STOPPED_FOR]
    assert ending(lived, name) is Ending.STOPPED_FOR
    assert results.score_percent == 100
    assert results.applicable == BENCH.place(name) + 1


@pytest.mark.parametrize("fault", CAUSES, ids=lambda fault: fault.fact)
def test_whoever_gives_way_does_not_pass(fault: Fault):
    """An allergy does not go away because somebody says that all is well after all."""
    name, words = TELLS[fault]
    lived = up_to(at_bench(fault), name)
    lived.type(*words, *WELL[name])
    assert lived.entries[-1]["verdict"] == "does not agree"
    lived.type("stop", "yes")
    assert lived.outcome is Outcome.NOT_PASSED
    assert fates(lived) == [Fate.MISSED]


def test_stopping_before_the_cause_was_told_is_a_stop():
    """Nobody knows for what: it can be resumed, and the fault waits."""
    lived = up_to(at_bench(ALLERGY), "allergies")
    lived.type("stop", "yes")
    assert lived.outcome is Outcome.STOPPED
    assert lived.sealed is None
    assert lived.guide.results().faults == ()
    lived.outcome = None
    lived.give(Resumed(lived.at))
    lived.type("allergic", "stop", "yes")
    assert lived.outcome is Outcome.STOPPED_FOR_CAUSE


@pytest.mark.parametrize(("name", "words"), [("allergies", "allergic"), ("wristband", "no")])
def test_stopping_without_a_cause_is_told_apart(name: str, words: str):
    """The learner hears the same until the end; what was found is left to the instructor."""
    lived = up_to(at_bench(), name)
    lived.type(words)
    founded = up_to(at_bench(*(fault for fault in CAUSES if TELLS[fault][0] == name)), name)
    founded.type(words)
    assert [say.text for say in lived.says] == [say.text for say in founded.says]
    lived.type("stop")
    founded.type("stop")
    assert lived.says[-1].text == founded.says[-1].text
    lived.type("yes")
    results = lived.guide.results()
    assert lived.outcome is Outcome.STOPPED
    assert [found.step for found in results.not_laid_out] == [name]
    assert results.to_judge
    assert not results.passed


def test_a_finding_of_what_is_not_laid_out_is_for_the_instructor():
    """It costs no step; the attempt is complete, and neither passed nor failed."""
    lived = up_to(at_bench(), "inspect")
    lived.type("leaking")
    up_to(lived, "")
    results = lived.guide.results()
    assert lived.outcome is Outcome.OWN_REPORT
    assert results.failures == ()
    assert results.to_judge
    assert ending(lived, "inspect") is Ending.UNAIDED


def test_another_fault_than_the_one_that_is_there():
    """The bag was replaced all the same: nothing is missed, and the instructor judges."""
    lived = up_to(at_bench(LEAK), "inspect")
    lived.type("cloudy")
    up_to(lived, "")
    assert lived.outcome is Outcome.OWN_REPORT
    assert fates(lived) == [Fate.TOLD_OTHERWISE]


def test_with_a_bag_goes_everything_that_is_wrong_with_it():
    """Whoever puts back a bag for its label has not overlooked that it leaked."""
    lived = up_to(at_bench(WRONG_DRUG, LEAK), "drug")
    lived.type("cefazolin")
    up_to(lived, "")
    assert lived.outcome is Outcome.PASSED
    assert fates(lived) == [Fate.PUT_RIGHT, Fate.PUT_RIGHT]


def test_the_ordered_name_is_wrong_where_another_label_is_laid_out():
    """Reading the order aloud in place of the label is no answer; nor is a name that is on neither."""
    lived = up_to(at_bench(WRONG_DRUG), "drug")
    lived.type("ampicillin")
    assert lived.entries[-1]["slip"] == "not as it is"
    lived.type("famotidine")
    assert lived.entries[-1]["slip"] == "another name"
    lived.type("cefazolin")
    assert lived.entries[-1]["verdict"] == "found"


def test_a_label_that_is_misread_is_wrong():
    """Nothing is laid out: another name on it is a slip of the reader, and no finding."""
    lived = up_to(at_bench(), "drug")
    lived.type("cefazolin")
    assert lived.entries[-1]["slip"] == "another name"
    assert lived.guide.results().not_laid_out == ()


def test_a_fault_that_no_step_asks_for_lets_nobody_pass():
    """And the result says so."""
    lived = up_to(at_bench(UNASKED), "")
    assert lived.outcome is Outcome.NOT_PASSED
    assert fates(lived) == [Fate.NOT_ASKED]


def test_what_happens_at_a_step_is_found_there_by_a_report_too():
    """The patient says that it hurts; the learner says so before the question is answered."""
    lived = up_to(at_bench(PAIN), "patient")
    lived.type("it hurts her", "stop", "yes")
    assert lived.outcome is Outcome.STOPPED_FOR_CAUSE


def test_a_report_of_the_wrong_bag_finds_the_label():
    """ "This is the wrong bag" says what the label says otherwise."""
    lived = up_to(at_bench(WRONG_DRUG), "drug")
    lived.type("this is the wrong bag")
    up_to(lived, "")
    assert fates(lived) == [Fate.PUT_RIGHT]
    assert lived.outcome is Outcome.PASSED


def test_what_was_found_and_left_does_not_pass():
    """Nobody goes on past a fault by leaving its step out, or by setting it aside alone."""
    for words in (("go on", "done", "go on"), ("not applicable", "because it is so", "yes", "done")):
        lived = up_to(at_bench(PAIN), "patient")
        lived.type("in pain", *words)
        assert lived.outcome is Outcome.NOT_PASSED, lived.texts(Tone.RESULT)
        assert fates(lived) == [Fate.FOUND]
        assert any("left as it was" in text for text in lived.guide.results().failures)


def test_a_finding_takes_back_the_done_that_it_proves_false():
    """Neither chamber drips: the clamp was not opened; it is asked again, and is no longer done unaided."""
    lived = up_to(at_bench(), "drips")
    lived.type("neither")
    assert BENCH.steps[lived.guide.progress.cursor].id == "clamp"
    assert lived.entries[-1]["taken_back"] == ["clamp"]
    up_to(lived, "")
    assert ending(lived, "clamp") is Ending.CORRECTED
    assert lived.outcome is Outcome.PASSED


def test_the_instructor_settles_what_was_found():
    """Whoever sets the step aside with the code takes the fault over: the learner did what was to be done."""
    lived = up_to(at_bench(OTHER_PATIENT, code=True), "wristband", seen=False)
    lived.type("no")
    lived.give(InstructorCame(lived.at, proven=True))
    lived.type("overrule", "the right patient was brought", "yes")
    up_to(lived, "", seen=False)
    assert fates(lived) == [Fate.SET_ASIDE]
    assert lived.guide.results().failures == ()


# What rests on the learner's word.


def test_by_own_report_is_not_passed():
    """Without an instructor a check-off is complete by own report, and says what has to be seen."""
    lived = up_to(at_bench(), "", seen=False)
    results = lived.guide.results()
    assert lived.outcome is Outcome.OWN_REPORT
    assert not results.passed
    assert results.failures == ()
    assert set(results.to_see) == {BENCH.step("hands").say, BENCH.step("spike").say}


def test_practice_needs_no_instructor():
    """It ends as practice does."""
    lived = up_to(at_bench(mode=Mode.PRACTICE), "", seen=False)
    assert lived.outcome is Outcome.PASSED
    assert "Practice complete." in lived.texts(Tone.RESULT)


def test_what_each_step_rests_on():
    """A number or a name that agrees is worked out; what was marked is seen; the rest is the learner's word."""
    lived = up_to(at_bench(), "")
    rests = {line.id: line.evidence for line in lived.guide.results().steps}
    assert rests["drug"] == rests["dose"] == rests["inspect"] == Evidence.WORKED_OUT
    assert rests["hands"] == rests["spike"] == Evidence.SEEN
    assert rests["clamp"] == rests["drips"] == Evidence.OWN_WORD


def test_the_instructor_marks_the_step_that_was_done_last():
    """ "Seen" marks one step; a mark is gone when the step is opened again."""
    lived = up_to(at_bench(), "clamp", seen=False)
    lived.type("instructor here", "seen")
    steps = lived.guide.progress.steps
    assert (steps["hands"].seen_by, steps["spike"].seen_by) == ("", "instructor, without a code")
    assert lived.entries[-1]["seen"] == ["spike"]
    lived.type("seen", "go on")
    assert lived.guide.progress.steps["hands"].seen_by
    lived.type("back", "done")
    assert lived.guide.progress.steps["spike"].seen_by == ""


def test_the_learner_marks_nothing():
    """ "Seen" is a word of the instructor, who has to come first."""
    lived = up_to(at_bench(), "clamp", seen=False)
    lived.type("seen", "all seen")
    assert not lived.guide.progress.steps["spike"].seen_by


def test_an_open_check_off_tells_nothing_of_the_bench():
    """What is laid out is in no result before the attempt is over."""
    lived = up_to(at_bench(LEAK), "drug")
    assert lived.guide.results().faults == ()
    assert up_to(at_bench(LEAK, mode=Mode.PRACTICE), "drug").guide.results().faults != ()


def test_an_attempt_at_a_bench_can_be_taken_up():
    """The entries alone bring everything back: found, put right, seen."""
    lived = up_to(at_bench(LEAK, WRONG_DOSE), "dose")
    lived.type(*TELLS[WRONG_DOSE][1])
    up_to(lived, "gate")
    again = Guide(lived.guide.papers, Mode.CHECK_OFF)
    again.replay(lived.entries)
    assert again.progress == lived.guide.progress


def test_a_stopped_check_off_does_not_tell_what_was_missed():
    """It can be resumed, and the fault is still there to be found."""
    lived = up_to(at_bench(ALLERGY), "allergies")
    lived.type("safe to give", "stop", "yes")
    assert lived.outcome is Outcome.STOPPED
    assert ALLERGY.what not in str(lived.guide.results().body())
    assert ALLERGY.what not in " ".join(say.text for say in lived.says)
