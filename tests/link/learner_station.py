"""The program ``checkoff station`` with a simulated learner at its keyboard, who answers at a person's pace or at once.

``python -m tests.link.learner_station LEAST MOST SEED`` and what `checkoff station` takes. Everything but the keyboard
is the real one: time, record, link, display.
"""

import os
import random
import sys
import time
from datetime import timedelta

from assistant.cli import station
from assistant.cli.main import main
from assistant.guide.events import Typed
from assistant.guide.progress import Mode, State
from assistant.learner import SimulatedLearner

TICK_S = 0.05
"""Longest wait in one go: then the station looks up for what the desk wants."""


class Paced:
    """Fetches a simulated learner's answers: each comes so many seconds after its question."""

    def __init__(self, guide, clock, least_s, most_s, seed):
        papers = guide.papers
        self._learner = SimulatedLearner(
            papers.checklist,
            papers.key,
            None,
            seed,
            truth=papers.truth,
            with_instructor=guide.terms.mode is Mode.CHECK_OFF,
        )
        self._guide, self._clock = guide, clock
        self._pace = (least_s, most_s)
        self._random = random.Random(seed)  # noqa: S311 - varies a pace, guards nothing
        self._asked, self._words, self._at = None, "", clock.now()

    def next_event(self, due):
        progress = self._guide.progress
        asked = (progress.cursor, progress.state, len(progress.steps))
        if asked != self._asked or not self._words:
            self._asked = asked
            self._words = self._learner.reply(progress).words
            self._at = self._clock.now() + timedelta(seconds=self._random.uniform(*self._pace))
        now = self._clock.now()
        until = self._at if due is None else min(self._at, due)
        if until > now:
            time.sleep(min(TICK_S, (until - now).total_seconds()))
            return None
        if self._at > now or progress.state is State.WAITING:
            return None
        words, self._words = self._words, ""
        return Typed(now, words)


def learner_at(least_s, most_s, seed):
    """What connects such a learner with an attempt (`assistant.attempts.sitting.AtDesk`)."""

    def hands(guide, clock, _post):
        return Paced(guide, clock, least_s, most_s, seed), lambda: None

    return hands


if __name__ == "__main__":
    os.environ.setdefault("PYTHONUNBUFFERED", "1")
    least_s, most_s, seed = float(sys.argv[1]), float(sys.argv[2]), int(sys.argv[3])
    station._keyboard = lambda *, by_key: learner_at(least_s, most_s, seed)
    sys.exit(main(["station", *sys.argv[4:]]))
