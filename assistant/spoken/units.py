"""Units in words: reading them, naming them, and what they measure. Nothing is converted here."""

from functools import lru_cache

from assistant.errors import QuantityError
from assistant.spoken.grammar import Many, Parse, Words, alt, seq
from assistant.spoken.tables import SpokenUnit, UnitRules, Units
from assistant.spoken.tokens import Tokeniser


class UnitWords:
    """The units of a language.

    Args:
        units: their table.
        tokeniser: cuts a unit that is written.

    Attributes:
        rules: the grammar of a unit.
        canonical: the canonical name of a unit that people write or say: "ml/hr" is ``mL/h``. Raises QuantityError:
            it is no unit that can be said here.
        dimension: what a unit measures: ("volume", "time") for mL/h. Body weight is no mass that cancels. Raises
            likewise.
    """

    def __init__(self, units: Units, tokeniser: Tokeniser) -> None:
        self._units = units
        self._tokens_of = tokeniser.tokens_of
        self._by_name = {unit.name: unit for unit in units.units}
        self.rules = self._grammar()
        self.canonical = lru_cache(maxsize=256)(self._canonical)
        self.dimension = lru_cache(maxsize=256)(self._dimension)

    def say_unit(self, unit: str, plural: bool = True) -> str:
        """How a unit is said: ``mcg/kg/min`` is "micrograms per kilogram per minute".

        Raises:
            QuantityError: it is no unit that can be said here.
        """
        first, *below = self._parts(unit)
        said = [first.many if plural else first.one, *(part.one for part in below)]
        return f" {self._units.per} ".join(said)

    def forms_of(self, unit: str) -> tuple[str, ...]:
        """How a unit may be said, the assistant's own way first.

        Raises:
            QuantityError: it is no unit that can be said here.
        """
        first, *below = self._parts(unit)
        said = [form for form in _forms(first) if all(self._is_said(word) for word in form.split())]
        for part in below:
            ways = (self._units.per, *self._units.further_per(part.one))
            said = [f"{head} {per} {part.one}" for head in said for per in ways]
        return tuple(dict.fromkeys([self.say_unit(unit), self.say_unit(unit, plural=False), *said]))

    def _grammar(self) -> UnitRules:
        units = self._units
        simple = Words({form: unit.name for unit in units.units for form in _forms(unit)})
        below = Words({form: name for name in units.denominators for form in _forms(self._by_name[name])})
        per_something = alt(
            seq(Words(dict.fromkeys(units.joins)), below, build=lambda _, name: name), Words(dict(units.every))
        )
        return UnitRules(
            simple,
            seq(simple, Many(per_something, 0, 2), build=self._compound),
            seq(per_something, build=lambda name: f"/{_below_the_line(name)}"),
        )

    def _compound(self, above: str, below: tuple[str, ...]) -> str | None:
        """The canonical name: body weight before time."""
        if len(set(below)) != len(below) or above in below:
            return None
        ordered = sorted(below, key=lambda name: self._by_name[name].dimension == "time")
        return "/".join([above, *map(_below_the_line, ordered)])

    def _canonical(self, text: str) -> str:
        # Names such as "mL/h" are read by their parts, for a form in small letters may mean something else.
        found = Parse(self._tokens_of(text)).whole(self.rules.unit) if len(text) <= 60 else ()
        if len(found) != 1:
            shown = "".join(c if c.isprintable() else "?" for c in text[:40])
            raise QuantityError(
                f'"{shown}" is not a unit that can be said here.', "Use a unit such as mL/h, mL, min or mg."
            )
        return str(found[0])

    def _dimension(self, unit: str) -> tuple[str, ...]:
        first, *below = self._parts(unit)
        return (first.dimension, *sorted("body weight" if u.name == "kg" else u.dimension for u in below))

    def _parts(self, unit: str) -> list[SpokenUnit]:
        """The unit and those below its line."""
        return [self._by_name["days" if name == "day" else name] for name in self.canonical(unit).split("/")]

    def _is_said(self, word: str) -> bool:
        return word.isalpha() and len(word) > 1 and word not in self._units.abbreviated


def _forms(unit: SpokenUnit) -> tuple[str, ...]:
    return tuple(dict.fromkeys((unit.many, unit.one, *unit.forms)))


def _below_the_line(name: str) -> str:
    """The name as it is written there: "day" and not "days"."""
    return "day" if name == "days" else name
