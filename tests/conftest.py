"""What all tests share: the longest first, so that the workers end at about the same time; nobody's own files."""

import os
import shutil
from pathlib import Path

import pytest
from hypothesis import settings

from tests import HEADS

# The same cases in every run, so that it tells of the change and not of luck; HYPOTHESIS_PROFILE=search: new ones.
settings.register_profile("same", derandomize=True)
settings.register_profile("search", derandomize=False)
settings.load_profile(os.environ.get("HYPOTHESIS_PROFILE", "same"))

os.environ["CHECKOFF_SETTINGS"] = str(Path(__file__).with_name("no-settings.toml"))  # there is none: all defaults


@pytest.fixture(autouse=True)
def new_book_of_heads() -> None:
    """No test knows what another has seen: many write the same attempt."""
    shutil.rmtree(HEADS, ignore_errors=True)


LONGEST_S = {
    "tests/attempt/test_by_voice.py::test_a_whole_attempt": 380,
    "tests/attempt/test_by_voice.py::test_an_attempt_while_others_talk": 160,
    "tests/guide/test_invariants.py": 110,
    "tests/bench/training/test_training.py": 45,
    "tests/attempt/test_typed.py::test_killed_and_resumed": 20,
    "tests/attempt/test_honest.py": 20,
    "tests/spoken/test_sound_alike_table.py": 15,
}
"""What takes longest, by how its names begin, and about how long, seconds: whoever begins it late ends late."""
WAITING = 2
"""The first of them wait more than they work: the first worker has them one after the other."""
IN_TIME = (
    "tests/attempt/test_by_ear.py",
    *("tests/adapters", "tests/cli", "tests/desk", "tests/link", "tests/record", "tests/report/test_browser.py"),
    "tests/attempt/test_by_voice.py::test_a_pulled_microphone",
)
"""Where tests listen, or give another process so many seconds: the second worker has them, one after the other.

The first of them begins its stretch, so no worker that stands back takes it over: it would lose some of the sound.
"""
STANDING_BACK = 2
"""The first stretch of tests that only calculate. Whoever has one leaves the cores to the others whenever these want
them, so that nothing that goes by the clock is late."""
_NICENESS = 5
_FIRST_OF_THEM: set[str] = set()


def pytest_runtest_logstart(nodeid: str) -> None:
    """Let this process stand back, if it begins a stretch of tests that only calculate."""
    if nodeid in _FIRST_OF_THEM and hasattr(os, "nice"):
        os.nice(_NICENESS)


def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    """Let every worker begin with its share of what takes longest; the rest keeps its order.

    Workers are given a stretch of the list each, as long as the others', and take from each other's ends later on
    (xdist's worksteal). What begins a stretch is never taken over, so a fixture of a whole file is made once for it.
    """
    workers = int(os.environ.get("PYTEST_XDIST_WORKER_COUNT", "1"))
    hands: list[list[pytest.Item]] = [[] for _ in range(workers)]
    calculating = range(STANDING_BACK, workers) or range(workers)
    loads_s = [0] * workers
    dealt: set[pytest.Item] = set()
    for number, (name, seconds) in enumerate(LONGEST_S.items()):
        worker = 0 if number < WAITING else min(calculating, key=loads_s.__getitem__)
        hand = [item for item in items if item.nodeid.startswith(name)]
        hands[worker] += hand
        loads_s[worker] += seconds if hand else 0
        dealt.update(hand)
    in_time = [item for name in IN_TIME for item in items if item.nodeid.startswith(name)]
    hands[1 % workers] += in_time
    dealt.update(in_time)
    rest = [item for item in items if item not in dealt]
    order: list[pytest.Item] = []
    for place, hand in enumerate(hands):
        stretch = (len(items) - len(order)) // (workers - place)
        more = max(0, stretch - len(hand))
        own = [*hand, *rest[:more]]
        if place >= STANDING_BACK and own:
            _FIRST_OF_THEM.add(own[0].nodeid)
        order += own
        rest = rest[more:]
    items[:] = order
