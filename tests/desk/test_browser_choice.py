"""When a display is shown: on a desktop with a browser of its own, or where it was asked for."""

import webbrowser

import pytest

from assistant.cli.display import display
from assistant.desk.browser import has_desktop


@pytest.mark.parametrize(
    ("environment", "browser", "expected"),
    [
        ({}, webbrowser.BackgroundBrowser("firefox"), False),
        ({"DISPLAY": ":0"}, webbrowser.BackgroundBrowser("firefox"), True),
        ({"WAYLAND_DISPLAY": "wayland-0"}, webbrowser.Chrome("chromium"), True),
        ({"DISPLAY": ":0"}, webbrowser.GenericBrowser("w3m"), False),
        ({"DISPLAY": ":0"}, None, False),
    ],
)
def test_a_desktop_is_where_a_window_can_be_opened(monkeypatch, environment, browser, expected):
    """A browser of the terminal would take the place of the attempt."""

    def get():
        if browser is None:
            raise webbrowser.Error("none")
        return browser

    monkeypatch.setattr("sys.platform", "linux")
    monkeypatch.setattr(webbrowser, "get", get)
    for name in ("DISPLAY", "WAYLAND_DISPLAY"):
        monkeypatch.delenv(name, raising=False)
    for name, value in environment.items():
        monkeypatch.setenv(name, value)
    assert has_desktop() is expected


@pytest.mark.parametrize("wanted", [None, False])
def test_without_a_terminal_or_a_wish_there_is_none(monkeypatch, wanted):
    """Answers from a pipe open no window."""
    monkeypatch.setenv("DISPLAY", ":0")
    with display(wanted) as page:
        assert page is None
