"""The tables of ``published.md``: every step of a published checklist has a step of ours, or a reason why not."""

import re
from pathlib import Path

import pytest

from assistant.checklist.load import load

TEXT = Path(__file__).with_name("published.md").read_text(encoding="utf-8")
TABLES = re.findall(r"^## ([a-z-]+): (.+?)\n(.*?)(?=^## |\Z)", TEXT, re.MULTILINE | re.DOTALL)
FEWEST_REASON_WORDS = 5


def rows(body: str) -> list[tuple[str, str]]:
    """Their step and what stands beside it."""
    found = re.findall(r"^\| ([^|]+) \| ([^|]+) \|$", body, re.MULTILINE)
    return [row for row in found if row[0] not in ("their step", "---")]


def test_five_procedures_by_two_lists_each() -> None:
    """Primary, secondary, lock, gravity and discontinuing, with the address of each list."""
    names = [name for name, _, _ in TABLES]
    five = ("primary-line", "secondary-line", "saline-lock", "gravity-infusion", "discontinue")
    assert {name: names.count(name) for name in names} == dict.fromkeys(five, 2)
    assert all(re.search(r"<https?://\S+>", body) for _, _, body in TABLES)


@pytest.mark.parametrize(("name", "title", "body"), TABLES, ids=[f"{name}: {title}" for name, title, _ in TABLES])
def test_each_of_their_steps_is_here_or_has_a_reason(name: str, title: str, body: str) -> None:
    """The steps that are named exist; where there is none, a reason of some words says why."""
    known = {step.id for step in load(name).steps}
    listed = rows(body)
    assert len(listed) >= 6, title
    for theirs, ours in listed:
        reason = ours.removeprefix("not here: ")
        if reason != ours:
            assert len(reason.split()) >= FEWEST_REASON_WORDS, theirs
            continue
        named = re.findall(r"`([a-z-]+)`", ours)
        assert named, theirs
        assert ", ".join(f"`{one}`" for one in named) == ours, theirs
        assert set(named) <= known, theirs
