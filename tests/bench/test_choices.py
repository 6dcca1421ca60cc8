"""The bench of choices: what the library gives is learnt, and what an author's own sheet gives is not."""

import pytest

from tests.bench.near_misses import choices, unseen_choices
from tests.bench.training.wordings import all_wordings, as_written


@pytest.mark.parametrize("half", ["report", "tuning"])
def test_what_is_unseen_is_learnt_nowhere(half):
    """No wording of the training is one of the choices that only measure; all choices of the library are."""
    said = {as_written(words) for _, words in all_wordings()}
    measured = {as_written(choice) for choice, _ in unseen_choices(half)}
    assert len(measured) > 80
    assert not measured & said
    # At other lines these two are near-misses that the benches measure.
    assert {as_written(choice) for choice, _ in choices()} - said <= {"none", "not sure"}


def test_no_choice_is_in_both_halves():
    """Or what was chosen by it would be reported on it."""
    report, tuning = ({as_written(choice) for choice, _ in unseen_choices(half)} for half in ("report", "tuning"))
    assert not report & tuning
    assert not {as_written(choice) for choice, _ in choices()} & (report | tuning)
