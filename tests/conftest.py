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


def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    """Put the attempt by voice first, then all that is slow, then the rest in its order."""

    def turn(item: pytest.Item) -> int:
        if item.get_closest_marker("slow") is None:
            return 2
        return 0 if "by_voice" in item.nodeid else 1

    items.sort(key=turn)
