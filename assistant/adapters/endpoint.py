"""Where an utterance begins and ends: pure counting over the speech detector's figures."""

import enum
from collections import deque

from assistant.spoken.completeness import Completeness
from assistant.spoken.expect import ConfirmExpected, Expect, NumberExpected, TextExpected

FRAME_SAMPLES = 512
"""Samples a frame, as the detector wants them: 32 ms at 16 kHz."""
FRAME_S = FRAME_SAMPLES / 16_000

SPEECH = 0.5
"""A frame at least this likely is speech: the detector's own threshold."""
STILL_SPEECH = 0.35
"""Within speech a frame this likely still belongs to it: the end of a word is softer than its beginning."""

START_FRAMES = 3
"""Speech begins with so many speech frames among the last `START_WINDOW`: a click is shorter."""
START_WINDOW = 4
WEAK = 0.1
"""At least this likely, and beside speech, a frame may be a part of a word: the detector is often not sure of a word
that stands alone, though it is as loud as others."""
WEAK_START_FRAMES, WEAK_START_WINDOW = 6, 8
"""Speech begins, too, with so many frames that may be a part of it among so many, and `WEAK_START_SPEECH` of speech."""
WEAK_START_SPEECH = 2
LEAST_SPEECH_FRAMES = 4
"""An utterance with fewer speech frames (128 ms) is a noise; the shortest words measured have eight."""
QUIET_FRAMES = 6
"""So many frames without speech (192 ms) end the echo of the assistant's own voice."""
ECHO_FRAMES = 8
"""Speech that goes on for longer than this (256 ms) after listening began is no echo but somebody speaking."""
GOING_ON_FRAMES = 4
"""Speech among so many last frames is going on: within a word there are gaps of two and three."""
SKIP_S = 0.9
"""So much silence, or the utterance's own pause where that is less, ends what was said too early."""
LONGEST_S = 15.0
"""An utterance is cut here."""


LOUD_HOLDS_S = 2.0
"""So long after the last speech of an utterance what is as loud counts as a part of it too: the detector takes a whole
word for no speech now and then. An alarm that goes on for longer keeps nobody waiting for longer."""
GUESS_FRAMES = 2
"""After so much silence (64 ms) the recogniser is asked what has been said. Within 200 synthesised answers there
were 29 such gaps, 20 of 96 ms or more; a guess that turns out to have come too early is given up."""
FAINT = 0.2
"""Something at least this likely after a guess makes it stale: it may be a soft word."""
FINISHED_S = 0.25
"""Silence that ends what is finished; people among themselves take 0.2 s (Stivers et al. 2009)."""
MAY_GO_ON_S = 0.6
CONFIRM_S = 0.9
"""Silence that ends what may become a yes or a no."""
OPEN_S = 1.2
"""Silence that ends an unfinished utterance: longer than the pause of somebody who reads a number off a display."""
DIGITS_S = 1.8
"""The same where digits are asked for one by one, or said so: who reads them off makes a pause after each, and a
number that was cut is another number. Of 80 strings of people with 0.6 to 1.1 s between the digits 30 were cut after
1.2 s (`tests.bench.live`). Who says the unit too does not wait for it."""
SLOW_FACTOR = 2.0
"""For people who need longer, all of these silences are longer."""


def pause_s(expect: Expect, slow_speaker: bool = False) -> float:
    """Seconds of silence that end an utterance of which nothing is known yet."""
    of_digits = isinstance(expect, NumberExpected) and expect.digits_only
    usual_s = CONFIRM_S if isinstance(expect, ConfirmExpected) else DIGITS_S if of_digits else OPEN_S
    return (SLOW_FACTOR if slow_speaker else 1.0) * usual_s


def known_pause_s(said: Completeness, expect: Expect, slow_speaker: bool = False) -> float:
    """Seconds of silence that end an utterance whose words are known so far; what has been said decides.

    A recogniser's own doubt counts as unfinished: a number cut in two is another number.
    """
    if said is Completeness.DIGITS:
        return (SLOW_FACTOR if slow_speaker else 1.0) * DIGITS_S
    if said is Completeness.OPEN or isinstance(expect, TextExpected):
        return pause_s(expect, slow_speaker)
    wait_s = FINISHED_S if said is Completeness.FINISHED else MAY_GO_ON_S
    return (SLOW_FACTOR if slow_speaker else 1.0) * wait_s


class Moment(enum.Enum):
    """What a frame means."""

    NOTHING = "no utterance is under way"
    STARTED = "an utterance has begun, some frames ago"
    GOING = "the utterance goes on"
    ENDED = "the utterance is over"
    CUT = "the utterance is too long and was cut; the rest of it is skipped"
    NOISE = "what had begun was too short to be speech"


class _State(enum.Enum):
    IDLE = enum.auto()
    SPEAKING = enum.auto()
    SKIPPING = enum.auto()


class Endpointer:
    """Follows the likelihood of speech, frame by frame."""

    def __init__(self) -> None:
        self._recent: deque[float] = deque(maxlen=WEAK_START_WINDOW)
        self._state = _State.IDLE
        self._pause_frames = 0
        self._skip_frames = 0
        self._silent = 0
        self._since_speech = 0
        self._frames = 0
        self._speech_frames = 0
        self._skipped = 0
        self._is_echo = False

    @property
    def silent_frames(self) -> int:
        """Frames of silence at the end of the utterance under way; 0 where none is."""
        return self._silent if self._state is _State.SPEAKING else 0

    @property
    def is_skipping(self) -> bool:
        """Whether what is being said began too early, and is skipped to its end."""
        return self._state is _State.SKIPPING

    def set_pause(self, pause_s: float) -> None:
        """Set the silence that ends the utterance under way, seconds."""
        self._pause_frames = max(1, round(pause_s / FRAME_S))

    def restart(self, pause_s: float) -> None:
        """Look for a new utterance; speech that is going on already is skipped to its end.

        Args:
            pause_s: seconds of silence that end an utterance.
        """
        self.set_pause(pause_s)
        self._skip_frames = min(self._pause_frames, round(SKIP_S / FRAME_S))
        if self._state is _State.SPEAKING:
            self._is_echo = False  # somebody is answering the question before
        elif self._state is _State.IDLE:
            self._is_echo = True
        going_on = self._state is not _State.IDLE or any(_speech(self._recent, GOING_ON_FRAMES))
        self._state = _State.SKIPPING if going_on else _State.IDLE
        self._silent = 0
        self._skipped = 0

    def overhear(self, likelihood: float) -> None:
        """Follow a frame while nobody listens, so that `restart` knows whether speech is going on."""
        self._recent.append(likelihood)
        self._state = _State.IDLE

    def take(self, likelihood: float, *, is_loud: bool = False) -> Moment:
        """Follow a frame while listening; say what it means.

        Args:
            likelihood: of speech.
            is_loud: it is about as loud as the speech of the utterance under way.
        """
        is_speech = likelihood >= SPEECH
        self._recent.append(likelihood)
        if self._state is _State.SKIPPING:
            self._skip(is_speech=is_speech)
            return Moment.NOTHING
        if self._state is _State.IDLE:
            if not self._begins():
                return Moment.NOTHING
            self._state = _State.SPEAKING
            self._silent = self._since_speech = 0
            self._frames = len(self._recent)
            self._speech_frames = sum(_speech(self._recent, WEAK_START_WINDOW))
            return Moment.STARTED
        return self._within(likelihood, is_speech=is_speech, is_loud=is_loud)

    def end_if_silent(self) -> Moment:
        """End the utterance under way where the silence after it is long enough; `set_pause` may have made it so."""
        if self._state is not _State.SPEAKING or self._silent < self._pause_frames:
            return Moment.NOTHING
        self._state = _State.IDLE
        self._recent.clear()
        return Moment.ENDED if self._speech_frames >= LEAST_SPEECH_FRAMES else Moment.NOISE

    def _begins(self) -> bool:
        if sum(_speech(self._recent, START_WINDOW)) >= START_FRAMES:
            return True
        weak = sum(likelihood >= WEAK for likelihood in self._recent)
        return weak >= WEAK_START_FRAMES and sum(_speech(self._recent, WEAK_START_WINDOW)) >= WEAK_START_SPEECH

    def _skip(self, *, is_speech: bool) -> None:
        self._skipped += 1
        self._silent = 0 if is_speech else self._silent + 1
        if is_speech and self._skipped > ECHO_FRAMES:
            # Somebody speaks who began too early: all of it is skipped, also what comes after a pause for thought.
            # The second half of a number is another number.
            self._is_echo = False
        if self._silent >= (QUIET_FRAMES if self._is_echo else self._skip_frames):
            self._state = _State.IDLE

    def _within(self, likelihood: float, *, is_speech: bool, is_loud: bool) -> Moment:
        self._frames += 1
        self._speech_frames += is_speech
        self._since_speech = 0 if is_speech else self._since_speech + 1
        holds = is_loud and self._since_speech * FRAME_S <= LOUD_HOLDS_S
        if is_speech or holds or (self._silent == 0 and likelihood >= STILL_SPEECH):
            self._silent = 0
        else:
            self._silent += 1
        over = self.end_if_silent()
        if over is not Moment.NOTHING:
            return over
        if self._frames * FRAME_S >= LONGEST_S:
            self._state = _State.SKIPPING
            self._silent = 0
            self._is_echo = False
            return Moment.CUT
        return Moment.GOING


def _speech(recent: deque[float], frames: int) -> list[bool]:
    """Which of the last frames, so many at most, are speech."""
    return [likelihood >= SPEECH for likelihood in list(recent)[-frames:]]
