"""What the guide does: one function for each action that the transition table names.

Each takes the turn that it works on and changes only that; none looks at a clock or a device.
"""

from collections.abc import Callable, Mapping

from assistant.guide import (
    answers,
    choices,
    commands,
    consent,
    devices,
    instructor,
    moving,
    names,
    numbers,
    pausing,
    read_backs,
    reasons,
    unclear,
    waits,
)
from assistant.guide.turn import Turn

_ALL: tuple[Callable[[Turn], None], ...] = (
    moving.begin,
    consent.give_consent,
    consent.refuse_consent,
    moving.back,
    moving.leave_open,
    moving.correct,
    moving.remind,
    answers.answer_yes,
    answers.answer_no,
    numbers.take_number,
    numbers.ask_digits,
    names.take_name,
    choices.take_choice,
    instructor.admit_instructor,
    instructor.heed_instructor,
    read_backs.keep,
    read_backs.ask_anew,
    reasons.ask_reason,
    reasons.take_words,
    reasons.drop_reason,
    waits.end_wait,
    waits.tell_time_left,
    waits.restart_wait,
    commands.again,
    commands.more,
    commands.give_help,
    commands.where,
    commands.read_order,
    commands.spell,
    commands.slower,
    commands.faster,
    commands.louder,
    commands.softer,
    commands.higher,
    commands.deeper,
    unclear.unclear,
    unclear.not_here,
    unclear.drop,
    pausing.pause,
    pausing.tell_paused,
    pausing.note_wait_over,
    pausing.return_from_pause,
    pausing.ask_stop,
    pausing.stop,
    pausing.close_early,
    pausing.end_input,
    pausing.resume,
    pausing.reopen,
    devices.ear_lost,
    devices.ear_back,
    devices.voice_lost,
)

ACTIONS: Mapping[str, Callable[[Turn], None]] = {action.__name__: action for action in _ALL}
"""Each action by the name that the transition table gives it."""
