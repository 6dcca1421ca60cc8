"""Concentration, from any of its ways of writing."""

import re
from fractions import Fraction

from assistant.dosing.amount import Amount, parse_amount, parse_number, show
from assistant.dosing.result import Measure, Result, conclude, take, tell, tell_exact
from assistant.dosing.rounding import EXACT, Rounding
from assistant.dosing.units import convert, unit
from assistant.errors import QuantityError

_PER_ML = {"mass": "mg/mL", "activity": "units/mL", "amount": "mmol/mL", "equivalents": "mEq/mL"}
_RATIO = re.compile(r"1\s*(?::|\bin\b)\s*(?P<parts>[\d,]{1,12})", re.ASCII)
_PERCENT = re.compile(r"(?P<number>[\d.,]{1,16})\s*(?:%|percent|per cent)(?:\s*w/v)?", re.ASCII)
_PARTED = re.compile(r"(?P<dose>.+?)(?:\s+in\s+|\s+per\s+|\s*/\s*)(?P<volume>[\d.,]+\s*[^\d/]+)", re.ASCII)


def concentration(
    dose: Measure,
    volume: Measure,
    *,
    added: Measure | None = None,
    unit: str | None = None,
    rounding: Rounding = EXACT,
) -> Result:
    """How much drug is in each mL.

    Args:
        dose: all the drug in the container: mass, units, mmol or mEq.
        volume: the container's volume.
        added: the drug's own volume where it is added to `volume` and counted.
        unit: of the result; mg/mL, units/mL, mmol/mL or mEq/mL by default; "%" gives g in 100 mL.
        rounding: exact by default.

    Raises:
        QuantityError: an input is not above zero or of another kind, or the unit is of no concentration.

    Source: FDA label texts count the added volume for some drugs (milrinone) and not for others (dopamine);
    so it is an input and never a guess.
    """
    amount = take("dose", dose, "dose")
    millilitres = take("volume", volume, "volume")
    inputs: dict[str, Measure | str] = {"dose": dose, "volume": volume}
    lines: list[str] = []
    if added is not None:
        inputs["added"] = added
        extra = take("added", added, "volume", zero=True)
        lines.append(f"{tell(volume)} + {tell(added)} = {tell_exact(millilitres + extra, 'mL')}")
        millilitres += extra
    wanted = _printed(unit) if unit else _default_unit(dose)
    if wanted == "%":
        grams = convert(amount, _base_of(dose), "g")
        exact = grams / millilitres * 100
        lines.append(f"{tell_exact(grams, 'g')} \u00f7 {tell_exact(millilitres, 'mL')} = {tell_exact(exact, '%')}")
        return conclude("concentration", inputs, exact, wanted, rounding, tuple(lines))
    exact = _from_base(amount / millilitres, wanted)
    top = wanted.split("/")[0]
    in_top = convert(amount, _base(wanted), top)
    shown = tell(dose) if dose.unit == top else tell_exact(in_top, top)
    if dose.unit != top:
        lines.append(f"{tell(dose)} = {shown}")
    lines.append(f"{shown} \u00f7 {tell_exact(millilitres, 'mL')} = {tell_exact(exact, wanted)}")
    return conclude("concentration", inputs, exact, wanted, rounding, tuple(lines))


def parse_concentration(text: str) -> Result:
    """Read a concentration as people write it.

    ``1 g in 200 mL``, ``25,000 units/500 mL``, ``5 mg/mL``, ``40 mEq/L``, ``1:1000`` (g to mL),
    ``0.9 %`` (g in 100 mL).

    Raises:
        QuantityError: none of these, or a part is wrong.

    Source for ratio and percentage strengths: United States Pharmacopeia, General Notices (from memory).
    """
    bare = " ".join(text.split())
    if len(bare) > 80:
        raise QuantityError("A concentration was expected, but the text is too long.", 'Write it like "1 g in 200 mL".')
    ratio = _RATIO.fullmatch(bare)
    if ratio is not None:
        return concentration(_amount("1", "g"), _amount(ratio["parts"], "mL"))
    percent = _PERCENT.fullmatch(bare)
    if percent is not None:
        return concentration(_amount(percent["number"], "g"), _amount("100", "mL"))
    parted = _PARTED.fullmatch(bare)
    if parted is not None:
        return concentration(parse_amount(parted["dose"]), parse_amount(parted["volume"]))
    return as_concentration(parse_amount(bare))


def as_concentration(given: Measure) -> Result:
    """A concentration in its usual unit (mg/mL, units/mL, mmol/mL, mEq/mL).

    Raises:
        QuantityError: it is no concentration.
    """
    take("concentration", given, "concentration")
    wanted = _default_unit(given)
    exact = given.in_unit(wanted)
    if isinstance(given, Result):
        if given.unit == wanted:
            return given
        return conclude("concentration", {"concentration": given}, exact, wanted, EXACT, given.working)
    line = show(given) if given.unit == wanted else f"{show(given)} = {tell_exact(exact, wanted)}"
    return conclude("concentration", {"concentration": given}, exact, wanted, EXACT, (line,))


def _printed(text: str) -> str:
    found = unit(text)
    if found.kind not in ("concentration", "percentage"):
        raise QuantityError(
            f"{found.name} is a unit of {found.kind} and of no concentration.", "Give a unit such as mg/mL or %."
        )
    return found.name


def _amount(number: str, name: str) -> Amount:
    return Amount(parse_number(number), name)


def _default_unit(given: Measure) -> str:
    dimensions = [dimension for dimension, power in unit(given.unit).signature if power > 0]
    return _PER_ML[dimensions[0]]


def _base_of(dose: Measure) -> str:
    return {"mg/mL": "g", "units/mL": "units", "mmol/mL": "mmol", "mEq/mL": "mEq"}[_default_unit(dose)]


def _base(wanted: str) -> str:
    dimensions = [dimension for dimension, power in unit(wanted).signature if power > 0]
    return {"mass": "g", "activity": "units", "amount": "mmol", "equivalents": "mEq"}[dimensions[0]]


def _from_base(exact: Fraction, wanted: str) -> Fraction:
    """From base units per mL into the wanted unit."""
    return exact / unit(wanted).factor
