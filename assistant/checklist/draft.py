"""A new checklist as text: what an author answered, written with a comment at each field that asks for more."""

import re
from collections.abc import Iterator
from dataclasses import dataclass, field

import tomlkit

from assistant.checklist.schema import FILE_NAME

CAUTIONS = (
    "For training on a mannequin or an arm only: no patient is treated.",
    "Local policy and the makers' instructions come first.",
    "A licensed practitioner decides; this checklist decides nothing.",
)
"""What every checklist says, whatever else its author adds."""
NO_SOURCE = "common practice, no source"
VERSION = "1.0.0"
_LONGEST_ID, _LONGEST_PREFIX = 30, 16


@dataclass
class DraftStep:
    """One step as it was answered; what is empty is left out.

    Attributes:
        say, part: line and heading.
        expect: what it expects, by field; empty for done.
        critical: whether it may not be left out.
        texts: further fields, by name.
        sources: published sources.
        include: `say` names a part that stands for steps.
    """

    say: str
    part: str
    expect: dict[str, object] = field(default_factory=dict)
    critical: bool = False
    texts: dict[str, str] = field(default_factory=dict)
    sources: tuple[str, ...] = ()
    include: bool = False


@dataclass
class Draft:
    """A checklist as it was answered."""

    title: str
    purpose: str
    order: str = ""
    equipment: tuple[str, ...] = ()
    sources: tuple[str, ...] = (NO_SOURCE,)
    steps: list[DraftStep] = field(default_factory=list)


def written(draft: Draft) -> str:
    """The file's text (TOML)."""
    return "\n".join(_lines(draft)) + "\n"


def _lines(draft: Draft) -> Iterator[str]:
    yield f"#:schema {FILE_NAME}"
    yield f"# {draft.title}. Check every change with: checkoff lint, and hear it with: checkoff rehearse."
    yield _pair("title", draft.title)
    yield _pair("version", VERSION) + " # raise it with every change"
    yield _pair("purpose", draft.purpose)
    if draft.order:
        yield _pair("order", draft.order) + " # used where no other order is named"
    yield from _list("cautions", CAUTIONS)
    if draft.equipment:
        yield from _list("equipment", draft.equipment)
    yield from _list("sources", draft.sources)
    ids: set[str] = set()
    prefixes: set[str] = set()
    for step in draft.steps:
        yield ""
        yield "[[steps]]"
        if step.include:
            yield from (_pair("include", step.say), _pair("prefix", _prefix(step.say, prefixes)))
            continue
        yield _pair("id", step_id(step.say, ids))
        yield _pair("part", step.part)
        yield _pair("say", step.say) + " # read aloud"
        if step.critical:
            yield "critical = true"
        for name, text in step.texts.items():
            if text:
                yield _pair(name, text)
        if step.sources:
            yield from _list("sources", step.sources)
        if step.expect:
            inside = ", ".join(_pair(name, value) for name, value in step.expect.items())
            yield f"expect = {{ {inside} }}"


def step_id(line: str, taken: set[str]) -> str:
    """An id made of the first words of a line, other than those taken; adds it to them."""
    words = [word for word in re.findall(r"[a-z]+", line.lower()) if word not in ("the", "a", "an", "and", "of", "to")]
    base = "-".join(words[:3])[:_LONGEST_ID].strip("-") or "step"
    found, number = base, 2
    while found in taken:
        found, number = f"{base}-{number}", number + 1
    taken.add(found)
    return found


def _prefix(part: str, taken: set[str]) -> str:
    """A prefix for the ids of a part: its name, cut to a length, with a number where it stands there already."""
    base = part.rpartition("/")[2][:_LONGEST_PREFIX].strip("-")
    found, number = base, 2
    while found in taken:
        found, number = f"{base}-{number}", number + 1
    taken.add(found)
    return found


def _pair(name: str, value: object) -> str:
    return f"{name} = {tomlkit.item(value).as_string()}"


def _list(name: str, texts: tuple[str, ...]) -> Iterator[str]:
    yield f"{name} = ["
    for text in texts:
        yield f"  {tomlkit.item(text).as_string()},"
    yield "]"
