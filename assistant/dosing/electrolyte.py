"""Salts: their mass, the millimoles, and the milliequivalents of the ion that they are given for."""

from collections.abc import Mapping
from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction
from types import MappingProxyType

from assistant.dosing import units
from assistant.dosing.amount import Amount
from assistant.dosing.result import Measure, Result, conclude, figure, take, tell, tell_exact
from assistant.dosing.rounding import EXACT, Rounding
from assistant.dosing.strength import as_concentration, concentration
from assistant.dosing.substance import substance
from assistant.errors import QuantityError
from assistant.text import quoted


@dataclass(frozen=True)
class Salt:
    """A salt that is given for one of its ions.

    Attributes:
        atoms: how many of each element a formula unit has, its water of crystallisation included.
        ion: the ion that it is given for; a formula unit holds one.
        valence: charge of that ion.
    """

    atoms: Mapping[str, int]
    ion: str
    valence: int

    @property
    def molar_mass(self) -> Fraction:
        """In g/mol, which is mg/mmol; rounded to hundredths, as labels have it."""
        exact = sum((ATOMIC_WEIGHTS[name] * count for name, count in self.atoms.items()), Fraction(0))
        return Fraction(Rounding(Decimal("0.01")).apply(exact))


ATOMIC_WEIGHTS: Mapping[str, Fraction] = MappingProxyType(
    {
        name: Fraction(weight)
        for name, weight in {
            "H": "1.008",
            "C": "12.011",
            "N": "14.007",
            "O": "15.999",
            "Na": "22.990",
            "Mg": "24.305",
            "S": "32.06",
            "Cl": "35.45",
            "K": "39.098",
            "Ca": "40.078",
        }.items()
    }
)
"""Abridged standard atomic weights: IUPAC, Standard atomic weights of the elements 2021 (from memory)."""

SALTS: Mapping[str, Salt] = MappingProxyType(
    {
        "potassium chloride": Salt({"K": 1, "Cl": 1}, "potassium", 1),
        "potassium acetate": Salt({"K": 1, "C": 2, "H": 3, "O": 2}, "potassium", 1),
        "sodium chloride": Salt({"Na": 1, "Cl": 1}, "sodium", 1),
        "sodium bicarbonate": Salt({"Na": 1, "H": 1, "C": 1, "O": 3}, "sodium", 1),
        "sodium acetate": Salt({"Na": 1, "C": 2, "H": 3, "O": 2}, "sodium", 1),
        "sodium acetate trihydrate": Salt({"Na": 1, "C": 2, "H": 9, "O": 5}, "sodium", 1),
        "calcium chloride dihydrate": Salt({"Ca": 1, "Cl": 2, "H": 4, "O": 2}, "calcium", 2),
        "calcium gluconate monohydrate": Salt({"Ca": 1, "C": 12, "H": 24, "O": 15}, "calcium", 2),
        "magnesium sulfate heptahydrate": Salt({"Mg": 1, "S": 1, "O": 11, "H": 14}, "magnesium", 2),
        "magnesium chloride hexahydrate": Salt({"Mg": 1, "Cl": 2, "H": 12, "O": 6}, "magnesium", 2),
        "ammonium chloride": Salt({"N": 1, "H": 4, "Cl": 1}, "ammonium", 1),
    }
)
"""Salts by name, in the form that is in the vial: the water of a crystal counts.

Source for the formulas: United States Pharmacopeia, Reference Tables, Description (from memory); the tests hold them
against what labels print.
"""


def electrolyte(given: Measure, salt: str, *, unit: str | None = None, rounding: Rounding = EXACT) -> Result:
    """Mass, millimoles or milliequivalents of a salt, each from another of them; by itself, in mL or in an hour.

    Args:
        given: for example 1 g, 20 mEq, 0.9 %, 2 mEq/mL or 10 mmol/h.
        salt: its name, a key of `SALTS`; the water of its crystals belongs to it.
        unit: of the result; milliequivalents by default, a mass where they are given.
        rounding: exact by default.

    Raises:
        QuantityError: an input is not a dose, concentration or dose rate, or the salt is not known.

    Source: mEq = mass / molar mass x valence; pharmacalculation.com, Milliequivalents and Millimoles.
    """
    name = " ".join(salt.casefold().split())
    known = SALTS.get(name)
    if known is None:
        raise QuantityError(f"{quoted(salt)} is not a salt known here.", f"Use one of: {', '.join(SALTS)}.")
    plain = _without_percent(given)
    counted, rest = _counted(given, plain), plain.unit[len(plain.unit.split("/")[0]) :]
    wanted = units.unit(unit or f"{'mg' if counted == 'equivalents' else 'mEq'}{rest}")
    asked = next(dimension for dimension, power in wanted.signature if power > 0)
    if asked not in _UNITS:
        raise QuantityError(f"{wanted.name} does not measure a salt.", "Ask for it in mg, mmol or mEq.")
    at = f"{_UNITS[counted]}{rest}"
    value = plain.in_unit(at)
    lines = [f"counted is the {known.ion} of {name}"]
    lines += [] if given.unit == at else [f"{tell(given)} = {tell_exact(value, at)}"]
    for dimension, size, per in _way(known, counted, asked):
        after = f"{_UNITS[dimension]}{rest}"
        turned = value * size
        by, sign = (size, "\u00d7") if size > 1 else (1 / size, "\u00f7")
        if size != 1:
            lines.append(f"{tell_exact(value, at)} {sign} {figure(by)} {per} = {tell_exact(turned, after)}")
        else:
            lines.append(f"{tell_exact(value, at)} = {tell_exact(turned, after)}")
        value, at = turned, after
    exact = units.convert(value, at, wanted.name)
    if wanted.name != at:
        lines.append(f"{tell_exact(value, at)} = {tell_exact(exact, wanted.name)}")
    return conclude("electrolyte", {"given": given, "salt": name}, exact, wanted.name, rounding, tuple(lines))


_UNITS = {"mass": "mg", "amount": "mmol", "equivalents": "mEq"}
"""How a salt is measured, in the order in which one follows from the other."""


def _without_percent(given: Measure) -> Measure:
    """A percentage as its concentration; anything else as it came."""
    if units.unit(given.unit).kind != "percentage":
        return given
    take("given", given, "percentage")
    grams = conclude("grams", {}, given.in_unit("%"), "g", EXACT, ())
    return as_concentration(concentration(grams, Amount(Decimal(100), "mL")))


def _counted(given: Measure, plain: Measure) -> str:
    """How the salt is measured: a key of `_UNITS`.

    Raises:
        QuantityError: it is not above zero, is not a dose, concentration or dose rate, or counts units of activity.
    """
    kind = units.unit(plain.unit).kind
    kind = "dose" if kind == "mass" else kind
    if kind not in ("dose", "concentration", "dose rate") or substance(plain) not in _UNITS:
        raise QuantityError(
            f"given must come in a unit such as mg, mEq/mL or mmol/h, but {tell(given)} came.", "Look at the unit."
        )
    take("given", plain, kind)
    return substance(plain)


def _way(salt: Salt, counted: str, asked: str) -> list[tuple[str, Fraction, str]]:
    """The steps from one measure to another: the next measure, what is multiplied by, and the factor's unit."""
    up = [("amount", 1 / salt.molar_mass, "mg/mmol"), ("equivalents", Fraction(salt.valence), "mEq/mmol")]
    down = [("mass", salt.molar_mass, "mg/mmol"), ("amount", Fraction(1, salt.valence), "mEq/mmol")]
    here, there = list(_UNITS).index(counted), list(_UNITS).index(asked)
    return up[here:there] if there >= here else down[there:here][::-1]
