"""Making up: how much diluent a powder needs, how a stock is diluted, how two are mixed."""

from fractions import Fraction

from assistant.dosing import units
from assistant.dosing.result import Measure, Result, conclude, figure, take, tell, tell_exact
from assistant.dosing.rounding import EXACT, TENTH, Rounding
from assistant.dosing.substance import substance
from assistant.errors import QuantityError


def diluent(
    dose: Measure, concentration: Measure, *, displacement: Measure | None = None, rounding: Rounding = TENTH
) -> Result:
    """Volume of diluent in mL that makes a powder up to a concentration.

    Args:
        dose: all the drug in the vial, for example 1 g.
        concentration: what is wanted, for example 100 mg/mL.
        displacement: what the powder itself adds to the volume (the label names it); none where left out.
        rounding: tenths of mL by default.

    Raises:
        QuantityError: an input is not above zero or of another kind, or the powder alone fills the volume.

    Source: the meaning of a concentration; the displacement is the label's (common practice, no source).
    """
    amount, strength = take("dose", dose, "dose"), take("concentration", concentration, "concentration")
    _same(dose, concentration)
    inputs: dict[str, Measure | str] = {"dose": dose, "concentration": concentration}
    whole = amount / strength
    top = concentration.unit.split("/")[0]
    per_ml = f"{top}/mL"
    lines = [
        f"{tell_exact(dose.in_unit(top), top)} \u00f7 {tell_exact(concentration.in_unit(per_ml), per_ml)}"
        f" = {tell_exact(whole, 'mL')}"
    ]
    exact = whole
    if displacement is not None:
        inputs["displacement"] = displacement
        own = take("displacement", displacement, "volume", zero=True)
        exact = whole - own
        if exact <= 0:
            raise QuantityError(
                f"The powder alone takes {tell(displacement)} of {tell_exact(whole, 'mL')}.",
                "Look at the displacement and the wanted concentration.",
            )
        lines.append(f"{tell_exact(whole, 'mL')} \u2212 {tell_exact(own, 'mL')} = {tell_exact(exact, 'mL')}")
    cautions = ("Follow the label: which diluent, how much, and how long it may be kept.",)
    return conclude("diluent", inputs, exact, "mL", rounding, tuple(lines), cautions)


def dilution(
    stock: Measure, concentration: Measure, volume: Measure, *, rounding: Rounding = TENTH
) -> tuple[Result, Result]:
    """Volume of a stock in mL that makes a weaker solution, and the diluent in mL that goes with it.

    Args:
        stock: concentration at hand, for example 50 %.
        concentration: what is wanted, for example 10 %.
        volume: how much is wanted.
        rounding: tenths of mL by default.

    Raises:
        QuantityError: an input is of another kind, or the stock is weaker than what is wanted.

    Source: the dose is the same before and after; common practice, no source.
    """
    strong, weak = take("stock", stock, "concentration"), take("concentration", concentration, "concentration")
    whole = take("volume", volume, "volume")
    _same(stock, concentration)
    if strong < weak:
        raise QuantityError(
            f"A stock of {tell(stock)} cannot make {tell(concentration)}.", "Look at which of the two is the stock."
        )
    exact = weak * whole / strong
    per_ml = f"{stock.unit.split('/')[0]}/mL"
    lines = (
        f"{tell_exact(concentration.in_unit(per_ml), per_ml)} \u00d7 {tell_exact(whole, 'mL')}"
        f" \u00f7 {tell_exact(stock.in_unit(per_ml), per_ml)} = {tell_exact(exact, 'mL')} of the stock",
    )
    rest = whole - exact
    line = f"{tell_exact(whole, 'mL')} \u2212 {tell_exact(exact, 'mL')} = {tell_exact(rest, 'mL')} of diluent"
    inputs = {"stock": stock, "concentration": concentration, "volume": volume}
    return (
        conclude("dilution", inputs, exact, "mL", rounding, lines),
        conclude("dilution-diluent", inputs, rest, "mL", rounding, (*lines, line)),
    )


def alligation(
    stronger: Measure, weaker: Measure, concentration: Measure, volume: Measure, *, rounding: Rounding = TENTH
) -> tuple[Result, Result]:
    """Volume in mL of a stronger stock, and of a weaker one, that together make a concentration between the two.

    Args:
        stronger: for example 50 %.
        weaker: for example 5 %; plain diluent is the business of `dilution`.
        concentration: what is wanted, for example 10 %.
        volume: how much is wanted.
        rounding: tenths of mL by default.

    Raises:
        QuantityError: an input is of another kind, or what is wanted does not lie between the two stocks.

    Source: alligation alternate: parts of the stronger are wanted less weaker, parts of the weaker are stronger less
    wanted; clinicalgate.com, Calculation of Mixtures from Stock Medications.
    """
    strong, weak = take("stronger", stronger, "concentration"), take("weaker", weaker, "concentration")
    wanted, whole = take("concentration", concentration, "concentration"), take("volume", volume, "volume")
    _same(stronger, weaker)
    _same(stronger, concentration)
    if not weak < wanted < strong:
        raise QuantityError(
            f"{tell(concentration)} does not lie between {tell(weaker)} and {tell(stronger)}.",
            "Look at which stock is the stronger one, and at what is wanted.",
        )
    per_ml = f"{stronger.unit.split('/')[0]}/mL"
    high, low, middle = (one.in_unit(per_ml) for one in (stronger, weaker, concentration))
    exact = whole * (wanted - weak) / (strong - weak)
    rest = whole - exact
    lines = (
        f"{figure(middle)} \u2212 {figure(low)} = {figure(middle - low)} parts of the stronger",
        f"{figure(high)} \u2212 {figure(middle)} = {figure(high - middle)} parts of the weaker",
        f"{figure(middle - low)} + {figure(high - middle)} = {figure(high - low)} parts in all",
        f"{tell_exact(whole, 'mL')} \u00f7 {figure(high - low)} = {tell_exact(whole / (high - low), 'mL')} a part",
        f"{tell_exact(whole / (high - low), 'mL')} \u00d7 {figure(middle - low)} = {tell_exact(exact, 'mL')}"
        " of the stronger",
    )
    line = f"{tell_exact(whole, 'mL')} \u2212 {tell_exact(exact, 'mL')} = {tell_exact(rest, 'mL')} of the weaker"
    inputs: dict[str, Measure | str] = {
        "stronger": stronger,
        "weaker": weaker,
        "concentration": concentration,
        "volume": volume,
    }
    return (
        conclude("alligation", inputs, exact, "mL", rounding, lines, _MIXED),
        conclude("alligation-weaker", inputs, rest, "mL", rounding, (*lines, line), _MIXED),
    )


_MIXED = ("Whether two stocks may be mixed is for the label and the pharmacist to say.",)


def mixture(
    concentration: Measure,
    volume: Measure,
    added_concentration: Measure,
    added_volume: Measure,
    *,
    unit: str | None = None,
    rounding: Rounding = EXACT,
) -> Result:
    """Concentration of two solutions of one drug that are put together.

    Args:
        concentration: of the one, for example 50 %.
        volume: how much of it.
        added_concentration: of the other, the same drug.
        added_volume: how much of it.
        unit: of the result; the first concentration's own by default.
        rounding: exact by default.

    Raises:
        QuantityError: an input is not above zero or of another kind.

    Source: alligation medial: the mean of the strengths, each counted by its volume; clinicalgate.com, Calculation
    of Mixtures from Stock Medications.
    """
    take("concentration", concentration, "concentration")
    take("added concentration", added_concentration, "concentration")
    sizes = take("volume", volume, "volume"), take("added volume", added_volume, "volume")
    _same(concentration, added_concentration)
    top = concentration.unit.split("/")[0]
    per_ml = f"{top}/mL"
    lines: list[str] = []
    held = Fraction(0)
    for strength, size in zip((concentration, added_concentration), sizes, strict=True):
        each, dose = strength.in_unit(per_ml), strength.in_unit(per_ml) * size
        lines.append(f"{tell_exact(each, per_ml)} \u00d7 {tell_exact(size, 'mL')} = {tell_exact(dose, top)}")
        held += dose
    whole = sum(sizes, Fraction(0))
    native = held / whole
    lines.append(f"together {tell_exact(held, top)} in {tell_exact(whole, 'mL')}")
    lines.append(f"{tell_exact(held, top)} \u00f7 {tell_exact(whole, 'mL')} = {tell_exact(native, per_ml)}")
    wanted = units.unit(unit or per_ml).name
    exact = units.convert(native, per_ml, "g/mL") * 100 if wanted == "%" else units.convert(native, per_ml, wanted)
    if wanted != per_ml:
        lines.append(f"{tell_exact(native, per_ml)} = {tell_exact(exact, wanted)}")
    inputs: dict[str, Measure | str] = {
        "concentration": concentration,
        "volume": volume,
        "added_concentration": added_concentration,
        "added_volume": added_volume,
    }
    return conclude("mixture", inputs, exact, wanted, rounding, tuple(lines), _MIXED)


def _same(one: Measure, other: Measure) -> None:
    if substance(one) != substance(other):
        raise QuantityError(
            f"{tell(one)} and {tell(other)} do not count the same thing.",
            f"Give both in the same kind of unit, such as {units.unit(one.unit).name.split('/')[0]}.",
        )
