"""Units: what is taken, what is refused, and whether the factors are those of the published standards."""

from decimal import Decimal
from fractions import Fraction
from typing import Any

import pint
import pytest
import ucumvert

from assistant.dosing.units import SIMPLE_UNITS, convert, ucum, unit
from assistant.errors import QuantityError

WRITTEN = [
    ("mL/h", "mL/h"),
    ("ml/hr", "mL/h"),
    ("mls/hour", "mL/h"),
    ("ML/HR", "mL/h"),
    ("mL per hour", "mL/h"),
    ("millilitres per hour", "mL/h"),
    ("milliliters / hour", "mL/h"),
    ("mcg/kg/min", "mcg/kg/min"),
    ("\u00b5g/kg/min", "mcg/kg/min"),
    ("\u03bcg/kg/min", "mcg/kg/min"),
    ("micrograms per kilogram per minute", "mcg/kg/min"),
    ("gtt/min", "gtt/min"),
    ("drops per minute", "gtt/min"),
    ("gtts/mL", "gtt/mL"),
    ("unit", "units"),
    ("Units/h", "units/h"),
    ("units/kg/h", "units/kg/h"),
    ("milliunits/min", "milliunits/min"),
    ("mEq/L", "mEq/L"),
    ("meq/l", "mEq/L"),
    ("mmol/h", "mmol/h"),
    ("mg/kg/dose", "mg/kg/dose"),
    ("mg/m2", "mg/m\u00b2"),
    ("MG", "mg"),
    ("MILLIGRAMS", "mg"),
    ("Milligram", "mg"),
    ("hrs", "h"),
    ("%", "%"),
    ("per cent", "%"),
    ("mL/h per mcg/min", "mL/h per mcg/min"),
    ("g/day", "g/day"),
    ("lbs", "lb"),
    ("  mL  ", "mL"),
]

REFUSED = [
    ("M", "Nearest known"),  # molar to a general parser
    ("Mg", '"mg"'),  # megagram to a general parser, magnesium to a chemist
    ("U", '"units"'),
    ("u/h", '"units"'),
    ("IU", '"units"'),
    ("cc", '"mL"'),
    ("gr", '"g"'),
    ("mgs", "mg"),
    ("mlh", "mL"),
    ("", "Nearest known"),
    ("/", "Nearest known"),
    ("mL/", "Nearest known"),
    ("mL//h", "Nearest known"),
    ("mL/mL", "mL/h"),
    ("h/mL", "mL/h"),
    ("mL/h/h", "mL/h"),
    ("kg/mg", "mL/h"),
    ("mL*h", "Nearest known"),
    ("mL**2", "Nearest known"),
    ("2 mL", "Nearest known"),
    ("__import__('os')", "Nearest known"),
    ("mL\x00", "Nearest known"),
    ("x" * 1000, "mL/h"),
]


@pytest.mark.parametrize(("text", "name"), WRITTEN)
def test_reads_units_as_people_write_them(text: str, name: str) -> None:
    """Every usual way of writing a unit gives the one printed name, and that name reads as itself."""
    assert unit(text).name == name
    assert unit(name) == unit(text)


@pytest.mark.parametrize(("text", "remedy"), REFUSED)
def test_refuses_what_is_no_unit(text: str, remedy: str) -> None:
    """Anything else is refused in one line that says what to write."""
    with pytest.raises(QuantityError) as refused:
        unit(text)
    assert remedy in refused.value.remedy
    assert "\n" not in str(refused.value) and len(str(refused.value)) < 250
    assert str(refused.value).isprintable()


PINT_NAMES = {
    "mcg": "microgram",
    "units": None,  # what a unit does is set for each drug: no library has a factor for it
    "milliunits": None,
    "mEq": None,  # an equivalent is a mole of charge: a mole to the library, never to this list
    "Eq": None,
    "days": "day",
    "m\u00b2": "m**2",
    "gtt": None,  # pint's drop is the chemist's, 0.05 mL: a set's drop is counted, not measured
    "%": None,
    "dose": None,
    "fl oz": None,
    "tsp": None,
    "tbsp": None,
    "cup": None,
    "pint": None,
    "quart": None,
    "grain": None,
}
"""Names in pint's own definitions where they differ; None where the trade has no fixed factor."""

_BASES = {
    "mass": "gram",
    "volume": "milliliter",
    "time": "hour",
    "amount": "millimole",
    "length": "centimeter",
    "area": "m**2",
}


@pytest.fixture(scope="module")
def registry() -> Any:
    """pint's own definitions, in decimals."""
    return pint.UnitRegistry(non_int_type=Decimal)


@pytest.mark.parametrize("name", [n for n in SIMPLE_UNITS if PINT_NAMES.get(n, n) is not None])
def test_factors_are_those_of_a_general_library(registry: Any, name: str) -> None:
    """Each factor equals the one in pint's definitions file (which cites NIST SP 811 and the SI brochure)."""
    simple = SIMPLE_UNITS[name]
    base = _BASES[simple.dimension]
    there = registry.Quantity(Decimal(1), PINT_NAMES.get(name, name))
    factor = Fraction(there.to(base).magnitude)
    assert abs(factor - simple.factor) <= simple.factor / 10**25  # pint holds 1/60 to 28 digits


@pytest.mark.parametrize(
    ("value", "given", "wanted", "expected"),
    [
        ("1", "lb", "kg", Fraction("0.45359237")),  # NIST SP 811, Appendix B (from memory)
        ("1", "in", "cm", Fraction("2.54")),  # NIST SP 811, Appendix B (from memory)
        ("36", "mg", "g", Fraction("0.036")),  # Open RN, Nursing Dosage Calculations, appendix
        ("1", "mL/h", "mL/min", Fraction(1, 60)),
        ("5", "mcg/kg/min", "mg/kg/h", Fraction("0.3")),
        ("1", "mg/lb", "mg/kg", Fraction(100000000, 45359237)),
        ("2", "L/day", "mL/h", Fraction(250, 3)),
        ("1", "mL/h per mcg/min", "mL/h per mg/h", Fraction(1000, 60)),
        ("10", "milliunits/mL", "units/L", Fraction(10)),
    ],
)
def test_converts_exactly(value: str, given: str, wanted: str, expected: Fraction) -> None:
    """A conversion is an exact ratio, there and back."""
    there = convert(Fraction(value), given, wanted)
    assert there == expected
    assert convert(there, wanted, given) == Fraction(value)


@pytest.mark.parametrize(("given", "wanted"), [("ml", "L"), ("mL", "l"), ("mL", "ml")])
def test_conversions_take_printed_names_only(given: str, wanted: str) -> None:
    """A spelling inside the program is a fault of the program: spellings belong to text from people."""
    with pytest.raises(ValueError, match="printed names"):
        convert(Fraction(1), given, wanted)


@pytest.mark.parametrize(
    ("given", "wanted"),
    [("mL", "mg"), ("mg", "units"), ("mEq", "mmol"), ("mg/kg", "mg"), ("mL/h", "gtt/min"), ("tsp", "mL"), ("kg", "mL")],
)
def test_never_converts_across_kinds(given: str, wanted: str) -> None:
    """Units that measure different things have no conversion; no density or valence is guessed."""
    with pytest.raises(QuantityError, match="cannot be turned into"):
        convert(Fraction(1), given, wanted)


def test_every_unit_has_a_code() -> None:
    """No unit is without a UCUM code, and no spelling means two units."""
    seen: dict[str, str] = {}
    for simple in SIMPLE_UNITS.values():
        assert simple.ucum
        for spelling in (simple.name, *simple.spellings):
            assert seen.setdefault(spelling, simple.name) == simple.name


@pytest.mark.parametrize(
    ("name", "code"),
    # The Unified Code for Units of Measure, tables 1 and following (from memory).
    [
        ("mcg/kg/min", "ug/kg/min"),
        ("mL/h", "mL/h"),
        ("units/h", "[IU]/h"),
        ("mEq/L", "meq/L"),
        ("lb", "[lb_av]"),
        ("in", "[in_i]"),
        ("gtt/min", "{drop}/min"),
        ("days", "d"),
        ("mg/m2", "mg/m2"),
        ("mL/h per mcg/min", "mL/h/(ug/min)"),
        ("mg/kg/dose", "mg/kg/{dose}"),
    ],
)
def test_gives_ucum_codes(name: str, code: str) -> None:
    """Data that leaves the program carries UCUM codes."""
    assert ucum(name) == code


def test_ucum_codes_mean_the_same_to_a_ucum_reader() -> None:
    """A library that reads the UCUM grammar (ucumvert) takes every code, and finds the same factor."""
    reader = ucumvert.PintUcumRegistry()
    for name in ("mcg", "mg", "kg", "lb", "L", "min", "h", "days", "mm", "in", "ft", "milliunits", "mol", "Eq"):
        simple = SIMPLE_UNITS[name]
        base = next(u for u in SIMPLE_UNITS.values() if u.dimension == simple.dimension and u.factor == 1)
        there = reader.from_ucum(simple.ucum).to(reader.from_ucum(base.ucum).units)
        assert float(there.magnitude) == pytest.approx(float(simple.factor), rel=1e-12), name
    for name in ("mcg/kg/min", "mL/h", "units/kg/h", "mEq/L", "gtt/mL", "mL/h per mcg/min", "mg/kg/dose"):
        assert reader.from_ucum(ucum(name)) is not None
