"""The recogniser in a thread of its own: fed while somebody speaks, asked in the first silence, replaced when it hangs.

The ear goes on following the sound meanwhile, so that speech that goes on is noticed while a guess is worked out.
"""

import contextlib
import queue
import threading
import time
from collections.abc import Callable
from dataclasses import dataclass, field

from assistant.errors import AssistantError
from assistant.ports import Hearing, Recogniser, Utterance
from assistant.spoken.expect import AnyExpected, Expect
from assistant.text import reason_shown

FIRST_LIMIT_S = 10.0
"""Longest wait for the recogniser after an utterance; then another one, where that can be had, hears the same sound."""
ANSWER_LIMIT_S = 30.0
"""Longest wait for the last one: a machine that is only busy gets there."""
_TRIAL_FRAME = bytes(1024)
_CLOSE_LIMIT_S = 0.5
_LOOK_UP_S = 0.01


class RecogniserFailedError(Exception):
    """The recogniser raised or does not answer; carries the sentence for `EarLost`."""


@dataclass
class Guess:
    """What the recogniser makes of an utterance so far.

    Attributes:
        hearing: set when it is there.
        heard_at: when it was, on the steady clock, seconds.
    """

    hearing: Hearing | None = None
    heard_at: float = 0.0
    failure: str = ""
    dropped: bool = False
    done: threading.Event = field(default_factory=threading.Event)
    utterance: Utterance | None = field(default=None, repr=False)

    def drop(self) -> None:
        """Nobody wants it any more: the recogniser need not work it out, or stops doing so."""
        self.dropped = True  # before the look at the utterance, as the worker sets that before it looks here
        if self.utterance is not None:
            self.utterance.give_up()


class Recognition:
    """One recogniser, one utterance at a time; every call returns at once but `wait`.

    The recogniser is called in one thread only. A guess ends the recogniser's utterance; when the speaker goes
    on, a new one is begun and fed all sound so far, so no guess can leave anything behind.
    """

    def __init__(
        self, recogniser: Recogniser, reopen: Callable[[], Recogniser] | None = None, *, needs_trial: bool = False
    ) -> None:
        """Take the recogniser over.

        Args:
            recogniser: called and closed in this object's thread.
            reopen: opens another one after this one did not answer; None asks the same one again.
            needs_trial: it is not known yet whether it works: `try_again` tells.
        """
        self._recogniser = recogniser
        self._reopen = reopen
        self._worker = _Worker(recogniser)
        self._frames: list[bytes] = []
        self._expect: Expect = AnyExpected()
        self._guess: Guess | None = None
        self._needs_trial = needs_trial

    def begin(self, expect: Expect) -> None:
        """An utterance begins; what is left of an earlier one is dropped."""
        self.drop()
        self._expect = expect
        self._worker.begin(expect)

    def feed(self, frame: bytes) -> None:
        """Sound of the utterance; whatever was guessed before it no longer holds."""
        if self._guess is not None:
            self._guess.drop()
            self._guess = None
            self._worker.begin(self._expect)
            for earlier in self._frames:
                self._worker.feed(earlier)
        self._frames.append(frame)
        self._worker.feed(frame)

    def guess(self) -> Guess:
        """Ask what the sound so far is; it is worked out as soon as the recogniser has left what it was about."""
        if self._guess is None:
            self._guess = self._worker.finish()
        return self._guess

    def wait(self, is_given_up: Callable[[], bool]) -> Hearing | None:
        """The words of all that was fed; None where nobody wants them any more.

        Raises:
            RecogniserFailedError: it raised, or did not answer in time.
        """
        if self._reopen is not None and not self._is_done(FIRST_LIMIT_S, is_given_up) and not is_given_up():
            self._try_another()
        return self._last_answer(is_given_up)

    def _try_another(self) -> None:
        """Let another recogniser hear the same sound."""
        expect, frames = self._expect, self._frames
        self._replace()
        self.begin(expect)
        for frame in frames:
            self.feed(frame)

    def _last_answer(self, is_given_up: Callable[[], bool]) -> Hearing | None:
        if not self._is_done(ANSWER_LIMIT_S, is_given_up):
            if is_given_up():
                return None
            self._replace()
            raise RecogniserFailedError("The recogniser does not answer.")
        guess = self.guess()
        if guess.failure:
            self._needs_trial = True
            raise RecogniserFailedError(guess.failure)
        return guess.hearing

    def _is_done(self, limit_s: float, is_given_up: Callable[[], bool]) -> bool:
        """Whether the recogniser has answered in time, and somebody still wants it."""
        guess = self.guess()
        deadline = time.monotonic() + limit_s
        while not guess.done.wait(_LOOK_UP_S):
            if is_given_up() or time.monotonic() > deadline:
                return False
        return True

    def check(self) -> None:
        """Raise what went wrong in the recogniser's thread since the last call.

        Raises:
            RecogniserFailedError: something did.
        """
        failure = self._worker.take_failure()
        if failure:
            self._needs_trial = True
            self.drop()
            raise RecogniserFailedError(failure)

    def drop(self) -> None:
        """Forget the utterance under way."""
        if self._guess is not None:
            self._guess.drop()
        self._guess = None
        self._frames = []
        self._worker.drop()

    def try_again(self, is_given_up: Callable[[], bool]) -> None:
        """Where it is not known to work, at first or after a failure: hear a moment of silence.

        Raises:
            RecogniserFailedError: it fails still.
        """
        if not self._needs_trial:
            return
        self.begin(AnyExpected())
        self.feed(_TRIAL_FRAME)
        self._last_answer(is_given_up)  # it may still be loading
        self.drop()
        self.check()
        self._needs_trial = False

    def close(self) -> None:
        """Close the recogniser, unless it hangs."""
        self.drop()
        self._worker.close(wait_s=_CLOSE_LIMIT_S)

    def _replace(self) -> None:
        self._needs_trial = True
        if self._guess is not None:
            self._guess.drop()  # one that is only slow shall not go on taking the processor
        self._worker.close(wait_s=0.0)
        if self._reopen is not None:
            with contextlib.suppress(Exception):  # the old one is asked again, and fails again where it hangs
                self._recogniser = self._reopen()
        self._worker = _Worker(self._recogniser)
        self._guess = None
        self._frames = []


class _Worker:
    """The thread; what is put into its queue is done in order."""

    def __init__(self, recogniser: Recogniser) -> None:
        self._recogniser = recogniser
        self._tasks: queue.SimpleQueue[tuple[str, object]] = queue.SimpleQueue()
        self._utterance: Utterance | None = None
        self._failure = ""
        self._thread = threading.Thread(target=self._run, name="recogniser", daemon=True)
        self._thread.start()

    def begin(self, expect: Expect) -> None:
        self._tasks.put(("begin", expect))

    def feed(self, frame: bytes) -> None:
        self._tasks.put(("feed", frame))

    def drop(self) -> None:
        self._tasks.put(("drop", None))

    def finish(self) -> Guess:
        guess = Guess()
        self._tasks.put(("finish", guess))
        return guess

    def take_failure(self) -> str:
        failure, self._failure = self._failure, ""
        return failure

    def close(self, wait_s: float) -> None:
        self._tasks.put(("close", None))
        if wait_s:
            self._thread.join(wait_s)

    def _run(self) -> None:
        while True:
            what, given = self._tasks.get()
            if what == "close":
                with contextlib.suppress(Exception):  # nobody is left to be told
                    self._recogniser.close()
                return
            guess = given if isinstance(given, Guess) else None
            try:
                self._do(what, given)
            except Exception as failure:  # noqa: BLE001 - whatever a native library or a model throws
                self._utterance = None
                is_ours = isinstance(failure, AssistantError)  # a sentence with its remedy
                told = str(failure) if is_ours else f"The recogniser has failed: {reason_shown(failure)}."
                if guess is None:
                    self._failure = told
                else:
                    guess.failure = told
            if guess is not None:
                guess.heard_at = time.monotonic()
                guess.done.set()

    def _do(self, what: str, given: object) -> None:
        if what == "begin":
            self._utterance = None
            self._utterance = self._recogniser.begin(given)  # type: ignore[arg-type]
        elif what == "drop":
            self._utterance = None
        elif self._utterance is None:
            if isinstance(given, Guess):
                given.failure = self.take_failure() or "The recogniser has failed."
        elif isinstance(given, bytes):
            self._utterance.feed(given)
        elif isinstance(given, Guess):
            given.utterance, self._utterance = self._utterance, None
            if not given.dropped:
                given.hearing = given.utterance.finish()
            given.utterance = None
