"""A fictional order as the program holds it: typed, frozen, checked."""

from collections.abc import Mapping
from datetime import date
from typing import Annotated, Literal, Self

from pydantic import BeforeValidator, model_validator

from assistant.checklist.paper import Paper, Text, refuse
from assistant.dosing import Amount, Rounding, parse_rounding, show
from assistant.dosing.units import unit
from assistant.orders.laid_out import CONTAINERS, LABELS, LaidOut
from assistant.orders.lines import ByDoseRate, Change, Flush, Gravity, Primary, Push, Running, Secondary, Syringe
from assistant.orders.protocol import Protocol
from assistant.orders.reading import Name, Weight, day_in_words, read_rounding

Paced = Literal["primary", "secondary", "dose"]
"""An infusion whose speed stands on the paper."""
PoundsPerKilogram = Literal["2.2", "2.20462"]
"""Factors by which weights in pounds are turned into kilograms, as schools teach them."""
ILLEGIBLE = "[cannot be read]"
"""What stands on the paper where a speed cannot be read."""


class Patient(Paper):
    """Whom the order is for: invented."""

    name: Name
    born: date
    number: Name
    allergies: tuple[Name, ...] = ()
    """Empty means: none known."""
    weight: Weight | None = None


class Order(Paper):
    """A fictional prescription that a learner carries out.

    It holds at least one of `primary`, `secondary`, `dose`, `push` and `flush`. A secondary without a primary is an
    intermittent infusion by itself, through a saline lock.
    """

    name: str
    """The file's stem."""
    title: Name
    code: Name
    """As it stands on the paper, for example ``OH-101``."""
    ordered_by: Name
    patient: Patient
    primary: Primary | None = None
    secondary: Secondary | None = None
    second_secondary: Secondary | None = None
    """Another intermittent infusion, through the same secondary set after the first one."""
    dose: ByDoseRate | None = None
    gravity: Gravity | None = None
    push: Push | None = None
    protocol: Protocol | None = None
    """The lab's table by which the dose rate is changed."""
    syringe: Syringe | None = None
    flush: Flush | None = None
    running: Running | None = None
    change: Change | None = None
    laid_out: LaidOut = LaidOut()
    """The bench, where it is not as ordered; never shown to the learner."""
    illegible: tuple[Paced, ...] = ()
    """Infusions whose speed cannot be read on the paper, on purpose; the key still holds it."""
    rounding: Annotated[Rounding, BeforeValidator(read_rounding)] = parse_rounding("tenth")
    """What the pump takes as a rate; the answer key rounds to it once, at the end."""
    pounds_per_kg: PoundsPerKilogram | None = None
    """By what a weight in pounds is divided; None: by the exact factor (1 lb = 0.453 592 37 kg)."""
    written: date | None = None
    """The day of the order, where it is told."""
    teaching: Text = ""
    """For the instructor: what the order is there to teach; never shown to the learner."""
    sources: tuple[Text, ...] = ()
    """Where the dose, the dilution and the time are published."""
    digest: str
    """SHA-256 (hex) over the bytes of the file."""

    @model_validator(mode="after")
    def _holds_together(self) -> Self:
        if self.primary is None:
            if self.secondary is None and self.dose is None and self.push is None and self.flush is None:
                raise refuse("The order orders nothing.", "Add [primary], [secondary], [dose], [push] or [flush].")
            for part in ("gravity", "running", "change"):
                if getattr(self, part) is not None:
                    raise refuse(f"[{part}] needs a primary.", f"Add [primary], or take [{part}] out.")
        if self.change is not None and self.primary is not None and not self.change.hold:
            self.change.check_against(self.primary.rate)
        if self.protocol is not None:
            self._can_be_changed(self.protocol)
        if self.syringe is not None:
            self._fits_into(self.syringe)
        if self.second_secondary is not None and self.secondary is None:
            raise refuse("A second secondary needs a first one.", "Write it as [secondary].")
        for part in LABELS:
            laid_out = getattr(self.laid_out, part)
            if getattr(self, part) is None and laid_out != type(laid_out)():
                raise refuse(
                    f"[laid_out.{part}] is there, but the order has no {part}.",
                    f"Add [{part}], or take [laid_out.{part}] out.",
                )
        by_weight = self.dose is not None and unit(self.dose.ordered.unit).kind == "dose rate per weight"
        if by_weight and self.patient.weight is None:
            raise refuse("The dose is ordered by weight, but the patient has none.", 'Add weight = "70 kg".')
        for part in self.illegible:
            if getattr(self, part) is None:
                raise refuse(f"There is no {part} that could be illegible.", "Take it out of illegible.")
        return self

    def _can_be_changed(self, protocol: Protocol) -> None:
        if self.dose is None:
            raise refuse("A table needs a dose that it changes.", "Add [dose].")
        changes = [change for row in protocol.rows for change in (row.raise_by, row.lower_by) if change is not None]
        if any(change.unit != self.dose.ordered.unit for change in changes):
            raise refuse("The table changes another unit.", f"Write it in {self.dose.ordered.unit}.")
        if protocol.applied_to(self.dose.ordered).value <= 0:
            raise refuse("By the table nothing is left to run.", "Order more, or lower by less.")

    def _fits_into(self, syringe: Syringe) -> None:
        if self.secondary is None or self.primary is not None:
            raise refuse("A syringe pump gives an intermittent drug by itself.", "Write it as [secondary] alone.")
        if self.secondary.volume.in_unit("mL") > syringe.size.in_unit("mL"):
            raise refuse("The syringe is too small for the volume.", "Give a larger syringe.")

    def sentences(self) -> tuple[str, ...]:
        """The order as it is shown, one sentence each; only what it states, nothing that follows from it."""
        patient = self.patient
        day = f" Written on {day_in_words(self.written)}." if self.written else ""
        return (
            f"Order {self.code} for {patient.name}, born {day_in_words(patient.born)}, number {patient.number}.",
            *self._to_be_given(),
            f"Ordered by {self.ordered_by}.{day}",
        )

    def in_short(self) -> str:
        """What is spoken first: allergies, and what is to be given; whose it is and who ordered it is read."""
        return " ".join(self._to_be_given())

    def _to_be_given(self) -> tuple[str, ...]:
        patient = self.patient
        allergies = ", ".join(patient.allergies) or "none known"
        weight = f" Weight {show(patient.weight)}." if patient.weight else ""
        lines = [f"Allergies: {allergies}.{weight}"]
        if self.primary is not None:
            lines.append(self._primary(self.primary))
        if self.gravity is not None:
            lines.append(f"By gravity, with a set of {show(self.gravity.drop_factor)}.")
        if self.secondary is not None:
            lines.append(f"{'Secondary' if self.primary else 'Intermittent'}: {self._secondary(self.secondary)}")
        if self.second_secondary is not None:
            lines.append(f"Then: {self.second_secondary.sentence()}")
        if self.syringe is not None:
            lines.append(self.syringe.sentence())
        if self.dose is not None:
            lines.append(self.dose.sentence(ILLEGIBLE if "dose" in self.illegible else ""))
        if self.protocol is not None:
            lines.append(self.protocol.sentence())
        if self.push is not None:
            lines.append(self.push.sentence())
        if self.flush is not None:
            lines.append(self.flush.sentence())
        if self.running is not None:
            lines.append(f"The primary has been running for {show(self.running.since)}.")
        if self.change is not None:
            lines.append(self.change.sentence())
        return tuple(lines)

    def _primary(self, primary: Primary) -> str:
        return primary.sentence(ILLEGIBLE if "primary" in self.illegible else "")

    def _secondary(self, secondary: Secondary) -> str:
        return secondary.sentence(ILLEGIBLE if "secondary" in self.illegible else "")

    def sentence(self) -> str:
        """All `sentences` in one text."""
        return " ".join(self.sentences())

    def labels(self) -> Mapping[str, str | Amount]:
        """What the labels at the bench say, by names of the answer key."""
        says: dict[str, str | Amount] = {}
        for part, names in LABELS.items():
            ordered, laid_out = getattr(self, part), getattr(self.laid_out, part)
            if ordered is None:
                continue
            for name in names:
                says[f"{part}.{name}"] = getattr(laid_out, name) or getattr(ordered, name)
            if part in CONTAINERS and laid_out.expires is not None:
                says[f"{part}.expires"] = day_in_words(laid_out.expires)
        return says
