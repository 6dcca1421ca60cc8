"""A wrong answer: counted, told, and asked for once more unless the allowed tries are spent."""

from assistant.guide.asking import prompt
from assistant.guide.effects import Tone
from assistant.guide.moving import arm
from assistant.guide.turn import Turn


def hold(turn: Turn, verdict: str, *sentences: str, slip: str = "", ask: str = "") -> None:
    """Count a wrong answer and hold the step.

    Args:
        turn: the turn.
        verdict: what the entry says.
        sentences: what is said, in order; empty ones are left out.
        slip: the kind of slip, where there is a name for it.
        ask: the sentence that asks once more, where it is not the step's own line.
    """
    turn.done.wrong += 1
    turn.note["verdict"] = verdict
    if slip:
        turn.done.slips.append(slip)
        turn.note["slip"] = slip
    for sentence in sentences:
        if sentence:
            turn.say(sentence, Tone.HOLD)
    step = turn.step
    if step.tries is not None and turn.done.wrong >= step.tries:
        turn.note["tries_spent"] = True
        turn.say(step.tries_spent, Tone.HOLD)
    elif ask:
        turn.say(ask, Tone.STEP)
    else:
        prompt(turn)
    arm(turn)
