"""A small order that loads, for tests that break it."""

from pathlib import Path

GOOD = """\
title = "A bag"
code = "T-1"
ordered_by = "Dr Nobody (fictional), signed"

[patient]
name = "Wilhelmina Test"
born = 1990-02-28
number = "00-0001"
allergies = ["latex"]

[primary]
fluid = "lactated Ringer's solution"
bag_volume = "1,000 mL"
over = "12 h"
reserve = "50 mL"

[secondary]
drug = "famotidine"
dose = "20 mg"
volume = "50 mL"
over = "20 min"
frequency = "every 12 hours"
"""


def written(folder: Path, text: str = GOOD, name: str = "bag") -> str:
    """The path of an order with this text."""
    path = folder / f"{name}.toml"
    path.write_text(text, encoding="utf-8")
    return str(path)


def changed(old: str, new: str) -> str:
    """The good text with one thing changed; the thing must be there."""
    assert old in GOOD
    return GOOD.replace(old, new, 1)
