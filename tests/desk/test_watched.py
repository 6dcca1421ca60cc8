"""What the desk makes of entries, held against the real guide: its records, and its own progress with marks in it."""

from datetime import UTC, datetime, timedelta

import pytest

from assistant.attempts.papers import take_papers
from assistant.attempts.plan import plan_of
from assistant.desk.followed import Followed
from assistant.desk.need import Level, need_of
from assistant.desk.watched import Standing, Turn
from assistant.guide.effects import Append
from assistant.guide.events import (
    Directed,
    Direction,
    Happened,
    Happening,
    InstructorCame,
    Mark,
    Marked,
    Opened,
    Recorded,
    Typed,
)
from assistant.guide.progress import Mode, State, Status
from assistant.learner import SimulatedLearner
from assistant.link.messages import Begun
from tests.desk.lab import demonstration

AT = datetime(2026, 11, 28, 9, tzinfo=UTC)
DEMONSTRATIONS = [
    ("primary-line", "--mode", "check-off", "--slip", "tenfold", "--seed", "2", "--typed"),
    ("primary-line", "--mode", "check-off", "--as", "unaware", "--seed", "3", "--typed"),
    ("secondary-line", "--as", "careless", "--seed", "5", "--typed"),
    ("potassium", "--as", "over-cautious", "--seed", "1", "--typed"),
    ("heparin", "--mode", "check-off", "--seed", "4", "--typed"),
]
SEALED = [one for one in DEMONSTRATIONS if "over-cautious" not in one]
"""Those that come to their end; whoever finds fault with everything stops."""


def watched(arguments, upto=None):
    entries, plan, order = demonstration(*arguments)
    begun = Begun(station="Station 1", attempt="0" * 64, file="a.jsonl", plan=plan, order=order)
    return Followed.of(begun, entries[:upto]), entries


@pytest.mark.parametrize("arguments", DEMONSTRATIONS, ids=[one[0] + one[-2] for one in DEMONSTRATIONS])
def test_where_the_attempt_is_agrees_with_the_next_entry(arguments):
    """The guide writes into each entry which step was asked; the desk has to have known it before."""
    entries = demonstration(*arguments)[0]
    wrong = []
    for count in range(1, len(entries)):
        said = entries[count].get("step")
        known = watched(arguments, count)[0].now
        if said and said != known:
            wrong.append((entries[count]["sequence"], known, said))
    assert wrong == []


@pytest.mark.parametrize("arguments", SEALED, ids=[one[0] + one[-2] for one in SEALED])
def test_steps_end_as_the_result_says(arguments):
    """What stands before the seal agrees with what the seal says: done or not, helped or not."""
    found, entries = watched(arguments)
    before, _ = watched(arguments, len(entries) - 1)
    assert found.turn is Turn.OVER
    assert found.outcome == entries[-1]["outcome"]
    endings = {row["id"]: row["ending"] for row in entries[-1]["results"]["steps"]}
    for step in before.steps:
        if endings[step.plan.id] == "done unaided":
            assert step.standing in (Standing.DONE, Standing.LOOK), step.plan.id
        if step.standing is Standing.NOT_APPLICABLE:
            assert endings[step.plan.id] == "not applicable"


def test_a_wrong_number_is_a_hold_with_both_numbers():
    arguments = DEMONSTRATIONS[0]
    entries = demonstration(*arguments)[0]
    place = next(count for count, entry in enumerate(entries) if entry.get("verdict") == "does not agree")
    found, _ = watched(arguments, place + 1)
    need = need_of(found, silent_s=0, unheard_s=0)
    assert (need.level, need.why) == (Level.HOLD, "Said 833 mL/h, needed 83.3 mL/h.")
    assert need_of(found, silent_s=0, unheard_s=100).level is Level.HOLD
    before, _ = watched(arguments, place)
    assert need_of(before, silent_s=59, unheard_s=0).level > Level.SIGN
    assert need_of(before, silent_s=60, unheard_s=0).level is Level.SILENT
    assert need_of(before, silent_s=60, unheard_s=100).level is Level.LOST
    assert need_of(before, silent_s=60, unheard_s=0, left=True).level is Level.STOPPED


@pytest.mark.parametrize(("after_s", "level"), [(1, Level.FAST), (9, Level.QUIET)])
def test_done_sooner_than_it_can_be_read(after_s, level):
    arguments = DEMONSTRATIONS[0]
    entries = demonstration(*arguments)[0]
    place = next(count for count, entry in enumerate(entries) if entry.get("verdict") == "done")
    before, _ = watched(arguments, place)
    done = {**entries[place], "at": (before.since + timedelta(seconds=after_s)).isoformat()}
    now = before.with_entries([done])
    assert need_of(now, silent_s=0, unheard_s=0).level is level
    assert now.step_of(before.now).is_fast == (level is Level.FAST)


class Lived:
    """The real guide through a checklist, its entries taken in by the desk as they come."""

    def __init__(self, checklist="primary-line", mode=Mode.CHECK_OFF):
        papers = take_papers(checklist, None)
        self.guide = papers.guide(mode, {"learner": "A17", "mode": mode.value, "instructor": "with a code"})
        self.learner = SimulatedLearner(papers.checklist, papers.key, None, 1, truth=papers.truth)
        self.at, self.orders = AT, 0
        begun = Begun(station="1", attempt="0" * 64, file="a.jsonl", plan=plan_of(self.guide.papers))
        self.watched = Followed.of(begun, ())
        self.give(Opened(self.at))

    def give(self, event):
        entries = [effect for effect in self.guide.receive(event) if isinstance(effect, Append)]
        while entries:
            body = entries.pop(0).body
            self.watched = self.watched.with_entries([body])
            done = self.guide.receive(Recorded(self.watched.entries, "00"))
            entries += [effect for effect in done if isinstance(effect, Append)]
        return body

    def answer(self, times=1):
        for _ in range(times):
            self.at += timedelta(seconds=8)
            self.give(Typed(self.at, self.learner.reply(self.guide.progress).words))

    def mark(self, mark, **fields):
        self.orders += 1
        order = f"{self.orders:032x}"
        self.at += timedelta(seconds=1)
        return order, self.give(Marked(self.at, mark, order=order, **fields))

    @property
    def asked(self):
        return self.guide.papers.checklist.steps[self.guide.progress.cursor].id


def test_a_mark_shows_once_it_is_on_record_and_goes_once_it_is_undone():
    lived = Lived()
    lived.answer(3)
    order, body = lived.mark(Mark.SEEN, step="p-order")
    assert body["verdict"] == "seen"
    assert lived.watched.step_of("p-order").seen == "seen"
    lived.mark(Mark.NOT_SEEN, step="p-order")
    assert lived.watched.step_of("p-order").seen == "not seen"
    _, body = lived.mark(Mark.UNDO, undoes=f"{2:032x}")
    assert body["verdict"] == "taken back"
    assert (lived.watched.step_of("p-order").seen, lived.watched.step_of("p-order").marked) == ("seen", order)
    assert [mark.undone for mark in lived.watched.marks] == [False, True, False]
    _, body = lived.mark(Mark.SEEN, step="p-prime")
    assert body["verdict"] == "refused"
    assert lived.watched.marks[-1].refused == "the step is not done"
    assert lived.watched.step_of("p-prime").seen == ""


@pytest.mark.parametrize(
    ("words", "level", "why"),
    [
        (["it's leaking at the port"], Level.TROUBLE, "A leak: it's leaking at the port"),
        (["I need help", "yes"], Level.QUIET, ""),
        (["I need help", "yes", "I need help"], Level.CALL, "Asked for help more than once at this step."),
        (["call my instructor"], Level.CALL, "Asks for you."),
        (["bananas", "bananas", "bananas"], Level.UNCLEAR, "3 answers in a row."),
    ],
)
def test_what_a_learner_says_calls_the_instructor(words, level, why):
    lived = Lived()
    lived.answer(2)
    for line in words:
        lived.give(Typed(lived.at, line))
    need = need_of(lived.watched, silent_s=0, unheard_s=0)
    assert (need.level, need.why) == (level, why)
    lived.answer()
    assert need_of(lived.watched, silent_s=0, unheard_s=0).level is Level.QUIET


def test_unsafe_holds_until_it_is_undone_or_goes_on():
    lived = Lived()
    lived.answer(2)
    order, _ = lived.mark(Mark.UNSAFE, words="The line was open.")
    need = need_of(lived.watched, silent_s=500, unheard_s=0)
    assert (need.level, need.why) == (Level.UNSAFE, "You held it: The line was open.")
    lived.answer()
    assert lived.watched.turn is Turn.HELD
    lived.mark(Mark.UNDO, undoes=order)
    assert (lived.watched.turn, lived.watched.unsafe) == (Turn.ASKED, "")
    lived.mark(Mark.UNSAFE, words="Again.")
    lived.give(Directed(lived.at, Direction.GO_ON, "f" * 32))
    assert (lived.watched.turn, lived.watched.unsafe) == (Turn.ASKED, "")


def test_it_is_held_until_the_last_unsafe_mark_is_undone():
    lived = Lived()
    lived.answer(2)
    first, _ = lived.mark(Mark.UNSAFE, words="The line was open.")
    second, _ = lived.mark(Mark.UNSAFE, words="The clamp, too.")
    for order, unsafe in ((second, "The line was open."), (first, "")):
        lived.mark(Mark.UNDO, undoes=order)
        assert (lived.watched.turn is Turn.HELD) == (lived.guide.progress.state is State.HELD) == bool(unsafe)
        assert lived.watched.unsafe == unsafe


def test_a_mark_that_holds_nothing_any_more_does_not_hold_when_another_one_is_undone():
    lived = Lived()
    lived.answer(2)
    lived.mark(Mark.UNSAFE, words="The line was open.")
    lived.give(Directed(lived.at, Direction.GO_ON, "f" * 32))
    order, _ = lived.mark(Mark.UNSAFE, words="The clamp, too.")
    lived.mark(Mark.UNDO, undoes=order)
    assert lived.guide.progress.state is State.ASKING
    assert (lived.watched.turn, lived.watched.unsafe) == (Turn.ASKED, "")


@pytest.mark.parametrize("words", ["go on", "cue given", "overrule"])
def test_an_instructor_at_the_station_ends_a_hold(words):
    """With the code; what only looks after the learner does not end it."""
    lived = Lived()
    lived.answer(2)
    lived.mark(Mark.UNSAFE, words="The line was open.")
    lived.give(InstructorCame(lived.at, proven=True))
    lived.give(Typed(lived.at, words))
    lived.give(Typed(lived.at, "because I saw it"))
    held = lived.guide.progress.state in (State.HELD, State.WITH_INSTRUCTOR)
    assert held == (words == "cue given")
    assert bool(lived.watched.unsafe) == held
    assert (need_of(lived.watched, silent_s=0, unheard_s=0).level is Level.UNSAFE) == held


def test_what_was_answered_and_set_aside_is_as_it_was_once_that_is_undone():
    """Nothing is asked again: only the verdict had been set aside."""
    lived = Lived()
    lived.answer(3)
    now = lived.asked
    order, _ = lived.mark(Mark.OVERRULE, step="p-order", words="Seen on the chart.")
    assert lived.watched.step_of("p-order").standing is Standing.SET_ASIDE
    lived.mark(Mark.UNDO, undoes=order)
    assert lived.guide.progress.steps["p-order"].status is Status.CLOSED
    assert lived.watched.step_of("p-order").standing is Standing.DONE
    assert lived.watched.now == lived.asked == now


def test_what_is_set_aside_is_left_behind_and_comes_back_when_that_is_undone():
    lived = Lived()
    lived.answer(2)
    step = lived.asked
    assert lived.watched.now == step
    order, _ = lived.mark(Mark.OVERRULE, words="Seen on the chart.")
    assert lived.watched.step_of(step).standing is Standing.SET_ASIDE
    assert lived.watched.now == lived.asked != step
    lived.mark(Mark.UNDO, undoes=order)
    assert lived.guide.progress.steps[step].status is Status.OPEN
    assert lived.watched.step_of(step).standing is Standing.AHEAD
    assert lived.watched.now == lived.asked == step


def test_what_comes_back_ahead_is_asked_in_its_turn():
    lived = Lived()
    lived.answer(3)
    step = lived.asked
    order, _ = lived.mark(Mark.OVERRULE, words="Seen on the chart.")
    for _ in range(3):
        lived.give(Typed(lived.at, "back"))
    now = lived.asked
    lived.mark(Mark.UNDO, undoes=order)
    assert lived.guide.progress.steps[step].status is Status.OPEN
    assert lived.watched.step_of(step).standing is Standing.AHEAD
    assert lived.watched.now == lived.asked == now != step


def test_a_rest_and_what_happens_are_seen():
    lived = Lived(mode=Mode.PRACTICE)
    lived.answer(2)
    lived.give(Directed(lived.at, Direction.PAUSE, "a" * 32))
    assert lived.watched.turn is Turn.PAUSED
    assert need_of(lived.watched, silent_s=500, unheard_s=0).level is Level.QUIET
    lived.give(Directed(lived.at, Direction.GO_ON, "b" * 32))
    assert lived.watched.turn is Turn.ASKED
    lived.give(Happened(lived.at, Happening.ALARM, order="c" * 32))
    assert lived.watched.marks[-1].what == "alarm"
    assert lived.watched.now == lived.asked
