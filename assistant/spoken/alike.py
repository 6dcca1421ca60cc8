"""Which numbers sound alike: a model of confusions, made of the words in which numbers are said.

A confusion is one change to one way of saying a number ("nine eighty", "nine hundred and eighty", "nine eight
zero") after which the words are still a number. The kinds are those that were measured on recognisers with
human and synthetic speech, and those of published reports: 15 heard as 50 (Pennsylvania Patient Safety
Authority advisory, June 2006; ISMP newsletter, 24 January 2001) and 2 heard as 10 (the same newsletter).
"""

from collections.abc import Iterator
from dataclasses import dataclass
from decimal import Decimal
from enum import StrEnum
from functools import lru_cache

from assistant.dosing.twins import TWINS
from assistant.spoken.english.numbers import (
    AND,
    HUNDRED,
    NUMBER,
    ONES,
    POINT,
    TEENS,
    TENS,
    THOUSAND,
    Said,
    plain,
)
from assistant.spoken.grammar import Parse
from assistant.spoken.saying import say_digits, say_number


class Confusion(StrEnum):
    """How two numbers come to sound alike."""

    TEEN_TY = "teen for ty"  # 15 and 50, 115 and 150, 980 and 918
    ONE_TEN = "six for sixty"  # 6 and 60, 106 and 160
    PAIR = "pair for ten"  # 980 ("nine eighty") and 90
    EIGHT_A = "a for eight"  # 800 and 100
    HUNDRED_LOST = "hundred lost"  # 200 and 2, 205 and 25
    POINT_LOST = "point lost"  # 83.3 and 833
    DIGIT_LOST = "digit lost"  # 117 and 11, 28 and 8
    FIVE_NINE = "five for nine"  # 5 and 9, 125 and 129
    TWO_TEN = "two for ten"  # 2 and 10


NEARLY_THE_SAME = frozenset({Confusion.TEEN_TY, Confusion.PAIR, Confusion.TWO_TEN})
"""Kinds so common, or so often told of, that a number which has such a neighbour is taken only digit by digit."""


@dataclass(frozen=True)
class Neighbour:
    """A number that sounds like another one, and why."""

    value: Decimal
    kind: Confusion


_TEENS: dict[str, str] = {}
for _teen, _ten in TWINS.items():
    _TEENS[TEENS[_teen - 10]] = TENS[_ten // 10 - 2]
    _TEENS[TENS[_ten // 10 - 2]] = TEENS[_teen - 10]
_ONE_TENS = {ONES[i]: TENS[i - 2] for i in range(4, 10)}
_ONE_TENS |= {ten: one for one, ten in _ONE_TENS.items()}
_SLURRED = frozenset({"four", "six", "seven", "eight", "nine"})
""" "nine eighty" runs together to "ninety"; "three eighty" does not."""


def wordings(value: Decimal) -> tuple[str, ...]:
    """The ways in which a number is said, each of which means this number and no other.

    125: "one hundred and twenty five", "one hundred twenty five", "a hundred and twenty five",
    "one twenty five", "one two five". Sounds of thinking, parts of one and doubles are left out.

    Raises:
        ValueError: the number cannot be said.
    """
    cardinal = say_number(value)
    whole, _, fraction = cardinal.partition(f" {POINT} ")
    ways = [whole, " ".join(word for word in whole.split() if word != AND)]
    ways += [f"a {way.removeprefix('one ')}" for way in list(ways) if way.startswith(f"one {HUNDRED}")]
    ways += [f"a {way.removeprefix('one ')}" for way in list(ways) if way.startswith(f"one {THOUSAND}")]
    number = int(value)
    if 110 <= number <= 999 and number % 100 >= 10:
        ways.append(f"{ONES[number // 100]} {say_number(Decimal(number % 100))}")
    if 1100 <= number <= 9999 and number % 1000 >= 100 and (number // 100 % 10 or number < 2000):
        hundreds = f"{say_number(Decimal(number // 100))} {HUNDRED}"
        rest = say_number(Decimal(number % 100))
        ways += [hundreds] if number % 100 == 0 else [f"{hundreds} {AND} {rest}", f"{hundreds} {rest}"]
    tail = f" {POINT} {fraction}" if fraction else ""
    ways = [way + tail for way in ways]
    digits = say_digits(value)
    ways.append(digits)
    if "zero" in digits.split()[1:] and not digits.startswith("zero"):
        ways.append(digits.replace(" zero", " oh"))
    if number == 0 and fraction:
        ways.append(f"{POINT} {fraction}")
    return tuple(dict.fromkeys(way for way in ways if _value_of(tuple(way.split())) == plain(value)))


@lru_cache(maxsize=4096)
def confusions(value: Decimal, lowest: Decimal = Decimal(0), highest: Decimal = Decimal(9999)) -> tuple[Neighbour, ...]:
    """Every number in the range that this one may be heard as, or that may be heard as this one.

    Args:
        value: the number; it has no neighbours where it cannot be said.
        lowest: the lower end of the range, included.
        highest: the upper end of the range, included.

    Returns:
        Neighbours by value; one that sounds alike in several ways is there once for each.
    """
    value = plain(value)
    found: dict[tuple[Decimal, Confusion], None] = {}
    for other, kind in (*_by_words(value), *_by_digits(value)):
        if other != value and lowest <= other <= highest:
            found[other, kind] = None
    return tuple(Neighbour(other, kind) for other, kind in sorted(found))


def neighbours(
    value: Decimal, unit: str, lowest: Decimal = Decimal(0), highest: Decimal = Decimal(9999)
) -> tuple[Decimal, ...]:
    """The numbers in the range that sound like this one, in order.

    Args:
        value: the number.
        unit: its unit; every unit leaves numbers as they sound.
        lowest: the lower end of the range, included.
        highest: the upper end of the range, included.
    """
    return tuple(dict.fromkeys(neighbour.value for neighbour in confusions(value, lowest, highest)))


def wants_digits(value: Decimal, unit: str, lowest: Decimal = Decimal(0), highest: Decimal = Decimal(9999)) -> bool:
    """Whether a number that was heard should be asked for digit by digit before it is read back.

    So it is where a neighbour is nearly the same, and for every decimal: recognisers write points that nobody
    said ("one twenty five" as 1.25). The other confusions are left to the read-back.

    Args:
        value: the number.
        unit: its unit; every unit leaves numbers as they sound.
        lowest: the least number that could be said.
        highest: the highest number that could be said.
    """
    if value != value.to_integral_value():
        return True
    return any(neighbour.kind in NEARLY_THE_SAME for neighbour in confusions(value, lowest, highest))


def possible(value: Decimal, lowest: Decimal = Decimal(0), highest: Decimal = Decimal(9999)) -> tuple[Decimal, ...]:
    """What a number that was heard may have been, where its digits are asked for (`wants_digits`): itself first.

    Args:
        value: the number that was heard.
        lowest: the least number that could be said.
        highest: the highest number that could be said.
    """
    near = NEARLY_THE_SAME if value == value.to_integral_value() else {Confusion.POINT_LOST}
    found = (one.value for one in confusions(value, lowest, highest) if one.kind in near)
    return tuple(dict.fromkeys((value, *found)))


def pair_to_offer(
    value: Decimal, lowest: Decimal = Decimal(0), highest: Decimal = Decimal(9999)
) -> tuple[Decimal, Decimal] | None:
    """A number that was heard and the one other that is nearly the same, the smaller first; None for several or none.

    The order tells nothing of which was heard. A decimal is never offered: it is its point that is doubted.

    Args:
        value: the number that was heard.
        lowest: the least number that could be said.
        highest: the highest number that could be said.
    """
    if value != value.to_integral_value():
        return None
    _, *near = possible(value, lowest, highest)
    if len(near) != 1:
        return None
    (other,) = near
    return min(value, other), max(value, other)


@lru_cache(maxsize=4096)
def _value_of(words: tuple[str, ...]) -> Decimal | None:
    """The one number that words mean; None for none and for several."""
    values = {said.value for said in Parse(words).whole(NUMBER) if isinstance(said, Said)}
    return values.pop() if len(values) == 1 else None


def _by_words(value: Decimal) -> Iterator[tuple[Decimal, Confusion]]:
    """Numbers that come of one word changed."""
    for way in wordings(value):
        words = tuple(way.split())
        for changed, kind in _changes(words):
            other = _value_of(changed)
            if other is not None:
                yield other, kind


def _changes(words: tuple[str, ...]) -> Iterator[tuple[tuple[str, ...], Confusion]]:
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


def _by_digits(value: Decimal) -> Iterator[tuple[Decimal, Confusion]]:
    """Numbers that come of a digit, a point or a "hundred" that got lost, and those that lose them to this one."""
    text = f"{value:f}"
    whole, point, fraction = text.partition(".")
    if point:
        yield Decimal(whole + fraction), Confusion.POINT_LOST
    elif len(text) > 2 and text[-1] != "0":
        # Only "eight three three" can be "eight three point three" with its point lost.
        yield plain(value / 10), Confusion.POINT_LOST
    if not point:
        if len(text) == 1 and value:
            yield value * 100, Confusion.HUNDRED_LOST
        if len(text) == 2 and text[1] != "0":
            yield Decimal(f"{text[0]}0{text[1]}"), Confusion.HUNDRED_LOST
    digits = [c for c in text if c != "."]
    if not point and len(digits) > 1:
        for at in range(len(digits)):
            rest = digits[:at] + digits[at + 1 :]
            if rest[0] != "0":
                yield Decimal("".join(rest)), Confusion.DIGIT_LOST
    if not point and value and len(digits) < 4:
        for at in range(len(digits) + 1):
            for digit in "0123456789" if at else "123456789":
                yield Decimal("".join([*digits[:at], digit, *digits[at:]])), Confusion.DIGIT_LOST
