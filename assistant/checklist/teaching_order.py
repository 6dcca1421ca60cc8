"""The checklists on this machine in the order in which they are taught."""

from pathlib import Path

from assistant.checklist.load import available

_IN_TEACHING_ORDER = (
    "primary-line",
    "secondary-line",
    "primary-and-secondary",
    "gravity-infusion",
    "bag-change",
    "rate-change",
    "set-change",
    "saline-lock",
    "infusion-to-lock",
    "lock-infusion",
    "push-through-lock",
    "push-into-line",
    "syringe-pump",
    "weight-based-infusion",
    "heparin",
    "second-piggyback",
    "next-piggyback",
    "potassium",
    "hourly-round",
    "hand-over",
    "library-alert",
    "air-in-line",
    "occlusion",
    "other-alarms",
    "site-gone-bad",
    "discontinue",
)
"""The library from setting up to discontinuing; what is not named here follows by name."""


def in_teaching_order() -> list[tuple[str, Path]]:
    """Every checklist with its file."""
    return sorted(available().items(), key=_place)


def _place(named: tuple[str, Path]) -> tuple[int, str]:
    name = named[0]
    known = name in _IN_TEACHING_ORDER
    return (_IN_TEACHING_ORDER.index(name) if known else len(_IN_TEACHING_ORDER), name)
