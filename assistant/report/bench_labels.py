"""Labels to cut out and tape on, and a wristband: each says what is laid out, right or wrong, and nothing beside it."""

import random
from datetime import date, timedelta

from assistant.checklist.facts import ANOTHER_PATIENT, WRISTBAND
from assistant.dosing import Amount, show
from assistant.orders.laid_out import CONTAINERS, LABELS
from assistant.orders.model import Order, Patient
from assistant.orders.reading import day_in_words
from assistant.orders.sheet import hung_as
from assistant.orders.shelf import shelf
from assistant.orders.solve import strength_of
from assistant.report.content import Part
from assistant.spoken.language import ReportWords

_KEEPS, _PAST = timedelta(days=365), timedelta(days=30)
"""Where no date is laid out: how long a label lasts from the day of the order, and how long one is out of date."""


class Label(Part):
    """One label.

    Attributes:
        part: the part of the order that asks for it.
        place: where it is taped; stands beside the label and is cut away.
        kind: what it is on, as the label says it.
        name: drug or fluid.
        amounts: what it holds, a line each.
        use_by: the date on it, or "" where the package underneath has one of its own.
    """

    part: str
    place: str
    kind: str
    name: str
    amounts: tuple[str, ...]
    use_by: str

    def lines(self, words: ReportWords) -> tuple[str, ...]:
        """What it says of what it holds, for somebody who looks for it."""
        held = f"{self.name}, {', '.join(self.amounts)}"
        return (held, words.use_by(self.use_by)) if self.use_by else (held,)


class Band(Part):
    """A wristband."""

    name: str
    born: str
    number: str
    allergies: str


def labels_of(order: Order, words: ReportWords, today: date) -> tuple[Label, ...]:
    """The labels of an order, in the order of its parts.

    Args:
        order: with what is laid out.
        words: the language of what the order does not say itself.
        today: dates follow from it where the order has none: neither one for the label nor its own.
    """
    says = order.labels()
    found = []
    for part in LABELS:
        if getattr(order, part) is None:
            continue
        name, *amounts = (says[f"{part}.{field}"] for field in LABELS[part])
        if part == "gravity":
            name, amounts = words.GRAVITY_SET, [name]
        found.append(
            Label(
                part=part,
                place=hung_as(order, part),
                kind=words.LABEL_KINDS["syringe" if part == "secondary" and order.syringe is not None else part],
                name=str(name),
                amounts=tuple(_amounts(part, [one for one in amounts if isinstance(one, Amount)], words)),
                use_by=_use_by(order, part, today) if part in CONTAINERS else "",
            )
        )
    return tuple(found)


def _amounts(part: str, amounts: list[Amount], words: ReportWords) -> list[str]:
    """Dose in volume; the concentration too where the drug runs by dose rate, and a pump is set by it, and on a vial.

    A bag that is given as a whole bears none (both: common practice, no source).
    """
    if len(amounts) == 1:
        return [show(amounts[0])]
    dose, volume = amounts
    held = words.held_in(show(dose), show(volume))
    return [held, show(strength_of(dose, volume).amount)] if part in ("dose", "push") else [held]


def _use_by(order: Order, part: str, today: date) -> str:
    laid_out = getattr(order.laid_out, part)
    day = order.written or today
    usual = day - _PAST if laid_out.state == "expired" else day + _KEEPS
    return day_in_words(laid_out.expires or usual)


def band_of(order: Order, words: ReportWords) -> Band:
    """The wristband: the patient's, or another one's where that is laid out."""
    wrong = order.laid_out.found.get(WRISTBAND) == ANOTHER_PATIENT
    patient = another_patient(order) if wrong else order.patient
    return Band(
        name=patient.name,
        born=day_in_words(patient.born),
        number=patient.number,
        allergies=", ".join(patient.allergies) or words.NONE_KNOWN,
    )


def another_patient(order: Order) -> Patient:
    """Somebody else, invented: the same one for the same order, and like its patient in nothing that is checked."""
    own = order.patient
    chance = random.Random(f"{order.code}/{own.number}/{own.name}")  # noqa: S311 - people by chance are no secret
    people = shelf().people
    taken = own.name.split()
    first, last = (chance.choice([one for one in parts if one not in taken]) for parts in (people.first, people.last))
    born, number = own.born, own.number
    while born == own.born or number == own.number:
        born = date(chance.randint(1938, 2004), chance.randint(1, 12), chance.randint(1, 28))
        number = f"L-{chance.randint(50000, 99999)}"
    allergies = (chance.choice(people.other_allergies),) if chance.random() < 0.5 else ()
    return Patient(name=f"{first} {last}", born=born, number=number, allergies=allergies)
