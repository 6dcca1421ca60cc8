"""Authored text to a checked `Order`; every complaint names file and line."""

import hashlib
from collections.abc import Mapping
from pathlib import Path

from pydantic import ValidationError

from assistant.checklist import library
from assistant.checklist.paper_file import SET_BY_LOADER, read_paper
from assistant.errors import OrderError
from assistant.orders.model import Order
from assistant.orders.older import is_older, renewed

FOLDER = "orders"
"""Folder of the orders below each folder of checklists."""


def available_orders() -> Mapping[str, Path]:
    """Names and files of every order in the user's folder and in the library."""
    return library.available(FOLDER)


def load_order(name_or_path: str) -> Order:
    """Read an order.

    Args:
        name_or_path: a file stem, looked up in the user's folder and then in the library; a path where it
            ends with ``.toml`` or holds a separator.

    Raises:
        OrderError: it cannot be used; the sentence names file and line, and what to do.
    """
    path = library.find(name_or_path, "order", OrderError, FOLDER)
    paper = read_paper(path, OrderError)
    for name in SET_BY_LOADER:
        if name in paper.table:
            raise paper.complain((name,), f'"{name}" is not written in the file.', "Take the line out.")
    digest = hashlib.sha256(paper.content).hexdigest()
    try:
        table = renewed(paper) if is_older(paper.table) else paper.table
        return Order.model_validate({**table, "name": path.stem, "digest": digest})
    except ValidationError as invalid:
        raise paper.complain_about(invalid, (), Order) from invalid
