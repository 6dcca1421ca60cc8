"""The learner's display of `run`, `resume` and `demo`: whether it is shown, and for how long it is served."""

import argparse
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from typing import TYPE_CHECKING

from assistant.cli.printing import tell
from assistant.settings import load_settings

if TYPE_CHECKING:
    from assistant.desk.display import Display


def add_display_option(parser: argparse.ArgumentParser) -> None:
    """The option that says whether there is a display."""
    parser.add_argument(
        "--display",
        action=argparse.BooleanOptionalAction,
        help="show large letters on a page of this machine's browser; its address is printed "
        "(default: on a desktop, as the settings say)",
    )


@contextmanager
def display(wanted: bool | None) -> "Iterator[Display | None]":
    """The display, served until the block ends; None where there is to be none.

    Args:
        wanted: yes, no, or as the settings say where somebody sits at a desktop.
    """
    if wanted is None:
        at_terminal = sys.stdin is not None and sys.stdin.isatty() and sys.stdout.isatty()
        wanted = at_terminal and load_settings().display.open and has_desktop()
    if not wanted:
        yield None
        return
    # Only here: an attempt without a display needs none of the libraries that serve one.
    from assistant.desk.browser import open_page
    from assistant.desk.display import Display
    from assistant.desk.server import LocalServer

    shown = Display()
    server = LocalServer(shown.app)
    tell(f"Display: {server.address}")
    if has_desktop() and not open_page(server.address):
        tell("The browser did not open. Open that address in a browser of this machine.")
    try:
        yield shown
    finally:
        shown.close()
        server.close()


def has_desktop() -> bool:
    """Whether a window can be opened (`assistant.desk.browser`, which is read only where it is needed)."""
    from assistant.desk import browser

    return browser.has_desktop()
