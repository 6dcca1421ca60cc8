"""Whether this machine can hear and speak: devices, levels, and a round trip through the air."""

import queue
import time
from collections.abc import Callable
from dataclasses import dataclass, replace
from decimal import Decimal

import numpy as np

from assistant.adapters.clock import SystemClock
from assistant.adapters.listener import Listener
from assistant.adapters.loudspeaker import Loudspeaker
from assistant.adapters.microphone import Microphone, SoundBlock, SoundSource
from assistant.adapters.sound_devices import DEVICES, Device
from assistant.adapters.voice import SpeakingVoice
from assistant.errors import DeviceError, ModelError
from assistant.guide.events import EarLost, Heard, NotUnderstood, VoiceLost
from assistant.ports import AnswerHeard, ListeningStarted, Recogniser, SpeechEnded
from assistant.spoken import interpret
from assistant.spoken.expect import NumberExpected
from assistant.spoken.meaning import Answer

SAID = "seventy five"
"""What is said and should be heard: a number that sounds like no other."""
_EXPECTED = NumberExpected("mL/h")
_VALUE = Decimal(75)

ROOM_S = 2.0
"""How long the room is listened to before anything is said."""
ANSWER_LIMIT_S = 8.0
"""Longest wait for a word to be heard, after it was said."""
MOUTH_LIMIT_S = 15.0
"""The same where a person says it."""
LOUD_ROOM_DBFS = -35.0
"""Above this the room itself is in the way of soft words; a project's own figure, not a standard's."""
RISE_DB = 6.0
"""A voice that lifts the level by less is not picked up."""
_START_LIMIT_S = 10.0
_FULL_SCALE = 32_768
_CLIPPED_SHARE = 0.001


@dataclass(frozen=True)
class SoundCheck:
    """What was found.

    Attributes:
        microphones, loudspeakers: the devices of this machine.
        microphone, loudspeaker: the ones that were used; empty where there is none.
        ear: the recogniser's name; empty where there is none.
        room_dbfs, loudest_dbfs: level of the room, and of the loudest moment, in dB below full scale; None where
            nothing came at all.
        said, heard: the words of the round trip; heard is empty where nothing was.
        faults: one sentence each, with what to do; empty where all is well.
    """

    microphones: tuple[Device, ...]
    loudspeakers: tuple[Device, ...]
    microphone: str = ""
    loudspeaker: str = ""
    ear: str = ""
    room_dbfs: float | None = None
    loudest_dbfs: float | None = None
    said: str = ""
    heard: str = ""
    faults: tuple[str, ...] = ()


def devices() -> tuple[tuple[Device, ...], tuple[Device, ...]]:
    """Microphones and loudspeakers of this machine.

    Raises:
        DeviceError: there is no PortAudio, or it does not answer.
    """
    found = DEVICES.all()
    return tuple(one for one in found if one.inputs > 0), tuple(one for one in found if one.outputs > 0)


def check_sound(
    open_ear: Callable[[], Recogniser],
    microphone: str | None,
    loudspeaker: str | None,
    tell: Callable[[str], None],
    *,
    by_mouth: bool = False,
) -> SoundCheck:
    """Listen to the room, say a word, hear it, and tell what is wrong. What is missing is a fault, not an error.

    Args:
        open_ear: opens the recogniser that hears; it is closed at the end.
        microphone: its name or part of it; None for the default one.
        loudspeaker: the same.
        tell: gets a sentence about what is going on.
        by_mouth: a person says the word; the loudspeaker is not used.
    """
    try:
        found = SoundCheck(*devices(), said=SAID)
    except DeviceError as missing:
        return SoundCheck((), (), faults=(str(missing),))
    faults: list[str] = []
    recogniser = None
    try:
        found = replace(found, microphone=DEVICES.microphone(microphone).name)
    except DeviceError as missing:
        faults.append(str(missing))
    try:
        found = replace(found, loudspeaker="" if by_mouth else DEVICES.loudspeaker(loudspeaker).name)
    except DeviceError as missing:
        faults.append(str(missing))
    try:
        recogniser = open_ear()
        found = replace(found, ear=recogniser.name)
    except ModelError as missing:
        faults.append(str(missing))
    if faults or recogniser is None:
        if recogniser is not None:
            recogniser.close()
        return replace(found, said="", faults=tuple(faults))
    meter = Meter(Microphone(microphone))
    trip = _RoundTrip(recogniser, meter, None if by_mouth else Loudspeaker(loudspeaker), tell)
    heard = trip.run()
    return replace(
        found,
        room_dbfs=meter.room_dbfs,
        loudest_dbfs=meter.loudest_dbfs,
        heard=heard.words if isinstance(heard, Heard) else "",
        faults=trip.faults or judged(meter, heard, by_mouth=by_mouth),
    )


class Meter:
    """A sound source that measures what passes through it."""

    def __init__(self, source: SoundSource) -> None:
        self._source = source
        self._loudest = 0.0
        self._room: list[float] = []
        self._samples = 0
        self._clipped = 0
        self.in_room = True

    @property
    def rate_hz(self) -> int:
        """Samples a second."""
        return self._source.rate_hz

    @property
    def channels(self) -> int:
        """Interleaved channels."""
        return self._source.channels

    @property
    def latency_s(self) -> float:
        """How much older than its arrival a block may be, seconds."""
        return self._source.latency_s

    @property
    def room_dbfs(self) -> float | None:
        """Mean level while `in_room` was set; None for nothing at all."""
        return _dbfs(float(np.sqrt(np.mean(self._room)))) if self._room else None

    @property
    def loudest_dbfs(self) -> float | None:
        """Level of the loudest block; None for nothing at all."""
        return _dbfs(float(np.sqrt(self._loudest)))

    @property
    def is_clipped(self) -> bool:
        """Some samples reached full scale."""
        return self._samples > 0 and self._clipped > _CLIPPED_SHARE * self._samples

    def open(self) -> None:
        """Let sound flow."""
        self._source.open()

    def next_block(self, timeout: float) -> SoundBlock | None:
        """The next block, measured."""
        block = self._source.next_block(timeout)
        if block is not None and block.samples:
            samples = np.frombuffer(block.samples, np.int16).astype(np.float64)
            power = float(np.mean(np.square(samples)))
            self._loudest = max(self._loudest, power)
            if self.in_room:
                self._room.append(power)
            self._samples += len(samples)
            self._clipped += int(np.count_nonzero(np.abs(samples) >= _FULL_SCALE - 1))
        return block

    def has_ended(self) -> bool:
        """The source has ended."""
        return self._source.has_ended()

    def close(self) -> None:
        """Close the source."""
        self._source.close()


class _RoundTrip:
    def __init__(
        self, recogniser: Recogniser, meter: Meter, loudspeaker: Loudspeaker | None, tell: Callable[[str], None]
    ) -> None:
        self.faults: tuple[str, ...] = ()
        self._meter = meter
        self._tell = tell
        self._events: queue.Queue[object] = queue.Queue()
        clock = SystemClock()
        self._ear = Listener(recogniser, self._events.put, clock, source=meter)
        self._voice = None
        if loudspeaker is not None:
            self._voice = SpeakingVoice(self._events.put, clock, loudspeaker=loudspeaker)

    def run(self) -> Heard | NotUnderstood | None:
        try:
            return self._run()
        finally:
            self._ear.close()
            if self._voice is not None:
                self._voice.close()

    def _run(self) -> Heard | NotUnderstood | None:
        self._ear.listen(_EXPECTED)
        if self._wait(ListeningStarted, _START_LIMIT_S) is None:
            return None
        self._tell("Listening to the room: please be quiet.")
        time.sleep(ROOM_S)
        self._meter.in_room = False
        self._ear.listen(_EXPECTED)  # whatever was said in the room is no answer
        if self._wait(ListeningStarted, _START_LIMIT_S) is None:
            return None
        if self._voice is None:
            self._tell(f'Please say: "{SAID}".')
        else:
            self._tell(f'Saying "{SAID}" and listening for it.')
            self._voice.say(1, SAID)
        limit_s = MOUTH_LIMIT_S if self._voice is None else ANSWER_LIMIT_S
        found = self._wait(AnswerHeard, limit_s)
        return found.event if isinstance(found, AnswerHeard) else None

    def _wait(self, kind: type | tuple[type, ...], limit_s: float) -> object:
        """The next event of this kind; None where the time is over or a device failed."""
        deadline = time.monotonic() + limit_s
        while (left_s := deadline - time.monotonic()) > 0:
            try:
                event = self._events.get(timeout=left_s)
            except queue.Empty:
                break
            if isinstance(event, kind):
                return event
            if isinstance(event, EarLost | VoiceLost):
                self.faults = (event.reason,)
                return None
            if isinstance(event, SpeechEnded):
                deadline = max(deadline, time.monotonic() + limit_s)
        return None


def judged(meter: Meter, heard: Heard | NotUnderstood | None, *, by_mouth: bool) -> tuple[str, ...]:
    """What is wrong, one sentence each, after a round trip.

    Args:
        meter: what has been measured.
        heard: what came of the word; None for nothing.
        by_mouth: a person said it.
    """
    room, loudest = meter.room_dbfs, meter.loudest_dbfs
    if loudest is None:
        return (
            "The microphone gives no sound at all, not even noise: it is muted, switched off, or the wrong one. "
            "Choose one with --microphone.",
        )
    faults = []
    if room is not None and room > LOUD_ROOM_DBFS:
        faults.append("The room is loud. Use a headset, or turn the microphone down.")
    if meter.is_clipped:
        faults.append("The sound is too loud for the microphone. Turn the microphone or the loudspeaker down.")
    picked_up = room is None or loudest - room >= RISE_DB
    match heard:
        case Heard(words=words):
            meaning = interpret(words, _EXPECTED)
            if not (isinstance(meaning, Answer) and meaning.value == _VALUE):
                faults.append(f'"{SAID}" was heard as "{words}". Try another microphone, or a headset.')
        case NotUnderstood():
            faults.append(f'"{SAID}" was heard, but not understood. Try another microphone, or a headset.')
        case None if picked_up:
            faults.append("The microphone picked something up, but no speech. Turn the loudspeaker up or down.")
        case None if by_mouth:
            faults.append("Nothing was heard. Speak up, turn the microphone up, or choose another one.")
        case None:
            faults.append(
                "The microphone does not pick up the loudspeaker. With a headset that is as it should be: check "
                "with --by-mouth then. Otherwise turn the loudspeaker or the microphone up."
            )
    return tuple(faults)


def _dbfs(level: float) -> float | None:
    return round(float(20 * np.log10(level / _FULL_SCALE)), 1) if level > 0 else None
