"""The units as English says and writes them."""

from assistant.spoken.tables import SpokenUnit

UNITS = (
    SpokenUnit(
        "mL",
        "volume",
        "millilitre",
        "millilitres",
        (
            "mils",
            "mil",
            "ml",
            "mls",
            "milliliters",
            "milliliter",
            "mills",
            "mill",
            "m l",
            "cc",
            "ccs",
            "c c",
            "cubic centimetres",
            "cubic centimeters",
            "cubic centimetre",
            "cubic centimeter",
            "milli litres",
            "milli liters",
            "milli litre",
            "milli liter",
        ),
    ),
    SpokenUnit("L", "volume", "litre", "litres", ("liters", "liter", "l")),
    SpokenUnit("h", "time", "hour", "hours", ("hr", "hrs", "h")),
    SpokenUnit("min", "time", "minute", "minutes", ("min", "mins")),
    SpokenUnit("s", "time", "second", "seconds", ("sec", "secs", "s")),
    SpokenUnit("days", "time", "day", "days", ()),
    SpokenUnit("mg", "mass", "milligram", "milligrams", ("mg", "mgs", "m g", "milli grams", "milli gram")),
    SpokenUnit("g", "mass", "gram", "grams", ("g", "gm", "gms")),
    SpokenUnit("mcg", "mass", "microgram", "micrograms", ("mcg", "mcgs", "ug", "micro grams", "micro gram")),
    SpokenUnit("ng", "mass", "nanogram", "nanograms", ("ng",)),
    SpokenUnit("kg", "mass", "kilogram", "kilograms", ("kg", "kgs", "kilo", "kilos", "k g")),
    SpokenUnit("lb", "mass", "pound", "pounds", ("lb", "lbs")),
    SpokenUnit("units", "activity", "unit", "units", ("international units", "international unit")),
    SpokenUnit("milliunits", "activity", "milliunit", "milliunits", ("milli units", "milli unit")),
    SpokenUnit("mmol", "amount", "millimole", "millimoles", ("mmol", "mmols", "milli moles")),
    SpokenUnit(
        "mEq",
        "equivalents",
        "milliequivalent",
        "milliequivalents",
        ("meq", "meqs", "milli equivalents", "milli equivalent"),
    ),
    SpokenUnit("gtt", "drops", "drop", "drops", ("gtt", "gtts")),
    SpokenUnit("%", "percent", "percent", "percent", ("%", "per cent")),
    SpokenUnit("cm", "length", "centimetre", "centimetres", ("cm", "centimeters", "centimeter")),
    SpokenUnit("dose", "doses", "dose", "doses", ()),
)
"""The units that may be said. No "u", "iu" or "mu": ISMP's list of error-prone abbreviations (from memory)."""

ONLY_SAID: dict[str, tuple[str, str]] = {
    "mm": ("millimetre", "millimetres"),
    "m": ("metre", "metres"),
    "m\u00b2": ("square metre", "square metres"),
    "in": ("inch", "inches"),
    "ft": ("foot", "feet"),
    "mol": ("mole", "moles"),
    "Eq": ("equivalent", "equivalents"),
    "fl oz": ("fluid ounce", "fluid ounces"),
    "tsp": ("teaspoon", "teaspoons"),
    "tbsp": ("tablespoon", "tablespoons"),
    "cup": ("cup", "cups"),
    "pint": ("pint", "pints"),
    "quart": ("quart", "quarts"),
    "grain": ("grain", "grains"),
    "m2": ("square metre", "square metres"),
    "kPa": ("kilopascal", "kilopascals"),
    "mmHg": ("millimetre of mercury", "millimetres of mercury"),
    "d": ("day", "days"),
    "day": ("day", "days"),
    "unit": ("unit", "units"),
    "milliunit": ("milliunit", "milliunits"),
}
"""Units that the working of a sum names, and nobody is asked for: one of it, and many."""

PER = "per"
"""What the assistant says for the line."""

JOINS = (PER, "an", "a", "each", "every", "/")
"""What joins a unit and its denominator: "mils an hour"."""

EVERY = {"hourly": "h", "daily": "days"}
"""One word for "per hour" and its like."""

DENOMINATORS = ("h", "min", "s", "days", "kg", "mL", "L", "dose")
"""Names of the units that may stand below the line."""

ABBREVIATED = frozenset(
    {"ml", "mls", "hr", "hrs", "min", "mins", "sec", "secs", "mg", "mgs", "gm", "gms", "mcg", "mcgs"}
    | {"ug", "ng", "kg", "kgs", "lb", "lbs", "mmol", "mmols", "meq", "meqs", "gtt", "gtts", "cm", "mill"}
    | {"mills", "milli", "micro"}
)
"""Forms that are written and not said, or that recognisers alone write."""

NEVER_SHOWN = frozenset({"mill", "mills", "milli", "micro"})
"""Those of them that nobody writes for others to read, and that are words, too."""

SAID_ALONE = frozenset(
    {"mL", "mg", "mcg", "ng", "kg", "lb", "gtt", "mol", "mmol", "Eq", "mEq", "mm", "cm", "ft", "m\u00b2", "m2"}
    | {"fl oz", "tsp", "tbsp", "kPa", "mmHg", "ml", "mls", "hr", "hrs", "mins", "secs", "kgs", "lbs", "gtts"}
)
"""Units that are spoken without a number too, as every one with a line is; none is a word or an initial."""

WORDS = ("in", "cup", "pint", "quart", "grain", "days", "day")
"""Words, and no abbreviations: spoken as they stand, but below a line they are units too."""


def further_per(below: str) -> tuple[str, ...]:
    """What people say beside "per": "mils an hour", "drops a minute"."""
    return ("an" if below[0] in "aeiouh" else "a",)
