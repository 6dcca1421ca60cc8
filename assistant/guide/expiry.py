"""Settings that a pump forgets: when they run out, and how they are opened again."""

from datetime import datetime, timedelta

from assistant.guide.applicability import passed_over
from assistant.guide.effects import Tone
from assistant.guide.progress import Status
from assistant.guide.turn import Turn
from assistant.spoken.english.sentences import SENTENCES as sentences


def due(turn: Turn) -> datetime | None:
    """When the settings that the current step relies on run out; None where it relies on none."""
    step = turn.step
    if step.expires is None or turn.done.status is not Status.OPEN:
        return None
    closed = [turn.draft.steps[name].closed_at for name in step.expires.reopen]
    latest = max((at for at in closed if at is not None), default=None)
    return None if latest is None else latest + timedelta(seconds=step.expires.after_s)


def ran_out(turn: Turn) -> bool:
    """Whether the settings that the current step relies on are lost."""
    at = due(turn)
    return at is not None and turn.at >= at


def reopen(turn: Turn) -> int:
    """Open the lost settings again; return the place of the first of them."""
    expires = turn.step.expires
    if expires is None:
        raise TypeError("settings ran out at a step that relies on none")
    turn.note["verdict"] = "settings lost"
    turn.note["reopened"] = list(expires.reopen)
    for name in expires.reopen:
        done = turn.draft.steps[name]
        done.status = Status.OPEN
        done.closed_at = None
        done.expired += 1
        if name in turn.draft.history:
            turn.draft.history.remove(name)
    turn.say(sentences.disagrees(expires.say), Tone.HOLD)
    reasons = passed_over(turn.given, turn.draft)
    lost = [i for i, step in enumerate(turn.given.checklist.steps) if step.id in expires.reopen]
    return next((i for i in lost if turn.given.checklist.steps[i].id not in reasons), turn.draft.cursor)
