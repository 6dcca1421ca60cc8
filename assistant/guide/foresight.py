"""What the guide would say to an answer: asked ahead, so that a voice can get ready. It decides and changes nothing."""

import copy
from collections.abc import Sequence
from datetime import datetime

from assistant.guide.effects import Append, Say
from assistant.guide.events import Heard, Recorded
from assistant.guide.guide import Guide
from assistant.spoken.expect import ConfirmExpected, Expect

LIKELY = ("yes", "done", "no")
"""Answers to a question that wants a confirmation. No number is among them: a right one must not sound sooner."""
FIRST = 2
"""So many sentences of each reply; the rest is made while they sound."""


def likely_replies(guide: Guide, expect: Expect, at: datetime) -> Sequence[Say]:
    """The first sentences after each of the likely answers; none where no confirmation is expected.

    Args:
        guide: stays as it is.
        expect: what is expected now.
        at: the time of the answer.
    """
    if not isinstance(expect, ConfirmExpected):
        return ()
    found: list[Say] = []
    for words in LIKELY:
        # A guide changes only itself, and its progress it never changes but replaces: the copy is a trial.
        trial = copy.copy(guide)
        effects = trial.receive(Heard(at, words))
        if effects and isinstance(effects[0], Append):
            effects = trial.receive(Recorded(0, ""))
        found += [effect for effect in effects if isinstance(effect, Say)][:FIRST]
    return found
