"""How English says numbers: the words, and the one written grammar of a number.

::

    number   = cardinal | pair | digits | decimal | mixed | part | figures
    cardinal = "zero" .. "ninety nine" | (1..9 | "a") "hundred" [["and"] 1..99] | ... "thousand" ... "million"
    pair     = 1..9 10..99                     "one twenty five" is 125, "nine eighty" is 980
             | 10..99 (10..99 | "oh" 1..9)     "twelve fifty" is 1,250 or 12.50: both readings
    digits   = ("zero" | "oh" | 1..9 | "double" digit) ...      "one two five", "one oh five"
             | "zero" digits                   "zero five" is 5, or 0.5 with its point lost: both readings
    decimal  = [cardinal | pair | digits] "point" (digits | 10..99 | 1..9 10..99)
    mixed    = cardinal "and" part             "two and a half"
    part     = "half" | "a quarter" | "three quarters" ...
    figures  = as written: "125", "1,000", "83.3", ".5"

Sound-alikes ("to", "too", "for", "fore", "won", "ate") are digits only after other digits or, for the last
two, before them, too; "to" and "for" before a number are also the small words that they look like: "for thirty" is
30 or 430. They never count as said digit by digit.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from decimal import Decimal

from assistant.dosing.amount import normal
from assistant.dosing.twins import are_twins
from assistant.spoken.figures import FIGURES, LONGEST_FRACTION, WHOLE_FIGURES
from assistant.spoken.grammar import Many, Opt, Rule, Word, Words, Written, alt, seq
from assistant.spoken.said import Said

ONES = ("zero", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine")
TEENS = (
    "ten",
    "eleven",
    "twelve",
    "thirteen",
    "fourteen",
    "fifteen",
    "sixteen",
    "seventeen",
    "eighteen",
    "nineteen",
)
TENS = ("twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety")
POINT = "point"
AND = "and"
HUNDRED, THOUSAND, MILLION = "hundred", "thousand", "million"

_ONE_TO_NINE: dict[str, int] = {word: i for i, word in enumerate(ONES) if i}
_TEENS: dict[str, int] = {word: 10 + i for i, word in enumerate(TEENS)}
_TENS: dict[str, int] = {word: 20 + 10 * i for i, word in enumerate(TENS)}

_LONGEST_ROW = 9

# Digits.


@dataclass(frozen=True)
class Digits:
    """Digits in a row.

    Attributes:
        text: the digits.
        one_by_one: each was said by itself, in a word that means a digit and nothing else.
        doubtful: a word among them is a digit only because it sounds like one.
    """

    text: str
    one_by_one: bool = True
    doubtful: bool = False


def _spelled(**digits: str) -> dict[str, Digits]:
    return {word: Digits(digit) for word, digit in digits.items()}


def _alike(**digits: str) -> dict[str, Digits]:
    return {word: Digits(digit, one_by_one=False, doubtful=True) for word, digit in digits.items()}


_DIGIT = Words(
    {word: Digits(str(i)) for i, word in enumerate(ONES)}
    | {str(i): Digits(str(i)) for i in range(10)}
    | _spelled(nought="0", niner="9")
)
_OH = Words(_spelled(oh="0", o="0"))
_LIKE_A_DIGIT = Words(_alike(ate="8", won="1"))
_LIKE_A_SMALL_WORD = Words(_alike(to="2", too="2", fore="4") | _alike(**{"for": "4"}))
SOUND_ALIKES = frozenset({"ate", "won", "to", "too", "for", "fore"})
"""Words that recognisers write for digits; nobody says them, so no vocabulary needs them."""

SMALL_WORDS = frozenset({"a", "and"})
"""Words of the grammar that show by themselves no number."""

_DOUBLE = seq(
    Words({"double": 2, "triple": 3, "treble": 3}),
    alt(_DIGIT, _OH),
    build=lambda times, digit: Digits(digit.text * times),
)
_EDGE = alt(_DIGIT, _OH, _DOUBLE, _LIKE_A_DIGIT)
_MIDDLE = alt(_DIGIT, _OH, _DOUBLE, _LIKE_A_DIGIT, _LIKE_A_SMALL_WORD)


def _joined(first: Digits, middle: tuple[Digits, ...] = (), last: Digits | None = None) -> Digits | None:
    """Digit after digit; None where they are more than any number here has."""
    row = [first, *middle, *([last] if last else [])]
    text = "".join(digits.text for digits in row)
    if len(text) > _LONGEST_ROW:
        return None
    return Digits(text, all(d.one_by_one for d in row), any(d.doubtful for d in row))


DIGITS = alt(
    seq(alt(_DIGIT, _DOUBLE), build=_joined),
    seq(_EDGE, Many(_MIDDLE, 0, _LONGEST_ROW - 2), _EDGE, build=_joined),
    # "one five to": at the end of three digits it can hardly be anything else.
    seq(_EDGE, Many(_MIDDLE, 1, _LONGEST_ROW - 2), _LIKE_A_SMALL_WORD, build=_joined),
)
"""Digits one by one; "oh" is one only beside others. Its meanings are `Digits`."""

_FRACTION_DIGITS = alt(
    seq(_EDGE, build=_joined),
    seq(_MIDDLE, Many(_MIDDLE, 0, LONGEST_FRACTION - 2), _EDGE, build=_joined),
)

# Cardinals.

_UNIT = alt(Words(dict(_ONE_TO_NINE)), Words({"ate": 8, "won": 1}))
_TWO_DIGITS = alt(
    Words(dict(_TEENS)),
    Words(dict(_TENS)),
    seq(Words(dict(_TENS)), Words(dict(_ONE_TO_NINE)), build=lambda ten, one: ten + one),
)
_TO_99 = alt(Words(dict(_ONE_TO_NINE)), _TWO_DIGITS)


def _small_figure(token: str) -> Iterator[int]:
    """A count in figures before "hundred", "thousand" or "million", as recognisers write it."""
    if token.isdigit() and len(token) <= 3 and token[0] != "0":
        yield int(token)


def _figure_to_99(token: str) -> Iterator[int]:
    if token.isdigit() and len(token) <= 2 and token[0] != "0":
        yield int(token)


_FIGURE_COUNT = Written("a count in figures", _small_figure)
_FIGURE_TO_99 = Written("a count below 100 in figures", _figure_to_99)
_A = Word("a", 1)
_TAIL_TO_99 = seq(Opt(Word(AND)), alt(_TO_99, _FIGURE_TO_99), build=lambda _, rest: rest)


def _hundreds(count: int, _: None, rest: int) -> int | None:
    """Hundreds with what follows; people say "twelve hundred", but not "twenty hundred"."""
    return 100 * count + rest if count < 10 or (count < 100 and count % 10) else None


_PLAIN_HUNDREDS = seq(
    alt(_UNIT, _FIGURE_COUNT),
    Word(HUNDRED),
    Opt(_TAIL_TO_99, 0),
    build=lambda count, _, rest: 100 * count + rest if count < 10 else None,
)
_HUNDREDS = seq(alt(_UNIT, _A, _FIGURE_COUNT, _TWO_DIGITS), Word(HUNDRED), Opt(_TAIL_TO_99, 0), build=_hundreds)
_TO_999 = alt(_TO_99, _HUNDREDS)
_THOUSANDS = seq(
    alt(_TO_999, _A, _FIGURE_COUNT),
    Word(THOUSAND),
    Opt(alt(_TAIL_TO_99, _PLAIN_HUNDREDS), 0),
    build=lambda count, _, rest: 1000 * count + rest if count < 1000 else None,
)
_MILLIONS = seq(
    alt(_TO_999, _A, _FIGURE_COUNT),
    Word(MILLION),
    Opt(alt(_TAIL_TO_99, _PLAIN_HUNDREDS, _THOUSANDS), 0),
    build=lambda count, _, rest: 1_000_000 * count + rest if count < 1000 else None,
)
_CARDINAL = alt(_TO_99, _HUNDREDS, _THOUSANDS, _MILLIONS)

# Pairs.

_SHORT_PAIR = seq(_UNIT, _TWO_DIGITS, build=lambda hundreds, rest: 100 * hundreds + rest)


def _is_pair(first: int, second: int) -> bool:
    """Whether two numbers in a row are one number: "twelve fifty", but not "fifty fifteen" or "ten ten"."""
    said_twice = first == second or are_twins(Decimal(first), Decimal(second))
    return not said_twice and (first == 10 or first % 10 != 0)


_OH_ONE = seq(alt(_OH, Word("zero")), Words(dict(_ONE_TO_NINE)), build=lambda _, one: one)
_LONG_PAIRS = (
    seq(
        _TWO_DIGITS,
        _TWO_DIGITS,
        build=lambda a, b: Said(Decimal(100 * a + b)) if _is_pair(a, b) else None,
    ),
    seq(
        _TWO_DIGITS,
        _TWO_DIGITS,
        build=lambda a, b: Said(a + Decimal(b) / 100) if _is_pair(a, b) else None,
    ),
    seq(_TWO_DIGITS, _OH_ONE, build=lambda a, b: Said(Decimal(100 * a + b))),
    seq(_TWO_DIGITS, _OH_ONE, build=lambda a, b: Said(a + Decimal(b) / 100)),
)

# Decimals.

_POINT = Words({POINT: None, "decimal": None, "dot": None, "decimal point": None})


def _whole_digits(digits: Digits) -> Said | None:
    """Digits before a point: no zero in front but a lone one."""
    if len(digits.text) > 1 and digits.text[0] == "0":
        return None
    return Said(Decimal(digits.text), digits=digits.one_by_one, doubtful=digits.doubtful)


_WHOLE = alt(
    seq(_CARDINAL, build=lambda value: Said(Decimal(value))),
    seq(_SHORT_PAIR, build=lambda value: Said(Decimal(value))),
    seq(alt(DIGITS, _OH), build=_whole_digits),
    WHOLE_FIGURES,
)


def _fraction_figures(token: str) -> Iterator[Digits]:
    if token.isdigit() and 1 < len(token) <= LONGEST_FRACTION:
        yield Digits(token, one_by_one=False)


_FRACTION = alt(
    _FRACTION_DIGITS,
    seq(alt(_TWO_DIGITS, _SHORT_PAIR), build=lambda value: Digits(str(value), one_by_one=False)),
    Written("decimals in figures", _fraction_figures),
)


def _decimal(whole: Said, _: None, fraction: Digits) -> Said | None:
    if len(fraction.text) > LONGEST_FRACTION:
        return None
    return Said(
        normal(Decimal(f"{whole.value:f}.{fraction.text}")),
        digits=whole.digits and fraction.one_by_one,
        figures=whole.figures,
        doubtful=whole.doubtful or fraction.doubtful,
    )


_DECIMAL = seq(_WHOLE, _POINT, _FRACTION, build=_decimal)
# "point five" may be the end of "two point five": it is taken, but not as said digit by digit.
_BARE_DECIMAL = seq(_POINT, _FRACTION, build=lambda _, fraction: _decimal(Said(Decimal(0)), None, fraction))

# Parts of one.

_PARTS: dict[str, Decimal] = {
    "half": Decimal("0.5"),
    "a half": Decimal("0.5"),
    "one half": Decimal("0.5"),
    "quarter": Decimal("0.25"),
    "a quarter": Decimal("0.25"),
    "one quarter": Decimal("0.25"),
    "three quarters": Decimal("0.75"),
}
PART = Words(dict(_PARTS))
"""A part of one: "a half"."""

_WRITTEN_PART = Words({"1/2": Decimal("0.5"), "1/4": Decimal("0.25"), "3/4": Decimal("0.75")})
_MIXED = seq(
    _WHOLE,
    Word(AND),
    PART,
    build=lambda whole, _, part: Said(whole.value + part, figures=whole.figures),
)
_WRITTEN_MIXED = seq(
    WHOLE_FIGURES,
    Opt(Word(AND)),
    _WRITTEN_PART,
    build=lambda whole, _, part: Said(whole.value + part, figures=True),
)

# The number.


def _digits_as_whole(digits: Digits) -> Said | None:
    """Nobody says nothing twice: "zero zero zero" is what remains of 2,000 when its beginning is lost."""
    if len(digits.text) > 1 and not int(digits.text):
        return None
    return Said(Decimal(int(digits.text)), digits=digits.one_by_one, doubtful=digits.doubtful)


def _digits_with_lost_point(digits: Digits) -> Said | None:
    """What "zero five" is if its point was lost: 0.5."""
    text = digits.text
    if len(text) < 2 or text[0] != "0" or not int(text):
        return None
    return Said(normal(Decimal(f"0.{text[1:]}")), digits=digits.one_by_one, doubtful=digits.doubtful)


_SMALL_WORD = Words({"to": "2", "too": "2", "for": "4", "fore": "4"})


def _small_word_as_digit(digit: str, rest: Said) -> Said | None:
    """What the number is if the small word was a digit: "for thirty" as 430, "to five" as 25."""
    value = rest.value
    if value != value.to_integral_value() or value >= 1000:
        return None
    return Said(Decimal(f"{digit}{value:f}"))


_PLAIN = alt(
    seq(_CARDINAL, build=lambda value: Said(Decimal(value))),
    seq(_SHORT_PAIR, build=lambda value: Said(Decimal(value))),
    *_LONG_PAIRS,
    seq(DIGITS, build=_digits_as_whole),
    seq(DIGITS, build=_digits_with_lost_point),
    _DECIMAL,
    _BARE_DECIMAL,
    seq(PART, build=lambda part: Said(part)),
    seq(_WRITTEN_PART, build=lambda part: Said(part, figures=True)),
    _MIXED,
    _WRITTEN_MIXED,
    FIGURES,
)
NUMBER: Rule = alt(
    _PLAIN,
    seq(_SMALL_WORD, _PLAIN, build=lambda _, rest: Said(rest.value)),
    seq(_SMALL_WORD, _PLAIN, build=_small_word_as_digit),
)
"""The grammar of a number; its meanings are `Said`."""

WHOLE_NUMBER: Rule = _WHOLE
"""A whole number; its meanings are `Said`."""


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


_ORDINALS = {
    "one": "first",
    "two": "second",
    "three": "third",
    "five": "fifth",
    "eight": "eighth",
    "nine": "ninth",
    "twelve": "twelfth",
}


def ordinal(number: int) -> str:
    """A place in a row as a person says it: 21 is "twenty first".

    Args:
        number: as for `cardinal`.
    """
    *before, last = cardinal(number).split()
    last = _ORDINALS.get(last) or (f"{last[:-1]}ieth" if last.endswith("y") else f"{last}th")
    return " ".join((*before, last))


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
