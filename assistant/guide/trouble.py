"""Trouble that the learner reports: put on record as a merit, made safe first, then back to the step it concerns.

A report costs nothing and closes nothing.
"""

from assistant.guide.asking import asked_person, prompt
from assistant.guide.bench import note_trouble
from assistant.guide.effects import Tone
from assistant.guide.interruptions import leave
from assistant.guide.path import arm, go_to, open_again, place_before, settings_lost
from assistant.guide.progress import Found, Purpose, State
from assistant.guide.turn import Turn
from assistant.spoken.meaning import Answer, Trouble

ENDS_A_WAIT = frozenset({Trouble.AIR, Trouble.CONTAMINATED, Trouble.DROPPED, Trouble.PAIN})
"""Trouble after which what was being scrubbed, dried or watched has to start anew (common practice, no source)."""
_ASKS = (State.ASKING, State.READING_BACK, State.GIVING_REASON, State.WAITING)


def take_trouble(turn: Turn) -> None:
    """Put it on record, say what to do, and lead back to the step that it concerns."""
    if not isinstance(turn.meaning, Answer):
        raise TypeError("trouble without its kind")
    kind, draft = Trouble(str(turn.meaning.value)), turn.draft
    turn.note["trouble"] = {"kind": kind.value, "words": turn.words}
    turn.note["verdict"] = "trouble"
    draft.troubles.append(Found(turn.step.id, kind.value, turn.words))
    note_trouble(turn, kind)
    if draft.state is State.OFFERING_CUE:
        leave(turn)
    plan = turn.papers.checklist.plan_for(kind, turn.step.id)
    turn.say(plan.say if plan else turn.sentences.trouble(kind), Tone.HOLD)
    place = open_again(turn, plan.again) if plan else None
    if plan is None and kind is Trouble.MISTAKE:
        place = place_before(turn)
    lead(turn, place, spoils_wait=kind in ENDS_A_WAIT)
    # Whoever reports a mistake mends it at no cost.
    draft.mending |= kind is Trouble.MISTAKE


def lead(turn: Turn, place: int | None, *, spoils_wait: bool) -> None:
    """Back to `place`, or to the current step, now or when an interruption is over.

    A read-back is dropped, and so is a timed wait where it is spoilt or another step is asked.
    """
    if turn.draft.state in _ASKS:
        _lead_now(turn, place, spoils_wait=spoils_wait)
    else:
        _lead_later(turn, place, spoils_wait=spoils_wait)


def _lead_now(turn: Turn, place: int | None, *, spoils_wait: bool) -> None:
    draft = turn.draft
    if place is not None:
        go_to(turn, place)
        return
    if draft.state is State.WAITING:
        if not spoils_wait:
            prompt(turn)
            return
        turn.say(turn.sentences.WAIT_BROKEN_OFF, Tone.NOTICE)
    drop_what_was_asked(turn)
    draft.state = State.ASKING
    draft.speaker = asked_person(turn.step)
    if not settings_lost(turn):
        prompt(turn)
        arm(turn)


def _lead_later(turn: Turn, place: int | None, *, spoils_wait: bool) -> None:
    """The same for what is taken up when the interruption is over."""
    draft = turn.draft
    spoilt = place is not None or spoils_wait
    for at, state in enumerate(draft.before):
        if state in (State.READING_BACK, State.GIVING_REASON) or (state is State.WAITING and spoilt):
            drop_what_was_asked(turn)
            draft.before[at] = State.ASKING
    if place is not None and draft.before:
        draft.cursor = place
        turn.done.opened = True
        draft.asked_at = turn.at
        draft.breaths = 0
        draft.digits_only = False
        if State.WITH_INSTRUCTOR not in (draft.state, *draft.before):
            draft.speaker = asked_person(turn.step)
    prompt(turn)


def drop_what_was_asked(turn: Turn) -> None:
    """What was being read back, a reason that was asked for, a timed wait: all of it is asked anew."""
    turn.draft.reading_back = None
    turn.draft.purpose = Purpose.NOTE
    turn.draft.wake_up = None
    turn.draft.wait_over = False
