"""A time of day that is shown, said by the 24-hour clock."""

from decimal import Decimal

from assistant.spoken.english.numbers import HUNDRED, ONES
from assistant.spoken.english.times import DAY, HALF_DAY, HOUR, HOURS
from assistant.spoken.saying import say_number


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


def _split(minute_of_day: Decimal) -> tuple[int, int]:
    if not minute_of_day.is_finite() or minute_of_day % 1 or not 0 <= minute_of_day < DAY:
        raise ValueError(f"{minute_of_day} is no time of day")
    return divmod(int(minute_of_day), HOUR)
