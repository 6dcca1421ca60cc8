"""The units that the trade uses: an allow-list with exact factors, spellings and UCUM codes.

How a unit is said stands with the language (`assistant.spoken.english.units`); a test holds that each can be said.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction


@dataclass(frozen=True)
class SimpleUnit:
    """One unit without a denominator.

    Attributes:
        name: as the trade prints it; "mcg" and "units" written out, as ISMP's list of error-prone
            abbreviations asks.
        dimension: what it measures.
        factor: how many of the dimension's base unit (g, mL, h, gtt, units, mmol, mEq, cm) it is; exact.
        ucum: code in the Unified Code for Units of Measure, for data that leaves the program.
        spellings: other ways that people write it; matched exactly as given.
    """

    name: str
    dimension: str
    factor: Fraction
    ucum: str
    spellings: tuple[str, ...] = ()


def _words(*pairs: str) -> tuple[str, ...]:
    """Each word as given and with a capital, plus all in capitals."""
    return tuple(form for word in pairs for form in (word, word.capitalize(), word.upper()))


_TABLE = (
    SimpleUnit("ng", "mass", Fraction(1, 10**9), "ng", _words("nanogram", "nanograms")),
    SimpleUnit(
        "mcg",
        "mass",
        Fraction(1, 10**6),
        "ug",
        # The micro sign and the Greek letter look alike; both are read, neither is ever printed.
        ("\u00b5g", "\u03bcg", "ug", "MCG", *_words("microgram", "micrograms")),
    ),
    # "Mg" is left out on purpose: megagram to one reader, magnesium to another.
    SimpleUnit(
        "mg",
        "mass",
        Fraction(1, 1000),
        "mg",
        ("MG", *_words("milligram", "milligrams")),
    ),
    SimpleUnit("g", "mass", Fraction(1), "g", ("gm", *_words("gram", "grams"))),
    SimpleUnit(
        "kg",
        "mass",
        Fraction(1000),
        "kg",
        ("KG", "kgs", *_words("kilogram", "kilograms", "kilo", "kilos")),
    ),
    # NIST Special Publication 811, Appendix B: 1 lb = 0.453 592 37 kg, exact.
    SimpleUnit(
        "lb",
        "mass",
        Fraction("453.59237"),
        "[lb_av]",
        ("lbs", "LB", "LBS", *_words("pound", "pounds")),
    ),
    SimpleUnit(
        "mL",
        "volume",
        Fraction(1),
        "mL",
        ("ml", "ML", "mls", "mLs", *_words("millilitre", "millilitres", "milliliter", "milliliters")),
    ),
    SimpleUnit(
        "L",
        "volume",
        Fraction(1000),
        "L",
        ("l", *_words("litre", "litres", "liter", "liters")),
    ),
    SimpleUnit(
        "s",
        "time",
        Fraction(1, 3600),
        "s",
        ("sec", "secs", *_words("second", "seconds")),
    ),
    SimpleUnit(
        "min",
        "time",
        Fraction(1, 60),
        "min",
        ("mins", "MIN", *_words("minute", "minutes")),
    ),
    SimpleUnit(
        "h",
        "time",
        Fraction(1),
        "h",
        ("hr", "hrs", "H", "HR", "HRS", *_words("hour", "hours")),
    ),
    SimpleUnit("days", "time", Fraction(24), "d", ("day", "Day", "Days", "DAY", "DAYS")),
    # UCUM's own drop, [drp], is 1/20 mL; a set's drop is counted, and 10 to 60 of them make a mL.
    SimpleUnit("gtt", "drops", Fraction(1), "{drop}", ("gtts", "GTT", *_words("drop", "drops"))),
    SimpleUnit(
        "units",
        "activity",
        Fraction(1),
        "[IU]",
        ("unit", "Unit", "Units", "UNIT", "UNITS", "international units"),
    ),
    SimpleUnit(
        "milliunits",
        "activity",
        Fraction(1, 1000),
        "m[IU]",
        ("milliunit", "Milliunit", "Milliunits"),
    ),
    SimpleUnit("mmol", "amount", Fraction(1), "mmol", _words("millimole", "millimoles")),
    SimpleUnit("mol", "amount", Fraction(1000), "mol", _words("mole", "moles")),
    SimpleUnit(
        "mEq",
        "equivalents",
        Fraction(1),
        "meq",
        ("meq", "MEQ", "mEqs", *_words("milliequivalent", "milliequivalents")),
    ),
    SimpleUnit(
        "Eq",
        "equivalents",
        Fraction(1000),
        "eq",
        _words("equivalent", "equivalents"),
    ),
    SimpleUnit(
        "mm",
        "length",
        Fraction(1, 10),
        "mm",
        _words("millimetre", "millimetres"),
    ),
    SimpleUnit(
        "cm",
        "length",
        Fraction(1),
        "cm",
        ("CM", *_words("centimetre", "centimetres")),
    ),
    SimpleUnit("m", "length", Fraction(100), "m", _words("metre", "metres", "meter", "meters")),
    # NIST Special Publication 811, Appendix B: 1 in = 2.54 cm and 1 ft = 30.48 cm, exact.
    SimpleUnit("in", "length", Fraction("2.54"), "[in_i]", _words("inch", "inches")),
    SimpleUnit("ft", "length", Fraction("30.48"), "[ft_i]", _words("foot", "feet")),
    SimpleUnit(
        "m\u00b2",
        "area",
        Fraction(1),
        "m2",
        ("m2", "m^2", "sq m", "square metre", "square metres"),
    ),
    SimpleUnit("%", "percent", Fraction(1), "%", ("percent", "per cent")),
    SimpleUnit("dose", "doses", Fraction(1), "{dose}", ("doses",)),
    # Household measures have a different size in every kitchen and textbook, so each is a dimension of its
    # own: it becomes millilitres only by a factor that the question states.
    SimpleUnit(
        "fl oz",
        "fluid ounces",
        Fraction(1),
        "[foz_us]",
        ("oz", "fluid ounce", "fluid ounces"),
    ),
    SimpleUnit("tsp", "teaspoons", Fraction(1), "[tsp_us]", _words("teaspoon", "teaspoons")),
    SimpleUnit(
        "tbsp",
        "tablespoons",
        Fraction(1),
        "[tbs_us]",
        _words("tablespoon", "tablespoons"),
    ),
    SimpleUnit("cup", "cups", Fraction(1), "[cup_us]", ("cups",)),
    SimpleUnit("pint", "pints", Fraction(1), "[pt_us]", ("pints", "pt")),
    SimpleUnit("quart", "quarts", Fraction(1), "[qt_us]", ("quarts", "qt")),
    # Grains are 60, 64.8 or 65 mg by textbook; "gr" is easily taken for gram and is no spelling of either.
    SimpleUnit("grain", "grains", Fraction(1), "[gr]", ("grains",)),
)

SQUARE_METRE = "m\u00b2"

SIMPLE_UNITS: Mapping[str, SimpleUnit] = {unit.name: unit for unit in _TABLE}
"""The allow-list by printed name."""

SPELLINGS: Mapping[str, str] = {spelling: unit.name for unit in _TABLE for spelling in (unit.name, *unit.spellings)}

ERROR_PRONE: Mapping[str, str] = {
    # ISMP List of Error-Prone Abbreviations, Symbols, and Dose Designations (from memory).
    "U": "units",
    "u": "units",
    "IU": "units",
    "iu": "units",
    "mU": "milliunits",
    "cc": "mL",
    "CC": "mL",
    "Mg": "mg",
    "Kg": "kg",
    "gr": "g",
}
