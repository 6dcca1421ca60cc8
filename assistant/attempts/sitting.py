"""One sitting of an attempt at this machine: its ports, a guide and a station, put together."""

import queue
import signal
import sys
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from pathlib import Path

from assistant.adapters.clock import SystemClock
from assistant.adapters.head_start import VoiceAhead
from assistant.adapters.instructor_line import Doorkeeper
from assistant.adapters.keyboard import Keyboard, LineSource, standard_input
from assistant.adapters.press_key import space_bar_presses
from assistant.adapters.sound_keeper import SoundKeeper
from assistant.adapters.sources import PipeSource
from assistant.attempts.begun import NewAttempt, ResumedAttempt
from assistant.attempts.papers import AttemptPapers
from assistant.guide.effects import Outcome
from assistant.guide.events import InputEnded, Typed
from assistant.guide.guide import Guide
from assistant.ports import Clock, Keeper, Page, Post, Screen, Sound, Source
from assistant.screens import Screens
from assistant.settings import SoundSettings
from assistant.station import Interrupted, Station

NOTABLE_S = 1.0
"""Seconds that a clock may be behind the record without a word about it."""


@dataclass(frozen=True)
class Wishes:
    """How the learner wants to talk with the assistant.

    Attributes:
        typed: by typed lines only, silently.
        terminal: these come from a terminal, not from a pipe.
        ear: which recogniser listens; None for the best one.
        sound: which devices, and how the voice sounds.
        instructor_code: what the instructor types to be one; "" where none was set.
        voice_ahead: the voices' processes where they have been started already.
    """

    typed: bool
    terminal: bool
    ear: str | None
    sound: SoundSettings
    instructor_code: str = ""
    voice_ahead: VoiceAhead | None = None


@dataclass(frozen=True)
class AtDesk:
    """What is otherwise at a station that takes its attempts from a desk, one after the other in one process.

    Attributes:
        hands: connects typed input with an attempt: takes its guide, its clock and its inbox; returns a source where
            input is fetched, and what lets go of it.
        told: is told of each entry once it is on disk: its sequence number, its digest and its body. Returns at once.
    """

    hands: Callable[[Guide, Clock, Post], tuple[Source | None, Callable[[], None]]]
    told: Callable[[int, str, Mapping[str, object]], None]


class Told:
    """A record of which each entry is told once it is on disk.

    Args:
        record: open for more entries.
        told: as in `AtDesk`.
    """

    def __init__(self, record: Keeper, told: Callable[[int, str, Mapping[str, object]], None]) -> None:
        self._record = record
        self._told = told

    @property
    def head(self) -> str:
        """Digest of the last entry on disk."""
        return self._record.head

    def append(self, body: Mapping[str, object]) -> tuple[int, str]:
        """Put an entry on disk; return its sequence number and digest."""
        sequence, digest = self._record.append(body)
        self._told(sequence, digest, body)
        return sequence, digest

    def seal(self, body: Mapping[str, object]) -> tuple[int, str]:
        """Put the last entry on disk."""
        sequence, digest = self._record.seal(body)
        self._told(sequence, digest, body)
        return sequence, digest

    def close(self) -> None:
        """Let go of the file."""
        self._record.close()


@dataclass(frozen=True)
class Sitting:
    """A station that is ready, with what it leaves behind.

    Attributes:
        papers: of the attempt.
        station, guide: ready for the first word.
        record_path: where the record is, once there is one.
        resumed: the record of an attempt that is resumed; None for a new one.
        clock_behind_s: as in `assistant.guide.events.Resumed`.
        let_go: called at the end, whatever happens.
        post: puts an event into the station's inbox.
    """

    papers: AttemptPapers
    station: Station
    guide: Guide
    record_path: Callable[[], Path]
    post: Post
    resumed: Keeper | None = None
    clock_behind_s: str = ""
    let_go: tuple[Callable[[], None], ...] = ()

    def live(self) -> Outcome:
        """Live through it; return how it ended.

        Raises:
            RecordError: an entry could not be put on disk.
        """
        try:
            return self.station.run(self.resumed, self.clock_behind_s)
        finally:
            for let_go in self.let_go:
                let_go()


def new_inbox() -> "queue.SimpleQueue[object]":
    """A station's inbox: its put may be called from a signal's handler."""
    return queue.SimpleQueue()


def sit_down(
    attempt: NewAttempt | ResumedAttempt,
    wishes: Wishes,
    screen: Screen,
    tell: Callable[[str], None],
    page: Page | None = None,
    at_desk: AtDesk | None = None,
) -> Sitting:
    """Put a station together for an attempt by voice and keyboard.

    Args:
        attempt: a new one, or one that is resumed.
        wishes: how one talks with it.
        screen: where the learner reads along.
        tell: takes a sentence for whoever is at the machine, before the attempt begins.
        page: a further screen, on which one may also type; the end of a pipe then ends no attempt.
        at_desk: where a desk has the attempt begun; whoever asks for it then also sees to signals.

    Raises:
        ModelError: the recogniser that was asked for is not there.
        UsageError: the attempt began with another instructor's code.
    """
    code = attempt.instructor_code(wishes.instructor_code)
    inbox = new_inbox()
    clock = SystemClock(attempt.last_time)
    behind_s = f"{clock.behind_s:.0f}" if clock.behind_s >= NOTABLE_S else ""
    if behind_s:
        tell(f"This machine's clock is {behind_s} s behind the record: times continue from the record's last one.")
    sound = _sound(wishes, inbox.put, clock, page)
    for notice in sound.notices:
        tell(notice)
    if page is not None:
        page.begins()
        page.takes(lambda words: inbox.put(Typed(clock.now(), words)))
        screen = Screens(screen, page)
    guide = attempt.guide(sound.ear, tell)
    if at_desk is not None:
        source, let_go = at_desk.hands(guide, clock, inbox.put)
        create, resumed = _told(attempt, at_desk.told)
    else:
        source, let_go = _standard_input(wishes, sound, page, clock, inbox.put)
        create, resumed = attempt.create, attempt.record
        end_on_signals(inbox.put)
    station = Station(
        guide,
        create,
        clock,
        screen,
        inbox,
        sound.ear,
        sound.voice,
        source,
        SoundKeeper(lambda: attempt.path) if guide.terms.asks_consent else None,
        Doorkeeper(code, attempt.wrong_codes),
        talk_over=wishes.sound.headset or not wishes.sound.own_voice or sound.cancels_echo,
        through_canceller=sound.cancels_echo,
        signals=wishes.sound.sounds,
        press_to_talk=wishes.sound.press_to_talk,
    )
    return Sitting(attempt.papers, station, guide, lambda: attempt.path, inbox.put, resumed, behind_s, (let_go,))


def _told(
    attempt: NewAttempt | ResumedAttempt, told: Callable[[int, str, Mapping[str, object]], None]
) -> tuple[Callable[[Mapping[str, object]], Keeper], Keeper | None]:
    """How its record is made, and the one that is there, of which each entry is told."""

    def create(opening: Mapping[str, object]) -> Keeper:
        record = attempt.create(opening)
        told(1, record.head, opening)
        return Told(record, told)

    return create, Told(attempt.record, told) if attempt.record is not None else None


def _standard_input(
    wishes: Wishes, sound: Sound, page: Page | None, clock: Clock, post: Post
) -> tuple[Source | None, Callable[[], None]]:
    """Typed lines of this process's standard input: a source where they are fetched, and what lets go of them."""
    by_key = wishes.terminal and wishes.sound.press_to_talk
    presses = space_bar_presses(standard_input(), sys.stdin.fileno()) if by_key else None
    typed_lines = LineSource(presses)
    # With an ear, typed lines are taken as they come; a pipe without one is read line by line as asked.
    piped = not wishes.terminal and sound.ear is None and page is None
    source = PipeSource(typed_lines, clock) if piped else None
    if source is None:
        Keyboard(typed_lines, post if page is None or wishes.terminal else _lines_only(post), clock)

    def let_go() -> None:
        typed_lines.close()
        if presses is not None:
            presses.close()

    return source, let_go


def _lines_only(post: Post) -> Post:
    """Posts everything but the end of a pipe, after which one can still type on a page."""

    def post_line(event: object) -> None:
        if not isinstance(event, InputEnded):
            post(event)

    return post_line


def _sound(wishes: Wishes, post: Post, clock: SystemClock, page: Page | None) -> Sound:
    if wishes.typed:
        return Sound()
    # Only here: typed lines need none of the libraries for sound.
    from assistant.adapters.sound import open_sound

    show_level = page.level if page is not None else None
    return open_sound(post, clock, wishes.ear, wishes.sound, wishes.voice_ahead, show_level)


def end_on_signals(post: Post) -> None:
    """Let an interrupt or a request to end close the attempt properly, its record whole."""

    def handler(_number: int, _frame: object) -> None:
        post(Interrupted())

    for name in ("SIGINT", "SIGTERM", "SIGHUP"):
        if hasattr(signal, name):
            signal.signal(getattr(signal, name), handler)
