"""Text as it is shown, turned into what is spoken: no figure, sign or abbreviation is left to the voice."""

import re
from collections.abc import Mapping
from decimal import Decimal, InvalidOperation
from types import MappingProxyType

from assistant.spoken.english.abbreviations import (
    ABBREVIATIONS,
    BETWEEN,
    FRACTIONS,
    MONTHS,
    PER,
    RANGE,
    SIGNS,
    UNIT_ALONE,
    mixed,
    of_one,
)
from assistant.spoken.english.numbers import ONES
from assistant.spoken.english.times import HALF_DAY, HOUR
from assistant.spoken.english.units import ABBREVIATED, NEVER_SHOWN, ONLY_SAID, UNITS
from assistant.spoken.saying import say_number
from assistant.spoken.times import say_time

_NAMES = {unit.name: (unit.one, unit.many) for unit in UNITS} | ONLY_SAID
_NAMES |= {form: _NAMES[unit.name] for unit in UNITS for form in unit.forms if form in ABBREVIATED - NEVER_SHOWN}
_NAMES |= {"d": _NAMES["days"], "day": _NAMES["days"], "unit": _NAMES["units"], "milliunit": _NAMES["milliunits"]}
_NO_UNITS = ("in", "cup", "pint", "quart", "grain", "days", "day")
"""Words, and no abbreviations: spoken as they stand, but below a line they are units too."""
_BELOW = "|".join(sorted(map(re.escape, _NAMES), key=len, reverse=True))
_UNIT = "|".join(sorted((re.escape(name) for name in _NAMES if name not in _NO_UNITS), key=len, reverse=True))
_ONE_UNIT = rf"(?:(?:{_BELOW})(?:/(?:{_BELOW}))+|(?:{_UNIT}))(?![A-Za-z0-9%\u00b2])"
_UNIT_TEXT = rf"{_ONE_UNIT}(?: per {_ONE_UNIT})?"
_NUMBER = r"\d{1,3}(?:,\d{3})+(?:\.\d+)?|\d+(?:\.\d+)?"
_PER_AMOUNT = re.compile(
    rf"(?P<above>(?<![A-Za-z])(?:{_BELOW}))/(?=(?:{_NUMBER})[ \u00a0]?(?:{_BELOW})(?![A-Za-z0-9]))"
)
_FRACTION = re.compile(
    r"(?<![\w./,])(?:(?P<whole>\d+)(?:[ \u00a0]|(?=[^\d/])))?"
    rf"(?P<part>{'|'.join(map(re.escape, FRACTIONS))})(?![\w/]|[.,]\d)"
    rf"(?:[ \u00a0]?(?P<unit>{_UNIT_TEXT}))?"
)
_RATIO = re.compile(r"(?<![\w.,:])1:(?=\d{3,}|\d{1,3},\d{3})")
_INCHES = re.compile(r"(?<=\d) in(?= [=\u00d7\u00f7]|$)")
_AMOUNT = re.compile(rf"(?<![\w.,])(?P<number>{_NUMBER})[ \u00a0]?(?P<unit>{_UNIT_TEXT})")
_RANGE = re.compile(rf"(?<![\w.,-])(?P<low>{_NUMBER})\s?[-\u2013]\s?(?P<high>{_NUMBER})(?![\w-])")
_VERSION = re.compile(r"(?<![\w.,])\d+(?:\.\d+){2,}(?![\w])")
_YEAR = re.compile(rf"(?P<month>{MONTHS}) (?P<century>1[0-9]|20)(?P<rest>\d\d)(?!\d)")
_AFTER_ARTICLE = re.compile(r"\b[Aa]n? $")
_CLOCK = re.compile(r"(?<![\d:.])(?P<hour>[01]?\d|2[0-3]):(?P<minute>[0-5]\d)(?![\d:])")
_CODE = re.compile(r"\b(?=[A-Za-z-]*\d)(?=[\d-]*[A-Za-z])[A-Za-z0-9-]+\b")
_NUMBER_ALONE = re.compile(rf"(?<![\w.,])(?:{_NUMBER})(?![\w])")
_LONG_DIGITS = re.compile(r"\d+")
_UNIT_ALONE = re.compile(rf"(?<![\w/])(?P<unit>{_UNIT_TEXT})")


def speech(text: str, short_forms: Mapping[str, str] = MappingProxyType({})) -> str:
    """What is spoken for a text that is shown: "83.3 mL/h" is "eighty three point three millilitres per hour".

    Args:
        text: authored or made; marks at the end of sentences stay for the voice to pause at.
        short_forms: an author's own abbreviations, each with the words that are spoken for it.
    """
    spoken = text
    for short, full in short_forms.items():
        spoken = re.sub(rf"(?<!\w){re.escape(short)}(?!\w)", full.replace("\\", r"\\"), spoken)
    for pattern, words in ABBREVIATIONS:
        spoken = pattern.sub(words, spoken)
    spoken = _VERSION.sub(lambda m: _by_digits(m[0]), spoken)
    spoken = _YEAR.sub(_year, spoken)
    spoken = _RANGE.sub(_range, spoken)
    spoken = _RATIO.sub("1 in ", spoken)
    spoken = _FRACTION.sub(_fraction, spoken)
    spoken = _CLOCK.sub(_clock, spoken)
    spoken = _INCHES.sub(" inches", spoken)
    spoken = _PER_AMOUNT.sub(rf"\g<above> {PER} ", spoken)
    spoken = _AMOUNT.sub(_amount, spoken)
    spoken = _CODE.sub(_code, spoken)
    spoken = _NUMBER_ALONE.sub(lambda m: _number(m[0]), spoken)
    spoken = _LONG_DIGITS.sub(lambda m: f" {_by_digits(m[0])} ", spoken)
    spoken = _UNIT_ALONE.sub(_unit_alone, spoken)
    for sign, words in BETWEEN:
        spoken = sign.sub(words, spoken)
    for sign_text, words in SIGNS.items():
        spoken = spoken.replace(sign_text, f" {words} ")
    spoken = " ".join(spoken.split())
    return re.sub(r"\s+([.,;:!?])", r"\1", spoken)


def _number(text: str) -> str:
    """A number in figures, in words; one that nobody says as a number, digit by digit."""
    bare = text.replace(",", "")
    if len(bare) > 1 and bare[0] == "0" and "." not in bare:
        return _by_digits(bare)
    try:
        return say_number(Decimal(bare))
    except (ValueError, InvalidOperation):
        return _by_digits(bare)


def _fraction(match: re.Match[str]) -> str:
    """A part of one, with its whole number and its unit: "three quarters of a litre", "2 and a half hours"."""
    part, unit = FRACTIONS[match["part"]], match["unit"]
    if match["whole"]:
        return f"{mixed(match['whole'], part)} {_said_unit(unit, plural=True) if unit else ''}".rstrip()
    return of_one(part, _said_unit(unit, plural=False)) if unit else part


def _by_digits(text: str) -> str:
    return " ".join(ONES[int(c)] if c.isdecimal() else "point" for c in text if c != ",")


def _amount(match: re.Match[str]) -> str:
    number = match["number"].replace(",", "")
    # "a 10 mL syringe" is a ten millilitre syringe.
    describes = _AFTER_ARTICLE.search(match.string[: match.start()]) is not None
    return f"{match['number']} {_said_unit(match['unit'], plural=Decimal(number) != 1 and not describes)}"


def _range(match: re.Match[str]) -> str:
    low, high = match["low"], match["high"]
    # "40-7719" is a number that somebody bears, not a range.
    if len(high) > len(low) + 1 or len(low) > len(high):
        return _by_digits(low + high)
    return f"{low} {RANGE} {high}"


def _year(match: re.Match[str]) -> str:
    """A year after its month, in two halves: 1961 is "nineteen sixty one", 2001 "two thousand and one"."""
    century, rest = match["century"], match["rest"]
    if century == "20" and rest[0] == "0":
        return f"{match['month']} {say_number(Decimal(century + rest))}"
    last = "hundred" if rest == "00" else say_number(Decimal(rest))
    return f"{match['month']} {say_number(Decimal(century))} {'oh ' if '00' < rest < '10' else ''}{last}"


def _said_unit(text: str, plural: bool) -> str:
    above, *below = re.split("/| per ", text)
    return " per ".join([_NAMES[above][plural], *(_NAMES[part][0] for part in below)])


def _unit_alone(match: re.Match[str]) -> str:
    # A single letter may be an initial; only units that cannot be words or letters are spoken alone.
    first, _, _ = match["unit"].partition(" per ")
    if "/" not in first and first not in UNIT_ALONE:
        return match["unit"]
    return _said_unit(match["unit"], plural=not match.string[: match.start()].endswith(f"{PER} "))


def _clock(match: re.Match[str]) -> str:
    hour, minute = match["hour"], match["minute"]
    if hour[0] == "0" or int(hour) > HALF_DAY:
        return say_time(Decimal(HOUR * int(hour) + int(minute)))
    said = say_number(Decimal(hour))
    if minute == "00":
        return f"{said} o'clock"
    return f"{said} {_by_digits(minute) if minute[0] == '0' else say_number(Decimal(minute))}"


def _code(match: re.Match[str]) -> str:
    """A code such as OH-101: letters by themselves, figures digit by digit. "m2" is a unit."""
    if match[0] in UNIT_ALONE:
        return _said_unit(match[0], plural=True)
    parts = re.findall(r"[A-Za-z]+|\d+", match[0])
    said = [_by_digits(p) if p.isdecimal() else (" ".join(p) if len(p) <= 3 and p.isupper() else p) for p in parts]
    return " ".join(said)
