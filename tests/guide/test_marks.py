"""What the instructor sends from the desk: each order in each state, what it does to the result, what it never does."""

from dataclasses import replace

import pytest

from assistant.checklist.model import ObservationAsked, TroublePlan
from assistant.guide.events import Marked
from assistant.guide.progress import Status
from assistant.guide.result import Ending, Evidence
from assistant.guide.table import LIVE
from assistant.spoken.meaning import Trouble
from tests.guide import promises
from tests.guide.kinds import KINDS, SMOOTH_KINDS
from tests.guide.lived import (
    CHECKLIST,
    SMOOTH,
    WITH_CODE,
    Direction,
    FromDesk,
    Happening,
    Lived,
    Mark,
    Mode,
    Opened,
    Outcome,
    Resumed,
    Say,
    State,
    Tone,
    again,
    begin,
    guide,
    reach,
)
from tests.guide.script import library, made_for_tests
from tests.guide.walk import scripts, truthful

ANSWERS = ("yes", "done", "no", "okay", "83.3", "go on", "not applicable", "i need help", "gibberish", "back")
TO_SEE = CHECKLIST.model_copy(
    update={"steps": tuple(s.model_copy(update={"seen": s.id == "gloves"}) for s in CHECKLIST.steps)}
)
"""An instructor has to see the gloves."""
SILENT = (Mark.SEEN, Mark.NOTE)


def check_off(*answers, checklist=CHECKLIST, mode=Mode.CHECK_OFF):
    """A check-off that a desk has begun, so far as these answers lead."""
    lived = Lived(guide(mode, checklist, instructor=WITH_CODE))
    lived.give(Opened(lived.at))
    lived.do(answers)
    return lived


def ids(lived):
    """The id of the latest order."""
    return lived.entries[-1]["order"]


def line(lived, step):
    """The result of one step."""
    return next(one for one in lived.guide.results().steps if one.id == step)


def lived_again(lived):
    """The guide that has lived the entries again; it is where the first one is."""
    other = again(lived)
    other.replay(lived.entries)
    assert other.progress == lived.guide.progress
    return other


# Seen, and not seen.


def test_seen_is_silent_and_is_evidence():
    """A closed step is seen: nothing is said, nothing is asked anew, the entry tells who."""
    lived = check_off("done", "done")
    listens = lived.listen
    assert lived.mark(Mark.SEEN, "hands") == []
    assert lived.listen is listens
    assert (line(lived, "hands").evidence, line(lived, "hands").seen_by) == (
        Evidence.SEEN,
        "instructor, from the desk",
    )
    entry = lived.entries[-1]
    assert [entry[name] for name in ("kind", "source", "step", "asked", "by", "verdict")] == [
        *("marked", "desk", "hands", "fluid", "instructor", "seen")
    ]
    lived_again(lived)


@pytest.mark.parametrize("step", ["gloves", "fluid", "nowhere"])
def test_what_is_not_done_cannot_have_been_seen(step):
    """Neither the step that is asked, nor a later one, nor one that there is not."""
    lived = check_off("done")
    assert lived.mark(Mark.SEEN, step) == []
    assert lived.entries[-1]["verdict"] == "refused"
    assert lived.entries[-1]["why"]
    assert lived.step == "gloves"


def test_a_mark_is_gone_with_the_answer_that_it_was_for():
    """Whoever does a step anew has to be seen anew."""
    lived = check_off("done")
    lived.mark(Mark.SEEN, "hands")
    lived.type("back", "done")
    assert line(lived, "hands").seen_by == ""


def test_the_latest_mark_counts_and_each_can_be_taken_back():
    """Not seen, then seen; undone one after the other."""
    lived = check_off("done", "done", checklist=TO_SEE)
    lived.mark(Mark.NOT_SEEN, "gloves")
    first = ids(lived)
    assert (line(lived, "gloves").ending, line(lived, "gloves").to_be_seen) == (Ending.NOT_SEEN, False)
    lived.mark(Mark.SEEN, "gloves")
    second = ids(lived)
    assert line(lived, "gloves").ending is Ending.UNAIDED
    lived.mark(Mark.UNDO, undoes=second)
    assert line(lived, "gloves").ending is Ending.NOT_SEEN
    lived.mark(Mark.UNDO, undoes=first)
    assert (line(lived, "gloves").ending, line(lived, "gloves").to_be_seen) == (Ending.UNAIDED, True)
    lived.mark(Mark.UNDO, undoes=first)
    assert lived.entries[-1]["verdict"] == "refused"


@pytest.mark.parametrize(
    ("mark", "outcome"),
    [(None, Outcome.OWN_REPORT), (Mark.SEEN, Outcome.PASSED), (Mark.NOT_SEEN, Outcome.NOT_PASSED)],
)
def test_what_has_to_be_seen_is_passed_only_when_it_was(mark, outcome):
    """Also at a step that is not critical: the instructor has looked."""
    lived = check_off("done", "done", checklist=TO_SEE)
    if mark is not None:
        lived.mark(mark, "gloves")
    lived.do(SMOOTH[2:])
    assert lived.outcome is outcome
    assert ("Not seen by the instructor: Put on gloves." in lived.guide.results().failures) is (mark is Mark.NOT_SEEN)


def test_in_practice_the_learner_hears_what_was_not_seen():
    """In a check-off it is silent."""
    lived = check_off("done", mode=Mode.PRACTICE)
    said = [effect.text for effect in lived.mark(Mark.NOT_SEEN, "hands") if isinstance(effect, Say)]
    assert said[0] == "Your instructor has not seen this done: Clean your hands."
    assert check_off("done").mark(Mark.NOT_SEEN, "hands") == []


def test_an_observation_is_the_instructors_to_answer():
    """Asked, it is closed by seen and held by not seen; taken back, it is asked again."""
    lived = check_off(*SMOOTH_KINDS[:6], checklist=KINDS)
    assert lived.step == "technique"
    lived.mark(Mark.NOT_SEEN, "technique")
    assert "Take a new tip." in lived.texts(Tone.HOLD)
    lived.mark(Mark.UNDO, undoes=ids(lived))
    assert (line(lived, "technique").wrong, line(lived, "technique").tries) == (0, 0)
    lived.mark(Mark.SEEN, "technique")
    order = ids(lived)
    assert (lived.step, line(lived, "technique").by) == ("gate", "instructor")
    assert (lived.entries[-1]["source"], lived.entries[-1]["verdict"]) == ("desk", "seen")
    assert line(lived, "technique").ending is Ending.UNAIDED
    lived.type("done")
    assert lived.step == "drops"
    lived.mark(Mark.UNDO, undoes=order)
    assert (lived.step, line(lived, "technique").final, line(lived, "technique").tries) == ("technique", "", 0)
    lived_again(lived)


@pytest.mark.parametrize("state", ["pause", "stop"])
def test_an_observation_is_not_closed_while_the_attempt_rests(state):
    """The instructor goes on first."""
    lived = check_off(*SMOOTH_KINDS[:6], state, checklist=KINDS)
    assert lived.mark(Mark.SEEN, "technique") == []
    assert (lived.entries[-1]["why"], lived.step) == ("not possible now", "technique")


# Cues and notes.


def test_a_cue_of_the_instructor_counts_once_and_can_be_taken_back():
    """For the step that is asked, or for one that was."""
    lived = check_off("done")
    assert lived.mark(Mark.CUE) == []
    assert (lived.entries[-1]["step"], lived.entries[-1]["cue"]) == ("gloves", "instructor")
    lived.mark(Mark.CUE, "hands")
    assert line(lived, "hands").cues == line(lived, "gloves").cues == ("instructor",)
    lived.mark(Mark.UNDO, undoes=ids(lived))
    assert line(lived, "hands").cues == ()
    lived.mark(Mark.CUE, "rate")
    assert lived.entries[-1]["why"] == "the step has not been asked"


def test_a_note_is_in_the_result_until_it_is_taken_back():
    """For a step or for the attempt; nobody hears it."""
    lived = check_off("done")
    assert lived.mark(Mark.NOTE, words="Works  calmly.\n") == []
    assert [(note.step, note.words) for note in lived.guide.results().notes] == [("", "Works calmly.")]
    lived.mark(Mark.UNDO, undoes=ids(lived))
    assert lived.guide.results().notes == ()
    assert "notes" not in lived.guide.results().body()
    lived.mark(Mark.NOTE, words=" ")
    assert lived.entries[-1]["verdict"] == "refused"


# Unsafe.


@pytest.mark.parametrize("state", LIVE)
def test_unsafe_holds_in_every_state(state):
    """Said aloud at once; no word of the learner's changes a step or leads on."""
    lived = reach(state)
    lived.mark(Mark.UNSAFE, words="the line is open")
    assert lived.state is State.HELD
    assert lived.says[-1].text == "Stop. Your instructor holds the attempt: the line is open."
    steps = lived_again(lived).progress.steps
    for words in ANSWERS:
        lived.type(words)
        assert lived.state is State.HELD, words
    assert lived.guide.progress.steps == steps
    lived.direct(Direction.GO_ON)
    asked = State.ASKING_CONSENT if state is State.ASKING_CONSENT else State.ASKING
    assert lived.state is asked
    assert lived.guide.progress.reading_back is None
    lived_again(lived)


@pytest.mark.parametrize("mode", list(Mode))
def test_an_unsafe_mark_fails_the_attempt_and_is_named_first(mode):
    """Whoever goes on after it cannot pass."""
    lived = check_off("done", mode=mode)
    lived.mark(Mark.UNSAFE, words="a needle lay on the bed")
    lived.direct(Direction.GO_ON)
    lived.do(SMOOTH[1:])
    assert lived.outcome is Outcome.NOT_PASSED
    results = lived.guide.results()
    assert results.failures[0] == results.unsafe[0] == "Unsafe: a needle lay on the bed."
    assert lived.sealed["results"]["unsafe"] == ["Unsafe: a needle lay on the bed."]


def test_an_unsafe_mark_that_is_taken_back_is_as_if_it_had_not_been():
    """The hold ends with it."""
    lived, other = check_off("done"), check_off("done")
    lived.mark(Mark.UNSAFE)
    assert lived.says[-1].text == "Stop. Your instructor holds the attempt."
    lived.mark(Mark.UNDO, undoes=ids(lived))
    assert lived.state is State.ASKING
    lived.do(SMOOTH[1:])
    other.do(SMOOTH[1:])
    assert replace(lived.guide.results(), hurried=()) == replace(other.guide.results(), hurried=())
    assert lived.outcome is other.outcome is Outcome.PASSED


def test_unsafe_holds_whatever_step_it_names():
    """A name that there is not is no reason to let it go on."""
    lived = check_off("done")
    lived.mark(Mark.UNSAFE, "nowhere")
    assert (lived.state, lived.entries[-1]["step"]) == (State.HELD, "")


def test_no_mark_slips_past_a_hold():
    """What would deal with the step that is asked, and lead on, is refused while it is held."""
    lived = check_off(*SMOOTH_KINDS[:6], checklist=KINDS)
    lived.mark(Mark.UNSAFE)
    lived.type("stop", "i need help")
    assert lived.state is State.OFFERING_CUE
    for mark in (Mark.SEEN, Mark.NOT_APPLICABLE, Mark.OVERRULE):
        lived.mark(mark, "technique", words="so it is")
        assert lived.entries[-1]["why"] == "not possible now"
    assert State.HELD in lived.guide.progress.before


def test_two_unsafe_marks_hold_until_both_are_gone():
    """One taken back leaves the other."""
    lived = check_off("done")
    lived.mark(Mark.UNSAFE, words="one")
    first = ids(lived)
    lived.mark(Mark.UNSAFE, words="two")
    second = ids(lived)
    lived.mark(Mark.UNDO, undoes=first)
    assert lived.state is State.HELD
    lived.mark(Mark.UNDO, undoes=second)
    assert lived.state is State.ASKING


def test_a_hold_outlasts_a_stop():
    """Whoever stops a held attempt, and whoever takes it up: it is held still."""
    for stop in (lambda lived: lived.direct(Direction.STOP), lambda lived: lived.type("stop", "yes")):
        lived = check_off("done")
        lived.mark(Mark.UNSAFE)
        stop(lived)
        assert (lived.outcome, lived.sealed) == (Outcome.STOPPED, None)
        lived.give(Resumed(lived.at))
        assert lived.state is State.HELD
        lived.type("done")
        assert lived.step == "gloves"
        lived.direct(Direction.GO_ON)
        assert lived.state is State.ASKING


def test_at_the_station_only_the_code_ends_a_hold():
    """Where no code was set, nobody at the station can."""
    lived = begin(Mode.PRACTICE)
    lived.mark(Mark.UNSAFE)
    lived.type("instructor here", "go on", "stop", "instructor here", "go on", "no", "pause", "go on")
    assert lived.state is State.HELD
    assert [entry["verdict"] for entry in lived.entries if entry["input"] == "instructor here"] == ["refused"] * 2


def test_a_wait_begins_anew_after_a_hold():
    """What was scrubbed when something unsafe happened is scrubbed again."""
    lived = check_off(*SMOOTH[:4])
    assert lived.state is State.WAITING
    lived.mark(Mark.UNSAFE)
    lived.wait(60)
    lived.direct(Direction.GO_ON)
    assert (lived.state, lived.step) == (State.ASKING, "scrub")
    assert lived.guide.progress.steps["scrub"].status is Status.OPEN


# Not applicable, and overruled.


def test_the_step_that_is_asked_is_set_aside_with_a_reason():
    """Without a read-back: it was written. Taken back, it is asked again."""
    lived = check_off("done")
    lived.mark(Mark.NOT_APPLICABLE, "gloves")
    assert lived.entries[-1]["why"] == "it needs a reason or a text"
    lived.mark(Mark.NOT_APPLICABLE, "gloves", words="none left")
    order = ids(lived)
    assert lived.step == "fluid"
    assert (line(lived, "gloves").ending, line(lived, "gloves").reason, line(lived, "gloves").by) == (
        *(Ending.NOT_APPLICABLE, "none left", "instructor"),
    )
    lived.mark(Mark.UNDO, undoes=order)
    assert (lived.step, lived.state, lived.entries[-1]["reopened"]) == ("gloves", State.ASKING, ["gloves"])
    lived.do(SMOOTH[1:])
    assert lived.outcome is Outcome.PASSED
    assert line(lived, "gloves").ending is Ending.UNAIDED


def test_an_earlier_verdict_is_set_aside_silently():
    """What was answered stays answered; taken back, the verdict is what it was."""
    lived = check_off(*SMOOTH[:5], "833", "yes", "83.3", "yes")
    before = line(lived, "rate")
    assert before.ending is Ending.CORRECTED
    assert lived.mark(Mark.OVERRULE, "rate", words="the display was covered") == []
    assert line(lived, "rate").ending is Ending.NOT_APPLICABLE
    assert (lived.step, lived.guide.progress.steps["rate"].status) == ("volume", Status.CLOSED)
    assert lived.entries[-1]["verdict"] == "overruled"
    lived.mark(Mark.UNDO, undoes=ids(lived))
    assert line(lived, "rate") == before


def test_a_gate_that_was_passed_by_an_overrule_holds_again_when_it_is_taken_back():
    """A critical step that was left open, set aside, and taken back behind the gate."""
    lived = check_off("done", "done", "go on", *SMOOTH[3:9])
    lived.mark(Mark.OVERRULE, "fluid", words="the label is torn")
    order = ids(lived)
    lived.type("done")
    assert lived.step == "start"
    lived.mark(Mark.UNDO, undoes=order)
    assert lived.step == "fluid"
    lived_again(lived)


def test_nobody_sets_a_critical_step_aside_without_proof():
    """Neither where the instructor has no code, nor by a mark that proves nothing."""
    lived = begin(Mode.CHECK_OFF)
    lived.mark(Mark.OVERRULE, "hands", words="so it is")
    assert lived.entries[-1]["why"] == "only an instructor with a code sets a critical step aside"
    lived = check_off()
    for mark in Mark:
        lived.mark(mark, "hands", words="so it is", proven=False)
        assert lived.entries[-1]["why"] == "it is not known that an instructor marked it"
    assert lived.guide.progress.marks == []


def test_an_order_that_comes_twice_is_carried_out_once():
    """The second makes no entry, after a resumption neither; a refused one is not tried again."""
    lived = check_off("done")
    lived.mark(Mark.CUE)
    lived.mark(Mark.SEEN, "rate")
    for order, mark in ((lived.entries[-2]["order"], Mark.CUE), (lived.entries[-1]["order"], Mark.SEEN)):
        assert lived.guide.receive(Marked(lived.at, mark, "hands", order=order)) == []
        assert lived_again(lived).receive(Marked(lived.at, mark, "hands", order=order)) == []
    assert line(lived, "gloves").cues == ("instructor",)


# What happens at the bench, and where the attempt goes.


@pytest.mark.parametrize("state", LIVE)
@pytest.mark.parametrize("what", [Happening.ALARM, Happening.PAIN, Happening.OTHER])
def test_what_happens_is_said_where_the_learner_works(what, state):
    """In a pause, a hold, a stop and before the first step it is refused; a read-back is dropped."""
    lived = reach(state)
    effects = lived.happen(what, "the visitor leans on the pole")
    if state in (State.ASKING_CONSENT, State.PAUSED, State.HELD, State.STOPPING):
        assert (effects, lived.entries[-1]["verdict"], lived.state) == ([], "refused", state)
        return
    said = [effect.text for effect in effects if isinstance(effect, Say)]
    assert said[0] == "Your instructor: the visitor leans on the pole."
    assert lived.entries[-1]["verdict"] == "happened"
    assert lived.guide.progress.reading_back is None
    assert lived.guide.results().troubles == ()
    lived_again(lived)


def test_an_alarm_leads_where_the_checklist_leads_at_no_cost():
    """As a report of the learner's would."""
    plan = TroublePlan(kind=Trouble.ALARM, say="Silence it, and look.", back_to="hands")
    lived = check_off("done", checklist=CHECKLIST.model_copy(update={"troubles": (plan,)}))
    said = [effect.text for effect in lived.happen(Happening.ALARM) if isinstance(effect, Say)]
    assert said[:2] == ["Your instructor: The pump alarms.", "Silence it, and look."]
    assert (lived.step, line(lived, "hands").reopened, line(lived, "hands").corrections) == ("hands", 1, 0)
    lived.do(SMOOTH)
    assert lived.outcome is Outcome.PASSED


def test_lost_settings_are_asked_again_as_lapsed_ones_are():
    """Those that are in, at no cost; none where nothing is set."""
    lived = check_off(*SMOOTH[:5])
    assert lived.happen(Happening.SETTINGS_LOST) == []
    assert lived.entries[-1]["why"] == "there are no settings that could be lost now"
    lived.do(SMOOTH[5:9])
    said = [effect.text for effect in lived.happen(Happening.SETTINGS_LOST) if isinstance(effect, Say)]
    assert said[:2] == [
        "Your instructor: The pump has lost its settings.",
        "Hold. The pump has forgotten its settings.",
    ]
    assert lived.step == "rate"
    lived.do(SMOOTH[5:])
    assert lived.outcome is Outcome.PASSED
    assert [line(lived, step).expired for step in ("rate", "volume")] == [1, 1]


@pytest.mark.parametrize("state", LIVE)
def test_the_instructor_lets_it_rest_and_go_on(state):
    """Go on ends an interruption, and never leaves a step open."""
    lived = reach(state)
    steps = lived_again(lived).progress.steps
    effects = lived.direct(Direction.PAUSE)
    assert (effects == []) == (state in (State.PAUSED, State.HELD))
    lived.direct(Direction.GO_ON)
    assert lived.state not in (State.PAUSED, State.HELD)
    assert lived.guide.progress.steps == steps
    assert lived.direct(Direction.GO_ON) == []
    assert lived.guide.progress.steps == steps
    lived_again(lived)


@pytest.mark.parametrize("state", LIVE)
def test_the_instructor_stops_it_and_it_can_be_taken_up(state):
    """At once, without asking the learner."""
    lived = reach(state)
    lived.direct(Direction.STOP)
    assert (lived.outcome, lived.sealed) == (Outcome.STOPPED, None)
    lived.give(Resumed(lived.at))
    assert lived.state in LIVE
    lived_again(lived)


# Whatever comes when.


@pytest.fixture(scope="module")
def marked():
    """Attempts in which the desk orders anything at any time."""
    return [*scripts(2, 8, made_for_tests(), 0.25), *scripts(2, 1, library()[::6], 0.2)]


@pytest.mark.parametrize("promise", promises.PROMISES, ids=lambda promise: promise.__name__)
def test_every_promise_holds_under_orders(promise, marked):
    """Gates, read-backs, waits, resumption, and that only a positive to its own question closes a step."""
    assert sum(promise(script) for script in marked)
    assert sum(isinstance(moment.event, FromDesk) for script in marked for moment in script.moments) >= 500


def test_no_order_closes_a_step_or_changes_a_number(marked):
    """But for an observation, which is the instructor's to answer."""
    closed = 0
    for script in marked:
        for moment in script.moments:
            if not isinstance(moment.event, FromDesk):
                continue
            for step in script.checklist.steps:
                before, after = moment.before.steps[step.id], moment.after.steps[step.id]
                assert (after.first_amount, after.final_amount) == (before.first_amount, before.final_amount)
                if isinstance(step.expect, ObservationAsked):
                    continue
                assert (after.first, after.final) == (before.first, before.final)
                assert after.status is before.status or after.status is not Status.CLOSED
                closed += after.status is Status.CLOSED
    assert closed


@pytest.mark.parametrize("mode", list(Mode))
def test_silent_marks_change_only_what_was_seen(mode):
    """An attempt with them ends as one without: the same steps, numbers and score."""
    for papers in (*made_for_tests(), *library()[::6]):
        plain, watched = truthful("1", papers, mode, 0), truthful("1", papers, mode, 0, marks=SILENT)
        assert any(entry["kind"] == "marked" for entry in watched.entries)
        assert without_sight(watched) == without_sight(plain), papers.checklist.name
        assert [say.text for say in watched.says if say.tone is not Tone.RESULT] == [
            say.text for say in plain.says if say.tone is not Tone.RESULT
        ]
        assert {watched.outcome, plain.outcome} <= {Outcome.PASSED, Outcome.OWN_REPORT, plain.outcome}


def without_sight(script):
    """The result without what a mark of "seen" and a note add to it."""
    body = script.guide.results().body()
    steps = [
        {name: value for name, value in row.items() if name not in ("evidence", "seen_by", "to_be_seen")}
        for row in body["steps"]
    ]
    return {name: body[name] for name in body if name not in ("notes", "to_see", "passed")} | {"steps": steps}
