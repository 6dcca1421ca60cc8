"""A time of day and a year that are shown in figures, as English says them."""

import re

from assistant.spoken.english.numbers import HUNDRED, ONES, cardinal

_HALF_DAY = 12
"""Hours of half a day."""
_MONTHS = "January|February|March|April|May|June|July|August|September|October|November|December"

YEAR = re.compile(rf"(?P<month>{_MONTHS}) (?P<century>1[0-9]|20)(?P<rest>\d\d)(?!\d)")
"""A year after its month."""


def year(match: re.Match[str]) -> str:
    """A year after its month, in two halves: 1961 is "nineteen sixty one", 2001 "two thousand and one"."""
    century, rest = int(match["century"]), int(match["rest"])
    if century == 20 and rest < 10:
        return f"{match['month']} {cardinal(100 * century + rest)}"
    last = HUNDRED if rest == 0 else cardinal(rest)
    return f"{match['month']} {cardinal(century)} {'oh ' if 0 < rest < 10 else ''}{last}"


def clock(hour: str, minute: str) -> str:
    """A time of day in figures: by the 24-hour clock where it is written so.

    "14:30" is "fourteen thirty", "08:00" is "zero eight hundred", "8:00" is "eight o'clock".
    """
    minutes = cardinal(int(minute)) if minute[0] != "0" else f"{ONES[0]} {ONES[int(minute)]}"
    if hour[0] != "0" and int(hour) <= _HALF_DAY:
        return f"{cardinal(int(hour))} o'clock" if minute == "00" else f"{cardinal(int(hour))} {minutes}"
    if int(hour) == 0:
        hours = ONES[0] if minute == "00" else f"{ONES[0]} {ONES[0]}"
    else:
        hours = cardinal(int(hour)) if int(hour) >= 10 else f"{ONES[0]} {ONES[int(hour)]}"
    return f"{hours} {HUNDRED if minute == '00' else minutes}"
