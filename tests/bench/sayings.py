"""What is said on the hearing bench: numbers, commands, and speech that is not for the assistant."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from decimal import Decimal
from random import Random

from assistant import spoken
from assistant.spoken.expect import AnyExpected, ConfirmExpected, Expect, NumberExpected
from assistant.spoken.meaning import Answer

UNITS = {
    "mL/h": ("millilitres per hour", "mils an hour", "milliliters an hour"),
    "mL": ("millilitres", "mils"),
    "min": ("minutes",),
    "mg": ("milligrams",),
}
ONES = [spoken.say_number(Decimal(n)) for n in range(20)]
TENS = ["-", "-", *(spoken.say_number(Decimal(10 * n)) for n in range(2, 10))]
VALUES = [
    *range(2, 21),
    *range(30, 100, 10),
    *(25, 42, 63, 75, 83, 105, 110, 115, 118, 125, 130, 150, 167, 175, 180, 208, 213, 217, 240, 250, 280, 333),
    *(350, 417, 450, 500, 550, 600, 715, 750, 800, 900, 918, 950, 980, 1000, 1200, 1500, 2000, 2400),
    *("0.5", "1.5", "2.5", "4.2", "12.5", "20.8", "31.3", "62.5", "83.3", "166.7", "41.7", "13.3", "33.3", "15.5"),
]
OUTSIDE = (
    "did you see the match last night",
    "could somebody open the window please",
    "I think she is still in the other room",
    "the bus leaves at ten fifteen from the station",
    "my shift starts at seven in the morning",
    "we need more towels over here",
    "there were fifty people at the party",
    "hold this for me would you",
    "let me show you how my sister does it",
    "what time is lunch today",
    "he said that he would be here by now",
    "this one looks a bit different from the last one",
    "it costs twenty five pounds a month",
    "have a look at the second page",
    "I have never been to the coast",
    "the weather is nice today",
    "turn the radio down a little",
    "she has two brothers and one dog",
    "yesterday we had to wait for an hour",
    "put it on the table next to the door",
    "is anybody sitting here",
    "that is not what I meant at all",
    "my phone number ends in four seven",
    "okay everybody gather round",
    "thanks",
    "hello",
    "table",
    "window",
    "really",
    "maybe",
    "excuse me",
    "oh my goodness",
)


@dataclass(frozen=True)
class Saying:
    """Words with what they mean.

    Attributes:
        words: as they are spoken.
        kind: "number", "digits" (a number digit by digit, where only that is taken), "command" or "outside".
        expect: the frame.
        right: the number, or the meaning's value as text; None for speech from outside.
    """

    words: str
    kind: str
    expect: Expect
    right: Decimal | str | None

    @property
    def frame(self) -> str:
        """The frame, as `checkoff hear` takes it."""
        match self.expect:
            case NumberExpected(unit=unit, digits_only=digits_only):
                return f"{'digits' if digits_only else 'number'} {unit}"
            case ConfirmExpected():
                return "confirm"
            case _:
                return "any"


def cardinal(value: int, joint: str = " and ") -> str:
    """A whole number in words below a million."""
    if value < 20:
        return ONES[value]
    if value < 100:
        return TENS[value // 10] + (f" {ONES[value % 10]}" if value % 10 else "")
    for size, name in ((1000, "thousand"), (100, "hundred")):
        if value >= size:
            rest = value % size
            glue = joint if rest < 100 else " "
            return f"{cardinal(value // size, joint)} {name}" + (f"{glue}{cardinal(rest, joint)}" if rest else "")
    raise AssertionError(value)


def one_by_one(value: str) -> str:
    """A number digit by digit; `value` is decimal text."""
    return " ".join("point" if sign == "." else ONES[int(sign)] for sign in value)


def ways(value: str) -> list[str]:
    """How people say a number, from the plainest on; `value` is decimal text."""
    whole, _, part = value.partition(".")
    if part:
        return [f"{cardinal(int(whole))} point {one_by_one(part)}", one_by_one(value)]
    found = [cardinal(int(whole))]
    if int(whole) > 20:
        found.append(one_by_one(whole))
    if int(whole) > 100 and int(whole) % 100:
        found.append(cardinal(int(whole), " "))
    if 100 < int(whole) < 1000 and int(whole) % 100 >= 10:
        found.append(f"{ONES[int(whole) // 100]} {cardinal(int(whole) % 100)}")
    return found


def numbers() -> Iterator[Saying]:
    """Every way of saying each number, with and without a unit."""
    return _said(map(str, VALUES))


def more_numbers() -> Iterator[Saying]:
    """Further numbers, the same in every run, for choosing limits."""
    chance = Random(5)  # noqa: S311 - no secret
    whole = [*chance.sample(range(21, 1000), 70), *chance.sample(range(1000, 3000, 25), 10), *range(1, 21)]
    return _said([*map(str, whole), *(f"{chance.randrange(200)}.{chance.randrange(1, 10)}" for _ in range(35))])


def _said(values: Iterable[str]) -> Iterator[Saying]:
    for index, value in enumerate(values):
        for way_index, way in enumerate(ways(value)):
            unit = tuple(UNITS)[(index + way_index) % len(UNITS)]
            tail = UNITS[unit][index % len(UNITS[unit])] if (index + way_index) % 3 else ""
            yield Saying(f"{way} {tail}".strip(), "number", NumberExpected(unit), Decimal(value))


def spelled(saying: Saying) -> Saying:
    """What is said when the digits of this number are asked for."""
    if not isinstance(saying.expect, NumberExpected) or not isinstance(saying.right, Decimal):
        raise TypeError(f'"{saying.words}" is no number')
    expect = NumberExpected(saying.expect.unit, digits_only=True)
    return Saying(one_by_one(f"{saying.right:f}"), "digits", expect, saying.right)


def commands() -> Iterator[Saying]:
    """Every phrase that means something by itself, where a yes or a no is expected."""
    confirm = ConfirmExpected()
    for phrase in spoken.phrases(confirm):
        meaning = spoken.interpret(phrase, confirm)
        if isinstance(meaning, Answer):
            yield Saying(phrase, "command", confirm, str(meaning.value))


FRAMES: tuple[Expect, ...] = (ConfirmExpected(), NumberExpected("mL/h"), NumberExpected("min"), AnyExpected())


def outside() -> Iterator[Saying]:
    """Speech that is not for the assistant."""
    for number, words in enumerate(OUTSIDE):
        yield Saying(words, "outside", FRAMES[number % len(FRAMES)], None)
