"""An order on paper: the learner's sheet without the answers, the instructor's with them."""

from collections.abc import Iterator

from assistant.dosing import Amount, show
from assistant.orders.key import KeyEntry
from assistant.orders.model import Order
from assistant.orders.plausible import table
from assistant.orders.solve import answer_key
from assistant.orders.truth import truth_of

CAUTION = (
    "Training only. People, orders and lab are invented; the numbers are for practice and no advice for treatment."
    " Local policy comes first."
)
"""Stands on every sheet."""
_LABELS = {
    "primary.fluid": "fluid",
    "primary.bag_volume": "volume",
    "primary.expires": "use by",
    "secondary.drug": "drug",
    "secondary.dose": "dose in the bag",
    "secondary.volume": "volume",
    "secondary.expires": "use by",
    "second_secondary.drug": "drug",
    "second_secondary.dose": "dose in the bag",
    "second_secondary.volume": "volume",
    "dose.drug": "drug",
    "dose.amount": "drug in the bag",
    "dose.volume": "volume",
    "dose.expires": "use by",
    "flush.fluid": "fluid",
    "flush.volume": "volume",
    "flush.expires": "use by",
    "second_secondary.expires": "use by",
    "gravity.drop_factor": "drops",
    "push.drug": "drug",
    "push.amount": "drug in the vial",
    "push.volume": "volume",
    "push.expires": "use by",
}
BAGS = {
    "primary": "Bag of the primary",
    "secondary": "Bag with the drug",
    "second_secondary": "Second bag with a drug",
    "dose": "Bag with the drug",
    "flush": "Syringe for the flush",
    "gravity": "Set",
    "push": "Vial with the drug",
}
"""What is laid out, by the part of the order that asks for it."""
SYRINGE_WITH_DRUG = "Syringe with the drug"


def hung_as(order: Order, part: str) -> str:
    """What the label of a part is on, as the instructor looks for it: a bag, or the syringe of a syringe pump."""
    return SYRINGE_WITH_DRUG if part == "secondary" and order.syringe is not None else BAGS[part]


def labels(order: Order) -> Iterator[str]:
    """The labels on the stand, one line each, as they hang."""
    bags: dict[str, list[str]] = {}
    for name, value in order.labels().items():
        bags.setdefault(name.partition(".")[0], []).append(f"{_LABELS[name]} {_shown(value)}")
    for bag, parts in bags.items():
        yield f"{hung_as(order, bag)}: {', '.join(parts)}"


def learners_sheet(order: Order) -> str:
    """The order and the labels on the stand; no answer, and no word of the faults."""
    lines = [f"Order {order.code}", "", *order.sentences(), "", "On the stand", *labels(order), "", CAUTION]
    return "\n".join(lines) + "\n"


def instructors_sheet(order: Order) -> str:
    """The learner's sheet with the answer key, its working, the faults, and the sources.

    Raises:
        QuantityError: a formula refuses the order's numbers.
    """
    lines = [f"Order {order.code}: instructor's sheet", "", *order.sentences(), "", "On the stand", *labels(order)]
    lines += ["", "Answer key"]
    for entry in answer_key(order).values():
        lines.append(f"{in_words(entry.name)}: {value_of(entry)}")
        lines += [f"    {line}" for line in entry.working]
    faults = truth_of(order, table()).faults
    lines += ["", "Laid out with these faults" if faults else "Laid out as ordered, without a fault"]
    for fault in faults:
        lines += [
            fault.what,
            *([f"    {fault.say}"] if fault.say else []),
            f"    Would reach the patient: {fault.reaches[0].lower()}{fault.reaches[1:]}",
        ]
    lines += ["", "What it teaches", order.teaching] if order.teaching else []
    lines += ["", "Sources", *order.sources, "", CAUTION]
    return "\n".join(lines) + "\n"


def in_words(name: str) -> str:
    """A name of the key as an instructor reads it: ``primary.vtbi`` is "Primary, volume to be infused"."""
    part, _, what = name.partition(".")
    what = "volume to be infused" if what == "vtbi" else what.replace("_", " ")
    return f"{part.replace('_', ' ').capitalize()}, {what}"


def value_of(entry: KeyEntry) -> str:
    """A value of the key with its unit."""
    return entry.value if isinstance(entry.value, str) else show(Amount(entry.value, entry.unit or ""))


def _shown(value: str | Amount) -> str:
    return value if isinstance(value, str) else show(value)
