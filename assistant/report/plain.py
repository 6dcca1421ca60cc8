"""Any text as text that shows what was typed and does nothing else.

What cannot be seen, or would rearrange or cover what stands beside it, is written out by its code point:
control characters, marks that turn the direction of writing, half characters, piles of accents.
"""

import unicodedata
from collections.abc import Mapping

_KEPT = "\n\u200c\u200d"
"""A line feed is a line feed; the two joiners belong to the spelling of several languages."""
_MOST_ACCENTS = 4
"""Combining marks on one letter; more than any language needs cover the lines above and below."""


def plain(text: str) -> str:
    """The text with every character that would do something written as ``[U+202E]``."""
    if text.isascii() and text.isprintable():
        return text
    shown: list[str] = []
    accents = 0
    for letter in text:
        category = unicodedata.category(letter)
        accents = accents + 1 if category in ("Mn", "Me") else 0
        visible = letter.isprintable() or category == "Zs" or letter in _KEPT
        shown.append(letter if visible and accents <= _MOST_ACCENTS else written_out(letter))
    return "".join(shown)


def written_out(letter: str) -> str:
    """A character by its code point."""
    return f"[U+{ord(letter):04X}]"


def plain_all(value: object) -> object:
    """`plain` for every text in lists and mappings, names of members included."""
    match value:
        case str():
            return plain(value)
        case Mapping():
            return {plain(str(name)): plain_all(member) for name, member in value.items()}
        case list() | tuple():
            return [plain_all(member) for member in value]
        case _:
            return value


def one_line(text: str) -> str:
    """`plain`, and a line feed written out as well: for a terminal and for one cell of a table."""
    return plain(text).replace("\n", written_out("\n"))
