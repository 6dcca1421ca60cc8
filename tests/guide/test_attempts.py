"""Whole attempts and their turns: what is said, what is held, how it ends."""

from datetime import timedelta
from decimal import Decimal

import pytest

from assistant.errors import OrderError
from assistant.guide import Guide, Papers
from assistant.guide.effects import Adjust, Outcome, Tone
from assistant.guide.events import Resumed
from assistant.guide.progress import Mode, State, Status
from assistant.guide.result import Ending
from assistant.guide.table import LIVE
from assistant.orders.key import KeyEntry
from assistant.spoken import ENGLISH
from assistant.spoken.expect import NumberExpected
from assistant.spoken.meaning import Command
from tests.guide.diagram import diagram
from tests.guide.lived import CHECKLIST, KEY, SMOOTH, begin, reach


def endings(lived):
    return {line.id: line.ending for line in lived.guide.results().steps}


@pytest.mark.parametrize("mode", list(Mode))
def test_a_smooth_attempt_is_passed(mode):
    """Without a slip every step is done unaided and the seal holds the result."""
    lived = begin(mode)
    lived.do(SMOOTH)
    assert lived.outcome is Outcome.PASSED
    assert set(endings(lived).values()) == {Ending.UNAIDED}
    assert lived.sealed is not None
    assert lived.sealed["results"]["score_percent"] == "100"


def test_the_opening_says_what_it_is_not():
    """The cautions come before the first step."""
    said = begin().texts()
    assert said.index("controls no pump and treats no patient") < said.index("Clean your hands.")
    assert "Local policy and the maker's instructions come first" in said


WRONG_RATE = [
    # stated, slip as recorded
    ("125", "other"),
    ("833", "tenfold"),
    ("8.33 mL/h", "tenfold"),
    ("950", "swapped"),
]


@pytest.mark.parametrize(("stated", "slip"), WRONG_RATE)
def test_practice_holds_a_wrong_number_with_the_working(stated, slip):
    """A wrong rate is held, named, explained, and can be tried again."""
    lived = begin()
    lived.do(SMOOTH[:5])
    lived.type(stated, "yes")
    assert (lived.step, lived.state) == ("rate", State.ASKING)
    assert lived.entries[-1]["slip"] == slip
    assert "1,000 mL over 12 h is 83.3 mL/h" in lived.texts(Tone.HOLD)
    lived.do(SMOOTH[5:])
    assert lived.outcome is Outcome.PASSED
    assert endings(lived)["rate"] is Ending.CORRECTED


@pytest.mark.parametrize(("stated", "slip"), WRONG_RATE)
def test_a_check_off_holds_without_giving_the_answer_away(stated, slip):
    """In a check-off the right number is never said before the learner says it."""
    lived = begin(Mode.CHECK_OFF)
    lived.do(SMOOTH[:5])
    lived.type("i need help", "yes", "more", "what is my order", "spell it", stated, "yes")
    assert lived.entries[-1]["slip"] == slip
    spoken = " ".join(say.text + say.speech for say in lived.says)
    assert "83.3" not in spoken
    assert "eighty three point three" not in spoken
    assert lived.step == "rate"


def test_no_to_the_read_back_keeps_nothing_and_asks_for_digits():
    """A number that was misheard is asked for again, digit by digit."""
    lived = begin()
    lived.do(SMOOTH[:5])
    lived.type("eighty three point three", "no")
    assert lived.guide.expectation() == NumberExpected("mL/h", digits_only=True)
    assert "kept" not in lived.entries[-1]
    lived.type("eighty three point three")
    assert lived.state is State.ASKING
    lived.type("eight three point three", "yes")
    assert lived.step == "volume"


def test_two_meanings_are_asked_about():
    """What could be two numbers is never guessed."""
    lived = begin()
    lived.do(SMOOTH[:5])
    lived.type("ten fifty")
    assert lived.state is State.ASKING
    assert lived.entries[-1]["input"] == "two meanings"
    assert "Please say it digit by digit" in lived.texts(Tone.UNCLEAR)


def test_a_number_corrected_while_speaking_is_asked_for_digit_by_digit():
    """One fifty, no, one fifteen: neither is read back; the digits decide."""
    lived = begin()
    lived.do(SMOOTH[:5])
    lived.hear("one fifty no one fifteen")
    assert lived.state is State.ASKING
    assert lived.guide.expectation() == NumberExpected("mL/h", digits_only=True)


def test_figures_from_a_recogniser_are_no_digits():
    """Where digits are wanted, a recogniser's "15" does not show that they were said."""
    lived = begin()
    lived.do(SMOOTH[:5])
    lived.hear("fifteen", ear="bundled")
    lived.hear("no")
    lived.hear("15")
    assert lived.state is State.ASKING
    lived.hear("1 5")
    assert lived.state is State.READING_BACK


def test_done_is_no_answer_to_a_read_back():
    """Only a clear yes keeps a number."""
    lived = begin()
    lived.do(SMOOTH[:6])
    lived.type("done", "okay")
    assert lived.state is State.READING_BACK


def test_a_wrong_bag_is_held():
    """A label that is not the ordered one is held until the right one is read."""
    lived = begin()
    lived.type("done", "done", "normal saline")
    assert lived.step == "fluid"
    assert "is not what your order says" in lived.texts(Tone.HOLD)
    lived.do(SMOOTH[2:])
    assert endings(lived)["fluid"] is Ending.CORRECTED


def test_a_name_that_was_heard_is_read_back():
    """A name by voice is compared only after a clear yes; no asks for it again."""
    lived = begin()
    lived.type("done", "done")
    lived.hear("normal saline")
    assert lived.state is State.READING_BACK
    lived.hear("no")
    assert (lived.step, lived.state) == ("fluid", State.ASKING)
    assert lived.guide.progress.steps["fluid"].tries == 0
    lived.hear("lactated ringer's")
    lived.hear("yes")
    assert lived.step == "scrub"
    assert endings(lived)["fluid"] is Ending.UNAIDED


def test_a_gate_leads_back_to_what_is_open():
    """Leaving a critical step open is told, and the gate goes back to it."""
    lived = begin()
    lived.type("go on")
    assert "critical step" in lived.says[-2].text
    lived.do(SMOOTH[1:9])
    assert lived.step == "hands"
    assert "The gate holds" in lived.texts(Tone.HOLD)
    lived.type("done", "done", "done", "yes", "done")
    assert lived.outcome is Outcome.PASSED
    assert endings(lived)["hands"] is Ending.CUED


def test_what_is_left_out_fails_if_it_is_critical():
    """At the end open steps are offered once more; left out for good, a critical one fails the attempt."""
    lived = begin()
    lived.do(SMOOTH[:11])
    lived.type("go on", "done")
    assert lived.step == "drops"
    lived.type("go on")
    assert lived.outcome is Outcome.NOT_PASSED
    assert endings(lived)["drops"] is Ending.LEFT_OUT


def test_no_gate_opens_over_a_critical_step_that_was_left_out():
    """In the last pass a step that was taken back can be left out for good; the gate behind it still holds."""
    lived = begin()
    lived.do(SMOOTH[:12])
    lived.type("go on")
    assert lived.guide.progress.last_pass
    lived.type(*["back"] * lived.guide.progress.cursor, "no", "go on")
    assert lived.guide.progress.steps["hands"].status is Status.LEFT_OUT
    assert lived.entries[-1]["gate"] == {"step": "gate", "open": ["hands"]}
    assert lived.step == "hands"


def test_a_timed_wait_runs_by_the_clock():
    """Done too early is told; the clock closes the step."""
    lived = begin()
    lived.do(SMOOTH[:4])
    assert lived.state is State.WAITING
    assert lived.listen is not None
    assert not lived.listen.wanted
    lived.type("done")
    assert "Not yet: 14 seconds to go." in lived.texts(Tone.HOLD)
    lived.wait(14)
    assert lived.step == "rate"


def test_a_wait_that_ends_during_a_pause_is_over_afterwards():
    """The time of a wait goes on while the attempt is paused."""
    lived = begin()
    lived.do(SMOOTH[:4])
    lived.type("pause")
    lived.wait(60)
    assert lived.state is State.PAUSED
    lived.type("go on")
    assert lived.step == "rate"


def test_a_pause_shortens_no_wait():
    """After a pause the wait goes on to its end: fifteen seconds after it began, and not a second sooner."""
    lived = begin()
    lived.do(SMOOTH[:4])
    began = lived.at
    lived.type("pause", "go on")
    lived.wait(12)
    assert (lived.at - began, lived.state) == (timedelta(seconds=14), State.WAITING)
    lived.wait(1)
    assert lived.guide.progress.steps["scrub"].closed_at == began + timedelta(seconds=15)


def test_settings_are_lost_by_waiting_too_long():
    """Before the start the settings run out: they are entered and verified again."""
    lived = begin()
    lived.do(SMOOTH[:10])
    assert lived.step == "start"
    lived.wait(181)
    assert lived.step == "rate"
    assert "The pump has forgotten its settings." in lived.texts(Tone.HOLD)
    lived.do(SMOOTH[5:9])
    lived.do(SMOOTH[10:])
    assert lived.outcome is Outcome.PASSED
    assert lived.guide.progress.steps["rate"].expired == 1


def test_a_correction_is_a_new_entry():
    """What was recorded stays; the new answer stands beside it."""
    lived = begin()
    lived.do(SMOOTH[:7])
    lived.type("correct that")
    assert lived.step == "rate"
    lived.type("83.3", "yes")
    kept = [entry for entry in lived.entries if "kept" in entry]
    assert [entry["kept"] for entry in kept] == ["83.3 mL/h", "83.3 mL/h"]
    assert kept[-1]["correction"] is True
    assert lived.step == "volume"


def test_not_applicable_asks_why_and_reads_the_reason_back():
    """A step is set aside only with a reason that was read back."""
    lived = begin()
    lived.type("done", "not applicable", "latex allergy in this scenario", "yes")
    assert lived.step == "fluid"
    assert endings(lived)["gloves"] is Ending.NOT_APPLICABLE
    assert lived.guide.progress.steps["gloves"].reason == "latex allergy in this scenario"


def test_a_critical_step_cannot_be_set_aside():
    """Not applicable is refused at a critical step."""
    lived = begin()
    lived.type("not applicable")
    assert (lived.step, lived.state) == ("hands", State.ASKING)
    assert lived.entries[-1]["verdict"] == "refused"


def test_a_step_that_must_come_after_another_one_leads_back_to_it():
    """A step with a condition is not asked before the other step is closed."""
    lived = begin()
    lived.type("done", "go on")
    lived.do(SMOOTH[2:10])
    assert lived.step == "gloves"
    assert [say.text for say in lived.says[-2:]] == ["This comes first:", "Step 2 of 10. Put on gloves."]
    lived.type("done")
    assert lived.step == "start"
    assert endings(lived)["gloves"] is Ending.CUED


def test_going_on_is_never_a_cue():
    """Who says "go on" and is led back to what comes first was not helped: only an answer leads back at a price."""
    lived = begin()
    lived.type("done", "go on")
    lived.do(SMOOTH[2:9])
    assert lived.step == "gate"
    lived.type("go on")
    assert lived.says[-2].text == "This comes first:" or "gate" in lived.texts(Tone.HOLD)
    assert "order" not in lived.guide.progress.steps["gloves"].cues


def test_no_to_a_question_holds_with_advice():
    """A line check that complains is dealt with before going on."""
    lived = begin()
    lived.do(SMOOTH[:11])
    lived.type("no")
    assert "closed clamp" in lived.texts(Tone.HOLD)
    assert lived.step == "drops"
    lived.type("yes")
    assert endings(lived)["drops"] is Ending.UNAIDED
    (found,) = lived.guide.results().troubles
    assert (found.step, found.kind, found.words) == ("drops", "a finding", "no")


def test_two_failures_tell_what_can_be_said_and_then_it_is_brief():
    """Misunderstandings never loop aloud."""
    lived = begin()
    lived.type("gibberish one", "gibberish two")
    assert "You can always say" in lived.texts(Tone.UNCLEAR)
    count = len(lived.says)
    lived.type("gibberish three")
    assert [say.speech for say in lived.says[count:] if say.speech] == ["I did not understand that."]


def test_stop_is_asked_about_once():
    """A misheard stop ends nothing; yes does."""
    lived = begin()
    lived.type("stop", "no", "done")
    assert lived.step == "gloves"
    lived.type("stop", "yes")
    assert lived.outcome is Outcome.STOPPED


def test_cues_fail_a_check_off_where_its_rule_says_so():
    """More than the allowed cues at critical steps: not passed, and the reason is told."""
    lived = begin(Mode.CHECK_OFF)
    lived.type("i need help", "yes")
    lived.do(SMOOTH)
    assert lived.outcome is Outcome.NOT_PASSED
    assert lived.guide.results().failures == ("Done only after a cue: 1 critical step; 0 may be.",)


def test_voice_settings_have_an_end():
    """Slower and louder are steps with a limit, told when it is reached."""
    lived = begin()
    for _ in range(6):
        lived.type("slower")
    assert lived.guide.progress.rate == -4
    assert lived.says[-1].text == "That is as far as it goes."
    assert any(isinstance(effect, Adjust) for effect in lived.hear("louder"))
    for _ in range(6):
        lived.type("deeper")
    assert lived.guide.progress.pitch == -4
    assert lived.says[-1].text == "That is as far as it goes."
    assert Adjust(rate=-4, loudness=1, pitch=-3) in lived.hear("higher")


def test_a_long_silence_is_broken_once():
    """One reminder a step, no more."""
    lived = begin()
    lived.wait(1000)
    assert lived.texts().count("Still at this step") == 1


def test_back_shows_the_step_before_and_go_on_leaves_it_as_it_is():
    """Back is a look; only a new answer is a correction."""
    lived = begin()
    lived.type("done", "back")
    assert lived.step == "hands"
    lived.type("go on")
    assert lived.step == "gloves"
    assert lived.guide.progress.steps["hands"].corrections == 0


def test_results_put_critical_steps_first():
    """The reader sees what decides before the rest."""
    lived = begin()
    lived.do(SMOOTH)
    flags = [line.critical for line in lived.guide.results().steps]
    assert flags == sorted(flags, reverse=True)


def test_the_diagram_shows_every_state():
    """The picture in the developers' guide is made from the table."""
    drawn = diagram()
    assert all(state.value.replace(" ", "_") in drawn for state in State)


@pytest.mark.parametrize("way", [("back",), ("correct that",)])
@pytest.mark.parametrize("reached", [1, 5])
def test_no_at_a_closed_step_opens_it_again(way, reached):
    """A learner who takes "done" back has an open step, and the gate holds for it."""
    lived = begin()
    lived.do(SMOOTH[:reached])
    closed = lived.guide.progress.history[-1]
    lived.type(*way, "no")
    assert lived.guide.progress.steps[closed].status is Status.OPEN
    assert closed not in lived.guide.progress.history


@pytest.mark.parametrize("way", [("stop", "yes"), ("pause", "stop", "yes")])
def test_a_wait_that_was_stopped_ends_after_the_resumption(way):
    """The clock closes a wait also when the attempt was stopped in the middle of it."""
    lived = begin()
    lived.do(SMOOTH[:4])
    lived.type(*way)
    assert lived.outcome is Outcome.STOPPED
    lived.at += timedelta(seconds=2)
    lived.give(Resumed(lived.at))
    lived.wait(30)
    assert lived.step == "rate"


def test_a_wait_survives_a_pause_and_a_stop_that_was_not_meant():
    """Pause, stop, no, go on: the wait still ends."""
    lived = begin()
    lived.do(SMOOTH[:4])
    lived.type("pause", "stop", "no", "go on")
    lived.wait(30)
    assert lived.step == "rate"


@pytest.mark.parametrize("way", ["pause|stop|pause", "stop|pause", "stop|pause|pause", "instructor here|pause|stop|no"])
def test_one_go_on_ends_a_pause_however_it_came_about(way):
    """Pausing again, or inside a stop, is one pause; nobody speaks as the instructor after it."""
    lived = begin()
    lived.type(*way.split("|"))
    assert lived.state is State.PAUSED
    lived.type("go on", "done")
    assert lived.step == "gloves"
    assert "by" not in lived.entries[-1]


@pytest.mark.parametrize("state", LIVE)
@pytest.mark.parametrize("command", list(Command))
def test_every_command_is_answered_in_every_state(state, command):
    """Whatever a learner says of what can always be said, it is recorded and gets an answer."""
    lived = reach(state)
    count, said = len(lived.entries), len(lived.says)
    lived.type(command.value)
    assert len(lived.entries) == count + 1
    assert len(lived.says) > said


def test_spelling_gives_no_name_away_in_a_check_off():
    """The ordered name is not spelled at the step that asks for it."""
    lived = begin(Mode.CHECK_OFF)
    lived.type("done", "done", "spell it")
    assert "L A C T A T E D" not in lived.texts()


UNFIT = [
    # the rate in the answer key: what no learner could answer is refused before the attempt
    KeyEntry("primary.rate", Decimal(20), "units"),
    KeyEntry("primary.rate", Decimal(12000), "mL/h"),
    KeyEntry("primary.rate", "fast", None),
]


@pytest.mark.parametrize("entry", UNFIT)
def test_an_order_that_cannot_be_answered_is_refused(entry):
    """An order in another kind of unit, or beyond what can be said, does not start an attempt."""
    with pytest.raises(OrderError):
        Guide(Papers(CHECKLIST, "The order.", {**KEY, "primary.rate": entry}, ENGLISH), Mode.PRACTICE, {})
