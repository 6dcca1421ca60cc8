"""Free words: a note, or why a step does not apply; read back before they are kept."""

from assistant.guide.asking import prompt
from assistant.guide.effects import Tone
from assistant.guide.moving import advance, close, go_to, note_latest, reopen_by_learner
from assistant.guide.progress import Purpose, State, Status
from assistant.guide.turn import Turn
from assistant.spoken.english.sentences import SENTENCES as sentences
from assistant.spoken.meaning import Answer


def ask_reason(turn: Turn) -> None:
    """Not applicable: ask why; a critical step can be set aside by the instructor only."""
    if turn.step.critical:
        turn.note["verdict"] = "refused"
        turn.say(sentences.CRITICAL_CANNOT_BE_SET_ASIDE, Tone.HOLD)
        return
    turn.draft.purpose = Purpose.NOT_APPLICABLE
    turn.draft.state = State.GIVING_REASON
    prompt(turn)


def take_words(turn: Turn) -> None:
    """A note or a reason: read it back; nothing is kept yet."""
    draft = turn.draft
    if not isinstance(turn.meaning, Answer):
        raise TypeError("free words without words")
    if draft.state is State.ASKING:
        draft.purpose = Purpose.NOTE
    draft.words = str(turn.meaning.value)
    draft.state = State.READING_BACK
    turn.note["verdict"] = "read back"
    prompt(turn)


def drop_reason(turn: Turn) -> None:
    """The step applies after all."""
    turn.say(sentences.REASON_DROPPED, Tone.NOTICE)
    go_to(turn, turn.draft.cursor)


def keep_words(turn: Turn) -> None:
    """A clear yes to what was read back: the note closes the step, a reason sets it aside."""
    done, draft = turn.done, turn.draft
    if draft.purpose is Purpose.NOTE:
        turn.note["kept"] = draft.words
        reopen_by_learner(turn)
        close(turn, draft.words)
        return
    done.status = Status.NOT_APPLICABLE
    done.reason = draft.words
    done.by = draft.speaker
    turn.note["verdict"] = draft.purpose.value
    note_latest(turn)
    turn.say(sentences.not_applicable(), Tone.NOTICE)
    advance(turn)
