"""Orders of earlier versions: what hung at the stand was written in a table of its own, with the name of the fault."""

from collections.abc import Mapping
from datetime import date
from typing import Any, Literal

from pydantic import ValidationError

from assistant.checklist.paper import Paper
from assistant.checklist.paper_file import PaperFile
from assistant.orders.laid_out import OnPurpose
from assistant.orders.reading import Dose, Name, Volume

Planted = Literal[
    "wrong-bag",
    "expired-bag",
    "wrong-concentration",
    "over-limit",
    "illegible-rate",
    "allergy",
    "incompatible-pair",
]
"""What could be planted; the order said which, and what is laid out says it now."""
PLANTED_AS: Mapping[Planted, frozenset[str]] = {
    "wrong-bag": frozenset({"fluid", "drug", "bag_volume"}),
    "expired-bag": frozenset({"bag"}),
    "wrong-concentration": frozenset({"dose", "amount"}),
    "over-limit": frozenset({"limits"}),
    "illegible-rate": frozenset({"paper"}),
    "allergy": frozenset({"allergy"}),
    "incompatible-pair": frozenset({"pair"}),
}
"""What each of them is a fault of, by the last word of the fact."""
_ON_PURPOSE: Mapping[str, OnPurpose] = {"allergy": "allergy", "over-limit": "limits", "incompatible-pair": "pair"}


class _Hung(Paper):
    fluid: Name | None = None
    bag_volume: Volume | None = None
    drug: Name | None = None
    dose: Dose | None = None
    expires: date | None = None
    drug_expires: date | None = None


class _Older(Paper):
    """The two fields that are written otherwise now."""

    hung: _Hung = _Hung()
    planted: Planted | None = None


def is_older(table: Mapping[str, Any]) -> bool:
    """Whether a file is written as earlier versions had it."""
    return "hung" in table or "planted" in table


def renewed(paper: PaperFile) -> dict[str, Any]:
    """The table of an older file as it is written now.

    ``[hung]`` becomes ``[laid_out]``; what was planted follows from it, or is there on purpose.

    Raises:
        AssistantError: something was written that has no place now, or never had one; it names the line.
    """
    table = paper.table
    if "laid_out" in table:
        name = "hung" if "hung" in table else "planted"
        raise paper.complain(
            (name,), f"{name} is how earlier versions wrote what is laid out.", "Write all of it under [laid_out]."
        )
    given = {name: table[name] for name in ("hung", "planted") if name in table}
    try:
        older = _Older.model_validate(given)
    except ValidationError as invalid:
        raise paper.complain_about(invalid, (), _Older) from invalid
    if older.planted == "expired-bag" and "written" not in table:
        raise paper.complain(
            ("planted",),
            "planted says expired-bag, but the order has no day, so nobody can tell which date has passed.",
            "Add written = 2026-11-25 (the day of the order), and the date under [hung].",
        )
    laid_out: dict[str, Any] = {}
    for name, (part, field) in _places(_drugs_part(table)).items():
        if name not in given.get("hung", {}):
            continue
        if part not in table:
            missing = "primary" if part == "primary" else "secondary"
            raise paper.complain(
                ("hung", name),
                f"{name} is on a label, but the order has no {missing}.",
                f"Add [{missing}], or take {name} out.",
            )
        laid_out.setdefault(part, {})[field] = given["hung"][name]
    on_purpose = _ON_PURPOSE.get(older.planted or "")
    if on_purpose is not None:
        laid_out["on_purpose"] = [on_purpose]
    kept = {name: value for name, value in table.items() if name not in given}
    return {**kept, "laid_out": laid_out} if laid_out else kept


def place_in(table: Mapping[str, Any], where: tuple[str, ...]) -> tuple[str, ...]:
    """The place in a file of something that is laid out: in an older one, the line of ``[hung]`` that it came from.

    Args:
        table: the file's.
        where: the way to it as it is written now.
    """
    if "hung" not in table:
        return where
    older: dict[tuple[str, ...], tuple[str, ...]]
    older = {("laid_out", *place): ("hung", name) for name, place in _places(_drugs_part(table)).items()}
    return older.get(where, where)


def _drugs_part(table: Mapping[str, Any]) -> Literal["secondary", "dose"]:
    """The part whose bag held the drug."""
    return "secondary" if "secondary" in table else "dose"


def _places(drug: Literal["secondary", "dose"]) -> Mapping[str, tuple[str, str]]:
    """Where each line of ``[hung]`` stands now: part and field.

    Args:
        drug: the part whose bag held the drug.
    """
    return {
        "fluid": ("primary", "fluid"),
        "bag_volume": ("primary", "bag_volume"),
        "expires": ("primary", "expires"),
        "drug": (drug, "drug"),
        "dose": (drug, "dose" if drug == "secondary" else "amount"),
        "drug_expires": (drug, "expires"),
    }
