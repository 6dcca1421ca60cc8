"""The strip of marks: one for each step, its shape how the step ended, its height how long it took.

A part of the checklist is one picture, so that the strip is broken between parts on a narrow page. Shape and place
say everything; there is no colour.
"""

from collections.abc import Sequence
from decimal import Decimal
from typing import NamedTuple
from xml.etree import ElementTree
from xml.etree.ElementTree import Element

from assistant.report.content import StepLine
from assistant.report.steps import NOT_ANSWERED, NOT_DONE, NOT_REACHED

_PITCH, _HEIGHT, _BASE, _HALF = 16, 52, 44, 5
"""Distance of two marks, height of the strip, height of a mark that took no time, half the size of a mark."""
_GROUND = _BASE + _HALF + 2
_ROOT = {"xmlns": "http://www.w3.org/2000/svg", "role": "img", "fill": "none", "stroke": "currentColor"}
_TALLEST_S = 120
"""Seconds of the tallest mark; a longer step is drawn as tall as that."""


class Strip(NamedTuple):
    """The marks of one part.

    Attributes:
        part: its name.
        picture: SVG, with `alternative` as its title.
        alternative: the same in words.
        width: in CSS pixels at the usual size of print.
    """

    part: str
    picture: str
    alternative: str
    width: int


def strip(part: str, steps: Sequence[StepLine], alternative: str) -> Strip:
    """The marks of one part.

    Args:
        part: its name.
        steps: its steps, in order.
        alternative: what the picture shows, in words.
    """
    width = _PITCH * len(steps) + 6
    root = ElementTree.Element("svg", _ROOT | {"viewBox": f"0 0 {width} {_HEIGHT}"})
    ElementTree.SubElement(root, "title").text = alternative
    _draw(root, f"M0 {_GROUND}H{width}", 1)
    for place, line in enumerate(steps):
        _mark(root, line, 3 + _PITCH * place + _PITCH // 2)
    return Strip(part, ElementTree.tostring(root, encoding="unicode"), alternative, width)


def _mark(root: Element, line: StepLine, x: int) -> None:
    """A stem as high as the step took long, the mark at its top, and a bar before a gate."""
    y = _BASE - round(min(Decimal(line.seconds), Decimal(_TALLEST_S)) / _TALLEST_S * (_BASE - 2 * _HALF))
    if line.gate:
        _draw(root, f"M{x - _PITCH // 2} 2V{_GROUND}", 3)
    if y < _BASE - _HALF:
        _draw(root, f"M{x} {_GROUND}V{y}", 1)
    r = _HALF
    if line.ending in (NOT_REACHED, NOT_ANSWERED):
        _dot(root, x, y, r - 2, fill="none")
    elif line.ending == "not applicable":
        _draw(root, f"M{x - r} {y}H{x + r}", 2)
    elif line.ending in NOT_DONE:
        _draw(root, f"M{x - r} {y - r}L{x + r} {y + r}M{x - r} {y + r}L{x + r} {y - r}", 3)
    elif line.needs_a_look:
        _draw(root, f"M{x} {y - r}L{x + r} {y + r}H{x - r}Z", 2)
    else:
        _dot(root, x, y, r - 1, fill="currentColor")


def _draw(root: Element, path: str, width: int) -> None:
    ElementTree.SubElement(root, "path", {"d": path, "stroke-width": str(width)})


def _dot(root: Element, x: int, y: int, radius: int, fill: str) -> None:
    ElementTree.SubElement(root, "circle", {"cx": str(x), "cy": str(y), "r": str(radius), "fill": fill})
