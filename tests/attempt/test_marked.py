"""An attempt that an instructor watches from a desk: orders from another thread, its record, its report."""

import queue
from datetime import UTC, datetime
from threading import Thread

import pytest

from assistant.adapters.sources import LearnerSource
from assistant.adapters.stepping_clock import SteppingClock
from assistant.attempts.instructor_code import code_pins
from assistant.attempts.papers import take_papers
from assistant.attempts.pins import pins
from assistant.attempts.record_place import RecordPlace
from assistant.attempts.relived import live_again
from assistant.cli.screen import JsonScreen
from assistant.guide.effects import Outcome
from assistant.guide.events import Directed, Direction, Happened, Happening, Mark, Marked, Opened, Typed, Woke
from assistant.guide.progress import Mode, State, Status
from assistant.learner import SimulatedLearner
from assistant.ports import SpeechEnded
from assistant.record.decisions import steps_to_be_seen
from assistant.record.lived import Finding
from assistant.record.verify import read_entries, verify
from assistant.station import Station
from tests.attempt.program import here

START = datetime(2031, 5, 6, 9, 0, tzinfo=UTC)
EARLY = datetime(2031, 5, 6, 8, 0, tzinfo=UTC)
"""What another computer's clock may say; an entry has the time at which the station took the order."""


class Watched(LearnerSource):
    """A learner's typed answers; before each of them a thread of the desk's puts its orders into the inbox."""

    def __init__(self, guide, clock, inbox, orders):
        papers = guide.papers
        super().__init__(SimulatedLearner(papers.checklist, papers.key, None, 1, truth=papers.truth), guide, clock)
        self._progress, self._inbox, self._orders = lambda: guide.progress, inbox, orders

    def next_event(self, due):
        orders = tuple(self._orders(self._progress()))
        if not orders:
            return super().next_event(due)
        posting = Thread(target=lambda: [self._inbox.put(order) for order in orders])
        posting.start()
        posting.join()
        return None


class Noticed(JsonScreen):
    """A screen that remembers what it was told of."""

    def __init__(self):
        self.events = []

    def taken(self, event):
        self.events.append(event)


class Speaks:
    """A voice that is still speaking until it is hushed for the first time; what it says after that is short."""

    def __init__(self, inbox):
        self.calls, self._inbox, self._under_way = [], inbox, []
        self._is_hushed = False

    def say(self, utterance, text, *, careful=False):
        self.calls.append(text)
        self._under_way.append(utterance)
        if self._is_hushed:
            self._end()

    def hush(self):
        self.calls.append(HUSH)
        self._is_hushed = True
        self._end()

    def _end(self):
        for utterance in self._under_way:
            self._inbox.put(SpeechEnded(utterance, START))
        self._under_way.clear()

    def prepare(self, text, *, careful=False):
        pass

    def adjust(self, rate, loudness, pitch):
        pass

    def close(self):
        pass


HUSH = "(hushed)"


def lived(folder, orders, screen=None):
    """The path of the record and the outcome of a check-off by a learner without a slip."""
    papers = take_papers("saline-lock", None)
    pinned = pins(papers, Mode.CHECK_OFF, "A17", "saline-lock", None) | code_pins("4711")
    pinned["simulated"] = "attentive, seed 1, slip none"
    place = RecordPlace(folder, "saline-lock", "A17", START)
    clock, inbox = SteppingClock(START), queue.SimpleQueue()
    guide = papers.guide(Mode.CHECK_OFF, pinned)
    source = Watched(guide, clock, inbox, orders(papers.checklist))
    station = Station(guide, place.create, clock, screen or JsonScreen(), inbox, source=source)
    outcome = station.run()
    inbox.put(Marked(EARLY, Mark.NOTE, words="Too late."))
    return place.path, outcome


def everything_seen(checklist):
    """Marks each step that has to be seen as soon as it is done, twice by the same order, and more beside it."""
    sent = set()

    def orders(progress):
        for step in checklist.steps:
            if step.seen and progress.steps[step.id].status is Status.CLOSED and step.id not in sent:
                sent.add(step.id)
                yield from [Marked(EARLY, Mark.SEEN, step.id, order=f"seen {step.id}")] * 2
        if "others" not in sent and len(progress.history) == 3:
            sent.add("others")
            name = progress.history[0]
            yield Marked(EARLY, Mark.NOTE, words="Hands <b>well</b> cleaned.", order="note")
            yield Marked(EARLY, Mark.CUE, name, order="cue")
            yield Marked(EARLY, Mark.UNDO, undoes="cue", order="undo")
            yield Directed(EARLY, Direction.PAUSE, "pause")
            yield Directed(EARLY, Direction.GO_ON, "go on")
            yield Happened(EARLY, Happening.OTHER, "A visitor comes in.", "visitor")

    return orders


def unsafe_once(checklist):
    """Marks the third step as unsafe, and goes on."""
    sent = set()

    def orders(progress):
        if not sent and len(progress.history) == 2:
            sent.add("unsafe")
            yield Marked(EARLY, Mark.UNSAFE, words="The needle lies open.", order="unsafe")
        elif progress.state is State.HELD:
            yield Directed(EARLY, Direction.GO_ON, "go on")

    return orders


@pytest.fixture(scope="module")
def seen(tmp_path_factory):
    """A check-off in which all that has to be seen was marked."""
    return lived(tmp_path_factory.mktemp("seen"), everything_seen)


@pytest.fixture(scope="module")
def unsafe(tmp_path_factory):
    """A check-off that was held once."""
    return lived(tmp_path_factory.mktemp("unsafe"), unsafe_once)


def test_orders_are_entries_in_their_order(seen):
    """Each once, with the time at which it was taken; what comes after the seal is nothing."""
    path, outcome = seen
    assert outcome is Outcome.PASSED
    entries = read_entries(path)
    assert verify(path).sealed
    given = [entry for entry in entries if entry.get("source") == "desk"]
    orders = [entry["order"] for entry in given]
    assert len(orders) == len(set(orders))
    assert [one for one in orders if not one.startswith("seen")] == [
        *("note", "cue", "undo", "pause", "go on", "visitor")
    ]
    assert {entry["verdict"] for entry in given} == {
        *("seen", "noted", "cue", "taken back", "paused", "going on", "happened")
    }
    times = [entry["at"] for entry in entries]
    assert times == sorted(times)


def test_a_silent_mark_begins_no_question_anew(tmp_path):
    """No screen hears of it, so that what the learner has begun to say or to type is still an answer."""
    screen = Noticed()
    lived(tmp_path, everything_seen, screen)
    assert not any(isinstance(event, Marked) for event in screen.events)
    assert [type(event) for event in screen.events if not isinstance(event, Opened | Typed | Woke)] == [
        *(Directed, Directed, Happened)
    ]


def test_the_voice_gives_way_to_what_the_instructor_says_and_to_nothing_else(tmp_path):
    """A note and what is refused leave it speaking; a hold cuts it short."""
    papers = take_papers("saline-lock", None)
    pinned = pins(papers, Mode.CHECK_OFF, "A17", "saline-lock", None) | code_pins("4711")
    inbox = queue.SimpleQueue()
    for order in (
        *(Marked(EARLY, Mark.NOTE, words="Calm."), Directed(EARLY, Direction.GO_ON)),
        *(Marked(EARLY, Mark.UNSAFE, words="Wait."), Directed(EARLY, Direction.STOP)),
    ):
        inbox.put(order)
    voice = Speaks(inbox)
    place = RecordPlace(tmp_path, "saline-lock", "A17", START)
    guide = papers.guide(Mode.CHECK_OFF, pinned)
    assert Station(guide, place.create, SteppingClock(START), Noticed(), inbox, voice=voice).run() is Outcome.STOPPED
    after = voice.calls[voice.calls.index(HUSH) :]
    assert after[:2] == [HUSH, "Stop. Your instructor holds the attempt: Wait."]
    assert len(voice.calls) - len(after) >= 3, "the beginning, and the first step"
    assert [entry.get("verdict") for entry in read_entries(place.path)][1:4] == ["noted", "refused", "held"]


@pytest.mark.parametrize("which", ["seen", "unsafe"])
def test_a_marked_attempt_lives_again_exactly(which, request):
    """Entry by entry, and its result."""
    path, _ = request.getfixturevalue(which)
    assert live_again(read_entries(path), path).finding is Finding.SAME


def test_what_was_marked_needs_no_mark_at_the_sign_off(seen):
    """Nothing is left to be seen."""
    path, _ = seen
    seal = read_entries(path)[-1]
    assert steps_to_be_seen(seal) == []
    assert {row["seen_by"] for row in seal["results"]["steps"]} == {"", "instructor, from the desk"}


def test_the_report_tells_of_marks(seen, capsys, tmp_path):
    """Who saw which step, the notes, and in the log what was taken back."""
    path, _ = seen
    lines = here(capsys, "report", str(path)).lines
    assert "Notes of the instructor:" in lines
    assert "  Hands <b>well</b> cleaned." in lines
    assert any("seen by the instructor, from the desk" in line for line in lines)
    assert not any("helped by the instructor" in line for line in lines)
    page = tmp_path / "report.html"
    assert here(capsys, "report", str(path), "-o", str(page)).code == 0
    text = page.read_text(encoding="utf-8")
    assert text.count("<s>") == 1
    assert "taken back later" in text
    assert "Hands &lt;b&gt;well&lt;/b&gt; cleaned." in text
    assert here(capsys, "report", str(path), "-o", str(tmp_path / "report.pdf")).code == 0


def test_the_report_says_first_what_was_unsafe(unsafe, capsys):
    """In the headline and before every other reason."""
    path, outcome = unsafe
    assert outcome is Outcome.NOT_PASSED
    report = here(capsys, "report", str(path), "--json").last
    assert report["cause"] == "marked as unsafe by the instructor"
    assert report["failures"][0] == "Unsafe: The needle lies open."


def test_an_attempt_with_a_desk_stays_as_it_was_without_orders(tmp_path):
    """A result names what only a desk can add where there is some, and nowhere else."""
    path, outcome = lived(tmp_path, lambda _checklist: lambda _progress: ())
    results = read_entries(path)[-1]["results"]
    assert outcome is Outcome.OWN_REPORT
    assert not {"unsafe", "notes"} & set(results)
    assert not any("marked_not_seen" in row for row in results["steps"])
