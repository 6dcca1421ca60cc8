"""Lines for a screen reader or braille: bare, and nothing that repeats itself."""

import pytest

from tests.attempt.program import here


@pytest.mark.parametrize("plain", [True, False])
def test_plain_lines_are_bare(tmp_path, capsys, plain):
    """With --plain the learner's words stand at the margin too; without, they are set off by spaces."""
    options = ["--plain"] if plain else []
    ended = here(capsys, "demo", "primary-line", "--records", str(tmp_path), *options)
    assert ended.code == 0
    typed = [line for line in ended.lines if "You typed: " in line]
    assert typed
    assert all(line.startswith("You typed: ") is plain for line in typed)
