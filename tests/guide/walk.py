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

from assistant.checklist.model import DoneAsked, NoteAsked, QuestionAsked, WaitAsked
from assistant.errors import UsageError
from assistant.learner import Character, SimulatedLearner, Slip
from assistant.orders.fault import facts_of
from assistant.spoken.meaning import Answer, Command, InstructorWord, Kind, Trouble
from tests.guide.lived import (
    KEEP_SOUND,
    WITH_CODE,
    Direction,
    EarLost,
    FromDesk,
    Happening,
    InputEnded,
    InstructorCame,
    Mark,
    Mode,
    Opened,
    Resumed,
    State,
    Status,
    guide,
)
from tests.guide.promises import PROMISES, only_a_positive_closes
from tests.guide.script import Papers, Script, library, made_for_tests

MOST_EVENTS = 200
"""Events after which an attempt is left where it is."""
FOLLY = (0.05, 0.1, 0.2, 0.4)
"""Shares of what is not the learner's answer to what is asked."""
BREAKS = (Command.PAUSE.value, Command.STOP.value, Command.INSTRUCTOR.value, "go on")
"""Interrupt something, a timed wait too, and go on."""
TROUBLES = (
    *("there's air in the line", "it's leaking", "i dropped it", "i touched the tip", "the pump is beeping"),
    *("it hurts her", "this is the wrong bag", "i made a mistake two steps ago", "it is cracked"),
)
"""Reports of trouble of nine kinds."""
REPORTED = tuple(Answer(Kind.TROUBLE, kind.value) for kind in Trouble)
ASKED = (
    *(Command.AGAIN, Command.MORE, Command.WHERE, Command.ORDER, Command.HOLD_ON, Command.OPTIONS, Command.SLOWER),
    *("okay", "is it done", "gibberish", "pause", "almost done"),
)
"""What a truthful learner says before an answer, and what must cost nothing."""
WORDS = (
    *(command.value for command in Command),
    *(word.value for word in InstructorWord),
    *("yes", "correct", "no", "done", "gibberish", "because it is so", "left arm", "sore", "normal saline"),
    *("83.3", "fifteen", "ten fifty", "eight three point three", "950 mL"),
    # What only comes near a positive, and what is trouble.
    *("okay", "right", "done?", "is it done", "not done", "not yet", "almost done", "i think so", "i didn't"),
    *("i have not", "not complete", "about to", "not sure", "ready?", "yes but it leaks", "done... no", "it is not"),
    *TROUBLES,
)
WITH_THE_INSTRUCTOR = (*(word.value for word in InstructorWord), "go on", "go on")


def live(seed: str, papers: Papers, mode: Mode, desk: float = 0) -> Script:
    """One attempt, to its end or for `MOST_EVENTS`; the same for the same arguments.

    Args:
        seed: what it is drawn from.
        papers: what it is made of.
        mode: practice or check-off.
        desk: share of events that come from an instructor's desk.
    """
    random = Random(seed)  # noqa: S311 - draws words, guards nothing
    pins = {"sound": random.choice(("", KEEP_SOUND)), "instructor": random.choice(("", WITH_CODE))}
    fresh = guide(mode, papers.checklist, papers.key, papers.order, papers.truth, **pins)
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
        elif desk and random.random() < desk:
            order_something(script, random)
        elif script.state is State.HELD and random.random() < 0.3:
            script.direct(Direction.GO_ON)
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


def truthful(seed: str, papers: Papers, mode: Mode, share: float, marks: tuple[Mark, ...] = ()) -> Script:
    """An attempt to its end by a learner who makes no slip, and hesitates, asks and reports in a share of the steps.

    Each answer is followed by one of the `marks`, if any, for a step that is done.
    """
    random = Random(seed)  # noqa: S311 - draws words, guards nothing
    fresh = guide(mode, papers.checklist, papers.key, papers.order, papers.truth)
    script = Script(fresh, papers=papers, mode=mode, seed=seed)
    learner = SimulatedLearner(papers.checklist, papers.key, None, random.randrange(1000), truth=papers.truth)
    script.give(Opened(script.at))
    while script.state is not State.FINISHED:
        assert len(script.entries) < 20 * MOST_EVENTS, seed
        if script.state is State.PAUSED:
            script.type(Command.GO_ON.value)
        elif random.random() < share:
            _hesitate(script, random)
        elif script.state is State.WAITING:
            script.wait(60)
        else:
            script.type(learner.reply(script.guide.progress).words)
        if marks and script.state is not State.FINISHED:
            at, wake = script.at, script.wake
            done = [name for name, step in script.guide.progress.steps.items() if step.status is Status.CLOSED]
            script.mark(random.choice(marks), random.choice(done or [""]), words="As it is taught.")
            script.at, script.wake = at, wake
    return script


def _hesitate(script: Script, random: Random) -> None:
    """Something that a truthful learner says in place of the answer, here."""
    step = script.checklist.steps[script.guide.progress.cursor]
    match random.randrange(5):
        case 0:
            script.wait(random.choice((1, 3)))
        case 1 if script.state is State.ASKING and isinstance(step.expect, DoneAsked | WaitAsked):
            script.type("not yet")
        # What is not laid out is for the instructor to judge, and what proves an earlier "done" false has its price.
        case 1 if isinstance(step.expect, QuestionAsked) and (facts_of(step) or step.takes_back):
            script.wait(1)
        case 1 if script.state is State.ASKING and isinstance(step.expect, QuestionAsked):
            script.type("no" if step.expect.right == "yes" else "yes")
        case 2 if not (script.state is State.ASKING and isinstance(step.expect, NoteAsked)):
            words = random.choice(TROUBLES)
            # "It's leaking" may be one of the alternatives that the line names: then it is an answer.
            if script.guide.papers.language.interpret(words, script.guide.expectation()) in REPORTED:
                script.type(words)
        case 3 if script.state is State.ASKING and script.mode is Mode.CHECK_OFF:
            script.type(Command.HELP.value, "no")
        case _ if not (script.state is State.ASKING and isinstance(step.expect, NoteAsked)):
            script.type(str(random.choice(ASKED)))


PRAISE = ("troubles", "hurried")
"""What of a result tells of reports and of pace."""
COUNTED = ("found", "reopened", "tries")
"""What of a step's result tells how often it was asked and answered."""


def costs(script: Script) -> dict[str, object]:
    """The result of an attempt without what reports and times add to it."""
    body = script.guide.results().body()
    steps = [{name: value for name, value in line.items() if name not in COUNTED} for line in body["steps"]]  # type: ignore[attr-defined]
    return {name: value for name, value in body.items() if name not in PRAISE} | {"steps": steps}


def truth_costs_nothing(seed: str, papers: Papers, mode: Mode) -> int:
    """A learner who says how it is ends with the result of the smooth one, whatever that takes.

    Returns:
        how many reports and findings are on record.
    """
    smooth, honest = truthful(seed, papers, mode, 0), truthful(seed, papers, mode, 0.3)
    assert costs(honest) == costs(smooth), seed
    assert honest.outcome is smooth.outcome, seed
    told = [entry for entry in honest.entries if entry.get("verdict") in ("trouble", "found")]
    assert len(honest.guide.results().troubles) == len(told), seed
    only_a_positive_closes(honest)
    return len(told)


def _learner(papers: Papers, random: Random) -> SimulatedLearner:
    """One who makes a slip somewhere, where the papers leave a place for it."""
    slip, seed, character = random.choice((None, *Slip)), random.randrange(1000), random.choice(list(Character))
    try:
        return SimulatedLearner(papers.checklist, papers.key, slip, seed, truth=papers.truth, character=character)
    except UsageError:
        return SimulatedLearner(papers.checklist, papers.key, None, seed, truth=papers.truth, character=character)


def _say(script: Script, words: str, random: Random) -> None:
    """By the keyboard or by voice, now and then with what spoils an utterance."""
    if random.random() < 0.6:
        script.type(words)
        return
    spoilt = random.choice(({}, {}, {}, {"doubtful": True}, {"doubtful": True}, {"gap": True}, {"during_speech": True}))
    if random.random() < 0.3:
        spoilt = spoilt | {"told_apart": True}
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


def order_something(script: Script, random: Random) -> None:
    """An order of any kind from the desk, for any step, also one that cannot be taken; now and then one twice."""
    given = [event for event in (moment.event for moment in script.moments) if isinstance(event, FromDesk)]
    name = random.choice([step.id for step in script.checklist.steps])
    current = script.checklist.steps[script.guide.progress.cursor].id
    match random.randrange(12):
        case 0:
            script.happen(random.choice(list(Happening)), random.choice(("", "the visitor leans on the pole")))
        case 1:
            script.direct(random.choice(list(Direction)))
        case 2 | 3 if given:
            script.mark(Mark.UNDO, undoes=random.choice(given).order)
        case 4 if given:
            script.give(random.choice(given))
        case 5:
            script.mark(Mark.UNSAFE, words=random.choice(("", "the line is open")))
        case _:
            mark = random.choice([mark for mark in Mark if mark not in (Mark.UNDO, Mark.UNSAFE)])
            words = random.choice(("because of the set", "because of the set", ""))
            script.mark(
                mark, random.choice((name, current, "", "no-such-step")), words=words, proven=random.random() < 0.9
            )


def _break_off(script: Script, random: Random) -> None:
    """Interrupt what is asked or waited for, or go on from an interruption."""
    script.type(random.choice(BREAKS))


def _change_mind(script: Script, random: Random) -> None:
    """Take an earlier answer back, and leave its step open: in the last pass that leaves the step out."""
    for words in (*["back"] * random.randrange(1, len(script.checklist.steps) + 1), "no", "go on"):
        if script.state is not State.FINISHED:  # "no" may be the last answer that was wanted
            script.type(words)


def scripts(seed: int, rounds: int, shelf: tuple[Papers, ...], desk: float = 0) -> Iterator[Script]:
    """So many attempts at each of these papers in each mode; `desk` as in `live`."""
    for turn in range(rounds):
        for papers in shelf:
            for mode in Mode:
                name = f"{seed}:{turn}:{papers.checklist.name}:{mode.value}"
                try:
                    yield live(name, papers, mode, desk)
                except Exception as broken:
                    broken.add_note(f"in script {name}")
                    raise


def main(words: list[str] | None = None) -> int:
    """Live new scripts for so many seconds; 0 where no promise was broken."""
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("seconds", type=float, nargs="?", default=60)
    parser.add_argument("--desk", type=float, default=0, help="share of events from an instructor's desk")
    parser.add_argument("--seed", type=int, default=None, help="lives the same scripts again")
    args = parser.parse_args(words)
    seed = secrets.randbelow(10**9) if args.seed is None else args.seed
    seen: Counter[str] = Counter()
    ends = time.monotonic() + args.seconds
    lived = scripts(seed, sys.maxsize, (*made_for_tests(), *library()), args.desk)
    while time.monotonic() < ends:
        script = next(lived)
        seen += Counter(scripts=1, events=len(script.moments))
        for promise in PROMISES:
            seen[promise.__name__] += promise(script)
        told = truth_costs_nothing(script.seed, script.papers, script.mode)
        seen[truth_costs_nothing.__name__] += told
    sys.stdout.write(f"seed {seed}: " + ", ".join(f"{name} {count}" for name, count in seen.items()) + "\n")
    return 0


if __name__ == "__main__":
    sys.exit(main())
