"""The one transition table: what is legal in which state, what is then done, and where it can lead.

Theory of operation. Every event is first turned into one `Input`: words by what they mean in the
present state, everything else by its kind. The table then gives the one action for it and the states in
which that action may end. What is absent is refused, and refusing changes nothing. An action works on a
copy of the progress; the copy becomes the truth only when the entry about it is on disk (`Recorded`).
The state diagram is made from this table (``python -m tests.guide.diagram``).
"""

from collections.abc import Callable
from dataclasses import dataclass

from assistant.guide import answers, asking, commands, helping, interruptions, marks, path, read_back, trouble
from assistant.guide.progress import State
from assistant.guide.turn import Input, Turn
from assistant.spoken.meaning import Command

Action = Callable[[Turn], None]
"""What the guide does with one input: it changes the turn that it works on, and looks at no clock and no device."""


@dataclass(frozen=True)
class Rule:
    """One row: the action and every state in which it may end."""

    action: Action
    to: frozenset[State]


def _rule(action: Action, *to: State) -> Rule:
    return Rule(action, frozenset(to))


_ASKING, _READING, _REASON = State.ASKING, State.READING_BACK, State.GIVING_REASON
_WAITING, _PAUSED, _STOPPING = State.WAITING, State.PAUSED, State.STOPPING
_HELD, _FINISHED = State.HELD, State.FINISHED

_CONSENT, _INSTRUCTOR, _OFFERING = State.ASKING_CONSENT, State.WITH_INSTRUCTOR, State.OFFERING_CUE

_UNDER_WAY = (_CONSENT, _ASKING, _READING, _REASON, _WAITING)
LIVE = (*_UNDER_WAY, _OFFERING, _INSTRUCTOR, _PAUSED, _HELD, _STOPPING)
"""Every state between the opening and the end."""
_LIVE_AGAIN = (*_UNDER_WAY, _OFFERING, _PAUSED, _HELD, _STOPPING, _FINISHED)
"""Where a return from an interruption may lead: a wait may have ended meanwhile."""

TABLE: dict[tuple[State, Input], Rule] = {
    (State.READY, Input.OPENED): _rule(path.begin, _CONSENT, _ASKING),
    # Sound is kept only after a clear yes.
    (_CONSENT, Input.YES): _rule(interruptions.give_consent, _ASKING),
    (_CONSENT, Input.NO): _rule(interruptions.refuse_consent, _ASKING),
    # An answer to the current step.
    (_ASKING, Input.YES): _rule(answers.answer_yes, _ASKING, _WAITING, _FINISHED),
    (_ASKING, Input.DONE): _rule(answers.answer_yes, _ASKING, _WAITING, _FINISHED),
    (_ASKING, Input.NO): _rule(answers.answer_no, _ASKING, _FINISHED),
    (_ASKING, Input.ACKNOWLEDGED): _rule(answers.ask_plainly, _ASKING),
    (_WAITING, Input.ACKNOWLEDGED): _rule(interruptions.tell_time_left, _WAITING),
    (_PAUSED, Input.ACKNOWLEDGED): _rule(interruptions.tell_paused, _PAUSED),
    (_ASKING, Input.NUMBER): _rule(read_back.take_number, _READING, _ASKING),
    (_ASKING, Input.NAME): _rule(read_back.take_name, _ASKING, _READING, _FINISHED),
    (_ASKING, Input.CHOICE): _rule(answers.take_choice, _ASKING, _FINISHED),
    (_ASKING, Input.TEXT): _rule(read_back.take_words, _READING),
    (_ASKING, Input.AMBIGUOUS): _rule(read_back.ask_digits, _ASKING),
    # Heard with doubt, and then once more: read back.
    (_ASKING, Input.DOUBTFUL): _rule(asking.ask_once_more, _ASKING, _READING),
    # Read with doubt: asked at once whether it is meant.
    (_ASKING, Input.LIKELY): _rule(asking.ask_whether, _READING),
    (_ASKING, Input.BACK): _rule(path.back, _ASKING),
    (_ASKING, Input.GO_ON): _rule(path.leave_open, _ASKING, _FINISHED),
    (_ASKING, Input.CORRECT): _rule(path.correct, _ASKING),
    (_ASKING, Input.NOT_APPLICABLE): _rule(read_back.ask_reason, _ASKING, _REASON),
    (_ASKING, Input.WOKE): _rule(path.remind, _ASKING),
    # A read-back: only a clear yes keeps it.
    (_READING, Input.YES): _rule(read_back.keep, _ASKING, _WAITING, _FINISHED),
    # "No, a thousand": the number that was meant is read back in its turn.
    (_READING, Input.NO): _rule(read_back.ask_anew, _ASKING, _REASON, _READING),
    (_READING, Input.CORRECT): _rule(read_back.ask_anew, _ASKING, _REASON),
    (_READING, Input.BACK): _rule(read_back.ask_anew, _ASKING, _REASON),
    (_READING, Input.WOKE): _rule(path.remind, _READING, _ASKING),
    # What only the instructor may go on with is asked anew.
    (_READING, Input.RESUMED): _rule(interruptions.resume, _READING, _ASKING),
    # Why a step does not apply.
    (_REASON, Input.TEXT): _rule(read_back.take_words, _READING),
    (_REASON, Input.BACK): _rule(read_back.drop_reason, _ASKING),
    (_REASON, Input.CORRECT): _rule(read_back.drop_reason, _ASKING),
    (_REASON, Input.WOKE): _rule(path.remind, _REASON, _ASKING),
    (_REASON, Input.RESUMED): _rule(interruptions.resume, _REASON, _ASKING),
    # A timed wait: the clock closes it; its time may have come while the attempt lay still.
    (_WAITING, Input.WOKE): _rule(interruptions.end_wait, _ASKING, _FINISHED),
    (_WAITING, Input.YES): _rule(interruptions.tell_time_left, _WAITING),
    (_WAITING, Input.DONE): _rule(interruptions.tell_time_left, _WAITING),
    (_WAITING, Input.NO): _rule(interruptions.restart_wait, _ASKING),
    (_WAITING, Input.BACK): _rule(interruptions.restart_wait, _ASKING),
    (_WAITING, Input.CORRECT): _rule(interruptions.restart_wait, _ASKING),
    (_WAITING, Input.RESUMED): _rule(interruptions.resume, _WAITING, _ASKING, _FINISHED),
    # A cue that would count: only a clear yes gives it.
    (_OFFERING, Input.YES): _rule(helping.accept, *_UNDER_WAY, _INSTRUCTOR, _PAUSED, _STOPPING, _FINISHED),
    (_OFFERING, Input.HELP): _rule(commands.again, _OFFERING),
    (_OFFERING, Input.WOKE): _rule(interruptions.note_wait_over, _OFFERING),
    # The instructor's own words, until "go on".
    (_INSTRUCTOR, Input.CHOICE): _rule(interruptions.heed_instructor, _INSTRUCTOR, _ASKING, _REASON, _FINISHED),
    (_INSTRUCTOR, Input.GO_ON): _rule(interruptions.return_from_pause, *_LIVE_AGAIN),
    (_INSTRUCTOR, Input.WOKE): _rule(interruptions.note_wait_over, _INSTRUCTOR),
    (_INSTRUCTOR, Input.RESUMED): _rule(interruptions.resume, *_LIVE_AGAIN),
    # A pause.
    (_PAUSED, Input.GO_ON): _rule(interruptions.return_from_pause, *_UNDER_WAY, _HELD, _FINISHED),
    (_PAUSED, Input.YES): _rule(interruptions.tell_paused, _PAUSED),
    (_PAUSED, Input.DONE): _rule(interruptions.tell_paused, _PAUSED),
    (_PAUSED, Input.NO): _rule(interruptions.tell_paused, _PAUSED),
    (_PAUSED, Input.WOKE): _rule(interruptions.note_wait_over, _PAUSED),
    # A hold: nothing is taken until the instructor ends it.
    (_HELD, Input.YES): _rule(interruptions.tell_paused, _HELD),
    (_HELD, Input.DONE): _rule(interruptions.tell_paused, _HELD),
    (_HELD, Input.NO): _rule(interruptions.tell_paused, _HELD),
    (_HELD, Input.ACKNOWLEDGED): _rule(interruptions.tell_paused, _HELD),
    (_HELD, Input.GO_ON): _rule(interruptions.tell_paused, _HELD),
    (_HELD, Input.HELP): _rule(interruptions.tell_paused, _HELD),
    # A stop is asked about once: a misheard word must not end an attempt.
    (_STOPPING, Input.YES): _rule(interruptions.stop, _FINISHED),
    (_STOPPING, Input.NO): _rule(interruptions.return_from_pause, _INSTRUCTOR, *_LIVE_AGAIN),
    (_STOPPING, Input.GO_ON): _rule(interruptions.return_from_pause, _INSTRUCTOR, *_LIVE_AGAIN),
    (_STOPPING, Input.WOKE): _rule(interruptions.note_wait_over, _STOPPING),
    # A stopped attempt can be taken up; one that ended just before its seal is ended again.
    (_FINISHED, Input.RESUMED): _rule(interruptions.reopen, *_UNDER_WAY, _HELD, _FINISHED),
}

for _input in (Input.NO, Input.ACKNOWLEDGED, Input.GO_ON, Input.BACK, Input.CORRECT):
    TABLE[_OFFERING, _input] = _rule(helping.decline, *_UNDER_WAY, _INSTRUCTOR, _PAUSED, _STOPPING, _FINISHED)
TABLE[_OFFERING, Input.UNCLEAR] = _rule(helping.answer_unclear, _INSTRUCTOR, *_LIVE_AGAIN)
TABLE |= {
    (_state, Input.TROUBLE): _rule(trouble.take_trouble, _state, _ASKING) for _state in (_READING, _REASON, _WAITING)
}
TABLE[_OFFERING, Input.TROUBLE] = _rule(trouble.take_trouble, *_UNDER_WAY, _INSTRUCTOR, _PAUSED, _STOPPING)
for _state in LIVE:
    # Legal everywhere between the opening and the end.
    for _input, _action in {
        Input.AGAIN: commands.again,
        Input.WHERE: commands.where,
        Input.ORDER: commands.read_order,
        Input.SLOWER: commands.slower,
        Input.FASTER: commands.faster,
        Input.LOUDER: commands.louder,
        Input.SOFTER: commands.softer,
        Input.HIGHER: commands.higher,
        Input.DEEPER: commands.deeper,
        Input.SPELL: commands.spell,
        Input.MORE: commands.more,
        Input.HOLD_ON: commands.hold_on,
        Input.CALL: commands.call,
        Input.OPTIONS: commands.options,
        Input.DOUBTFUL: asking.ask_once_more,
        Input.UNCLEAR: asking.unclear,
        Input.DROPPED: asking.drop,
        Input.EAR_LOST: interruptions.ear_lost,
        Input.EAR_BACK: interruptions.ear_back,
        Input.VOICE_LOST: interruptions.voice_lost,
        Input.RESUMED: interruptions.resume,
    }.items():
        TABLE.setdefault((_state, _input), _rule(_action, _state))
    TABLE.setdefault((_state, Input.TROUBLE), _rule(trouble.take_trouble, _state))
    TABLE.setdefault((_state, Input.HELP), _rule(helping.ask_for_help, _state, _OFFERING))
    TABLE[_state, Input.INPUT_ENDED] = _rule(interruptions.end_input, _FINISHED)
    TABLE[_state, Input.PAUSE] = _rule(interruptions.pause, _PAUSED)
    # From the instructor's desk, in every state: taken, or on record as refused.
    TABLE[_state, Input.MARKED] = _rule(marks.take_note_or_cue, _state)
    _deals = (_ASKING, _FINISHED) if _state in marks.DEALT_WITH else ()
    TABLE[_state, Input.MARKED_SEEN] = _rule(marks.take_sighting, _state, *_deals)
    TABLE[_state, Input.MARKED_ASIDE] = _rule(marks.set_aside, _state, *_deals)
    TABLE[_state, Input.MARKED_UNSAFE] = _rule(marks.hold, _state, _HELD)
    TABLE[_state, Input.UNDONE] = _rule(marks.undo, _state, *((_ASKING,) if _state in _UNDER_WAY else ()))
    TABLE[_state, Input.DIRECTED_STOP] = _rule(marks.let_stop, _FINISHED)
    if _state is not _INSTRUCTOR:
        TABLE[_state, Input.INSTRUCTOR] = _rule(interruptions.admit_instructor, _state, _INSTRUCTOR)
    TABLE[_state, Input.STOP] = _rule(interruptions.ask_stop, _STOPPING)
    TABLE[_state, Input.CLOSE] = _rule(interruptions.ask_stop, _STOPPING)
for _state in LIVE:
    for _command in Command:
        # Every word is answered, also where it has no place.
        TABLE.setdefault((_state, Input(_command.value)), _rule(asking.not_here, _state))
TABLE[_WAITING, Input.MARKED_ASIDE] = _rule(marks.set_aside, _WAITING, _ASKING, _FINISHED)
TABLE[_HELD, Input.UNDONE] = _rule(marks.undo, _HELD, _CONSENT, _ASKING)
for _state in (_ASKING, _READING, _REASON, _WAITING, _INSTRUCTOR):
    TABLE[_state, Input.HAPPENED] = _rule(marks.happen, _state, _ASKING)
TABLE[_OFFERING, Input.HAPPENED] = _rule(marks.happen, *_UNDER_WAY, _OFFERING, _INSTRUCTOR, _PAUSED, _STOPPING)
TABLE[_HELD, Input.DIRECTED_GO_ON] = _rule(marks.let_go_on, _CONSENT, _ASKING)
for _state in (_OFFERING, _INSTRUCTOR, _PAUSED, _STOPPING):
    TABLE[_state, Input.DIRECTED_GO_ON] = _rule(marks.let_go_on, *_UNDER_WAY, _FINISHED)
for _state in (*_UNDER_WAY, _OFFERING, _INSTRUCTOR, _STOPPING):
    TABLE[_state, Input.DIRECTED_PAUSE] = _rule(marks.let_rest, _state, _PAUSED)
for _state in LIVE:
    for _input in (Input.HAPPENED, Input.DIRECTED_GO_ON, Input.DIRECTED_PAUSE):
        TABLE.setdefault((_state, _input), _rule(marks.refuse, _state))
TABLE[_HELD, Input.PAUSE] = _rule(interruptions.tell_paused, _HELD)
TABLE[_STOPPING, Input.STOP] = _rule(interruptions.stop, _FINISHED)
# Never at one word: closing is offered only after a stop, since it cannot be taken back.
TABLE[_STOPPING, Input.CLOSE] = _rule(interruptions.close_early, _FINISHED)
