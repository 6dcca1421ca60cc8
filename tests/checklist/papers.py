"""A small checklist that loads, for tests that break it."""

from pathlib import Path

GOOD = """\
title = "Flow check"
version = "1.0.0"
purpose = "Check a running line."
order = "oh-101"
cautions = ["Training only."]
sources = ["common practice, no source"]

[[steps]]
id = "look"
part = "Looking"
say = "Is the line free of air?"
critical = true
why = "Air belongs in no vein."
hint = "Hold it against the light."
sources = ["common practice, no source"]
expect = { kind = "question", right = "yes" }
if_wrong = "Stop the pump."

[[steps]]
id = "rate"
part = "Looking"
say = "How many millilitres an hour does the pump show?"
expect = { kind = "number", unit = "mL/h", key = "primary.rate" }
after = ["look"]
if_wrong = "Look at the display again."

[[steps]]
id = "start"
part = "Going on"
say = "Start the pump."
gate = true

[steps.expires]
after_s = 60
reopen = ["rate"]
say = "Enter it again."
"""


def written(folder: Path, text: str = GOOD, name: str = "flow") -> str:
    """The path of a checklist with this text."""
    path = folder / f"{name}.toml"
    path.write_text(text, encoding="utf-8")
    return str(path)


def changed(old: str, new: str) -> str:
    """The good text with one thing changed; the thing must be there."""
    assert old in GOOD
    return GOOD.replace(old, new, 1)
