"""Sentences that show where they come from: what is said without a mark has bypassed the language.

`marked` gives sentences, each as ``<<NAME sentence>>``; `unmarked` gives what stands outside the marks.
"""

import re
from collections.abc import Callable, Collection, Mapping
from functools import wraps
from typing import Any, TypeVar

Base = TypeVar("Base")
_INNERMOST = re.compile(r"<<(?:(?!<<|>>).)*>>", re.DOTALL)


def marked(words: Base, keep: Collection[str] = ()) -> Base:
    """The same sentences under the same names, with every text and what every method gives in a mark.

    Args:
        words: an object whose public attributes and methods are texts, or tables of texts.
        keep: names of attributes that are no text, such as a language tag.
    """
    base = type(words)
    names = [name for name in dir(base) if not name.startswith("_") and name not in keep]
    made: Base = type(f"Marked{base.__name__}", (base,), {name: _marked(name, getattr(base, name)) for name in names})()
    return made


def unmarked(text: str) -> str:
    """What stands outside the marks of a text; marks may stand in marks."""
    shorter = _INNERMOST.sub("", text)
    return text if shorter == text else unmarked(shorter)


def _marked(name: str, value: Any) -> Any:
    match value:
        case str():
            return f"<<{name} {value}>>"
        case Mapping():
            return {key: _marked(name, one) for key, one in value.items()}
        case tuple() | list():
            return type(value)(_marked(name, one) for one in value)
    return _marking(name, value) if callable(value) else value


def _marking(name: str, method: Callable[..., Any]) -> Callable[..., Any]:
    @wraps(method)
    def say(*args: Any, **kwargs: Any) -> Any:
        return _marked(name, method(*args, **kwargs))

    return say
