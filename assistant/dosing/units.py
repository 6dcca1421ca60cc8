"""The units that the trade uses: an allow-list, with exact factors and UCUM codes.

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

from assistant.dosing.unit_table import ERROR_PRONE, SIMPLE_UNITS, SPELLINGS, SimpleUnit
from assistant.errors import QuantityError
from assistant.text import quoted

Signature = tuple[tuple[str, int], ...]
"""Dimensions with their powers, sorted by name: (("time", -1), ("volume", 1)) for mL/h."""


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
    "doses": ((("doses", 1),),),
    "substance factor": tuple(
        tuple(sorted(((one, 1), (other, -1)))) for one in _DOSES for other in _DOSES if one != other
    ),
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
    name = SPELLINGS.get(" ".join(text.split()))
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
    if text.strip().startswith("/") or text.strip().endswith("/"):
        raise QuantityError(
            f"{quoted(text)} is not a unit known here.", "Nearest known: mL/h, mg/mL, mcg/kg/min, units/h, gtt/mL."
        )
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
            f"{quoted(text)} is not a unit of any quantity used here.",
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
    if source.kind == target.kind and source.signature != target.signature:
        raise QuantityError(
            f"{source.name} cannot be turned into {target.name}: they count a substance in two ways.",
            "Give the factor that joins the two, such as 74.55 mg/mmol; for a salt: checkoff calc electrolyte.",
        )
    if source.signature != target.signature:
        raise QuantityError(
            f"{source.name} cannot be turned into {target.name}: one is a {source.kind}, the other a {target.kind}.",
            f"Give the {target.kind} in a unit such as {target.name}.",
        )
    return value * source.factor / target.factor


def same_dimension(one: str, other: str) -> bool:
    """Whether a conversion between the two units exists."""
    return unit(one).signature == unit(other).signature


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
    if bare in ERROR_PRONE:
        return QuantityError(
            f'"{bare}" is easily misread and is not taken as a unit.',
            f'Write "{ERROR_PRONE[bare]}" if that is meant.',
        )
    from difflib import get_close_matches  # only needed on the way to an error

    near = [SPELLINGS[n] for n in get_close_matches(bare[:40], list(SPELLINGS), n=6, cutoff=0.5)]
    known = list(dict.fromkeys(near))[:3] or ["mL", "mL/h", "mg", "mcg", "units", "min", "h"]
    return QuantityError(f"{quoted(bare)} is not a unit known here.", f"Nearest known: {', '.join(known)}.")
