"""A day at one station in little: ``python -m tests.bench.soak --minutes N``.

The real program by voice on virtual sound: a learner made of sound who works in silence, answers now and then, asks
for things, gives numbers, and goes back through the steps before the attempt is over, so that one process lives
through it all. Every ten seconds its memory and its time of the processor are looked at, with those of the processes
that it starts. Progress goes to standard error; one line of JSON comes at the end.
"""

import argparse
import contextlib
import json
import os
import queue
import sys
import tempfile
import threading
import time
from collections import defaultdict
from collections.abc import Iterator
from dataclasses import dataclass, field
from pathlib import Path

import numpy as np

from assistant.checklist.load import load
from assistant.orders.load import load_order
from assistant.orders.solve import answer_key
from tests.attempt.spoken_learner import SpokenLearner
from tests.bench.program import Program
from tests.virtual_sound import virtual_sound

CHECKLIST = "primary-line"
SAMPLE_S = 10.0
SILENCE_LIMIT_S = 180
"""Nothing from the program for so long is the end of it."""
WARM_UP_SHARE = 0.25
"""Of the time, in which memory still fills (models, sentences that recur): it does not count for the growth."""
FEWEST_SAMPLES = 5
WAITING, LISTENING, SPEAKING = "waiting", "listening", "speaking"
"""What goes on: nobody speaks; the learner does; the answer is worked out and the assistant speaks."""
ASIDES = ("where am I", "what is my order", "again", "more")


class Lasting(SpokenLearner):
    """A learner who asks for something at every third answer, and turns back before the end."""

    def __init__(self, sound, checklist, key) -> None:
        super().__init__(sound, checklist, key, {checklist.steps[0].id: ["faster"] * 4})
        numbers = [place for place, step in enumerate(checklist.steps) if checklist.number_asked(step)]
        self._turn_back = min(numbers[-1] + 2, len(checklist.steps) - 2)
        self._is_going_back = False

    @property
    def place(self) -> int:
        """The step that is open, from 0."""
        return 0 if self._step is None else self._checklist.place(self._step.id)

    def _words(self) -> str:
        if self._asked == "read-back":
            return super()._words()
        self._is_going_back = self.place >= self._turn_back or (self._is_going_back and self.place > 1)
        if self._turns % 3 == 2:
            return ASIDES[self._turns // 3 % len(ASIDES)]
        return "back" if self._is_going_back else super()._words()


@dataclass(frozen=True)
class Sample:
    """What was there at one moment.

    Attributes:
        at_s: seconds since the start.
        own_mb, all_mb: memory of the process, and with those that it has started.
        waiting: nobody spoke, and nothing was worked out.
    """

    at_s: float
    own_mb: float
    all_mb: float
    waiting: bool


@dataclass
class Meter:
    """Memory and processor time of a process and of those that it has started.

    Attributes:
        samples: one each `SAMPLE_S`.
        spent: for what goes on, seconds of the processor and by the clock.
        doing: what goes on now.
    """

    process: int
    samples: list[Sample] = field(default_factory=list)
    spent: dict[str, list[float]] = field(default_factory=lambda: defaultdict(lambda: [0.0, 0.0]))
    doing: str = ""
    began: float = field(default_factory=time.monotonic)

    @contextlib.contextmanager
    def during(self, what: str) -> Iterator[None]:
        """Count the processor's time meanwhile for this."""
        busy, since, self.doing = self.busy_s(), time.monotonic(), what
        yield
        self.doing = ""
        account = self.spent[what]
        account[0] += self.busy_s() - busy
        account[1] += time.monotonic() - since

    def busy_s(self) -> float:
        """Seconds of the processor so far, with those of processes that have ended."""
        ticks = 0
        for process in self._family():
            with contextlib.suppress(OSError):
                stat = Path(f"/proc/{process}/stat").read_text().rpartition(")")[2].split()
                ticks += sum(int(stat[place]) for place in (11, 12, 13, 14))
        return ticks / os.sysconf("SC_CLK_TCK")

    def sample(self) -> None:
        """Look at the memory."""
        sizes = {process: _resident_mb(process) for process in self._family()}
        at_s, is_waiting = time.monotonic() - self.began, self.doing == WAITING
        self.samples.append(Sample(at_s, sizes[self.process], sum(sizes.values()), is_waiting))

    def share(self, *what: str) -> float | None:
        """Per cent of one core during these."""
        busy, by_clock = (sum(self.spent[each][place] for each in what) for place in (0, 1))
        return round(100 * busy / by_clock, 1) if by_clock else None

    def growth(self) -> tuple[float, float, float] | None:
        """MB an hour of the waiting process after the warm-up, with the ends of its 95 % interval; least squares."""
        begin_s = WARM_UP_SHARE * self.samples[-1].at_s
        kept = [(each.at_s / 3600, each.own_mb) for each in self.samples if each.waiting and each.at_s > begin_s]
        if len(kept) < FEWEST_SAMPLES:
            return None
        (slope, _), spread = np.polyfit(*np.array(kept).T, 1, cov=True)
        margin = 1.96 * float(np.sqrt(spread[0, 0]))
        return round(slope, 1), round(slope - margin, 1), round(slope + margin, 1)

    def _family(self) -> list[int]:
        found = [self.process]
        for process in found:
            for task in Path(f"/proc/{process}/task").glob("*/children"):
                with contextlib.suppress(OSError):
                    found += [int(child) for child in task.read_text().split()]
        return found


def _resident_mb(process: int) -> float:
    with contextlib.suppress(OSError, StopIteration):
        status = Path(f"/proc/{process}/status").read_text()
        return next(int(line.split()[1]) / 1024 for line in status.splitlines() if line.startswith("VmRSS"))
    return 0.0


def soak(minutes: float, wait_s: float) -> dict[str, object]:
    """Live so long; what was found.

    Args:
        minutes: how long.
        wait_s: silence before each answer, in which the program waits.
    """
    checklist = load(CHECKLIST)
    key = answer_key(load_order(checklist.order))
    with virtual_sound() as sound, tempfile.TemporaryDirectory() as folder:
        learner = Lasting(sound, checklist, key)
        program = Program(sound, Path(folder))
        meter = Meter(program.process.pid, began=program.began)
        load_before = os.getloadavg()[0]
        ended = threading.Event()
        try:
            _live(program, learner, meter, time.monotonic() + 60 * minutes, wait_s, ended)
        finally:
            ended.set()
            program.end()
    heard = learner.heard.of("heard")
    growth = meter.growth()
    return {
        "minutes": round(meter.samples[-1].at_s / 60, 1),
        "load": [round(load_before, 1), round(os.getloadavg()[0], 1)],
        "answers": len(heard),
        "not_understood": heard.count("None"),
        "memory_mb": _ends([sample.own_mb for sample in meter.samples]),
        "memory_mb_with_children": _ends([sample.all_mb for sample in meter.samples]),
        "growth_mb_an_hour": growth and growth[0],
        "growth_95_%": growth and growth[1:],
        "processor_%": {
            "waiting": meter.share(WAITING),
            "listening": meter.share(LISTENING),
            "understanding_and_speaking": meter.share(SPEAKING),
            "over_all": meter.share(*meter.spent),
        },
    }


def _live(
    program: Program, learner: Lasting, meter: Meter, deadline: float, wait_s: float, ended: threading.Event
) -> None:
    """Answer until the time is over."""
    if not program.until("listening", SILENCE_LIMIT_S):
        raise SystemExit("The program did not begin to listen.")
    for line in program.seen:
        if "say" in line:
            learner.take(line)

    def look() -> None:
        while not ended.wait(SAMPLE_S):
            meter.sample()
            now = meter.samples[-1]
            shares = f"waiting {meter.share(WAITING)} %, listening {meter.share(LISTENING)} %"
            _tell(f"{now.at_s / 60:6.1f} min  {now.own_mb:6.1f} MB, with children {now.all_mb:6.1f} MB  {shares}")

    meter.sample()
    threading.Thread(target=look, daemon=True).start()
    line = {"listening": True}
    while time.monotonic() < deadline:
        if "outcome" in line:
            raise SystemExit("The attempt has ended before the time.")
        if line.get("listening"):
            with meter.during(WAITING):
                time.sleep(wait_s)
            with meter.during(LISTENING):
                learner.take(line)
        else:
            learner.take(line)
        with meter.during(SPEAKING):
            try:
                line = program.lines.get(timeout=SILENCE_LIMIT_S)
            except queue.Empty:
                raise SystemExit("Nothing came from the program any more.") from None


def _ends(sizes: list[float]) -> dict[str, int]:
    return {"start": round(sizes[0]), "end": round(sizes[-1]), "most": round(max(sizes))}


def _tell(text: str) -> None:
    sys.stderr.write(text + "\n")
    sys.stderr.flush()


def main() -> None:
    """Read the arguments, live, print what was found."""
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--minutes", type=float, default=60)
    parser.add_argument("--wait", type=float, default=12, metavar="S", help="silence before each answer")
    given = parser.parse_args()
    sys.stdout.write(json.dumps(soak(given.minutes, given.wait)) + "\n")


if __name__ == "__main__":
    main()
