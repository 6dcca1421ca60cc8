"""Sentences that show where they come from: what is said without a mark has bypassed the language.

`marked` gives sentences, each as ``<<NAME sentence>>``; `unmarked` gives what stands outside the marks.
"""

import re
from collections.abc import Callable
from functools import wraps
from typing import Any, TypeVar

Base = TypeVar("Base")
_INNERMOST = re.compile(r"<<(?:(?!<<|>>).)*>>", re.DOTALL)


def marked(sentences: Base) -> Base:
    """The same sentences under the same names, with every attribute and what every method gives in a mark.

    Args:
        sentences: an object whose public attributes and methods are sentences.
    """
    base = type(sentences)
    members = {name: _marked(name, getattr(base, name)) for name in dir(base) if not name.startswith("_")}
    made: Base = type(f"Marked{base.__name__}", (base,), members)()
    return made


def unmarked(text: str) -> str:
    """What stands outside the marks of a text; marks may stand in marks."""
    shorter = _INNERMOST.sub("", text)
    return text if shorter == text else unmarked(shorter)


def _marked(name: str, value: Any) -> Any:
    if isinstance(value, str):
        return f"<<{name} {value}>>"
    return _marking(name, value) if callable(value) else value


def _marking(name: str, method: Callable[..., str]) -> Callable[..., str]:
    @wraps(method)
    def say(*args: Any, **kwargs: Any) -> str:
        return f"<<{name} {method(*args, **kwargs)}>>"

    return say
