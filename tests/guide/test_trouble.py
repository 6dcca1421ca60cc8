"""What the learner finds and reports: on record, free of cost, made safe first, and then back to the right step."""

from decimal import Decimal

import pytest

from assistant.checklist.model import Checklist, ChoiceAsked, QuestionAsked, Step, TroublePlan
from assistant.guide.result import Ending
from assistant.guide.table import LIVE
from assistant.spoken.meaning import Trouble
from tests.guide.kinds import KINDS
from tests.guide.lived import CHECKLIST, SMOOTH, Mode, Outcome, State, Status, Tone, again, begin, reach

REPORTS = [
    ("there's air in the line", Trouble.AIR),
    ("it's leaking", Trouble.LEAK),
    ("i dropped it", Trouble.DROPPED),
    ("i touched the tip", Trouble.CONTAMINATED),
    ("the pump is beeping", Trouble.ALARM),
    ("it hurts her", Trouble.PAIN),
    ("this is the wrong bag", Trouble.WRONG_ITEM),
    ("i made a mistake two steps ago", Trouble.MISTAKE),
    ("it is cracked", Trouble.DAMAGED),
    ("something is wrong", Trouble.OTHER),
]
BAG = Checklist(
    name="bag",
    title="A bag",
    version="1",
    purpose="Look at a bag.",
    cautions=("Training only.",),
    digest="0" * 64,
    steps=(
        Step(id="label", part="Bag", say="Read the label.", critical=True),
        Step(
            id="leaks",
            part="Bag",
            say="Squeeze the bag. Is it dry?",
            critical=True,
            expect=QuestionAsked(kind="question"),
            if_wrong="Take another bag.",
            reopen=("label",),
        ),
        Step(id="gate", part="Bag", say="Stop, and look once more.", critical=True, gate=True),
        Step(id="hang", part="Bag", say="Hang it up."),
        Step(id="write", part="Bag", say="Write it down."),
    ),
    troubles=(
        TroublePlan(kind=Trouble.LEAK, say="Take this bag down.", back_to="label", reopen=("leaks",), at=("hang",)),
        TroublePlan(kind=Trouble.LEAK, say="Clamp the line."),
    ),
)


def lines(lived):
    return {line.id: line for line in lived.guide.results().steps}


@pytest.mark.parametrize(("words", "kind"), REPORTS)
@pytest.mark.parametrize("mode", list(Mode))
def test_every_report_is_on_record_and_costs_nothing(words, kind, mode):
    """Said at a step to do: what to do is said, the step is asked again, and the result is the smooth one."""
    lived = begin(mode)
    lived.type("done", words)
    entry = lived.entries[-1]
    assert (entry["input"], entry["verdict"]) == ("trouble", "trouble")
    assert entry["trouble"] == {"kind": kind.value, "words": words}
    said = lived.guide.papers.language.sentences.trouble(kind)
    assert said in lived.texts(Tone.HOLD)
    assert lived.step == ("hands" if kind is Trouble.MISTAKE else "gloves")
    lived.do(SMOOTH[0 if kind is Trouble.MISTAKE else 1 :])
    assert lived.outcome is Outcome.PASSED
    assert {line.ending for line in lines(lived).values()} == {Ending.UNAIDED}
    (found,) = lived.guide.results().troubles
    assert (found.kind, found.words) == (kind.value, words)


@pytest.mark.parametrize("state", [state for state in LIVE if state is not State.GIVING_REASON])
def test_trouble_is_taken_in_every_state(state):
    """It closes nothing, drops a read-back, and ends nothing but what it spoils; a reason is free words."""
    lived = reach(state)
    before = {name: step.status for name, step in lived.guide.progress.steps.items()}
    lived.type("there's air in the line")
    assert lived.entries[-1]["verdict"] == "trouble"
    moved = (State.READING_BACK, State.WAITING, State.OFFERING_CUE)
    assert lived.state is (State.ASKING if state in moved else state)
    assert lived.guide.progress.reading_back is None
    assert {name: step.status for name, step in lived.guide.progress.steps.items()} == before
    other = again(lived)
    other.replay(lived.entries)
    assert other.progress == lived.guide.progress


def test_only_what_spoils_a_wait_breaks_it_off():
    """An alarm lets the time run; what was dropped makes it start anew, when the learner says so."""
    lived = reach(State.WAITING)
    lived.type("the pump is beeping")
    assert lived.state is State.WAITING
    lived.type("pause", "i dropped it", "go on")
    assert lived.state is State.ASKING
    lived.wait(60)
    assert lived.step == "scrub"
    lived.type("start")
    lived.wait(15)
    assert lived.step == "rate"


def test_a_read_back_that_stands_is_dropped():
    """The number that was read back is not kept, whatever is said after the report."""
    lived = reach(State.READING_BACK)
    lived.type("it's leaking", "yes")
    assert lived.step == "rate"
    assert lived.guide.progress.steps["rate"].final == ""


def test_a_finding_asks_again_what_hangs_on_it():
    """Another bag: its label is read again once the fault is put right, said once, and nothing of it costs."""
    lived = begin(Mode.CHECK_OFF, BAG)
    lived.type("done", "no")
    assert lived.entries[-1]["verdict"] == "found"
    assert lived.step == "leaks"
    lived.type("yes")
    assert lived.entries[-1]["reopened"] == ["label"]
    assert lived.step == "label"
    assert lived.guide.progress.steps["label"].status is Status.OPEN
    lived.type("done", "done", "done", "done")
    assert lived.outcome is Outcome.PASSED
    assert {line.ending for line in lines(lived).values()} == {Ending.UNAIDED}
    assert (lines(lived)["leaks"].found, lines(lived)["label"].reopened, lines(lived)["label"].corrections) == (1, 1, 0)
    assert lived.texts().count("Now repeat the checks that depend on it.") == 1


def test_a_choice_may_tell_of_a_fault():
    """Where the author says so, an alternative is a finding and no wrong answer; what hangs on it is asked again."""
    asked = ChoiceAsked(kind="choice", choices=("dry", "wet", "torn"), right="dry", faults=("wet",))
    steps = (BAG.steps[0], BAG.steps[1].model_copy(update={"expect": asked}), *BAG.steps[2:])
    lived = begin(Mode.CHECK_OFF, BAG.model_copy(update={"steps": steps}))
    lived.type("done", "wet", "dry")
    assert lived.step == "label"
    lived.type("done", "done", "done", "done")
    assert (lines(lived)["leaks"].ending, lines(lived)["leaks"].slips) == (Ending.UNAIDED, ())
    lived = begin(Mode.CHECK_OFF, BAG.model_copy(update={"steps": steps}))
    lived.type("done", "torn", "dry")
    assert lived.step == "label"
    assert lines(lived)["leaks"].ending is Ending.CORRECTED


def test_a_fault_that_is_never_put_right_is_not_passed():
    """An honest no that stays is no mistake of the learner's, and no pass."""
    lived = begin(Mode.PRACTICE, BAG)
    lived.type("done", "no", "go on")
    assert lived.step == "leaks"
    lived.type("stop", "close the attempt")
    assert lines(lived)["leaks"].ending is Ending.NOT_PUT_RIGHT
    assert not lived.guide.results().passed


def test_a_plan_says_what_then_and_leads_back():
    """The plan for the step where it is reported comes first; the steps that it names are asked again."""
    lived = begin(Mode.CHECK_OFF, BAG)
    lived.type("done", "it's leaking")
    assert "Clamp the line." in lived.texts(Tone.HOLD)
    assert lived.step == "leaks"
    lived.type("yes", "done", "it's leaking")
    assert "Take this bag down." in lived.texts(Tone.HOLD)
    assert lived.step == "label"
    lived.type("done", "yes", "done", "done")
    assert lived.outcome is Outcome.PASSED
    assert {line.ending for line in lines(lived).values()} == {Ending.UNAIDED}
    assert "gate" not in lines(lived)["label"].cues


def test_a_plan_holds_after_a_pause():
    """Reported in a pause, it leads back when the attempt goes on."""
    lived = begin(Mode.PRACTICE, BAG)
    lived.type("done", "yes", "done", "pause", "it's leaking")
    assert lived.state is State.PAUSED
    lived.type("go on")
    assert (lived.state, lived.step) == (State.ASKING, "label")


def test_a_mistake_is_mended_at_no_cost_however_far_back():
    """ "I made a mistake" leads back one step; going further back and answering again costs nothing, once."""
    lived = begin()
    lived.type("done", "done", "i made a mistake two steps ago", "back")
    assert lived.step == "hands"
    lived.type("done")
    assert lines(lived)["hands"].ending is Ending.UNAIDED
    lived.type("back", "done")
    assert lines(lived)["gloves"].ending is Ending.CORRECTED


DOUBTED = [
    # state, what is heard with doubt
    (State.ASKING, "done"),
    (State.ASKING, "yes"),
    (State.READING_BACK, "yes"),
    (State.STOPPING, "yes"),
    (State.ASKING_CONSENT, "yes"),
    (State.OFFERING_CUE, "yes"),
    (State.WITH_INSTRUCTOR, "cue given"),
]


@pytest.mark.parametrize(("state", "words"), DOUBTED)
def test_nothing_is_taken_that_was_heard_with_doubt(state, words):
    """It is asked once more, as often as it is doubtful, and costs nothing; heard clearly, it counts."""
    lived = reach(state)
    before = lived.guide.progress
    for _ in range(1 if state is State.ASKING else 3):
        lived.hear(words, doubtful=True)
        assert (lived.entries[-1]["input"], lived.entries[-1]["verdict"]) == ("heard with doubt", "asked once more")
        assert lived.guide.progress.steps == before.steps
        assert lived.state is state
    lived.hear(words)
    assert lived.guide.progress != before


@pytest.mark.parametrize(("checklist", "words", "after"), [(CHECKLIST, "done", "gloves"), (KINDS, "left arm", "sore")])
def test_what_is_doubted_twice_is_read_back(checklist, words, after):
    """As a number is: only a clear yes takes it, a no asks anew, and neither costs anything."""
    for answers, step in (("no", None), ("yes", after)):
        lived = begin(Mode.CHECK_OFF, checklist)
        asked = lived.step
        lived.hear(words, doubtful=True)
        lived.hear(words, doubtful=True)
        assert lived.says[-1].text == f'I heard "{words}". Is that right?'
        assert lived.state is State.READING_BACK
        lived.hear("yes", doubtful=True)
        assert (lived.state, lived.step) == (State.READING_BACK, asked)
        lived.hear(answers)
        assert (lived.state, lived.step) == (State.ASKING, step or asked)
        if step:
            assert lines(lived)[asked].ending is Ending.UNAIDED


def test_another_answer_between_two_doubts_starts_anew():
    """A doubt is forgotten once something else was understood."""
    lived = begin(Mode.CHECK_OFF)
    lived.hear("done", doubtful=True)
    lived.hear("not yet")
    lived.hear("done", doubtful=True)
    assert lived.entries[-1]["verdict"] == "asked once more"


def test_a_choice_heard_with_doubt_is_asked_once_more():
    """With the alternatives, whichever is right."""
    lived = begin(Mode.CHECK_OFF, KINDS)
    lived.hear("left arm", doubtful=True)
    assert lived.says[-1].text == 'I heard "left arm". Please say left arm, right arm or neither.'
    assert lived.step == "site"
    lived.hear("left arm")
    assert lived.step == "sore"
    assert lines(lived)["site"].ending is Ending.UNAIDED


@pytest.mark.parametrize("answer", ["no", "done", "okay", "go on", "gibberish", "back"])
def test_in_a_check_off_help_is_given_only_on_a_yes(answer):
    """Its price is told first; anything but a yes leads back, counts nothing, and closes nothing."""
    lived = begin(Mode.CHECK_OFF)
    lived.type("i need help")
    assert lived.says[-1].text == "That counts as a cue. Shall I?"
    lived.type(answer)
    assert (lived.state, lived.step) == (State.ASKING, "hands")
    assert lines(lived)["hands"].cues == ()
    assert "five moments" not in lived.texts()
    lived.type("i need help", "yes")
    assert "five moments" in lived.texts(Tone.CUE)
    assert lived.entries[-1]["cue"] == "help"
    lived.type("done", "i need help")
    assert lived.entries[-1]["cue"] == "help"
    assert lived.texts().count("That counts as a cue.") == 2


def test_help_that_does_not_help_twice_offers_the_instructor_and_the_menu_comes_once():
    """The second help at a step ends with the instructor; what can be said is told at the first one only."""
    lived = begin()
    lived.type("i need help")
    assert "call your instructor" not in lived.texts(Tone.CUE)
    lived.type("i need help", "done", "i need help")
    assert lived.texts(Tone.CUE).count("If that does not help, call your instructor.") == 1
    assert lived.texts(Tone.CUE).count("You can always say") == 1
    lived.type("what can i say", "hold on")
    assert "You can always say" in lived.says[-2].text
    assert lived.says[-1].text == "Take your time."
    assert lived.step == "gloves"


def test_who_calls_the_instructor_is_on_record_and_pays_nothing():
    """It is no cue, nothing is answered by it, and it goes at any time."""
    lived = begin()
    lived.type("call my instructor", "i need the instructor")
    assert [entry["input"] for entry in lived.entries[-2:]] == ["call my instructor"] * 2
    assert "Raise your hand" in lived.says[-1].text
    assert lived.step == "hands"
    assert not any("cue" in entry for entry in lived.entries)


def test_a_number_in_one_breath_with_a_no_is_read_back():
    """ "No, a thousand": the other number is read back in its turn, and kept only on a yes."""
    lived = reach(State.READING_BACK)
    lived.type("no, 83 mL/h")
    assert lived.state is State.READING_BACK
    assert lived.says[-1].text.startswith("83 mL/h")
    assert lived.guide.progress.steps["rate"].final == ""
    other = again(lived)
    other.replay(lived.entries)
    assert other.progress == lived.guide.progress


def test_a_hurried_check_off_says_so_and_changes_nothing():
    """Hands-on steps that are done faster than their lines can be read; in practice nobody counts."""
    for mode in Mode:
        lived = begin(mode)
        lived.do(SMOOTH)
        results = lived.guide.results()
        assert results.passed
        assert results.hands_on == 5
        hurried = [(one.step, one.seconds, one.read_s) for one in results.hurried]
        # 3 words at 175 words a minute are 1.03 seconds, rounded up.
        told = "hands-on steps were reported done faster than they can be read." in lived.texts(Tone.RESULT)
        assert told is (mode is Mode.CHECK_OFF)
        assert (("hands", 1, 2) in hurried) is (mode is Mode.CHECK_OFF)
    slow = begin(Mode.CHECK_OFF)
    for item in SMOOTH:
        slow.wait(5)
        slow.do((item,))
    assert slow.guide.results().hurried == ()
    assert slow.guide.results().score_percent == Decimal(100)


def test_a_stopped_attempt_leaves_nothing_out():
    """The step that was asked when it stopped is not answered; those behind it are not reached."""
    lived = begin(Mode.CHECK_OFF)
    lived.type("done", "stop", "yes")
    assert lines(lived)["gloves"].ending is Ending.NOT_ANSWERED
    assert lines(lived)["fluid"].ending is Ending.NOT_REACHED


def test_the_checklist_of_these_tests_has_no_plans():
    """What the reports above are answered with comes from the language."""
    assert CHECKLIST.troubles == ()
