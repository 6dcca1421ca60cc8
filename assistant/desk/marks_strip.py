"""The strip of marks: a shape for each step that tells how it stands, and a bar under each that has to be seen. Pure.

A part of the checklist is one picture, so that the strip breaks between parts on a narrow page. The shapes are those of
the report's strip; there is no colour.
"""

from collections.abc import Iterator
from itertools import groupby
from typing import NamedTuple

from assistant.desk.watched import Standing, StepSeen

PITCH, HEIGHT = 14, 26
"""Distance of two marks and height of the strip, CSS pixels."""
_Y, _R = 9, 5
SHAPES: dict[Standing, tuple[str, bool]] = {
    Standing.AHEAD: (f"M-2 {_Y}a2 2 0 1 0 4 0a2 2 0 1 0 -4 0Z", False),
    Standing.DONE: (f"M-4 {_Y}a4 4 0 1 0 8 0a4 4 0 1 0 -8 0Z", True),
    Standing.LOOK: (f"M0 {_Y - _R}L{_R} {_Y + _R - 1}H{-_R}Z", False),
    Standing.HELD: (f"M-4 {_Y - 4}H4V{_Y + 4}H-4Z", False),
    Standing.LEFT: (f"M-4 {_Y - 4}L4 {_Y + 4}M-4 {_Y + 4}L4 {_Y - 4}", False),
    Standing.NOT_APPLICABLE: (f"M-4 {_Y}H4", False),
    Standing.SET_ASIDE: (f"M0 {_Y - _R}L{_R} {_Y}L0 {_Y + _R}L{-_R} {_Y}Z", False),
}
"""The outline of each shape around a middle at x = 0, and whether it is filled."""


class Shape(NamedTuple):
    """One shape of a strip.

    Attributes:
        x: its middle, CSS pixels from the left.
        path: its outline.
        filled: it is filled.
        now: the step is asked now.
        to_see, seen: an instructor has to see it; and has.
    """

    x: int
    path: str
    filled: bool
    now: bool
    to_see: bool
    seen: bool


class StripPart(NamedTuple):
    """The marks of one part.

    Attributes:
        width: in CSS pixels.
        shapes: one a step.
    """

    width: int
    shapes: tuple[Shape, ...]


def strip(steps: tuple[StepSeen, ...], now: str) -> Iterator[StripPart]:
    """The marks of an attempt, a part of the checklist each.

    Args:
        steps: all of them.
        now: id of the step that is asked.
    """
    for _, group in groupby(steps, key=lambda step: step.plan.part):
        shapes = tuple(
            Shape(
                x=PITCH // 2 + PITCH * place,
                path=SHAPES[step.standing][0],
                filled=SHAPES[step.standing][1],
                now=step.plan.id == now,
                to_see=step.plan.seen,
                seen=step.seen == "seen",
            )
            for place, step in enumerate(group)
        )
        yield StripPart(PITCH * len(shapes), shapes)


def in_words(steps: tuple[StepSeen, ...]) -> str:
    """What the strip shows, in a sentence."""
    counts = [(sum(step.standing is standing for step in steps), standing) for standing in Standing]
    told = [f"{count} {standing.value}" for count, standing in counts if count]
    return f"{len(steps)} steps: {', '.join(told)}."
