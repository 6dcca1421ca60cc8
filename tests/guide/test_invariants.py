"""What must hold whatever happens: one test for each promise of the guide."""

import copy
from datetime import timedelta

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from assistant.guide.effects import Outcome
from assistant.guide.events import (
    EarBack,
    EarLost,
    Heard,
    InputEnded,
    InstructorCame,
    NotUnderstood,
    Opened,
    Recorded,
    Resumed,
    Typed,
    VoiceLost,
    Woke,
)
from assistant.guide.guide import Guide, GuideMisuseError, ReplayError
from assistant.guide.progress import Mode, State
from assistant.guide.table import LIVE
from tests.guide import promises
from tests.guide.kinds import KINDS, SMOOTH_KINDS
from tests.guide.lived import CHECKLIST, SMOOTH, START, again, begin, guide, reach
from tests.guide.script import library, made_for_tests
from tests.guide.walk import scripts, truth_costs_nothing

WORDS = (
    "done yes no correct wrong again more back stop pause|go on|where am i|what is my order|slower|louder|higher"
    "|spell it|correct that|i need help|not applicable|83.3|83.3 mL/h|950|125 mL/h|fifty|ten fifty"
    "|lactated ringer's|normal saline|because the instructor said so|gibberish here||5 kg"
    "|close the attempt|instructor here|seen|not seen|overrule|cue given|left arm|neither|sore|not sore"
)
SAYINGS = [word for part in WORDS.split("|") for word in (part.split() if part.startswith("done") else [part])]

INSTRUCTOR = InstructorCame(START, proven=True)
pytestmark = pytest.mark.timeout(300)
"""The scripts are lived once, before the first test that asks for them."""

inputs = st.lists(st.one_of(st.sampled_from(SAYINGS), st.integers(1, 200), st.just(INSTRUCTOR)), max_size=60)
modes = st.sampled_from(list(Mode))


@pytest.fixture(scope="module")
def lived():
    """The scripts of the suite, the same each time: a learner who gets through, with a share of folly.

    New ones, as many as one has time for: ``python -m tests.guide.walk``.
    """
    return [*scripts(1, 35, made_for_tests()), *scripts(1, 2, library())]


def seen(promise, lived):
    """How often there was something to break in all scripts; raises where it was broken."""
    return sum(promise(script) for script in lived)


def test_no_answer_agrees_with_what_is_not_there(lived):
    """What is laid out counts, and not what is ordered, nor a yes."""
    assert seen(promises.agrees_with_the_bench, lived) >= 20


def test_nothing_is_done_before_it_is_on_disk(lived):
    """Every accepted event gives exactly one entry; until that is recorded nothing has changed, nothing is taken."""
    assert seen(promises.nothing_before_the_disk, lived) >= 5_000


def test_any_prefix_resumes_to_the_state_that_was_lived(lived):
    """Replaying the first n entries gives the progress that was there after n entries."""
    assert seen(promises.prefixes_resume, lived) >= 200


def test_no_gate_opens_over_an_open_critical_step(lived):
    """Whatever is said, no step behind a gate is current while a critical one before it is open."""
    assert seen(promises.gates_hold, lived) >= 200


def test_no_number_is_kept_without_a_read_back(lived):
    """Every number and note that is kept was read back, and answered with a clear yes."""
    assert seen(promises.numbers_are_read_back, lived) >= 500


def test_no_timed_wait_ends_early(lived):
    """Pause, stop, the instructor and a resumption shorten no wait."""
    assert seen(promises.waits_last, lived) >= 200


def test_only_a_positive_to_its_own_question_closes_a_step(lived):
    """Whatever is said in whatever order: no denial, question, courtesy, trouble, doubt or noise closes anything."""
    assert seen(promises.only_a_positive_closes, lived) >= 2_000


@pytest.mark.parametrize("mode", list(Mode))
@pytest.mark.parametrize("papers", [*made_for_tests(), *library()], ids=lambda papers: papers.checklist.name)
def test_the_truth_costs_nothing(papers, mode):
    """ "Not yet", a fault, trouble, a question, a pause: the result is that of the smooth learner."""
    assert sum(truth_costs_nothing(f"{seed}", papers, mode) for seed in range(2)) >= 1


@given(inputs, modes)
@settings(max_examples=60, deadline=None)
def test_nothing_tells_the_first_number_to_the_second_person(script, mode):
    """From the call of the second person to the answer that is kept, no sentence holds the learner's number."""
    lived = begin(mode, KINDS)
    lived.do(SMOOTH_KINDS[:4])
    said = len(lived.says)
    for item in script:
        if "83.3" in str(item):
            continue
        lived.do((item,)) if isinstance(item, str | int) else lived.give(item)
        if lived.step != "second" or "kept" in lived.entries[-1]:
            break
        assert "83.3" not in " ".join(say.text for say in lived.says[said:])


@pytest.mark.parametrize("state", LIVE)
@pytest.mark.parametrize("words", ["stop", "pause", "again", "i need help", "where am i"])
def test_always_legal(state, words):
    """Stop, pause, again, help and where are taken in every state."""
    lived = reach(state)
    count = len(lived.entries)
    if state is State.GIVING_REASON:
        assert lived.guide.expectation() is not None
    lived.type(words)
    assert len(lived.entries) == count + 1
    assert lived.entries[-1]["input"] != "not understood"


@pytest.mark.parametrize("state", [*LIVE, State.FINISHED])
@pytest.mark.parametrize("event", [Opened(START), Recorded(1, "d")], ids=lambda event: type(event).__name__)
def test_misuse_is_refused_and_changes_nothing(state, event):
    """What breaks the protocol raises, and leaves the progress as it is."""
    lived = reach(state)
    before = copy.deepcopy(lived.guide.progress)
    with pytest.raises(GuideMisuseError):
        lived.guide.receive(event)
    assert lived.guide.progress == before


@pytest.mark.parametrize("state", [*LIVE, State.FINISHED])
def test_a_stale_wake_up_call_changes_nothing(state):
    """A wake-up call that a later one replaced does no harm."""
    lived = reach(state)
    before = copy.deepcopy(lived.guide.progress)
    assert lived.guide.receive(Woke(START, "stale:1")) == []
    assert lived.guide.progress == before


@pytest.mark.parametrize(
    "event", [Typed(START, "done"), Resumed(START), EarBack(START), Woke(START, "")], ids=lambda e: type(e).__name__
)
def test_nothing_comes_before_the_opening(event):
    """Before `Opened` nothing is taken, least of all in silence."""
    fresh = guide()
    with pytest.raises(GuideMisuseError, match="before Opened"):
        fresh.receive(event)
    assert fresh.progress.state is State.READY


@pytest.mark.parametrize("event", [Typed(START, "done"), EarLost(START, "gone"), InputEnded(START)])
def test_nothing_comes_after_the_end(event):
    """After the end only a resumption is taken."""
    lived = reach(State.FINISHED)
    with pytest.raises(GuideMisuseError, match="after the end"):
        lived.guide.receive(event)


def test_times_have_a_zone():
    """A time without its zone is refused before it is in a record that could not be lived again."""
    lived = begin()
    with pytest.raises(GuideMisuseError, match="no zone"):
        lived.guide.receive(Typed(START.replace(tzinfo=None), "done"))
    lived.type("done")
    assert lived.step == "gloves"


def test_arguments_have_their_types():
    """A mode given as text, bare checklists for papers, pins that are no text, and what is no event are refused."""
    papers = begin().guide.papers
    with pytest.raises(GuideMisuseError, match="Mode"):
        Guide(papers, "practice")  # type: ignore[arg-type]
    with pytest.raises(GuideMisuseError, match="Papers"):
        Guide(CHECKLIST)  # type: ignore[arg-type]
    with pytest.raises(GuideMisuseError, match="text to text"):
        Guide(papers, pins={"seed": 1})  # type: ignore[dict-item]
    with pytest.raises(GuideMisuseError, match="no event"):
        begin().guide.receive("done")  # type: ignore[arg-type]


@pytest.mark.parametrize("state", LIVE)
def test_losing_microphone_or_voice_loses_no_answer(state):
    """After the microphone and the voice are gone the same question stands, and typing answers it."""
    lived = reach(state)
    expected = lived.guide.expectation()
    lived.give(EarLost(lived.at, "unplugged"))
    lived.give(VoiceLost(lived.at, "no loudspeaker."))
    lived.give(EarBack(lived.at))
    lived.give(NotUnderstood(lived.at))
    assert lived.state is state
    assert lived.guide.expectation() == expected


@pytest.mark.parametrize("state", LIVE)
def test_end_of_input_stops_and_can_be_resumed(state):
    """The attempt stops without a seal, and a resumption asks again what was asked."""
    lived = reach(state)
    lived.give(InputEnded(lived.at))
    assert (lived.outcome, lived.sealed) == (Outcome.STOPPED, None)
    other = again(lived)
    other.replay(lived.entries)
    other.receive(Resumed(lived.at + timedelta(seconds=1)))
    other.receive(Recorded(99, "d"))
    between = (State.OFFERING_CUE, State.WITH_INSTRUCTOR, State.PAUSED, State.STOPPING)
    asked = State.ASKING if state in between else state
    assert other.progress.state is asked


def test_sound_over_our_own_voice_is_dropped_with_a_reason():
    """An utterance that overlaps the assistant's voice, or has a gap, is recorded but means nothing."""
    lived = begin()
    lived.give(Heard(lived.at, "done", during_speech=True))
    lived.give(Heard(lived.at, "done", gap=True))
    assert [entry["verdict"] for entry in lived.entries[1:]] == [
        "dropped: it overlapped the assistant's own voice",
        "dropped: sound was lost",
    ]
    assert lived.step == "hands"


def test_the_same_events_give_the_same_entries():
    """Two guides that live through the same events write the same entries."""
    one, two = begin(), begin()
    one.do(SMOOTH)
    two.do(SMOOTH)
    assert one.entries == two.entries


def test_a_changed_entry_does_not_replay():
    """An entry that does not follow from the ones before it is named."""
    lived = begin()
    lived.do(SMOOTH)
    wrong = [dict(entry) for entry in lived.entries]
    wrong[6]["verdict"] = "agrees"
    other = again(lived)
    with pytest.raises(ReplayError, match="entry 7"):
        other.replay(wrong)
