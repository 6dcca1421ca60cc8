"""Making up: how much diluent a powder needs, how a stock is diluted."""

from assistant.dosing import units
from assistant.dosing.result import Measure, Result, conclude, take, tell, tell_exact
from assistant.dosing.rounding import TENTH, Rounding
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


def _same(one: Measure, other: Measure) -> None:
    if substance(one) != substance(other):
        raise QuantityError(
            f"{tell(one)} and {tell(other)} do not count the same thing.",
            f"Give both in the same kind of unit, such as {units.unit(one.unit).name.split('/')[0]}.",
        )
