"""A whole number as English says it."""

from assistant.spoken.english.numbers import AND, HUNDRED, MILLION, ONES, TEENS, TENS, THOUSAND


def cardinal(number: int) -> str:
    """A whole number as a person says it: 125 is "one hundred and twenty five".

    Args:
        number: from 0 to 999,999,999.
    """
    if number < 1000:
        return _to_999(number)
    size, name = (1_000_000, MILLION) if number >= 1_000_000 else (1000, THOUSAND)
    count, rest = divmod(number, size)
    said = f"{_to_999(count)} {name}"
    if not rest:
        return said
    return f"{said} {AND} {_to_99(rest)}" if rest < 100 else f"{said} {cardinal(rest)}"


def _to_999(number: int) -> str:
    hundreds, rest = divmod(number, 100)
    if not hundreds:
        return _to_99(rest)
    said = f"{ONES[hundreds]} {HUNDRED}"
    return f"{said} {AND} {_to_99(rest)}" if rest else said


def _to_99(number: int) -> str:
    if number < 10:
        return ONES[number]
    if number < 20:
        return TEENS[number - 10]
    ten, one = divmod(number, 10)
    return TENS[ten - 2] + (f" {ONES[one]}" if one else "")
