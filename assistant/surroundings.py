"""What a station needs around it beside ear and voice: record, sound store, screen, and input that is fetched."""

from collections.abc import Mapping
from datetime import datetime
from typing import Protocol

from assistant.guide.effects import Say
from assistant.guide.events import Event


class Keeper(Protocol):
    """The record of one attempt, as far as the station needs it."""

    @property
    def head(self) -> str:
        """Digest of the last entry on disk."""

    def append(self, body: Mapping[str, object]) -> tuple[int, str]:
        """Put an entry on disk; return its sequence number and digest."""

    def seal(self, body: Mapping[str, object]) -> tuple[int, str]:
        """Put the last entry on disk."""

    def close(self) -> None:
        """Let go of the file."""


class SoundStore(Protocol):
    """Where the learner's sound is kept, once they have agreed."""

    def keep(self, sound: bytes) -> Mapping[str, object]:
        """Put an utterance on disk; return what its entry says of it."""


class Screen(Protocol):
    """Where the learner reads along."""

    def show(self, say: Say) -> None:
        """A sentence of the assistant."""

    def listening(self) -> None:
        """The microphone is open: sound has arrived."""

    def cover(self) -> None:
        """Take away what was shown so far: another person must not read it."""

    def taken(self, event: Event) -> None:
        """What was heard or typed, once it is on disk."""


class Source(Protocol):
    """Input that is fetched one at a time, only when an answer is wanted: a pipe, a simulated learner."""

    def next_event(self, due: datetime | None) -> Event | None:
        """The next input, or None when `due` came first."""
