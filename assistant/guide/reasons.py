"""Not applicable: a step is set aside only with a reason."""

from assistant.guide.asking import prompt
from assistant.guide.effects import Tone
from assistant.guide.moving import advance, go_to, note_latest
from assistant.guide.progress import State, Status
from assistant.guide.turn import Turn
from assistant.spoken.english import sentences
from assistant.spoken.meaning import Answer


def ask_reason(turn: Turn) -> None:
    """Not applicable: ask why; a critical step cannot be set aside."""
    if turn.step.critical:
        turn.note["verdict"] = "refused"
        turn.say(sentences.CRITICAL_CANNOT_BE_SET_ASIDE, Tone.HOLD)
        return
    turn.draft.state = State.GIVING_REASON
    prompt(turn)


def take_reason(turn: Turn) -> None:
    """The reason, read back."""
    if not isinstance(turn.meaning, Answer):
        raise TypeError("a reason without words")
    turn.draft.reason = str(turn.meaning.value)
    turn.draft.state = State.READING_BACK
    prompt(turn)


def drop_reason(turn: Turn) -> None:
    """The step applies after all."""
    turn.say(sentences.REASON_DROPPED, Tone.NOTICE)
    go_to(turn, turn.draft.cursor)


def keep_reason(turn: Turn) -> None:
    """A clear yes to the reason that was read back: the step is set aside."""
    turn.done.status = Status.NOT_APPLICABLE
    turn.done.reason = turn.draft.reason
    turn.note["verdict"] = "not applicable"
    note_latest(turn)
    turn.say(sentences.not_applicable(), Tone.NOTICE)
    advance(turn)
