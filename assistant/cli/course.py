"""`checkoff course FILE.toml`: which line flows when."""

import argparse
import json
from fractions import Fraction
from pathlib import Path

from assistant.checklist.paper_file import read_paper
from assistant.cli.printing import why_not
from assistant.cli.verbs import Subparsers, add_verb
from assistant.dosing.course_file import course_from
from assistant.dosing.course_picture import picture
from assistant.dosing.result import tell_exact
from assistant.dosing.rounding import decimal
from assistant.dosing.timeline import Course
from assistant.errors import AssistantError, QuantityError
from assistant.text import shown

_EXAMPLES = """\
  checkoff course day.toml
  checkoff course day.toml --svg day.svg
  checkoff course day.toml --json

a file:
  start = "2026-11-25 08:00"       # or "08:00"; with a date, zone = "Europe/London" may follow
  length = "24 h"

  [primary]
  name = "sodium chloride 0.9 %"
  rate = "75 mL/h"
  bag_volume = "1,000 mL"
  reserve = "50 mL"
  bags = 2                          # at hand; change_takes = "5 min" and starts = "20 min" may follow
  keep_open = "20 mL/h"             # from the last bag's reserve; leave it out where the line then stops

  [[secondary]]
  name = "cefazolin"
  volume = "50 mL"
  duration = "30 min"               # or rate = "100 mL/h"
  due = "09:00"                     # or "60 min" after the start; late = "10 min" may follow
  tubing = "15 mL"                  # stays in the tubing and is not given; leave it out where it is flushed
  every = "8 h"                     # with times; leave both out for one dose
  times = 3

  [[pause]]                         # line = "all" or a line's name; without lasts: until the end
  line = "all"
  at = "12:00"
  lasts = "40 min"

  [[change]]                        # a new rate of the primary
  at = "20:00"
  rate = "100 mL/h\""""


def add_parser(subparsers: Subparsers) -> None:
    """Add the verb `course`."""
    parser = add_verb(
        subparsers,
        "course",
        "The timeline of a primary line with its secondaries. Training only.",
        _EXAMPLES,
    )
    parser.add_argument("file", metavar="FILE", help="the course, a TOML file")
    parser.add_argument("--svg", metavar="OUT", help="draw it into this file")
    parser.add_argument("--json", action="store_true", help="one JSON object")
    parser.set_defaults(run=run)


def run(args: argparse.Namespace) -> int:
    """Work out a course and print it.

    Raises:
        QuantityError: the file or a value in it is wrong.
        AssistantError: the picture cannot be written.
    """
    course = course_from(read_paper(Path(args.file), QuantityError).table)
    if args.svg is not None:
        _write(args.svg, picture(course))
    if args.json:
        print(json.dumps(_as_object(course), ensure_ascii=False))
        return 0
    for sentence in course.sentences():
        print(shown(sentence))
    for line in course.lines:
        print(shown(f"{line}: {tell_exact(course.intake(line), 'mL')} in all"))
    print(f"All lines: {tell_exact(course.intake(), 'mL')}")
    print("Intake by clock hour:")
    for hour, total in course.hourly():
        print(f"  {hour:%H:%M}  {tell_exact(total, 'mL')}")
    return 0


def _write(name: str, text: str) -> None:
    try:
        Path(name).write_text(text, encoding="utf-8")
    except (OSError, ValueError) as cause:
        raise AssistantError(f"{shown(name)} cannot be written: {why_not(cause)}.", "Choose another file.") from cause


def _text(value: Fraction) -> str:
    return f"{decimal(value):f}"


def _as_object(course: Course) -> dict[str, object]:
    """A course for programs: numbers as decimal text, mL and mL/h, times of the clock."""
    return {
        "start": course.start.isoformat(),
        "hours": _text(course.length),
        "segments": [
            {
                "line": part.line,
                "from": course.at(part.begins).isoformat(),
                "to": course.at(part.ends).isoformat(),
                "rate": _text(part.rate),
                "volume": _text(part.volume),
            }
            for part in course.segments
        ],
        "intake": {line: _text(course.intake(line)) for line in course.lines},
        "total": _text(course.intake()),
        "hourly": [{"hour": hour.isoformat(), "volume": _text(total)} for hour, total in course.hourly()],
        "bag_ends": [
            {"line": end.line, "bag": end.number, "at": course.at(end.at).isoformat(), "then": end.then}
            for end in course.bag_ends
        ],
        "collisions": [
            {
                "line": clash.line,
                "running": clash.running,
                "due": course.at(clash.due).isoformat(),
                "begins": course.at(clash.begins).isoformat() if clash.begins is not None else None,
            }
            for clash in course.collisions
        ],
        "unfinished": {name: _text(rest) for name, rest in course.unfinished.items()},
        "left_in_bag": _text(course.left_in_bag),
        "standstills": [
            {"from": course.at(still.begins).isoformat(), "to": course.at(still.ends).isoformat(), "why": still.why}
            for still in course.standstills
        ],
        "left_in_tubing": [
            {
                "line": left.line,
                "at": course.at(left.at).isoformat(),
                "volume": _text(left.volume),
                "share": _text(left.share),
            }
            for left in course.residuals
        ],
    }
