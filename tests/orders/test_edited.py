"""A sample of the drawn and edited orders; `tests.orders.edited` takes a hundred thousand."""

import pytest

from assistant.checklist.load import available
from tests.orders.edited import look_at


@pytest.mark.parametrize("piece", range(0, len(available()), 3))
def test_what_lint_lets_pass_can_be_walked(piece: int) -> None:
    """Every edited order without an error is lived to a good end by a careful learner."""
    looked = look_at(piece, 12)
    assert not looked.stuck
    assert sum(count for kind, count in looked.counts.items() if "walked" in kind)
