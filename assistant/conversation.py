"""Ear and voice of one station together: who may speak when, which question an answer belongs to, how long it took.

Over a loudspeaker the ear is closed while the voice sounds. With a headset, or a canceller that takes the voice out
of the microphone, it stays open, and the learner's first word stops the voice.
"""

import time
from dataclasses import dataclass, replace

from assistant.guide.effects import Listen, Say, Tone
from assistant.guide.events import Heard, NotUnderstood
from assistant.ports import AnswerHeard, Ear, LearnerSilent, LearnerSpeaks, Signal, Timing, Voice
from assistant.spoken import interpret
from assistant.spoken.meaning import Answer, Kind

SPEECH_GRACE_S = 8
"""Longest time that a sentence may take beyond its length before it is given up."""
SPEECH_S_A_CHARACTER = 0.12
"""Slow speech; a sentence that is not over by then is not waited for."""
ECHO_S = 0.3
"""What begins so shortly after the voice has ended may have begun in it."""
SIGNALS = {Tone.UNCLEAR: Signal.NOT_UNDERSTOOD, Tone.HOLD: Signal.HOLD}
"""The short sound before a sentence of this tone; before any other one, after an answer, it is `UNDERSTOOD`."""
CAREFUL = frozenset({Tone.READ_BACK, Tone.HOLD})
"""What holds numbers to be checked is said more slowly."""


@dataclass
class _Answer:
    """The answer whose way is being timed: sequence of its entry, and when that was on disk."""

    timing: Timing
    sequence: int = 0
    recorded: float = 0.0


class Conversation:
    """Ear and voice, each None where this machine has none.

    Args:
        ear, voice: the ports.
        talk_over: the microphone does not hear the voice (a headset), or it is taken out: the learner may
            interrupt it.
        through_canceller: it is taken out. A canceller may take a part of what was said at the same time with it,
            and what is left of "that is not right" may be "right": only commands are then taken. Anything else
            stops the voice all the same; the sentence is said again, and the answer wanted after it.
        signals: short sounds tell when it listens, has understood or not, or holds.
        press_to_talk: the ear opens only when a key is pressed, for the one question that stands.
    """

    def __init__(
        self,
        ear: Ear | None,
        voice: Voice | None,
        *,
        talk_over: bool = False,
        through_canceller: bool = False,
        signals: bool = False,
        press_to_talk: bool = False,
    ) -> None:
        self._ear = ear
        self._voice = voice
        self._talk_over = talk_over
        self._through_canceller = through_canceller
        self._overlaps = False
        self._quiet_since = 0.0
        self._signals = signals and voice is not None
        self._press_to_talk = press_to_talk
        self._is_pressed = False
        self._has_heard = False
        self._ear_alive = ear is not None
        self._listen: Listen | None = None
        self._question = 0
        self._utterance = 0
        self._speaking: dict[int, Say] = {}
        self._interrupted: list[Say] = []
        self._due_s = 0.0
        self._answer: _Answer | None = None

    @property
    def is_speaking(self) -> bool:
        """Whether sentences are under way."""
        return bool(self._speaking)

    @property
    def is_talking(self) -> bool:
        """Whether there are words among them: a short sound alone is no talk."""
        return any(say.speech for say in self._speaking.values())

    @property
    def can_hear(self) -> bool:
        """Whether answers may come by voice."""
        return self._ear_alive

    @property
    def wants_answer(self) -> bool:
        """Whether something is asked for now."""
        return self._listen is not None and self._listen.wanted

    # The voice.

    def say(self, say: Say) -> None:
        """Speak a sentence after those that are under way."""
        if self._voice is None or not say.speech:
            return
        signal = SIGNALS.get(say.tone, Signal.UNDERSTOOD if self._has_heard else None)
        self._has_heard = False
        if signal is not None:
            self._sound(signal)
        self._voice.say(self._next(say), say.speech, careful=say.tone in CAREFUL)

    def _sound(self, signal: Signal) -> None:
        if self._signals and self._voice is not None:
            self._voice.signal(self._next(Say("", "", Tone.NOTICE)), signal)

    def _next(self, say: Say) -> int:
        """The voice is about to sound: the number of its next utterance."""
        if self._ear is not None and not self._talk_over:
            self._ear.mute()
        self._utterance += 1
        self._speaking[self._utterance] = say
        begins_s = max(self._due_s, time.monotonic())
        self._due_s = begins_s + SPEECH_GRACE_S + SPEECH_S_A_CHARACTER * len(say.speech)
        return self._utterance

    def prepare(self, say: Say) -> None:
        """This sentence may come next."""
        if self._voice is not None and say.speech:
            self._voice.prepare(say.speech, careful=say.tone in CAREFUL)

    def ended(self, utterance: int) -> None:
        """The voice has ended a sentence; one that was given up meanwhile is no matter."""
        if self._speaking.pop(utterance, None) is not None and not self._speaking:
            self._quiet()

    def pressed(self) -> None:
        """The key or pedal: the voice gives way; with press-to-talk the ear opens, or closes again."""
        self.hush()
        if self._press_to_talk and self._ear is not None:
            self._is_pressed = not self._is_pressed
            if not self._is_pressed:
                self._ear.mute()
            elif self._talk_over or not self._speaking:
                self._open_ear()

    def hush(self) -> None:
        """Stop the voice; each of its sentences still comes to its end."""
        if self._voice is not None and self._speaking:
            self._voice.hush()

    def give_up_overdue(self) -> None:
        """Stop waiting for a voice that never reports that it has finished."""
        if self._speaking and time.monotonic() >= self._due_s:
            self.hush()
            self._speaking.clear()
            self._quiet()

    def _quiet(self) -> None:
        self._due_s = 0.0
        self._quiet_since = time.monotonic()
        if not self._talk_over:
            self._open_ear()

    # The ear.

    def listen(self, listen: Listen) -> None:
        """A new question: what was begun for an earlier one is no answer to it."""
        self._listen = listen
        self._question += 1
        self._is_pressed = False
        if self._press_to_talk and self._ear is not None:
            self._ear.mute()
        if listen.wanted and not self._press_to_talk:
            self._sound(Signal.LISTENING)
        if self._talk_over or not self._speaking:
            self._open_ear()

    def keep_sound(self) -> None:
        """From now on, what is heard comes with its sound."""
        if self._ear is not None:
            self._ear.keep_sound()

    def stop_listening(self) -> None:
        """Nothing is asked for any more."""
        self._listen = None

    def ear_lost(self) -> None:
        """Nothing can be heard."""
        self._ear_alive = False

    def ear_back(self) -> None:
        """Answers by voice can come again, to the question that stands."""
        self._ear_alive = self._ear is not None
        if self._talk_over or not self._speaking:
            self._open_ear()

    def _open_ear(self) -> None:
        is_wanted = self._is_pressed or not self._press_to_talk
        if self._ear is not None and self._ear_alive and self._listen is not None and is_wanted:
            pause_s = None if self._listen.pause_s is None else float(self._listen.pause_s)
            self._ear.listen(self._listen.expect, self._question, pause_s)

    # The learner.

    def speaks(self, event: LearnerSpeaks) -> None:
        """Somebody begins to speak; the voice gives way."""
        self._overlaps = self.is_speaking or time.monotonic() - self._quiet_since < ECHO_S
        if event.question == self._question and self._speaking:
            self._interrupted = list(self._speaking.values())
            self.hush()

    def silent(self, event: LearnerSilent) -> None:
        """It was a noise: what it had interrupted is said after all."""
        interrupted, self._interrupted = self._interrupted, []
        if event.question == self._question:
            for say in interrupted:
                self.say(say)

    def answer(self, heard: AnswerHeard) -> Heard | NotUnderstood | None:
        """What was heard, as the guide may have it.

        Returns:
            None where the question has changed and there were no words; words to an earlier question come marked
            as overlapping the assistant's own voice, so that they are on record and answer nothing.
        """
        interrupted, self._interrupted = self._interrupted, []
        self._has_heard = True
        event = heard.event
        if self._through_canceller and self._overlaps and not self._is_command(event):
            for say in interrupted:
                self.say(say)
            return replace(event, during_speech=True) if isinstance(event, Heard) else None
        if heard.question != self._question:
            return replace(event, during_speech=True) if isinstance(event, Heard) else None
        self._answer = _Answer(heard.timing)
        return event

    def _is_command(self, event: Heard | NotUnderstood) -> bool:
        if self._listen is None or not isinstance(event, Heard):
            return False
        meaning = interpret(event.words, self._listen.expect, heard=True)
        return isinstance(meaning, Answer) and meaning.kind is Kind.COMMAND

    def own_voice_heard(self) -> None:
        """The microphone hears the voice after all: from now on the ear is closed while it sounds."""
        self._talk_over = False
        if self._ear is not None and self._speaking:
            self._ear.mute()

    # How long it took.

    def recorded(self, sequence: int) -> None:
        """The entry of the last answer is on disk."""
        if self._answer is not None and not self._answer.sequence:
            self._answer.sequence = sequence
            self._answer.recorded = time.monotonic()

    def sounded(self) -> dict[str, object] | None:
        """The voice has begun to sound: how long the last answer took, once, as the body of an entry.

        All figures are whole milliseconds after the learner's last sound.
        """
        answer, self._answer = self._answer, None
        if answer is None or not answer.sequence:
            return None
        ended = answer.timing.ended
        moments = {
            "decided_ms": answer.timing.decided,
            "understood_ms": answer.timing.understood,
            "recorded_ms": answer.recorded,
            "sounded_ms": time.monotonic(),
        }
        spent: dict[str, object] = {name: max(0, round(1000 * (at - ended))) for name, at in moments.items()}
        return {"kind": "latency", "of": answer.sequence, **spent}

    def close(self) -> None:
        """Let go of both devices."""
        for port in (self._ear, self._voice):
            if port is not None:
                port.close()
