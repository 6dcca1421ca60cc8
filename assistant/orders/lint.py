"""What an order that loads may still have wrong, each with file, line, rule and remedy.

Pure: it is given the order with its file, and the table of limits, and reads nothing.
"""

from collections.abc import Callable, Iterator
from dataclasses import dataclass

from assistant.checklist.finding import Finding, Severity
from assistant.checklist.paper_file import PaperFile
from assistant.checklist.wording import error_prone
from assistant.dosing import Amount, show
from assistant.dosing.limits import Level, Limits
from assistant.dosing.units import same_dimension
from assistant.errors import QuantityError
from assistant.orders.model import Order
from assistant.orders.names import label_names
from assistant.orders.plausible import beyond
from assistant.orders.shelf import shelf
from assistant.orders.solve import answer_key

ORDER_RULES = (
    "order-key",
    "order-limits",
    "order-allergy",
    "order-planted",
    "order-rate",
    "order-names",
    "order-wording",
    "order-teaching",
    "order-sources",
)
"""Every rule, in the order in which they are looked at."""
_DRUGS = ("secondary", "second_secondary", "dose")


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
    complaints = list(_key(order))
    if not complaints:  # without a key there is nothing to compare
        for rule in _RULES:
            complaints += rule(order, limits)
    findings = [
        Finding(str(paper.path), paper.line_of(one.where), one.rule, one.severity, one.what, one.mend)
        for one in complaints
    ]
    return tuple(sorted(findings, key=lambda found: (found.line, found.rule)))


def _key(order: Order) -> Iterator[_Complaint]:
    try:
        answer_key(order)
    except QuantityError as cause:
        yield _error("order-key", ("title",), f"no answer key follows from the order: {cause.what}", cause.remedy)


def _limits(order: Order, limits: Limits) -> Iterator[_Complaint]:
    """Nothing is beyond a limit, and nothing meets that must not, but where it was planted."""
    on_purpose = order.planted in ("over-limit", "incompatible-pair")
    found = beyond(order, limits)
    if on_purpose and not found:
        yield _error(
            "order-planted",
            ("planted",),
            f"planted says {order.planted}, but the order keeps every limit that is known.",
            "Plant the fault, or take planted out.",
        )
    # A soft and a hard limit of one thing are one finding: the graver one stands first.
    gravest = {finding.about: finding for finding in reversed(found)}
    for finding in () if on_purpose else gravest.values():
        hard = finding.level is Level.HARD
        concerned = [part for part in _DRUGS if _drug(order, part) and _drug(order, part) in finding.sentence]
        make = _error if hard else _warning
        yield make(
            "order-limits",
            (concerned[0] if concerned else "primary",),
            f"{finding.sentence} Source: {finding.source}.",
            'Change the order, or write planted = "over-limit" (or "incompatible-pair") if it is there to be noticed.',
        )


def _allergy(order: Order, _limits: Limits) -> Iterator[_Complaint]:
    """Nobody is given what they are allergic to, but where it was planted."""
    avoid = {drug.name: drug.avoid for drug in shelf().drugs} | {drug.name: drug.avoid for drug in shelf().rates}
    allergies = {name.casefold() for name in order.patient.allergies}
    clashes = [
        (name, allergy)
        for part in _DRUGS
        if (name := _drug(order, part))
        for allergy in (*avoid.get(name, ()), name)
        if allergy.casefold() in allergies
    ]
    if order.planted == "allergy":
        if not clashes:
            yield _error(
                "order-planted",
                ("planted",),
                "planted says allergy, but no allergy concerns an ordered drug that the shelf knows.",
                "Name the allergy, or take planted out.",
            )
        return
    for name, allergy in dict(clashes).items():
        yield _error(
            "order-allergy",
            ("patient", "allergies"),
            f"{name} is ordered for somebody whose allergies name {allergy}.",
            'Change one of the two, or write planted = "allergy" if it is there to be noticed.',
        )


def _planted(order: Order, _limits: Limits) -> Iterator[_Complaint]:
    """What hangs differs from the order where a wrong bag is planted, and only there or with a reason."""
    hung = order.hung
    bag = bool(hung.fluid or hung.drug or hung.bag_volume)
    there = {
        "wrong-bag": bag,
        "wrong-concentration": hung.dose is not None,
        "illegible-rate": bool(order.illegible),
        "expired-bag": any(
            day is not None and (order.written is None or day < order.written)
            for day in (hung.expires, hung.drug_expires)
        ),
    }
    if order.planted in there and not there[order.planted]:
        yield _error(
            "order-planted",
            ("planted",),
            f"planted says {order.planted}, but nothing of that kind is in the file.",
            "Plant the fault, or take planted out.",
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
    named += [("hung", order.hung.fluid, fluids)] if order.hung.fluid else []
    named += [("hung", order.hung.drug, drugs)] if order.hung.drug else []
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
    _limits,
    _allergy,
    _planted,
    _rates,
    _names,
    _wording,
    _teaching,
)
