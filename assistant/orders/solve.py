"""The answer key of an order: what it states, and what follows from it by the calculation core."""

from collections.abc import Mapping
from decimal import Decimal

from assistant import dosing
from assistant.dosing import WHOLE, Amount, Result, Rounding
from assistant.dosing.amount import normal
from assistant.dosing.units import unit
from assistant.orders.key import KeyEntry
from assistant.orders.model import Order, Primary, Secondary
from assistant.orders.names import label_names, with_own

PRIMARY_NAMES = (
    "primary.fluid",
    "primary.bag_volume",
    "primary.rate",
    "primary.vtbi",
    "primary.duration",
)
SECONDARY_NAMES = (
    "secondary.drug",
    "secondary.dose",
    "secondary.volume",
    "secondary.concentration",
    "secondary.rate",
    "secondary.vtbi",
    "secondary.duration",
)
KEY_NAMES = PRIMARY_NAMES + SECONDARY_NAMES
"""Every name that an answer key can hold."""
KEY_UNITS: Mapping[str, str | None] = {
    "primary.fluid": None,
    "primary.bag_volume": "mL",
    "primary.rate": "mL/h",
    "primary.vtbi": "mL",
    "primary.duration": "min",
    "secondary.drug": None,
    "secondary.dose": "mg",
    "secondary.volume": "mL",
    "secondary.concentration": "mg/mL",
    "secondary.rate": "mL/h",
    "secondary.vtbi": "mL",
    "secondary.duration": "min",
}
"""A unit in which each number can be asked for; None for a name."""


def answer_key(order: Order) -> Mapping[str, KeyEntry]:
    """Every value that follows from an order, by name.

    Args:
        order: what is ordered.

    Returns:
        The entries of `PRIMARY_NAMES`, and those of `SECONDARY_NAMES` where the order has a secondary.

    Raises:
        QuantityError: a formula refuses the order's numbers.
    """
    entries = _primary(order.primary, order)
    if order.secondary is not None:
        entries += _secondary(order.secondary, order)
    return {entry.name: entry for entry in entries}


def _primary(primary: Primary, order: Order) -> list[KeyEntry]:
    volume = primary.volume or primary.bag_volume
    fluids = with_own(label_names().fluids, primary.fluid, order.hung.fluid or primary.fluid)
    if primary.volume is not None:
        to_infuse = _stated("primary.vtbi", primary.volume)
    else:
        to_infuse = _vtbi("primary.vtbi", primary.bag_volume, primary.reserve)
    infused = Amount(_number(to_infuse), "mL")
    return [
        KeyEntry("primary.fluid", primary.fluid, None, choices=fluids),
        _stated("primary.bag_volume", primary.bag_volume),
        _rate("primary.rate", primary, volume, order.rounding),
        to_infuse,
        _duration("primary.duration", primary, infused),
    ]


def _secondary(secondary: Secondary, order: Order) -> list[KeyEntry]:
    drugs = with_own(label_names().drugs, secondary.drug, order.hung.drug or secondary.drug)
    to_infuse = _vtbi("secondary.vtbi", secondary.volume, secondary.reserve)
    return [
        KeyEntry("secondary.drug", secondary.drug, None, choices=drugs),
        # A mass in mg, whatever the order writes: the checklists ask for the dose in that unit.
        _stated("secondary.dose", secondary.dose, "mg" if unit(secondary.dose.unit).kind == "mass" else None),
        _stated("secondary.volume", secondary.volume),
        _worked_out("secondary.concentration", dosing.concentration(secondary.dose, secondary.volume)),
        _rate("secondary.rate", secondary, secondary.volume, order.rounding),
        to_infuse,
        _duration("secondary.duration", secondary, Amount(_number(to_infuse), "mL")),
    ]


def _rate(name: str, infusion: Primary | Secondary, volume: Amount, rounding: Rounding) -> KeyEntry:
    if infusion.over is None:
        if infusion.rate is None:
            raise TypeError("an infusion has either a duration or a rate")
        return _stated(name, infusion.rate)
    formula = dosing.piggyback_rate if isinstance(infusion, Secondary) else dosing.flow_rate
    return _worked_out(name, formula(volume, infusion.over, rounding=rounding))


def _duration(name: str, infusion: Primary | Secondary, volume: Amount) -> KeyEntry:
    if infusion.over is not None:
        return _stated(name, infusion.over, "min")
    if infusion.rate is None:
        raise TypeError("an infusion has either a duration or a rate")
    return _worked_out(name, dosing.duration(volume, infusion.rate, unit="min", rounding=WHOLE))


def _vtbi(name: str, bag: Amount, reserve: Amount) -> KeyEntry:
    return _worked_out(name, dosing.vtbi(bag, reserve)) if reserve.value else _stated(name, bag)


def _stated(name: str, amount: Amount, wanted: str | None = None) -> KeyEntry:
    """What the order states itself, in the unit in which the key gives it."""
    wanted = wanted or amount.unit
    if wanted == amount.unit:
        return KeyEntry(name, normal(amount.value), amount.unit)
    value = normal(dosing.EXACT.apply(amount.in_unit(wanted)))
    working = f"{dosing.show(amount)} = {dosing.show(Amount(value, wanted))}"
    return KeyEntry(name, value, wanted, (working,))


def _worked_out(name: str, result: Result) -> KeyEntry:
    return KeyEntry(name, normal(result.value), result.unit, result.working, result.formula)


def _number(entry: KeyEntry) -> Decimal:
    if isinstance(entry.value, str):
        raise TypeError(f"{entry.name} is a name and no number")
    return entry.value
