"""A language in which every text stands between marks, and what stands outside them."""

import functools
import html.parser
import re
from collections.abc import Iterable, Mapping

from assistant.spoken.language import ReportWords

OPEN, CLOSE = "«", "»"
_CODES = ("CODE", "REGION")
"""What no person reads: the tag of the language."""
_LENGTH_OF_TIME = re.compile(r"\b\d+ (h|min|s)\b")


def _marked(value):
    """A text, a table of texts or a method with marks around each text."""
    match value:
        case str():
            return f"{OPEN}{value}{CLOSE}"
        case tuple() | list():
            return tuple(map(_marked, value))
        case Mapping():
            return {name: _marked(text) for name, text in value.items()}
        case _:
            return functools.wraps(value)(lambda *given, **named: _marked(value(*given, **named)))


MARKED: ReportWords = type(
    "MarkedWords",
    (ReportWords,),
    {
        name: _marked(getattr(ReportWords, name))
        for name in dir(ReportWords)
        if not name.startswith("_") and name not in _CODES
    },
)()
"""English, and every text of it can be told from data."""


def outside(text: str) -> str:
    """What stands outside all marks, each marked text replaced by a bar."""
    found, depth = [], 0
    for letter in text:
        depth += (letter == OPEN) - (letter == CLOSE)
        if depth == 0:
            found.append("|" if letter == CLOSE else letter)
    assert depth == 0, f"a marked text was cut: {text[-200:]}"
    return "".join(found)


def leaves(value) -> Iterable[str]:
    """Every text and number somewhere in lists and mappings, names of members left out."""
    match value:
        case str():
            yield value
        case Mapping():
            for member in value.values():
                yield from leaves(member)
        case list() | tuple():
            for member in value:
                yield from leaves(member)
        case int() if not isinstance(value, bool):
            yield str(value)


def not_data(text: str, data: Iterable[str]) -> str:
    """The letters of a text that are neither marked nor, as a whole, one of the data."""
    rest = " ".join(outside(text).split())
    for known in _by_length(frozenset(data)):
        if known in rest:
            rest = re.sub(rf"(?<!\w){re.escape(known)}(?!\w)", "|", rest)
    return " ".join(re.findall(r"[^\W\d_]+", _LENGTH_OF_TIME.sub(" ", rest)))


@functools.cache
def _by_length(data: frozenset[str]) -> tuple[str, ...]:
    """Data that hold a letter, the longest first, with single blanks."""
    flat = {" ".join(known.split()) for known in data}
    return tuple(sorted((known for known in flat if re.search(r"[^\W\d_]", known)), key=len, reverse=True))


class Texts(html.parser.HTMLParser):
    """The texts of a page, style sheets and pictures left out."""

    def __init__(self, page: str) -> None:
        super().__init__(convert_charrefs=True)
        self.found: list[str] = []
        self._hidden = 0
        self.feed(page)
        self.close()

    def handle_starttag(self, tag, attrs):
        self._hidden += tag in ("style", "svg")

    def handle_endtag(self, tag):
        self._hidden -= tag in ("style", "svg")

    def handle_data(self, data):
        if not self._hidden and data.strip():
            self.found.append(data)
