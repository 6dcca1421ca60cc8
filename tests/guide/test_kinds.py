"""Steps that ask for a choice, a note, an observation or a second person; conditions; the instructor."""

import pytest

from assistant.guide.effects import Outcome, Tone
from assistant.guide.events import InstructorCame, Resumed
from assistant.guide.guide import WITH_CODE
from assistant.guide.progress import Mode, State
from assistant.guide.result import Ending
from assistant.spoken.meaning import Command
from tests.guide.kinds import KINDS, SMOOTH_KINDS
from tests.guide.lived import SMOOTH, again, begin


def lines(lived):
    return {line.id: line for line in lived.guide.results().steps}


def started(count: int = 0, mode: Mode = Mode.PRACTICE, **pins: str):
    """An attempt at `KINDS` after so many of its smooth answers."""
    lived = begin(mode, KINDS, **pins)
    lived.do(SMOOTH_KINDS[:count])
    return lived


def instructor(lived, *words: str, proven: bool = True):
    """The instructor comes with the code and says these words."""
    lived.give(InstructorCame(lived.at, proven=proven))
    lived.type(*words)


@pytest.mark.parametrize("mode", list(Mode))
def test_every_kind_smoothly(mode):
    """Without a slip every step that applies is done unaided, in both modes."""
    lived = started(mode=mode)
    lived.do(SMOOTH_KINDS)
    assert lived.outcome is Outcome.PASSED
    endings = {line.id: line.ending for line in lived.guide.results().steps}
    assert {name for name, ending in endings.items() if ending is not Ending.UNAIDED} == {"report", "drug"}
    assert endings["report"] is endings["drug"] is Ending.NOT_APPLICABLE


CHOICES = [
    # typed, the step afterwards, what is said
    ("left arm", "sore", "Left arm."),
    ("the left one", "sore", "Left arm."),
    ("right arm", "site", "Look at both arms."),
    ("neither", "site", "There is a line: look again."),
    ("it's the left arm", "sore", "Left arm."),
    ("not the left arm", "site", "I did not understand that."),
    ("is it the left arm", "site", "I did not understand that."),
    ("arm", "site", "I did not understand that."),
    ("yes", "site", "Please say left arm, right arm or neither."),
    ("the left leg", "site", "I did not understand that."),
]


@pytest.mark.parametrize(("words", "step", "said"), CHOICES)
def test_a_choice_is_taken_as_it_is_written_or_in_a_sentence_of_its_own(words, step, said):
    """Only a choice or one of its phrases is taken; the wrong one is held with its own advice."""
    lived = started()
    lived.type(words)
    assert lived.step == step
    assert said in lived.texts()


def test_a_wrong_choice_counts_as_a_slip():
    """What was chosen first stays in the result."""
    lived = started()
    lived.type("right arm", "left arm")
    line = lines(lived)["site"]
    assert (line.ending, line.first, line.final) == (Ending.CORRECTED, "right arm", "left arm")
    assert (line.expected, line.slips) == ("left arm", ("another choice",))


@pytest.mark.parametrize(("answer", "then"), [("sore", "report"), ("not sore", "rate")])
def test_a_step_applies_by_an_earlier_answer(answer, then):
    """A step that does not apply is passed over without a word; one entry tells why."""
    lived = started(1)
    lived.type(answer)
    assert lived.step == then
    if then == "rate":
        told = lived.entries[-1]["passed_over"]
        assert told["report"] == "step sore was not answered with sore"
        assert told["drug"] == "the order has no secondary.drug"


def test_a_corrected_answer_brings_a_step_back():
    """The gate holds for a critical step that applies after all."""
    lived = started(2)
    lived.type("correct that", "sore")
    assert lived.step == "report"
    lived.type("done")
    lived.do(SMOOTH_KINDS[2:])
    assert lived.outcome is Outcome.PASSED
    assert lines(lived)["report"].ending is Ending.UNAIDED


def test_back_steps_over_what_does_not_apply():
    """Back leads to the step before that applies."""
    lived = started(2)
    lived.type("back")
    assert lived.step == "sore"


def test_a_note_is_read_back_and_kept_as_it_was_said():
    """No to the read-back keeps nothing; yes keeps the words and ends the attempt's last step."""
    lived = started(9)
    lived.type("line runs", "no")
    assert lived.state is State.ASKING
    assert "Then please say the note again." in lived.texts()
    lived.type("line runs well", "yes")
    assert lines(lived)["note"].final == "line runs well"
    assert lived.entries[-1]["kept"] == "line runs well"


def test_commands_keep_their_meaning_in_a_note():
    """A word of command is never taken for a note."""
    lived = started(9)
    lived.type("pause", "go on", "where am i")
    assert lived.state is State.ASKING


# The second person.


def test_the_second_person_sees_and_hears_no_number():
    """From the call of the second person on, nothing tells the learner's number; the screen is covered first."""
    lived = started(3)
    lived.type("yes")
    assert lived.covered == 1
    assert lived.step == "second"
    count = len(lived.says)
    lived.type("again", "more", "i need help", "i need help", "where am i", "what is my order", "spell it")
    told = " ".join(say.text + say.speech for say in lived.says[count:])
    assert "83.3" not in told
    assert "eighty three" not in told
    assert lived.entries[-1]["by"] == "second person"


@pytest.mark.parametrize("mode", list(Mode))
def test_two_numbers_are_compared_after_both_were_kept(mode):
    """Another number than the learner's is held; in a check-off neither is told; both stand in the entry."""
    lived = started(4, mode)
    count = len(lived.says)
    lived.type("833", "yes")
    assert lived.step == "second"
    entry = lived.entries[-1]
    assert (entry["kept"], entry["first_person"], entry["verdict"]) == ("833 mL/h", "83.3 mL/h", "does not agree")
    held = " ".join(say.text for say in lived.says[count:] if say.tone is Tone.HOLD)
    assert "Each of you works it out again." in held
    assert ("83.3" in held) is (mode is Mode.PRACTICE)
    lived.type("83.3", "yes")
    assert lived.step == "technique"
    assert (lines(lived)["second"].by, lines(lived)["rate"].by) == ("second person", "learner")


def test_nobody_checks_a_number_that_is_not_there():
    """The learner's number comes first, whatever was left open."""
    lived = started(2)
    lived.type("go on")
    assert lived.step == "rate"
    assert lived.says[-2].text == "This comes first:"
    assert lived.guide.progress.steps["rate"].cues == []


# The instructor.


def test_only_the_instructor_answers_an_observation():
    """Done and yes from the learner close nothing; seen does, and the entry says whose word it was."""
    lived = started(6)
    lived.type("done", "yes")
    assert lived.step == "technique"
    assert "Only your instructor can answer this" in lived.texts()
    lived.type("not seen")
    assert lived.step == "technique"
    assert "Take a new tip." in lived.texts(Tone.HOLD)
    lived.type("seen")
    assert (lived.entries[-1]["source"], lived.entries[-1]["by"]) == ("instructor", "instructor, without a code")
    assert lines(lived)["technique"].by == "instructor, without a code"


def test_with_a_code_the_instructor_speaks_only_with_it():
    """Where there is a code, "seen" from anybody is refused, and so is an instructor without the code."""
    lived = started(6, Mode.CHECK_OFF, instructor=WITH_CODE)
    lived.type("seen", "instructor here", "seen")
    instructor(lived, "seen", proven=False)
    assert lived.step == "technique"
    assert lines(lived)["technique"].tries == 0
    instructor(lived, "seen")
    assert lived.step == "gate"
    assert lines(lived)["technique"].by == "instructor"
    assert lived.entries[-1]["source"] == "instructor"
    lived.type("done")
    assert lived.entries[-1]["source"] == "typed"


def test_what_was_not_seen_is_told_so():
    """An observation that nobody made ends as not seen by the instructor, and fails where it is critical."""
    lived = started(6)
    lived.type("go on", "stop", "close the attempt")
    assert lines(lived)["technique"].ending is Ending.NOT_SEEN
    assert any("Not seen by the instructor" in failure for failure in lived.guide.results().failures)


def test_the_instructor_overrules_a_held_gate_with_a_reason():
    """A critical step that holds a gate is set aside by the instructor, with a reason that was read back."""
    lived = started(0, Mode.CHECK_OFF, instructor=WITH_CODE)
    lived.type("go on", *SMOOTH_KINDS[1:6])
    instructor(lived, "seen")
    assert lived.step == "site"
    instructor(lived, "overrule", "the arm is a model without a line", "yes")
    assert lived.step == "gate"
    entry = lived.entries[-1]
    assert (entry["verdict"], entry["by"], entry["source"]) == ("overruled", "instructor", "instructor")
    line = lines(lived)["site"]
    assert (line.ending, line.by) == (Ending.NOT_APPLICABLE, "instructor")
    assert line.reason == "the arm is a model without a line"


def test_a_learner_cannot_overrule():
    """In a check-off nobody sets a critical step aside without the instructor's code."""
    lived = started(0, Mode.CHECK_OFF)
    lived.type("overrule", "not applicable", "instructor here", "overrule")
    assert lived.state is State.WITH_INSTRUCTOR
    assert "only an instructor with a code" in lived.texts(Tone.HOLD)
    assert lines(lived)["site"].ending is Ending.NOT_ANSWERED


def test_without_a_code_nobody_overrules_a_critical_step_in_practice_either():
    """Whoever says "instructor here" is not proven; the prompt offers only what is then taken."""
    lived = started(0)
    lived.type("instructor here")
    assert lived.says[-1].text == "Instructor: say cue given. Say go on to hand back to the learner."
    lived.type("overrule")
    assert lived.state is State.WITH_INSTRUCTOR
    assert lived.entries[-1]["verdict"] == "refused"
    lived.type("go on", "left arm", "instructor here")
    assert lived.says[-1].text.startswith("Instructor: say cue given, or overrule.")
    lived.type("overrule", "the arm is a model", "yes")
    assert lived.step == "rate"


def test_a_cue_of_the_instructor_is_counted():
    """What the instructor helps with stands beside the assistant's own cues; go on hands back."""
    lived = started()
    instructor(lived, "cue given", "go on")
    lived.type("left arm")
    assert lines(lived)["site"].cues == ("instructor",)
    assert lines(lived)["site"].ending is Ending.CUED


def test_the_instructor_is_gone_after_an_interruption():
    """Nobody inherits the instructor's word when an attempt is taken up again."""
    lived = started()
    instructor(lived)
    lived.give(Resumed(lived.at))
    assert lived.state is State.ASKING
    lived.type("left arm")
    assert "by" not in lived.entries[-1]


INHERITED = [
    # how an overruling is broken off; None is a resumption
    ("pause", "go on"),
    ("stop", "no"),
    ("stop", "yes", None),
    (None,),
    ("a reason of mine", "pause", "go on"),
    ("a reason of mine", "stop", "yes", None),
    ("a reason of mine", None),
]


@pytest.mark.parametrize("way", INHERITED, ids=[", ".join(map(str, row)) for row in INHERITED])
def test_nobody_goes_on_with_an_overruling_that_was_broken_off(way):
    """After a pause, a stop or an interruption the learner finds the step as it was, and cannot set it aside."""
    lived = started(0, Mode.CHECK_OFF, instructor=WITH_CODE)
    instructor(lived, "overrule")
    for words in way:
        if words is None:
            lived.outcome = None
            lived.give(Resumed(lived.at))
        else:
            lived.type(words)
    assert lived.state is State.ASKING
    lived.type("I say so", "yes")
    assert lines(lived)["site"].ending is Ending.NOT_ANSWERED
    assert lines(lived)["site"].reason == ""


# Cues and detail.


def test_cues_climb_from_mild_to_strong():
    """Each "I need help" says the next cue, the last one again and again; each is counted by its level."""
    lived = started()
    lived.type("i need help", "i need help", "i need help", "i need help")
    said = lived.texts(Tone.CUE)
    assert [said.count(cue) for cue in KINDS.steps[0].cues] == [1, 1, 2]
    assert [entry["level"] for entry in lived.entries[-4:]] == [1, 2, 3, 3]
    assert lines(lived)["site"].cues == ("help", "help, level 2", "help, level 3", "help, level 3")


def test_more_tells_the_detail_a_breath_at_a_time():
    """The rest of a long line, the detail and the reason are no cue; at the end that is told."""
    say = (
        "Open the package of the administration set without touching the spike, close its roller clamp all the way, "
        "and hang the bag at eye level. Then take the cap off the port of the bag. Is the port dry and clean?"
    )
    steps = (KINDS.steps[1].model_copy(update={"say": say, "more": "Twist it.", "why": "Germs."}), *KINDS.steps[2:])
    lived = begin(checklist=KINDS.model_copy(update={"steps": steps}))
    assert lived.says[-1].text.endswith(say)
    assert "Is the port dry" not in lived.says[-1].speech
    lived.type("more")
    assert "Is the port dry and clean?" in lived.says[-2].text
    lived.type("more", "more", "more")
    assert lived.texts(Tone.STEP).split("\n")[-2:] == ["Twist it.", "Germs."]
    assert "There is nothing more to say" in lived.says[-1].text
    assert lines(lived)["sore"].cues == ()


def test_abbreviations_are_spoken_in_full():
    """A short form of the checklist is shown as written and spoken in full."""
    steps = (KINDS.steps[9].model_copy(update={"say": "Read the VTBI."}),)
    lived = begin(checklist=KINDS.model_copy(update={"steps": steps}))
    assert lived.says[-1].text.endswith("Read the VTBI.")
    assert lived.says[-1].speech == "Read the volume to be infused."


@pytest.mark.parametrize("place", range(10))
def test_every_command_is_answered_at_every_kind_of_step(place):
    """Whatever is asked, each command is recorded, answered, and taken for nothing else."""
    for command in Command:
        lived = started(place)
        entries, said = len(lived.entries), len(lived.says)
        lived.type(command.value)
        assert len(lived.entries) == entries + 1
        assert lived.entries[-1]["input"] == command.value
        assert len(lived.says) > said


NO_ANSWERS = [
    # the step, its place among the smooth answers, words that answer some other kind of step
    ("site", 0, ("yes", "done", "83.3 mL/h", "seen", "lactated ringer's", "not sore")),
    ("rate", 2, ("yes", "done", "left arm", "seen", "17 kg")),
    ("second", 4, ("yes", "done", "left arm", "seen", "17 kg")),
    ("technique", 6, ("yes", "no", "done", "left arm", "83.3 mL/h", "it was done well")),
    ("gate", 7, ("left arm", "83.3 mL/h", "seen")),
    ("drops", 8, ("done", "left arm", "83.3 mL/h", "seen")),
]


@pytest.mark.parametrize(("step", "place", "words"), NO_ANSWERS, ids=[row[0] for row in NO_ANSWERS])
def test_an_answer_of_another_kind_is_no_answer(step, place, words):
    """What answers another kind of step is not understood, and nothing is kept or counted."""
    for word in words:
        lived = started(place)
        assert lived.step == step
        lived.type(word)
        assert (lived.step, lived.state, lived.entries[-1]["input"]) == (step, State.ASKING, "not understood")
        assert (lines(lived)[step].tries, lines(lived)[step].final) == (0, "")


def test_every_prefix_of_every_kind_replays():
    """A whole attempt with the instructor and a second person is lived again from each of its prefixes."""
    lived = begin(Mode.CHECK_OFF, KINDS, instructor=WITH_CODE)
    seen = [lived.guide.progress]
    for words in ("right arm", "i need help", "yes", *SMOOTH_KINDS[:4], "80", "yes", "83.3", "yes"):
        lived.type(words)
        seen.append(lived.guide.progress)
    for words in (None, "cue given", "not seen", None, "overrule", "no tip today", "yes", "done", "yes", "ok", "yes"):
        if words is None:
            lived.give(InstructorCame(lived.at, proven=True))
        else:
            lived.type(words)
        seen.append(lived.guide.progress)
    assert lived.outcome is Outcome.NOT_PASSED
    assert len(lived.entries) == len(seen)
    for length in range(1, len(seen) + 1):
        other = again(lived)
        other.replay(lived.entries[:length])
        assert other.progress == seen[length - 1]


def test_the_small_checklist_has_no_instructor():
    """An attempt without observations needs nobody else."""
    lived = begin()
    lived.do(SMOOTH)
    assert {entry.get("by", "learner") for entry in lived.entries} == {"learner"}
