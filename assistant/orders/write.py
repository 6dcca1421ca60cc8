"""An order as the text of a file that loads again: TOML, in the order in which an author writes it."""

from datetime import date

import tomlkit
from tomlkit.items import Table

from assistant.checklist.model import Paper
from assistant.dosing import Amount, Rounding, show
from assistant.orders.model import Order

_TABLES = (
    "patient",
    "primary",
    "gravity",
    "running",
    "change",
    "secondary",
    "second_secondary",
    "dose",
    "protocol",
    "syringe",
    "push",
    "flush",
    "laid_out",
)
_HOW = ("over", "rate", "route", "frequency", "reserve", "expires", "state", "say")
_NEVER = ("name", "digest")
"""What the loader sets itself."""


def text_of(order: Order) -> str:
    """The file of an order; loading it gives the same order, but for name and digest."""
    document = tomlkit.document()
    for name in type(order).model_fields:
        value = getattr(order, name)
        if name in _TABLES or name in _NEVER or not value or value == type(order).model_fields[name].default:
            continue
        document.add(name, _plain(value))
    for name in _TABLES:
        part = getattr(order, name)
        if part is not None and (table := _table(part)):
            document.add(tomlkit.nl())
            document.add(name, table)
    return tomlkit.dumps(document)


def _table(part: Paper) -> Table:
    table = tomlkit.table()
    fields = type(part).model_fields
    # What is ordered, or on the label, stands first; how it runs, or how the bag looks, after it.
    for name in sorted(fields, key=_HOW.__contains__):
        value = getattr(part, name)
        if value is None or value == fields[name].default:
            continue
        if isinstance(value, Paper):
            table.add(name, _table(value))
        elif isinstance(value, dict):
            table.add(name, dict(value))
        elif isinstance(value, tuple) and isinstance(value[0], Paper):
            happenings = tomlkit.aot()
            for one in value:
                happenings.append(_table(one))
            table.add(name, happenings)
        else:
            table.add(name, _plain(value))
    return table


def _plain(value: object) -> object:
    match value:
        case Amount():
            return show(value)
        case Rounding():
            return str(value)
        case tuple():
            array = tomlkit.array()
            array.extend(list(value))
            return array
        case date() | bool() | int():
            return value
    return str(value)
