"""Every kind of attack on the evidence, and what is said of it."""

import pytest

from tests.attempt.attacks import ALL, KINDS, TODAY, fresh, made


@pytest.fixture(scope="module")
def world(tmp_path_factory):
    return made(tmp_path_factory.mktemp("world") / "world")


def test_there_are_enough_kinds():
    assert len(KINDS) >= 60


@pytest.mark.parametrize(("attack", "code", "said"), KINDS.values(), ids=list(KINDS))
def test_what_is_said_of_an_attack(world, attack, code, said):
    """The exit code and the sentence."""
    with fresh(world) as copy:
        got, told = attack(copy)
    assert (got, said in told) == (code, True), told


def test_nothing_is_said_of_the_world_itself(world):
    """Before anybody attacks it: nobody is accused."""
    with fresh(world) as copy:
        code, told = copy.verify(*ALL, options=("--day", TODAY))
        assert code == 0, told
        assert f"Whole: all {len(ALL)} attempts of {TODAY} are there." in told
        assert "BROKEN" not in told
