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
from assistant.desk.instructor import Desk, Lab, Network
from assistant.guide.progress import Mode
from assistant.link.messages import Answered, Begun, Hello
from assistant.record.head_book import HeadBook
from tests.report import attempts


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
            self.desk.network = Network(self.doors.pairing, self.doors.store, f"127.0.0.1:{self.doors.lab_port}")
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
        begun = Begun(station=station, attempt=attempt, file=f"{learner}.jsonl", plan=plan, order=order)
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
