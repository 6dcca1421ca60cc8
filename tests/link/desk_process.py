"""A desk as a process that can be killed: ``python -m tests.link.desk_process FOLDER PORT``, a port of the lab's side.

Once a station is there for the first time, one attempt is started at it; nothing else is done.
"""

import sys
import threading
from pathlib import Path

from assistant.desk.hub import new_id
from assistant.link.messages import Start
from tests.link.lab import CHECKLIST, Desk

if __name__ == "__main__":
    desk = Desk(Path(sys.argv[1]), lab=("127.0.0.1", int(sys.argv[2])))
    started = Path(sys.argv[1]) / "started"
    while not started.exists():
        threading.Event().wait(0.05)
        for station in desk.on(lambda: list(desk.hub.stations)):
            order = Start(id=new_id(), checklist=CHECKLIST, learner="A17", mode="practice", short_waits=True)
            desk.give(station, order)
            started.touch()
    threading.Event().wait()
