"""A number with its unit: how it is read, how it is printed."""

import re
from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction

from assistant.dosing import units
from assistant.errors import QuantityError
from assistant.text import quoted

_HIGHEST_EXPONENT = 12
_LOWEST_EXPONENT = -12
_LONGEST_TEXT = 80
_THOUSANDS = 3
"""Digits of a group between marks of thousands."""

_NUMBER = re.compile(r"(?P<sign>[-\u2212]?)(?P<whole>\d{1,3}(?:,\d{3})+|\d{1,15})?(?:\.(?P<part>\d{1,15}))?", re.ASCII)
_LEADING = re.compile(r"[-\u2212\d.,\u2009\u202f\u00a0]*", re.ASCII)
_FEET_AND_INCHES = re.compile(
    r"(?P<feet>\d)\s*(?:ft|foot|feet|')\s*(?:and\s+)?(?P<inches>\d{1,2}(?:\.\d)?)\s*(?:in|inch|inches|\")", re.ASCII
)
_POUNDS_AND_OUNCES = re.compile(
    r"(?P<pounds>\d{1,3})\s*(?:lb|lbs|pound|pounds)\s*(?:and\s+)?(?P<ounces>\d{1,2}(?:\.\d)?)\s*(?:oz|ounce|ounces)",
    re.ASCII,
)
_HOURS_AND_MINUTES = re.compile(
    r"(?P<hours>\d{1,4})\s*(?:h|hr|hrs|hour|hours)\s*(?:and\s+)?(?P<minutes>\d{1,2})\s*(?:min|mins|minute|minutes)",
    re.ASCII,
)
_TWO_UNITS = tuple(
    re.compile(rf"(?:{pattern.pattern})(?![A-Za-z\d/])", re.ASCII)
    for pattern in (_HOURS_AND_MINUTES, _FEET_AND_INCHES, _POUNDS_AND_OUNCES)
)
_PARTED = re.compile(r"(?P<whole>\d{1,3}(?: \d{3})+)(?P<rest>(?:\.\d+)?(?!\d).*)", re.ASCII)
_FRACTION = re.compile(
    r"(?:(?P<whole>\d{1,4})\s*)?(?P<top>\d{1,3})\s*/\s*(?P<bottom>\d{1,3})(?!\d)\s*(?P<rest>.*)", re.ASCII
)
_WRITTEN_FRACTIONS = {"\u00bd": " 1/2", "\u00bc": " 1/4", "\u00be": " 3/4"}
_RATIO = re.compile(r"\d+\s*:\s*\d.*", re.ASCII)
_LETTER = re.compile(r"(?P<before>\d*)(?P<letter>[OolISB])(?P<after>\d[\d.,]*|(?=\s|[.]\d))", re.ASCII)


@dataclass(frozen=True)
class Amount:
    """A quantity: a finite decimal number with its unit.

    Attributes:
        value: never a float.
        unit: canonical unit, as the trade prints it; other spellings are turned into it.

    Raises:
        QuantityError: the number is not finite or beyond all clinical size, or the unit is unknown.
    """

    value: Decimal
    unit: str

    def __post_init__(self) -> None:
        if not isinstance(self.value, Decimal):
            raise TypeError(f"an amount's value is a Decimal, not {type(self.value).__name__}")
        check_size(self.value)
        object.__setattr__(self, "unit", units.unit(self.unit).name)

    @property
    def ratio(self) -> Fraction:
        """The value as an exact ratio."""
        return Fraction(self.value)

    def in_unit(self, wanted: str) -> Fraction:
        """The same quantity in another unit, exact.

        Raises:
            QuantityError: the unit measures something else.
        """
        return units.convert(Fraction(self.value), self.unit, units.unit(wanted).name)

    def __str__(self) -> str:
        return show(self)


def check_size(value: Decimal) -> None:
    """Refuse what no clinical quantity can be.

    Raises:
        QuantityError: not a number, infinite, or beyond 10^12 or below 10^-12.
    """
    if not value.is_finite():
        raise QuantityError("A number was expected, but it is not finite.", "Write the number in digits.")
    exponent = value.as_tuple().exponent
    if value and (value.adjusted() > _HIGHEST_EXPONENT or value.adjusted() < _LOWEST_EXPONENT):
        raise QuantityError(
            "The number is beyond any clinical size.",
            "Look at the decimal point and the unit, and write it again.",
        )
    if isinstance(exponent, int) and (exponent < -60 or exponent > _HIGHEST_EXPONENT):
        raise QuantityError("The number has too many digits.", "Write it with fewer digits.")


def parse_number(text: str) -> Decimal:
    """Read a number that can be read in one way only: ``1,000``, ``83.3``, ``0.5``; a comma only between thousands.

    What the trade calls error-prone is refused with the right way to write it: no zero before the point (``.5``), a
    zero at the end of the decimals (``5.0``), and what is a thousand in one country and one in another (``1.000``,
    ``0,125``). Source: ISMP List of Error-Prone Abbreviations, Symbols, and Dose Designations (from memory).

    Raises:
        QuantityError: anything else, a decimal comma among it.
    """
    bare = text.strip()
    # Narrow spaces are how SI style separates thousands; an ordinary space could part two numbers.
    for space in ("\u2009", "\u202f", "\u00a0"):
        bare = bare.replace(space, "," if "," not in bare else space)
    match = _NUMBER.fullmatch(bare)
    if match is None or (match["whole"] is None and match["part"] is None):
        raise QuantityError(
            f"Expected a number, got {quoted(text)}.",
            "Write it in digits, with a point before decimals and commas only between thousands.",
        )
    _refuse_two_readings(text, match["whole"], match["part"])
    whole = (match["whole"] or "0").replace(",", "")
    sign = "-" if match["sign"] else ""
    value = Decimal(f"{sign}{whole}.{match['part'] or '0'}")
    return Decimal(f"{normal(value):f}")


def _refuse_two_readings(text: str, whole: str | None, part: str | None) -> None:
    """Refuse a number that is easily read as another one.

    Raises:
        QuantityError: it is one of them.
    """
    bare = (part or "").rstrip("0")
    small = f"{(whole or '0').replace(',', '')}{'.' if bare else ''}{bare}"
    if whole is not None and "," in whole and whole.startswith("0"):
        smaller = f"0.{whole.partition(',')[2].replace(',', '').rstrip('0') or '0'}"
        raise QuantityError(
            f"{quoted(text)} may be {smaller} or {show_number(Decimal(whole.replace(',', '')))}.",
            "Write a point before decimals, and no zero before thousands.",
        )
    if whole is None:
        raise QuantityError(f"{quoted(text)} has no zero before its point.", f"Write 0.{part}.")
    if part is not None and part.endswith("0"):
        if len(part) == _THOUSANDS and len(whole) <= _THOUSANDS and whole.strip("0") and "," not in whole:
            raise QuantityError(
                f"{quoted(text)} may be {small} or {show_number(Decimal(whole + part))}.",
                f"Write {small}, or {show_number(Decimal(whole + part))}.",
            )
        raise QuantityError(f"{quoted(text)} has a zero too many at its end.", f"Write {show_number(Decimal(small))}.")


def parse_amount(text: str) -> Amount:
    """Read a quantity as people write it: ``1,000 mL``, ``12 h``, ``1 h 30 min``, ``5 mcg/kg/min``.

    Raises:
        QuantityError: no number, no unit, an unknown unit, or a number beyond clinical size.
    """
    bare = text.strip()
    if len(bare) > _LONGEST_TEXT:
        raise QuantityError("An amount was expected, but the text is too long.", 'Write it like "100 mL".')
    if (both := _in_two_units(bare)) is not None:
        return both
    _refuse_ways_of_writing(bare)
    split = _LEADING.match(bare)
    number = split.group(0) if split else ""
    rest = bare[len(number) :].strip()
    number = number.strip()
    if not number:
        raise QuantityError(
            f"Expected a number with its unit, got {quoted(bare)}.",
            'Write it like "100 mL".',
        )
    value = parse_number(number)
    if not rest:
        raise QuantityError(f"{show_number(value)} came without a unit.", 'Write the unit too, like "100 mL".')
    return Amount(value, rest)


def _refuse_ways_of_writing(text: str) -> None:
    """Refuse what is no number in digits, with the right way to write it.

    Raises:
        QuantityError: it is one of these ways.
    """
    spelled = text
    for sign, fraction in _WRITTEN_FRACTIONS.items():
        spelled = spelled.replace(sign, fraction)
    spelled = spelled.strip()
    if (parted := _PARTED.fullmatch(spelled)) is not None:
        raise QuantityError(
            f"{quoted(text)} may be two numbers.", f"Write {parted['whole'].replace(' ', ',')}{parted['rest']}."
        )
    if (part := _FRACTION.fullmatch(spelled)) is not None:
        whole, top, bottom = (int(part[name] or 0) for name in ("whole", "top", "bottom"))
        value = Fraction(top, bottom) + whole if bottom else None
        ends = value is not None and 10_000 % value.denominator == 0
        decimals = show_number(Decimal(value.numerator) / Decimal(value.denominator)) if value and ends else ""
        raise QuantityError(
            f"{quoted(text)} is written with a fraction.",
            f"Write {decimals} {part['rest']}".rstrip() + "." if decimals else "Write it in decimals, such as 0.5.",
        )
    if _RATIO.fullmatch(text) is not None:
        raise QuantityError(
            f"{quoted(text)} is a ratio and no amount.", "A strength may be a ratio, written like 1:10,000."
        )
    if (letter := _LETTER.match(text)) is not None and (letter["before"] or letter["after"]):
        digit = {"O": "0", "o": "0", "l": "1", "I": "1", "S": "5", "B": "8"}[letter["letter"]]
        raise QuantityError(
            f"{quoted(text)} has the letter {letter['letter']} among its digits.", f"Write {digit} if that is meant."
        )


def _in_two_units(text: str) -> Amount | None:
    """``1 h 30 min``, ``5 ft 6 in`` and ``7 lb 8 oz`` in the smaller unit, or in pounds; None for anything else.

    Source for 16 ounces to the pound: NIST Handbook 44, Appendix C (from memory).
    """
    if (time := _HOURS_AND_MINUTES.fullmatch(text)) is not None:
        _below(60, "Minutes beside hours", time["minutes"], "Write the time in minutes alone.")
        return Amount(Decimal(60 * int(time["hours"]) + int(time["minutes"])), "min")
    if (height := _FEET_AND_INCHES.fullmatch(text)) is not None:
        _below(12, "Inches beside feet", height["inches"], "Write the height in inches alone.")
        return Amount(12 * Decimal(height["feet"]) + Decimal(height["inches"]), "in")
    if (weight := _POUNDS_AND_OUNCES.fullmatch(text)) is not None:
        _below(16, "Ounces beside pounds", weight["ounces"], "Write the weight in pounds alone.")
        return Amount(Decimal(weight["pounds"]) + Decimal(weight["ounces"]) / 16, "lb")
    return None


def two_units(line: str, at: int) -> int | None:
    """Where an amount in two units, such as ``1 h 30 min``, ends that begins there in a line; None for none."""
    for pattern in _TWO_UNITS:
        found = pattern.match(line, at)
        if found is not None:
            return found.end()
    return None


def _below(limit: int, what: str, came: str, remedy: str) -> None:
    if Decimal(came) >= limit:
        raise QuantityError(f"{what} go up to {limit - 1}, but {came} came.", remedy)


def normal(value: Decimal) -> Decimal:
    """The same number without trailing zeros and without an exponent."""
    if not value:
        return Decimal(0)
    text = f"{value:f}"
    if "." in text:
        text = text.rstrip("0").rstrip(".")
    return Decimal(text)


def show_number(value: Decimal) -> str:
    """Print a number: leading zero, no trailing zero, thousands separated, never an exponent.

    Source: ISMP, List of Error-Prone Abbreviations, Symbols, and Dose Designations (from memory).
    """
    return f"{normal(value):,f}"


def show(amount: Amount) -> str:
    """Print an amount: ``83.3 mL/h``, ``1,000 mL``, ``1 unit``; a space between number and unit.

    Sources: ISMP dose designations as in `show_number`; the space: NIST Special Publication 811, section 7.2
    (both from memory).
    """
    return shown(amount.value, amount.unit)


def shown(value: Decimal, name: str) -> str:
    """Print a number with the printed name of its unit, as `show` does."""
    if value == 1 and name in ("units", "milliunits", "days"):
        name = name[:-1]
    elif value != 1 and name == "dose":
        name = "doses"
    return f"{show_number(value)} {name}"
