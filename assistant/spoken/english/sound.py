"""How English numbers are said in several ways, and how their words are taken for each other."""

from collections.abc import Iterator
from decimal import Decimal

from assistant.dosing.twins import TWINS
from assistant.spoken.confusion import Confusion
from assistant.spoken.english.numbers import AND, HUNDRED, ONES, POINT, TENS, THOUSAND, cardinal

_TEENS = {cardinal(teen): cardinal(ten) for teen, ten in TWINS.items()}
_TEENS |= {ten: teen for teen, ten in _TEENS.items()}
_ONE_TENS = {ONES[i]: TENS[i - 2] for i in range(4, 10)}
_ONE_TENS |= {ten: one for one, ten in _ONE_TENS.items()}
_SLURRED = frozenset({"four", "six", "seven", "eight", "nine"})
""" "nine eighty" runs together to "ninety"; "three eighty" does not."""


def wordings(value: Decimal, said: str, digits: str) -> Iterator[str]:
    """The ways to say a number: with and without "and", with "a" for "one", as a pair, digit by digit.

    Sounds of thinking, parts of one and doubles are left out.

    Args:
        value: the number.
        said: how it is said as a number.
        digits: how it is said digit by digit.
    """
    whole, _, fraction = said.partition(f" {POINT} ")
    ways = [whole, " ".join(word for word in whole.split() if word != AND)]
    ways += [f"a {way.removeprefix('one ')}" for way in list(ways) if way.startswith(f"one {HUNDRED}")]
    ways += [f"a {way.removeprefix('one ')}" for way in list(ways) if way.startswith(f"one {THOUSAND}")]
    number = int(value)
    if 110 <= number <= 999 and number % 100 >= 10:
        ways.append(f"{ONES[number // 100]} {cardinal(number % 100)}")
    if 1100 <= number <= 9999 and number % 1000 >= 100 and (number // 100 % 10 or number < 2000):
        hundreds, rest = f"{cardinal(number // 100)} {HUNDRED}", cardinal(number % 100)
        ways += [hundreds] if number % 100 == 0 else [f"{hundreds} {AND} {rest}", f"{hundreds} {rest}"]
    tail = f" {POINT} {fraction}" if fraction else ""
    yield from (way + tail for way in ways)
    yield digits
    if ONES[0] in digits.split()[1:] and not digits.startswith(ONES[0]):
        yield digits.replace(f" {ONES[0]}", " oh")
    if number == 0 and fraction:
        yield f"{POINT} {fraction}"


def changes(words: tuple[str, ...]) -> Iterator[tuple[tuple[str, ...], Confusion]]:
    """What may be heard for the words of a number."""
    for at, word in enumerate(words):
        before, after = words[:at], words[at + 1 :]
        if word in _TEENS:
            yield (*before, _TEENS[word], *after), Confusion.TEEN_TY
        if word in _ONE_TENS and not after:
            yield (*before, _ONE_TENS[word], *after), Confusion.ONE_TEN
        if word == "five":
            yield (*before, "nine", *after), Confusion.FIVE_NINE
        if word == "nine":
            yield (*before, "five", *after), Confusion.FIVE_NINE
        if word == HUNDRED:
            yield tuple(w for w in (*before, *after) if w != AND), Confusion.HUNDRED_LOST
        if word in ("one", "a") and after and after[0] in (HUNDRED, THOUSAND) and not at:
            yield ("eight", *after), Confusion.EIGHT_A
        if word == "eight" and after and after[0] in (HUNDRED, THOUSAND) and not at:
            yield ("a", *after), Confusion.EIGHT_A
    if words == ("two",):
        yield ("ten",), Confusion.TWO_TEN
    if words == ("ten",):
        yield ("two",), Confusion.TWO_TEN
    if len(words) == 2 and words[0] in _SLURRED and words[1] == "eighty":
        yield (_ONE_TENS[words[0]],), Confusion.PAIR
    if len(words) == 1 and words[0] in _ONE_TENS and _ONE_TENS[words[0]] in _SLURRED:
        yield (_ONE_TENS[words[0]], "eighty"), Confusion.PAIR
