"""The findings about an order file: what keeps it from loading, or what the rules say."""

from pathlib import Path

from assistant.checklist import library
from assistant.checklist.finding import Finding
from assistant.checklist.lint import from_error
from assistant.checklist.paper_file import read_paper
from assistant.errors import AssistantError, OrderError
from assistant.orders.lint import is_order, lint_order
from assistant.orders.load import FOLDER, load_order
from assistant.orders.plausible import table


def findings_of_order(name_or_path: str) -> tuple[Finding, ...] | None:
    """The findings about an order, or None where the name or file is no order.

    Args:
        name_or_path: as `load_order` takes it; a name that a checklist bears too means the checklist.
    """
    if library.is_path(name_or_path):
        path = Path(name_or_path)
    else:
        found = library.available(FOLDER).get(name_or_path)
        if found is None or name_or_path in library.available():
            return None
        path = found
    try:
        paper = read_paper(path, OrderError)
    except AssistantError as fault:
        # What cannot even be read is told as an order only where it lies among orders.
        return (from_error(fault, name_or_path),) if path.parent.name == FOLDER else None
    if not is_order(paper):
        return None
    try:
        return lint_order(load_order(str(path)), paper, table())
    except AssistantError as fault:
        return (from_error(fault, name_or_path),)
