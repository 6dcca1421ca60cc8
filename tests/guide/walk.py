"""A learner who gets through, with a share of folly: ``python -m tests.guide.walk SECONDS [--seed N]``.

Drives the promises of the guide (`promises.py`): attempts at every checklist of the library and at those made for
tests, in both modes, typed and by voice, with slips, instructors, waits, interruptions and resumptions. The suite
lives the same scripts each time; the command lives new ones, holds each promise against every one of them, and
prints what the promises saw. Each script has a seed of its own, named where it breaks a promise.
"""

import argparse
import secrets
import sys
import time
from collections import Counter
from collections.abc import Iterator
from random import Random

from assistant.errors import UsageError
from assistant.learner import SimulatedLearner, Slip
from assistant.spoken.meaning import Command, InstructorWord
from tests.guide.lived import (
    KEEP_SOUND,
    WITH_CODE,
    EarLost,
    InputEnded,
    InstructorCame,
    Mode,
    Opened,
    Resumed,
    State,
    guide,
)
from tests.guide.promises import PROMISES
from tests.guide.script import Papers, Script, library, made_for_tests

MOST_EVENTS = 200
"""Events after which an attempt is left where it is."""
FOLLY = (0.05, 0.1, 0.2, 0.4)
"""Shares of what is not the learner's answer to what is asked."""
BREAKS = (Command.PAUSE.value, Command.STOP.value, Command.INSTRUCTOR.value, "go on")
"""Interrupt something, a timed wait too, and go on."""
WORDS = (
    *(command.value for command in Command),
    *(word.value for word in InstructorWord),
    *("yes", "correct", "no", "done", "gibberish", "because it is so", "left arm", "sore", "normal saline"),
    *("83.3", "fifteen", "ten fifty", "eight three point three", "950 mL"),
)
WITH_THE_INSTRUCTOR = (*(word.value for word in InstructorWord), "go on", "go on")


def live(seed: str, papers: Papers, mode: Mode) -> Script:
    """One attempt, to its end or for `MOST_EVENTS`; the same for the same arguments."""
    random = Random(seed)  # noqa: S311 - draws words, guards nothing
    pins = {"sound": random.choice(("", KEEP_SOUND)), "instructor": random.choice(("", WITH_CODE))}
    fresh = guide(mode, papers.checklist, papers.key, papers.order, **pins)
    script = Script(fresh, papers=papers, mode=mode, pins=pins, seed=seed)
    learner = _learner(papers, random)
    folly = random.choice(FOLLY)
    script.give(Opened(script.at))
    while len(script.entries) < MOST_EVENTS:
        if script.state is State.FINISHED:
            if script.sealed is not None or random.random() < 0.5:
                break
            script.outcome = None
            script.wait(random.choice((1, 5, 200)))
            script.give(Resumed(script.at))
        elif random.random() < folly:
            _be_foolish(script, random)
        elif script.guide.progress.last_pass and random.random() < 0.6:
            _change_mind(script, random)
        elif script.state is State.WAITING:
            # A wait is over in one event, and would hardly ever be interrupted by folly alone.
            _break_off(script, random)
            script.wait(random.choice((1, 60, 60)))
        elif script.state is State.WITH_INSTRUCTOR:
            script.type(random.choice(WITH_THE_INSTRUCTOR))
        else:
            reply = learner.reply(script.guide.progress)
            script.wait(reply.after_s)
            _say(script, reply.words, random)
    return script


def _learner(papers: Papers, random: Random) -> SimulatedLearner:
    """One who makes a slip somewhere, where the papers leave a place for it."""
    slip, seed = random.choice((None, *Slip)), random.randrange(1000)
    try:
        return SimulatedLearner(papers.checklist, papers.key, slip, seed)
    except UsageError:
        return SimulatedLearner(papers.checklist, papers.key, None, seed)


def _say(script: Script, words: str, random: Random) -> None:
    """By the keyboard or by voice, now and then with what spoils an utterance."""
    if random.random() < 0.6:
        script.type(words)
        return
    spoilt = random.choice(({}, {}, {}, {"doubtful": True}, {"doubtful": True}, {"gap": True}, {"during_speech": True}))
    script.hear(words, **spoilt)


def _be_foolish(script: Script, random: Random) -> None:
    """Anything but what is asked."""
    match random.randrange(16):
        case 0 | 1:
            script.wait(random.choice((1, 5, 130, 400)))
        case 2:
            script.give(InputEnded(script.at))
        case 3 | 4:
            comes = InstructorCame(script.at, proven=random.random() < 0.7)
            script.give(random.choice((comes, comes, Resumed(script.at), EarLost(script.at, "out."))))
        case 5 | 6 | 7:
            _break_off(script, random)
        case 8 | 9:
            script.type(Command.GO_ON.value)
        case _:
            _say(script, random.choice(WORDS), random)


def _break_off(script: Script, random: Random) -> None:
    """Interrupt what is asked or waited for, or go on from an interruption."""
    script.type(random.choice(BREAKS))


def _change_mind(script: Script, random: Random) -> None:
    """Take an earlier answer back, and leave its step open: in the last pass that leaves the step out."""
    script.type(*["back"] * random.randrange(1, len(script.checklist.steps) + 1), "no", "go on")


def scripts(seed: int, rounds: int, shelf: tuple[Papers, ...]) -> Iterator[Script]:
    """So many attempts at each of these papers in each mode."""
    for turn in range(rounds):
        for papers in shelf:
            for mode in Mode:
                name = f"{seed}:{turn}:{papers.checklist.name}:{mode.value}"
                try:
                    yield live(name, papers, mode)
                except Exception as broken:
                    broken.add_note(f"in script {name}")
                    raise


def main(words: list[str] | None = None) -> int:
    """Live new scripts for so many seconds; 0 where no promise was broken."""
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("seconds", type=float, nargs="?", default=60)
    parser.add_argument("--seed", type=int, default=None, help="lives the same scripts again")
    args = parser.parse_args(words)
    seed = secrets.randbelow(10**9) if args.seed is None else args.seed
    seen: Counter[str] = Counter()
    ends = time.monotonic() + args.seconds
    lived = scripts(seed, sys.maxsize, (*made_for_tests(), *library()))
    while time.monotonic() < ends:
        script = next(lived)
        seen += Counter(scripts=1, events=len(script.moments))
        for promise in PROMISES:
            seen[promise.__name__] += promise(script)
    sys.stdout.write(f"seed {seed}: " + ", ".join(f"{name} {count}" for name, count in seen.items()) + "\n")
    return 0


if __name__ == "__main__":
    sys.exit(main())
