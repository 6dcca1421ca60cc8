"""What the guide would say, asked ahead: the same that it says then, and nothing is changed by asking."""

import copy

import pytest

from assistant.guide import GuideMisuseError, Heard, Mode, Opened, Recorded, State, Typed

from .lived import SMOOTH, START, begin, guide


@pytest.mark.parametrize("mode", list(Mode))
def test_a_preview_is_what_follows(mode):
    """At every step of an attempt, what would follow an answer is what follows it, and asking changes nothing."""
    lived = begin(mode)
    seen = 0
    for answer in SMOOTH:
        for words in ("yes", "no", "done", "83.3", "again", "pause", "stop"):
            before = copy.deepcopy(lived.guide.progress)
            trial = copy.deepcopy(lived)
            foreseen = lived.guide.preview(Heard(trial.at, words))
            assert lived.guide.progress == before
            assert trial.give(Heard(trial.at, words)) == foreseen
            seen += len(foreseen)
        lived.do((answer,))
    assert lived.state is State.FINISHED
    assert seen > 200


def test_a_preview_keeps_the_protocol():
    """A preview of what may not come is refused as the event itself is."""
    with pytest.raises(GuideMisuseError):
        guide().preview(Typed(START, "yes"))


def test_a_preview_is_refused_while_an_entry_is_outstanding():
    """Nobody looks ahead past an entry that is not on disk."""
    one = guide()
    one.receive(Opened(START))
    with pytest.raises(GuideMisuseError):
        one.preview(Typed(START, "yes"))
    one.receive(Recorded(1, "d"))
    assert one.preview(Typed(START, "yes"))
