"""Follows an utterance from its first sound to its words: what is said ahead of the end decides where the end is."""

import time
from collections.abc import Callable
from dataclasses import dataclass

import numpy as np

from assistant.adapters.beforehand import Beforehand, sounds
from assistant.adapters.endpoint import (
    FAINT,
    GUESS_FRAMES,
    SPEECH,
    Endpointer,
    Moment,
    known_pause_s,
    pause_s,
)
from assistant.adapters.heard import heard_from
from assistant.adapters.level import Level, Room, mean_square
from assistant.adapters.recognition import Guess, Recognition
from assistant.ports import AnswerHeard, Clock, LearnerSilent, LearnerSpeaks, LevelAdvice, Post, Timing
from assistant.spoken import ENGLISH
from assistant.spoken.completeness import Completeness
from assistant.spoken.expect import Expect


@dataclass(frozen=True)
class Wanted:
    """One call of `Ear.listen`; a new one, even for the same, is a new object.

    Attributes:
        since: sound that is older is not wanted; steady clock, seconds.
        pause_s: the silence that ends an utterance of which nothing is known, seconds.
    """

    expect: Expect
    since: float
    question: int
    pause_s: float


@dataclass(frozen=True)
class Manner:
    """How an ear listens.

    Attributes:
        slow_speaker: wait twice as long before an utterance counts as over.
        fixed_pause_s: end every utterance after so much silence, whatever was said; to compare with.
    """

    slow_speaker: bool = False
    fixed_pause_s: float | None = None

    def pause_s(self, expect: Expect, asked_s: float | None) -> float:
        """Seconds of silence that end an utterance of which nothing is known; `asked_s` is what a step asks for."""
        if self.fixed_pause_s is not None:
            return self.fixed_pause_s
        own_s = pause_s(expect, self.slow_speaker)
        return own_s if asked_s is None else max(asked_s, own_s)


class Follower:
    """What the ear's thread knows of the utterance under way; nothing of it is touched by another thread.

    Args:
        recognition: is fed and asked.
        post, clock, ear: where events go, what stamps them, and the name of the ear in them.
        manner: how long to wait.
        level: judges the learner's level, where that is wished.
        wanted: what is wanted right now; another thread may change that at any moment.
    """

    def __init__(
        self,
        recognition: Recognition,
        post: Post,
        clock: Clock,
        ear: str,
        manner: Manner,
        level: Level | None,
        wanted: Callable[[], Wanted | None],
    ) -> None:
        self.keeps_sound = False
        self._recognition = recognition
        self._post = post
        self._clock = clock
        self._ear = ear
        self._manner = manner
        self._level = level
        self._wanted_now = wanted
        self._endpointer = Endpointer()
        self._room = Room()
        self._before = Beforehand()
        self._is_speech = False
        self._speech = _Mean()
        self._sound: list[bytes] = []
        self._guess: Guess | None = None
        self._unfed: list[bytes] = []
        self._began = 0.0
        self._ended = 0.0
        self._has_gap = False

    @property
    def is_under_way(self) -> bool:
        """Whether an utterance has begun and not ended."""
        return self._is_speech

    @property
    def awaits_guess(self) -> bool:
        """Whether the recogniser is working out what has been said so far."""
        return self._guess is not None and not self._guess.done.is_set()

    def reset(self) -> None:
        """The sound starts anew."""
        self._endpointer = Endpointer()
        self.drop()

    def turn_to(self, wanted: Wanted | None) -> None:
        """Something else is wanted from now on, or nothing."""
        self.drop()
        if wanted is not None:
            self._endpointer.restart(wanted.pause_s)

    def lost_sound(self) -> None:
        """Sound was lost right before what comes next."""
        self._has_gap = True

    def overhear(self, likelihood: float) -> None:
        """A frame that nobody wants."""
        self._endpointer.overhear(likelihood)

    def take(self, wanted: Wanted, frame: bytes, likelihood: float, arrived: float, *, is_behind: bool = False) -> None:
        """A frame that is wanted.

        Args:
            wanted: what is wanted.
            frame: its samples.
            likelihood: of speech.
            arrived: when it came, steady clock, seconds.
            is_behind: others talk in the room, and it is no louder than they are.
        """
        power = self._room.take(mean_square(np.frombuffer(frame, "<i2")))
        if is_behind:
            power = 0.0  # however loud that may be, it is no part of a word
        is_loud = self._is_speech and sounds(power, self._speech.mean, self._room.power)
        moment = self._endpointer.take(likelihood, is_loud=is_loud)
        if not self._is_speech:
            self._before.add(frame, power, likelihood, follows_gap=self._has_gap)
            self._has_gap = False
            if self._endpointer.is_skipping:
                self._before.shorten()
        if moment is Moment.STARTED:
            self._post(LearnerSpeaks(wanted.question))
            self._recognition.begin(wanted.expect)
            self._is_speech = True
            self._began = self._ended = arrived
            earlier, self._has_gap = self._before.take(self._room.power)
            for one in earlier:
                self._feed(one)
            self._speech.take(power)
        elif self._is_speech and moment is Moment.GOING:
            self._go_on(wanted, frame, likelihood, power, arrived)
        else:
            if self._is_speech and self._guess is None:
                self._feed(frame)
            self._end(wanted, moment)

    def look_up(self, wanted: Wanted) -> None:
        """Between two frames: what the recogniser has worked out may end the utterance right now."""
        if self._heed(wanted):
            self._end(wanted, self._endpointer.end_if_silent())

    def drop(self) -> None:
        """Forget the utterance under way."""
        self._recognition.drop()
        self._is_speech = False
        self._sound = []
        self._guess = None
        self._unfed = []
        self._speech = _Mean()
        self._before = Beforehand()
        self._has_gap = False

    def _go_on(self, wanted: Wanted, frame: bytes, likelihood: float, power: float, arrived: float) -> None:
        """Within an utterance: sound goes to the recogniser; in a silence it is asked what has been said."""
        silent = self._endpointer.silent_frames
        if not silent:
            self._ended = arrived
        if likelihood >= SPEECH:
            self._speech.take(power)
        is_quiet = silent and likelihood < FAINT
        if self._guess is not None and not is_quiet:
            self._guess = None
            self._endpointer.set_pause(wanted.pause_s)
            for earlier in self._unfed:
                self._recognition.feed(earlier)
            self._unfed = []
        if self._guess is None:
            self._feed(frame)
            if is_quiet and silent >= GUESS_FRAMES and self._manner.fixed_pause_s is None:
                self._guess = self._recognition.guess()
        else:
            self._unfed.append(frame)
            if self.keeps_sound:
                self._sound.append(frame)
        self.look_up(wanted)

    def _heed(self, wanted: Wanted) -> bool:
        """Let what the recogniser has heard so far decide how much silence ends the utterance; whether it does."""
        if self._guess is None or self._guess.hearing is None:
            return False
        said = self._guess.hearing.words
        what = ENGLISH.completeness(said, wanted.expect) if said else Completeness.OPEN
        if what is Completeness.OPEN:
            return False
        if self._guess.hearing.doubtful and what is not Completeness.DIGITS:
            what = Completeness.MAY_GO_ON  # perhaps because something else is being said
        known_s = known_pause_s(what, wanted.expect, self._manner.slow_speaker)
        self._endpointer.set_pause(max(known_s, wanted.pause_s) if what is Completeness.DIGITS else known_s)
        return True

    def _end(self, wanted: Wanted, moment: Moment) -> None:
        if moment is Moment.NOISE:
            self.drop()
            self._post(LearnerSilent(wanted.question))
        elif self._is_speech and moment in (Moment.ENDED, Moment.CUT):
            self._finish(wanted, is_cut=moment is Moment.CUT)

    def _feed(self, frame: bytes) -> None:
        if self.keeps_sound or self._level is not None:
            self._sound.append(frame)
        self._recognition.feed(frame)

    def _finish(self, wanted: Wanted, *, is_cut: bool) -> None:
        # An utterance that was cut has lost its end: what is left of a number may be another number.
        gap = self._has_gap or is_cut
        decided = time.monotonic()
        hearing = self._recognition.wait(lambda: self._wanted_now() is not wanted)
        understood = time.monotonic() if self._guess is None else max(self._guess.heard_at, self._ended)
        sound = b"".join(self._sound)
        timing = Timing(self._began, self._ended, decided, understood)
        self.drop()
        if hearing is None or self._wanted_now() is not wanted:
            return  # muted, or asked for something else, while the recogniser worked
        kept = sound if self.keeps_sound else b""
        event = heard_from(hearing, self._clock.now(), self._ear, gap=gap, sound=kept)
        self._post(AnswerHeard(wanted.question, event, timing))
        if self._level is not None:  # after the answer, which advice must not get in the way of
            advice = self._level.utterance(np.frombuffer(sound, "<i2"))
            if advice:
                self._post(LevelAdvice(advice))


class _Mean:
    """The mean power of what counts as speech in an utterance."""

    def __init__(self) -> None:
        self.mean = 0.0
        self._frames = 0

    def take(self, power: float) -> None:
        self._frames += 1
        self.mean += (power - self.mean) / self._frames
