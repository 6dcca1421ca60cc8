"""The instructor at the keyboard: a typed line that begins with "instructor", and the code in it.

The code is looked at here and goes no further: no event, and so no record, ever holds it.
"""

import hmac
import re
from dataclasses import dataclass
from datetime import datetime, timedelta

_LINE = re.compile(
    r"\s*instructor(?:\s+here|\s+(?P<code>[^\s:]{1,64}))?\s*(?::(?P<words>.*))?", re.IGNORECASE | re.DOTALL
)
_WORD = re.compile(r"\binstructor\b", re.IGNORECASE)
FREE_TRIES = 2
"""Wrong codes in a row that cost no time: fingers slip."""
LONGEST_PAUSE_S = 300
"""Seconds after which the next code is looked at, however many were wrong before."""


@dataclass(frozen=True)
class InstructorLine:
    """What such a line holds.

    Attributes:
        proven: the right code stands in it; never where no code was set.
        words: what the instructor says with it; empty where the line only tells who is there, and where a
            code was set and is not right.
        pause_s: seconds for which no code is looked at from now on; 0 for none.
    """

    proven: bool
    words: str
    pause_s: int = 0


class Doorkeeper:
    """Looks at codes, and ever more slowly while they are wrong.

    Args:
        code: the instructor's code, "" where none was set.
        wrong: how many were wrong in a row before.
    """

    def __init__(self, code: str, wrong: int = 0) -> None:
        self._code = code
        self._wrong = wrong
        self._closed_until: datetime | None = None

    def read(self, line: str, now: datetime) -> InstructorLine | None:
        """Read "instructor", "instructor here", "instructor CODE" or any of them with ": words".

        Args:
            line: as typed.
            now: the station's time.

        Returns:
            None where the line is not the instructor's.
        """
        match = _LINE.fullmatch(line)
        if match is None:
            # A slip on the way to such a line: the code must not go into the record as an answer.
            slip = bool(self._code) and self._code.casefold() in line.casefold() and _WORD.search(line) is not None
            return InstructorLine(proven=False, words="") if slip else None
        given, words = match["code"] or "", (match["words"] or "").strip()
        if not self._code:
            return InstructorLine(proven=False, words=words)
        if not given:
            return InstructorLine(proven=False, words="")
        if self._closed_until is not None and now < self._closed_until:
            left = int((self._closed_until - now).total_seconds()) + 1
            return InstructorLine(proven=False, words="", pause_s=left)
        if hmac.compare_digest(given.encode(), self._code.encode()):
            self._wrong, self._closed_until = 0, None
            return InstructorLine(proven=True, words=words)
        self._wrong += 1
        pause_s = min(2 ** min(self._wrong - FREE_TRIES, 10), LONGEST_PAUSE_S) if self._wrong > FREE_TRIES else 0
        self._closed_until = now + timedelta(seconds=pause_s)
        return InstructorLine(proven=False, words="", pause_s=pause_s)
