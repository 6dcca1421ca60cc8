"""Whether the assistant's own voice may be in what the microphone hears; pure, over 10 ms at a time."""

from collections import deque

import numpy as np
import numpy.typing as npt

from assistant.adapters.played import CHUNK, Samples
from assistant.ports import SAMPLE_RATE_HZ

TAIL_CHUNKS = 35
"""After its last sound the voice is still in the room for so long (350 ms, `AHEAD_S` among them)."""
PROOF_CHUNKS = 30
"""So much of a sentence (300 ms of sound) shows whether its echo is gone."""
LOWERED = 10.0
"""The echo is gone when its power is lowered by this factor (10 dB)."""
INAUDIBLE = 2.5
"""The voice is not in the microphone when its power stays below so many times the room's (4 dB)."""
LIKE_OWN_VOICE = 0.3
"""Likeness from which sound is the own voice. Measured on halves of a second, in a room with much echo: the own voice
0.42 in the middle, somebody's talk at the same time 0.05, at most 0.17; talk by the very same synthesiser 0.09, at
most 0.5."""
LIKENESS_S = 0.5
"""Sound whose likeness is looked at."""
LOOK_CHUNKS = 4
"""It is looked at every 40 ms of the voice."""
LOOKS = 2
"""The mean of so many looks counts where a canceller has let something through: it is shut out until proven anew."""
HEADSET_LOOKS = 30
"""The same for a headset, where it counts for good."""
STEADY_LOOKS = 25
"""After a change of the delay a canceller has had time to learn the new one (1 s of the voice)."""
MOST_CHANGE = 5 * SAMPLE_RATE_HZ // 1000
"""A change of the delay beyond this many samples (5 ms) is one."""
UNLIKE_CHUNKS = 300
"""A headset is one when 3 s of the voice were not found in its microphone."""
LEAST_ENERGY = 0.25
"""A stretch in which less than this share of the most was played is not compared: one vowel is like another one."""
LONGEST_DELAY_S = 0.4
"""The own voice comes back within this time."""
_AUDIBLE = 30.0
"""Mean amplitude from which a chunk of the reference can make an echo."""


class OwnVoiceGuard:
    """Decides for each chunk whether the assistant's own voice may be in it. Pure; one for each microphone.

    With a canceller every beginning of sound must be proven anew: its echo is lowered and comes after the delay that
    the canceller has learned, or there is none. Without one (a headset) it is proven once that there is none; where
    sound like the own voice is found after all, everything is shut out while the voice sounds, from then on.

    Args:
        cancels: a canceller works before it.
    """

    def __init__(self, *, cancels: bool) -> None:
        self._cancels = cancels
        self._proven = False
        self._beginnings = 0
        self._tail = 0
        self._room = 0.0
        self._powers: deque[tuple[float, float]] = deque(maxlen=PROOF_CHUNKS)
        self._played: deque[Samples] = deque(maxlen=round((LIKENESS_S + LONGEST_DELAY_S) * SAMPLE_RATE_HZ) // CHUNK)
        self._heard: deque[Samples] = deque(maxlen=round(LIKENESS_S * SAMPLE_RATE_HZ) // CHUNK)
        self._near: deque[Samples] = deque(maxlen=self._heard.maxlen)
        self._delay = self._seen = self._steady = self._fresh = 0
        self._audible = 0
        self._looks: deque[float] = deque(maxlen=LOOKS if cancels else HEADSET_LOOKS)
        self.found = False
        """Own voice was found in what is passed on, or would be without a canceller."""

    @property
    def sounds(self) -> bool:
        """The voice is in the room now."""
        return self._tail > 0

    def is_silent(self, power: float) -> bool:
        """Whether sound of this power is no more than the room itself."""
        return power <= INAUDIBLE * self._room

    def is_clear(self, near: Samples, cleaned: Samples, played: Samples, beginnings: int) -> bool:
        """Whether the cleaned chunk may be taken for somebody else's sound.

        Args:
            near: the microphone.
            cleaned: the same after the canceller; the same object where there is none.
            played: the reference at this time.
            beginnings: as `Reference` counts them.
        """
        is_audible = float(np.mean(np.abs(played.astype(np.float64)))) > _AUDIBLE
        self._tail = TAIL_CHUNKS if is_audible else max(0, self._tail - 1)
        power = power_of(near)
        if self._cancels and beginnings != self._beginnings:
            self._beginnings = beginnings
            self.doubt()
        self._played.append(played)
        self._heard.append(cleaned)
        self._near.append(near)
        if not self._tail:
            # Rises by 0.9 dB a second at most.
            self._room = min(power, self._room * 1.002) if self._room else power
            return True
        if is_audible:
            self._powers.append((power, power_of(cleaned)))
            self._audible += 1
            self._look()
        if not self._proven and len(self._powers) == PROOF_CHUNKS:
            self._proven = self._is_proven()
        return self._proven

    def doubt(self) -> None:
        """What was proven holds no more: sound begins, was lost, or comes at another time."""
        self._proven = False
        self._fresh = 0
        self._powers.clear()
        self._looks.clear()
        self._audible = 0

    def _is_proven(self) -> bool:
        if self.found and not self._cancels:
            return False
        before, after = np.mean(self._powers, axis=0)
        if self.is_silent(before):
            return True
        if not self._cancels:
            return self._audible >= UNLIKE_CHUNKS
        return bool(after * LOWERED <= before) and self._fresh >= LOOKS and self._steady >= STEADY_LOOKS

    def _look(self) -> None:
        if self._audible % LOOK_CHUNKS or self._audible < (self._heard.maxlen or 0):
            return
        played = np.concatenate(self._played)
        if self._cancels:
            self._follow_delay(*likeness(np.concatenate(self._near), played))
        if self._proven or not self._cancels:
            self._looks.append(likeness(np.concatenate(self._heard), played)[0])
            if len(self._looks) == self._looks.maxlen and float(np.mean(self._looks)) >= LIKE_OWN_VOICE:
                self.found = True
                self.doubt()

    def _follow_delay(self, value: float, delay: int) -> None:
        """A canceller that has learned one delay lets the voice through at another one until it has learned that."""
        if value < LIKE_OWN_VOICE:
            return  # somebody else speaks as well, or there is no echo
        if abs(delay - self._delay) > MOST_CHANGE:
            is_seen_twice, self._seen = abs(delay - self._seen) <= MOST_CHANGE, delay
            if not is_seen_twice:
                return
            self._delay = delay
            self._steady = 0
            self.doubt()
        self._steady += 1
        self._fresh += 1


def power_of(samples: Samples) -> float:
    """Mean square, never 0."""
    return float(np.mean(np.square(samples.astype(np.float64)))) + 1.0


def likeness(heard: npt.NDArray[np.int16], played: npt.NDArray[np.int16]) -> tuple[float, int]:
    """The greatest likeness of `heard` to any stretch of `played` of the same length, 0 to 1, and where that begins.

    Normalised cross-correlation (common signal theory, no source): loudness does not matter, silence is like nothing.

    Args:
        heard: samples of a microphone.
        played: at least as many samples of what was played meanwhile and before.
    """
    # Differences: a voice's low tones are like those of any other voice.
    near, far = np.diff(heard.astype(np.float64)), np.diff(played.astype(np.float64))
    energy = float(near @ near)
    lags = len(far) - len(near) + 1
    size = 1 << (len(far) + len(near)).bit_length()
    products = np.fft.irfft(np.fft.rfft(far, size) * np.conj(np.fft.rfft(near, size)), size)[:lags]
    sums = np.concatenate([[0.0], np.cumsum(far * far)])
    energies = sums[len(near) :] - sums[:lags]
    if not energy or not energies.max():
        return 0.0, 0
    worth = energies > energies.max() * LEAST_ENERGY
    alike = np.where(worth, np.abs(products) / np.sqrt(np.maximum(energies, 1.0) * energy), 0.0)
    return float(alike.max()), int(alike.argmax())
