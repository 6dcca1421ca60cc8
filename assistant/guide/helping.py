"""Help that counts: in a check-off its price is told before it is given for the first time."""

from assistant.checklist.model import NumberAsked
from assistant.guide.asking import not_here, tell_options, unclear
from assistant.guide.effects import Tone
from assistant.guide.interruptions import interrupt, leave, take_up
from assistant.guide.progress import State
from assistant.guide.turn import Turn

HELP = "help"
"""The cue of "I need help", at its first level."""
HELPED_ENOUGH = 2
"""Cues at one step after which the instructor is offered (common practice, no source)."""


def ask_for_help(turn: Turn) -> None:
    """Help, or first its price."""
    if not turn.done.opened:
        not_here(turn)
    elif turn.terms.practice or turn.draft.cue_agreed:
        _give_help(turn)
    else:
        turn.note["verdict"] = "cue offered"
        interrupt(turn, State.OFFERING_CUE)


def accept(turn: Turn) -> None:
    """Yes: this cue counts, and so does every later one, without asking again."""
    turn.draft.cue_agreed = True
    turn.note["verdict"] = "cue accepted"
    leave(turn)
    _give_help(turn)
    if turn.draft.state is not State.ASKING:
        take_up(turn)


def decline(turn: Turn) -> None:
    """Anything else: nothing is counted, and what was asked before is asked again."""
    turn.note["verdict"] = "cue declined"
    leave(turn)
    take_up(turn)


def answer_unclear(turn: Turn) -> None:
    """Words that are no yes decline; noise leaves the offer as it is."""
    if turn.meaning is None:
        unclear(turn)
    else:
        decline(turn)


def _give_help(turn: Turn) -> None:
    """From a mild hint to a strong one, at last in practice the working of the number: cues, counted by level."""
    step = turn.step
    cues = step.cues or (step.more or turn.sentences.NO_HINT,)
    given = 1 + sum(cue.startswith(HELP) for cue in turn.done.cues)
    level = min(given, len(cues))
    turn.say(cues[level - 1], Tone.CUE)
    if given >= len(cues) and turn.terms.practice and isinstance(step.expect, NumberAsked):
        working = turn.papers.working(step.expect.key)
        if working:
            turn.say(turn.sentences.working(working), Tone.CUE)
    if given >= HELPED_ENOUGH:
        turn.say(turn.sentences.CALL_INSTRUCTOR, Tone.CUE)
    if not turn.draft.options_given:
        tell_options(turn, Tone.CUE)
    turn.note["level"] = level
    turn.cue(HELP if given == 1 else f"{HELP}, level {level}")
