"""Times of day in words: reading them, and saying them by the 24-hour clock."""

from dataclasses import replace
from decimal import Decimal

from assistant.spoken import quantities
from assistant.spoken.english.numbers import HUNDRED, ONES
from assistant.spoken.english.phrases import BEFORE_A_TIME, CORRECTIONS
from assistant.spoken.english.read_back import i_have_time
from assistant.spoken.english.times import DAY, HALF_DAY, HOUR, HOURS, NOT_BY_THE_CLOCK, TIME, SaidTime
from assistant.spoken.expect import TimeExpected
from assistant.spoken.grammar import Many, Opt, Parse, Rule, Words, seq, words_of
from assistant.spoken.meaning import TIME_OF_DAY, Ambiguous, Answer, Kind, Meaning, NoMatch, Reason
from assistant.spoken.saying import say_number

_BEFORE = Words(dict.fromkeys(BEFORE_A_TIME))
_CORRECTION = seq(Words(dict.fromkeys(CORRECTIONS)), TIME, build=lambda _, time: time)


def _last(_: None, first: SaidTime, corrections: tuple[SaidTime, ...]) -> SaidTime:
    """The last time counts."""
    return replace(corrections[-1], doubtful=True) if corrections else first


TIME_SLOT: Rule = seq(Opt(_BEFORE), TIME, Many(_CORRECTION, 0, 3), build=_last)
"""A whole utterance where a time is expected; its meanings are `SaidTime`."""

_KNOWN_WORDS = frozenset(words_of(TIME_SLOT)) | NOT_BY_THE_CLOCK


def meaning_of(tokens: tuple[str, ...], expect: TimeExpected, *, heard: bool, hesitated: bool) -> Meaning:
    """What words mean where a time of day is expected; an amount has the wrong unit there.

    Args:
        tokens: the words, without sounds of thinking.
        expect: the frame.
        heard: the words come from a recogniser. What the speaker wrote in figures is the 24-hour clock, and as
            good as digits that were said.
        hesitated: a sound of thinking stood inside the time.
    """
    found = [value for value in Parse(tokens).whole(TIME_SLOT) if isinstance(value, SaidTime)]
    if not heard:
        found = [time if time.written is None else _as_written(time, time.written) for time in found]
    if not found:
        if any(amount.unit is not None for amount in quantities.readings(tokens)):
            return NoMatch(Reason.WRONG_UNIT)
        known = all(token in _KNOWN_WORDS or token[0].isdigit() for token in tokens)
        return NoMatch(Reason.NOT_A_TIME if known else Reason.UNKNOWN_WORDS)
    minutes = sorted({minute for time in found for minute in time.readings})
    digits = all(any(time.digits for time in found if minute in time.readings) for minute in minutes)
    if expect.digits_only and not digits:
        return NoMatch(Reason.DIGITS_WANTED)
    if len(minutes) > 1:
        return Ambiguous(tuple(map(Decimal, minutes)), TIME_OF_DAY)
    doubtful = hesitated or all(time.doubtful for time in found)
    return Answer(Kind.TIME, Decimal(minutes[0]), TIME_OF_DAY, digit_by_digit=digits, corrected=doubtful)


def _as_written(time: SaidTime, minute_of_day: int) -> SaidTime:
    return replace(time, readings=(minute_of_day,), digits=True)


def say_time(minute_of_day: Decimal) -> str:
    """A time by the 24-hour clock: "fourteen thirty", "zero eight hundred", "ten thirty hours".

    Args:
        minute_of_day: whole minutes after midnight, below 1,440.

    Raises:
        ValueError: it is no time of day.
    """
    hour, minutes = _split(minute_of_day)
    if not hour:
        said = f"{ONES[0]} {ONES[0]}" if minutes else ONES[0]
    else:
        said = say_number(Decimal(hour)) if hour >= 10 else f"{ONES[0]} {ONES[hour]}"
    if not minutes:
        return f"{said} {HUNDRED}"
    said += f" {say_number(Decimal(minutes))}" if minutes >= 10 else f" {ONES[0]} {ONES[minutes]}"
    # "Ten thirty" alone may be in the evening.
    return f"{said} {HOURS}" if 10 <= hour <= HALF_DAY else said


def say_time_by_digits(minute_of_day: Decimal) -> str:
    """The four digits of a time: "one four three zero".

    Raises:
        ValueError: it is no time of day.
    """
    return " ".join(ONES[int(digit)] for digit in show_time(minute_of_day) if digit != ":")


def show_time(minute_of_day: Decimal) -> str:
    """A time in figures: "14:30".

    Raises:
        ValueError: it is no time of day.
    """
    hour, minutes = _split(minute_of_day)
    return f"{hour:02}:{minutes:02}"


def read_back_time(minute_of_day: Decimal) -> str:
    """A time that was heard, for a yes or a no: "I have fourteen thirty, one four three zero. Is that right?".

    Raises:
        ValueError: it is no time of day.
    """
    return i_have_time(say_time(minute_of_day), say_time_by_digits(minute_of_day))


def _split(minute_of_day: Decimal) -> tuple[int, int]:
    if not minute_of_day.is_finite() or minute_of_day % 1 or not 0 <= minute_of_day < DAY:
        raise ValueError(f"{minute_of_day} is no time of day")
    return divmod(int(minute_of_day), HOUR)
