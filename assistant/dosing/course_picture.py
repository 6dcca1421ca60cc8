"""A course as a picture: SVG text that a page or a report can hold. No script, no font, no address."""

from fractions import Fraction
from html import escape

from assistant.dosing.amount import Amount, show, show_number
from assistant.dosing.result import tell_exact
from assistant.dosing.rounding import TENTH
from assistant.dosing.timeline import Course

_WIDTH = 1000
_LEFT, _RIGHT = 190, 20
_TOP, _ROW, _BAR = 64, 44, 26
_MOST_HOURS_SHOWN = 24
_MOST_LABELS = 14
_MOST_NOTES = 30
_NOTE = 16

# Dark enough for white letters (contrast above 4.5 to 1); each line has its row and name: colour tells nothing alone.
_COLOURS = ("#1f4e79", "#7a3b00", "#2f5d1e", "#5b2a6f", "#7d1f2f", "#0f5959")


def picture(course: Course) -> str:
    """Draw a timeline: one row a line, bars where it flows, intake for each clock hour below.

    The picture has a title and a description in words for a screen reader.
    """
    rows = len(course.lines)
    bottom = _TOP + rows * _ROW
    bars, notes = _bars(course)
    height = bottom + 76 + _NOTE * min(len(notes), _MOST_NOTES + 1)
    parts = [
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {_WIDTH} {height}" role="img"'
        ' aria-labelledby="course-title course-words" font-family="sans-serif" font-size="13">',
        f'<title id="course-title">{escape(_title(course))}</title>',
        f'<desc id="course-words">{escape(". ".join(course.sentences()))}</desc>',
        f'<rect width="{_WIDTH}" height="{height}" fill="#ffffff"/>',
        f'<text x="10" y="22" font-size="16" font-weight="bold">{escape(_title(course))}</text>',
    ]
    parts += _axis(course, bottom)
    for row, line in enumerate(course.lines):
        parts += _lane(course, row, line)
    parts += _standstills(course, bottom)
    parts += bars
    for end in course.bag_ends:
        x = _x(course, end.at)
        parts.append(
            f"<g><title>{escape(f'bag {end.number} ends at {course.when(end.at)}; {end.then}')}</title>"
            f'<path d="M{x} {_TOP + 2}l-6 -10h12z" fill="#1a1a1a"/></g>'
        )
    for clash in course.collisions:
        x, y = _x(course, clash.due), _TOP + course.lines.index(clash.line) * _ROW + _ROW // 2
        parts.append(
            f"<g><title>{escape(f'due at {course.when(clash.due)} while {clash.running} runs')}</title>"
            f'<text x="{x}" y="{y + 6}" text-anchor="end" font-weight="bold" fill="#1a1a1a">!</text></g>'
        )
    parts += _intake(course, bottom)
    parts += _notes(notes, bottom + 52)
    parts.append("</svg>")
    return "\n".join(parts) + "\n"


def _title(course: Course) -> str:
    return f"{course.when(Fraction(0))} to {course.when(course.length)}: {_total(course, '')} in all"


def _total(course: Course, line: str) -> str:
    return show(Amount(TENTH.apply(course.intake(line)), "mL"))


def _x(course: Course, hours: Fraction) -> str:
    """A time's place from the left, to a tenth of a point."""
    return _point(_LEFT + hours / course.length * (_WIDTH - _LEFT - _RIGHT))


def _point(place: Fraction) -> str:
    return f"{TENTH.apply(place):f}"


def _axis(course: Course, bottom: int) -> list[str]:
    parts = []
    step = max(1, -(-int(course.length) // _MOST_HOURS_SHOWN))
    into = Fraction(course.start.minute * 60 + course.start.second, 3600)
    hour, place = -into, 0
    every = -(-int(course.length / step) // _MOST_LABELS) or 1
    while hour <= course.length:
        if hour >= 0:
            x = _x(course, hour)
            parts.append(f'<path d="M{x} {_TOP - 6}V{bottom}" stroke="#c8c8c8"/>')
            if place % every == 0:
                label = course.label(hour)
                parts.append(f'<text x="{x}" y="{_TOP - 12}" text-anchor="middle" font-size="11">{label}</text>')
        hour += step
        place += 1
    return parts


def _lane(course: Course, row: int, line: str) -> list[str]:
    """A line's name and total, and the line below its row."""
    y = _TOP + row * _ROW
    name = line if len(line) <= 24 else line[:23] + "\u2026"
    return [
        f'<text x="10" y="{y + 18}" fill="{_colour(row)}">{escape(name)}</text>',
        f'<text x="10" y="{y + 34}" font-size="11" fill="#444444">{escape(_total(course, line))}</text>',
        f'<path d="M{_LEFT} {y + _ROW - 2}H{_WIDTH - _RIGHT}" stroke="#e4e4e4"/>',
    ]


def _colour(row: int) -> str:
    return _COLOURS[row % len(_COLOURS)]


def _standstills(course: Course, bottom: int) -> list[str]:
    """Every time in which nothing flows: a grey band over all rows, with a word where there is room."""
    parts = []
    for still in course.standstills:
        x, end = Fraction(_x(course, still.begins)), Fraction(_x(course, still.ends))
        wide = max(end - x, Fraction(1))
        words = f"{course.when(still.begins)} to {course.when(still.ends)}: nothing flows; {still.why}"
        parts.append(
            f"<g><title>{escape(words)}</title>"
            f'<path d="M{_point(x)} {_TOP}h{_point(wide)}V{bottom}h-{_point(wide)}z" fill="#d8d8d8"/>'
        )
        short = "paused" if still.why.endswith("is paused") else "stands still"
        if wide > _letters(short):
            parts.append(
                f'<text x="{_point(x + wide / 2)}" y="{bottom - 6}" text-anchor="middle" font-size="11"'
                f' fill="#444444">{short}</text>'
            )
        parts.append("</g>")
    return parts


def _bars(course: Course) -> tuple[list[str], list[str]]:
    """A bar for every time that a line flows, with its rate; where there is no room, a number, and its note."""
    parts: list[str] = []
    notes: list[str] = []
    for segment, edge in zip(course.segments, _edges(course), strict=True):
        row = course.lines.index(segment.line)
        y = _TOP + row * _ROW
        x, end = Fraction(_x(course, segment.begins)), Fraction(_x(course, segment.ends))
        wide = max(end - x, Fraction(1))
        rate = tell_exact(segment.rate, "mL/h")
        span = f"{course.when(segment.begins)} to {course.when(segment.ends)}"
        parts.append(
            f"<g><title>{escape(f'{segment.line}: {span}, {rate}')}</title>"
            f'<rect x="{_point(x)}" y="{y + 8}" width="{_point(wide)}" height="{_BAR}" fill="{_colour(row)}"'
            ' stroke="#ffffff"/>'
        )
        short = show(Amount(TENTH.apply(segment.rate), "mL/h"))
        if wide > _letters(short):
            parts.append(_written(x + wide / 2, y + 26, "middle", "#ffffff", short))
        elif edge - x - wide > _letters(short):
            parts.append(_written(x + wide + 4, y + 26, "start", _colour(row), short))
        else:
            notes.append(f"{len(notes) + 1}: {segment.line} at {rate}, {span}")
            # Two bars side by side have their numbers above and below.
            parts.append(
                _written(x + wide / 2, y + (6 if len(notes) % 2 else 42), "middle", _colour(row), f"{len(notes)}")
            )
        parts.append("</g>")
    return parts, notes


def _letters(text: str) -> int:
    """How much room a text takes, in points."""
    return 8 * len(text)


def _edges(course: Course) -> list[Fraction]:
    """For every segment, where its line flows again, or the end of its row."""
    again: dict[str, Fraction] = {}
    found: list[Fraction] = []
    for segment in reversed(course.segments):
        found.append(again.get(segment.line, Fraction(_WIDTH - _RIGHT)))
        again[segment.line] = Fraction(_x(course, segment.begins))
    return found[::-1]


def _written(x: Fraction, y: int, anchor: str, ink: str, text: str) -> str:
    return f'<text x="{_point(x)}" y="{y}" text-anchor="{anchor}" font-size="12" fill="{ink}">{escape(text)}</text>'


def _notes(notes: list[str], y: int) -> list[str]:
    """What the numbers in the picture mean, below it."""
    told = [*notes[:_MOST_NOTES], *([f"and {len(notes) - _MOST_NOTES} more"] if len(notes) > _MOST_NOTES else [])]
    return [
        f'<text x="10" y="{y + _NOTE * place}" font-size="11" fill="#444444">{escape(note)}</text>'
        for place, note in enumerate(told, 1)
    ]


def _intake(course: Course, bottom: int) -> list[str]:
    """The mL of each clock hour, where there is room for them; the total of every line always."""
    hourly = course.hourly()
    parts = [f'<text x="10" y="{bottom + 24}" font-weight="bold">mL each clock hour</text>']
    if len(hourly) > _MOST_HOURS_SHOWN + 1:
        parts.append(f'<text x="{_LEFT}" y="{bottom + 24}">too many hours to write out</text>')
    else:
        into = Fraction(course.start.minute * 60 + course.start.second, 3600)
        for place, (_, total) in enumerate(hourly):
            begins, ends = max(place - into, Fraction(0)), min(place + 1 - into, course.length)
            x = _x(course, (begins + ends) / 2)
            value = show_number(TENTH.apply(total))
            parts.append(f'<text x="{x}" y="{bottom + 24}" text-anchor="middle" font-size="10">{value}</text>')
    parts.append(
        f'<text x="10" y="{bottom + 52}" font-size="11" fill="#444444">Training only.'
        " A triangle marks the end of a bag, an exclamation mark a dose that was due while another one ran, grey a time"
        " in which nothing flows.</text>"
    )
    return parts
