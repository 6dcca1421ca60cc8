"""The one transition table: what is legal in which state, and where it can lead.

Theory of operation. Every event is first turned into one `Input`: words by what they mean in the
present state, everything else by its kind. The table then names the one action for it and the states in
which that action may end. What is absent is refused, and refusing changes nothing. An action works on a
copy of the progress; the copy becomes the truth only when the entry about it is on disk (`Recorded`).
The state diagram in DEVELOPERS.md is made from this table (``python -m assistant.guide.diagram``).
"""

from dataclasses import dataclass
from enum import StrEnum

from assistant.guide.progress import State
from assistant.spoken.meaning import Command


class Input(StrEnum):
    """What an event amounts to in the present state."""

    OPENED = "opened"
    RESUMED = "resumed"
    YES = "yes"
    NO = "no"
    DONE = "done"
    NUMBER = "a number"
    NAME = "a name"
    TEXT = "free words"
    CHOICE = "a choice"
    AMBIGUOUS = "two meanings"
    UNCLEAR = "not understood"
    DROPPED = "dropped sound"
    WOKE = "time is up"
    EAR_LOST = "microphone lost"
    EAR_BACK = "microphone back"
    VOICE_LOST = "voice lost"
    INPUT_ENDED = "input ended"
    AGAIN = Command.AGAIN.value
    MORE = Command.MORE.value
    BACK = Command.BACK.value
    WHERE = Command.WHERE.value
    ORDER = Command.ORDER.value
    SLOWER = Command.SLOWER.value
    FASTER = Command.FASTER.value
    LOUDER = Command.LOUDER.value
    SOFTER = Command.SOFTER.value
    HIGHER = Command.HIGHER.value
    DEEPER = Command.DEEPER.value
    SPELL = Command.SPELL.value
    PAUSE = Command.PAUSE.value
    GO_ON = Command.GO_ON.value
    CORRECT = Command.CORRECT.value
    HELP = Command.HELP.value
    NOT_APPLICABLE = Command.NOT_APPLICABLE.value
    INSTRUCTOR = Command.INSTRUCTOR.value
    STOP = Command.STOP.value
    CLOSE = Command.CLOSE.value


@dataclass(frozen=True)
class Rule:
    """One row: the action's name and every state in which it may end."""

    action: str
    to: frozenset[State]


def _rule(action: str, *to: State) -> Rule:
    return Rule(action, frozenset(to))


_ASKING, _READING, _REASON = State.ASKING, State.READING_BACK, State.GIVING_REASON
_WAITING, _PAUSED, _STOPPING = State.WAITING, State.PAUSED, State.STOPPING
_FINISHED = State.FINISHED

_CONSENT, _INSTRUCTOR = State.ASKING_CONSENT, State.WITH_INSTRUCTOR

_UNDER_WAY = (_CONSENT, _ASKING, _READING, _REASON, _WAITING)
LIVE = (*_UNDER_WAY, _INSTRUCTOR, _PAUSED, _STOPPING)
"""Every state between the opening and the end."""

TABLE: dict[tuple[State, Input], Rule] = {
    (State.READY, Input.OPENED): _rule("begin", _CONSENT, _ASKING),
    # Sound is kept only after a clear yes.
    (_CONSENT, Input.YES): _rule("give_consent", _ASKING),
    (_CONSENT, Input.NO): _rule("refuse_consent", _ASKING),
    # An answer to the current step.
    (_ASKING, Input.YES): _rule("answer_yes", _ASKING, _WAITING, _FINISHED),
    (_ASKING, Input.DONE): _rule("answer_yes", _ASKING, _WAITING, _FINISHED),
    (_ASKING, Input.NO): _rule("answer_no", _ASKING, _FINISHED),
    (_ASKING, Input.NUMBER): _rule("take_number", _READING, _ASKING),
    (_ASKING, Input.NAME): _rule("take_name", _ASKING, _READING, _FINISHED),
    (_ASKING, Input.CHOICE): _rule("take_choice", _ASKING, _FINISHED),
    (_ASKING, Input.TEXT): _rule("take_words", _READING),
    (_ASKING, Input.AMBIGUOUS): _rule("ask_digits", _ASKING),
    (_ASKING, Input.BACK): _rule("back", _ASKING),
    (_ASKING, Input.GO_ON): _rule("leave_open", _ASKING, _FINISHED),
    (_ASKING, Input.CORRECT): _rule("correct", _ASKING),
    (_ASKING, Input.NOT_APPLICABLE): _rule("ask_reason", _ASKING, _REASON),
    (_ASKING, Input.WOKE): _rule("remind", _ASKING),
    # A read-back: only a clear yes keeps it.
    (_READING, Input.YES): _rule("keep", _ASKING, _FINISHED),
    (_READING, Input.NO): _rule("ask_anew", _ASKING, _REASON),
    (_READING, Input.CORRECT): _rule("ask_anew", _ASKING, _REASON),
    (_READING, Input.BACK): _rule("ask_anew", _ASKING, _REASON),
    (_READING, Input.WOKE): _rule("remind", _READING, _ASKING),
    # What only the instructor may go on with is asked anew.
    (_READING, Input.RESUMED): _rule("resume", _READING, _ASKING),
    # Why a step does not apply.
    (_REASON, Input.TEXT): _rule("take_words", _READING),
    (_REASON, Input.BACK): _rule("drop_reason", _ASKING),
    (_REASON, Input.CORRECT): _rule("drop_reason", _ASKING),
    (_REASON, Input.WOKE): _rule("remind", _REASON, _ASKING),
    (_REASON, Input.RESUMED): _rule("resume", _REASON, _ASKING),
    # A timed wait: the clock closes it; its time may have come while the attempt lay still.
    (_WAITING, Input.WOKE): _rule("end_wait", _ASKING, _FINISHED),
    (_WAITING, Input.YES): _rule("tell_time_left", _WAITING),
    (_WAITING, Input.DONE): _rule("tell_time_left", _WAITING),
    (_WAITING, Input.NO): _rule("restart_wait", _ASKING),
    (_WAITING, Input.BACK): _rule("restart_wait", _ASKING),
    (_WAITING, Input.CORRECT): _rule("restart_wait", _ASKING),
    (_WAITING, Input.RESUMED): _rule("resume", _WAITING, _ASKING, _FINISHED),
    # The instructor's own words, until "go on".
    (_INSTRUCTOR, Input.CHOICE): _rule("heed_instructor", _INSTRUCTOR, _ASKING, _REASON, _FINISHED),
    (_INSTRUCTOR, Input.GO_ON): _rule("return_from_pause", *_UNDER_WAY, _PAUSED, _STOPPING, _FINISHED),
    (_INSTRUCTOR, Input.WOKE): _rule("note_wait_over", _INSTRUCTOR),
    (_INSTRUCTOR, Input.RESUMED): _rule("resume", *_UNDER_WAY, _PAUSED, _STOPPING, _FINISHED),
    # A pause.
    (_PAUSED, Input.GO_ON): _rule("return_from_pause", *_UNDER_WAY, _FINISHED),
    (_PAUSED, Input.YES): _rule("tell_paused", _PAUSED),
    (_PAUSED, Input.DONE): _rule("tell_paused", _PAUSED),
    (_PAUSED, Input.NO): _rule("tell_paused", _PAUSED),
    (_PAUSED, Input.WOKE): _rule("note_wait_over", _PAUSED),
    # A stop is asked about once: a misheard word must not end an attempt.
    (_STOPPING, Input.YES): _rule("stop", _FINISHED),
    (_STOPPING, Input.NO): _rule("return_from_pause", *_UNDER_WAY, _INSTRUCTOR, _PAUSED, _FINISHED),
    (_STOPPING, Input.GO_ON): _rule("return_from_pause", *_UNDER_WAY, _INSTRUCTOR, _PAUSED, _FINISHED),
    (_STOPPING, Input.WOKE): _rule("note_wait_over", _STOPPING),
    # A stopped attempt can be taken up; one that ended just before its seal is ended again.
    (_FINISHED, Input.RESUMED): _rule("reopen", *_UNDER_WAY, _FINISHED),
}

for _state in LIVE:
    # Legal everywhere between the opening and the end.
    for _input, _action in {
        Input.AGAIN: "again",
        Input.WHERE: "where",
        Input.ORDER: "read_order",
        Input.SLOWER: "slower",
        Input.FASTER: "faster",
        Input.LOUDER: "louder",
        Input.SOFTER: "softer",
        Input.HIGHER: "higher",
        Input.DEEPER: "deeper",
        Input.SPELL: "spell",
        Input.MORE: "more",
        Input.HELP: "give_help",
        Input.UNCLEAR: "unclear",
        Input.DROPPED: "drop",
        Input.EAR_LOST: "ear_lost",
        Input.EAR_BACK: "ear_back",
        Input.VOICE_LOST: "voice_lost",
        Input.RESUMED: "resume",
    }.items():
        TABLE.setdefault((_state, _input), _rule(_action, _state))
    TABLE[_state, Input.INPUT_ENDED] = _rule("end_input", _FINISHED)
    TABLE[_state, Input.PAUSE] = _rule("pause", _PAUSED)
    if _state is not _INSTRUCTOR:
        TABLE[_state, Input.INSTRUCTOR] = _rule("admit_instructor", _state, _INSTRUCTOR)
    TABLE[_state, Input.STOP] = _rule("ask_stop", _STOPPING)
    TABLE[_state, Input.CLOSE] = _rule("ask_stop", _STOPPING)
for _state in LIVE:
    for _command in Command:
        # Every word is answered, also where it has no place.
        TABLE.setdefault((_state, Input(_command.value)), _rule("not_here", _state))
TABLE[_STOPPING, Input.STOP] = _rule("stop", _FINISHED)
# Never at one word: closing is offered only after a stop, since it cannot be taken back.
TABLE[_STOPPING, Input.CLOSE] = _rule("close_early", _FINISHED)
