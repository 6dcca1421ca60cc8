"""The answer to a read-back: only a clear yes keeps what was read back."""

from assistant.guide.effects import Tone
from assistant.guide.moving import nothing_read_back, settings_lost
from assistant.guide.names import compare_name
from assistant.guide.numbers import keep_number
from assistant.guide.progress import Purpose, State
from assistant.guide.reasons import keep_words
from assistant.guide.turn import Turn
from assistant.spoken.english.sentences import SENTENCES as sentences


def keep(turn: Turn) -> None:
    """A clear yes: keep it, then cross-check."""
    draft = turn.draft
    if settings_lost(turn):
        return
    if draft.number is not None:
        keep_number(turn, draft.number)
    elif draft.name:
        compare_name(turn, draft.name)
    else:
        keep_words(turn)


def ask_anew(turn: Turn) -> None:
    """No: nothing is kept, ask again."""
    draft = turn.draft
    turn.note["verdict"] = "not kept"
    reason = bool(draft.words) and draft.purpose is not Purpose.NOTE
    draft.state = State.GIVING_REASON if reason else State.ASKING
    if draft.words:
        turn.say(sentences.SAY_REASON_AGAIN if reason else sentences.SAY_NOTE_AGAIN, Tone.STEP)
    elif draft.name:
        turn.say(sentences.SAY_NAME_AGAIN, Tone.STEP)
    else:
        draft.digits_only = True
        turn.say(sentences.SAY_NUMBER_AGAIN, Tone.STEP)
    nothing_read_back(draft)
