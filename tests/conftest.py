"""What all tests share: the longest first, so that two workers end at about the same time."""

import pytest


def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    """Put the attempt by voice first, then all that is slow, then the rest in its order."""

    def turn(item: pytest.Item) -> int:
        if item.get_closest_marker("slow") is None:
            return 2
        return 0 if "by_voice" in item.nodeid else 1

    items.sort(key=turn)
