"""The units that the trade uses: an allow-list, with exact factors, spoken names and UCUM codes.

Text from people is matched against this list and nothing else. A general parser would read "5 units" as
micronits, "5 M" as molar and "5 Mg" as five megagrams.

Every factor is an exact ratio, because 1/60 has no end in decimals: a conversion never changes a result. A
library of units in decimals (pint) holds 1/60 to 28 digits, reads units by a grammar, and takes a third of a
second to load; so it is not used here, and the tests hold every factor against its definitions instead.
Body weight in a denominator (mcg/kg/min) is a dimension of its own, so that mg/kg does not cancel to a bare
number.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from functools import lru_cache

from assistant.dosing.outside import told
from assistant.errors import QuantityError

Signature = tuple[tuple[str, int], ...]
"""Dimensions with their powers, sorted by name: (("time", -1), ("volume", 1)) for mL/h."""


@dataclass(frozen=True)
class SimpleUnit:
    """One unit without a denominator.

    Attributes:
        name: as the trade prints it; "mcg" and "units" written out, as ISMP's list of error-prone
            abbreviations asks.
        dimension: what it measures.
        factor: how many of the dimension's base unit (g, mL, h, gtt, units, mmol, mEq, cm) it is; exact.
        one, many: spoken names, British spelling.
        ucum: code in the Unified Code for Units of Measure, for data that leaves the program.
        spellings: other ways that people write it; matched exactly as given.
    """

    name: str
    dimension: str
    factor: Fraction
    one: str
    many: str
    ucum: str
    spellings: tuple[str, ...] = ()


def _words(*pairs: str) -> tuple[str, ...]:
    """Each word as given and with a capital, plus all in capitals."""
    return tuple(form for word in pairs for form in (word, word.capitalize(), word.upper()))


_TABLE = (
    SimpleUnit("ng", "mass", Fraction(1, 10**9), "nanogram", "nanograms", "ng", _words("nanogram", "nanograms")),
    SimpleUnit(
        "mcg",
        "mass",
        Fraction(1, 10**6),
        "microgram",
        "micrograms",
        "ug",
        # The micro sign and the Greek letter look alike; both are read, neither is ever printed.
        ("\u00b5g", "\u03bcg", "ug", "MCG", *_words("microgram", "micrograms")),
    ),
    # "Mg" is left out on purpose: megagram to one reader, magnesium to another.
    SimpleUnit(
        "mg",
        "mass",
        Fraction(1, 1000),
        "milligram",
        "milligrams",
        "mg",
        ("MG", *_words("milligram", "milligrams")),
    ),
    SimpleUnit("g", "mass", Fraction(1), "gram", "grams", "g", ("gm", *_words("gram", "grams"))),
    SimpleUnit(
        "kg",
        "mass",
        Fraction(1000),
        "kilogram",
        "kilograms",
        "kg",
        ("KG", "kgs", *_words("kilogram", "kilograms", "kilo", "kilos")),
    ),
    # NIST Special Publication 811, Appendix B: 1 lb = 0.453 592 37 kg, exact.
    SimpleUnit(
        "lb",
        "mass",
        Fraction("453.59237"),
        "pound",
        "pounds",
        "[lb_av]",
        ("lbs", "LB", "LBS", *_words("pound", "pounds")),
    ),
    SimpleUnit(
        "mL",
        "volume",
        Fraction(1),
        "millilitre",
        "millilitres",
        "mL",
        ("ml", "ML", "mls", "mLs", *_words("millilitre", "millilitres", "milliliter", "milliliters")),
    ),
    SimpleUnit(
        "L",
        "volume",
        Fraction(1000),
        "litre",
        "litres",
        "L",
        ("l", *_words("litre", "litres", "liter", "liters")),
    ),
    SimpleUnit(
        "s",
        "time",
        Fraction(1, 3600),
        "second",
        "seconds",
        "s",
        ("sec", "secs", *_words("second", "seconds")),
    ),
    SimpleUnit(
        "min",
        "time",
        Fraction(1, 60),
        "minute",
        "minutes",
        "min",
        ("mins", "MIN", *_words("minute", "minutes")),
    ),
    SimpleUnit(
        "h",
        "time",
        Fraction(1),
        "hour",
        "hours",
        "h",
        ("hr", "hrs", "H", "HR", "HRS", *_words("hour", "hours")),
    ),
    SimpleUnit("days", "time", Fraction(24), "day", "days", "d", ("day", "Day", "Days", "DAY", "DAYS")),
    # UCUM's own drop, [drp], is 1/20 mL; a set's drop is counted, and 10 to 60 of them make a mL.
    SimpleUnit("gtt", "drops", Fraction(1), "drop", "drops", "{drop}", ("gtts", "GTT", *_words("drop", "drops"))),
    SimpleUnit(
        "units",
        "activity",
        Fraction(1),
        "unit",
        "units",
        "[IU]",
        ("unit", "Unit", "Units", "UNIT", "UNITS", "international units"),
    ),
    SimpleUnit(
        "milliunits",
        "activity",
        Fraction(1, 1000),
        "milliunit",
        "milliunits",
        "m[IU]",
        ("milliunit", "Milliunit", "Milliunits"),
    ),
    SimpleUnit("mmol", "amount", Fraction(1), "millimole", "millimoles", "mmol", _words("millimole", "millimoles")),
    SimpleUnit("mol", "amount", Fraction(1000), "mole", "moles", "mol", _words("mole", "moles")),
    SimpleUnit(
        "mEq",
        "equivalents",
        Fraction(1),
        "milliequivalent",
        "milliequivalents",
        "meq",
        ("meq", "MEQ", "mEqs", *_words("milliequivalent", "milliequivalents")),
    ),
    SimpleUnit(
        "Eq",
        "equivalents",
        Fraction(1000),
        "equivalent",
        "equivalents",
        "eq",
        _words("equivalent", "equivalents"),
    ),
    SimpleUnit(
        "mm",
        "length",
        Fraction(1, 10),
        "millimetre",
        "millimetres",
        "mm",
        _words("millimetre", "millimetres"),
    ),
    SimpleUnit(
        "cm",
        "length",
        Fraction(1),
        "centimetre",
        "centimetres",
        "cm",
        ("CM", *_words("centimetre", "centimetres")),
    ),
    SimpleUnit("m", "length", Fraction(100), "metre", "metres", "m", _words("metre", "metres", "meter", "meters")),
    # NIST Special Publication 811, Appendix B: 1 in = 2.54 cm, exact.
    SimpleUnit("in", "length", Fraction("2.54"), "inch", "inches", "[in_i]", _words("inch", "inches")),
    SimpleUnit(
        "m\u00b2",
        "area",
        Fraction(1),
        "square metre",
        "square metres",
        "m2",
        ("m2", "m^2", "sq m", "square metre", "square metres"),
    ),
    SimpleUnit("%", "percent", Fraction(1), "percent", "percent", "%", ("percent", "per cent")),
    SimpleUnit("dose", "doses", Fraction(1), "dose", "doses", "{dose}", ("doses",)),
    # Household measures have a different size in every kitchen and textbook, so each is a dimension of its
    # own: it becomes millilitres only by a factor that the question states.
    SimpleUnit(
        "fl oz",
        "fluid ounces",
        Fraction(1),
        "fluid ounce",
        "fluid ounces",
        "[foz_us]",
        ("oz", "fluid ounce", "fluid ounces"),
    ),
    SimpleUnit("tsp", "teaspoons", Fraction(1), "teaspoon", "teaspoons", "[tsp_us]", _words("teaspoon", "teaspoons")),
    SimpleUnit(
        "tbsp",
        "tablespoons",
        Fraction(1),
        "tablespoon",
        "tablespoons",
        "[tbs_us]",
        _words("tablespoon", "tablespoons"),
    ),
    SimpleUnit("cup", "cups", Fraction(1), "cup", "cups", "[cup_us]", ("cups",)),
    SimpleUnit("pint", "pints", Fraction(1), "pint", "pints", "[pt_us]", ("pints", "pt")),
    SimpleUnit("quart", "quarts", Fraction(1), "quart", "quarts", "[qt_us]", ("quarts", "qt")),
    # Grains are 60, 64.8 or 65 mg by textbook; "gr" is easily taken for gram and is no spelling of either.
    SimpleUnit("grain", "grains", Fraction(1), "grain", "grains", "[gr]", ("grains",)),
)

SQUARE_METRE = "m\u00b2"

SIMPLE_UNITS: Mapping[str, SimpleUnit] = {unit.name: unit for unit in _TABLE}
"""The allow-list by printed name."""

_SPELLINGS: Mapping[str, str] = {spelling: unit.name for unit in _TABLE for spelling in (unit.name, *unit.spellings)}

_ERROR_PRONE: Mapping[str, str] = {
    # ISMP List of Error-Prone Abbreviations, Symbols, and Dose Designations (from memory).
    "U": "units",
    "u": "units",
    "IU": "units",
    "iu": "units",
    "mU": "milliunits",
    "cc": "mL",
    "CC": "mL",
    "Mg": "mg",
    "gr": "g",
}

_BODY_WEIGHT = "body weight"
_HOUSEHOLD = ("fluid ounces", "teaspoons", "tablespoons", "cups", "pints", "quarts")
_DOSES = ("mass", "activity", "amount", "equivalents")

QUANTITIES: Mapping[str, tuple[Signature, ...]] = {
    "mass": ((("mass", 1),),),
    "dose": tuple(((d, 1),) for d in _DOSES),
    "volume": ((("volume", 1),),),
    "duration": ((("time", 1),),),
    "length": ((("length", 1),),),
    "area": ((("area", 1),),),
    "drops": ((("drops", 1),),),
    "percentage": ((("percent", 1),),),
    "household measure": tuple(((d, 1),) for d in (*_HOUSEHOLD, "grains")),
    "rate": ((("time", -1), ("volume", 1)),),
    "drop rate": ((("drops", 1), ("time", -1)),),
    "drop factor": ((("drops", 1), ("volume", -1)),),
    "concentration": tuple(tuple(sorted(((d, 1), ("volume", -1)))) for d in _DOSES),
    "dose rate": tuple(tuple(sorted(((d, 1), ("time", -1)))) for d in _DOSES),
    "dose per weight": tuple(tuple(sorted(((d, 1), (_BODY_WEIGHT, -1)))) for d in _DOSES)
    + tuple(tuple(sorted(((d, 1), (_BODY_WEIGHT, -1), ("doses", -1)))) for d in _DOSES),
    "dose rate per weight": tuple(tuple(sorted(((d, 1), (_BODY_WEIGHT, -1), ("time", -1)))) for d in _DOSES),
    "dose per area": tuple(tuple(sorted(((d, 1), ("area", -1)))) for d in _DOSES),
    "dose rate per area": tuple(tuple(sorted(((d, 1), ("area", -1), ("time", -1)))) for d in _DOSES),
    "dose per dose": tuple(tuple(sorted(((d, 1), ("doses", -1)))) for d in _DOSES),
    "volume per weight": ((("body weight", -1), ("volume", 1)),),
    "rate per weight": ((("body weight", -1), ("time", -1), ("volume", 1)),),
    "volume per dose": tuple(tuple(sorted(((d, -1), ("volume", 1)))) for d in _DOSES),
    "household factor": (
        *(tuple(sorted((("volume", 1), (d, -1)))) for d in _HOUSEHOLD),
        (("grains", -1), ("mass", 1)),
    ),
}
"""Every kind of quantity that the formulas know, with the dimensions it may have."""

_KIND_BY_SIGNATURE: Mapping[Signature, str] = {
    signature: kind for kind, signatures in reversed(list(QUANTITIES.items())) for signature in signatures
}


@dataclass(frozen=True)
class Unit:
    """A unit as formulas use it.

    Attributes:
        name: canonical, as the trade prints it: ``mcg/kg/min``.
        signature: dimensions with their powers.
        factor: exact factor to the base units (g, mL, h, gtt, units, mmol, mEq, cm; kg for body weight).
        kind: a key of `QUANTITIES`.
    """

    name: str
    signature: Signature
    factor: Fraction
    kind: str


def simple_unit(text: str) -> SimpleUnit:
    """The unit without a denominator that this text names.

    Raises:
        QuantityError: the text names none; the remedy offers the nearest known ones.
    """
    name = _SPELLINGS.get(" ".join(text.split()))
    if name is None:
        raise _unknown(text)
    return SIMPLE_UNITS[name]


@lru_cache(maxsize=1024)
def unit(text: str) -> Unit:
    """The unit that this text names, however people write it: ``ml/hr``, ``mcg/kg/min``, ``gtt per min``.

    Raises:
        QuantityError: a part is not on the list, or the parts make no quantity that the formulas know.
    """
    if len(text) > 60:
        raise QuantityError("A unit was expected, but the text is too long.", "Write a unit such as mL/h.")
    groups = [group.split("/") for group in text.replace(" \u00f7 ", "/").split(" per ")]
    powers: dict[str, int] = {}
    factor = Fraction(1)
    names: list[str] = []
    for place, group in enumerate(groups):
        sign = 1 if place == 0 else -1
        parts: list[str] = []
        for depth, part in enumerate(group):
            power = sign if depth == 0 else -sign
            found = simple_unit(part)
            dimension, size = found.dimension, found.factor
            if power < 0 and found.name in ("kg", "lb"):
                dimension, size = _BODY_WEIGHT, found.factor / 1000
            powers[dimension] = powers.get(dimension, 0) + power
            factor = factor * size if power > 0 else factor / size
            # A denominator is read as "each one": mcg per day, not per days.
            parts.append("day" if found.name == "days" and power < 0 else found.name)
        names.append("/".join(parts))
    signature = tuple(sorted((dimension, power) for dimension, power in powers.items() if power))
    kind = _KIND_BY_SIGNATURE.get(signature)
    if kind is None:
        raise QuantityError(
            f'"{told(text)}" is not a unit of any quantity used here.',
            "Write a unit such as mL/h, mg/mL or mcg/kg/min.",
        )
    flat = all(len(group) == 1 for group in groups[1:])
    return Unit(("/" if flat else " per ").join(names), signature, factor, kind)


def convert(value: Fraction, given: str, wanted: str) -> Fraction:
    """The same quantity in another unit; exact.

    Args:
        value: in the given unit.
        given: printed name of its unit.
        wanted: printed name of the other unit.

    Raises:
        QuantityError: the units measure different things.
    """
    source, target = unit(given), unit(wanted)
    if (source.name, target.name) != (given, wanted):
        raise ValueError(f"{given} and {wanted} must be printed names: spellings belong to text from people")
    if source.signature != target.signature:
        raise QuantityError(
            f"{source.name} cannot be turned into {target.name}: one is a {source.kind}, the other a {target.kind}.",
            f"Give the {target.kind} in a unit such as {target.name}.",
        )
    return value * source.factor / target.factor


def same_dimension(one: str, other: str) -> bool:
    """Whether a conversion between the two units exists."""
    return unit(one).signature == unit(other).signature


def spoken_unit(name: str, plural: bool = True) -> str:
    """How a unit is said: ``mcg/kg/min`` is "micrograms per kilogram per minute"."""
    words: list[str] = []
    for place, part in enumerate(unit(name).name.replace(" per ", "/").split("/")):
        found = simple_unit(part)
        words.append(found.many if plural and place == 0 else found.one)
    return " per ".join(words)


def ucum(name: str) -> str:
    """The UCUM code of a unit, for data that leaves the program: ``ug/kg/min``."""
    first, *rest = unit(name).name.split(" per ")
    code = "/".join(simple_unit(part).ucum for part in first.split("/"))
    for group in rest:
        # A name keeps " per " only before a unit with a denominator of its own.
        code += f"/({'/'.join(simple_unit(part).ucum for part in group.split('/'))})"
    return code


def _unknown(text: str) -> QuantityError:
    bare = " ".join(text.split())
    if bare in _ERROR_PRONE:
        return QuantityError(
            f'"{bare}" is easily misread and is not taken as a unit.',
            f'Write "{_ERROR_PRONE[bare]}" if that is meant.',
        )
    from difflib import get_close_matches  # only needed on the way to an error

    near = [_SPELLINGS[n] for n in get_close_matches(bare[:40], list(_SPELLINGS), n=6, cutoff=0.5)]
    known = list(dict.fromkeys(near))[:3] or ["mL", "mL/h", "mg", "mcg", "units", "min", "h"]
    return QuantityError(f'"{told(bare)}" is not a unit known here.', f"Nearest known: {', '.join(known)}.")
