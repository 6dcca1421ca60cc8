"""A desk with its real doors, and stations as processes of their own."""

import json
import os
import signal
import subprocess
import sys
import threading
import time
from contextlib import contextmanager
from pathlib import Path

from starlette.responses import PlainTextResponse

from assistant.desk.doors import Doors
from assistant.desk.hub import Hub, new_id
from assistant.desk.keeping import KeptRecords
from assistant.link.messages import Start

LIMIT_S = 60
CHECKLIST = "hourly-round"


class Desk:
    """A desk in this process."""

    def __init__(self, folder: Path, *, port=0, lab=None):
        self.folder = folder
        self.records = folder / "records"
        self.link = folder / "link"
        self.kept = KeptRecords(self.records, self.link)
        self.hub = Hub(self.kept, time.monotonic)
        self.doors = Doors(self.hub, PlainTextResponse("a page"), self.link, port=port, lab=lab)

    def on(self, work):
        """Do something in the desk's thread."""
        return self.doors.server.run(work)

    def give(self, station, order):
        self.on(lambda: self.hub.give(station, order))
        return order.id

    def start(self, station, **fields):
        """Let an attempt begin; return its digest once an entry is there."""
        wanted = {"checklist": CHECKLIST, "learner": "A17", "mode": "practice", "short_waits": True, **fields}
        before = set(self.hub.attempts)
        self.give(station, Start(id=new_id(), **wanted))
        until(lambda: set(self.hub.attempts) - before, f"an attempt at {station}: {self.seen(station)}")
        (attempt,) = set(self.hub.attempts) - before
        return attempt

    def seen(self, station):
        return self.hub.stations.get(station)

    def entries(self, attempt):
        return self.on(lambda: self.kept.bodies(attempt))

    def path(self, attempt):
        return self.kept.path(attempt)

    def is_sealed(self, attempt):
        found = self.entries(attempt)
        return bool(found) and "seal" in found[-1]

    def close(self):
        self.doors.close()


@contextmanager
def desk(folder, **named):
    """A desk until the block ends."""
    one = Desk(folder, **named)
    try:
        yield one
    finally:
        one.close()


class StationProcess:
    """A station with a simulated learner, as a process."""

    def __init__(self, folder: Path, name="", *, pace=(0.0, 0.0), seed=1, records="records", link="link"):
        self.records = folder / records
        self.environment = {
            **os.environ,
            "CHECKOFF_LINK": str(folder / link),
            "CHECKOFF_HEADS": str(folder / f"heads-{records}"),
            "CHECKOFF_SETTINGS": str(folder / "settings.toml"),
        }
        self._call = [sys.executable, "-m", "tests.link.learner_station", *map(str, pace), str(seed)]
        self._call += [*([name] if name else []), "--typed", "--no-display", "--records", str(self.records)]
        self._log = (folder / f"station-{name or 'paired'}.log").open("ab")
        self.start()

    def start(self):
        self.process = subprocess.Popen(
            self._call, stdin=subprocess.DEVNULL, stdout=self._log, stderr=self._log, env=self.environment
        )

    def kill(self):
        self.process.kill()
        self.process.wait(LIMIT_S)

    def close(self):
        if self.process.poll() is None:
            self.process.send_signal(signal.SIGTERM)
            try:
                self.process.wait(20)
            except subprocess.TimeoutExpired:
                self.kill()
        self._log.close()

    @property
    def said(self):
        return Path(self._log.name).read_text(encoding="utf-8")


@contextmanager
def station(folder, name="", **named):
    """A station until the block ends."""
    one = StationProcess(folder, name, **named)
    try:
        yield one
    finally:
        one.close()


def until(holds, what, limit_s=LIMIT_S):
    """Wait until something holds; return it."""
    end = time.monotonic() + limit_s
    while time.monotonic() < end:
        found = holds()
        if found:
            return found
        threading.Event().wait(0.02)
    raise AssertionError(f"waited in vain for {what}")


def lines_of(path):
    """The entries of a file, as they are written."""
    return [json.loads(line) for line in path.read_bytes().splitlines()]
