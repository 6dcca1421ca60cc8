"""The assistant's own voice taken out of what the microphone hears, or at least never passed on as the learner's.

The reference is exactly what was handed to the loudspeaker, with the time at which it sounds. A canceller (WebRTC's,
where the extra `echo` is installed) lowers it in the microphone. What comes while the voice sounds is passed on only
while the voice is proven not to be in it; otherwise the ear gets the room as it was before.
"""

from collections import deque
from collections.abc import Callable

import numpy as np

from assistant.adapters.frames import MonoSound
from assistant.adapters.microphone import SoundBlock, SoundSource
from assistant.adapters.own_voice import OwnVoiceGuard, power_of
from assistant.adapters.played import CHUNK, Played, Reference, Samples
from assistant.ports import SAMPLE_RATE_HZ

ROOM_CHUNKS = 50
"""So much of the room (0.5 s) is kept, to stand where the voice was."""
LATEST_CHUNKS = 10
"""Sound of these last 100 ms shows whether somebody is speaking when sound begins to be passed on."""
MOST_EARLY_S = 0.15
MOST_LATE_S = 1.0
"""A block that seems to come so much off its place belongs there: sound was lost."""

Cancel = Callable[[Samples, Samples], Samples]
"""Takes `CHUNK` samples of the microphone and of the loudspeaker; gives the microphone without the loudspeaker."""


def canceller_maker() -> Callable[[], Cancel] | None:
    """What makes a new canceller, or None where the extra `echo` is not installed."""
    try:
        from pywebrtc_audio import EchoCanceller
    except ImportError:
        return None
    return lambda: EchoCanceller(sample_rate=SAMPLE_RATE_HZ).process


class WithoutOwnVoice:
    """A microphone without the assistant's own voice, as a `SoundSource` of mono sound at `SAMPLE_RATE_HZ`.

    Args:
        source: the microphone.
        played: what the loudspeaker plays.
        new_canceller: makes a canceller each time the microphone is opened; None for a headset, whose microphone is
            only watched.
        tell: called once, from the ear's thread, when the own voice was found where none should be.
    """

    def __init__(
        self,
        source: SoundSource,
        played: Played,
        new_canceller: Callable[[], Cancel] | None,
        tell: Callable[[], None] = lambda: None,
    ) -> None:
        self._source = source
        self._reference = Reference(played)
        self._new_canceller = new_canceller
        self._tell = tell
        self._is_told = False
        self._start()

    rate_hz = SAMPLE_RATE_HZ
    channels = 1

    @property
    def latency_s(self) -> float:
        """How much older than its arrival a block may be, seconds."""
        return self._source.latency_s + CHUNK / SAMPLE_RATE_HZ

    def open(self) -> None:
        """Let sound flow. Raises DeviceError where that is impossible."""
        self._source.open()
        self._start()

    def _start(self) -> None:
        self._cancel = self._new_canceller() if self._new_canceller is not None else None
        self._guard = OwnVoiceGuard(cancels=self._cancel is not None)
        self._mono = MonoSound(self._source)
        self._rest = np.zeros(0, np.int16)
        self._place = 0.0
        self._latest: deque[float] = deque(maxlen=LATEST_CHUNKS)
        self._is_shut = self._has_gap = False
        self._room = deque([np.zeros(CHUNK, np.int16)], maxlen=ROOM_CHUNKS)

    def next_block(self, timeout: float) -> SoundBlock | None:
        """The next block, or None when the time ran out."""
        block = self._source.next_block(timeout)
        if block is None:
            return None
        samples = np.concatenate([self._rest, self._mono.of(block)])
        complete = len(samples) // CHUNK * CHUNK
        self._rest = samples[complete:]
        self._place = self._place_of(block, len(samples))
        self._reference.collect(round(self._place))
        chunks = [self._without(samples[at : at + CHUNK]) for at in range(0, complete, CHUNK)]
        gap, self._has_gap = block.gap or self._has_gap, False
        return SoundBlock(b"".join(chunk.tobytes() for chunk in chunks), block.arrived, gap)

    def has_ended(self) -> bool:
        """No further block will come: the device went away."""
        return self._source.has_ended()

    def close(self) -> None:
        """Give the device back."""
        self._source.close()

    def _place_of(self, block: SoundBlock, waiting: int) -> float:
        """Where the next chunk lies on the steady clock, in samples.

        A block may arrive late, on a busy machine much, and never early: the earliest ones show the place. It
        follows late ones slowly, for the clocks of the device and of the machine drift apart.
        """
        began = (block.arrived - self._source.latency_s) * SAMPLE_RATE_HZ - waiting
        off = began - self._place
        if block.gap or not -MOST_EARLY_S < off / SAMPLE_RATE_HZ < MOST_LATE_S:
            self._guard.doubt()
            return began
        return self._place if self._guard.sounds else self._place + off * (0.1 if off < 0 else 0.002)

    def _without(self, near: Samples) -> Samples:
        played = self._reference.take(round(self._place))
        self._place += CHUNK
        cleaned = near if self._cancel is None else self._cancel(near, played)
        was_shut = self._is_shut
        self._is_shut = not self._guard.is_clear(near, cleaned, played, self._reference.beginnings)
        self._latest.append(power_of(cleaned))
        if not self._is_shut:
            # Who was speaking already has lost the beginning: what is left of a number is another number.
            self._has_gap |= was_shut and not self._guard.is_silent(float(np.mean(self._latest)))
            if not self._guard.sounds:
                self._room.append(near)
            return cleaned
        # What was passed on a moment ago was not what it seemed.
        self._has_gap |= not was_shut
        if self._guard.found and self._cancel is None and not self._is_told:
            self._is_told = True
            self._tell()
        self._room.rotate(-1)
        return self._room[-1]
