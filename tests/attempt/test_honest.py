"""Honest records raise no alarm, a sample of them: `tests.attempt.honest` makes many more."""

from tests.attempt.honest import SITTINGS, alarms, many


def test_nobody_is_accused(tmp_path):
    """Stopped, resumed, closed, signed, withdrawn, moved, copied: here, and where nothing was ever seen."""
    world, paths = many(SITTINGS, 3, tmp_path)
    told = []
    assert alarms(world, paths, told.append) == 0, told
