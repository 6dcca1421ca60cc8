"""One procedure by ear and mouth alone: ``python -m tests.attempt.by_voice NAME [--order ORDER]``.

A synthesised learner speaks into a virtual microphone; the bundled recogniser hears, and the assistant's own
voice is played. The learner hurries the voice along, asks for one step again and gives one wrong number first.
Waits are short. Prints what happened, and ends with 1 where the attempt was not passed or a wrong number
stood. It takes 7 s a step on two quiet cores, and twice that on busy ones.
"""

import argparse
import contextlib
import sys
import tempfile
import time
from pathlib import Path

from assistant.checklist.model import QuestionAsked
from assistant.record.verify import read_entries, verify
from tests.attempt.library import Papers, papers, wrong_words
from tests.attempt.spoken_learner import SpokenLearner, live
from tests.recorded_words import RATE_HZ, Mouth, babble
from tests.spoken_words import write_words
from tests.virtual_sound import virtual_sound

LIMIT_S = 1200
"""Longest attempt, seconds."""
RATE = 3
"""Steps from the voice's usual speed: an attempt is long enough."""
_BABBLE_S = 40.0


def planned(given: Papers) -> dict[str, list[str]]:
    """What is said before the right answer, by the id of the step."""
    steps = given.checklist.steps
    first = {steps[0].id: ["faster"]}
    again = next((step for step in steps[1:] if isinstance(step.expect, QuestionAsked)), steps[1])
    first[again.id] = ["again"]
    number = next((step for step in steps if given.checklist.number_asked(step)), None)
    if number is not None:
        first[number.id] = [wrong_words(number, given)]
    return first


def run(name: str, order: str, *, talk: bool, people: bool = False, babble_db: float | None = None) -> bool:
    """Live through it and print what happened; whether all is as it should be.

    Args:
        name: the checklist.
        order: its order; "" for the checklist's own.
        talk: print what was said and heard as well.
        people: words that were recorded are said by people (`tests.recorded_words`).
        babble_db: others talk all the time, so many decibels below the learner.
    """
    given = papers(name, order)
    plan = planned(given)
    began = time.monotonic()
    mouth = Mouth.of_this_machine()
    with tempfile.TemporaryDirectory() as folder, virtual_sound() as sound, contextlib.ExitStack() as room:
        if babble_db is not None:
            room.enter_context(sound.around(babble(_BABBLE_S, babble_db), RATE_HZ))
        settings = Path(folder) / "settings.toml"
        settings.write_text(f"[sound]\nrate = {RATE}\n")
        sound.environment["CHECKOFF_SETTINGS"] = str(settings)
        write = mouth.write_words if people or babble_db is not None else write_words
        learner = SpokenLearner(sound, given.checklist, given.key, plan, write)
        code, last, console = live(
            [
                *("run", name, "--order", order or given.checklist.order, "--voice", "--json", "--short-waits"),
                *("--ear", "trained", "--learner", "A17", "--records", folder),
            ],
            sound,
            learner,
            LIMIT_S,
        )
        record = Path(str(last["record"]))
        holds = verify(record).ok
        entries = read_entries(record)
    results = {line["id"]: line for line in last["results"]["steps"]}
    kept = [(str(entry["step"]), entry["kept"]) for entry in entries if "kept" in entry]
    stands = [(step, value) for step, value in kept if results[step]["final"] != value]
    wrong = [pair for pair in stands if pair[0] not in plan]
    disturbed = {key for key, line in results.items() if line["ending"] not in ("done unaided", "not applicable")}
    unclear = learner.heard.of("unclear")
    minutes, seconds = divmod(round(time.monotonic() - began), 60)
    _tell(f"{name}: {last['outcome']}, exit code {code}, {minutes} min {seconds:02} s, {len(entries)} entries")
    _tell(f"  record holds: {holds}; said {len(learner.heard.of('said'))}, told 'not understood' {len(unclear)} times")
    if mouth.by_people:
        _tell(f"  said with recorded words {mouth.by_people} times, by a synthesiser alone {mouth.by_machine} times")
    _tell(f"  corrected or cued: {', '.join(sorted(disturbed)) or 'nothing'}; planned: {', '.join(plan)}")
    _tell(f"  wrong numbers and names kept, then corrected, beside the planned one: {wrong or 'none'}")
    if talk:
        _tell("\n".join(f"    {who}: {text}" for who, text in learner.heard.log))
    if code:
        _tell(console)
    return code == 0 and holds and not wrong and disturbed <= set(plan)


def _tell(line: str) -> None:
    sys.stdout.write(line + "\n")
    sys.stdout.flush()


def main() -> int:
    """Read the arguments, run, return the exit code."""
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("names", nargs="+", metavar="NAME", help="checklists, one after the other")
    parser.add_argument("--order", default="", help="default: the checklist's own")
    parser.add_argument("--talk", action="store_true", help="print what was said and heard as well")
    parser.add_argument("--people", action="store_true", help="recorded people say what was recorded")
    parser.add_argument("--babble", type=float, metavar="DB", help="others talk, so many decibels below the learner")
    arguments = parser.parse_args()
    passed = [
        run(name, arguments.order, talk=arguments.talk, people=arguments.people, babble_db=arguments.babble)
        for name in arguments.names
    ]
    return 0 if all(passed) else 1


if __name__ == "__main__":
    sys.exit(main())
