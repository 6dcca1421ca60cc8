"""What the guide promises, held against an attempt that was lived (`walk.py` lives them).

Each function raises AssertionError where its promise is broken, and returns how often there was something to
break. None asks the guide: each works out from papers, events and sentences what must be so.
"""

import json
import re
from collections.abc import Callable
from datetime import datetime, timedelta

from assistant import dosing
from assistant.checklist.model import ChoiceAsked, DoneAsked, QuestionAsked, Step, WaitAsked
from assistant.guide.progress import AnswerRead
from assistant.orders.fault import container_of, facts_of
from tests.guide.lived import Heard, Person, Progress, State, Status, Typed
from tests.guide.script import Moment, Script

INTERRUPTIONS = (State.PAUSED, State.STOPPING, State.WITH_INSTRUCTOR, State.FINISHED)
YES = ("yes", "correct", "that is right")
"""Every clear yes that is said in a walk."""
YES_TO_A_READ_BACK = (*YES, "right")
"""The same where something was read back, which ends with "Right?"."""
POSITIVE = (*YES, "done", "that is done", "finished", "it is done", "ready")
"""Every word of a walk that says of anything that it is done, or as it should be."""
NO = ("no", "not yet", "i have not", "it is not")
"""Every word of a walk that answers a question by no."""


def first_gate(script: Script) -> int | None:
    """The place of the first gate; None where there is none."""
    return next((place for place, step in enumerate(script.papers.checklist.steps) if step.gate), None)


def is_behind_the_gate(script: Script, progress: Progress) -> bool:
    """Whether the current step comes after the first gate."""
    gate = first_gate(script)
    return gate is not None and progress.cursor > gate


def gates_hold(script: Script) -> int:
    """While a gate or a step behind it is current, nothing critical before it is open or left out.

    Only the instructor sets a critical step aside, and only with the code.

    Returns:
        1 where the attempt got past its first gate, else 0.
    """
    passed = False
    for moment in script.moments:
        checklist, progress = script.papers.checklist, moment.after
        applying = _applying(script, progress)
        gates = [place for place, step in enumerate(checklist.steps) if step.gate and step.id in applying]
        reached = max((place for place in gates if place <= progress.cursor), default=0)
        wanted = [step for step in checklist.steps[:reached] if step.critical]
        # The gate itself is open while it is asked.
        wanted += [checklist.steps[place] for place in gates if place < progress.cursor]
        for step in wanted:
            assert step.id not in applying or _is_dealt_with(script, step, progress), _broken(script, moment, step.id)
        passed = passed or is_behind_the_gate(script, progress)
    return int(passed)


def _applying(script: Script, progress: Progress) -> set[str]:
    """Ids of the steps that apply by the order and by the answers that stand."""
    values = {
        name: entry.value if isinstance(entry.value, str) else dosing.Amount(entry.value, entry.unit or "")
        for name, entry in script.papers.key.items()
    }
    answers: dict[str, str] = {}
    applying = set()
    for step in script.papers.checklist.steps:
        if all(condition.met(values, answers) for condition in step.applies):
            applying.add(step.id)
            if progress.steps[step.id].status is Status.CLOSED:
                answers[step.id] = progress.steps[step.id].final
    return applying


def _is_dealt_with(script: Script, step: Step, progress: Progress) -> bool:
    done = progress.steps[step.id]
    if done.status is Status.NOT_APPLICABLE and step.critical:
        return done.by is Person.INSTRUCTOR
    return done.status in (Status.CLOSED, Status.NOT_APPLICABLE)


def numbers_are_read_back(script: Script) -> int:
    """A number or a note is kept only by a clear yes to a read-back that held it.

    Returns:
        how many were kept.
    """
    checklist = script.papers.checklist
    asked = [step for step in checklist.steps if checklist.number_asked(step) is not None]
    kept = 0
    for moment in script.moments:
        changed = [step.id for step in asked if _kept(moment.after, step) != _kept(moment.before, step)]
        if "kept" not in moment.entry:
            assert not changed, _broken(script, moment, changed)
            continue
        kept += 1
        shown, event = str(moment.entry["kept"]), moment.event
        assert changed in ([], [moment.entry["step"]]), _broken(script, moment, changed)
        assert moment.before.state is State.READING_BACK, _broken(script, moment, shown)
        assert isinstance(event, Heard | Typed), _broken(script, moment, shown)
        assert event.words.casefold() in YES_TO_A_READ_BACK, _broken(script, moment, shown)
        assert not (isinstance(event, Heard) and (event.gap or event.during_speech)), _broken(script, moment, shown)
        assert re.search(rf"(?<![\w.]){re.escape(shown)}(?!\w)", moment.read_back), _broken(script, moment, shown)
    return kept


def _kept(progress: Progress, step: Step) -> tuple[object, ...]:
    done = progress.steps[step.id]
    return done.first_amount, done.final_amount, done.final, done.tries


def waits_last(script: Script) -> int:
    """A timed wait is closed when its seconds are over, whatever came in between, and no sooner.

    Returns:
        how many were closed after an interruption.
    """
    waits = {
        step.id: step.expect.seconds for step in script.papers.checklist.steps if isinstance(step.expect, WaitAsked)
    }
    begun: dict[str, datetime] = {}
    broken: set[str] = set()
    closed = 0
    for moment in script.moments:
        step = script.papers.checklist.steps[moment.before.cursor].id
        if moment.before.state in (State.ASKING, State.READING_BACK) and moment.after.state is State.WAITING:
            begun[step] = moment.event.at
            broken.discard(step)
        elif moment.before.state is State.WAITING and moment.after.state in INTERRUPTIONS:
            broken.add(step)
        for name, seconds in waits.items():
            if moment.after.steps[name].status is Status.CLOSED is not moment.before.steps[name].status:
                lasted = moment.event.at - begun[name]
                assert lasted >= timedelta(seconds=seconds), _broken(
                    script, moment, f"{name} was closed after {lasted}"
                )
                closed += name in broken
    return closed


def only_a_positive_closes(script: Script) -> int:
    """No step that a word closes is closed but by a positive to its own question, heard clearly while it was asked.

    What is positive is written down here and in the checklist: nothing is asked of the language. A positive that was
    heard with doubt counts once it was read back, and a clear yes to that was heard.

    Returns:
        how many steps were closed by a word.
    """
    closed = 0
    started: dict[str, bool] = {}
    steps = script.papers.checklist.steps
    for moment in script.moments:
        step, event = steps[moment.before.cursor], moment.event
        read = moment.before.reading_back
        asked = moment.before.state is State.ASKING
        if isinstance(read, AnswerRead) and moment.before.state is State.READING_BACK and _is_clear_yes(event):
            event, asked = Typed(event.at, read.words), True
        if asked and moment.after.state is State.WAITING:
            started[step.id] = _is_positive(step, event)
        for other in steps:
            before, after = moment.before.steps[other.id].status, moment.after.steps[other.id].status
            if after is not Status.CLOSED or before is Status.CLOSED:
                continue
            match other.expect:
                case DoneAsked() | QuestionAsked() | ChoiceAsked():
                    positive = asked and _is_positive(step, event)
                case WaitAsked():
                    positive = started.get(other.id, False)
                case _:
                    continue
            assert positive and other.id == step.id, _broken(script, moment, f"{other.id} was closed by {event}")
            closed += 1
    return closed


def _is_clear_yes(event: object) -> bool:
    if isinstance(event, Heard):
        return event.words.casefold() in YES_TO_A_READ_BACK and not (event.gap or event.during_speech or event.doubtful)
    return isinstance(event, Typed) and event.words.casefold() in YES_TO_A_READ_BACK


def _is_positive(step: Step, event: object) -> bool:
    """Whether an event is a positive to the line of a step, by the lists of this file and of its author."""
    if not isinstance(event, Heard | Typed):
        return False
    if isinstance(event, Heard) and (event.gap or event.during_speech or event.doubtful):
        return False
    words = event.words.casefold()
    match step.expect:
        case QuestionAsked(right="no", bad=bad):
            return words in {*NO, *(word.casefold() for word in bad)}
        case ChoiceAsked(choices=choices, right=right, phrases=phrases):
            taken = [right] if right else choices
            ways = {way for choice in taken for way in (choice, *phrases.get(choice, ()))}
            return words in {way.casefold() for way in ways}
        case DoneAsked(good=good) | WaitAsked(good=good) | QuestionAsked(good=good):
            return words in {*POSITIVE, *(word.casefold() for word in good)}
        case _:
            return False


def agrees_with_the_bench(script: Script) -> int:
    """No answer agrees while a fault is where its step looks, unless the learner told of one and took another bag.

    Returns:
        how many answers agreed where a fault had been.
    """
    steps = {step.id: step for step in script.papers.checklist.steps}
    told: set[str] = set()
    agreed = 0
    for moment in script.moments:
        name = str(moment.entry.get("step"))
        # A report of trouble may tell of what is laid out at its step, too.
        if moment.entry.get("verdict") == "found" or moment.entry.get("laid_out") is True:
            told |= {container_of(fact) for fact in facts_of(steps[name])} | {name}
        if moment.entry.get("verdict") != "agrees":
            continue
        for fault in script.papers.truth.seen_at(steps[name]):
            mended = steps[name].way_on == "put right" and name in told
            replaced = fault.container in told if fault.container else mended
            assert replaced, _broken(script, moment, f"{name} agrees with {fault.what}")
            agreed += 1
    return agreed


def prefixes_resume(script: Script) -> int:
    """Any first entries, as they are read from a disk, lead to the progress that was lived after them.

    Returns:
        1 where a prefix that ends behind the gate was resumed in one go, else 0.
    """
    entries = [json.loads(json.dumps(entry)) for entry in script.entries]
    behind = [place for place, moment in enumerate(script.moments) if is_behind_the_gate(script, moment.after)]
    first = behind[len(behind) // 2] if behind else len(entries) // 2
    resumed = script.anew()
    resumed.replay(entries[: first + 1])
    assert resumed.progress == script.moments[first].after, _broken(script, script.moments[first], "not resumed")
    # Whoever has resumed one prefix resumes the next one by one entry more.
    for entry, moment in list(zip(entries, script.moments, strict=True))[first + 1 :]:
        resumed.replay([entry])
        assert resumed.progress == moment.after, _broken(script, moment, "not resumed")
    return int(bool(behind))


def nothing_before_the_disk(script: Script) -> int:
    """Held at each event while the script was lived (`Script.give` and `Script.write`).

    Returns:
        how many events were refused while an entry was on its way.
    """
    return script.refused


PROMISES: tuple[Callable[[Script], int], ...] = (
    gates_hold,
    numbers_are_read_back,
    waits_last,
    only_a_positive_closes,
    agrees_with_the_bench,
    prefixes_resume,
    nothing_before_the_disk,
)


def _broken(script: Script, moment: Moment, what: object) -> str:
    return f"script {script.seed}, entry {moment.entry['sequence']}: {what}"
