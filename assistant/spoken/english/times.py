"""How English says times of day: the words, and the one written grammar of a time.

::

    time    = hour minutes [period | "hours"]      "fourteen thirty"; "two thirty" is 02:30 or 14:30: both
            | hour "hundred" ["hours"]             "oh eight hundred", "fourteen hundred"
            | hour "o'clock" [period] | hour period                     "two o'clock", "two p m"
            | ("half" | "quarter" | minutes) ("past" | "to") hour [period]         "half past two": both
            | digits                               "one four three zero" is 14:30, "two three zero" both
            | figures [period | "hours"]           "14:30", "1430", "2.30"
    hour    = "one" .. "twelve"                    of which half of the day is not said
            | "thirteen" .. "twenty three" | ("zero" | "oh") ["zero" .. "nine"]
    minutes = "ten" .. "fifty nine" | ("zero" | "oh") "one" .. "nine"

"Noon" and "midnight" are no times by the clock, and "twelve p m" is taken for either by somebody (NIST, "Times of
day" of its questions on time: use 12:01 or the 24-hour clock; from memory). Where the first half of the day and the
second are both possible, both are readings: the speaker is asked.
"""

from collections.abc import Iterator
from dataclasses import dataclass, replace

from assistant.spoken.english.numbers import DIGITS, HUNDRED, ONES, TEENS, TENS, Digits
from assistant.spoken.grammar import Opt, Rule, Word, Words, Written, alt, seq

HOUR = 60
"""Minutes of an hour."""
DAY = 24 * HOUR
"""Minutes of a day."""
HALF_DAY = 12
"""Hours of half a day."""


@dataclass(frozen=True)
class SaidTime:
    """A time of day as it was said.

    Attributes:
        readings: every time that it can be, in minutes after midnight.
        digits: every digit was said by itself, all four of them.
        written: what it is by the 24-hour clock where it was written in figures with two digits for the hour:
            written by the speaker it can be nothing else, written by a recogniser it can.
        doubtful: a word in it is a number only because it sounds like one.
    """

    readings: tuple[int, ...]
    digits: bool = False
    written: int | None = None
    doubtful: bool = False


@dataclass(frozen=True)
class _Hour:
    """An hour, and whether it was said by the 24-hour clock."""

    value: int
    sure: bool


_ZERO = Words(dict.fromkeys(("zero", "oh", "o", "nought"), 0))
_ONE_TO_NINE = Words({word: value for value, word in enumerate(ONES) if value})
_TO_TWELVE = {word: value for value, word in enumerate((*ONES, *TEENS)) if 1 <= value <= HALF_DAY}
_LATER = {word: value for value, word in enumerate(TEENS, 10) if value > HALF_DAY}
_LATER |= {TENS[0]: 20} | {f"{TENS[0]} {ONES[one]}": 20 + one for one in (1, 2, 3)}
_EARLY_HOUR = Words({word: _Hour(value, sure=False) for word, value in _TO_TWELVE.items()})
_SURE_HOUR = alt(
    Words({word: _Hour(value, sure=True) for word, value in _LATER.items()}),
    seq(_ZERO, alt(_ONE_TO_NINE, _ZERO), build=lambda _, value: _Hour(value, sure=True)),
    seq(_ZERO, build=lambda value: _Hour(value, sure=True)),
)
_HOUR = alt(_EARLY_HOUR, _SURE_HOUR)

_TENS_OF_MINUTES = {word: 20 + 10 * at for at, word in enumerate(TENS) if at < 4}
_FROM_TEN = alt(
    Words({word: value for value, word in enumerate(TEENS, 10)}),
    Words(dict(_TENS_OF_MINUTES)),
    seq(Words(dict(_TENS_OF_MINUTES)), _ONE_TO_NINE, build=lambda ten, one: ten + one),
)
_MINUTES = alt(_FROM_TEN, seq(_ZERO, _ONE_TO_NINE, build=lambda _, one: one))

_PERIODS: dict[str, range | tuple[int, ...]] = {
    "am": range(12),
    "a m": range(12),
    "pm": range(12, 24),
    "p m": range(12, 24),
    "in the morning": range(12),
    "in the afternoon": range(12, 19),
    "in the evening": range(16, 24),
    "at night": (*range(20, 24), *range(5)),
}
"""Parts of the day, with the hours that they hold."""
_HALF_DAYS = ("am", "a m", "pm", "p m")
_PERIOD = Opt(Words({words: words for words in _PERIODS}))
HOURS = "hours"
"""What a time by the 24-hour clock may end in."""
_BY_24_HOURS = Word(HOURS)


def _time(hour: _Hour, minutes: int, period: str | None) -> SaidTime | None:
    """The time at this hour; None where the part of the day that was named does not hold it."""
    hours: tuple[int, ...] = (hour.value,) if hour.sure else (hour.value % HALF_DAY, hour.value % HALF_DAY + HALF_DAY)
    noon_or_midnight = hour.value == HALF_DAY and not minutes and period in _HALF_DAYS
    if period is not None and not noon_or_midnight:
        hours = tuple(value for value in hours if value in _PERIODS[period])
    return SaidTime(tuple(HOUR * value + minutes for value in hours)) if hours else None


def _by_24_hours(hour: _Hour, minutes: int, _: None) -> SaidTime | None:
    """The 24-hour clock: so "ten thirty hours" is said, and "two thirty hours" is nothing."""
    return SaidTime((HOUR * hour.value + minutes,)) if hour.sure or hour.value >= 10 else None


# "half past two", "twenty five to three".

_SHARES = Words(
    {"half": 30, "a half": 30, "quarter": 15, "a quarter": 15}
    | {ONES[5]: 5, TEENS[0]: 10, TENS[0]: 20, f"{TENS[0]} {ONES[5]}": 25}
)
_MINUTES_SAID = seq(
    alt(_ONE_TO_NINE, _FROM_TEN), Words({"minutes": None, "minute": None}), build=lambda count, _: count
)
_SIDES = Words({"past": 1, "after": 1, "to": -1, "before": -1, "till": -1})


def _from_the_hour(minutes: int, side: int, hour: _Hour, _: None, period: str | None) -> SaidTime | None:
    if minutes > 30 or (minutes == 30 and side < 0):
        return None
    at = _time(hour, 0, None)
    found = [(minute + side * minutes) % DAY for minute in at.readings] if at else []
    held = range(24) if period is None else _PERIODS[period]
    readings = tuple(minute for minute in found if minute // HOUR in held)
    return SaidTime(readings) if readings else None


# Digits and figures.


@dataclass(frozen=True)
class _Clock:
    """Hours and minutes in figures; `padded`: with two figures for the hour, as the 24-hour clock is written."""

    hour: int
    minutes: int
    padded: bool

    @property
    def minute_of_day(self) -> int:
        """Minutes after midnight by the 24-hour clock."""
        return HOUR * self.hour + self.minutes


def _clock(hours: str, minutes: str) -> _Clock | None:
    if not 1 <= len(hours) <= 2 or len(minutes) != 2 or not (hours + minutes).isdigit():
        return None
    clock = _Clock(int(hours), int(minutes), len(hours) == 2)
    return clock if clock.hour < 24 and clock.minutes < HOUR else None


def _row(digits: Digits) -> SaidTime | None:
    """Digits one by one: four are the 24-hour clock, three leave the half of the day open."""
    clock = _clock(digits.text[:-2], digits.text[-2:])
    if clock is None:
        return None
    if clock.padded:
        return SaidTime((clock.minute_of_day,), digits=digits.one_by_one, doubtful=digits.doubtful)
    found = _time(_Hour(clock.hour, sure=not clock.hour), clock.minutes, None)
    return found and replace(found, doubtful=digits.doubtful)


def _figures(token: str) -> Iterator[_Clock]:
    """Figures in one word: "14:30", "2.30", "1430", "230"."""
    hours, mark, minutes = token.replace(".", ":").partition(":")
    clock = _clock(hours, minutes) if mark else _clock(token[:-2], token[-2:])
    if clock is not None:
        yield clock


def _written(clock: _Clock, period: str | None) -> SaidTime | None:
    """Figures: "02:30" is sure, "2:30" and what a recogniser writes as "10:30" may be in either half of the day."""
    sure = not 1 <= clock.hour <= HALF_DAY or (period is None and clock.padded and clock.hour < 10)
    found = _time(_Hour(clock.hour, sure=sure), clock.minutes, period)
    return found and replace(found, written=clock.minute_of_day if clock.padded and period is None else None)


def _written_by_24_hours(clock: _Clock, _: None) -> SaidTime | None:
    return SaidTime((clock.minute_of_day,), written=clock.minute_of_day) if clock.padded else None


def _two_figures(token: str) -> Iterator[str]:
    if token.isdigit() and len(token) == 2:
        yield token


def _figures_of_an_hour(token: str) -> Iterator[_Hour]:
    if token.isdigit() and len(token) <= 2 and int(token) < 24:
        yield _Hour(int(token), sure=not 1 <= int(token) <= HALF_DAY)


_TWO_FIGURES = Written("two figures", _two_figures)
_FIGURES = alt(Written("a time in figures", _figures), seq(_TWO_FIGURES, _TWO_FIGURES, build=_clock))
_ANY_HOUR = alt(_HOUR, Written("an hour in figures", _figures_of_an_hour))
_OCLOCK = Words({"oclock": None, "o clock": None})

TIME: Rule = alt(
    seq(_HOUR, _MINUTES, _PERIOD, build=_time),
    seq(_HOUR, _MINUTES, _BY_24_HOURS, build=_by_24_hours),
    seq(
        alt(_HOUR, seq(_ZERO, _ZERO, build=lambda _, __: _Hour(0, sure=True))),
        Word(HUNDRED),
        Opt(_BY_24_HOURS),
        build=lambda hour, _, __: SaidTime((HOUR * hour.value,)),
    ),
    seq(_ANY_HOUR, _OCLOCK, _PERIOD, build=lambda hour, _, period: _time(hour, 0, period)),
    seq(_ANY_HOUR, _PERIOD, build=lambda hour, period: period and _time(hour, 0, period)),
    seq(alt(_SHARES, _MINUTES_SAID), _SIDES, _ANY_HOUR, Opt(_OCLOCK), _PERIOD, build=_from_the_hour),
    seq(DIGITS, build=_row),
    seq(_FIGURES, _PERIOD, build=_written),
    seq(_FIGURES, _BY_24_HOURS, build=_written_by_24_hours),
)
"""The grammar of a time of day; its meanings are `SaidTime`."""

NOT_BY_THE_CLOCK = frozenset({"noon", "midday", "midnight", "half", "past", "now", "today", "tonight", "tomorrow"})
"""Words that people say for a time, and that tell no hours and minutes by themselves."""
