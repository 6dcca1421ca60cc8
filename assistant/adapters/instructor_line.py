"""The instructor at the keyboard: a typed line that begins with "instructor", and the code in it.

The code is looked at here and goes no further: no event, and so no record, ever holds it.
"""

import hmac
import re
from dataclasses import dataclass

_LINE = re.compile(
    r"\s*instructor(?:\s+here|\s+(?P<code>[^\s:]{1,64}))?\s*(?::(?P<words>.*))?", re.IGNORECASE | re.DOTALL
)


@dataclass(frozen=True)
class InstructorLine:
    """What such a line holds.

    Attributes:
        proven: the right code stands in it; never where no code was set.
        words: what the instructor says with it; empty where the line only tells who is there, and where a
            code was set and is not right.
    """

    proven: bool
    words: str


def read_instructor_line(line: str, code: str) -> InstructorLine | None:
    """Read "instructor", "instructor here", "instructor CODE" or any of them with ": words".

    Args:
        line: as typed.
        code: the instructor's code, "" where none was set.

    Returns:
        None where the line is not the instructor's.
    """
    match = _LINE.fullmatch(line)
    if match is None:
        return None
    given = match["code"] or ""
    proven = bool(code) and hmac.compare_digest(given.encode(), code.encode())
    words = (match["words"] or "").strip()
    return InstructorLine(proven, words if proven or not code else "")
