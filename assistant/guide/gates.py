"""What must be done first: gates, and steps that come after another one."""

from assistant.checklist.model import DoubleCheckAsked, Step
from assistant.guide.applicability import passed_over
from assistant.guide.effects import Tone
from assistant.guide.progress import Status, StepProgress
from assistant.guide.turn import Turn
from assistant.spoken.english.sentences import SENTENCES as sentences


def first_allowed(turn: Turn, place: int) -> int:
    """The place where the attempt may go when it wants to go to `place`; what holds it is said and noted."""
    gate, blockers = _gate_before(turn, place)
    if gate is not None:
        turn.note["gate"] = {"step": gate.id, "open": [turn.given.checklist.steps[i].id for i in blockers]}
        turn.say(sentences.gate_holds(len(blockers)), Tone.HOLD)
        for blocker in blockers:
            _at(turn, blocker).cues.append("gate")
        place = blockers[0]
    return _what_comes_first(turn, place)


def _gate_before(turn: Turn, place: int) -> tuple[Step | None, list[int]]:
    """The first gate on the way to `place` with critical steps open before it."""
    steps = turn.given.checklist.steps
    reasons = passed_over(turn.given, turn.draft)
    holds = [
        step.id not in reasons and _at(turn, i).status in (Status.OPEN, Status.LEFT_OUT) for i, step in enumerate(steps)
    ]
    for at, step in enumerate(steps[: place + 1]):
        if not step.gate or step.id in reasons:
            continue
        blockers = [i for i, earlier in enumerate(steps[:at]) if earlier.critical and holds[i]]
        if at < place and holds[at]:
            blockers.append(at)
        if blockers:
            return step, blockers
    return None, []


def _what_comes_first(turn: Turn, place: int) -> int:
    """`place`, or the step that must be closed before it and is not."""
    draft, checklist = turn.draft, turn.given.checklist
    done = (Status.CLOSED, Status.NOT_APPLICABLE, *((Status.LEFT_OUT,) if draft.last_pass else ()))
    reasons = passed_over(turn.given, draft)
    step = checklist.steps[place]
    # A second person has nothing to agree with before the learner's number stands.
    for name in (*step.after, *((step.expect.of,) if isinstance(step.expect, DoubleCheckAsked) else ())):
        if name not in reasons and draft.steps[name].status not in done:
            needed = checklist.place(name)
            turn.note["comes_first"] = name
            turn.say(sentences.SOMETHING_COMES_FIRST, Tone.HOLD)
            draft.steps[name].cues.append("order")
            return _what_comes_first(turn, needed)
    return place


def _at(turn: Turn, place: int) -> StepProgress:
    return turn.draft.steps[turn.given.checklist.steps[place].id]
