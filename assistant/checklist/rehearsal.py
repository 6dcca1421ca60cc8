"""A checklist read through without waiting: what is said at each step, what is expected, how long it will take."""

import math
from collections.abc import Iterator
from dataclasses import dataclass

from assistant.checklist.model import (
    Checklist,
    ChoiceAsked,
    DoneAsked,
    DoubleCheckAsked,
    NameAsked,
    NoteAsked,
    NumberAsked,
    ObservationAsked,
    QuestionAsked,
    Step,
    WaitAsked,
)
from assistant.spoken import say_unit

WORDS_A_MINUTE = 175
"""Speed of the voice, a little less than the 180 that were measured for both voices."""
ANSWER_S = {
    "done": 8,
    "question": 6,
    "number": 14,
    "name": 8,
    "wait": 4,
    "choice": 7,
    "note": 20,
    "observation": 8,
    "double-check": 40,
}
"""Seconds for doing, answering and, for a number, its read-back, by what is expected (an estimate, no source)."""


@dataclass(frozen=True)
class Line:
    """One step as it will sound.

    Attributes:
        number: place in the checklist, from 1.
        step: the step.
        spoken: what is read aloud.
        expected: what the learner answers, in words.
        seconds: estimated time, whole seconds.
    """

    number: int
    step: Step
    spoken: str
    expected: str
    seconds: int


def rehearse(checklist: Checklist) -> tuple[Line, ...]:
    """Every step as it will sound, in order."""
    return tuple(_lines(checklist))


def _lines(checklist: Checklist) -> Iterator[Line]:
    for number, step in enumerate(checklist.steps, 1):
        spoken = checklist.aloud(step.say)
        seconds = reading_s(checklist, step) + ANSWER_S[step.expect.kind]
        if isinstance(step.expect, WaitAsked):
            seconds += step.expect.seconds
        yield Line(number, step, spoken, expected(step), seconds)


def reading_s(checklist: Checklist, step: Step) -> int:
    """Whole seconds that reading a step's line aloud takes (an estimate)."""
    return math.ceil(len(checklist.aloud(step.say).split()) * 60 / WORDS_A_MINUTE)


def expected(step: Step) -> str:
    """What a step expects, in words."""
    match step.expect:
        case DoneAsked():
            return "done"
        case QuestionAsked(right=right):
            return right
        case NumberAsked(unit=unit):
            return f"a number in {say_unit(unit)}"
        case NameAsked():
            return "a name read from a label"
        case WaitAsked(seconds=seconds):
            return f"done, then {seconds} seconds of waiting"
        case ChoiceAsked(choices=choices, right=right):
            return right or " or ".join(choices)
        case NoteAsked():
            return "a note in free words"
        case ObservationAsked():
            return "seen or not seen, by the instructor"
        case DoubleCheckAsked(of=of):
            return f"a second person's own number, as at {of}"
