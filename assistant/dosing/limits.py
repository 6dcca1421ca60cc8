"""Limits of a fluid or drug, from a table with a source on each line: within, soft, hard, or unknown.

No limit known is never "safe": it is unknown, and said to be.
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from enum import StrEnum
from fractions import Fraction

from assistant.dosing import units
from assistant.dosing.amount import Amount, show
from assistant.dosing.body import kilograms
from assistant.dosing.dose_rate import mean_dose_rate
from assistant.dosing.result import Measure, tell, tell_exact


class Level(StrEnum):
    """What a check says, from the mildest to the gravest."""

    WITHIN = "within"
    UNKNOWN = "unknown"
    SOFT = "soft limit"
    HARD = "hard limit"


_GRAVITY = list(Level)


class Kind(StrEnum):
    """What a limit bounds; the value is the field's name in the table."""

    HIGHEST_RATE = "highest_rate"
    LOWEST_RATE = "lowest_rate"
    HIGHEST_DOSE_RATE = "highest_dose_rate"
    SHORTEST_TIME = "shortest_time"
    HIGHEST_CONCENTRATION = "highest_peripheral_concentration"
    HIGHEST_DOSE = "highest_usual_dose"
    LOWEST_DOSE = "lowest_usual_dose"


_AT_LEAST = (Kind.LOWEST_RATE, Kind.SHORTEST_TIME, Kind.LOWEST_DOSE)


@dataclass(frozen=True)
class Limit:
    """One bound of one fluid or drug.

    Attributes:
        kind: what it bounds.
        value: the bound itself is still within.
        level: `Level.SOFT` needs a reason to be passed, `Level.HARD` is refused.
        source: where it stands.
    """

    kind: Kind
    value: Amount
    level: Level
    source: str


@dataclass(frozen=True)
class Entry:
    """A fluid or drug with what is known of it.

    Attributes:
        name: generic name, or the fluid's name.
        limits: in the order of the table.
        incompatible: names of what must not share its line, with level and source.
        also: other names of the same fluid or drug, as they are compared.
    """

    name: str
    limits: tuple[Limit, ...]
    incompatible: Mapping[str, tuple[Level, str]]
    also: frozenset[str] = frozenset()


@dataclass(frozen=True)
class Policy:
    """A time that local policy sets, such as the change of a set: configurable, with its source."""

    name: str
    value: Amount
    source: str


@dataclass(frozen=True)
class Finding:
    """What one check says.

    Attributes:
        level: how grave it is.
        about: what was checked, in words.
        sentence: what is shown and spoken.
        source: where the limit stands; empty where none is known.
    """

    level: Level
    about: str
    sentence: str
    source: str = ""


@dataclass(frozen=True)
class Limits:
    """The whole table."""

    entries: Mapping[str, Entry]
    policies: Mapping[str, Policy]

    def entry(self, name: str) -> Entry | None:
        """What is known of a fluid or drug by any of its names, without regard to capitals."""
        return self.entries.get(key_of(name))

    def _names(self, name: str) -> frozenset[str]:
        """Every name of what this name stands for, as they are compared."""
        entry = self.entry(name)
        return frozenset({key_of(name)}) | (entry.also | {key_of(entry.name)} if entry else frozenset())

    def check(
        self,
        name: str,
        *,
        rate: Measure | None = None,
        dose: Measure | None = None,
        duration: Measure | None = None,
        concentration: Measure | None = None,
        dose_rate: Measure | None = None,
        weight: Measure | None = None,
        together_with: Iterable[str] = (),
    ) -> tuple[Finding, ...]:
        """Check what is known of an infusion against the limits of its fluid or drug.

        Args:
            name: of the fluid or drug.
            rate: pump rate.
            dose: one dose.
            duration: its infusion time.
            concentration: in the bag, for a peripheral line.
            dose_rate: where it is ordered as such; worked out from dose and duration otherwise.
            weight: body weight, for limits per kg.
            together_with: what else runs in the same line.

        Returns:
            One finding for each limit and each question without one, the gravest first.

        Raises:
            QuantityError: an input is not of its kind.
        """
        found = self.entry(name)
        findings: list[Finding] = []
        if dose_rate is None and dose is not None and duration is not None:
            mass = units.same_dimension(dose.unit, "mg")
            dose_rate = mean_dose_rate(dose, duration, unit="mg/min" if mass else None)
        questions: tuple[tuple[str, Measure | None, tuple[Kind, ...]], ...] = (
            ("rate", rate, (Kind.HIGHEST_RATE, Kind.LOWEST_RATE)),
            ("dose", dose, (Kind.HIGHEST_DOSE, Kind.LOWEST_DOSE)),
            ("infusion time", duration, (Kind.SHORTEST_TIME,)),
            ("concentration", concentration, (Kind.HIGHEST_CONCENTRATION,)),
            ("dose rate", dose_rate, (Kind.HIGHEST_DOSE_RATE,)),
        )
        for about, given, kinds in questions:
            if given is None:
                continue
            limits = [limit for limit in found.limits if limit.kind in kinds] if found else []
            if not limits:
                findings.append(_unknown(name, about))
            findings += [_judge(name, about, given, limit, weight) for limit in limits]
        for other in together_with:
            findings.append(self._together(name, other))
        findings.sort(key=lambda finding: -_GRAVITY.index(finding.level))
        return tuple(findings)

    def _together(self, one: str, other: str) -> Finding:
        about = f"{one} with {other} in one line"
        for first, second in ((one, other), (other, one)):
            entry = self.entry(first)
            for name in sorted(self._names(second)) if entry else ():
                if entry is None or name not in entry.incompatible:
                    continue
                level, source = entry.incompatible[name]
                return Finding(level, about, f"{one} and {other} must not share a line.", source)
        return Finding(
            Level.UNKNOWN, about, f"Whether {one} and {other} may share a line is not known here: ask the pharmacist."
        )


def worst(findings: Iterable[Finding]) -> Level:
    """The gravest level of some findings; unknown where there is none."""
    levels = [finding.level for finding in findings]
    return max(levels, key=_GRAVITY.index, default=Level.UNKNOWN)


def _unknown(name: str, about: str) -> Finding:
    return Finding(
        Level.UNKNOWN, about, f"No limit for the {about} of {name} is known here; that does not make it safe."
    )


def _judge(name: str, about: str, given: Measure, limit: Limit, weight: Measure | None) -> Finding:
    bound, wanted = limit.value.ratio, limit.value
    kind = units.unit(wanted.unit).kind
    value: Fraction
    flat = wanted.unit.replace("/kg", "", 1)
    if kind == "dose rate per weight" and units.same_dimension(given.unit, flat):
        if weight is None:
            return Finding(
                Level.UNKNOWN, about, f"The limit of {show(wanted)} needs the body weight to be checked.", limit.source
            )
        value = given.in_unit(flat) / kilograms(weight)
    elif units.same_dimension(given.unit, wanted.unit):
        value = given.in_unit(wanted.unit)
    else:
        return Finding(
            Level.UNKNOWN, about, f"{tell(given)} cannot be compared with the limit of {show(wanted)}.", limit.source
        )
    least = limit.kind in _AT_LEAST
    shown = tell(given)
    if given.unit != wanted.unit:
        shown += f", that is {tell_exact(value, wanted.unit)},"
    if (value >= bound) if least else (value <= bound):
        return Finding(Level.WITHIN, about, f"The {about} of {shown} keeps the limit of {show(wanted)}.", limit.source)
    side = "below" if least else "above"
    consequence = "needs a reason" if limit.level is Level.SOFT else "is refused"
    return Finding(
        limit.level,
        about,
        f"The {about} of {shown} for {name} is {side} the limit of {show(wanted)}: it {consequence}.",
        limit.source,
    )


def key_of(name: str) -> str:
    """A name as it is compared: without regard to capitals and spaces."""
    return " ".join(name.casefold().split())
