"""The table of limits, and what in it must stop a learner."""

from collections.abc import Iterable
from functools import lru_cache

from assistant.checklist.library import library_folder
from assistant.checklist.paper_file import read_paper
from assistant.dosing.limits import Finding, Level, Limits
from assistant.dosing.limits_file import limits_from
from assistant.errors import QuantityError


@lru_cache(maxsize=1)
def table() -> Limits:
    """The library's limits.

    Raises:
        QuantityError: the file cannot be used.
    """
    return limits_from(read_paper(library_folder() / "limits.toml", QuantityError).table)


def stopping(findings: Iterable[Finding]) -> tuple[Finding, ...]:
    """The findings that must stop a learner: soft and hard limits that are passed, and what must not share a line.

    Args:
        findings: the gravest first.

    Returns:
        One for each thing that was checked, the gravest of it, in the same order.
    """
    gravest: dict[str, Finding] = {}
    for finding in findings:
        if finding.level in (Level.SOFT, Level.HARD):
            gravest.setdefault(finding.about, finding)
    return tuple(gravest.values())
