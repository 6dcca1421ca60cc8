"""The browser of this machine's desktop."""

import os
import sys
import webbrowser


def has_desktop() -> bool:
    """Whether a window can be opened: there is a desktop, and a browser on it that is none of a terminal."""
    if sys.platform not in ("darwin", "win32") and not (os.environ.get("DISPLAY") or os.environ.get("WAYLAND_DISPLAY")):
        return False
    try:
        browser = webbrowser.get()
    except webbrowser.Error:
        return False
    text_only = isinstance(browser, webbrowser.GenericBrowser) and not isinstance(browser, webbrowser.BackgroundBrowser)
    return not text_only


def open_page(address: str) -> bool:
    """Open a page; False where that failed."""
    try:
        return webbrowser.open(address)
    except (webbrowser.Error, OSError):
        return False
