"""The table in sound_alike.md is the one that its command prints."""

import re
import subprocess
import sys
from pathlib import Path

PAGE = Path(__file__).with_name("sound_alike.md")
ROOT = Path(__file__).parent.parent.parent
BETWEEN = re.compile(r"<!-- sound-alike: begin -->\n(?P<table>.*?)<!-- sound-alike: end -->", re.DOTALL)


def test_the_table_is_the_one_that_the_command_prints() -> None:
    """Whoever changes a checklist, an order or the model of confusions prints the table anew."""
    found = BETWEEN.findall(PAGE.read_text(encoding="utf-8"))
    assert len(found) == 1, f"{PAGE.name} does not have the two marks of the table exactly once"
    command = [sys.executable, "-m", "tests.spoken.confusions"]
    printed = subprocess.run(command, cwd=ROOT, check=True, capture_output=True, timeout=120)
    assert found[0].strip() == printed.stdout.decode("utf-8").strip()
