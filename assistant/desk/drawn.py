"""The display's bands as HTML, every text escaped."""

from functools import cache
from importlib.resources import files

from jinja2 import Environment, PackageLoader, StrictUndefined

from assistant.desk.shown import Shown
from assistant.dosing.amount import Amount, show, show_number

BANDS = ("where", "what", "turn")
"""The three fixed bands: the place, the one thing, whose turn."""


def bands(shown: Shown) -> dict[str, str]:
    """Each band's HTML by its name."""
    values = {"shown": shown, "groups": _groups, "show": show, "unit": _unit}
    return {name: environment().get_template(f"{name}.html").render(values) for name in BANDS}


def page(shown: Shown) -> str:
    """The whole page as it is now; from then on its script replaces the bands."""
    return environment().get_template("display.html").render(shown=shown, bands=bands(shown))


@cache
def static(name: str) -> bytes:
    """A style sheet or script of the page."""
    return (files("assistant.desk") / "static" / name).read_bytes()


def _groups(amount: Amount) -> tuple[list[str], str]:
    """A number's whole part in groups of thousands, and its decimals; empty where there are none."""
    whole, _, decimals = show_number(amount.value).partition(".")
    return whole.split(","), decimals


def _unit(amount: Amount) -> str:
    """The unit as it is printed with this number."""
    return show(amount).partition(" ")[2]


@cache
def environment() -> Environment:
    """The templates of all pages; whatever is put into one is escaped."""
    return Environment(
        loader=PackageLoader("assistant.desk"),
        autoescape=True,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
    )
