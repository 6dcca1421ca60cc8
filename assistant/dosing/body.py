"""Body weight and body surface area."""

from collections.abc import Callable
from decimal import Context, Decimal
from fractions import Fraction

from assistant.dosing import units
from assistant.dosing.result import Measure, Result, conclude, figure, take, tell, tell_exact
from assistant.dosing.rounding import EXACT, HUNDREDTH, TENTH, Rounding, root
from assistant.dosing.unit_table import SQUARE_METRE
from assistant.errors import QuantityError
from assistant.text import quoted

_LIGHTEST = Fraction("0.2")
_HEAVIEST = Fraction(700)
_LIGHT_ADULT = Fraction(35)
_WIDE = Context(prec=40)


def kilograms(weight: Measure, *, adult: bool = False) -> Fraction:
    """A body weight in kilograms, checked for sense.

    Args:
        weight: kg, g or lb.
        adult: refuse what would be very light for an adult, the mark of lb taken for kg.

    Raises:
        QuantityError: not a mass, or no body weight (below 0.2 kg, above 700 kg; below 35 kg for an adult).

    Source: the bounds are common practice, no source.
    """
    kilos = take("weight", weight, "mass") / 1000
    shown = tell(weight) if weight.unit == "kg" else f"{tell(weight)}, that is {tell_exact(kilos, 'kg')},"
    if not _LIGHTEST <= kilos <= _HEAVIEST:
        raise QuantityError(f"{shown} is no body weight.", "Look at the number and its unit.")
    if adult and kilos < _LIGHT_ADULT:
        number = tell(weight).rsplit(" ", 1)[0]
        remedy = f"If {number} kg is meant, give the unit kg." if weight.unit == "lb" else "Look at the number again."
        raise QuantityError(f"{shown} is unlikely for an adult.", remedy)
    return kilos


def light_for_an_adult(weight: Measure) -> bool:
    """Whether a body weight is below what an adult is likely to weigh (35 kg; common practice, no source)."""
    return take("weight", weight, "mass") / 1000 < _LIGHT_ADULT


def body_weight(weight: Measure, *, adult: bool = False, rounding: Rounding = TENTH) -> Result:
    """A body weight in kilograms.

    Args:
        weight: kg, g or lb.
        adult: as in `kilograms`.
        rounding: tenths of kg by default (common practice, no source).

    Raises:
        QuantityError: as in `kilograms`.

    Source: NIST Special Publication 811, Appendix B: 1 lb = 0.453 592 37 kg, exact.
    """
    kilos = kilograms(weight, adult=adult)
    return conclude(
        "body-weight",
        {"weight": weight},
        kilos,
        "kg",
        rounding,
        (f"{tell(weight)} = {tell_exact(kilos, 'kg')}",),
    )


def convert(given: Measure, unit: str, *, factor: Measure | None = None, rounding: Rounding = EXACT) -> Result:
    """The same quantity in another unit.

    Args:
        given: any amount.
        unit: the wanted unit.
        factor: a factor that the question states, such as 2.2 lb/kg or 30 mL/fl oz, used instead of the
            exact one.
        rounding: exact by default.

    Raises:
        QuantityError: the units measure different things, or the factor does not join them.

    Source: NIST Special Publication 811, Appendix B, for the exact factors; a stated factor is the teacher's.
    """
    wanted = units.unit(unit).name
    inputs: dict[str, Measure | str] = {"given": given, "unit": wanted}
    if factor is None:
        exact = given.in_unit(wanted)
        lines = [f"{tell(given)} = {tell_exact(exact, wanted)}"]
    else:
        inputs["factor"] = factor
        size = Fraction(factor.exact if isinstance(factor, Result) else factor.value)
        if size <= 0:
            raise QuantityError(f"The factor must be above zero, but {tell(factor)} came.", "Look at it again.")
        own, other, sign = _joined(given, wanted, factor)
        value = given.in_unit(own)
        plain = value / size if sign == "\u00f7" else value * size
        exact = units.convert(plain, other, wanted)
        lines = [] if own == given.unit else [f"{tell(given)} = {tell_exact(value, own)}"]
        lines.append(f"{tell_exact(value, own)} {sign} {tell(factor)} = {tell_exact(plain, other)}")
        if other != wanted:
            lines.append(f"{tell_exact(plain, other)} = {tell_exact(exact, wanted)}")
    cautions: tuple[str, ...] = ()
    if factor is not None and units.same_dimension(given.unit, wanted) and given.in_unit(wanted) != exact:
        cautions = (f"By the exact factor it is {tell_exact(given.in_unit(wanted), wanted)}.",)
    return conclude("convert", inputs, exact, wanted, rounding, tuple(lines), cautions)


def _joined(given: Measure, wanted: str, factor: Measure) -> tuple[str, str, str]:
    """The factor's unit for what is given, that for what is wanted, and whether it divides or multiplies.

    Raises:
        QuantityError: the factor does not join the two.
    """
    top, _, bottom = factor.unit.partition("/")
    for own, other, sign in ((top, bottom, "\u00f7"), (bottom, top, "\u00d7")):
        if (given.unit, wanted) == (own, other):
            return own, other, sign
    # "58.44 mg/mmol" joins g and mmol too; lb/kg, whose sides are both masses, joins lb and kg alone.
    if bottom and "/" not in bottom and not units.same_dimension(top, bottom):
        for own, other, sign in ((top, bottom, "\u00f7"), (bottom, top, "\u00d7")):
            if units.same_dimension(given.unit, own) and units.same_dimension(wanted, other):
                return own, other, sign
    raise QuantityError(
        f"The factor {tell(factor)} does not join {given.unit} and {wanted}.",
        f"Give it in {given.unit}/{wanted} or {wanted}/{given.unit}.",
    )


def rounded(given: Measure, *, rounding: Rounding) -> Result:
    """An amount by a rounding rule and nothing else.

    Args:
        given: any amount.
        rounding: the rule.

    Raises:
        QuantityError: the amount rounds to nothing.

    Source: the rule is the reader's; see `rounding`.
    """
    exact = Fraction(given.exact if isinstance(given, Result) else given.value)
    return conclude("round", {"given": given}, exact, given.unit, rounding, (tell(given),))


def _power(base: Fraction, exponent: str) -> Fraction:
    number = _WIDE.divide(Decimal(base.numerator), Decimal(base.denominator))
    return Fraction(_WIDE.power(number, Decimal(exponent)))


def _mosteller(height: Fraction, kilos: Fraction) -> Fraction:
    return root(height * kilos / 3600)


def _du_bois(height: Fraction, kilos: Fraction) -> Fraction:
    return Fraction("0.007184") * _power(height, "0.725") * _power(kilos, "0.425")


def _haycock(height: Fraction, kilos: Fraction) -> Fraction:
    return Fraction("0.024265") * _power(height, "0.3964") * _power(kilos, "0.5378")


def _gehan_george(height: Fraction, kilos: Fraction) -> Fraction:
    return Fraction("0.0235") * _power(height, "0.42246") * _power(kilos, "0.51456")


AREA_FORMULAS: dict[str, tuple[Callable[[Fraction, Fraction], Fraction], str, str]] = {
    "mosteller": (
        _mosteller,
        "square root of (height in centimetres \u00d7 weight in kilograms \u00f7 3,600)",
        "Mosteller, New England Journal of Medicine 1987; 317: 1098 (from memory)",
    ),
    "du bois": (
        _du_bois,
        "0.007184 \u00d7 height in centimetres to the power 0.725 \u00d7 weight in kilograms to the power 0.425",
        "Du Bois and Du Bois, Archives of Internal Medicine 1916; 17: 863 (from memory)",
    ),
    "haycock": (
        _haycock,
        "0.024265 \u00d7 height in centimetres to the power 0.3964 \u00d7 weight in kilograms to the power 0.5378",
        "Haycock, Schwartz and Wisotsky, Journal of Pediatrics 1978; 93: 62 (from memory)",
    ),
    "gehan and george": (
        _gehan_george,
        "0.0235 \u00d7 height in centimetres to the power 0.42246 \u00d7 weight in kilograms to the power 0.51456",
        "Gehan and George, Cancer Chemotherapy Reports 1970; 54: 225 (from memory)",
    ),
}
"""Body surface area: the function, the working in words, the source."""


def surface_area(
    height: Measure, weight: Measure, *, method: str = "mosteller", rounding: Rounding = HUNDREDTH
) -> Result:
    """Body surface area in m\u00b2 by a named formula; to 40 digits before rounding, as roots have no end.

    Args:
        height: cm, m or in.
        weight: kg, g or lb.
        method: mosteller, du bois, haycock, or gehan and george.
        rounding: hundredths of m\u00b2 by default (common practice, no source).

    Raises:
        QuantityError: an input is of another kind or no body measure, or there is no such formula.

    Source: see `AREA_FORMULAS`.
    """
    centimetres, kilos = take("height", height, "length"), kilograms(weight)
    if not 20 <= centimetres <= 280:
        raise QuantityError(f"{tell(height)} is no body height.", "Look at the number and its unit.")
    name = " ".join(method.lower().replace("-", " ").replace("_", " ").split())
    found = AREA_FORMULAS.get(name)
    if found is None:
        raise QuantityError(
            f"{quoted(method)} is not a formula for body surface area.",
            f"Use one of: {', '.join(AREA_FORMULAS)}.",
        )
    function, words, _ = found
    exact = function(centimetres, kilos)
    lines = [
        f"{tell(given)} = {tell_exact(base, unit)}"
        for given, base, unit in ((height, centimetres, "cm"), (weight, kilos, "kg"))
        if given.unit != unit
    ]
    lines.append(f"{name.title()}: {words}")
    lines.append(f"with {figure(centimetres)} cm and {figure(kilos)} kg: {tell_exact(exact, SQUARE_METRE)}")
    inputs: dict[str, Measure | str] = {"height": height, "weight": weight, "method": name}
    return conclude("surface-area", inputs, exact, SQUARE_METRE, rounding, tuple(lines))
