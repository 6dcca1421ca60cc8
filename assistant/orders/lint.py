"""What an order that loads may still have wrong, each with file, line, rule and remedy.

Pure: it is given the order with its file, and the table of limits, and reads nothing.
"""

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from typing import get_args

from assistant.checklist.finding import Finding, Severity
from assistant.checklist.paper_file import PaperFile
from assistant.checklist.wording import error_prone
from assistant.dosing import Amount, show
from assistant.dosing.limits import Limits
from assistant.dosing.units import same_dimension
from assistant.errors import QuantityError
from assistant.orders.laid_out import CONTAINERS, OnPurpose
from assistant.orders.model import Order
from assistant.orders.names import label_names
from assistant.orders.older import is_older
from assistant.orders.shelf import shelf
from assistant.orders.solve import answer_key
from assistant.orders.truth import truth_of

ORDER_RULES = (
    "order-key",
    "order-older",
    "order-allergy",
    "order-limits",
    "order-pair",
    "order-on-purpose",
    "order-dates",
    "order-rate",
    "order-names",
    "order-wording",
    "order-teaching",
    "order-sources",
)
"""Every rule, in the order in which they are looked at."""
_DRUGS = ("secondary", "second_secondary", "dose")
_MATTERS = get_args(OnPurpose)


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
    complaints = [*_older(paper), *_key(order)]
    if not any(one.rule == "order-key" for one in complaints):  # without a key there is nothing to compare
        for rule in _RULES:
            complaints += rule(order, limits)
    findings = [
        Finding(str(paper.path), paper.line_of(one.where), one.rule, one.severity, one.what, one.mend)
        for one in complaints
    ]
    return tuple(sorted(findings, key=lambda found: (found.line, found.rule)))


def _older(paper: PaperFile) -> Iterator[_Complaint]:
    """The file is written as the present version has it."""
    for name in ("hung", "planted"):
        if is_older(paper.table) and name in paper.table:
            yield _warning(
                "order-older",
                (name,),
                f"{name} is how earlier versions wrote it; it is still read.",
                "Write what the labels say as [laid_out.primary] or [laid_out.secondary]; faults follow from it.",
            )


def _key(order: Order) -> Iterator[_Complaint]:
    try:
        answer_key(order)
    except QuantityError as cause:
        yield _error("order-key", ("title",), f"no answer key follows from the order: {cause.what}", cause.remedy)


def _faults(order: Order, limits: Limits) -> Iterator[_Complaint]:
    """What is wrong in an order itself is there on purpose, and what is there on purpose is wrong."""
    found: set[str] = set()
    for fault in truth_of(order, limits).faults:
        part, _, matter = fault.fact.partition(".")
        found.add(matter)
        if matter not in _MATTERS or matter in order.laid_out.on_purpose:
            continue
        make = _error if fault.grave else _warning
        yield make(
            f"order-{matter}",
            ("patient", "allergies") if matter == "allergy" else (part,),
            fault.what,
            f'Change the order, or write on_purpose = ["{matter}"] under [laid_out] if it is there to be noticed.',
        )
    for matter in order.laid_out.on_purpose:
        if matter not in found:
            yield _error(
                "order-on-purpose",
                ("laid_out",),
                f"on_purpose says {matter}, but nothing of that kind is wrong in the order.",
                "Put the fault into the order, or take the word out.",
            )
    dated = any(getattr(order.laid_out, part).expires is not None for part in CONTAINERS)
    if dated and order.written is None:
        yield _error(
            "order-faults",
            ("laid_out",),
            "a label bears a date, but the order has none, so nobody can tell whether it has passed.",
            "Add written = 2026-11-25 (the day of the order), or take the date out.",
        )


def _rates(order: Order, _limits: Limits) -> Iterator[_Complaint]:
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


def _names(order: Order, _limits: Limits) -> Iterator[_Complaint]:
    """What labels name is among the names of the lab: so a recogniser has others to tell it from."""
    known = label_names()
    drugs = {*known.drugs, *(drug.name for drug in shelf().rates)}
    fluids = set(known.fluids)
    named = [("primary", order.primary.fluid, fluids)] if order.primary else []
    named += [(part, name, drugs) for part in _DRUGS if (name := _drug(order, part))]
    named += [("flush", order.flush.fluid, fluids)] if order.flush else []
    laid_out = order.laid_out
    named += [("laid_out", name, fluids) for name in (laid_out.primary.fluid, laid_out.flush.fluid) if name]
    bags = (laid_out.secondary, laid_out.second_secondary, laid_out.dose)
    named += [("laid_out", bag.drug, drugs) for bag in bags if bag.drug]
    for part, name, names in named:
        if name not in names:
            yield _warning(
                "order-names",
                (part,),
                f"{name} is not among the names that labels in the lab carry.",
                "Write it as the list of names has it; a new name can still be used, and is heard less surely.",
            )


def _wording(order: Order, _limits: Limits) -> Iterator[_Complaint]:
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


def _teaching(order: Order, _limits: Limits) -> Iterator[_Complaint]:
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


def _drug(order: Order, part: str) -> str:
    infusion = getattr(order, part)
    return infusion.drug if infusion is not None else ""


def _error(rule: str, where: tuple[str, ...], what: str, mend: str) -> _Complaint:
    return _Complaint(rule, Severity.ERROR, where, what, mend)


def _warning(rule: str, where: tuple[str, ...], what: str, mend: str) -> _Complaint:
    return _Complaint(rule, Severity.WARNING, where, what, mend)


_RULES: tuple[Callable[[Order, Limits], Iterator[_Complaint]], ...] = (
    _faults,
    _rates,
    _names,
    _wording,
    _teaching,
)
