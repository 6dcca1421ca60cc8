"""The station: this machine's ports around one guide; one inbox, one thread that decides.

It performs what the guide asks for, in order, and holds no rule of the procedure. Nothing is shown or said
about an event before its entry is on disk, because the guide gives those effects only on `Recorded`.
"""

import queue
from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace
from datetime import datetime, timedelta

from assistant.adapters.instructor_line import Doorkeeper
from assistant.conversation import Conversation
from assistant.guide.effects import Adjust, Append, Cover, Effect, Finish, Listen, Outcome, Say, Tone, WakeAt
from assistant.guide.events import (
    Directed,
    EarBack,
    EarLost,
    Event,
    FromDesk,
    Happened,
    Heard,
    InputEnded,
    InstructorCame,
    Marked,
    NotUnderstood,
    Opened,
    Recorded,
    Resumed,
    Typed,
    VoiceLost,
    Woke,
    stamp,
)
from assistant.guide.guide import Guide, GuideMisuseError
from assistant.ports import (
    AnswerHeard,
    Clock,
    Ear,
    Keeper,
    LearnerSilent,
    LearnerSpeaks,
    LevelAdvice,
    ListeningStarted,
    OwnVoiceHeard,
    Screen,
    SoundStore,
    Source,
    SpeechEnded,
    SpeechStarted,
    Voice,
)
from assistant.record.decisions import REFUSED
from assistant.spoken.expect import ConfirmExpected

POLL_S = 0.5
"""Longest wait without looking up, so that an interrupt from the keyboard is seen."""
SECOND = timedelta(seconds=1)
PREPARED = 2
"""Sentences of each likely reply that are got ready; the rest is made while they sound."""


@dataclass(frozen=True)
class Interrupted:
    """The user or the system asked the program to end; posted by a signal's handler."""


@dataclass(frozen=True)
class Ordered:
    """What an instructor at the desk wants of this attempt; posted by whoever speaks with the desk.

    Attributes:
        order: its id, which becomes part of the entry.
        events: makes what it amounts to, at this time.
        tell: is told in the station's thread, and returns at once: why it was refused, or "".
    """

    order: str
    events: Callable[[datetime], tuple[Event, ...]]
    tell: Callable[[str], None]


NOT_NOW = "The attempt is at a point where this cannot be done."


class Station:
    """One attempt on this machine.

    Args:
        guide: the procedure.
        new_record: makes the record with this body as its first entry on disk.
        clock: the time.
        screen: where text goes.
        inbox: where the ports post their events, and a desk what the instructor marks, lets happen or directs
            (`Marked`, `Happened`, `Directed`: each gets the time at which it is taken, and is nothing after the end).
        ear, voice: this machine's ports, None where there is none.
        source: input to be fetched, None where a keyboard posts into the inbox.
        sounds: where sound is kept if the learner agrees; None where none is to be.
        doorkeeper: looks at the instructor's code; None where none was set.
        talk_over: the learner may interrupt the voice: the microphone does not hear it, or it is taken out.
        through_canceller: it is taken out, and may have taken a part of what was said at the same time.
        signals: short sounds tell when it listens, has understood or not, or holds.
        press_to_talk: the ear opens only when a key is pressed: an empty line was typed.
    """

    def __init__(
        self,
        guide: Guide,
        new_record: Callable[[Mapping[str, object]], Keeper],
        clock: Clock,
        screen: Screen,
        inbox: "queue.SimpleQueue[object]",
        ear: Ear | None = None,
        voice: Voice | None = None,
        source: Source | None = None,
        sounds: SoundStore | None = None,
        doorkeeper: Doorkeeper | None = None,
        *,
        talk_over: bool = False,
        through_canceller: bool = False,
        signals: bool = False,
        press_to_talk: bool = False,
    ) -> None:
        self._guide = guide
        self._new_record = new_record
        self._clock = clock
        self._screen = screen
        self._inbox = inbox
        self._ear = ear
        self._voice = voice
        self._conversation = Conversation(
            ear,
            voice,
            talk_over=talk_over,
            through_canceller=through_canceller,
            signals=signals,
            press_to_talk=press_to_talk,
        )
        self._source = source
        self._sounds = sounds
        self._doorkeeper = doorkeeper or Doorkeeper("")
        self._record: Keeper | None = None
        self._wake: WakeAt | None = None
        self._is_timed = False
        self._outcome: Outcome | None = None
        self._typed_ended = False
        self._order = ""
        self._verdict = ""

    def run(self, resumed: Keeper | None = None, clock_behind_s: str = "") -> Outcome:
        """Live through the attempt; return how it ended.

        Args:
            resumed: the record of the attempt that is taken up, None for a new attempt.
            clock_behind_s: as in `Resumed`.

        Raises:
            RecordError: an entry could not be put on disk; the attempt ends, the file stays as it is.
        """
        self._record = resumed
        try:
            self._give(self._resumed(clock_behind_s) if resumed else Opened(self._clock.now()))
            while self._outcome is None:
                self._take(self._next())
            self._let_speak()
        finally:
            self.close()
        return self._outcome

    @property
    def head(self) -> str:
        """Digest of the record's last entry on disk; empty where there is no record yet."""
        return "" if self._record is None else self._record.head

    def close(self) -> None:
        """Let go of every device and of the record."""
        self._conversation.close()
        if self._record is not None:
            self._record.close()

    # Input.

    def _next(self) -> object:
        """The next thing that happens: posted, due, or fetched."""
        while True:
            try:
                return self._inbox.get_nowait()
            except queue.Empty:
                pass
            now, wake = self._clock.now(), self._wake
            due = wake.at if wake is not None else None
            if wake is not None and now >= wake.at:
                self._wake = None
                return Woke(now, wake.token)
            if due is not None and self._is_timed:
                self._screen.waits(-((now - due) // SECOND))
            if self._conversation.is_speaking:
                try:
                    return self._inbox.get(timeout=POLL_S)
                except queue.Empty:
                    self._conversation.give_up_overdue()
                    self._screen.speaks(sounds=self._conversation.is_talking)
                    continue
            if self._source is not None and self._conversation.wants_answer:
                event = self._source.next_event(due)
                if event is not None:
                    return event
                continue
            limit = self._clock.sleep_limit(due)
            try:
                return self._inbox.get(timeout=POLL_S if limit is None else min(limit, POLL_S))
            except queue.Empty:
                continue

    def _take(self, happening: object) -> None:
        match happening:
            case SpeechStarted():
                self._note_latency()
                self._screen.speaks(sounds=self._conversation.is_talking)
            case SpeechEnded(utterance):
                self._conversation.ended(utterance)
                self._screen.speaks(sounds=self._conversation.is_talking)
            case LearnerSpeaks():
                self._conversation.speaks(happening)
            case LearnerSilent():
                self._conversation.silent(happening)
            case AnswerHeard():
                heard = self._conversation.answer(happening)
                if heard is not None:
                    self._give(heard)
            case ListeningStarted():
                self._screen.listening()
            case LevelAdvice(text):
                self._advise(text)
            case OwnVoiceHeard(text):
                self._conversation.own_voice_heard()
                self._advise(text)
            case Typed(words=words) if not words.strip():
                self._conversation.pressed()  # Enter alone, or a pedal that is this key
            case Interrupted():
                self._conversation.hush()
                self._give(InputEnded(self._clock.now()))
            case InputEnded() if self._conversation.can_hear:
                self._typed_ended = True
            case Typed():
                self._conversation.hush()
                self._give_typed(happening)
            case Ordered():
                self._carry_out(happening)
            case Marked() | Happened() | Directed():
                self._give(replace(happening, at=self._clock.now()))
            case EarLost():
                self._conversation.ear_lost()
                self._give(happening)
                if self._typed_ended:
                    self._give(InputEnded(self._clock.now()))
            case EarBack():
                self._conversation.ear_back()
                self._give(happening)
            case Heard() | NotUnderstood() | InstructorCame() | Woke() | VoiceLost() | InputEnded():
                self._give(happening)
            case _:
                raise TypeError(f"nobody posts {type(happening).__name__} here")

    def _give_typed(self, typed: Typed) -> None:
        """A line is the learner's, unless it begins with the instructor's word; the code stays here."""
        line = self._doorkeeper.read(typed.words, typed.at)
        if line is None:
            self._give(typed)
            return
        self._give(InstructorCame(typed.at, line.proven))
        if line.words:
            self._give(Typed(typed.at, line.words))
        if line.pause_s:
            self._advise(f"No code is looked at for {line.pause_s} seconds.")

    def _carry_out(self, ordered: Ordered) -> None:
        """Take what the desk wants, and say whether an entry was made of it."""
        self._order, self._verdict = ordered.order, ""
        before = self.head
        try:
            for event in ordered.events(self._clock.now()):
                self._take(event)
        except GuideMisuseError:
            ordered.tell(NOT_NOW)
            return
        finally:
            self._order = ""
        ordered.tell(NOT_NOW if self.head == before or self._verdict == REFUSED else "")

    # The guide and what it asks for.

    def _give(self, event: Event) -> None:
        if self._outcome is not None:
            return
        effects = self._guide.receive(event)
        for effect in effects:
            self._perform(effect, event)

    def _perform(self, effect: Effect, event: Event) -> None:
        match effect:
            case Append(body):
                recorded = self._append(self._with_sound(body, event))
                effects = self._guide.receive(recorded)
                if effects:  # else it changes nothing that is asked, and what was begun as an answer stays one
                    if isinstance(event, FromDesk):
                        self._conversation.hush()  # the instructor comes first; what was being said is said anew
                    self._conversation.recorded(recorded.sequence)
                    self._screen.taken(event)
                for following in effects:
                    self._perform(following, event)
            case Say():
                self._screen.show(effect)
                self._conversation.say(effect)
            case Listen():
                if self._sounds is not None and self._guide.may_keep_sound():
                    self._conversation.keep_sound()
                self._conversation.listen(effect)
                self._is_timed = not effect.wanted
                if effect.wanted:
                    self._screen.asked(paused=effect.paused)
                self._prepare(effect)
            case WakeAt():
                self._wake = effect  # the guide waits for one call; an earlier one is stale
            case Adjust(rate, loudness, pitch):
                if self._voice is not None:
                    self._voice.adjust(rate, loudness, pitch)
            case Cover():
                self._screen.cover()
            case Finish(outcome, seal):
                if seal is not None and self._record is not None:
                    self._record.seal(seal)
                self._outcome = outcome

    def _resumed(self, clock_behind_s: str) -> Resumed:
        ear, model = ("", "") if self._ear is None else (self._ear.name, self._ear.model_digest)
        return Resumed(self._clock.now(), ear, model, clock_behind_s)

    def _with_sound(self, body: Mapping[str, object], event: Event) -> Mapping[str, object]:
        """The body with what is kept of the event's sound; the consent answer itself is not saved."""
        if self._sounds is None or not isinstance(event, Heard | NotUnderstood) or not event.sound:
            return body
        return {**body, "sound": self._sounds.keep(event.sound)} if self._guide.may_keep_sound() else body

    def _append(self, body: Mapping[str, object]) -> Recorded:
        if self._order:
            body = {"order": self._order, **body}
            self._verdict = str(body.get("verdict", ""))
            self._order = ""
        if self._record is None:
            self._record = self._new_record(body)
            return Recorded(1, self._record.head)
        return Recorded(*self._record.append(body))

    # The voice.

    def _prepare(self, listen: Listen) -> None:
        """Let the voice get ready what the likeliest answers to a question would make the guide say.

        Nothing is got ready for a number: a right one must not sound sooner than a wrong one.
        """
        if self._voice is None or self._ear is None or not isinstance(listen.expect, ConfirmExpected):
            return
        for words in self._guide.papers.language.likely_answers:
            replies = [e for e in self._guide.preview(Heard(self._clock.now(), words)) if isinstance(e, Say)]
            for say in replies[:PREPARED]:
                self._conversation.prepare(say)

    def _advise(self, text: str) -> None:
        """What the learner had better know of the sound; it is no matter of the attempt."""
        if self._outcome is None:
            advice = Say(text, text, Tone.NOTICE)
            self._screen.show(advice)
            self._conversation.say(advice)

    def _note_latency(self) -> None:
        """How long the learner waited, as an entry that no attempt depends on."""
        spent = self._conversation.sounded()
        if spent is not None and self._record is not None and self._outcome is None:
            self._record.append({**spent, "at": stamp(self._clock.now())})

    def _let_speak(self) -> None:
        """After the end: let the voice finish the result."""
        self._wake = None
        self._conversation.stop_listening()
        while self._conversation.is_speaking:
            self._take(self._next())
