"""A desk with its pages and real doors, and stations that report records which the real program made."""

import functools
import itertools
import json
import time
from contextlib import contextmanager
from datetime import datetime
from pathlib import Path

from assistant.attempts.papers import papers_of
from assistant.attempts.plan import plan_of
from assistant.attempts.proof import Here
from assistant.desk.class_list import ClassList
from assistant.desk.doors import Doors
from assistant.desk.hub import Hub
from assistant.desk.instructor import Desk
from assistant.desk.lab import Lab, Network
from assistant.guide.progress import Mode
from assistant.link.messages import Answered, Begun, Hello, Mark
from assistant.record.head_book import HeadBook
from assistant.record.instructors import trust_instructor
from assistant.record.signing import new_key
from tests.report import attempts

PASSPHRASE = "three small boats at dawn"  # noqa: S105 - of a key that a test makes


class InMemory:
    """Keeps what a test reports; what stands on disk is the matter of other tests."""

    def __init__(self):
        self.entries = {}

    def begun(self, begun, *, here):
        return len(self.entries.setdefault(begun.attempt, []))

    def bodies(self, attempt):
        return tuple(self.entries[attempt])


@functools.cache
def demonstration(*arguments):
    """The entries of a demonstration, and the plan of its steps."""
    lines = attempts._content(*arguments).splitlines()
    entries = [json.loads(line) for line in lines]
    papers = papers_of(entries[0], Path("a record"))
    pins = {name: value for name, value in entries[0].items() if isinstance(value, str)}
    guide = papers.guide(Mode(entries[0]["mode"]), pins)
    return tuple(entries), plan_of(guide.papers), papers.order.sentence()


class Stations:
    """Stations that report to a desk what a test wants them to."""

    def __init__(self, folder, *, lab=None):
        self.folder = folder
        self.keeping = InMemory()
        self.now_s = 1_000.0
        self.hub = Hub(self.keeping, lambda: self.now_s)
        (folder / "records").mkdir(exist_ok=True)
        book = HeadBook(folder / "heads", None, lambda _: None)
        self.class_list = ClassList(folder / "class-list.txt")
        known = lambda: Here(book, folder / "keys")  # noqa: E731 - a folder of keys and a book, read anew
        lab_of = Lab(self.hub, lambda: self.now_s, folder / "records", self.class_list, known, folder / "keys")
        self.desk = Desk(lab_of)
        self.doors = Doors(self.hub, self.desk.app, folder / "link", lab=lab)
        if lab is not None:
            self.desk.stations.network = Network(
                self.doors.pairing, self.doors.store, f"127.0.0.1:{self.doors.lab_port}"
            )
        self.address = self.doors.address
        self._numbers = itertools.count(1)

    def on(self, work):
        return self.doors.server.run(work)

    def hello(self, station, **fields):
        self.on(lambda: self.hub.hello(Hello(station=station, **fields)))

    def begins(self, station, *arguments, learner="A17", upto=None, **changes):
        """An attempt at a station, as far as this entry of a demonstration; return its digest."""
        entries, plan, order = demonstration(*arguments)
        attempt = f"{next(self._numbers):064x}"
        entries = [{**entry} for entry in entries[:upto]]
        entries[0] |= {"learner": learner, **changes}
        shift = time.time() - datetime.fromisoformat(entries[-1]["at"]).timestamp()
        for entry in entries:
            entry_at = datetime.fromisoformat(entry["at"]).timestamp() + shift
            entry["at"] = datetime.fromtimestamp(entry_at).astimezone().isoformat()
        self.keeping.entries[attempt] = entries
        self.hello(station, busy=True, sound=True)
        begun = Begun(station=station, attempt=attempt, file=f"attempt-{attempt[-4:]}.jsonl", plan=plan, order=order)
        self.on(lambda: self.hub.begun(begun))
        return attempt

    def reports(self, attempt, **entry):
        """A further entry of an attempt."""
        self.keeping.entries[attempt].append({"at": datetime.now().astimezone().isoformat(), **entry})

        def take():
            watched = self.hub.attempts[attempt]
            self.hub.attempts[attempt] = watched.with_entries(self.keeping.bodies(attempt)[watched.entries :])
            seen = self.hub.stations[watched.begun.station]
            seen.at = seen.fresh_at = self.now_s
            self.hub._changed()

        self.on(take)

    def new_key(self, name, passphrase):
        """An instructor's key, the one that decides here."""
        keys = self.folder / "keys"
        new_key(keys, name, passphrase)
        trust_instructor(keys, name, "M. Lindqvist", "RN")

    def filled(self):
        """A station in every condition, and paired ones; `pages` has the address of each page."""
        self.on(lambda: self.doors.store.add("station", "Station 3"))
        for last, signs in (("34", False), ("35", True)):
            name = f"browser at 192.168.1.{last}"
            self.on(lambda name=name: self.doors.store.add("browser", name))
            self.on(lambda name=name, signs=signs: self.doors.store.allow(name, signs=signs))
        check_off = ("primary-line", "--mode", "check-off", "--slip", "tenfold", "--seed", "2", "--typed")
        entries = demonstration(*check_off)[0]
        held = next(count for count, entry in enumerate(entries, 1) if entry.get("verdict") == "does not agree")
        attempt = self.begins("Station 3", *check_off, learner="A17", upto=held)
        self.begins("Station 1", *check_off, learner="B02", upto=14)
        self.begins("Station 10", *check_off, learner="C11", upto=6)
        over = self.begins("Station 2", *check_off, learner="D40")
        trouble = self.begins("Station 6", *check_off, learner="F19", upto=20)
        told = {"kind": "a leak", "words": "it's leaking at the port"}
        self.reports(trouble, kind="heard", words=told["words"], verdict="trouble", state="asking", trouble=told)
        calls = self.begins("Station 8", *check_off, learner="H12", upto=22)
        self.reports(calls, kind="typed", words="I need help", state="asking", step="p-clamp-again", tries_spent=True)
        unsafe = self.begins("Station 7", *check_off, learner="G33", upto=22)
        words = "The line was open to the room."
        self.reports(unsafe, kind="marked", mark="unsafe", words=words, order="0" * 32, verdict="held")
        self.reports(attempt, kind="marked", mark="seen", step="p-prime", order="1" * 32, verdict="seen")
        self.reports(attempt, kind="marked", mark="note", words="Asked well.", order="2" * 32, verdict="noted")
        note = Mark(id="3" * 32, attempt=attempt, mark="note", words="Explained it to a fellow learner.")
        self.on(lambda: self.hub.give("Station 3", note))
        self.hello("Station 4", sound=True, left=(over,))
        killed = self.begins("Station 9", *check_off, learner="J31", upto=12)
        self.hello("Station 9", sound=True, left=(killed,))
        self.on(lambda: self.hub.give("Station 9", Mark(id="4" * 32, attempt=killed, mark="cue")))
        attempts.attempt(self.folder / "records", *check_off, name="20261128T090000-primary-line-D40.jsonl")
        self.new_key("lindqvist", PASSPHRASE)
        self.class_list.keep("A17\nA18\nB02\n")
        self.pages = {
            "board": "",
            "attempt": f"attempt/{attempt}",
            "start": "start",
            "records": "records",
            "sign": "records/20261128T090000-primary-line-D40.jsonl/sign",
            "stations": "stations",
            "nowhere": "nowhere",
        }

    def orders(self, station):
        return list(self.hub.stations[station].orders)

    def answers(self, station, order, why=""):
        self.on(lambda: self.hub.answered(station, Answered(order=order.id, why=why)))

    def passes(self, seconds):
        """Time goes by at the desk."""

        def tick():
            self.now_s += seconds
            self.hub._changed()

        self.on(tick)

    def close(self):
        self.doors.close()


@contextmanager
def stations(folder, **named):
    """A desk until the block ends."""
    one = Stations(folder, **named)
    try:
        yield one
    finally:
        one.close()


def ready(page):
    """Wait until a page of the desk shows what it has to show."""
    page.wait_for_load_state()
    kind = page.evaluate("document.body.dataset.page")
    waits_for = {"board": "#rows > li .cells", "attempt": "#log li", "start": "#order p"}.get(kind)
    if waits_for:
        page.wait_for_selector(waits_for)
