"""Text as it is shown, turned into what is spoken: no figure, sign or abbreviation is left to the voice."""

import re
from collections.abc import Iterable, Mapping
from decimal import Decimal, InvalidOperation
from functools import lru_cache
from types import MappingProxyType

from assistant.spoken.saying import Saying
from assistant.spoken.tables import Shown, Units

_NUMBER = r"\d{1,3}(?:,\d{3})+(?:\.\d+)?|\d+(?:\.\d+)?"
_RATIO = re.compile(r"(?<![\w.,:])1:(?=\d{3,}|\d{1,3},\d{3})")
_RANGE = re.compile(rf"(?<![\w.,-])(?P<low>{_NUMBER})\s?[-\u2013]\s?(?P<high>{_NUMBER})(?![\w-])")
_VERSION = re.compile(r"(?<![\w.,])\d+(?:\.\d+){2,}(?![\w])")
_CLOCK = re.compile(r"(?<![\d:.])(?P<hour>[01]?\d|2[0-3]):(?P<minute>[0-5]\d)(?![\d:])")
_CODE = re.compile(r"\b(?=[A-Za-z-]*\d)(?=[\d-]*[A-Za-z])[A-Za-z0-9-]+\b")
_NUMBER_ALONE = re.compile(rf"(?<![\w.,])(?:{_NUMBER})(?![\w])")
_LONG_DIGITS = re.compile(r"\d+")


class Aloud:
    """What a voice says for a text that is shown.

    Args:
        shown: what is said for signs and short forms.
        units: what is said for units.
        saying: says numbers.
    """

    def __init__(self, shown: Shown, units: Units, saying: Saying) -> None:
        self._shown = shown
        self._units = units
        self._saying = saying
        self._names = _names(units)
        below = _any_of(self._names)
        unit = _any_of(name for name in self._names if name not in units.words)
        one_unit = rf"(?:(?:{below})(?:/(?:{below}))+|(?:{unit}))(?![A-Za-z0-9%\u00b2])"
        unit_text = rf"{one_unit}(?: {re.escape(units.per)} {one_unit})?"
        self._per_amount = re.compile(
            rf"(?P<above>(?<![A-Za-z])(?:{below}))/(?=(?:{_NUMBER})[ \u00a0]?(?:{below})(?![A-Za-z0-9]))"
        )
        self._fraction = re.compile(
            r"(?<![\w./,])(?:(?P<whole>\d+)(?:[ \u00a0]|(?=[^\d/])))?"
            rf"(?P<part>{'|'.join(map(re.escape, shown.fractions)) or '(?!)'})(?![\w/]|[.,]\d)"
            rf"(?:[ \u00a0]?(?P<unit>{unit_text}))?"
        )
        self._amount = re.compile(rf"(?<![\w.,])(?P<number>{_NUMBER})[ \u00a0]?(?P<unit>{unit_text})")
        self._unit_alone = re.compile(rf"(?<![\w/])(?P<unit>{unit_text})")
        self._line = re.compile(rf"/| {re.escape(units.per)} ")
        # The lines of a procedure come again and again.
        self._spoken = lru_cache(maxsize=1024)(self._turned)

    def speech(self, text: str, short_forms: Mapping[str, str] = MappingProxyType({})) -> str:
        """What is spoken for a text: "83.3 mL/h" is "eighty three point three millilitres per hour".

        Args:
            text: authored or made; marks at the end of sentences stay for the voice to pause at.
            short_forms: an author's own abbreviations, each with the words that are spoken for it.
        """
        return self._spoken(text, tuple(short_forms.items()))

    def _turned(self, text: str, short_forms: tuple[tuple[str, str], ...]) -> str:
        spoken = text
        for short, full in short_forms:
            spoken = re.sub(rf"(?<!\w){re.escape(short)}(?!\w)", full.replace("\\", r"\\"), spoken)
        for pattern, words in self._shown.abbreviations:
            spoken = pattern.sub(words, spoken)
        spoken = _VERSION.sub(lambda m: self._saying.spelled(m[0]), spoken)
        if self._shown.year is not None:
            year, say_year = self._shown.year
            spoken = year.sub(say_year, spoken)
        spoken = _RANGE.sub(self._say_range, spoken)
        spoken = _RATIO.sub(f"{self._shown.one_in} ", spoken)
        spoken = self._fraction.sub(self._say_fraction, spoken)
        spoken = _CLOCK.sub(lambda m: self._shown.clock(m["hour"], m["minute"]), spoken)
        spoken = self._per_amount.sub(rf"\g<above> {self._units.per} ", spoken)
        spoken = self._amount.sub(self._say_amount, spoken)
        spoken = _CODE.sub(self._say_code, spoken)
        spoken = _NUMBER_ALONE.sub(lambda m: self._say_number(m[0]), spoken)
        spoken = _LONG_DIGITS.sub(lambda m: f" {self._saying.spelled(m[0])} ", spoken)
        spoken = self._unit_alone.sub(self._say_unit_alone, spoken)
        for sign, words in self._shown.between:
            spoken = sign.sub(words, spoken)
        for sign_text, words in self._shown.signs.items():
            spoken = spoken.replace(sign_text, f" {words} ")
        spoken = " ".join(spoken.split())
        return re.sub(r"\s+([.,;:!?])", r"\1", spoken)

    def _say_number(self, text: str) -> str:
        """A number in figures, in words; one that nobody says as a number, digit by digit."""
        bare = text.replace(",", "")
        if len(bare) > 1 and bare[0] == "0" and "." not in bare:
            return self._saying.spelled(bare)
        try:
            return self._saying.say_number(Decimal(bare))
        except (ValueError, InvalidOperation):
            return self._saying.spelled(bare)

    def _say_fraction(self, match: re.Match[str]) -> str:
        """A part of one, with its whole number and its unit: "three quarters of a litre", "2 and a half hours"."""
        part, unit = self._shown.fractions[match["part"]], match["unit"]
        if match["whole"]:
            return f"{self._shown.mixed(match['whole'], part)} {self._said(unit, plural=True) if unit else ''}".rstrip()
        return self._shown.of_one(part, self._said(unit, plural=False)) if unit else part

    def _say_amount(self, match: re.Match[str]) -> str:
        number = match["number"].replace(",", "")
        # "a 10 mL syringe" is a ten millilitre syringe.
        article = self._shown.article
        describes = article is not None and article.search(match.string[: match.start()]) is not None
        return f"{match['number']} {self._said(match['unit'], plural=Decimal(number) != 1 and not describes)}"

    def _say_range(self, match: re.Match[str]) -> str:
        low, high = match["low"], match["high"]
        # "40-7719" is a number that somebody bears, not a range.
        digits, more = (len(figures.replace(",", "")) for figures in (low, high))
        if more > digits + 1 or digits > more:
            return self._saying.spelled((low + high).replace(",", ""))
        return f"{low} {self._shown.to} {high}"

    def _say_unit_alone(self, match: re.Match[str]) -> str:
        # A single letter may be an initial; only units that cannot be words or letters are spoken alone.
        per = self._units.per
        first, _, _ = match["unit"].partition(f" {per} ")
        if "/" not in first and first not in self._units.said_alone:
            return match["unit"]
        return self._said(match["unit"], plural=not match.string[: match.start()].endswith(f"{per} "))

    def _say_code(self, match: re.Match[str]) -> str:
        """A code such as OH-101: letters by themselves, figures digit by digit. "m2" is a unit."""
        if match[0] in self._units.said_alone:
            return self._said(match[0], plural=True)
        parts = re.findall(r"[A-Za-z]+|\d+", match[0])
        return " ".join(
            self._saying.spelled(p) if p.isdecimal() else (" ".join(p) if len(p) <= 3 and p.isupper() else p)
            for p in parts
        )

    def _said(self, unit: str, plural: bool) -> str:
        above, *below = self._line.split(unit)
        said = [self._names[above][plural], *(self._names[part][0] for part in below)]
        return f" {self._units.per} ".join(said)


def _names(units: Units) -> dict[str, tuple[str, str]]:
    """What is said for one of a unit and for many, by each way to show it."""
    names = {unit.name: (unit.one, unit.many) for unit in units.units} | dict(units.only_said)
    shown = units.abbreviated - units.never_shown
    return names | {form: names[unit.name] for unit in units.units for form in unit.forms if form in shown}


def _any_of(names: Iterable[str]) -> str:
    """Any of these names, as a regular expression: the longest one that fits."""
    return "|".join(sorted(map(re.escape, names), key=len, reverse=True))
