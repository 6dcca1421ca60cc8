"""What an order that loads may still have wrong, each with file, line, rule and remedy.

Pure: it is given the order with its file, and the table of limits, and reads nothing.
"""

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction
from typing import get_args

from assistant.checklist.finding import Finding, Severity
from assistant.checklist.paper_file import PaperFile
from assistant.checklist.wording import error_prone
from assistant.dosing import Amount, show, show_number
from assistant.dosing.limits import Limits
from assistant.dosing.result import moved_far, tell_exact
from assistant.dosing.units import same_dimension
from assistant.dosing.usual import beyond_usual
from assistant.errors import QuantityError
from assistant.orders.fault import Fault
from assistant.orders.laid_out import CONTAINERS, LABELS, OnPurpose
from assistant.orders.model import Order
from assistant.orders.names import label_names, with_own
from assistant.orders.older import PLANTED_AS, place_in
from assistant.orders.pairs import ASK_THE_PHARMACIST, pair_of
from assistant.orders.shelf import shelf
from assistant.orders.solve import amount_of, answer_key, can_be_said
from assistant.orders.truth import truth_of
from assistant.spoken import ENGLISH
from assistant.spoken.expect import NameExpected, NumberExpected
from assistant.spoken.meaning import Answer

ORDER_RULES = (
    "order-key",
    "order-allergy",
    "order-limits",
    "order-pair",
    "order-drugs",
    "order-on-purpose",
    "order-dates",
    "order-rate",
    "order-sayable",
    "order-steps",
    "order-usual",
    "order-names",
    "order-wording",
    "order-teaching",
    "order-sources",
    "order-older",
)
"""Every rule, in the order in which they are looked at."""
_DRUGS = ("secondary", "second_secondary", "dose", "push")
_MATTERS = get_args(OnPurpose)
_INSTEAD = {
    "hung": "Write what the labels say as [laid_out.primary], [laid_out.secondary] or [laid_out.dose].",
    "planted": "Take it out: the faults follow from what is laid out; on_purpose tells of one in the order itself.",
}
"""What takes the place of a field of earlier versions."""


@dataclass(frozen=True)
class _Complaint:
    rule: str
    severity: Severity
    where: tuple[str, ...]
    what: str
    mend: str


def is_order(paper: PaperFile) -> bool:
    """Whether a file is meant as an order: it names a patient and has no steps."""
    return "patient" in paper.table and "steps" not in paper.table


def lint_order(order: Order, paper: PaperFile, limits: Limits) -> tuple[Finding, ...]:
    """Every finding about an order, in the order of lines.

    Args:
        order: one that loads.
        paper: its file.
        limits: the table of limits.
    """
    complaints = [*_key(order)]
    if not complaints:  # without a key there is nothing to compare
        faults = truth_of(order, limits).faults
        complaints += [*_wrong(order, faults), *_on_purpose(order, faults, paper), *_usual(order, faults)]
        for rule in _RULES:
            complaints += rule(order)
    complaints += _older(paper)
    findings = [
        Finding(
            str(paper.path), paper.line_of(place_in(paper.table, one.where)), one.rule, one.severity, one.what, one.mend
        )
        for one in complaints
    ]
    return tuple(sorted(findings, key=lambda found: (found.line, found.rule)))


def _older(paper: PaperFile) -> Iterator[_Complaint]:
    """The file is written as the present version has it."""
    for name, mend in _INSTEAD.items():
        if name in paper.table:
            yield _warning("order-older", (name,), f"{name} is how earlier versions wrote it, and is still read.", mend)


def _key(order: Order) -> Iterator[_Complaint]:
    try:
        answer_key(order)
    except QuantityError as cause:
        yield _error("order-key", ("title",), f"no answer key follows from the order: {cause.what}", cause.remedy)


def _wrong(order: Order, faults: tuple[Fault, ...]) -> Iterator[_Complaint]:
    """What is wrong in an order itself is there on purpose."""
    for fault in faults:
        part, _, matter = fault.fact.partition(".")
        if matter not in _MATTERS or matter in order.laid_out.on_purpose:
            continue
        make = _error if fault.grave else _warning
        yield make(
            f"order-{matter}",
            ("patient", "allergies") if matter == "allergy" else (part,),
            fault.what,
            f'Change the order, or write on_purpose = ["{matter}"] under [laid_out] if it is there to be noticed.',
        )


def _on_purpose(order: Order, faults: tuple[Fault, ...], paper: PaperFile) -> Iterator[_Complaint]:
    """What is there on purpose is there."""
    there = {fault.fact.rpartition(".")[2] for fault in faults}
    planted = paper.table.get("planted")
    if planted is not None:
        if not there & PLANTED_AS[planted]:
            yield _error(
                "order-on-purpose",
                ("planted",),
                f"planted says {planted}, but nothing of that kind is in the file.",
                "Put the fault into the file, or take planted out.",
            )
        return
    for matter in order.laid_out.on_purpose:
        if matter not in there:
            yield _error(
                "order-on-purpose",
                ("laid_out", "on_purpose"),
                f"on_purpose says {matter}, but nothing of that kind is wrong in the order.",
                "Put the fault into the order, or take the word out.",
            )


def _dates(order: Order) -> Iterator[_Complaint]:
    """Whether a date has passed can be told, and is not told in two ways."""
    for part in CONTAINERS:
        bag = getattr(order.laid_out, part)
        where = ("laid_out", part, "expires")
        if bag.expires is None:
            continue
        if order.written is None and bag.state != "expired":
            yield _error(
                "order-dates",
                where,
                "a label bears a date, but the order has none, so nobody can tell whether it has passed.",
                "Add written = 2026-11-25 (the day of the order), or take the date out.",
            )
        if order.written is not None and bag.state == "expired" and bag.expires >= order.written:
            yield _error(
                "order-dates",
                where,
                "the bag is laid out as expired, but its date has not passed on the day of the order.",
                "Write a date before that day, or take the state out.",
            )


def _rates(order: Order) -> Iterator[_Complaint]:
    """A stated rate is one that the pump takes."""
    step = order.rounding.step
    for part in ("primary", "secondary", "second_secondary"):
        infusion = getattr(order, part)
        rate: Amount | None = infusion.rate if infusion is not None else None
        if rate is None or step is None or not same_dimension(rate.unit, "mL/h"):
            continue
        if rate.in_unit("mL/h") % step.as_integer_ratio()[0] and order.rounding.apply(rate.in_unit("mL/h")) != (
            rate.in_unit("mL/h")
        ):
            yield _error(
                "order-rate",
                (part, "rate"),
                f"{show(rate)} cannot be entered where the pump takes steps of {step} mL/h.",
                "Order a rate that the pump takes, or change rounding.",
            )


def _sayable(order: Order) -> Iterator[_Complaint]:
    """Every number of the key can be said."""
    for entry in answer_key(order).values():
        if not isinstance(entry.value, Decimal):
            continue
        where, number = (entry.name.partition(".")[0],), f"{show_number(entry.value)} {entry.unit}"
        if not can_be_said(entry.value):
            yield _error(
                "order-sayable",
                where,
                f"{entry.name} is {number}, which nobody can say: {'; '.join(entry.working) or 'the order states it'}.",
                "Order a number with fewer digits.",
            )
        elif entry.value > NumberExpected.highest and entry.name != "dose.amount":  # its strength can be said instead
            yield _warning(
                "order-sayable",
                where,
                f"{entry.name} is {number}, more than the {NumberExpected.highest:,} that can be said.",
                "Order less, or choose a checklist that does not ask for it.",
            )


def _usual(order: Order, faults: tuple[Fault, ...]) -> Iterator[_Complaint]:
    """Every number of the key is one that pumps take and people receive, and that rounding has not moved far.

    What a limit already forbids is said once.
    """
    limited = {fault.fact.partition(".")[0] for fault in faults if fault.fact.endswith(".limits")}
    for entry in answer_key(order).values():
        if not isinstance(entry.value, Decimal) or entry.unit is None or entry.name.partition(".")[0] in limited:
            continue
        value = Fraction(entry.value)
        # A rate that follows from a volume and its time is looked at by `_steps`.
        exact = value if entry.formula in ("rate", "piggyback-rate") else entry.exact or value
        for sentence in (*beyond_usual(value, entry.unit), *moved_far(exact, value)):
            yield _warning(
                "order-usual",
                (entry.name.partition(".")[0],),
                f"{entry.name} is {show_number(entry.value)} {entry.unit}. {sentence}",
                "Order what can be given.",
            )


_APART = Fraction(5, 100)
"""How far a rate may be off the volume and time that it is for; the same as for a rounding without a word."""


def _steps(order: Order) -> Iterator[_Complaint]:
    """The rate, as the pump takes it, gives the volume in the time that is ordered."""
    key = answer_key(order)
    for part in ("primary", "secondary", "second_secondary"):
        infusion = getattr(order, part)
        if infusion is None or infusion.over is None:
            continue
        ordered = getattr(infusion, "bag_volume", None) or infusion.volume
        volume = (infusion.volume or ordered).in_unit("mL")
        rate = amount_of(key[f"{part}.rate"])
        given = rate.in_unit("mL/h") * infusion.over.in_unit("h")
        if abs(given - volume) > _APART * volume:
            yield _error(
                "order-steps",
                (part, "over"),
                f"{show(rate)} for {show(infusion.over)} give {tell_exact(given, 'mL')}, not the"
                f" {tell_exact(volume, 'mL')} of the order: rounding ({order.rounding}) moves the rate too far.",
                "Order another time or volume, or a finer rounding.",
            )


def _names(order: Order) -> Iterator[_Complaint]:
    """What labels name is among the names of the lab: so a recogniser has others to tell it from."""
    known = label_names()
    drugs = {*known.drugs, *(drug.name for drug in shelf().rates), *(drug.name for drug in shelf().pushes)}
    for part in CONTAINERS:
        field = LABELS[part][0]
        names = set(known.fluids) if field == "fluid" else drugs
        for where, says in (
            ((part,), getattr(order, part)),
            (("laid_out", part, field), getattr(order.laid_out, part)),
        ):
            name = getattr(says, field, None)
            if name is None or name in names:
                continue
            if (heard := _heard_as(name, names)) != name:
                yield _error(
                    "order-names",
                    where,
                    f"{name} is understood as {heard}, so nobody can read it from the label."
                    if heard
                    else f"{name} cannot be understood as a name.",
                    f"Write {heard}, as the list of names has it." if heard else "Write it in words.",
                )
            else:
                yield _warning(
                    "order-names",
                    where,
                    f"{name} is not among the names that labels in the lab carry.",
                    "Write it as the list of names has it; a new name can still be used, and is heard less surely.",
                )


def _heard_as(name: str, names: set[str]) -> str:
    """The name that its own words are understood as, among the others; "" for none."""
    meaning = ENGLISH.interpret(name, NameExpected(with_own(tuple(names), name)))
    return meaning.value if isinstance(meaning, Answer) and isinstance(meaning.value, str) else ""


def _wording(order: Order) -> Iterator[_Complaint]:
    """No error-prone abbreviation or dose designation stands on the paper."""
    texts: list[tuple[tuple[str, ...], str]] = [(("title",), order.title), (("ordered_by",), order.ordered_by)]
    for part in ("primary", *_DRUGS, "flush"):
        infusion = getattr(order, part)
        if infusion is not None:
            texts += [
                ((part, name), getattr(infusion, name)) for name in ("frequency", "route") if hasattr(infusion, name)
            ]
    for where, text in texts:
        for found in error_prone(text):
            yield _error("order-wording", where, f'"{found.found}" {found.reason}.', found.mend)


def _teaching(order: Order) -> Iterator[_Complaint]:
    """The instructor is told what an order is there for."""
    if not order.teaching:
        yield _warning("order-teaching", ("title",), "the order does not say what it teaches.", 'Add teaching = "...".')
    if not order.sources:
        yield _warning(
            "order-sources",
            ("title",),
            "the order names no source for its dose, dilution and time.",
            'Add sources = ["..."]; "common practice, no source" where there is none.',
        )


def _error(rule: str, where: tuple[str, ...], what: str, mend: str) -> _Complaint:
    return _Complaint(rule, Severity.ERROR, where, what, mend)


def _warning(rule: str, where: tuple[str, ...], what: str, mend: str) -> _Complaint:
    return _Complaint(rule, Severity.WARNING, where, what, mend)


def _pairs(order: Order) -> Iterator[_Complaint]:
    """Two drugs that follow each other through one set are known to be able to."""
    if order.secondary is None or order.second_secondary is None:
        return
    first, second = order.secondary.drug, order.second_secondary.drug
    if pair_of(first, second) is None:
        yield _warning(
            "order-drugs",
            ("second_secondary",),
            f"whether {second} may follow {first} through one set is not known here.",
            f"Choose a pair that is listed, or {ASK_THE_PHARMACIST}.",
        )


_RULES: tuple[Callable[[Order], Iterator[_Complaint]], ...] = (
    _dates,
    _rates,
    _sayable,
    _steps,
    _names,
    _pairs,
    _wording,
    _teaching,
)
