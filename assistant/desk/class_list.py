"""The class list: the learners' codes, a line each, in a small file of the instructor's."""

import re
from collections.abc import Collection, Iterable
from pathlib import Path

from assistant.errors import AssistantError, UsageError
from assistant.record.disk import make_folder
from assistant.text import quoted, reason_shown, shown

CODE = re.compile(r"[A-Za-z0-9_-]{1,32}")
MOST_CODES = 500
_SEPARATORS = re.compile(r"[,;\t]")


class ClassList:
    """Codes in the order in which they were written.

    Args:
        path: of the file; none yet is an empty list.
    """

    def __init__(self, path: Path) -> None:
        self._path = path

    def codes(self) -> list[str]:
        """Every code, once."""
        try:
            return codes_in(self._path.read_text(encoding="utf-8"))
        except (OSError, ValueError, AssistantError):
            return []

    def keep(self, text: str) -> list[str]:
        """Replace the list; return its codes.

        Raises:
            UsageError: a line holds no code, or there are too many.
            AssistantError: the file cannot be written.
        """
        codes = codes_in(text)
        try:
            make_folder(self._path.parent)
            self._path.write_text("".join(f"{code}\n" for code in codes), encoding="utf-8")
        except OSError as cause:
            raise AssistantError(
                f"{shown(self._path)} cannot be written: {reason_shown(cause)}.", "Check folder and disk."
            ) from cause
        return codes


def codes_in(text: str) -> list[str]:
    """The codes of a list: the first column of each line, for a table may be pasted as well.

    Raises:
        UsageError: a line holds no code, or there are too many.
    """
    first = [_SEPARATORS.split(line)[0].strip().strip('"') for line in text.lstrip("\ufeff").splitlines()]
    codes = list(dict.fromkeys(code for code in first if code))
    for code in codes:
        if not CODE.fullmatch(code):
            raise UsageError(
                f"{quoted(code)} is no code: letters, digits, - and _, at most 32 of them.",
                "Leave names and headings out.",
            )
    if len(codes) > MOST_CODES:
        raise UsageError(f"A class list holds at most {MOST_CODES} codes.", "Make several lists.")
    return codes


def next_code(codes: Iterable[str], begun: Collection[str]) -> str:
    """The first code whose attempt has not begun; empty where there is none.

    Args:
        codes: the class list.
        begun: codes of today's attempts.
    """
    return next((code for code in codes if code not in begun), "")
