"""Small checklists that look at what the parts of an order lay out, for tests of what can be found where."""

import tomllib
from collections.abc import Iterable
from pathlib import Path

from assistant.checklist.model import Checklist
from assistant.orders.planting import Findable

_HEAD = """\
title = "Looking"
version = "1.0.0"
purpose = "Look at everything."
cautions = ["Training only."]
"""
_STEP = """
[[steps]]
id = "s-{number}"
part = "Looking"
say = "What is there?"
looks_at = [{looks_at}]
expect = {expect}
{more}
"""
QUESTION = '{ kind = "question", right = "yes" }'
SITE = '{ kind = "choice", choices = ["fine", "red", "swollen"], right = "fine", faults = ["red", "swollen"] }'
_LABELS = {
    "primary": '{ kind = "name", key = "primary.fluid" }',
    "gravity": '{ kind = "number", unit = "gtt/mL", key = "gravity.drop_factor" }',
    "secondary": '{ kind = "name", key = "secondary.drug" }',
    "second_secondary": '{ kind = "name", key = "second_secondary.drug" }',
    "dose": '{ kind = "name", key = "dose.drug" }',
    "flush": '{ kind = "name", key = "flush.fluid" }',
    "push": '{ kind = "name", key = "push.drug" }',
}
"""The step that reads the label of each part."""
_LOOKED_AT = {
    "primary": ("paper", "limits", "bag"),
    "secondary": ("paper", "allergy", "limits", "pair", "dose", "bag"),
    "second_secondary": ("allergy", "limits", "pair", "drugs", "dose", "bag"),
    "dose": ("paper", "allergy", "limits", "pair", "amount", "bag"),
    "flush": ("bag",),
    "push": ("allergy", "limits", "pair", "amount", "bag"),
}
"""What else is looked at, by a question each."""


def text_of_steps(steps: Iterable[tuple[str, str, str]]) -> str:
    """A checklist with a step for each fact ("" for none) with what it expects and what else it says."""
    written = (
        _STEP.format(number=number, looks_at=f'"{fact}"' if fact else "", expect=expect, more=more)
        for number, (fact, expect, more) in enumerate(steps, 1)
    )
    return _HEAD + "".join(written)


def text_for(parts: Iterable[str]) -> str:
    """A checklist that finds whatever can be laid out for these parts: every label, bag and number, and the site."""
    parts = tuple(parts)
    steps = [("", _LABELS[part], "") for part in parts if part in _LABELS]
    steps += [(f"{part}.{matter}", QUESTION, "") for part in parts for matter in _LOOKED_AT.get(part, ())]
    return text_of_steps([*steps, ("wristband", QUESTION, ""), ("site", SITE, "")])


def checklist_of(text: str) -> Checklist:
    """The checklist of a text."""
    return Checklist.model_validate({**tomllib.loads(text), "name": "looking", "digest": "none"})


def findable_in(parts: Iterable[str]) -> Findable:
    """What such a checklist finds."""
    return Findable.by(checklist_of(text_for(parts)))


def findable_at(*facts: str) -> Findable:
    """What a checklist finds that asks a question about each of these facts, and nothing else."""
    return Findable.by(checklist_of(text_of_steps((fact, QUESTION, "") for fact in facts)))


def written_for(folder: Path, parts: Iterable[str]) -> str:
    """The path of such a checklist."""
    path = folder / "looking.toml"
    path.write_text(text_for(parts), encoding="utf-8")
    return str(path)
