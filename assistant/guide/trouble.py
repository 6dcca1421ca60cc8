"""Trouble that the learner reports: on record in their favour, what to do first is said, and nothing is closed."""

from assistant.guide.asking import prompt
from assistant.guide.effects import Tone
from assistant.guide.progress import Purpose, State, WordsRead
from assistant.guide.turn import Turn
from assistant.spoken.meaning import Answer, Trouble


def report(turn: Turn) -> None:
    """Say what to do first, note it, and ask again; what was being read back is not kept."""
    if not isinstance(turn.meaning, Answer):
        raise TypeError("trouble without words")
    draft, kind = turn.draft, Trouble(str(turn.meaning.value))
    turn.note["verdict"] = "trouble reported"
    turn.note["trouble"] = kind.value
    turn.done.troubles.append(kind.value)
    turn.say(turn.sentences.trouble(kind), Tone.HOLD)
    if draft.state is State.READING_BACK:
        reason = isinstance(draft.reading_back, WordsRead) and draft.purpose is not Purpose.NOTE
        draft.state = State.GIVING_REASON if reason else State.ASKING
        draft.reading_back = None
    prompt(turn)
