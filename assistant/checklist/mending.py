"""What can be mended without thinking: the text of a checklist with the mechanical slips put right.

Only what the published lists prescribe letter by letter and what has one right spelling; everything that needs
a decision is left. Comments, order and layout of the file stay as they are.
"""

import re
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from typing import Any

import tomlkit
from tomlkit.exceptions import TOMLKitError

from assistant.checklist.paper_file import ENCODING
from assistant.dosing.units import unit
from assistant.errors import QuantityError
from assistant.text import quoted

_TEXTS = frozenset(
    (
        *("title", "purpose", "cautions", "equipment"),
        *("say", "more", "hint", "stronger", "why", "if_wrong", "tries_spent", "advice"),
    )
)
"""Fields whose texts are mended; ids, keys, sources, and choices, which other fields repeat, are not."""

_UNITS = "mL|mg|mcg|g|kg|mEq|mmol|units|min|h|cm"
_EASY: tuple[tuple[re.Pattern[str], str | Callable[[re.Match[str]], str]], ...] = (
    # A zero before the point, none behind it (ISMP; The Joint Commission).
    (re.compile(r"(?<![\w.])(?=\.\d)"), "0"),
    (re.compile(r"(?<![\d.])(\d+(?:,\d{3})*)\.0+(?![\d.])"), r"\1"),
    (re.compile(rf"(?<![\d.,])(\d+\.\d*[1-9])0+(?=\s?(?:{_UNITS})\b)"), r"\1"),
    (re.compile(r"(?<=\d)(\s?)ml\b"), " mL"),
    # "mcg" for both letters that look like a micro sign, "units" and "mL" in full.
    (re.compile("[\u00b5\u03bc]g\\b"), "mcg"),
    (re.compile(r"(?<=\d)(\s?)(?:IU|iu|U|u)\b"), " units"),
    (re.compile(r"\b(?:cc|CC)\b"), "mL"),
    # What the lists write for these in full.
    (re.compile(r"\b(?:QD|qd|Q\.D\.|q\.d\.)(?!\w)"), "daily"),
    (re.compile(r"\b(?:QOD|qod|Q\.O\.D\.|q\.o\.d\.)(?!\w)"), "every other day"),
    # A space between number and unit, commas from 1,000 up.
    (re.compile(rf"(?<=\d)(?=(?:{_UNITS})\b)"), " "),
    (re.compile(r"(?<![\d.,])\d{4,}(?![\d,])"), lambda found: f"{int(found[0]):,}"),
    (re.compile(r"(?<=\s)@(?=\s)"), "at"),
    (re.compile(r"(?<=\s)&(?=\s)"), "and"),
)


@dataclass(frozen=True)
class Mended:
    """A file's text after mending, and what was changed, one line of words each."""

    text: str
    changes: tuple[str, ...]


def mend(content: bytes) -> Mended:
    """Put right what is mechanical in a checklist's text.

    Args:
        content: the file.

    Returns:
        The text and the changes; the text as it was and no changes where it is no TOML or nothing is to be
        mended.
    """
    text = content.decode(ENCODING, errors="replace")
    try:
        document = tomlkit.parse(text)
        slips = list(_slips(document))
    except (TOMLKitError, RecursionError, ValueError):
        return Mended(text, ())
    for table, name, _before, wanted in slips:
        table[name] = tomlkit.string(wanted, multiline=True) if "\n" in wanted else wanted
    changes = tuple(f"{quoted(before)} became {quoted(wanted)}" for _, _, before, wanted in slips)
    return Mended(tomlkit.dumps(document) if changes else text, changes)


def _slips(value: Any, field: str = "") -> Iterator[tuple[Any, str | int, str, str]]:
    """Where a text stands that is to be changed: its holder, its name there, what it is and what it becomes."""
    entries = value.items() if isinstance(value, dict) else enumerate(value) if isinstance(value, list) else ()
    for name, inner in list(entries):
        # In a list, and in what is said about each choice, the outer field tells what the text is.
        here = field if isinstance(name, int) or field in _TEXTS else name
        if not isinstance(inner, str):
            yield from _slips(inner, here)
            continue
        before = str(inner)
        wanted = _mended(before, here)
        if wanted != before:
            yield value, name, before, wanted


def _mended(text: str, field: str) -> str:
    if field == "unit":
        try:
            return unit(text).name
        except QuantityError:
            return text
    if field == "version":
        short = re.fullmatch(r"v?(\d+)(?:\.(\d+))?", text.strip())
        return f"{short[1]}.{short[2] or 0}.0" if short else text
    if field in _TEXTS:
        for pattern, wanted in _EASY:
            text = pattern.sub(wanted, text)
    return text
