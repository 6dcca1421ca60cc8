"""Several screens that show the same: the terminal's and a page, say."""

import time

from assistant.guide.effects import Say
from assistant.guide.events import Event
from assistant.ports import Screen


class Screens:
    """Gives everything to each of its screens, in order.

    Args:
        screens: all of them.
        answer_s: time that a question stays to be read before it is answered, seconds; for demonstrations.
    """

    def __init__(self, *screens: Screen, answer_s: float = 0.0) -> None:
        self._screens = screens
        self._answer_s = answer_s

    def show(self, say: Say) -> None:
        """A sentence of the assistant."""
        for screen in self._screens:
            screen.show(say)

    def listening(self) -> None:
        """The microphone is open."""
        for screen in self._screens:
            screen.listening()

    def asked(self, *, paused: bool) -> None:
        """An answer is wanted now."""
        for screen in self._screens:
            screen.asked(paused=paused)
        time.sleep(self._answer_s)

    def speaks(self, *, sounds: bool) -> None:
        """The voice begins to sound, or is silent again."""
        for screen in self._screens:
            screen.speaks(sounds=sounds)

    def waits(self, seconds: int) -> None:
        """So many seconds of a timed wait are left."""
        for screen in self._screens:
            screen.waits(seconds)

    def cover(self) -> None:
        """Take away what was shown so far."""
        for screen in self._screens:
            screen.cover()

    def taken(self, event: Event) -> None:
        """What was heard or typed, once it is on disk."""
        for screen in self._screens:
            screen.taken(event)
