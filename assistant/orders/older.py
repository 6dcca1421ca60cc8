"""Orders of earlier versions: what hung at the stand was written in a table of its own, with the name of the fault."""

from collections.abc import Mapping
from typing import Any

_MOVED = {
    "fluid": ("primary", "fluid"),
    "bag_volume": ("primary", "bag_volume"),
    "expires": ("primary", "expires"),
}
_ON_PURPOSE = {"allergy": "allergy", "over-limit": "limits", "incompatible-pair": "pair"}


def is_older(table: Mapping[str, Any]) -> bool:
    """Whether a file is written as earlier versions had it."""
    return "hung" in table or "planted" in table


def renewed(table: Mapping[str, Any]) -> dict[str, Any]:
    """The same order as it is written now: ``[hung]`` becomes ``[laid_out]``, and what was planted follows from it.

    What cannot be moved stays as it is, and is then refused by its own name.
    """
    new = {name: value for name, value in table.items() if name not in ("hung", "planted")}
    hung = table.get("hung", {})
    if not isinstance(hung, dict):
        return dict(table)
    drug = "secondary" if "secondary" in table or "dose" not in table else "dose"
    moved = {
        **_MOVED,
        "drug": (drug, "drug"),
        "dose": (drug, "dose" if drug == "secondary" else "amount"),
        "drug_expires": (drug, "expires"),
    }
    laid_out: dict[str, Any] = dict(table.get("laid_out", {}))
    for name, value in hung.items():
        part, field = moved.get(name, ("hung", name))
        laid_out[part] = {**laid_out.get(part, {}), field: value}
    on_purpose = _ON_PURPOSE.get(str(table.get("planted")))
    if on_purpose is not None:
        laid_out["on_purpose"] = [on_purpose]
    return {**new, "laid_out": laid_out} if laid_out else new
