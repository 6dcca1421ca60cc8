"""The table of limits as it is written: read and checked, every complaint with its place."""

from collections.abc import Mapping

from assistant.dosing import units
from assistant.dosing.amount import Amount, parse_amount, show
from assistant.dosing.limits import Entry, Kind, Level, Limit, Limits, Policy, key_of
from assistant.errors import QuantityError
from assistant.text import SHORT, quoted, shown

_ALSO = "also"
_INCOMPATIBLE = "not_in_one_line_with"
_UNIT_KINDS: Mapping[Kind, tuple[str, ...]] = {
    Kind.HIGHEST_RATE: ("rate",),
    Kind.LOWEST_RATE: ("rate",),
    Kind.HIGHEST_DOSE_RATE: ("dose rate", "dose rate per weight"),
    Kind.SHORTEST_TIME: ("duration",),
    Kind.HIGHEST_CONCENTRATION: ("concentration",),
    Kind.HIGHEST_DOSE: ("mass", "dose"),
    Kind.LOWEST_DOSE: ("mass", "dose"),
}


def limits_from(table: Mapping[str, object]) -> Limits:
    """Read the table of limits.

    Args:
        table: tables ``drug`` and ``fluid`` by name, each limit a table ``{ value, level, source }`` (or a
            list of them), with ``also``, a list of other names; tables ``policy`` by name with
            ``{ value, source }``.

    Raises:
        QuantityError: a field is missing, unknown or wrong; the sentence names its place.
    """
    entries: dict[str, Entry] = {}
    for group in ("drug", "fluid"):
        for name, given in _table(table.get(group, {}), group).items():
            entry = _entry(name, _table(given, name))
            for key in (key_of(name), *sorted(entry.also)):
                if key in entries:
                    raise QuantityError(f"The limits name {quoted(key)} twice.", "Leave one of the two.")
                entries[key] = entry
    policies = {
        name: Policy(name, _amount(one, name, ("duration",)), _text(one, "source", name))
        for name, given in _table(table.get("policy", {}), "policy").items()
        for one in (_table(given, name),)
    }
    for name in table:
        if name not in ("drug", "fluid", "policy"):
            raise QuantityError(f"The limits have no part {quoted(name)}.", "Parts are drug, fluid and policy.")
    return Limits(entries, policies)


def _entry(name: str, given: Mapping[str, object]) -> Entry:
    limits: list[Limit] = []
    incompatible: dict[str, tuple[Level, str]] = {}
    also = _names_of(given.get(_ALSO, []), f"{shown(name, SHORT)}, {_ALSO}", empty=True)
    for field, found in given.items():
        if field == _ALSO:
            continue
        place = f"{shown(name, SHORT)}, {shown(field, SHORT)}"
        for one in found if isinstance(found, list) else [found]:
            row = _table(one, place)
            if unknown := set(row) - {"value", "level", "source", "names"}:
                raise QuantityError(f"{place} has no field {quoted(min(unknown))}.", "Use value, level and source.")
            level, source = _level(row, place), _text(row, "source", place)
            if field == _INCOMPATIBLE:
                names = _names_of(row.get("names"), f"{place}: names")
                incompatible |= {key_of(n): (level, source) for n in names}
                continue
            if field not in list(Kind):
                raise QuantityError(f"{place} is no limit known here.", f"Use one of: {', '.join(Kind)}.")
            kind = Kind(field)
            limits.append(Limit(kind, _amount(row, place, _UNIT_KINDS[kind]), level, source))
    return Entry(name, tuple(limits), incompatible, frozenset(map(key_of, also)))


def _names_of(given: object, place: str, *, empty: bool = False) -> list[str]:
    if not isinstance(given, list) or not (given or empty) or not all(isinstance(n, str) and n for n in given):
        raise QuantityError(f"{place} must be a list of texts.", 'Write names = ["..."].')
    return given


def _table(given: object, place: str) -> Mapping[str, object]:
    if not isinstance(given, Mapping):
        raise QuantityError(f"{place} must be a table.", "Write { value = ..., level = ..., source = ... }.")
    return given


def _text(row: Mapping[str, object], name: str, place: str) -> str:
    found = row.get(name)
    if not isinstance(found, str) or not found.strip():
        raise QuantityError(f"{place} lacks {name}.", f'Write {name} = "...".')
    return found.strip()


def _level(row: Mapping[str, object], place: str) -> Level:
    levels = {"soft": Level.SOFT, "hard": Level.HARD}
    found = levels.get(_text(row, "level", place))
    if found is None:
        raise QuantityError(f"{place}: level must be soft or hard.", 'Write level = "soft".')
    return found


def _amount(row: Mapping[str, object], place: str, kinds: tuple[str, ...]) -> Amount:
    text = _text(row, "value", place)
    try:
        amount = parse_amount(text)
    except QuantityError as cause:
        raise QuantityError(f"{place}: {cause.what}", cause.remedy) from cause
    signature = units.unit(amount.unit).signature
    if amount.value <= 0 or not any(signature in units.QUANTITIES[kind] for kind in kinds):
        raise QuantityError(f"{place} must be a {kinds[0]} above zero, but {show(amount)} came.", "Look at the unit.")
    return amount
