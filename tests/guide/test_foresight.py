"""What the guide would say, asked ahead: the same that it says then, and nothing is changed by asking."""

import copy

import pytest

from assistant.guide.effects import Say
from assistant.guide.events import Heard
from assistant.guide.foresight import FIRST, LIKELY, likely_replies
from assistant.guide.progress import Mode

from .lived import SMOOTH, Lived, begin


def foreseen(lived: Lived) -> list[Say]:
    return list(likely_replies(lived.guide, lived.listen.expect, lived.at))


@pytest.mark.parametrize("mode", list(Mode))
def test_what_is_foreseen_is_what_is_said(mode):
    """At every step of an attempt, the reply to a likely answer begins with sentences that were foreseen."""
    lived = begin(mode)
    seen = 0
    for answer in SMOOTH:
        before = copy.deepcopy(lived.guide.progress)
        sentences = foreseen(lived)
        assert lived.guide.progress == before
        for words in LIKELY:
            trial = copy.deepcopy(lived)
            effects = trial.give(Heard(trial.at, words))
            said = [effect for effect in effects if isinstance(effect, Say)][:FIRST]
            if sentences:
                assert set(said) <= set(sentences)
                seen += len(said)
        lived.do((answer,))
    assert seen > 10


def test_nothing_is_foreseen_of_a_number():
    """Where a number is asked for nothing is made ready: the right one must not be answered sooner than another."""
    lived = begin()
    lived.do(SMOOTH[:5])
    assert lived.step == "rate"
    assert foreseen(lived) == []
