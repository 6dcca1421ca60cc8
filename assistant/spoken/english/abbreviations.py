"""Signs and parts of one, in words."""

import re

TO = "to"
"""What stands for the dash in "20-30"."""

ONE_IN = "1 in"
"""What stands for "1:" in "1:1000"."""

BETWEEN: tuple[tuple[re.Pattern[str], str], ...] = (
    (re.compile(r" / "), " divided by "),
    (re.compile(r" x (?=[a-z])"), " times "),
    (re.compile(r" [-\u2212\u2013] (?=[a-z])"), " minus "),
)
"""Signs between two values, once their figures are words."""

SIGNS = {
    "\u00d7": "times",
    "\u00f7": "divided by",
    "=": "equals",
    "+": "plus",
    "\u2212": "minus",
    "\u2248": "is about",
    "\u2265": "at least",
    "\u2264": "at most",
    ">": "more than",
    "<": "less than",
    "&": "and",
    "\u00b1": "plus or minus",
    "%": "percent",
    "\u2192": "to",
    "\u00b0C": "degrees Celsius",
    "\u00b0F": "degrees Fahrenheit",
    "\u00b0": "degrees",
}
"""Signs, in words."""

FRACTIONS = {
    "1/2": "one half",
    "1/3": "one third",
    "2/3": "two thirds",
    "1/4": "one quarter",
    "3/4": "three quarters",
    "\u00bd": "one half",
    "\u00bc": "one quarter",
    "\u00be": "three quarters",
}
"""Parts of one, as they are written."""


def mixed(whole: str, part: str) -> str:
    """A whole number with a part: 2 and "one half" are "2 and a half"."""
    return f"{whole} and {part.replace('one ', 'a ')}"


def of_one(part: str, unit: str) -> str:
    """A part of one unit: "one half of a litre", "three quarters of an hour"."""
    return f"{part} of {'an' if unit.startswith('hour') else 'a'} {unit}"


ARTICLE = re.compile(r"\b[Aa]n? $")
"""Before "10 mL syringe": it is a ten millilitre syringe."""
