"""A dose against what is allowed: with a maximum, and per kg against a range."""

from assistant.dosing import units
from assistant.dosing.body import kilograms
from assistant.dosing.dose import dose_by_weight
from assistant.dosing.result import Measure, Result, conclude, take, tell, tell_exact
from assistant.dosing.rounding import EXACT, Rounding
from assistant.dosing.substance import same_substance
from assistant.dosing.substance import weight_lines as lines_of_weight
from assistant.errors import QuantityError


def dose_with_maximum(
    ordered: Measure, weight: Measure, maximum: Measure, *, unit: str | None = None, rounding: Rounding = EXACT
) -> Result:
    """Dose for a body weight, and never more than a stated maximum.

    Args:
        ordered: for example 15 mg/kg.
        weight: kg, g or lb.
        maximum: the highest dose, for example 1 g.
        unit: of the result; the order's own by default.
        rounding: exact by default.

    Raises:
        QuantityError: an input is not above zero or of another kind, or the two count different things.

    Source: FDA label text, acetaminophen injection, Dosage and Administration (from memory): 15 mg/kg, with a highest
    single dose.
    """
    plain = dose_by_weight(ordered, weight, unit=unit)
    take("maximum", maximum, "dose")
    same_substance(plain, maximum, "The dose", "the maximum")
    highest = maximum.in_unit(plain.unit)
    exact = min(plain.exact, highest)
    lines = (
        *plain.working,
        f"never more than {tell_exact(highest, plain.unit)}: the lesser of the two is {tell_exact(exact, plain.unit)}",
    )
    cautions = (f"The maximum of {tell(maximum)} holds, not the dose by weight.",) if exact < plain.exact else ()
    inputs = {**plain.inputs, "maximum": maximum}
    return conclude("dose-with-maximum", inputs, exact, plain.unit, rounding, lines, cautions)


def dose_per_kg(
    dose: Measure,
    weight: Measure,
    *,
    lowest: Measure | None = None,
    highest: Measure | None = None,
    unit: str | None = None,
    rounding: Rounding = EXACT,
) -> Result:
    """Dose for each kg that a given dose is, against a range where one comes with it.

    Args:
        dose: for example 500 mg, or a day's dose such as 1.5 g/day.
        weight: kg, g or lb.
        lowest: of the range, such as 10 mg/kg.
        highest: of the range, such as 15 mg/kg.
        unit: of the result; the dose's own per kg by default.
        rounding: exact by default.

    Raises:
        QuantityError: an input is not above zero or of another kind.

    Source: the meaning of a dose per kg; BCcampus OpenEd, A Guide to Numeracy in Nursing, Calculating Medication Doses
    Based on Weight. The range is the reference's or the order's.
    """
    rate = units.unit(dose.unit).kind == "dose rate"
    take("dose", dose, "dose rate" if rate else "dose")
    kilos = kilograms(weight)
    top, *below = dose.unit.split("/")
    own = units.unit("/".join((top, "kg", *below))).name
    wanted = units.unit(unit or own).name
    plain = dose.in_unit(dose.unit) / kilos
    exact = units.convert(plain, own, wanted)
    lines = [
        *lines_of_weight(weight, kilos),
        f"{tell(dose)} \u00f7 {tell_exact(kilos, 'kg')} = {tell_exact(plain, own)}",
    ]
    if wanted != own:
        lines.append(f"{tell_exact(plain, own)} = {tell_exact(exact, wanted)}")
    inputs: dict[str, Measure | str] = {"dose": dose, "weight": weight}
    cautions: tuple[str, ...] = ()
    kind = "dose rate per weight" if rate else "dose per weight"
    bounds = {}
    for name, bound in (("lowest", lowest), ("highest", highest)):
        if bound is not None:
            inputs[name] = bound
            take(name, bound, kind)
            bounds[name] = bound.in_unit(wanted)
    if len(bounds) == 2 and bounds["lowest"] > bounds["highest"]:
        raise QuantityError("The lowest is above the highest.", "Look at the range again.")
    if lowest is not None and exact < bounds["lowest"]:
        cautions = (f"That is below the range, which begins at {tell(lowest)}: ask before giving it.",)
    elif highest is not None and exact > bounds["highest"]:
        cautions = (f"That is above the range, which ends at {tell(highest)}: do not give it before asking.",)
    elif bounds:
        lines.append("within the range")
    return conclude("dose-per-kg", inputs, exact, wanted, rounding, tuple(lines), cautions)
