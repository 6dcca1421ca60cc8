"""Units in words: reading them, naming them, and what they measure. Nothing is converted here."""

from functools import lru_cache

from assistant.errors import QuantityError
from assistant.spoken.english.units import ABBREVIATED, DENOMINATORS, EVERY, PER, UNITS, SpokenUnit
from assistant.spoken.grammar import Many, Parse, Rule, Words, alt, seq
from assistant.spoken.tokens import tokens_of

_BY_NAME: dict[str, SpokenUnit] = {unit.name: unit for unit in UNITS}


def _forms(unit: SpokenUnit) -> tuple[str, ...]:
    return tuple(dict.fromkeys((unit.many, unit.one, *unit.forms)))


SIMPLE_UNIT: Rule = Words({form: unit.name for unit in UNITS for form in _forms(unit)})
"""A unit without a denominator; its meaning is the canonical name."""

_BELOW: Rule = Words({form: name for name in DENOMINATORS for form in _forms(_BY_NAME[name])})
_PER: Rule = Words(dict.fromkeys(PER))
_PER_SOMETHING: Rule = alt(seq(_PER, _BELOW, build=lambda _, name: name), Words(dict(EVERY)))


def _compound(above: str, below: tuple[str, ...]) -> str | None:
    """The canonical name: body weight before time, "day" and not "days" below the line."""
    if len(set(below)) != len(below) or above in below:
        return None
    ordered = sorted(below, key=lambda name: _BY_NAME[name].dimension == "time")
    return "/".join([above, *("day" if name == "days" else name for name in ordered)])


UNIT: Rule = seq(
    SIMPLE_UNIT,
    Many(_PER_SOMETHING, 0, 2),
    build=_compound,
)
"""Any unit; its meaning is the canonical name: ``mcg/kg/min``."""


BARE_DENOMINATOR: Rule = seq(_PER_SOMETHING, build=lambda name: "/day" if name == "days" else f"/{name}")
"""A denominator by itself ("per hour", "an hour"), where the step makes plain of what; ``/h``."""


@lru_cache(maxsize=256)
def canonical(text: str) -> str:
    """The canonical name of a unit that people write or say: "ml/hr" is ``mL/h``.

    Raises:
        QuantityError: it is no unit that can be said here.
    """
    # Names such as "mL/h" are read by their parts, for a form in small letters may mean something else.
    found = Parse(tokens_of(text)).whole(UNIT) if len(text) <= 60 else ()
    if len(found) != 1:
        shown = "".join(c if c.isprintable() else "?" for c in text[:40])
        raise QuantityError(
            f'"{shown}" is not a unit that can be said here.', "Use a unit such as mL/h, mL, min or mg."
        )
    return str(found[0])


@lru_cache(maxsize=256)
def dimension(unit: str) -> tuple[str, ...]:
    """What a unit measures: ("volume", "time") for mL/h. Body weight is no mass that cancels.

    Raises:
        QuantityError: it is no unit that can be said here.
    """
    above, *below = canonical(unit).split("/")
    kinds = sorted(
        "body weight" if name == "kg" else _BY_NAME[name if name in _BY_NAME else "days"].dimension for name in below
    )
    return (_BY_NAME[above].dimension, *kinds)


def say_unit(unit: str, plural: bool = True) -> str:
    """How a unit is said: ``mcg/kg/min`` is "micrograms per kilogram per minute".

    Raises:
        QuantityError: it is no unit that can be said here.
    """
    above, *below = canonical(unit).split("/")
    first = _BY_NAME[above]
    said = [first.many if plural else first.one]
    said += [_BY_NAME["days" if name == "day" else name].one for name in below]
    return " per ".join(said)


def forms_of(unit: str) -> tuple[str, ...]:
    """How a unit may be said, the assistant's own way first.

    Raises:
        QuantityError: it is no unit that can be said here.
    """
    above, *below = canonical(unit).split("/")
    said = [form for form in _forms(_BY_NAME[above]) if all(_is_said(word) for word in form.split())]
    for name in below:
        known = _BY_NAME["days" if name == "day" else name]
        said = [f"{head} {per} {known.one}" for head in said for per in ("per", _article(known.one))]
    own = [say_unit(unit), say_unit(unit, plural=False)]
    return tuple(dict.fromkeys([*own, *said]))


def _is_said(word: str) -> bool:
    return word.isalpha() and len(word) > 1 and word not in ABBREVIATED


def _article(word: str) -> str:
    return "an" if word[0] in "aeiouh" else "a"
