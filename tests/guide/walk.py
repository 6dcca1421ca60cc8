"""Random words at every checklist of the library: ``python -m tests.guide.walk [SECONDS]``.

Each attempt is lived to its end or for two hundred events, in either mode, with learners, instructors, waits and
resumptions; then it is lived again from a random prefix of its entries. Prints how many attempts and events.
"""

import sys
import time
from datetime import timedelta
from pathlib import Path
from random import Random

from assistant.checklist.load import load
from assistant.guide import KEEP_SOUND, WITH_CODE, Guide, Papers
from assistant.guide.events import EarLost, Heard, InputEnded, InstructorCame, Opened, Resumed
from assistant.guide.progress import Mode, State
from assistant.learner import SimulatedLearner
from assistant.orders.load import load_order
from assistant.orders.solve import answer_key
from assistant.spoken import ENGLISH
from assistant.spoken.meaning import Command, InstructorWord
from tests.guide.lived import Lived

WORDS = (
    *(command.value for command in Command),
    *(word.value for word in InstructorWord),
    *(
        "yes",
        "no",
        "done",
        "83.3",
        "ten fifty",
        "fifteen",
        "because it is so",
        "gibberish",
        "left arm",
        "normal saline",
    ),
)
FOLDER = Path(__file__).parents[2] / "checklists"


def attempt(name: str, random: Random) -> int:
    """One attempt and its second life; returns how many events it took.

    Raises:
        AssertionError: it broke a promise, or was not lived again as it was.
    """
    checklist = load(name)
    order = load_order(checklist.order)
    key = answer_key(order)
    mode = random.choice(list(Mode))
    pins = {"mode": mode.value, "sound": random.choice(("", KEEP_SOUND)), "instructor": random.choice(("", WITH_CODE))}

    def fresh() -> Guide:
        return Guide(Papers(checklist, order.sentence(), key, ENGLISH), mode, pins)

    lived = Lived(fresh())
    learner = SimulatedLearner(checklist, key, None, random.randrange(1000))
    lived.give(Opened(lived.at))
    folly = random.choice((0.05, 0.2, 0.6))
    for _ in range(200):
        if lived.state is State.FINISHED:
            if lived.sealed is not None or random.random() < 0.5:
                break
            lived.outcome = None
            lived.give(Resumed(lived.at))
        lived.at += timedelta(seconds=1)
        draw = random.random()
        if draw < folly / 8:
            lived.wait(random.randrange(1, 400))
        elif draw < folly / 6:
            others = (InstructorCame(lived.at, random.random() < 0.5), Resumed(lived.at), EarLost(lived.at, "out."))
            lived.give(random.choice((*others, InputEnded(lived.at))))
        elif draw < folly:
            lived.give(Heard(lived.at, random.choice(WORDS)))
        elif lived.state is State.WAITING:
            lived.wait(60)
        else:
            lived.type(learner.reply(lived.guide.progress).words)
    length = random.randrange(1, len(lived.entries) + 1)
    again, whole = fresh(), fresh()
    again.replay(lived.entries[:length])
    whole.replay(lived.entries)
    assert whole.progress == lived.guide.progress
    return len(lived.entries)


def walk(seconds: float, seed: int = 1) -> tuple[int, int]:
    """Attempts and events until the time is over."""
    random = Random(seed)  # noqa: S311 - draws words, guards nothing
    names = sorted(path.stem for path in FOLDER.glob("*.toml") if "[[steps]]" in path.read_text(encoding="utf-8"))
    ends = time.monotonic() + seconds
    attempts = events = 0
    while time.monotonic() < ends:
        events += attempt(random.choice(names), random)
        attempts += 1
    return attempts, events


if __name__ == "__main__":
    attempts, events = walk(float(sys.argv[1]) if len(sys.argv) > 1 else 60)
    print(f"attempts {attempts}, events {events}, none broke a promise")  # noqa: T201
