"""Which numbers sound alike: a model of confusions, made of the words in which numbers are said.

A confusion is one change to one way of saying a number ("nine eighty", "nine hundred and eighty", "nine eight
zero") after which the words are still a number. The kinds are those that were measured on recognisers with
human and synthetic speech, and those of published reports: 15 heard as 50 (Pennsylvania Patient Safety
Authority advisory, June 2006; ISMP newsletter, 24 January 2001) and 2 heard as 10 (the same newsletter).
"""

from collections.abc import Iterator
from dataclasses import dataclass
from decimal import Decimal
from functools import lru_cache

from assistant.dosing.amount import normal
from assistant.spoken.confusion import NEARLY_THE_SAME, Confusion
from assistant.spoken.grammar import Parse
from assistant.spoken.said import Said
from assistant.spoken.saying import Saying
from assistant.spoken.tables import Numbers


@dataclass(frozen=True)
class Neighbour:
    """A number that sounds like another one, and why."""

    value: Decimal
    kind: Confusion


class SoundAlikes:
    """The numbers that sound alike in a language.

    Args:
        numbers: how its numbers are said, and taken for each other.
        saying: says them.

    Attributes:
        confusions: see `_confusions`.
    """

    def __init__(self, numbers: Numbers, saying: Saying) -> None:
        self._numbers = numbers
        self._saying = saying
        self.confusions = lru_cache(maxsize=4096)(self._confusions)
        self._value_of = lru_cache(maxsize=4096)(self._find_value)

    def wordings(self, value: Decimal) -> tuple[str, ...]:
        """The ways in which a number is said, each of which means this number and no other.

        125: "one hundred and twenty five", "one hundred twenty five", "a hundred and twenty five",
        "one twenty five", "one two five". Sounds of thinking, parts of one and doubles are left out.

        Raises:
            ValueError: the number cannot be said.
        """
        ways = self._numbers.wordings(value, self._saying.say_number(value), self._saying.say_digits(value))
        return tuple(way for way in dict.fromkeys(ways) if self._value_of(tuple(way.split())) == normal(value))

    def _confusions(
        self, value: Decimal, lowest: Decimal = Decimal(0), highest: Decimal = Decimal(9999)
    ) -> tuple[Neighbour, ...]:
        """Every number in the range that this one may be heard as, or that may be heard as this one.

        Args:
            value: the number; it has no neighbours where it cannot be said.
            lowest: the lower end of the range, included.
            highest: the upper end of the range, included.

        Returns:
            Neighbours by value; one that sounds alike in several ways is there once for each.
        """
        value = normal(value)
        found: dict[tuple[Decimal, Confusion], None] = {}
        for other, kind in (*self._by_words(value), *_by_digits(value)):
            if other != value and lowest <= other <= highest:
                found[other, kind] = None
        return tuple(Neighbour(other, kind) for other, kind in sorted(found))

    def neighbours(
        self, value: Decimal, unit: str, lowest: Decimal = Decimal(0), highest: Decimal = Decimal(9999)
    ) -> tuple[Decimal, ...]:
        """The numbers in the range that sound like this one, in order.

        Args:
            value: the number.
            unit: its unit; every unit leaves numbers as they sound.
            lowest: the lower end of the range, included.
            highest: the upper end of the range, included.
        """
        return tuple(dict.fromkeys(neighbour.value for neighbour in self.confusions(value, lowest, highest)))

    def wants_digits(
        self, value: Decimal, unit: str, lowest: Decimal = Decimal(0), highest: Decimal = Decimal(9999)
    ) -> bool:
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
        return any(neighbour.kind in NEARLY_THE_SAME for neighbour in self.confusions(value, lowest, highest))

    def possible(
        self, value: Decimal, lowest: Decimal = Decimal(0), highest: Decimal = Decimal(9999)
    ) -> tuple[Decimal, ...]:
        """What a number that was heard may have been, where its digits are asked for (`wants_digits`): itself first.

        Args:
            value: the number that was heard.
            lowest: the least number that could be said.
            highest: the highest number that could be said.
        """
        near = NEARLY_THE_SAME if value == value.to_integral_value() else {Confusion.POINT_LOST}
        found = (one.value for one in self.confusions(value, lowest, highest) if one.kind in near)
        return tuple(dict.fromkeys((value, *found)))

    def pair_to_offer(
        self, value: Decimal, lowest: Decimal = Decimal(0), highest: Decimal = Decimal(9999)
    ) -> tuple[Decimal, Decimal] | None:
        """A number that was heard and the one other that is nearly the same, the smaller first; else None.

        The order tells nothing of which was heard. A decimal is never offered: it is its point that is doubted.

        Args:
            value: the number that was heard.
            lowest: the least number that could be said.
            highest: the highest number that could be said.
        """
        if value != value.to_integral_value():
            return None
        _, *near = self.possible(value, lowest, highest)
        if len(near) != 1:
            return None
        (other,) = near
        return min(value, other), max(value, other)

    def _find_value(self, words: tuple[str, ...]) -> Decimal | None:
        """The one number that words mean; None for none and for several."""
        values = {said.value for said in Parse(words).whole(self._numbers.number) if isinstance(said, Said)}
        return values.pop() if len(values) == 1 else None

    def _by_words(self, value: Decimal) -> Iterator[tuple[Decimal, Confusion]]:
        """Numbers that come of one word changed."""
        for way in self.wordings(value):
            for changed, kind in self._numbers.changes(tuple(way.split())):
                other = self._value_of(changed)
                if other is not None:
                    yield other, kind


def _by_digits(value: Decimal) -> Iterator[tuple[Decimal, Confusion]]:
    """Numbers that come of a digit, a point or a "hundred" that got lost, and those that lose them to this one."""
    text = f"{value:f}"
    whole, point, fraction = text.partition(".")
    if point:
        yield Decimal(whole + fraction), Confusion.POINT_LOST
    elif len(text) > 2 and text[-1] != "0":
        # Only "eight three three" can be "eight three point three" with its point lost.
        yield normal(value / 10), Confusion.POINT_LOST
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
